"""The command line: answers, JSON, exit codes and what it says to a wrong input. Never a traceback."""

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
from libferment._values import stage_row

import libferment as lf
from libferment import _quantities as quantities
from libferment import cli, stages
from libferment import day as days

ROOT = Path(__file__).resolve().parents[2]
DEMO = str(ROOT / "data" / "demo" / "day.toml")
BY_HAND = str(Path(__file__).with_name("by_hand.toml"))
RULE = ["--flour", "20C", "--room", "21C", "--friction", "2K"]
WATER = ["water", "--desired", "24C", "--room", "21C"]
ONE = ["--dough", "18C", "--yeast-percent", "0.6"]


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

    document = json.loads(answer(*arguments, "--json"), parse_constant=no_constant)
    assert document["libferment"] == lf.__version__
    assert document["command"] == arguments[0]
    return document


def refusal(exit_code, *arguments):
    result = run(*arguments)
    assert result.exit_code == exit_code, result.output
    assert result.stdout == ""
    # Advice for Python would be of no use here.
    assert "celsius(" not in result.stderr
    assert "kelvins(" not in result.stderr
    assert "net_gain_from_batch" not in result.stderr
    assert not re.search(r" \[[a-z_]+\]$", result.stderr.strip())  # names of inputs are for programs
    return result.stderr


@pytest.fixture
def write(tmp_path):
    def write_day(text):
        path = tmp_path / "day.toml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write_day


# ---- water -----------------------------------------------------------------------------------------------------------


def mix_of(flour_g=500, room_c=21, **changes):
    """The mix that options or a day file stand for, written with the package alone."""
    return lf.Mix.from_percent(flour_g=flour_g, room_c=room_c, **changes)


def plain(value):
    """What JSON makes of it."""
    return json.loads(json.dumps(value))


def check_plan(document, mix, desired_c=24, friction_k=None):
    """The JSON of `water` is that of the package for this mix, number for number, key for key. Returns the plan."""
    plan = lf.water_by_heat_balance(mix, desired_c, friction_k=friction_k)
    known = {"libferment": lf.__version__, "command": "water", **plain(plan.to_dict())}
    assert {key: document[key] for key in document if key not in ("temperatures_c", "mix")} == known
    assert document["mix"] == plain(mix.with_water(plan).to_dict())
    return plan


def told(temperature_c):
    """A temperature as the text writes it."""
    return f"{temperature_c:.1f} °C ({lf.fahrenheit(temperature_c):.0f} °F)".replace("-", "−")


def told_k(difference_k):
    """A difference of temperatures as the text writes it."""
    return f"{difference_k:.1f} K ({1.8 * difference_k:.0f} °F)".replace("-", "−")


def sentences_and_rows(text):
    """The sentences, one after the other however they were wrapped, and the rows of the table."""
    sentences = [line for line in text.splitlines() if not re.search("[│┃━─]", line)]
    return " ".join(" ".join(sentences).split()), [line for line in text.splitlines() if "│" in line]


def lines(*arguments):
    return sentences_and_rows(answer(*arguments))


def cells(row):
    return [cell.strip() for cell in row.split("│")]


def test_water_by_options():
    document = as_json(*WATER[:3], *RULE)
    mix = mix_of(flour_c=20)
    plan = check_plan(document, mix, friction_k=2)
    assert document["temperatures_c"] == {"flour": 20, "room": 21}
    assert plan.factor_rule_c == lf.water_by_factor_rule(24, flour_c=20, room_c=21, friction_k=2) == 29
    assert (document["desired_c"], document["friction_k"], document["ice_g"]) == (24, 2, 0)
    text, rows = lines(*WATER[:3], *RULE)
    shares = {share.name: share for share in plan.shares}
    assert cells(rows[0]) == [
        "main water",
        "325 g",
        f"{plan.water_c:.1f} °C",
        f"{shares['main water'].dough_k_per_k:.2f} K",
    ]
    assert cells(rows[1]) == ["bread flour", "500 g", "20.0 °C", f"{shares['bread flour'].dough_k_per_k:.2f} K"]
    assert cells(rows[2]) == ["room", "", "21.0 °C", f"{shares['room'].dough_k_per_k:.2f} K"]
    assert cells(rows[3]) == ["salt", "10 g", "", ""]
    gain = f"{plan.gain_k:+.1f} K".replace("-", "−")
    assert cells(rows[-2]) == ["mixing, wetting, dissolving", "", "", gain]
    assert cells(rows[-1]) == ["dough", "835 g", "24.0 °C", ""]
    assert text.startswith(f"Pour 325 g of water at {told(plan.water_c)}. ")
    assert len(rows) == 6
    header = next(line for line in answer(*WATER[:3], *RULE).splitlines() if "┃" in line)
    assert [cell.strip() for cell in header.split("┃")] == [
        "into the bowl",
        "weight",
        "at",
        "1 K more moves the dough",
    ]
    assert (
        "The bakers' factor rule says 29.0 °C (84 °F): 3 × 24.0 − 20.0 − 21.0 − 2.0 (flour, room, friction). "
        f"It would make the dough {plan.dough_by_rule_c:.1f} °C." in text
    )


def test_only_desired_and_room_are_needed():
    plan = check_plan(as_json(*WATER), mix_of())
    assert [notice.code for notice in plan.notices] == ["mixing_assumed"]
    assert "note: no way of mixing was given: reckoned for kneading by hand" in answer(*WATER)


def test_water_with_a_preferment():
    arguments = [*WATER[:3], *RULE, "--flour-g", "500g", "--preferment", "18C", "--preferment-g", "200g"]
    mix = mix_of(flour_c=20, preferments=[lf.Preferment(100, 100, temperature_c=18)])
    plan = check_plan(as_json(*arguments), mix, friction_k=2)
    expected = lf.water_by_factor_rule(24, flour_c=20, room_c=21, friction_k=2, preferment_c=18)
    assert plan.factor_rule_c == expected == 4 * 24 - 20 - 21 - 18 - 2
    text, rows = lines(*arguments)
    share = next(share for share in plan.shares if share.name == "preferment")
    assert cells(rows[2]) == ["preferment", "200 g", "18.0 °C", f"{share.dough_k_per_k:.2f} K"]
    rule = "4 × 24.0 − 20.0 − 21.0 − 18.0 − 2.0 (flour, room, preferment, friction)"
    makes = f"It would make the dough {plan.dough_by_rule_c:.1f} °C."
    assert f"The bakers' factor rule says {told(expected)}: {rule}. {makes}" in text


def test_water_in_fahrenheit_is_the_same():
    in_celsius = as_json("water", "--desired", "25C", "--flour", "20C", "--room", "15C", "--friction", "5K")
    in_fahrenheit = as_json("water", "--desired", "77F", "--flour", "68F", "--room", "59F", "--friction", "9F")
    assert in_celsius == in_fahrenheit
    assert in_celsius["factor_rule_c"] == 35
    more = ["--tap", "50C", "--ice", "-5C", "--yeast-water", "40C", "--yeast-water-g", "60", "--preferment", "10C"]
    same = ["--tap", "122F", "--ice", "23F", "--yeast-water", "104F", "--yeast-water-g", "60", "--preferment", "50F"]
    rest = ["--flour-g", "500", "--preferment-g", "100"]
    both = [as_json("water", "--desired", desired, "--room", room, *rest, *options)
            for desired, room, options in (("25C", "20C", more), ("77F", "68F", same))]  # fmt: skip
    assert both[0] == both[1]


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
    document = as_json(*WATER, *arguments, "--yeast-water", "38C")
    values = [lf.grams(ounces) for ounces in grams] if grams else [900, 630, 1200, 60, 200]
    flour_g, water_g, bowl_g, yeast_water_g, preferment_g = values
    mix = mix_of(
        flour_g=flour_g,
        water_percent=100 * water_g / flour_g,
        bowl=lf.Bowl("steel", bowl_g),
        waters=[lf.Water(yeast_water_g, 38, wets_yeast=True)],
        preferments=[lf.Preferment(preferment_g / 2, preferment_g / 2)],
    )
    check_plan(document, mix)


FLOUR_G = ["--flour-g", "800"]


@pytest.mark.parametrize(
    ("options", "changes"),
    [
        (["--flour", "12C"], {"flour_c": 12}),
        (["--room", "26C"], {"room_c": 26}),
        (["--tap", "30C"], {"tap_c": 30}),
        (["--tap", "30C", "--ice", "-2C"], {"tap_c": 30, "ice_c": -2}),
        (["--rest", "45min"], {"rest_h": 0.75}),
        (["--rest", "1.5h"], {"rest_h": 1.5}),
        (["--bowl", "glass", "--bowl-g", "1.5kg", "--room", "16C"], {"bowl": lf.Bowl("glass", 1500), "room_c": 16}),
        (["--bowl", "CERAMIC", "--bowl-g", "1500", "--room", "16C"], {"bowl": lf.Bowl("ceramic", 1500), "room_c": 16}),
        (["--mixing", "spiral"], {"mixing": lf.ByMethod("spiral")}),
        (["--mixing", "spiral", "--minutes", "6"], {"mixing": lf.ByMethod("spiral", 6)}),
        (["--mixing", " Stand mixer"], {"mixing": lf.ByMethod("stand_mixer")}),
        (["--mixing", "STAND-MIXER", "--minutes", "12"], {"mixing": lf.ByMethod("stand_mixer", 12)}),
        (["--net-gain", "6.5"], {"mixing": lf.ByNetGain(6.5)}),
        (["--net-gain", "-2"], {"mixing": lf.ByNetGain(-2)}),
        (
            ["--net-gain", "6.5", "--minutes", "15", "--room", "12C"],
            {"mixing": lf.ByNetGain(6.5, minutes=15), "room_c": 12},
        ),
        (["--yeast-water", "38C", "--yeast-water-g", "60"], {"waters": [lf.Water(60, 38, wets_yeast=True)]}),
        (["--water-g", "600"], {"water_percent": 75}),
        (["--preferment-g", "300"], {"preferments": [lf.Preferment(150, 150)]}),
        (
            ["--preferment", "5C", "--preferment-g", "300"],
            {"preferments": [lf.Preferment(150, 150, temperature_c=5)]},
        ),
    ],
)
def test_every_option_of_the_water_counts(options, changes):
    plain_document = as_json(*WATER, *FLOUR_G)
    document = as_json(*WATER, *FLOUR_G, *options)
    check_plan(document, mix_of(flour_g=800, **changes))
    answers = [(of["water_c"], of["ice_g"]) for of in (plain_document, document)]
    assert answers[0] != answers[1]


@pytest.mark.parametrize("mixing", [None, "spiral", "folds"])
def test_a_friction_alone_is_for_the_rule(mixing):
    """It moves the rule's water degree by degree, and nothing else: it is not known what it was found with."""
    arguments = [*WATER, *(["--mixing", mixing] if mixing else [])]
    mix = mix_of(mixing=mixing and lf.ByMethod(mixing))
    without = as_json(*arguments)
    for friction_k in (-3, 6, 20):
        plan = check_plan(as_json(*arguments, "--friction", f"{friction_k}K"), mix, friction_k=friction_k)
        assert plan.factor_rule_c == 30 - friction_k
        assert (plan.water_c, plan.low_c, plan.high_c) == (without["water_c"], without["low_c"], without["high_c"])
        assert ("mixing_assumed" in [notice.code for notice in plan.notices]) == (mixing is None)


def worth_of(friction_k, measured_at_c, mix, desired_c=24):
    """The mixing heat that a friction tells, found in a kitchen of that temperature."""
    return lf.ByNetGain(lf.net_gain_from_friction(mix, friction_k, desired_c, measured_at_c=measured_at_c), 2.0)


@pytest.mark.parametrize("measured_at", ["21C", "69.8F", "17C", "28.5C"])
def test_a_friction_with_its_kitchen_is_the_mixing_heat(write, measured_at):
    measured_at_c = quantities.temperature_c(measured_at)
    for friction in ("6K", "6C", "10.8F"):
        arguments = [*WATER, "--friction", friction, "--friction-at", measured_at]
        friction_k = quantities.difference_k(friction)
        assert friction_k == pytest.approx(6, rel=1e-15)
        mix = mix_of(mixing=worth_of(friction_k, measured_at_c, mix_of()))
        plan = check_plan(as_json(*arguments), mix, friction_k=friction_k)
        assert "mixing_assumed" not in [notice.code for notice in plan.notices]
    known = f'desired = "24C"\nfriction = "6K"\nfriction_at = "{measured_at}"'
    mix = mix_of(mixing=worth_of(6, measured_at_c, mix_of()))
    check_plan(as_json("water", write(TODAY.replace('desired = "24C"', known))), mix, friction_k=6)


def test_rule_and_balance_agree_in_the_kitchen_of_the_friction():
    """Where flour, room and bowl have the temperature the friction was found at, the rule's water is the balance's."""
    for kitchen_c, friction_k in ((21, 6), (16, 9), (27, -2)):
        for desired_c in (22, 25):
            arguments = ["water", "--desired", f"{desired_c}C", "--room", f"{kitchen_c}C", "--flour-g", "800"]
            arguments += ["--bowl", "glass", "--bowl-g", "1.5kg", "--friction", f"{friction_k}K"]
            document = as_json(*arguments, "--friction-at", f"{kitchen_c}C")
            assert document["water_c"] == pytest.approx(document["factor_rule_c"], abs=1e-9)
            assert document["factor_rule_c"] == 3 * desired_c - 2 * kitchen_c - friction_k
            elsewhere = as_json(*arguments, "--friction-at", f"{kitchen_c + 3}C")
            assert elsewhere["factor_rule_c"] == document["factor_rule_c"]
            assert elsewhere["water_c"] != pytest.approx(document["water_c"], abs=0.1)


def test_the_mixing_counts_before_a_friction_with_its_kitchen(write):
    friction = ["--friction", "6K", "--friction-at", "21C"]
    for options, mixing in (
        (["--mixing", "spiral"], lf.ByMethod("spiral")),
        (["--net-gain", "5"], lf.ByNetGain(5)),
    ):
        check_plan(as_json(*WATER, *friction, *options), mix_of(mixing=mixing), friction_k=6)
    path = write(TODAY + "[mixing]\nwork_kj_per_kg = 9\n")
    check_plan(as_json("water", path, *friction), mix_of(mixing=lf.ByWork(9)), friction_k=6)
    path = write(TODAY + batch_tables(BATCHES))
    gain = learned_of(BATCHES)[1]
    check_plan(as_json("water", path, *friction), mix_of(mixing=lf.net_gain_of(gain)), friction_k=6)


def test_ice_temperature_and_each_share_of_flour_count():
    """The least change of each gives another answer: nothing is read and then forgotten."""
    cold = [*WATER, "--flour", "35C", "--tap", "20C"]
    dry, wet = (as_json(*cold, "--ice", ice)["ice_g"] for ice in ("-18C", "0C"))
    assert as_json(*cold)["ice_g"] == dry < wet


TODAY = '[water]\ndesired = "24C"\n[today]\nroom = "21C"\n'


