"""The colours that our pictures are printed in: a published colour-blind-safe palette, by its names.

The eight colours are those of M. Okabe and K. Ito, "Color Universal Design (CUD): how to make figures and
presentations that are friendly to colorblind people", 2002, revised 2008 (values from memory; the tests look at them
through simulated colour blindness). Nothing is told by colour alone: see `planeproof.pictures.marks`.
"""

from planeproof.contract import RGB

PALETTE_NAME = "Okabe and Ito, Color Universal Design (2008)"

BLACK: RGB = (0, 0, 0)
ORANGE: RGB = (230, 159, 0)
SKY_BLUE: RGB = (86, 180, 233)
BLUISH_GREEN: RGB = (0, 158, 115)
YELLOW: RGB = (240, 228, 66)
BLUE: RGB = (0, 114, 178)
VERMILLION: RGB = (213, 94, 0)
REDDISH_PURPLE: RGB = (204, 121, 167)

PAPER: RGB = (250, 246, 238)
GROUND: RGB = (233, 226, 212)
LINE: RGB = (176, 166, 150)
TEXT: RGB = (40, 34, 30)
"""Paper, the ground of what lies on it, rules and lettering: as in print, none of them tells anything by its colour."""

SEEN = VERMILLION
"""What the viewer sees now, in every picture that tells sides apart."""

BEHIND = BLUISH_GREEN
"""What stands on the side behind it."""
