"""What a person is told about a file whose fields are wrong: where, what stood there, what may stand there.

Msgspec says where it stopped and what type it wanted. The value comes from the file, and the words for what
may stand there from the wire types themselves, so that they can't part from what is read.
"""

import re
from collections.abc import Sequence
from difflib import get_close_matches

from msgspec import ValidationError, inspect

_SAID = re.compile(r"(?P<what>.*?)(?: - at `\$\.?(?P<path>.*)`)?", re.DOTALL)
_KEY = re.compile(r"Object (?P<fault>contains unknown|missing required) field `(?P<key>.*)`", re.DOTALL)
_STEP = re.compile(r"\[(\d+|\.\.\.)\]|([^.\[\]]+)")
_WIDEST = 80


def complaint(error: ValidationError, root: type, raw: object) -> str:
    """One sentence about ``error``, met when ``raw`` (what the file holds) was read as a ``root``."""
    said = _SAID.fullmatch(str(error))
    what, path = (said["what"], said["path"] or "") if said else (str(error), "")
    field, kind, value = "", inspect.type_info(root), raw
    for index, name in _STEP.findall(path):
        if name:
            field, kind = _join(field, name), _kind_of(kind, name)
            value = value[name] if isinstance(value, dict) else None
        else:
            key = _culprit(value) if index == "..." else int(index)
            field = f"{field}[{key}]" if isinstance(key, int) else _join(field, str(key))
            kind, value = _kind_within(kind), value[key]  # type: ignore[index]
    missed = _KEY.fullmatch(what)
    if missed is None:
        return f"{field or 'the whole'} is {shown(value)}: must be {_allowed(kind)}"
    key = missed["key"]
    if missed["fault"] == "missing required":
        return f"{_join(field, key)} is missing: add it, {_allowed(_kind_of(kind, key))}"
    there = shown(value.get(key) if isinstance(value, dict) else None)
    return f"{_join(field, key)} is unknown ({there} stands there): {_suggestion(key, _keys(kind))}"


def nearest(word: str, words: Sequence[str]) -> str:
    """``did you mean 'x'? `` where one of ``words`` is close to ``word``, else nothing."""
    close = get_close_matches(word, words, n=1)
    return f"did you mean {close[0]!r}? " if close else ""


def shown(value: object) -> str:
    """``value`` as a person may read it in a message: short, and a number as it is written."""
    text = str(value) if type(value).__name__ == "Decimal" else repr(value)
    return text if len(text) <= _WIDEST else f"{text[: _WIDEST - 4]} ..."


def _suggestion(key: str, keys: Sequence[str]) -> str:
    return f"{nearest(key, keys)}the keys here are {', '.join(keys)}"


def _join(field: str, key: str) -> str:
    return f"{field}.{key}" if field else key


def _culprit(value: object) -> str:
    """The key that msgspec leaves out where the keys of an object are free: its value is no text."""
    assert isinstance(value, dict)
    return next(str(key) for key, text in value.items() if not isinstance(text, str))


def _bare(kind: inspect.Type) -> inspect.Type:
    """``kind`` without its description and without "or nothing"."""
    if isinstance(kind, inspect.Metadata):
        return _bare(kind.type)
    if isinstance(kind, inspect.UnionType):
        return _bare(next(option for option in kind.types if not isinstance(option, inspect.NoneType)))
    return kind


def _fields(kind: inspect.Type) -> dict[str, inspect.Type]:
    bare = _bare(kind)
    return {f.encode_name: f.type for f in bare.fields} if isinstance(bare, inspect.StructType) else {}


def _keys(kind: inspect.Type) -> list[str]:
    return list(_fields(kind))


def _kind_of(kind: inspect.Type, key: str) -> inspect.Type:
    return _fields(kind).get(key, inspect.AnyType())


def _kind_within(kind: inspect.Type) -> inspect.Type:
    bare = _bare(kind)
    if isinstance(bare, inspect.DictType):
        return bare.value_type
    return bare.item_type if isinstance(bare, inspect.CollectionType) else inspect.AnyType()


def _allowed(kind: inspect.Type) -> str:
    """What may stand where ``kind`` is read."""
    if isinstance(kind, inspect.Metadata):
        words = (kind.extra_json_schema or {}).get("description")
        return str(words) if words else _allowed(kind.type)
    if isinstance(kind, inspect.UnionType):
        return " or ".join("null" if isinstance(o, inspect.NoneType) else _allowed(o) for o in kind.types)
    if isinstance(kind, inspect.EnumType):
        return "one of " + ", ".join(repr(member.value) for member in kind.cls)
    if isinstance(kind, inspect.IntType):
        return f"a whole number{_bounds(kind)}"
    if isinstance(kind, inspect.StructType):
        return f"a group with the keys {', '.join(_keys(kind))}"
    return _WORDS.get(type(kind), "something else")


def _bounds(kind: inspect.IntType) -> str:
    if kind.ge is None:
        return ""
    return f", {kind.ge} or more" if kind.le is None else f" from {kind.ge} to {kind.le}"


_WORDS: dict[type[inspect.Type], str] = {
    inspect.StrType: "text in quotes",
    inspect.BoolType: "true or false",
    inspect.DictType: "a group of keys with values",
    inspect.ListType: "a list",
    inspect.VarTupleType: "a list",
}
