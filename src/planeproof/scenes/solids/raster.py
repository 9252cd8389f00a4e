"""Straight lines on whole pixels. A point is (row, column), rows counted downwards."""

import numpy as np
from numpy.typing import NDArray

Pixel = tuple[int, int]


def line(start: Pixel, end: Pixel) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return rows and columns of the pixels from `start` to `end`, both included, in that order.

    One pixel for each step along the longer axis, on the other axis the one nearest to the ideal line. A tie
    goes away from the start, so a line and its reverse may differ by some pixels.
    """
    span = np.subtract(end, start)
    longer, shorter = (0, 1) if abs(span[0]) > abs(span[1]) else (1, 0)
    length = int(abs(span[longer]))
    steps = np.arange(length + 1)
    # Rounded in integers: the rise at a step plus half a pixel, over a common denominator, cut off.
    rises = (2 * abs(span[shorter]) * steps + length) // max(1, 2 * length)
    path = np.empty((2, length + 1), dtype=np.intp)
    path[longer] = start[longer] + np.sign(span[longer]) * steps
    path[shorter] = start[shorter] + np.sign(span[shorter]) * rises
    return path[0], path[1]


def trace(canvas: NDArray[np.uint8], start: Pixel, end: Pixel, value: int) -> None:
    """Set the pixels of the line to `value` on the canvas (height, width); those outside are dropped."""
    rows, columns = line(start, end)
    height, width = canvas.shape
    on_canvas = (rows >= 0) & (rows < height) & (columns >= 0) & (columns < width)
    canvas[rows[on_canvas], columns[on_canvas]] = value
