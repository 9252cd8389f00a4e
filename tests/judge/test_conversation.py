"""Whatever a candidate does instead of keeping the contract is its own fault, and is said so."""

import contextlib
import signal
import time
from collections.abc import Callable, Iterable, Iterator
from itertools import count
from typing import Any

import numpy as np
import pytest

from planeproof.contract import Answer, Burst, Machine, Picture, Scene
from planeproof.judge import CandidateFault, CandidateHung, play
from planeproof.judge.conversation import Conversation, _OutOfTime, _ring
from tests.judge.scripted import FULL, LEFT, MACHINE, picture

SCENE = Scene.of(MACHINE, [picture(FULL, LEFT)])


class Good:
    """Shows nothing, and says so in the right words."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """The view of side 0."""
        return machine.view_bursts(0)

    def offer(self, _picture: Picture) -> Answer:
        """Takes it."""
        return Answer.TAKEN

    def blank(self, _cycles: int) -> Iterable[Burst]:
        """Writes nothing."""
        return []


def having(**methods: object) -> Callable[[], Any]:
    """A candidate like `Good` but for these methods."""
    return type("Candidate", (Good,), methods)


def fault_of(make: Callable[[], Any], *, call_seconds: float = 5.0) -> CandidateFault:
    """The fault that comes of playing the scene with it."""
    with pytest.raises(CandidateFault) as caught:
        play(SCENE, make, call_seconds=call_seconds)
    return caught.value


def test_a_candidate_that_keeps_to_the_words_has_no_fault() -> None:
    """The scene plays to its end, though nothing is shown."""
    assert len(play(SCENE, Good).refreshes) == MACHINE.patience + 1


@pytest.mark.parametrize("method", ["start", "offer", "blank"])
@pytest.mark.parametrize("instead", [None, 5, "start"])
def test_a_missing_method_is_named(method: str, instead: object) -> None:
    """One that is there but can't be called is missing too."""
    fault = fault_of(having(**{method: instead}))
    assert (fault.method, fault.refresh) == (method, -1)
    assert f"has no method {method}" in fault.said


