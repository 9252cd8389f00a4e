from collections.abc import Iterator

import numpy as np
import pytest

from planeproof.contract import Burst, Machine, Outside
from planeproof.display import PictureMemory, set_up
from planeproof.judge import MakeScheduler, Play, play
from planeproof.machines import read_machine
from planeproof.scenes.recipes import recipe
from planeproof.scenes.source import RandomSource
from planeproof.search.waste import Waste, waste_of
from tests.candidates.meant_for import MEANT_FOR
from tests.judge.scripted import (
    EMPTY,
    FULL,
    LEFT,
    MACHINE,
    Blanking,
    pattern,
    picture,
    played,
    revealed,
    with_outside,
)


def one_by_one(found: Play) -> Waste:
    """The same account, slowly: for every byte not yet seen, each frame is drawn again with the old byte there."""
    machine, memory = found.scene.machine, PictureMemory(found.scene.machine)
    unseen_yet: dict[int, int] = {}
    sent = held = unseen = 0
    for refresh, address, value in written(found):
        if address < 0:
            frame = memory.frame()
            for each, before in list(unseen_yet.items()):
                other = memory.copy()
                other.store(np.array([each]), np.array([before], dtype=np.uint8))
                if (other.frame() != frame).any():
                    del unseen_yet[each]
            continue
        if refresh >= 0:
            sent, before = sent + 1, int(memory.contents[address])
            if before == value:
                held += 1
            else:
                unseen += address in unseen_yet
                unseen_yet[address] = before
        memory.store(np.array([address]), np.array([value], dtype=np.uint8))
    return Waste(sent=sent, held=held, unseen=unseen + len(unseen_yet), lost=0, tiles=tiles_of(found, machine))


def written(found: Play) -> Iterator[tuple[int, int, int]]:
    """(refresh, address, value) of each byte in time, and after each refresh an address of -1; none is late."""
    for piece in set_up(found.set_up):
        yield from ((-1, at, value) for at, value in zip(piece.addresses.tolist(), piece.values.tolist(), strict=True))
    for refresh in found.refreshes:
        for burst in refresh.bursts:
            yield from ((refresh.number, at, value) for at, value in zip(burst.addresses, burst.data, strict=True))
        yield refresh.number, -1, 0


def tiles_of(found: Play, machine: Machine) -> int:
    """Tiles of the pool sent to after the set-up: whatever a right scheduler shows it has sent to."""
    first, size = machine.layout.patterns, machine.tile_bytes
    every = {at for refresh in found.refreshes for burst in refresh.bursts for at in burst.addresses}
    return len({(at - first) // size for at in every if first <= at < first + size * machine.tiles.count})


@pytest.mark.parametrize(("name", "scheduler"), MEANT_FOR, ids=lambda value: getattr(value, "__name__", value))
def test_the_account_is_what_drawing_every_frame_anew_says(name: str, scheduler: MakeScheduler) -> None:
    """Held and unseen bytes, and tiles, as counted byte by byte and frame by frame, on every kind of storage."""
    base, bytes_seen = read_machine(name), 0
    for number in range(6):
        found = play(recipe(base, RandomSource(f"waste/{name}/{number}")), scheduler)
        account = waste_of(found)
        assert account == one_by_one(found), number
        bytes_seen += account.sent - account.held - account.unseen
    assert bytes_seen > 0


A = picture(FULL, EMPTY)


def account(*blankings: Blanking, machine: Machine = MACHINE) -> Waste:
    """The account of a script that takes picture A, of one full cell."""
    return waste_of(played([A], blankings, machine=machine))


def test_a_picture_sent_whole() -> None:
    """Of 14 bytes the entry of the empty cell and colour 3 were held; nobody has pixels of colour 1, which goes out."""
    assert account(revealed(A, 1)) == Waste(sent=14, held=2, unseen=1, lost=0, tiles=1)


def test_what_is_replaced_before_it_is_seen_is_unseen() -> None:
    """Eight bytes sent first as another pattern; only those that replace them are seen."""
    before = [pattern(1, 1, LEFT)]
    assert account(before, revealed(A, 1)) == Waste(sent=22, held=2, unseen=1 + 8, lost=0, tiles=1)


def test_what_is_sent_twice_is_held_the_second_time() -> None:
    """The first eight are seen when their plane is."""
    assert account([pattern(1, 1, FULL)], revealed(A, 1)) == Waste(sent=22, held=2 + 8, unseen=1, lost=0, tiles=1)


def test_what_is_never_shown_is_unseen_and_its_tile_used() -> None:
    """A pattern for tile 3, which no cell ever names."""
    assert account(revealed(A, 1), [pattern(3, 0, FULL)]) == Waste(sent=22, held=2, unseen=1 + 8, lost=0, tiles=2)


def test_what_goes_where_no_memory_is_is_lost() -> None:
    """Two bytes beyond the last tile."""
    beyond = Burst(MACHINE.pattern_address(4, 1, 7) + 1, bytes(2))
    assert account(revealed(A, 1), [beyond]) == Waste(sent=16, held=2, unseen=1, lost=2, tiles=1)


@pytest.mark.parametrize(("outside", "held", "lost"), [(Outside.LOST, 180, 20), (Outside.LANDS, 200, 0)])
def test_what_comes_too_late_is_lost_where_that_loses_it(outside: Outside, held: int, lost: int) -> None:
    """Five bursts of 40 zeros, 4 + 40 cycles each, are 220 cycles in a blanking of 200: the last 20 bytes are late."""
    zeros = [Burst(MACHINE.pattern_address(1, 0), bytes(40))] * 5
    found = account(zeros, machine=with_outside(outside))
    assert (found.sent, found.held, found.lost) == (200, held, lost)


def test_nothing_sent_is_nothing_wasted() -> None:
    """The set-up is free."""
    assert account() == Waste(sent=0, held=0, unseen=0, lost=0, tiles=0)
