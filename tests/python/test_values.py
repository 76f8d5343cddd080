"""Values from their forms: to a dict and back, pickled, copied, compared and shown, whatever is in them."""

import copy
import inspect
import math
import pickle

import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

import libferment as lf
from libferment import _core

FORMS = {form["name"]: form for form in _core._forms()}
NUMBER, COUNT, FLAG, TEXT, NAME, RANGE, ENTRY, VALUE = range(8)
FIELDS = {field.name: field for field in (*lf.fields(), *lf.parameters())}


def finite(low, high):
    return st.floats(low, high, allow_nan=False, allow_infinity=False)


surroundings = st.one_of(
    finite(-30, 60).map(lf.Surroundings.room),
    st.tuples(finite(-30, 30), st.booleans()).map(lambda t: lf.Surroundings.refrigerator(t[0], fan=t[1])),
    finite(-2, 45).map(lf.Surroundings.dough),
    st.tuples(finite(0, 30), finite(0, 10), finite(-24, 48)).map(lambda t: lf.Surroundings.daily_swing(*t)),
    st.lists(finite(-20, 50), min_size=2, max_size=5).map(
        lambda readings: lf.Surroundings.measured([float(i) for i in range(len(readings))], readings)
    ),
)
waters = st.builds(
    lf.Water, finite(0.1, 900), finite(0, 60), wets_yeast=st.booleans(), stands_h=finite(0, 3), cup_h=finite(0.1, 1)
)
flours = st.builds(
    lf.Flour,
    finite(0.1, 2000),
    st.sampled_from(["bread", "whole_wheat", "dark_rye"]),
    moisture_percent=st.none() | finite(5, 20),
    temperature_c=st.none() | finite(-30, 60),
)
mixing = st.one_of(
    st.none(),
    st.builds(lf.ByMethod, st.sampled_from(["hand", "spiral"]), st.none() | finite(0, 60)),
    st.builds(lf.ByWork, finite(0, 100), hydration_kj_per_kg=st.none() | finite(0, 60)),
    st.builds(lf.ByNetGain, finite(-30, 120), finite(0, 50), finite(0, 60)),
)
mixes = st.builds(
    lf.Mix,
    room_c=finite(-30, 60),
    flour_g=finite(0.1, 5000),
    flours=st.lists(flours, max_size=2),
    water_g=finite(0, 5000),
    waters=st.lists(waters, max_size=2),
    salt_g=finite(0, 100),
    milk_g=finite(0, 500),
    milk_c=st.none() | finite(0, 60),
    instant_g=finite(0, 50),
    bowl=st.builds(lf.Bowl, st.sampled_from(["steel", "ceramic"]), finite(0, 5000)),
    mixing=mixing,
    rest_h=finite(0, 24),
    yeast_unwetted=st.booleans(),
)
pieces = st.one_of(
    st.builds(lf.Piece.ball, finite(1, 5000), cover=st.none() | st.sampled_from(["film", "cloth", "open"])),
    st.builds(lf.Piece.oblong, pieces=finite(1, 40), length_cm=finite(1, 200)),
    st.builds(lf.Piece.tub, diameter_cm=finite(1, 100), vessel_g=finite(0, 3000), material=st.just("glass")),
)
stages = st.builds(
    lf.Stage,
    st.text(min_size=1, max_size=8),
    surroundings=surroundings,
    until_rise_percent=finite(0.1, 1000),
    piece=pieces,
    folds_h=st.lists(finite(0, 9), max_size=3).map(sorted),
    handling=st.lists(st.sampled_from(["fold", "divide", "round", "mould"]), max_size=3),
    standing=st.sampled_from(["tin", "free"]),
    final_proof=st.booleans(),
    acceptable_rise_percent=st.none() | st.just((60.0, 90.0)),
)
processes = st.builds(
    lf.Process, st.lists(mixes | stages, max_size=3), start_h=finite(-100, 100), altitude_m=finite(-500, 6000)
)
kitchens = st.builds(lf.Kitchen, gassing_rate=finite(2, 40), name=st.text(max_size=8), law=st.just("arrhenius"))
compositions = st.builds(lf.Composition, water=finite(0, 1), ash=finite(0, 1))
doughs = st.builds(lf.Dough, dough_c=finite(-2, 45), yeast_percent=finite(0.1, 5), yeast=st.just("compressed"))
VALUES = st.one_of(
    surroundings, waters, flours, mixing.filter(bool), mixes, pieces, stages, processes, kitchens, compositions, doughs
)


