"""A kitchen learned from logs, against a package that knows nothing of dough. In deep runs alone."""

import math

import numpy as np
import pytest
from hypothesis import settings
from logbooks import ROWS, World

import libferment as lf

pytestmark = pytest.mark.skipif(settings().max_examples < 5000, reason="only ./dev test --deep")


def only(**sds):
    """A kitchen of which only these are unknown, and in which ln time is a straight line of both.

    No start-up and no growth to speak of; Q10's law: ln t = a − ln(gassing rate) − (T − 25)/10·ln(q10), but for a
    thousandth.
    """
    covariance = np.zeros((len(ROWS), len(ROWS)))
    for place, row in enumerate(ROWS):
        covariance[place, place] = sds.get(row.name, 0) ** 2
    return lf.Kitchen(
        law="constant_q10",
        start_up_instant_h=0.01,
        growth_lag_h=12,
        growth_increment=0.01,
        growth_rate=0.02,
        covariance=covariance,
    )


def test_censored_regression_is_that_of_lifelines():
    pd = pytest.importorskip("pandas")
    lifelines = pytest.importorskip("lifelines")
    random = np.random.default_rng(20310)
    kitchen = only(gassing_rate=0.3, q10=0.15)
    true = kitchen.replace(gassing_rate=13, q10=2.5)
    world, rows, logs = World(20311), [], []
    for number in range(400):
        bake = world.bake()
        base_h = bake.hours(kitchen)
        time_h = bake.hours(true) * math.exp(0.15 * random.standard_normal())
        if not 6 < base_h + 0 * time_h < 100:  # the start-up is a small part of it; and the rise is reached
            continue
        bounds = [(time_h, time_h), (0.8 * time_h, 1.3 * time_h), (time_h * 0.9, math.inf)][number % 3]
        if number % 3 == 0:
            looks = [lf.Sighting("bulk", time_h, bake.rise_percent)]
        elif number % 3 == 1:
            looks = [lf.Sighting("bulk", bounds[1], bake.rise_percent, was="past", not_yet_h=bounds[0])]
        else:
            looks = [lf.Sighting("bulk", bounds[0], bake.rise_percent, was="not_yet")]
        logs.append(bake.log(looks))
        rows.append({"low": bounds[0] / base_h, "high": bounds[1] / base_h, "x": (bake.dough_c - 25) / 10})
    fitter = lifelines.LogNormalAFTFitter()
    fitter.fit_interval_censoring(pd.DataFrame(rows), lower_bound_col="low", upper_bound_col="high")
    sigma = math.exp(fitter.params_["sigma_", "Intercept"])
    # Its standard errors where sigma is known, as here.
    known = [("mu_", "Intercept"), ("mu_", "x")]
    information = np.linalg.inv(fitter.variance_matrix_.to_numpy())
    places = [list(fitter.params_.index).index(name) for name in known]
    theirs_sd = np.sqrt(np.diag(np.linalg.inv(information[np.ix_(places, places)])))
    theirs = [-fitter.params_[name] for name in known]
    told = lf.calibration(
        logs, kitchen.replace(log_time_scale=sigma), is_normal=True, flat_prior=True, bake_effect=False
    )
    ours = [math.log(told.kitchen.gassing_rate / kitchen.gassing_rate), math.log(told.kitchen.q10 / kitchen.q10)]
    sds = {row.name: row.sd for row in told.kitchen.learned}
    ours_sd = [sds["gassing_rate"], sds["q10"]]
    print("coefficients", ours, theirs, "sds", ours_sd, theirs_sd)
    assert ours == pytest.approx(theirs, abs=1e-3)
    assert ours_sd == pytest.approx(theirs_sd, rel=3e-3)
