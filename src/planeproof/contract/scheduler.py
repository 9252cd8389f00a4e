'''The small interface: all that a scheduler must know. Read this page and write one.

What a scheduler does
=====================

It gets pictures from a renderer, one at a time, and writes bytes into picture memory so that the viewer sees
each of them whole. It has three methods (`Scheduler`):

    start(machine)   the display is off; return the bursts that set picture memory up
    offer(picture)   a picture is ready; answer TAKEN, BUSY or TOO_BIG
    blank(cycles)    one blanking interval of that many cycles; return the bursts to write in it

A scheduler is made anew, without arguments, for every scene. It must be deterministic, must not change what it
is given, must not look at the clock, and may return any iterable of `Burst` from start and blank.

The rules it must keep are values: `planeproof.contract.rules.RULES` (or the command `planeproof rules`).

The conventions
===============

The examples use a machine of 2 x 1 cells with tiles 1, 2 and 3 for a pool, and tile 0 the blank one:

>>> from planeproof.contract import Machine, Tiles, Window
>>> machine = Machine(name="example", window=Window(columns=2, rows=1), tiles=Tiles(count=4, pool=(1, 2, 3)))

**Refreshes.** Refresh n is blanking n, then frame n. So what `blank` writes the first time is seen in frame 0.

**The beginning.** Before `start` all pattern bytes are 0, every map entry names the blank tile, every palette
entry is the background, every register 0. `start` must keep to the pool, the window and its colours (the *own*
rules), and is free otherwise. Until picture 0 is seen, every frame must be background. So at the very least
`start` sets the view of one side (the machine has two, see below):

>>> machine.view_bursts(0)
(Burst(address=1, data=b'\\x01\\x00\\x01', step=1),)

(Palette entry 0 stays background, 1 becomes ink, 2 stays, 3 becomes ink: plane 0 is seen, plane 1 is not.)

**Offers.** At most one offer a refresh, before its blanking, made whether or not the blanking is had. BUSY
means: the same picture is offered again next refresh. TOO_BIG: it will never be shown; only a picture with more
than ``machine.must_show`` occupied cells may be declined. TAKEN: it will be shown, whole, after those taken
before. Nothing else is offered until the answer is TAKEN or TOO_BIG, so a scheduler that can hold one picture
answers BUSY while it is at work. A picture with cell 1 occupied by a full square:

>>> picture = Picture.from_rows(0, [[0] * 8, [0xFF] * 8])
>>> picture.occupied
(1,)
>>> len(picture.occupied) <= machine.must_show
True

**Time.** A burst costs a set-up and then so much for every byte; bursts of one blanking follow one another
without a gap. Byte i (from 0) of a burst that begins after ``spent`` cycles is written at ``spent + set-up + (i
+ 1) x per byte``. It is inside the blanking if that is at most the ``cycles`` that `blank` was told. Here the
set-up is 12 and a byte takes 8, so the third byte of the second 8-byte burst is written at 76 + 12 + 3 x 8 =
112, and a blanking of 111 cycles is one too short for it:

>>> machine.burst_cycles(8)
76
>>> machine.burst_cycles(8) + machine.burst_cycles(3)
112

Palette and view registers may cost otherwise: ``machine.cost(burst)`` takes care of that. To split a burst yourself
you need its two parts, ``machine.rates(view=...)``: the set-up and the cycles for a byte, to the view or not.

>>> setup, per_byte = machine.rates(view=False)
>>> int((111 - machine.burst_cycles(8) - setup) // per_byte)
2

**Steps.** Byte i of a burst goes to ``address + i x step``. The step is 1, neighbouring addresses, on every machine;
``machine.layout.steps`` are all that yours permits. Where a map row is among them, one burst can write a column:

>>> machine.layout.steps, list(Burst(40, bytes(3)).addresses), list(Burst(40, bytes(3), step=64).addresses)
((1,), [40, 41, 42], [40, 104, 168])

**Too late.** A byte that comes too late is a fault (rule blanking-only) and lands on the raster line that is
then being displayed, line ``floor((T - cycles) / cycles per line)``; ``machine.outside`` says what it does
there. Line y is drawn from memory after just the bytes that landed on lines up to y. Past the last displayed
line it lands in the next blanking, still late, and its time is taken off that blanking.

>>> from fractions import Fraction
>>> (112 - 111) // machine.time.cycles_per_line, (112 + 90 - 111) // machine.time.cycles_per_line
(0, 1)

**Disturbances.** A blanking may be shortened (it begins late and ends on time, so bytes left over from before
use up the part that is missing first) or lost. `blank` is told the true figure; for a lost blanking it is not
called at all. So count on nothing but the ``cycles`` of this call:

>>> def fitting(machine, queue, cycles):
...     """As many units from the front of the queue as fit; the bursts of a unit go together."""
...     bursts = []
...     while queue and sum(map(machine.cost, [*bursts, *queue[0]])) <= cycles:
...         bursts.extend(queue.pop(0))
...     return bursts
>>> queue = [(Burst(40, bytes(8)),), (Burst(56, bytes(8)),)]
>>> len(fitting(machine, queue, 151)), len(fitting(machine, queue, 151))
(1, 1)

**Tiles.** Tile t has 8 bytes a plane; byte ``row`` of plane p stands at ``machine.pattern_address(t, p, row)``.
Planar storage keeps the 8 bytes of a plane together; interleaved storage alternates the planes, so neighbouring
bytes belong to different planes; packed storage puts the bits of a pixel side by side in one byte, so a plane
has no address of its own and is written by reading a shadow copy, changing its bits and writing the whole:

>>> first = machine.pattern_address(1, 0)
>>> machine.pattern_address(1, 1) - first, machine.pattern_address(1, 0, row=1) - first
(8, 1)

**Pixels.** Bit 7 is the leftmost pixel of a row (the topmost of a column, where ``machine.tiles.byte`` is
COLUMN). In packed storage the leftmost pixel stands in the high bits and plane 0 is the lowest bit of a pixel.
``picture.rows[c]`` holds the 8 bytes of cell c just as they are written to a plane: byte i is pixel row i (or
pixel column i). Where pictures have more than one bit per pixel, ``picture.rows[c, d]`` are the 8 bytes of bit
d of the pixels, d = 0 the lowest. ``picture.planes[c, d]`` are the same bytes, and d is there whatever the depth.

>>> picture.rows.shape, picture.rows[1].tobytes() == bytes([0xFF] * 8)
((2, 8), True)
>>> picture.planes.shape, picture.planes[1, 0].tobytes() == picture.rows[1].tobytes()
((2, 1, 8), True)

**The map.** ``machine.map_address(page, cell)`` is where the entry of a cell stands,
``machine.map_entry(tile)`` are the bytes that name a tile. The window may lie in a larger map: neighbouring
rows of cells are a map row apart, not a window row. The bytes of one map entry in one burst, all landing in the
same blanking, are one write. An entry counts modulo the least power of two that is not below the number of
tiles; one that names no tile shows as background and breaks rule tile-cap.

>>> machine.map_address(0, 1) - machine.map_address(0, 0), machine.map_entry(3)
(1, b'\\x03')

A register counts modulo the pages or banks there are.

**The cap.** ``machine.cap`` is how many tiles the pool has, and ``machine.cap_of_view`` how many of them one view can
show: as many, but where there are banks only those of the bank that has least of the pool. Here 5 tiles, of which
bank 1 (tiles 4 to 7) has 2:

>>> from planeproof.contract import TileMap
>>> tiles, banked = Tiles(count=8, pool=(1, 2, 3, 5, 6)), TileMap(banks=2)
>>> wings = Machine(name="two banks", window=Window(columns=2, rows=1), tiles=tiles, map=banked)
>>> wings.cap, wings.cap_of_view, machine.cap, machine.cap_of_view
(5, 2, 3, 3)

**Sides.** A side is what holds one picture: a set of planes, a map page, a bank. There are ``machine.sides`` of
them, as many as plane sets, pages or banks, whichever is most; side s uses ``machine.planes_of(s)``,
``machine.page_of(s)``, ``machine.bank_of(s)``, and ``machine.palette_showing(s)`` are the colours under which
only its planes can be seen. The picture to come is written to a hidden side, and revealed by
``machine.view_bursts(s, seen)``, inside one blanking:

>>> machine.sides, list(machine.planes_of(1)), machine.page_of(1), machine.palette_showing(1)
(2, [1], 1, b'\\x00\\x00\\x01\\x01')
>>> machine.view_bursts(1, 0)
(Burst(address=1, data=b'\\x00\\x01\\x01\\x01', step=1),)

(One burst for three colours and the page register, which stand side by side in this machine's memory. Entry 3
keeps its value, but skipping it would cost more than writing it.)

**Looks.** Two pictures are the same to the viewer when they look the same. A picture that looks like the one
being seen counts as seen at once; nothing need be sent for it.

A whole scheduler
=================

>>> class Plain:
...     """Writes every picture from scratch to the hidden side, then reveals it."""
...
...     def start(self, machine):
...         self.machine, self.seen, self.queue = machine, 0, []
...         return machine.view_bursts(0)
...
...     def offer(self, picture):
...         machine, hidden = self.machine, 1 - self.seen
...         if self.queue:
...             return Answer.BUSY
...         if len(picture.occupied) > machine.cap:
...             return Answer.TOO_BIG
...         tiles = dict(zip(picture.occupied, machine.pool))
...         for cell, tile in tiles.items():
...             address = machine.pattern_address(tile, machine.planes_of(hidden)[0])
...             self.queue.append((Burst(address, picture.rows[cell].tobytes()),))
...         for cell in range(machine.cells):
...             address = machine.map_address(machine.page_of(hidden), cell)
...             self.queue.append((Burst(address, machine.map_entry(tiles.get(cell, machine.blank_tile))),))
...         self.queue.append(machine.view_bursts(hidden, self.seen))
...         self.seen = hidden
...         return Answer.TAKEN
...
...     def blank(self, cycles):
...         return fitting(self.machine, self.queue, cycles)

>>> from planeproof import check
>>> check(Plain, machines=[machine], scenes=100).outcome.name
'PASS'
'''

from collections.abc import Iterable
from typing import Protocol

from planeproof.contract.burst import Burst
from planeproof.contract.machine import Machine
from planeproof.contract.picture import Answer, Picture

__all__ = ["Answer", "Burst", "Machine", "Picture", "Scheduler"]


class Scheduler(Protocol):
    """What a candidate must be: an object with these three methods, made anew for every scene."""

    def start(self, machine: Machine) -> Iterable[Burst]:
        """Set up: the bursts to write while the display is off, without a time limit."""

    def offer(self, picture: Picture) -> Answer:
        """Take, put off or decline the next picture; asked at most once a refresh, before its blanking."""

    def blank(self, cycles: int) -> Iterable[Burst]:
        """Use one blanking of ``cycles`` whole cycles: the bursts to write, in this order."""
