"""Whether what a candidate wrote in a play is what a proved scheduler might have written.

Each answer TAKEN must be an instance of the step `take`, with a plan that keeps the plan facts: the plan is read off
the map as it stands when the view next changes. Each burst must be one step after another: bytes and entries of the
hidden side with the values that the steps send, or the whole change to the view of the hidden side, each with its
guards holding in a ghost state that takes the same steps.

What is proved is that *such steps* are safe. That the candidate takes no others is observed, in the bursts of these
plays, and not proved: another scene may show another burst.
"""

from dataclasses import dataclass

from planeproof.conformance.plans import first_maps, first_view, plans, view_of
from planeproof.contract import Answer, Burst, Rational
from planeproof.judge import Basis, Play, Refresh, Strength
from planeproof.spec.steps import Steps
from planeproof.spec.steps.addresses import EntryPlace, PatternPlace
from planeproof.spec.steps.ghost import Broken, Ghost


@dataclass(frozen=True, kw_only=True)
class Stray:
    """The first thing that is no instance of a step: in ``refresh`` (-1: set-up), ``burst`` (None: the answer)."""

    refresh: int
    burst: int | None
    said: str

    def __str__(self) -> str:
        what = "the answer" if self.burst is None else f"burst {self.burst}"
        where = "the set-up" if self.refresh < 0 else f"refresh {self.refresh}"
        return f"{what} of {where} is no step of the scheduler: {self.said}"


@dataclass(frozen=True, kw_only=True)
class Observation:
    """How many bursts of ``plays`` plays are steps of ``steps``, and the first thing that is not, if any."""

    steps: str
    plays: int
    bursts: int
    stray: Stray | None = None

    @property
    def basis(self) -> Basis:
        """Observed, never more: the steps may be proved, the candidate is not."""
        return Basis(strength=Strength.OBSERVED, source=f"conformance to the steps of {self.steps}", scenes=self.plays)

    @property
    def words(self) -> str:
        """What was observed, and what it does not say."""
        scenes = f"{self.plays} scene{'' if self.plays == 1 else 's'}"
        if self.stray is not None:
            return f"After {self.bursts} bursts that conform, {self.stray}."
        return (
            f"OBSERVED: all {self.bursts} bursts of {scenes} are steps of {self.steps}. If that is proved, what is "
            "proved is that no such step breaks what is seen. That the candidate never does anything else is "
            "observed in these scenes, not proved."
        )


def observe(steps: Steps, *plays: Play) -> Observation:
    """Compare what was written in each play with ``steps``, up to the first thing that is none.

    Raises `ValueError` for a machine that steps of this family can't be for.
    """
    bursts = 0
    for number, play in enumerate(plays):
        watch = _Watch(steps, play)
        stray = watch.stray()
        bursts += watch.conforming
        if stray is not None:
            return Observation(steps=steps.name, plays=number + 1, bursts=bursts, stray=stray)
    return Observation(steps=steps.name, plays=len(plays), bursts=bursts)


class _NoStep(Exception):
    """What was seen is no instance of a step."""


