"""What a water plan and a timeline say of a dough: at which number, how large, and once."""

from collections import Counter

import numpy as np
import pytest

import libferment as lf

S, P = lf.Surroundings, lf.Piece
FLOUR_G = 1000
BOWL = lf.Bowl("plastic", 300)


def a_mix(**changes):
    given = {"flour_g": FLOUR_G, "water_g": 620, "salt_g": 18, "instant_g": 8, "room_c": 22, "bowl": BOWL}
    return lf.Mix(**{**given, "mixing": "hand", **changes})


def a_stage(name="bulk", **changes):
    end = {} if "until_rise_percent" in changes else {"until_h": 0.5}
    return lf.Stage(name, **{"surroundings": S.room(22), **end, **changes})


def of_plan(mix, desired_c=25):
    return lf.water_by_heat_balance(mix, desired_c).notices


def of_day(mix, *stages, **options):
    return lf.simulate(lf.Process([mix.replace(dough_c=25), *(stages or [a_stage()])]), **options).notices


def the_only(notices, code):
    (notice,) = [notice for notice in notices if notice.code == code]
    assert notice.text
    return notice


def has(notices, code):
    return code in [notice.code for notice in notices]


def test_where_there_is_nothing_to_say():
    assert of_plan(a_mix()) == []
    assert of_day(a_mix()) == []


# ---- formula ---------------------------------------------------------------------------------------------------------


def fat_of(mix, *names):
    """Grams of fat of these ingredients."""
    kinds = {"compressed": "compressed_yeast"}
    return sum(getattr(mix, f"{name}_g") * lf.Composition.of(kinds.get(name, name)).fat for name in names)


@pytest.mark.parametrize("say", [of_plan, of_day], ids=["plan", "day"])
@pytest.mark.parametrize("names", [("oil",), ("butter",), ("butter", "milk", "egg")], ids=", ".join)
def test_more_than_ten_percent_fat(names, say):
    """Of the flour's weight, whatever brings it, the yeast included; the flour's own is not counted."""
    rich = a_mix(water_g=450, instant_g=0, compressed_g=20, **{f"{name}_g": 100.0 for name in names})
    others_g = fat_of(rich, *names[1:], "compressed")
    for over, is_told in ((1 + 1e-9, True), (1 - 1e-9, False)):
        grams = (over * 0.1 * FLOUR_G - others_g) / lf.Composition.of(names[0]).fat
        notices = say(rich.replace(**{f"{names[0]}_g": grams}))
        assert has(notices, "fat_high") == is_told
        if is_told:
            notice = the_only(notices, "fat_high")
            assert notice.severity == "caution"
            assert notice.values["fat_percent"] == pytest.approx(10, rel=1e-8)


def test_fat_is_of_all_the_flour():
    mix = a_mix(oil_g=110)
    assert has(of_plan(mix), "fat_high")
    more = {"flours": [lf.Flour(100, "whole_wheat")], "gluten_g": 20, "preferments": [lf.Preferment(50, 50)]}
    assert not has(of_plan(mix.replace(**more)), "fat_high")
    # A dough that joins brings its flour.
    poolish = lf.Process([lf.Mix(flour_g=200, water_g=200, instant_g=0.2, dough_c=22), a_stage("poolish")])
    joined = mix.replace(doughs=[lf.simulate(poolish).state.as_beginning()])
    assert not has(of_plan(joined), "fat_high")
    assert not has(of_day(joined), "fat_high")


def test_butter_that_melts():
    """50 kJ per kg of butter (from memory), of a dough of 2.8 kJ/(kg K)."""
    for grams, is_told in ((100, False), (101, True), (200, True)):
        mix = a_mix(butter_g=grams)
        notices = of_plan(mix)
        assert has(notices, "butter_melts") == is_told
        if is_told:
            notice = the_only(notices, "butter_melts")
            assert notice.values["butter_g"] == grams
            assert notice.values["dough_k"] == pytest.approx(-grams * 50 / (mix.percent.dough_g * 2.8), rel=1e-9)
            assert not has(of_day(mix), "butter_melts")  # its temperature is measured or planned
    assert not has(of_plan(a_mix(oil_g=200)), "butter_melts")