def test_a_candidate_that_is_no_scheduler_at_all() -> None:
    """A function that makes None; a class that wants an argument; one that fails when made."""

    class Wanting(Good):
        def __init__(self, wanted: int) -> None:
            self.wanted = wanted

    assert "NoneType has no method start" in fault_of(lambda: None).said
    wanting: Any = Wanting
    assert "raised TypeError" in fault_of(wanting).said
    fault = fault_of(lambda: 1 // 0)
    assert (fault.method, fault.refresh) == ("the candidate itself", -1)
    assert "raised ZeroDivisionError" in fault.said


@pytest.mark.parametrize("method", ["start", "blank"])
@pytest.mark.parametrize("returned", [None, 7, True, 1.5, Answer.TAKEN, Burst(0, b"\0")])
def test_what_is_no_iterable_is_named(method: str, returned: object) -> None:
    """None above all: a forgotten return."""
    fault = fault_of(having(**{method: lambda _self, _what: returned}))
    assert (fault.method, fault.refresh) == (method, -1 if method == "start" else 0)
    assert f"returned {returned!r} ({type(returned).__name__})" in fault.said
    assert "list of Burst" in fault.advice


@pytest.mark.parametrize("method", ["start", "blank"])
@pytest.mark.parametrize("item", [None, (0, b"\0"), b"\0", 3, "x", [Burst(0, b"\0")]])
def test_an_item_that_is_no_burst_is_named_with_its_place(method: str, item: object) -> None:
    """Two good bursts come before it."""
    fault = fault_of(having(**{method: lambda _self, _what: [Burst(0, b"\0"), Burst(1, b"\0"), item]}))
    assert fault.method == method
    assert f"item 2 of what it returned is {item!r}" in fault.said


@pytest.mark.parametrize("returned", [None, True, False, "taken", 0, Answer, Answer.TAKEN.value])
def test_an_answer_that_is_none_is_named(returned: object) -> None:
    """True is not TAKEN."""
    fault = fault_of(having(offer=lambda _self, _picture: returned))
    assert (fault.method, fault.refresh) == ("offer", 0)
    assert f"returned {returned!r}" in fault.said
    assert "Answer.TAKEN" in fault.advice


def generated(_self: object, _what: object) -> Iterator[Burst]:
    """One burst that changes nothing."""
    yield Burst(4, b"\0")


@pytest.mark.parametrize("method", ["start", "blank"])
@pytest.mark.parametrize("returned", [generated, lambda _s, _w: {Burst(4, b"\0")}, lambda _s, _w: iter([])])
def test_any_iterable_of_bursts_will_do(method: str, returned: Callable[[object, object], Iterable[Burst]]) -> None:
    """A generator, a set, an iterator."""
    assert len(play(SCENE, having(**{method: returned})).refreshes) == MACHINE.patience + 1


@pytest.mark.parametrize("method", ["__init__", "start", "offer", "blank"])
@pytest.mark.parametrize("error", [ValueError("no"), SystemExit(3), StopIteration(), RecursionError(), MemoryError()])
def test_what_a_candidate_raises_is_its_fault(method: str, error: BaseException) -> None:
    """Even the wish to leave the whole program; the traceback is kept."""

    def fail(*_arguments: object) -> None:
        raise error

    fault = fault_of(having(**{method: fail}))
    assert fault.method == ("the candidate itself" if method == "__init__" else method)
    assert f"raised {type(error).__name__}" in fault.said
    assert "in fail" in fault.trace
    assert not isinstance(fault, CandidateHung)


def test_a_generator_that_fails_midway_is_at_fault_too() -> None:
    """Bursts are drawn from it under guard."""

    def broken(_self: object, _cycles: int) -> Iterator[Burst]:
        yield Burst(4, b"\0")
        raise KeyError("midway")

    fault = fault_of(having(blank=broken))
    assert (fault.method, fault.refresh) == ("blank", 0)
    assert "KeyError" in fault.said


@pytest.mark.parametrize("burst", [lambda: Burst(0, b""), lambda: Burst(-(1 << 64), b"\0"), lambda: Burst(0, b"\0", 0)])
def test_a_burst_that_can_not_be_is_the_fault_of_who_makes_it(burst: Callable[[], Burst]) -> None:
    """It is refused in the candidate's own code."""
    assert "Burst." in fault_of(having(blank=lambda _self, _cycles: [burst()])).said


def test_the_refresh_is_told() -> None:
    """The third blanking is blanking 2."""

    def make() -> Good:
        numbers = count()
        made: Good = having(blank=lambda _self, _cycles: None if next(numbers) == 2 else [])()
        return made

    fault = fault_of(make)
    assert fault.refresh == 2
    assert str(fault).startswith("blank in refresh 2: returned None")


@pytest.mark.parametrize("step", [2, 3, 256])
def test_a_step_that_the_machine_has_not_is_refused(step: int) -> None:
    """This one permits 1."""
    fault = fault_of(having(blank=lambda _self, _cycles: [Burst(4, b"\0"), Burst(5, b"\0\0", step)]))
    assert f"burst 1 has step {step}" in fault.said
    assert "permits step 1." in fault.advice


# --- calls that do not come back ----------------------------------------------------------------------------


def loop(*_arguments: object) -> None:
    """Runs for ever."""
    while True:
        pass


def sleep(*_arguments: object) -> None:
    """Waits as good as for ever."""
    time.sleep(60)


def stubborn(*_arguments: object) -> list[Burst]:
    """Goes on for ever whatever is raised, so it thinks."""
    while True:
        with contextlib.suppress(Exception):
            time.sleep(60)


def endless_silence(*_arguments: object) -> Iterator[Burst]:
    """A generator that never gives anything."""
    while True:
        time.sleep(0.001)
    yield Burst(0, b"\0")


@pytest.mark.parametrize("method", ["__init__", "start", "offer", "blank"])
@pytest.mark.parametrize("wait", [loop, sleep, stubborn])
def test_a_call_that_does_not_return_is_hung(method: str, wait: Callable[..., object]) -> None:
    """Looping, sleeping and catching every exception do not save it."""
    fault = fault_of(having(**{method: wait}), call_seconds=0.02)
    assert isinstance(fault, CandidateHung)
    assert "did not return in 0.02 s" in fault.said


class Lingers:
    """Takes its time to go."""

    def __del__(self) -> None:
        """What is raised here is lost."""
        sleep()


@pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")
def test_a_ring_that_is_lost_is_not_the_last() -> None:
    """In a finaliser nothing can be raised: then it rings again."""

    def lose_it_and_loop(_self: object, _cycles: int) -> None:
        lingers = Lingers()
        del lingers
        loop()

    assert isinstance(fault_of(having(blank=lose_it_and_loop), call_seconds=0.02), CandidateHung)


def test_a_ring_in_a_callback_of_a_weak_reference_waits_for_the_next() -> None:
    """The interpreter calls those wherever it likes, and what is raised there is lost with a warning."""
    looks = compile("import sys; frame = sys._getframe()", "anywhere", "exec")
    for module, raises in (("_weakrefset", False), ("weakref", False), ("mine", True)):
        names: dict[str, Any] = {"__name__": module}
        exec(looks, names)
        with pytest.raises(_OutOfTime) if raises else contextlib.nullcontext():
            _ring(signal.SIGALRM, names["frame"])


@pytest.mark.parametrize("method", ["start", "blank"])
def test_a_generator_that_never_gives_anything_is_hung(method: str) -> None:
    """The guard is on the drawing of bursts, not only on the call."""
    assert isinstance(fault_of(having(**{method: endless_silence}), call_seconds=0.02), CandidateHung)


@pytest.mark.parametrize("method", ["start", "blank"])
@pytest.mark.parametrize("size", [1, 1000])
def test_bursts_without_an_end_are_hung(method: str, size: int) -> None:
    """Long before time or memory is used up."""
    fault = fault_of(having(**{method: lambda _self, _what: (Burst(4, bytes(size)) for _ in count())}))
    assert isinstance(fault, CandidateHung)
    assert "bytes and did not end" in fault.said


def test_more_bytes_than_any_blanking_can_hold_are_hung_in_few_bursts_too() -> None:
    """Sixteen whole refreshes are 6400 cycles here, a byte each."""
    fault = fault_of(having(blank=lambda _self, _cycles: [Burst(4, bytes(6402))]))
    assert isinstance(fault, CandidateHung)


def test_time_is_given_anew_to_every_call() -> None:
    """Ten calls of 20 ms each are within a limit of 150 ms a call."""

    def slowly(_self: object, _cycles: int) -> list[Burst]:
        time.sleep(0.03)
        return []

    assert len(play(SCENE, having(blank=slowly), call_seconds=0.15).refreshes) == MACHINE.patience + 1


def test_after_a_call_the_clock_is_off() -> None:
    """What takes long between two calls is not the candidate's fault."""
    conversation = Conversation(machine=MACHINE, make=Good, call_seconds=0.02)
    with conversation.open():
        conversation.start()
        time.sleep(0.05)
        assert conversation.blank(200) == ()


# --- what it is given is not its own ------------------------------------------------------------------------


def overwrite(_self: object, shown: Picture) -> Answer:
    """Writes into the picture."""
    shown.rows[0, 0] = 1
    return Answer.TAKEN


def unlock(_self: object, shown: Picture) -> Answer:
    """Tries to make it writable first."""
    shown.rows.flags.writeable = True
    return Answer.TAKEN


def unlock_planes(_self: object, shown: Picture) -> Answer:
    """Writes by way of another shape."""
    np.asarray(shown.planes)[0, 0, 0] = 1
    return Answer.TAKEN


def assign(_self: object, shown: Picture) -> Answer:
    """Puts another array in its place."""
    shown.rows = np.zeros((2, 8), dtype=np.uint8)  # type: ignore[misc]
    return Answer.TAKEN


@pytest.mark.parametrize("meddle", [overwrite, unlock, unlock_planes, assign])
def test_a_picture_can_not_be_written_to(meddle: Callable[[object, Picture], Answer]) -> None:
    """Trying to is an error in the candidate, and the picture stays as it was."""
    before = SCENE.pictures[0].rows.tobytes()
    assert fault_of(having(offer=meddle)).method == "offer"
    assert SCENE.pictures[0].rows.tobytes() == before


def test_a_machine_can_not_be_written_to() -> None:
    """It is a frozen value."""

    def meddle(_self: object, machine: Machine) -> list[Burst]:
        machine.name = "another"  # type: ignore[misc]
        return []

    assert "FrozenInstanceError" in fault_of(having(start=meddle)).said
