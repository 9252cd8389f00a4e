"""Outside a notebook nothing is done for notebooks; inside, types are registered by name alone."""

import subprocess
import sys

from IPython.core.formatters import DisplayFormatter

from planeproof import notebook

LOADED = """
import sys
{before}
import planeproof
print(sorted(name for name in sys.modules if name.startswith(("planeproof", "IPython.core"))))
"""


def loaded(before: str = "") -> str:
    """What an import of planeproof has loaded after ``before``, of ours and of IPython's core."""
    command = [sys.executable, "-c", LOADED.format(before=before)]
    return subprocess.run(command, capture_output=True, text=True, timeout=60, check=True).stdout.strip()


def test_outside_a_notebook_an_import_loads_nothing_more() -> None:
    """Neither the notebook's part nor IPython."""
    assert loaded() == "['planeproof']"


def test_ipython_alone_is_no_notebook() -> None:
    """Some libraries import it: without a running shell there is nothing to do."""
    assert "planeproof.notebook" not in loaded("import IPython")


def test_an_ipython_that_is_only_half_there_does_no_harm() -> None:
    """As while it is itself being imported."""
    assert loaded("import types; sys.modules['IPython'] = types.ModuleType('IPython')") == "['planeproof']"


class Shell:
    """As much of IPython's shell as is needed."""

    def __init__(self) -> None:
        self.display_formatter = DisplayFormatter()


def test_registering_twice_is_registering_once() -> None:
    """For %load_ext after an import; each type has a formatter, and no other type has."""
    shell = Shell()
    notebook.load_ipython_extension(shell)
    notebook.register(shell)
    for_html = shell.display_formatter.formatters["text/html"]
    named = {name for _, name in for_html.deferred_printers}
    assert named | {kind.__name__ for kind in for_html.type_printers} == {"Verdict", "Finding", "Machine"}
    assert for_html(object()) is None


def test_the_names_registered_are_those_of_the_types() -> None:
    """A type that moves elsewhere would not be shown any more, in silence."""
    from planeproof.contract import Machine  # noqa: PLC0415 -- beside what is claimed of them
    from planeproof.judge import Finding, Verdict  # noqa: PLC0415
    from planeproof.pictures import Figure  # noqa: PLC0415

    shell = Shell()
    notebook.register(shell)
    formatters = shell.display_formatter.formatters
    assert [formatters["text/html"].lookup_by_type(kind) for kind in (Verdict, Finding, Machine)]
    assert formatters["image/png"].lookup_by_type(Figure)
