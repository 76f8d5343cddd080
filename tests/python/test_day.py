"""Day files: what is read, what is refused and with which words, and the stages worked out one after the other."""

import datetime
import math
from pathlib import Path

import pytest
from box import FIELDS
from hypothesis import given
from hypothesis import strategies as st

import libferment as lf
from libferment import _quantities as quantities
from libferment import day as days

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo" / "day.toml"
STAGE = {"name": "bulk", "dough": "23C", "until_h": 2}


def a_day(*stages, **tables):
    return days.day_from({"dough": {"yeast_percent": 0.7}, "stage": list(stages or [STAGE]), **tables})


def a_stage(**changes):
    changed = {**STAGE, **changes}
    return {key: value for key, value in changed.items() if value is not None}


# ---- reading ---------------------------------------------------------------------------------------------------------


def test_the_demo_day_is_read():
    day = days.read_day(DEMO)
    assert "invented" in day.title
    assert day.temperatures_c == {"flour": 17.5, "room": 18, "tap": 11}
    assert (day.desired_c, day.friction_k, day.flour_g, day.yeast, day.perishable) == (24, 2, 900, "instant", False)
    assert day.dough == {"water_percent": 68, "salt_percent": 1.9, "yeast_percent": 0.7, "altitude_m": 400}
    bulk, bench_rest, final_proof = day.stages
    assert bulk == days.Stage("bulk", 23, 90, None, (0.5, 1), ("divide", "round"))
    assert bench_rest == days.Stage("bench rest", 22, None, 0.33, handling=("mould",))
    assert final_proof == days.Stage("final proof", 22, 75, None, standing="free", final_proof=True)


def test_celsius_and_fahrenheit_are_the_same_day():
    in_celsius = {
        "today": {"flour": "20C", "room": "25C", "tap": "10C"},
        "water": {"desired": "25 °C", "friction": "5K"},
        "dough": {"yeast_percent": 1},
        "stage": [{"dough": "25C", "until_rise_percent": 90}],
    }
    in_fahrenheit = {
        "today": {"flour": "68F", "room": "77F", "tap": "50F"},
        "water": {"desired": "77 °F", "friction": "9F"},
        "dough": {"yeast_percent": 1},
        "stage": [{"dough": "77F", "until_rise_percent": 90}],
    }
    assert days.day_from(in_celsius) == days.day_from(in_fahrenheit)