@pytest.mark.parametrize(
    ("tables", "changes"),
    [
        ('flour = "12C"', {"flour_c": 12}),
        ('flour = "53.6F"', {"flour_c": 12}),
        ('tap = "30C"\nice = "-3C"', {"tap_c": 30, "ice_c": -3}),
        (
            'bowl = "40C"\n[bowl]\nmaterial = "Steel"\nmass_g = 1200',
            {"bowl": lf.Bowl("steel", 1200, temperature_c=40)},
        ),
        ('bowl = "104F"\n[bowl]\nmaterial = "wood"\nmass_g = 700', {"bowl": lf.Bowl("wood", 700, temperature_c=40)}),
        ("[dough]\nmilk_percent = 20", {"milk_percent": 20}),
        ('milk = "5C"\n[dough]\nmilk_percent = 20', {"milk_percent": 20, "milk_c": 5}),
        ("[dough]\negg_percent = 10", {"egg_percent": 10}),
        ('egg = "41F"\n[dough]\negg_percent = 10', {"egg_percent": 10, "egg_c": 5}),
        ("[dough]\nbutter_percent = 15", {"butter_percent": 15}),
        ('butter = "-10C"\n[dough]\nbutter_percent = 15', {"butter_percent": 15, "butter_c": -10}),
        ("[dough]\noil_percent = 5", {"oil_percent": 5}),
        ("[dough]\nwater_percent = 80", {"water_percent": 80}),
        ("[dough]\nsalt_percent = 0.5", {"salt_percent": 0.5}),
        ("[dough]\nsugar_percent = 12", {"sugar_percent": 12}),
        ("[dough]\ngluten_percent = 4", {"gluten_percent": 4}),
        ("[dough]\nyeast_percent = 1.2", {"instant_percent": 1.2}),
        ('[dough]\nyeast = "active_dry"\nyeast_percent = 1.2', {"active_dry_percent": 1.2}),
        ('[dough]\nyeast = "active_dry_unwetted"\nyeast_percent = 1.2', {"active_dry_percent": 1.2}),
        ('[dough]\nyeast = "compressed"\nyeast_percent = 3', {"compressed_percent": 3}),
        (
            '[[flour]]\npercent = 80\n[[flour]]\npercent = 20\nkind = "dark_rye"\nmoisture_percent = 9\n'
            'temperature = "5C"',
            {"flours": [lf.FlourShare(80), lf.FlourShare(20, "dark_rye", moisture_percent=9, temperature_c=5)]},
        ),
        ("[[flour]]\npercent = 100\nmoisture_percent = 10", {"flours": [lf.FlourShare(100, moisture_percent=10)]}),
        (
            '[[flour]]\npercent = 70\nkind = "Whole wheat"\ntemperature = "50F"\n'
            '[[flour]]\nkind = "ALL-PURPOSE"\npercent = 30.1\n[dough]\ngluten_percent = 5',
            {
                "flours": [lf.FlourShare(70, "whole_wheat", temperature_c=10), lf.FlourShare(30.1, "all_purpose")],
                "gluten_percent": 5,
            },
        ),
        ("[preferment]\nflour_g = 100\nwater_g = 60", {"preferments": [lf.Preferment(100, 60)]}),
        (
            'preferment = "41F"\n[preferment]\nflour_g = 100\nwater_g = 60',
            {"preferments": [lf.Preferment(100, 60, temperature_c=5)]},
        ),
        (
            '[yeast_water]\nwater_g = 50\ntemperature = "38C"',
            {"waters": [lf.Water(50, 38, wets_yeast=True)]},
        ),
        (
            '[yeast_water]\nwater_g = 50\ntemperature = "100.4F"\nstands = "15min"',
            {"waters": [lf.Water(50, lf.celsius(100.4), wets_yeast=True, stands_h=0.25)]},
        ),
        ('[mixing]\nmethod = "spiral"', {"mixing": lf.ByMethod("spiral")}),
        ('[mixing]\nmethod = "Stand mixer"\nminutes = 4', {"mixing": lf.ByMethod("stand_mixer", 4)}),
        (
            '[mixing]\nmethod = "hand"\nhydration_kj_per_kg = 3',
            {"mixing": lf.ByMethod("hand", hydration_kj_per_kg=3)},
        ),
        ("[mixing]\nwork_kj_per_kg = 9", {"mixing": lf.ByWork(9)}),
        (
            "[mixing]\nnet_gain_kj_per_kg = 3\nminutes = 20",
            {"mixing": lf.ByNetGain(3, minutes=20)},
        ),
        (
            "[mixing]\nnet_gain_kj_per_kg = 3\nsd_kj_per_kg = 2.5",
            {"mixing": lf.ByNetGain(3, 2.5)},
        ),
        ("[dough]\nwater_percent = 5\nmilk_percent = 60", {"water_percent": 5, "milk_percent": 60}),
        (
            "[mixing]\nwork_kj_per_kg = 9\nhydration_kj_per_kg = 3",
            {"mixing": lf.ByWork(9, hydration_kj_per_kg=3)},
        ),
        ("[mixing]\nnet_gain_kj_per_kg = -1.5", {"mixing": lf.ByNetGain(-1.5)}),
        ('[mixing]\nrest = "40min"', {"rest_h": 40 / 60}),
        ('[mixing]\nrest = "2h"\nmethod = "folds"', {"rest_h": 2, "mixing": lf.ByMethod("folds")}),
    ],
)
def test_every_table_and_key_of_the_water_counts(write, tables, changes):
    weight = "flour_g = 700\n"
    content = tables if "[dough]" in tables else f"{tables}\n[dough]"
    path = write(TODAY + content.replace("[dough]", f"[dough]\n{weight}"))
    document = as_json("water", path)
    check_plan(document, mix_of(flour_g=700, **changes))
    without = lf.water_by_heat_balance(mix_of(flour_g=700), 24)
    assert (document["water_c"], document["ice_g"]) != (without.water_c, without.ice_g)


def test_what_does_not_touch_the_water(write):
    """Altitude, perishable and the stages belong to the rise."""
    path = write(
        TODAY + "[dough]\nflour_g = 700\naltitude_m = 1500\nperishable = true\n[[stage]]\ndough = '30C'\nuntil_h = 1\n"
    )
    check_plan(as_json("water", path), mix_of(flour_g=700))


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
    batch = demo_mix().replace(flour_c=16, room_c=20, water_c=17.4)
    gain = lf.net_gain_from_batches([batch], [21.8])
    return lf.friction_from_batch(dough_c=21.8, flour_c=16, room_c=20, water_c=17.4), gain


def demo_mix_by_batch():
    """The demo day's mix with the mixing heat of its batch; the exchange with the room is that of its minutes."""
    return demo_mix().replace(mixing=lf.net_gain_of(demo_learned()[1], 7))


def test_water_of_the_demo_day():
    friction_k, _ = demo_learned()
    plan = lf.water_by_heat_balance(demo_mix_by_batch(), 21, friction_k=friction_k)
    document = as_json("water", DEMO)
    assert document["water_c"] == plan.water_c
    assert document["temperatures_c"] == {"flour": 15, "room": 19, "tap": 10}
    assert document["water_g"] == 1100 * 72 / 100
    assert document["factor_rule_c"] == 3 * 21 - 15 - 19 - friction_k
    text, rows = lines("water", DEMO)
    assert text.startswith(
        "Wholemeal tin loaf and a dozen rolls for supper (invented) "  # and then, before all else, the answer
        f"Pour 792 g of water at {told(plan.water_c)}: {told_k(plan.water_c - 10)} warmer than the tap's "
        "10.0 °C (50 °F). No ice is needed. In 9 batches of 10 "
    )
    assert [cells(row)[0] for row in rows[:2]] == ["main water", "whole-wheat flour"]


def test_the_whole_answer_of_the_demo_day_is_the_packages():
    check_plan(as_json("water", DEMO), demo_mix_by_batch(), 21, friction_k=demo_learned()[0])


def test_water_of_a_day_with_a_rest_and_water_for_the_yeast():
    batch = by_hand_mix().replace(flour_c=19, room_c=21, water_c=33, rest_h=40 / 60)
    mix = by_hand_mix().replace(mixing=lf.net_gain_of(lf.net_gain_from_batches([batch], [25.4]), 12))
    friction_k = lf.friction_from_batch(dough_c=25.4, flour_c=19, room_c=21, water_c=33)
    document = as_json("water", BY_HAND)
    plan = check_plan(document, mix, 25, friction_k=friction_k)
    assert document["water_g"] + 70 == 800 * 66 / 100
    text, rows = lines("water", BY_HAND)
    assert (
        f"Flour and water meet at {plan.wetted_c:.1f} °C and are at {plan.rested_c:.1f} °C after the rest of 45 min, "
        "when all else joins." in text
    )
    yeast_c = 20 + (36 - 20) * math.exp(-(12 / 60) / 0.3)  # it cooled while it stood
    assert cells(rows[2])[:3] == ["yeast's water", "70 g", f"{yeast_c:.1f} °C"]


def test_options_count_before_the_day_file():
    document = as_json("water", BY_HAND, "--flour", "21C", "--desired", "26C", "--friction", "0K", "--water-g", "500")
    assert document["factor_rule_c"] == lf.water_by_factor_rule(26, flour_c=21, room_c=20, friction_k=0)
    assert document["water_g"] + 70 == pytest.approx(500, rel=1e-15)
    options = [
        "--mixing",
        "spiral",
        "--minutes",
        "5",
        "--rest",
        "0h",
        "--bowl",
        "wood",
        "--tap",
        "13C",
        "--room",
        "22C",
    ]
    options += ["--yeast-water", "30C", "--yeast-water-g", "40", "--flour-g", "1kg", "--friction", "4K"]
    mix = lf.Mix.from_percent(
        flour_g=1000,
        room_c=22,
        flour_c=18.5,
        tap_c=13,
        water_percent=66,
        salt_percent=2.1,
        active_dry_percent=0.9,
        waters=[lf.Water(40, 30, wets_yeast=True)],
        bowl=lf.Bowl("wood", 1900),
        mixing=lf.ByMethod("spiral", 5),
    )
    check_plan(as_json("water", BY_HAND, *options), mix, 25, friction_k=4)


def test_a_way_of_mixing_that_is_given_counts_before_batches():
    """The batches were mixed another way: nothing of them is used."""
    check_plan(as_json("water", DEMO, "--mixing", "spiral"), demo_mix().replace(mixing=lf.ByMethod("spiral")), 21)
    friction_k, _ = demo_learned()
    mix = demo_mix().replace(mixing=lf.ByNetGain(7))
    check_plan(as_json("water", DEMO, "--net-gain", "7"), mix, 21, friction_k=friction_k)


# ---- ice -------------------------------------------------------------------------------------------------------------


def test_ice_when_the_tap_is_too_warm():
    arguments = ["water", "--desired", "22C", "--flour", "30C", "--room", "30C", "--friction", "6K", "--tap", "20C"]
    arguments += ["--flour-g", "1kg", "--water-g", "600"]
    mix = mix_of(flour_g=1000, room_c=30, flour_c=30, tap_c=20, water_percent=60)
    plan = check_plan(as_json(*arguments), mix, desired_c=22, friction_k=6)
    ice_g = lf.ice_by_heat_balance(600, tap_c=20, wanted_c=plan.water_c, ice_c=-18)
    assert plan.ice_g == ice_g > 0
    assert plan.pour_g == 600 - ice_g
    assert plan.pour_c == 20
    text, _ = lines(*arguments)
    assert text.startswith(
        f"Pour {600 - ice_g:.0f} g from the tap, 20.0 °C (68 °F), and {ice_g:.0f} g of ice: "
        f"together as cold as water at {told(plan.water_c)}. "
    )
    assert (
        "Weigh ice straight from the freezer (−18 °C); of wet, melting ice it takes more (--ice 0C). "
        "It is part of the water: crush it and mix until none is left. In 9 batches of 10 " in text
    )
    wet, _ = lines(*arguments, "--ice", "0C")
    assert "Weigh wet, melting ice. It is part of the water: crush it and mix until none is left. In 9 " in wet
    for words in ("If your tap is warmer", "warmer than the tap", "No ice is needed", "[[batch]]"):
        assert words not in text + wet
    hot = as_json("water", DEMO, "--tap", "40C")
    water_c, water_g = hot["water_c"], hot["water_g"]
    assert hot["ice_g"] == lf.ice_by_heat_balance(water_g, tap_c=40, wanted_c=water_c, ice_c=-18)


def test_a_tap_that_is_too_warm_is_told_without_an_amount_too():
    text, _ = lines(*WATER, "--flour", "30C", "--tap", "20C")
    plan = lf.water_by_heat_balance(mix_of(flour_c=30, tap_c=20), 24)
    assert f"Pour {plan.pour_g:.0f} g from the tap, 20.0 °C (68 °F), and {plan.ice_g:.0f} g of ice" in text
    assert plan.pour_g + plan.ice_g == 325


@pytest.mark.parametrize("command", ["water", "friction"])
def test_what_was_not_given_is_told(write, command):
    """Flour, water, salt and bowl, in this order; nothing once each is given."""
    if command == "water":
        ask = [*WATER[1:], "--mixing", "hand"]
    else:
        ask = ["--dough", "25.2C", "--water", "27C", "--room", "21C"]
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


def test_the_ice_begins_where_the_tap_is_as_warm_as_the_water():
    """No jump: a hair above the water's temperature a hair of ice is taken, and ever more as the tap gets warmer."""
    water_c = as_json(*WATER)["water_c"]
    ice_g = []
    for above_k in (-1, -1e-6, 0, 1e-6, 1e-3, 0.1, 1, 5, 20):
        tap_c = water_c + above_k
        document = as_json(*WATER, "--tap", f"{tap_c:.15f}C")
        assert document["water_c"] == water_c  # what is needed does not depend on the tap
        assert document["pour_g"] + document["ice_g"] == pytest.approx(325, rel=1e-15)
        if above_k <= 0:
            assert (document["ice_g"], document["pour_g"], document["pour_c"]) == (0, 325, water_c)
        else:
            per_k = 325 * 4.186 / (4.186 * tap_c + 333.55 + 2.05 * 18)
            assert document["ice_g"] == pytest.approx(per_k * above_k, rel=1e-6)
            assert document["pour_c"] == pytest.approx(tap_c, rel=1e-15)
        ice_g.append(document["ice_g"])
    assert ice_g == sorted(ice_g)


def test_ice_is_asked_for_only_if_the_tap_is_known():
    asks = "If your tap is warmer than that, give --tap, and the ice is worked out."
    assert asks in lines(*WATER)[0]
    plan = lf.water_by_heat_balance(mix_of(), 24)
    text, _ = lines(*WATER, "--tap", "12C")
    assert "give --tap" not in text
    start = f"Pour 325 g of water at {told(plan.water_c)}: "
    assert text.startswith(f"{start}{told_k(plan.water_c - 12)} warmer than the tap's {told(12)}. No ice is needed. In")
    # No tap is warmer than 25 °C in a kitchen where such water is asked for.
    for desired, warm in (("25.8C", False), ("25.9C", True)):
        arguments = ["water", "--desired", desired, "--room", "21C"]
        assert (as_json(*arguments)["water_c"] > 25) == warm
        assert (asks in lines(*arguments)[0]) == (not warm)
        assert "No ice is needed" not in lines(*arguments)[0]


