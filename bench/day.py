"""Speed of a dough's day: ours, and the same model with SciPy's ODE solver as one would write it.

The day, an invented one, has ten steps: coarse flour soaks, fresh yeast makes it a sponge, the rest of the dough and
later the salt are mixed in; a long bulk in a cool larder with one fold, dividing, bench rest, moulding, the proof of
two tin loaves. SciPy's version (tests/python/independent_day.py, rtol 1e-6) solves every stage with events; its answer
must be ours.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

from row import Row, median_seconds, require_same

import libferment as lf

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "tests" / "python"))
import independent_day as independent

LARDER = lf.Surroundings.daily_swing(14.5, 1.5)
BALL = lf.Piece.ball(pieces=2)


def stage(name: str, piece: lf.Piece, **end: Any) -> lf.Stage:
    """Build a stage in the larder, whose air swings over the day."""
    return lf.Stage(name, piece=piece, surroundings=LARDER, **end)


DAY = lf.Process(
    [
        lf.Mix(flour_g=400, water_g=360, dough_c=17),
        stage("soaker", lf.Piece.tub(), until_h=4),
        lf.Mix(compressed_g=1.6, dough_c=17),
        stage("sponge", lf.Piece.tub(), until_h=10),
        lf.Mix(flour_g=700, water_g=430, compressed_g=6, dough_c=21),
        stage("before the salt", lf.Piece.tub(), until_h=0.75),
        lf.Mix(salt_g=20, dough_c=21),
        stage("bulk", lf.Piece.tub(), until_rise_percent=85, folds_h=[1.5], handling=["divide", "round"]),
        stage("bench rest", BALL, until_h=0.25, handling=["mould"]),
        stage("final proof", lf.Piece.oblong(pieces=2), until_rise_percent=65),
    ]
)


def scipys_day() -> list[Any]:
    """Write the day for the other solver, which takes pieces as heat capacity and loss."""
    results = iter(lf.simulate(DAY).stages)
    state, steps = lf.State(), []
    for step in DAY.steps:
        before, state = state, lf.advance(state, step)
        if isinstance(step, lf.Mix):
            yeast = [("compressed", step.compressed_g)] if step.compressed_g else []
            steps.append(
                independent.Mix(step.dough_c, step.flour_g, water_g=step.water_g, salt_g=step.salt_g, yeast=yeast)
            )
            continue
        result = next(results)
        capacity = 1000 * before.heat_capacity_kj_k / step.piece.pieces
        assert result.time_constant_h is not None
        steps.append(
            independent.Stage(
                step.name,
                ambient_c=independent.Daily(14.5, 1.5, 16),
                capacity_j_k=capacity,
                ua_w_k=capacity / result.time_constant_h / 3600,
                flour_g_of_piece=before.amounts.flour_g / step.piece.pieces,
                until_h=step.until_h,
                until_rise_percent=step.until_rise_percent,
                folds_h=step.folds_h,
                handling=step.handling,
            )
        )
    return steps


def rows() -> list[Row]:
    """The day itself, its forecast, and questions; a forecast and a root of its medians would take so many of days."""
    steps = scipys_day()
    ours = lf.simulate(DAY).stages[-1].end_h
    require_same("SciPy's day", ours, independent.run(steps, rtol=1e-6)[-1].end_h, 1e-4)
    wanted = {"stage": "final proof", "ready_h": ours + 1}
    day = "SciPy solve_ivp"
    days = "512 of SciPy's days"

    def scipy() -> list[Any]:
        return independent.run(steps, rtol=1e-6)

    def scipys_forecast() -> float:
        return 512 * median_seconds(scipy)

    return [
        Row("simulate, ends alone", lambda: lf.simulate(DAY, every_min=0, be_back_by=False), day, scipy),
        Row("simulate, with be back by", lambda: lf.simulate(DAY, every_min=0), day, scipy),
        Row("simulate, every minute", lambda: lf.simulate(DAY), day, scipy),
        Row("forecast, one thread", lambda: lf.forecast(DAY, threads=1), days, scipys_forecast, 1, 1, True),
        Row("forecast", lambda: lf.forecast(DAY), days, scipys_forecast, 1, 1, True),
        Row("yeast_for, one thread", lambda: lf.yeast_for(DAY, threads=1, **wanted), days, scipys_forecast, 1, 1, True),
        Row(
            "latest_start, one thread",
            lambda: lf.latest_start(DAY, threads=1, **wanted),
            days,
            scipys_forecast,
            1,
            1,
            True,
        ),
    ]
