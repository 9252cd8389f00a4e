"""A scheduler to begin with, written as guarded steps: it sends only what differs from what the hidden side holds.

It is right: planeproof prove this_file.py:Starter
What a step is, and what else you may replace (guards, plans, the byte that is sent): python -m pydoc
planeproof.spec.steps.form. Change a line, have it proved again, and see the scene if it is refuted.
Whether code of yours was seen to take these steps: planeproof check your.py:Name --conforms this_file.py:Starter
"""

from planeproof.spec.steps import HiddenPlane, Own, Plan
from planeproof.spec.vocabulary import Formula, Term


class Starter(HiddenPlane):
    """For displays with two map pages, and planes of their own for two pictures."""

    def byte_becomes_pending(self, own: Own, plan: Plan, tile: Term, row: Term) -> Formula:
        """A picture was taken: this byte must be sent if the hidden side holds another one."""
        return plan.wanted(tile, row) != own.shadow(own.hidden, tile, row)

    def entry_becomes_pending(self, own: Own, plan: Plan, cell: Term) -> Formula:
        """So must this entry of the hidden side's page, of an empty cell as well: it may name an older tile."""
        return plan.place(cell) != own.placed(own.hidden, cell)