def copies_of(value):
    """Every way to have a value again."""
    return [
        type(value).from_dict(value.to_dict()),
        pickle.loads(pickle.dumps(value)),
        copy.copy(value),
        copy.deepcopy(value),
        value.replace(),
    ]


@given(VALUES)
def test_every_value_survives_what_values_do(value):
    for other in copies_of(value):
        assert other == value
        assert hash(other) == hash(value)
        assert repr(other) == repr(value)
    assert value != "something else"


def results():
    """One of every result, of a rise that few doughs reach, too."""
    mix = lf.Mix(flour_g=900, water_g=600, salt_g=18, instant_g=2, room_c=20, dough_c=24)
    room = lf.Surroundings.room(22)
    bulk = lf.Stage("bulk", surroundings=room, until_rise_percent=80)
    never = lf.Stage("proof", surroundings=lf.Surroundings.room(10), until_rise_percent=190)
    process = lf.Process([mix, bulk])
    timeline = lf.simulate(process)
    plan = lf.water_by_heat_balance(mix, 24)
    forecast = lf.forecast(lf.Process([mix, bulk, never]), draws=64)
    assert forecast["proof"].never_ready > 0.9
    return [
        timeline,
        *timeline.stages,
        timeline.state.shells[0],
        plan,
        *plan.shares,
        *plan.notices,
        forecast,
        *forecast,
        lf.yeast_for(process, stage="bulk", ready_h=6, draws=64),
        lf.explain(100, dough_c=24, yeast_percent=1),
        lf.Piece.ball().node(900, room),
    ]


@pytest.mark.parametrize("value", results(), ids=lambda value: type(value).__name__)
def test_every_result_survives_what_values_do(value):
    for other in copies_of(value):
        assert other == value
        assert repr(other) == repr(value)
    for row in FORMS[type(value).__name__]["rows"]:
        if row["column"]:
            with pytest.raises(ValueError, match="read-only"):
                getattr(value, row["name"])[0] = 1


def test_a_state_survives_too():
    stage = lf.Stage("bulk", surroundings=lf.Surroundings.room(22), until_h=2, folds_h=[0.5])
    mix = lf.Mix(flour_g=500, water_g=330, instant_g=3, milk_g=20, dough_c=24)
    timeline = lf.simulate(lf.Process([mix, stage]), stop_h=1.0)
    state = timeline.state
    for other in (lf.State.from_dict(state.to_dict()), pickle.loads(pickle.dumps(state)), copy.deepcopy(state)):
        assert other == state
    assert state.stage.folds_done == 1
    lacking = state.to_dict()
    lacking["stage"].pop("folds_done")
    with pytest.raises(lf.InvalidInput, match=r"^stage\.folds_done: StageProgress needs folds_done") as refused:
        lf.State.from_dict(lacking)
    assert refused.value.path == "stage.folds_done"


@pytest.mark.parametrize("name", sorted(FORMS))
def test_a_form_is_the_class(name):
    cls = getattr(lf, name)
    rows = {row["name"]: row for row in FORMS[name]["rows"]}
    parameters = inspect.signature(cls).parameters
    assert list(parameters) == list(rows)
    for member, row in rows.items():
        assert (parameters[member].default is inspect.Parameter.empty) == row["given"]
        assert member in cls.__doc__
        assert isinstance(getattr(cls, member), property)
    with pytest.raises(AttributeError):
        setattr(cls.__new__(cls), next(iter(rows)), 1)


def words(call):
    with pytest.raises(lf.InvalidInput) as refused:
        call()
    return str(refused.value)


