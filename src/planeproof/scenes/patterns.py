"""Patterns of one cell: those that recipes draw, and a series of which no two are alike."""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from planeproof.contract import Machine
from planeproof.scenes.source import Source, pick

Rows = NDArray[np.uint8]
"""Bytes of one cell, (depth, 8), or of all of them, (cells, depth, 8)."""


def in_shape(machine: Machine, rows: Rows) -> Rows:
    """Cells of shape (cells, depth, 8) as `Picture` wants them on this machine."""
    return rows[:, 0] if machine.tiles.depth == 1 else rows


def drawn_pattern(machine: Machine, source: Source) -> Rows:
    """One cell's bytes, (depth, 8), never empty: a line, a full square, one pixel, or anything."""
    planes = [pick(source, _PATTERNS)(source) for _ in range(machine.tiles.depth)]
    rows = np.array(planes, dtype=np.uint8)
    return rows if rows.any() else different(machine, 0)


def _line(source: Source) -> list[int]:
    rows = [0] * 8
    rows[pick(source, (7, 0, 3))] = 0xFF
    return rows


def _square(_source: Source) -> list[int]:
    return [0xFF] * 8


def _one_pixel(source: Source) -> list[int]:
    rows = [0] * 8
    rows[7 - source.number(0, 7)] = 1 << source.number(0, 7)
    return rows


def _anything(source: Source) -> list[int]:
    return [source.number(0, 255) for _ in range(8)]


def _nothing(_source: Source) -> list[int]:
    return [0] * 8


_PATTERNS: tuple[Callable[[Source], list[int]], ...] = (_square, _line, _one_pixel, _anything, _nothing)


def different(machine: Machine, number: int) -> Rows:
    """The ``number``-th of a series of patterns that are all different; differing in the last row first."""
    rows = np.zeros((machine.tiles.depth, 8), dtype=np.uint8)
    rows[0, 7], rows[0, 6] = number % 255 + 1, number // 255
    return rows
