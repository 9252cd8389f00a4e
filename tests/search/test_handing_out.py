"""Units that are handed out: what others have done by the time of Ctrl-C is not lost; what has ended is played here."""

from collections.abc import Callable, Iterator

import pytest

from planeproof.candidates.reference import Fresh
from planeproof.contract import RULES
from planeproof.judge import Profile
from planeproof.machines import read_machine
from planeproof.search.apart import EndedError
from planeproof.search.order import Order
from planeproof.search.serving import work
from planeproof.search.tally import Tally
from planeproof.search.units import Stage, Unit
from planeproof.search.watching import NoWatcher, Steps
from planeproof.search.workers import Elsewhere, Handed, Here, Pending, in_order
from tests.search.wrong import DeclinesSecond

UNITS = [Unit(stage=Stage.INDEPENDENT, number=number, scenes=8, first=8 * number) for number in range(5)]
END = 1000


def order(target: Callable[[], Fresh] = Fresh) -> Order:
    """Of a check on one machine."""
    return Order(
        target=target,
        machines=(read_machine("vitrine-50"),),
        asked=frozenset(RULES),
        profile=Profile.STRICT,
        call_seconds=10.0,
        seed=0,
        as_given=False,
    )


class InTime:
    """A unit that is done after it has been asked for so many times."""

    def __init__(self, data: bytes | Exception, asks: int) -> None:
        self._data = data
        self._asks = asks

    def done(self) -> bool:
        """Whether it has been asked often enough."""
        self._asks -= 1
        return self._asks < 0

    def exception(self, timeout: float | None = None) -> BaseException | None:
        """Not yet."""
        raise TimeoutError

    def result(self) -> bytes:
        """What came of it."""
        if isinstance(self._data, Exception):
            raise self._data
        return self._data


class Scripted(Elsewhere):
    """Each unit is done after so many looks, or ends in an error."""

    def __init__(self, order: Order, looks: dict[int, int], fails: tuple[int, ...] = ()) -> None:
        here = Here(order, cases=None, time_left=lambda: 100.0)
        super().__init__(order, here)
        self.ahead = 3
        self.handed: list[int] = []
        self._looks = looks
        self._fails = fails

    def stop(self) -> None:
        """Nothing is under way."""

    def _hand_out(self, unit: Unit, seconds: float | None) -> Handed:
        self.handed.append(unit.number)
        done: bytes | Exception
        if unit.number in self._fails:
            done = EndedError("it has ended")
        else:
            done = work(self._order, unit, 100.0, lambda sign, data: None)
        return InTime(done, self._looks.get(unit.number, 0))


class PressesOnce(NoWatcher):
    """Presses Ctrl-C at the first step."""

    def __init__(self) -> None:
        self.steps = 0

    def step(self, done: int) -> None:
        """Press."""
        self.steps += 1
        raise KeyboardInterrupt


def handed_out(workers: Elsewhere, watcher: NoWatcher) -> Iterator[tuple[Unit, Pending]]:
    """All units, in their order."""
    steps = Steps(watcher)
    return in_order(UNITS, lambda unit: workers.begin(unit, seconds=None, steps=steps), workers.ahead)


def tallies(workers: Elsewhere, watcher: NoWatcher) -> list[Tally]:
    """What comes of all units."""
    return [pending() for _, pending in handed_out(workers, watcher)]


def test_what_comes_keeps_its_order() -> None:
    """However long each takes; not more are handed out than may be ahead."""
    workers = Scripted(order(), {0: 7, 2: 3})
    come = [(unit.number, len(workers.handed), pending().played) for unit, pending in handed_out(workers, NoWatcher())]
    assert come == [(0, 3, 8), (1, 4, 8), (2, 5, 8), (3, 5, 8), (4, 5, 8)]


def test_what_others_have_done_by_an_interruption_counts() -> None:
    """The first is not done, and is interrupted; two others are; what is handed out then is interrupted too."""
    found = tallies(Scripted(order(), {0: END, 3: END, 4: END}), PressesOnce())
    assert [(tally.played, tally.interrupted) for tally in found] == [
        (0, True),
        (8, False),
        (8, False),
        (0, True),
        (0, True),
    ]


def test_what_others_have_found_by_an_interruption_is_found() -> None:
    """Also a rule that was broken: its scene is played again here."""
    found = tallies(Scripted(order(DeclinesSecond), {0: END}), PressesOnce())
    assert found[0].interrupted
    assert any(tally.smallest for tally in found[1:])


def test_an_interruption_is_no_reason_to_play_here() -> None:
    """What has ended elsewhere is left alone then."""
    found = tallies(Scripted(order(), {0: END}, fails=(1,)), PressesOnce())
    assert [(found[number].played, found[number].interrupted) for number in (0, 1, 2)] == [
        (0, True),
        (0, True),
        (8, False),
    ]


def test_what_has_ended_is_played_here(caplog: pytest.LogCaptureFixture) -> None:
    """As many scenes as there should have been, once, and that is told."""
    found = tallies(Scripted(order(), {1: 4}, fails=(1, 3)), NoWatcher())
    assert [tally.played for tally in found] == [8] * 5
    assert [entry.getMessage() for entry in caplog.records] == [
        "planeproof: it has ended; it is played again in this process"
    ] * 2
