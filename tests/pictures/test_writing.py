import io
from pathlib import Path

import pytest
from PIL import Image

from planeproof.candidates.reference import Delta
from planeproof.pictures import CAUTION, KINDS, Style, Wanted, kind_named, png_of, write_pictures
from tests.pictures.runs import EMPTY, NICHE, SLOPE, SQUARE, course

RUN = course(NICHE, Delta, [SQUARE, EMPTY], [EMPTY, SLOPE])


def test_files_are_numbered_in_the_order_of_the_run(tmp_path: Path) -> None:
    """Every kind of every refresh in which anything happens, then the index, which names each file once."""
    written = [path.name for path in write_pictures(RUN, tmp_path / "new" / "folder", Wanted())]
    names = [f"refresh-{refresh:03d}-{kind.name}.png" for refresh in RUN.eventful for kind in KINDS]
    assert written == [*(f"{number:04d}-{name}" for number, name in enumerate(names, 1)), "index.txt"]
    lines = (tmp_path / "new" / "folder" / "index.txt").read_text("utf-8").splitlines()
    assert [line for line in lines if line.endswith(".png")] == written[:-1]
    assert CAUTION in lines
    assert any("Okabe and Ito" in line for line in lines)
    assert any(("12 x 11" in line and "kept exactly" in line) or "60 x 55" in line for line in lines)


def test_the_first_the_last_and_the_eventful_refreshes_are_drawn() -> None:
    """Refreshes in which nothing is written, said or seen to change are left out."""
    quiet = [m.refresh.number for m in RUN.moments if not m.refresh.bursts and m.refresh.answer is None]
    assert RUN.eventful[0] == 0
    assert RUN.eventful[-1] == len(RUN.moments) - 1
    assert set(quiet) - {0, len(RUN.moments) - 1} <= set(range(len(RUN.moments))) - set(RUN.eventful)
    changed = {m.refresh.number for m in RUN.moments if m.refresh.bursts}
    assert changed <= set(RUN.eventful)


def test_only_what_is_wanted_is_written(tmp_path: Path) -> None:
    """One kind, one refresh, no labels, at a scale of 2."""
    wanted = Wanted(kinds=[kind_named("seen")], refreshes=[1], style=Style(labels=False, scale=2))
    written = list(write_pictures(RUN, tmp_path, wanted))
    assert [path.name for path in written] == ["0001-refresh-001-seen.png", "index.txt"]
    with Image.open(written[0]) as image:
        assert image.size == (32, 16)


@pytest.mark.parametrize(("scale", "size"), [(11, (192, 88)), (5, (80, 40))])
def test_files_have_the_shape_of_the_displays_pixels(scale: int, size: tuple[int, int]) -> None:
    """12 x 11 for each pixel is exact; 5 x 5 is not, and the file's own pixels make up for it."""
    data = png_of(RUN, 0, kind_named("seen"), Style(labels=False, scale=scale))
    with Image.open(io.BytesIO(data)) as image:
        assert image.size == size
        across, down = image.info["dpi"]
        assert abs(16 * 12 / (8 * 11) - size[0] / across / (size[1] / down)) < 0.01
        assert image.info["Title"] == "Seen, refresh 0"


def test_a_refresh_that_was_not_played_is_refused() -> None:
    """An error, not a picture of another one."""
    with pytest.raises(IndexError):
        png_of(RUN, 1000, kind_named("seen"))
    with pytest.raises(KeyError):
        kind_named("film")