def test_a_stage_keeps_the_temperature_of_the_one_before():
    day = a_day(a_stage(dough=None), a_stage(dough="20C"), a_stage(dough=None), water={"desired": "25C"})
    assert [stage.dough_c for stage in day.stages] == [25, 20, 20]
    assert days.at_dough_temperature(day, 22).stages[2].dough_c == 22


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ({"dogh": {}}, 'the day file has an unknown key "dogh"; did you mean "dough"?'),
        ({"dough": {"yeast_precent": 1}}, '[dough] has an unknown key "yeast_precent"; did you mean "yeast_percent"?'),
        ({"today": {"xyzzy": 1}}, '[today] has an unknown key "xyzzy"; known: flour, room, tap'),
        ({"stage": [a_stage(until_rise=90)]}, '"until_rise"; did you mean "until_rise_percent"?'),
        ({"dough": 3}, "[dough] must be a table, got the number 3"),
        ({"stage": 3}, "stage must be a list of [[stage]] tables, got the number 3"),
        ({"stage": ["bulk"]}, 'stage must be a list of [[stage]] tables, got the text "bulk" in it'),
        ({"title": 3}, "title must be a text in quotes, got the number 3"),
        ({"dough": {"yeast_percent": "0.7"}}, "[dough] yeast_percent must be a number: percent of flour weight, got"),
        ({"dough": {"yeast_percent": True}}, "[dough] yeast_percent must be a number: percent of flour weight, got tr"),
        ({"dough": {"yeast": 1}}, "[dough] yeast must be a text in quotes, got the number 1"),
        ({"dough": {"perishable": "yes"}}, '[dough] perishable must be true or false, got the text "yes"'),
        ({"dough": {"flour_g": 0}}, "[dough] flour_g 0 g is outside 1 to 1000000 g"),
        ({"dough": {"flour_g": math.nan}}, "[dough] flour_g nan g is outside 1 to 1000000 g"),
        ({"today": {"flour": 20}}, '[today] flour = 20 has no unit; write it in quotes with one, such as "18.5C"'),
        ({"today": {"flour": "20"}}, "[today] flour 20 has no unit; write 20C or 20F"),
        ({"today": {"flour": "20h"}}, '[today] flour 20 has the unit "h"; write 20C or 20F'),
        ({"today": {"flour": "warm"}}, '[today] flour "warm" is not a number with a unit; write for example 25.5C'),
        ({"today": {"flour": True}}, 'must be a text with a unit, such as "18.5C", got true'),
        ({"today": {"flour": datetime.date(2026, 1, 2)}}, "must be a text with a unit"),
        ({"today": {"flour": "-500F"}}, "absolute zero"),
        (
            {"water": {"friction": "3"}},
            "[water] friction 3 has no unit; it is a difference of temperatures: write 3K",
        ),
        ({"water": {"friction": 3}}, '[water] friction = 3 has no unit; write it in quotes with one, such as "6K"'),
        ({"stage": [a_stage(until_h=None)]}, "must end by until_rise_percent or by until_h, one of the two"),
        ({"stage": [a_stage(until_rise_percent=90)]}, '"bulk" must end by until_rise_percent or by until_h, one of'),
        ({"water": {"friction": "6C"}}, '[water] friction 6 has the unit "c"; it is a difference of temperatures'),
        ({"dough": {"salt_percent": 18}}, "[dough] salt_percent 18 % is outside 0 to 6 %"),
        ({"today": {"tap": "99C"}}, "[today] tap 99 °C is outside 0 to 60 °C; if you meant 99 °F, write 99F"),
        ({"stage": [a_stage(dough="78C")]}, '[[stage]] "bulk" dough 78 °C is outside -2 to 45 °C; if you meant 78 °F'),
        ({"stage": [a_stage(until_h=1001)]}, '[[stage]] "bulk" until_h 1001 h is outside 0 to 1000 h'),
        ({"stage": [a_stage(until_h=math.nan)]}, "until_h nan h is outside 0 to 1000 h"),
        ({"stage": [a_stage(until_h="2h")]}, '[[stage]] "bulk" until_h must be a number, got the text "2h"'),
        (
            {"stage": [a_stage(folds_h=[1, 0.5])]},
            "folds_h must be hours from the stage's start, in order, got [1.0, 0.5]",
        ),
        ({"stage": [a_stage(folds_h=[-1])]}, "folds_h must be hours from the stage's start"),
        ({"stage": [a_stage(folds_h=[math.inf])]}, "folds_h must be hours from the stage's start"),
        ({"stage": [a_stage(folds_h=[3])]}, "has a fold at 3 h, after its end at 2 h"),
        ({"stage": [a_stage(folds_h=["1h"])]}, 'folds_h must be a list of hours, got the text "1h" in it'),
        ({"stage": [a_stage(handling=["punch"])]}, 'handling "punch" is unknown; known: fold, divide, round, mould'),
        ({"stage": [a_stage(handling="fold")]}, "handling must be a list of texts: fold, divide, round, mould, got"),
        ({"stage": [a_stage(standing="up")]}, 'standing "up" is unknown; write "tin" (also for a tub) or "free"'),
        ({"stage": [a_stage(dough=None)]}, '"bulk" has no dough temperature; add dough = "22C" to it, or [water] de'),
        ({"stage": [a_stage(name=None, dough=None)]}, '[[stage]] "stage 1" has no dough temperature'),
    ],
)
def test_what_a_day_file_may_not_hold(content, words):
    with pytest.raises(lf.InvalidInput) as refused:
        days.day_from(content)
    assert words in str(refused.value)


@pytest.mark.parametrize(
    "content",
    [
        {"dough": {"yeast_percent": 10**400}},
        {"dough": {"flour_g": 10**400}},
        {"water": {"desired": 10**400}},
        {"stage": [a_stage(until_h=10**400)]},
        {"stage": [a_stage(folds_h=[10**400])]},
    ],
)
def test_integers_too_large_for_numbers(content):
    with pytest.raises(lf.InvalidInput):
        days.day_from(content)


@pytest.mark.parametrize("rise_percent", [-50, 0, math.nan, math.inf, 1e6])
def test_a_rise_outside_the_field_table_names_its_stage(rise_percent):
    with pytest.raises(lf.InvalidInput) as refused:
        days.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=rise_percent)))
    assert "bulk" in str(refused.value)
    assert "rise" in str(refused.value)


