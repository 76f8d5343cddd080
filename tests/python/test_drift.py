"""The clock in a drifting dough, from Python: against SciPy, there and back, arrays, measured series."""

import datetime
import itertools
import math

import numpy as np
import pytest
from box import attempt
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp, trapezoid
from scipy.optimize import brentq

import libferment as lf

LAWS = (lf.Cardinal(), lf.SquareRoot(), lf.Arrhenius(), lf.ConstantQ10())
doughs_c = st.floats(1, 44)
rooms_c = st.floats(1, 44) | st.floats(46.5, 46.6)
taus_h = st.floats(0.05, 20)


@pytest.mark.parametrize("law", LAWS, ids=lambda law: type(law).__name__)
@given(doughs_c, rooms_c, taus_h, st.floats(0.01, 30))
def test_equivalent_hours_are_the_integral_of_the_factor(law, start_c, room_c, tau_h, time_h):
    """SciPy's adaptive quadrature, in pieces of the time constant, which it must not step over."""
    kitchen = lf.Kitchen().with_law(law)
    exact = lf.drift_equivalent_h(
        time_h, start_c=start_c, surroundings_c=room_c, time_constant_h=tau_h, kitchen=kitchen
    )

    def factor(t):
        return law.factor(room_c + (start_c - room_c) * math.exp(-t / tau_h))

    ends = [*np.arange(0, min(time_h, 40 * tau_h), tau_h), min(time_h, 40 * tau_h)]
    by_scipy = sum(quad(factor, a, b, epsabs=0, epsrel=1e-9)[0] for a, b in itertools.pairwise(ends))
    by_scipy += max(0.0, time_h - 40 * tau_h) * law.factor(room_c)
    assert exact == pytest.approx(by_scipy, rel=1e-7, abs=1e-12)


@given(doughs_c, rooms_c, taus_h, st.floats(0.001, 40), st.sampled_from(LAWS))
def test_hours_there_and_back(start_c, room_c, tau_h, equivalent_h, law):
    dough = {
        "start_c": start_c,
        "surroundings_c": room_c,
        "time_constant_h": tau_h,
        "kitchen": lf.Kitchen().with_law(law),
    }
    hours = lf.drift_hours(equivalent_h, **dough, unreachable="inf")
    assume(hours <= 1000)
    assert lf.drift_equivalent_h(hours, **dough) == pytest.approx(equivalent_h, rel=1e-11)


@given(doughs_c, st.floats(-20, 60), taus_h, st.floats(0.1, 30))
def test_a_solver_with_an_event_finds_the_same_hours(start_c, room_c, tau_h, equivalent_h):
    law = lf.Cardinal()
    dough = {"start_c": start_c, "surroundings_c": room_c, "time_constant_h": tau_h}
    hours = lf.drift_hours(equivalent_h, **dough, unreachable="inf")

    def clock(t, _):
        return [law.factor(room_c + (start_c - room_c) * math.exp(-t / tau_h))]

    def reached(_, clock_h):
        return clock_h[0] - equivalent_h

    reached.terminal = True
    solved = solve_ivp(clock, (0, 200), [0.0], events=reached, rtol=1e-9, atol=1e-10, max_step=tau_h / 2 + 0.05)
    if solved.t_events[0].size:
        assert hours == pytest.approx(solved.t_events[0][0], rel=1e-4)
    else:
        assert hours > 199


def test_warm_dough_in_a_cold_kitchen_takes_longer_than_the_thermometer_says():
    """A dough of 25 °C in a kitchen of 16 °C: what a table for 25 °C promises, and what it takes."""
    constant = 3 / lf.Cardinal().factor(25)
    drifting = lf.drift_hours(3, start_c=25, surroundings_c=16, time_constant_h=3)
    cold = 3 / lf.Cardinal().factor(16)
    assert constant < drifting < cold

    def short_by(hours):
        return quad(lambda t: lf.Cardinal().factor(16 + 9 * math.exp(-t / 3)), 0, hours)[0] - 3

    assert drifting == pytest.approx(brentq(short_by, 1, 20), rel=1e-9)


def test_arrays_broadcast_and_times_may_be_timedeltas():
    rooms = np.array([[10.0], [20.0]])
    taus = np.array([1.0, 2.0, 4.0])
    hours = lf.drift_hours(2, start_c=25, surroundings_c=rooms, time_constant_h=taus)
    assert hours.shape == (2, 3)
    for (row, column), value in np.ndenumerate(hours):
        one = lf.drift_hours(2, start_c=25, surroundings_c=float(rooms[row, 0]), time_constant_h=float(taus[column]))
        assert value == one
    later = lf.drifted_c(
        25, datetime.timedelta(hours=2), surroundings_c=15, time_constant_h=datetime.timedelta(hours=2)
    )
    assert later == pytest.approx(15 + 10 / math.e)
    assert lf.drifted_c([25, 20], 0, surroundings_c=15, time_constant_h=2).tolist() == [25, 20]


def test_a_clock_that_stops_says_what_it_reaches():
    dough = {"start_c": 20, "surroundings_c": -20, "time_constant_h": 2}
    with pytest.raises(lf.NoSolution, match="the clock stops before 9 equivalent hours") as refused:
        lf.drift_hours(9, **dough)
    assert lf.drift_hours(refused.value.high * 0.999, **dough) < 2
    assert lf.drift_hours(9, **dough, unreachable="inf") == math.inf
    with pytest.raises(lf.NoSolution, match="first at index 1, 1 of 2"):
        lf.drift_hours([0.1, 9], **dough)
    with pytest.raises(lf.InvalidInput, match="unreachable"):
        lf.drift_hours(1, **dough, unreachable="nan")


@given(st.lists(st.tuples(st.floats(0.01, 5), st.floats(-5, 48)), min_size=2, max_size=12), st.sampled_from(LAWS))
def test_a_series_is_the_sum_of_its_lines(steps, law):
    time_h = np.cumsum([step for step, _ in steps])
    temperature_c = np.array([t for _, t in steps])
    got = lf.series_equivalent_h(time_h, temperature_c, kitchen=lf.Kitchen().with_law(law))
    fine = 400
    expected = 0.0
    for place in range(1, len(steps)):
        line = np.linspace(temperature_c[place - 1], temperature_c[place], fine + 1)
        mean = trapezoid(law.factor(line), dx=1 / fine)
        expected += mean * (time_h[place] - time_h[place - 1])
        assert got[place] == pytest.approx(expected, rel=2e-3, abs=1e-4)
    assert got[0] == 0


@pytest.mark.parametrize(
    ("time_h", "temperature_c", "words"),
    [
        ([0], [20], "at least two readings, got 1"),
        ([0, 1], [20], "2 times, 1 temperatures"),
        ([0, 2, 1], [20, 21, 22], "time goes from 2 h to 1 h at reading 3 of 3"),
        ([0, 0], [20, 21], "must be finite and rise"),
        ([0, math.nan], [20, 21], "must be finite and rise"),
        ([0, 1], [20, math.inf], "temperature infinity"),
        ([[0, 1]], [[20, 21]], "two lists of one dimension"),
    ],
)
def test_series_that_cannot_be(time_h, temperature_c, words):
    problem = attempt(lambda: lf.series_equivalent_h(time_h, temperature_c), lf.InvalidInput)
    assert isinstance(problem, lf.InvalidInput)
    assert words in str(problem)
