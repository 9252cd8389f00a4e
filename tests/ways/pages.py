"""The pages of ``planeproof ways`` whose text is kept in ``golden/``. Write them anew, then read the difference.

python -m tests.ways.pages
"""

from pathlib import Path

from planeproof.machines import read_machine, shipped
from planeproof.report import ways_page, ways_table

GOLDEN = Path(__file__).parent / "golden"
IN_FULL = ("vitrine-50", "drawer-front", "pigment-chart", "scroll-case", "two-wings")


def pages() -> dict[str, str]:
    """File name -> text."""
    found = {f"{name}.txt": ways_page(read_machine(name)) for name in IN_FULL}
    found["shipped.txt"] = ways_table([read_machine(name) for name in shipped()])
    return {name: "\n".join(lines) + "\n" for name, lines in found.items()}


if __name__ == "__main__":
    GOLDEN.mkdir(exist_ok=True)
    for name, text in pages().items():
        (GOLDEN / name).write_text(text, encoding="utf-8")
