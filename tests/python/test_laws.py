"""Temperature laws, the ratios built on them, what made a time, and the notices at their limits."""

import math

import numpy as np
import pytest
from box import FIELDS, anywhere, attempt, doughs, kitchens
from hypothesis import assume, given
from hypothesis import strategies as st

import libferment as lf

LAWS = (lf.Cardinal(), lf.SquareRoot(), lf.Arrhenius(), lf.ConstantQ10())

# Slator 1906 (J Chem Soc Trans 89:128-142), from memory: temperature coefficients of fermentation by living yeast.
SLATOR_Q10 = {(5, 15): 5.6, (10, 20): 3.8, (15, 25): 2.8, (20, 30): 2.25, (25, 35): 1.95, (30, 40): 1.6}


def rms_against_slator(law):
    squares = [math.log(law.factor(high) / law.factor(low) / q10) ** 2 for (low, high), q10 in SLATOR_Q10.items()]
    return math.sqrt(sum(squares) / len(squares))


# The default law's values of the model, to the digits it gives them with.
@pytest.mark.parametrize(
    ("temperature_c", "factor"),
    [(4, 0.0513), (10, 0.2039), (15, 0.4062), (20, 0.6737), (25, 1), (30, 1.3715), (35, 1.7510), (40, 1.9877)],
)
def test_default_law(temperature_c, factor):
    assert lf.Cardinal().factor(temperature_c) == pytest.approx(factor, abs=1e-4)
    assert lf.Kitchen().temperature_law.factor(temperature_c) == lf.Cardinal().factor(temperature_c)


def test_constant_q10_and_arrhenius_by_their_definitions():
    for t in (-2.0, 4.0, 15.5, 24.0, 30.0, 45.0):
        assert lf.ConstantQ10(2.7).factor(t) == pytest.approx(2.7 ** ((t - 25) / 10), rel=1e-13)
        energy = -60e3 / 8.314462618 * (1 / (t + 273.15) - 1 / 298.15)
        assert lf.Arrhenius(60).factor(t) == pytest.approx(math.exp(energy), rel=1e-12)


def test_square_root_by_its_definition():
    # Ratkowsky et al. 1983, normalised to 1 at 25 °C.
    def rate(t):
        return ((t + 2) * (1 - math.exp(0.37 * (t - 47)))) ** 2

    law = lf.SquareRoot(t_min_c=-2, t_max_c=47, decline_per_k=0.37)
    for t in (-1.0, 4.0, 24.0, 41.0, 46.5):
        assert law.factor(t) == pytest.approx(rate(t) / rate(25), rel=1e-12)


def test_cardinal_by_its_definition():
    # Rosso et al. 1993, normalised to 1 at 25 °C.
    def rate(t, low=-1.5, best=38, high=44):
        slope = (best - low) * (t - best) - (best - high) * (best + low - 2 * t)
        return (t - high) * (t - low) ** 2 / ((best - low) * slope)

    law = lf.Cardinal(t_min_c=-1.5, t_opt_c=38, t_max_c=44)
    for t in (-1.0, 4.0, 24.0, 38.0, 43.5):
        assert law.factor(t) == pytest.approx(rate(t) / rate(25), rel=1e-12)


@pytest.mark.parametrize("law", LAWS, ids=repr)
def test_every_law_is_one_at_the_reference(law):
    assert law.factor(25) == pytest.approx(1, rel=1e-14)


@pytest.mark.parametrize("law", [lf.Cardinal(), lf.SquareRoot()], ids=repr)
def test_zero_from_the_limits_on(law):
    for t in (-50, law.t_min_c, law.t_max_c, 120):
        assert law.factor(t) == 0
        with pytest.raises(lf.OutsideModel) as refused:
            law.local_q10(t)
        assert (refused.value.path, refused.value.value) == ("temperature_c", t)
    assert law.factor(math.nextafter(law.t_min_c, 0)) >= 0
    assert law.factor(law.t_min_c + 0.01) > 0
    assert law.factor(law.t_max_c - 0.01) > 0


@pytest.mark.parametrize("law", LAWS, ids=repr)
def test_local_q10_is_the_slope_of_the_factor(law):
    for t in (0.0, 4.0, 15.0, 25.0, 33.0, 40.0):
        step = 1e-4
        slope = (math.log(law.factor(t + step)) - math.log(law.factor(t - step))) / (2 * step)
        assert law.local_q10(t) == pytest.approx(math.exp(10 * slope), rel=1e-6)
    assert lf.ConstantQ10(2.3).local_q10(11) == pytest.approx(2.3, rel=1e-13)


def test_the_default_law_falls_like_slator_says():
    assert round(rms_against_slator(lf.Cardinal()), 2) == 0.11
    assert round(rms_against_slator(lf.SquareRoot()), 3) == 0.085
    assert rms_against_slator(lf.ConstantQ10()) > 0.3  # a constant cannot follow 5.6 … 1.6


