"""Speed of the clock in a drifting dough, in one run: ours, SciPy's ODE solver, quadrature in a root finder.

The question: after how many hours have the equivalent hours passed, in a dough that relaxes to its room? SciPy's
solve_ivp steps to the event (rtol 1e-6); quad inside brentq integrates anew for every guess.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray
from rich.console import Console
from rich.table import Table
from rise import median_seconds
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


def main() -> None:
    """Print one table."""

    def ours() -> float:
        return lf.drift_hours(3.0, start_c=25.0, surroundings_c=16.0, time_constant_h=3.0)

    for name, other in (("solve_ivp", by_solver(3, 25, 16, 3)), ("quad + brentq", by_quadrature(3, 25, 16, 3))):
        if abs(other / ours() - 1) > 1e-4:
            raise SystemExit(f"bench: {name} differs: {other} against {ours()}")
    n = 100_000
    draw = np.random.default_rng(20263).random((4, n))
    start, room, tau, clock = 18 + 12 * draw[0], 4 + 26 * draw[1], 0.5 + 5.5 * draw[2], 0.5 + 2.5 * draw[3]
    one_s = median_seconds(ours)
    array_s = median_seconds(lambda: lf.drift_hours(clock, start_c=start, surroundings_c=room, time_constant_h=tau)) / n
    ahead_s = (
        median_seconds(lambda: lf.drift_equivalent_h(clock, start_c=start, surroundings_c=room, time_constant_h=tau))
        / n
    )
    solver_s = median_seconds(lambda: by_solver(3, 25, 16, 3))
    quadrature_s = median_seconds(lambda: by_quadrature(3, 25, 16, 3))
    table = Table(title="hours until 3 equivalent hours in a drifting dough", title_justify="left")
    for column in ("", "per answer", "÷ one call", "÷ array"):
        table.add_column(column, justify="left" if not column else "right")
    table.add_row("drift_hours, one call", f"{one_s * 1e6:.2f} µs", "1", f"{one_s / array_s:.0f}")
    table.add_row(f"drift_hours, {n:,} at once", f"{array_s * 1e9:.1f} ns", "", "1")
    table.add_row(f"drift_equivalent_h, {n:,} at once", f"{ahead_s * 1e9:.1f} ns", "", "")
    table.add_row(
        "SciPy solve_ivp with event", f"{solver_s * 1e6:.0f} µs", f"{solver_s / one_s:.0f}", f"{solver_s / array_s:.0f}"
    )
    table.add_row(
        "SciPy quad in brentq",
        f"{quadrature_s * 1e6:.0f} µs",
        f"{quadrature_s / one_s:.0f}",
        f"{quadrature_s / array_s:.0f}",
    )
    Console(highlight=False).print(table)


if __name__ == "__main__":
    main()