def test_ice_that_hardly_counts_may_be_left_out():
    """Less than 1 % of the water: poured straight from the tap the dough is hardly warmer."""
    water_c = as_json(*WATER)["water_c"]
    for ice_g, words in ((0.4, True), (3.2, True), (3.3, False), (9, False)):
        # The tap at which so much ice is needed: it cools the rest of the water, and melts.
        tap_c = (325 * 4.186 * water_c + ice_g * (333.55 + 2.05 * 18)) / ((325 - ice_g) * 4.186)
        above_k = tap_c - water_c
        arguments = [*WATER, "--tap", f"{tap_c:.12f}C"]
        document = as_json(*arguments)
        assert document["ice_g"] == pytest.approx(ice_g, rel=1e-9)
        text, _ = lines(*arguments)
        straight = (
            f"Pour 325 g straight from the tap, {told(tap_c)}: it is only {told_k(above_k)} too warm; "
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
    mix = mix_of(flour_g=1000, room_c=32, tap_c=18, mixing=lf.ByMethod("spiral"))
    plan = check_plan(as_json(*arguments), mix, desired_c=18)
    assert plan.water_c < 0
    assert lines(*arguments)[0].startswith(
        f"Pour {plan.pour_g:.0f} g from the tap, {told(18)}, and {plan.ice_g:.0f} g of ice: "
        "together colder than any water alone. Weigh ice straight"
    )


# ---- the sentences that answer ---------------------------------------------------------------------------------------


LABELS = {method.name: method.label for method in lf.mixing_methods()}


@pytest.mark.parametrize(
    ("options", "basis"),
    [
        ([], "typical for kneading by hand; yours may differ"),
        (["--mixing", "hand"], "typical for kneading by hand; yours may differ"),
        *((["--mixing", name], f"typical for {label}; yours may differ") for name, label in LABELS.items()),
        (["--mixing", "spiral", "--friction", "9K"], f"typical for {LABELS['spiral']}; yours may differ"),
        (
            ["--mixing", "spiral", "--friction", "9K", "--friction-at", "20C"],
            f"typical for {LABELS['spiral']}; yours may differ",
        ),
        (["--net-gain", "4"], "from the net gain you gave"),
        (["--net-gain", "4", "--friction", "9K", "--friction-at", "20C"], "from the net gain you gave"),
        (["--friction", "6K"], "typical for kneading by hand; yours may differ"),
        (["--friction", "6K", "--friction-at", "21C"], "from the friction you gave"),
    ],
)
def test_how_sure_the_water_is(options, basis):
    options = [*options, "--tap", "15C"]  # the strongest machines need ice
    document = as_json(*WATER, *options)
    sure = f"should come out at {document['low_c']:.1f} to {document['high_c']:.1f} °C ({basis})."
    assert f"In 9 batches of 10 the dough {sure} " in lines(*WATER, *options)[0]
    assert document["low_c"] < 24 < document["high_c"]


ONE_BATCH = '[[batch]]\ndough = "25C"\nwater = "25C"\nflour = "21C"\nroom = "21C"\n'


@pytest.mark.parametrize("mixing", ["", '[mixing]\nmethod = "spiral"\n', "[mixing]\nwork_kj_per_kg = 9\n"])
def test_how_sure_the_water_is_from_batches(write, mixing):
    for count, basis in ((1, "from 1 logged batch"), (2, "from 2 logged batches"), (11, "from 11 logged batches")):
        path = write(TODAY + mixing + count * ONE_BATCH)
        document = as_json("water", path)
        sure = f"should come out at {document['low_c']:.1f} to {document['high_c']:.1f} °C ({basis})."
        assert sure in lines("water", path)[0]
        assert "(typical for " in lines("water", path, "--mixing", "spiral")[0]
        assert "(from the net gain you gave)" in lines("water", path, "--net-gain", "5")[0]


def test_how_sure_the_water_is_from_work_and_net_gain(write):
    for table, basis in (("work_kj_per_kg = 9", "work"), ("net_gain_kj_per_kg = 9", "net gain")):
        assert f"(from the {basis} you gave)." in lines("water", write(f"{TODAY}[mixing]\n{table}\n"))[0]
        with_batch = "logged batch" if basis == "work" else "the net gain you gave"
        assert with_batch in lines("water", write(f"{TODAY}[mixing]\n{table}\n{ONE_BATCH}"))[0]


def test_why_not_the_rule():
    for arguments in (WATER, [*WATER, "--flour", "-5C", "--friction", "-3K"], [*WATER[:3], *RULE]):
        text, _ = lines(*arguments)
        document = as_json(*arguments)
        assert f"Why they differ: {document['reason']}." in text
        rule = re.search(
            r"bakers' factor rule says (−?[\d.]+) °C .*?: (\d) × ([\d.]+)((?: [−+] [\d.]+)+) \(flour, room, f", text
        )
        sum_c = int(rule[2]) * float(rule[3])
        for sign, known in re.findall(r"([−+]) ([\d.]+)", rule[4]):
            sum_c += float(known) * (1 if sign == "+" else -1)
        assert float(rule[1].replace("−", "-")) == pytest.approx(sum_c, abs=0.21)  # four numbers of one decimal
        assert float(rule[1].replace("−", "-")) == pytest.approx(document["factor_rule_c"], abs=0.05001)
        makes = f"It would make the dough {document['dough_by_rule_c']:.1f} °C.".replace("-", "−")
        assert makes in text
        assert ", which is no water: " not in text


def test_a_rule_that_asks_for_no_water_is_said_so():
    arguments = ["water", "--desired", "20C", "--flour", "28C", "--room", "28C", "--friction", "10K", "--tap", "15C"]
    document = as_json(*arguments)
    assert document["factor_rule_c"] == -6
    assert (
        "The bakers' factor rule says −6.0 °C (21 °F), which is no water: "
        "3 × 20.0 − 28.0 − 28.0 − 10.0 (flour, room, friction)." in lines(*arguments)[0]
    )


def test_the_rule_counts_the_mean_of_the_flours(write):
    path = write(
        TODAY + '[[flour]]\npercent = 75\n[[flour]]\npercent = 25\nkind = "dark_rye"\ntemperature = "5C"\n'
        '[mixing]\nmethod = "hand"\n'
    )
    plan = check_plan(
        as_json("water", path, "--friction", "4K"),
        mix_of(flours=[lf.FlourShare(75), lf.FlourShare(25, "dark_rye", temperature_c=5)], mixing="hand"),
        friction_k=4,
    )
    assert plan.factor_rule_c == pytest.approx(72 - 17 - 21 - 4, rel=1e-15)
    assert "3 × 24.0 − 17.0 − 21.0 − 4.0 (flour, room, friction)" in lines("water", path, "--friction", "4K")[0]


def test_what_friction_is(write):
    plan = lf.water_by_heat_balance(mix_of(), 24)
    for arguments, friction_k, whose in (
        (WATER, plan.friction_k, "here"),
        ([*WATER, "--friction", "9F"], 5, "as you gave it"),
        (["water", write(TODAY + ONE_BATCH)], 8, "from your batches"),
        (["water", write(TODAY + ONE_BATCH), "--friction", "9F"], 5, "as you gave it"),
    ):
        assert (
            "Friction is the rule's number for mixing and all that it leaves out: "
            f"{told_k(friction_k)} {whose}; libferment friction finds yours from a batch." in lines(*arguments)[0]
        )


def test_what_a_rest_changes():
    rested = lf.water_by_heat_balance(mix_of(rest_h=0.5), 24)
    hint = f"If flour and water rest for 30 min first, take water at {told(rested.water_c)} (--rest 30min)."
    assert hint in lines(*WATER)[0]
    text, _ = lines(*WATER, "--rest", "30min")
    assert text.startswith(f"Pour 325 g of water at {told(rested.water_c)}.")
    assert (
        f"Flour and water meet at {rested.wetted_c:.1f} °C and are at {rested.rested_c:.1f} °C after the rest of "
        "30 min, when all else joins." in text
    )
    assert "(--rest 30min)" not in text
    far = ["water", "--desired", "40C", "--room", "10C"]
    with pytest.raises(lf.NoSolution):
        lf.water_by_heat_balance(mix_of(room_c=10, rest_h=0.5), 40)
    text, _ = lines(*far)
    assert "A rest of flour and water for 30 min first is out of the water's reach here." in text
    assert "(--rest 30min)" not in text
    icy = ["water", "--desired", "22C", "--room", "30C", "--tap", "20C"]
    rested = lf.water_by_heat_balance(mix_of(room_c=30, tap_c=20, rest_h=0.5), 22)
    how = f"take {rested.pour_g:.0f} g from the tap and {rested.ice_g:.0f} g of ice (--rest 30min)."
    assert rested.ice_g > 10
    assert f"If flour and water rest for 30 min first, {how}" in lines(*icy)[0]


@pytest.mark.parametrize("known", ["batch", "friction"])
def test_the_rest_it_tells_of_is_mixed_alike(write, known):
    """A rest ahead changes this dough, not what mixing adds nor the batches behind it."""
    if known == "batch":
        mixing = lf.net_gain_of(lf.net_gain_from_batches([mix_of(water_c=25)], [25]))
        arguments = ["water", write(TODAY + ONE_BATCH)]
    else:
        mixing = worth_of(6, 21, mix_of())
        arguments = [*WATER, "--friction", "6K", "--friction-at", "21C"]
    rested = lf.water_by_heat_balance(mix_of(mixing=mixing, rest_h=0.5), 24)
    assert rested.water_c > lf.water_by_heat_balance(mix_of(mixing=mixing), 24).water_c  # it cools as it rests
    hint = f"If flour and water rest for 30 min first, take water at {told(rested.water_c)} (--rest 30min)."
    assert hint in lines(*arguments)[0]


def test_what_hardly_counts_stands_in_one_row(write):
    path = write(TODAY + "[dough]\nflour_g = 900\nyeast_percent = 0.7\nsugar_percent = 1\n")
    _, rows = lines("water", path)
    small = [cells(row) for row in rows if "salt" in row]
    assert small == [["sugar, salt, instant yeast", f"{900 * 0.037:.0f} g", "", ""]]
    large = lines("water", path, "--flour-g", "900kg", "--bowl", "steel", "--bowl-g", "1kg")[1]
    (row,) = (cells(row) for row in large if "salt" in row)
    assert set(row[0].split(", ")) == {"sugar", "salt", "instant yeast", "bowl", "room"}


@pytest.mark.parametrize(
    "arguments",
    [
        WATER,
        [*WATER, "--tap", "40C"],
        [*WATER, "--net-gain", "5"],
        [*WATER, "--friction", "6K"],
        [*WATER, "--friction", "6K", "--friction-at", "18C"],
        [*WATER, "--rest", "40min", "--tap", "40C"],
        ["water", DEMO],
        ["water", BY_HAND],
    ],
)
def test_the_mix_of_the_answer_makes_the_dough(arguments):
    """The mix in the JSON is the one the answer is for: mixed forward it gives the desired dough."""
    document = as_json(*arguments)
    given = document["mix"]
    kind = getattr(lf, given["mixing"].pop("type")) if given["mixing"] else None
    inside = {
        "bowl": lf.Bowl(**given["bowl"]),
        "flours": [lf.Flour(**flour) for flour in given["flours"]],
        "waters": [lf.Water(**portion) for portion in given["waters"]],
        "mixing": kind(**given["mixing"]) if kind else None,
    }
    assert lf.dough_by_heat_balance(lf.Mix(**{**given, **inside})) == pytest.approx(document["desired_c"], abs=1e-9)


# ---- the batch to log ------------------------------------------------------------------------------------------------


def logged(*arguments, dough_c, columns=200):
    """The [[batch]] that the answer ends with, ready for a day file but for the dough that came out."""
    text = answer(*arguments, columns=columns)
    _, ask, block = text.partition("\n[[batch]]\n")
    assert ask
    before = " ".join(text.split("[[batch]]")[0].split())
    assert before.endswith(
        "Measure the dough at the end of mixing, add this to the day file, and the next plan is surer:"
    )
    assert block.count("__") == 1
    return f"[[batch]]\n{block.replace('__', f'{dough_c:g}')}"


@pytest.mark.parametrize("columns", [40, 60, 200, None])
def test_the_batch_to_log_is_ready(columns):
    block = logged("water", BY_HAND, dough_c=25.3, columns=columns)
    water_c = as_json("water", BY_HAND)["water_c"]
    (batch,) = days.tomllib.loads(block)["batch"]
    assert batch.pop("minutes", 12) == 12  # the file's own
    known = {"dough": "25.3C", "water": f"{water_c:.1f}C", "flour": "18.5C", "room": "20C", "rest": "45min"}
    assert batch == known
    (batch,) = days.tomllib.loads(logged(*WATER, "--flour", "64F", dough_c=24, columns=columns))["batch"]
    assert (batch["flour"], batch["room"]) == ("17.7778C", "21C")
    (batch,) = days.tomllib.loads(logged(*WATER, dough_c=-1.5, columns=columns))["batch"]
    assert (batch["flour"], batch["room"], batch["dough"], "rest" in batch) == ("21C", "21C", "-1.5C", False)


@pytest.mark.parametrize(
    "tables",
    [
        'room = "21C"\n[dough]\nflour_g = 800\n[mixing]\nmethod = "hand"\n',
        'room = "15C"\nflour = "-3C"\n[dough]\nflour_g = 800\n[mixing]\nmethod = "hand"\nrest = "1.5h"\n',
        'room = "16C"\n[dough]\nflour_g = 800\n[mixing]\nnet_gain_kj_per_kg = 7\nminutes = 12\n',
        'room = "19C"\nbowl = "35C"\n[bowl]\nmaterial = "ceramic"\nmass_g = 2500\n[dough]\nflour_g = 800\n'
        '[mixing]\nmethod = "hand"\n',
        'room = "19C"\npreferment = "5C"\n[preferment]\nflour_g = 150\nwater_g = 150\n[dough]\nflour_g = 800\n'
        '[mixing]\nmethod = "hand"\n',
        'room = "19C"\nmilk = "5C"\negg = "6C"\nbutter = "12C"\n[dough]\nflour_g = 800\nmilk_percent = 25\n'
        'egg_percent = 10\nbutter_percent = 15\n[mixing]\nmethod = "hand"\n',
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


def test_a_batch_to_log_keeps_the_minutes_that_options_gave(write):
    """They are in no file: without them the batch would hold in rooms like its own alone."""
    mixing = ["--mixing", "spiral", "--minutes", "6"]
    ask = ["water", "--desired", "24C", "--room", "15C", *mixing]
    water_c = as_json(*ask)["water_c"]
    planned = as_json("friction", "--dough", "24C", "--water", f"{water_c:.12f}C", "--room", "15C", *mixing)
    found = as_json("friction", write(logged(*ask, dough_c=24)))
    assert found["minutes"] == planned["minutes"] == 6
    assert found["net_gain_kj_per_kg"]["mean"] == pytest.approx(planned["net_gain_kj_per_kg"]["mean"], abs=0.102)


def test_a_batch_with_ice_is_not_asked_for():
    for arguments in ([*WATER, "--tap", "30C"], ["water", DEMO, "--tap", "40C"]):
        assert as_json(*arguments)["ice_g"] > 0
        text, _ = lines(*arguments)
        assert "[[batch]]" not in text
        assert "Measure the dough" not in text


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
        ["friction", "--dough", "25C", "--water", "25C", "--room", "20C"],
        ["rise", DEMO],
        ["rise", "--rise", "330", *ONE],
    ],
)
def test_narrow_screens_show_every_number(arguments, columns):
    wide, narrow = answer(*arguments).split(), answer(*arguments, columns=columns).split()
    # A table may have become lines, so words may be repeated or gone with it; no number may.
    assert [word for word in wide if re.search(r"\d", word) and word not in narrow] == []
    if columns:
        assert max(map(len, answer(*arguments, columns=columns).splitlines())) <= columns


# ---- notices of the water --------------------------------------------------------------------------------------------

YEAST = "[dough]\nyeast_percent = 0.7\n"


HOT = ["--flour", "18C", "--room", "25C", "--mixing", "folds"]
CHILLED = ["--flour", "2C", "--room", "4C", "--tap", "8C", "--mixing", "folds"]
COLD = ["--desired", "22C", "--flour", "40C", "--room", "25C", "--mixing", "folds"]


@pytest.mark.parametrize(
    ("arguments", "codes", "words"),
    [
        (COLD, ["water_cold_for_instant"], "damages instant yeast"),
        (["--desired", "35.9C", *HOT], [], ""),
        (["--desired", "36C", *HOT], ["water_warm_for_yeast"], "too warm to wet yeast in"),
        (["--desired", "38C", *HOT], ["water_warm_for_yeast"], "too warm to wet yeast in"),
        (
            ["--desired", "38.1C", *HOT],
            ["water_warm_for_yeast", "dough_warm"],
            "dough at 38.1 °C is near the yeast's optimum",
        ),
        (["--desired", "39C", *HOT], ["water_hot_for_yeast", "dough_warm"], "harms yeast within minutes"),
        (["--desired", "43C", *HOT], ["water_hot_for_yeast", "water_scalds", "dough_warm"], "can scald skin"),
        (["--desired", "5C", *CHILLED], ["water_cold_for_instant"], "damages instant yeast"),
        (["--desired", "4.9C", *CHILLED], ["water_cold_for_instant", "dough_cold"], "dough at 4.9 °C hardly rises"),
        (
            [*COLD[2:], "--desired", "24C", "--yeast-water", "9C", "--yeast-water-g", "50g"],
            ["water_cold_for_instant"],
            "water at 9 °C damages instant yeast",
        ),
    ],
)
def test_notices_of_the_water(write, arguments, codes, words):
    """Exactly these, in the JSON and on the screen."""
    arguments = ["water", write(YEAST + "flour_g = 500\n"), *arguments]
    notices = as_json(*arguments)["notices"]
    assert [notice["code"] for notice in notices] == codes
    text, _ = lines(*arguments)
    assert words in text
    for notice in notices:
        assert f"{notice['severity']}: {notice['text']}" in text
    assert len(re.findall(r"(?:note|info|caution|warning): ", text)) == len(codes)


def test_an_info_is_printed_as_a_note():
    (notice,) = as_json(*WATER)["notices"]
    assert (notice["code"], notice["severity"]) == ("mixing_assumed", "info")
    text, _ = lines(*WATER)
    assert f" note: {notice['text']} " in text
    assert "info: " not in text


@pytest.mark.parametrize("dough", ["", YEAST, '[dough]\nyeast = "compressed"\nyeast_percent = 2\n'])
def test_hot_water_for_the_yeast_is_told_whether_or_not_yeast_is_named(write, dough):
    """Water that wets yeast touches yeast: at 60 °C it still may be, above it kills and is refused."""
    path = write(dough or "[dough]\n")
    for yeast_c, codes in (
        (45, []),
        (45.5, ["water_warm_for_yeast"]),
        (50.5, ["water_hot_for_yeast"]),
        (55.5, ["water_hot_for_yeast", "water_scalds"]),
        (60, ["water_hot_for_yeast", "water_scalds"]),
    ):
        hot = ["--flour-g", "500", "--mixing", "hand", "--yeast-water", f"{yeast_c}C", "--yeast-water-g", "50"]
        notices = as_json(WATER[0], path, *WATER[1:], *hot)["notices"]
        assert [notice["code"] for notice in notices] == codes
        for notice in notices:
            assert f"water at {yeast_c:g} °C " in notice["text"]
            assert f"{notice['severity']}: {notice['text']}" in lines(WATER[0], path, *WATER[1:], *hot)[0]
    for yeast_water in ("60.01C", "140.1F"):
        text = refusal(2, *WATER, "--flour-g", "500", "--yeast-water", yeast_water, "--yeast-water-g", "50")
        assert "is outside 0 to 60 °C" in text
    above = refusal(1, "water", path, "--desired", "44C", "--room", "5C")
    assert "above 60 °C it kills yeast and scalds" in above


def test_cautions_about_yeast_belong_to_water_that_touches_yeast(write):
    def codes(*arguments):
        return [notice["code"] for notice in as_json("water", *arguments, *COLD)["notices"]]

    assert codes(write(YEAST)) == ["water_cold_for_instant"]
    assert codes() == []  # no yeast
    apart = ["--flour-g", "500", "--yeast-water", "30C", "--yeast-water-g", "60"]
    assert codes(write(YEAST), *apart) == []
    assert codes(write(YEAST), "--rest", "20min") == []  # it joins after the rest


def test_notices_of_another_yeast(write):
    for yeast, codes in (("compressed", []), ("active_dry", []), ("instant", ["water_cold_for_instant"])):
        path = write(f'[dough]\nyeast = "{yeast}"\nyeast_percent = 2\n')
        document = as_json("water", path, *COLD)
        assert document["water_c"] < 10
        assert [notice["code"] for notice in document["notices"]] == codes


def test_milk_or_egg_in_a_long_rest_is_warned_of(write):
    for key in ("milk_percent", "egg_percent"):
        path = write(f'{TODAY.replace("21C", "24C")}[dough]\nflour_g = 5000\n{key} = 20\n[mixing]\nmethod = "folds"\n')
        for rest in ("0h", "3.9h"):
            assert as_json("water", path, "--rest", rest)["notices"] == []
        (notice,) = as_json("water", path, "--rest", "5h")["notices"]
        assert (notice["code"], notice["severity"]) == ("perishable_held", "warning")
        assert f"warning: {notice['text']}" in lines("water", path, "--rest", "5h")[0]


def test_what_the_water_needs():
    text = refusal(2, "water", "--room", "24C", "--flour", "20C")
    assert text == "error: the water temperature needs [water] desired (--desired)\n"
    text = refusal(2, "water", "--desired", "24C", "--flour", "20C")
    assert text == "error: the water temperature needs [today] room (--room); measure it where the dough is mixed\n"


# ---- water from batches, and the friction ----------------------------------------------------------------------------

BATCHES = (
    {"dough": 25.2, "water": 27, "flour": 20, "room": 21},
    {"dough": 24.1, "water": 24.5, "flour": 20.5, "room": 22},
    {"dough": 25.0, "water": 26, "flour": 19, "room": 20.5},
)


def batch_tables(batches, unit="C"):
    """The batches as a day file logs them."""
    write = (lambda c: f"{lf.fahrenheit(c):.10f}F") if unit == "F" else (lambda c: f"{c}C")
    return "".join("[[batch]]\n" + "".join(f'{key} = "{write(c)}"\n' for key, c in batch.items()) for batch in batches)


def learned_of(batches, **changes):
    """Friction and net gain of batches that were mixed like mix_of(**changes)."""
    friction = lf.friction_from_batches(**{f"{key}_c": [batch[key] for batch in batches] for key in batches[0]})
    mixes = [mix_of(**{**changes, "room_c": b["room"]}, flour_c=b["flour"], water_c=b["water"]) for b in batches]
    return friction, lf.net_gain_from_batches(mixes, [batch["dough"] for batch in batches])


@pytest.mark.parametrize("count", [1, 2, 3])
def test_water_from_logged_batches(write, count):
    path = write(TODAY + batch_tables(BATCHES[:count]))
    friction, gain = learned_of(BATCHES[:count])
    plan = lf.water_by_heat_balance(mix_of(mixing=lf.net_gain_of(gain)), 24, friction_k=friction.mean)
    document = as_json("water", path)
    answered = {**plain(plan.to_dict())}
    assert {key: document[key] for key in answered} == answered
    assert document["friction_given"]
    given_k = as_json("water", path, "--friction", "3K")
    plan = lf.water_by_heat_balance(mix_of(mixing=lf.net_gain_of(gain)), 24, friction_k=3)
    assert (given_k["water_c"], given_k["factor_rule_c"]) == (plan.water_c, plan.factor_rule_c)


def test_batches_that_agree_make_a_surer_plan(write):
    """The spread that is told is that of the net gain, 90 % of a normal distribution."""
    alike = [dict(BATCHES[0], dough=25.2 + off) for off in (-0.01, 0, 0.01)]
    apart = [dict(BATCHES[0], dough=25.2 + off) for off in (-1.5, 0, 1.5)]
    widths = []
    for batches in (alike, BATCHES[:1], apart):
        document = as_json("water", write(TODAY + batch_tables(batches)))
        width_k = 1.645 * lf.net_gain_of(learned_of(batches)[1]).sd_kj_per_kg * document["k_per_kj_per_kg"]
        assert document["high_c"] - 24 == pytest.approx(width_k, rel=1e-9)
        assert 24 - document["low_c"] == pytest.approx(width_k, rel=1e-9)
        widths.append(width_k)
    assert widths == sorted(widths)


def test_friction_of_one_batch():
    arguments = ["friction", "--dough", "25.2C", "--water", "27C", "--flour", "20C", "--room", "21C"]
    friction, gain = learned_of(BATCHES[:1])
    assert as_json(*arguments) == {
        "libferment": lf.__version__,
        "command": "friction",
        "friction_k": friction.to_dict(),
        "net_gain_kj_per_kg": gain.to_dict(),
        "minutes": 0,
        "notices": [],
    }
    assert friction.mean == lf.friction_from_batch(dough_c=25.2, flour_c=20, room_c=21, water_c=27)
    assert friction.mean == pytest.approx(3 * 25.2 - 20 - 21 - 27, rel=1e-12)
    text, rows = lines(*arguments)
    numbers = [f"{friction.mean:.1f} K ({1.8 * friction.mean:.0f} °F)", f"{gain.mean:.1f} kJ/kg"]
    assert [cells(row) for row in rows] == [["1", *numbers], ["mean", *numbers]]

    def holds(rooms):
        return (
            "The net gain is the heat your mixing leaves in a kilogram of dough. It holds in "
            f"{rooms}, for this way of mixing and this size of batch. "
            "The friction holds in rooms like these batches' alone."
        )

    unknown = holds("rooms much like these (tell --mixing, and it holds in others)")
    assert f"{unknown} Next time: libferment water ... --net-gain {gain.mean:.1f} Assumed: " in text
    assert "--minutes" not in text
    assert "caution" not in text
    known = holds("warm and cold rooms")
    for options, minutes in ((["--mixing", "Stand mixer", "--minutes", "7.5"], 7.5), (["--mixing", "hand"], 10)):
        document = as_json(*arguments, *options)
        mixing = lf.ByNetGain(0, minutes=minutes)
        gain = learned_of(BATCHES[:1], mixing=mixing)[1]
        assert (document["minutes"], document["net_gain_kj_per_kg"]) == (minutes, gain.to_dict())
        text, _ = lines(*arguments, *options)
        next_time = f"Next time: libferment water ... --net-gain {gain.mean:.1f} --minutes {minutes:g}"
        assert f"{known} {next_time} Assumed: " in text
    text, _ = lines("friction", DEMO)  # which says how it was mixed
    gain_kj = demo_learned()[1].mean
    assert text.endswith(f"{known} Next time: libferment water ... --net-gain {gain_kj:.1f} --minutes 7")
    assert as_json("friction", DEMO)["minutes"] == 7


def test_next_time_is_the_next_plan(write):
    """The options it prints, given to the day, ask for the water that its batches ask for."""
    without = Path(DEMO).read_text(encoding="utf-8")
    start = without.index("[[batch]]")
    without = without[:start] + without[without.index("[[stage]]") :]
    text, _ = lines("friction", DEMO)
    options = re.search(r"Next time: libferment water \.\.\. (--net-gain [\d.]+ --minutes \d+)", text)[1].split()
    next_c = as_json("water", write(without), *options)["water_c"]
    assert next_c == pytest.approx(as_json("water", DEMO)["water_c"], abs=0.06)  # printed to 0.1 kJ/kg


@pytest.mark.parametrize(("water_c", "unusual"), [(13.6, True), (14, False), (27, False), (30.8, False), (31.2, True)])
def test_a_net_gain_that_is_unusual_is_cautioned_of(write, water_c, unusual):
    caution = (
        "caution: a net gain outside −3 to 25 kJ/kg is unusual; look for a mistyped temperature or a missing bowl."
    )
    batch = {**BATCHES[0], "water": water_c}
    (gain,) = as_json("friction", write(batch_tables([batch])))["net_gain_kj_per_kg"]["each"]
    assert (-3 <= gain <= 25) == (not unusual)
    assert abs(gain - (25 if gain > 10 else -3)) < 1 or water_c == 27  # near the bounds
    path = write(batch_tables([BATCHES[0], batch, BATCHES[2]]))  # one of several is enough
    for arguments in (["friction", write(batch_tables([batch]))], ["friction", path]):
        assert (caution in lines(*arguments)[0]) == unusual


@pytest.mark.parametrize(
    ("table", "mixing", "minutes"),
    [
        ('method = "spiral"', lf.ByMethod("spiral"), "usual"),
        ('method = "hand"\nminutes = 25', lf.ByMethod("hand", 25), 25),
        ("net_gain_kj_per_kg = 12\nminutes = 25", lf.ByNetGain(0, minutes=25), None),
        ("work_kj_per_kg = 50", lf.ByWork(50), 0),
    ],
)
def test_the_minutes_of_mixing_count_for_what_batches_say(write, table, mixing, minutes):
    """In a cold kitchen the dough loses heat while it is mixed, and mixing added that much more."""
    batches = [{"dough": 24, "water": 32, "flour": 12, "room": 10}, {"dough": 23, "water": 31, "flour": 11, "room": 8}]
    path = write(f"{TODAY}[mixing]\n{table}\n" + batch_tables(batches))
    friction, gain = learned_of(batches, mixing=mixing)
    document = as_json("friction", path)
    assert (document["friction_k"], document["net_gain_kj_per_kg"]) == (friction.to_dict(), gain.to_dict())
    assert (gain.mean > learned_of(batches)[1].mean) == (minutes != 0)
    if minutes is None:  # the net gain that is given counts before that of the batches
        plan = lf.water_by_heat_balance(mix_of(mixing=lf.ByNetGain(12, minutes=25)), 24, friction_k=friction.mean)
    else:
        usual = {method.name: method.usual_min for method in lf.mixing_methods()}
        learned = lf.net_gain_of(gain, usual["spiral"] if minutes == "usual" else minutes)
        plan = lf.water_by_heat_balance(mix_of(mixing=learned), 24, friction_k=friction.mean)
    assert as_json("water", path)["water_c"] == plan.water_c


def test_friction_of_several_batches(write):
    path = write(batch_tables(BATCHES))
    friction, gain = learned_of(BATCHES)
    document = as_json("friction", path)
    assert (document["friction_k"], document["net_gain_kj_per_kg"]) == (friction.to_dict(), gain.to_dict())
    assert (len(friction.each), friction.sd is None) == (3, False)
    _, rows = lines("friction", path)
    assert [cells(row) for row in rows] == [
        *(
            [str(place), f"{k:.1f} K ({1.8 * k:.0f} °F)", f"{kj:.1f} kJ/kg"]
            for place, (k, kj) in enumerate(zip(friction.each, gain.each, strict=True), 1)
        ),
        ["mean", f"{friction.mean:.1f} K ({1.8 * friction.mean:.0f} °F)", f"{gain.mean:.1f} kJ/kg"],
        ["spread (sd)", f"{friction.sd:.1f} K ({1.8 * friction.sd:.0f} °F)", f"{gain.sd:.1f} kJ/kg"],
    ]


def test_friction_in_fahrenheit_is_the_same(write):
    celsius = as_json("friction", "--dough", "25C", "--water", "30C", "--flour", "20C", "--room", "15C")
    fahrenheit = as_json("friction", "--dough", "77F", "--water", "86F", "--flour", "68F", "--room", "59F")
    assert celsius == fahrenheit
    assert celsius["friction_k"] == {"mean": 10, "sd": None, "each": [10]}
    in_celsius, in_fahrenheit = (as_json("friction", write(batch_tables(BATCHES, unit))) for unit in "CF")
    for name in ("friction_k", "net_gain_kj_per_kg"):
        assert in_fahrenheit[name]["each"] == pytest.approx(in_celsius[name]["each"], abs=1e-6)
        assert in_fahrenheit[name]["sd"] == pytest.approx(in_celsius[name]["sd"], abs=1e-6)


@pytest.mark.parametrize(
    ("options", "changes", "preferment_c"),
    [
        (["--flour-g", "2kg", "--bowl", "glass", "--bowl-g", "3kg"], {"bowl": lf.Bowl("glass", 3000)}, None),
        (["--flour-g", "2kg", "--rest", "40min"], {"rest_h": 40 / 60}, None),
        (["--flour-g", "2kg", "--water-g", "1.6kg"], {"water_percent": 80}, None),
        (
            ["--flour-g", "2kg", "--preferment-g", "500g", "--preferment", "26C"],
            {"preferments": [lf.Preferment(250, 250, temperature_c=26)]},
            26,
        ),
        (["--flour-g", "2kg", "--preferment-g", "500g"], {"preferments": [lf.Preferment(250, 250)]}, 21),
    ],
)
def test_every_option_of_the_friction_counts(options, changes, preferment_c):
    batch = ["friction", "--dough", "25.2C", "--water", "27C", "--flour", "20C", "--room", "21C"]
    document = as_json(*batch, *options)
    mix = mix_of(flour_g=2000, flour_c=20, water_c=27, **changes)
    gain = lf.net_gain_from_batches([mix], [25.2])
    assert document["net_gain_kj_per_kg"] == gain.to_dict()
    known = {"flour_c": 20, "room_c": 21, "water_c": 27, "preferment_c": preferment_c}
    assert document["friction_k"]["mean"] == lf.friction_from_batch(dough_c=25.2, **known)
    assert document["net_gain_kj_per_kg"] != as_json(*batch, "--flour-g", "2kg")["net_gain_kj_per_kg"]


def test_a_batchs_own_bowl_and_preferment(write):
    batch = {**BATCHES[0], "bowl": 35, "preferment": 28}
    path = write(
        '[dough]\nflour_g = 800\n[bowl]\nmaterial = "steel"\nmass_g = 2500\n'
        "[preferment]\nflour_g = 100\nwater_g = 90\n" + batch_tables([batch])
    )
    mix = mix_of(
        flour_g=800,
        flour_c=20,
        water_c=27,
        bowl=lf.Bowl("steel", 2500, temperature_c=35),
        preferments=[lf.Preferment(100, 90, temperature_c=28)],
    )
    document = as_json("friction", path)
    assert document["net_gain_kj_per_kg"]["mean"] == lf.net_gain_from_batch(mix, 25.2)
    friction_k = lf.friction_from_batch(dough_c=25.2, flour_c=20, room_c=21, water_c=27, preferment_c=28)
    assert document["friction_k"]["mean"] == friction_k == pytest.approx(4 * 25.2 - 20 - 21 - 27 - 28, rel=1e-12)


def test_a_batchs_own_rest_minutes_and_enrichments(write):
    """Each moves the net gain as it does in the mix of that batch; none is taken from another."""
    tables = "[dough]\nflour_g = 800\nmilk_percent = 20\negg_percent = 10\nbutter_percent = 15\n"
    tables += '[mixing]\nmethod = "Stand mixer"\nminutes = 12\n'
    percent = {"milk_percent": 20, "egg_percent": 10, "butter_percent": 15}
    batch, gains = {**BATCHES[0], "room": 12}, []
    for lines_of_batch, changes in (
        ("", {}),
        ('rest = "40min"\n', {"rest_h": 40 / 60}),
        ("minutes = 25\n", {"mixing": lf.ByNetGain(0, minutes=25)}),
        ("minutes = 0\n", {"mixing": lf.ByNetGain(0, minutes=0)}),
        ('milk = "4C"\n', {"milk_c": 4}),
        ('egg = "41F"\n', {"egg_c": 5}),
        ('butter = "16C"\n', {"butter_c": 16}),
        (
            'rest = "0.5h"\nminutes = 6\nmilk = "4C"\negg = "5C"\nbutter = "16C"\n',
            {"rest_h": 0.5, "mixing": lf.ByNetGain(0, minutes=6), "milk_c": 4, "egg_c": 5, "butter_c": 16},
        ),
    ):
        known = {"mixing": lf.ByNetGain(0, minutes=12), **percent, **changes}
        mix = mix_of(flour_g=800, room_c=12, flour_c=20, water_c=27, **known)
        plain_batch = batch_tables([batch])
        path = write(tables + plain_batch + lines_of_batch + plain_batch)  # the other one has nothing of it
        document = as_json("friction", path)
        first, second = document["net_gain_kj_per_kg"]["each"]
        assert first == lf.net_gain_from_batch(mix, 25.2)
        gains.append(first)
        assert second == gains[0]
        assert document["minutes"] == 12  # today's
    assert len(set(gains)) == len(gains)


def test_a_batch_knows_nothing_of_today(write):
    """What a batch does not name had the room's temperature of that day, and no rest."""
    tables = "[dough]\nflour_g = 800\nmilk_percent = 20\negg_percent = 10\nbutter_percent = 15\n"
    tables += '[bowl]\nmaterial = "steel"\nmass_g = 2500\n[preferment]\nflour_g = 100\nwater_g = 90\n'
    tables += batch_tables(BATCHES[:1])
    today = '[today]\nbowl = "3C"\npreferment = "4C"\nflour = "1C"\nroom = "2C"\nmilk = "5C"\negg = "6C"\n'
    today += 'butter = "7C"\ntap = "8C"\nice = "-1C"\nrefrigerator = "4C"\n'
    alone = as_json("friction", write(tables))
    assert as_json("friction", write(today + tables)) == alone
    assert as_json("friction", write(today + '[mixing]\nrest = "50min"\n' + tables)) == alone
    options = ["--room", "9C", "--flour", "8C", "--preferment", "7C", "--rest", "1h"]
    assert as_json("friction", write(tables), *options) == alone
    # Today's mixing is not a batch's either: its minutes are those of the file, as long as it says nothing else.
    known = as_json("friction", write('[mixing]\nmethod = "hand"\nminutes = 8\n' + tables))
    mixed = as_json("water", write(TODAY + '[mixing]\nmethod = "hand"\nminutes = 8\n' + tables), "--minutes", "20")
    assert mixed["mix"]["mixing"]["net_gain_kj_per_kg"] == known["net_gain_kj_per_kg"]["mean"]
    assert mixed["mix"]["mixing"]["minutes"] == 20


def test_options_say_how_the_batches_of_a_file_were_mixed(write):
    """Where the file does not say it: the same as if it did."""
    cold = [{"dough": 24, "water": 32, "flour": 12, "room": 10}, {"dough": 23, "water": 31, "flour": 11, "room": 8}]
    said = as_json("friction", write('[mixing]\nmethod = "spiral"\nminutes = 9\n' + batch_tables(cold)))
    silent = write(batch_tables(cold))
    assert said["net_gain_kj_per_kg"]["mean"] > as_json("friction", silent)["net_gain_kj_per_kg"]["mean"]
    assert as_json("friction", silent, "--mixing", "spiral", "--minutes", "9") == said
    # A file that says something else is overruled, but not what a batch says of itself.
    hand = '[mixing]\nmethod = "hand"\nminutes = 20\n'
    other = write(hand + batch_tables(cold))
    assert as_json("friction", other, "--minutes", "9") == said
    assert as_json("friction", other, "--mixing", "spiral", "--minutes", "9") == said
    other = write(hand + batch_tables(cold[:1]) + "minutes = 15\n" + batch_tables(cold[1:]))
    first, second = as_json("friction", other, "--minutes", "9")["net_gain_kj_per_kg"]["each"]
    own = mix_of(room_c=10, flour_c=12, water_c=32, mixing=lf.ByNetGain(0, minutes=15))
    assert (first, second) == (lf.net_gain_from_batch(own, 24), said["net_gain_kj_per_kg"]["each"][1])


def test_friction_of_the_demo_day():
    friction_k, gain = demo_learned()
    document = as_json("friction", DEMO)
    assert document["friction_k"] == {"mean": friction_k, "sd": None, "each": [friction_k]}
    assert document["net_gain_kj_per_kg"] == gain.to_dict()
    # A batch given by options counts before those of the file.
    other = as_json("friction", BY_HAND, "--dough", "24C", "--water", "30C")
    assert other["friction_k"]["each"] == [lf.friction_from_batch(dough_c=24, flour_c=18.5, room_c=20, water_c=30)]
    mix = by_hand_mix().replace(water_c=30)  # mixed like today's dough, rest and minutes too
    assert other["net_gain_kj_per_kg"]["each"] == [lf.net_gain_from_batch(mix, 24)]


def test_the_flour_of_one_batch_has_the_rooms_temperature_if_it_is_not_given():
    batch = ["friction", "--dough", "25.2C", "--water", "27C", "--room", "21C"]
    assert as_json(*batch) == as_json(*batch, "--flour", "21C") != as_json(*batch, "--flour", "20C")


def test_a_net_gain_that_was_found_gives_the_batch_again(write):
    """What `friction` says, given to `water`, asks for the water of that batch."""
    found = as_json("friction", "--dough", "25.2C", "--water", "27C", "--flour", "20C", "--room", "21C")
    gain, friction_k = found["net_gain_kj_per_kg"]["mean"], found["friction_k"]["mean"]
    arguments = ["water", "--desired", "25.2C", "--flour", "20C", "--room", "21C", "--net-gain", f"{gain:.15f}"]
    document = as_json(*arguments, "--friction", f"{friction_k:.15f}K")
    assert document["water_c"] == pytest.approx(27, abs=1e-9)
    assert document["factor_rule_c"] == pytest.approx(27, abs=1e-9)


# ---- one rise --------------------------------------------------------------------------------------------------------


def test_hours_to_a_rise():
    document = as_json("rise", "--rise", "100", *ONE)
    hours = lf.hours_to_rise(100, dough_c=18, yeast_percent=0.6)
    assert document["hours"] == hours
    assert {**document, "notices": None} == {
        "libferment": lf.__version__,
        "command": "rise",
        "rise_percent": 100,
        "dough_c": 18,
        "yeast": "instant",
        "yeast_percent": 0.6,
        **lf.explain(100, dough_c=18, yeast_percent=0.6).to_dict(),
        "notices": None,
    }
    text = answer("rise", "--rise", "100", *ONE)
    assert text.startswith(f"{quantities.clock_text(hours)} to a rise of 100 % with the dough at 18.0 °C (64 °F)")
    factors = lf.explain(100, dough_c=18, yeast_percent=0.6).factors
    assert re.search(rf"temperature +│ +25 │ +18 │ +{factors['temperature']:.2f}", text)


def test_every_option_of_the_dough_counts():
    options = {
        "--yeast": "active_dry",
        "--salt-percent": "1.5",
        "--water-percent": "75",
        "--sugar-percent": "6",
        "--gluten-percent": "2",
        "--altitude-m": "1200",
    }
    arguments = [word for option in options.items() for word in option]
    dough = {
        "yeast": "active_dry",
        "salt_percent": 1.5,
        "water_percent": 75,
        "sugar_percent": 6,
        "gluten_percent": 2,
        "altitude_m": 1200,
    }
    document = as_json("rise", "--rise", "80", *ONE, *arguments)
    assert document["hours"] == lf.hours_to_rise(80, dough_c=18, yeast_percent=0.6, **dough)
    after = as_json("rise", "--after", "3h", *ONE, *arguments)
    assert after["rise_percent"] == lf.rise_after(3, dough_c=18, yeast_percent=0.6, **dough)


def test_rise_in_fahrenheit_is_the_same():
    yeast = ["--yeast-percent", "1"]
    in_celsius = as_json("rise", "--rise", "90", "--dough", "25C", *yeast)
    assert as_json("rise", "--rise", "90", "--dough", "77F", *yeast) == in_celsius


def test_rise_after_a_time():
    rise_percent = lf.rise_after(1.5, dough_c=18, yeast_percent=0.6)
    for time in ("90min", "1.5h", "1,5h"):
        document = as_json("rise", "--after", time, *ONE)
        assert (document["time_h"], document["rise_percent"]) == (1.5, rise_percent)
    assert answer("rise", "--after", "90min", *ONE).startswith(f"a rise of {rise_percent:.0f} % after 1 h 30 min")
    assert as_json("rise", "--after", "0h", *ONE)["rise_percent"] == 0


def test_notices_of_a_rise():
    little = as_json("rise", "--rise", "100", "--dough", "40C", "--yeast-percent", "0.02", "--sugar-percent", "12")
    assert [notice["code"] for notice in little["notices"]] == ["dough_warm", "yeast_very_low", "sugar_high"]
    far = as_json("rise", "--rise", "330", *ONE)
    assert [notice["code"] for notice in far["notices"]] == ["rise_over_proofed"]
    late = as_json("rise", "--after", "200h", *ONE)
    assert [notice["code"] for notice in late["notices"]] == ["rise_over_proofed"]
    assert as_json("rise", "--rise", "100", *ONE)["notices"] == []


# ---- a piece in a place ----------------------------------------------------------------------------------------------

PIECE = ("--dough", "25C", "--room", "16C", "--piece", "tub", "--piece-g", "1.5kg", "--yeast-percent", "0.6")


def test_a_rise_in_a_room_colder_than_the_dough():
    document = as_json("rise", "--rise", "100", *PIECE)
    flour_g = 1500 / (1 + 0.65 + 0.02 + 0.006)
    mix = lf.Mix(flour_g=flour_g, water_g=0.65 * flour_g, salt_g=0.02 * flour_g, instant_g=0.006 * flour_g, dough_c=25)
    stage = lf.Stage("rise", surroundings=lf.Surroundings.room(16), until_rise_percent=100)
    (result,) = lf.simulate(lf.Process([mix, stage])).stages
    shown = document["stage"]
    assert document["flour_g"] == pytest.approx(flour_g, rel=1e-12)
    assert shown["hours"] == pytest.approx(result.hours, rel=1e-9)
    assert shown["end_c"] == pytest.approx(result.end_c, rel=1e-9)
    assert document["constant_hours"] == pytest.approx(lf.hours_to_rise(100, dough_c=25, yeast_percent=0.6), rel=1e-9)
    text = answer("rise", "--rise", "100", *PIECE)
    assert text.startswith(
        f"{quantities.clock_text(result.hours)} to a rise of 100 %; the dough goes from 25.0 °C (77 °F)"
    )
    constant = quantities.clock_text(document["constant_hours"])
    late = quantities.clock_text(result.hours - document["constant_hours"])
    assert f"A dough that stayed at 25.0 °C (77 °F) would take {constant}: that would be {late} too early." in text
    assert f"Be back by {quantities.clock_text(result.be_back_by_h)}" in text
    assert re.search(r"1 h 00 min +│ +16\.0 °C +│ +23\.2 °C +│ +35 %", text)


def test_how_far_in_a_refrigerator():
    options = (
        "--dough",
        "24C",
        "--refrigerator",
        "6C",
        "--piece",
        "ball",
        "--piece-g",
        "900g",
        "--yeast-percent",
        "0.4",
    )
    document = as_json("rise", "--after", "9h", *options)
    assert document["stage"]["hours"] == 9
    assert [notice["code"] for notice in document["notices"]] == ["refrigerator_warm"]
    assert f"a rise of {document['stage']['rise_percent']:.0f} % after 9 h 00 min" in answer(
        "rise", "--after", "9h", *options
    )


def test_places_and_pieces_count():
    def hours(*options):
        return as_json("rise", "--rise", "100", "--yeast-percent", "0.6", *options)["stage"]["hours"]

    warm = ("--dough", "25C")
    assert hours(*warm, "--room", "16C") > hours(*warm, "--room", "20C") > hours(*warm, "--proof-box", "30C")
    small, large = ((*warm, "--room", "16C", "--piece", "ball", "--piece-g", grams) for grams in ("100g", "5kg"))
    assert hours(*small) > hours(*large)
    assert hours(*warm, "--room", "60F") == pytest.approx(hours(*warm, "--room", f"{lf.celsius(60):.9f}C"), rel=1e-6)
    lid, film = ((*warm, "--room", "16C", "--piece", "tub", "--cover", cover) for cover in ("lid", "film"))
    assert hours(*lid) < hours(*film)


def test_temperature_logs_on_the_command_line(tmp_path):
    room = tmp_path / "room.csv"
    room.write_text("time_h,temperature_c\n0,16\n20,16\n", encoding="utf-8")
    options = ("--rise", "100", "--yeast-percent", "0.6", "--dough", "25C")
    by_log = as_json("rise", *options, "--room-log", str(room))["stage"]["hours"]
    assert by_log == pytest.approx(as_json("rise", *options, "--room", "16C")["stage"]["hours"], rel=1e-9)
    probe = tmp_path / "probe.csv"
    probe.write_text("hours;temp °F\n0;77\n20;77\n", encoding="utf-8")
    held = as_json("rise", "--rise", "100", "--yeast-percent", "0.6", "--dough-log", str(probe))["stage"]
    assert held["hours"] == pytest.approx(lf.hours_to_rise(100, dough_c=25, yeast_percent=0.6), rel=1e-9)
    assert held["time_constant_h"] is None
    room.write_text("time_h,temperature_c\n0,16\n2,17\n1,18\n", encoding="utf-8")
    text = refusal(2, "rise", *options, "--room-log", str(room))
    assert 'room.csv: line 4: the time "1" goes back from "2"' in text
    assert "there is no file" in refusal(2, "rise", *options, "--room-log", str(tmp_path / "none.csv"))


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--rise", "100", "--room", "16C", "--yeast-percent", "0.6"), "missing --dough"),
        (("--rise", "100", "--room", "16C", "--dough", "25C"), "missing --yeast-percent"),
        (("--rise", "100", *ONE, "--room", "16C", "--refrigerator", "4C"), "give one place: --room or --refrigerator"),
        (("--rise", "100", *ONE, "--piece", "tub"), "a piece needs its place: --room, --refrigerator"),
        (("--rise", "100", *ONE, "--room", "16C", "--piece-g", "800g"), "need --piece, such as --piece tub"),
        ((DEMO, "--room", "16C"), "stand in the day file's stages"),
        (("--rise", "100", *ONE, "--dough-log", "x.csv"), "leave --dough out"),
        (("--rise", "100", *ONE, "--room", "16"), "room 16 has no unit; write 16C or 16F"),
        (("--rise", "100", *ONE, "--room", "160C"), "room 160 °C is outside -30 to 60 °C"),
        (("--rise", "100", *ONE, "--room", "16C", "--piece", "ball", "--cover", "lid"), "a ball or oblong has no lid"),
        (("--rise", "100", *ONE, "--refrigerator", "-20C"), "the dough leaves −2 to 45 °C"),
        (("--rise", "900", *ONE, "--room", "16C"), "a rise of 900 % is never reached: the dough rises by"),
    ],
)
def test_what_a_piece_needs(options, words):
    result = CliRunner().invoke(cli.main, ["rise", *map(str, options)])
    assert result.exit_code in (1, 2)
    assert words in " ".join(result.output.split())


