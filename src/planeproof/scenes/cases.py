"""Cases: scenes on disk, as versioned JSON, so that what was found can be shown again and kept as a test.

A case holds the whole machine, not its name: it means the same on another computer and after the machine's
own file has changed. Cells that are not written are empty; a cell is written as its bytes in hex, those of
the lowest bit of the pixels first. `case.schema.json` beside this module tells other programs the form.

>>> from planeproof.contract import Machine, Picture, Tiles, Window
>>> machine = Machine(name="tiny", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2)))
>>> scene = Scene.of(machine, [Picture.from_rows(0, [[0] * 8, [255, 129, 0, 0, 0, 0, 129, 255]])])
>>> data = encode_case(Case(scene=scene))
>>> b'"1": "ff810000000081ff"' in data, decode_case(data, "here").scene.pictures[0].occupied
(True, (1,))
"""

import json
import os
import re
import threading
from dataclasses import asdict, dataclass
from decimal import Decimal
from itertools import count
from pathlib import Path
from typing import Annotated, Any, TypeVar

import msgspec
import numpy as np
from msgspec import Meta

from planeproof.contract import TILE_SIDE, Disturbance, Machine, MachineError, Picture, Scene, SceneError
from planeproof.contract.errors import require
from planeproof.machines.complaint import complaint, shown
from planeproof.machines.wire import MachineWire, from_machine, read_cycles, to_machine, write_cycles

VERSION = 1
"""The form of a case that is written here, and the newest that is read."""

_Read = TypeVar("_Read")

_CELL = re.compile("0|[1-9][0-9]{0,5}")
_HEX = re.compile("[0-9a-fA-F]*")
_ELSEWHERE = {"ready": "pictures[*].ready", "disturbance.cycles": "disturbances[*].cycles"}
"""Where a field of a scene stands in the file, if not under its own name."""


class CaseError(ValueError):
    """A case that can't be read. The message says file, field, what stood there and what may stand there."""

    def __init__(self, file: str, text: str) -> None:
        super().__init__(f"{file}: {text}")
        self.file = file


@dataclass(frozen=True, kw_only=True)
class Found:
    """What the scene showed: ``target`` broke ``rule`` under ``profile``; ``note`` is for people."""

    target: str
    rule: str
    profile: str = "strict"
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class Case:
    """A scene and, where it was kept for a fault, what was found with it."""

    scene: Scene
    found: Found | None = None


_CELLS = 'a group such as {"3": "ff818181818181ff"}'
# For the schema alone: reading does not go by these, so that what it says can name cell and length.
_CELL_NUMBERS = {"propertyNames": {"pattern": "^(0|[1-9][0-9]*)$"}}
_CELL_BYTES = Annotated[str, Meta(extra_json_schema={"pattern": "^([0-9a-fA-F]{16})+$"})]


class FoundWire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`Found`."""

    target: str
    rule: str
    profile: str = "strict"
    note: str = ""


class PictureWire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A picture: the refresh from which it is ready, and the bytes of its occupied cells by cell number."""

    ready: int = 0
    cells: Annotated[dict[str, _CELL_BYTES], Meta(description=_CELLS, extra_json_schema=_CELL_NUMBERS)]


class DisturbanceWire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """`Disturbance`."""

    refresh: int
    cycles: int


