"""A second scheduler in the state of the first, for going on in two ways from one moment.

It is made by way of bytes (`pickle`), which share nothing: a deep copy would share what it can't copy, a function that
remembers the first scheduler for one, and the two would meddle with each other unseen. So a scheduler that holds a
generator, a lock, a file or a function of its own is refused, and whoever asks must play again from the beginning.
"""

import io
import pickle
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray


class NotDuplicable(Exception):
    """This scheduler can't be had twice; the text says why."""


@dataclass(frozen=True, eq=False)
class Duplicable:
    """A scheduler as bytes. ``lent`` are the objects that it may hold but not change: all duplicates hold those."""

    held: bytes
    lent: Mapping[int, object]

    @classmethod
    def of(cls, scheduler: object, lent: Mapping[int, object]) -> "Duplicable":
        """``scheduler`` as it is now; ``lent`` maps the id of each object to the object. Raises `NotDuplicable`."""
        into = io.BytesIO()
        try:
            _Writer(into, lent).dump(scheduler)
        except Exception as error:
            raise NotDuplicable(f"{type(error).__name__}: {error}") from error
        return cls(into.getvalue(), lent)

    def again(self) -> object:
        """Another scheduler in that state. Raises `NotDuplicable` where it can't be put together again."""
        try:
            return _Reader(io.BytesIO(self.held), self.lent).load()
        except Exception as error:
            raise NotDuplicable(f"{type(error).__name__}: {error}") from error


class _Writer(pickle.Pickler):
    def __init__(self, into: io.BytesIO, lent: Mapping[int, object]) -> None:
        super().__init__(into, protocol=pickle.HIGHEST_PROTOCOL)
        self._lent = lent

    def persistent_id(self, value: object) -> int | None:
        return id(value) if id(value) in self._lent else None

    def reducer_override(self, value: object) -> Any:  # noqa: ANN401 -- as pickle has it
        # Rows that were lent can't be written to, and that must be so in the duplicate.
        if type(value) is np.ndarray and not value.flags.writeable and not value.dtype.hasobject:
            return _unwritable, (value.tobytes(), value.dtype, value.shape)
        return NotImplemented


class _Reader(pickle.Unpickler):
    def __init__(self, source: io.BytesIO, lent: Mapping[int, object]) -> None:
        super().__init__(source)
        self._lent = lent

    def persistent_load(self, key: int) -> object:
        return self._lent[key]


def _unwritable(data: bytes, kind: np.dtype[Any], shape: tuple[int, ...]) -> NDArray[Any]:
    return np.frombuffer(data, dtype=kind).reshape(shape)