STAGE_IN_A_PLACE = '[dough]\nyeast_percent = 0.7\n[water]\ndesired = "24C"\n[[stage]]\nuntil_h = 3\n'


@pytest.mark.parametrize(
    ("lines", "surroundings"),
    [
        ('room = "16C"', lf.Surroundings.room(16)),
        ('refrigerator = "4C"', lf.Surroundings.refrigerator(4)),
        ('proof_box = "86F"', lf.Surroundings.proof_box(30)),
        ('dough = "21C"', lf.Surroundings.dough(21)),
        ("", lf.Surroundings.dough(24)),
    ],
)
def test_places_of_a_day_file(write, lines, surroundings):
    (stage,) = days.read_day(write(STAGE_IN_A_PLACE + lines + "\n")).stages
    assert stage.surroundings == surroundings
    assert len(as_json("rise", write(STAGE_IN_A_PLACE + lines + "\n"))["stages"]) == 1


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        ('room = "16C"\ndough = "20C"', "has both dough and room; a stage is in one place"),
        ('piece = "tub"', "has a piece but no place; add room"),
        ("pieces = 3", 'has pieces but no piece; add piece = "ball"'),
        ('piece = "cube"\nroom = "16C"', 'shape "cube" is unknown; known: tub, ball, oblong'),
        ('piece = "ball"\nroom = "16C"\ndepth_cm = 4', "a ball has no depth_cm; leave it out"),
        ('room_log = "none.csv"', "there is no file"),
        ('piece = "tub"\nroom = "16C"\nmaterial = "gold"', 'bowl material "gold" is unknown'),
    ],
)
def test_places_that_a_day_file_cannot_have(write, lines, words):
    assert words in " ".join(refusal(2, "rise", write(STAGE_IN_A_PLACE + lines + "\n")).split())


