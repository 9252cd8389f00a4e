"""Words on pictures: measured, wrapped and drawn in the face that comes with Pillow, so it looks the same everywhere.

The face has the letters of English and little more; what it lacks is written as a question mark.
"""

from dataclasses import dataclass
from functools import lru_cache

from PIL import Image, ImageDraw, ImageFont

from planeproof.contract import RGB
from planeproof.pictures.colours import TEXT


@dataclass(frozen=True, kw_only=True)
class Word:
    """Text at a place of a picture: ``at`` is (x, y) in pixels, ``anchor`` which point of the text stands there.

    The anchor is two letters as in Pillow: l, m or r for left, middle or right, then t, m or b for top to bottom.
    """

    text: str
    at: tuple[float, float]
    size: int
    anchor: str = "lt"
    colour: RGB = TEXT


@lru_cache(maxsize=64)
def face(size: int) -> ImageFont.FreeTypeFont:
    """The face at ``size`` pixels."""
    found = ImageFont.load_default(size)
    assert isinstance(found, ImageFont.FreeTypeFont)  # every published build of Pillow has FreeType
    return found


def width_of(text: str, size: int) -> int:
    """Pixels that ``text`` takes from left to right."""
    return int(face(size).getlength(_known(text)))


def line_height(size: int) -> int:
    """Pixels from one line of text to the next."""
    return round(size * 1.35)


def wrapped(text: str, size: int, width: int) -> list[str]:
    """``text`` in lines of at most ``width`` pixels; a longer word stands alone."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_of(longer, size) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def write(image: Image.Image, word: Word) -> None:
    """Draw ``word`` on ``image``."""
    draw = ImageDraw.Draw(image)
    draw.text(word.at, _known(word.text), font=face(word.size), fill=word.colour, anchor=word.anchor.replace("t", "a"))


def _known(text: str) -> str:
    return "".join(letter if " " <= letter <= "~" else "?" for letter in text)