@pytest.mark.parametrize("law", LAWS, ids=repr)
def test_a_kitchens_law_drives_the_clock(law):
    kitchen = lf.Kitchen().with_law(law)
    assert repr(kitchen.temperature_law) == repr(law)
    for t in (12.0, 24.0, 31.0):
        assert lf.speed(dough_c=t, kitchen=kitchen) == pytest.approx(law.factor(t), rel=1e-14)
    dough = {"dough_c": 12, "yeast_percent": 0.5}
    ratio = lf.hours_to_rise(100, **dough, kitchen=kitchen) / lf.hours_to_rise(100, **dough)
    assert ratio == pytest.approx(lf.Cardinal().factor(12) / law.factor(12), rel=1e-12)
    if not isinstance(law, lf.Cardinal):
        assert abs(ratio - 1) > 0.02


# ---- the solute factor -----------------------------------------------------------------------------------------------


def activity(salt, water, sugar):
    mol_per_kg = (2 * 0.92 * salt / 58.443 + 2 * max(0, sugar - 4) / 342.3) / (water / 1000)
    return math.exp(-0.0180153 * mol_per_kg)


SOLUTES = [(2, 65, 0), (0, 65, 0), (2, 50, 0), (2, 100, 0), (1.5, 55, 8)]
SOLUTES += [(1, 60, 10), (1, 60, 14), (1, 60, 20), (1, 58, 28)]


@pytest.mark.parametrize(("salt", "water", "sugar"), SOLUTES)
@pytest.mark.parametrize(
    "changes",
    [{}, {"water_exponent": 0}, {"water_exponent": 1.2, "aw_min": 0.85}, {"high_sugar_factor": 1.7}, {"aw_min": 0.92}],
    ids=str,
)
def test_salt_sugar_and_water_make_the_speed(salt, water, sugar, changes):
    """By water activity, beyond it by a power of the water; a sweet dough by its own factor, phased in to 20 %."""
    kitchen = lf.Kitchen(**changes)
    span = activity(2, 65, 0) - kitchen.aw_min
    expected = max(0, activity(salt, water, sugar) - kitchen.aw_min) / span * (water / 65) ** kitchen.water_exponent
    expected *= kitchen.high_sugar_factor ** min(max((sugar - 10) / 10, 0), 1)
    numbers = {"salt_percent": salt, "water_percent": water, "sugar_percent": sugar}
    assert lf.speed(dough_c=25, **numbers, kitchen=kitchen) == pytest.approx(expected, rel=1e-12)
    times = lf.speed(dough_c=[12, 25], **numbers, kitchen=kitchen) / lf.speed(dough_c=[12, 25], kitchen=kitchen)
    assert times == pytest.approx(expected, rel=1e-12)


def test_a_stiff_dough_is_slower_than_its_water_activity_makes_it():
    stiff, usual, slack = (lf.speed(dough_c=25, water_percent=water) for water in (50, 65, 80))
    assert stiff < 0.85 * usual == 0.85
    assert slack > 1.1
    older = [lf.speed(dough_c=25, water_percent=water, kitchen=lf.Kitchen.named("2026-1")) for water in (50, 80)]
    assert stiff < older[0]
    assert slack > older[1]


def test_same_rise_is_the_ratio_of_factors():
    law = lf.Cardinal()
    assert lf.same_rise(2, from_c=24, to_c=18) == pytest.approx(2 * law.factor(24) / law.factor(18), rel=1e-14)
    assert lf.same_rise(2, from_c=24, to_c=24) == 2
    kitchen = lf.Kitchen().with_law(lf.ConstantQ10(2))
    assert lf.same_rise(3, from_c=30, to_c=20, kitchen=kitchen) == pytest.approx(6, rel=1e-13)


@given(time_h=anywhere("time_h"), from_c=anywhere("from_c"), to_c=anywhere("to_c"))
def test_same_rise_there_and_back(time_h, from_c, to_c):
    try:
        there = lf.same_rise(time_h, from_c=from_c, to_c=to_c)
    except lf.OutsideModel:
        assert min(lf.Cardinal().factor(from_c), lf.Cardinal().factor(to_c)) == 0
        return
    assume(there <= FIELDS["time_h"].high)
    assume(there == 0 or there > 1e-300)  # below, numbers lose their digits
    assert lf.same_rise(there, from_c=to_c, to_c=from_c) == pytest.approx(time_h, rel=1e-12)


