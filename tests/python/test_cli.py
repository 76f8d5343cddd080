"""The command line: answers, JSON, exit codes and what it says to a wrong input. Never a traceback."""

import copy
import json
import math
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from by_hand import by_hand_mix
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

import libferment as lf
from libferment import cli

if sys.version_info >= (3, 11):
    import tomllib
else:
    import tomli as tomllib

ROOT = Path(__file__).resolve().parents[2]
DEMO = str(ROOT / "data" / "demo" / "day.toml")
BY_HAND = str(Path(__file__).with_name("by_hand.toml"))
RULE = ["--flour", "20C", "--room", "21C", "--friction", "2K"]
WATER = ["water", "--desired", "24C", "--room", "21C"]
BATCH = ["friction", "--dough", "25.2C", "--water", "27C", "--flour", "20C", "--room", "21C"]
ONE = ["--dough", "18C", "--yeast-percent", "0.6"]
PIECE = ["--dough", "25C", "--room", "16C", "--piece", "tub", "--piece-g", "1.5kg", "--yeast-percent", "0.6"]


def run(*arguments, columns=200):
    """The finished command, with its output as one text and its error output as another."""
    result = CliRunner(env={"COLUMNS": columns and str(columns)}).invoke(cli.main, list(arguments))
    assert result.exception is None or isinstance(result.exception, SystemExit), repr(result.exception)
    assert "Traceback" not in result.output
    return result


def answer(*arguments, columns=200):
    result = run(*arguments, columns=columns)
    assert result.exit_code == 0, result.output
    assert result.stderr == ""
    return result.stdout


def as_json(*arguments):
    def no_constant(name):
        raise AssertionError(f"{name} is no JSON")

    text = answer(*arguments, "--json")
    assert text.count("\n") == 1  # one document, one line
    return json.loads(text, parse_constant=no_constant)


def refusal(exit_code, *arguments):
    result = run(*arguments)
    assert result.exit_code == exit_code, result.output
    assert result.stdout == ""
    message = " ".join(result.stderr.split())
    assert re.search("^error: |Error: ", message)
    # Advice for programs would be of no use here.
    assert not re.search(r"celsius\(|kelvins\(|net_gain_from|\bday\.(?!toml)[a-z]", message)
    return message


@pytest.fixture
def write(tmp_path):
    def write_day(text):
        path = tmp_path / "day.toml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write_day


def told(temperature_c):
    """A temperature as the text writes it."""
    return f"{temperature_c:.1f} °C ({lf.fahrenheit(temperature_c):.0f} °F)".replace("-", "−")


def told_k(difference_k):
    """A difference of temperatures as the text writes it."""
    return f"{difference_k:.1f} K ({1.8 * difference_k:.0f} °F)".replace("-", "−")


def told_h(hours):
    """A time as the text writes it."""
    minutes = round(60 * hours)
    return f"{minutes} min" if minutes < 60 else f"{minutes // 60} h {minutes % 60:02d} min"


def lines(*arguments):
    """The sentences, one after the other however they were wrapped, and the rows of the table."""
    text = answer(*arguments)
    sentences = [line for line in text.splitlines() if not re.search("[│┃━─]", line)]
    return " ".join(" ".join(sentences).split()), [line for line in text.splitlines() if "│" in line]


def cells(row):
    return [cell.strip() for cell in row.split("│")]


# ---- a day in words and as options -----------------------------------------------------------------------------------


def day_with(day, changes):
    """The day with entries changed, table by table; None takes an entry out."""
    day = copy.deepcopy(day)
    for table, entries in changes.items():
        if not isinstance(entries, dict):
            day[table] = entries
            continue
        day.setdefault(table, {}).update(entries)
        day[table] = {key: value for key, value in day[table].items() if value is not None}
    return day


def content(path):
    return tomllib.loads(Path(path).read_text(encoding="utf-8"))


def check_asked(arguments, question, day=None, **members):
    """The JSON is the library's answer to that question, byte for byte. Returns it."""
    asked = {"ask": question, **({} if day is None else {"day": day}), **members}
    text = lf.ask(json.dumps(asked))
    assert answer(*arguments, "--json") == f"{text}\n"
    return json.loads(text)


TODAY = '[water]\ndesired = "24C"\n[today]\nroom = "21C"\n'
PLAIN = {"today": {"room_c": 21}, "water": {"desired_c": 24}}
WEIGHED = {**PLAIN, "dough": {"flour_g": 800}}


@pytest.mark.parametrize(
    ("options", "changes"),
    [
        (["--desired", "25C"], {"water": {"desired_c": 25}}),
        (["--flour", "12C"], {"today": {"flour_c": 12}}),
        (["--room", "26C"], {"today": {"room_c": 26}}),
        (["--tap", "30C"], {"today": {"tap_c": 30}}),
        (["--tap", "30C", "--ice", "-2C"], {"today": {"tap_c": 30, "ice_c": -2}}),
        (["--friction", "3K"], {"water": {"friction_k": 3}}),
        (["--friction", "9C", "--friction-at", "17C"], {"water": {"friction_k": 9, "friction_at_c": 17}}),
        (["--rest", "45min"], {"mixing": {"rest_h": 0.75}}),
        (["--rest", "1.5h"], {"mixing": {"rest_h": 1.5}}),
        (["--bowl", "glass", "--bowl-g", "1.5kg", "--flour", "5C"],
         {"bowl": {"material": "glass", "mass_g": 1500}, "today": {"flour_c": 5}}),
        (["--bowl", "CERAMIC", "--bowl-g", "1500"], {"bowl": {"material": "ceramic", "mass_g": 1500}}),
        (["--mixing", "spiral"], {"mixing": {"method": "spiral"}}),
        (["--mixing", " Stand mixer"], {"mixing": {"method": "stand_mixer"}}),
        (["--mixing", "STAND-MIXER", "--minutes", "12"], {"mixing": {"method": "stand_mixer", "minutes": 12}}),
        (["--net-gain", "6.5"], {"mixing": {"net_gain_kj_per_kg": 6.5}}),
        (["--net-gain", "−2", "--minutes", "15"], {"mixing": {"net_gain_kj_per_kg": -2, "minutes": 15}}),
        (["--mixing", "hand", "--rest", "20min"], {"mixing": {"method": "hand", "rest_h": 20 / 60}}),
        (["--yeast-water", "38C", "--yeast-water-g", "60"], {"yeast_water": {"temperature_c": 38, "water_g": 60}}),
        (["--water-g", "600"], {"dough": {"water_g": 600}}),
        (["--flour-g", "2kg"], {"dough": {"flour_g": 2000}}),
        (["--preferment-g", "300"], {"preferment": {"flour_g": 150, "water_g": 150}}),
        (["--preferment", "5C", "--preferment-g", "0,3kg"],
         {"preferment": {"flour_g": 150, "water_g": 150}, "today": {"preferment_c": 5}}),
    ],
)  # fmt: skip
def test_every_option_of_the_water_counts(options, changes):
    without = answer(*WATER, "--flour-g", "800", "--json")
    check_asked([*WATER, "--flour-g", "800", *options], "water", day_with(WEIGHED, changes))
    assert answer(*WATER, "--flour-g", "800", *options, "--json") != without


@pytest.mark.parametrize(
    ("options", "changes"),
    [
        ([], {}),
        (["--flour", "21C", "--desired", "26C", "--friction", "0K"],
         {"today": {"flour": "21C"}, "water": {"desired": "26C", "friction_k": 0}}),
        (["--water-g", "500"], {"dough": {"water_percent": None, "water_g": 500}}),
        (["--bowl", "wood"], {"bowl": {"material": "wood"}}),
        (["--bowl-g", "0.5kg"], {"bowl": {"mass_g": 500}}),
        (["--flour-g", "1kg", "--tap", "13C", "--room", "71F"],
         {"dough": {"flour_g": 1000}, "today": {"tap": "13C", "room": "71F"}}),
        (["--minutes", "5"], {"mixing": {"minutes": 5}}),
        (["--mixing", "spiral", "--minutes", "5"],
         {"mixing": {"method": "spiral", "minutes": 5}, "batch": []}),
        (["--net-gain", "7"], {"mixing": {"method": None, "minutes": None, "net_gain_kj_per_kg": 7}}),
        (["--net-gain", "7", "--rest", "0h"], {"mixing": {"method": None, "minutes": None, "rest": "0h",
                                                          "net_gain_kj_per_kg": 7}}),
        (["--yeast-water", "30C"], {"yeast_water": {"temperature": "30C"}}),
        (["--preferment-g", "100"], {"preferment": {"flour_g": 50, "water_g": 50}}),
    ],
)  # fmt: skip
def test_options_of_the_water_count_before_the_day_file(options, changes):
    check_asked(["water", BY_HAND, *options], "water", day_with(content(BY_HAND), changes))


@pytest.mark.parametrize("path", [DEMO, BY_HAND])
def test_the_json_of_a_day_file_is_the_librarys_answer(path):
    day = content(path)
    check_asked(["water", path], "water", day)
    check_asked(["friction", path], "mixing", day)
    check_asked(["rise", path], "simulate", day, every_min=0)


@pytest.mark.parametrize(
    ("weights", "grams"),
    [
        (["2lb", "18oz", "40oz", "2oz", "8oz"], [32, 18, 40, 2, 8]),
        (["2 LB", "1.125lb", "2.5lb", "0.125lb", "0.5lb"], [32, 18, 40, 2, 8]),
        (["0.9kg", "630g", "1,2kg", "60", "0.2kg"], None),
        (["900", "630", "1200", "60g", "200"], None),
    ],
)
def test_weights_in_ounces_pounds_and_kilograms(weights, grams):
    names = ("--flour-g", "--water-g", "--bowl-g", "--yeast-water-g", "--preferment-g")
    arguments = [word for option in zip(names, weights, strict=True) for word in option] + ["--bowl", "steel"]
    mix = as_json(*WATER, *arguments, "--yeast-water", "38C")["mix"]
    flour_g, water_g, bowl_g, yeast_water_g, preferment_g = (
        [lf.grams(ounces) for ounces in grams] if grams else [900, 630, 1200, 60, 200]
    )
    (preferment,), (portion,) = mix["preferments"], mix["waters"]
    shown = [mix["flour_g"] + preferment["flour_g"], preferment["flour_g"], preferment["water_g"]]
    shown += [mix["water_g"] + portion["mass_g"] + preferment["water_g"], portion["mass_g"], mix["bowl"]["mass_g"]]
    half_g = preferment_g / 2
    assert shown == pytest.approx([flour_g, half_g, half_g, water_g, yeast_water_g, bowl_g], rel=1e-12)


@pytest.mark.parametrize(
    ("in_celsius", "in_fahrenheit"),
    [
        (["water", "--desired", "25C", "--flour", "20C", "--room", "15C", "--friction", "5K"],
         ["water", "--desired", "77F", "--flour", "68F", "--room", "59F", "--friction", "9F"]),
        (["water", "--desired", "25C", "--room", "20C", "--flour-g", "500", "--preferment-g", "100", "--tap", "50C",
          "--ice", "-5C", "--yeast-water", "40C", "--yeast-water-g", "60", "--preferment", "10C"],
         ["water", "--desired", "77F", "--room", "68F", "--flour-g", "500", "--preferment-g", "100", "--tap", "122F",
          "--ice", "23F", "--yeast-water", "104F", "--yeast-water-g", "60", "--preferment", "50F"]),
        (["friction", "--dough", "25C", "--water", "30C", "--flour", "20C", "--room", "15C"],
         ["friction", "--dough", "77F", "--water", "86F", "--flour", "68F", "--room", "59F"]),
        (["rise", "--rise", "90", "--dough", "25C", "--yeast-percent", "1"],
         ["rise", "--rise", "90", "--dough", "77F", "--yeast-percent", "1"]),
        (["rise", "--rise", "90", "--dough", "25C", "--room", "20C", "--yeast-percent", "1"],
         ["rise", "--rise", "90", "--dough", "77F", "--room", "68F", "--yeast-percent", "1"]),
    ],
)  # fmt: skip
def test_fahrenheit_is_the_same(in_celsius, in_fahrenheit):
    assert as_json(*in_celsius) == as_json(*in_fahrenheit)
    assert answer(*in_celsius) == answer(*in_fahrenheit)


# ---- the screen of the water -----------------------------------------------------------------------------------------


def mix_of(flour_g=500, room_c=21, **changes):
    """The mix that options or a day file stand for, written with the package alone."""
    return lf.Mix.from_percent(flour_g=flour_g, room_c=room_c, **changes)


def plan_of(*arguments, mix, desired_c=24, friction_k=None):
    """The plan of the package for this mix, whose numbers the JSON has."""
    plan = lf.water_by_heat_balance(mix, desired_c, friction_k=friction_k)
    document = as_json(*arguments)
    known = json.loads(json.dumps(plan.to_dict()))
    assert {key: document[key] for key in known} == known
    assert document["mix"] == json.loads(json.dumps(mix.with_water(plan).to_dict()))
    return plan


def with_friction(mix, friction_k, desired_c=24):
    """The mix with the heat that a friction is worth, found at 21 °C."""
    return mix.replace(mixing=lf.ByNetGain(lf.net_gain_from_friction(mix, friction_k, desired_c, measured_at_c=21), 2))