@pytest.mark.parametrize(
    ("percent", "codes"), [(9, set()), (15, {"sugar_high"}), (25, {"sugar_high", "sugar_very_high"})]
)
def test_sugar(percent, codes):
    numbers = {"dough_c": 25, "yeast_percent": 1}
    for notices in (
        of_day(a_mix(sugar_g=10 * percent)),
        lf.cautions(**numbers, sugar_percent=percent),
        lf.simulate(lf.Process([a_mix(sugar_g=10 * percent, dough_c=25), a_stage(), a_stage("proof")])).notices,
    ):
        found = Counter(notice.code for notice in notices)
        assert {code for code in found if code.startswith("sugar")} == codes
        assert set(found.values()) <= {1}


@pytest.mark.parametrize(("grams", "is_told"), [(35, False), (35.1, True), (48, True)])
def test_yeast_that_was_perhaps_grams(grams, is_told):
    for notices in (of_day(a_mix(instant_g=grams)), lf.cautions(yeast_percent=grams / 10)):
        assert has(notices, "yeast_very_high") == is_told
    if is_told:
        notice = the_only(of_day(a_mix(instant_g=grams)), "yeast_very_high")
        assert notice.values["instant_equivalent_percent"] == pytest.approx(grams / 10, rel=1e-9)


# ---- the bowl and the band -------------------------------------------------------------------------------------------


def heavy_bowl(mix):
    """Ceramic, 1.5 times the dough's weight, at most 2.5 kg."""
    return mix.replace(bowl=lf.Bowl("ceramic", min(1.5 * mix.percent.dough_g, 2500)))


NO_BOWL = {"bowl": lf.Bowl(), "heat_loss_w_per_k": 0}  # and a room that takes nothing while it is mixed
BOWLS = [(room_c, flour_g) for room_c in (10, 18, 22, 28) for flour_g in (300, FLOUR_G, 5000)]


@pytest.mark.parametrize(("room_c", "flour_g"), BOWLS)
def test_a_bowl_that_nobody_mentioned(room_c, flour_g):
    """What a heavy one would make of the dough, where it is half a degree or more."""
    mix = a_mix(room_c=room_c, flour_g=flour_g, water_g=0.62 * flour_g, **NO_BOWL)
    plan = lf.water_by_heat_balance(mix, 25)
    in_it_k = lf.dough_by_heat_balance(heavy_bowl(mix).replace(water_c=plan.water_c)) - 25
    assert (in_it_k < 0) == (room_c < 25)
    if not has(plan.notices, "bowl_not_counted"):
        assert abs(in_it_k) < 0.5
        return
    notice = the_only(plan.notices, "bowl_not_counted")
    assert notice.severity == "caution"
    assert abs(notice.values["dough_k"]) >= 0.5
    assert notice.values["dough_k"] == pytest.approx(in_it_k, rel=1e-9)
    assert (notice.values["dough_k"] > 0) == (notice.values["water_k"] < 0)
    assert ("colder" in notice.text) == ("warmer" in notice.text)  # the dough the one, the water the other


@pytest.mark.parametrize("room_c", [10, 18, 22, 28])
def test_the_water_it_asks_for_is_that_of_a_plan_with_a_heavy_bowl(room_c):
    mix = a_mix(room_c=room_c, **NO_BOWL)
    plan, with_it = (lf.water_by_heat_balance(each, 25) for each in (mix, heavy_bowl(mix)))
    notice = the_only(plan.notices, "bowl_not_counted")
    assert notice.values["water_k"] == pytest.approx(with_it.water_c - plan.water_c, rel=1e-9)


def test_a_bowl_is_told_of_in_a_plan_that_does_not_know_it():
    assert has(of_plan(a_mix(room_c=10, bowl=lf.Bowl())), "bowl_not_counted")
    assert not has(of_plan(a_mix(room_c=10)), "bowl_not_counted")
    assert not has(of_day(a_mix(room_c=10, bowl=lf.Bowl())), "bowl_not_counted")


