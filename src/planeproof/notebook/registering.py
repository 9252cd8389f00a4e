"""Telling IPython how values of ours are shown, without importing them, it, or what shows them."""

# ruff: noqa: PLC0415 -- what is heavy is imported when something is shown

from typing import Any

Metadata = dict[str, str]

HTML, PNG = "text/html", "image/png"


def register(shell: Any) -> None:  # noqa: ANN401 -- IPython's
    """Have the ``shell`` show our values. Done again, it changes nothing."""
    formatters = shell.display_formatter.formatters
    for module, name, show in _PAGES:
        formatters[HTML].for_type_by_name(module, name, show)
    formatters[PNG].for_type_by_name("planeproof.pictures.figure", "Figure", _figure)


def _verdict(verdict: Any) -> str:  # noqa: ANN401 -- of the type it is registered for, as below
    from planeproof.notebook.pages import verdict_html

    return verdict_html(verdict)


def _finding(finding: Any) -> str:  # noqa: ANN401
    from planeproof.notebook.pages import finding_html

    return finding_html(finding)


def _machine(machine: Any) -> str:  # noqa: ANN401
    from planeproof.notebook.pages import machine_html

    return machine_html(machine)


def _figure(figure: Any) -> tuple[bytes, Metadata]:  # noqa: ANN401
    """The picture, and in words what it shows, for those who can't see it."""
    from planeproof.notebook.pages import figure_words
    from planeproof.pictures import png

    return png(figure), {"alt": figure_words(figure)}


_PAGES = (
    ("planeproof.judge.verdict", "Verdict", _verdict),
    ("planeproof.judge.verdict", "Finding", _finding),
    ("planeproof.contract.machine", "Machine", _machine),
)
"""Where each type is defined, its name, and what shows a value of it."""
