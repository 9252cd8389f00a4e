"""The report of a check: a folder with the record, and with all that is made from it."""

# ruff: noqa: PLC0415 -- what is heavy is imported when it is needed, so that --help answers at once

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from planeproof.judge import Verdict

RECORD = "record.json"
"""The verdict as data; the other files are made from what is read back from it."""


def from_record(verdict: "Verdict") -> "Verdict":
    """The verdict as it is read back from its record: what is told is what is written, and nothing else."""
    from planeproof.record import read_record, write_record

    return read_record(write_record(verdict), RECORD)


def write_report(verdict: "Verdict", folder: Path) -> None:
    """Write the record, the page, JUnit XML, SARIF and Markdown into ``folder``, which is there. Raises `OSError`."""
    from planeproof.page import page_html
    from planeproof.record import write_record
    from planeproof.report.formats import junit_xml, markdown_summary, sarif_log

    for name, data in (
        (RECORD, write_record(verdict)),
        ("index.html", page_html(verdict).encode()),
        ("junit.xml", junit_xml(verdict)),
        ("planeproof.sarif", sarif_log(verdict).encode()),
        ("summary.md", markdown_summary(verdict).encode()),
    ):
        (folder / name).write_bytes(data)
