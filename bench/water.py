"""Speed of water plans, side by side in one run: ours in arrays, one by one and in threads; NumPy; SciPy's root finder.

The NumPy version is the energy balance as one would write it for arrays; the SciPy version finds the water by brentq on
the temperature of the dough, summed over the ingredients. Both must agree with ours to 1e-9 K.
"""

from __future__ import annotations

import os
from concurrent.futures import ThreadPoolExecutor

import numpy as np
from numpy.typing import NDArray
from rich.console import Console
from rich.table import Table
from rise import median_seconds
from scipy.optimize import brentq

import libferment as lf

Array = NDArray[np.float64]
WORK_KJ_PER_KG = 6.0
MIX = lf.Mix(
    flours=[lf.Flour(1100, "whole_wheat")],
    water_g=790,
    salt_g=20,
    compressed_g=9,
    room_c=20,
    tap_c=5,
    bowl=lf.Bowl("steel", 1250, contact=1),
    mixing=lf.ByWork(WORK_KJ_PER_KG),
)
# What the balance takes, written down once more: kg, kJ/(kg K); the flour's moisture gives its heat of hydration.
FLOUR = lf.Composition.of("whole_wheat")
PARTS = {
    "water": (0.790, 4.186),
    "flour": (1.100, 1.80 + 2.5 * (FLOUR.water - 0.13)),
    "salt": (0.020, 0.88),
    "yeast": (0.009, lf.Composition.of("compressed_yeast").specific_heat(25)),
    "bowl": (1.250, 0.49),
}
HEAT_KJ = WORK_KJ_PER_KG * 1.919 + 1.100 * lf.heat_of_hydration(100 * FLOUR.water) - 0.020 * 66


def temperatures(n: int) -> tuple[Array, Array, Array]:
    """Draw wanted dough, flour and room, °C."""
    draw = np.random.default_rng(20262).random((3, n))
    return 20 + 6 * draw[0], 12 + 12 * draw[1], 14 + 12 * draw[2]


def by_numpy(desired: Array, flour: Array, room: Array) -> Array:
    """Compute the water from the balance, arrays in, array out."""
    capacity = {name: kg * c for name, (kg, c) in PARTS.items()}
    others = capacity["flour"] * flour + (capacity["salt"] + capacity["yeast"] + capacity["bowl"]) * room
    return (sum(capacity.values()) * desired - others - HEAT_KJ) / capacity["water"]


def by_scipy(desired: float, flour: float, room: float) -> float:
    """Find the water by trying it."""

    def too_warm(water_c: float) -> float:
        temperatures = {"water": water_c, "flour": flour, "salt": room, "yeast": room, "bowl": room}
        heat = sum(kg * c * temperatures[name] for name, (kg, c) in PARTS.items())
        return (heat + HEAT_KJ) / sum(kg * c for kg, c in PARTS.values()) - desired

    return float(brentq(too_warm, -100, 200, xtol=1e-12))


def main() -> None:
    """Print one table."""
    n = 100_000
    desired, flour, room = temperatures(n)

    def ours() -> Array:
        return lf.water_map(MIX, desired, flour_c=flour, room_c=room)

    for name, other in (
        ("NumPy", by_numpy(desired, flour, room)),
        ("SciPy", [by_scipy(desired[0], flour[0], room[0])]),
    ):
        worst = float(np.max(np.abs(np.asarray(other) - ours()[: len(other)])))
        if worst > 1e-9:
            raise SystemExit(f"bench: the {name} version differs by {worst:.2g} K")
    mixes = [MIX.replace(flour_c=float(f), room_c=float(r)) for f, r in zip(flour[:4000], room[:4000], strict=True)]

    def plans(some: list[lf.Mix]) -> list[lf.WaterPlan]:
        return [lf.water_by_heat_balance(mix, 22) for mix in some]

    workers = os.cpu_count() or 1

    def in_threads() -> None:
        parts = [mixes[start::workers] for start in range(workers)]
        with ThreadPoolExecutor(workers) as pool:
            for _ in pool.map(plans, parts):
                pass

    array_s = median_seconds(ours) / n
    numpy_s = median_seconds(lambda: by_numpy(desired, flour, room)) / n
    one_s = median_seconds(lambda: plans(mixes)) / len(mixes)
    threads_s = median_seconds(in_threads) / len(mixes)
    scipy_s = median_seconds(lambda: by_scipy(22, 18, 20))

    table = Table(title=f"water plans: {n:,} of them, wanted dough, flour and room varying", title_justify="left")
    for column in ("", "per plan", "times ours"):
        table.add_column(column, justify="left" if not column else "right")
    table.add_row("water_map, arrays", f"{array_s * 1e9:.1f} ns", "1")
    table.add_row("NumPy, arrays", f"{numpy_s * 1e9:.1f} ns", f"{numpy_s / array_s:.1f}")
    table.add_section()
    table.add_row("water_by_heat_balance, one by one", f"{one_s * 1e6:.1f} µs", "1")
    table.add_row(f"the same in {workers} threads", f"{threads_s * 1e6:.1f} µs", f"{threads_s / one_s:.2f}")
    table.add_row("SciPy brentq, the temperature alone", f"{scipy_s * 1e6:.1f} µs", f"{scipy_s / one_s:.1f}")
    Console(highlight=False).print(table)


if __name__ == "__main__":
    main()
