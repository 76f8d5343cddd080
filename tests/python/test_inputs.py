"""Every function is tried for every one of its inputs: what it refuses, with which words, and which forms it takes."""

import datetime as dt
import math
import re
from concurrent.futures import ThreadPoolExecutor

import numpy as np
import pandas as pd
import pytest
from box import FIELDS, PARAMETERS, YEASTS, dose_bounds

import libferment as lf

DOUGH = {
    "dough_c": 24.0,
    "yeast_percent": 0.7,
    "salt_percent": 2.0,
    "water_percent": 65.0,
    "sugar_percent": 1.0,
    "gluten_percent": 0.5,
    "altitude_m": 300.0,
}
RULE = {"flour_c": 20.0, "room_c": 21.0, "friction_k": 3.0, "preferment_c": 22.0}
LAWS = (lf.Cardinal(), lf.SquareRoot(), lf.Arrhenius(), lf.ConstantQ10())


def only(*names):
    return {name: DOUGH[name] for name in names}


MIX = lf.Mix(
    flour_g=500,
    water_g=325,
    salt_g=10,
    instant_g=3,
    room_c=20,
    water_c=25,
    bowl=lf.Bowl("steel", 900),
    mixing=lf.ByWork(5),
)
ROOM = lf.Surroundings.room(20)
NUMBERS_OF_A_MIX = {
    **{f"{name}_c": 18.0 for name in ("room", "flour", "water", "tap", "milk", "egg", "butter")},
    "ice_c": -10.0,
    **{f"{name}_g": 5.0 for name in ("ice", "gluten", "salt", "sugar", "milk", "egg", "butter", "oil")},
    **{f"{name}_g": 2.0 for name in ("instant", "active_dry", "compressed")},
    "rest_h": 0.5,
    "heat_loss_w_per_k": 0.4,
}


def with_poured_water(poured_water_percent):
    """A formula of that much water; that it may be too little or too much in all is another rule."""
    try:
        return lf.Mix.from_percent(flour_g=500, room_c=20, water_percent=poured_water_percent, milk_percent=60)
    except lf.InvalidInput as problem:
        if problem.problem.startswith("water poured"):
            raise