ROOM = lf.Surroundings.room(20)


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (lambda: lf.Mix(flour=900), 'flour: Mix has no "flour"; did you mean flour_g?'),
        (
            lambda: lf.Stage("bulk", surroundings=ROOM, until_rise=80),
            'until_rise: Stage has no "until_rise"; did you mean until_rise_percent? known: name, surroundings, ',
        ),
        (
            lambda: lf.Stage("bulk", surroundings=16, until_h=2),
            "surroundings: a Surroundings is wanted, got int 16; see help(libferment.Surroundings)",
        ),
        (
            lambda: lf.Stage("bulk", until_h=2),
            "surroundings: Stage needs surroundings: what the dough sits in; see help(libferment.Stage)",
        ),
        (lambda: lf.Mix(500, 300), "Mix takes no arguments without a name, got 2; name them, such as room_c=..."),
        (lambda: lf.Flour(500, mass_g=400), "mass_g: mass_g is given twice"),
        (lambda: lf.Stage("b", surroundings=ROOM, until_h="2h"), "until_h: length of a stage must be a number in h"),
        (
            lambda: lf.Stage("b", surroundings=ROOM, until_h=2, handling="fold"),
            "handling: a list, of which each is one of fold, divide, round, mould, machine_mould is wanted, got str",
        ),
        (lambda: lf.Water(50, 20, wets_yeast=1), "wets_yeast: True or False is wanted, got int 1"),
        (
            lambda: lf.Process([lf.Water(50, 20)]),
            "steps: a list, of which each is a Mix or Stage is wanted, got Water Water(mass_g=50.0, te",
        ),
        (lambda: lf.simulate([]), "process: a Process is wanted, got list []; see help(simulate)"),
        (lambda: lf.simulate(lf.Process([]), every=3), 'every: simulate takes no "every"; did you mean every_min?'),
        (
            lambda: lf.speed(24),
            "speed takes at most 0 arguments without a name, got 1; name the others, such as dough_c=",
        ),
        (lambda: lf.speed(), "dough_c: speed needs dough_c, a number or array; see help(speed)"),
        (
            lambda: lf.Surroundings.room(16, humidity=50),
            'humidity: room takes no "humidity"; did you mean humidity_perce',
        ),
        (
            lambda: lf.forecast(lf.Process([]), draws="many"),
            "draws: a whole number from 0 is wanted, got str 'many'",
        ),
        (
            lambda: lf.Process.from_dict({"steps": [{"type": "Stage", "name": "b", "until_h": 1, "surroundings": {}}]}),
            "steps[0].surroundings.places: Surroundings needs places: in the order of time; give places",
        ),
    ],
)
def test_a_wrong_call_gets_one_line_that_names_what_was_given(call, said):
    assert words(call).startswith(said)
    assert "\n" not in words(call)


def test_a_changed_kitchen_does_not_carry_the_frozen_name():
    assert lf.Kitchen().name == lf.Kitchen.named("2026-2").name == "2026-2"
    assert lf.Kitchen.named("2026-1").name == "2026-1"
    changed = lf.Kitchen.named("2026-2").replace(gassing_rate=12)
    assert changed.name == ""
    assert repr(changed) == "Kitchen(gassing_rate=12.0)"
    assert repr(changed.replace(covariance=changed.covariance)) == "Kitchen(gassing_rate=12.0, covariance=...)"
    assert lf.Kitchen(name="ours", gassing_rate=12).name == "ours"


# ---- columns ---------------------------------------------------------------------------------------------------------

TEMPERATURES = [18.0, 22.0, 26.0]
HOURS = lf.hours_to_rise(80, dough_c=TEMPERATURES, yeast_percent=0.7)


def hours_of(dough_c, **options):
    return lf.hours_to_rise(80, dough_c=dough_c, yeast_percent=0.7, **options)


def test_a_pandas_column_comes_back_with_its_index_and_name():
    column = pd.Series(TEMPERATURES, index=["a", "b", "c"], name="dough")
    answer = hours_of(column)
    pd.testing.assert_series_equal(answer, pd.Series(HOURS, index=["a", "b", "c"], name="dough"))
    frame = pd.DataFrame({"x": TEMPERATURES[:2], "y": TEMPERATURES[1:]}, index=[3, 4])
    assert hours_of(frame).loc[4, "x"] == HOURS[1]
    times = pd.Series(pd.to_timedelta([1, 2], unit="h"), index=["x", "y"])
    assert list(lf.rise_after(times, dough_c=24, yeast_percent=0.7).index) == ["x", "y"]
    other = pd.Series([0.7, 0.7, 0.7], index=["a", "b", "d"])
    with pytest.raises(lf.InvalidInput, match="two columns have different indexes"):
        lf.hours_to_rise(80, dough_c=column, yeast_percent=other)


