"""A comparison as JSON, for programs: the figures of the table, unrounded."""

import msgspec

from planeproof.judge import Basis
from planeproof.search.comparing import Comparison, Standing
from planeproof.search.spending import Spending

VERSION = 1
"""The form that is written here."""


def comparison_json(comparison: Comparison) -> bytes:
    """``comparison`` as JSON text, a value a line.

    Cycles are numbers (exact where they are whole), shares are from 0 to 1, rules and outcomes are named as everywhere.
    """
    data = {
        "planeproof_comparison": VERSION,
        "outcome": comparison.outcome.name,
        "machines": comparison.machines,
        "profile": comparison.profile.value,
        "seed": comparison.seed,
        "scenes": [_basis(basis) for basis in comparison.basis],
        "candidates": [_standing(standing) for standing in comparison.standings],
    }
    return msgspec.json.format(msgspec.json.encode(data), indent=1) + b"\n"


def _basis(basis: Basis) -> dict[str, object]:
    return {"source": basis.source, "scenes": basis.scenes, "independent": basis.independent}


def _standing(standing: Standing) -> dict[str, object]:
    return {
        "target": standing.target,
        "outcomes": [outcome.name for outcome in standing.outcomes],
        "scenes_played": standing.played,
        "broken": {rule.id: scenes for rule, scenes in standing.broken},
        "exposed": {rule.id: scenes for rule, scenes in standing.exposed},
        "not_exercised": [rule.id for rule in standing.idle],
        "pictures_declined": standing.declined,
        "fault": None if standing.fault is None else str(standing.fault),
        "spent": [_spending(spending) for spending in standing.spent],
    }


def _spending(spending: Spending) -> dict[str, object]:
    cost = spending.cost
    return {
        "machine": cost.machine,
        "pictures_seen": cost.shown,
        "pictures_declined": spending.declined,
        "refreshes_a_picture": cost.refreshes_each if cost.shown else None,
        "bytes_a_picture": cost.bytes_each if cost.shown else None,
        "blankings": spending.blankings,
        "bytes": spending.sent,
        "bytes_a_blanking": spending.mean_bytes,
        "most_bytes": spending.most_bytes,
        "cycles_a_blanking": spending.mean_cycles,
        "most_cycles": _number(spending),
        "share_of_fullest_blanking": cost.fullest,
        "tiles": spending.tiles,
        "cap": spending.cap,
        "bytes_held": spending.held,
        "bytes_unseen": spending.unseen,
        "bytes_lost": spending.lost,
        "longest_wait": cost.longest_wait,
        "patience": cost.patience,
    }


def _number(spending: Spending) -> int | float:
    most = spending.most_cycles
    return most if isinstance(most, int) else float(most)