def test_water_by_options():
    plan = plan_of(*WATER[:3], *RULE, mix=with_friction(mix_of(flour_c=20), 2), friction_k=2)
    assert plan.factor_rule_c == lf.water_by_factor_rule(24, flour_c=20, room_c=21, friction_k=2) == 29
    text, rows = lines(*WATER[:3], *RULE)
    moves = {share.name: f"{share.dough_k_per_k:.2f} K" for share in plan.shares}
    assert [cells(row) for row in rows] == [
        ["main water", "325 g", f"{plan.water_c:.1f} °C", moves["main water"]],
        ["bread flour", "500 g", "20.0 °C", moves["bread flour"]],
        ["salt", "10 g", "", ""],
        ["mixing, wetting, dissolving", "", "", f"{plan.gain_k:+.1f} K".replace("-", "−")],
        ["dough", "835 g", "24.0 °C", ""],
    ]
    assert text.startswith(f"Pour 325 g of water at {told(plan.water_c)}. ")
    header = next(line for line in answer(*WATER[:3], *RULE).splitlines() if "┃" in line)
    names = ["into the bowl", "weight", "at", "1 K more moves the dough"]
    assert [cell.strip() for cell in header.split("┃")] == names
    rule = "The bakers' factor rule says 29.0 °C (84 °F): 3 × 24.0 − 20.0 − 21.0 − 2.0 (flour, room, friction). "
    assert f"{rule}It would make the dough {plan.dough_by_rule_c:.1f} °C." in text


def test_water_with_a_preferment():
    arguments = [*WATER[:3], *RULE, "--flour-g", "500g", "--preferment", "18C", "--preferment-g", "200g"]
    mix = mix_of(flour_c=20, preferments=[lf.Preferment(100, 100, temperature_c=18)])
    plan = plan_of(*arguments, mix=with_friction(mix, 2), friction_k=2)
    assert plan.factor_rule_c == 4 * 24 - 20 - 21 - 18 - 2
    text, rows = lines(*arguments)
    share = next(share for share in plan.shares if share.name == "preferment")
    assert cells(rows[2]) == ["preferment", "200 g", "18.0 °C", f"{share.dough_k_per_k:.2f} K"]
    rule = "4 × 24.0 − 20.0 − 21.0 − 18.0 − 2.0 (flour, room, preferment, friction)"
    makes = f"It would make the dough {plan.dough_by_rule_c:.1f} °C."
    assert f"The bakers' factor rule says {told(plan.factor_rule_c)}: {rule}. {makes}" in text


def demo_mix():
    """The demo day's mix: numbers of the file, the package alone."""
    return lf.Mix.from_percent(
        flour_g=1100,
        room_c=19,
        flour_c=15,
        tap_c=10,
        flours=[lf.FlourShare(100, "whole_wheat")],
        water_percent=72,
        salt_percent=1.8,
        oil_percent=1.5,
        compressed_percent=0.8,
        bowl=lf.Bowl("steel", 1250),
        mixing=lf.ByMethod("stand_mixer", 7),
    )


def demo_learned():
    """Friction and net gain of the demo day's one batch."""
    gain = lf.net_gain_from_batches([demo_mix().replace(flour_c=16, room_c=20, water_c=17.4)], [21.8])
    return lf.friction_from_batch(dough_c=21.8, flour_c=16, room_c=20, water_c=17.4), gain


def test_water_of_the_demo_day():
    friction_k, gain = demo_learned()
    mix = demo_mix().replace(mixing=lf.net_gain_of(gain, 7))
    plan = plan_of("water", DEMO, mix=mix, desired_c=21, friction_k=friction_k)
    text, rows = lines("water", DEMO)
    assert text.startswith(
        "Wholemeal tin loaf and a dozen rolls for supper (invented) "  # and then, before all else, the answer
        f"Pour 792 g of water at {told(plan.water_c)}: {told_k(plan.water_c - 10)} warmer than the tap's "
        "10.0 °C (50 °F). No ice is needed. In 9 batches of 10 "
    )
    assert [cells(row)[0] for row in rows[:2]] == ["main water", "whole-wheat flour"]


def test_water_of_a_day_with_a_rest_and_water_for_the_yeast():
    batch = by_hand_mix().replace(flour_c=19, room_c=21, water_c=33, rest_h=40 / 60)
    mix = by_hand_mix().replace(mixing=lf.net_gain_of(lf.net_gain_from_batches([batch], [25.4]), 12))
    friction_k = lf.friction_from_batch(dough_c=25.4, flour_c=19, room_c=21, water_c=33)
    plan = plan_of("water", BY_HAND, mix=mix, desired_c=25, friction_k=friction_k)
    text, rows = lines("water", BY_HAND)
    meet = f"Flour and water meet at {plan.wetted_c:.1f} °C and are at {plan.rested_c:.1f} °C"
    assert f"{meet} after the rest of 45 min, when all else joins." in text
    yeast_c = 20 + (36 - 20) * math.exp(-(12 / 60) / 0.3)  # it cooled while it stood
    assert cells(rows[2])[:3] == ["yeast's water", "70 g", f"{yeast_c:.1f} °C"]


@pytest.mark.parametrize("command", ["water", "friction"])
def test_what_was_not_given_is_told(write, command):
    """Flour, water, salt and bowl, in this order, each with its option; nothing once each is given."""
    ask = [*WATER[1:], "--mixing", "hand"] if command == "water" else BATCH[1:]
    flour, water = ["--flour-g", "500g"], ["--water-g", "350g"]
    bowl = ["--bowl", "steel", "--bowl-g", "1kg"]
    salt = write("[dough]\nsalt_percent = 2\n")

    def assumed(*arguments):
        text, _ = lines(command, *arguments, *ask)
        found = re.findall(r"Assumed: (.*?)\.(?= |$)", text)
        assert len(found) <= 1
        return found[0] if found else None

    flour_words, water_words = "500 g of flour (--flour-g)", "65 % water (--water-g)"
    salt_words, bowl_words = "2 % salt", "no bowl (--bowl, --bowl-g)"
    assert assumed() == f"{flour_words}, {water_words}, {salt_words}, {bowl_words}"
    assert assumed(*flour) == f"{water_words}, {salt_words}, {bowl_words}"
    assert assumed(*flour, *water) == f"{salt_words}, {bowl_words}"
    assert assumed(*flour, *water, *bowl) == salt_words
    assert assumed(salt, *flour, *water, *bowl) is None
    assert assumed(salt) == f"{flour_words}, {water_words}, {bowl_words}"
    assert assumed(DEMO) is None


def test_ice_when_the_tap_is_too_warm():
    arguments = ["water", "--desired", "22C", "--flour", "30C", "--room", "30C", "--friction", "6K", "--tap", "20C"]
    arguments += ["--flour-g", "1kg", "--water-g", "600"]
    mix = mix_of(flour_g=1000, room_c=30, flour_c=30, tap_c=20, water_percent=60)
    plan = plan_of(*arguments, mix=with_friction(mix, 6, 22), desired_c=22, friction_k=6)
    assert plan.ice_g == lf.ice_by_heat_balance(600, tap_c=20, wanted_c=plan.water_c, ice_c=-18) > 0
    text, _ = lines(*arguments)
    assert text.startswith(
        f"Pour {600 - plan.ice_g:.0f} g from the tap, 20.0 °C (68 °F), and {plan.ice_g:.0f} g of ice: "
        f"together as cold as water at {told(plan.water_c)}. "
        "Weigh ice straight from the freezer (−18 °C); of wet, melting ice it takes more (--ice 0C). "
        "It is part of the water: crush it and mix until none is left. In 9 batches of 10 "
    )
    wet, _ = lines(*arguments, "--ice", "0C")
    assert as_json(*arguments, "--ice", "0C")["ice_g"] > plan.ice_g
    assert "Weigh wet, melting ice. It is part of the water: crush it and mix until none is left. In 9 " in wet
    for words in ("If your tap is warmer", "warmer than the tap", "No ice is needed", "[[batch]]", "Measure the dough"):
        assert words not in text + wet


def test_ice_is_asked_for_only_if_the_tap_is_known():
    asks = "If your tap is warmer than that, give --tap, and the ice is worked out."
    plan = lf.water_by_heat_balance(mix_of(), 24)
    text, _ = lines(*WATER, "--tap", "12C")
    assert 12 < plan.water_c < 25
    start = f"Pour 325 g of water at {told(plan.water_c)}: "
    assert text.startswith(f"{start}{told_k(plan.water_c - 12)} warmer than the tap's {told(12)}. No ice is needed. In")
    assert "give --tap" not in text
    # No tap is warmer than 25 °C in a kitchen where such water is asked for.
    for water_c, warm in ((20, False), (24.99, False), (25.01, True)):
        arguments = ["water", "--desired", f"{lf.dough_by_heat_balance(mix_of(water_c=water_c)):.6f}C", "--room", "21C"]
        assert (as_json(*arguments)["water_c"] > 25) == warm
        assert (asks in lines(*arguments)[0]) == (not warm)
        assert "No ice is needed" not in lines(*arguments)[0]


def test_ice_that_hardly_counts_may_be_left_out():
    """Less than 1 % of the water: poured straight from the tap the dough is hardly warmer."""
    water_c = as_json(*WATER)["water_c"]
    for ice_g, words in ((0.4, True), (3.2, True), (3.3, False), (9, False)):
        # The tap at which so much ice is needed: it cools the rest of the water, and melts.
        tap_c = (325 * 4.186 * water_c + ice_g * (333.55 + 2.05 * 18)) / ((325 - ice_g) * 4.186)
        arguments = [*WATER, "--tap", f"{tap_c:.12f}C"]
        document = as_json(*arguments)
        assert document["ice_g"] == pytest.approx(ice_g, rel=1e-9)
        text, _ = lines(*arguments)
        straight = (
            f"Pour 325 g straight from the tap, {told(tap_c)}: it is only {told_k(tap_c - water_c)} too warm; "
            f"{document['ice_g']:.0f} g of ice in it would make it exact."
        )
        both = (
            f"Pour {325 - document['ice_g']:.0f} g from the tap, {told(tap_c)}, and {document['ice_g']:.0f} g of ice: "
            f"together as cold as water at {told(water_c)}."
        )
        assert text.startswith(straight if words else both)


def test_water_colder_than_any_water_alone():
    """Ice may take more heat than water of 0 °C; the sentence names no such water."""
    arguments = ["water", "--desired", "18C", "--room", "32C", "--flour-g", "1kg", "--tap", "18C", "--mixing", "spiral"]
    document = as_json(*arguments)
    assert document["water_c"] < 0
    assert lines(*arguments)[0].startswith(
        f"Pour {document['pour_g']:.0f} g from the tap, {told(18)}, and {document['ice_g']:.0f} g of ice: "
        "together colder than any water alone. Weigh ice straight"
    )


# ---- the sentences that answer ---------------------------------------------------------------------------------------

LABELS = {method.name: method.label for method in lf.mixing_methods()}
ONE_BATCH = '[[batch]]\ndough = "25C"\nwater = "25C"\nflour = "21C"\nroom = "21C"\n'
WORK, GAIN = "[mixing]\nwork_kj_per_kg = 9\n", "[mixing]\nnet_gain_kj_per_kg = 9\n"


@pytest.mark.parametrize(
    ("tables", "options", "basis"),
    [
        ("", [], "typical for kneading by hand; yours may differ"),
        *(("", ["--mixing", name], f"typical for {label}; yours may differ") for name, label in LABELS.items()),
        ("", ["--mixing", "spiral", "--friction", "9K", "--friction-at", "20C"],
         "from the friction you gave"),
        ("", ["--net-gain", "4"], "from the net gain you gave"),
        ("", ["--net-gain", "4", "--friction", "9K", "--friction-at", "20C"], "from the net gain you gave"),
        ("", ["--friction", "6K"], "from the friction you gave"),
        ("", ["--friction", "6K", "--friction-at", "21C"], "from the friction you gave"),
        (ONE_BATCH, [], "from 1 logged batch"),
        (2 * ONE_BATCH, [], "from 2 logged batches"),
        (11 * ONE_BATCH, [], "from 11 logged batches"),
        ('[mixing]\nmethod = "spiral"\n' + ONE_BATCH, [], "from 1 logged batch"),
        (ONE_BATCH, ["--mixing", "spiral"], f"typical for {LABELS['spiral']}; yours may differ"),
        (ONE_BATCH, ["--net-gain", "5"], "from the net gain you gave"),
        (WORK, [], "from the work you gave"),
        (WORK + ONE_BATCH, [], "from 1 logged batch"),
        (GAIN, [], "from the net gain you gave"),
        (GAIN + ONE_BATCH, [], "from the net gain you gave"),
    ],
)  # fmt: skip
def test_how_sure_the_water_is(write, tables, options, basis):
    arguments = ["water", write(TODAY + tables), *options, "--tap", "15C"]  # the strongest machines need ice
    document = as_json(*arguments)
    sure = f"should come out at {document['low_c']:.1f} to {document['high_c']:.1f} °C ({basis})."
    assert f"In 9 batches of 10 the dough {sure} " in lines(*arguments)[0]
    assert document["low_c"] < 24 < document["high_c"]


def test_why_not_the_rule():
    impossible = ["water", "--desired", "20C", "--flour", "28C", "--room", "28C", "--friction", "10K", "--tap", "15C"]
    for arguments in (WATER, [*WATER, "--flour", "-5C", "--friction", "-3K"], [*WATER[:3], *RULE], impossible):
        text, _ = lines(*arguments)
        document = as_json(*arguments)
        assert f"Why they differ: {document['reason']}." in text
        rule = re.search(
            r"bakers' factor rule says (−?[\d.]+) °C .*?: (\d) × ([\d.]+)((?: [−+] [\d.]+)+) \(flour, room, f", text
        )
        sum_c = int(rule[2]) * float(rule[3])
        for sign, known in re.findall(r"([−+]) ([\d.]+)", rule[4]):
            sum_c += float(known) * (1 if sign == "+" else -1)
        says_c = float(rule[1].replace("−", "-"))
        assert says_c == pytest.approx(sum_c, abs=0.21)  # four numbers of one decimal
        assert says_c == pytest.approx(document["factor_rule_c"], abs=0.05001)
        assert f"It would make the dough {document['dough_by_rule_c']:.1f} °C.".replace("-", "−") in text
        assert (", which is no water: " in text) == (says_c < 0) == (arguments is impossible)