class CaseWire(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A case as it is written."""

    planeproof_case: Annotated[int, Meta(ge=1, le=VERSION)]
    machine: MachineWire
    pictures: tuple[PictureWire, ...]
    disturbances: tuple[DisturbanceWire, ...] = ()
    found: FoundWire | None = None


class _Version(msgspec.Struct):
    """The only field that every version has."""

    planeproof_case: int


def save_case(path: str | os.PathLike[str], case: Case) -> None:
    """Write ``case`` to ``path``, wholly or not at all: whoever reads it meanwhile finds the old file.

    It outlives this process, however that ends, but is not forced to the disk. Raises `OSError` where the
    folder can't be written.
    """
    target = Path(path)
    part = target.with_name(f".{os.getpid()}-{threading.get_ident()}.part")
    try:
        part.write_bytes(encode_case(case))
        part.replace(target)
    except BaseException:
        part.unlink(missing_ok=True)
        raise


def stem_of(target: str) -> str:
    """How files about a target begin: the last part of its name, letters and digits only."""
    return "".join(letter for letter in target.rpartition(":")[2] if letter.isalnum()) or "candidate"


def keep_case(folder: Path, name: str, case: Case) -> Path:
    """Save ``case`` as ``name.json`` in ``folder``, or under a number if another scene is there: none is ever lost.

    Returns where it is. Raises `OSError`.
    """
    for number in count(1):
        place = folder / f"{name}{f'-{number}' if number > 1 else ''}.json"
        if not place.exists() or _holds(place, case.scene):
            save_case(place, case)
            return place
    raise AssertionError("there is always a next number")


def _holds(place: Path, scene: Scene) -> bool:
    """Whether that file is a case of this very scene."""
    try:
        return encode_case(Case(scene=load_case(place).scene)) == encode_case(Case(scene=scene))
    except CaseError:
        return False


def load_case(path: str | os.PathLike[str]) -> Case:
    """The case in the file ``path``. Raises `CaseError`."""
    file = os.fspath(path)
    try:
        data = Path(path).read_bytes()
    except FileNotFoundError as error:
        raise CaseError(file, "no such file: check the path") from error
    except IsADirectoryError as error:
        raise CaseError(file, "is a directory: name a case in it") from error
    except OSError as error:
        raise CaseError(file, f"can't be read ({error.strerror}): check the path and permissions") from error
    return decode_case(data, file)


def encode_case(case: Case) -> bytes:
    """``case`` as JSON, a line a cell."""
    return msgspec.json.format(msgspec.json.encode(case_wire(case), enc_hook=write_cycles), indent=1) + b"\n"


def case_wire(case: Case) -> CaseWire:
    """The written form of ``case``."""
    scene, found = case.scene, case.found
    return CaseWire(
        planeproof_case=VERSION,
        machine=from_machine(scene.machine),
        pictures=tuple(
            PictureWire(ready=ready, cells=_cells(picture))
            for ready, picture in zip(scene.ready, scene.pictures, strict=True)
        ),
        disturbances=tuple(DisturbanceWire(refresh=d.refresh, cycles=d.cycles) for d in scene.disturbances),
        found=None if found is None else FoundWire(**asdict(found)),
    )


def decode_case(data: bytes, file: str) -> Case:
    """The case in ``data``; ``file`` is what messages call it. Raises `CaseError`."""
    raw = _json(data, file)
    if isinstance(raw, dict) and "planeproof_record" in raw:
        raise CaseError(file, "is a record of a check, which is looked at on its page: name a saved case instead")
    version = _read(raw, _Version, file).planeproof_case
    if version > VERSION:
        newer = f"planeproof_case is {version}: this version reads up to {VERSION}, take a newer Planeproof"
        raise CaseError(file, newer)
    return case_of(_read(raw, CaseWire, file), file)


def case_of(wire: CaseWire, file: str) -> Case:
    """The case of a written form that was found in ``file``. Raises `CaseError`."""
    try:
        machine = to_machine(wire.machine, "unnamed")
    except MachineError as error:
        raise CaseError(file, f"machine.{error}") from error
    try:
        scene = _scene(machine, wire)
    except SceneError as error:
        field = _ELSEWHERE.get(error.field, error.field)
        raise CaseError(file, f"{field} is {shown(error.value)}: {error.allowed}") from error
    found = None if wire.found is None else Found(**msgspec.structs.asdict(wire.found))
    return Case(scene=scene, found=found)


def case_schema() -> str:
    """The text of ``case.schema.json``: a JSON Schema (draft 2020-12) made from what is read here."""
    schema = msgspec.json.schema(CaseWire, schema_hook=cycles_schema)
    head = {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": "Planeproof case"}
    return json.dumps(head | schema, indent=2) + "\n"


def _cells(picture: Picture) -> dict[str, str]:
    digits, text = 2 * TILE_SIDE * picture.depth, picture.rows.tobytes().hex()
    return {str(cell): text[cell * digits : (cell + 1) * digits] for cell in picture.occupied}


def _json(data: bytes, file: str) -> object:
    try:
        return msgspec.json.Decoder(float_hook=Decimal).decode(data)
    except (ValueError, RecursionError) as error:
        what = f"is not whole JSON ({error}): it was cut off or changed by hand, save it anew"
        raise CaseError(file, what) from error


def _read(raw: object, kind: type[_Read], file: str) -> _Read:
    try:
        return msgspec.convert(raw, kind, dec_hook=read_cycles)
    except msgspec.ValidationError as error:
        raise CaseError(file, complaint(error, kind, raw)) from error


def _scene(machine: Machine, wire: CaseWire) -> Scene:
    pictures = tuple(_picture(machine, number, written) for number, written in enumerate(wire.pictures))
    ready = tuple(written.ready for written in wire.pictures)
    disturbances = tuple(Disturbance(written.refresh, written.cycles) for written in wire.disturbances)
    return Scene(machine, pictures, ready, disturbances)


def _picture(machine: Machine, number: int, written: PictureWire) -> Picture:
    depth = machine.tiles.depth
    rows = np.zeros((machine.cells, depth, TILE_SIDE), dtype=np.uint8)
    for key, text in written.cells.items():
        field = f"pictures[{number}].cells.{key}"
        known = _CELL.fullmatch(key) is not None and int(key) < machine.cells
        require(known, SceneError, field, text, f"must be a cell of this window, 0 to {machine.cells - 1}")
        rows[int(key)] = np.frombuffer(_bytes(field, text, TILE_SIDE * depth), np.uint8).reshape(depth, -1)
    return Picture.from_rows(number, rows[:, 0] if depth == 1 else rows)


def _bytes(field: str, text: str, length: int) -> bytes:
    whole = len(text) == 2 * length and _HEX.fullmatch(text) is not None
    allowed = f"must be {length} bytes as {2 * length} hexadecimal digits, not {len(text)} characters"
    require(whole, SceneError, field, text, allowed)
    return bytes.fromhex(text)


def cycles_schema(kind: type) -> dict[str, Any]:
    """The schema of what `read_cycles` reads."""
    return {"type": ["number", "string"], "pattern": "^-?[0-9]+([.][0-9]+|/0*[1-9][0-9]*)?$"}
