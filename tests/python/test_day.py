"""Day files: what is read, what is refused and with which words; the bowl; the stages one after the other."""

import datetime
import math
from dataclasses import replace
from pathlib import Path

import pytest
from box import FIELDS, YEASTS, attempt
from by_hand import by_hand_mix
from hypothesis import given
from hypothesis import strategies as st

import libferment as lf
from libferment import _quantities as quantities
from libferment import bowl as bowls
from libferment import day as days
from libferment import stages

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo" / "day.toml"
BY_HAND = Path(__file__).with_name("by_hand.toml")
STAGE = {"name": "bulk", "dough": "23C", "until_h": 2}


def a_day(*its_stages, **tables):
    return days.day_from({"dough": {"yeast_percent": 0.7}, "stage": list(its_stages or [STAGE]), **tables})


def a_stage(**changes):
    changed = {**STAGE, **changes}
    return {key: value for key, value in changed.items() if value is not None}


# ---- reading ---------------------------------------------------------------------------------------------------------


def test_the_demo_day_is_read():
    day = days.read_day(DEMO)
    assert "invented" in day.title
    assert day.temperatures_c == {"flour": 15, "room": 19, "tap": 10}
    assert (day.desired_c, day.friction_k, day.friction_at_c) == (21, None, None)
    assert (day.flour_g, day.yeast, day.perishable) == (1100, "compressed", False)
    assert day.dough == {
        "water_percent": 72,
        "salt_percent": 1.8,
        "oil_percent": 1.5,
        "yeast_percent": 0.8,
        "altitude_m": 250,
    }
    assert day.flours == (lf.FlourShare(100, "whole_wheat"),)
    assert day.bowl == lf.Bowl("steel", 1250)
    assert day.mixing == lf.ByMethod("stand_mixer", 7)
    assert (day.rest_h, day.yeast_water, day.preferment) == (0, None, None)
    assert day.batches == (days.Batch(21.8, 17.4, {"flour": 16, "room": 20}, minutes=7),)
    bulk, final_proof = day.stages
    larder, oven = lf.Surroundings.room(14), lf.Surroundings.proof_box(27)
    tub = lf.Piece.tub(material="steel", vessel_g=1250)
    assert bulk == days.Stage("bulk", larder, 85, None, handling=("divide", "mould"), piece=tub)
    assert final_proof == days.Stage("final proof", oven, 65, None, final_proof=True, piece=lf.Piece.oblong(1000))


def test_a_day_by_hand_is_read():
    day = days.read_day(BY_HAND)
    assert day.temperatures_c == {"flour": 18.5, "room": 20, "tap": 12}
    assert (day.desired_c, day.flour_g, day.yeast, day.flours) == (25, 800, "active_dry", ())
    assert day.mixing == lf.ByMethod("hand", 12)
    assert day.rest_h == 45 / 60
    assert day.yeast_water == lf.Water(70, 36, wets_yeast=True, stands_h=12 / 60)
    assert day.batches == (days.Batch(25.4, 33, {"flour": 19, "room": 21}, rest_h=40 / 60, minutes=12),)
    bulk, bench_rest, final_proof = day.stages
    room = lf.Surroundings.room(20)
    tub = lf.Piece.tub(material="ceramic", vessel_g=1900)
    balls, oblongs = lf.Piece.ball(pieces=2, worktop="wood"), lf.Piece.oblong(pieces=2, cover="cloth")
    assert bulk == days.Stage("bulk", room, 95, None, (0.4, 0.9), ("divide", "round"), piece=tub)
    assert bench_rest == days.Stage("bench rest", room, None, 0.25, handling=("mould",), piece=balls)
    assert final_proof == days.Stage("final proof", room, 70, None, standing="free", final_proof=True, piece=oblongs)


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


def test_the_tables_of_the_bowl_are_read():
    day = days.day_from(
        {
            "today": {"bowl": "60C", "milk": "5C", "egg": "8C", "butter": "-10C", "ice": "-4C", "preferment": "26C"},
            "water": {"friction": "-2K", "friction_at": "68F"},
            "dough": {"milk_percent": 20, "egg_percent": 10, "butter_percent": 8, "oil_percent": 3, "flour_g": 1000},
            "flour": [
                {"percent": 70},
                {"percent": 30, "kind": "Dark rye", "moisture_percent": 11, "temperature": "8C"},
            ],
            "preferment": {"flour_g": 100, "water_g": 80},
            "yeast_water": {"water_g": 40, "temperature": "38C", "stands": "0.2h"},
            "bowl": {"material": "STEEL", "mass_g": 1500},
            "mixing": {"method": "spiral", "minutes": 6, "hydration_kj_per_kg": 12, "rest": "1.5h"},
            "batch": [
                {"dough": "25C", "water": "30C", "flour": "20C", "room": "21C", "bowl": "22C", "preferment": "24C"},
                {
                    "dough": "77F",
                    "water": "86F",
                    "flour": "68F",
                    "room": "21C",
                    "milk": "4C",
                    "egg": "5C",
                    "butter": "-6C",
                    "rest": "45min",
                    "minutes": 4.5,
                },
            ],
        }
    )
    assert day.temperatures_c == {"bowl": 60, "milk": 5, "egg": 8, "butter": -10, "ice": -4, "preferment": 26}
    assert (day.friction_k, day.friction_at_c) == (-2, 20)
    assert day.dough == {"milk_percent": 20, "egg_percent": 10, "butter_percent": 8, "oil_percent": 3}
    assert day.flours == (
        lf.FlourShare(70, "bread"),
        lf.FlourShare(30, "dark_rye", moisture_percent=11, temperature_c=8),
    )
    assert day.preferment == lf.Preferment(100, 80)
    assert day.yeast_water == lf.Water(40, 38, wets_yeast=True, stands_h=0.2)
    assert day.bowl == lf.Bowl("steel", 1500)
    assert day.mixing == lf.ByMethod("spiral", 6, hydration_kj_per_kg=12)
    assert day.rest_h == 1.5
    known = {"flour": 20, "room": 21, "bowl": 22, "preferment": 24}
    others = {"flour": 20, "room": 21, "milk": 4, "egg": 5, "butter": -6}
    assert day.batches == (
        days.Batch(25, 30, known, rest_h=0, minutes=6),  # the file's minutes, not its rest
        days.Batch(25, 30, others, rest_h=0.75, minutes=4.5),
    )
    assert day.perishable


@pytest.mark.parametrize(
    ("table", "mixing"),
    [
        ({"method": "hand"}, lf.ByMethod("hand")),
        ({"method": "hand", "minutes": 0}, lf.ByMethod("hand", 0)),
        ({"work_kj_per_kg": 9}, lf.ByWork(9)),
        ({"work_kj_per_kg": 9, "hydration_kj_per_kg": 0}, lf.ByWork(9, hydration_kj_per_kg=0)),
        ({"net_gain_kj_per_kg": 0}, lf.ByNetGain(0)),
        ({"net_gain_kj_per_kg": -3, "minutes": 12}, lf.ByNetGain(-3, minutes=12)),
        ({"net_gain_kj_per_kg": 4, "sd_kj_per_kg": 0.5}, lf.ByNetGain(4, 0.5)),
        ({"net_gain_kj_per_kg": 4, "sd_kj_per_kg": 0, "minutes": 9}, lf.ByNetGain(4, 0, 9)),
        ({"method": "Stand mixer"}, lf.ByMethod("stand_mixer")),
        ({"method": " SPIRAL-intensive "}, lf.ByMethod("spiral_intensive")),
        ({"rest": "50min"}, None),
        ({}, None),
    ],
)
def test_ways_of_mixing_are_read(table, mixing):
    assert days.day_from({"mixing": table}).mixing == mixing