def test_a_log_beside_the_day_file(write, tmp_path):
    path = write(STAGE_IN_A_PLACE + 'room_log = "night.csv"\n')
    Path(path).parent.joinpath("night.csv").write_text("time,°C\n0,16\n9,16\n", encoding="utf-8")
    same = write(STAGE_IN_A_PLACE + 'room = "16C"\n')
    assert as_json("rise", path)["stages"][0]["hours"] == as_json("rise", same)["stages"][0]["hours"]


# ---- until when ------------------------------------------------------------------------------------------------------


def test_until_shows_the_window_and_what_to_choose():
    document = as_json("rise", DEMO, "--until", "17:00", "--mixed", "8:30", "--scale", "0.1g")
    process = stages.process_of(days.read_day(DEMO))
    forecast = lf.forecast(process)
    assert document["until_h"] == 8.5
    assert document["stage"] == "final proof"
    assert document["forecast"] == [stage_row(stage) for stage in forecast.stages]
    assert document["ready_by_then"] == float((forecast["final proof"].ready <= 8.5).mean())
    choices = document["choices"]
    assert list(choices) == ["yeast", "room", "start"]
    wanted = {"stage": "final proof", "ready_h": 8.5}
    assert choices["yeast"]["rounded"] == lf.yeast_for(process, scale_g=0.1, **wanted).rounded
    assert choices["room"]["value"] == lf.room_for(process, **wanted).value
    assert choices["start"]["value"] == pytest.approx(8.5 - forecast["final proof"].ready_h, abs=1e-6)
    text = answer("rise", DEMO, "--until", "17:00", "--mixed", "8:30", "--scale", "0.1g")
    clock = quantities.Clock(8.5, 8.5)
    for stage in forecast.stages:
        early, late = map(clock.text, stage.interval_h(0.9))
        cells = [stage.name, clock.text(stage.ready_h)]
        if stage.by_rise:
            cells += [f"{early} and {late}", *map(clock.text, (stage.look_first_h, stage.be_back_by_h))]
        assert re.search(r" +│ +".join(map(re.escape, cells)), text), cells
    assert "for the final proof to be ready at 17:00" in text
    assert f"{choices['yeast']['rounded']:.3g} g (" in text
    assert "8.8 g" in text
    assert "one log would leave about" in text


