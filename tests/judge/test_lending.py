"""Nothing that a candidate does, to what it is given or in what it raises and returns, reaches the judge or another."""

from collections.abc import Callable, Iterable
from typing import Any

import numpy as np
import pytest

from planeproof.contract import Answer, Burst, Machine, Picture, Timing
from planeproof.judge import CandidateFault, play
from planeproof.judge.lending import own_machine, own_picture
from planeproof.machines import read_machine
from tests.judge.scripted import FULL, LEFT, MACHINE, picture
from tests.judge.test_conversation import SCENE, Good, fault_of, having

SHAPES = [MACHINE, read_machine("vitrine-50"), read_machine("two-wings"), read_machine("scroll-case")]


@pytest.mark.parametrize("machine", SHAPES, ids=lambda machine: machine.name)
def test_a_lent_machine_is_equal_and_shares_no_part(machine: Machine) -> None:
    """It answers the same, and no part that holds fields is the same object."""
    own, loan = own_machine(machine)
    assert own == machine
    assert (own.layout, own.regions, own.patience) == (machine.layout, machine.regions, machine.patience)
    assert [own.view_bursts(side) for side in range(own.sides)] == [
        machine.view_bursts(side) for side in range(own.sides)
    ]
    for name in ("window", "tiles", "map", "colours", "time", "demands", "layout"):
        assert getattr(own, name) is not getattr(machine, name)
    assert not set(map(id, own.regions)) & set(map(id, machine.regions))
    assert not loan.changed


class Incomparable:
    """Can't be compared with anything."""

    __hash__ = None  # type: ignore[assignment]

    def __eq__(self, other: object) -> bool:
        raise RuntimeError("there is nothing like me")


CHANGES: list[Callable[[Machine], None]] = [
    lambda machine: object.__setattr__(machine, "name", "mine now"),
    lambda machine: object.__setattr__(machine, "time", None),
    lambda machine: object.__setattr__(machine, "time", Timing()),
    lambda machine: object.__setattr__(machine.time, "setup", 0),
    lambda machine: object.__setattr__(machine.tiles, "pool", (1,)),
    lambda machine: object.__setattr__(machine.layout, "patterns", 0),
    lambda machine: object.__delattr__(machine.window, "columns"),
    lambda machine: object.__delattr__(machine, "time"),
    lambda machine: vars(machine.demands).clear(),
    lambda machine: object.__setattr__(machine.time, "setup", Incomparable()),
]


@pytest.mark.parametrize("change", CHANGES)
@pytest.mark.parametrize("method", ["start", "offer", "blank"])
def test_a_changed_machine_is_seen_in_the_call_that_changed_it(change: Callable[[Machine], None], method: str) -> None:
    """A field or a part, set, unset or exchanged; and the judge's own machine stays as it was."""

    class Changes(Good):
        def start(self, machine: Machine) -> Iterable[Burst]:
            self.machine = machine
            bursts = super().start(machine)
            return [] if self.changes("start") else bursts

        def offer(self, picture: Picture) -> Answer:
            self.changes("offer")
            return Answer.TAKEN

        def blank(self, cycles: int) -> Iterable[Burst]:
            self.changes("blank")
            return []

        def changes(self, here: str) -> bool:
            if here == method:
                change(self.machine)
            return here == method

    before = repr(MACHINE)
    fault = fault_of(Changes)
    assert (fault.method, fault.refresh) == (method, -1 if method == "start" else 0)
    assert fault.said == "changed the machine it was given"
    assert repr(MACHINE) == before


def test_what_a_machine_works_out_is_no_change() -> None:
    """A candidate may ask it anything."""

    class Asks(Good):
        def start(self, machine: Machine) -> Iterable[Burst]:
            self.known = (machine.patience, machine.must_show, machine.regions, machine.tile_bits)
            return super().start(machine)

    assert len(play(SCENE, Asks).refreshes) == MACHINE.patience + 1


def test_a_changed_picture_is_seen_and_stays_as_it_was() -> None:
    """Its rows exchanged behind its back; and it has an array of its own, which can't be made writable."""

    def exchange(_self: object, shown: Picture) -> Answer:
        object.__setattr__(shown, "rows", np.zeros((2, 8), dtype=np.uint8))
        return Answer.TAKEN

    fault = fault_of(having(offer=exchange))
    assert (fault.method, fault.refresh, fault.said) == ("offer", 0, "changed the picture it was given")
    given = picture(FULL, LEFT)
    own, _ = own_picture(given)
    assert own.rows is not given.rows
    assert np.array_equal(own.rows, given.rows)
    with pytest.raises(ValueError, match="WRITEABLE"):
        own.rows.flags.writeable = True


