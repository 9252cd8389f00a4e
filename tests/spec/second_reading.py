"""What the symbolic rules say of a play: the formulas of the spec, asked about what was written and seen.

Of the judge nothing is used but what a play records as given: the bursts, the answers, the cycles. Besides what
`tests.spec.plain_memory` asks for, machines have whole cycles and lose late bytes.
"""

from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass

import numpy as np

from planeproof.contract import TILE_SIDE, Answer, Burst, Machine, Outside, Picture, Rule
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)
from planeproof.judge import Play
from planeproof.spec.evaluation import Evaluator, Given, Values
from tests.spec.compiled_rules import BEYOND, CompiledRules, first_seen, owned_addresses
from tests.spec.plain_memory import PlainMemory, Seen, Write, picture_values, pixels, writes_of


@dataclass(frozen=True)
class Change:
    """The views that a blanking begins and ends with, and the numbers of the first and last write that change it."""

    old: Seen
    new: Seen
    first: int
    last: int

    @classmethod
    def of(cls, memory: PlainMemory, writes: list[Write]) -> "Change":
        """The view change of these writes."""
        end, turning = memory, []
        for number, write in enumerate(writes):
            before, end = end, end.after(write)
            turned = [a for a in write.addresses if a in memory.places.view and before.held[a] != end.held[a]]
            turning += [number] if turned else []
        first, last = (turning[0], turning[-1]) if turning else (BEYOND, BEYOND)
        return cls(memory.view, end.view, first, last)


