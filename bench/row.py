"""A line of the bench: what of ours is timed, and what one would otherwise write."""

from __future__ import annotations

import timeit
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Row:
    """Calls that answer the same question. `per`: answers of one call, so that times are those of one answer."""

    name: str
    ours: Callable[[], object]
    alternative: str
    other: Callable[[], object]
    per: int = 1
    other_per: int = 1
    other_is_seconds: bool = False
    """Whether `other` measures itself and returns seconds."""


def median_seconds(work: Callable[[], object], budget: float = 0.4) -> float:
    """Median time of one call, over as many calls as fit the budget."""
    work()
    once = max(timeit.timeit(work, number=1), 1e-7)
    inner = max(1, int(2e-3 / once))
    repeats = max(3, min(101, int(budget / (inner * once))))
    return float(np.median(timeit.repeat(work, number=inner, repeat=repeats))) / inner


def ours_seconds(row: Row) -> float:
    """Measure one answer of ours."""
    return median_seconds(row.ours) / row.per


def other_seconds(row: Row) -> float:
    """Measure one answer of the alternative."""
    seconds = row.other() if row.other_is_seconds else median_seconds(row.other)
    assert isinstance(seconds, float)
    return seconds / row.other_per


def require_same(name: str, ours: object, other: object, within: float) -> None:
    """Refuse to time what does not answer the same."""
    worst = float(np.max(np.abs(np.asarray(other, float) / np.asarray(ours, float) - 1)))
    if not worst <= within:
        raise SystemExit(f"bench: {name} differs from ours by {worst:.2g}")
