"""Which side is seen, and the view that each side is seen through."""

from planeproof.contract import Machine
from planeproof.display import View, looks


def view_of_side(machine: Machine, side: int) -> View:
    """The view under which only ``side`` can be seen."""
    return View(machine.palette_showing(side), machine.page_of(side), machine.bank_of(side))


def side_shown(machine: Machine, view: View) -> int | None:
    """The side that ``view`` shows, by the colours it looks like; None if it is the view of no side."""
    wanted = _looked_at(machine, view)
    sides = range(machine.sides)
    return next((side for side in sides if _looked_at(machine, view_of_side(machine, side)) == wanted), None)


def _looked_at(machine: Machine, view: View) -> tuple[tuple[int, ...], int, int]:
    shades = looks(machine.colours)
    return tuple(int(shades[byte]) for byte in view.palette), view.page, view.bank
