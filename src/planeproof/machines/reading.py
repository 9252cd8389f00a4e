"""Reading a machine from TOML: a user's own file, or one of those that ship.

>>> read_machine("vitrine-50").cells
680
"""

import os
import tomllib
from decimal import Decimal
from importlib import resources
from pathlib import Path

import msgspec

from planeproof.contract import Machine, MachineError
from planeproof.machines.complaint import complaint, nearest
from planeproof.machines.wire import MachineWire, read_cycles, to_machine

_SHIPPED = (
    "vitrine-50",
    "vitrine-60",
    "case-label",
    "drawer-front",
    "pigment-chart",
    "mosaic-floor",
    "two-wings",
    "twin-niche",
    "scroll-case",
    "long-frieze",
    "bench",
    "name-plate",
)


LINES = {"625/50": 312, "525/60": 262}
"""Lines of a refresh where all are alike: half of the 625 or 525 of a frame, rounded down; other names are free."""


class MachineFileError(ValueError):
    """A machine that can't be read: the message says file, field, what stood there, what may stand there."""

    def __init__(self, file: str, text: str) -> None:
        super().__init__(f"{file}: {text}")
        self.file = file


def shipped() -> tuple[str, ...]:
    """The machines that ship: the vitrines, then one a shape of display, then two with room for all."""
    return _SHIPPED


def read_machine(source: str | os.PathLike[str]) -> Machine:
    """The machine in the TOML file ``source``, or the shipped one of that name (``./name`` is always a file).

    Raises `MachineFileError`.
    """
    if source in _SHIPPED:
        shape = resources.files("planeproof.machines") / "shapes" / f"{source}.toml"
        return _parse(shape.read_bytes(), file=f"{source} (shipped)", name=str(source))
    try:
        data = Path(source).read_bytes()
    except (OSError, ValueError) as error:
        raise MachineFileError(os.fspath(source), _unreadable(source, error)) from error
    return _parse(data, file=os.fspath(source), name=Path(source).stem)


def parse_machine(text: str, name: str) -> Machine:
    """The machine that the TOML ``text`` describes, called ``name`` there and in messages.

    A ``name`` in the text itself comes first. Raises `MachineFileError`.
    """
    return _convert(_toml(text, file=name), file=name, name=name)


def _unreadable(source: str | os.PathLike[str], error: Exception) -> str:
    if isinstance(error, FileNotFoundError):
        path = Path(source)
        if isinstance(source, str) and path.name == source and not path.suffix:
            known = f"{nearest(source, _SHIPPED)}those that ship are {', '.join(_SHIPPED)}"
            return f"no machine of that name ships, and there is no such file: {known}"
        return "no such file: check the path, or name a machine that ships"
    if isinstance(error, IsADirectoryError):
        return "is a directory: name a TOML file in it"
    reason = error.strerror if isinstance(error, OSError) else error
    return f"can't be read ({reason}): check the path and its permissions"


def _parse(data: bytes, *, file: str, name: str) -> Machine:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line, byte = data.count(b"\n", 0, error.start) + 1, data[error.start]
        what = f"line {line} holds the byte 0x{byte:02x}, which is not UTF-8: save the file as UTF-8"
        raise MachineFileError(file, what) from error
    return _convert(_toml(text, file=file), file=file, name=name)


def _toml(text: str, *, file: str) -> dict[str, object]:
    try:
        return tomllib.loads(text, parse_float=Decimal)
    except RecursionError as error:
        raise MachineFileError(file, "is nested too deeply: a machine needs tables and lists only") from error
    except ValueError as error:
        lines = text.split("\n")
        end = f"(at line {len(lines)}, column {len(lines[-1]) + 1}, the end of the file)"
        what = str(error).replace("(at end of document)", end)
        raise MachineFileError(file, f"is not TOML: {what}; mend it there") from error


def _convert(raw: dict[str, object], *, file: str, name: str) -> Machine:
    try:
        wire = msgspec.convert(raw, MachineWire, dec_hook=read_cycles)
    except msgspec.ValidationError as error:
        raise MachineFileError(file, complaint(error, MachineWire, raw)) from error
    try:
        machine = to_machine(wire, name)
    except MachineError as error:
        raise MachineFileError(file, str(error)) from error
    _refuse_mixed(machine, file)
    return machine


def _refuse_mixed(machine: Machine, file: str) -> None:
    """Raise `MachineFileError` for the name of one line standard with the lines of the other: one of them is a slip."""
    standard, lines = machine.time.standard, machine.time.lines
    own = LINES.get(standard, lines)
    if lines != own and lines in LINES.values():
        other = next(name for name, count in LINES.items() if count == lines)
        what = (
            f"time.lines is {lines}, and time.standard {standard!r}: that has {own} lines and {other!r} has {lines}; "
        )
        raise MachineFileError(file, f"{what}mend one of them (a standard of neither kind may have any other name)")
