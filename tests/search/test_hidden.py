"""Rules that others hide: those that can't come first are not looked for, the others are."""

import pytest

from planeproof.candidates.faults.zoo import ZOO, Fault
from planeproof.contract import RULES, Rule
from planeproof.contract.rules import IN_ORDER, PROGRESS, WHOLE_REVEAL
from planeproof.judge import Profile
from planeproof.machines import read_machine
from planeproof.search.order import Order
from planeproof.search.smaller import IMPLIED, hidden

SEVERAL_SIDES = [fault for fault in ZOO if read_machine(fault.machine).sides > 1]
SCENES = 40


def order_of(fault: Fault, profile: Profile = Profile.STRICT) -> Order:
    """A check of the fault on its machine."""
    return Order(
        target=fault.make,
        machines=(read_machine(fault.machine),),
        asked=frozenset(RULES),
        profile=profile,
        call_seconds=10.0,
        seed=0,
        as_given=False,
    )


@pytest.mark.parametrize("fault", SEVERAL_SIDES[::3], ids=lambda fault: fault.id)
def test_what_discipline_implies_is_never_broken_first(fault: Fault) -> None:
    """Where there is more than one side, in scenes drawn at random; though it is broken later in some."""
    order = order_of(fault)
    trial = order.trial()
    for number in range(SCENES):
        trial.play(order.draw(order.machines[0], "hidden", number))
    assert not trial.smallest.keys() & IMPLIED


@pytest.mark.parametrize(
    ("fault", "profile", "broken", "wanted"),
    [
        ("old-ink-left", Profile.STRICT, set(), set()),
        ("old-ink-left", Profile.STRICT, {WHOLE_REVEAL, IN_ORDER, PROGRESS}, {PROGRESS}),
        ("cleared-first", Profile.STRICT, {WHOLE_REVEAL, PROGRESS}, {WHOLE_REVEAL, PROGRESS}),
        ("cleared-first", Profile.SEEN, {WHOLE_REVEAL, PROGRESS}, {WHOLE_REVEAL, PROGRESS}),
    ],
)
def test_others_are_looked_for_where_there_may_be_some(
    fault: str, profile: Profile, broken: set[Rule], wanted: set[Rule]
) -> None:
    """What was broken after the first; what discipline implies only where discipline does not rule it out."""
    order = order_of(next(each for each in ZOO if each.id == fault), profile)
    trial = order.trial()
    for number in range(SCENES):
        trial.play(order.draw(order.machines[0], "hidden", number))
    assert trial.smallest
    trial.broken = {*trial.smallest, *broken}
    assert hidden(trial, order.machines) == wanted
