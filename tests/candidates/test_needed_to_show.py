"""What some faults need to show: without it they are as right as what they are made from."""

import pytest

from planeproof.candidates.faults import ZOO, Fault
from planeproof.contract import RULES
from planeproof.judge import play
from planeproof.machines import read_machine
from planeproof.scenes.full import full_scene, long_scene
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource

SCENES = 150

SPARED = {
    # the other line standard
    "cycles-of-the-other-standard": "vitrine-50",
    # two bits a pixel
    "found-by-lowest-plane": "vitrine-50",
    "planes-exchanged": "drawer-front",
    # packed storage
    "tile-cleared-first": "mosaic-floor",
    # fractions of a cycle, and a view of other costs
    "fractions-dropped": "vitrine-50",
    "view-charged-as-memory": "vitrine-60",
    # a second bank
    "found-in-other-bank": "twin-niche",
}
"""Fault -> a machine on which it never shows."""

BEYOND_A_BYTE = ("burst-index-in-a-byte", "cell-number-in-a-byte", "bytes-left-in-a-byte", "queue-places-in-a-byte")


def test_a_byte_full_of_reveals_shows_only_after_255_of_them() -> None:
    """No scene of a few pictures shows it, nor one of 256; one of 257 does."""
    fault = fault_of("reveals-counted-in-a-byte")
    machine = read_machine(fault.machine)
    assert not shows(fault, fault.machine)
    broken = [play(long_scene(machine, pictures=many), fault.make).first(frozenset(RULES)) for many in (256, 258)]
    assert [violation and violation.rule for violation in broken] == [None, fault.rule]


def fault_of(name: str) -> Fault:
    """The fault of the zoo with that id."""
    return next(fault for fault in ZOO if fault.id == name)


def shows(fault: Fault, machine: str) -> bool:
    """Whether any of so many scenes on small relatives of the machine breaks a rule."""
    base = read_machine(machine)
    scenes = (recipe(base, RandomSource(f"needed/{fault.id}/{number}")) for number in range(SCENES))
    return any(play(scene, fault.make).first(frozenset(RULES)) is not None for scene in scenes)


@pytest.mark.parametrize("name", SPARED)
def test_it_does_not_show_where_that_is_missing(name: str) -> None:
    """On the machine of the fault some scenes show it, on one that lacks what it needs none does."""
    fault = fault_of(name)
    assert shows(fault, fault.machine)
    assert not shows(fault, SPARED[name])


@pytest.mark.parametrize("name", BEYOND_A_BYTE)
def test_it_shows_only_beyond_255_of_something(name: str) -> None:
    """No small relative shows it; the machine at its own size does."""
    fault = fault_of(name)
    assert not shows(fault, fault.machine)
    assert play(full_scene(read_machine(fault.machine)), fault.make).first(frozenset(RULES)) is not None
