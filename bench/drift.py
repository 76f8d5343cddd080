"""Speed of the clock in a drifting dough: ours, SciPy's ODE solver, quadrature in a root finder.

The question: after how many hours have the equivalent hours passed, in a dough that relaxes to its room? SciPy's
solve_ivp steps to the event (rtol 1e-6); quad inside brentq integrates anew for every guess.
"""

from __future__ import annotations

import math
from functools import partial

import numpy as np
from numpy.typing import NDArray
from row import Row, require_same
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

import libferment as lf

Array = NDArray[np.float64]
K = lf.Kitchen()
BELOW, ABOVE = K.t_opt_c - K.t_min_c, K.t_max_above_opt_k
T_MAX = K.t_opt_c + ABOVE


def rate(t: float) -> float:
    """Compute the cardinal law's factor, as one would write it (Rosso et al. 1993), not yet 1 at 25 °C."""
    slope = BELOW * (t - K.t_opt_c) + ABOVE * (K.t_opt_c + K.t_min_c - 2 * t)
    return (t - T_MAX) * (t - K.t_min_c) ** 2 / (BELOW * slope)


RATE_25 = rate(25)


def by_solver(equivalent_h: float, start_c: float, room_c: float, tau_h: float) -> float:
    """Step through time with an event."""

    def slope(t: float, _: Array) -> list[float]:
        return [rate(room_c + (start_c - room_c) * math.exp(-t / tau_h)) / RATE_25]

    def reached(_: float, clock: Array) -> float:
        return float(clock[0]) - equivalent_h

    reached.terminal = True  # type: ignore[attr-defined]
    return float(solve_ivp(slope, (0, 100), [0.0], events=reached, rtol=1e-6, atol=1e-9).t_events[0][0])


def by_quadrature(equivalent_h: float, start_c: float, room_c: float, tau_h: float) -> float:
    """Integrate for every guess of a root finder."""

    def short_by(hours: float) -> float:
        def factor(t: float) -> float:
            return rate(room_c + (start_c - room_c) * math.exp(-t / tau_h)) / RATE_25

        return float(quad(factor, 0, hours)[0]) - equivalent_h

    return float(brentq(short_by, 1e-3, 60))


def rows() -> list[Row]:
    """One call and many at once, against the solver and the root finder."""
    one = (3.0, 25.0, 16.0, 3.0)

    def ours() -> float:
        return lf.drift_hours(one[0], start_c=one[1], surroundings_c=one[2], time_constant_h=one[3])

    n = 100_000
    draw = np.random.default_rng(20263).random((4, n))
    start, room, tau, clock = 18 + 12 * draw[0], 4 + 26 * draw[1], 0.5 + 5.5 * draw[2], 0.5 + 2.5 * draw[3]
    there = {"start_c": start, "surroundings_c": room, "time_constant_h": tau}
    found = []
    for name, version in (("SciPy solve_ivp with event", by_solver), ("SciPy quad in brentq", by_quadrature)):
        require_same(name, ours(), version(*one), 1e-4)
        found.append(Row("drift_hours, one call", ours, name, partial(version, *one)))
    solver = partial(by_solver, *one)
    found.append(
        Row(
            f"drift_hours, {n:,} at once",
            lambda: lf.drift_hours(clock, **there),
            "SciPy solve_ivp with event",
            solver,
            n,
        )
    )
    found.append(
        Row(
            f"drift_equivalent_h, {n:,} at once",
            lambda: lf.drift_equivalent_h(clock, **there),
            "SciPy solve_ivp with event",
            solver,
            n,
        )
    )
    return found