class _Watch:
    """One play, compared with the steps in a ghost of them, burst by burst."""

    def __init__(self, steps: Steps, play: Play) -> None:
        self.play = play
        self.machine = play.scene.machine
        self.ghost = Ghost(steps, self.machine)
        self.places = self.ghost.addresses.places
        self.plans = dict(plans(play))
        self.view = first_view(self.machine)
        self.maps = first_maps(self.machine)
        self.changing: int | None = None
        self.conforming = 0
        self.refresh = -1
        self.burst: int | None = None

    def stray(self) -> Stray | None:
        """The first thing that is no step."""
        try:
            self._set_up()
            for refresh in self.play.refreshes:
                self.refresh, self.burst = refresh.number, None
                if refresh.answer is Answer.TAKEN and refresh.offered is not None:
                    self._take(refresh.offered)
                self._blanking(refresh)
        except _NoStep as reason:
            return Stray(refresh=self.refresh, burst=self.burst, said=str(reason))
        return None

    def _set_up(self) -> None:
        for number, burst in enumerate(self.play.set_up):
            self.burst = number
            if not all(self.machine.is_view(address) for address in burst.addresses):
                raise _NoStep("the set-up writes more than the view")
            self.view |= zip(burst.addresses, burst.data, strict=True)
            self.conforming += 1
        if self.view != view_of(self.machine, 0):
            raise _NoStep("the set-up leaves another view than that of side 0")

    def _take(self, number: int) -> None:
        picture, place = self.play.scene.pictures[number], self.plans[number]
        unknown = [tile for tile in place if tile >= self.machine.tiles.count]
        if unknown:
            raise _NoStep(f"picture {number} is taken, and the map comes to name tile {unknown[0]}, which there is not")
        cell_of = {tile: cell for cell, tile in reversed(list(enumerate(place)))}
        broken = self.ghost.take(self.ghost.addresses.units(picture), place, cell_of)
        _refuse(f"picture {number} is taken", broken)

    def _blanking(self, refresh: Refresh) -> None:
        if refresh.cycles == 0:
            self.ghost.lose()
        spent: Rational = 0
        for number, burst in enumerate(refresh.bursts):
            self.burst = number
            spent += self.machine.cost(burst)
            if spent > refresh.cycles:
                raise _NoStep("it is not over when the blanking is")
            if any(self.machine.is_view(address) for address in burst.addresses):
                self._view(number, burst)
            else:
                self._settled()
                self._write(burst)
            self.conforming += 1
        self._settled()

    def _view(self, number: int, burst: Burst) -> None:
        """A burst to the view: the last one of a whole change to the hidden side, a part of one, or no change."""
        self.view |= zip(burst.addresses, burst.data, strict=True)
        seen = self.ghost.seen
        if self.view == view_of(self.machine, 1 - seen):
            self.changing = None
            _refuse("the hidden side is shown", self.ghost.show())
        elif self.view == view_of(self.machine, seen):
            self.changing = None
        elif self.changing is None:
            self.changing = number

    def _settled(self) -> None:
        if self.changing is not None:
            self.burst = self.changing
            raise _NoStep("it leaves a view that is of neither side")

    def _write(self, burst: Burst) -> None:
        entries: dict[tuple[int, int], None] = {}
        for address, byte in zip(burst.addresses, burst.data, strict=True):
            place = self.places.get(address)
            if isinstance(place, PatternPlace):
                self._pattern(place, byte)
            elif isinstance(place, EntryPlace):
                self.maps[address] = byte
                entries[place.page, place.cell] = None
            else:
                raise _NoStep(f"address {address} holds neither a pattern byte nor an entry of the window")
        for page, cell in entries:
            self._entry(page, cell)

    def _pattern(self, place: PatternPlace, byte: int) -> None:
        what = f"byte {place.row} of tile {place.tile}"
        store, sent = self.ghost.byte(place.tile, place.row)
        if store != place.store:
            raise _NoStep(f"{what} is written in the planes of side {place.store}, where steps write to side {store}")
        if sent != byte:
            raise _NoStep(f"{what} is written as 0x{byte:02x}, where the step sends 0x{sent:02x}")
        _refuse(f"{what} is written", self.ghost.send_byte(place.tile, place.row))

    def _entry(self, page: int, cell: int) -> None:
        """A step sends a whole entry: a burst that leaves out the byte that is there already comes to the same."""
        what, hidden = f"the entry of cell {cell} on page {page}", 1 - self.ghost.seen
        if page != self.machine.page_of(hidden):
            raise _NoStep(f"{what} is written while that page is being seen")
        sent, first = self.machine.map_entry(self.ghost.placed(cell)), self.machine.map_address(page, cell)
        held = bytes(self.maps[first + byte] for byte in range(len(sent)))
        if held != sent:
            raise _NoStep(f"{what} comes to be {held.hex()}, where the step sends {sent.hex()}")
        _refuse(f"{what} is written", self.ghost.send_entry(cell))


def _refuse(what: str, broken: Broken) -> None:
    if broken:
        raise _NoStep(f"{what}, and this does not hold: {'; '.join(broken)}")
