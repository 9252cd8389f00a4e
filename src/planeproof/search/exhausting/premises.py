"""What an exhaustion takes for granted of a candidate, tried on scenes within the bounds: observed, not proved."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain
from random import Random

from planeproof.contract import TILE_SIDE, Scene
from planeproof.judge import SETTLED, CandidateFault, MakeScheduler, NotDuplicable, Play, Player
from planeproof.search.exhausting.letters import Letters
from planeproof.search.exhausting.tiny import Tiny
from planeproof.search.exhausting.tree import SceneTree
from planeproof.search.laws import check_laws
from planeproof.search.renaming import ByteRenaming, Difference, PatternRenaming, Renaming, first_difference
from planeproof.search.trial import Trial

PREMISE_SCENES = 24
"""Scenes within the bounds on which each premise is tried."""

LAW_SCENES = 8
"""Of those, how many are played twice to see that the candidate is deterministic."""

Names = Callable[[Random], Sequence[int]]


def _any_order(random: Random) -> Sequence[int]:
    return random.sample(range(1, 256), 255)


_BYTES: tuple[Names, ...] = (
    lambda _: range(1, 256),  # neighbours, and sums of one another
    lambda _: range(255, 0, -1),  # in the other order
    lambda _: [1 << bit for bit in range(8)],  # one bit each
    _any_order,
)
"""Names for the tokens of a scene, in their order: what a candidate that computes might trip over."""

_RESTS = (129, 0, 129, 0)
"""The other rows of a pattern: ink, or none, for what leaves out empty rows does not take patterns as wholes."""

RENAMINGS = len(_BYTES)
"""In how many ways each scene is renamed."""


@dataclass(frozen=True, kw_only=True)
class Premises:
    """What was seen of a candidate on `PREMISE_SCENES` scenes.

    ``letters`` are those that it keeps the premise of. ``told_apart``: where it did not keep that of others, by them.
    ``unlike``: why it must be played from the beginning, None if copies of it go on as it does.
    """

    letters: Letters
    told_apart: Mapping[Letters, str]
    unlike: str | None

    @property
    def walked(self) -> tuple[Letters, ...]:
        """The letters to exhaust: where no premise is kept, tokens that stand for themselves alone come first.

        They are of few scenes, and of more parts and pictures than all bytes can be tried in.
        """
        return (Letters.BYTES, Letters.VALUES) if self.letters is Letters.VALUES else (self.letters,)


def premises_of(trial: Trial, tiny: Tiny, *, go_on: Callable[[], None]) -> Premises | None:
    """Try them, the strongest first; None for a breach of the contract, which ``trial`` keeps. ``go_on`` may raise."""
    scenes = _scenes(tiny, Letters.BYTES)
    _check_laws(trial, scenes[:LAW_SCENES])
    if trial.fault is not None:
        return None
    unlike, told_apart = first_unlike(scenes, trial.make), dict[Letters, str]()
    for letters in (Letters.PATTERNS, Letters.BYTES):
        go_on()
        said = _told_apart(tiny, trial.make, letters)
        if said is None:
            return Premises(letters=letters, told_apart=told_apart, unlike=unlike)
        told_apart[letters] = said
    return Premises(letters=Letters.VALUES, told_apart=told_apart, unlike=unlike)


def _check_laws(trial: Trial, scenes: Sequence[Scene]) -> None:
    """By a trial of its own: what breaks a rule here is found again, in its turn and in the smallest scene."""
    alone = Trial(
        name=trial.name, make=trial.make, asked=trial.asked, profile=trial.profile, call_seconds=trial.call_seconds
    )
    check_laws(alone, scenes)
    if alone.fault is not None and alone.fault_scene is not None:
        trial.blame(alone.fault, alone.fault_scene)


def _told_apart(tiny: Tiny, make: MakeScheduler, letters: Letters) -> str | None:
    if not tiny.machine.tile_bits.isolated:
        return "packed storage makes its bytes from several planes, so that none is only copied"
    found = first_told_apart(_scenes(tiny, letters), make, letters)
    return None if found is None else found.said


def _scenes(tiny: Tiny, letters: Letters) -> list[Scene]:
    tree = SceneTree(tiny.machine, tiny.bounds(letters), letters)
    return [tree.drawn(Random(number)) for number in range(PREMISE_SCENES)]


def first_told_apart(scenes: Sequence[Scene], make: MakeScheduler, letters: Letters) -> Difference | None:
    """None if ``make`` behaves the same on all ``scenes`` and on each of them renamed, else the first difference."""
    for number, scene in enumerate(scenes):
        for renaming in _renamings(scene, letters, Random(number)):
            try:
                found = first_difference(scene, make, renaming)
            except CandidateFault as fault:
                return Difference(refresh=fault.refresh, said=f"it broke the contract: {fault}")
            if found is not None:
                return found
    return None


def first_unlike(scenes: Sequence[Scene], make: MakeScheduler) -> str | None:
    """None if copies, taken after every refresh, go on as one does that is played from the start; otherwise why not."""
    for scene in scenes:
        try:
            said = _relayed(scene, make).transcript
        except NotDuplicable as refused:
            return f"it can't be copied ({refused})"
        except CandidateFault as fault:
            return f"a copy of it broke the contract ({fault})"
        if said != _relayed(scene, make, copying=False).transcript:
            return "a copy of it did not go on as it did itself"
    return None


def _relayed(scene: Scene, make: MakeScheduler, *, copying: bool = True) -> Play:
    """The play of ``scene``; where ``copying``, each refresh is played by a copy, after the original has played it.

    So what the two share, if anything, has been used when the copy comes to it.
    """
    player, offered = Player(scene.machine, make), 0
    with player.open():
        player.set_up()
        while not player.over(more=offered < len(scene.pictures)):
            due = offered < len(scene.pictures) and scene.ready[offered] <= player.number
            happens = scene.pictures[offered] if due else None, scene.cycles_of(player.number)
            if copying:
                paused = player.paused()
                player.refresh(*happens)
                player = paused.again()
            offered += player.refresh(*happens) in SETTLED
    return player.told(scene)


def _renamings(scene: Scene, letters: Letters, random: Random) -> list[Renaming]:
    if letters is Letters.PATTERNS:
        return [_of_patterns(scene, names(random), rest) for names, rest in zip(_BYTES, _RESTS, strict=True)]
    return [_of_bytes(scene, names(random)) for names in _BYTES]


def _of_bytes(scene: Scene, names: Sequence[int]) -> ByteRenaming:
    held = chain.from_iterable(picture.rows.tobytes() for picture in scene.pictures)
    used = [byte for byte in dict.fromkeys(held) if byte]
    names = list(dict.fromkeys([*names, *range(1, 256)]))
    others = [byte for byte in range(1, 256) if byte not in used]
    table = dict(zip([*used, *others], names, strict=True))
    return ByteRenaming(table=bytes([0, *(table[byte] for byte in range(1, 256))]))


def _of_patterns(scene: Scene, names: Sequence[int], rest: int) -> PatternRenaming:
    """Patterns that agree in seven rows of eight, so that what compares rows finds most of them there already."""
    rows = [row.tobytes() for picture in scene.pictures for row in picture.planes.reshape(-1, TILE_SIDE)]
    used = [row for row in dict.fromkeys(rows) if any(row)]
    names = list(dict.fromkeys([*names, *range(1, 256)]))
    return PatternRenaming(table={row: bytes([name, *[rest] * 7]) for row, name in zip(used, names, strict=False)})
