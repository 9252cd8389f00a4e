"""The ways to reveal as text: one machine in full, or many beside one another."""

from collections.abc import Iterator, Sequence

from planeproof.contract import Machine
from planeproof.report.figures import counted, cycles, wrapped
from planeproof.ways import IN_PLACE, Name, Reach, Statement, Way, blanking_here, blanking_there, needed_above, ways_of

_INDENT = 17
RECKONED = (
    "How it is reckoned. Sent whole: every pattern that the picture may have, every map entry it needs and the view, "
    "in the cheapest bursts of step 1. Refreshes: the cycles of that, divided by those of a blanking and rounded up; a "
    "scheduler needs that many at least, and one that remembers what it sent may have less to send. The other line "
    "standard: the same clock and shown lines, 312 lines of 64 or 262 lines of 572/9 microseconds. Needed: within the "
    "rules, for pictures in a row that share no pattern; in one blanking, hidden-writes is broken wherever it applies, "
    "and a blanking that is cut short shows parts of two. What a statement rests on: planeproof prove --only ID."
)


def ways_page(machine: Machine) -> list[str]:
    """Every way on one machine, with figures and what they rest on; headings stand at the margin."""
    ways = ways_of(machine)
    parts = [
        [
            f"{machine.name}: ways to reveal",
            *_times(machine),
            *wrapped(f"the method, a hidden plane, {_method(machine, ways)}", 2),
        ]
    ]
    parts += [_way(way) for way in ways]
    return [line for part in parts for line in (*part, "")][:-1]


def ways_table(machines: Sequence[Machine]) -> list[str]:
    """A line a machine, a column a way; where the method works, where it is needed, and where it never could be."""
    rows = [("", *(name.value for name in Name), "the method, a hidden plane,")]
    for machine in machines:
        ways = ways_of(machine)
        rows.append((machine.name, *map(_cell, ways), _method(machine, ways)))
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    lines = ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
    return [
        "Ways to reveal: occupied cells of a picture, and the refreshes it takes at least",
        *wrapped(_READING, 2),
        "",
        *(f"  {line}" for line in lines),
    ]


_READING = (
    "'176 in 3 / 6': 3 on the machine's own line standard, 6 on the other one. '27 / 0 in 1': as many as one blanking "
    "holds on the one, and on the other. '-': not on this machine."
)


def _times(machine: Machine) -> Iterator[str]:
    here, there = blanking_here(machine), blanking_there(machine)
    yield f"  {here.cycles} cycles of blanking on {here.standard}"
    if there is None:
        yield f"  the other line standard is not known, for {here.standard} is neither 625/50 nor 525/60"
    else:
        shown = counted(machine.time.shown, "line")
        yield f"  {there.cycles} cycles on {there.standard}, by the same clock, with the same {shown} shown"


def _method(machine: Machine, ways: Sequence[Way]) -> str:
    hidden, above = next(way for way in ways if way.name is Name.HIDDEN_PLANE), needed_above(ways)
    if hidden.here is None:
        why = "fixed colours" if machine.colours.fixed else counted(machine.tiles.planes, "plane")
        return f"never could work ({why})"
    if not hidden.possible:
        return "does not fit this blanking"
    if above is None:
        return "works, and is not needed"
    return f"works, and is needed from {above + 1} cells on" if above else "works, and nothing else keeps the rules"


def _cell(way: Way) -> str:
    if way.here is None:
        return "-"
    if way.name in IN_PLACE:
        cells = [str(reach.cells) for reach in (way.here, way.there) if reach is not None]
        return f"{' / '.join(cells)} in 1"
    refreshes = [_refreshes(reach) for reach in (way.here, way.there) if reach is not None]
    return f"{way.here.cells} in {' / '.join(refreshes)}"


def _refreshes(reach: Reach) -> str:
    return "never" if reach.refreshes is None else str(reach.refreshes)


def _way(way: Way) -> list[str]:
    lines = [f"{way.name.value}: {'possible' if way.possible else 'not possible'}"]
    for label, text in _figures(way):
        lines += _labelled(label, text)
    return lines + [line for statement in way.statements for line in _statement(statement)]


def _figures(way: Way) -> Iterator[tuple[str, str]]:
    if way.here is None or way.sending is None:
        return
    yield "colours", f"{way.colours} in a picture at most, background included: {counted(way.colours - 1, 'ink')}"
    yield "tiles", f"{way.tiles} left for a picture"
    sent = way.sending
    kinds = f"{sent.patterns} of patterns, {sent.entries} of the map, {sent.view} of the view"
    bursts = counted(sent.bursts, "burst")
    yield "sent whole", f"{sent.n_bytes} bytes ({kinds}) in {bursts}: {cycles(sent.cycles)} cycles"
    least = "" if way.name in IN_PLACE else "at least "
    reached = [_reached(reach, least) for reach in (way.here, way.there) if reach is not None]
    yield "refreshes", "; ".join(reached)


def _reached(reach: Reach, least: str) -> str:
    where = f"on {reach.blanking.standard}"
    if not reach.possible:
        return f"never {where}"
    return f"{least}{reach.refreshes} for {counted(reach.cells, 'occupied cell')} {where}"


def _statement(statement: Statement) -> list[str]:
    lines = _labelled(statement.ground.value, statement.says)
    return lines + wrapped(", ".join(statement.obligations), _INDENT + 2) if statement.obligations else lines


def _labelled(label: str, text: str) -> list[str]:
    first, *others = wrapped(text, _INDENT)
    return [f"  {label:<{_INDENT - 2}}{first.strip()}", *others]
