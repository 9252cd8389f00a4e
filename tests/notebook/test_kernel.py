"""In a real kernel: values of ours show themselves as the last line of a cell, without anything being done for it."""

import base64
import io
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import nbformat
import pytest
from nbclient import NotebookClient
from PIL import Image

ROOT = Path(__file__).parents[2]

CELLS = {
    "nothing yet": "import sys\n'planeproof' in sys.modules",
    "fail": (
        "from planeproof import check, read_machine\n"
        "from planeproof.candidates.faults import PaletteBeforePage\n"
        "verdict = check(PaletteBeforePage, machines='vitrine-60', scenes=60, smaller_seconds=0.5)\n"
        "verdict"
    ),
    "finding": "verdict.findings[0]",
    "hung": (
        "from tests.record.verdicts import Raises\ncheck(Raises, machines='name-plate', scenes=4, smaller_seconds=0.5)"
    ),
    "machine": "read_machine('vitrine-60')",
    "figure": (
        "from planeproof.pictures import Style, course_of, figure_of, kind_named\n"
        "figure_of(course_of(verdict.findings[0].play), 0, kind_named('seen'), Style())"
    ),
    "hostile verdict": (
        "from dataclasses import replace\n"
        "HOSTILE = '</pre><script>alert(1)</script><img src=x onerror=alert(1)>&amp;'\n"
        "replace(verdict, target=HOSTILE, machines=(HOSTILE,),"
        " findings=tuple(replace(f, case=HOSTILE) for f in verdict.findings))"
    ),
    "hostile machine": "replace(read_machine('vitrine-60'), name=HOSTILE)",
    "in text": "print(verdict)",
}
"""Name of a cell -> what stands in it."""


@pytest.fixture(scope="module")
def shown() -> dict[str, dict[str, Any]]:
    """What each cell has shown: its output."""
    cells = [nbformat.v4.new_code_cell(source) for source in CELLS.values()]  # type: ignore[no-untyped-call]
    notebook = nbformat.v4.new_notebook(cells=cells)  # type: ignore[no-untyped-call]
    NotebookClient(notebook, timeout=60, kernel_name="python3", resources={"metadata": {"path": str(ROOT)}}).execute()
    return {name: cell.outputs[-1] for name, cell in zip(CELLS, notebook.cells, strict=True)}


class Reader(HTMLParser):
    """The elements of a piece of HTML, as a browser would see them, and its text."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.said = ""
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Keep it."""
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        """Keep it."""
        self.said += data

    @property
    def names(self) -> set[str]:
        """The elements that there are."""
        return {tag for tag, _ in self.tags}


def html(output: dict[str, Any]) -> Reader:
    """The HTML of an output."""
    return Reader(output["data"]["text/html"])


def picture(data: str) -> Image.Image:
    """The picture of that Base64."""
    return Image.open(io.BytesIO(base64.b64decode(data)))


def test_nothing_of_ours_is_loaded_by_the_kernel(shown: dict[str, dict[str, Any]]) -> None:
    """So what follows is the doing of the import alone."""
    assert shown["nothing yet"]["data"]["text/plain"] == "False"


def test_a_verdict_shows_outcome_rules_and_the_smallest_scene(shown: dict[str, dict[str, Any]]) -> None:
    """With the picture of expected and seen, in words too; the plain text stays beside it."""
    page = html(shown["fail"])
    assert "FAIL: a rule is broken" in page.said
    assert "exact-reveal is broken: " in page.said
    assert "The smallest scene found that shows it" in page.said
    assert "What this rests on:" in page.said
    rows = [attributes for tag, attributes in page.tags if tag == "th" and attributes.get("scope") == "row"]
    assert len(rows) == 9
    (image, *_) = [attributes for tag, attributes in page.tags if tag == "img"]
    assert image["alt"]
    assert picture(str(image["src"]).removeprefix("data:image/png;base64,")).width > 100
    assert shown["fail"]["data"]["text/plain"].startswith("<Verdict FAIL; ")


def test_a_finding_and_a_fault_show_their_story(shown: dict[str, dict[str, Any]]) -> None:
    """Just that of the finding; and the candidate's own breach of the contract."""
    assert "What this rests on" not in html(shown["finding"]).said
    assert "<-- here" in html(shown["finding"]).said
    assert "CANDIDATE ERROR: " in html(shown["hung"]).said
    assert "The candidate broke a law of the contract" in html(shown["hung"]).said


def test_a_machine_shows_its_figures(shown: dict[str, dict[str, Any]]) -> None:
    """All of them, under its headline."""
    said = html(shown["machine"]).said
    assert said.startswith("vitrine-60 40 x 17 cells, pool 176")
    assert "must_show" in said


def test_a_figure_is_a_picture_with_words(shown: dict[str, dict[str, Any]]) -> None:
    """A PNG, and for those who can't see it what it shows."""
    output = shown["figure"]
    assert picture(output["data"]["image/png"]).format == "PNG"
    assert len(output["metadata"]["image/png"]["alt"]) > 10


@pytest.mark.parametrize("cell", ["hostile verdict", "hostile machine"])
def test_hostile_names_stay_text(cell: str, shown: dict[str, dict[str, Any]]) -> None:
    """They are there to be read, and add no element and no attribute."""
    page, harmless = html(shown[cell]), html(shown["fail" if cell == "hostile verdict" else "machine"])
    assert "<script>alert(1)</script>" in page.said
    assert page.names == harmless.names
    assert "script" not in page.names
    assert not any(name.startswith("on") for _, attributes in page.tags for name in attributes)


def test_print_is_left_alone(shown: dict[str, dict[str, Any]]) -> None:
    """Only what a cell shows is shown otherwise."""
    assert shown["in text"]["text"].startswith("<Verdict FAIL; ")
