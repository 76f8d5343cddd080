"""A dough's day: against SciPy's solver on the same model written anew, against itself stopped and split; its words."""

import datetime
import math
import threading

import independent_day as independent
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import libferment as lf

SETTINGS = settings(max_examples=max(20, settings().max_examples // 4))
YEAST_NAMES = {"instant_g": "instant", "active_dry_g": "active_dry", "compressed_g": "compressed"}
ROOM = lf.Surroundings.room(18)


def a_mix(**changes):
    return lf.Mix(**{"flour_g": 900, "water_g": 600, "salt_g": 18, "instant_g": 5, "dough_c": 25, **changes})


def a_stage(**changes):
    given = {"name": "bulk", "surroundings": ROOM, "until_h": 3, **changes}
    if "until_rise_percent" in changes:
        del given["until_h"]
    return lf.Stage(**given)


def ends_of(steps, start_h=0, **options):
    return lf.simulate(lf.Process(steps, start_h=start_h), **options)


# ---- the other way to compute it -------------------------------------------------------------------------------------


def other_mix(mix):
    yeast = [
        ("active_dry_unwetted" if mix.yeast_unwetted and kind == "active_dry" else kind, getattr(mix, name))
        for name, kind in YEAST_NAMES.items()
        if getattr(mix, name) > 0
    ]
    return independent.Mix(
        dough_c=mix.dough_c,
        flour_g=mix.flour_g,
        water_g=mix.water_g,
        salt_g=mix.salt_g,
        sugar_g=mix.sugar_g,
        gluten_g=mix.gluten_g,
        yeast=yeast,
    )


def other_temperature(place):
    if place.course is not None:
        return independent.Piecewise(place.course.time_h, place.course.temperature_c)
    if place.swing is not None:
        return independent.Daily(place.swing.mean_c, place.swing.half_range_k, place.swing.warmest_h)
    return place.temperature_c


def other_stage(stage, result, state, heat):
    """The stage for the other solver, which takes the piece as its heat capacity and loss."""
    (place,) = stage.surroundings.places
    end = {"until_h": stage.until_h} if stage.until_h is not None else {"until_rise_percent": stage.until_rise_percent}
    common = {"name": stage.name, "folds_h": stage.folds_h, "handling": stage.handling, **end}
    held = stage.piece.shape in ("tub", "tin")
    common |= {
        "standing": stage.standing or ("tin" if held else "free"),
        "final_proof": bool(stage.final_proof),
        "acceptable": stage.acceptable_rise_percent,
    }
    if place.is_dough:
        return independent.Stage(dough_c=other_temperature(place), **common)
    share = 1 / stage.piece.pieces
    capacity = 1000 * state.heat_capacity_kj_k * share
    return independent.Stage(
        ambient_c=other_temperature(place),
        capacity_j_k=capacity,
        ua_w_k=capacity / result.time_constant_h / 3600,
        flour_g_of_piece=state.amounts.flour_g * share,
        heat=heat,
        **common,
    )


def compare(process, heat=True):
    """Both ways of computing a process; the largest differences of hours, K and percent of rise."""
    steps = [
        step if isinstance(step, lf.Mix) else step.replace(final_proof=bool(step.final_proof)) for step in process.steps
    ]
    process = process.replace(steps=steps)
    timeline = lf.simulate(process, heat_of_fermentation=heat, tolerance=1e-7)
    others, state, results = [], lf.State(altitude_m=process.altitude_m), iter(timeline.stages)
    for step in process.steps:
        if isinstance(step, lf.Mix):
            others.append(other_mix(step))
        else:
            others.append(other_stage(step, next(results), state, heat))
        state = lf.advance(state, step) if heat or isinstance(step, lf.Mix) else state
    found = independent.run(others, altitude_m=process.altitude_m, rtol=1e-11, max_step_h=0.25)
    assert len(found) == len(timeline.stages)
    worst = np.zeros(3)
    for ours, theirs in zip(timeline.stages, found, strict=True):
        assert ours.end_h == pytest.approx(theirs.end_h, rel=1e-3)
        assert ours.end_c == pytest.approx(theirs.temperature_c, abs=0.01)
        for name in ("over_proofed_h", "be_back_by_h"):
            when, other = getattr(ours, name), getattr(theirs, name)
            assert (when is None) == math.isinf(other), name
            assert when is None or when == pytest.approx(other, abs=2e-4), name
        worst = np.maximum(
            worst,
            [
                abs(ours.end_h / theirs.end_h - 1),
                abs(ours.end_c - theirs.temperature_c),
                abs(ours.rise_percent - theirs.rise_percent),
            ],
        )
    return worst


temperatures = st.floats(5, 32)


@st.composite
def surroundings(draw):
    kind = draw(st.sampled_from(["room", "room", "swing", "measured", "held", "probe"]))
    if kind == "room":
        return lf.Surroundings.room(draw(temperatures))
    if kind == "swing":
        return lf.Surroundings.daily_swing(draw(st.floats(14, 26)), draw(st.floats(0, 6)), draw(st.floats(0, 24)))
    if kind == "held":
        return lf.Surroundings.dough(draw(st.floats(10, 32)))
    times = np.cumsum([draw(st.floats(-1, 1)), *draw(st.lists(st.floats(0.3, 3), min_size=1, max_size=5))])
    course = [draw(st.floats(12, 30)) for _ in times]
    make = lf.Surroundings.measured if kind == "measured" else lf.Surroundings.dough_measured
    return make(times, course)


@st.composite
def stages(draw, name, mass_g):
    del mass_g
    shape = draw(st.sampled_from([lf.Piece.tub, lf.Piece.ball, lf.Piece.oblong, lf.Piece.flat, lf.Piece.tin]))
    piece = shape(pieces=draw(st.sampled_from([1, 1, 4, 10])))
    handling = draw(st.lists(st.sampled_from(["fold", "divide", "round", "mould"]), max_size=3))
    folds = sorted(draw(st.lists(st.floats(0.1, 1.5), max_size=2, unique=True)))
    if draw(st.booleans()):
        end = {"until_h": draw(st.floats(1.6, 6))}
    else:
        end = {"until_rise_percent": draw(st.floats(20, 120))}
    return lf.Stage(name, piece=piece, surroundings=draw(surroundings()), folds_h=folds, handling=handling, **end)


@st.composite
def processes(draw):
    flour_g = draw(st.floats(300, 2000))
    dough = {
        "flour_g": flour_g,
        "water_g": flour_g * draw(st.floats(0.55, 0.85)),
        "salt_g": flour_g * draw(st.floats(0, 0.025)),
        "sugar_g": flour_g * draw(st.sampled_from([0, 0, 0.08])),
        "gluten_g": flour_g * draw(st.sampled_from([0, 0.02])),
        draw(st.sampled_from(list(YEAST_NAMES))): flour_g * draw(st.floats(0.004, 0.02)),
        "dough_c": draw(st.floats(18, 30)),
    }
    steps = [lf.Mix(**dough), draw(stages("first", flour_g))]
    if draw(st.booleans()):
        more = {"flour_g": flour_g * draw(st.floats(0.5, 2)), "dough_c": draw(st.floats(18, 28))}
        more |= {"water_g": 0.6 * more["flour_g"], "salt_g": draw(st.floats(0, 0.02)) * flour_g}
        if draw(st.booleans()):
            more["instant_g"] = 0.004 * flour_g
        steps.append(lf.Mix(**more))
    steps.append(draw(stages("second", flour_g)))
    return lf.Process(steps, altitude_m=draw(st.sampled_from([0, 1200])))


@SETTINGS
@given(processes())
def test_the_whole_chain_against_scipys_solver(process):
    """Ready times to 0.1 % and temperatures to 0.01 K are wanted; what is left is the solvers' own."""
    try:
        hours, kelvins, percent = compare(process)
    except lf.NoSolution:  # a rise that is never reached: nothing to compare
        return
    assert hours < 1e-6
    assert kelvins < 1e-5
    assert percent < 1e-3


@pytest.mark.parametrize("heat", [True, False])
def test_a_cold_kitchen_against_scipys_solver(heat):
    stage = a_stage(surroundings=lf.Surroundings.room(16), until_rise_percent=100)
    assert (compare(lf.Process([a_mix(), stage]), heat) < [1e-9, 1e-8, 1e-6]).all()


def test_a_poolish_evening_against_scipys_solver():
    poolish = lf.Mix(flour_g=300, water_g=300, instant_g=0.3, dough_c=22)
    evening = a_stage(name="poolish", surroundings=lf.Surroundings.daily_swing(19, 2), until_h=12)
    dough = lf.Mix(flour_g=600, water_g=310, salt_g=18, instant_g=2, dough_c=24)
    bulk = a_stage(until_rise_percent=80, folds_h=[0.4, 1.2], handling=["divide", "round"])
    proof = a_stage(name="proof", piece=lf.Piece.ball(pieces=3), until_rise_percent=70)
    assert (compare(lf.Process([poolish, evening, dough, bulk, proof])) < [1e-9, 1e-7, 1e-6]).all()


# ---- limits that are known -------------------------------------------------------------------------------------------


@SETTINGS
@given(
    st.floats(20, 250),
    st.floats(8, 36),
    st.floats(0.05, 3),
    st.sampled_from(["instant", "active_dry", "compressed"]),
    st.floats(0, 3),
    st.floats(55, 90),
)
def test_a_held_dough_is_hours_to_rise(rise_percent, dough_c, yeast_percent, yeast, salt, water):
    numbers = {"dough_c": dough_c, "yeast_percent": yeast_percent, "salt_percent": salt, "water_percent": water}
    try:
        hours = lf.hours_to_rise(rise_percent, yeast=yeast, **numbers)
    except lf.NoSolution:
        return
    if hours > 900:
        return
    mix = lf.Mix(flour_g=100, water_g=water, salt_g=salt, dough_c=dough_c, **{f"{yeast}_g": yeast_percent})
    stage = a_stage(surroundings=lf.Surroundings.dough(dough_c), until_rise_percent=rise_percent)
    (result,) = ends_of([mix, stage], be_back_by=False).stages
    assert result.hours == pytest.approx(hours, rel=1e-9)
    after = a_stage(surroundings=lf.Surroundings.dough(dough_c), until_h=hours)
    (result,) = ends_of([mix, after], be_back_by=False).stages
    assert result.rise_percent == pytest.approx(rise_percent, rel=1e-9)


def test_without_its_heat_the_clock_is_the_exact_one():
    stage = a_stage(surroundings=lf.Surroundings.room(12), until_h=7.5)
    timeline = ends_of([a_mix(salt_g=0), stage], heat_of_fermentation=False)
    (result,) = timeline.stages
    speed = lf.speed(dough_c=25, salt_percent=0, water_percent=100 * 600 / 900)
    drift = {"start_c": 25, "surroundings_c": 12, "time_constant_h": result.time_constant_h}
    assert result.equivalent_h == pytest.approx(speed * lf.drift_equivalent_h(7.5, **drift), rel=1e-13)
    assert result.end_c == pytest.approx(lf.drifted_c(time_h=7.5, **drift), rel=1e-14)


def test_a_measured_dough_has_the_clock_of_its_series():
    times, course = [0, 1, 2.5, 4, 8], [24, 22, 21, 19.5, 19]
    stage = a_stage(surroundings=lf.Surroundings.dough_measured(times, course), until_h=8)
    (result,) = ends_of([a_mix(salt_g=0), stage]).stages
    speed = lf.speed(dough_c=25, salt_percent=0, water_percent=100 * 600 / 900)
    assert result.equivalent_h == pytest.approx(speed * lf.series_equivalent_h(times, course)[-1], rel=1e-12)


def test_a_large_dough_that_loses_no_heat_warms_as_a_sponge_does():
    """H14: a sponge warms 4.4 to 5.6 K in 3.5 to 4.5 h (bakery-technology encyclopaedia, read); 2 to 5 K are asked."""
    for percent in (2, 3, 4):
        for hours in (3.5, 4.5):
            mix = lf.Mix(flour_g=10000, water_g=6200, compressed_g=100 * percent, dough_c=26)
            stage = a_stage(piece=lf.Piece.tub(heat_loss_w_per_k=1e-4), until_h=hours)
            (result,) = ends_of([mix, stage]).stages
            warmed = result.end_c - 26
            assert 2 <= warmed <= 5
            state = lf.advance(lf.State(), mix)
            assert warmed == pytest.approx(result.heat_made_j / (1000 * state.heat_capacity_kj_k), rel=1e-3)


def test_dissolved_gas_at_the_end_of_a_proof():
    """F8: 35 % of the CO2 in cells, 5 % dissolved (encyclopaedia chapter on leavening, read); 363 mL in cells."""
    kitchen = lf.Kitchen(retention_onset=4.5, retention_limit=5)  # nothing leaks: what is held can be counted
    mix = lf.Mix(flour_g=100, water_g=68, salt_g=1.5, compressed_g=3, dough_c=33)
    start = lf.advance(lf.State(), mix, kitchen=kitchen)
    to_rise = 100 * (363 - start.mixed_volume_ml * 0.06) / start.mixed_volume_ml
    stage = a_stage(surroundings=lf.Surroundings.dough(33), until_rise_percent=to_rise)
    state = ends_of([mix, stage], kitchen=kitchen).state
    cells_ml = state.volume_ratio(kitchen) * state.mixed_volume_ml - 0.94 * state.mixed_volume_ml
    assert cells_ml == pytest.approx(363, abs=0.01)
    vapour_pa = lf.saturation_pressure_pa(33) * lf.water_activity(salt_percent=1.5, water_percent=68)
    in_cells = cells_ml * (101325 - vapour_pa) / (8.314462618 * 306.15) / 1000 - state.air_mmol
    assert 0.093 <= (state.co2_mmol - in_cells) / in_cells <= 0.193


# ---- energy ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("where", [ROOM, lf.Surroundings.daily_swing(17, 5, 3), lf.Surroundings.refrigerator(4)])
@pytest.mark.parametrize("piece", [lf.Piece.tub(), lf.Piece.ball(pieces=3), lf.Piece.oblong()])
def test_heat_lost_and_stored_is_heat_made(where, piece):
    """Lost: integrated from the timeline by Simpson's rule; made: from the CO2 at its ends; stored: from the dough."""
    mix = a_mix()
    start = lf.advance(lf.State(), mix)
    timeline = ends_of([mix, a_stage(surroundings=where, piece=piece, until_h=6)], every_min=0.5)
    (result,) = timeline.stages
    capacity = 1000 * start.heat_capacity_kj_k / piece.pieces
    loss_w_k = capacity / result.time_constant_h / 3600
    watts = loss_w_k * (timeline.mean_c - timeline.air_c)
    assert len(watts) == 6 * 120 + 1
    weights = np.full(len(watts), 2.0)
    weights[1::2], weights[0], weights[-1] = 4, 1, 1
    lost = (weights * watts).sum() * 30 / 3
    made = 50.7 * timeline.co2_mmol[-1] * 9 / piece.pieces
    stored = capacity * (timeline.mean_c[-1] - timeline.mean_c[0])
    assert made > 1000
    assert lost + stored == pytest.approx(made, rel=1e-6)
    assert result.heat_made_j == pytest.approx(made, rel=1e-9)
    assert result.heat_lost_j == pytest.approx(lost, rel=1e-6)


@pytest.mark.parametrize("where", [ROOM, lf.Surroundings.refrigerator(4), lf.Surroundings.humid_proof_box(38)])
@pytest.mark.parametrize("piece", [lf.Piece.tub(), lf.Piece.ball(pieces=3), lf.Piece.tin(pieces=2)], ids=repr)
def test_a_kitchens_heat_loss_is_that_of_every_piece(piece, where):
    """Twice the loss is half the time constant: after half as long the same temperature."""
    mix, stage = lf.Mix(flour_g=900, water_g=600, dough_c=25), a_stage(piece=piece, surroundings=where)
    (one,) = ends_of([mix, stage.replace(until_h=2)], tolerance=1e-9).stages
    double = lf.Kitchen(piece_heat_loss_factor=2)
    (other,) = ends_of([mix, stage.replace(until_h=1)], kitchen=double, tolerance=1e-9).stages
    assert other.time_constant_h == pytest.approx(one.time_constant_h / 2, rel=1e-12)
    assert other.end_c == pytest.approx(one.end_c, abs=1e-6)
    assert abs(one.end_c - 25) > 0.5
    measured = stage.replace(piece=piece.replace(heat_loss_w_per_k=0.3))
    assert ends_of([mix, measured], kitchen=double).stages == ends_of([mix, measured]).stages


def test_a_kitchens_heat_loss_counts_for_an_open_dough():
    where = lf.Surroundings.room(20, humidity_percent=55)
    mix, stage = lf.Mix(flour_g=900, water_g=600, dough_c=28), a_stage(piece=lf.Piece.ball(cover="open"))
    hours = {1: 1.5, 3: 0.5}
    ends = [
        ends_of(
            [mix, stage.replace(surroundings=where, until_h=its)],
            kitchen=lf.Kitchen(piece_heat_loss_factor=times),
            tolerance=1e-9,
        )
        .stages[0]
        .end_c
        for times, its in hours.items()
    ]
    assert ends[0] == pytest.approx(ends[1], abs=1e-6)


# ---- stopped, split, saved -------------------------------------------------------------------------------------------


def day():
    """A day with all kinds of steps."""
    return [
        lf.Mix(flour_g=300, water_g=300, instant_g=0.5, dough_c=22),
        a_stage(name="poolish", surroundings=lf.Surroundings.daily_swing(19, 2), until_h=10),
        lf.Mix(flour_g=600, water_g=310, salt_g=18, instant_g=2, milk_g=50, dough_c=24),
        a_stage(surroundings=ROOM, until_rise_percent=80, folds_h=[0.4, 1.2], handling=["divide", "round"]),
        a_stage(
            name="night",
            piece=lf.Piece.ball(pieces=12),
            surroundings=lf.Surroundings.refrigerator(5),
            until_h=9,
            standing="free",
        ),
        a_stage(
            name="proof",
            piece=lf.Piece.ball(pieces=12),
            surroundings=lf.Surroundings.measured([20, 30], [18, 24]),
            until_h=2,
        ),
    ]


def same_state(a, b, rel):
    """Whether two states are one to a relative accuracy; steps done may differ."""
    for name, value in a.to_dict().items():
        other = b.to_dict()[name]
        if name in ("steps_done", "stage"):
            continue
        if name in ("amounts",):
            assert value == pytest.approx(other, rel=rel)
        elif name in ("cohorts", "shells"):
            assert len(value) == len(other)
            for x, y in zip(value, other, strict=True):
                assert {**x, "yeast": 0} == pytest.approx({**y, "yeast": 0}, rel=rel, abs=1e-12)
        elif name == "inside_k":  # an estimate: by a polynomial for each leg
            assert value == pytest.approx(other, rel=30 * rel, abs=1e-6)
        else:
            assert value == pytest.approx(other, rel=rel, abs=1e-12), name


def test_resumed_between_steps_to_the_same_digits(tmp_path):
    process = lf.Process(day())
    whole = lf.simulate(process)
    state = lf.State()
    for place, step in enumerate(process.steps):
        state = lf.advance(state, step)
        assert state.steps_done == place + 1
        state.save(tmp_path / "state.json")
        loaded = lf.State.load(tmp_path / "state.json")
        assert loaded == state
        if place + 1 < len(process.steps):
            rest = lf.simulate(process, state=loaded)
            assert rest.state == whole.state
            mine = [result.to_dict() for result in rest.stages]
            assert mine == [result.to_dict() for result in whole.stages[-len(mine) :]]
    assert state == whole.state


@SETTINGS
@given(st.floats(0.01, 27))
def test_resumed_anywhere(stop_h):
    process = lf.Process(day())
    whole = lf.simulate(process, be_back_by=False, every_min=0)
    first = lf.simulate(process, stop_h=stop_h, be_back_by=False, every_min=0)
    if first.state.steps_done == len(process.steps):
        return
    assert first.state.time_h == pytest.approx(stop_h, abs=1e-9)
    state = lf.State.from_dict(first.state.to_dict())
    assert state == first.state
    rest = lf.simulate(process, state=state, be_back_by=False, every_min=0)
    same_state(rest.state, whole.state, 1e-9)
    for mine, its in zip(rest.stages[::-1], whole.stages[::-1], strict=False):
        for name in ("start_h", "end_h", "start_c", "end_c", "rise_percent", "heat_made_j", "heat_lost_j"):
            assert getattr(mine, name) == pytest.approx(getattr(its, name), rel=1e-9), name
        assert mine.folds_done == its.folds_done


WHERES = {
    "room": lf.Surroundings.room(14),
    "swing": lf.Surroundings.daily_swing(18, 4),
    "measured": lf.Surroundings.measured([0, 1.7, 5], [16, 22, 19]),
    "probe": lf.Surroundings.dough_measured([0, 1.7, 5], [25, 22, 19]),
    "held": lf.Surroundings.dough(21),
    "sequence": lf.Surroundings.sequence([(0, ROOM), (2.2, lf.Surroundings.refrigerator(5))]),
}


@pytest.mark.parametrize("where", WHERES.values(), ids=WHERES)
@pytest.mark.parametrize("heat", [True, False])
@pytest.mark.parametrize("parts", [2, 100])
def test_a_stage_in_parts_changes_nothing(where, heat, parts):
    options = {"heat_of_fermentation": heat, "be_back_by": False, "every_min": 0}
    whole = ends_of([a_mix(), a_stage(surroundings=where, until_h=5)], **options)
    at = np.linspace(0, 5, parts + 1) if parts > 2 else np.array([0, 1.234, 5])
    pieces = [a_stage(surroundings=where, until_h=float(hours)) for hours in np.diff(at)]
    split = ends_of([a_mix(), *pieces], **options)
    same_state(split.state, whole.state, 1e-9)


def test_finer_steps_converge():
    steps = [a_mix(instant_g=12), a_stage(surroundings=lf.Surroundings.daily_swing(15, 8), until_h=8)]
    fine = ends_of(steps, tolerance=1e-9)
    for tolerance, closer in ((1e-3, 1e-6), (1e-4, 1e-8), (1e-5, 1e-9)):  # 1e-5 if nothing is said
        coarse = ends_of(steps, tolerance=tolerance)
        same_state(coarse.state, fine.state, closer)
    same_state(ends_of(steps).state, fine.state, 1e-9)


def test_a_mix_of_two_equal_doughs_is_the_dough():
    state = ends_of([a_mix(), a_stage(until_h=4)]).state
    with_gas = lf.Mix(doughs=[state.part(700), state.part(700)], dough_c=state.temperature_c)
    one = lf.Mix(doughs=[state.part(1400)], dough_c=state.temperature_c)
    stage = a_stage(until_rise_percent=70)
    both = lf.simulate(lf.Process([with_gas, stage], start_h=4))
    single = lf.simulate(lf.Process([one, stage], start_h=4))
    assert both.stages[0].hours == pytest.approx(single.stages[0].hours, rel=1e-12)
    (cohort,) = both.state.cohorts
    same_state(both.state.replace(cohorts=single.state.cohorts), single.state, 1e-9)
    assert cohort.dose_g == pytest.approx(single.state.cohorts[0].dose_g, rel=1e-12)


def test_states_survive_what_is_done_to_their_file(tmp_path):
    path = tmp_path / "state.json"
    state = lf.simulate(lf.Process(day()), stop_h=11.3).state
    assert state.stage.folds_done == 2
    state.save(path)
    text = path.read_text(encoding="utf-8")
    cases = {
        text[:300]: "the text breaks off at line 1, column 301",
        "[]": "a table is wanted, got a list",
        text.replace('"version":1', '"version":2'): "version: it has the number 2, and this libferment reads version 1",
        text.replace('"libferment state"', '"something"'): 'format: it is the text "something", and "libferment state"',
        text.replace('"made_mmol"', '"made_mol"'): 'the key "made_mol" is unknown; did you mean made_mmol',
        text.replace('"flour_g":900', '"flour_g":-900'): "flour of the state −900 g is outside",
        text.replace('"flour_g":900', '"flour_g":"much"'): 'amounts.flour_g: a number is wanted, got the text "much"',
        text.replace('"yeast":"instant"', '"yeast":"wild"'): r'cohorts\[0\].yeast: yeast kind "wild" is unknown',
        text.replace('"cohorts":[', '"cohorts":[7,'): r"cohorts\[0\]: a table is wanted, got the number 7",
        text.replace('"temperature_c":', '"temperature_c":9'): "dough temperature",
        text.replace('"flour_g":900', '"flour_g":9000'): "more flour than dough",
        text.replace('"flour_g":900', '"flour_g":NaN'): "amounts.flour_g: it is not valid JSON at line 1",
    }
    for damaged, words in cases.items():
        assert damaged != text
        path.write_text(damaged, encoding="utf-8")
        with pytest.raises(lf.InvalidInput, match=words) as refused:
            lf.State.load(path)
        assert str(path) in str(refused.value)
    with pytest.raises(lf.InvalidInput, match="there is no file"):
        lf.State.load(tmp_path / "none.json")
    with pytest.raises(lf.InvalidInput, match="cannot be written"):
        state.save(tmp_path / "no folder" / "state.json")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["state.json"]


def test_a_file_is_written_whole_or_not_at_all(tmp_path):
    path = tmp_path / "state.json"
    state = lf.advance(lf.State(), a_mix())
    state.save(path)
    before = path.read_text(encoding="utf-8")
    tmp_path.joinpath("taken").mkdir()
    with pytest.raises(lf.InvalidInput, match="is no file that can be replaced"):
        state.save(tmp_path / "taken")
    assert path.read_text(encoding="utf-8") == before
    assert sorted(p.name for p in tmp_path.iterdir()) == ["state.json", "taken"]


# ---- what bakers know ------------------------------------------------------------------------------------------------


def test_a_warm_dough_in_a_cold_kitchen_is_late():
    """Late against its own first temperature, early against the room's."""
    stage = a_stage(surroundings=lf.Surroundings.room(16), until_rise_percent=100)
    hours = ends_of([a_mix(), stage]).stages[0].hours
    held = [ends_of([a_mix(), stage.replace(surroundings=lf.Surroundings.dough(c))]).stages[0].hours for c in (25, 16)]
    assert held[0] * 1.05 < hours < held[1] * 0.75


def test_small_pieces_follow_the_room_sooner():
    tau = [
        ends_of([a_mix(), a_stage(piece=lf.Piece.ball(pieces=pieces))]).stages[0].time_constant_h
        for pieces in (1, 4, 16)
    ]
    assert tau[0] > tau[1] > tau[2] > 0.5


def test_a_swing_makes_it_matter_when_one_starts():
    night, morning = (
        ends_of(
            [a_mix(instant_g=1), a_stage(surroundings=lf.Surroundings.daily_swing(18, 4, 16), until_rise_percent=100)],
            start_h=start_h,
        ).stages[0]
        for start_h in (22, 8)
    )
    assert night.hours > 1.15 * morning.hours
    assert night.start_h == 22


def test_the_rise_made_after_a_dough_went_into_the_refrigerator_and_its_spring():
    where = lf.Surroundings.sequence(
        [(0, lf.Surroundings.room(21)), (1, lf.Surroundings.refrigerator(4)), (13, lf.Surroundings.room(22))]
    )
    timeline = ends_of([a_mix(), a_stage(surroundings=where, piece=lf.Piece.ball(pieces=2), until_h=14.5)])
    at = [int(abs(timeline.time_h - h).argmin()) for h in (1, 6, 13, 14.5)]
    rise, made = timeline.rise_percent[at], timeline.co2_mmol[at]
    assert rise[1] - rise[0] > 15  # most of it after it went in
    assert made[2] - made[1] < made[1] - made[0]
    assert timeline.mean_c[at[2]] < 5.5
    out = ends_of([a_mix(), a_stage(surroundings=where, piece=lf.Piece.ball(pieces=2), until_h=13)]).state
    warm = out.replace(shells=[out.shells[0].replace(temperature_c=22)])
    assert warm.volume_ratio() > 1 + rise[2] / 100 + 0.1  # the spring: the same gas, warm


def test_a_poolish_does_not_lag_again():
    poolish = lf.Mix(flour_g=450, water_g=450, instant_g=0.6, dough_c=22)
    evening = a_stage(name="poolish", surroundings=lf.Surroundings.dough(20), until_h=14)
    dough = lf.Mix(flour_g=450, water_g=150, salt_g=18, dough_c=24)
    bulk = a_stage(until_rise_percent=60)
    with_poolish = ends_of([poolish, evening, dough, bulk]).stages[1].hours
    straight = ends_of([a_mix(instant_g=0.6, dough_c=24), bulk]).stages[0].hours
    assert with_poolish < 0.5 * straight


def test_late_salt_is_faster_at_first():
    def hours_with(early, late):
        first, second = (
            a_mix(salt_g=early),
            lf.Mix(salt_g=late, water_g=0.001, dough_c=25),
        )
        before = a_stage(name="before", surroundings=lf.Surroundings.dough(25), until_h=1)
        timeline = ends_of([first, before, second, a_stage(surroundings=lf.Surroundings.dough(25), until_h=1)])
        return [result.equivalent_h for result in timeline.stages]

    late, early = hours_with(0, 18), hours_with(18, 0)
    assert late[0] > 1.1 * early[0]
    assert late[1] == pytest.approx(early[1], rel=1e-6)


def test_a_rest_without_yeast_only_drifts():
    rest = a_stage(name="rest", surroundings=lf.Surroundings.room(15), until_h=1)
    timeline = ends_of([lf.Mix(flour_g=900, water_g=600, dough_c=27), rest])
    (result,) = timeline.stages
    assert 15 < result.end_c < 27
    assert result.equivalent_h == 0
    assert abs(result.rise_percent) < 1
    assert result.be_back_by_h is None


def test_more_water_evaporates_from_an_open_dough():
    def end_c(cover, humidity):
        where = lf.Surroundings.room(22, humidity_percent=humidity)
        mix = lf.Mix(flour_g=900, water_g=600, dough_c=22)
        return ends_of([mix, a_stage(surroundings=where, piece=lf.Piece.ball(cover=cover), until_h=12)]).stages[0].end_c

    assert end_c("film", None) == pytest.approx(22, abs=1e-9)
    assert 16 < end_c("open", 50) < end_c("open", 80) < 22
    humid = lf.Surroundings.room(22, humidity_percent=60)
    timeline = ends_of([a_mix(), a_stage(piece=lf.Piece.ball(cover="open"), surroundings=humid)])
    assert "open_dough_dries" in [notice.code for notice in timeline.notices]


# ---- the timeline ----------------------------------------------------------------------------------------------------


def test_the_timeline_has_every_minute_and_every_end():
    timeline = lf.simulate(lf.Process(day(), start_h=8.5))
    time_h, stage = timeline.time_h, timeline.stage
    assert (np.diff(time_h) >= 0).all()
    for place, result in enumerate(timeline.stages):
        its = time_h[stage == place]
        assert its[0] == result.start_h
        assert its[-1] == result.end_h
        inner = its[1:-1] * 60
        assert np.allclose(inner, np.round(inner), atol=1e-6)
        assert np.diff(its).max() <= 1 / 60 + 1e-6
        assert timeline.rise_percent[stage == place][0] == pytest.approx(0, abs=1e-9)
        assert timeline.rise_percent[stage == place][-1] == pytest.approx(result.rise_percent, abs=1e-6)
        assert timeline.mean_c[stage == place][-1] == pytest.approx(result.end_c, abs=1e-12)
    assert (np.diff(timeline.equivalent_h) >= 0).all()
    frame = timeline.to_frame()
    assert len(frame) == len(time_h)
    assert list(frame.columns[:3]) == ["stage", "time_h", "mean_c"]
    assert set(frame["stage"]) == {"poolish", "bulk", "night", "proof"}
    plain = timeline.to_dict()
    assert plain["stages"][1]["name"] == "bulk"
    assert "bulk" in repr(timeline)
    assert "<table>" in timeline._repr_html_()
    assert repr(timeline.stages[1]).startswith("<StageResult bulk: ends at")


def test_core_mean_and_surface():
    """A cooling dough is warmest in the middle; its core follows a change by and by."""
    timeline = ends_of([a_mix(), a_stage(surroundings=lf.Surroundings.room(10), piece=lf.Piece.ball())])
    assert timeline.core_c[0] == timeline.mean_c[0]  # just mixed
    assert (timeline.core_c[1:] > timeline.mean_c[1:]).all()
    where = lf.Surroundings.sequence([(0, lf.Surroundings.room(20)), (1, lf.Surroundings.refrigerator(4)), (9, ROOM)])
    night = ends_of([a_mix(), a_stage(surroundings=where, piece=lf.Piece.ball(), until_h=12)])
    assert night.core_c.max() < 26.5  # its own heat
    assert night.core_c.min() > 4
    assert abs(np.diff(night.core_c)).max() < 0.2  # K in a minute
    assert (timeline.mean_c > timeline.surface_c).all()
    assert (timeline.surface_c > timeline.air_c).all()
    held = ends_of([a_mix(), a_stage(surroundings=lf.Surroundings.dough(20))])
    assert (held.core_c == held.mean_c).all()
    assert (held.surface_c == held.mean_c).all()


def test_over_proofed_and_be_back_by():
    stage = a_stage(until_h=9, final_proof=True, standing="free")
    timeline = ends_of([a_mix(instant_g=9), stage])
    (result,) = timeline.stages
    assert result.be_back_by_h < result.end_h
    assert timeline.notices[0].code == "stage_over_proofed"
    assert "the dough is over-proofed at" in timeline.notices[0].text
    sooner = ends_of([a_mix(instant_g=9), stage.replace(until_h=0.5)]).stages[0]
    assert sooner.be_back_by_h == pytest.approx(result.be_back_by_h, rel=1e-6)
    at_limit = ends_of([a_mix(instant_g=9), stage.replace(until_h=result.be_back_by_h)]).stages[0]
    start = lf.advance(lf.State(), a_mix(instant_g=9)).volume_ratio()
    limit = min(0.65 * 4.8, 2.3 * start)
    assert (1 + at_limit.rise_percent / 100) * start == pytest.approx(limit, rel=1e-6)
    assert ends_of([a_mix(), a_stage()], be_back_by=False).stages[0].be_back_by_h is None


def test_notices_of_a_day():
    codes = [n.code for n in lf.simulate(lf.Process(day())).notices]
    assert "refrigerator_warm" not in codes
    warm = ends_of([a_mix(milk_g=200), a_stage(surroundings=lf.Surroundings.refrigerator(8), until_h=8)])
    assert {"refrigerator_warm", "perishable_held"} <= {n.code for n in warm.notices}
    cold = ends_of([a_mix(milk_g=200, dough_c=4), a_stage(surroundings=lf.Surroundings.dough(4), until_h=8)])
    assert "perishable_held" not in {n.code for n in cold.notices}
    ended = ends_of([a_mix(), a_stage(surroundings=lf.Surroundings.measured([0, 1], [20, 21]), until_h=3)])
    assert [n.code for n in ended.notices] == ["measured_temperature_ended"]
    history = ends_of([a_mix(preferments=[lf.Preferment(100, 100)]), a_stage()])
    assert [n.code for n in history.notices] == ["preferment_without_history"]


def test_a_progress_callback_is_told_each_step_and_may_stop():
    told = []
    lf.simulate(lf.Process(day()), progress=lambda step, steps, time_h: told.append((step, steps, time_h)))
    assert [step for step, _, _ in told] == list(range(6))
    assert {steps for _, steps, _ in told} == {6}
    assert [time_h for *_, time_h in told] == sorted(time_h for *_, time_h in told)

    def enough(step, steps, time_h):
        if step == 3:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        lf.simulate(lf.Process(day()), progress=enough)


def test_many_threads_give_the_same_day():
    process = lf.Process(day())
    expected = lf.simulate(process).state
    found = []
    threads = [threading.Thread(target=lambda: found.append(lf.simulate(process).state)) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert found == [expected] * 8


def test_values_are_values():
    import pickle

    process = lf.Process(day(), start_h=8, altitude_m=300)
    assert pickle.loads(pickle.dumps(process)) == process
    state = lf.simulate(process, stop_h=20).state
    assert pickle.loads(pickle.dumps(state)) == state
    assert process.replace(start_h=9) != process
    assert eval(repr(process.steps[3]), vars(lf)) == process.steps[3]
    assert lf.Process(day()) == lf.Process(day())


# ---- refusals --------------------------------------------------------------------------------------------------------

REFUSED = {
    "ball without weight": (lambda: lf.Piece.ball(mass_g=0), "weight of a piece 0 g is outside"),
    "negative size": (lambda: lf.Piece.tub(500, diameter_cm=-3), "diameter −3 cm is outside"),
    "one reading": (lambda: lf.Surroundings.measured([1], [20]), "needs at least two readings"),
    "time back": (
        lambda: lf.Surroundings.measured([0, 2, 1], [20, 20, 20]),
        "time goes from 2 h to 1 h at reading 3 of 3",
    ),
    "unknown cover": (lambda: lf.Piece.tub(cover="glass"), 'cover "glass" is unknown; known: film, cloth, lid, open'),
    "two weights": (lambda: lf.Piece.ball(500, diameter_cm=10), "has its weight twice"),
    "a ball with a lid": (lambda: lf.Piece.ball(500, cover="lid"), "only a tub has a lid"),
    "two ends": (
        lambda: a_stage(until_h=1).replace(until_rise_percent=3),
        "takes only one of until_h, until_rise_percent and ends_h",
    ),
    "no end": (lambda: lf.Stage("x", surroundings=ROOM), "needs one of until_h, until_rise_percent and ends_h"),
    "no name": (lambda: a_stage(name=""), "a stage has no name"),
    "folds out of order": (lambda: a_stage(folds_h=[1, 0.5]), "not in the order of time"),
    "late fold": (lambda: a_stage(folds_h=[4]), "comes after the stage's end at 3 h"),
    "unknown handling": (lambda: a_stage(handling=["punch"]), 'handling "punch" is unknown'),
    "acceptable": (lambda: a_stage(acceptable_rise_percent=(90, 60)), "is above the highest"),
    "open, no humidity": (
        lambda: ends_of([a_mix(), a_stage(piece=lf.Piece.ball(cover="open"))]),
        'stage "bulk": .*needs the humidity of its air',
    ),
    "too heavy": (
        lambda: ends_of([a_mix(), a_stage(piece=lf.Piece.ball(5000))]),
        'stage "bulk": a piece of 5000 g is more than all of the dough, 1523 g',
    ),
    "no steps": (lambda: ends_of([]), "has no steps"),
    "no dough": (lambda: ends_of([a_stage()]), 'stage "bulk": there is no dough yet; mix flour and water'),
    "no flour": (lambda: ends_of([lf.Mix(water_g=300, dough_c=20)]), r"mix \(step 1\): the first mix has no flour"),
    "no yeast": (
        lambda: ends_of([a_mix(instant_g=0), a_stage(until_rise_percent=50)]),
        'stage "bulk": the stage ends by a rise, but no yeast is in the dough; mix yeast in before it',
    ),
    "no water temperature": (
        lambda: ends_of([lf.Mix(flour_g=500, water_g=300, room_c=20), a_stage()]),
        "the main water has no temperature; give water_c, take one from a water plan, or in a process the dough's own",
    ),
    "too dry": (lambda: ends_of([a_mix(water_g=200), a_stage()]), "water 22.2222 % is outside 40 to 130 %"),
    "rest in a joining mix": (
        lambda: ends_of([a_mix(), a_stage(), lf.Mix(flour_g=100, water_g=60, dough_c=20, rest_h=1)]),
        r"mix \(step 3\): a mix that joins a dough cannot rest first",
    ),
    "state of another process": (
        lambda: lf.simulate(lf.Process([a_mix()]), state=lf.simulate(lf.Process(day())).state),
        "has done 6 steps and the process has 1",
    ),
    "mid-stage as beginning": (
        lambda: lf.simulate(lf.Process(day()), stop_h=3).state.as_beginning(),
        "in the middle of a stage",
    ),
    "dough in mid-stage": (
        lambda: ends_of([lf.Mix(doughs=[lf.simulate(lf.Process(day()), stop_h=3).state], dough_c=20)]),
        "is in the middle of a stage; end its stage first",
    ),
    "part": (lambda: lf.advance(lf.State(), a_mix()).part(2000), "a part of 2000 g is more than the dough, 1523 g"),
    "out of order": (
        lambda: lf.Surroundings.sequence([(3, ROOM), (1, ROOM)]),
        "a place begins at 1 h, after one that begins at 3 h",
    ),
}


@pytest.mark.parametrize(("call", "words"), REFUSED.values(), ids=REFUSED)
def test_refusals(call, words):
    with pytest.raises(lf.InvalidInput, match=words):
        call()


def test_a_dough_that_freezes_says_when():
    stage = a_stage(surroundings=lf.Surroundings.refrigerator(-20), until_h=30)
    with pytest.raises(
        lf.OutsideModel, match=r'stage "bulk": the dough leaves −2 to 45 °C (.*) h after the stage'
    ) as refused:
        ends_of([a_mix(), stage], start_h=100)
    words = str(refused.value)
    assert "gets too cold and would freeze" in words
    after_h = float(words.split("45 °C ")[1].split(" h")[0])
    before = ends_of([a_mix(), stage.replace(until_h=after_h - 0.02)], start_h=100).state
    assert -2 < before.temperature_c < -1.8
    assert f"(at {100 + after_h:.4g} h)" in words


def test_a_dough_that_gets_too_hot_says_when():
    stage = a_stage(surroundings=lf.Surroundings.proof_box(60), until_h=30)
    with pytest.raises(lf.OutsideModel, match="too warm for the yeast to live"):
        ends_of([a_mix(), stage])


def test_a_rise_that_is_never_reached_says_what_is_and_when():
    stage = a_stage(until_rise_percent=400)
    with pytest.raises(lf.NoSolution, match="a rise of 400 % is never reached") as refused:
        ends_of([a_mix(), stage])
    words = str(refused.value)
    reached = float(words.split("rises by ")[1].split(" %")[0])
    assert refused.value.high == pytest.approx(reached, rel=1e-3)
    assert ends_of([a_mix(), a_stage(until_rise_percent=reached * 0.995)]).stages[0].rise_percent == pytest.approx(
        reached * 0.995
    )
    # A peak: warm dough that shrinks as it cools.
    peak = a_stage(
        surroundings=lf.Surroundings.dough_measured([0, 3, 6, 200], [30, 30, -2, -2]), until_rise_percent=300
    )
    with pytest.raises(lf.NoSolution) as refused:
        ends_of([a_mix(instant_g=3), peak])
    after_h = float(str(refused.value).split("at the most, after ")[1].split(" h")[0])
    assert 2.5 < after_h < 6


def test_fields_of_refusals():
    with pytest.raises(lf.NoSolution) as refused:
        ends_of([a_mix(), a_stage(until_rise_percent=900)])
    assert (refused.value.path, refused.value.value) == ("steps[1].until_rise_percent", 900)
    assert math.isfinite(refused.value.high)


def test_a_process_begins_at_a_time_of_day():
    process = lf.Process(day(), start_h=datetime.time(8, 30))
    assert process == lf.Process(day(), start_h=8.5)
    assert lf.simulate(process).time_h[0] >= 8.5
    with pytest.raises(lf.InvalidInput, match="must be a number in h"):
        lf.Stage("bulk", surroundings=lf.Surroundings.room(20), until_h=datetime.time(2, 0))
