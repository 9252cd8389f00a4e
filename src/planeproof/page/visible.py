"""Text from elsewhere, so that a page shows what is in it and nothing in it can act.

Markup is the template's affair, which escapes everything. What is left are characters that show nothing themselves
and change how others are read: controls, marks that turn the direction of writing round, halves of pairs.

>>> shown("safe\\u202etxt.exe")
'safe⟨U+202E⟩txt.exe'
"""

import unicodedata

_UNSEEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
_LAYOUT = frozenset("\n\t")


def shown(text: str) -> str:
    """``text`` with every character that can't be seen written out by its number."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_written(sign) for sign in text)


def _written(sign: str) -> str:
    if sign in _LAYOUT or unicodedata.category(sign) not in _UNSEEN:
        return sign
    return f"⟨U+{ord(sign):04X}⟩"
