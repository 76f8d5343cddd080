"""Forecasts against plain Monte Carlo, and the questions asked backwards: there and back again."""

import json
import math
from pathlib import Path

import numpy as np
import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

import libferment as lf

FEW = settings(max_examples=max(10, settings().max_examples // 10))
S = lf.Surroundings


def a_mix(**changes):
    return lf.Mix(**{"flour_g": 900, "water_g": 600, "salt_g": 18, "instant_g": 5, "dough_c": 24, **changes})


def rising(where, name="bulk", rise=100, **changes):
    return lf.Stage(name, surroundings=where, until_rise_percent=rise, **changes)


NIGHT = S.sequence([(0, S.room(20)), (1, S.refrigerator(5)), (10, S.room(21))])
DOUGHS = {
    "a quick dough": [a_mix(instant_g=12), rising(S.dough(27))],
    "overnight with a pinch": [a_mix(instant_g=0.45, dough_c=21), rising(S.room(19))],
    "a cold room": [a_mix(), rising(S.room(14))],
    "a refrigerator night": [a_mix(), rising(NIGHT, rise=180, piece=lf.Piece.ball(pieces=2))],
}


def random_kitchens(n):
    """Kitchens of the prior, the bake and the model, drawn anew with NumPy's own generator."""
    random = np.random.default_rng(20265)
    rows = [p for p in lf.parameters() if p.scale != "fixed"]
    columns = {}
    for p in rows:
        z = random.standard_normal(n) * p.prior_sd
        if p.name == "gassing_rate":
            z += math.hypot(0.12, 0.08) * random.standard_normal(n)
        moved = {
            "linear": lambda p=p, z=z: p.initial + z,
            "logarithmic": lambda p=p, z=z: p.initial * np.exp(z),
            "logit": lambda p=p, z=z: 1 / (1 + (1 / p.initial - 1) * np.exp(-z)),
        }[p.scale]()
        columns[p.name] = np.clip(moved, p.low, p.high)
    columns["t_max_above_opt_k"] = np.minimum(
        columns["t_max_above_opt_k"], 0.99 * (columns["t_opt_c"] - columns["t_min_c"])
    )
    columns["retention_limit"] = np.maximum(columns["retention_limit"], columns["retention_onset"] + 0.1)
    names = list(columns)
    for values in zip(*columns.values(), strict=True):
        yield lf.Kitchen(**dict(zip(names, map(float, values), strict=True)))


def ready_in(process, kitchen):
    try:
        timeline = lf.simulate(process, kitchen, every_min=0, be_back_by=False, tolerance=3e-2)
    except (lf.NoSolution, lf.OutsideModel):
        return math.inf
    return timeline.stages[-1].end_h


PLAIN = json.loads(Path(__file__).with_name("plain_draws.json").read_text(encoding="utf-8"))


def plain_draws(steps):
    """Of 100,000 plain draws: 5 % and 95 % quantiles, median, and the share that is never ready."""
    plain = np.sort([ready_in(lf.Process(steps), kitchen) for kitchen in random_kitchens(100_000)])
    early, median, late = (float(plain[int(share * (len(plain) - 1))]) for share in (0.05, 0.5, 0.95))
    never = float(np.isinf(plain).mean())
    return {"early_h": early, "median_h": median, "late_h": late if math.isfinite(late) else None, "never_ready": never}


@pytest.mark.parametrize("name", DOUGHS)
def test_512_draws_against_100000_plain_ones(name):
    """Medians within 1 %, ends of the 90 % interval within 3 % are asked."""
    expected = PLAIN[name]
    its = lf.forecast(lf.Process(DOUGHS[name])).stages[-1]
    early, late = its.interval_h(0.9)
    assert its.ready_h == pytest.approx(expected["median_h"], rel=0.01)
    assert early == pytest.approx(expected["early_h"], rel=0.03)
    assert late == (None if expected["late_h"] is None else pytest.approx(expected["late_h"], rel=0.03))
    assert its.never_ready == pytest.approx(expected["never_ready"], abs=0.01)


@pytest.mark.skipif(settings().max_examples < 5000, reason="only ./dev test --deep")
@pytest.mark.parametrize("name", DOUGHS)
def test_the_plain_draws_are_those_of_the_table(name):
    assert plain_draws(DOUGHS[name]) == pytest.approx(PLAIN[name], rel=1e-9)


def test_a_forecast_is_the_same_every_time():
    process = lf.Process(DOUGHS["a cold room"])
    one, other = lf.forecast(process), lf.forecast(process)
    assert (one.stages[0].ready == other.stages[0].ready).all()
    assert lf.draws_of(draws=4) == lf.draws_of(draws=4)


@pytest.mark.parametrize("threads", [0, 2, 7, 100])
def test_threads_do_not_change_a_forecast(threads):
    process = lf.Process(day())
    alone, shared = lf.forecast(process, threads=1), lf.forecast(process, threads=threads)
    for one, other in zip(alone.stages, shared.stages, strict=True):
        assert (one.ready == other.ready).all()
        assert one.to_dict() == other.to_dict()


def test_draws_have_the_kitchens_distribution():
    still = lf.Kitchen(bake_sd=0, model_sd=0)
    kitchens = lf.draws_of(still, draws=4096)
    coordinate = {"linear": lambda x: x, "logarithmic": np.log, "logit": lambda x: np.log(x / (1 - x))}
    for p in lf.parameters():
        values = np.array([getattr(kitchen, p.name) for kitchen in kitchens])
        if p.scale == "fixed":
            assert (values == getattr(still, p.name)).all()
            continue
        z = (coordinate[p.scale](values) - coordinate[p.scale](p.initial)) / p.prior_sd
        # Quantiles: the tails may end at the table's bounds.
        assert np.quantile(z, (0.16, 0.5, 0.84)) == pytest.approx((-0.994, 0, 0.994), abs=0.03), p.name


@pytest.mark.parametrize(
    ("spreads", "sd"),
    [
        ({"bake_sd": 0, "model_sd": 0}, 0.3),
        ({"bake_sd": 0.4, "model_sd": 0}, math.hypot(0.3, 0.4)),
        ({"bake_sd": 0, "model_sd": 0.4}, math.hypot(0.3, 0.4)),
        ({"bake_sd": 0.4, "model_sd": 0.3}, math.hypot(0.3, 0.5)),
        ({}, math.hypot(0.3, 0.12, 0.08)),  # the default's own
    ],
)
def test_bake_and_model_spread_the_gassing_rate(spreads, sd):
    rates = np.log([kitchen.gassing_rate for kitchen in lf.draws_of(lf.Kitchen(**spreads), draws=4096)])
    assert rates.std() == pytest.approx(sd, abs=0.01)


def test_a_learned_kitchen_is_surer():
    rows = [p for p in lf.parameters() if p.scale != "fixed"]
    variances = [(0.05 if p.name == "gassing_rate" else 0.3 * p.prior_sd) ** 2 for p in rows]
    learned = lf.Kitchen(covariance=np.diag(variances).ravel().tolist())
    process = lf.Process(DOUGHS["a cold room"])
    unsure, sure = (lf.forecast(process, kitchen).stages[0].interval_h(0.9) for kitchen in (None, learned))
    assert (sure[1] - sure[0]) < 0.6 * (unsure[1] - unsure[0])
    codes = [n.code for n in lf.forecast(process, learned).notices]
    assert "nothing_learned" not in codes
    assert "nothing_learned" in [n.code for n in lf.forecast(process).notices]


@pytest.mark.parametrize("name", ["2026-1", "2026-2"])
def test_a_frozen_set_has_learned_nothing(name):
    process = lf.Process(DOUGHS["a cold room"])
    frozen = lf.Kitchen.named(name)
    assert "nothing_learned" in [n.code for n in lf.forecast(process, frozen).notices]
    assert "nothing_learned" in [n.code for n in lf.forecast(process, frozen.replace(gassing_rate=12)).notices]
    surer = frozen.replace(covariance=0.5 * frozen.covariance)
    assert "nothing_learned" not in [n.code for n in lf.forecast(process, surer).notices]


def test_what_one_logged_rise_would_leave():
    """Against importance weights: a log of the median time, its noise 0.10 in ln and a bake of its own, with what the
    model gets wrong of it."""
    process = lf.Process(DOUGHS["a cold room"])
    its = lf.forecast(process).stages[0]
    random = np.random.default_rng(20266)
    kitchens = lf.draws_of(lf.Kitchen(bake_sd=0, model_sd=0), draws=4096)
    names = [p.name for p in lf.parameters()]

    def with_a_bake():
        hours = []
        for kitchen, z in zip(kitchens, random.standard_normal(len(kitchens)), strict=True):
            values = {name: getattr(kitchen, name) for name in names}
            values["gassing_rate"] *= math.exp(math.hypot(0.12, 0.08) * z)
            hours.append(ready_in(process, lf.Kitchen(**values)))
        return np.array(hours)

    logged, today = with_a_bake(), with_a_bake()
    weight = np.exp(-0.5 * (np.log(logged / its.ready_h) / 0.10) ** 2)
    order = np.argsort(today)
    share = np.cumsum(weight[order]) / weight.sum()
    early, late = (today[order][np.searchsorted(share, at)] for at in (0.05, 0.95))
    assert its.interval_length_after_one_log_h == pytest.approx(late - early, rel=0.25)
    (notice,) = [n for n in lf.forecast(process).notices if n.code == "nothing_learned"]
    assert notice.values["interval_length_after_one_log_h"] == its.interval_length_after_one_log_h
    assert its.interval_length_after_one_log_h < 0.7 * notice.values["interval_length_h"]
    assert "no rise of this kitchen is logged; one log would leave about" in notice.text


def day(where=None):
    where = where or S.room(18)
    ball = lf.Piece.ball(pieces=9)
    return [
        a_mix(),
        rising(where, rise=90, handling=["divide", "round"], folds_h=[1.2]),
        lf.Stage("bench rest", piece=ball, surroundings=where, until_h=0.4, handling=["mould"]),
        rising(where, name="proof", rise=70, piece=ball, final_proof=True, standing="free"),
    ]


def test_the_order_of_the_hours():
    forecast = lf.forecast(lf.Process(day(), start_h=9))
    assert [s.name for s in forecast.stages] == ["bulk", "bench rest", "proof"]
    for stage in forecast.stages:
        early, late = stage.interval_h(0.9)
        assert early <= stage.ready_h <= late
        assert 0 <= stage.never_ready <= 1
        if not stage.by_rise:
            assert stage.window_h == (stage.ready_h, stage.ready_h)
            continue
        lowest, highest = stage.window_h
        assert stage.look_first_h < lowest < stage.ready_h < highest
        assert stage.be_back_by_h < stage.over_proofed_h
        assert stage.rise_percent == pytest.approx(90 if stage.name == "bulk" else 70, rel=1e-6)
    # One stage's uncertainty carries into the next.
    widths = [s.interval_h(0.9)[1] - s.interval_h(0.9)[0] for s in forecast.stages]
    assert widths[0] == pytest.approx(widths[1], rel=1e-6)
    assert widths[2] > widths[1]
    assert forecast["proof"].ready_h == forecast.stages[2].ready_h
    with pytest.raises(KeyError, match="no stage is named"):
        forecast["prof"]
    assert list(forecast.to_frame().index) == ["bulk", "bench rest", "proof"]
    assert forecast.to_dict()["stages"][0]["name"] == "bulk"
    assert "bulk" in repr(forecast)
    assert "<table>" in forecast._repr_html_()
    assert repr(forecast.stages[0]).startswith("<StageForecast bulk: ready at")


def test_acceptable_rises_make_the_window():
    one = lf.forecast(lf.Process([a_mix(), rising(S.dough(24), acceptable_rise_percent=(60, 120))])).stages[0]
    low = lf.forecast(lf.Process([a_mix(), rising(S.dough(24), rise=60)])).stages[0]
    high = lf.forecast(lf.Process([a_mix(), rising(S.dough(24), rise=120)])).stages[0]
    assert one.window_h == pytest.approx((low.ready_h, high.ready_h), rel=1e-6)


def test_from_the_middle_of_the_day():
    process = lf.Process(day())
    state = lf.simulate(process, stop_h=0.8).state
    whole, rest = lf.forecast(process), lf.forecast(process, state=state)
    assert [s.name for s in rest.stages] == [s.name for s in whole.stages]

    # What has happened is known: the state is that of the middling dough.
    def width(stage):
        early, late = stage.interval_h(0.9)
        return late - early

    assert width(rest.stages[0]) < width(whole.stages[0])
    after_bulk = lf.simulate(process, stop_h=lf.simulate(process).stages[0].end_h + 0.1).state
    assert [s.name for s in lf.forecast(process, state=after_bulk).stages] == ["bench rest", "proof"]


def test_a_rise_that_many_doughs_never_reach():
    forecast = lf.forecast(lf.Process([a_mix(), rising(S.room(20), rise=350)]))
    assert 0.1 < forecast.stages[0].never_ready < 0.9
    (notice,) = [n for n in forecast.notices if n.code == "perhaps_never_ready"]
    assert notice.severity == "warning"
    assert lf.forecast(lf.Process([a_mix(), rising(S.room(20), rise=500)])).stages[0].ready_h is None


# ---- what bakers know ------------------------------------------------------------------------------------------------


def test_a_degree_near_dough_temperature_is_7_to_10_percent():
    """Trade rule: about 10 % per °C (trade science article, read)."""
    for dough_c in (22, 23, 24, 25):
        days = [lf.Process([a_mix(dough_c=c), rising(S.dough(c))]) for c in (dough_c, dough_c + 1)]
        ready = [lf.forecast(process).stages[0].ready_h for process in days]
        assert 0.065 <= ready[0] / ready[1] - 1 <= 0.105


def long_bulk(room_c):
    """A bulk of a fixed time, and the proof after it."""
    where = S.room(room_c)
    bulk = lf.Stage("bulk", surroundings=where, until_h=12, handling=["divide", "round", "mould"])
    proof = rising(where, name="proof", rise=60, piece=lf.Piece.ball(pieces=9))
    return lf.Process([a_mix(instant_g=5), bulk, proof])


def proof_hours(room_c):
    return lf.simulate(long_bulk(room_c)).stages[1].hours


def test_after_a_bulk_of_a_fixed_time_a_warmer_kitchen_can_make_the_proof_longer():
    """The gas runs out: in the warmer kitchen more of the sugars are spent before the proof."""
    assert proof_hours(27) > 1.2 * proof_hours(22)
    assert proof_hours(12) > proof_hours(17)  # and in the cold it is slow as ever


def test_then_several_rooms_are_on_time_and_all_are_named():
    ready_h = lf.forecast(long_bulk(25)).stages[1].ready_h
    choice = lf.room_for(long_bulk(20), stage="proof", ready_h=ready_h)
    assert len(choice.all) == 2
    assert choice.value == min(choice.all)
    assert any(value == pytest.approx(25, abs=1e-4) for value in choice.all)
    for room_c in choice.all:
        assert lf.forecast(long_bulk(room_c)).stages[1].ready_h == pytest.approx(ready_h, abs=1e-6)
    assert "several_choices" in [n.code for n in choice.notices]


# ---- there and back again --------------------------------------------------------------------------------------------


@st.composite
def processes(draw):
    room = draw(st.floats(15, 26))
    where = draw(st.sampled_from([S.room(room), S.daily_swing(room, 3), S.dough(room)]))
    steps = day(where)
    mix = a_mix(dough_c=None, room_c=room, water_c=draw(st.floats(15, 35)), instant_g=draw(st.floats(2, 12)))
    return lf.Process([mix, *steps[1:]], start_h=draw(st.floats(0, 24)))


AT_A_JUMP = lf.Process(
    [a_mix(dough_c=None, room_c=15, water_c=30, instant_g=11), *day(S.daily_swing(15, 3))[1:]], start_h=1
)


@FEW
@given(processes(), st.sampled_from(["bulk", "proof"]))
@example(AT_A_JUMP, "proof")
def test_forecast_inverse_forecast(process, stage):
    """To 1e-6 h, whatever is asked."""
    ready_h = lf.forecast(process)[stage].ready_h
    mix = process.steps[0]
    choice = lf.yeast_for(process, stage=stage, ready_h=ready_h)
    assert choice.value == pytest.approx(mix.instant_g, rel=1e-5)
    assert lf.forecast(choice.process)[stage].ready_h == pytest.approx(ready_h, abs=1e-6)
    choice = lf.water_for(process, stage=stage, ready_h=ready_h)
    assert lf.forecast(choice.process)[stage].ready_h == pytest.approx(ready_h, abs=1e-6)
    start = lf.latest_start(process, stage=stage, ready_h=ready_h)
    assert lf.forecast(start.process)[stage].ready_h == pytest.approx(ready_h, abs=1e-6)
    assert start.value >= process.start_h - 1e-6
    later = lf.yeast_for(process, stage=stage, ready_h=ready_h + 1)
    assert later.value < mix.instant_g
    found_h = lf.forecast(later.process)[stage].ready_h
    assert later.ready_h == pytest.approx(found_h, abs=1e-6)
    if found_h == pytest.approx(ready_h + 1, abs=1e-6):
        return
    # The fold may come just before or just after a dough's end: there the hours jump, and no dose gives those between.
    less, more = (
        lf.forecast(process.replace(steps=[mix.replace(instant_g=later.value * nearby), *process.steps[1:]]))
        for nearby in (1 - 1e-8, 1 + 1e-8)
    )
    assert more[stage].ready_h < ready_h + 1 < less[stage].ready_h


@FEW
@given(processes())
def test_more_yeast_and_warmer_water_are_never_later(process):
    mix, *rest = process.steps
    for stage in ("bulk", "proof"):

        def ready(stage=stage, **changes):
            changed = process.replace(steps=[mix.replace(**changes), *rest])
            return {s.name: s.end_h for s in lf.simulate(changed, be_back_by=False).stages}[stage]

        doses = [ready(instant_g=grams) for grams in (1, 2, 4, 8, 16)]
        assert doses == sorted(doses, reverse=True)
        waters = [ready(water_c=water_c) for water_c in (5, 15, 25, 35)]
        assert waters == sorted(waters, reverse=True)


@FEW
@given(st.floats(1, 15), st.floats(18, 28))
def test_a_warmer_room_is_never_later_for_the_bulk(instant_g, dough_c):
    def ready(room_c):
        steps = [a_mix(instant_g=instant_g, dough_c=dough_c), rising(S.room(room_c))]
        return lf.simulate(lf.Process(steps), be_back_by=False).stages[0].end_h

    rooms = [ready(room_c) for room_c in (10, 14, 18, 22, 26, 30)]
    assert rooms == sorted(rooms, reverse=True)


def test_the_room_and_the_proof_box():
    process = lf.Process(day(S.room(18)))
    choice = lf.room_for(process, stage="proof", ready_h=5)
    assert 10 < choice.value < 18
    assert {s.surroundings for s in choice.process.steps[1:]} == {S.room(choice.value)}
    assert lf.forecast(choice.process)["proof"].ready_h == pytest.approx(5, abs=1e-6)
    steps = day(S.room(18))
    steps[3] = steps[3].replace(surroundings=S.proof_box(30))
    boxed = lf.Process(steps)
    sooner = lf.forecast(boxed)["proof"].ready_h - 0.05
    box = lf.room_for(boxed, stage="proof", ready_h=sooner, air="proof_box")
    assert box.value > 30
    assert box.process.steps[1].surroundings == S.room(18)


def test_into_the_refrigerator_and_out_of_it():
    process = lf.Process(day(S.room(20)), start_h=18)
    ready_h = 23
    choice = lf.refrigerate_from(process, stage="proof", moved="proof", ready_h=ready_h, refrigerator=S.refrigerator(6))
    assert lf.forecast(choice.process)["proof"].ready_h == pytest.approx(ready_h, abs=1e-6)
    places = choice.process.steps[3].surroundings.places
    assert [place.air for place in places] == ["room", "refrigerator"]
    assert places[1].from_h == choice.value
    steps = day(S.room(20))
    steps[3] = steps[3].replace(surroundings=S.refrigerator(4))
    cold = lf.Process(steps, start_h=18)
    sooner = lf.forecast(cold)["proof"].ready_h - 0.5
    out = lf.take_out_at(cold, stage="proof", moved="proof", ready_h=sooner, into=S.room(22))
    assert 20 < out.value < sooner
    assert lf.forecast(out.process)["proof"].ready_h == pytest.approx(sooner, abs=1e-6)


def test_yeast_is_rounded_to_the_users_scale():
    process = lf.Process(day())
    exact = lf.yeast_for(process, stage="proof", ready_h=6)
    assert exact.rounded == exact.value
    assert exact.rounding_min == 0
    for scale in (0.1, 1):
        choice = lf.yeast_for(process, stage="proof", ready_h=6, scale_g=scale)
        assert choice.value == exact.value
        assert choice.rounded == pytest.approx(round(exact.value / scale) * scale, abs=1e-9)
        weighed = process.replace(steps=[a_mix(instant_g=choice.rounded), *process.steps[1:]])
        ready = lf.forecast(weighed)["proof"].ready_h
        assert choice.rounded_ready_h == pytest.approx(ready, abs=1e-6)
        assert choice.rounding_min == pytest.approx(60 * (ready - 6), abs=1e-4)
        assert choice.process.steps[0].instant_g == pytest.approx(choice.rounded, rel=1e-12)
    assert "yeast, weighed" in repr(choice)
    assert "<table>" in choice._repr_html_()
    assert choice.to_dict()["what"] == "yeast_g"


def test_yeast_of_several_mixes_keeps_its_shares():
    poolish = lf.Mix(flour_g=300, water_g=300, instant_g=0.3, dough_c=21)
    evening = lf.Stage("poolish", surroundings=S.room(19), until_h=10)
    dough = lf.Mix(flour_g=600, water_g=310, salt_g=18, compressed_g=6, dough_c=24)
    process = lf.Process([poolish, evening, dough, rising(S.room(20))])
    choice = lf.yeast_for(process, stage="bulk", ready_h=14)
    first, second = choice.process.steps[0], choice.process.steps[2]
    assert second.compressed_g / first.instant_g == pytest.approx(20, rel=1e-9)
    assert choice.value == pytest.approx(first.instant_g + second.compressed_g, rel=1e-9)
    state = lf.simulate(process, stop_h=10).state
    after = lf.yeast_for(process, stage="bulk", ready_h=14, state=state)
    assert after.process.steps[0] == poolish  # what is done is done
    assert lf.forecast(after.process, state=state)["bulk"].ready_h == pytest.approx(14, abs=1e-6)


# ---- refusals --------------------------------------------------------------------------------------------------------

PROCESS = lf.Process(day())
COLD = S.refrigerator(4)
A_REST = lf.Stage("rest", surroundings=COLD, until_h=1)
REFUSED = {
    "unknown stage": (
        lambda: lf.yeast_for(PROCESS, stage="prof", ready_h=6),
        'no stage to come is named "prof"; known: bulk',
    ),
    "no yeast": (
        lambda: lf.yeast_for(lf.Process([a_mix(instant_g=0), A_REST]), stage="rest", ready_h=6),
        'no yeast is to come before stage "rest"',
    ),
    "no water": (
        lambda: lf.water_for(PROCESS, stage="bulk", ready_h=6),
        "no mix to come before stage .* has main water",
    ),
    "no room": (
        lambda: lf.room_for(PROCESS, stage="bulk", ready_h=6, air="proof_box"),
        'no stage up to "bulk" is in a proof_box of one temperature',
    ),
    "unknown air": (
        lambda: lf.room_for(PROCESS, stage="bulk", ready_h=6, air="oven"),
        'air "oven" is unknown; known: room',
    ),
    "moved": (
        lambda: lf.refrigerate_from(PROCESS, stage="bulk", moved="proof", ready_h=6, refrigerator=COLD),
        'no stage to come up to "bulk" is named "proof"',
    ),
    "draws": (lambda: lf.forecast(PROCESS, draws=1), "draws 1 is outside 2 to 65536"),
    "bake": (lambda: lf.forecast(PROCESS, lf.Kitchen(bake_sd=-1)), "spread from bake to bake −1"),
    "model": (lambda: lf.draws_of(lf.Kitchen(model_sd=1.5)), "spread of the model 1.5 of ln gassing rate is outside"),
    "bake as an option": (lambda: lf.forecast(PROCESS, bake_sd=0.2), 'forecast takes no "bake_sd"'),
    "no hour": (lambda: lf.forecast(PROCESS).stages[0].share_ready(math.nan), "the hour is not a number"),
    "nothing to come": (lambda: lf.forecast(lf.Process([a_mix()])), "has no stage to come"),
    "scale": (lambda: lf.yeast_for(PROCESS, stage="bulk", ready_h=6, scale_g=-1), "scale −1 g is outside 0 to 100 g"),
    "level": (lambda: lf.forecast(PROCESS).stages[0].interval_h(1), "level of an interval is 1"),
}


@pytest.mark.parametrize(("call", "words"), REFUSED.values(), ids=REFUSED)
def test_refusals(call, words):
    with pytest.raises(lf.InvalidInput, match=words):
        call()


def test_an_hour_out_of_reach_names_those_within_it():
    with pytest.raises(lf.NoSolution) as refused:
        lf.yeast_for(PROCESS, stage="proof", ready_h=0.9)
    words = str(refused.value)
    assert 'no dose of yeast makes stage "proof" ready at 0.9 h: from 0.09 g to 45 g it is ready between' in words
    assert "nearest is 45 g, ready at" in words
    most = PROCESS.replace(steps=[a_mix(instant_g=45), *day()[1:]])
    assert refused.value.low == pytest.approx(lf.forecast(most)["proof"].ready_h, abs=1e-3)
    for ready_h in (refused.value.low + 0.05, refused.value.high - 0.05):
        assert lf.yeast_for(PROCESS, stage="proof", ready_h=ready_h).ready_h == pytest.approx(ready_h, abs=1e-6)
    warm = lf.Process([a_mix(dough_c=None, room_c=18, water_c=30), *day()[1:]])
    with pytest.raises(lf.NoSolution, match=r"nearest is 5\d"):  # warmer, the dough would be too warm
        lf.water_for(warm, stage="proof", ready_h=1.5)


def test_a_frozen_day_has_no_forecast():
    with pytest.raises(lf.OutsideModel, match="would freeze"):
        lf.forecast(lf.Process([a_mix(), rising(S.refrigerator(-20))]))


@settings(max_examples=20)
@given(st.floats(0.02, 40), st.floats(0.5, 30))
def test_any_question_is_answered_or_refused(instant_g, ready_h):
    process = lf.Process([a_mix(instant_g=instant_g), rising(S.room(19))])
    try:
        choice = lf.yeast_for(process, stage="bulk", ready_h=ready_h, draws=16)
    except lf.NoSolution:
        return
    assume(choice.ready_h is not None)
    assert choice.ready_h == pytest.approx(ready_h, abs=1e-6)
