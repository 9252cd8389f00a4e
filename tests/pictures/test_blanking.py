import numpy as np
import pytest

from planeproof.candidates.reference import Fresh
from planeproof.contract import Burst, Disturbance, Picture, Scene
from planeproof.judge import play
from planeproof.pictures import Style, course_of, figure_of, kind_named
from planeproof.pictures.blanking import BAR, DROP, LEFT, MARKS, RIGHT, TOP, Part, Stretch, bar, closer, stretches
from tests.pictures.runs import EMPTY, NARROW, SQUARE, course, machine, scripted

ON = machine(timing=NARROW)
PATTERN = Burst(ON.pattern_address(1, 1), bytes(SQUARE))
ENTRY = Burst(ON.map_address(1, 0), ON.map_entry(1))


def parts(*blankings: list[Burst]) -> list[list[Stretch]]:
    """The stretches of each of these blankings."""
    run = course(ON, scripted(*blankings, start=ON.view_bursts(0)), [SQUARE, EMPTY])
    return [stretches(moment) for moment in run.moments]


def test_a_blanking_by_hand() -> None:
    """120 cycles: 10 set up 8 bytes of 8 cycles, 10 set up one, and 28 are left."""
    assert parts([PATTERN, ENTRY])[0] == [
        Stretch(start=0, end=10, part=Part.SET_UP, burst=0),
        Stretch(start=10, end=74, part=Part.PATTERNS, burst=0),
        Stretch(start=74, end=84, part=Part.SET_UP, burst=1),
        Stretch(start=84, end=92, part=Part.MAP, burst=1),
        Stretch(start=92, end=120, part=Part.LEFT),
    ]


def test_what_comes_too_late_goes_beyond_the_end() -> None:
    """Two patterns take 148 of 120 cycles, and nothing is left."""
    (first, *_) = parts([PATTERN, PATTERN])
    assert first[-1] == Stretch(start=84, end=148, part=Part.PATTERNS, burst=1)
    assert not any(stretch.part is Part.LEFT for stretch in first)


def test_what_is_lost_stands_at_the_beginning() -> None:
    """A blanking that is cut to 100 cycles begins 20 cycles late."""
    scene = Scene.of(ON, [Picture.from_rows(0, [SQUARE, EMPTY])], disturbances=[Disturbance(0, 100)])
    moment = course_of(play(scene, scripted([ENTRY], start=ON.view_bursts(0)))).moments[0]
    assert stretches(moment)[:2] == [
        Stretch(start=0, end=20, part=Part.LOST),
        Stretch(start=20, end=30, part=Part.SET_UP, burst=0),
    ]


def test_little_that_there_was_is_enlarged_from_where_it_begins() -> None:
    """Of 120 cycles 12 were had, from 108 on; the 18 that are used go on beyond them. Of 100 nothing is little."""
    for cut, near in ((12, True), (100, False)):
        scene = Scene.of(ON, [Picture.from_rows(0, [SQUARE, EMPTY])], disturbances=[Disturbance(0, cut)])
        found = closer(course_of(play(scene, scripted([ENTRY], start=ON.view_bursts(0)))).moments[0])
        assert (found is not None) is near
        if found is not None:
            assert (found.begin, found.end, found.span) == (108, 12, 18)
            assert found.says == "the 12 cycles that there were, enlarged"
            assert found.stretches == [
                Stretch(start=0, end=10, part=Part.SET_UP, burst=0),
                Stretch(start=10, end=18, part=Part.MAP, burst=0),
            ]


def test_every_cycle_of_every_blanking_is_somewhere() -> None:
    """Stretches follow one another without gap or overlap, from 0 to the end or to the last byte."""
    run = course(ON, Fresh, [SQUARE, EMPTY], [EMPTY, SQUARE])
    for moment in run.moments:
        found = stretches(moment)
        ends = [0, *(stretch.end for stretch in found)]
        assert [stretch.start for stretch in found] == ends[:-1]
        assert ends[-1] == max(ON.blank_cycles, moment.refresh.used)


def test_the_bar_is_to_scale() -> None:
    """Solid patterns from cycle 10 to 74 of 120 fill just those columns of the bar, and drop where they are late."""
    found = [Stretch(start=10, end=74, part=Part.PATTERNS, burst=0)]
    picture = bar(found, 60, 120)
    blue = (picture == MARKS[Part.PATTERNS].colour).all(axis=2)
    length = RIGHT - LEFT
    inside, late = blue[TOP + 4], blue[TOP + BAR + DROP // 4]
    columns = np.flatnonzero(inside | late)
    assert (columns[0], columns[-1]) == (LEFT + length * 10 // 120, LEFT + length * 74 // 120 - 1)
    end = LEFT + length * 60 // 120
    assert not inside[end + 3 :].any()
    assert not late[:end].any()
    assert late[end + 3 : columns[-1]].all()


@pytest.mark.parametrize(
    ("bursts", "said"),
    [
        ([], "A blanking of 120 cycles, in which nothing is written."),
        ([ENTRY], "1 burst in a blanking of 120 cycles: 18 cycles are used, 102 are left."),
        ([PATTERN, PATTERN], "2 bursts in a blanking of 120 cycles: 148 cycles are used, 28 TOO MANY."),
    ],
)
def test_what_is_said_of_it(bursts: list[Burst], said: str) -> None:
    """How many bursts, how many cycles, and what is left or too much."""
    run = course(ON, scripted(bursts, start=ON.view_bursts(0)), [SQUARE, EMPTY])
    assert figure_of(run, 0, kind_named("blanking"), Style()).notes == (said,)