# name: (function, its numbers by argument, those of them that may be arrays)
FUNCTIONS = {
    "speed": (lf.speed, only("dough_c", "salt_percent", "water_percent", "sugar_percent"), "all"),
    "hours_to_rise": (lf.hours_to_rise, {"rise_percent": 90.0, **DOUGH}, "all"),
    "rise_after": (lf.rise_after, {"time_h": 2.0, **DOUGH}, "all"),
    "same_rise": (lf.same_rise, {"time_h": 2.0, "from_c": 24.0, "to_c": 18.0}, "all"),
    "reachable_rise": (lf.reachable_rise, DOUGH, ()),
    "yeast_for_rise": (
        lf.yeast_for_rise,
        {"rise_percent": 90.0, "target_h": 3.0, **{k: v for k, v in DOUGH.items() if k != "yeast_percent"}},
        ("target_h",),
    ),
    "explain": (lf.explain, {"rise_percent": 90.0, **DOUGH}, ()),
    "cautions": (
        lf.cautions,
        {"rise_percent": 90.0, "water_c": 30.0, "refrigerator_c": 4.0, "perishable_h": 2.0, **DOUGH},
        (),
    ),
    "water_by_factor_rule": (lf.water_by_factor_rule, {"desired_c": 25.0, **RULE}, "all"),
    "dough_by_factor_rule": (lf.dough_by_factor_rule, {"water_c": 28.0, **RULE}, ()),
    "friction_from_batch": (
        lf.friction_from_batch,
        {"dough_c": 23.0, "flour_c": 20.0, "room_c": 21.0, "water_c": 26.0, "preferment_c": 22.0},
        (),
    ),
    "ice_by_trade_rule": (lf.ice_by_trade_rule, {"water_g": 600.0, "tap_c": 20.0, "wanted_c": 8.0}, ()),
    "drifted_c": (
        lf.drifted_c,
        {"start_c": 26.0, "time_h": 2.0, "surroundings_c": 18.0, "time_constant_h": 3.0},
        "all",
    ),
    "drift_equivalent_h": (
        lf.drift_equivalent_h,
        {"time_h": 2.0, "start_c": 26.0, "surroundings_c": 18.0, "time_constant_h": 3.0},
        "all",
    ),
    "drift_hours": (
        lf.drift_hours,
        {"equivalent_h": 1.5, "start_c": 26.0, "surroundings_c": 18.0, "time_constant_h": 3.0},
        "all",
    ),
    "ice_by_heat_balance": (
        lf.ice_by_heat_balance,
        {"water_g": 600.0, "tap_c": 20.0, "wanted_c": 8.0, "ice_c": -18.0},
        (),
    ),
    "friction_from_batches": (
        lf.friction_from_batches,
        {"dough_c": 23.0, "flour_c": 20.0, "room_c": 21.0, "water_c": 26.0, "preferment_c": 22.0},
        "all",
    ),
    "water_by_heat_balance": (
        lambda desired_c, friction_k: lf.water_by_heat_balance(MIX.replace(tap_c=15), desired_c, friction_k=friction_k),
        {"desired_c": 24.0, "friction_k": 5.0},
        (),
    ),
    "water_map": (
        lambda desired_c, flour_c, room_c: lf.water_map(MIX, desired_c, flour_c=flour_c, room_c=room_c),
        {"desired_c": 24.0, "flour_c": 20.0, "room_c": 19.0},
        "all",
    ),
    "net_gain_from_batch": (lambda dough_c: lf.net_gain_from_batch(MIX, dough_c), {"dough_c": 24.0}, ()),
    "net_gain_from_friction": (
        lambda friction_k, desired_c, measured_at_c: lf.net_gain_from_friction(
            MIX, friction_k, desired_c, measured_at_c=measured_at_c
        ),
        {"friction_k": 5.0, "desired_c": 24.0, "measured_at_c": 20.0},
        (),
    ),
    "net_gain_of": (lambda minutes: lf.net_gain_of(lf.mean_of_batches([8, 9]), minutes), {"minutes": 5.0}, ()),
    "heat_of_hydration": (lf.heat_of_hydration, {"moisture_percent": 13.0}, ()),
    "Mix, its own": (MIX.replace, NUMBERS_OF_A_MIX, ()),
    "Mix, its bowl": (
        lambda bowl_g, bowl_c, contact: MIX.replace(
            bowl=lf.Bowl("steel", bowl_g, temperature_c=bowl_c, contact=contact)
        ),
        {"bowl_g": 900.0, "bowl_c": 18.0, "contact": 0.7},
        (),
    ),
    "Mix, a flour": (
        lambda flour_g, moisture_percent: MIX.replace(flours=[lf.Flour(flour_g, moisture_percent=moisture_percent)]),
        {"flour_g": 100.0, "moisture_percent": 13.0},
        (),
    ),
    "Mix, a portion of water": (
        lambda stands_h, cup_h: MIX.replace(waters=[lf.Water(50, 38, stands_h=stands_h, cup_h=cup_h)]),
        {"stands_h": 0.2, "cup_h": 0.3},
        (),
    ),
    "Mix, by method": (
        lambda mixing_min, hydration_kj_per_kg: MIX.replace(
            mixing=lf.ByMethod("hand", mixing_min, hydration_kj_per_kg=hydration_kj_per_kg)
        ),
        {"mixing_min": 8.0, "hydration_kj_per_kg": 10.0},
        (),
    ),
    "Mix, by work": (lambda work_kj_per_kg: MIX.replace(mixing=lf.ByWork(work_kj_per_kg)), {"work_kj_per_kg": 5.0}, ()),
    "Mix, by net gain": (
        lambda net_gain_kj_per_kg, sd_kj_per_kg: MIX.replace(mixing=lf.ByNetGain(net_gain_kj_per_kg, sd_kj_per_kg)),
        {"net_gain_kj_per_kg": 8.0, "sd_kj_per_kg": 1.0},
        (),
    ),
    "Mix, scaled": (
        lambda pieces=1.0, piece_g=2.0, loss_percent=1.0: MIX.scaled_to(pieces, piece_g, loss_percent),
        {"pieces": 1.0, "piece_g": 2.0, "loss_percent": 2.0},
        (),
    ),
    "Mix, in percent": (with_poured_water, {"poured_water_percent": 30.0}, ()),
    "Surroundings, rooms": (
        lambda room_c, half_range_k, warmest_h: lf.Surroundings.sequence(
            [(0, lf.Surroundings.room(room_c)), (1, lf.Surroundings.daily_swing(20, half_range_k, warmest_h))]
        ),
        {"room_c": 20.0, "half_range_k": 2.0, "warmest_h": 15.0},
        (),
    ),
    "Surroundings, boxes": (
        lambda proof_box_c, humidity_percent: lf.Surroundings.proof_box(proof_box_c, humidity_percent=humidity_percent),
        {"proof_box_c": 30.0, "humidity_percent": 80.0},
        (),
    ),
    "Surroundings, refrigerators": (
        lambda refrigerator_c, heat_transfer_w_per_m2_k: lf.Surroundings.refrigerator(
            refrigerator_c, heat_transfer_w_per_m2_k=heat_transfer_w_per_m2_k
        ),
        {"refrigerator_c": 4.0, "heat_transfer_w_per_m2_k": 9.0},
        (),
    ),
    "Surroundings, when": (
        lambda start_h: lf.Surroundings.sequence([(start_h, ROOM)]),
        {"start_h": 2.0},
        (),
    ),
    "Piece, an oblong": (
        lambda length_cm: lf.Piece.oblong(500, length_cm=length_cm),
        {"length_cm": 30.0},
        (),
    ),
    "Piece, a tub": (
        lambda diameter_cm, vessel_g, piece_heat_loss_w_per_k: lf.Piece.tub(
            500, diameter_cm=diameter_cm, vessel_g=vessel_g, heat_loss_w_per_k=piece_heat_loss_w_per_k
        ),
        {"diameter_cm": 20.0, "vessel_g": 500.0, "piece_heat_loss_w_per_k": 0.3},
        (),
    ),
    "Piece, a tub by its depth": (lambda depth_cm: lf.Piece.tub(500, depth_cm=depth_cm), {"depth_cm": 8.0}, ()),
    "Piece, its weight": (lambda piece_g: lf.Piece.ball(piece_g), {"piece_g": 500.0}, ()),
    "Piece, its node": (lambda dough_g: lf.Piece.ball().node(dough_g, ROOM), {"dough_g": 500.0}, ()),
    "Stage, a time": (lambda until_h: lf.Stage("rise", surroundings=ROOM, until_h=until_h), {"until_h": 2.0}, ()),
    "Stage, a rise": (
        lambda rise_percent, folds_h: lf.Stage(
            "rise", surroundings=ROOM, until_rise_percent=rise_percent, folds_h=[folds_h]
        ),
        {"rise_percent": 90.0, "folds_h": 0.5},
        (),
    ),
    "Mix, its dough": (lambda dough_c: lf.Mix(flour_g=500, dough_c=dough_c), {"dough_c": 24.0}, ()),
    "water_activity": (lf.water_activity, only("salt_percent", "water_percent", "sugar_percent"), ()),
    "convert_yeast": (
        lambda yeast_percent: lf.convert_yeast(yeast_percent, from_yeast="instant", to_yeast="compressed"),
        only("yeast_percent"),
        (),
    ),
    "air_pressure_pa": (lf.air_pressure_pa, only("altitude_m"), "all"),
    "saturation_pressure_pa": (lf.saturation_pressure_pa, {"temperature_c": 24.0}, "all"),
    "co2_solubility": (lf.co2_solubility, {"temperature_c": 24.0}, "all"),
    "gas_made": (lf.gas_made, {"equivalent_h": 2.0, **only("yeast_percent", "sugar_percent")}, ()),
    "equivalent_hours_for_gas": (
        lf.equivalent_hours_for_gas,
        {"co2_mmol": 12.0, **only("yeast_percent", "sugar_percent")},
        (),
    ),
    **{f"{type(law).__name__}.factor": (law.factor, {"temperature_c": 24.0}, "all") for law in LAWS},
    **{f"{type(law).__name__}.local_q10": (law.local_q10, {"temperature_c": 24.0}, "all") for law in LAWS},
    "over_proof_ratio": (
        lambda gluten_percent: lf.over_proof_ratio(
            lf.Dough(dough_c=24, yeast_percent=1, gluten_percent=gluten_percent), standing="tin", final_proof=True
        ),
        only("gluten_percent"),
        (),
    ),
    "over_proof_ratio, its start": (
        lambda start_ratio: lf.over_proof_ratio(
            lf.Dough(**DOUGH), standing="free", final_proof=True, start_ratio=start_ratio
        ),
        {"start_ratio": 1.2},
        (),
    ),
}
CASES = [(name, argument) for name, (_, numbers, _) in FUNCTIONS.items() for argument in numbers]
# The units have a test of their own, the tables take no number.
WITHOUT_FIELDS = {
    *("celsius", "fahrenheit", "kelvins", "grams", "ounces"),
    *("fields", "parameters", "ingredients", "bowl_materials", "mixing_methods", "airs", "worktops"),
    # Of processes alone; a file.
    *("advance", "simulate", "read_temperature_log", "forecast", "draws_of"),
    *("yeast_for", "water_for", "room_for", "latest_start", "refrigerate_from", "take_out_at"),
    *("calibrate", "calibration", "compare_laws", "log_of", "with_packet", "read_logbook", "next_look"),
    # Of a day, whose own tests refuse; a time of day.
    *("ask", "assumptions_of", "has_clock", "learned_mixing", "mix_of", "process_of", "read_day", "water_of"),
    *("mean_of_batches", "moment_h", "moment_text"),
    "moved",  # a row of the parameter table and two numbers
    # Of a mix or of batches alone; a property of matter.
    *(
        "series_equivalent_h",
        "dough_by_heat_balance",
        "mixing_minutes",
        "net_gain_from_batches",
        "conductivity_with_gas",
    ),
}
FIELD_OF = {
    "wanted_c": "water_c",
    "ratio": "volume_ratio",
    "start_ratio": "volume_ratio",
    "measured_at_c": "room_c",
    "minutes": "mixing_min",
}
# Arguments of a test that are members of a value, and so are called as the member is.
REPORTED_AS = {
    "ratio": ("volume_ratio",),
    "start_ratio": ("volume_ratio",),
    "minutes": ("mixing_min", "minutes"),
    "mixing_min": ("minutes",),
    "poured_water_percent": ("water_percent",),
    "rise_percent": ("rise_percent", "until_rise_percent"),
    "bowl_c": ("temperature_c",),
    "bowl_g": ("mass_g",),
    "flour_g": ("flour_g", "mass_g"),
    "piece_g": ("piece_g", "mass_g"),
    "piece_heat_loss_w_per_k": ("heat_loss_w_per_k",),
    "proof_box_c": ("air_c",),
    "refrigerator_c": ("refrigerator_c", "air_c"),
}
# Ice is asked for water below 0 °C, too: a way to say how much cold is wanted.
BOUNDS = {("ice_by_heat_balance", "wanted_c"): (-1e6, 60)}
LEFT_OUT = {
    *((name, "preferment_c") for name in FUNCTIONS),
    ("water_by_heat_balance", "friction_k"),
    ("water_map", "flour_c"),
    *(("Mix, its own", name) for name in NUMBERS_OF_A_MIX if name.endswith("_c") and name not in ("room_c", "ice_c")),
    ("Mix, its own", "heat_loss_w_per_k"),
    ("Mix, its bowl", "bowl_c"),
    ("Mix, a flour", "moisture_percent"),
    ("Surroundings, boxes", "humidity_percent"),
    ("Surroundings, refrigerators", "heat_transfer_w_per_m2_k"),
    ("Piece, an oblong", "length_cm"),
    *(("Piece, a tub", name) for name in ("diameter_cm", "piece_heat_loss_w_per_k")),
    ("Piece, a tub by its depth", "depth_cm"),
    ("Piece, its weight", "piece_g"),
    ("Mix, by method", "mixing_min"),
    ("Mix, by method", "hydration_kj_per_kg"),
}
# The bounds of yeast_percent are those of instant_equivalent_percent for the kind of yeast; instant here.
BOUNDS_OF = {"yeast_percent": "instant_equivalent_percent"}