def test_files_that_cannot_be_read(tmp_path):
    with pytest.raises(lf.InvalidInput, match=r"there is no file .*nowhere\.toml"):
        days.read_day(tmp_path / "nowhere.toml")
    with pytest.raises(lf.InvalidInput, match="cannot be read"):
        days.read_day(tmp_path)
    path = tmp_path / "day.toml"
    for broken, words in (
        (b"\xff\xfe", "cannot be read"),
        (b"[dough\n", "is not valid TOML"),
        (b"a = 1\na = 2", "TOML"),
    ):
        path.write_bytes(broken)
        with pytest.raises(lf.InvalidInput, match=words) as refused:
            days.read_day(path)
        assert str(path) in str(refused.value)
    path.write_text("[dough]\nyeast_precent = 1\n", encoding="utf-8")
    with pytest.raises(lf.InvalidInput) as refused:
        days.read_day(str(path))
    assert str(refused.value).startswith(f"{path}: [dough] has an unknown key")


def test_a_byte_order_mark_or_windows_line_ends_do_no_harm(tmp_path):
    path = tmp_path / "day.toml"
    path.write_bytes(DEMO.read_bytes().replace(b"\n", b"\r\n"))
    assert days.read_day(path) == days.read_day(DEMO)


def test_what_the_water_needs():
    with pytest.raises(lf.InvalidInput) as refused:
        days.water_of(days.day_from({"today": {"flour": "20C"}}))
    for name in ("[water] desired", "[today] room", "[water] friction"):
        assert name in str(refused.value)
    assert "[today] flour" not in str(refused.value)


def test_the_water_is_that_of_the_factor_rule():
    day = days.read_day(DEMO)
    assert days.water_of(day) == lf.water_by_factor_rule(24, flour_c=17.5, room_c=18, friction_k=2)
    preferment = days.day_from(
        {
            "today": {"flour": "20C", "room": "21C", "preferment": "18C"},
            "water": {"desired": "24C", "friction": "3K"},
        }
    )
    expected = lf.water_by_factor_rule(24, flour_c=20, room_c=21, friction_k=3, preferment_c=18)
    assert days.water_of(preferment) == expected == 4 * 24 - 20 - 21 - 18 - 3


# ---- stages ----------------------------------------------------------------------------------------------------------


def test_the_demo_day_stage_by_stage():
    """The same day as a chain of steps written out: the numbers from the file, the functions of the package alone."""
    dough = lf.Dough(dough_c=23, yeast_percent=0.7, salt_percent=1.9, water_percent=68, altitude_m=400)
    state = lf.mixed(dough)
    state = lf.handled(dough, lf.rested(dough, state, 0.5), 0.15)  # loss by a fold
    state = lf.handled(dough, lf.rested(dough, state, 0.5), 0.15)
    bulk_h = 1 + lf.hours_until(dough, state, 1.9)
    state = lf.rested(dough, state, bulk_h - 1)
    assert lf.volume_ratio(dough, state) == pytest.approx(1.9, rel=1e-12)
    state = lf.handled(dough, lf.handled(dough, state, 0.5), 0.6)  # divided, rounded
    cooler = dough.at(22)
    bench_from = lf.volume_ratio(cooler, state)
    state = lf.rested(cooler, state, 0.33)
    bench_rise = 100 * (lf.volume_ratio(cooler, state) / bench_from - 1)
    state = lf.handled(cooler, state, 0.8)  # moulded
    proof_from = lf.volume_ratio(cooler, state)
    proof_h = lf.hours_until(cooler, state, proof_from * 1.75)
    over = min(0.65 * 4.8, proof_from * 2.3)  # standing free; a final proof by its own rise
    over_h = lf.hours_until(cooler, state, over)

    bulk, bench_rest, final_proof = days.plan_stages(days.read_day(DEMO))
    assert bulk.hours == pytest.approx(bulk_h, rel=1e-12)
    assert bulk.rise_percent == pytest.approx(90, rel=1e-12)
    assert (bulk.folds_done, bulk.folds_planned) == (2, 2)
    assert bench_rest.start_h == bulk.ready_h
    assert bench_rest.hours == 0.33
    assert bench_rest.rise_percent == pytest.approx(bench_rise, rel=1e-9)
    assert final_proof.start_h == pytest.approx(bulk_h + 0.33, rel=1e-12)
    assert final_proof.hours == pytest.approx(proof_h, rel=1e-12)
    assert final_proof.ready_h == pytest.approx(bulk_h + 0.33 + proof_h, rel=1e-12)
    assert final_proof.be_back_by_h == pytest.approx(bulk_h + 0.33 + over_h, rel=1e-12)


