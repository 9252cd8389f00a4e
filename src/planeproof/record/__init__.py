"""The record of a verdict: versioned JSON that everything else is made from, on the terminal and on pages.

A play is written as its scene and what the candidate said; whoever reads it has it judged again, so that frames and
violations need not be believed. `record.schema.json` beside this module tells other programs the form.
"""

from planeproof.record.reading import RecordError, load_record, read_record
from planeproof.record.wire import record_schema
from planeproof.record.writing import write_record

__all__ = ["RecordError", "load_record", "read_record", "record_schema", "write_record"]