def field_of(argument):
    return FIELDS[FIELD_OF.get(argument, argument)]


def bounds_of(name, argument):
    if (name, argument) in BOUNDS:
        return BOUNDS[name, argument]
    field = FIELDS[BOUNDS_OF.get(argument, FIELD_OF.get(argument, argument))]
    return field.low, field.high


def takes_arrays(name, argument):
    arrays = FUNCTIONS[name][2]
    return arrays == "all" or argument in arrays


def ask(name, argument, value):
    function, numbers, _ = FUNCTIONS[name]
    positional = [given.split(":")[0] for given in re.findall(r"\(([^*]*?)[,)]", (function.__doc__ or "")[:80])[:1]]
    given = {**numbers, argument: value}
    first = [given.pop(key) for key in positional if key in given]
    return function(*first, **given)


def in_words(number):
    """A number as messages write it: up to six digits, with a minus sign."""
    return f"{number:g}".replace("e+0", "e+0").replace("-", "−")


def test_every_function_and_every_input_is_tried():
    functions = {name for name in lf.__all__ if callable(getattr(lf, name)) and not isinstance(getattr(lf, name), type)}
    assert functions - WITHOUT_FIELDS == {name for name in FUNCTIONS if name.isidentifier()}
    for name in functions - WITHOUT_FIELDS:
        signature = getattr(lf, name).__doc__.splitlines()[0]
        numbers = set(re.findall(r"(\w+): (?:typing\.SupportsFloat|float)", signature))
        tried = {argument for case, argument in CASES if case.split(",")[0] == name}
        assert numbers <= tried, name
    tried = {FIELD_OF.get(argument, argument) for _, argument in CASES}
    # No arguments: the first bounds yeast_percent, the others belong to states, which Python only hands around.
    # Shares of flours and enriching ingredients are refused by the ingredient's own name, in a test of their own.
    untried = {
        "instant_equivalent_percent",
        "air_mmol",
        "loss_fraction",
        "mixed_volume_ml",
        "volume_ml",
        "flours_percent",
        "liquid_percent",
    }
    assert set(FIELDS) - tried == untried