def test_until_in_hours_for_one_rise():
    options = ("--rise", "100", *PIECE)
    document = as_json("rise", *options, "--until", "5h", "--choose", "yeast", "--choose", "refrigerator")
    assert list(document["choices"]) == ["yeast", "refrigerator"]
    assert document["choices"]["yeast"]["ready_h"] == pytest.approx(5, abs=1e-6)
    text = answer("rise", *options, "--until", "5h")
    assert "By 5 h 00 min the rise is ready in" in text
    assert " later" in text
    held = as_json("rise", "--rise", "100", *ONE, "--until", "6h")["choices"]
    assert "is in a room of one temperature" in held["room"]["reason"]
    impossible = answer("rise", *options, "--until", "20min", "--choose", "yeast")
    assert "within reach is" in impossible


def test_the_clock_of_the_command_line():
    of = quantities.Clock.of
    assert of("18:30", "8:15") == quantities.Clock(10.25, 8.25)
    assert of("7:00", "20:00").until_h == 11
    assert of("8:00", "8:00").until_h == 24
    assert of("90min", None) == quantities.Clock(1.5)
    assert of(None, None) is None
    clock = quantities.Clock(1, 20)
    assert [clock.text(h) for h in (0, 4.5, 30, -21, None)] == [
        "20:00",
        "0:30 (+1 d)",
        "2:00 (+2 d)",
        "23:00 (−1 d)",
        "never",
    ]


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--until", "18:00"), "is a clock; say when the mixing ends too: --mixed 8:15"),
        (("--mixed", "8:00"), "--mixed belongs to --until"),
        (("--until", "25:00", "--mixed", "8:00"), 'until "25:00" is not a clock'),
        (("--until", "5"), "until 5 has no unit; write 5h or 5min"),
        (("--until", "0h"), "is outside"),
        (("--until", "5h", "--stage", "prof"), 'no stage is named "prof"; known: bulk, final proof'),
        (("--stage", "bulk"), "--stage, --choose and --scale belong to --until"),
        (("--until", "5h", "--choose", "oven"), "'oven' is not one of"),
    ],
)
def test_what_until_needs(options, words):
    result = CliRunner().invoke(cli.main, ["rise", DEMO, *options])
    assert result.exit_code == 2
    assert words in " ".join(result.output.split())


# ---- a day of stages -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("path", "names"), [(DEMO, ["bulk", "final proof"]), (BY_HAND, ["bulk", "bench rest", "final proof"])]
)
def test_the_stages_of_a_day(path, names):
    plans = stages.plan_stages(days.read_day(path))
    shown = as_json("rise", path)["stages"]
    assert [stage["name"] for stage in shown] == names
    for stage, plan in zip(shown, plans, strict=True):
        for name in (*stages.StagePlan.__dataclass_fields__, "ready_h"):
            assert stage[name] == getattr(plan, name)
    text = answer("rise", path)
    for plan in plans:
        cells = (
            plan.name,
            f"{plan.dough_c:.1f} → {plan.end_c:.1f} °C",
            f"{plan.rise_percent:.0f} %",
            *map(quantities.clock_text, (plan.hours, plan.ready_h, plan.be_back_by_h)),
        )
        assert re.search(r" +│ +".join(map(re.escape, cells)), text)


def test_options_of_a_days_stages():
    document = as_json("rise", DEMO, "--dough", "20C", "--yeast-percent", "0.3", "--yeast", "active_dry")
    day = stages.at_dough_temperature(days.read_day(DEMO), 20)
    changed = days.Day(**{**day.__dict__, "yeast": "active_dry", "dough": {**day.dough, "yeast_percent": 0.3}})
    assert [stage["hours"] for stage in document["stages"]] == [plan.hours for plan in stages.plan_stages(changed)]


def test_a_stage_that_is_ready_before_a_fold_says_so(write):
    path = write(
        "[dough]\nyeast_percent = 0.7\n"
        '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 50\nfolds_h = [0.1, 0.2, 5, 6]\n'
    )
    assert "bulk: ready before fold 3 of 4; leave the rest out." in answer("rise", path)
    assert as_json("rise", path)["stages"][0]["folds_done"] == 2
    assert "leave the rest out" not in answer("rise", BY_HAND)


def test_perishable_dough_is_warned_of(write):
    path = write(
        "[dough]\nyeast_percent = 0.1\nperishable = true\n"
        '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 90\n'
    )
    assert "warning: a dough with egg, milk or other perishable food held for 7.38 h" in answer("rise", path)
    assert [notice["code"] for notice in as_json("rise", path)["notices"]] == ["perishable_held"]


RISE = '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 90\n'


def hours_at_23_c(mix):
    """Hours to 90 % of a mix held at 23 °C."""
    stage = lf.Stage("bulk", surroundings=lf.Surroundings.dough(23), until_rise_percent=90)
    return lf.simulate(lf.Process([mix, stage])).stages[0].hours


@pytest.mark.parametrize("enriching", ["milk", "egg", "butter", "oil"])
@pytest.mark.parametrize("poured_percent", [65, 50])
def test_enriching_counts_for_the_rise(write, enriching, poured_percent):
    """Its water for the yeast, all of it for the volume that must rise."""
    path = write(f"[dough]\nyeast_percent = 0.7\nwater_percent = {poured_percent}\n{enriching}_percent = 20\n{RISE}")
    mix = lf.Mix(dough_c=23, flour_g=500, water_g=5 * poured_percent, salt_g=10, instant_g=3.5)
    (stage,) = as_json("rise", path)["stages"]
    assert stage["hours"] == pytest.approx(hours_at_23_c(mix.replace(**{f"{enriching}_g": 100})), rel=1e-12)
    bound_percent = 20 * lf.Composition.of(enriching).water
    its_water = hours_at_23_c(mix.replace(water_g=5 * (poured_percent + bound_percent)))
    assert its_water < stage["hours"] < 1.15 * its_water  # the rest of it is volume, and no water for the yeast


@pytest.mark.parametrize(
    ("enriching", "perishable"),
    [("milk_percent = 5", True), ("egg_percent = 5", True), ("milk_percent = 0", False), ("oil_percent = 5", False)],
)
def test_milk_and_egg_make_the_dough_perishable(write, enriching, perishable):
    path = write(f'[dough]\nyeast_percent = 0.2\n{enriching}\n[[stage]]\ndough = "23C"\nuntil_h = 5\n')
    notices = [notice["code"] for notice in as_json("rise", path)["notices"]]
    assert notices == (["perishable_held"] if perishable else [])
    assert (
        "warning: a dough with egg, milk or other perishable food held for 5 h" in answer("rise", path)
    ) == perishable


def test_a_rise_that_a_stage_never_reaches(write):
    path = write('[dough]\nyeast_percent = 0.7\n[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 400\n')
    text = refusal(1, "rise", path)
    reach = lf.reachable_rise(dough_c=23, yeast_percent=0.7)
    assert f'stage "bulk": a rise of 400 % is never reached: the dough rises by {reach:.4g} % at the most' in text


@pytest.mark.parametrize("words", ["[/bold]", "[red]", "a [/] b", ":smile:", "[link=x]", "50 % [x]"])
def test_titles_and_names_are_printed_as_they_are(write, words):
    path = write(
        f"title = '{words}'\n[today]\nflour = '20C'\nroom = '20C'\n[water]\ndesired = '24C'\nfriction = '2K'\n"
        f"[dough]\nyeast_percent = 0.7\n[[stage]]\nname = '{words}'\nuntil_h = 1\nfolds_h = []\n"
        "[[batch]]\ndough = '24C'\nwater = '26C'\nflour = '20C'\nroom = '20C'\n"
    )
    assert words in answer("water", path)
    assert words in answer("friction", path)
    assert answer("rise", path).count(words) == 2


# ---- refusals --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["water", "--desired", "78C", *RULE], "desired 78 °C is outside 0 to 45 °C; if you meant 78 °F, write 78F"),
        (["water", "--desired", "24C", "--flour", "99C", "--room", "21C", "--friction", "2K"], "write 99F"),
        (["rise", "--rise", "100", "--dough", "78C", "--yeast-percent", "1"], "if you meant 78 °F, write 78F"),
        (["rise", DEMO, "--dough", "78C"], "if you meant 78 °F, write 78F"),
        (["water", DEMO, "--friction", "40K"], "if you meant a difference of 40 °F, write 40F"),
        (["water", DEMO, "--friction", "78K"], "friction is a difference of temperatures, not a temperature point"),
        (["water", DEMO, "--desired", "24"], "desired 24 has no unit; write 24C or 24F"),
        (["water", DEMO, "--friction", "3"], "friction 3 has no unit; it is a difference of temperatures: write 3K"),
        (["rise", "--after", "2", *ONE], "after 2 has no unit; write 2h or 2min"),
        (["rise", "--rise", "100", "--dough", "warm", "--yeast-percent", "1"], '"warm" is not a number with a unit'),
        (["rise", "--rise", "100", "--dough", "18C", "--yeast-percent", "0.6g"], 'yeast percent 0.6 has the unit "g"'),
        (["rise", "--rise", "100", "--dough", "18C"], "missing --yeast-percent"),
        (["rise", "--rise", "100"], "missing --dough and --yeast-percent"),
        (["rise"], "give a day file, or one of --rise (how far) and --after (how long)"),
        (["rise", "--rise", "100", "--after", "2h", *ONE], "one of --rise (how far) and --after (how long)"),
        (["rise", DEMO, "--rise", "100"], "a day file has its own stages"),
        (["rise", DEMO, "--after", "2h"], "a day file has its own stages"),
        (["rise", "--rise", "100", *ONE, "--yeast", "fresh"], "'fresh' is not one of 'instant', 'active_dry'"),
        (["rise", "--rise", "0", *ONE], "rise percent 0 % is outside 0.1 to 1000 %"),
        (["rise", "--rise", "nan", *ONE], 'rise percent "nan" is not a number'),
        (["rise", "--after", "2000h", *ONE], "after 2000 h is outside 0 to 1000 h"),
        (["rise", "--rise", "100", "--dough", "18C", "--yeast-percent", "9"], "instant yeast 9 % is outside 0.01 to 5"),
        (["rise", "--rise", "100", *ONE, "--salt-percent", "18"], "salt percent 18 % is outside 0 to 6 %"),
        (["rise", "--rise", "100", "--dough", "-2C", "--yeast-percent", "1"], "the yeast stands still"),
        (["water", "nowhere.toml"], "there is no file nowhere.toml"),
        (["rise", "nowhere.toml"], "there is no file nowhere.toml"),
        (["friction", "nowhere.toml"], "there is no file nowhere.toml"),
        (["rise", str(ROOT)], "is a directory"),
        (["rise", "--ries", "100"], "No such option"),
        (["bake"], "No such command"),
    ],
)  # fmt: skip
def test_a_bad_input_ends_with_2(arguments, words):
    assert words in refusal(2, *arguments)


@pytest.mark.parametrize(
    ("arguments", "words", "advice"),
    [
        (["--tap", "150F"], "tap 65.56 °C is outside 0 to 60 °C", ""),
        (["--tap", "20F"], "tap -6.667 °C is outside 0 to 60 °C", "; if you meant 20 °C, write 20C"),
        (["--room", "-40F"], "room -40 °C is outside -30 to 60 °C", ""),
        (["--room", "140.5F"], "room 60.28 °C is outside -30 to 60 °C", ""),
        (["--room", "61C"], "room 61 °C is outside -30 to 60 °C", "; if you meant 61 °F, write 61F"),
        (["--room", "200C"], "room 200 °C is outside -30 to 60 °C", ""),
        (
            ["--friction", "30K"],
            "friction 30 K is outside -10 to 25 K",
            "; if you meant a difference of 30 °F, write 30F",
        ),
        (
            ["--friction", "30C"],
            "friction 30 K is outside -10 to 25 K",
            "; if you meant a difference of 30 °F, write 30F",
        ),
        (["--friction", "50F"], "friction 27.78 K is outside -10 to 25 K", ""),
        (["--friction", "50K"], "friction 50 K is outside -10 to 25 K", ""),
    ],
)
def test_what_was_written_in_fahrenheit_is_not_to_be_written_in_fahrenheit(arguments, words, advice):
    text = " ".join(
        refusal(2, "water", "--desired", "24C", *(["--room", "21C"] * (arguments[0] != "--room")), *arguments).split()
    )
    assert words + advice in text
    assert ("if you meant" in text) == bool(advice)
    assert ("is a difference of temperatures, not a temperature point" in text) == (arguments[0] == "--friction")


