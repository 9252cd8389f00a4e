"""A figure: a picture, the words that explain it, and both put together as a PNG."""

import io
from dataclasses import dataclass
from fractions import Fraction

import numpy as np
from PIL import Image
from PIL.PngImagePlugin import PngInfo

from planeproof.pictures.colours import LINE, PAPER
from planeproof.pictures.lettering import Word, line_height, width_of, wrapped, write
from planeproof.pictures.marks import Canvas, Mark, canvas, fill

NARROWEST = 900
"""Pixels that a labelled figure is wide at least, for its words to have room."""

DOTS_PER_INCH = 96


@dataclass(frozen=True, kw_only=True)
class Key:
    """One line of a legend: a mark, or none for a plain remark, and what it means."""

    mark: Mark | None
    text: str


@dataclass(frozen=True, kw_only=True, eq=False)
class Figure:
    """A picture with its words.

    ``body`` is the picture; ``words`` stand on it. ``title`` says what it shows, ``notes`` what to make of it,
    ``legend`` what the marks mean: all four are left out where no labels are asked for. ``pixel`` is the width of a
    pixel of the body by its height, 1 unless the shape of the display's pixels could not be kept.
    """

    title: str
    body: Canvas
    notes: tuple[str, ...] = ()
    legend: tuple[Key, ...] = ()
    words: tuple[Word, ...] = ()
    pixel: Fraction = Fraction(1)


def letter_of(width: int) -> int:
    """The size of lettering that goes with a picture of that width."""
    return max(18, round(width / 55))


def composed(figure: Figure, *, labels: bool = True) -> Image.Image:
    """The figure as one picture; without labels just its body."""
    if not labels:
        return Image.fromarray(figure.body)
    height, width = figure.body.shape[:2]
    letter = letter_of(max(width, NARROWEST))
    margin = letter
    full = max(width, NARROWEST) + 2 * margin
    head = _heading(figure, letter, full - 2 * margin)
    foot, marks = _legend(figure, letter, full - 2 * margin)
    top = margin + sum(line_height(word.size) for word in head) + letter // 2
    below = top + height + letter
    height_of_foot = int(foot[-1].at[1]) + 2 * letter if foot else 0
    sheet = canvas(below + height_of_foot + margin // 2, full)
    left = (full - width) // 2
    sheet[top : top + height, left : left + width] = figure.body
    for mark, y in marks:
        _sample(sheet, mark, below + y, margin, letter)
    image = Image.fromarray(sheet)
    for word in [*_moved(head, margin, margin), *_moved(figure.words, left, top), *_moved(foot, margin, below)]:
        write(image, word)
    return image


def png(figure: Figure, *, labels: bool = True) -> bytes:
    """The figure as the bytes of a PNG file, its title and notes written into it as text."""
    about = PngInfo()
    about.add_text("Title", figure.title)
    if figure.notes:
        about.add_text("Description", " ".join(figure.notes))
    held = io.BytesIO()
    dots = (DOTS_PER_INCH / float(figure.pixel), DOTS_PER_INCH)
    composed(figure, labels=labels).save(held, "PNG", pnginfo=about, dpi=dots, compress_level=6)
    return held.getvalue()


def side_by_side(panels: list[tuple[str, Canvas]], letter: int | None = None) -> tuple[Canvas, tuple[Word, ...]]:
    """Pictures of one height beside one another, each with room for its title above, and the titles.

    A title may be as wide as all panels together if those after it have none.
    """
    height = panels[0][1].shape[0]
    widest = sum(panel.shape[1] for _, panel in panels)
    letter = letter_of(widest) if letter is None else letter
    band = line_height(letter) + letter // 3
    alone = sum(bool(title) for title, _ in panels) == 1
    rooms = [max(panel.shape[1], 0 if alone else width_of(title, letter)) for title, panel in panels]
    sheet = canvas(band + height, sum(rooms) + letter * (len(panels) - 1))
    words, left = [], 0
    for (title, panel), room in zip(panels, rooms, strict=True):
        sheet[band:, left : left + panel.shape[1]] = panel
        words.append(Word(text=title, at=(left, 0), size=letter))
        left += room + letter
    return sheet, tuple(words)


def _heading(figure: Figure, letter: int, width: int) -> list[Word]:
    large = round(letter * 1.35)
    lines = [(line, large) for line in wrapped(figure.title, large, width)]
    lines += [(line, letter) for note in figure.notes for line in wrapped(note, letter, width)]
    return _stacked(lines, 0)


def _stacked(lines: list[tuple[str, int]], left: float) -> list[Word]:
    words, y = [], 0
    for text, size in lines:
        words.append(Word(text=text, at=(left, y), size=size))
        y += line_height(size)
    return words


def _legend(figure: Figure, letter: int, width: int) -> tuple[list[Word], list[tuple[Mark, int]]]:
    """The legend's words, and each mark with how far down it stands."""
    words: list[Word] = []
    marks: list[tuple[Mark, int]] = []
    y = 0
    left = 2 * letter if any(key.mark for key in figure.legend) else 0
    for key in figure.legend:
        if key.mark is not None:
            marks.append((key.mark, y))
        for line in wrapped(key.text, letter, width - left):
            words.append(Word(text=line, at=(left, y), size=letter))
            y += line_height(letter)
    return words, marks


def _sample(sheet: Canvas, mark: Mark, top: int, left: int, letter: int) -> None:
    """A square of the mark, with a line round it, as large as a line of text."""
    side = round(letter * 1.15)
    place = (slice(top, top + side), slice(left, left + side))
    sheet[place] = LINE
    inner = (slice(top + 1, top + side - 1), slice(left + 1, left + side - 1))
    sheet[inner] = PAPER
    fill(sheet, inner, mark, max(1, letter // 24))


def _moved(words: "list[Word] | tuple[Word, ...]", x: int, y: int) -> list[Word]:
    return [
        Word(text=w.text, at=(w.at[0] + x, w.at[1] + y), size=w.size, anchor=w.anchor, colour=w.colour) for w in words
    ]


def stacked(pictures: list[Canvas], gap: int) -> Canvas:
    """Pictures below one another, on paper."""
    width = max(picture.shape[1] for picture in pictures)
    sheet = canvas(sum(picture.shape[0] for picture in pictures) + gap * (len(pictures) - 1), width)
    top = 0
    for picture in pictures:
        sheet[top : top + picture.shape[0], : picture.shape[1]] = picture
        top += picture.shape[0] + gap
    return np.ascontiguousarray(sheet)
