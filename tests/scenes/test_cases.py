"""Cases on disk, there and back, and what a person is told whose case can't be read."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planeproof.contract import Colours, Disturbance, Machine, Picture, Scene, Tiles, Window
from planeproof.contract.picture import same_rows
from planeproof.scenes import cases
from planeproof.scenes.cases import Case, CaseError, Found, decode_case, encode_case, load_case, save_case
from tests.strategies.machines import machines

MACHINE = Machine(name="tiny", window=Window(columns=2, rows=2), tiles=Tiles(count=8, pool=(1, 2, 3, 5)))
FOUND = Found(target="mine.py:Mine", rule="whole-reveal", profile="seen", note="the first of the run")


def tiny_scene() -> Scene:
    """Two pictures, the second of a single cell, and a lost blanking."""
    pictures = [Picture.from_rows(0, [[0xFF] * 8] * 4), Picture.from_rows(1, [[0] * 8] * 3 + [list(range(8))])]
    return Scene.of(MACHINE, pictures, ready=[0, 2], disturbances=[Disturbance(4, 0)])


def written() -> dict[str, Any]:
    """The case of that scene as plain JSON."""
    form: dict[str, Any] = json.loads(encode_case(Case(scene=tiny_scene(), found=FOUND)))
    return form


def same(one: Case, other: Case) -> bool:
    """Whether two cases hold the same, byte for byte."""
    a, b = one.scene, other.scene
    plain = (a.machine, a.ready, a.disturbances, one.found) == (b.machine, b.ready, b.disturbances, other.found)
    return plain and same_rows(a.pictures, b.pictures)


@st.composite
def some_cases(draw: st.DrawFn) -> Case:
    """Up to three pictures on any machine, ready at any time, with disturbances and something found or not."""
    machine = draw(machines())
    size = machine.cells * machine.tiles.depth * 8
    shape = (machine.cells, 8) if machine.tiles.depth == 1 else (machine.cells, machine.tiles.depth, 8)
    sparse = st.binary(min_size=size, max_size=size) | st.just(bytes(size))
    blocks = draw(st.lists(sparse, max_size=3))
    pictures = [Picture.from_rows(0, memoryview(block).cast("B", shape)) for block in blocks]
    ready = sorted(draw(st.lists(st.integers(0, 99), min_size=len(blocks), max_size=len(blocks))))
    cuts = draw(st.dictionaries(st.integers(0, 99), st.integers(0, machine.blank_cycles - 1), max_size=3))
    found = draw(st.none() | st.builds(Found, target=st.text(), rule=st.text(), profile=st.text(), note=st.text()))
    scene = Scene.of(machine, pictures, ready, [Disturbance(*cut) for cut in cuts.items()])
    return Case(scene=scene, found=found)


@given(some_cases())
def test_a_case_survives_being_written(case: Case) -> None:
    """What is written reads as the same machine, pictures, times, disturbances and finding."""
    assert same(decode_case(encode_case(case), "here"), case)


def test_a_case_is_written_as_documented() -> None:
    """The form of version 1, field by field: old cases must stay readable."""
    form = written()
    assert list(form) == ["planeproof_case", "machine", "pictures", "disturbances", "found"]
    assert form["planeproof_case"] == 1
    assert form["machine"]["name"] == "tiny"
    assert form["machine"]["tiles"]["pool"] == [{"first": 1, "count": 3}, {"first": 5, "count": 1}]
    assert form["machine"]["time"]["cycles_per_line"] == "448/5"
    assert form["pictures"][0] == {"ready": 0, "cells": {str(cell): "ff" * 8 for cell in range(4)}}
    assert form["pictures"][1] == {"ready": 2, "cells": {"3": "0001020304050607"}}
    assert form["disturbances"] == [{"refresh": 4, "cycles": 0}]
    found = {"target": "mine.py:Mine", "rule": "whole-reveal", "profile": "seen", "note": "the first of the run"}
    assert form["found"] == found


def test_a_cell_of_two_bits_a_pixel_is_written_low_bit_first() -> None:
    """The 8 bytes of the lowest bit of the pixels come first, then those of the next."""
    colours = Colours(meaning=((0, 0, 0), (9, 9, 9), (99, 99, 99), (255, 255, 255)), inks=(1, 2, 3))
    tiles = Tiles(count=4, pool=(1, 2), planes=4, depth=2)
    machine = Machine(name="deep", window=Window(columns=1, rows=1), tiles=tiles, colours=colours)
    scene = Scene.of(machine, [Picture.from_rows(0, [[[1] * 8, [2] * 8]])])
    form = json.loads(encode_case(Case(scene=scene)))
    assert form["pictures"][0]["cells"] == {"0": "01" * 8 + "02" * 8}


def test_what_may_be_left_out() -> None:
    """A case written by hand needs no times, disturbances, finding, nor a machine's defaults."""
    form = {
        "planeproof_case": 1,
        "machine": {
            "window": {"columns": 2, "rows": 2},
            "tiles": {"count": 8, "pool": [{"first": 1, "count": 3}]},
            "time": {"cycles_per_line": 89.6},
        },
        "pictures": [{"cells": {}}],
    }
    case = decode_case(json.dumps(form).encode(), "here")
    assert (case.scene.ready, case.scene.disturbances, case.found) == ((0,), (), None)
    assert case.scene.machine.time.cycles_per_line == MACHINE.time.cycles_per_line
    assert case.scene.pictures[0].occupied == ()