def test_the_rule_counts_the_mean_of_the_flours(write):
    shares = '[[flour]]\npercent = 75\n[[flour]]\npercent = 25\nkind = "dark_rye"\ntemperature = "5C"\n'
    path = write(f'{TODAY}{shares}[mixing]\nmethod = "hand"\n')
    assert "3 × 24.0 − 17.0 − 21.0 − 4.0 (flour, room, friction)" in lines("water", path, "--friction", "4K")[0]


def test_what_friction_is(write):
    plan = lf.water_by_heat_balance(mix_of(), 24)
    for arguments, friction_k, whose in (
        (WATER, plan.friction_k, "here"),
        ([*WATER, "--friction", "9F"], 5, "as you gave it"),
        (["water", write(TODAY + ONE_BATCH)], 8, "from your batches"),
        (["water", write(TODAY + ONE_BATCH), "--friction", "9F"], 5, "as you gave it"),
    ):
        words = "Friction is the rule's number for mixing and all that it leaves out: "
        finds = "libferment friction finds yours from a batch."
        assert f"{words}{told_k(friction_k)} {whose}; {finds}" in lines(*arguments)[0]


def test_what_a_rest_changes():
    rested = lf.water_by_heat_balance(mix_of(rest_h=0.5), 24)
    hint = f"If flour and water rest for 30 min first, take water at {told(rested.water_c)} (--rest 30min)."
    assert hint in lines(*WATER)[0]
    text, _ = lines(*WATER, "--rest", "30min")
    assert text.startswith(f"Pour 325 g of water at {told(rested.water_c)}.")
    assert "after the rest of 30 min, when all else joins." in text
    assert "(--rest 30min)" not in text
    far, _ = lines("water", "--desired", "38C", "--room", "10C")
    assert "A rest of flour and water for 30 min first is out of the water's reach here." in far
    assert "(--rest 30min)" not in far
    rested = lf.water_by_heat_balance(mix_of(room_c=30, tap_c=20, rest_h=0.5), 22)
    how = f"take {rested.pour_g:.0f} g from the tap and {rested.ice_g:.0f} g of ice (--rest 30min)."
    icy, _ = lines("water", "--desired", "22C", "--room", "30C", "--tap", "20C")
    assert f"If flour and water rest for 30 min first, {how}" in icy


@pytest.mark.parametrize(
    "options", [[], ["--friction", "6K", "--friction-at", "21C"], ["--net-gain", "3"], ["--rest", "0min"]]
)
def test_the_rest_it_tells_of_is_that_of_the_option(write, options):
    arguments = ["water", write(TODAY + ONE_BATCH), *options]
    rested_c = as_json(*arguments, "--rest", "30min")["water_c"]
    assert abs(rested_c - as_json(*arguments)["water_c"]) > 0.2
    hint = f"If flour and water rest for 30 min first, take water at {told(rested_c)} (--rest 30min)."
    assert hint in lines(*arguments)[0]


def test_what_hardly_counts_stands_in_one_row(write):
    path = write(TODAY + "[dough]\nflour_g = 900\nyeast_percent = 0.7\nsugar_percent = 1\n")
    _, rows = lines("water", path)
    small = [cells(row) for row in rows if "salt" in row]
    assert small == [["sugar, salt, instant yeast", f"{900 * 0.037:.0f} g", "", ""]]
    large = lines("water", path, "--flour-g", "900kg", "--bowl", "steel", "--bowl-g", "1kg")[1]
    (row,) = (cells(row) for row in large if "salt" in row)
    assert set(row[0].split(", ")) == {"sugar", "salt", "instant yeast", "bowl", "room"}


# ---- the batch to log ------------------------------------------------------------------------------------------------


def logged(*arguments, dough_c, columns=200):
    """The [[batch]] that the answer ends with, ready for a day file but for the dough that came out."""
    text = answer(*arguments, columns=columns)
    before, ask, block = text.partition("\n[[batch]]\n")
    assert ask
    asks = "Measure the dough at the end of mixing, add this to the day file, and the next plan is surer:"
    assert " ".join(before.split()).endswith(asks)
    assert block.count("__") == 1
    return f"[[batch]]\n{block.replace('__', f'{dough_c:g}')}"


@pytest.mark.parametrize("columns", [40, 60, 200, None])
def test_the_batch_to_log_is_ready(columns):
    (batch,) = tomllib.loads(logged("water", BY_HAND, dough_c=25.3, columns=columns))["batch"]
    water_c = as_json("water", BY_HAND)["water_c"]
    known = {"dough": "25.3C", "water": f"{water_c:.1f}C", "flour": "18.5C", "room": "20C", "rest": "45min"}
    assert batch == known | {"minutes": 12}
    (batch,) = tomllib.loads(logged(*WATER, "--flour", "64F", dough_c=24, columns=columns))["batch"]
    assert (batch["flour"], batch["room"]) == ("17.7778C", "21C")
    (batch,) = tomllib.loads(logged(*WATER, dough_c=-1.5, columns=columns))["batch"]
    assert (batch["flour"], batch["room"], batch["dough"], "rest" in batch) == ("21C", "21C", "-1.5C", False)


HAND = '[mixing]\nmethod = "hand"\n'


@pytest.mark.parametrize(
    "tables",
    [
        f'room = "21C"\n[dough]\nflour_g = 800\n{HAND}',
        f'room = "15C"\nflour = "-3C"\n[dough]\nflour_g = 800\n{HAND}rest = "1.5h"\n',
        'room = "16C"\n[dough]\nflour_g = 800\n[mixing]\nnet_gain_kj_per_kg = 7\nminutes = 12\n',
        'room = "16C"\n[dough]\nflour_g = 800\n[mixing]\nmethod = "spiral"\n',
        f'room = "19C"\nbowl = "35C"\n[bowl]\nmaterial = "ceramic"\nmass_g = 2500\n[dough]\nflour_g = 800\n{HAND}',
        f'room = "19C"\npreferment = "5C"\n[preferment]\nflour_g = 150\nwater_g = 150\n[dough]\nflour_g = 800\n{HAND}',
        'room = "19C"\nmilk = "8C"\negg = "6C"\nbutter = "12C"\n[dough]\nflour_g = 800\nmilk_percent = 25\n'
        f"water_percent = 40\negg_percent = 10\nbutter_percent = 15\n{HAND}",
    ],
)
def test_a_batch_that_came_out_as_planned_says_what_was_planned(write, tables):
    """Added to the day file as it is printed, it is the batch that was mixed: another time, another plan, the same."""
    text = f'[water]\ndesired = "24C"\n[today]\n{tables}'
    path = write(text)
    plan = as_json("water", path)
    planned = as_json("friction", path, "--dough", "24C", "--water", f"{plan['water_c']:.12f}C")
    found = as_json("friction", write(text + logged("water", path, dough_c=24)))
    for name, per_k in (("net_gain_kj_per_kg", 2), ("friction_k", 1)):  # the water is printed to 0.1 °C
        assert found[name]["mean"] == pytest.approx(planned[name]["mean"], abs=0.051 * per_k)
    assert found["minutes"] == planned["minutes"]


@pytest.mark.parametrize("minutes", [["--minutes", "6"], []])
def test_a_batch_to_log_keeps_the_minutes_of_mixing_that_options_gave(write, minutes):
    """They are in no file: without them the batch would hold in rooms like its own alone."""
    mixing = ["--mixing", "spiral", *minutes]
    ask = ["water", "--desired", "24C", "--room", "15C", *mixing]
    water_c = as_json(*ask)["water_c"]
    planned = as_json("friction", "--dough", "24C", "--water", f"{water_c:.12f}C", "--room", "15C", *mixing)
    found = as_json("friction", write(logged(*ask, dough_c=24)))
    usual = next(method.usual_min for method in lf.mixing_methods() if method.name == "spiral")
    assert planned["minutes"] == (6 if minutes else usual)
    assert found["net_gain_kj_per_kg"]["mean"] == pytest.approx(planned["net_gain_kj_per_kg"]["mean"], abs=0.102)


# ---- screens ---------------------------------------------------------------------------------------------------------

UNTIL = ["rise", DEMO, "--until", "17:00", "--mixed", "8:30", "--choose", "start"]


@pytest.mark.parametrize("columns", [40, 60, None])
@pytest.mark.parametrize(
    "arguments",
    [
        WATER,
        [*WATER, "--tap", "40C"],
        [*WATER, "--friction", "6K", "--rest", "30min"],
        ["water", DEMO],
        ["water", BY_HAND],
        ["friction", DEMO],
        BATCH,
        ["rise", DEMO],
        ["rise", BY_HAND, "--start", "8:00"],
        ["rise", "--rise", "330", *ONE],
        ["rise", "--rise", "100", *PIECE],
        UNTIL,
    ],
)
def test_narrow_screens_show_every_number(arguments, columns):
    wide, narrow = answer(*arguments).split(), answer(*arguments, columns=columns).split()
    # A table may have become lines, so words may be repeated or gone with it; no number may.
    assert [word for word in wide if re.search(r"\d", word) and word not in narrow] == []
    if columns:
        assert max(map(len, answer(*arguments, columns=columns).splitlines())) <= columns


@pytest.mark.parametrize("words", ["[/bold]", "[red]", "a [/] b", ":smile:", "[link=x]", "50 % [x]"])
def test_titles_and_names_are_printed_as_they_are(write, words):
    path = write(
        f"title = '{words}'\n[today]\nflour = '20C'\nroom = '20C'\n[water]\ndesired = '24C'\nfriction = '2K'\n"
        f"[dough]\nyeast_percent = 0.7\n[[stage]]\nname = '{words}'\ndough = '24C'\nuntil_h = 1\nfolds_h = []\n"
        "[[batch]]\ndough = '24C'\nwater = '26C'\nflour = '20C'\nroom = '20C'\n"
    )
    assert words in answer("water", path)
    assert words in answer("friction", path)
    assert answer("rise", path).count(words) == 2
    assert answer("rise", path, "--until", "2h", "--choose", "start").count(words) == 4


FOLDS = ["--room", "25C", "--mixing", "folds"]
HOT = ["--flour", "18C", *FOLDS]
CHILLED = ["--flour", "2C", "--room", "4C", "--tap", "8C", "--mixing", "folds"]
COLD = ["--desired", "22C", "--flour", "40C", *FOLDS]
LIGHT_BOWL = lf.Bowl("plastic", 20)


def dough_of(water_c):
    """The dough that such water makes of what HOT says, in LIGHT_BOWL, as it is typed."""
    mix = mix_of(room_c=25, flour_c=18, instant_percent=0.7, mixing="folds", bowl=LIGHT_BOWL, water_c=water_c)
    return f"{lf.dough_by_heat_balance(mix):.6f}C"


OTHER_YEAST = '[dough]\nyeast = "compressed"\nyeast_percent = 2\n'


@pytest.mark.parametrize(
    ("dough", "arguments", "codes", "words"),
    [
        (None, COLD, ["water_cold_for_instant"], "damages instant yeast"),
        (OTHER_YEAST, COLD, [], ""),
        (None, [*COLD, "--yeast-water", "30C", "--yeast-water-g", "60"], [], ""),  # it wets the yeast, not the other
        (None, [*COLD, "--rest", "20min"], [], ""),  # the yeast joins after it
        (None, ["--desired", dough_of(44.9), *HOT], [], ""),
        (None, ["--desired", dough_of(45.1), *HOT], ["water_warm_for_yeast"], "too warm to wet yeast in"),
        (None, ["--desired", "38.1C", "--flour", "22C", *FOLDS], ["water_warm_for_yeast", "dough_warm"],
         "is near the yeast's optimum"),
        (None, ["--desired", dough_of(52.0), *HOT], ["water_hot_for_yeast", "dough_warm"],
         "harms yeast within minutes"),
        (None, ["--desired", dough_of(55.1), *HOT], ["water_hot_for_yeast", "water_scalds", "dough_warm"],
         "can scald skin"),
        (None, ["--desired", "4.9C", *CHILLED], ["water_cold_for_instant", "dough_cold"], "4.9 °C hardly rises"),
        (OTHER_YEAST, [*HOT, "--desired", "24C", "--yeast-water", "45.5C", "--yeast-water-g", "50"],
         ["water_warm_for_yeast"], "water at 45.5 °C"),
        ("[dough]\nwater_percent = 50\nmilk_percent = 20\n",
         ["--desired", "24C", "--rest", "5h", "--room", "24C", "--mixing", "folds", "--flour-g", "5kg"],
         ["perishable_held"], "milk"),
        ("[dough]\n", WATER[1:], ["mixing_assumed"], "no way of mixing was given: reckoned for kneading by hand"),
    ],
)  # fmt: skip
def test_notices_of_the_water(write, dough, arguments, codes, words):
    """Exactly these, in the JSON and on the screen; the bowl is given, so that nothing is to be said of it."""
    dough = "[dough]\nyeast_percent = 0.7\n" if dough is None else dough
    bowl = f'[bowl]\nmaterial = "{LIGHT_BOWL.material}"\nmass_g = {LIGHT_BOWL.mass_g}\n'
    path = write((dough if "--flour-g" in arguments else f"{dough}flour_g = 500\n") + bowl)
    check_notices(["water", path, *arguments], codes, words)


def test_a_bowl_that_nobody_mentioned_is_told_of(write):
    told = "caution: no bowl is counted: a heavy one that has the room's temperature would make the dough"
    cold = ["water", "--desired", "26C", "--room", "12C", "--mixing", "hand"]
    (values,) = (notice["values"] for notice in as_json(*cold)["notices"])
    asks = f"and ask for water {values['water_k']:.2g} K warmer; give its material and weight"
    check_notices(cold, ["bowl_not_counted"], f"{told} {-values['dough_k']:.2g} K colder, {asks}")
    check_notices(["water", "--desired", "26C", "--room", "25C", "--mixing", "hand"], [])  # as warm as the dough
    check_notices([*cold, "--flour-g", "500", "--bowl", "steel", "--bowl-g", "700"], [])