def test_losses_of_the_demo_chain_are_the_kitchens():
    kitchen = lf.Kitchen()
    losses = (kitchen.fold_loss, kitchen.divide_loss, kitchen.round_loss, kitchen.mould_loss)
    assert losses == (0.15, 0.5, 0.6, 0.8)
    assert (kitchen.over_proof_free, kitchen.retention_limit, kitchen.over_proof_rise_percent) == (0.65, 4.8, 130)


def test_one_stage_without_folds_is_hours_to_rise():
    (plan,) = days.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=90)))
    assert plan.hours == pytest.approx(lf.hours_to_rise(90, dough_c=23, yeast_percent=0.7), rel=1e-12)
    (timed,) = days.plan_stages(a_day(STAGE))
    assert timed.rise_percent == pytest.approx(lf.rise_after(2, dough_c=23, yeast_percent=0.7), rel=1e-12)
    assert (timed.hours, timed.ready_h, timed.start_h) == (2, 2, 0)


def test_another_kitchen_changes_the_day():
    kitchen = lf.Kitchen(gassing_rate=14)
    day = a_day(a_stage(until_h=None, until_rise_percent=90))
    (plan,) = days.plan_stages(day, kitchen)
    assert plan.hours == pytest.approx(lf.hours_to_rise(90, dough_c=23, yeast_percent=0.7, kitchen=kitchen), rel=1e-12)


def test_a_stage_that_is_ready_before_a_fold():
    (plan,) = days.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=50, folds_h=[0.1, 0.2, 5, 6])))
    assert (plan.folds_done, plan.folds_planned) == (2, 4)
    (unfolded,) = days.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=50, folds_h=[5])))
    assert (unfolded.folds_done, unfolded.folds_planned) == (0, 1)
    assert unfolded.hours == pytest.approx(lf.hours_to_rise(50, dough_c=23, yeast_percent=0.7), rel=1e-12)


def test_a_fold_costs_time():
    (plain,) = days.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=90)))
    (folded,) = days.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=90, folds_h=[0.5, 1])))
    assert folded.hours > plain.hours * 1.01


@pytest.mark.parametrize("rise_percent", [370, 381, 500])
def test_a_rise_that_a_stage_never_reaches(rise_percent):
    day = a_day(STAGE | {"handling": ["fold"]}, a_stage(name="proof", until_h=None, until_rise_percent=rise_percent))
    with pytest.raises(lf.NoSolution) as refused:
        days.plan_stages(day)
    message = str(refused.value)
    assert message.startswith(f'stage "proof": a rise of {rise_percent} % is never reached')
    named = float(message.split("less than ")[1].split(" %")[0])
    below = a_day(STAGE | {"handling": ["fold"]}, a_stage(name="proof", until_h=None, until_rise_percent=named - 1))
    assert days.plan_stages(below)[1].rise_percent == pytest.approx(named - 1, rel=1e-9)


def test_when_a_stage_would_be_over_proofed():
    tin, free = (days.plan_stages(a_day(a_stage(standing=standing)))[0] for standing in ("tin", "free"))
    proof = days.plan_stages(a_day(a_stage(standing="tin", final_proof=True)))[0]
    dough = {"dough_c": 23, "yeast_percent": 0.7}
    assert tin.be_back_by_h == pytest.approx(lf.hours_to_rise(100 * (0.87 * 4.8 - 1), **dough), rel=1e-12)
    assert free.be_back_by_h == pytest.approx(lf.hours_to_rise(100 * (0.65 * 4.8 - 1), **dough), rel=1e-12)
    assert proof.be_back_by_h == pytest.approx(lf.hours_to_rise(130, **dough), rel=1e-12)


def test_a_stage_in_which_nothing_rises_can_still_pass():
    # −2 °C is inside the field table: the dough stands still for the time given, and is never over-proofed.
    (plan,) = days.plan_stages(a_day(a_stage(dough="-2C")))
    assert plan.hours == 2
    assert plan.rise_percent == pytest.approx(0, abs=1e-9)
    assert plan.be_back_by_h is None