@pytest.mark.parametrize(("name", "argument"), CASES)
def test_the_bounds_themselves_are_inside(name, argument):
    for bound in bounds_of(name, argument):
        try:
            ask(name, argument, bound)
        except (lf.NoSolution, lf.OutsideModel):
            continue  # inside the table, but without an answer
        except lf.InvalidInput as problem:
            # Only what is computed of a batch may be at fault.
            if problem.path not in ("friction_k", "net_gain_kj_per_kg") or not re.match(
                "friction_from|net_gain_from", name
            ):
                raise


@pytest.mark.parametrize(("name", "argument"), CASES)
def test_outside_the_bounds(name, argument):
    field = field_of(argument)
    low, high = bounds_of(name, argument)
    outside = [math.nan, math.inf, -math.inf, math.nextafter(low, -math.inf), math.nextafter(high, math.inf)]
    if (name, argument) == ("cautions", "water_c"):
        outside = outside[:3]  # cautions answers any temperature that a planned water may come to
    for value in outside:
        with pytest.raises(lf.InvalidInput) as refused:
            ask(name, argument, value)
        problem = refused.value
        message = str(problem)
        member = re.sub(r".*\.|\[.*", "", problem.path)  # the last of the way to it
        assert member in REPORTED_AS.get(argument, (argument,))
        assert problem.value == value or (math.isnan(problem.value) and math.isnan(value))
        assert problem.status == 1
        assert (problem.index, problem.count) == (None, None)
        assert field.label in message
        assert field.unit in message
        if (name, argument) != ("cautions", "water_c"):
            assert (problem.low, problem.high) == (low, high)
            assert f"{in_words(low)} to {in_words(high)}" in message


def test_a_refused_number_does_not_read_as_an_allowed_one():
    for value in (45.0000001, -2.0000001):
        with pytest.raises(lf.InvalidInput) as refused:
            lf.speed(dough_c=value)
        assert f" {value:.7f} °C is outside".replace("-", "−") in str(refused.value)


NO_NUMBERS = {
    "None": None,
    "text": "78F",
    "bytes": b"78",
    "complex": 1j,
    "objects": np.array([1.0, None], dtype=object),
    "texts": np.array(["78F"]),
    "booleans": np.array([True, False]),
    "complex array": np.array([1j]),
    "mapping": {"a": 1},
    "ragged": [[1.0, 2.0], [3.0]],
}


@pytest.mark.parametrize("kind", NO_NUMBERS)
@pytest.mark.parametrize(("name", "argument"), CASES)
def test_what_is_no_number(name, argument, kind):
    may_be_left_out = name == "cautions" or (name, argument) in LEFT_OUT
    if kind == "None" and may_be_left_out:
        ask(name, argument, None)
        return
    with pytest.raises((lf.InvalidInput, TypeError)) as refused:
        ask(name, argument, NO_NUMBERS[kind])
    if takes_arrays(name, argument):
        assert isinstance(refused.value, lf.InvalidInput)
        assert refused.value.path == argument
        assert f"{field_of(argument).label} must be a number" in str(refused.value)
        assert ("pass celsius(...)" in str(refused.value)) == (field_of(argument).quantity == "temperature")


def test_true_is_no_number():
    """For a plain float Python itself takes a bool for an int; where arrays are taken it is refused."""
    for name, argument in CASES:
        if not takes_arrays(name, argument):
            continue
        with pytest.raises((lf.InvalidInput, TypeError)):
            ask(name, argument, True)


def test_numbers_too_large_for_numbers():
    for value in (10**400, [10**400]):
        with pytest.raises(lf.InvalidInput):
            lf.hours_to_rise(100, dough_c=value, yeast_percent=1)


# ---- help in messages ------------------------------------------------------------------------------------------------

TEMPERATURES = [
    case for case in CASES if field_of(case[1]).quantity == "temperature" and case != ("cautions", "water_c")
]


@pytest.mark.parametrize(("name", "argument"), TEMPERATURES)
def test_a_temperature_that_looks_like_fahrenheit(name, argument):
    low, high = bounds_of(name, argument)
    meant_f = round(lf.fahrenheit(high - 1))
    with pytest.raises(lf.InvalidInput) as refused:
        ask(name, argument, meant_f)
    assert f"if you meant {meant_f} °F, pass celsius({meant_f})" in str(refused.value)
    assert low <= lf.celsius(meant_f) <= high
    absurd = round(lf.fahrenheit(high + 100))  # nothing in either unit
    with pytest.raises(lf.InvalidInput) as refused:
        ask(name, argument, absurd)
    assert "celsius(" not in str(refused.value)


def test_a_friction_that_looks_like_fahrenheit_or_like_a_temperature():
    with pytest.raises(lf.InvalidInput, match=r"kelvins\(40\)") as refused:
        lf.water_by_factor_rule(24, flour_c=20, room_c=20, friction_k=40)
    assert "difference of temperatures, not a temperature point" in str(refused.value)
    with pytest.raises(lf.InvalidInput, match="not a temperature point") as refused:
        lf.water_by_factor_rule(24, flour_c=20, room_c=20, friction_k=78)
    assert "kelvins(" not in str(refused.value)


def test_advice_that_is_code_can_be_run():
    with pytest.raises(lf.InvalidInput) as refused:
        lf.water_by_factor_rule(24, flour_c=20, room_c=20, friction_k=-12)
    (code,) = re.findall(r"pass (kelvins\([^)]*\))", str(refused.value))
    assert eval(code, {"kelvins": lf.kelvins}) == lf.kelvins(-12)