def test_the_band_holds_a_bowl_that_is_not_known():
    known, unknown = (lf.water_by_heat_balance(a_mix(room_c=12, bowl=bowl), 25) for bowl in (BOWL, lf.Bowl()))
    colder_k = the_only(unknown.notices, "bowl_not_counted").values["dough_k"]
    assert colder_k < -1
    assert unknown.high_c == pytest.approx(known.high_c, abs=0.1)
    assert 25 - unknown.low_c == pytest.approx(np.hypot(25 - known.low_c, colder_k), rel=0.02)
    warm = lf.water_by_heat_balance(a_mix(room_c=34, bowl=lf.Bowl()), 25)
    warmer_k = the_only(warm.notices, "bowl_not_counted").values["dough_k"]
    assert warmer_k > 0.5
    assert warm.high_c > 25 + warmer_k


def test_the_band_holds_a_machine_where_no_way_of_mixing_was_said():
    said, guessed = (lf.water_by_heat_balance(a_mix(mixing=mixing), 25) for mixing in ("hand", None))
    assert guessed.water_c == said.water_c
    assert guessed.low_c == said.low_c
    # Warmed as by a stand mixer at its most: what the plan for one says of a dough made with this water.
    most = next(method for method in lf.mixing_methods() if method.name == "stand_mixer").high_kj_per_kg
    machine = a_mix(mixing=lf.ByWork(most), water_c=guessed.water_c)
    assert guessed.high_c == pytest.approx(lf.dough_by_heat_balance(machine), abs=0.6)
    assert guessed.high_c > said.high_c + 1
    assert [notice.code for notice in guessed.notices] == ["mixing_assumed"]


# ---- stages ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("stages", "hours"),
    [
        ([(33.1, 2.1)], 2.1),
        ([(33.1, 1.9)], None),
        ([(32.9, 9)], None),
        ([(36, 1.5), (20, 1), (34, 1)], 2.5),  # all day together
        ([(36, 1.5), (20, 1), (34, 0.4)], None),
    ],
)
def test_a_dough_that_is_held_warm(stages, hours):
    """Yeast hardly multiplies above 33 °C."""
    steps = [a_stage(f"{i}", surroundings=S.dough(dough_c), until_h=h) for i, (dough_c, h) in enumerate(stages)]
    notices = of_day(a_mix(instant_g=1), *steps)
    assert has(notices, "dough_held_warm") == (hours is not None)
    if hours is not None:
        notice = the_only(notices, "dough_held_warm")
        assert notice.severity == "caution"
        assert notice.values["hours"] == pytest.approx(hours, rel=1e-9)
        other = of_day(a_mix(instant_g=0), *steps)
        assert not has(other, "dough_held_warm")  # no yeast, nothing that multiplies


def test_a_dough_that_becomes_warm_is_counted_from_then_on():
    box = a_stage("proof", piece=P.ball(pieces=20), surroundings=S.proof_box(38), until_h=4)
    timeline = lf.simulate(lf.Process([a_mix(instant_g=1, dough_c=25), box]), every_min=1)
    from_h = np.interp(33, timeline.mean_c, timeline.time_h)
    notice = the_only(timeline.notices, "dough_held_warm")
    assert notice.values["hours"] == pytest.approx(timeline.time_h[-1] - from_h, abs=1e-3)


@pytest.mark.parametrize(
    ("changes", "is_told"),
    [
        ({}, True),
        ({"piece": P.ball(pieces=33)}, True),
        ({"piece": P.ball(50.0)}, False),
        ({"piece": P.ball(49.9)}, True),
        ({"until_rise_percent": 80}, False),
        ({"until_rise_percent": 81}, True),
        ({"standing": "tin"}, False),
        ({"piece": P.tin(40)}, False),
        ({"final_proof": False}, False),
        ({"piece": P.ball(1000)}, False),
    ],
    ids=str,
)
def test_small_pieces_that_stand_free(changes, is_told):
    proof = a_stage("proof", **{"piece": P.ball(40), "until_rise_percent": 100, **changes})
    notices = of_day(a_mix(), a_stage(), proof)
    assert has(notices, "small_pieces") == is_told
    if is_told:
        notice = the_only(notices, "small_pieces")
        assert notice.severity == "info"
        assert notice.values["piece_g"] < 50
    assert not has(of_day(a_mix(), proof, a_stage("after")), "small_pieces")  # before another it is no final proof


