"""The change of view: too early, in two steps, half of it, not at all, or once too often."""

from collections.abc import Iterable, Mapping

from planeproof.candidates.reference import Delta, Fresh, SplitPool
from planeproof.candidates.reference.two_sides import TwoSides
from planeproof.contract import Answer, Burst, Machine, Picture


def _view_but_page(scheduler: TwoSides) -> tuple[tuple[Burst, ...], tuple[Burst, ...]]:
    """The change to the hidden side's view without the page register, and that register alone."""
    machine = scheduler.machine
    bursts = machine.view_bursts(scheduler.hidden, scheduler.seen)
    wanted = {address: byte for burst in bursts for address, byte in zip(burst.addresses, burst.data, strict=True)}
    page = {machine.page_address: wanted.pop(machine.page_address)}
    return machine.bursts(wanted, {}), machine.bursts(page, {})


class PaletteBeforePage(Fresh):
    """Palette and map page may fall into two blankings, and between them new patterns are seen in old places."""

    def reveal(self) -> None:
        """First the one, then the other."""
        palette, page = _view_but_page(self)
        self.outbox.put_together(palette)
        self.outbox.put_together(page)
        self.seen = self.hidden


class PageARefreshLate(Delta):
    """The map page is turned one refresh after the palette, so for one refresh new patterns are seen in old places."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """No page is owed."""
        self.page: tuple[Burst, ...] = ()
        self.owed: tuple[Burst, ...] = ()
        return super().start(machine)

    def reveal(self) -> None:
        """The palette; the page is owed."""
        palette, self.page = _view_but_page(self)
        self.outbox.put_together(palette)
        self.seen = self.hidden

    def offer(self, picture: Picture) -> Answer:
        """Busy until the page is turned."""
        return Answer.BUSY if self.owed else super().offer(picture)

    def blank(self, cycles: int) -> Iterable[Burst]:
        """What is owed, then what fits."""
        cost = sum(self.machine.cost(burst) for burst in self.owed)
        if cost > cycles:
            return ()
        sent = [*self.owed, *self.outbox.fill(int(cycles - cost))]
        self.owed = ()
        if not self.outbox:
            self.owed, self.page = self.page, ()
        return sent


class RevealOneBurstEarly(Fresh):
    """The view changes before the last burst, so the last cell of the picture is drawn before the viewer's eyes."""

    def to_send(self, wanted: Mapping[int, int]) -> Iterable[Burst]:
        """All but the last burst."""
        *most, self.last = super().to_send(wanted)
        return most

    def reveal(self) -> None:
        """The view, and then the last burst."""
        super().reveal()
        self.outbox.put((self.last,))


class BankWithoutPage(SplitPool):
    """The bank of tiles is switched and the map page is forgotten, so a new picture is not seen where it was put."""

    def reveal(self) -> None:
        """The view without its page."""
        bank, _ = _view_but_page(self)
        self.outbox.put_together(bank)
        self.seen = self.hidden


class NothingSentNotRevealed(Delta):
    """When nothing differs from what the hidden side holds, nothing is done at all, and that picture is never seen."""

    def reveal(self) -> None:
        """Turn the view if there was something to send."""
        if self.outbox:
            super().reveal()


class FlipsWhenIdle(Delta):
    """The sides are swapped in every idle refresh too, so the picture before comes back and the drawing flickers."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Send what fits; if there is nothing, swap."""
        if not self.outbox:
            self.reveal()
        return super().blank(cycles)
