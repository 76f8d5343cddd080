"""A kitchen learned from logs, against SciPy's optimum of the posterior written down anew."""

import math

import numpy as np
import pytest
from scipy.optimize import minimize
from scipy.stats import t as student

import libferment as lf

ROWS = [row for row in lf.parameters() if row.scale != "fixed"]
NAMES = [row.name for row in ROWS]
SCALE = 0.10  # of the noise of ln time
RISES = [  # dough °C, instant %, rise %, hours over what the default kitchen expects, how it was seen
    (24.0, 0.7, 90.0, 0.80, "at"),
    (19.0, 0.4, 60.0, 0.85, "at"),
    (26.0, 1.1, 120.0, 0.70, "at"),
    (22.0, 0.5, 80.0, 0.90, "past"),
    (21.0, 0.8, 70.0, 0.60, "not_yet"),
]


def hours(rise, kitchen):
    dough_c, yeast_percent, rise_percent, *_ = rise
    return lf.hours_to_rise(rise_percent, dough_c=dough_c, yeast_percent=yeast_percent, kitchen=kitchen)


def log_of(rise):
    dough_c, yeast_percent, rise_percent, times, was = rise
    mix = lf.Mix(flour_g=1000, water_g=650, salt_g=20, instant_g=10 * yeast_percent, dough_c=dough_c)
    seen_h = times * hours(rise, lf.Kitchen())
    bulk = lf.Stage("bulk", surroundings=lf.Surroundings.dough(dough_c), until_h=seen_h)
    return lf.Log(process=lf.Process([mix, bulk]), seen=[lf.Sighting("bulk", seen_h, rise_percent, was=was)])


def kitchen_at(z):
    default = lf.Kitchen()
    return lf.Kitchen(
        **{
            row.name: lf.moved(row, getattr(default, row.name), row.prior_sd * by)
            for row, by in zip(ROWS, z, strict=True)
        }
    )


def slopes(z):
    """d ln time/d ln gassing rate of each rise."""
    kitchen, step = kitchen_at(z), 0.01
    more, less = (kitchen.replace(gassing_rate=kitchen.gassing_rate * math.exp(by)) for by in (step, -step))
    return [math.log(hours(rise, more) / hours(rise, less)) / (2 * step) for rise in RISES]


def cost(z, by_bake=None):
    """Minus ln of the posterior, the bake by a fine sum; its effect on ln time by such slopes, if they are given."""
    total = 0.5 * float(z @ z)
    kitchen = kitchen_at(z)
    bakes = np.linspace(-4.5, 4.5, 61)
    rates = kitchen.gassing_rate * np.exp(math.hypot(kitchen.bake_sd, kitchen.model_sd) * bakes)
    weights = np.exp(-0.5 * bakes**2) / np.exp(-0.5 * bakes**2).sum()
    for place, rise in enumerate(RISES):
        seen_h = rise[3] * hours(rise, lf.Kitchen())
        if by_bake is None:
            off = (
                np.array([math.log(seen_h / hours(rise, kitchen.replace(gassing_rate=rate))) for rate in rates]) / SCALE
            )
        else:
            off = (
                math.log(seen_h / hours(rise, kitchen)) - by_bake[place] * np.log(rates / kitchen.gassing_rate)
            ) / SCALE
        likelihood = {"at": student.pdf(off, 4), "past": student.cdf(off, 4), "not_yet": student.sf(off, 4)}[rise[4]]
        total -= math.log(weights @ likelihood)
    return total


def test_the_mode_is_the_one_that_scipy_finds():
    told = lf.calibrate([log_of(rise) for rise in RISES])
    default = lf.Kitchen()
    scale = {"linear": lambda x: x, "logarithmic": math.log, "logit": lambda x: math.log(x / (1 - x))}
    ours = np.array(
        [
            (scale[row.scale](getattr(told.kitchen, row.name)) - scale[row.scale](getattr(default, row.name)))
            / row.prior_sd
            for row in ROWS
        ]
    )
    nowhere = np.zeros(len(ROWS))
    by_bake = slopes(ours)
    theirs = minimize(cost, nowhere, args=(by_bake,), method="BFGS", options={"gtol": 1e-3})
    assert theirs.fun < cost(nowhere, by_bake) - 1
    assert cost(ours, by_bake) == pytest.approx(theirs.fun, abs=1e-4)
    assert ours == pytest.approx(theirs.x, abs=0.01)
    # That the bake's effect is taken as a straight line moves the mode by a small part of what is left uncertain.
    curved = minimize(cost, ours, method="BFGS", options={"gtol": 1e-3})
    left = np.array([row.sd / row.prior_sd for row in told.learned])
    assert np.all(np.abs(ours - curved.x) < 0.15 * left)


def test_a_learned_kitchen_narrows_the_next_forecast_and_is_saved(tmp_path):
    told = lf.calibrate([log_of(rise) for rise in RISES])
    (rate,) = (row for row in told.learned if row.name == "gassing_rate")
    assert rate.value == told.kitchen.gassing_rate > 12
    assert rate.share < 0.65
    process = lf.Process(
        [
            lf.Mix(flour_g=1000, water_g=650, salt_g=20, instant_g=6, dough_c=23),
            lf.Stage("bulk", surroundings=lf.Surroundings.dough(23), until_rise_percent=90),
        ]
    )
    before, after = (lf.forecast(process, kitchen=kitchen).stages[0] for kitchen in (None, told.kitchen))
    width = [math.log(late / early) for early, late in (its.interval_h(0.9) for its in (before, after))]
    assert width[1] < 0.7 * width[0]
    assert not [
        notice for notice in lf.forecast(process, kitchen=told.kitchen).notices if notice.code == "nothing_learned"
    ]
    path = tmp_path / "ours.json"
    told.kitchen.save(path)
    assert lf.Kitchen.load(path) == told.kitchen
    # Learned from, it goes on learning: the prior of the next.
    further = lf.calibrate([log_of(RISES[0])], prior=told.kitchen)
    (again,) = (row for row in further.learned if row.name == "gassing_rate")
    assert again.prior_sd == pytest.approx(rate.sd, rel=1e-9)
    assert again.sd < rate.sd


def test_refusals():
    log = log_of(RISES[0])
    with pytest.raises(lf.InvalidInput, match="there are no logs"):
        lf.calibrate([])
    with pytest.raises(lf.InvalidInput, match='no stage is named "proof"; known: bulk') as refused:
        lf.calibrate([log, log.replace(seen=[lf.Sighting("proof", 1, 50)])])
    assert refused.value.path == "logs[1].seen[0].stage"
    with pytest.raises(lf.InvalidInput, match="sighting"):
        lf.Sighting("bulk", 1, 50, was="perhaps")
    with pytest.raises(lf.NoSolution, match="beyond what a dough can hold"):
        lf.calibrate([log.replace(seen=[lf.Sighting("bulk", 1, 900)])])
