"""A run as JSON lines: a header, then one line a hunt as it ends, so that a run that was stopped goes on.

The header says what the rows depend on: the limits, and the code that was measured. Faults, engines and seeds are in
the rows, so that a run may be widened. A last line that was cut off while it was written is dropped.
"""

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import IO, Self

import msgspec

import planeproof.power
from planeproof.power.detection import Detection
from planeproof.power.hunt import Limits

UNTOUCHED = frozenset({"command", "report", "ways"})
"""Packages that no hunt depends on: a journal is gone on with when only these have changed."""

VERSION = 1
"""The form that is written here, and the only one that is read."""


class JournalError(ValueError):
    """A journal that can't be gone on with. The message says file, what stood there and what to do."""


@dataclass(frozen=True, kw_only=True)
class Header:
    """What all rows of a journal have in common."""

    planeproof_power: int
    scenes: int
    seconds: float
    code: str

    @classmethod
    def of(cls, limits: Limits) -> Self:
        """The header of a run of this code with these limits."""
        return cls(planeproof_power=VERSION, scenes=limits.scenes, seconds=limits.seconds, code=code())


class Journal:
    """Context manager around the file ``path``: ``rows`` are those that it held already, `add` writes another.

    Raises `JournalError` where the file is of another run, `OSError` where it can't be written.
    """

    def __init__(self, path: Path, limits: Limits) -> None:
        self._path = path
        self._header = Header.of(limits)
        self.rows: tuple[Detection, ...] = ()

    def __enter__(self) -> Self:
        held = self._path.read_bytes() if self._path.exists() else b""
        whole = held[: held.rfind(b"\n") + 1]
        self.rows = self._read(whole.splitlines())
        self._path.parent.mkdir(parents=True, exist_ok=True)
        self._file: IO[bytes] = self._path.open("r+b" if held else "wb")
        self._file.truncate(len(whole))
        self._file.seek(len(whole))
        if not whole:
            self._write(self._header)
        return self

    def __exit__(self, *_exception: object) -> None:
        self._file.close()

    def add(self, row: Detection) -> None:
        """Write a row; it outlives this process, however that ends."""
        self._write(row)

    def _write(self, line: Header | Detection) -> None:
        self._file.write(msgspec.json.encode(asdict(line)) + b"\n")
        self._file.flush()

    def _read(self, lines: Sequence[bytes]) -> tuple[Detection, ...]:
        if not lines:
            return ()
        try:
            header = msgspec.json.decode(lines[0], type=Header)
        except msgspec.MsgspecError as error:
            raise JournalError(f"{self._path}: its first line is no header of a run ({error}): name another") from error
        if header != self._header:
            raise JournalError(
                f"{self._path}: it is of another run ({_said(header)}; this is {_said(self._header)}): "
                "name another, or delete it to begin anew"
            )
        return tuple(self._row(number, line) for number, line in enumerate(lines[1:], 2))

    def _row(self, number: int, line: bytes) -> Detection:
        try:
            return msgspec.json.decode(line, type=Detection)
        except msgspec.MsgspecError as error:
            raise JournalError(f"{self._path}: line {number} is no row ({error}): delete that line") from error


@cache
def code() -> str:
    """Twelve hexadecimal digits that stand for all modules and data that a hunt depends on, as they are on the disk."""
    root, digest = Path(planeproof.power.__file__).parent.parent, sha256()
    for file in sorted(root.rglob("*")):
        if file.suffix in {".py", ".toml", ".json"} and file.relative_to(root).parts[0] not in UNTOUCHED:
            digest.update(file.relative_to(root).as_posix().encode() + b"\0" + file.read_bytes() + b"\0")
    return digest.hexdigest()[:12]


def _said(header: Header) -> str:
    return f"{header.scenes} scenes, {header.seconds:g} seconds, code {header.code}"
