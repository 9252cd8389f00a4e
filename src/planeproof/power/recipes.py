"""The engine `recipes`: what `planeproof.search.check` plays, in its order, without making anything smaller.

The laws' scenes count, for a rule may be broken in them. Like the check, it ends with the part of the work in which
something was found, and then looks for shorter scenes, which is where a rule is seen that others hid: a fault of which
only other rules have been seen by then is a catch by the wrong rule.
"""

from functools import partial

from planeproof.contract import RULES
from planeproof.judge import Profile
from planeproof.judge.conversation import CALL_SECONDS
from planeproof.power.hunt import CONTRACT, Hunt
from planeproof.search.order import Order
from planeproof.search.smaller import look_for_shorter
from planeproof.search.stages import Limits, Plan, plans
from planeproof.search.trial import Trial
from planeproof.search.units import run


def hunt(hunted: Hunt) -> None:
    """Search as a check of the fault with this seed does, up to the first scene that shows its own rule."""
    searched = _searched(hunted)
    first = {rule.id: after for rule, after in searched.after.items()}
    if searched.fault is not None:
        first.setdefault(CONTRACT, searched.played)
    own = searched.smallest.get(hunted.fault.rule)
    hunted.hears(searched.played, first, None if own is None else own.scene)


def _searched(hunted: Hunt) -> Trial:
    """The only place that knows how a check is put together, beside the check itself."""
    order = Order(
        target=hunted.fault.make,
        machines=(hunted.machine,),
        asked=frozenset(RULES),
        profile=Profile.STRICT,
        call_seconds=CALL_SECONDS,
        seed=hunted.seed,
        as_given=False,
    )
    whole = order.trial()
    for plan in plans(order, Limits(scenes=hunted.limits.scenes, seconds=None)):
        if not plan.is_over(whole):
            _do(order, plan, whole, hunted)
    if whole.decided and whole.fault is None:
        machines, seeks = order.machines, partial(_seeks, hunted, whole, whole)
        look_for_shorter(whole, machines, as_given=False, first_seed=order.seed, go_on=seeks)
    return whole


def _do(order: Order, plan: Plan, whole: Trial, hunted: Hunt) -> None:
    for unit in plan.units():
        part = order.trial()
        go_on = partial(_seeks, hunted, whole, part)
        if not go_on():
            return
        run(order, unit, part, go_on=go_on)
        whole.merge(part)
        if part.interrupted:
            raise KeyboardInterrupt
        if plan.ends_with(part):
            return


def _seeks(hunted: Hunt, whole: Trial, part: Trial) -> bool:
    return hunted.fault.rule not in whole.after | part.after and not hunted.late
