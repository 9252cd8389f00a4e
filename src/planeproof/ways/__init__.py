"""Ways to reveal a picture on one machine: which are possible, what each leaves room for, and what each costs.

Values in, values out: a `Machine` of the contract gives its `Way`s. What a statement rests on is told with it, as the
ids of obligations of `planeproof.spec`, which is not imported: counting needs no solver.

ways (the five) <- hidden_plane, flips, in_place <- way (the value) <- sending (bursts and cycles of a picture),
standards (the other blanking), grounds (what statements rest on).
"""

from planeproof.ways.grounds import Ground, Statement
from planeproof.ways.sending import Sending
from planeproof.ways.standards import Blanking, blanking_here, blanking_there
from planeproof.ways.way import IN_PLACE, Name, Reach, Way
from planeproof.ways.ways import WAYS, needed_above, ways_of

__all__ = [
    "IN_PLACE",
    "WAYS",
    "Blanking",
    "Ground",
    "Name",
    "Reach",
    "Sending",
    "Statement",
    "Way",
    "blanking_here",
    "blanking_there",
    "needed_above",
    "ways_of",
]