def check_notices(arguments, codes, words=""):
    notices = as_json(*arguments)["notices"]
    assert [notice["code"] for notice in notices] == codes
    text, _ = lines(*arguments)
    assert words in text
    for notice in notices:
        severity = "note" if notice["severity"] == "info" else notice["severity"]
        assert f"{severity}: {notice['text']}" in text
    assert len(re.findall(r"(?:note|info|caution|warning): ", text)) == len(codes)


# ---- water from batches, and the friction ----------------------------------------------------------------------------

BATCHES = (
    {"dough": 25.2, "water": 27, "flour": 20, "room": 21},
    {"dough": 24.1, "water": 24.5, "flour": 20.5, "room": 22},
    {"dough": 25.0, "water": 26, "flour": 19, "room": 20.5},
)
COLD_BATCHES = (
    {"dough": 24, "water": 32, "flour": 12, "room": 10},
    {"dough": 23, "water": 31, "flour": 11, "room": 8},
)


def batch_tables(batches):
    """The batches as a day file logs them."""
    return "".join("[[batch]]\n" + "".join(f'{key} = "{c}C"\n' for key, c in batch.items()) for batch in batches)


def learned_of(batches, **changes):
    """Friction and net gain of batches that were mixed like mix_of(**changes)."""
    friction = lf.friction_from_batches(**{f"{key}_c": [batch[key] for batch in batches] for key in batches[0]})
    mixes = [mix_of(**{**changes, "room_c": b["room"]}, flour_c=b["flour"], water_c=b["water"]) for b in batches]
    return friction, lf.net_gain_from_batches(mixes, [batch["dough"] for batch in batches])


def check_learned(document, friction, gain):
    assert (document["friction_k"], document["net_gain_kj_per_kg"]) == (friction.to_dict(), gain.to_dict())


HOLDS_IN = (
    "The net gain is the heat your mixing leaves in a kilogram of dough. It holds in {}, for this way of mixing and "
    "this size of batch. The friction holds in rooms like these batches' alone. "
)


def test_friction_of_one_batch():
    friction, gain = learned_of(BATCHES[:1])
    check_learned(as_json(*BATCH), friction, gain)
    assert friction.mean == pytest.approx(3 * 25.2 - 20 - 21 - 27, rel=1e-12)
    text, rows = lines(*BATCH)
    numbers = [told_k(friction.mean), f"{gain.mean:.1f} kJ/kg"]
    assert [cells(row) for row in rows] == [["1", *numbers], ["mean", *numbers]]
    unknown = HOLDS_IN.format("rooms much like these (tell --mixing, and it holds in others)")
    assert f"{unknown}Next time: libferment water ... --net-gain {gain.mean:.1f} Assumed: " in text
    assert "--minutes" not in text
    assert "caution" not in text
    known = HOLDS_IN.format("warm and cold rooms")
    for options, minutes in ((["--mixing", "Stand mixer", "--minutes", "7.5"], 7.5), (["--mixing", "hand"], 10)):
        document = as_json(*BATCH, *options)
        gain = learned_of(BATCHES[:1], mixing=lf.ByNetGain(0, minutes=minutes))[1]
        assert (document["minutes"], document["net_gain_kj_per_kg"]) == (minutes, gain.to_dict())
        next_time = f"Next time: libferment water ... --net-gain {gain.mean:.1f} --minutes {minutes:g}"
        assert f"{known}{next_time} Assumed: " in lines(*BATCH, *options)[0]


def test_friction_of_several_batches(write):
    path = write(batch_tables(BATCHES))
    friction, gain = learned_of(BATCHES)
    check_learned(as_json("friction", path), friction, gain)
    _, rows = lines("friction", path)
    each = [
        [str(place), told_k(k), f"{kj:.1f} kJ/kg"]
        for place, (k, kj) in enumerate(zip(friction.each, gain.each, strict=True), 1)
    ]
    mean = ["mean", told_k(friction.mean), f"{gain.mean:.1f} kJ/kg"]
    assert [cells(row) for row in rows] == [
        *each,
        mean,
        ["spread (sd)", told_k(friction.sd), f"{gain.sd:.1f} kJ/kg"],
    ]


def test_friction_of_the_demo_day():
    friction_k, gain = demo_learned()
    document = as_json("friction", DEMO)
    assert document["friction_k"] == {"mean": friction_k, "sd": None, "each": [friction_k]}
    assert document["net_gain_kj_per_kg"] == gain.to_dict()
    next_time = f"Next time: libferment water ... --net-gain {gain.mean:.1f} --minutes 7"
    assert lines("friction", DEMO)[0].endswith(f"{HOLDS_IN.format('warm and cold rooms')}{next_time}")
    # A batch given by options counts before those of the file; the rest of it is today's.
    other = as_json("friction", BY_HAND, "--dough", "24C", "--water", "30C")
    assert other["friction_k"]["each"] == [lf.friction_from_batch(dough_c=24, flour_c=18.5, room_c=20, water_c=30)]
    mix = by_hand_mix().replace(water_c=30)
    assert other["net_gain_kj_per_kg"]["each"] == [lf.net_gain_from_batch(mix, 24)]


def test_a_batch_of_options_has_all_that_is_measured_today(write):
    today = {"flour": "19C", "preferment": "8C", "bowl": "35C", "milk": "5C", "egg": "6C", "butter": "12C"}
    day = {
        "today": {"room": "20C", "tap": "9C", **today},
        "dough": {"flour_g": 800, "water_percent": 50, "milk_percent": 10, "egg_percent": 5, "butter_percent": 5},
        "bowl": {"material": "steel", "mass_g": 900},
        "preferment": {"flour_g": 100, "water_g": 90},
        "mixing": {"method": "hand", "rest": "20min"},
    }
    path = write("".join(
        f"[{table}]\n" + "".join(f"{key} = {json.dumps(value)}\n" for key, value in entries.items())
        for table, entries in day.items()
    ))  # fmt: skip
    batch = {"dough": "24C", "water": "30C", "room": "20C", **today, "rest": "20min"}
    check_asked(["friction", path, "--dough", "24C", "--water", "30C"], "mixing", {**day, "batch": [batch]})


HEATED = {"dough": {"flour_g": 2000}, "batch": [{"dough": "25.2C", "water": "27C", "flour": "20C", "room": "21C"}]}
HEATED |= {"today": {"flour": "20C", "room": "21C"}}


@pytest.mark.parametrize(
    ("options", "changes", "of_the_batch"),
    [
        (["--bowl", "glass", "--bowl-g", "3kg", "--room", "12C"],
         {"bowl": {"material": "glass", "mass_g": 3000}, "today": {"room": "12C"}}, {"room": "12C"}),
        (["--flour", "18C"], {"today": {"flour": "18C"}}, {"flour": "18C"}),
        (["--rest", "40min"], {"mixing": {"rest": "40min"}}, {"rest": "40min"}),
        (["--water-g", "1.6kg"], {"dough": {"water": "1.6kg"}}, {}),
        (["--mixing", "spiral", "--minutes", "9", "--room", "10C"],
         {"mixing": {"method": "spiral", "minutes": 9}, "today": {"room": "10C"}}, {"room": "10C"}),
        (["--preferment-g", "500g", "--preferment", "26C"],
         {"preferment": {"flour_g": 250, "water_g": 250}, "today": {"preferment": "26C"}}, {"preferment": "26C"}),
        (["--preferment-g", "500g"], {"preferment": {"flour_g": 250, "water_g": 250}}, {}),
    ],
)  # fmt: skip
def test_every_option_of_the_friction_counts(options, changes, of_the_batch):
    """What is measured of today's dough is the batch's."""
    day = day_with(HEATED, changes)
    day["batch"][0] |= of_the_batch
    check_asked([*BATCH, "--flour-g", "2kg", *options], "mixing", day)
    assert as_json(*BATCH, "--flour-g", "2kg", *options) != as_json(*BATCH, "--flour-g", "2kg")


def test_the_flour_of_one_batch_has_the_rooms_temperature_if_it_is_not_given():
    batch = [*BATCH[:5], *BATCH[7:]]
    assert as_json(*batch) == as_json(*batch, "--flour", "21C") != as_json(*batch, "--flour", "20C")


def test_the_batches_of_a_file_know_nothing_of_todays_temperatures(write):
    """What a batch does not name had the room's temperature of that day, and no rest."""
    tables = "[dough]\nflour_g = 800\n[preferment]\nflour_g = 100\nwater_g = 90\n" + batch_tables(BATCHES[:1])
    alone = as_json("friction", write(tables))
    options = ["--room", "9C", "--flour", "8C", "--preferment", "7C", "--rest", "1h"]
    assert as_json("friction", write(tables), *options) == alone


@pytest.mark.parametrize("mixing", ["", f"{HAND}minutes = 20\n"])
def test_options_say_how_the_batches_of_a_file_were_mixed(write, mixing):
    """The same as if the file did; but not what a batch says of itself."""
    tables = batch_tables(COLD_BATCHES[:1]) + "minutes = 15\n" + batch_tables(COLD_BATCHES[1:])
    said = as_json("friction", write('[mixing]\nmethod = "spiral"\nminutes = 9\n' + tables))
    assert as_json("friction", write(mixing + tables), "--mixing", "spiral", "--minutes", "9") == said
    assert as_json("friction", write(mixing + tables)) != said
    if mixing:
        assert as_json("friction", write(mixing + tables), "--minutes", "9") == said


def test_next_time_is_the_next_plan(write):
    """The options it prints, given to the day, ask for the water that its batches ask for."""
    without = Path(DEMO).read_text(encoding="utf-8")
    without = without[: without.index("[[batch]]")] + without[without.index("[[stage]]") :]
    text, _ = lines("friction", DEMO)
    options = re.search(r"Next time: libferment water \.\.\. (--net-gain [\d.]+ --minutes \d+)", text)[1].split()
    next_c = as_json("water", write(without), *options)["water_c"]
    assert next_c == pytest.approx(as_json("water", DEMO)["water_c"], abs=0.06)  # printed to 0.1 kJ/kg


def test_a_net_gain_that_was_found_gives_the_batch_again():
    """What `friction` says, given to `water`, asks for the water of that batch."""
    found = as_json(*BATCH)
    gain, friction_k = found["net_gain_kj_per_kg"]["mean"], found["friction_k"]["mean"]
    arguments = ["water", "--desired", "25.2C", "--flour", "20C", "--room", "21C", "--net-gain", f"{gain:.12f}"]
    document = as_json(*arguments, "--friction", f"{friction_k:.12f}K")
    assert document["water_c"] == pytest.approx(27, abs=1e-9)
    assert document["factor_rule_c"] == pytest.approx(27, abs=1e-9)


@pytest.mark.parametrize(("water_c", "unusual"), [(13.6, True), (14, False), (27, False), (30.8, False), (31.2, True)])
def test_a_net_gain_that_is_unusual_is_cautioned_of(write, water_c, unusual):
    looks = "look for a mistyped temperature or a missing bowl."
    caution = f"caution: a net gain outside −3 to 25 kJ/kg is unusual; {looks}"
    batch = {**BATCHES[0], "water": water_c}
    (gain,) = as_json("friction", write(batch_tables([batch])))["net_gain_kj_per_kg"]["each"]
    assert (-3 <= gain <= 25) == (not unusual)
    assert abs(gain - (25 if gain > 10 else -3)) < 1 or water_c == 27  # near the bounds
    for batches in ([batch], [BATCHES[0], batch, BATCHES[2]]):  # one of several is enough
        assert (caution in lines("friction", write(batch_tables(batches)))[0]) == unusual


# ---- one rise --------------------------------------------------------------------------------------------------------


def test_hours_to_a_rise():
    numbers = {"dough_c": 18, "yeast_percent": 0.6}
    document = check_asked(["rise", "--rise", "100", *ONE], "rise", rise_percent=100, **numbers)
    hours = lf.hours_to_rise(100, **numbers)
    assert document["hours"] == hours
    text = answer("rise", "--rise", "100", *ONE)
    assert text.startswith(f"{told_h(hours)} to a rise of 100 % with the dough at 18.0 °C (64 °F)\n")
    explained = lf.explain(100, **numbers)
    rows = [cells(row) for row in text.splitlines() if "│" in row]
    assert rows == [
        ["reference dough", "", "", told_h(explained.reference_h)],
        ["yeast", "1", "0.6", f"{explained.factors['yeast']:.2f}"],
        ["temperature", "25", "18", f"{explained.factors['temperature']:.2f}"],
    ]
    far = answer("rise", "--rise", "340", "--dough", "18C", "--yeast-percent", "1")
    assert far.startswith(f"{told_h(lf.hours_to_rise(340, dough_c=18, yeast_percent=1))} to a rise of 340 % with the")


def test_rise_after_a_time():
    rise_percent = lf.rise_after(1.5, dough_c=18, yeast_percent=0.6)
    for time in ("90min", "1.5h", "1,5h"):
        document = as_json("rise", "--after", time, *ONE)
        assert (document["hours"], document["rise_percent"]) == (1.5, rise_percent)
    text = answer("rise", "--after", "90min", *ONE)
    assert text == f"a rise of {rise_percent:.0f} % after 1 h 30 min with the dough at 18.0 °C (64 °F)\n"
    assert as_json("rise", "--after", "0h", *ONE)["rise_percent"] == 0
    assert answer("rise", "--after", "0h", *ONE).startswith("a rise of 0 % after 0 min")