@pytest.mark.parametrize(
    ("table", "minutes"),
    [
        ({}, 0),
        ({"rest": "1h"}, 0),
        ({"method": "hand"}, 10),
        ({"method": "hand", "minutes": 7}, 7),
        ({"method": "hand", "minutes": 0}, 0),
        ({"work_kj_per_kg": 9}, 0),
        ({"net_gain_kj_per_kg": 9}, 0),
        ({"net_gain_kj_per_kg": 9, "minutes": 14}, 14),
    ],
)
def test_the_minutes_of_a_batch_are_the_files_unless_it_has_its_own(table, minutes):
    batch = {"dough": "25C", "water": "28C", "flour": "20C", "room": "21C"}
    day = days.day_from({"mixing": table, "batch": [batch, {**batch, "minutes": 3}, {**batch, "minutes": 0}]})
    assert [logged.minutes for logged in day.batches] == [minutes, 3, 0]
    assert [logged.rest_h for logged in day.batches] == [0, 0, 0]


@pytest.mark.parametrize(
    ("percent", "accepted"), [(0, True), (0.5, True), (39, True), (130, True), (130.1, False), (-0.1, False)]
)
def test_the_water_that_is_poured_may_be_little(percent, accepted):
    """Milk and egg bring water of their own; whether it is enough in all, is for the plan to say."""
    content = {"dough": {"water_percent": percent}}
    if accepted:
        assert days.day_from(content).dough == {"water_percent": percent}
    else:
        with pytest.raises(lf.InvalidInput, match=r"\[dough\] water_percent .* % is outside 0 to 130 %"):
            days.day_from(content)


@pytest.mark.parametrize("spelled", ["whole_wheat", "whole wheat", "Whole-Wheat", " WHOLE  WHEAT "])
def test_names_are_read_however_they_are_spelt(spelled):
    day = days.day_from({"dough": {"yeast": "Active Dry"}, "flour": [{"percent": 100, "kind": spelled}]})
    assert day.flours[0].kind == "whole_wheat"
    assert day.yeast == "active_dry"


@pytest.mark.parametrize(
    ("dough", "perishable"),
    [
        ({"milk_percent": 1}, True),
        ({"egg_percent": 1}, True),
        ({"milk_percent": 0, "egg_percent": 0}, False),
        ({"butter_percent": 10, "oil_percent": 10}, False),
        ({"perishable": True, "milk_percent": 0}, True),
        ({"perishable": False, "milk_percent": 1}, True),
    ],
)
def test_milk_and_egg_make_a_dough_perishable(dough, perishable):
    assert days.day_from({"dough": dough}).perishable == perishable


def test_a_stage_keeps_the_temperature_of_the_one_before():
    day = a_day(a_stage(dough=None), a_stage(dough="20C"), a_stage(dough=None), water={"desired": "25C"})
    assert [stage.dough_c for stage in day.stages] == [25, 20, 20]
    assert stages.at_dough_temperature(day, 22).stages[2].dough_c == 22


