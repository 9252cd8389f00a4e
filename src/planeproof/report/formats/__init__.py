"""A verdict in the formats that other programs read: JUnit XML, SARIF 2.1.0, and Markdown for a job's summary."""

from planeproof.report.formats.junit import junit_xml
from planeproof.report.formats.markdown import markdown_summary
from planeproof.report.formats.sarif import sarif_log

__all__ = ["junit_xml", "markdown_summary", "sarif_log"]
