"""The theorems, one module each (the sixth has two, the eighth has its addresses apart).

Every module ends in a tuple ``OBLIGATIONS``; here they are put together. See `planeproof.spec` for how to add one.
"""

from planeproof.spec.obligation import Obligation
from planeproof.spec.theorems import (
    addresses,
    blanking,
    cap,
    colours,
    counting,
    hiding,
    independence,
    isolation,
    nonvacuity,
    reveal,
    schedulers,
    storage,
)

THEOREMS: dict[int, str] = {
    1: "hiding",
    2: "write isolation",
    3: "exact reveal",
    4: "one blanking, and the cut rule",
    5: "a whole scheduler",
    6: "cap",
    7: "colour limit",
    8: "storage",
    9: "independence",
    10: "non-vacuity",
}
"""What each theorem is about."""

OBLIGATIONS: tuple[Obligation, ...] = (
    *hiding.OBLIGATIONS,
    *isolation.OBLIGATIONS,
    *reveal.OBLIGATIONS,
    *blanking.OBLIGATIONS,
    *schedulers.OBLIGATIONS,
    *cap.OBLIGATIONS,
    *counting.OBLIGATIONS,
    *colours.OBLIGATIONS,
    *addresses.OBLIGATIONS,
    *storage.OBLIGATIONS,
    *independence.OBLIGATIONS,
    *nonvacuity.OBLIGATIONS,
)
"""Every obligation, in the order of the theorems."""