@given(rise_percent=anywhere("rise_percent"), dough=doughs(), kitchen=st.none() | kitchens())
def test_the_factors_of_a_time_multiply_to_it(rise_percent, dough, kitchen):
    hours = attempt(lambda: lf.hours_to_rise(rise_percent, **dough, kitchen=kitchen), lf.Error)
    explanation = attempt(lambda: lf.explain(rise_percent, **dough, kitchen=kitchen), lf.NoSolution, lf.OutsideModel)
    if isinstance(hours, lf.Error):
        assert type(explanation) is type(hours)
        assert str(explanation) == str(hours)
        return
    # A dough on the way from the reference dough may not make or hold this rise, or stand still.
    assume(not isinstance(explanation, lf.Error))
    named = explanation.to_dict()
    assert explanation.hours == hours
    assert explanation.reference_h * math.prod(explanation.factors.values()) == pytest.approx(hours, rel=1e-12)
    assert {factor["name"]: factor["times"] for factor in named["factors"]} == explanation.factors
    assert (named["reference_h"], named["hours"]) == (explanation.reference_h, explanation.hours)
    assert list(explanation.factors) == ["yeast", "temperature", "salt", "water", "sugar", "gluten", "altitude"]


def test_what_explain_says_of_one_dough():
    explanation = lf.explain(100, dough_c=18, yeast_percent=0.5, salt_percent=0)
    assert explanation.reference_h == lf.hours_to_rise(100, dough_c=25, yeast_percent=1)
    factors = explanation.factors
    colder = lf.hours_to_rise(100, dough_c=18, yeast_percent=0.5) / lf.hours_to_rise(100, dough_c=25, yeast_percent=0.5)
    assert factors["temperature"] == pytest.approx(colder, rel=1e-14)
    assert factors["yeast"] > 1 > factors["salt"]
    assert factors["sugar"] == factors["gluten"] == factors["altitude"] == factors["water"] == 1
    assert "yeast 1 → 0.5" in repr(explanation)


def codes(**numbers):
    notices = lf.cautions(**numbers)
    rank = {"warning": 0, "caution": 1, "info": 2}
    assert sorted(notices, key=lambda notice: rank[notice.severity]) == notices  # most severe first
    return {notice.code: notice for notice in notices}


def just_above(number):
    return math.nextafter(number, math.inf)


def just_below(number):
    return math.nextafter(number, -math.inf)


# The limits of the model's cautions: code, severity, field, the last number without the notice and the first with it.
LIMITS = [
    ("water_kills_yeast", "warning", "water_c", 60, just_above(60), {}),
    ("water_hot_for_yeast", "warning", "water_c", 50, just_above(50), {}),
    ("water_hot_for_yeast", "warning", "water_c", just_above(60), 60, {}),
    ("water_warm_for_yeast", "caution", "water_c", 45, just_above(45), {}),
    ("water_warm_for_yeast", "caution", "water_c", just_above(50), 50, {}),
    ("water_scalds", "warning", "water_c", 55, just_above(55), {}),
    ("water_below_freezing", "warning", "water_c", 0, -5e-324, {}),
    ("water_cold_for_instant", "caution", "water_c", 10, just_below(10), {"yeast": "instant"}),
    ("perishable_held", "warning", "perishable_h", 4, just_above(4), {}),
    ("perishable_held", "warning", "perishable_h", 4, just_above(4), {"dough_c": 24}),
    ("refrigerator_warm", "caution", "refrigerator_c", 5, just_above(5), {}),
    ("dough_warm", "caution", "dough_c", 38, just_above(38), {}),
    ("dough_cold", "caution", "dough_c", 5, just_below(5), {}),
    ("sugar_high", "caution", "sugar_percent", 10, just_above(10), {}),
    ("sugar_very_high", "caution", "sugar_percent", 20, just_above(20), {}),
    (
        "law_outside_range",
        "caution",
        "dough_c",
        15,
        just_below(15),
        {"kitchen": lf.Kitchen().with_law(lf.ConstantQ10())},
    ),
    (
        "law_outside_range",
        "caution",
        "dough_c",
        32,
        just_above(32),
        {"kitchen": lf.Kitchen().with_law(lf.ConstantQ10())},
    ),
    ("law_outside_range", "caution", "dough_c", 18, just_below(18), {"kitchen": lf.Kitchen().with_law(lf.Arrhenius())}),
    ("law_outside_range", "caution", "dough_c", 32, just_above(32), {"kitchen": lf.Kitchen().with_law(lf.Arrhenius())}),
]


@pytest.mark.parametrize(("code", "severity", "field", "last", "first", "others"), LIMITS)
def test_notice_at_its_limit(code, severity, field, last, first, others):
    assert code not in codes(**{field: last}, **others)
    notice = codes(**{field: first}, **others)[code]
    assert notice.severity == severity
    assert notice.values[field] == first
    assert notice.text
    assert notice.to_dict() == {
        "code": code,
        "severity": severity,
        "values": notice.values,
        "text": notice.text,
    }