@pytest.mark.parametrize(
    ("options", "member"),
    [
        (["--yeast", "active_dry"], {"yeast": "active_dry"}),
        (["--yeast", "Active dry"], {"yeast": "active_dry"}),
        (["--yeast-percent", "0,7%"], {"yeast_percent": 0.7}),
        (["--salt-percent", "1.5"], {"salt_percent": 1.5}),
        (["--water-percent", "75"], {"water_percent": 75}),
        (["--sugar-percent", "6"], {"sugar_percent": 6}),
        (["--gluten-percent", "2"], {"gluten_percent": 2}),
        (["--altitude-m", "1200"], {"altitude_m": 1200}),
        (["--altitude-m", "500ft"], {"altitude": "500ft"}),
        (["--dough", "70F"], {"dough": "70F", "dough_c": None}),
    ],
)
def test_every_option_of_the_dough_counts(options, member):
    numbers = {"dough_c": 18, "yeast_percent": 0.6, **member}
    numbers = {key: value for key, value in numbers.items() if value is not None}
    for asked, key, value in (("--rise", "rise_percent", 320), ("--after", "time_h", 9)):
        arguments = ["rise", asked, f"{value}h" if key == "time_h" else str(value), *ONE]
        check_asked([*arguments, *options], "rise", **{key: value}, **numbers)
        assert as_json(*arguments, *options) != as_json(*arguments)
        assert answer(*arguments, *options) != answer(*arguments)


@pytest.mark.parametrize(
    ("options", "codes"),
    [
        (["--rise", "100", *ONE], []),
        (["--rise", "100", "--dough", "40C", "--yeast-percent", "0.02", "--sugar-percent", "12"],
         ["dough_warm", "yeast_very_low", "sugar_high"]),
        (["--rise", "330", *ONE], ["rise_over_proofed"]),
        (["--after", "200h", *ONE], ["rise_over_proofed"]),
        (["--after", "9h", "--dough", "24C", "--refrigerator", "7C", "--piece", "ball", "--yeast-percent", "0.4"],
         ["refrigerator_warm"]),
        ([BY_HAND], []),
        ([BY_HAND, "--dough", "40C"], ["dough_warm"]),
    ],
)  # fmt: skip
def test_notices_of_a_rise(options, codes):
    check_notices(["rise", *options], codes)


# ---- a piece in a place ----------------------------------------------------------------------------------------------


def test_a_rise_in_a_room_colder_than_the_dough():
    arguments = ["rise", "--rise", "100", *PIECE]
    flour_g = 1500 / (1 + 0.65 + 0.02 + 0.006)
    mix = lf.Mix(flour_g=flour_g, water_g=0.65 * flour_g, salt_g=0.02 * flour_g, instant_g=0.006 * flour_g, dough_c=25)
    stage = lf.Stage("rise", surroundings=lf.Surroundings.room(16), piece=lf.Piece.tub(), until_rise_percent=100)
    timeline = lf.simulate(lf.Process([mix, stage]))
    (result,) = timeline.stages
    (shown,) = as_json(*arguments)["stages"]
    for name in ("end_h", "end_c", "rise_percent", "be_back_by_h", "time_constant_h"):
        assert shown[name] == pytest.approx(getattr(result, name), rel=1e-9)
    text, rows = lines(*arguments)
    goes = f"the dough goes from 25.0 °C (77 °F) to {told(result.end_c)}."
    held_h = lf.hours_to_rise(100, dough_c=25, yeast_percent=0.6)
    early = f"would take {told_h(held_h)}: that would be {told_h(result.end_h - held_h)} too early."
    assert text.startswith(
        f"{told_h(result.end_h)} to a rise of 100 %; {goes} A dough that stayed at 25.0 °C (77 °F) {early} "
        f"Be back by {told_h(result.be_back_by_h)}: from then on it has risen too far. "
    )
    third = told_h(result.time_constant_h * math.log(3))
    assert f'in stage "rise" the difference falls to a third in {third}, reckoned from weight and shape' in text
    row = round(60 * 1.0)
    assert timeline.time_h[row] == 1
    at_one = [f"{timeline.mean_c[row]:.1f} °C", f"{timeline.rise_percent[row]:.0f} %"]
    assert cells(rows[2]) == ["1 h 00 min", "16.0 °C", *at_one]
    assert cells(rows[-1]) == [told_h(result.end_h), "16.0 °C", f"{result.end_c:.1f} °C", "100 %"]
    assert "Assumed: 65 % water (--water-percent), 2 % salt (--salt-percent)." in text
    assert "Reckoned for" not in text  # the weight was given
    guessed = "Reckoned for the dough of 500 g of flour; give --piece-g for yours."
    assert guessed in lines("rise", "--rise", "100", *ONE, "--room", "16C")[0]


BASE = {"dough": {"measured_c": 25, "yeast_percent": 0.6}}


@pytest.mark.parametrize(
    ("options", "stage", "dough"),
    [
        (["--room", "16C"], {"room": "16C", "piece": "tub"}, {}),
        (["--room", "60F"], {"room": "60F", "piece": "tub"}, {}),
        (["--proof-box", "30C"], {"proof_box": "30C", "piece": "tub"}, {}),
        (["--refrigerator", "4C"], {"refrigerator": "4C", "piece": "tub"}, {}),
        (["--room", "16C", "--piece", "Ball"], {"room": "16C", "piece": "ball"}, {}),
        (["--room", "16C", "--piece", "oblong", "--cover", "cloth"],
         {"room": "16C", "piece": "oblong", "cover": "cloth"}, {}),
        (["--room", "16C", "--cover", "film"], {"room": "16C", "piece": "tub", "cover": "film"}, {}),
        (["--room", "16C", "--piece-g", "2lb"], {"room": "16C", "piece": "tub"},
         {"pieces": 1, "piece_g": lf.grams(32)}),
        (["--room", "16C", "--altitude-m", "900"], {"room": "16C", "piece": "tub"}, {"altitude_m": 900}),
        (["--room", "16C", "--yeast", "compressed", "--salt-percent", "1"], {"room": "16C", "piece": "tub"},
         {"yeast": "compressed", "salt_percent": 1}),
    ],
)  # fmt: skip
def test_places_and_pieces_count(options, stage, dough):
    arguments = ["--dough", "25C", "--yeast-percent", "0.6", *options]
    for asked, end in ((["--rise", "100"], {"until_rise_percent": 100}), (["--after", "3h"], {"until_h": 3})):
        day = day_with(BASE, {"dough": dough, "stage": [{"name": "rise", **stage, **end}]})
        check_asked(["rise", *asked, *arguments], "simulate", day, every_min=1)
    assert answer("rise", "--rise", "100", *arguments) != answer("rise", "--rise", "100", *ONE, "--room", "20C")


def test_temperature_logs_on_the_command_line(tmp_path):
    room = tmp_path / "room.csv"
    room.write_text("time_h,temperature_c\n0,16\n20,16\n", encoding="utf-8")
    options = ("--rise", "100", "--yeast-percent", "0.6", "--dough", "25C")
    (by_log,) = as_json("rise", *options, "--room-log", str(room))["stages"]
    (by_number,) = as_json("rise", *options, "--room", "16C")["stages"]
    assert by_log["end_h"] == pytest.approx(by_number["end_h"], rel=1e-9)
    probe = tmp_path / "probe.csv"
    probe.write_text("hours;temp °F\n0;77\n20;77\n", encoding="utf-8")
    held = ["rise", "--rise", "100", "--yeast-percent", "0.6", "--dough-log", str(probe)]
    (stage,) = as_json(*held)["stages"]
    assert stage["end_h"] == pytest.approx(lf.hours_to_rise(100, dough_c=25, yeast_percent=0.6), rel=1e-9)
    assert "; the dough stays at 25.0 °C (77 °F)." in answer(*held)
    room.write_text("time_h,temperature_c\n0,16\n2,17\n1,18\n", encoding="utf-8")
    text = refusal(2, "rise", *options, "--room-log", str(room))
    assert 'room.csv: line 4: the time "1" goes back from "2"' in text
    assert "there is no file" in refusal(2, "rise", *options, "--room-log", str(tmp_path / "none.csv"))


def test_a_log_beside_the_day_file(write):
    day = '[dough]\nyeast_percent = 0.7\n[water]\ndesired = "24C"\n[[stage]]\nname = "bulk"\nuntil_h = 3\n'
    path = write(day + 'room_log = "night.csv"\n')
    beside = Path(path).parent.joinpath("night.csv")
    assert 'day.toml: [[stage]] "bulk" room_log: there is no file' in refusal(2, "rise", path)
    beside.write_text("time,°C\n0,16\n9,16\n", encoding="utf-8")
    (by_log,) = as_json("rise", path)["stages"]
    (by_number,) = as_json("rise", write(day + 'room = "16C"\n'))["stages"]
    assert by_log["rise_percent"] == pytest.approx(by_number["rise_percent"], rel=1e-9)


# ---- clock times -----------------------------------------------------------------------------------------------------


def clock(text):
    """Hours of the day of a clock such as 18:30 or +1 7:30."""
    day, _, time = text.rpartition(" ")
    hours, minutes = time.split(":")
    return 24 * int(day or 0) + int(hours) + int(minutes) / 60


A_MINUTE = pytest.approx(0, abs=0.51 / 60)


@pytest.mark.parametrize(
    ("option", "mixed_h"),
    [(["--mixed", "8:30"], 8.5), (["--start", "8:00"], 8 + 57 / 60), (["--start", "20:00", "--mixed", "7:00"], 31)],
)
def test_a_day_with_a_clock_is_told_in_clock_times(option, mixed_h):
    """Counted from the day's 0:00; a rest of 45 min and 12 min of mixing stand before the first stage."""
    hours = as_json("rise", BY_HAND)
    document = check_asked(
        ["rise", BY_HAND, *option],
        "simulate",
        {**content(BY_HAND), **{option[i][2:]: option[i + 1] for i in range(0, len(option), 2)}},
        every_min=0,
    )
    assert (hours["clock"], document["clock"]) == (False, True)
    rows = [cells(row) for row in lines("rise", BY_HAND, *option)[1]]
    for row, stage, counted in zip(rows, document["stages"], hours["stages"], strict=True):
        assert stage["end_h"] == pytest.approx(mixed_h + counted["end_h"], rel=1e-9)
        assert row[3] == told_h(counted["end_h"] - counted["start_h"])  # how long is no clock
        assert clock(row[4]) - stage["end_h"] == A_MINUTE
        assert clock(row[5]) - stage["be_back_by_h"] == A_MINUTE
    text = lines("rise", BY_HAND, *option)[0]
    assert "Be back by: from then on the dough has risen too far." in text
    assert "Counted from the end of mixing" not in text


@pytest.mark.parametrize("where", [["--room", "16C"], []])
def test_one_rise_with_a_clock(where):
    arguments = ["rise", "--rise", "100", *ONE, *where]
    (counted,) = as_json(*arguments, "--start", "0:00")["stages"]
    (stage,) = as_json(*arguments, "--mixed", "21:15")["stages"]
    assert stage["end_h"] == pytest.approx(21.25 + counted["end_h"], rel=1e-9)
    text, rows = lines(*arguments, "--mixed", "21:15")
    assert cells(rows[0])[0] == "21:15"
    assert clock(cells(rows[-1])[0]) - stage["end_h"] == A_MINUTE
    assert cells(rows[-1])[0].startswith("+1 0:")
    assert clock(re.search(r"Be back by (\+1 \d+:\d+): from then", text)[1]) - stage["be_back_by_h"] == A_MINUTE
    assert text.startswith(f"{told_h(counted['end_h'])} to a rise of 100 %; the dough ")


# ---- until when ------------------------------------------------------------------------------------------------------


def test_until_shows_the_window_and_what_to_choose():
    arguments = ["rise", DEMO, "--until", "17:00", "--mixed", "8:30", "--scale", "0.1g"]
    day = {**content(DEMO), "mixed": "8:30"}
    document = as_json(*arguments)
    assert list(document) == ["ready_h", "forecast", "choices"]
    assert document["ready_h"] == 17
    forecast = lf.ask({"ask": "forecast", "day": day, "every_draw": True})
    assert document["forecast"] == forecast
    choices = document["choices"]
    wanted = {"ask": "choose", "day": day, "stage": "final proof", "ready_h": 17}
    assert choices == {
        what: lf.ask({**wanted, "what": what, **({"scale_g": 0.1} if what == "yeast" else {})})
        for what in ("yeast", "room", "start")
    }
    text, rows = lines(*arguments)
    shown = [cells(row) for row in rows]
    for row, stage in zip(shown[:2], forecast["stages"], strict=True):
        name, first, back, ready, between = row
        assert name == stage["name"]
        early, late = between.split(" and ")
        told_hours = [clock(each) for each in (ready, early, late, first, back)]
        hours = [stage["ready_h"], *stage["likely_h"], stage["look_first_h"], stage["be_back_by_h"]]
        assert told_hours == pytest.approx(hours, abs=0.51 / 60)
    in_time = 100 * lf.StageForecast.from_dict(forecast["stages"][1]).share_ready(17)
    assert f"At 17:00 the final proof is ready, and not yet too far, in {in_time:.0f} of 100 doughs." in text
    assert "for the final proof to be ready at 17:00" in answer(*arguments)
    yeast, room, start = shown[2:]
    later_h = choices["yeast"]["rounded_ready_h"] - choices["yeast"]["ready_h"]
    late = f"{told_h(abs(later_h))} {'later' if later_h > 0 else 'sooner'}"
    assert yeast == ["yeast", f"{choices['yeast']['rounded']:.1f} g ({late})", "8.8 g"]
    assert room == ["room", f"{choices['room']['value']:.1f} °C", "14.0 °C"]
    assert (start[0], clock(start[2])) == ("start", pytest.approx(8.5 - 7 / 60, abs=0.51 / 60))
    assert clock(start[1]) - choices["start"]["value"] == A_MINUTE
    late_evening = [*UNTIL[:2], "--until", "23:00", *UNTIL[4:6], "--choose", "yeast", "--scale", "1g"]
    coarse = as_json(*late_evening)["choices"]["yeast"]
    assert coarse["rounded"] == 4 > coarse["value"]
    sooner = told_h(coarse["ready_h"] - coarse["rounded_ready_h"])
    assert re.search(rf"yeast +│ 4 g \({sooner} sooner\) │", answer(*late_evening))
    assert re.search(r"yeast +│ +6\.\d g │", answer(*arguments[:-2], "--choose", "yeast", "--scale", "0g")) is None
    for notice in forecast["notices"]:
        assert f"note: {notice['text']}" in text