def test_friction_of_an_impossible_batch():
    with pytest.raises(lf.InvalidInput, match=r"friction of this batch 60 K .*measure .* again") as refused:
        lf.friction_from_batch(dough_c=40, flour_c=20, room_c=20, water_c=20)
    assert (refused.value.path, refused.value.value) == ("friction_k", 60)


@pytest.mark.parametrize("dough_c", [8.0, 24.0, 38.0])
@pytest.mark.parametrize("water_percent", [50.0, 120.0])
def test_an_unreachable_rise_names_the_reachable(dough_c, water_percent):
    dough = {"dough_c": dough_c, "yeast_percent": 1.0, "water_percent": water_percent}
    with pytest.raises(lf.NoSolution) as refused:
        lf.hours_to_rise(950, **dough)
    problem = refused.value
    assert (problem.path, problem.value, problem.low, problem.status) == ("rise_percent", 950, 0, 3)
    assert (problem.index, problem.count) == (None, None)
    assert problem.high == lf.reachable_rise(**dough)
    (named,) = re.findall(r"a rise below ([\d.]+) %", str(problem))
    assert float(named) == pytest.approx(problem.high, rel=1e-5)
    for reached in (problem.high * (1 - 1e-9), float(named) * (1 - 1e-5)):
        assert 0 < lf.hours_to_rise(reached, **dough) < math.inf
    with pytest.raises(lf.NoSolution):
        lf.hours_to_rise(problem.high * (1 + 1e-9), **dough)


def test_why_a_rise_is_unreachable():
    with pytest.raises(lf.NoSolution, match="this dough can hold gas for a rise below 380 %"):
        lf.hours_to_rise(900, dough_c=25, yeast_percent=1, sugar_percent=20)
    with pytest.raises(lf.NoSolution, match=r"this dough can make gas for a rise below 36\d.*add sugar"):
        lf.hours_to_rise(370, dough_c=25, yeast_percent=1, kitchen=lf.Kitchen.named("2026-1"))


def test_the_first_place_and_how_many():
    with pytest.raises(lf.NoSolution, match=r"first at index 1, 2 of 4") as refused:
        lf.hours_to_rise([100, 900, 50, 950], dough_c=24, yeast_percent=1)
    assert (refused.value.value, refused.value.index, refused.value.count) == (900, 1, 2)
    with pytest.raises(lf.InvalidInput, match=r"dough temperature 77 .*first at index 4, 2 of 6") as refused:
        lf.hours_to_rise(100, dough_c=[[20, 21, 22], [23, 77, 88]], yeast_percent=1)
    assert (refused.value.value, refused.value.index, refused.value.count) == (77, 4, 2)
    with pytest.raises(lf.OutsideModel, match=r"first at index 2, 1 of 3") as refused:
        lf.hours_to_rise(100, dough_c=[20, 21, -2], yeast_percent=1)
    assert (refused.value.path, refused.value.index, refused.value.count) == ("dough_c", 2, 1)
    many = np.full(3000, 24.0)
    many[[1500, 2999]] = math.nan
    with pytest.raises(lf.InvalidInput, match="first at index 1500, 2 of 3000"):
        lf.speed(dough_c=many)
    with pytest.raises(lf.InvalidInput, match=r"first at index 0, 1 of 1\)"):
        lf.speed(dough_c=[99.0])


def test_places_are_named_by_all_array_functions():
    calls = {
        "same_rise": lambda: lf.same_rise([1, 2, 3], from_c=[24, -2, 45], to_c=18),
        "local_q10": lambda: lf.Cardinal().local_q10([24, 50, 60]),
        "yeast_for_rise": lambda: lf.yeast_for_rise(100, [8, 1000, 1000], dough_c=18),
    }
    for name, call in calls.items():
        with pytest.raises((lf.OutsideModel, lf.NoSolution), match="first at index 1, 2 of 3") as refused:
            call()
        assert (refused.value.index, refused.value.count) == (1, 2), name


def test_a_plain_number_has_no_place():
    for call in (
        lambda: lf.same_rise(2, from_c=-2, to_c=18),
        lambda: lf.hours_to_rise(100, dough_c=-2, yeast_percent=1),
        lambda: lf.Cardinal().local_q10(50),
    ):
        with pytest.raises(lf.OutsideModel) as refused:
            call()
        assert (refused.value.index, refused.value.count) == (None, None)


def test_a_dough_in_which_the_yeast_stands_still():
    for temperature_c in (-2, 45):
        for call in (
            lambda t: lf.hours_to_rise(100, dough_c=t, yeast_percent=1),
            lambda t: lf.explain(100, dough_c=t, yeast_percent=1),
            lambda t: lf.yeast_for_rise(100, 5, dough_c=t),
            lambda t: lf.same_rise(2, from_c=24, to_c=t),
            lambda t: lf.same_rise(2, from_c=t, to_c=24),
        ):
            with pytest.raises(lf.OutsideModel, match="stands still") as refused:
                call(temperature_c)
            assert refused.value.value == temperature_c
            assert refused.value.status == 2
        assert lf.speed(dough_c=temperature_c) == 0
        assert lf.rise_after(5, dough_c=temperature_c, yeast_percent=1) == 0
    with pytest.raises(lf.OutsideModel, match=r"6 % salt and 30 % sugar in 40 % water is too dense") as refused:
        lf.hours_to_rise(100, dough_c=25, yeast_percent=1, salt_percent=6, sugar_percent=30, water_percent=40)
    assert refused.value.path == "salt_percent"


def test_ice_from_a_cold_tap():
    with pytest.raises(lf.NoSolution, match="warm the water instead") as refused:
        lf.ice_by_trade_rule(600, tap_c=10, wanted_c=12)
    assert (refused.value.path, refused.value.high) == ("wanted_c", 10)


