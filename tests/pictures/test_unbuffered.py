from collections.abc import Sequence

import numpy as np
import pytest

from planeproof.candidates.reference import Delta, Fresh
from planeproof.contract import Burst, Machine, RegionKind, Storage
from planeproof.judge import MakeScheduler
from planeproof.pictures import Course
from planeproof.pictures.frames import in_colours
from tests.oracle.described import described
from tests.oracle.plain_display import Rows, memory_before_start, play
from tests.pictures.runs import EMPTY, FULL, NARROW, SLOPE, SQUARE, course, machine, scripted

PICTURES = ([SQUARE, SLOPE], [SLOPE, FULL], [FULL, SQUARE])


def aimed_by_hand(on: Machine, burst: Burst) -> list[tuple[int, bytes, int]]:
    """Every byte for side 1 at the place that it has on side 0, one burst a byte; view bytes as side 0 has them.

    For planar storage, where a plane's bytes stand 8 further on than those of the plane before.
    """
    view = {burst.address: burst.data for burst in on.view_bursts(0)}
    shown = {address + i: byte for address, data in view.items() for i, byte in enumerate(data)}
    written = []
    for address, value in zip(burst.addresses, burst.data, strict=True):
        kind = next(region for region in on.regions if address in region)
        if kind.kind is RegionKind.PATTERNS:
            offset = (address - on.layout.patterns) % on.tile_bytes
            written.append((address - (8 if offset >= 8 else 0), value))
        elif kind.kind is RegionKind.MAP:
            written.append((address - on.layout.maps[kind.page] + on.layout.maps[0], value))
        else:
            written.append((address, shown.get(address, 0 if address == on.page_address else value)))
    return [(address, bytes([value]), 1) for address, value in written]


def plainly(on: Machine, run: Course) -> list[Rows]:
    """The second model's frames of the whole run, all of it aimed at side 0; no byte of it comes too late."""
    display, memory = described(on), memory_before_start(described(on))
    for burst in [*run.play.set_up, *on.view_bursts(0)]:
        memory |= {burst.address + i: byte for i, byte in enumerate(burst.data)}
    free = [0] * len(run.moments)
    bursts = [[w for b in m.refresh.bursts for w in aimed_by_hand(on, b)] for m in run.moments]
    # One burst a byte costs more set-ups than there were: time is none of the claim here, so give it none.
    quick = type(display)(**{**vars(display), "setup": display.setup * 0, "view_setup": display.view_setup * 0})
    return [seen.frame for seen in play(quick, memory, list(zip(free, bursts, strict=True)))]


@pytest.mark.parametrize("pictures", [PICTURES[:1], PICTURES[:2], PICTURES])
def test_it_is_what_the_second_model_shows_of_the_same_bytes(pictures: Sequence[Sequence[Sequence[int]]]) -> None:
    """A scheduler that sends each picture whole, over several blankings: frame by frame what the plain model shows."""
    on = machine(timing=NARROW)
    run = course(on, Fresh, *pictures)
    ours = [in_colours(on, moment.unbuffered).tolist() for moment in run.moments]
    theirs = [[[list(rgb or ()) for rgb in row] for row in frame] for frame in plainly(on, run)]
    assert ours == theirs
    half_done = [m for m in run.moments if not np.array_equal(m.unbuffered, m.refresh.frame)]
    assert half_done, "nothing was ever half done, so this showed nothing"


@pytest.mark.parametrize("storage", [Storage.PLANAR, Storage.INTERLEAVED, Storage.PACKED])
@pytest.mark.parametrize("make", [Fresh, Delta])
def test_at_each_reveal_it_is_the_picture_that_is_revealed(storage: Storage, make: MakeScheduler) -> None:
    """Whatever is sent on the way, the picture is there in the end, and stays: nothing is exaggerated."""
    on = machine(storage, NARROW)
    run = course(on, make, *PICTURES)
    shown = [m for m in run.moments if m.previous is not None and m.seen != run.moments[m.refresh.number - 1].seen]
    assert shown
    assert all(np.array_equal(moment.unbuffered, moment.refresh.frame) for moment in [*shown, run.moments[-1]])


@pytest.mark.parametrize("storage", [Storage.INTERLEAVED, Storage.PACKED])
def test_other_storage_shows_the_same_as_planar_where_bursts_are_the_same(storage: Storage) -> None:
    """A tile's rows land in the seen plane, wherever their bits are stored: the same frames in the end."""
    planar, other = (course(machine(one), Fresh, *PICTURES) for one in (Storage.PLANAR, storage))
    frames = [[m.unbuffered.tobytes() for m in run.moments if m.refresh.current >= 0] for run in (planar, other)]
    assert set(frames[0]) == set(frames[1])


@pytest.mark.parametrize("storage", Storage)
def test_ink_for_the_side_behind_shows_at_once(storage: Storage) -> None:
    """Before anything is revealed: the pattern's bits stand in the seen plane, however a tile stores them."""
    on = machine(storage)
    tile = np.zeros(on.tile_bytes, dtype=np.uint8)
    ink = np.unpackbits(np.array(SQUARE, dtype=np.uint8)[:, None], axis=1).astype(np.bool_)
    np.bitwise_or.at(tile, on.tile_bits.offset[1][ink], np.uint8(1) << on.tile_bits.bit[1][ink])
    sent = [
        Burst(on.layout.patterns + on.tile_bytes, tile.tobytes()),
        Burst(on.map_address(1, 0), on.map_entry(1)),
    ]
    moment = course(on, scripted(sent, start=on.view_bursts(0)), [SQUARE, EMPTY]).moments[0]
    assert not moment.refresh.frame.any()
    assert np.array_equal(moment.unbuffered, np.hstack([ink, np.zeros((8, 8))]))


def test_bytes_that_come_too_late_come_too_late_here_as_well() -> None:
    """The same cycles: a frame that is wrecked by a late byte is wrecked without buffering, from the same line on."""
    on = machine(timing=NARROW)
    late = [Burst(on.pattern_address(1, 1), bytes(FULL))] * 2
    run = course(on, scripted(late, start=on.view_bursts(0)), [SQUARE, EMPTY])
    assert np.array_equal(run.moments[0].unbuffered, run.moments[0].refresh.frame)
    assert (run.moments[0].unbuffered < 0).any()