class SecondReading:
    """Reads the plays of one machine. Answers are remembered, for short plays are much alike."""

    def __init__(self, machine: Machine, rules: CompiledRules | None = None) -> None:
        self.machine = machine
        self.rules = CompiledRules(machine.tiles.planes) if rules is None else rules
        self.owned = owned_addresses(machine)
        self.background = Picture.from_rows(0, np.zeros((machine.cells, TILE_SIDE), dtype=np.uint8))
        self._looks = {self.background.rows.tobytes(): 0}
        self._kept: dict[Hashable, bool] = {}
        self._steps: dict[Hashable, dict[str, Values]] = {}

    def __call__(self, play: Play) -> dict[Rule, int]:
        """Each rule that was broken, and the refresh in which it first was (-1: in the set-up)."""
        self.broken: dict[Rule, int] = {}
        self.memory, self.refresh = PlainMemory(self.machine), -1
        self.viewer, self.line = first_seen(1), [self.background]
        for burst in play.set_up:
            for write in writes_of(self.machine, burst, len(burst.data)):
                self._judge_owner(write)
                self.memory.store(write)
        for refresh in play.refreshes:
            self.refresh = refresh.number
            picture = None if refresh.offered is None else play.scene.pictures[refresh.offered]
            self._answer(picture, refresh.answer)
            self._blanking(list(self._in_time(refresh.bursts, refresh.cycles)))
            self._frame(full=refresh.cycles == self.machine.blank_cycles)
        return self.broken

    def _judge(self, rule: Rule, *, kept: bool) -> None:
        if not kept:
            self.broken.setdefault(rule, self.refresh)

    def _holds(self, evaluator: Evaluator, key: Hashable, values: Callable[[], dict[str, Given]]) -> bool:
        """Whether a rule is kept in each case that ``values`` has, which ``key`` stands for."""
        whole = (id(evaluator), key)
        if whole not in self._kept:
            self._kept[whole] = bool(evaluator(values())["kept"].all())
        return self._kept[whole]

    @property
    def _held(self) -> bytes:
        return bytes(self.memory.held)

    # --- writes ---------------------------------------------------------------------------------------------

    def _in_time(self, bursts: tuple[Burst, ...], cycles: int) -> Iterator[Write]:
        """The writes that land inside blanking; the others are lost."""
        spent = 0
        for burst in bursts:
            set_up, per_byte = map(int, self.machine.rates(view=self.machine.is_view(burst.address)))
            values: dict[str, Given] = {"spent": spent, "set-up": set_up, "per-byte": per_byte, "cycles": cycles}
            fits = [bool(self.rules.in_time(n + 1)(values)["kept"]) for n in range(len(burst.data))]
            self._judge(BLANKING_ONLY, kept=all(fits))
            assert all(fits) or self.machine.outside is Outside.LOST, "this reading loses what comes late"
            yield from writes_of(self.machine, burst, sum(fits))
            spent += set_up + per_byte * len(burst.data)

    def _blanking(self, writes: list[Write]) -> None:
        change = Change.of(self.memory, writes)
        for number, write in enumerate(writes):
            self._judge_owner(write)
            if self.machine.sides > 1:
                self._judge(HIDDEN_WRITES, kept=self._hidden(write, number, change))
            self.memory.store(write)
            if number == change.last:
                self._judge(EXACT_REVEAL, kept=self._exact())

    def _hidden(self, write: Write, number: int, change: Change) -> bool:
        memory, address = self.memory, write.addresses[0]
        place, cell = memory.places.pattern_at.get(address), memory.places.cell_at.get(address)

        def values() -> dict[str, Given]:
            views = {**change.old.values("old"), **change.new.values("new"), "first": change.first, "last": change.last}
            return {**memory.values(), **pixels(self.machine), **views, "number": number}

        key = (self._held, write, number, change)
        if place is not None:
            written: dict[str, Given] = dict(zip(("tile", "plane", "row"), place, strict=True))
            return self._holds(self.rules.pattern, key, lambda: {**values(), **written, "byte": write.values[0]})
        if cell is not None:
            entry = memory.after(write).entry(*cell)
            named: dict[str, Given] = {"page": cell[0], "cell": cell[1], "entry": entry}
            return self._holds(self.rules.entry, key, lambda: {**values(), **named})
        return True

    def _judge_owner(self, write: Write) -> None:
        for address, byte in zip(write.addresses, write.values, strict=True):
            self._judge(OWN_MEMORY, kept=bool(self.owned[address]))
            place = self.memory.places.pattern_at.get(address)
            if place is not None:
                values: dict[str, Given] = {"tile": place[0], "held": self.memory.held[address], "byte": byte}
                values["pool"] = self.memory.values()["pool"]
                kept = bool(self.rules.changed(values)["kept"])
                self._judge(TILE_CAP, kept=kept)

    # --- what is seen ---------------------------------------------------------------------------------------

    def _look(self, picture: Picture) -> int:
        """The number of a picture's look; with background and ink different, its bytes tell."""
        return self._looks.setdefault(picture.rows.tobytes(), len(self._looks))

    def _seen_values(self) -> dict[str, Given]:
        return {**self.memory.values(), **self.memory.view.values("view"), **pixels(self.machine)}

    def _colours(self, picture: Picture) -> Values:
        return self.rules.look({**picture_values(self.machine, picture), **pixels(self.machine)})["colour"]

    def _exact(self) -> bool:
        place, line = int(self.viewer["place"][0]), self.line
        pair = (line[place], line[min(place + 1, len(line) - 1)])
        shown = self.rules.shown(self._seen_values())["colour"]
        values: dict[str, Given] = {"shown": shown}
        values |= {name: self._colours(picture) for name, picture in zip(("current", "following"), pair, strict=True)}
        return any(self.rules.exact({**values, "is-next": is_next})["kept"].all() for is_next in (False, True))

    def _answer(self, picture: Picture | None, answer: Answer | None) -> None:
        event = {
            "is-taken": answer is Answer.TAKEN,
            "is-busy": answer is Answer.BUSY,
            "is-declined": answer is Answer.TOO_BIG,
            "offered-look": 0 if picture is None else self._look(picture),
            "occupied": 0 if picture is None else len(picture.occupied),
            "must-show": self.machine.must_show,
        }
        self._step(self.rules.answer, event, (FAIR_REFUSAL,))
        if answer is Answer.TAKEN and picture is not None:
            self.line.append(picture)

    def _frame(self, *, full: bool) -> None:
        cells: dict[str, Given] = {"cell": np.arange(self.machine.cells)}
        cells["blank"] = self.machine.blank_tiles[self.memory.view.bank]
        named = self._holds(self.rules.named, self._held, lambda: {**self._seen_values(), **cells})
        self._judge(TILE_CAP, kept=named)
        event = {"full": full, "frame": self._frame_look(), "patience": self.machine.patience}
        self._step(self.rules.frame, event, (PROGRESS, WHOLE_REVEAL, IN_ORDER))

    def _step(self, evaluator: Evaluator, event: dict[str, int], judged: tuple[Rule, ...]) -> None:
        """What an answer or a frame makes of the viewer, and the rules that it is judged by."""
        key = (id(evaluator), *(int(value[0]) for value in self.viewer.values()), *event.values())
        if key not in self._steps:
            found = evaluator({**self.viewer, **event})
            self._steps[key] = {name: np.atleast_1d(value) for name, value in found.items()}
        after = self._steps[key]
        for rule in judged:
            self._judge(rule, kept=bool(after[rule.id][0]))
        self.viewer = {name: after[name] for name in self.viewer}

    def _frame_look(self) -> int:
        """The look of the first picture that the frame shows whole, or one that no picture has."""
        for place, picture in enumerate(self.line):
            if self._shows(picture, taken=place > 0):
                return self._look(picture)
        return BEYOND

    def _shows(self, picture: Picture, *, taken: bool) -> bool:
        key = (self._held, taken, picture.rows.tobytes())

        def values() -> dict[str, Given]:
            return {**self._seen_values(), **picture_values(self.machine, picture), "seen": taken}

        return self._holds(self.rules.whole, key, values)