LOGGED = {"dough": "25C", "water": "30C", "flour": "20C", "room": "20C"}


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
        ({"dough": {"flour_g": 0}}, "[dough] flour_g 0 g is outside 0.1 to 1e+06 g"),
        ({"dough": {"flour_g": 0.09}}, "[dough] flour_g 0.09 g is outside 0.1 to 1e+06 g"),
        ({"dough": {"flour_g": 1000001}}, "[dough] flour_g 1e+06 g is outside 0.1 to 1e+06 g"),
        ({"dough": {"flour_g": math.nan}}, "[dough] flour_g nan g is outside 0.1 to 1e+06 g"),
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
        ({"water": {"friction": "6h"}}, '[water] friction 6 has the unit "h"; it is a difference of temperatures'),
        (
            {"water": {"friction": "26C"}},
            "[water] friction 26 K is outside -10 to 25 K; if you meant a difference of 26 °F, write 26F; ",
        ),
        ({"water": {"friction_at": "6K"}}, '[water] friction_at 6 has the unit "k"; write 6C or 6F'),
        ({"water": {"friction_at": "99C"}}, "[water] friction_at 99 °C is outside -30 to 60 °C; if you meant 99 °F"),
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
        ({"today": {"bowl": 20}}, '[today] bowl = 20 has no unit; write it in quotes with one, such as "18.5C"'),
        ({"today": {"milk": "61C"}}, "[today] milk 61 °C is outside 0 to 60 °C; if you meant 61 °F, write 61F"),
        ({"today": {"ice": "1C"}}, "[today] ice 1 °C is outside -40 to 0 °C"),
        ({"dough": {"egg_percent": 200}}, "[dough] egg_percent 200 % is outside 0 to 150 %"),
        (
            {"dough": {"oil_percent": "5"}},
            "[dough] oil_percent must be a number: percent of flour weight, got the text",
        ),
        ({"dough": {"milk": 5}}, '[dough] has an unknown key "milk"; known: flour_g, yeast, perishable, yeast_percent'),
        ({"dough": {"milk_percnt": 5}}, '[dough] has an unknown key "milk_percnt"; did you mean "milk_percent"?'),
        ({"dough": {"yeast": "fresh"}}, 'yeast kind "fresh" is unknown; known: instant, active_dry'),
        (
            {"flour": {"percent": 100}},
            "the day file has [flour]; there may be several, so write [[flour]] with two brackets",
        ),
        ({"batch": {"dough": "25C"}}, "the day file has [batch]; there may be several, so write [[batch]] with two br"),
        ({"stage": {}}, "the day file has [stage]; there may be several, so write [[stage]] with two brackets"),
        (
            {"stage": [a_stage(handling={"fold": 1})]},
            "handling must be a list of texts: fold, divide, round, mould, got",
        ),
        ({"flour": [3]}, "flour must be a list of [[flour]] tables, got the number 3 in it"),
        ({"flour": [{"percent": 50}, {}]}, "[[flour]] 2 needs percent, its share of all flour, such as 20"),
        ({"flour": [{"percent": 0}]}, "[[flour]] 1 percent 0 % is outside 0.01 to 100 %"),
        ({"flour": [{"percent": 100, "kind": "spelt"}]}, 'flour "spelt" is unknown; known: bread, all_purpose'),
        ({"flour": [{"percent": 100, "kind": 3}]}, "[[flour]] 1 kind must be a text in quotes, got the number 3"),
        ({"flour": [{"percent": 100, "moisture": 3}]}, '[[flour]] 1 has an unknown key "moisture"; did you mean'),
        ({"flour": [{"percent": 100, "moisture_percent": 4}]}, "moisture_percent 4 % is outside 5 to 20 %"),
        (
            {"flour": [{"percent": 100, "temperature": "20"}]},
            "[[flour]] 1 temperature 20 has no unit; write 20C or 20F",
        ),
        ({"preferment": []}, "[preferment] must be a table, got the list []"),
        ({"preferment": {"flour_g": 100}}, "[preferment] needs water_g, a weight in g, such as 200"),
        ({"preferment": {"flour_g": 0, "water_g": 1}}, "[preferment] flour_g 0 g is outside 0.1 to 1e+06 g"),
        ({"preferment": {"flour_g": 1, "water_g": "9g"}}, '[preferment] water_g must be a number, got the text "9g"'),
        ({"yeast_water": {"water_g": 50}}, '[yeast_water] needs temperature, such as "38C"'),
        ({"yeast_water": {"temperature": "38C"}}, "[yeast_water] needs water_g, a weight in g, such as 50"),
        ({"yeast_water": {"water_g": 50, "temperature": "61C"}}, "[yeast_water] temperature 61 °C is outside 0 to 60"),
        (
            {"yeast_water": {"water_g": 50, "temperature": "38C", "stands": 10}},
            '[yeast_water] stands = 10 has no unit; write it in quotes with one, such as "30min"',
        ),
        (
            {"yeast_water": {"water_g": 50, "temperature": "38C", "stands": "25h"}},
            "[yeast_water] stands 25 h is outside 0 to 24 h",
        ),
        ({"bowl": {"material": "steel"}}, "[bowl] needs mass_g, a weight in g, such as 1200"),
        ({"bowl": {"mass_g": 900}}, "[bowl] needs a material, one of steel, aluminium, glass, ceramic, plastic, polyc"),
        (
            {"bowl": {"material": "steel", "mass_g": 2.1}},
            "[bowl] mass_g 2.1 g is no bowl for a dough; it is in grams: 2.1 kg are 2100",
        ),
        ({"bowl": {"material": "steel", "mass_g": 19.99}}, "it is in grams: 19.99 kg are 19990"),
        ({"bowl": {"material": "steel", "mass_g": 1e-300}}, "g is no bowl for a dough; it is in grams"),
        ({"bowl": {"material": "gold", "mass_g": 900}}, 'bowl material "gold" is unknown; known: steel, aluminium'),
        ({"bowl": {"material": "wood", "mass_g": -1}}, "[bowl] mass_g -1 g is outside 0 to 1e+06 g"),
        ({"mixing": {"method": "blender"}}, 'mixing method "blender" is unknown; known: folds, hand'),
        ({"mixing": {"minutes": 5}}, '[mixing] needs a method beside minutes, such as method = "stand_mixer"'),
        ({"mixing": {"method": "hand", "minutes": 61}}, "[mixing] minutes 61 min is outside 0 to 60 min"),
        ({"mixing": {"work_kj_per_kg": -1}}, "[mixing] work_kj_per_kg -1 kJ/kg is outside 0 to 100 kJ/kg"),
        ({"mixing": {"work_kj_per_kg": 9, "minutes": 5}}, "minutes"),
        ({"mixing": {"net_gain_kj_per_kg": math.nan}}, "net_gain_kj_per_kg nan kJ/kg is outside -30 to 120 kJ/kg"),
        (
            {"mixing": {"method": "hand", "net_gain_kj_per_kg": 3}},
            "[mixing] takes one of method, work_kj_per_kg and net_gain_kj_per_kg: each is all of the heat",
        ),
        (
            {"mixing": {"net_gain_kj_per_kg": 3, "hydration_kj_per_kg": 15}},
            "[mixing] net_gain_kj_per_kg holds the hydration already; leave hydration_kj_per_kg out",
        ),
        ({"mixing": {"net_gain_kj_per_kg": 3, "sd_kj_per_kg": -1}}, "[mixing] sd_kj_per_kg -1 kJ/kg is outside 0 to"),
        ({"mixing": {"net_gain_kj_per_kg": 3, "sd_kj_per_kg": "1"}}, "sd_kj_per_kg must be a number, got the text"),
        ({"mixing": {"method": "hand", "sd_kj_per_kg": 1}}, "sd_kj_per_kg"),
        ({"mixing": {"work_kj_per_kg": 9, "sd_kj_per_kg": 1}}, "sd_kj_per_kg"),
        ({"mixing": {"sd_kj_per_kg": 1}}, "sd_kj_per_kg"),
        ({"mixing": {"rest": 0.5}}, '[mixing] rest = 0.5 has no unit; write it in quotes with one, such as "30min"'),
        ({"mixing": {"rest": "30"}}, "[mixing] rest 30 has no unit; write 30h or 30min"),
        ({"batch": [{"dough": "25C"}]}, '[[batch]] 1 needs water, a temperature with its unit, such as "25.3C"'),
        (
            {"batch": [{"dough": "78C", "water": "30C", "flour": "20C", "room": "20C"}]},
            "[[batch]] 1 dough 78 °C is outside -2 to 45 °C; if you meant 78 °F, write 78F",
        ),
        (
            {"batch": [{"dough": "25C", "water": "30C", "flour": "20C", "room": "20C", "tap": "9C"}]},
            '[[batch]] 1 has an unknown key "tap"',
        ),
        (
            {"batch": [{**LOGGED, "rest": 20}]},
            "[[batch]] 1 rest = 20 has no unit; write it in quotes with one, such as",
        ),
        ({"batch": [LOGGED, {**LOGGED, "rest": "25h"}]}, "[[batch]] 2 rest 25 h is outside 0 to 24 h"),
        ({"batch": [{**LOGGED, "minutes": "8"}]}, '[[batch]] 1 minutes must be a number, got the text "8"'),
        ({"batch": [{**LOGGED, "minutes": 61}]}, "[[batch]] 1 minutes 61 min is outside 0 to 60 min"),
        ({"batch": [{**LOGGED, "milk": "61C"}]}, "[[batch]] 1 milk 61 °C is outside 0 to 60 °C; if you meant 61 °F"),
        ({"batch": [{**LOGGED, "egg": 4}]}, "[[batch]] 1 egg = 4 has no unit"),
        ({"batch": [{**LOGGED, "butter": "99C"}]}, "[[batch]] 1 butter 99 °C is outside"),
        ({"batch": [{**LOGGED, "bowl": "20"}]}, "[[batch]] 1 bowl 20 has no unit; write 20C or 20F"),
        ({"batch": [{**LOGGED, "preferment": "99C"}]}, "[[batch]] 1 preferment 99 °C is outside"),
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
        {"dough": {"milk_percent": 10**400}},
        {"flour": [{"percent": 10**400}]},
        {"bowl": {"mass_g": 10**400}},
        {"mixing": {"work_kj_per_kg": 10**400}},
        {"preferment": {"flour_g": 10**400, "water_g": 1}},
        {"yeast_water": {"water_g": 10**400, "temperature": "38C"}},
        {"batch": [{"dough": 10**400}]},
    ],
)
def test_integers_too_large_for_numbers(content):
    with pytest.raises(lf.InvalidInput):
        days.day_from(content)


@pytest.mark.parametrize("rise_percent", [-50, 0, math.nan, math.inf, 1e6])
def test_a_rise_outside_the_field_table_names_its_stage(rise_percent):
    with pytest.raises(lf.InvalidInput) as refused:
        stages.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=rise_percent)))
    assert "bulk" in str(refused.value)
    assert "rise" in str(refused.value)