def test_what_a_day_of_stages_needs():
    with pytest.raises(lf.InvalidInput, match=r"\[dough\] needs yeast_percent: 3 g on 500 g of flour are 0.6"):
        days.plan_stages(days.day_from({"stage": [STAGE]}))
    with pytest.raises(lf.InvalidInput, match=r"no \[\[stage\]\]; add one"):
        days.plan_stages(days.day_from({"dough": {"yeast_percent": 1}}))


def codes(day):
    return [notice.code for notice in days.notices_of_stages(day, days.plan_stages(day))]


def test_notices_of_a_day():
    assert codes(days.read_day(DEMO)) == []
    perishable = {"yeast_percent": 0.7, "perishable": True}
    assert codes(a_day(a_stage(until_h=4), dough=perishable)) == []
    assert codes(a_day(a_stage(until_h=4.01), dough=perishable)) == ["perishable_held"]
    assert codes(a_day(a_stage(until_h=2), a_stage(until_h=2.01), dough=perishable)) == ["perishable_held"]
    assert codes(a_day(a_stage(until_h=4.01))) == []
    assert codes(a_day(a_stage(dough="4C", until_h=12), dough=perishable)) == ["dough_cold"]
    warm = a_day(a_stage(dough="40C"), a_stage(dough="41C"), today={"refrigerator": "8C"}, dough=perishable)
    assert [code for code in codes(warm) if code != "stage_over_proofed"] == [
        "dough_warm",
        "refrigerator_warm",
    ]  # each once
    little = a_day(a_stage(until_h=9), dough={"yeast_percent": 0.02, "perishable": True, "sugar_percent": 12})
    assert codes(little) == ["perishable_held", "yeast_very_low", "sugar_high"]


def test_a_stage_that_ends_over_proofed():
    (plan,) = days.plan_stages(a_day(a_stage(until_h=9)))
    assert plan.be_back_by_h < plan.ready_h
    (notice,) = days.notices_of_stages(a_day(a_stage(until_h=9)), [plan])
    assert (notice.code, notice.severity) == ("stage_over_proofed", "warning")
    assert notice.values == {"be_back_by_h": plan.be_back_by_h, "ready_h": plan.ready_h}
    assert f'stage "bulk": the dough is over-proofed at {quantities.clock_text(plan.be_back_by_h)}' in notice.text


def test_time_in_the_cold_is_not_time_held_warm():
    perishable = {"yeast_percent": 0.7, "perishable": True}
    assert codes(a_day(a_stage(until_h=3), a_stage(dough="4C", until_h=12), dough=perishable)) == ["dough_cold"]


# ---- random content --------------------------------------------------------------------------------------------------

scalars = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=8)
    | st.dates()
    | st.sampled_from(["20C", "68F", "3K", "fold", "tin", "free", "instant", "compressed", "-500F", 10**400, 0.7, 2])
)
keys = [*days.Day.__dataclass_fields__, *days.Stage.__dataclass_fields__]
keys += ["today", "water", "stage", "flour", "room", "tap", "preferment", "refrigerator", "desired", "friction"]
names = st.text(max_size=6) | st.sampled_from([*keys, *days.DOUGH_NUMBERS])
values = st.recursive(
    scalars, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(names, inner, max_size=4), max_leaves=12
)
numbers = st.floats() | st.integers() | st.floats(0, 10)
plausible_stages = st.fixed_dictionaries(
    {},
    optional={
        "name": st.text(max_size=5),
        "dough": st.sampled_from(["20C", "75F", "-2C", "45C", "99C"]),
        "until_rise_percent": numbers,
        "until_h": numbers,
        "folds_h": st.lists(numbers, max_size=3).map(sorted),
        "handling": st.lists(st.sampled_from(days.HANDLINGS), max_size=3),
        "standing": st.sampled_from(["tin", "free"]),
        "final_proof": st.booleans(),
    },
)
tables = {
    "title": st.text(max_size=5),
    "today": values,
    "water": st.fixed_dictionaries(
        {}, optional={"desired": st.sampled_from(["24C", "75F"]), "friction": st.just("3K")}
    ),
    "dough": st.fixed_dictionaries(
        {"yeast_percent": st.floats(0.01, 5)}, optional=dict.fromkeys(days.DOUGH_NUMBERS[1:], numbers)
    ),
    "stage": st.lists(plausible_stages, max_size=4),
}