@pytest.mark.parametrize("yeast", YEASTS)
def test_dose_bounds_of_each_kind(yeast):
    instant = FIELDS["instant_equivalent_percent"]
    least, most = dose_bounds(yeast)
    for dose in (least, most):
        assert lf.hours_to_rise(50, dough_c=25, yeast_percent=dose, yeast=yeast) > 0
    for dose in (least * (1 - 1e-9), most * (1 + 1e-9)):
        with pytest.raises(lf.InvalidInput) as refused:
            lf.hours_to_rise(50, dough_c=25, yeast_percent=dose, yeast=yeast)
        assert refused.value.path == "yeast_percent"
        share = lf.convert_yeast(1, from_yeast="instant", to_yeast=yeast)
        assert refused.value.low == pytest.approx(instant.low * share, rel=1e-14)
        assert refused.value.high == pytest.approx(instant.high * share, rel=1e-14)
    table = FIELDS["yeast_percent"]
    assert table.low <= least
    assert most <= table.high


@pytest.mark.parametrize("yeast", YEASTS)
def test_the_smallest_and_the_largest_dose_are_found(yeast):
    for dose in dose_bounds(yeast):
        target_h = lf.hours_to_rise(100, dough_c=20, yeast_percent=dose, yeast=yeast)
        assert lf.yeast_for_rise(100, target_h, dough_c=20, yeast=yeast) == pytest.approx(dose, rel=1e-9)
    for share, dose in zip((1.001, 0.999), dose_bounds(yeast), strict=True):
        target_h = lf.hours_to_rise(100, dough_c=20, yeast_percent=dose, yeast=yeast)
        with pytest.raises(lf.NoSolution, match="no yeast dose gives this rise in") as refused:
            lf.yeast_for_rise(100, target_h * share, dough_c=20, yeast=yeast)
        assert refused.value.low < refused.value.high
        assert target_h == pytest.approx(refused.value.high if share > 1 else refused.value.low, rel=1e-9)


def test_unknown_words():
    for call in (
        lambda: lf.hours_to_rise(100, dough_c=24, yeast_percent=1, yeast="fresh"),
        lambda: lf.Dough(dough_c=24, yeast_percent=1, yeast="fresh"),
        lambda: lf.convert_yeast(1, from_yeast="fresh", to_yeast="instant"),
        lambda: lf.cautions(yeast="fresh"),
    ):
        with pytest.raises(lf.InvalidInput, match='yeast kind "fresh" is unknown') as refused:
            call()
        assert refused.value.path == "yeast"
        assert all(kind in str(refused.value) for kind in YEASTS)
    with pytest.raises(lf.InvalidInput, match='unreachable "nan" is unknown; known: raise, inf'):
        lf.hours_to_rise(100, dough_c=24, yeast_percent=1, unreachable="nan")
    with pytest.raises(lf.InvalidInput, match='standing "up" is unknown; known: tin, free'):
        lf.over_proof_ratio(lf.Dough(dough_c=24, yeast_percent=1), standing="up", final_proof=False)
    with pytest.raises(lf.InvalidInput, match='no parameter set is named "2025-1"; known: "2026-1"'):
        lf.Kitchen.named("2025-1")


@pytest.mark.parametrize(
    ("convert", "unit", "zero"),
    [(lf.celsius, "°F", -459.67), (lf.fahrenheit, "°C", -273.15), (lf.kelvins, "°F", None)],
    ids=["celsius", "fahrenheit", "kelvins"],
)
def test_conversions_of_units(convert, unit, zero):
    for value in (math.nan, math.inf, -math.inf, 1.7e308, -1.7e308):
        with pytest.raises(lf.InvalidInput, match=unit) as refused:
            convert(value)
        assert refused.value.value == value or math.isnan(value)
    for value in ("78F", None, 1j, True, ["78F"]):
        with pytest.raises(lf.InvalidInput, match=f"must be a number in {unit}"):
            convert(value)
    if zero is not None:
        assert math.isfinite(convert(zero))
        with pytest.raises(lf.InvalidInput, match="absolute zero") as refused:
            convert(math.nextafter(zero, -math.inf))
        assert refused.value.low == zero
    degrees = np.array([[-40.0, 0.0, 75.5], [212.0, 32.0, 98.6]])
    assert convert(degrees).tolist() == [[convert(degree) for degree in row] for row in degrees.tolist()]


def test_fixed_points_of_units():
    assert (lf.celsius(32), lf.celsius(212), lf.fahrenheit(0), lf.fahrenheit(100)) == (0, 100, 32, 212)
    assert lf.celsius(-40) == -40 == lf.fahrenheit(-40)
    assert lf.kelvins(18) == 10
    assert lf.kelvins(-9) == -5


# ---- errors ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("kind", "builtin", "status"),
    [
        (lf.InvalidInput, ValueError, 1),
        (lf.OutsideModel, ValueError, 2),
        (lf.NoSolution, ArithmeticError, 3),
        (lf.NotConverged, ArithmeticError, None),
        (lf.InternalError, RuntimeError, None),
    ],
)
def test_errors_are_builtins_too(kind, builtin, status):
    assert issubclass(kind, lf.Error)
    assert issubclass(kind, builtin)
    assert issubclass(lf.Error, Exception)
    raised = {
        1: lambda: lf.speed(dough_c=99),
        2: lambda: lf.hours_to_rise(100, dough_c=-2, yeast_percent=1),
        3: lambda: lf.hours_to_rise(900, dough_c=24, yeast_percent=1),
    }
    if status:
        with pytest.raises(builtin) as refused:
            raised[status]()
        assert type(refused.value) is kind
        assert refused.value.status == status


def test_facts_of_an_error_default_to_nothing():
    problem = lf.Error("a text")
    assert (problem.status, problem.path, problem.value, problem.low, problem.high) == (99, "", None, None, None)
    assert (problem.index, problem.count) == (None, None)


# ---- kitchens --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", PARAMETERS)
def test_parameters_of_a_kitchen(name):
    row = PARAMETERS[name]
    assert getattr(lf.Kitchen(), name) == row.initial
    assert row.low <= row.initial <= row.high
    outside = [math.nan, math.inf, -math.inf, math.nextafter(row.low, -math.inf), math.nextafter(row.high, math.inf)]
    for value in outside:
        with pytest.raises(lf.InvalidInput) as refused:
            lf.Kitchen(**{name: value})
        assert refused.value.path == name
        assert (refused.value.low, refused.value.high) == (row.low, row.high)
        assert row.label in str(refused.value)
        assert row.unit in str(refused.value)


