"""Walking the tree of scenes with one scheduler, which is had twice at a branch, or played anew where it can't be."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from planeproof.contract import Scene
from planeproof.judge import SETTLED, CandidateFault, MakeScheduler, NotDuplicable, Play, Player
from planeproof.search.exhausting.tree import Level, Move, Position, SceneTree


@dataclass(frozen=True, kw_only=True, eq=False)
class Leaf:
    """One play, and how many ``scenes`` of the tree it is the play of; or the ``fault`` that there was instead."""

    scene: Scene
    scenes: int
    play: Play | None
    fault: CandidateFault | None = None


@dataclass(frozen=True, eq=False)
class _Branch:
    """Where to go on from: a player that is there, the position, the move to make, all moves that led there."""

    player: Callable[[], Player]
    position: Position
    move: Move | None
    before: tuple[Move, ...]


@dataclass(kw_only=True, eq=False)
class Walk:
    """All plays of a tree. ``copying``: go on from copies of the scheduler; given up with the first that can't be had.

    ``told``: refreshes that the plays consist of, ``played``: those of them that had to be played.
    """

    tree: SceneTree
    make: MakeScheduler
    call_seconds: float
    copying: bool = True
    told: int = 0
    played: int = 0
    _pending: list[_Branch] = field(default_factory=list)

    def leaves(self, level: Level) -> Iterator[Leaf]:
        """Each play of ``level``, once. It ends with the first in which the candidate breaks the contract."""
        self._at = self.tree.start(level)
        self._pending = [_Branch(self._new, self._at, None, ())]
        while self._pending:
            branch = self._pending.pop()
            self._at = branch.position
            try:
                player = self._played(branch)
            except CandidateFault as fault:
                yield Leaf(scene=self.tree.scene(self._at), scenes=1, play=None, fault=fault)
                return
            self.told += player.number
            scene = self.tree.scene(self._at)
            yield Leaf(scene=scene, scenes=self.tree.covered(self._at, player.number), play=player.told(scene))

    def _played(self, branch: _Branch) -> Player:
        """Play on from ``branch`` to the end; what else might have happened on the way is pending then."""
        player, made, move = branch.player(), list(branch.before), branch.move
        with player.open():
            while move is not None or not player.over(more=self._at.more):
                if move is None:
                    move, *others = self.tree.moves(self._at, player.number)
                    if others:
                        self._put_off(player, tuple(made), others)
                made.append(move)
                self._make_move(player, move)
                move = None
        return player

    def _put_off(self, player: Player, before: tuple[Move, ...], others: list[Move]) -> None:
        again = self._copies(player, before)
        self._pending += [_Branch(again, self._at, move, before) for move in reversed(others)]

    def _make_move(self, player: Player, move: Move) -> None:
        self._at = move.to
        self.played += 1
        if player.refresh(move.picture, move.cycles) in SETTLED:
            self._at = self.tree.settled(move.to)

    # --- being there again --------------------------------------------------------------------------------

    def _copies(self, player: Player, before: tuple[Move, ...]) -> Callable[[], Player]:
        if self.copying:
            try:
                paused = player.paused()
                paused.again()
            except NotDuplicable:
                self.copying = False
            else:
                return paused.again
        return lambda: self._replayed(before)

    def _new(self) -> Player:
        player = Player(self.tree.machine, self.make, call_seconds=self.call_seconds)
        with player.open():
            player.set_up()
        return player

    def _replayed(self, moves: tuple[Move, ...]) -> Player:
        player = self._new()
        with player.open():
            for move in moves:
                self.played += 1
                player.refresh(move.picture, move.cycles)
        return player