def test_until_in_hours_for_one_rise():
    options = ["rise", "--rise", "100", *PIECE]
    document = as_json(*options, "--until", "5h", "--choose", "Yeast", "--choose", "refrigerate")
    assert list(document["choices"]) == ["yeast", "refrigerate"]
    assert document["choices"]["yeast"]["ready_h"] == pytest.approx(5, abs=1e-6)
    text, rows = lines(*options, "--until", "300min")
    # All are ready by then, and nearly all of them have risen too far.
    in_time = 100 * lf.StageForecast.from_dict(document["forecast"]["stages"][0]).share_ready(5)
    assert in_time < 20
    assert f"At 5 h 00 min the rise is ready, and not yet too far, in {in_time:.0f} of 100 doughs." in text
    sooner = answer(*options, "--until", "1h", "--choose", "start")
    assert re.search(r"start +│ +\d+ min sooner", sooner)
    (start,) = (cells(row) for row in rows if "start" in row)
    later_h = 5 - document["forecast"]["stages"][0]["ready_h"]
    assert start[1] == f"{told_h(later_h)} later"
    assert "Assumed: 65 % water (--water-percent), 2 % salt (--salt-percent)." in text


@pytest.mark.parametrize(
    ("options", "choice", "words"),
    [
        (["--rise", "100", *ONE, "--until", "6h"], "room", "is in a room of one temperature"),
        (["--rise", "100", *PIECE, "--until", "20min"], "yeast", "within reach is "),
        ([DEMO, "--until", "20min"], "yeast", "within reach is "),
        (["--after", "4h", *ONE, "--until", "5h"], "yeast", "ready at 4 h 00 min whatever is chosen"),
    ],
)
def test_what_cannot_be_chosen_says_why(options, choice, words):
    """It is no failure: the other choices may do."""
    document = as_json("rise", *options, "--choose", choice)
    assert list(document["choices"][choice]) == ["error"]
    (row,) = (cells(row) for row in lines("rise", *options, "--choose", choice)[1] if row.startswith(choice))
    assert row[1].startswith("none: ")
    assert words in row[1]
    assert "toml" not in row[1]


def test_notices_of_the_choices_are_told_once():
    arguments = ["rise", DEMO, "--until", "30h", "--choose", "yeast", "--choose", "room"]
    document = as_json(*arguments)
    notices = [
        notice for answer in (document["forecast"], *document["choices"].values()) for notice in answer["notices"]
    ]
    assert {"nothing_learned", "yeast_very_low", "dough_cold"} == {notice["code"] for notice in notices}
    text, _ = lines(*arguments)
    for notice in notices:
        assert text.count(f"{notice['severity'].replace('info', 'note')}: {notice['text']}") == 1


def test_the_stage_that_is_asked_for():
    document = as_json("rise", DEMO, "--until", "7h", "--stage", "bulk", "--choose", "start")
    assert document["choices"]["start"] == lf.ask(
        {"ask": "choose", "what": "start", "stage": "bulk", "ready_h": 7, "day": content(DEMO)}
    )
    text, _ = lines("rise", DEMO, "--until", "7h", "--stage", "bulk")
    assert "At 7 h 00 min the bulk is ready, and not yet too far, in " in text
    night = ["rise", DEMO, "--until", "+1 7:30", "--mixed", "20:00", "--choose", "refrigerate"]
    day = {**content(DEMO), "mixed": "20:00"}
    asked = {"ask": "choose", "what": "refrigerate", "ready_h": 31.5, "day": day}
    wanted = lf.ask({**asked, "stage": "final proof", "moved": "final proof"})
    assert as_json(*night)["choices"] == {"refrigerate": wanted}
    into = answer(*night)
    assert re.search(r"into the refrigerator +│ +(\+1 )?\d+:\d\d", into)
    assert "to be ready at +1 7:30" in into
    # without the day's number it is the first one after the mixing
    assert as_json("rise", DEMO, "--until", "7:30", "--mixed", "20:00", "--choose", "start")["ready_h"] == 31.5
    assert as_json("rise", DEMO, "--until", "9h", "--mixed", "8:30", "--choose", "start")["ready_h"] == 17.5


# ---- a day of stages -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("path", "names"), [(DEMO, ["bulk", "final proof"]), (BY_HAND, ["bulk", "bench rest", "final proof"])]
)
def test_the_stages_of_a_day(path, names):
    document = as_json("rise", path)
    timeline = lf.simulate(lf.process_of(lf.read_day(path)))
    text, rows = lines("rise", path)
    assert [stage["name"] for stage in document["stages"]] == names
    for row, shown, stage in zip(rows, document["stages"], timeline.stages, strict=True):
        assert shown["end_h"] == pytest.approx(stage.end_h, rel=1e-9)
        assert cells(row) == [
            stage.name,
            f"{stage.start_c:.1f} → {stage.end_c:.1f} °C",
            f"{stage.rise_percent:.0f} %",
            *map(told_h, (stage.end_h - stage.start_h, stage.end_h, stage.be_back_by_h)),
        ]
    assert "Counted from the end of mixing; be back by: from then on the dough has risen too far." in text
    for assumed in document["assumed"]:
        assert assumed["text"][1:] in text
    assert ('Stage "bulk" is in today\'s room, 20 °C: it has a piece and no place.' in text) == (path == BY_HAND)


@pytest.mark.parametrize(
    ("options", "changes"),
    [
        (["--dough", "20C"], {"dough": {"measured": "20C"}}),
        (["--yeast-percent", "0.3", "--yeast", "active_dry"],
         {"dough": {"yeast_percent": 0.3, "yeast": "active_dry"}}),
        (["--salt-percent", "1"], {"dough": {"salt_percent": 1}}),
        (["--water-percent", "65"], {"dough": {"water_percent": 65}}),
        (["--sugar-percent", "3"], {"dough": {"sugar_percent": 3}}),
        (["--gluten-percent", "3"], {"dough": {"gluten_percent": 3}}),
        (["--altitude-m", "1500"], {"dough": {"altitude_m": 1500}}),
    ],
)  # fmt: skip
def test_options_of_the_rise_count_before_the_day_file(options, changes):
    day = day_with(content(DEMO), changes)
    check_asked(["rise", DEMO, *options], "simulate", day, every_min=0)
    assert answer("rise", DEMO, *options) != answer("rise", DEMO)
    asked = ["rise", DEMO, *options, "--until", "9h", "--choose", "start"]
    assert as_json(*asked)["forecast"] == lf.ask({"ask": "forecast", "day": day, "every_draw": True})


def test_options_replace_the_other_way_to_write_an_amount(write):
    """A file may have grams, or a text with a unit, where an option has percent or a number."""
    stage = '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 50\n'
    weights = 'flour = "1kg"\nyeast_g = 7\nsalt = "18g"\nwater_g = 650\nsugar_g = 30\ngluten_g = 9\naltitude = "900ft"'
    path = write(f"[dough]\n{weights}\n{stage}")
    dough = {"yeast_percent": 0.5, "salt_percent": 2, "water_percent": 70, "sugar_percent": 4, "gluten_percent": 1}
    dough |= {"altitude_m": 0}
    options = [word for name, value in dough.items() for word in (f"--{name.replace('_', '-')}", str(value))]
    dough |= {"flour_g": 1000}
    bulk = {"name": "bulk", "dough_c": 23, "until_rise_percent": 50}
    check_asked(["rise", path, *options], "simulate", {"dough": dough, "stage": [bulk]}, every_min=0)


def test_a_stage_that_is_ready_before_a_fold_says_so(write):
    bulk = '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 50\nfolds_h = [0.1, 0.2, 5, 6]\n'
    path = write(f"[dough]\nyeast_percent = 0.7\n{bulk}")
    assert "bulk: ready before fold 3 of 4; leave the rest out." in answer("rise", path)
    assert "leave the rest out" not in answer("rise", BY_HAND)


def test_what_a_rise_takes_for_granted(write):
    held = '[[stage]]\nname = "bulk"\nuntil_h = 2\n[[stage]]\nname = "proof"\nuntil_h = 1\n'
    text, _ = lines("rise", write(f"[dough]\nyeast_percent = 0.7\nmeasured = '24C'\n{held}"))
    assert "Assumed: 500 g of flour, 65 % water (--water-percent), 2 % salt (--salt-percent). " in text
    assert 'Stage "bulk" is held at 24 °C: it has no place.' in text
    assert 'Stage "proof" is where "bulk" is: it has no place of its own.' in text
    assert "bowl" not in text  # however warm it was, the dough has been measured
    poured = "[today]\nroom = '20C'\n[water]\npoured = '30C'\n[dough]\nyeast_percent = 0.7\n"
    stage = '[[stage]]\nname = "bulk"\nroom = "20C"\npiece = "tub"\nuntil_h = 2\n'
    assert ", no bowl." in lines("rise", write(poured + stage))[0]


def test_what_takes_more_than_two_days_is_told_so_of_a_rise_alone(write):
    """A stage that ends by time and cannot be over-proofed says nothing of it."""
    cold = "[dough]\nyeast_percent = 0.02\nmeasured = '4C'\n[[stage]]\nname = 'cold'\ndough = '3C'\n"
    by_rise = write(cold + "until_rise_percent = 5\nacceptable_rise = ['3%', '300%']\n")
    for asked in (["rise", by_rise], ["rise", by_rise, "--until", "90h", "--choose", "start"]):
        assert any("after more than two days" in row for row in lines(*asked)[1])
    by_time = write(cold + "until_h = 3\n")
    for asked in (["rise", by_time], ["rise", by_time, "--until", "90h", "--choose", "start"]):
        assert "two days" not in answer(*asked)


@pytest.mark.parametrize(
    ("dough", "perishable"),
    [("milk_percent = 5", True), ("perishable = true", True), ("milk_percent = 0", False), ("oil_percent = 5", False)],
)
def test_perishable_dough_is_warned_of(write, dough, perishable):
    stage = '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_h = 5\n'
    path = write(f"[dough]\nyeast_percent = 0.2\nwater_percent = 60\n{dough}\n{stage}")
    check_notices(["rise", path], ["perishable_held"] if perishable else [])


# ---- refusals --------------------------------------------------------------------------------------------------------

HEAVY = [*WATER, "--flour-g", "500"]
RISE = ["rise", "--rise", "100", *ONE]
SAID = {
    "temperature": [("999C", "999 °C is outside "), ("20", "20 has no unit; write for example 18.5C or 65F"),
                    ("warm", 'the text "warm" is not a number with a unit; write for example 18.5C or 65F')],
    "difference": [("99K", "99 K is outside −10 to 25 K; friction is a difference of temperatures, not a temperature"),
                   ("30C", "30 K is outside −10 to 25 K; if you meant a difference of 30 °F, write 30F; friction is"),
                   ("3", "3 has no unit; write for example 6K or 11F")],
    "weight": [("5ml", '"5ml" is no weight; write for example 500g or 18oz'), ("-5", "−5 g is outside "),
               ("1,000", 'the text "1,000" may be read in two ways: write it without a comma'),
               ("70%", '"70%" is no weight'), ("nan", '"nan" is no weight')],
    "percent": [("9999", "9999 % is outside "), ("0.6g", '"0.6g" is not a number; write the number alone'),
                ("nan", '"nan" is not a number')],
    "time": [("30", "30 has no unit; write for example 2.5h or 90min"), ("2000h", "2000 h is outside 0 to ")],
    "name": [("unheard", '"unheard" is unknown; known: '), ("5", '"5" is unknown; known: ')],
    "clock": [("8", '"8" is no time of day; write 8:15 or 18:30'), ("25:00", '"25:00" is no time of day')],
    "number": [("9999", "9999 "), ("much", "number")],
}  # fmt: skip
"""For each kind of option, what is typed wrong and what is said to it."""

IN_THE_BOWL = {"flour": "temperature", "room": "temperature", "preferment": "temperature", "preferment-g": "weight",
               "flour-g": "weight", "water-g": "weight", "bowl": "name", "bowl-g": "weight", "mixing": "name",
               "minutes": "number", "rest": "time"}  # fmt: skip
IN_THE_DOUGH = {"dough": "temperature", "yeast-percent": "percent", "yeast": "name", "salt-percent": "percent",
                "water-percent": "percent", "sugar-percent": "percent", "gluten-percent": "percent"}  # fmt: skip
FULL = [*WATER, "--flour-g", "500", "--bowl", "steel", "--bowl-g", "900", "--preferment", "20C", "--preferment-g", "90",
        "--friction", "6K", "--yeast-water", "38C", "--yeast-water-g", "50"]  # fmt: skip
KINDS = [
    (FULL, IN_THE_BOWL | {"desired": "temperature", "tap": "temperature", "ice": "temperature",
                          "friction": "difference", "friction-at": "temperature", "net-gain": "number",
                          "yeast-water": "temperature", "yeast-water-g": "weight"}),
    ([*BATCH, *FULL[5:13]], IN_THE_BOWL | {"dough": "temperature", "water": "temperature"}),
    (RISE, IN_THE_DOUGH | {"rise": "percent", "altitude-m": "number", "start": "clock", "mixed": "clock"}),
    (["rise", "--after", "2h", *ONE], {"after": "time"}),
    (["rise", "--rise", "100", *PIECE], IN_THE_DOUGH | {"rise": "percent", "room": "temperature", "piece": "name",
                                                       "piece-g": "weight", "cover": "name", "start": "clock"}),
    ([*RISE, "--until", "5h"], IN_THE_DOUGH | {"until": "time", "scale": "weight"}),
    (["rise", "--rise", "100", *ONE, "--refrigerator", "4C"], {"refrigerator": "temperature"}),
    (["rise", "--rise", "100", *ONE, "--proof-box", "28C"], {"proof-box": "temperature"}),
]  # fmt: skip


