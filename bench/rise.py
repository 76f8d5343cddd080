"""Speed of hours_to_rise: ours, NumPy straightforward, NumPy tuned by hand, a bare loop.

The NumPy versions compute the same formulas and must agree to 1e-9. The bare loop calls our own vector exp and log as
often per scenario as hours_to_rise does (4 exp, 2 expm1, 1 log, 3 log1p) and does nothing else.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from functools import partial
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from row import Row, require_same

import libferment as lf

Array = NDArray[np.float64]
ROOT = Path(__file__).resolve().parent.parent
KITCHEN = lf.Kitchen()
SHARE = 0.30 / 0.33  # g gassing dry matter per g of instant yeast


def scenarios(n: int) -> tuple[Array, Array, Array, Array]:
    """Draw rise %, dough °C, instant yeast %, salt %: all varying, all reachable."""
    draw = np.random.default_rng(20261).random((4, n))
    return 20 + 180 * draw[0], 5 + 30 * draw[1], 0.1 + 1.9 * draw[2], 3 * draw[3]


def straightforward(rise: Array, t: Array, yeast: Array, salt: Array, water: float = 65.0) -> Array:
    """Compute as one would write it from the formulas: whole arrays, Newton's method until nothing moves."""
    k = KITCHEN
    t_max = k.t_opt_c + k.t_max_above_opt_k

    def cardinal(x: Array | float) -> Array | float:
        top = (x - t_max) * (x - k.t_min_c) ** 2
        slope = (k.t_opt_c - k.t_min_c) * (x - k.t_opt_c) - (k.t_opt_c - t_max) * (k.t_opt_c + k.t_min_c - 2 * x)
        return top / ((k.t_opt_c - k.t_min_c) * slope)

    def activity(salt_percent: Array | float, water_percent: float) -> Array | float:
        return np.exp(-0.0180153 * (2 * 0.92 * salt_percent / 58.443) / (water_percent / 1000))

    aw = activity(salt, water)
    solute = np.maximum(aw - k.aw_min, 0) / (activity(2.0, 65.0) - k.aw_min)
    speed = cardinal(t) / cardinal(25.0) * solute * (water / 65) ** k.water_exponent

    kelvin = t + 273.15
    saturation = 611.21 * np.exp((18.678 - t / 234.5) * (t / (257.14 + t)))
    dry = 101325 - aw * saturation
    solubility = np.exp(-60.2409 + 93.4517 * (100 / kelvin) + 23.3585 * np.log(kelvin / 100))
    mass = 100 + water + salt + yeast
    gas_free = mass / k.gas_free_density
    mixed = gas_free / (1 - k.void_fraction)
    air = 1e-3 * dry * (mixed - gas_free) / (8.314462618 * kelvin)
    ratio = 1 + rise / 100
    span = k.retention_limit - k.retention_onset
    with np.errstate(invalid="ignore", divide="ignore"):
        leaking = k.retention_onset - span * np.log((k.retention_limit - ratio) / span)
    free = np.where(ratio > k.retention_onset, leaking, ratio)
    cells = (free - 1) * mixed * dry / (1e3 * 8.314462618 * kelvin)
    gas = cells + solubility * (dry / 101325) * water * cells / (air + cells)

    work = -(k.gas_capacity / k.gassing_rate) * np.log1p(-gas / k.gas_capacity)
    dose = SHARE * yeast
    tau, mu, lag, increment = k.start_up_instant_h, k.growth_rate, k.growth_lag_h, k.growth_increment
    capacity = dose + increment
    r = mu * capacity / increment
    share = dose / capacity
    theta = np.minimum(work / dose + tau, 100.0)
    for _ in range(100):
        before = dose * theta
        after = dose * lag + increment / mu * np.log1p(share * np.expm1(r * np.maximum(theta - lag, 0)))
        done = np.where(theta <= lag, before, after) - dose * tau * -np.expm1(-theta / tau)
        mass_now = np.where(theta <= lag, dose, capacity / (1 + (1 / share - 1) * np.exp(-r * (theta - lag))))
        step = (done - work) / (mass_now - dose * np.exp(-theta / tau))
        theta = np.maximum(theta - step, 1e-9)
        if np.max(np.abs(step) / theta) < 1e-12:
            break
    return theta / speed


def by_hand(rise: Array, t: Array, yeast: Array, salt: Array, water: float = 65.0) -> Array:
    """Compute the same, tuned: blocks that fit the cache, constants taken out, our start and our step."""
    out = np.empty_like(rise)
    for start in range(0, len(rise), 4096):
        block = slice(start, start + 4096)
        out[block] = _by_hand_block(rise[block], t[block], yeast[block], salt[block], water)
    return out


