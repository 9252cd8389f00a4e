"""The page as HTML: one file that needs nothing else and may load nothing else."""

import base64
from functools import cache
from hashlib import sha256
from importlib.resources import files

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from planeproof.judge import Verdict
from planeproof.page.bars import DOWN, LONG, UP
from planeproof.page.content import page_of
from planeproof.page.shots import Gallery
from planeproof.page.visible import shown
from planeproof.pictures.blanking import Part
from planeproof.pictures.compared import MARKS, WORDS


def page_html(verdict: Verdict) -> str:
    """The page of ``verdict`` as the text of an HTML file, to be saved as UTF-8."""
    gallery = Gallery()
    page = page_of(verdict, gallery)
    style, script = _part("page.css"), _part("page.js")
    return (
        _environment()
        .get_template("page.html")
        .render(
            page=page,
            pictures=tuple(gallery),
            parts=tuple((part.name.lower(), part.value) for part in Part),
            marks=tuple((value, WORDS[value]) for value in MARKS),
            bar={"long": LONG, "up": UP, "down": DOWN},
            style=Markup(style),  # ours, as it stands: its digest below is all that lets it work
            script=Markup(script),
            policy=_policy(style, script),
        )
    )


def _policy(style: str, script: str) -> str:
    """What the page may do: use its own style, script and pictures, and nothing else at all."""
    rules = {
        "default-src": "'none'",
        "style-src": _digest(style),
        "script-src": _digest(script),
        "img-src": "data:",
        "base-uri": "'none'",
        "form-action": "'none'",
    }
    return "; ".join(f"{name} {allowed}" for name, allowed in rules.items())


def _digest(text: str) -> str:
    return f"'sha256-{base64.b64encode(sha256(text.encode()).digest()).decode('ascii')}'"


@cache
def _part(name: str) -> str:
    return files("planeproof.page").joinpath(name).read_text("utf-8")


@cache
def _environment() -> Environment:
    return Environment(
        loader=PackageLoader("planeproof.page", ""),
        autoescape=True,
        undefined=StrictUndefined,
        finalize=_visible,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _visible(value: object) -> object:
    """Every text that the template writes passes here, and is escaped afterwards."""
    return shown(value) if type(value) is str else value