@pytest.mark.parametrize(
    ("arguments", "option", "typed", "words"),
    [
        (arguments, option, typed, words)
        for arguments, kinds in KINDS
        for option, kind in kinds.items()
        for typed, words in SAID[kind]
    ],
)
def test_every_option_names_itself_where_it_is_wrong(arguments, option, typed, words):
    """Which option, which value, which unit, which range, what to do; beside a day file, too."""
    asked = [*arguments, f"--{option}", typed]
    message = refusal(2, *asked)
    assert message.startswith(f"error: --{option}: ")
    assert words in message
    assert refusal(2, *asked, "--json") == message
    if arguments[0] != "rise" or option in (*IN_THE_DOUGH, "start", "mixed"):
        of_the_day = arguments[1:] if arguments[0] != "rise" else []
        beside = refusal(2, arguments[0], BY_HAND, *of_the_day, f"--{option}", typed)
        assert beside.startswith(f"error: --{option}: ")
        assert words in beside


BESIDE = "a weight in grams needs the flour's weight beside it; give --flour-g"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        # what was written in one unit and meant in the other
        ([*WATER, "--desired", "78C"], "--desired: desired dough temperature 78 °C is outside 0 to 45 °C; if you meant "
                                       "78 °F, write 78F"),
        ([*WATER, "--tap", "20F"], "°C is outside 0 to 60 °C; if you meant 20 °C, write 20C"),
        ([*WATER, "--friction", "30K"], "if you meant a difference of 30 °F, write 30F; friction is a difference"),
        (["rise", "--rise", "100", "--dough", "-2C", "--yeast-percent", "1"], "--dough: at a dough temperature of −2"),
        # weights
        ([*HEAVY, "--yeast-water", "38C", "--yeast-water-g", "400"], "weigh 400 g, more than all the water, 325 g"),
        ([*HEAVY, "--yeast-water", "38C", "--yeast-water-g", "325"], "there is no main water whose temperature"),
        ([*HEAVY, "--bowl", "steel", "--bowl-g", "1.2"], "it is in grams: 1.2 kg are 1200"),
        (["water", DEMO, "--bowl-g", "0"], "--bowl-g: weight of the bowl 0 g is outside 20 to"),
        ([*HEAVY, "--preferment-g", "1.2kg"], "preferments and gluten hold more flour, 600 g, than all the flour"),
        ([*HEAVY, "--water-g", "100"], "--water-g: water 20 % is outside 40 to 130 %"),
        ([*HEAVY, "--water-g", "1kg"], "--water-g: water poured 200 % is outside 0 to 130 %"),
        ([*HEAVY, "--water-g", "0"], "--water-g: "),
        (["water", DEMO, "--water-g", "3kg"], "--water-g: "),
        # what belongs together, and what does not
        ([*WATER, "--water-g", "350"], f"--water-g: {BESIDE}"),
        ([*WATER, "--bowl", "steel", "--bowl-g", "900"], f"--bowl-g: {BESIDE}"),
        ([*WATER, "--preferment-g", "200"], f"--preferment-g: {BESIDE}"),
        ([*WATER, "--yeast-water", "38C", "--yeast-water-g", "50"], f"--yeast-water-g: {BESIDE}"),
        ([*BATCH, "--water-g", "300"], f"--water-g: {BESIDE}"),
        ([*HEAVY, "--yeast-water", "38C"], "--yeast-water and --yeast-water-g belong together; add --yeast-water-g"),
        ([*HEAVY, "--yeast-water-g", "50"], "--yeast-water and --yeast-water-g belong together; add --yeast-water"),
        ([*HEAVY, "--bowl", "steel"], "belong together; add --bowl-g, such as --bowl-g 1200g"),
        ([*HEAVY, "--bowl-g", "900"], "belong together; add --bowl, such as --bowl ceramic"),
        ([*HEAVY, "--mixing", "hand", "--net-gain", "5"], "give either --mixing or --net-gain"),
        ([*HEAVY, "--minutes", "8"], "--mixing: minutes need a method"),
        ([*WATER, "--friction-at", "21C"], "--friction: a room where a friction was found needs the friction"),
        ([*HEAVY, "--net-gain", "121"], "--net-gain: net mixing gain 121 kJ/kg is outside −30 to 120 kJ/kg; find it "
                                        "from batches: `libferment friction`"),
        ([*HEAVY, "--preferment", "20C"], "--preferment: the preferment has a temperature and no weight"),
        (["water", "--desired", "36C", "--room", "25C", "--friction", "2K", "--friction-at", "5C"],
         "error: net mixing gain worth this friction −63.0595 kJ/kg is outside −30 to 120 kJ/kg; find it from batches"),
        (["water", "--room", "24C", "--flour", "20C"], "--desired: which dough the water is to make is not said"),
        (["water", "--desired", "24C", "--flour", "20C"], "--room: the water's temperature needs the room's; measure"),
        (["friction"], "no batch is logged; write a [[batch]] with dough, water, flour and room, or give --dough, "),
        (["friction", "--flour", "20C", "--room", "20C"], "no batch is logged"),
        (["friction", "--dough", "25C"], "a batch needs both --dough and --water, as measured"),
        (["friction", "--water", "25C"], "a batch needs both --dough and --water, as measured"),
        (["friction", "--dough", "25C", "--water", "25C", "--flour", "20C"], "needs the temperature of the room; give"),
        (["friction", "--dough", "40C", "--water", "10C", "--flour", "20C", "--room", "20C"],
         "error: friction of this batch 70 K is outside −10 to 25 K; one of the temperatures must be wrong"),
        (["rise", "--rise", "100"], "missing --dough and --yeast-percent"),
        (["rise", "--rise", "100", "--room", "16C", "--yeast-percent", "0.6"], "missing --dough"),
        (["rise", "--rise", "100", "--room", "16C", "--dough", "25C"], "missing --yeast-percent"),
        (["rise"], "give a day file, or one of --rise (how far) and --after (how long)"),
        ([*RISE, "--after", "2h"], "one of --rise (how far) and --after (how long)"),
        (["rise", DEMO, "--rise", "100"], "a day file has its own stages"),
        (["rise", DEMO, "--after", "2h"], "a day file has its own stages"),
        (["rise", DEMO, "--room", "16C"], "stand in the day file's stages"),
        ([*RISE, "--room", "16C", "--refrigerator", "4C"], "give one place: --room or --refrigerator"),
        ([*RISE, "--room", "16C", "--piece", "ball", "--cover", "lid"], "only a tub has a lid"),
        ([*RISE, "--piece", "tub"], "a piece needs its place: --room, --refrigerator"),
        ([*RISE, "--dough-log", "x.csv"], "leave --dough out"),
        ([*RISE, "--refrigerator", "-20C"], "the dough leaves −2 to 45 °C"),
        (["rise", DEMO, "--until", "18:00"], "is a clock; say when the mixing ends, too: --mixed 8:15"),
        (["rise", DEMO, "--until", "25:00", "--mixed", "8:00"], '--until: "25:00" is no time of day; write 8:15 or'),
        (["rise", DEMO, "--until", "0h"], "--until: 0h is not after the end of mixing"),
        (["rise", DEMO, "--until", "5h", "--scale", "1C"], '--scale: "1C" is no weight'),
        (["rise", DEMO, "--until", "5h", "--stage", "prof"], 'no stage is named "prof"; known: bulk, final proof'),
        (["rise", DEMO, "--stage", "bulk"], "--stage, --choose and --scale belong to --until"),
        (["rise", DEMO, "--until", "5h", "--choose", "oven"], "'oven' is not one of 'yeast'"),
        # files and commands
        *(([command, "nowhere.toml"], "there is no file nowhere.toml") for command in ("water", "friction", "rise")),
        (["rise", str(ROOT)], "is a directory"),
        (["rise", "--ries", "100"], "No such option"),
        (["bake"], "No such command"),
    ],
)  # fmt: skip
def test_a_bad_input_ends_with_2(arguments, words):
    assert words in refusal(2, *arguments)


@pytest.mark.parametrize(
    ("command", "text", "words"),
    [
        ("rise", "[dough]\nyeast_precent = 1\n", '[dough] yeast_precent: the key "yeast_precent" is unknown'),
        ("rise", "[dogh]\n", 'the key "dogh" is unknown; did you mean dough?'),
        ("rise", "[dough\n", " is not valid TOML: "),
        ("rise", "[dough]\nyeast_percent = '0.7'\n", '[dough] yeast_percent: a number is wanted, got the text "0.7"'),
        ("rise", "[today]\nflour = 20\n", "[today] flour: the number 20 has no unit; write a text, such as"),
        ("rise", "[[stage]]\nname = 'bulk'\nuntil_h = 2\n",
         "[water] desired_c: the dough's temperature at the end of mixing is not known; give [water] desired, or "
         "[dough] measured (--dough), or dough to the first stage"),
        ("rise", "[dough]\nyeast_percent = 1\n", "the day has no stage; give one with a name and an end"),
        ("rise", "[[stage]]\nname = 'bulk'\ndough = '22C'\nuntil_h = 2\nuntil_rise_percent = 90\n",
         '[[stage]] "bulk" until_h: a stage ends by a rise or after a time, not by both'),
        ("rise", "[[stage]]\nname = 'bulk'\ndough = '22C'\nuntil_h = 2\nfolds_h = [1, 0.5]\n",
         '[[stage]] "bulk" folds_h: the folds are not in the order of time'),
        ("rise", "[[stage]]\nname = 'bulk'\ndough = '22C'\nuntil_h = 2\nhandling = ['punch']\n",
         '[[stage]] "bulk" handling[0]: handling "punch" is unknown; known: fold, divide, round, mould'),
        ("rise", "[dough]\nyeast_percent = 1\n[[stage]]\nname = 'bulk'\ndough = '78C'\nuntil_h = 2\n",
         '[[stage]] "bulk" dough: dough temperature 78 °C is outside −2 to 45 °C; if you meant 78 °F, write 78F'),
        ("water", "[[flour]]\npercent = 80\n[[flour]]\npercent = 10\n",
         "[[flour]] 1 percent: the shares of the flours make 90 %, not 100 %"),
        ("water", "[[flour]]\npercent = 100\nkind = 'spelt'\n", '[[flour]] 1 kind: flour "spelt" is unknown; known: '),
        ("water", "[dough]\nwater_percent = 30\n", "[dough] water_percent: water 30 % is outside 40 to 130 %; percent"),
        ("water", "[dough]\nwater_percent = 131\n", "[dough] water_percent: water poured 131 % is outside 0 to 130 %"),
        ("water", "[bowl]\nmaterial = 'steel'\nmass_g = 1.2\n", "[bowl] mass_g: weight of the bowl 1.2 g is outside"),
        ("water", "[bowl]\nmaterial = 'steel'\nmass_g = 900\n",
         "[bowl] mass_g: a weight in grams needs the flour's weight beside it; give [dough] flour_g (--flour-g)"),
        ("water", "[batch]\ndough = '25C'\n", "[batch]: a list is wanted, got a table"),
        ("water", "[mixing]\nmethod = 'hand'\nnet_gain_kj_per_kg = 3\n", "[mixing] method: "),
        ("water", "[mixing]\nminutes = 5\n", "[mixing] method: minutes need a method"),
        ("water", "[yeast_water]\nwater_g = 50\ntemperature = '61C'\n", "[yeast_water] temperature: water temperature "
                                                                       "61 °C is outside 0 to 60 °C; if you meant 61"),
        ("water", "[[batch]]\nwater = '27C'\nflour = '20C'\nroom = '20C'\n", "[[batch]] 1 dough_c: "),
        ("water", "[dough]\nflour_g = 500\n[preferment]\nflour_g = 50\nwater_g = 400\n", "more than all the water, "),
        ("water", "[today]\npreferment = '20C'\n", "the preferment has a temperature and no weight"),
    ],
)  # fmt: skip
def test_a_bad_day_file_ends_with_2_and_is_named(write, command, text, words):
    path = write(("[water]\ndesired = '24C'\n" if command == "water" else "") + text)
    asked = [command, path, *(["--room", "21C"] if command == "water" else [])]
    message = refusal(2, *asked)
    assert message.startswith(f"error: {path}")
    assert words in message
    assert refusal(2, *asked, "--json") == message


@pytest.mark.parametrize("table", ["today", "water", "dough", "bowl", "mixing", "preferment", "yeast_water"])
def test_a_table_that_is_none_is_named(write, table):
    """Options that stand in it come to no harm."""
    for command in ("water", "friction", "rise"):
        for value in ("5", "[]", "'24C'"):
            of_the_bowl = ["--mixing", "hand", "--room", "21C"] if command != "rise" else []
            path = write(f"{table} = {value}\n")
            message = refusal(2, command, path, *of_the_bowl).replace(f"[[{table}]]", table)
            assert message.startswith(f"error: {path}: {table}: a table is wanted, got ")


@pytest.mark.parametrize("command", ["water", "friction"])
def test_of_several_batches_the_wrong_one_is_named(write, command):
    """Both numbers that a batch gives: the friction, and the net gain, which a hot bowl alone makes absurd."""
    good = {"dough": 25, "water": 27, "flour": 20, "room": 21}
    heavy = '[dough]\nflour_g = 100\n[bowl]\nmaterial = "steel"\nmass_g = 3000\n'
    text = refusal(2, command, write(TODAY + heavy + batch_tables([good, {**good, "bowl": 100}])))
    assert "batch 2 of 2: net mixing gain of this batch" in text
    text = refusal(2, command, write(TODAY + batch_tables([good, good, {**good, "dough": 40}])))
    assert "batch 3 of 3: friction of this batch" in text