def test_an_xarray_comes_back_with_its_dimensions():
    xarray = pytest.importorskip("xarray")
    rooms = xarray.DataArray([TEMPERATURES, TEMPERATURES], dims=("room", "day"), coords={"room": ["a", "b"]})
    answer = hours_of(rooms)
    assert answer.dims == ("room", "day")
    assert list(answer.sel(room="b").values) == list(HOURS)


def test_masked_values_are_not_looked_at_and_stay_masked():
    masked = np.ma.array([18.0, 999.0, 26.0], mask=[False, True, False])
    answer = hours_of(masked)
    assert list(answer.mask) == [False, True, False]
    assert list(answer.compressed()) == [HOURS[0], HOURS[2]]
    with pytest.raises(lf.InvalidInput, match=r"first at index 2, 1 of 3") as refused:
        hours_of(np.ma.array([18.0, 999.0, 99.0], mask=[False, True, False]))
    assert (refused.value.index, refused.value.value) == (2, 99)
    nullable = pd.Series([18.0, None, 26.0], dtype="Float64")
    assert list(hours_of(nullable).isna()) == [False, True, False]


def test_what_is_missing_may_pass():
    column = [18.0, math.nan, 26.0]
    with pytest.raises(lf.InvalidInput, match="it must be a number from"):
        hours_of(column)
    answer = hours_of(column, missing="nan")
    assert np.isnan(answer).tolist() == [False, True, False]
    assert answer[2] == HOURS[2]
    water_c = lf.water_by_factor_rule([24, math.nan], flour_c=20, room_c=20, friction_k=2, missing="nan")
    assert np.isnan(water_c).tolist() == [False, True]
    mix = lf.Mix(flour_g=500, water_g=320, room_c=20)
    assert np.isnan(lf.water_map(mix, 24, room_c=[18, math.nan], missing="nan")).tolist() == [False, True]
    with pytest.raises(lf.InvalidInput, match='missing "drop" is unknown; known: raise, nan'):
        hours_of(column, missing="drop")
    with pytest.raises(lf.InvalidInput, match="it must be a number from"):
        hours_of(math.nan, missing="nan")


def test_dose_and_explanation_broadcast():
    doses = lf.yeast_for_rise([50, 80], 3, dough_c=[[20], [24]])
    assert doses.shape == (2, 2)
    assert doses[1, 0] == lf.yeast_for_rise(50, 3, dough_c=24)
    with pytest.raises(lf.NoSolution, match="first at index 1, 1 of 2"):
        lf.yeast_for_rise(80, [3, 0.02], dough_c=24)
    explained = lf.explain([50, 80], dough_c=24, yeast_percent=1)
    assert explained.shape == (2,)
    assert explained[1].to_dict() == lf.explain(80, dough_c=24, yeast_percent=1).to_dict()


def test_dates_are_no_hours_and_the_argument_is_named():
    dates = pd.date_range("2026-01-05 08:00", periods=3, freq="h")
    with pytest.raises(lf.InvalidInput, match=r"^time_h: .*datetime64.*give the hours since the first") as refused:
        lf.Surroundings.measured(dates, TEMPERATURES)
    assert refused.value.path == "time_h"
    hours = (dates - dates[0]) / np.timedelta64(1, "h")
    assert lf.Surroundings.measured(hours, TEMPERATURES).temperature_at(1) == 22


def test_timelines_and_forecasts_are_read_by_stage():
    process = lf.Process(
        [
            lf.Mix(flour_g=500, water_g=330, instant_g=3, dough_c=24),
            lf.Stage("bulk", surroundings=ROOM, until_h=2),
            lf.Stage("proof", surroundings=ROOM, until_rise_percent=60),
        ]
    )
    for answer in (lf.simulate(process), lf.forecast(process, draws=32)):
        assert len(answer) == 2
        assert [stage.name for stage in answer] == ["bulk", "proof"]
        assert answer["proof"].name == "proof"
        with pytest.raises(KeyError, match="no stage is named"):
            answer["prof"]


@pytest.mark.parametrize("table", [lf.fields, lf.parameters, lf.ingredients, lf.mixing_methods])
def test_tables_become_frames_and_show_themselves(table):
    rows = table()
    frame = rows.to_frame()
    assert list(frame.index) == [row.name for row in rows]
    assert rows._repr_html_().count("<tr>") == len(rows) + 1
    assert isinstance(rows, list)