def test_each_is_told_once():
    """Of a dough that asks for all of them, with two mixes and three stages, in whatever way it is asked for."""
    rich = a_mix(instant_g=40, sugar_g=260, butter_g=150, oil_g=40, water_g=560, dough_c=30, bowl=lf.Bowl(), room_c=12)
    warm = a_stage("bulk", surroundings=S.dough(35), until_h=2.2, handling=["divide", "round"])
    late = lf.Mix(butter_g=60, salt_g=1, dough_c=34)
    proofs = [
        a_stage(name, piece=P.ball(40), surroundings=S.dough(35), until_rise_percent=90, final_proof=True)
        for name in ("first", "second")
    ]
    process = lf.Process([rich, warm, late, *proofs])
    wanted = {"fat_high", "sugar_high", "sugar_very_high", "yeast_very_high", "dough_held_warm"}
    found = Counter(notice.code for notice in lf.simulate(process).notices)
    assert wanted <= set(found)
    assert {code: times for code, times in found.items() if code in wanted and times > 1} == {}
    told = lf.ask({"ask": "simulate", "process": process, "every_min": 0})["notices"]
    assert Counter(notice["code"] for notice in told) == found
    assert Counter(n.code for n in lf.forecast(process, draws=16).notices) >= Counter(wanted)

    plan = Counter(notice.code for notice in of_plan(rich.replace(dough_c=None), 28))
    assert {"fat_high", "butter_melts", "bowl_not_counted"} <= set(plan)
    assert set(plan.values()) == {1}


# ---- what a handling leaves ------------------------------------------------------------------------------------------


@pytest.mark.parametrize("handling", ["fold", "divide", "round", "mould", "machine_mould"])
@pytest.mark.parametrize("kept", [None, 0.0, 0.37, 1.0])
def test_a_handling_leaves_a_share_of_the_cells_gas(handling, kept):
    """CO2 and air alike; what is dissolved stays, and the yeast does not forget."""
    name = f"kept_by_{handling}"
    kitchen = lf.Kitchen() if kept is None else lf.Kitchen(**{name: kept})
    before, after = (
        lf.simulate(
            lf.Process([a_mix(dough_c=25), a_stage(until_h=1.5, handling=done)]), kitchen=kitchen, every_min=0
        ).state
        for done in ([], [handling])
    )
    share = getattr(kitchen, name)
    assert after.air_mmol == pytest.approx(share * before.air_mmol, rel=1e-12)
    assert after.made_mmol == before.made_mmol
    cells_before, cells_after = (state.volume_ratio(kitchen) - 0.94 for state in (before, after))
    assert cells_after == pytest.approx(share * cells_before, rel=1e-9, abs=1e-9)
    if share == 1:
        assert after.co2_mmol == pytest.approx(before.co2_mmol, rel=1e-12)


def test_shares_of_handlings_one_after_the_other_multiply():
    states = [
        lf.simulate(lf.Process([a_mix(dough_c=25), a_stage(until_h=1.5, handling=done)]), every_min=0).state
        for done in ([], ["divide", "round", "mould"])
    ]
    assert states[1].air_mmol / states[0].air_mmol == pytest.approx(0.70 * 0.60 * 0.40, rel=1e-12)


def test_a_day_is_moulded_by_machine():
    stage = {"name": "bulk", "dough": "25C", "until": "90min", "handling": ["Divide", "machine mould"]}
    day = lf.Day.from_dict({"dough": {"flour": "1kg", "yeast_percent": 0.8}, "stage": [stage]})
    assert lf.process_of(day).steps[1].handling == ["divide", "machine_mould"]