def test_files_that_cannot_be_read(tmp_path):
    with pytest.raises(lf.InvalidInput, match=r"there is no file .*nowhere\.toml"):
        days.read_day(tmp_path / "nowhere.toml")
    with pytest.raises(lf.InvalidInput, match="is a folder; name the day file in it"):
        days.read_day(tmp_path)
    path = tmp_path / "day.toml"
    for broken, words in (
        (b"\xff\xfe", "looks like UTF-16"),
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


# ---- the bowl --------------------------------------------------------------------------------------------------------

ROOM = {"room": "21C"}
WATER = {"today": ROOM, "water": {"desired": "24C"}}
BATCH = {"dough": "25C", "water": "28C", "flour": "20C", "room": "21C"}


def refused_water(content):
    with pytest.raises(lf.InvalidInput) as refused:
        bowls.plan_of(days.day_from(content))
    return str(refused.value)


def test_what_the_water_needs():
    assert refused_water({"today": {"flour": "20C", "room": "21C"}}) == (
        "the water temperature needs [water] desired (--desired)"
    )
    assert refused_water({"today": {"flour": "20C"}, "water": {"desired": "24C"}}) == (
        "the water temperature needs [today] room (--room); measure it where the dough is mixed"
    )
    plan = bowls.plan_of(days.day_from(WATER))  # and nothing else
    assert plan.mix == lf.Mix.from_percent(flour_g=500, room_c=21)
    assert plan.water.to_dict() == lf.water_by_heat_balance(plan.mix, 24).to_dict()
    assert bowls.planned_mix_of(days.day_from(WATER)) == (plan.mix, 24, None)
    assert bowls.ASSUMED_FLOUR_G == 500


@pytest.mark.parametrize(
    ("table", "content"),
    [
        ("bowl", {"material": "glass", "mass_g": 900}),
        ("yeast_water", {"water_g": 50, "temperature": "38C"}),
        ("preferment", {"flour_g": 50, "water_g": 50}),
    ],
)
def test_weights_need_the_weight_of_the_flour(table, content):
    words = "beside weights of bowl, yeast_water or preferment, the flour's is needed: [dough] flour_g (--flour-g)"
    assert refused_water({**WATER, table: content}) == words
    plan = bowls.plan_of(days.day_from({**WATER, table: content, "dough": {"flour_g": 500}}))
    assert plan.water.dough_g == pytest.approx(835, rel=1e-12)  # it is part of the flour and water, or no dough
    parts = {"bowl": plan.mix.bowl.mass_g, "yeast_water": sum(water.mass_g for water in plan.mix.waters)}
    parts["preferment"] = sum(part.flour_g + part.water_g for part in plan.mix.preferments)
    assert parts == {"bowl": 0, "yeast_water": 0, "preferment": 0} | {
        table: {"bowl": 900, "yeast_water": 50}.get(table, 100)
    }


def test_a_preferment_needs_its_weight():
    for dough in ({}, {"flour_g": 500}):
        words = refused_water({**WATER, "today": {**ROOM, "preferment": "20C"}, "dough": dough})
        assert words == (
            "the preferment has a temperature but no weight; give [preferment] flour_g and water_g (--preferment-g)"
        )


def test_the_water_is_that_of_balance_and_factor_rule():
    day = days.read_day(BY_HAND)
    mix = by_hand_mix()
    assert bowls.mix_of(day) == mix
    batch = mix.replace(flour_c=19, room_c=21, water_c=33, rest_h=40 / 60)
    gain = lf.net_gain_from_batches([batch], [25.4])
    friction_k = 3 * 25.4 - 19 - 21 - 33
    planned = bowls.plan_of(day)
    assert planned.mix == mix.replace(mixing=lf.net_gain_of(gain, 12))
    assert bowls.planned_mix_of(day) == (planned.mix, 25, planned.water.friction_k)
    plan = planned.water
    expected = lf.water_by_heat_balance(planned.mix, 25, friction_k=plan.friction_k)
    assert plan.friction_k == pytest.approx(friction_k, rel=1e-12)
    assert plan.to_dict() == expected.to_dict()
    assert plan.factor_rule_c == lf.water_by_factor_rule(25, flour_c=18.5, room_c=20, friction_k=plan.friction_k)
    preferment = days.day_from(
        {
            "today": {"flour": "20C", "room": "21C", "preferment": "18C"},
            "water": {"desired": "24C", "friction": "3K"},
            "dough": {"flour_g": 500},
            "preferment": {"flour_g": 100, "water_g": 100},
        }
    )
    expected = lf.water_by_factor_rule(24, flour_c=20, room_c=21, friction_k=3, preferment_c=18)
    assert bowls.plan_of(preferment).water.factor_rule_c == expected == 4 * 24 - 20 - 21 - 18 - 3


def test_the_mix_of_a_full_day():
    day = days.day_from(
        {
            "today": {
                "flour": "18C",
                "room": "21C",
                "tap": "12C",
                "preferment": "26C",
                "refrigerator": "4C",
                "bowl": "30C",
                "milk": "5C",
                "egg": "8C",
                "butter": "16C",
                "ice": "-5C",
            },
            "water": {"desired": "25C"},
            "dough": {
                "flour_g": 1000,
                "yeast": "compressed",
                "yeast_percent": 3,
                "salt_percent": 1.5,
                "sugar_percent": 10,
                "gluten_percent": 2,
                "water_percent": 50,
                "milk_percent": 12,
                "egg_percent": 8,
                "butter_percent": 9,
                "oil_percent": 1,
                "altitude_m": 500,
            },
            "flour": [{"percent": 75}, {"percent": 25, "kind": "whole_wheat", "temperature": "10C"}],
            "preferment": {"flour_g": 100, "water_g": 70},
            "yeast_water": {"water_g": 60, "temperature": "36C", "stands": "5min"},
            "bowl": {"material": "glass", "mass_g": 1800},
            "mixing": {"work_kj_per_kg": 7, "rest": "25min"},
        }
    )
    assert bowls.mix_of(day) == lf.Mix.from_percent(
        flour_g=1000,
        room_c=21,
        flour_c=18,
        tap_c=12,
        ice_c=-5,
        milk_c=5,
        egg_c=8,
        butter_c=16,
        flours=[lf.FlourShare(75), lf.FlourShare(25, "whole_wheat", temperature_c=10)],
        water_percent=50,
        waters=[lf.Water(60, 36, wets_yeast=True, stands_h=5 / 60)],
        preferments=[lf.Preferment(100, 70, temperature_c=26)],
        salt_percent=1.5,
        sugar_percent=10,
        gluten_percent=2,
        milk_percent=12,
        egg_percent=8,
        butter_percent=9,
        oil_percent=1,
        compressed_percent=3,
        bowl=lf.Bowl("glass", 1800, temperature_c=30),
        mixing=lf.ByWork(7),
        rest_h=25 / 60,
    )


def test_shares_of_the_flours_are_of_the_fresh_flour():
    """Added gluten and the preferment's flour count as flour, and are no part of the shares."""
    day = days.day_from(
        {
            **WATER,
            "dough": {"flour_g": 1000, "gluten_percent": 2},
            "preferment": {"flour_g": 180, "water_g": 180},
            "flour": [{"percent": 75}, {"percent": 25, "kind": "Dark rye"}],
        }
    )
    mix = bowls.mix_of(day)
    assert [(flour.kind, flour.mass_g) for flour in mix.flours] == [
        ("bread", pytest.approx(600, rel=1e-15)),
        ("dark_rye", pytest.approx(200, rel=1e-15)),
    ]
    assert (mix.gluten_g, mix.percent.flour_g) == (20, pytest.approx(1000, rel=1e-15))


@pytest.mark.parametrize(
    ("shares", "accepted"),
    [
        ((99.91,), True),
        ((99.89,), False),
        ((60, 40.09), True),
        ((60, 40.11), False),
        ((33.3, 33.3, 33.3), True),
        ((58.0,), False),
    ],
)
def test_shares_of_the_flours_make_100_percent(shares, accepted):
    flours = [{"percent": share, "kind": kind} for share, kind in zip(shares, KINDS, strict=False)]
    content = {**WATER, "dough": {"gluten_percent": 3}, "flour": flours}
    if not accepted:
        words = refused_water(content)
        assert f"the shares of the flours make {sum(shares):.4g} %, not 100 %" in words
        assert "they are of the flour, added gluten and preferments apart" in words
        return
    mix = bowls.plan_of(days.day_from(content)).mix
    assert mix.percent.flour_g == pytest.approx(500, rel=1e-14)  # exactly, whatever the shares were rounded to
    assert [flour.mass_g for flour in mix.flours] == pytest.approx([485 * s / sum(shares) for s in shares], rel=1e-12)


@pytest.mark.parametrize(
    ("dough", "words"),
    [
        ({"water_percent": 30}, "water 30 % is outside 40 to 130 %; percent are of the flour's weight"),
        (
            {"water_percent": 10, "milk_percent": 30},
            "water 36.439 % is outside 40 to 130 %; percent are of the flour's",
        ),
        ({"water_percent": 120, "milk_percent": 20}, "% is outside 40 to 130 %; percent are of the flour's weight"),
    ],
)
def test_too_little_or_too_much_water_in_all_is_refused_by_the_plan(dough, words):
    assert words in refused_water({**WATER, "dough": dough})
    milk = {"water_percent": 10, "milk_percent": 40}
    plan = bowls.plan_of(days.day_from({**WATER, "dough": milk}))
    assert plan.water.water_g == pytest.approx(50, rel=1e-15)
    assert plan.mix.percent.water_percent == pytest.approx(10 + 40 * lf.Composition.of("milk").water, rel=1e-14)


def test_a_friction_tells_of_the_mixing_only_with_its_kitchen():
    """Alone it is the rule's; with the kitchen it was found in, and no mixing said, it gives a wide net gain."""
    mix = lf.Mix.from_percent(flour_g=500, room_c=21)
    alone = days.day_from({**WATER, "water": {"desired": "24C", "friction": "6K"}})
    assert bowls.planned_mix_of(alone) == (mix, 24, 6)
    assert bowls.plan_of(alone).water.to_dict() == lf.water_by_heat_balance(mix, 24, friction_k=6).to_dict()
    found_at = {"desired": "24C", "friction": "6K", "friction_at": "17C"}
    worth = lf.ByNetGain(lf.net_gain_from_friction(mix, 6, 24, measured_at_c=17), bowls.SD_OF_A_FRICTION)
    assert bowls.SD_OF_A_FRICTION == worth.sd_kj_per_kg == 2
    plan = bowls.plan_of(days.day_from({**WATER, "water": found_at}))
    assert plan.mix == mix.replace(mixing=worth)
    assert plan.water.to_dict() == lf.water_by_heat_balance(plan.mix, 24, friction_k=6).to_dict()
    width_k = 1.645 * 2 * plan.water.k_per_kj_per_kg
    assert plan.water.high_c - 24 == pytest.approx(width_k, rel=1e-9)
    for table in ({"method": "hand"}, {"net_gain_kj_per_kg": 4}, {"work_kj_per_kg": 4}):  # what is said of it counts
        day = days.day_from({**WATER, "water": found_at, "mixing": table})
        assert bowls.planned_mix_of(day) == (mix.replace(mixing=day.mixing), 24, 6)
    day = days.day_from({**WATER, "water": found_at, "batch": [BATCH]})
    learned = bowls.learned_from(day)
    assert bowls.planned_mix_of(day) == (mix.replace(mixing=lf.net_gain_of(learned.net_gain)), 24, 6)


@pytest.mark.parametrize("yeast", ["instant", "active_dry", "active_dry_unwetted", "compressed"])
def test_each_kind_of_yeast_is_weighed_in(yeast):
    mix = bowls.mix_of(days.day_from({**WATER, "dough": {"yeast": yeast, "yeast_percent": 1.2, "flour_g": 1000}}))
    weights = {name: getattr(mix, f"{name}_g") for name in ("instant", "active_dry", "compressed")}
    own = yeast.removesuffix("_unwetted")
    assert weights == {"instant": 0, "active_dry": 0, "compressed": 0, own: 12}


def test_what_batches_say():
    batches = [BATCH, {**BATCH, "dough": "24.2C", "room": "19C"}]
    learned = bowls.learned_from(days.day_from({**WATER, "batch": batches}))
    mix = lf.Mix.from_percent(flour_g=500, room_c=21, flour_c=20)
    mixes = [mix.replace(water_c=28), mix.replace(water_c=28, room_c=19)]
    friction = lf.friction_from_batches(dough_c=[25, 24.2], flour_c=20, room_c=[21, 19], water_c=28)
    assert learned.friction.to_dict() == friction.to_dict()
    assert learned.net_gain.to_dict() == lf.net_gain_from_batches(mixes, [25, 24.2]).to_dict()
    assert learned.minutes == 0
    with pytest.raises(
        lf.InvalidInput,
        match=r"^no batch is logged; write a \[\[batch\]\] with dough, water, flour, room \(--dough, --water, ",
    ):
        bowls.learned_from(days.day_from(WATER))


def test_minutes_and_rest_of_each_batch_count():
    """Each batch with its own; what it does not say is the file's minutes and no rest, never today's."""
    batches = [BATCH, {**BATCH, "rest": "1h", "room": "12C"}, {**BATCH, "minutes": 25, "room": "12C", "bowl": "30C"}]
    tables = {
        "dough": {"flour_g": 800, "milk_percent": 15},
        "bowl": {"material": "ceramic", "mass_g": 2000},
        "mixing": {"method": "Spiral", "minutes": 5, "rest": "2h"},
        "today": {"room": "3C", "flour": "4C", "bowl": "50C", "milk": "2C"},
    }
    learned = bowls.learned_from(days.day_from({"water": WATER["water"], "batch": batches, **tables}))
    mix = lf.Mix.from_percent(
        flour_g=800, room_c=21, flour_c=20, water_c=28, milk_percent=15, bowl=lf.Bowl("ceramic", 2000)
    )
    mixes = [
        mix.replace(mixing=lf.ByNetGain(0, minutes=5)),
        mix.replace(mixing=lf.ByNetGain(0, minutes=5), rest_h=1, room_c=12),
        mix.replace(mixing=lf.ByNetGain(0, minutes=25), room_c=12, bowl=lf.Bowl("ceramic", 2000, temperature_c=30)),
    ]
    assert learned.net_gain.to_dict() == lf.net_gain_from_batches(mixes, [25, 25, 25]).to_dict()
    assert learned.minutes == 5  # today's
    # Without a way of mixing today, those of the batches that know theirs.
    del tables["mixing"]
    learned = bowls.learned_from(days.day_from({"batch": [*batches, {**BATCH, "minutes": 15}], **tables}))
    assert learned.minutes == 20


def test_what_is_stated_counts_before_what_batches_say():
    with_batch = {**WATER, "batch": [BATCH]}
    learned = bowls.learned_from(days.day_from(with_batch))
    mix = lf.Mix.from_percent(flour_g=500, room_c=21)
    for tables, mixing, friction_k in (
        ({}, lf.net_gain_of(learned.net_gain), 6),
        ({"mixing": {"net_gain_kj_per_kg": 5}}, lf.ByNetGain(5), 6),
        ({"water": {"desired": "24C", "friction": "3K"}}, lf.net_gain_of(learned.net_gain), 3),
    ):
        plan = bowls.plan_of(days.day_from({**with_batch, **tables}))
        assert plan.mix == mix.replace(mixing=mixing)
        expected = lf.water_by_heat_balance(plan.mix, 24, friction_k=friction_k)
        assert plan.water.to_dict() == expected.to_dict()


def test_a_batch_that_cannot_be_is_named():
    absurd = {**BATCH, "dough": "40C"}
    with pytest.raises(
        lf.InvalidInput, match=r"^friction_k: batch 2 of 2: friction .*one of the temperatures must be wrong"
    ):
        bowls.learned_from(days.day_from({"batch": [BATCH, absurd]}))
    heavy = {"dough": {"flour_g": 100}, "bowl": {"material": "steel", "mass_g": 3000}}
    with pytest.raises(lf.InvalidInput, match=r"^net_gain_kj_per_kg: batch 2 of 3: net mixing gain of this batch"):
        bowls.learned_from(days.day_from({"batch": [BATCH, {**BATCH, "bowl": "99C"}, BATCH], **heavy}))


def test_water_that_cannot_be_poured_names_the_doughs_that_can():
    day = days.day_from({"today": {"room": "5C"}, "water": {"desired": "44C"}})
    with pytest.raises(lf.NoSolution, match="reachable are doughs of") as refused:
        bowls.plan_of(day)
    assert (refused.value.path, refused.value.value) == ("desired_c", 44)
    low, high = refused.value.low, refused.value.high
    for desired_c in (low + 1e-6, high - 1e-6):
        plan = bowls.plan_of(days.day_from({"today": {"room": "5C"}, "water": {"desired": f"{desired_c:.9f}C"}}))
        assert 0 <= plan.water.water_c <= 60


# ---- stages ----------------------------------------------------------------------------------------------------------


def test_a_day_by_hand_stage_by_stage():
    """Held at dough temperatures, as a chain of steps written out: the numbers from the file alone."""
    at = lf.Surroundings.dough
    mix = lf.Mix(dough_c=24, flour_g=1000, water_g=660, salt_g=21, active_dry_g=9)
    own = [
        lf.Stage("b", surroundings=at(24), until_rise_percent=95, folds_h=[0.4, 0.9], handling=["divide", "round"]),
        lf.Stage("r", surroundings=at(22), until_h=0.25, handling=["mould"]),
        lf.Stage("p", surroundings=at(22), until_rise_percent=70, standing="free", final_proof=True),
    ]
    by_hand = lf.simulate(lf.Process([mix, *own], altitude_m=600)).stages

    day = days.read_day(BY_HAND)
    held = [
        replace(stage, surroundings=lf.Surroundings.dough(c)) for stage, c in zip(day.stages, (24, 22, 22), strict=True)
    ]
    bulk, bench_rest, final_proof = stages.plan_stages(replace(day, stages=tuple(held)))
    assert bulk.hours == pytest.approx(by_hand[0].hours, rel=1e-12)
    assert bulk.rise_percent == pytest.approx(95, rel=1e-12)
    assert (bulk.folds_done, bulk.folds_planned) == (2, 2)
    assert bench_rest.start_h == bulk.ready_h
    assert bench_rest.hours == 0.25
    assert bench_rest.rise_percent == pytest.approx(by_hand[1].rise_percent, rel=1e-9)
    assert final_proof.start_h == pytest.approx(by_hand[0].hours + 0.25, rel=1e-12)
    assert final_proof.hours == pytest.approx(by_hand[2].hours, rel=1e-12)
    assert final_proof.ready_h == pytest.approx(by_hand[2].end_h, rel=1e-12)
    assert final_proof.be_back_by_h == pytest.approx(by_hand[2].be_back_by_h, rel=1e-12)


def test_losses_of_that_chain_are_the_kitchens():
    kitchen = lf.Kitchen()
    losses = (kitchen.fold_loss, kitchen.divide_loss, kitchen.round_loss, kitchen.mould_loss)
    assert losses == (0.15, 0.5, 0.6, 0.8)
    assert (kitchen.over_proof_free, kitchen.retention_limit, kitchen.over_proof_rise_percent) == (0.65, 4.8, 130)


def test_one_stage_without_folds_is_hours_to_rise():
    (plan,) = stages.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=90)))
    assert plan.hours == pytest.approx(lf.hours_to_rise(90, dough_c=23, yeast_percent=0.7), rel=1e-12)
    (timed,) = stages.plan_stages(a_day(STAGE))
    assert timed.rise_percent == pytest.approx(lf.rise_after(2, dough_c=23, yeast_percent=0.7), rel=1e-12)
    assert (timed.hours, timed.ready_h, timed.start_h) == (2, 2, 0)