def test_a_question_without_an_answer_ends_with_1(write):
    text = refusal(1, "rise", "--rise", "900", *ONE)
    reach = lf.reachable_rise(dough_c=18, yeast_percent=0.6)
    assert "a rise of 900 % is never reached" in text
    assert f"below {reach:.6g} %" in text
    assert "a rise of 900 % is never reached: the dough rises by" in refusal(1, "rise", "--rise", "900", *PIECE)
    bulk = '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 400\n'
    text = refusal(1, "rise", write(f"[dough]\nyeast_percent = 0.7\n{bulk}"))
    reach = lf.reachable_rise(dough_c=23, yeast_percent=0.7)
    assert f'stage "bulk": a rise of 400 % is never reached: the dough rises by {reach:.4g} % at the most' in text


def reachable(text):
    """The reachable doughs that a refusal names, °C."""
    low, high = re.search(r"reachable are doughs of (−?[\d.]+) °C to (−?[\d.]+) °C", text).groups()
    return float(low.replace("−", "-")), float(high.replace("−", "-"))


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--flour", "10C", "--room", "10C", "--desired", "44C"],
         ["--desired: a dough of 44 °C needs water of ", "above 60 °C it kills yeast and scalds", "warm the flour"]),
        (["--room", "35C", "--desired", "14C"],
         ["a dough of 14 °C needs colder water than 0 °C (", "tap", "and the ice is worked out; or cool the flour"]),
        (["--room", "30C", "--flour-g", "500", "--yeast-water", "30C", "--yeast-water-g", "250", "--tap", "15C",
          "--desired", "10C"],
         ["a dough of 10 °C needs ", "g of ice, more than the 75 g of water", "cool the flour or the bowl"]),
        (["--flour", "-10C", "--room", "35C", "--tap", "25C", "--flour-g", "500", "--bowl", "steel",
          "--bowl-g", "5kg", "--rest", "20min", "--desired", "1C"],
         ["a dough of 1 °C needs ", "g of ice, more than melts when flour and water meet", "mix more gently"]),
        (["--room", "21C", "--flour-g", "100", "--rest", "4h", "--desired", "40C"], ["--desired: "]),
    ],
)  # fmt: skip
def test_water_that_cannot_be_poured_ends_with_1_and_names_the_doughs_that_can(arguments, words):
    """Just inside the doughs it names there is an answer, just outside there is none."""
    text = refusal(1, "water", *arguments)
    for word in words:
        assert word in text
    assert not re.search(r"\b(tap_c|water_g|flour_g)\b", text)  # options have other names
    low, high = reachable(text)
    assert low < high
    # Rounded inward, so that the ends themselves have an answer, and a tenth further out there is none.
    for desired_c, code in ((low, 0), (high, 0), (low - 0.1, 1), (high + 0.1, 1)):
        result = run("water", *arguments[:-1], f"{desired_c:.6f}C")
        asked = code if 0 <= desired_c <= 45 else 2  # no dough is asked for beyond
        assert result.exit_code == asked, (desired_c, result.output)


def test_no_dough_at_all_is_said_so():
    hot = ["--room", "60C", "--bowl", "wood", "--bowl-g", "9kg", "--flour-g", "500", "--desired", "25C"]
    text = refusal(1, "water", *hot)
    assert "no water makes a dough of 0 °C to 45 °C here; give the temperature of the tap water" in text
    assert "reachable" not in text
    for tap in ([], ["--tap", "15C"]):  # a gram of dough has the room's temperature after a day, whatever was poured
        text = refusal(1, "water", "--desired", "30C", "--room", "21C", "--flour-g", "1", "--rest", "24h", *tap)
        assert "the main water counts for next to nothing" in text
        assert "give more main water or rest shorter" in text


# ---- any options -----------------------------------------------------------------------------------------------------

OPTIONS = [
    option.opts[0]
    for command in cli.main.commands.values()
    for option in command.params
    if option.param_type_name == "option"
]
WORDS = ["20C", "68F", "3K", "90min", "nan", "1e400", "-1", "0.5", "100", "9" * 400 + "C", "8:15", "+1 7:30", "instant",
         "500g", "1,000g", "2lb", "steel", "Stand mixer", "tub", "yeast"]  # fmt: skip
words = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=8) | st.sampled_from(WORDS)


@given(
    st.sampled_from(sorted(cli.main.commands)),
    st.lists(st.tuples(st.sampled_from([*dict.fromkeys(OPTIONS), "day_file"]), words), max_size=6),
    st.booleans(),
)
def test_any_options_are_answered_or_refused(command, options, in_json):
    result = run(command, *(f"{name}={value}" for name, value in options), *(["--json"] if in_json else []))
    assert result.exit_code in (0, 1, 2)
    if result.exit_code == 0 and in_json and "--help" not in dict(options):
        json.loads(result.stdout)
    if result.exit_code:
        assert result.stderr


def written(low, high, unit=""):
    """Numbers as a person writes them."""
    return st.one_of(st.integers(low, high), st.decimals(low, high, places=2)).map(lambda value: f"{value:f}{unit}")


# A little beyond what is allowed, and as in a kitchen.
TYPED = {
    "temperature": (written(-5, 65, "C") | written(20, 150, "F"), written(12, 32, "C") | written(55, 90, "F")),
    "difference": (written(-18, 45, "F") | written(-10, 25, "C"), written(0, 12, "K") | written(0, 21, "F")),
    "weight": (written(0, 1500, "g") | written(0, 60, "oz") | written(0, 2, "kg"), written(20, 150, "g")),
    "percent": (written(0, 110), written(0, 3)),
    "time": (written(0, 24, "h"), written(0, 150, "min")),
    "number": (written(-30, 120), written(0, 25)),
    "clock": 2 * (st.sampled_from(["0:00", "8:15", "23:59", "+1 7:30", "24:00"]),),
}
NAMES = {
    "bowl": [*sorted(lf.bowl_materials()), "CERAMIC", " Steel "],
    "mixing": [*LABELS, "Stand mixer", "HAND"],
    "yeast": ["instant", "active_dry", "Active-dry unwetted", "compressed"],
    "piece": ["tub", "ball", "oblong"],
    "cover": ["film", "cloth", "lid"],
}
USUAL = {
    "flour-g": written(400, 1500, "g") | written(1, 3, "lb"),
    "water-g": written(250, 500, "g") | written(9, 20, "oz"),
    "bowl-g": written(300, 3000, "g") | written(1, 6, "lb"),
    "piece-g": written(0, 3, "kg"),
    "yeast-water": written(20, 50, "C"),
    "ice": written(-40, 0, "C"),
    "rise": written(10, 250),
    "yeast-percent": st.decimals("0.1", 3, places=1).map(str),
    "water-percent": written(50, 90),
}
ONE_ASKS_FOR_ANOTHER = {
    "bowl": "bowl-g",
    "bowl-g": "bowl",
    "yeast-water": "yeast-water-g",
    "yeast-water-g": "yeast-water",
    "preferment": "preferment-g",
    "friction-at": "friction",
    "minutes": "mixing",
}


@st.composite
def plausible_options(draw, kinds, *asked):
    """Any options; or those of a kitchen, where each comes with the one it is of no use without."""
    usual = draw(st.sampled_from([True, True, False]))
    named = {name: st.sampled_from(names) for name, names in NAMES.items() if name in kinds}
    typed = {name: TYPED[kind][usual] for name, kind in kinds.items() if kind != "name"} | named
    if usual:
        typed |= {name: of for name, of in USUAL.items() if name in kinds}
    options = draw(st.fixed_dictionaries({name: typed.pop(name) for name in asked}, optional={**typed}))
    if usual:
        if "net-gain" in options:
            options.pop("mixing", None)
        for name in list(options):
            other = ONE_ASKS_FOR_ANOTHER.get(name)
            if other in typed and not (other == "mixing" and "net-gain" in options):
                options.setdefault(other, draw(typed[other]))
        for name in {"room", "flour-g"} & set(typed):
            options.setdefault(name, draw(typed[name]))
    return [f"--{name}={value}" for name, value in options.items()]


days_or_none = st.sampled_from([[], [DEMO], [BY_HAND]])


def answered(*arguments):
    """The JSON and the screen; nothing where both refuse alike."""
    result, in_words = run(*arguments, "--json"), run(*arguments)
    assert result.exit_code in (0, 1, 2)
    assert result.exit_code == in_words.exit_code  # the sentences are no harder to write than the numbers
    assert bool(result.stderr) == (result.exit_code != 0)
    assert result.stderr == in_words.stderr
    return None if result.exit_code else (json.loads(result.stdout), in_words.stdout)


@given(plausible_options(KINDS[0][1], "desired"), days_or_none)
def test_plausible_options_of_the_water_are_answered_or_refused(options, day):
    if (both := answered("water", *day, *options)) is None:
        return
    document, text = both
    _, asks, block = text.partition("\n[[batch]]\n")
    assert bool(asks) == (document["ice_g"] == 0)
    if asks:
        (batch,) = lf.Day.from_dict(tomllib.loads(f"[[batch]]\n{block.replace('__', '24')}")).batch
        assert batch.dough_c == 24
        assert batch.water_c == pytest.approx(document["pour_c"], abs=0.0501)
    assert document["pour_g"] + document["ice_g"] == pytest.approx(document["water_g"], rel=1e-12)
    assert sum(share["dough_k_per_k"] for share in document["shares"]) == pytest.approx(1, rel=1e-9)
    assert document["low_c"] <= document["desired_c"] <= document["high_c"]
    assert 0 <= document["pour_c"] <= 60
    assert 0 <= document["ice_g"] <= document["water_g"]


@given(plausible_options(KINDS[1][1], "dough", "water"), days_or_none)
def test_plausible_options_of_the_friction_are_answered_or_refused(options, day):
    if (both := answered("friction", *day, *options)) is None:
        return
    document, _ = both
    assert 0 <= document["minutes"] <= 60
    for key, low, high in (("friction_k", -10, 25), ("net_gain_kj_per_kg", -30, 120)):
        assert document[key]["each"] == [document[key]["mean"]]
        assert low <= document[key]["mean"] <= high


OF_THE_RISE = {name: kind for name, kind in KINDS[4][1].items() if name != "rise"}
RISES = [plausible_options({**OF_THE_RISE, asked: kind}, "dough", "yeast-percent", asked)
         for asked, kind in (("rise", "percent"), ("after", "time"))]  # fmt: skip


@given(st.one_of(RISES))
def test_plausible_options_of_the_rise_are_answered_or_refused(options):
    if (both := answered("rise", *options)) is None:
        return
    document, text = both
    (stage,) = document.get("stages", [{"start_h": 0, "end_h": document.get("hours"), **document}])
    text = " ".join(text.split())
    assert told_h(stage["end_h"] - stage["start_h"]) in text
    assert re.search(rf"a rise of ({stage['rise_percent']:.0f}|{stage['rise_percent']:g}) %", text)


# ---- as a program ----------------------------------------------------------------------------------------------------


def program(*arguments, encoding="utf-8"):
    environment = {**os.environ, "PYTHONIOENCODING": encoding, "COLUMNS": "90"}
    return subprocess.run(
        [sys.executable, "-m", "libferment.cli", *arguments],
        capture_output=True,
        encoding=encoding,
        env=environment,
        check=False,
    )


@pytest.mark.parametrize("encoding", ["utf-8", "ascii"])
def test_it_runs_as_a_program(encoding):
    """The same document, whatever characters the output can show."""
    finished = program("rise", "--json", DEMO, encoding=encoding)
    assert (finished.returncode, finished.stderr) == (0, "")
    assert json.loads(finished.stdout) == as_json("rise", DEMO)
    finished = program("water", "--json", *WATER[1:], encoding=encoding)
    assert json.loads(finished.stdout) == as_json(*WATER)
    assert "°" in json.loads(finished.stdout)["reason"]


def test_exit_codes_of_the_program():
    for code, arguments in (
        (0, ["--version"]),
        (0, ["rise", "--help"]),
        (0, ["water", DEMO]),
        (0, ["friction", DEMO]),
        (1, ["rise", "--rise", "900", *ONE]),
        (1, ["water", "--desired", "44C", "--room", "5C"]),
        (2, ["rise", "--rise", "100", "--dough", "78C", "--yeast-percent", "1"]),
        (2, ["water", "nowhere.toml"]),
        (2, ["friction", "--dough", "25C"]),
    ):
        finished = program(*arguments)
        assert finished.returncode == code, finished
        assert "Traceback" not in finished.stderr
        assert bool(finished.stdout) == (code == 0)


def test_help_names_every_option():
    assert set(cli.main.commands) == {"water", "friction", "rise", "seen", "ended", "learn"}
    for command in cli.main.commands:
        text = answer(command, "--help")
        for option in cli.main.commands[command].params:
            if option.param_type_name == "option":
                assert option.opts[0] in text
                assert option.is_flag or option.metavar or option.type.name != "text"
                assert option.help
    assert "not safe to eat" in answer("--help")
    assert lf.__version__ in answer("--version")


@pytest.mark.parametrize("command", ["water", "rise"])
def test_the_example_in_the_help_is_answered(command):
    """It is the last paragraph, and wraps where the screen ends."""
    words = cli.main.commands[command].help.split("\n\n")[-1].split()
    assert words[:2] == ["libferment", command]
    assert answer(*words[1:])


def test_as_a_module():
    asked = [sys.executable, "-m", "libferment", "--version"]
    finished = subprocess.run(asked, capture_output=True, text=True, check=False)
    assert (finished.returncode, lf.__version__ in finished.stdout) == (0, True)


@pytest.mark.parametrize("package", ["click", "rich"])
def test_without_the_packages_of_the_command_line(package):
    code = f"import sys; sys.modules[{package!r}] = None; from libferment.__main__ import main; main()"
    finished = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert finished.returncode == 3
    needs = f"libferment: the command line needs the package {package}: pip install 'libferment[cli]'\n"
    assert finished.stderr == needs
    code = "import sys; sys.modules['click'] = sys.modules['rich'] = None; import libferment; libferment.simulate"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
