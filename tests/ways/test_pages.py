from tests.ways.pages import GOLDEN, pages


def test_the_pages_are_told_as_ever() -> None:
    """Each text is the one in ``golden/``; after a change that is meant: python -m tests.ways.pages."""
    kept = {file.name: file.read_text("utf-8") for file in GOLDEN.iterdir()}
    assert pages() == kept


def test_every_line_fits_a_page() -> None:
    """No page of one machine is wider than 100 columns, and headings alone stand at the margin."""
    for name, text in pages().items():
        lines = text.splitlines()
        assert name == "shipped.txt" or max(map(len, lines)) <= 100
        assert [line for line in lines if line.startswith(" ") and not line.startswith("  ")] == []