def test_another_kitchen_changes_the_day():
    kitchen = lf.Kitchen(gassing_rate=14)
    day = a_day(a_stage(until_h=None, until_rise_percent=90))
    (plan,) = stages.plan_stages(day, kitchen)
    assert plan.hours == pytest.approx(lf.hours_to_rise(90, dough_c=23, yeast_percent=0.7, kitchen=kitchen), rel=1e-12)


def test_all_water_counts_for_the_yeast():
    """Also that of milk, egg and butter; what is poured is what the day file says."""
    rich = {"milk_percent": 20, "egg_percent": 12, "butter_percent": 15, "oil_percent": 4}
    day = a_day(a_stage(until_h=None, until_rise_percent=90), dough={"yeast_percent": 0.7, "water_percent": 50, **rich})
    water = {name: lf.Composition.of(name).water for name in ("milk", "egg", "butter", "oil")}
    assert water["oil"] == 0 < water["butter"] < water["egg"] < water["milk"] < 1
    water_percent = 50 + 20 * water["milk"] + 12 * water["egg"] + 15 * water["butter"]
    mix = stages.mix_at(day, 23)
    assert mix.percent.water_percent == pytest.approx(water_percent, rel=1e-14)
    state = lf.advance(lf.State(), mix)
    assert state.amounts.water_g == pytest.approx(5 * water_percent, rel=1e-14)
    assert state.amounts.dough_g == pytest.approx(5 * (100 + 50 + 51 + 2 + 0.7), rel=1e-14)
    (plan,) = stages.plan_stages(day)
    speed = lf.speed(dough_c=23, water_percent=water_percent)
    (result,) = lf.simulate(stages.process_of(day)).stages
    assert result.equivalent_h == pytest.approx(speed * plan.hours, rel=1e-12)


