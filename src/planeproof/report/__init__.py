"""Reports: pure values in, text out.

text (a verdict or a play) <- story, fault, evidence <- scene, refreshes, compared <-
machine, writes, retrace <- strip, figures.
"""

from planeproof.report.figures import counted, cycles, spans, wrapped
from planeproof.report.machine import machine_headline, machine_page
from planeproof.report.story import rule_lines
from planeproof.report.text import fault_page, play_lines, verdict_lines
from planeproof.report.ways import RECKONED, ways_page, ways_table

__all__ = [
    "RECKONED",
    "counted",
    "cycles",
    "fault_page",
    "machine_headline",
    "machine_page",
    "play_lines",
    "rule_lines",
    "spans",
    "verdict_lines",
    "ways_page",
    "ways_table",
    "wrapped",
]