def test_parameters_that_are_no_numbers():
    for value in (None, "much", 1j, [1.0], b"1", True):
        with pytest.raises((lf.InvalidInput, TypeError)):
            lf.Kitchen(fold_loss=value)


def test_parameters_that_are_tied():
    with pytest.raises(lf.InvalidInput, match="raise retention_limit or lower retention_onset") as refused:
        lf.Kitchen(retention_onset=4.8)
    assert (refused.value.path, refused.value.low) == ("retention_limit", 4.8)
    # The cardinal law needs its optimum above the middle of its limits (Rosso et al. 1993): the bounds see to it.
    least_below = PARAMETERS["t_opt_c"].low - PARAMETERS["t_min_c"].high
    assert least_below > PARAMETERS["t_max_above_opt_k"].high


def test_unknown_parameters_suggest_near_ones():
    with pytest.raises(lf.InvalidInput, match=r'Kitchen has no "gasing_rate"; did you mean gassing_rate\?') as refused:
        lf.Kitchen(gasing_rate=11)
    assert refused.value.path == "gasing_rate"
    with pytest.raises(lf.InvalidInput, match="known: name, law, t_min_c"):
        lf.Kitchen(xyzzy=1)


def test_kitchens_of_wrong_form():
    for wrong in ({"name": 3}, {"covariance": "x"}, {"covariance": [[1, 2], [3]]}, {"law": "cardinl"}, {"law": 2}):
        with pytest.raises((lf.InvalidInput, TypeError)):
            lf.Kitchen(**wrong)
    for wrong in ("2026-1", 3, {}):
        with pytest.raises(lf.InvalidInput, match="a Kitchen is wanted, got"):
            lf.speed(dough_c=24, kitchen=wrong)
    n = len(lf.Kitchen().covariance)
    for wrong, words in (
        (np.eye(n + 1), "must have"),
        (np.full((n, n), math.nan), "not a finite number"),
        (-np.eye(n), "not positive semi-definite"),
        (np.triu(np.ones((n, n))), "not symmetric"),
    ):
        with pytest.raises(lf.InvalidInput, match=words) as refused:
            lf.Kitchen(covariance=wrong)
        assert refused.value.path == "covariance"


@pytest.mark.parametrize(
    "make",
    [
        lambda value: lf.ConstantQ10(value),
        lambda value: lf.Arrhenius(value),
        lambda value: lf.SquareRoot(t_min_c=value),
        lambda value: lf.SquareRoot(t_max_c=value),
        lambda value: lf.SquareRoot(decline_per_k=value),
        lambda value: lf.Cardinal(t_min_c=value),
        lambda value: lf.Cardinal(t_opt_c=value),
        lambda value: lf.Cardinal(t_max_c=value),
    ],
)
def test_laws_with_impossible_parameters(make):
    for value in (math.nan, math.inf, -1e9, 1e9):
        for use in (
            lambda law: law.factor(25),
            lambda law: law.local_q10(25),
            lambda law: law.factor([25.0, 30.0]),
            lambda law: lf.Kitchen().with_law(law),
        ):
            with pytest.raises(lf.InvalidInput):
                use(make(value))
    with pytest.raises(lf.InvalidInput):
        make("2")


def test_kitchens_are_values():
    one, other = lf.Kitchen(gassing_rate=12), lf.Kitchen(gassing_rate=12)
    assert one == other
    assert hash(one) == hash(other)
    assert one != lf.Kitchen()
    assert one != "2026-1"
    assert eval(repr(one), {"Kitchen": lf.Kitchen}) == one
    q10 = lf.Kitchen().with_law(lf.ConstantQ10(2.5))
    assert eval(repr(q10), {"Kitchen": lf.Kitchen, "ConstantQ10": lf.ConstantQ10}) == q10
    with pytest.raises(AttributeError):
        one.gassing_rate = 13


# ---- forms of arrays -------------------------------------------------------------------------------------------------

WARM = [16.0, 20.0, 24.0, 28.0]
HOURS = [lf.hours_to_rise(90, dough_c=t, yeast_percent=1) for t in WARM]


def hours_at(dough_c, **others):
    return lf.hours_to_rise(90, dough_c=dough_c, yeast_percent=1, **others)


def read_only(values):
    array = np.array(values)
    array.setflags(write=False)
    return array


@pytest.mark.parametrize(
    "form",
    [
        list,
        tuple,
        np.array,
        read_only,
        pd.Series,
        pd.Index,
        lambda v: np.array(v, dtype=np.float32),
        lambda v: np.array(v, dtype=np.float16),
        lambda v: np.array(v, dtype=np.longdouble),
        lambda v: np.array(v, dtype=">f8"),
        lambda v: np.array(v, dtype=np.int64),
        lambda v: np.array(v, dtype=np.uint8),
        lambda v: [int(x) for x in v],
        lambda v: np.repeat(v, 3)[::3],
        lambda v: np.array(v[::-1])[::-1],
        lambda v: np.array([[x, 0.0] for x in v])[:, 0],
        lambda v: pd.Series(v, index=["a", "b", "c", "d"]),
        lambda v: pd.Series(v, dtype="Float64"),
        lambda v: pd.DataFrame({"t": v})["t"],
        lambda v: memoryview(np.array(v)),
        lambda v: range(16, 32, 4),
    ],
)
def test_forms_of_an_array(form):
    given = form(WARM)
    hours = hours_at(given)
    assert type(hours) is (pd.Series if isinstance(given, pd.Series) else np.ndarray)
    assert hours.dtype == np.float64
    assert hours.tolist() == HOURS


@pytest.mark.parametrize(
    "form", [int, np.float32, np.float64, np.int16, lambda v: np.array(v), lambda v: pd.Series([v])[0]]
)
def test_forms_of_a_number(form):
    hours = hours_at(form(24.0))
    assert type(hours) is float
    assert hours == HOURS[2]


