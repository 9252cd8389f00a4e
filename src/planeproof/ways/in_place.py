"""In place: the next picture is written over the seen one, in one blanking or, with no buffer, while it is seen."""

from bisect import bisect_left

from planeproof.contract import Machine
from planeproof.ways.grounds import Statement, breaks_discipline, counted, is_revealed, nothing_early
from planeproof.ways.sending import Sending, sending
from planeproof.ways.standards import Blanking, blanking_here, blanking_there
from planeproof.ways.way import Name, Reach, Way, bank_shares, colours_shown, first_of, ruled_out


def one_blanking(machine: Machine) -> Way:
    """All of it between two displays: as many occupied cells as one blanking holds."""
    here = blanking_here(machine)
    return _in_place(
        machine, Name.ONE_BLANKING, (_room(machine, here), is_revealed(machine), breaks_discipline(machine))
    )


def while_seen(machine: Machine) -> Way:
    """No buffer: written over as many blankings as it takes, to what is being seen."""
    sent = _sent(machine, _full(machine))
    blankings = blanking_here(machine).refreshes(sent.cycles, sent.least)
    if blankings == 1:
        same = counted("a full picture fits one blanking, so this is the way of one blanking")
        return _in_place(machine, Name.WHILE_SEEN, (same, is_revealed(machine), breaks_discipline(machine)))
    torn = counted(f"a full picture takes at least {blankings} refreshes: before the last, parts of two are seen")
    return ruled_out(Name.WHILE_SEEN, torn, nothing_early(machine))


def _room(machine: Machine, blanking: Blanking) -> Statement:
    most = _fitting(machine, blanking)
    if not most:
        return counted(f"every map entry and one pattern are more than the {blanking.cycles} cycles of a blanking hold")
    limit = "all that a picture can have" if most == _full(machine) else "but not one more"
    return counted(f"{blanking.cycles} cycles hold every map entry and {most} patterns, {limit}")


def _in_place(machine: Machine, name: Name, statements: tuple[Statement, ...]) -> Way:
    here, there = blanking_here(machine), blanking_there(machine)
    cells = _fitting(machine, here)
    return Way(
        name=name,
        statements=statements,
        colours=colours_shown(machine, machine.tiles.planes),
        tiles=cells,
        sending=_sent(machine, cells) if cells else None,
        here=_reach(machine, here),
        there=None if there is None else _reach(machine, there),
    )


def _reach(machine: Machine, blanking: Blanking) -> Reach:
    cells = _fitting(machine, blanking)
    return Reach(blanking=blanking, cells=cells, refreshes=1 if cells else None)


def _full(machine: Machine) -> int:
    return min(len(bank_shares(machine)[0]), machine.cells)


def _fitting(machine: Machine, blanking: Blanking) -> int:
    """The most occupied cells of a picture that fits, sent whole; 0 if none does."""

    def too_much(cells: int) -> bool:
        return _sent(machine, cells).cycles > blanking.cycles

    return bisect_left(range(1, _full(machine) + 1), True, key=too_much)


def _sent(machine: Machine, occupied: int) -> Sending:
    tiles = first_of(bank_shares(machine)[0], occupied)
    return sending(machine, tiles=tiles, cells=machine.cells, side=0, view=())