def test_a_stage_that_is_ready_before_a_fold():
    (plan,) = stages.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=50, folds_h=[0.1, 0.2, 5, 6])))
    assert (plan.folds_done, plan.folds_planned) == (2, 4)
    (unfolded,) = stages.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=50, folds_h=[5])))
    assert (unfolded.folds_done, unfolded.folds_planned) == (0, 1)
    assert unfolded.hours == pytest.approx(lf.hours_to_rise(50, dough_c=23, yeast_percent=0.7), rel=1e-12)


def test_a_fold_costs_time():
    (plain,) = stages.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=90)))
    (folded,) = stages.plan_stages(a_day(a_stage(until_h=None, until_rise_percent=90, folds_h=[0.4, 0.9])))
    assert folded.hours > plain.hours * 1.01


@pytest.mark.parametrize("rise_percent", [370, 381, 500])
def test_a_rise_that_a_stage_never_reaches(rise_percent):
    day = a_day(STAGE | {"handling": ["fold"]}, a_stage(name="proof", until_h=None, until_rise_percent=rise_percent))
    with pytest.raises(lf.NoSolution) as refused:
        stages.plan_stages(day)
    message = str(refused.value)
    assert message.startswith(
        f'steps[2].until_rise_percent: stage "proof": a rise of {rise_percent} % is never reached'
    )
    named = float(message.split("rises by ")[1].split(" %")[0])
    below = a_day(STAGE | {"handling": ["fold"]}, a_stage(name="proof", until_h=None, until_rise_percent=named - 1))
    assert stages.plan_stages(below)[1].rise_percent == pytest.approx(named - 1, rel=1e-9)


