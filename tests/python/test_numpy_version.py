"""The two NumPy versions of the bench compute what the library computes: the bench compares like with like."""

import importlib.util
from pathlib import Path

import numpy as np
import pytest

import libferment as lf

BENCH = Path(__file__).resolve().parents[2] / "bench" / "rise.py"


@pytest.fixture(scope="module")
def bench():
    with pytest.MonkeyPatch.context() as patch:
        patch.syspath_prepend(str(BENCH.parent))  # for the files it shares with the others
        spec = importlib.util.spec_from_file_location("bench_rise", BENCH)
        module = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(module)
        yield module


@pytest.mark.parametrize("version", ["straightforward", "by_hand"])
@pytest.mark.parametrize("n", [1, 1000, 20_000])
def test_numpy_agrees_with_the_library(bench, version, n):
    rise, t, yeast, salt = bench.scenarios(n)
    ours = lf.hours_to_rise(rise, dough_c=t, yeast_percent=yeast, salt_percent=salt)
    theirs = getattr(bench, version)(rise, t, yeast, salt)
    assert np.max(np.abs(theirs / ours - 1)) <= 1e-9


def test_the_scenarios_vary_and_are_all_reachable(bench):
    columns = bench.scenarios(5000)
    rise, t, yeast, salt = columns
    assert np.isfinite(lf.hours_to_rise(rise, dough_c=t, yeast_percent=yeast, salt_percent=salt)).all()
    for column in columns:
        assert len(np.unique(column)) == 5000
    # Both branches of the clock and of the retention are met.
    kitchen = lf.Kitchen()
    equivalent_h = lf.hours_to_rise(rise, dough_c=t, yeast_percent=yeast, salt_percent=salt) * lf.speed(
        dough_c=t, salt_percent=salt
    )
    for crossed in (equivalent_h > kitchen.growth_lag_h, rise > 100 * (kitchen.retention_onset - 1)):
        assert 0.02 < crossed.mean() < 0.98