def test_water_of_a_milk_dough_by_weight(write):
    """What the day file may say in percent, the option may say in grams: the rest of the water is the milk's."""
    percent = write(TODAY + "[dough]\nflour_g = 500\nmilk_percent = 55\nwater_percent = 10\n")
    mix = mix_of(milk_percent=55, water_percent=10)
    check_plan(as_json("water", percent), mix)
    path = write(TODAY + "[dough]\nflour_g = 500\nmilk_percent = 55\n")
    check_plan(as_json("water", path, "--water-g", "50"), mix)


def test_a_question_without_an_answer_ends_with_1():
    text = refusal(1, "rise", "--rise", "900", *ONE)
    reach = lf.reachable_rise(dough_c=18, yeast_percent=0.6)
    assert "a rise of 900 % is never reached" in text
    assert f"below {reach:.6g} %" in text
    assert "[" not in text  # names of fields are for programs


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[dough]\nyeast_precent = 1\n", '[dough] has an unknown key "yeast_precent"; did you mean "yeast_percent"?'),
        ("[dogh]\n", 'the day file has an unknown key "dogh"; did you mean "dough"?'),
        ("[dough\n", "is not valid TOML: "),
        (
            "[dough]\nyeast_percent = '0.7'\n",
            "[dough] yeast_percent must be a number: percent of flour weight, got the",
        ),
        ("[today]\nflour = 20\n", "[today] flour = 20 has no unit; write it in quotes with one, such as"),
        (
            "[[stage]]\nname = 'bulk'\nuntil_h = 2\n",
            'add dough = "22C" to it, or [water] desired for all stages',
        ),
        ("[[stage]]\ndough = '22C'\nuntil_h = 2\n", "[dough] needs yeast_percent: 3 g on 500 g of flour are 0.6"),
        ("[dough]\nyeast_percent = 1\n", "the day file has no [[stage]]; add one"),
        (
            "[[stage]]\nname = 'bulk'\ndough = '22C'\nuntil_h = 2\nuntil_rise_percent = 90\n",
            '[[stage]] "bulk" must end by until_rise_percent or by until_h, one of the two',
        ),
        (
            "[[stage]]\nname = 'bulk'\ndough = '22C'\nuntil_h = 2\nfolds_h = [1, 0.5]\n",
            '[[stage]] "bulk" folds_h must be hours from the stage\'s start, in order',
        ),
        (
            "[[stage]]\nname = 'bulk'\ndough = '22C'\nuntil_h = 2\nhandling = ['punch']\n",
            'handling "punch" is unknown; known: fold, divide, round, mould',
        ),
        ("[dough]\nyeast_percent = 1\n[[stage]]\ndough = '78C'\nuntil_h = 2\n", "if you meant 78 °F, write 78F"),
        ("[dough]\nyeast_percent = 9\n[[stage]]\ndough = '24C'\nuntil_h = 2\n", "instant yeast 9 % is outside"),
        ("[dough]\nyeast_percent = 1\nyeast='fresh'\n[[stage]]\ndough='24C'\nuntil_h=2\n", 'kind "fresh" is unknown'),
    ],
)
def test_a_bad_day_file_ends_with_2(write, text, words):
    path = write(text)
    message = refusal(2, "rise", path)
    assert message.startswith("error: ")
    assert words in message


def test_a_bad_day_file_is_named(write):
    path = write("[dough]\nyeast_precent = 1\n")
    for command in ("rise", "water", "friction"):
        assert path in refusal(2, command, path)


def reachable(text):
    """The reachable doughs that a refusal names, °C."""
    low, high = re.search(r"reachable are doughs of (−?[\d.]+) °C to (−?[\d.]+) °C", text).groups()
    return float(low.replace("−", "-")), float(high.replace("−", "-"))


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (
            ["--flour", "10C", "--room", "10C", "--desired", "44C"],
            ["a dough of 44 °C needs water of ", "above 60 °C it kills yeast and scalds", "warm the flour"],
        ),
        (
            ["--room", "35C", "--desired", "14C"],
            ["a dough of 14 °C needs colder water than 0 °C (", "tap", "and the ice is worked out; or cool the flour"],
        ),
        (
            ["--room", "30C", "--flour-g", "500", "--yeast-water", "30C", "--yeast-water-g", "250", "--tap", "15C",
             "--desired", "10C"],
            ["a dough of 10 °C needs ", "g of ice, more than the 75 g of water", "cool the flour or the bowl"],
        ),
        (
            ["--flour", "-10C", "--room", "35C", "--tap", "25C", "--flour-g", "500", "--bowl", "steel",
             "--bowl-g", "5kg", "--rest", "20min", "--desired", "1C"],
            ["a dough of 1 °C needs ", "g of ice, more than melts when flour and water meet", "mix more gently"],
        ),
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


def test_ice_without_a_rest_has_all_the_mixing_to_melt():
    """The warm bowl and the mixing melt what flour and water alone could not."""
    cold = [
        "--flour",
        "-10C",
        "--room",
        "35C",
        "--tap",
        "25C",
        "--flour-g",
        "500",
        "--bowl",
        "steel",
        "--bowl-g",
        "5kg",
    ]
    mix = mix_of(flour_c=-10, room_c=35, tap_c=25, bowl=lf.Bowl("steel", 5000))
    plan = check_plan(as_json("water", *cold, "--desired", "1C"), mix, desired_c=1)
    assert plan.ice_g > 200
    assert "more than melts" in refusal(1, "water", *cold, "--desired", "1C", "--rest", "20min")


def test_no_dough_at_all_is_said_so():
    hot = ["--room", "60C", "--bowl", "wood", "--bowl-g", "9kg", "--flour-g", "500", "--desired", "25C"]
    text = refusal(1, "water", *hot)
    assert "no water makes a dough of 0 °C to 45 °C here; give the temperature of the tap water" in text
    assert "reachable" not in text


def test_a_rest_that_leaves_nothing_of_the_waters_heat_ends_with_1():
    """A gram of dough has the room's temperature after a day, whatever was poured."""
    for desired in ("30C", "21C", "10C"):
        for tap in ([], ["--tap", "15C"]):
            text = refusal(1, "water", "--desired", desired, "--room", "21C", "--flour-g", "1", "--rest", "24h", *tap)
            assert text == (
                "error: the main water counts for next to nothing: it is too little, or the rest takes all of its "
                "heat; give more main water or rest shorter\n"
            )


@pytest.mark.parametrize("hours", [2, 4, 6, 8, 12, 15, 18])
def test_a_rest_that_leaves_little_of_the_waters_heat_ends_with_1(hours):
    """Whatever is said of the reachable doughs, the lowest is not above the highest, and both can be had."""
    arguments = ["water", "--room", "21C", "--flour-g", "100", "--rest", f"{hours}h", "--desired"]
    text = refusal(1, *arguments, "40C")
    if "reachable" in text:
        low, high = reachable(text)
        assert low <= high
        for desired_c in (low, high):
            assert run(*arguments, f"{desired_c:.1f}C").exit_code == 0
    else:
        assert "the main water counts for " in text


WEIGHED = [*WATER, "--flour-g", "500"]
NEEDS_FLOUR = "beside weights of bowl, yeast_water or preferment, the flour's is needed: [dough] flour_g (--flour-g)"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ([*WEIGHED, "--yeast-water", "61C", "--yeast-water-g", "50"], "yeast water 61 °C is outside 0 to 60 °C"),
        ([*WEIGHED, "--yeast-water", "100C", "--yeast-water-g", "50"], "if you meant 100 °F, write 100F"),
        ([*WEIGHED, "--yeast-water", "38C"], "give both --yeast-water and --yeast-water-g, or neither"),
        ([*WEIGHED, "--yeast-water-g", "50"], "give both --yeast-water and --yeast-water-g, or neither"),
        ([*WEIGHED, "--yeast-water", "38C", "--yeast-water-g", "0"], "yeast water g 0 g is outside 0.1 to 1e+06 g"),
        (
            [*WEIGHED, "--yeast-water", "38C", "--yeast-water-g", "400"],
            "weigh 400 g, more than all the water, 325 g; take smaller portions",
        ),
        ([*WEIGHED, "--yeast-water", "38C", "--yeast-water-g", "325"], "there is no main water whose temperature"),
        ([*WEIGHED, "--bowl", "gold", "--bowl-g", "900"], "'gold' is not one of 'steel', 'aluminium', 'glass'"),
        ([*WEIGHED, "--bowl", "steel"], "a bowl needs its weight; add --bowl-g, such as --bowl-g 1200g"),
        ([*WEIGHED, "--bowl", "steel", "--bowl-g", "0"], "a bowl needs its weight; add --bowl-g"),
        ([*WEIGHED, "--bowl-g", "-5"], "bowl g -5 g is outside 0 to 1e+06 g"),
        ([*WEIGHED, "--mixing", "blender"], "'blender' is not one of 'folds', 'hand', 'stand_mixer', 'spiral'"),
        ([*WEIGHED, "--mixing", "hand", "--net-gain", "5"], "give either --mixing or --net-gain"),
        ([*WEIGHED, "--minutes", "8"], "--minutes needs --mixing"),
        ([*WEIGHED, "--mixing", "hand", "--minutes", "61"], "minutes 61 min is outside 0 to 60 min"),
        ([*WEIGHED, "--net-gain", "121"], "net gain 121 kJ/kg is outside -30 to 120 kJ/kg"),
        ([*WEIGHED, "--rest", "30"], "rest 30 has no unit; write 30h or 30min"),
        ([*WEIGHED, "--rest", "25h"], "rest 25 h is outside 0 to 24 h"),
        ([*WEIGHED, "--ice", "1C"], "ice 1 °C is outside -40 to 0 °C"),
        ([*WEIGHED, "--preferment", "20C"], "the preferment has a temperature but no weight"),
        ([*WEIGHED, "--preferment-g", "1.2kg"], "preferments and gluten hold more flour, 600 g, than all the flour"),
        ([*WEIGHED, "--water-g", "100"], "20 % is outside 40 to 130 %"),
        ([*WEIGHED, "--water-g", "1kg"], "water of 1000 g on 500 g of flour, 200 % is outside"),
        ([*WATER, "--water-g", "350"], "--water-g needs --flour-g: how much water there is, is counted in percent of"),
        ([*WEIGHED, "--water-g", "1,000g"], 'water g "1,000g" may be read in two ways; write it without a comma, such'),
        ([*WATER, "--flour-g", "1,000"], 'flour g "1,000" may be read in two ways; write it without a comma, such as'),
        ([*WEIGHED, "--bowl", "steel", "--bowl-g", "1,234,567 g"], "may be read in two ways; write it without a comm"),
        ([*WEIGHED, "--bowl-g", "900"], "a bowl needs its material; add --bowl, such as --bowl ceramic"),
        ([*WEIGHED, "--bowl-g", "0"], "a bowl needs its "),
        (
            [*WEIGHED, "--bowl", "steel", "--bowl-g", "1.2"],
            "bowl g 1.2 g is no bowl for a dough; it is in grams: 1.2 kg are 1200",
        ),
        ([*WEIGHED, "--bowl", "steel", "--bowl-g", "19.9g"], "it is in grams: 19.9 kg are 19900"),
        (["water", DEMO, "--bowl-g", "2.1"], "bowl g 2.1 g is no bowl for a dough; it is in grams: 2.1 kg are 2100"),
        (["water", DEMO, "--bowl-g", "0"], "a bowl needs its weight; add --bowl-g, such as --bowl-g 1200g"),
        (["friction", DEMO, "--bowl-g", "2.1"], "bowl g 2.1 g is no bowl for a dough; it is in grams"),
        ([*WATER, "--friction-at", "21C"], "--friction"),
        ([*WEIGHED, "--friction", "6K", "--friction-at", "61C"], "friction at 61 °C is outside -30 to 60 °C; if you"),
        ([*WEIGHED, "--friction", "6K", "--friction-at", "21"], "friction at 21 has no unit; write 21C or 21F"),
        ([*WATER, "--flour-g", "500ml"], 'flour g 500 has the unit "ml"; write 500g, 500kg, 500oz or 500lb'),
        ([*WATER, "--flour-g", "0"], "flour g 0 g is outside 0.1 to 1e+06 g"),
        ([*WATER, "--bowl", "steel", "--bowl-g", "900"], NEEDS_FLOUR),
        ([*WATER, "--preferment-g", "200"], NEEDS_FLOUR),
        ([*WATER, "--yeast-water", "38C", "--yeast-water-g", "50"], NEEDS_FLOUR),
        (
            ["water", "--desired", "36C", "--room", "25C", "--friction", "2K", "--friction-at", "5C"],
            "net mixing gain worth this friction −63.",
        ),
        (
            ["water", "--desired", "36C", "--room", "25C", "--friction", "2K", "--friction-at", "5C"],
            " kJ/kg is outside −30 to 120 kJ/kg; find it from batches: `libferment friction`",
        ),
        (["friction"], "no batch is logged; write a [[batch]] with dough, water, flour, room (--dough, --water, --flo"),
        (["friction", "--flour", "20C", "--room", "20C"], "no batch is logged"),
        (["friction", "--dough", "25C"], "a batch needs both --dough and --water, as measured"),
        (["friction", "--water", "25C"], "a batch needs both --dough and --water, as measured"),
        (["friction", "--dough", "25C", "--water", "25C"], "a batch needs the temperature of the room; give --room"),
        (["friction", "--dough", "25C", "--water", "25C", "--flour", "20C"], "needs the temperature of the room; give"),
        (
            ["friction", "--dough", "25C", "--water", "25C", "--room", "20C", "--minutes", "8"],
            "--minutes needs --mixing",
        ),
        (
            ["friction", "--dough", "25C", "--water", "25C", "--room", "20C", "--water-g", "300"],
            "--water-g needs --flour-g",
        ),
        (
            ["friction", "--dough", "40C", "--water", "10C", "--flour", "20C", "--room", "20C"],
            "friction of this batch 70 K is outside −10 to 25 K; one of the temperatures must be wrong",
        ),
        (["friction", "--dough", "78C", "--water", "25C"], "if you meant 78 °F, write 78F"),
        (["friction", "--dough", "25C", "--water", "25"], "water 25 has no unit; write 25C or 25F"),
    ],
)  # fmt: skip
def test_a_bad_bowl_ends_with_2(arguments, words):
    assert words in " ".join(refusal(2, *arguments).split())


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            "[[flour]]\npercent = 80\n[[flour]]\npercent = 10\nkind = 'dark_rye'\n",
            "the shares of the flours make 90 %, not 100 %; they are of the flour, added gluten and preferments apart; "
            "if these are percent of the dough, multiply every percentage by 1.111",
        ),
        (
            "[[flour]]\npercent = 95\n[dough]\ngluten_percent = 5\n",
            "make 95 %, not 100 %; they are of the flour, added gluten and preferments apart",
        ),
        ("[[flour]]\npercent = 80\n[[flour]]\npercent = 20.2\n", "make 100.2 %, not 100 %; they are of the flour"),
        ("[[flour]]\npercent = 99.8\n", "make 99.8 %, not 100 %; they are of the flour"),
        ("[[flour]]\npercent = 100\nkind = 'spelt'\n", 'flour "spelt" is unknown; known: bread, all_purpose, whole'),
        ("[[flour]]\nkind = 'dark_rye'\n", "[[flour]] 1 needs percent, its share of all flour, such as 20"),
        ("[[flour]]\npercent = 100\nmoisture_percent = 25\n", "[[flour]] 1 moisture_percent 25 % is outside 5 to 20 %"),
        ("[[flour]]\npercent = 100\ntemperature = 20\n", "[[flour]] 1 temperature = 20 has no unit"),
        (
            "[dough]\nwater_percent = 30\n",
            "error: water 30 % is outside 40 to 130 %; percent are of the flour's weight, not of the dough's",
        ),
        ("[dough]\nwater_percent = 0\n", "error: water 0 % is outside 40 to 130 %; percent are of the flour's weight"),
        ("[dough]\nwater_percent = 0\nmilk_percent = 80\n", "there is no main water whose temperature could be cho"),
        ("[dough]\nwater_percent = 131\n", "[dough] water_percent 131 % is outside 0 to 130 %"),
        ("[dough]\nwater_percent = -1\n", "[dough] water_percent -1 % is outside 0 to 130 %"),
        ("[dough]\nwater_percent = 10\nmilk_percent = 30\n", "water 36.439 % is outside 40 to 130 %"),
        ("[dough]\nmilk_percent = 151\n", "[dough] milk_percent 151 % is outside 0 to 150 %"),
        ("[dough]\nwater_percent = 120\nmilk_percent = 50\n", "water 164.065 % is outside 40 to 130 %"),
        ("[dough]\nyeast = 'fresh'\nyeast_percent = 1\n", 'kind "fresh" is unknown'),
        ("[dough]\nyeast = 'salt'\nyeast_percent = 1\n", 'kind "salt" is unknown'),
        ("[dough]\nyeast = 'instant_unwetted'\nyeast_percent = 1\n", 'kind "instant_unwetted" is unknown'),
        ("[bowl]\nmaterial = 'gold'\nmass_g = 900\n", 'bowl material "gold" is unknown; known: steel, aluminium'),
        ("[bowl]\nmaterial = 'steel'\n", "[bowl] needs mass_g, a weight in g, such as 1200"),
        ("[bowl]\nmaterial = 'Steel'\nmass_g = 900\n", NEEDS_FLOUR),
        ("[yeast_water]\nwater_g = 50\ntemperature = '38C'\n", NEEDS_FLOUR),
        ("[preferment]\nwater_g = 50\nflour_g = 50\n", NEEDS_FLOUR),
        ("[bowl]\nmass_g = 900\n", "[bowl] needs a material, one of steel, aluminium, glass, ceramic, plastic, poly"),
        (
            "[bowl]\nmaterial = 'steel'\nmass_g = 1.2\n",
            "[bowl] mass_g 1.2 g is no bowl for a dough; it is in grams: 1.2 kg are 1200",
        ),
        (
            "[batch]\ndough = '25C'\nwater = '27C'\nflour = '20C'\nroom = '20C'\n",
            "the day file has [batch]; there may be several, so write [[batch]] with two brackets",
        ),
        ("[flour]\npercent = 100\n", "the day file has [flour]; there may be several, so write [[flour]] with two"),
        ("[stage]\nuntil_h = 1\n", "the day file has [stage]; there may be several, so write [[stage]] with two"),
        ("[mixing]\nmethod = 'blender'\n", 'mixing method "blender" is unknown; known: folds, hand'),
        ("[mixing]\nmethod = 'hand'\nnet_gain_kj_per_kg = 3\n", "[mixing] takes one of method, work_kj_per_kg and net"),
        ("[mixing]\nwork_kj_per_kg = 3\nnet_gain_kj_per_kg = 3\n", "[mixing] takes one of method, work_kj_per_kg and"),
        ("[mixing]\nmethod = 'hand'\nwork_kj_per_kg = 3\n", "each is all of the heat"),
        ("[mixing]\nminutes = 5\n", '[mixing] needs a method beside minutes, such as method = "stand_mixer"'),
        ("[mixing]\nwork_kj_per_kg = 3\nminutes = 5\n", "minutes"),
        ("[mixing]\nhydration_kj_per_kg = 5\n", "[mixing] needs a method"),
        ("[mixing]\nnet_gain_kj_per_kg = 3\nhydration_kj_per_kg = 5\n", "holds the hydration already; leave hydration"),
        ("[mixing]\nrest = 0.5\n", '[mixing] rest = 0.5 has no unit; write it in quotes with one, such as "30min"'),
        ("[yeast_water]\ntemperature = '38C'\n", "[yeast_water] needs water_g, a weight in g, such as 50"),
        ("[yeast_water]\nwater_g = 50\n", '[yeast_water] needs temperature, such as "38C"'),
        ("[yeast_water]\nwater_g = 50\ntemperature = '61C'\n", "[yeast_water] temperature 61 °C is outside 0 to 60 °C"),
        ("[preferment]\nflour_g = 100\n", "[preferment] needs water_g, a weight in g, such as 200"),
        ("[preferment]\nwater_g = 100\n", "[preferment] needs flour_g, a weight in g, such as 200"),
        ("[dough]\nflour_g = 500\n[preferment]\nflour_g = 50\nwater_g = 400\n", "more than all the water, 325 g"),
        ("[[batch]]\nwater = '27C'\nflour = '20C'\nroom = '20C'\n", "[[batch]] 1 needs dough, a temperature with its"),
        ("[[batch]]\ndough = '25C'\nflour = '20C'\nroom = '20C'\n", "[[batch]] 1 needs water, a temperature with its"),
        ("[[batch]]\ndough = '25C'\nwater = '27C'\nroom = '20C'\n", "[[batch]] 1 needs flour, a temperature with its"),
        ("[[batch]]\ndough = '25C'\nwater = '27C'\nflour = '20C'\n", "[[batch]] 1 needs room, a temperature with its"),
        ("[[batch]]\ndough = '25C'\nwater = '27C'\nflour = '20C'\nroom = '20C'\ntap = '9C'\n", 'unknown key "tap"'),
        (
            "[[batch]]\ndough = '40C'\nwater = '10C'\nflour = '20C'\nroom = '20C'\n",
            "friction of this batch 70 K is outside −10 to 25 K; one of the temperatures must be wrong",
        ),
    ],
)
def test_a_bad_bowl_of_a_day_ends_with_2(write, text, words):
    path = write("[water]\ndesired = '24C'\n" + text)
    for arguments in ([], ["--json"]):
        message = refusal(2, "water", path, "--room", "21C", *arguments)
        assert message.startswith("error: ")
        assert words in message