def test_shapes():
    square = np.array(WARM).reshape(2, 2)
    expected = np.array(HOURS).reshape(2, 2).tolist()
    assert hours_at(square).tolist() == expected
    assert hours_at(np.asfortranarray(square)).tolist() == expected
    assert hours_at(square.T).tolist() == np.array(expected).T.tolist()
    assert hours_at([[24.0]]).shape == (1, 1)
    assert hours_at([24.0]).shape == (1,)
    assert hours_at(24.0, salt_percent=[2.0]).shape == (1,)
    for shape in ((0,), (0, 3), (2, 0)):
        empty = hours_at(np.empty(shape))
        assert empty.shape == shape
    assert hours_at(np.empty((0, 1)), salt_percent=[1.0, 2.0, 3.0]).shape == (0, 3)
    deep = np.full((1,) * 20 + (2,), 24.0)
    assert hours_at(deep).shape == deep.shape


def test_broadcasting():
    salt = np.array([[0.0], [1.0], [2.0]])
    table = hours_at(np.array(WARM), salt_percent=salt)
    assert table.shape == (3, 4)
    assert table.tolist() == [[hours_at(t, salt_percent=s) for t in WARM] for s in (0.0, 1.0, 2.0)]
    everywhere = lf.hours_to_rise(
        np.array([50.0, 90.0])[:, None, None], dough_c=np.array(WARM), yeast_percent=1, salt_percent=salt
    )
    assert everywhere.shape == (2, 3, 4)
    assert everywhere[1].tolist() == table.tolist()


def test_arrays_that_do_not_broadcast():
    with pytest.raises(lf.InvalidInput, match="do not broadcast together") as refused:
        hours_at([20.0, 21.0], salt_percent=[1.0, 2.0, 3.0])
    assert "dough_c (2,)" in str(refused.value)
    assert "salt_percent (3,)" in str(refused.value)
    with pytest.raises(lf.InvalidInput, match=r"time_h \(2, 2\).*to_c \(3,\)"):
        lf.same_rise(np.ones((2, 2)), from_c=24, to_c=[18.0, 19.0, 20.0])


def test_inputs_are_left_as_they_are():
    warm = np.array(WARM)
    hours_at(warm)
    assert warm.tolist() == WARM
    result = hours_at(warm)
    result[0] = -1  # one's own
    assert hours_at(warm).tolist() == HOURS


def test_missing_values_in_a_series():
    for missing in (pd.Series([20.0, None]), [20.0, math.nan]):
        with pytest.raises(lf.InvalidInput) as refused:
            hours_at(missing)
        assert refused.value.path == "dough_c"


@pytest.mark.parametrize(
    "form",
    [
        lambda minutes: [m / 60 for m in minutes],
        lambda minutes: np.array(minutes, dtype="m8[m]"),
        lambda minutes: np.array([m * 60 for m in minutes], dtype="m8[s]"),
        lambda minutes: pd.Series(pd.to_timedelta(minutes, unit="min")),
        lambda minutes: pd.to_timedelta(minutes, unit="min"),
    ],
)
def test_forms_of_times(form):
    minutes = [30, 90, 200]
    dough = {"dough_c": 24, "yeast_percent": 1}
    expected = [lf.rise_after(m / 60, **dough) for m in minutes]
    assert lf.rise_after(form(minutes), **dough).tolist() == pytest.approx(expected, rel=1e-14)
    doses = [lf.yeast_for_rise(100, 2 * m / 60, dough_c=24) for m in (60, 90, 200)]
    assert lf.yeast_for_rise(100, form([120, 180, 400]), dough_c=24).tolist() == pytest.approx(doses, rel=1e-12)


@pytest.mark.parametrize(
    "span", [dt.timedelta(hours=1.5), pd.Timedelta(hours=1.5), np.timedelta64(90, "m"), np.array(90, dtype="m8[m]")]
)
def test_one_span_of_time(span):
    assert lf.rise_after(span, dough_c=24, yeast_percent=1) == lf.rise_after(1.5, dough_c=24, yeast_percent=1)
    assert lf.same_rise(span, from_c=24, to_c=18) == lf.same_rise(1.5, from_c=24, to_c=18)
    assert lf.yeast_for_rise(100, span, dough_c=24) == lf.yeast_for_rise(100, 1.5, dough_c=24)


def test_times_that_are_none():
    dough = {"dough_c": 24, "yeast_percent": 1}
    moment = dt.datetime(2026, 1, 1)
    for value in (moment, [dt.timedelta(hours=1)], np.datetime64(moment), pd.Timestamp(moment), "1:30"):
        with pytest.raises(lf.InvalidInput, match="time must be a number in h"):
            lf.rise_after(value, **dough)
    with pytest.raises(lf.InvalidInput):
        lf.rise_after(np.array(["NaT", 30], dtype="m8[m]"), **dough)
    with pytest.raises(lf.InvalidInput, match="got a timedelta"):
        lf.speed(dough_c=dt.timedelta(hours=1))


# ---- threads ---------------------------------------------------------------------------------------------------------


def test_many_threads_give_the_same_digits():
    rng = np.random.default_rng(7)
    rise, t, yeast = rng.uniform(20, 200, 5000), rng.uniform(5, 35, 5000), rng.uniform(0.1, 2, 5000)
    kitchens = [
        None,
        lf.Kitchen().with_law(lf.SquareRoot()),
        lf.Kitchen(gassing_rate=14),
        lf.Kitchen().with_law(lf.Arrhenius()),
    ]

    def work(number):
        kitchen = kitchens[number % len(kitchens)]
        hours = lf.hours_to_rise(rise, dough_c=t, yeast_percent=yeast, kitchen=kitchen)
        back = lf.rise_after(hours, dough_c=t, yeast_percent=yeast, kitchen=kitchen)
        one = lf.hours_to_rise(100, dough_c=20.0 + number % 10, yeast_percent=1, kitchen=kitchen)
        with pytest.raises(lf.InvalidInput) as refused:
            lf.speed(dough_c=100 + number)
        assert refused.value.value == 100 + number
        return hours.tobytes(), back.tobytes(), one

    alone = [work(number) for number in range(40)]
    with ThreadPoolExecutor(16) as pool:
        together = list(pool.map(work, list(range(40)) * 4))
    assert together == alone * 4
