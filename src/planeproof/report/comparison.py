"""A comparison as text: a column a candidate, a row a figure, a table a machine."""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence

from planeproof.contract import RULES, Rule
from planeproof.judge import Outcome
from planeproof.report.evidence import basis_sentence
from planeproof.report.figures import counted, cycles, listed, wrapped
from planeproof.search.comparing import Comparison, Standing
from planeproof.search.spending import Spending

IN_A_ROW = 5
"""Candidates beside one another; more are told in tables below."""

_LABEL, _COLUMN, _ROOM = 31, 13, 9
"""Widths of a label, of a column, and of what there is room for of a candidate's name."""

_LEFT_OUT = ".."
_NOTHING = "-"

_HOW_RECKONED = (
    "How it is reckoned: over the scenes on the machine as given, and over the blankings in which anything was sent. "
    "Held: memory held that byte at that address already. Unseen: it changed memory, but no frame would have been "
    "another without it. Lost: it never reached memory. Tiles: of the pool, sent to or shown, in the scene that used "
    "most. Whether a candidate is deterministic is not looked at here: planeproof check does that first."
)


def comparison_lines(comparison: Comparison) -> list[str]:
    """The whole comparison: who is right, what each spent on each machine, and what that rests on."""
    rows = [comparison.standings[first : first + IN_A_ROW] for first in range(0, len(comparison.standings), IN_A_ROW)]
    named = {id(one): head for one, head in zip(comparison.standings, _heads(comparison), strict=True)}
    parts = [_opening(comparison)]
    for row in rows:
        heads = [named[id(standing)] for standing in row]
        parts.append([_line(f"Right or wrong, {comparison.scenes} scenes", heads, 0), *_judged(row)])
        for place, machine in enumerate(comparison.machines):
            parts.append([*_titled(f"Spent on {machine}", heads), *_spent(row, place)])
    parts += [_faults(comparison), _notes(comparison), _rest(comparison)]
    filled = [part for part in parts if part]
    return [line for number, part in enumerate(filled) for line in (["", *part] if number else part)]


def _opening(comparison: Comparison) -> list[str]:
    word = comparison.outcome.name.replace("_", " ")
    worst = [] if comparison.outcome is Outcome.PASS else _letters(comparison, comparison.outcome)
    whose = f"; the most serious outcome is that of {listed(worst)}" if worst else ""
    said = f"{counted(len(comparison.standings), 'scheduler')} compared{whose}"
    asked = f"profile {comparison.profile.value}, seed {comparison.seed}, asked about {listed(comparison.machines)}"
    names = [f"  {_letter(place)}  {standing.target}" for place, standing in enumerate(comparison.standings)]
    return [f"{word}  {said}", *wrapped(asked, 2), *names]


def _letters(comparison: Comparison, *outcomes: Outcome) -> list[str]:
    """The candidates with one of these outcomes."""
    return [_letter(place) for place, one in enumerate(comparison.standings) if one.outcome in outcomes]


def _letter(place: int) -> str:
    return chr(ord("A") + place) if place < 26 else str(place + 1)


def _heads(comparison: Comparison) -> list[str]:
    """A letter each, and as much of the name as a column has room for; the whole names stand beside the letters above.

    No name where others would look the same by what is left of them.
    """
    names = [standing.target.rpartition(":")[2] for standing in comparison.standings]
    cut = {name: _shortened(name, _ROOM) for name in names}
    taken = Counter(cut.values())
    told = [cut[name] if taken[cut[name]] == 1 else "" for name in names]
    return [f"{_letter(place)} {name}".rstrip() for place, name in enumerate(told)]


def _shortened(name: str, room: int) -> str:
    """``name``, without its middle where it is too long: names often begin alike, and end each in its own way."""
    if len(name) <= room:
        return name
    after = (room - len(_LEFT_OUT)) // 2
    return f"{name[: room - len(_LEFT_OUT) - after]}{_LEFT_OUT}{name[-after:]}"


def _titled(title: str, heads: Sequence[str]) -> list[str]:
    """The first line of a table; a title that leaves no room for the heads has lines of its own."""
    if len(title) < _LABEL:
        return [_line(title, heads, 0)]
    return [*wrapped(title, 0), _line("", heads, 0)]


def _line(label: str, cells: Sequence[str], indent: int) -> str:
    """A row of the table: a label, and under each candidate a figure."""
    return (" " * indent + label.ljust(_LABEL - indent) + "".join(cell.rjust(_COLUMN) for cell in cells)).rstrip()


# --- right or wrong ---------------------------------------------------------------------------------------------