def test_a_case_survives_the_disk(tmp_path: Path) -> None:
    """Saved and loaded it is the same, over an older one too, and nothing else is left in the folder."""
    file = tmp_path / "found.json"
    file.write_text("an older one", encoding="utf-8")
    case = Case(scene=tiny_scene(), found=FOUND)
    save_case(file, case)
    assert same(load_case(file), case)
    assert same(load_case(str(file)), case)
    assert list(tmp_path.iterdir()) == [file]


def test_a_save_that_fails_leaves_the_older_case(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The file changes whole or not at all: an interruption half-way leaves what was there, and no rubbish."""
    file = tmp_path / "found.json"
    save_case(file, Case(scene=tiny_scene()))

    def half(path: Path, data: bytes) -> int:
        with path.open("wb") as stream:
            stream.write(data[: len(data) // 2])
        raise KeyboardInterrupt

    monkeypatch.setattr(Path, "write_bytes", half)
    with pytest.raises(KeyboardInterrupt):
        save_case(file, Case(scene=tiny_scene(), found=FOUND))
    assert load_case(file).found is None
    assert list(tmp_path.iterdir()) == [file]


def complaint(data: bytes) -> str:
    """What is said about a case that is written so."""
    with pytest.raises(CaseError) as caught:
        decode_case(data, "it.json")
    return str(caught.value)


PLACES: list[tuple[list[str | int], object, str]] = [
    (["planeproof_case"], 2, "planeproof_case is 2: this version reads up to 1, take a newer Planeproof"),
    (["planeproof_case"], 0, "planeproof_case is 0: must be a whole number from 1 to 1"),
    (["planeproof_case"], "1", "planeproof_case is '1': must be a whole number"),
    (["wings"], 2, "wings is unknown (2 stands there): the keys here are planeproof_case, machine, pictures"),
    (["machine", "wndow"], 2, "machine.wndow is unknown (2 stands there): did you mean 'window'?"),
    (["machine", "tiles", "count"], None, "machine.tiles.count is None: must be a whole number"),
    (["machine", "tiles", "count"], 3, "machine.tiles.pool is 3: must be a whole number from 0 to 2"),
    (["machine", "time", "reserve"], "a lot", "machine.time.reserve is 'a lot': must be an exact number"),
    (["pictures"], {}, "pictures is {}: must be a list"),
    (["pictures", 1], 7, "pictures[1] is 7: must be a group with the keys ready, cells"),
    (["pictures", 1, "cells"], [], 'pictures[1].cells is []: must be a group such as {"3": "ff818181818181ff"}'),
    (["pictures", 1, "cells", "2"], 5, "pictures[1].cells.2 is 5: must be text in quotes"),
    (["pictures", 1, "cells", "2"], "zz" * 8, "pictures[1].cells.2 is 'zzzzzzzzzzzzzzzz': must be 8 bytes as 16"),
    (["pictures", 1, "cells", "2"], "ff " * 5 + "f", "pictures[1].cells.2 is 'ff ff ff ff ff f': must be 8 bytes"),
    (["pictures", 1, "cells", "2"], "ff" * 7, "pictures[1].cells.2 is 'ffffffffffffff': must be 8 bytes as 16"),
    (["pictures", 1, "cells", "4"], "ff" * 8, "pictures[1].cells.4 is 'ffffffffffffffff': must be a cell of this"),
    (["pictures", 1, "cells", "-1"], "ff" * 8, "pictures[1].cells.-1 is 'ffffffffffffffff': must be a cell of this"),
    (["pictures", 1, "cells", "03"], "ff" * 8, "pictures[1].cells.03 is 'ffffffffffffffff': must be a cell of this"),
    (["pictures", 0, "ready"], 3, "pictures[*].ready is (3, 2): must be 0 or more and must not decrease"),
    (["disturbances", 0, "refresh"], -1, "disturbances is [-1]: must be in order, refresh 0 or later"),
    (["disturbances", 0, "cycles"], -1, "disturbances[*].cycles is -1: must be 0..7883"),
    (["disturbances", 0, "cycles"], 1.5, "disturbances[0].cycles is 1.5: must be a whole number"),
    (["found"], "it", "found is 'it': must be a group with the keys target, rule, profile, note or null"),
    (["found", "rule"], 3, "found.rule is 3: must be text in quotes"),
]


@pytest.mark.parametrize(("steps", "value", "said"), PLACES)
def test_a_field_that_is_wrong(steps: list[str | int], value: object, said: str) -> None:
    """The message says file, field with its path, what stood there and what may stand there."""
    form = written()
    place: Any = form
    for step in steps[:-1]:
        place = place[step]
    place[steps[-1]] = value
    assert complaint(json.dumps(form).encode()).startswith(f"it.json: {said}")


@pytest.mark.parametrize("field", ["planeproof_case", "machine", "pictures"])
def test_a_field_that_is_missing(field: str) -> None:
    """What a case can't do without is named."""
    form = written()
    del form[field]
    assert complaint(json.dumps(form).encode()).startswith(f"it.json: {field} is missing: add it, ")


def test_a_newer_case_is_told_so_whatever_else_it_holds() -> None:
    """A form of the future is not judged by the rules of this one."""
    said = complaint(b'{"planeproof_case": 7, "machine": "somewhere else"}')
    assert said == "it.json: planeproof_case is 7: this version reads up to 1, take a newer Planeproof"


def test_a_case_that_was_cut_off_anywhere() -> None:
    """Whatever part of a case is there, it does not pass for a case, and never falls over."""
    data = encode_case(Case(scene=tiny_scene())).rstrip()
    assert {complaint(data[:end]).split(" (")[0] for end in range(len(data))} == {"it.json: is not whole JSON"}


@pytest.mark.parametrize("data", [b"[1, 2]", b"3", b'"text"', b"null"])
def test_what_is_no_object(data: bytes) -> None:
    """JSON that is no object is told what a case is."""
    assert complaint(data).startswith("it.json: the whole is ")


@pytest.mark.parametrize("data", [b"\xff\xfe", b'{"a": "\xff"}', b"[" * 100_000, b"{} {}", b'{"a": 1e}'])
def test_what_is_not_json(data: bytes) -> None:
    """Wrong bytes, nesting without end and trailing text are told to be no JSON."""
    assert complaint(data).startswith("it.json: is not whole JSON (")


def test_what_is_no_readable_file(tmp_path: Path) -> None:
    """A missing file and a directory are told for what they are."""
    with pytest.raises(CaseError, match=r"gone\.json: no such file"):
        load_case(tmp_path / "gone.json")
    with pytest.raises(CaseError, match="is a directory"):
        load_case(tmp_path)
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(CaseError, match=r"can't be read \(Not a directory\)"):
        load_case(tmp_path / "file" / "it.json")


def test_the_version_that_is_written_is_the_newest_that_is_read() -> None:
    """A case of today is read today."""
    assert written()["planeproof_case"] == cases.VERSION