def test_a_preferment_needs_its_weight(write):
    path = write(TODAY + "preferment = '20C'\n")
    assert "the preferment has a temperature but no weight; give [preferment] flour_g and water_g" in refusal(
        2, "water", path
    )


@pytest.mark.parametrize("command", ["water", "friction"])
def test_of_several_batches_the_wrong_one_is_named(write, command):
    """Both numbers that a batch gives: the friction, and the net gain, which a hot bowl alone makes absurd."""
    good = {"dough": 25, "water": 27, "flour": 20, "room": 21}
    hot = {**good, "bowl": 100}
    heavy = '[dough]\nflour_g = 100\n[bowl]\nmaterial = "steel"\nmass_g = 3000\n'
    assert refusal(2, command, write(TODAY + heavy + batch_tables([good, hot]))).startswith(
        "error: batch 2 of 2: net mixing gain of this batch"
    )
    assert refusal(2, command, write(TODAY + batch_tables([good, good, {**good, "dough": 40}]))).startswith(
        "error: batch 3 of 3: friction of this batch"
    )


@pytest.mark.parametrize("amount", ["nan", "inf", "-5", "0"])
def test_an_amount_of_water_that_cannot_be(amount):
    for arguments in (["--tap", "5C"], ["--tap", "40C"], [], ["--json"]):
        assert "water" in refusal(2, "water", "--desired", "24C", *RULE, "--water-g", amount, *arguments)


@pytest.mark.parametrize("percent", ["-5", "nan", "1000"])
def test_a_share_of_water_that_cannot_be(write, percent):
    path = write(f"[dough]\nflour_g = 500\nwater_percent = {percent}\n")
    for arguments in ([], ["--json"]):
        assert "water" in refusal(2, "water", path, "--desired", "24C", *RULE, *arguments)


@pytest.mark.parametrize("temperature", ["500C", "-20C", "99C"])
def test_a_tap_that_cannot_be(temperature):
    for arguments in ([], ["--water-g", "600"], ["--json"]):
        text = refusal(2, "water", "--desired", "24C", *RULE, "--tap", temperature, *arguments)
        assert re.search("tap .* is outside 0 to 60 °C", text)


OPTIONS = [
    option.opts[0]
    for command in cli.main.commands.values()
    for option in command.params
    if option.param_type_name == "option"
]
words = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=8) | st.sampled_from(
    [
        "20C",
        "68F",
        "3K",
        "90min",
        "nan",
        "1e400",
        "-1",
        "0.5",
        "100",
        "9" * 400 + "C",
        "instant",
        "500g",
        "1,000g",
        "2lb",
        "steel",
        "Stand mixer",
    ]
)


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


def written(low, high, unit):
    """Numbers as a person writes them, a little beyond what is allowed too."""
    return st.one_of(st.integers(low, high), st.decimals(low, high, places=2)).map(lambda value: f"{value:f}{unit}")


degrees = written(-5, 65, "C") | written(20, 150, "F")
weights = written(0, 1500, "g") | written(0, 5, "lb") | written(0, 60, "oz") | written(0, 2, "kg")
mixings = st.sampled_from([method.name for method in lf.mixing_methods()]) | st.sampled_from(["Stand mixer", "HAND"])
minutes = written(0, 60, "")
of_the_bowl = {
    "--flour": degrees,
    "--room": degrees,
    "--preferment": degrees,
    "--preferment-g": weights,
    "--flour-g": weights,
    "--water-g": weights,
    "--bowl": st.sampled_from(sorted(lf.bowl_materials())) | st.sampled_from(["CERAMIC", " Steel "]),
    "--bowl-g": weights,
    "--rest": written(0, 120, "min") | written(0, 24, "h"),
}
of_the_water = {
    "--tap": degrees,
    "--ice": written(-40, 0, "C"),
    "--friction": written(-10, 25, "K") | written(-10, 25, "C") | written(-18, 45, "F"),
    "--friction-at": degrees,
    "--mixing": mixings,
    "--minutes": minutes,
    "--net-gain": written(-30, 60, ""),
    "--yeast-water": degrees,
    "--yeast-water-g": weights,
}


in_a_room = written(8, 32, "C") | written(46, 90, "F")
in_rooms = {
    **dict.fromkeys(("--flour", "--room", "--preferment", "--tap", "--friction-at"), in_a_room),
    "--flour-g": written(400, 1500, "g") | written(1, 3, "lb"),
    "--water-g": written(250, 500, "g") | written(9, 20, "oz"),
    "--preferment-g": written(20, 200, "g"),
    "--yeast-water-g": written(10, 150, "g"),
    "--bowl-g": written(300, 3000, "g") | written(1, 6, "lb"),
    "--desired": written(18, 30, "C") | written(65, 86, "F"),
    "--dough": written(18, 30, "C") | written(65, 86, "F"),
    "--water": written(2, 45, "C") | written(36, 110, "F"),
    "--yeast-water": written(20, 50, "C"),
    "--rest": written(0, 120, "min"),
    "--friction": written(0, 12, "K") | written(0, 21, "F"),
    "--net-gain": written(-3, 25, ""),
}
ONE_ASKS_FOR_ANOTHER = {
    "--bowl": "--bowl-g",
    "--bowl-g": "--bowl",
    "--yeast-water": "--yeast-water-g",
    "--yeast-water-g": "--yeast-water",
    "--preferment": "--preferment-g",
    "--friction-at": "--friction",
    "--minutes": "--mixing",
}


@st.composite
def plausible_options(draw, asked, optional):
    """Any options; or those of a kitchen, where each comes with the one it is of no use without."""
    if draw(st.booleans()):
        return draw(st.fixed_dictionaries(asked, optional=optional))
    asked, optional = ({name: in_rooms.get(name, own) for name, own in of.items()} for of in (asked, optional))
    options = draw(st.fixed_dictionaries(asked, optional=optional))
    options.setdefault("--room", draw(optional["--room"]))
    for name in list(options):
        other = ONE_ASKS_FOR_ANOTHER.get(name)
        if other is not None and other not in options:
            options[other] = draw(optional[other])
    if any(name.endswith("-g") for name in options):
        options.setdefault("--flour-g", draw(optional["--flour-g"]))
    if "--net-gain" in options:
        options.pop("--mixing", None)
    return options


def spelled(options):
    return [f"{name}={value}" for name, value in options.items()]


days_or_none = st.sampled_from([[], [DEMO], [BY_HAND]])


@given(plausible_options({"--desired": degrees}, of_the_bowl | of_the_water), days_or_none)
def test_plausible_options_of_the_water_are_answered_or_refused(options, day):
    arguments = ["water", *day, *spelled(options)]
    result = run(*arguments, "--json")
    assert result.exit_code in (0, 1, 2)
    in_words = run(*arguments)
    assert result.exit_code == in_words.exit_code  # the sentences are no harder to write than the numbers
    if result.exit_code:
        assert result.stderr
        return
    document = json.loads(result.stdout)
    _, asks, block = in_words.stdout.partition("\n[[batch]]\n")
    assert bool(asks) == (document["ice_g"] == 0)
    if asks:
        (batch,) = days.day_from(days.tomllib.loads(f"[[batch]]\n{block.replace('__', '24')}")).batches
        assert batch.dough_c == 24
        assert batch.water_c == pytest.approx(document["pour_c"], abs=0.0501)
    assert document["pour_g"] + document["ice_g"] == pytest.approx(document["water_g"], rel=1e-12)
    assert sum(share["dough_k_per_k"] for share in document["shares"]) == pytest.approx(1, rel=1e-9)
    assert document["low_c"] <= document["desired_c"] <= document["high_c"]
    assert 0 <= document["pour_c"] <= 60
    assert 0 <= document["ice_g"] <= document["water_g"]


of_the_friction = of_the_bowl | {"--mixing": mixings, "--minutes": minutes}


@given(plausible_options({"--dough": degrees, "--water": degrees}, of_the_friction), days_or_none)
def test_plausible_options_of_the_friction_are_answered_or_refused(options, day):
    arguments = ["friction", *day, *spelled(options)]
    result = run(*arguments, "--json")
    assert result.exit_code in (0, 2)
    assert result.exit_code == run(*arguments).exit_code
    if result.exit_code:
        assert result.stderr
        return
    document = json.loads(result.stdout)
    assert 0 <= document["minutes"] <= 60
    for key, low, high in (("friction_k", -10, 25), ("net_gain_kj_per_kg", -30, 120)):
        assert document[key]["each"] == [document[key]["mean"]]
        assert low <= document[key]["mean"] <= high


# ---- as a program ----------------------------------------------------------------------------------------------------


def program(*arguments):
    environment = {**os.environ, "PYTHONIOENCODING": "utf-8", "COLUMNS": "90"}
    return subprocess.run(
        [sys.executable, "-m", "libferment.cli", *arguments],
        capture_output=True,
        encoding="utf-8",
        env=environment,
        check=False,
    )


def test_it_runs_as_a_program():
    finished = program("rise", "--json", DEMO)
    assert finished.returncode == 0, finished.stderr
    assert finished.stderr == ""
    assert json.loads(finished.stdout) == as_json("rise", DEMO)


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
    assert set(cli.main.commands) == {"water", "friction", "rise"}
    for command in cli.main.commands:
        text = answer(command, "--help")
        for option in cli.main.commands[command].params:
            if option.param_type_name == "option":
                assert option.opts[0] in text
                assert option.help
    assert "not safe to eat" in answer("--help")
    assert lf.__version__ in answer("--version")


# ---- how it is started -----------------------------------------------------------------------------------------------


def test_as_a_module():
    told = subprocess.run(
        [sys.executable, "-m", "libferment", "--version"], capture_output=True, text=True, check=False
    )
    assert (told.returncode, lf.__version__ in told.stdout) == (0, True)


@pytest.mark.parametrize("package", ["click", "rich"])
def test_without_the_packages_of_the_command_line(package):
    code = f"import sys; sys.modules[{package!r}] = None; from libferment.__main__ import main; main()"
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert told.returncode == 3
    assert told.stderr == f"libferment: the command line needs the package {package}: pip install 'libferment[cli]'\n"
    code = "import sys; sys.modules['click'] = sys.modules['rich'] = None; import libferment; libferment.simulate"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
