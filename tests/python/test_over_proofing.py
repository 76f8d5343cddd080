"""When a dough is over-proofed, and by when to be back: limits, shapes and places, of one dough and of many."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import libferment as lf

FEW = settings(max_examples=max(10, settings().max_examples // 10))
S, P = lf.Surroundings, lf.Piece
ROOM, COLD = S.room(24), S.refrigerator(4)
LIMIT = lf.Kitchen().retention_limit
HELD, FREE = {"tub": P.tub, "tin": P.tin}, {"ball": P.ball, "oblong": P.oblong, "flat": P.flat}
SHAPES = HELD | FREE


def a_mix(**changes):
    return lf.Mix(**{"flour_g": 900, "water_g": 600, "salt_g": 18, "instant_g": 7, "dough_c": 25, **changes})


def a_stage(name="only", where=ROOM, **changes):
    end = {} if "until_rise_percent" in changes else {"until_h": 1.5}
    return lf.Stage(name, surroundings=where, **{**end, **changes})


def last_of(*stages, mix=None, **options):
    return lf.simulate(lf.Process([mix or a_mix(), *stages]), **options).stages[-1]


def ratio_at(time_h, *stages, mix=None):
    """Volume over mixed volume at an hour of the last stage, which may be beyond its end."""
    longer = stages[-1].replace(until_rise_percent=None, until_h=60, handling=[])
    return lf.simulate(lf.Process([mix or a_mix(), *stages[:-1], longer]), stop_h=time_h).state.volume_ratio()


# ---- what a stage does not say ---------------------------------------------------------------------------------------

BULK = a_stage("bulk", until_h=1, handling=["divide", "round"])
WHERE = {
    "room": ROOM,
    "box": S.proof_box(30),
    "held": S.dough(26),
    "refrigerator": COLD,
    "fan refrigerator": S.refrigerator(4, fan=True),
    "out of the refrigerator": S.sequence([(0, COLD), (6, ROOM)]),
    "into the refrigerator": S.sequence([(0, ROOM), (3, COLD)]),
    "two refrigerators": S.sequence([(0, COLD), (6, S.refrigerator(7))]),
}
ALWAYS_COLD = {"refrigerator", "fan refrigerator", "two refrigerators"}


@pytest.mark.parametrize("end", [{"until_h": 2.5}, {"until_rise_percent": 70}], ids=["by time", "by rise"])
@pytest.mark.parametrize("where", WHERE)
@pytest.mark.parametrize("shape", SHAPES)
def test_the_last_stage_is_a_final_proof_unless_it_is_in_a_tub_or_cold(shape, where, end):
    """What is left out is the same as what follows from shape and place when it is said."""
    last = lf.Stage("last", piece=SHAPES[shape](pieces=2), surroundings=WHERE[where], **end)
    standing = "tin" if shape in HELD else "free"
    is_proof = shape != "tub" and where not in ALWAYS_COLD
    told = last_of(BULK, last)
    assert told == last_of(BULK, last.replace(standing=standing, final_proof=is_proof))
    assert told == last_of(BULK, last.replace(standing=standing))
    assert told == last_of(BULK, last.replace(final_proof=is_proof))
    assert told.over_proofed_h != last_of(BULK, last.replace(final_proof=not is_proof)).over_proofed_h
    left_out, said = (
        lf.forecast(lf.Process([a_mix(), BULK, each]), draws=32)["last"].to_dict()
        for each in (last, last.replace(standing=standing, final_proof=is_proof))
    )
    assert left_out == said


@pytest.mark.parametrize("shape", SHAPES)
def test_a_stage_before_the_last_is_no_final_proof(shape):
    stage = a_stage("shaped", piece=SHAPES[shape](pieces=2), until_h=1)
    after = a_stage("after", until_h=1)
    told, said, final = (
        lf.simulate(lf.Process([a_mix(), each, after])).stages[0]
        for each in (stage, stage.replace(final_proof=False), stage.replace(final_proof=True))
    )
    assert told == said
    assert told.over_proofed_h != final.over_proofed_h


def test_a_day_leaves_it_out_as_well():
    def day(**stage):
        bulk = {"name": "bulk", "room": "22C", "piece": "tub", "until_rise": "80%"}
        proof = {"name": "proof", "room": "22C", "piece": "ball", "pieces": 12, "until_rise": "70%", **stage}
        dough = {"flour": "1kg", "yeast_percent": 0.6, "measured": "24C"}
        return lf.Day.from_dict({"dough": dough, "stage": [bulk, proof]})

    assert (day().stage[1].standing, day().stage[1].final_proof) == (None, None)
    assert "final_proof" not in day().to_json()
    timelines = [lf.simulate(lf.process_of(each)) for each in (day(), day(standing="free", final_proof=True))]
    assert timelines[0].stages == timelines[1].stages
    in_tin = lf.simulate(lf.process_of(day(standing="tin"))).stages[1]
    assert in_tin.over_proofed_h > timelines[0].stages[1].over_proofed_h


# ---- limits ----------------------------------------------------------------------------------------------------------

START = lf.advance(lf.State(), a_mix()).volume_ratio()
AFTER_BULK = lf.simulate(lf.Process([a_mix(), BULK])).state.volume_ratio()
LIMITS = {
    "a bulk that ends by time": ([a_stage()], 0.60 * LIMIT),
    "one that stands free": ([a_stage(piece=P.ball(), final_proof=False)], 0.60 * LIMIT),
    "a bulk that ends by a rise": ([a_stage(until_rise_percent=60)], 1.90 * START),
    "its acceptable rise": ([a_stage(until_rise_percent=60, acceptable_rise_percent=(40, 70))], 1.70 * START),
    "a high rise of a bulk": ([a_stage(until_rise_percent=240)], 0.87 * LIMIT),
    "a high rise that stands free": (
        [a_stage(until_rise_percent=200, final_proof=False, piece=P.ball())],
        0.65 * LIMIT,
    ),
    "a proof in a tin": ([BULK, a_stage(piece=P.tin(pieces=2))], 3.0 * AFTER_BULK),
    "a proof that stands free": ([BULK, a_stage(piece=P.oblong(pieces=2))], 2.3 * AFTER_BULK),
    "one that ends by a rise": ([BULK, a_stage(piece=P.oblong(pieces=2), until_rise_percent=50)], 2.3 * AFTER_BULK),
    "a proof of what has risen": ([a_stage("bulk", until_h=2), a_stage(piece=P.ball(pieces=2))], 0.65 * LIMIT),
    "one in a tin": ([a_stage("bulk", until_h=2.2), a_stage(piece=P.tin(pieces=2))], 0.87 * LIMIT),
}  # fmt: skip


@pytest.mark.parametrize(("stages", "ratio"), LIMITS.values(), ids=LIMITS)
def test_over_proofed_at_a_volume(stages, ratio):
    """Shares of the largest volume and rises of the last stage: common practice, no source."""
    result = last_of(*stages)
    assert result.over_proofed_h is not None
    assert ratio_at(result.over_proofed_h, *stages) == pytest.approx(ratio, rel=1e-6)


def test_the_limits_are_parameters_of_the_kitchen():
    for name, stages in {
        "over_proof_bulk": [a_stage()],
        "over_proof_tin": LIMITS["one in a tin"][0],
        "over_proof_free": LIMITS["a proof of what has risen"][0],
        "over_proof_rise_free_percent": LIMITS["a proof that stands free"][0],
        "over_proof_rise_tin_percent": LIMITS["a proof in a tin"][0],
    }.items():
        lower = lf.Kitchen(**{name: 0.95 * getattr(lf.Kitchen(), name)})
        assert last_of(*stages, kitchen=lower).over_proofed_h < last_of(*stages).over_proofed_h - 0.01, name


def test_a_bulk_is_over_proofed_soon_after_it_is_ready():
    """With the limit of a tin it was so five hours after."""
    stage = a_stage(until_rise_percent=90)
    result = last_of(stage)
    assert result.end_h < result.over_proofed_h < 1.5 * result.end_h
    older = last_of(stage, kitchen=lf.Kitchen.named("2026-1"))
    assert older.over_proofed_h < 1.5 * older.end_h  # the highest acceptable rise is no parameter


# ---- by when to be back: of one dough --------------------------------------------------------------------------------


def test_be_back_by_is_the_earlier_of_two():
    proof = a_stage(piece=P.ball(pieces=12), until_rise_percent=80)
    for highest, is_rise in ((100, True), (129, True), (131, False), (200, False)):
        result = last_of(BULK, proof.replace(acceptable_rise_percent=(60, highest)))
        passed_h = last_of(BULK, proof.replace(until_rise_percent=highest)).end_h
        assert result.be_back_by_h == pytest.approx(min(passed_h, result.over_proofed_h), abs=1e-6)
        assert (result.be_back_by_h < result.over_proofed_h) == is_rise
    # Acceptable rises that are not given: 133 % of the rise of a final proof, 150 % of another.
    for final, times in ((None, 1.33), (True, 1.33), (False, 1.5)):
        result = last_of(BULK, proof.replace(until_rise_percent=50, final_proof=final))
        passed_h = last_of(BULK, proof.replace(until_rise_percent=50 * times, final_proof=final)).end_h
        assert result.be_back_by_h == pytest.approx(passed_h, abs=1e-6)


def test_a_stage_that_is_past_when_it_ends_says_when_it_was():
    stage = a_stage(until_h=6)
    result = last_of(stage)
    assert result.be_back_by_h == result.over_proofed_h < result.end_h
    assert "stage_over_proofed" in [n.code for n in lf.simulate(lf.Process([a_mix(), stage])).notices]
    by_rise = a_stage(until_rise_percent=100, acceptable_rise_percent=(50, 80))
    past = lf.simulate(lf.Process([a_mix(), by_rise]))
    assert past.stages[0].be_back_by_h < past.stages[0].end_h


def test_what_cannot_over_proof_says_nothing():
    """A stage that ends by time speaks of it if it falls within two days; one that ends by a rise always does."""
    little = a_mix(instant_g=0.2, dough_c=4)
    cold = a_stage(where=S.dough(3), until_h=5)
    timeline = lf.simulate(lf.Process([little, cold]))
    (result,) = timeline.stages
    assert (result.be_back_by_h, result.over_proofed_h) == (None, None)
    assert repr(timeline).splitlines()[1].rstrip().endswith("%")
    (its,) = lf.forecast(lf.Process([little, cold])).stages
    assert (its.be_back_by_h, its.over_proofed_h) == (None, None)
    assert "two days" not in repr(lf.forecast(lf.Process([little, cold])))
    no_yeast = a_stage("rest", until_h=5)
    assert last_of(no_yeast, mix=a_mix(instant_g=0)).be_back_by_h is None
    warm = last_of(a_stage(until_h=0.2))
    assert warm.be_back_by_h == warm.over_proofed_h > 1
    slow = a_stage(where=S.dough(3), until_rise_percent=5, acceptable_rise_percent=(3, 300))
    process = lf.Process([a_mix(instant_g=0.5, dough_c=4), slow])
    assert lf.simulate(process).stages[0].be_back_by_h is None
    assert "after more than two days" in repr(lf.forecast(process))


# ---- the same of many doughs -----------------------------------------------------------------------------------------

N = sum(parameter.scale != "fixed" for parameter in lf.parameters())
SURE = lf.Kitchen(covariance=np.zeros((N, N)), bake_sd=0, model_sd=0)


@st.composite
def processes(draw):
    shapes = st.sampled_from([P.ball(pieces=8), P.oblong(pieces=2), P.tin(pieces=2), P.flat(pieces=4), P.tub()])
    wheres = st.sampled_from([ROOM, S.dough(25), S.room(18), S.humid_proof_box(32), S.daily_swing(20, 4, 15)])
    ends = st.one_of(
        st.fixed_dictionaries({"until_h": st.floats(0.3, 3)}),
        st.fixed_dictionaries({"until_rise_percent": st.floats(20, 90)}),
    )
    bulk = lf.Stage("bulk", surroundings=draw(wheres), handling=["divide", "round"], **draw(ends))
    proof = lf.Stage("proof", piece=draw(shapes), surroundings=draw(wheres), **draw(ends))
    return lf.Process([a_mix(instant_g=draw(st.floats(3, 12))), bulk, proof], start_h=draw(st.floats(0, 24)))


@FEW
@given(processes())
def test_a_forecast_without_spread_is_the_timeline(process):
    """Hours of a forecast are right to 5e-4 h: tests/unit/forecast_forecast.cpp."""
    timeline, forecast = lf.simulate(process, kitchen=SURE), lf.forecast(process, SURE, draws=2)
    for one, all_alike in zip(timeline.stages, forecast.stages, strict=True):
        assert all_alike.ready_h == pytest.approx(one.end_h, abs=1e-5)
        for name in ("be_back_by_h", "over_proofed_h"):
            when, its = getattr(one, name), getattr(all_alike, name)
            assert (when is None) == (its is None), name
            assert when is None or its == pytest.approx(when, abs=1e-3), name
        too_late = all_alike.be_back_by_h
        if too_late is None:
            assert all_alike.share_ready(all_alike.ready_h + 40) == 1
            continue
        at_end = max(too_late, all_alike.ready_h)
        assert all_alike.share_ready(at_end + 0.01) == 0
        if at_end > all_alike.ready_h + 0.01:
            assert all_alike.share_ready(at_end - 0.005) == 1
        assert all_alike.share_ready(all_alike.ready_h - 0.01) == 0


TWO_STAGES = lf.Process(
    [
        a_mix(),
        a_stage("bulk", until_rise_percent=90, handling=["divide", "round", "mould"]),
        a_stage("proof", piece=P.ball(pieces=10), until_rise_percent=70),
    ],
    start_h=8.5,
)


def test_share_ready_counts_the_doughs_that_are_in_their_window():
    """Each of 64 kitchens simulated by itself, its doughs counted one by one."""
    forecast = lf.forecast(TWO_STAGES, draws=64)
    timelines = [lf.simulate(TWO_STAGES, kitchen=kitchen, every_min=0) for kitchen in lf.draws_of(draws=64)]
    for place, its in enumerate(forecast.stages):
        stages = [timeline.stages[place] for timeline in timelines]
        assert sorted(stage.end_h for stage in stages) == pytest.approx(its.ready, abs=1e-3)
        late = [max(stage.end_h, stage.be_back_by_h) for stage in stages]
        assert sorted(late) == pytest.approx(its.too_late, abs=2e-3)
        for time_h in np.linspace(8, 20, 97):
            near = [hour for hour in [*its.ready, *late] if abs(hour - time_h) < 2e-3]
            ready = sum(stage.end_h <= time_h < max(stage.be_back_by_h, stage.end_h) for stage in stages)
            assert abs(its.share_ready(time_h) * 64 - ready) <= len(near)
    proof = forecast["proof"]
    assert 0.1 < max(proof.share_ready(time_h) for time_h in np.linspace(9, 16, 71)) < 1


def test_no_dough_that_is_past_its_window_is_ready():
    """A dough that is over-proofed by the early afternoon was told to be ready at four in 100 of 100."""
    stage = a_stage(until_rise_percent=100)
    process = lf.Process([a_mix(instant_g=3), stage], start_h=8.5)
    (its,) = lf.forecast(process).stages
    assert its.over_proofed_h < 13.6
    assert max(its.ready) < 16
    assert its.share_ready(16) < 0.02
    assert its.share_ready(24) == 0
    assert its.share_ready(8.5) == 0
    best = max(its.share_ready(time_h) for time_h in np.linspace(8.5, 16, 151))
    assert 0.3 < best < 1
    for time_h in np.linspace(8, 20, 49):
        assert 0 <= its.share_ready(time_h) <= 1
        assert its.share_ready(time_h) <= (np.asarray(its.ready) <= time_h).mean()
    (told,) = lf.ask({"ask": "forecast", "process": process, "every_draw": True})["stages"]
    assert lf.StageForecast.from_dict(told).share_ready(12) == its.share_ready(12)


def test_share_ready_where_it_is_never_so():
    never = lf.forecast(lf.Process([a_mix(), a_stage(until_rise_percent=900)])).stages[0]
    assert never.never_ready == 1
    assert {never.share_ready(time_h) for time_h in (0, 10, 1e6)} == {0}
    by_time = lf.forecast(lf.Process([a_mix(instant_g=0.2, dough_c=4), a_stage(where=S.dough(3), until_h=5)])).stages[0]
    assert (by_time.share_ready(4.99), by_time.share_ready(5), by_time.share_ready(400)) == (0, 1, 1)
    for wrong in (math.nan, "noon", None):
        with pytest.raises(lf.InvalidInput):
            never.share_ready(wrong)
    with pytest.raises(lf.InvalidInput, match="no draws"):
        lf.StageForecast(name="x").share_ready(3)


def test_of_many_doughs_be_back_by_is_the_tenth_first():
    for its in lf.forecast(TWO_STAGES).stages:
        earliest = sorted(its.too_late)
        assert its.be_back_by_h <= np.quantile(earliest, 0.1) + 1e-9  # nothing is late before it is ready, but past
        assert its.look_first_h < its.be_back_by_h < its.over_proofed_h


def test_the_hours_of_a_kitchen_that_has_learned_nothing_are_told_in_the_order_of_the_clock():
    process = lf.Process([a_mix(), a_stage(until_rise_percent=90)])
    forecast = lf.forecast(process)
    (its,) = forecast.stages
    assert its.look_first_h < its.be_back_by_h < its.ready_h  # the quickest are past before the usual one is ready
    heading = repr(forecast).splitlines()[0]
    words = ["stage", "look first", "be back by", "usually ready", "9 in 10 between"]
    assert sorted(words, key=heading.index) == words
    surer = lf.Kitchen(covariance=np.zeros((N, N)), bake_sd=0.05, model_sd=0)
    (sure,) = lf.forecast(process, surer).stages
    assert sure.look_first_h < sure.ready_h < sure.be_back_by_h
