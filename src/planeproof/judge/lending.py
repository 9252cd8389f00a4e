"""What a candidate is given is a copy of its own, and it is seen whether it changed it.

A frozen value can be changed behind its back (``object.__setattr__``). Whatever a candidate does to its copy, the
judge and the next scheduler read theirs. Asked after every call, so it must cost next to nothing.
"""

import copy
from collections.abc import Hashable, Sequence
from dataclasses import fields, is_dataclass
from functools import lru_cache
from operator import attrgetter, is_
from typing import Any

from planeproof.contract import Machine, Picture

_MACHINE_FIELDS = tuple(field.name for field in fields(Machine))
_PICTURE_FIELDS = tuple(field.name for field in fields(Picture))


class Loan:
    """A value that was handed over, made of ``parts``; ``changed`` tells whether it is not as it was then.

    ``held``: the value, its parts and what its fields hold, which whoever has it may keep.
    """

    def __init__(self, value: object, names: tuple[str, ...], parts: Sequence[object] = ()) -> None:
        # Only its fields: what it works out later and keeps (a cached property) is no change.
        self._value, self._fields = value, attrgetter(*names)
        self._before: tuple[Any, ...] = self._fields(value)
        self._objects: tuple[Any, ...] = (value, *parts)
        self.held: tuple[object, ...] = (*self._objects, *self._before)
        self._parts = [vars(part) for part in parts]
        self._parts_before = [dict(part) for part in self._parts]

    @property
    def marked(self) -> bool:
        """Whether something that it never had hangs on it: another scheduler that held it too would find that there."""
        return any(vars(one).keys() - _own_names(one.__class__) for one in self._objects)

    @property
    def changed(self) -> bool:
        """Whether a field is another object than before, or one of a part another value."""
        try:
            same = all(map(is_, self._fields(self._value), self._before))
            return not same or self._parts != self._parts_before
        except Exception:  # a field is gone, or holds something that can't be compared
            return True


@lru_cache
def _own_names(kind: Hashable) -> frozenset[str]:
    assert isinstance(kind, type)
    return frozenset({*dir(kind), *(field.name for field in fields(kind))})


def own_machine(machine: Machine) -> tuple[Machine, Loan]:
    """A machine equal to ``machine`` that shares no part with it but what can't be changed."""
    own = copy.copy(machine)
    mine = vars(own)
    parts = {name: copy.copy(mine[name]) for name in (*_MACHINE_FIELDS, "layout") if is_dataclass(mine.get(name))}
    mine |= parts
    mine.pop("regions", None)  # many values, which hardly any scheduler asks for: worked out anew if one does
    return own, Loan(own, _MACHINE_FIELDS, list(parts.values()))


def own_picture(picture: Picture) -> tuple[Picture, Loan]:
    """A picture equal to ``picture``; its rows are another view of the same read-only bytes."""
    own = Picture(picture.number, picture.rows.view())
    vars(own)["occupied"] = picture.occupied  # which the picture keeps, so that it is worked out once for all plays
    return own, Loan(own, _PICTURE_FIELDS)