@given(
    st.dictionaries(names, values, max_size=5)
    | st.fixed_dictionaries({}, optional={k: v | values for k, v in tables.items()})
)
def test_any_content_is_read_or_refused(content):
    try:
        day = days.day_from(content)
    except lf.InvalidInput as problem:
        refusal = str(problem)
    else:
        assert isinstance(day, days.Day)
        return
    assert refusal


@given(st.fixed_dictionaries({"dough": tables["dough"], "stage": tables["stage"]}, optional={"water": tables["water"]}))
def test_any_day_that_is_read_is_planned_or_refused(content):
    try:
        day = days.day_from(content)
        plans = days.plan_stages(day)
        notices = days.notices_of_stages(day, plans)
    except (lf.InvalidInput, lf.OutsideModel, lf.NoSolution):
        return
    assert all(isinstance(notice, lf.Notice) for notice in notices)
    assert len(plans) == len(day.stages)
    for before, plan in zip([None, *plans], plans, strict=False):
        assert plan.start_h == (before.ready_h if before else 0)
        assert 0 <= plan.hours < math.inf
        assert math.isfinite(plan.rise_percent)
        assert plan.be_back_by_h is None or plan.start_h <= plan.be_back_by_h < math.inf


# ---- quantities ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (quantities.temperature_c, "25.5C", 25.5),
        (quantities.temperature_c, " 25,5 °C ", 25.5),
        (quantities.temperature_c, "77F", 25),
        (quantities.temperature_c, "77°f", 25),
        (quantities.temperature_c, "-4C", -4),
        (quantities.temperature_c, "−4C", -4),
        (quantities.temperature_c, "+4c", 4),
        (quantities.difference_k, "6K", 6),
        (quantities.difference_k, "9F", 5),
        (quantities.hours, "2.5h", 2.5),
        (quantities.hours, "90min", 1.5),
        (quantities.hours, "90 MIN", 1.5),
    ],
)
def test_quantities_with_a_unit(read, text, value):
    assert read(text) == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize("read", [quantities.temperature_c, quantities.difference_k, quantities.hours])
@pytest.mark.parametrize(
    "text", ["", " ", "C", "25", "25 X", "25CC", "1e3C", "2..5C", "25C F", "nanC", "infh", "--2C", "0x1C"]
)
def test_quantities_that_are_none(read, text):
    with pytest.raises(lf.InvalidInput) as refused:
        read(text, "flour")
    assert str(refused.value).startswith("flour ")
    assert "write" in str(refused.value)


@given(st.text() | st.from_regex(r"\A\s*[-+−]?\d+([.,]\d+)?\s*°?\s*[A-Za-z]{0,4}\s*\Z"))
def test_any_text_is_a_quantity_or_refused(text):
    for read in (quantities.temperature_c, quantities.difference_k, quantities.hours):
        try:
            value = read(text)
        except lf.InvalidInput:
            continue
        assert isinstance(value, float)
        assert math.isfinite(value)


@pytest.mark.parametrize("read", [quantities.temperature_c, quantities.difference_k, quantities.hours])
def test_a_quantity_with_too_many_digits_is_refused(read):
    for unit in ("C", "F", "K", "h", "min"):
        with pytest.raises(lf.InvalidInput):
            read("9" * 400 + unit)


@pytest.mark.parametrize(
    ("time_h", "text"),
    [
        (0, "0 min"),
        (0.5, "30 min"),
        (0.9999, "1 h 00 min"),
        (1, "1 h 00 min"),
        (2.583333, "2 h 35 min"),
        (26.0, "26 h 00 min"),
        (FIELDS["time_h"].high, "1000 h 00 min"),
    ],
)
def test_times_as_a_baker_reads_them(time_h, text):
    assert quantities.clock_text(time_h) == text


def test_a_stage_that_ends_over_proofed_says_so():
    day = a_day(a_stage(until_rise_percent=None, until_h=12, final_proof=True, standing="free"))
    (plan,) = days.plan_stages(day)
    assert plan.be_back_by_h < plan.ready_h
    (notice,) = [n for n in days.notices_of_stages(day, [plan]) if n.code == "stage_over_proofed"]
    assert notice.severity == "warning"
    assert notice.values == {"be_back_by_h": plan.be_back_by_h, "ready_h": plan.ready_h}
    assert "ask for a smaller rise or a shorter time" in notice.text