def _by_hand_block(rise: Array, t: Array, yeast: Array, salt: Array, water: float) -> Array:
    k = KITCHEN
    below, above = k.t_opt_c - k.t_min_c, k.t_max_above_opt_k
    slope = 2 * above - below
    offset = below * k.t_opt_c - above * (k.t_opt_c + k.t_min_c)
    t_max = k.t_opt_c + above
    norm = (offset + slope * 25) / ((t_max - 25) * (25 - k.t_min_c) ** 2)
    aw = np.exp(salt * (-0.0180153 * 2 * 0.92 / 58.443 / (water / 1000)))
    aw_reference = np.exp(-0.0180153 * 2 * 0.92 / 58.443 / 0.065 * 2)
    from_min = t - k.t_min_c
    speed = (t_max - t) * from_min * from_min / (offset + slope * t) * (aw - k.aw_min)
    speed *= norm / (aw_reference - k.aw_min) * (water / 65) ** k.water_exponent

    hundreds = t * 0.01 + 2.7315
    dry = 101325 - aw * (611.21 * np.exp((18.678 - t * (1 / 234.5)) * (t / (257.14 + t))))
    solved = np.exp(-60.2409 + 93.4517 / hundreds + 23.3585 * np.log(hundreds)) * dry * (water / 101325)
    per_ratio = (100 + water + salt + yeast) * (1 / (k.gas_free_density * (1 - k.void_fraction)))
    per_ratio *= dry / (hundreds * 831446.2618)
    grown = rise * 0.01
    span = k.retention_limit - k.retention_onset
    beyond = np.maximum(grown + (1 - k.retention_onset), 0)
    cells = (np.minimum(grown, k.retention_onset - 1) - span * np.log1p(beyond * (-1 / span))) * per_ratio
    gas = cells + solved * cells / (per_ratio * k.void_fraction + cells)
    dose = SHARE * yeast
    target = np.log1p(gas * (-1 / k.gas_capacity)) * (-k.gas_capacity / k.gassing_rate) / dose

    tau, mu, lag, increment = k.start_up_instant_h, k.growth_rate, k.growth_lag_h, k.growth_increment
    v = target * (1 / tau)
    w = np.sqrt(2 * v)
    top = 1 + w * (0.241634 + w * (0.109461 + w * (0.0374729 + w * (0.00833788 + w * 0.00330706))))
    u = w * top / (1 + w * (0.0747676 + w * (0.0707412 + w * (0.0163658 + w * 0.00661732))))
    first = -np.expm1(-u)
    f = u - first - v
    second = 1 - first
    u -= f * (first * first - 0.5 * f * second) / (first * (first * first - f * second) - f * f * second / 6)
    y = u * tau
    theta = y.copy()
    (late,) = np.nonzero(y > lag)
    if late.size:
        y, dose, target = y[late], dose[late], target[late]
        done = (y - lag) * (mu / increment) * dose
        spent = -np.expm1(-done)
        added = increment * spent / dose
        first = 1 / (1 + added)
        hours = lag + (done + np.log1p(added)) * (increment / mu) / (dose + increment)
        second = mu * (spent - 1) * first * first
        left = np.exp(hours * (-1 / tau))
        f = y - tau * (1 - left) - target
        d1 = 1 - left * first
        d2 = left * (first * first / tau - second)
        step = 2 * f * d1 / (2 * d1 * d1 - f * d2)
        theta[late] = hours + step * (step * second * 0.5 - first)
    return theta / speed


def bare_loop(n: int) -> float:
    """Seconds of the bare loop over n scenarios, the median of several runs, compiled here with the library's flags."""
    compiler = os.environ.get("CXX") or shutil.which("g++") or shutil.which("c++")
    if compiler is None:
        raise SystemExit("bench: no C++ compiler found; install g++ or set CXX")
    flags = ["-std=c++20", "-O3", "-fno-math-errno", "-fno-trapping-math", "-ffp-contract=off"]
    with tempfile.TemporaryDirectory() as folder:
        program = Path(folder) / "bare"
        source = ROOT / "bench" / "bare_loop.cpp"
        subprocess.run([compiler, *flags, f"-I{ROOT}/libferment/src", str(source), "-o", str(program)], check=True)
        return float(subprocess.run([program, str(n)], check=True, capture_output=True, text=True).stdout)


def rows() -> list[Row]:
    """Arrays of three sizes against NumPy and the floor, and one call."""
    found = []
    for n in (1_000, 10_000, 1_000_000):
        rise, t, yeast, salt = scenarios(n)

        def ours(rise: Array = rise, t: Array = t, yeast: Array = yeast, salt: Array = salt) -> Array:
            return lf.hours_to_rise(rise, dough_c=t, yeast_percent=yeast, salt_percent=salt)

        for name, version in (("NumPy", straightforward), ("NumPy, tuned by hand", by_hand)):
            require_same(name, ours(), version(rise, t, yeast, salt), 1e-9)
            call = partial(version, rise, t, yeast, salt)
            found.append(Row(f"hours_to_rise, {n:,} at once", ours, name, call, n, n))
        floor = partial(bare_loop, n)
        found.append(Row(f"hours_to_rise, {n:,} at once", ours, "its exp and log alone", floor, n, n, True))
    one = tuple(np.array([value]) for value in (100.0, 24.0, 0.5, 2.0))
    found.append(
        Row(
            "hours_to_rise, one call",
            lambda: lf.hours_to_rise(100, dough_c=24, yeast_percent=0.5),
            "NumPy",
            partial(straightforward, *one),
        )
    )
    return found