def test_when_a_stage_would_be_over_proofed():
    tin, free = (stages.plan_stages(a_day(a_stage(standing=standing)))[0] for standing in ("tin", "free"))
    proof = stages.plan_stages(a_day(a_stage(standing="tin", final_proof=True)))[0]
    dough = {"dough_c": 23, "yeast_percent": 0.7}
    assert tin.be_back_by_h == pytest.approx(lf.hours_to_rise(100 * (0.87 * 4.8 - 1), **dough), rel=1e-12)
    assert free.be_back_by_h == pytest.approx(lf.hours_to_rise(100 * (0.65 * 4.8 - 1), **dough), rel=1e-12)
    assert proof.be_back_by_h == pytest.approx(lf.hours_to_rise(130, **dough), rel=1e-12)


def test_a_stage_in_which_nothing_rises_can_still_pass():
    # −2 °C is inside the field table: the dough stands still for the time given, and is never over-proofed.
    (plan,) = stages.plan_stages(a_day(a_stage(dough="-2C")))
    assert plan.hours == 2
    assert plan.rise_percent == pytest.approx(0, abs=1e-9)
    assert plan.be_back_by_h is None


def test_what_a_day_of_stages_needs():
    with pytest.raises(lf.InvalidInput, match=r"\[dough\] needs yeast_percent: 3 g on 500 g of flour are 0.6"):
        stages.plan_stages(days.day_from({"stage": [STAGE]}))
    with pytest.raises(lf.InvalidInput, match=r"no \[\[stage\]\]; add one"):
        stages.plan_stages(days.day_from({"dough": {"yeast_percent": 1}}))


def codes(day):
    return [notice.code for notice in stages.notices_of_stages(day, stages.plan_stages(day))]


def test_notices_of_a_day():
    assert codes(days.read_day(DEMO)) == codes(days.read_day(BY_HAND)) == []
    perishable = {"yeast_percent": 0.7, "perishable": True}
    assert codes(a_day(a_stage(until_h=4), dough=perishable)) == []
    assert codes(a_day(a_stage(until_h=4.01), dough=perishable)) == ["perishable_held"]
    for food in ("milk_percent", "egg_percent"):
        rich = {"yeast_percent": 0.7, food: 5}
        assert codes(a_day(a_stage(until_h=4), dough=rich)) == []
        assert codes(a_day(a_stage(until_h=4.01), dough=rich)) == ["perishable_held"]
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
    (plan,) = stages.plan_stages(a_day(a_stage(until_h=9)))
    assert plan.be_back_by_h < plan.ready_h
    (notice,) = stages.notices_of_stages(a_day(a_stage(until_h=9)), [plan])
    assert (notice.code, notice.severity) == ("stage_over_proofed", "warning")
    assert notice.values == {"be_back_by_h": plan.be_back_by_h, "ready_h": plan.ready_h}
    assert f'stage "bulk": the dough is over-proofed at {quantities.clock_text(plan.be_back_by_h)}' in notice.text


def test_time_in_the_cold_is_not_time_held_warm():
    perishable = {"yeast_percent": 0.7, "perishable": True}
    assert codes(a_day(a_stage(until_h=3), a_stage(dough="4C", until_h=12), dough=perishable)) == ["dough_cold"]


# ---- random content --------------------------------------------------------------------------------------------------

KINDS = ("bread", "all_purpose", "whole_wheat", "medium_rye", "dark_rye")
METHODS = tuple(method.name for method in lf.mixing_methods())
REFUSALS = (lf.InvalidInput, lf.OutsideModel, lf.NoSolution)

scalars = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=8)
    | st.dates()
    | st.sampled_from(["20C", "68F", "3K", "fold", "tin", "free", "instant", "compressed", "-500F", 10**400, 0.7, 2])
    | st.sampled_from(["30min", "1h", "steel", "gold", "hand", "blender", "dark_rye", "salt", 100, 1200, -1])
    | st.sampled_from(["6C", "Stand mixer", "Whole wheat", "CERAMIC", "1,000g"])
)
keys = [*days.Day.__dataclass_fields__, *days.Stage.__dataclass_fields__]
keys += ["today", "water", "stage", "flour", "room", "tap", "preferment", "refrigerator", "desired", "friction"]
keys += ["batch", "mass_g", "material", "method", "minutes", "work_kj_per_kg", "net_gain_kj_per_kg", "rest", "stands"]
keys += ["hydration_kj_per_kg", "flour_g", "water_g", "temperature", "kind", "percent", "moisture_percent"]
keys += ["friction_at", "sd_kj_per_kg"]
names = st.text(max_size=6) | st.sampled_from([*keys, *days.DOUGH_NUMBERS, *days.ENRICHING, *days.TEMPERATURES])
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


def within(name, low=None, high=None):
    """A number anywhere in a field's bounds, or in a part of them."""
    return st.floats(FIELDS[name].low if low is None else low, FIELDS[name].high if high is None else high)


degrees = st.integers(0, 45).map(lambda c: f"{c}C") | st.integers(33, 110).map(lambda f: f"{f}F")
colder = st.integers(-20, 60).map(lambda c: f"{c}C")
times = st.integers(0, 600).map(lambda minutes: f"{minutes}min") | st.integers(0, 24).map(lambda h: f"{h}h")
flour_lists = st.lists(st.floats(1, 100), min_size=1, max_size=3).flatmap(
    lambda shares: st.tuples(
        *(
            st.fixed_dictionaries(
                {"percent": st.just(100 * share / sum(shares))},
                optional={
                    "kind": st.sampled_from([*KINDS, "spelt"]),
                    "moisture_percent": within("moisture_percent"),
                    "temperature": colder,
                },
            )
            for share in shares
        )
    ).map(list)
)
batch_lists = st.lists(
    st.fixed_dictionaries(
        {"dough": st.integers(18, 30).map(lambda c: f"{c}C"), "water": degrees, "flour": colder, "room": colder},
        optional={
            "preferment": degrees,
            "bowl": colder,
            "milk": degrees,
            "egg": degrees,
            "butter": colder,
            "rest": times,
            "minutes": within("mixing_min"),
        },
    ),
    max_size=3,
)
bowl_tables = {
    "flour": flour_lists,
    "preferment": st.fixed_dictionaries({"flour_g": st.floats(0.1, 300), "water_g": st.floats(0.1, 300)}),
    "yeast_water": st.fixed_dictionaries(
        {"water_g": st.floats(0.1, 400), "temperature": degrees}, optional={"stands": times}
    ),
    "bowl": st.fixed_dictionaries(
        {"mass_g": st.floats(0, 5000)}, optional={"material": st.sampled_from([*lf.bowl_materials(), "Steel", "gold"])}
    ),
    "mixing": st.fixed_dictionaries(
        {},
        optional={
            "method": st.sampled_from([*METHODS, "Stand mixer", "blender"]),
            "minutes": within("mixing_min"),
            "work_kj_per_kg": within("work_kj_per_kg"),
            "net_gain_kj_per_kg": within("net_gain_kj_per_kg"),
            "hydration_kj_per_kg": within("hydration_kj_per_kg"),
            "sd_kj_per_kg": within("sd_kj_per_kg"),
            "rest": times,
        },
    ),
    "batch": batch_lists,
}
doughs = st.fixed_dictionaries(
    {"yeast_percent": st.floats(0.01, 5)},
    optional=dict.fromkeys(days.DOUGH_NUMBERS[1:], numbers)
    | dict.fromkeys(days.ENRICHING, numbers)
    | {"yeast": st.sampled_from([*YEASTS, "fresh", "salt"]), "flour_g": numbers, "perishable": st.booleans()},
)
plausible_mixing = {
    "method": st.sampled_from(METHODS),
    "minutes": within("mixing_min"),
    "work_kj_per_kg": within("work_kj_per_kg", high=40),
    "net_gain_kj_per_kg": within("net_gain_kj_per_kg", low=-10, high=40),
    "sd_kj_per_kg": within("sd_kj_per_kg", high=5),
}
plausible_today = {
    "flour": colder,
    "bowl": colder,
    "butter": colder,
    "tap": degrees,
    "milk": degrees,
    "egg": degrees,
    "ice": st.integers(-40, 0).map(lambda c: f"{c}C"),
    "refrigerator": st.integers(-5, 15).map(lambda c: f"{c}C"),
}
tables = {
    "title": st.text(max_size=5),
    "today": values,
    "water": st.fixed_dictionaries(
        {},
        optional={
            "desired": st.sampled_from(["24C", "75F"]),
            "friction": st.sampled_from(["3K", "3C", "9F"]),
            "friction_at": degrees,
        },
    ),
    "dough": doughs,
    "stage": st.lists(plausible_stages, max_size=4),
    **bowl_tables,
}