@pytest.mark.parametrize("yeast", ["instant", "active_dry", "active_dry_unwetted", "compressed"])
def test_notice_of_very_little_yeast(yeast):
    limit = lf.convert_yeast(0.05, from_yeast="instant", to_yeast=yeast)
    assert codes(yeast_percent=limit * (1 + 1e-12), yeast=yeast) == {}
    notice = codes(yeast_percent=limit * (1 - 1e-12), yeast=yeast)["yeast_very_low"]
    assert notice.severity == "caution"
    assert notice.values["instant_equivalent_percent"] == pytest.approx(0.05, rel=1e-11)


@pytest.mark.parametrize("yeast", ["instant", "active_dry", "active_dry_unwetted", "compressed"])
def test_notice_of_very_much_yeast(yeast):
    limit = lf.convert_yeast(3.5, from_yeast="instant", to_yeast=yeast)
    assert codes(yeast_percent=limit * (1 - 1e-12), yeast=yeast) == {}
    notice = codes(yeast_percent=limit * (1 + 1e-12), yeast=yeast)["yeast_very_high"]
    assert notice.severity == "caution"
    assert notice.values["instant_equivalent_percent"] == pytest.approx(3.5, rel=1e-11)
    assert "was it grams?" in notice.text


@pytest.mark.parametrize("gluten_percent", [0, 4])
def test_notice_of_an_over_proofed_rise(gluten_percent):
    dough = lf.Dough(dough_c=25, yeast_percent=1, gluten_percent=gluten_percent)
    limit = 100 * (lf.over_proof_ratio(dough, standing="tin", final_proof=False) - 1)
    assert codes(rise_percent=limit * (1 - 1e-12), gluten_percent=gluten_percent) == {}
    notice = codes(rise_percent=limit * (1 + 1e-12), gluten_percent=gluten_percent)["rise_over_proofed"]
    assert notice.severity == "caution"


def test_where_there_is_nothing_to_say():
    assert codes() == {}
    assert codes(dough_c=24, yeast_percent=0.7, salt_percent=2, water_percent=68, sugar_percent=3) == {}
    assert codes(water_c=34.5) == {}
    assert codes(water_c=5, yeast="compressed") == {}
    assert codes(dough_c=5, perishable_h=1000) == {}  # cold: at 5 °C and below food keeps
    assert "perishable_held" in codes(dough_c=just_above(5), perishable_h=5)
    assert codes(dough_c=10, kitchen=lf.Kitchen()) == {}


def test_all_codes_are_known_here():
    everything = {
        **codes(
            dough_c=40,
            yeast_percent=0.02,
            sugar_percent=21,
            rise_percent=900,
            water_c=-1,
            refrigerator_c=8,
            perishable_h=9,
            kitchen=lf.Kitchen().with_law(lf.ConstantQ10()),
        ),
        **codes(water_c=70),
        **codes(water_c=5, dough_c=2),
        **codes(water_c=53),
        **codes(water_c=47),
        **codes(yeast_percent=4),
    }
    tested = {code for code, *_ in LIMITS} | {"yeast_very_low", "yeast_very_high", "rise_over_proofed"}
    assert set(everything) == tested


def test_limits_of_over_proofing():
    kitchen = lf.Kitchen()
    dough = lf.Dough(dough_c=25, yeast_percent=1, gluten_percent=2)
    largest = kitchen.retention_limit * (1 + 0.05 * 2)  # added gluten: 5 % per percent, common practice
    tin = lf.over_proof_ratio(dough, standing="tin", final_proof=False)
    free = lf.over_proof_ratio(dough, standing="free", final_proof=False)
    assert tin == pytest.approx(kitchen.over_proof_tin * largest, rel=1e-14)
    assert free == pytest.approx(kitchen.over_proof_free * largest, rel=1e-14)
    proof = lf.over_proof_ratio(dough, standing="free", final_proof=True, start_ratio=1.2)
    assert proof == pytest.approx(1.2 * (1 + kitchen.over_proof_rise_free_percent / 100), rel=1e-14)
    in_tin = lf.over_proof_ratio(dough, standing="tin", final_proof=True, start_ratio=1.2)
    assert in_tin == pytest.approx(1.2 * (1 + kitchen.over_proof_rise_tin_percent / 100), rel=1e-14)
    assert lf.over_proof_ratio(dough, standing="free", final_proof=True, start_ratio=3) == free


def test_laws_take_arrays():
    temperatures = np.array([[4.0, 15.0, 24.0], [30.0, 38.0, 44.0]])
    for law in LAWS:
        for method in (law.factor, law.local_q10):
            assert method(temperatures).tolist() == [[method(t) for t in row] for row in temperatures.tolist()]