class _Custom(BaseException):
    """Nothing that `except Exception` catches."""


class _Mute(Exception):
    """An exception that can't say what it is."""

    def __str__(self) -> str:
        raise RuntimeError("no words")


@pytest.mark.parametrize("method", ["__init__", "start", "offer", "blank"])
@pytest.mark.parametrize("error", [_Custom("mine"), GeneratorExit("over"), _Mute(), BaseExceptionGroup("g", [_Mute()])])
def test_whatever_is_raised_is_the_candidates(method: str, error: BaseException) -> None:
    """Not only what `except Exception` would catch, and also what has no text."""

    def fail(*_arguments: object) -> None:
        raise error

    fault = fault_of(having(**{method: fail}))
    assert fault.method == ("the candidate itself" if method == "__init__" else method)
    assert fault.said.startswith(f"raised {type(error).__name__}")
    assert "in fail" in fault.trace


@pytest.mark.parametrize("method", ["__init__", "start", "offer", "blank"])
def test_the_wish_to_stop_is_nobodys_fault(method: str) -> None:
    """Ctrl-C while the candidate runs ends the play."""

    def press(*_arguments: object) -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        play(SCENE, having(**{method: press}))


class _Unspeakable:
    """Has no representation."""

    def __repr__(self) -> str:
        raise RuntimeError("unspeakable")


@pytest.mark.parametrize("returned", [_Unspeakable(), [_Unspeakable()]])
@pytest.mark.parametrize("method", ["start", "offer", "blank"])
def test_what_can_not_be_shown_is_the_candidates_too(method: str, returned: object) -> None:
    """Its own code fails while the message is made."""
    assert "RuntimeError: unspeakable" in fault_of(having(**{method: lambda _self, _what: returned})).said


def test_a_scheduler_that_fails_to_say_what_methods_it_has() -> None:
    """Looking for them is a call of its code as well."""

    class Odd:
        def __getattr__(self, name: str) -> object:
            raise LookupError(name)

    odd: Any = Odd
    assert fault_of(odd).said == "raised LookupError: start"


def test_a_burst_that_is_none_any_more_is_the_candidates_fault() -> None:
    """A burst that was changed behind its back while the others were handed over is not taken for one."""
    kept = Burst(MACHINE.palette_address, b"\0")

    class Rewrites(Good):
        def blank(self, cycles: int) -> Iterable[Burst]:
            object.__setattr__(kept, "data", b"\0")
            yield kept
            object.__setattr__(kept, "data", None)

    with pytest.raises(CandidateFault):  # by the time all are handed over, it is none any more
        play(SCENE, Rewrites)


def test_a_burst_of_another_kind_is_played_as_a_plain_one() -> None:
    """Whatever a subclass makes of its fields."""

    class Loud(bytes):
        def __len__(self) -> int:
            raise RuntimeError("do not count me")

    class Fancy(Burst):
        """A burst of one's own."""

    class Plays(Good):
        def blank(self, cycles: int) -> Iterable[Burst]:
            burst = Fancy(4, b"\0")
            object.__setattr__(burst, "data", Loud(b"\0\0"))
            return [burst]

    played = play(SCENE, Plays)
    assert {type(burst) for refresh in played.refreshes for burst in refresh.bursts} == {Burst}
    assert {type(burst.data) for refresh in played.refreshes for burst in refresh.bursts} == {bytes}


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("address", "4"),
        ("address", 1 << 80),
        ("address", None),
        ("data", b""),
        ("data", None),
        ("data", 3),
        ("step", None),
        ("step", 7),
    ],
)
@pytest.mark.parametrize("method", ["start", "blank"])
def test_a_burst_that_was_forced_is_refused(method: str, field: str, value: object) -> None:
    """What `Burst` would not have let in comes no further than the call."""

    def forced(_self: object, _what: object) -> list[Burst]:
        burst = Burst(4, b"\0")
        object.__setattr__(burst, field, value)
        return [burst]

    fault = fault_of(having(**{method: forced}))
    assert (fault.method, fault.refresh) == (method, -1 if method == "start" else 0)
