"""Speed of water plans: ours in arrays and one by one; NumPy; SciPy's root finder.

The NumPy version is the energy balance as one would write it for arrays; the SciPy version finds the water by brentq on
the temperature of the dough, summed over the ingredients. Both must agree with ours to 1e-9 K.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from row import Row, require_same
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


def rows() -> list[Row]:
    """Many rooms at once, and plans one by one."""
    n = 100_000
    desired, flour, room = temperatures(n)

    def ours() -> Array:
        return lf.water_map(MIX, desired, flour_c=flour, room_c=room)

    require_same("NumPy", ours() + 273.15, by_numpy(desired, flour, room) + 273.15, 1e-11)
    require_same("SciPy", ours()[0] + 273.15, by_scipy(desired[0], flour[0], room[0]) + 273.15, 1e-11)
    mix = MIX.replace(flour_c=18, room_c=20)
    return [
        Row(f"water_map, {n:,} at once", ours, "NumPy", lambda: by_numpy(desired, flour, room), n, n),
        Row(
            "water_by_heat_balance, one plan",
            lambda: lf.water_by_heat_balance(mix, 22),
            "SciPy brentq, the temperature alone",
            lambda: by_scipy(22, 18, 20),
        ),
    ]