@st.composite
def plausible_batches(draw, with_preferment):
    """Batches as they come out of most mixing: the water follows from a friction that is allowed."""
    batches = []
    for _ in range(draw(st.integers(1, 4))):
        dough_c, flour_c, room_c = draw(st.tuples(st.integers(20, 28), st.integers(10, 28), st.integers(12, 28)))
        water_c = 3 * dough_c - flour_c - room_c - draw(st.integers(-5, 15))
        batch = {"dough": dough_c, "flour": flour_c, "room": room_c, "water": min(max(water_c, 0), 60)}
        if with_preferment and draw(st.booleans()):
            batch["preferment"] = dough_c + draw(st.integers(-5, 4))
        for name in ("bowl", "milk", "egg", "butter"):
            if draw(st.integers(0, 3)) == 0:
                batch[name] = room_c + draw(st.integers(-3, 8))
        written = {name: f"{c}C" for name, c in batch.items()}
        if draw(st.booleans()):
            written["rest"] = draw(st.integers(0, 90).map(lambda minutes: f"{minutes}min"))
        if draw(st.booleans()):
            written["minutes"] = draw(within("mixing_min", high=30))
        batches.append(written)
    return batches


@st.composite
def plausible_days(draw, batches=False):
    """A day as it is mostly written: about half of them have an answer."""
    table = {name: draw(st.none() | content) for name, content in bowl_tables.items() if name != "flour"}
    content = {name: value for name, value in table.items() if value is not None}
    if "bowl" in content and draw(st.integers(0, 7)) < 7:
        content["bowl"]["material"] = draw(st.sampled_from(sorted(lf.bowl_materials())))
    if batches or ("batch" in content and draw(st.booleans())):
        content["batch"] = draw(plausible_batches("preferment" in content))
        content.pop("mixing", None)
    if draw(st.booleans()):
        mixing = draw(
            st.sampled_from(
                [
                    ["method"],
                    ["method", "minutes"],
                    ["work_kj_per_kg"],
                    ["net_gain_kj_per_kg"],
                    ["net_gain_kj_per_kg", "sd_kj_per_kg"],
                    ["net_gain_kj_per_kg", "minutes"],
                    [],
                ]
            )
        )
        content["mixing"] = {key: draw(plausible_mixing[key]) for key in mixing}
    flour_g = draw(st.floats(300, 5000))
    kinds = YEASTS if draw(st.integers(0, 7)) < 7 else ("fresh", "salt")
    dough = {"flour_g": flour_g, "yeast": draw(st.sampled_from(kinds))}
    percent = {"yeast_percent": (0.1, 4), "salt_percent": (0, 3), "water_percent": (0, 90), "sugar_percent": (0, 15)}
    for name in days.ENRICHING:
        percent[name] = (0, 25)
    for name, (low, high) in percent.items():
        if draw(st.booleans()):
            dough[name] = draw(st.floats(low, high))
    today = {"room": draw(degrees), **draw(st.fixed_dictionaries({}, optional=plausible_today))}
    if "preferment" in content and draw(st.booleans()):
        today["preferment"] = draw(degrees)
    if "preferment" not in content and draw(st.booleans()):
        content["flour"] = draw(flour_lists)
    water = {"desired": draw(st.integers(15, 32).map(lambda c: f"{c}C") | degrees)}
    if draw(st.booleans()):
        water["friction"] = draw(st.integers(-10, 25).map(lambda k: f"{k}K"))
        if draw(st.booleans()):
            water["friction_at"] = draw(degrees)
    return {"today": today, "water": water, "dough": dough, **content}


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
        plans = stages.plan_stages(day)
        notices = stages.notices_of_stages(day, plans)
    except (lf.InvalidInput, lf.OutsideModel, lf.NoSolution):
        return
    assert all(isinstance(notice, lf.Notice) for notice in notices)
    assert len(plans) == len(day.stages)
    for before, plan in zip([None, *plans], plans, strict=False):
        assert plan.start_h == (before.ready_h if before else 0)
        assert 0 <= plan.hours < math.inf
        assert math.isfinite(plan.rise_percent)
        assert plan.be_back_by_h is None or plan.start_h <= plan.be_back_by_h < math.inf


@given(
    plausible_days()
    | st.fixed_dictionaries(
        {"today": st.just({"room": "21C"}), "water": st.just({"desired": "24C"})},
        optional={k: v for k, v in tables.items() if k not in ("today", "water")},
    )
)
def test_the_water_of_any_day_is_worked_out_or_refused(content):
    planned = attempt(lambda: bowls.plan_of(days.day_from(content)), *REFUSALS)
    if isinstance(planned, REFUSALS):
        assert str(planned)
        return
    plan = planned.water
    forward_c = lf.dough_by_heat_balance(planned.mix.with_water(plan))
    assert forward_c == pytest.approx(plan.desired_c, abs=1e-7)
    numbers = {key: value for key, value in plan.to_dict().items() if isinstance(value, float)}
    assert all(math.isfinite(value) for value in numbers.values())
    assert plan.pour_g + plan.ice_g == pytest.approx(plan.water_g, rel=1e-12)
    assert 0 <= plan.ice_g <= plan.water_g * (1 + 1e-12)
    assert 0 <= plan.pour_c <= 60
    assert plan.low_c <= plan.desired_c <= plan.high_c
    assert sum(share.dough_k_per_k for share in plan.shares) == pytest.approx(1, rel=1e-9)
    assert {notice.severity for notice in plan.notices} <= {"info", "caution", "warning"}


@given(plausible_days() | plausible_days(batches=True))
def test_the_batches_of_any_day_are_worked_out_or_refused(content):
    learned = attempt(lambda: bowls.learned_from(days.day_from(content)), *REFUSALS)
    if isinstance(learned, REFUSALS):
        assert str(learned)
        return
    for found, name in ((learned.friction, "friction_k"), (learned.net_gain, "net_gain_kj_per_kg")):
        assert len(found.each) == len(content["batch"]) > 0
        assert all(FIELDS[name].low <= value <= FIELDS[name].high for value in found.each)
        assert found.mean == pytest.approx(sum(found.each) / len(found.each), rel=1e-9, abs=1e-9)
        assert (found.sd is None) == (len(found.each) == 1)
    assert 0 <= learned.minutes <= 60


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
    (plan,) = stages.plan_stages(day)
    assert plan.be_back_by_h < plan.ready_h
    (notice,) = [n for n in stages.notices_of_stages(day, [plan]) if n.code == "stage_over_proofed"]
    assert notice.severity == "warning"
    assert notice.values == {"be_back_by_h": plan.be_back_by_h, "ready_h": plan.ready_h}
    assert "ask for a smaller rise or a shorter time" in notice.text
