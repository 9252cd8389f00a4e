import os
import signal
import threading
from dataclasses import replace

import pytest
import z3

from planeproof.spec import OBLIGATIONS, Answer, Obligation, Outcome, Question, prove
from planeproof.spec.solving import answered
from planeproof.spec.symbols import Size, Symbols
from planeproof.spec.theorems.isolation import a_map_entry

HARD = [o for o in OBLIGATIONS if o.id.startswith(("hiding-", "pattern-step-", "three-writes-", "colours-3-planes-3"))]


def obligation(name: str) -> Obligation:
    """The obligation of that id."""
    return next(o for o in OBLIGATIONS if o.id == name)


@pytest.mark.parametrize("asked", HARD, ids=lambda o: str(o.id))
def test_a_spent_limit_is_unknown(asked: Obligation) -> None:
    """With next to no resources the answer is UNKNOWN and says why: open, whatever was wanted, and no witness."""
    result = prove(asked, rlimit=500)
    assert (result.answer, result.outcome, result.witness) == (Answer.UNKNOWN, Outcome.OPEN, None)
    assert result.reason is not None
    assert result.reason.startswith("z3 gave up")


def test_no_limit_makes_a_wrong_answer() -> None:
    """At every limit from nothing on, each answer is the wanted one or UNKNOWN."""
    asked = obligation("reveal-2-planes-depth-1")
    answers = {prove(asked, rlimit=limit).answer for limit in (1, 10, 100, 1_000, 10_000, 100_000)}
    assert answers == {Answer.PROVED, Answer.UNKNOWN}


def test_questions_do_not_depend_on_earlier_ones() -> None:
    """Asked again after others, an obligation uses exactly the same resources."""
    asked = obligation("hiding-3-planes-depth-1")
    first = prove(asked)
    prove(obligation("reveal-4-planes-depth-2"))
    assert prove(asked).used == first.used


def test_a_model_of_chosen_instances_is_not_a_counterexample() -> None:
    """Where a premise is given at chosen places only, a model leaves the answer UNKNOWN; it is kept to look at."""
    inexact = replace(obligation("seen-2-planes-depth-1").without("background and inks differ"), exact=False)
    result = prove(inexact)
    assert (result.answer, result.outcome) == (Answer.UNKNOWN, Outcome.OPEN)
    assert result.witness
    assert "chosen instances" in str(result.reason)
    assert prove(replace(inexact, exact=True)).answer is Answer.REFUTED


def _wrong_page(context: z3.Context) -> Question:
    """A planted wrong theorem: whatever is written to the map is hidden if it is written to page 1."""
    symbols = Symbols(context, Size(planes=2))
    memory, view, pixel, write = symbols.memory(), symbols.view("view"), symbols.pixel(), a_map_entry(symbols)
    shown = {"shown page": view.page, "written cell": write.cell, "cell": pixel.cell}
    goal = memory.shown(view, pixel) == memory.after(write).shown(view, pixel)
    return Question(premises={"the page is 1": write.page == 1}, goal=goal, shown=shown)


def test_a_planted_wrong_theorem_is_refuted_with_a_witness() -> None:
    """The witness has page 1 shown and the written cell looked at, and the result is contrary to what was wanted."""
    planted = Obligation(id="planted", theorem=2, statement="Page 1 is hidden.", size="", build=_wrong_page)
    result = prove(planted)
    assert (result.answer, result.outcome) == (Answer.REFUTED, Outcome.CONTRARY)
    assert result.witness is not None
    assert result.witness["shown page"] == 1
    assert result.witness["written cell"] == result.witness["cell"]


def test_bad_input_is_named() -> None:
    """A limit of 0, which z3 takes for none, a premise that is not there and an impossible size are refused."""
    asked = obligation("hiding-2-planes-depth-1")
    with pytest.raises(ValueError, match="rlimit is 0: give at least 1"):
        prove(asked, rlimit=0)
    with pytest.raises(ValueError, match="no premise 'the moon is full'; there are: the palette shows the side"):
        asked.without("the moon is full")
    with pytest.raises(ValueError, match="tiles is 3: give a power of two"):
        Size(planes=1, tiles=3)
    with pytest.raises(ValueError, match="planes is 5: give 1 to 4"):
        Size(planes=5)


def test_ctrl_c_is_no_answer() -> None:
    """Pressed while z3 is at work, which is at two factors of 60 bits that it doesn't find soon."""
    x, y = z3.BitVecs("x y", 72)
    solver = z3.Solver()
    solver.set("rlimit", 60_000_000)
    solver.add(
        x * y == 1_000_000_007 * 1_000_000_009, z3.UGT(x, 1), z3.ULT(x, 1 << 34), z3.UGT(y, 1), z3.ULT(y, 1 << 34)
    )
    pressing = threading.Timer(0.5, os.kill, (os.getpid(), signal.SIGINT))
    pressing.start()
    with pytest.raises(KeyboardInterrupt):
        answered(solver)
    pressing.join()