def _judged(row: Sequence[Standing]) -> Iterator[str]:
    yield _line("outcome", [_outcome(standing.outcome) for standing in row], 2)
    yield _line("scenes played", [str(standing.played) for standing in row], 2)
    states = [_states(standing) for standing in row]
    for rule in RULES:
        if any(rule in state for state in states):
            yield _line(f"{rule.id} broken in", [state.get(rule, _NOTHING) for state in states], 2)


def _states(standing: Standing) -> dict[Rule, str]:
    """What there is to say of a rule, where it is not kept."""
    broken = {rule: str(times) for rule, times in standing.broken}
    exposed = {rule: f"exposed {times}" for rule, times in standing.exposed}
    return broken | exposed | dict.fromkeys(standing.idle, "idle")


def _outcome(outcome: Outcome) -> str:
    return "ERROR" if outcome is Outcome.CANDIDATE_ERROR else outcome.name


# --- what was spent ---------------------------------------------------------------------------------------------

_FIGURES: tuple[tuple[str, Callable[[Spending], str]], ...] = (
    ("pictures seen", lambda spent: str(spent.cost.shown)),
    ("pictures declined", lambda spent: str(spent.declined)),
    ("refreshes a picture", lambda spent: f"{spent.cost.refreshes_each:.2f}" if spent.cost.shown else _NOTHING),
    ("bytes a picture", lambda spent: f"{spent.cost.bytes_each:.1f}" if spent.cost.shown else _NOTHING),
    ("bytes a blanking, mean", lambda spent: f"{spent.mean_bytes:.1f}"),
    ("bytes a blanking, fullest", lambda spent: str(spent.most_bytes)),
    ("cycles a blanking, mean", lambda spent: f"{spent.mean_cycles:.1f}"),
    ("cycles a blanking, fullest", lambda spent: cycles(spent.most_cycles)),
    ("tiles used, of the pool", lambda spent: f"{spent.tiles} of {spent.cap}"),
    ("bytes held already", lambda spent: _share(spent, spent.held)),
    ("bytes unseen", lambda spent: _share(spent, spent.unseen)),
    ("bytes lost", lambda spent: _share(spent, spent.lost)),
    ("longest wait, of patience", lambda spent: f"{spent.cost.longest_wait} of {spent.cost.patience}"),
)
"""The rows of a machine's table."""


def _spent(row: Sequence[Standing], place: int) -> Iterator[str]:
    for label, figure in _FIGURES:
        yield _line(label, [figure(standing.spent[place]) if standing.spent else _NOTHING for standing in row], 2)


def _share(spent: Spending, n_bytes: int) -> str:
    return f"{100 * spent.share(n_bytes):.1f} %"


# --- what else there is to know ---------------------------------------------------------------------------------


def _faults(comparison: Comparison) -> list[str]:
    lines = ["What broke the contract"]
    for place, standing in enumerate(comparison.standings):
        if standing.fault is not None:
            lines += wrapped(f"{_letter(place)}: {standing.fault}. {standing.fault.advice}", 2)
    return lines if len(lines) > 1 else []


def _notes(comparison: Comparison) -> list[str]:
    lines = []
    places = list(enumerate(comparison.standings))
    broken = [_letter(place) for place, standing in places if standing.broken or standing.exposed]
    if broken:
        one_by_one = "" if len(broken) == 1 else " one by one"
        smallest = "For the smallest scene in which a rule is broken: planeproof check asked about"
        lines += wrapped(f"{smallest} {listed(broken)}{one_by_one}, with the same --machine.", 2)
    for place, standing in places:
        if standing.idle:
            idle = "; ".join(f"{rule.id}: it never happened that {rule.witness}" for rule in standing.idle)
            lines += wrapped(f"{_letter(place)}: nothing is known of what was not exercised. {idle}.", 2)
    for place, machine in enumerate(comparison.machines):
        shown = {standing.spent[place].cost.shown for standing in comparison.standings if standing.spent}
        if len(shown) > 1:
            uneven = f"On {machine} not all showed the same pictures, so their figures are not of the same work."
            lines += wrapped(uneven, 2)
    return ["What to know", *lines] if lines else []


def _rest(comparison: Comparison) -> list[str]:
    clean = _letters(comparison, Outcome.PASS, Outcome.VACUOUS)
    sentences = [basis_sentence(basis, clean=bool(clean)) for basis in comparison.basis]
    whose = f"; what is said of failures goes for {listed(clean)}" if 0 < len(clean) < len(comparison.standings) else ""
    return [
        f"What this rests on, the same scenes for all{whose}",
        *(line for sentence in sentences for line in wrapped(sentence, 2)),
        *wrapped(_HOW_RECKONED, 2),
    ]
