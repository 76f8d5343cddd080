"""A day: what is read of its file, what is refused and with which words; its bowl, its stages, its hours."""

import ctypes
import datetime
import json
import math
from dataclasses import replace
from pathlib import Path

import independent_day as independent
import pytest
from box import FIELDS, YEASTS, attempt
from by_hand import by_hand_mix
from hypothesis import given
from hypothesis import strategies as st
from in_c import library_in_c
from libferment.day import day_of, tomllib

import libferment as lf

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo" / "day.toml"
BY_HAND = Path(__file__).with_name("by_hand.toml")
R = lf.Surroundings
REFUSALS = (lf.InvalidInput, lf.OutsideModel, lf.NoSolution)
STAGE = {"name": "bulk", "dough": "23C", "until_h": 2}
BATCH = {"dough": "25C", "water": "28C", "flour": "20C", "room": "21C"}
WATER = {"today": {"room": "21C"}, "water": {"desired": "24C"}}
RISING = {**WATER, "dough": {"yeast_percent": 0.7}}
OFFERED = [method.name for method in lf.mixing_methods()]


def a_stage(**changes):
    return {key: value for key, value in {**STAGE, **changes}.items() if value is not None}


def a_day(*stages, **tables):
    """A day as it is written, of tables and stages."""
    return lf.Day.from_dict({**tables, "stage": list(stages)} if stages else tables)


def told(text):
    """A day of a file's text."""
    return lf.Day.from_dict(tomllib.loads(text))


def steps_of(*stages, **tables):
    return lf.process_of(a_day(*stages, **tables)).steps


def written(folder, text, name="day.toml"):
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


# ---- reading ---------------------------------------------------------------------------------------------------------


def test_the_demo_day_is_read():
    day = lf.read_day(DEMO)
    assert "invented" in day.title
    assert day == told("""
today = {flour_c = 15, room_c = 19, tap_c = 10}
water = {desired_c = 21}
bowl = {material = "steel", mass_g = 1250}
mixing = {method = "stand_mixer", minutes = 7}
flour = [{kind = "whole_wheat", percent = 100}]
batch = [{dough_c = 21.8, water_c = 17.4, flour_c = 16, room_c = 20}]
[dough]
flour_g = 1100
water_percent = 72
salt_percent = 1.8
oil_percent = 1.5
altitude_m = 250
yeast = "compressed"
yeast_percent = 0.8
[[stage]]
name = "bulk"
place = []
room_c = 14
piece = "tub"
material = "steel"
vessel_g = 1250
until_rise_percent = 85
handling = ["divide", "mould"]
[[stage]]
name = "final proof"
proof_box_c = 27
piece = "oblong"
piece_g = 1000
until_rise_percent = 65
standing = "tin"
""").replace(title=day.title)


def test_a_day_by_hand_is_read():
    day = lf.read_day(BY_HAND)
    assert (day.today, day.water) == (lf.Today(flour_c=18.5, room_c=20, tap_c=12), lf.WantedWater(desired_c=25))
    assert day.yeast_water == lf.YeastWater(water_g=70, temperature_c=36, stands_h=12 / 60)
    assert day.mixing == lf.DayMixing(method="hand", minutes=12, rest_h=45 / 60)
    assert day.batch == [lf.Batch(dough_c=25.4, water_c=33, flour_c=19, room_c=21, rest_h=40 / 60)]
    bulk, bench_rest, proof = day.stage
    assert (bulk.folds_h, bulk.handling, bulk.material) == ([0.4, 0.9], ["divide", "round"], "ceramic")
    assert (bench_rest.pieces, bench_rest.worktop, bench_rest.until_h) == (2, "wood", 0.25)
    assert (proof.cover, proof.standing, proof.final_proof) == ("cloth", "free", True)


@pytest.mark.parametrize(
    ("table", "key", "text", "member", "value"),
    [
        ("today", "room", "25.5C", "room_c", 25.5),
        ("today", "room", " 25,5 °C ", "room_c", 25.5),
        ("today", "room", "77F", "room_c", 25),
        ("today", "room", "77°f", "room_c", 25),
        ("today", "butter", "-4C", "butter_c", -4),
        ("today", "butter", "−4C", "butter_c", -4),
        ("today", "room", "+4c", "room_c", 4),
        ("water", "friction", "6K", "friction_k", 6),
        ("water", "friction", "6C", "friction_k", 6),
        ("water", "friction", "9F", "friction_k", 5),
        ("mixing", "rest", "2.5h", "rest_h", 2.5),
        ("mixing", "rest", "90 MIN", "rest_h", 1.5),
        ("mixing", "rest", "1h 30min", "rest_h", 1.5),
        ("dough", "flour", "1.2kg", "flour_g", 1200),
        ("dough", "flour", "2lb", "flour_g", 907.18474),
        ("dough", "flour", "8oz", "flour_g", 226.796185),
        ("dough", "salt", "9g", "salt_g", 9),
        ("dough", "salt", "1.8%", "salt_percent", 1.8),
        ("dough", "water", "650 g", "water_g", 650),
        ("dough", "water", "65 %", "water_percent", 65),
        ("dough", "loss", "2%", "loss_percent", 2),
        ("dough", "altitude", "1000ft", "altitude_m", 304.8),
        ("dough", "measured", "24.6C", "measured_c", 24.6),
    ],
)
def test_quantities_with_a_unit(table, key, text, member, value):
    """Under the name without its unit a text, under the full name a number: the same day."""
    day = lf.Day.from_dict({table: {key: text}})
    assert getattr(getattr(day, table), member) == pytest.approx(value, rel=1e-15)
    assert lf.Day.from_dict({table: {member: getattr(getattr(day, table), member)}}) == day


@pytest.mark.parametrize("key", ["room", "friction", "rest", "flour"])
@pytest.mark.parametrize(
    "text",
    ["", " ", "C", "25", "25 X", "25CC", "1e3C", "2..5C", "25C F", "nanC", "infh", "--2C", "0x1C", "9" * 400 + "C"],
)
def test_quantities_that_are_none(key, text):
    table = {"room": "today", "friction": "water", "rest": "mixing", "flour": "dough"}[key]
    with pytest.raises(lf.InvalidInput) as refused:
        lf.Day.from_dict({table: {key: text}})
    assert refused.value.path == f"{table}.{key}"
    assert "write" in refused.value.advice


@pytest.mark.parametrize("spelled", ["whole_wheat", "whole wheat", "Whole-Wheat", "WHOLE WHEAT"])
def test_names_are_read_however_they_are_spelt(spelled):
    day = lf.Day.from_dict(
        {"dough": {"yeast": "Active Dry"}, "flour": [{"kind": spelled}], "mixing": {"method": "Stand mixer"}}
    )
    assert (day.dough.yeast, day.flour[0].kind, day.mixing.method) == ("active_dry", "whole_wheat", "stand_mixer")


def test_times_of_toml_are_times_of_day(tmp_path):
    path = written(tmp_path, 'date = 2026-11-29\nstart = 08:15:00\nmixed = "8:30"\n[mixing]\nrest_h = 0.2\n')
    assert lf.read_day(path) == lf.Day(date="2026-11-29", start="08:15", mixed="8:30", mixing=lf.DayMixing(rest_h=0.2))


def said_of(content):
    with pytest.raises(lf.InvalidInput) as refused:
        day_of(content, "my/day.toml")
    words = str(refused.value)
    assert words.startswith("my/day.toml: ")
    return words.removeprefix("my/day.toml: ")


@pytest.mark.parametrize(
    ("content", "words"),
    [
        ({"dogh": {}}, 'the key "dogh" is unknown; did you mean dough?'),
        ({"today": {"xyzzy": 1}}, '[today] xyzzy: the key "xyzzy" is unknown; known: flour, room, tap'),
        ({"dough": {"salty": 1}}, '[dough] salty: the key "salty" is unknown; did you mean salt?'),
        ({"dough": 3}, "dough: a table is wanted, got the number 3"),
        ({"stage": 3}, "stage: a list is wanted, got the number 3"),
        ({"stage": ["bulk"]}, '[[stage]] 1: a table is wanted, got the text "bulk"'),
        ({"stage": {}}, "[stage]: a list is wanted, got a table; there may be several: [{...}], in TOML two brackets"),
        ({"title": 3}, "title: a text is wanted, got the number 3"),
        ({"dough": {"yeast_percent": True}}, "[dough] yeast_percent: a number is wanted, got true"),
        ({"dough": {"perishable": "yes"}}, '[dough] perishable: true or false is wanted, got the text "yes"'),
        ({"dough": {"yeast": "fresh"}}, '[dough] yeast: yeast kind "fresh" is unknown; known: instant, active_dry'),
        ({"dough": {"flour_g": 0.09}}, "[dough] flour_g: flour 0.09 g is outside 0.1 to 1e+06 g"),
        ({"dough": {"flour_g": 1000001}}, "[dough] flour_g: flour 1000001 g is outside 0.1 to 1e+06 g"),
        ({"dough": {"flour_g": math.nan}}, "[dough] flour_g: nan is no number"),
        ({"dough": {"flour_g": 10**400}}, "[dough] flour_g: a number too large for any dough"),
        ({"dough": {"salt_percent": 18}}, "[dough] salt_percent: salt 18 % is outside 0 to 6 %; 10 g on 500 g of fl"),
        ({"dough": {"salt": "18%"}}, "[dough] salt: salt 18 % is outside 0 to 6 %"),
        ({"dough": {"flour": "1,000g"}}, '[dough] flour: the text "1,000g" may be read in two ways: write it without'),
        ({"dough": {"flour": "1kg 2oz"}}, '[dough] flour: the text "1kg 2oz" holds more than one quantity'),
        (
            {"dough": {"salt_g": "9g"}},
            '[dough] salt_g: a number is wanted, got the text "9g"; write the number alone; its unit',
        ),
        ({"dough": {"salt_g": 9, "salt_percent": 2}}, "[dough] salt_percent: both salt_percent and salt_g are given"),
        ({"dough": {"salt_g": 9, "salt": "8g"}}, "it is given twice, with its unit in the name and without; leave one"),
        ({"dough": {"milk": "10%"}}, "[dough] water_percent: a dough with milk, egg or butter needs its water, too"),
        ({"dough": {"pieces": 2}}, "[dough] piece_g: pieces and piece_g belong together"),
        ({"dough": {"piece": "400g"}}, "[dough] pieces: pieces and piece_g belong together"),
        (
            {"today": {"flour": 20}},
            '[today] flour: the number 20 has no unit; write a text, such as "18.5C" or "65F", o',
        ),
        ({"today": {"flour": "20"}}, "[today] flour: flour temperature 20 has no unit; write for example 18.5C"),
        ({"today": {"flour": "20h"}}, '[today] flour: flour temperature 20 has the unit "h"; write for example 18.5C'),
        ({"today": {"flour": "warm"}}, '[today] flour: the text "warm" is not a number with a unit'),
        (
            {"today": {"tap": "99C"}},
            "[today] tap: tap water temperature 99 °C is outside 0 to 60 °C; if you meant 99 °F",
        ),
        ({"today": {"tap": "99C"}}, "write 99F"),
        ({"today": {"tap": "30F"}}, "−1.11111 °C is outside 0 to 60 °C; if you meant 30 °C, write 30C"),
        ({"today": {"ice": "1C"}}, "[today] ice: ice temperature 1 °C is outside −40 to 0 °C"),
        ({"water": {"friction": 3}}, '[water] friction: the number 3 has no unit; write a text, such as "6K" or "11F"'),
        ({"water": {"friction": "6h"}}, '[water] friction: friction 6 has the unit "h"; write for example 6K'),
        ({"water": {"friction": "26C"}}, "friction 26 K is outside −10 to 25 K; if you meant a difference of 26 °F, w"),
        ({"water": {"friction_at": "6K"}}, '[water] friction_at: room temperature 6 has the unit "k"'),
        ({"flour": [3]}, "[[flour]] 1: a table is wanted, got the number 3"),
        ({"flour": {"percent": 100}}, "[flour]: a list is wanted, got a table; there may be several"),
        ({"flour": [{"percent": 50}, {"percent": 0}]}, "[[flour]] 2 percent: share of a flour 0 % is outside 0.01 to"),
        ({"flour": [{"kind": "spelt"}]}, '[[flour]] 1 kind: flour "spelt" is unknown; known: bread, all_purpose'),
        ({"flour": [{"percent": 9, "mass": "9g"}]}, "[[flour]] 1 percent: both percent and mass_g are given"),
        ({"preferment": []}, "[preferment]: a table is wanted, got a list"),
        ({"preferment": {"flour_g": 100}}, "[preferment] water_g: DayPreferment needs one of water_g and water_perce"),
        ({"preferment": {"flour_g": 1, "flour_percent": 1, "water_g": 1}}, "takes only one of flour_g and flour_perc"),
        (
            {"preferment": {"flour_g": 1, "water_g": 1, "yeast_g": 0.1}},
            "[preferment] stands_h: a preferment with yeast needs the hours that it stands",
        ),
        (
            {"preferment": {"flour_g": 1, "water_g": 1, "stands": "9h"}},
            "[preferment] temperature_c: a preferment that stands needs its temperature",
        ),
        ({"yeast_water": {"water_g": 50}}, "[yeast_water] temperature_c: YeastWater needs temperature_c: temperature"),
        ({"yeast_water": {"water": "1g", "temperature": "61C"}}, "water temperature 61 °C is outside 0 to 60 °C; if"),
        ({"bowl": {"material": "steel"}}, "[bowl] mass_g: DayBowl needs mass_g: weight of the bowl"),
        ({"bowl": {"mass_g": 2.1}}, "[bowl] mass_g: weight of the bowl 2.1 g is outside 20 to 1e+06 g; it is in gra"),
        ({"bowl": {"material": "gold", "mass_g": 9}}, '[bowl] material: bowl material "gold" is unknown; known: steel'),
        ({"mixing": {"method": "blender"}}, '[mixing] method: mixing method "blender" is unknown; known: folds, hand'),
        ({"mixing": {"minutes": 5}}, "[mixing] method: minutes need a method; such as stand_mixer"),
        ({"mixing": {"method": "hand", "minutes": 61}}, "[mixing] minutes: mixing time 61 min is outside 0 to 60 min"),
        ({"mixing": {"work_kj_per_kg": 9, "minutes": 5}}, "[mixing] minutes: work is the same whatever its minutes"),
        ({"mixing": {"method": "hand", "net_gain_kj_per_kg": 3}}, "are each all of the heat; give one of them"),
        ({"mixing": {"net_gain_kj_per_kg": 3, "hydration_kj_per_kg": 15}}, "holds the heat of hydration already"),
        ({"mixing": {"method": "hand", "sd_kj_per_kg": 1}}, "[mixing] sd_kj_per_kg: it is the spread of a net gain"),
        (
            {"mixing": {"rest": 0.5}},
            '[mixing] rest: the number 0.5 has no unit; write a text, such as "2.5h" or "90min"',
        ),
        ({"batch": [{"dough": "25C"}]}, "[[batch]] 1 water_c: Batch needs water_c: temperature of the water poured in"),
        ({"batch": [BATCH, {**BATCH, "rest": "25h"}]}, "[[batch]] 2 rest: rest before the yeast 25 h is outside 0 to"),
        ({"batch": [{**BATCH, "tap": "9C"}]}, '[[batch]] 1 tap: the key "tap" is unknown; known: dough, water'),
        (
            {"start": "25:00"},
            'start: "25:00" is no time of day; write 8:15 or 18:30, or "+1 7:30" for the next morning',
        ),
        ({"date": "29.11.2026"}, 'date: "29.11.2026" is no date; write it as 2026-11-29'),
        ({"mixed": datetime.datetime(2026, 11, 29, 8)}, "mixed: 2026-11-29 08:00:00 is a moment with a date; write"),
        ({"stage": [a_stage(name=None)]}, "[[stage]] 1 name: DayStage needs name: such as bulk"),
        ({"stage": [a_stage(until_h=None)]}, '[[stage]] "bulk" until_rise_percent: stage "bulk" has no end; give unt'),
        ({"stage": [a_stage(until_rise="90%")]}, '[[stage]] "bulk" until_h: a stage ends by a rise or after a time, n'),
        (
            {"stage": [STAGE, {**STAGE, "name": "proof", "from": "9:00"}]},
            '[[stage]] "bulk" until_rise_percent: stage "bulk" has an end, and the next one says from when it is there',
        ),
        ({"stage": [a_stage(until_h=1001)]}, '[[stage]] "bulk" until_h: length of a stage 1001 h is outside 0 to 1000'),
        ({"stage": [a_stage(dough="78C")]}, "if you meant 78 °F, write 78F; measure the dough with a probe"),
        ({"stage": [a_stage(until_h=None, until_rise="0%")]}, '[[stage]] "bulk" until_rise: '),
        ({"stage": [a_stage(folds_h=[1, -1])]}, '[[stage]] "bulk" folds_h[1]: moment of a fold −1 h is outside 0 to 1'),
        (
            {"stage": [a_stage(folds_h=["1h"])]},
            '[[stage]] "bulk" folds_h[0]: a number is wanted, got the text "1h"; write',
        ),
        ({"stage": [a_stage(handling=["punch"])]}, 'handling[0]: handling "punch" is unknown; known: fold, divide, ro'),
        ({"stage": [a_stage(handling="fold")]}, 'handling: a list is wanted, got the text "fold"; put it between [ an'),
        ({"stage": [a_stage(standing="up")]}, 'standing "up" is unknown; known: tin, free'),
        (
            {"stage": [a_stage(room="20C")]},
            '[[stage]] "bulk" room_c: a place has one temperature or log, and here are 2',
        ),
        (
            {"stage": [a_stage(pieces=2)]},
            '[[stage]] "bulk" piece: what is said of a piece needs its shape; tub, ball, oblo',
        ),
        ({"stage": [a_stage(fan=True)]}, '[[stage]] "bulk" fan: a fan is reckoned with in a refrigerator alone'),
        ({"stage": [a_stage(swing="2K")]}, '[[stage]] "bulk" swing_k: a swing needs the mean temperature of air'),
        ({"stage": [a_stage(ended="9h")]}, '[[stage]] "bulk" ended: "9h" is no time of day'),
        ({"stage": [a_stage(place=[{"from": "22:00"}])]}, '[[stage]] "bulk" place[0].room_c: a place needs a tempera'),
        (
            {"stage": [a_stage()], "seen": [{"stage": "bulk", "at": "9:00"}]},
            "[[seen]] 1 rise_percent: nothing is said of what was seen",
        ),
        (
            {"stage": [a_stage()], "seen": [{"stage": "bulk", "at": "9:00", "rise": "20%", "not_yet": "30%"}]},
            "[[seen]] 1 rise_percent: more than one thing is said",
        ),
        ({"stage": [a_stage(acceptable_rise_percent=[90, 60])]}, "the lowest, 90, is above the highest, 60; give the"),
    ],
)
def test_what_a_day_file_may_not_hold(content, words):
    assert words in said_of(content)


def test_files_that_cannot_be_read(tmp_path):
    with pytest.raises(lf.InvalidInput, match=r"there is no file .*nowhere\.toml"):
        lf.read_day(tmp_path / "nowhere.toml")
    with pytest.raises(lf.InvalidInput, match="is a folder; name the day file in it"):
        lf.read_day(tmp_path)
    path = tmp_path / "day.toml"
    for broken, words in (
        (b"\xff\xfe", "looks like UTF-16"),
        (b"[dough\n", "is not valid TOML: .* every stage begins with"),
        (b"a = 1\na = 2", "is not valid TOML"),
        (b"a = " + b"[" * 9999, "is nested too deep for a day|is not valid TOML"),
        (b"a = " + b"9" * 9999, "has a number of thousands of digits"),
        (b"[dough]\nflour_g = inf\n", r"\[dough\] flour_g: inf is no number"),
        (b"[dough]\nflour_g = nan\n", r"\[dough\] flour_g: nan is no number"),
        (b"[dough]\nflour_gg = 1\n", r"\[dough\] flour_gg: the key .flour_gg. is unknown"),
    ):
        path.write_bytes(broken)
        with pytest.raises(lf.InvalidInput, match=words) as refused:
            lf.read_day(str(path))
        assert str(refused.value).startswith(str(path))


def test_a_byte_order_mark_or_windows_line_ends_do_no_harm(tmp_path):
    path = tmp_path / "day.toml"
    path.write_bytes(b"\xef\xbb\xbf" + DEMO.read_bytes().replace(b"\n", b"\r\n"))
    assert lf.read_day(path) == lf.read_day(DEMO)


LOG = "time_h,temperature_c\n0,19\n2,20.5\n9,17\n"


def test_temperature_logs_lie_beside_the_file(tmp_path):
    written(tmp_path, LOG, "room.csv")
    stage = '[[stage]]\nname = "bulk"\nuntil_h = 2\n'
    course = lf.Course([0, 2, 9], [19, 20.5, 17])
    for log in ("room_log", "refrigerator_log", "proof_box_log", "dough_log"):
        day = lf.read_day(written(tmp_path, f'{stage}{log} = "room.csv"\n'))
        assert day == lf.Day(stage=[lf.DayStage(name="bulk", until_h=2, **{log: course})])
    place = '[[stage.place]]\nfrom = "9:00"\nroom_log = "room.csv"\n'
    day = lf.read_day(written(tmp_path, stage + place))
    assert day.stage[0].place == [lf.DayPlace(from_="9:00", room_log=course)]
    (tmp_path / "room.csv").unlink()
    with pytest.raises(lf.InvalidInput) as refused:
        lf.read_day(written(tmp_path, stage + place))
    assert str(refused.value).startswith(f'{tmp_path / "day.toml"}: [[stage]] "bulk" place[0].room_log: there is no fi')
    written(tmp_path, "time_h,temperature_c\n0,nonsense\n", "room.csv")
    with pytest.raises(lf.InvalidInput, match=r'\[\[stage\]\] "bulk" place\[0\]\.room_log: .*room\.csv'):
        lf.read_day(tmp_path / "day.toml")


# ---- the bowl --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("content", "path", "words"),
    [
        ({"today": {"room": "21C"}}, "water.desired_c", "which dough the water is to make is not said"),
        ({"water": {"desired": "24C"}}, "today.room_c", "the water's temperature needs the room's; measure it where"),
        ({**WATER, "today": {"room": "21C", "preferment": "9C"}}, "preferment", "has a temperature and no weight"),
        ({**WATER, "bowl": {"mass_g": 900}}, "bowl.mass_g", "a weight in grams needs the flour's weight beside it"),
        ({**WATER, "dough": {"salt_g": 3}}, "dough.salt_g", "give [dough] flour_g"),
        ({**WATER, "dough": {"yeast_g": 3}}, "dough.yeast_g", "needs the flour's weight beside it"),
        ({**WATER, "preferment": {"flour_g": 5, "water_g": 5}}, "preferment.flour_g", "give [dough] flour_g"),
        ({**WATER, "yeast_water": {"water_g": 5, "temperature": "38C"}}, "yeast_water.water_g", "give [dough] flour_g"),
        (
            {**WATER, "flour": [{"mass_g": 5}, {"percent": 20}]},
            "flour[1].mass_g",
            "some flours are weighed and some are n",
        ),
        (
            {**WATER, "flour": [{"mass_g": 5}], "dough": {"flour_g": 5}},
            "dough.flour_g",
            "all the flour is given, and each flour's weight",
        ),
        ({**WATER, "flour": [{"percent": 50}, {}]}, "flour[1].percent", "a flour has no share"),
        ({"today": {"room": "21C"}, "water": {"friction_at": "20C"}}, "water.friction_k", "needs the friction"),
    ],
)
def test_what_the_water_needs(content, path, words):
    with pytest.raises(lf.InvalidInput) as refused:
        lf.water_of(lf.Day.from_dict(content))
    assert refused.value.path == path
    assert words in str(refused.value)


def test_without_more_than_it_needs():
    day = lf.Day.from_dict(WATER)
    mix = lf.Mix.from_percent(flour_g=500, room_c=21)
    assert lf.mix_of(day) == mix
    assert lf.water_of(day) == lf.water_by_heat_balance(mix, 24)
    assert [notice.code for notice in lf.assumptions_of(day)] == [
        "assumed_flour_g",
        "assumed_water_percent",
        "assumed_salt_percent",
        "assumed_no_bowl",
    ]
    assert lf.assumptions_of(lf.read_day(DEMO)) == []


def test_the_water_is_that_of_balance_and_factor_rule():
    day = lf.read_day(BY_HAND)
    mix = by_hand_mix()
    batch = mix.replace(flour_c=19, room_c=21, water_c=33, rest_h=40 / 60, mixing=lf.ByNetGain(0, minutes=12))
    gain = lf.net_gain_from_batches([batch], [25.4])
    learned = lf.learned_mixing(day)
    assert (learned.net_gain_kj_per_kg, learned.minutes) == (gain, 12)
    assert learned.friction_k == lf.friction_from_batches(dough_c=[25.4], flour_c=19, room_c=21, water_c=33)
    mix = mix.replace(mixing=lf.net_gain_of(gain, 12))
    assert lf.mix_of(day) == mix
    plan = lf.water_of(day)
    assert plan == lf.water_by_heat_balance(mix, 25, friction_k=learned.friction_k.mean)
    assert plan.factor_rule_c == pytest.approx(3 * 25 - 18.5 - 20 - (3 * 25.4 - 19 - 21 - 33), rel=1e-12)
    day = lf.Day.from_dict(
        {
            "today": {"flour": "20C", "room": "21C", "preferment": "18C"},
            "water": {"desired": "24C", "friction": "3K"},
            "dough": {"flour_g": 500},
            "preferment": {"flour_g": 100, "water_g": 100},
        }
    )
    assert lf.water_of(day).factor_rule_c == 4 * 24 - 20 - 21 - 18 - 3


FULL = tomllib.loads("""
today = {flour = "18C", room = "21C", tap = "12C", preferment = "26C", bowl = "30C", butter = "16C", ice = "-5C"}
water = {desired = "25C"}
flour = [{percent = 75}, {percent = 25, kind = "whole_wheat", temperature = "10C"}]
preferment = {flour_g = 100, water_g = 70}
yeast_water = {water_g = 60, temperature = "36C", stands = "5min"}
bowl = {material = "glass", mass_g = 1800, contact = 0.6}
mixing = {work_kj_per_kg = 7, rest = "25min"}
""")
FULL_PERCENT = {
    **{"salt_percent": 1.5, "sugar_percent": 10, "gluten_percent": 2, "water_percent": 50, "milk_percent": 12},
    **{"egg_percent": 8, "butter_percent": 9, "oil_percent": 1},
}
FULL["today"] |= {"egg": "8C", "milk": "5C"}
FULL["dough"] = {"flour_g": 1000, "yeast": "compressed", "yeast_percent": 3, "altitude_m": 500, **FULL_PERCENT}


def full_mix():
    return lf.Mix.from_percent(
        **{
            "flour_g": 1000,
            "room_c": 21,
            "flour_c": 18,
            "tap_c": 12,
            "milk_c": 5,
            "egg_c": 8,
            "butter_c": 16,
            "ice_c": -5,
        },
        flours=[lf.FlourShare(75), lf.FlourShare(25, "whole_wheat", temperature_c=10)],
        waters=[lf.Water(60, 36, wets_yeast=True, stands_h=5 / 60)],
        preferments=[lf.Preferment(100, 70, temperature_c=26)],
        compressed_percent=3,
        **FULL_PERCENT,
        bowl=lf.Bowl("glass", 1800, temperature_c=30, contact=0.6),
        mixing=lf.ByWork(7),
        rest_h=25 / 60,
    )


def test_the_mix_of_a_full_day():
    assert lf.mix_of(lf.Day.from_dict(FULL)) == full_mix()


def test_amounts_in_grams_are_those_in_percent():
    grams = {key.replace("percent", "g"): 10 * value for key, value in FULL_PERCENT.items()}
    dough = {"flour": "1kg", "yeast": "compressed", "yeast_g": 30, "altitude": "500m", **grams}
    in_grams = lf.Day.from_dict({**FULL, "dough": dough, "preferment": {"flour_percent": 10, "water_percent": 70}})
    mixes = [lf.mix_of(day).to_dict() for day in (in_grams, lf.Day.from_dict(FULL))]
    for key, value in mixes[1].items():
        if isinstance(value, float):
            assert mixes[0][key] == pytest.approx(value, rel=1e-14), key
    assert mixes[0]["preferments"] == mixes[1]["preferments"]
    # Flours that are weighed are all but gluten and the preferment's: 880 g and 20 g and 100 g are 1000 g.
    flours = [{"mass": "660g"}, {"mass": "220g", "kind": "whole_wheat", "temperature": "10C"}]
    dough = {key: value for key, value in FULL["dough"].items() if key != "flour_g"}
    weighed = lf.mix_of(lf.Day.from_dict({**FULL, "dough": dough, "flour": flours}))
    assert weighed.percent.flour_g == pytest.approx(1000, rel=1e-14)
    assert [flour.mass_g for flour in weighed.flours] == pytest.approx([660, 220], rel=1e-14)
    assert (weighed.gluten_g, weighed.water_g) == pytest.approx((20, lf.mix_of(lf.Day.from_dict(FULL)).water_g))


def test_shares_of_the_flours_are_of_the_fresh_flour():
    """Added gluten and the preferment's flour count as flour, and are no part of the shares."""
    shares = [{"percent": 75}, {"percent": 25, "kind": "Dark rye"}]
    preferment = {"flour_g": 180, "water_g": 180}
    day = a_day(**WATER, dough={"flour_g": 1000, "gluten_percent": 2}, preferment=preferment, flour=shares)
    mix = lf.mix_of(day)
    assert [(flour.kind, flour.mass_g) for flour in mix.flours] == [
        ("bread", pytest.approx(600, rel=1e-15)),
        ("dark_rye", pytest.approx(200, rel=1e-15)),
    ]
    assert (mix.gluten_g, mix.percent.flour_g) == (20, pytest.approx(1000, rel=1e-15))


@pytest.mark.parametrize(
    ("shares", "accepted"),
    [((99.91,), True), ((99.89,), False), ((60, 40.09), True), ((60, 40.11), False), ((33.3, 33.3, 33.3), True)],
)
def test_shares_of_the_flours_make_100_percent(shares, accepted):
    day = a_day(**WATER, dough={"gluten_percent": 3}, flour=[{"percent": share} for share in shares])
    if not accepted:
        with pytest.raises(lf.InvalidInput, match=f"the shares of the flours make {sum(shares):.4g} %, not 100 %"):
            lf.mix_of(day)
        return
    mix = lf.mix_of(day)
    assert mix.percent.flour_g == pytest.approx(500, rel=1e-14)  # exactly, whatever the shares were rounded to
    assert [flour.mass_g for flour in mix.flours] == pytest.approx([485 * s / sum(shares) for s in shares], rel=1e-12)


def test_a_day_is_scaled_to_its_pieces():
    scaled = {**FULL, "dough": {**FULL["dough"], "pieces": 6, "piece": "310g", "loss": "4%"}}
    mix, full = lf.mix_of(lf.Day.from_dict(scaled)), full_mix()
    (state, by_one) = (lf.advance(lf.State(), each.replace(dough_c=25)) for each in (mix, full))
    assert state.amounts.dough_g == pytest.approx(6 * 310 / 0.96, rel=1e-12)
    times = state.amounts.dough_g / by_one.amounts.dough_g
    assert mix.percent.to_dict()["salt_percent"] == pytest.approx(1.5, rel=1e-12)
    assert mix.preferments[0].flour_g == pytest.approx(100 * times, rel=1e-12)
    assert mix.waters[0].mass_g == pytest.approx(60 * times, rel=1e-12)
    assert mix.bowl == full.bowl  # is the same, however much is mixed in it
    # Without a weight of flour, the percent alone make the pieces.
    dough = {key: value for key, value in scaled["dough"].items() if key != "flour_g"}
    without = {key: value for key, value in scaled.items() if key not in ("preferment", "yeast_water")}
    without["today"] = {key: value for key, value in FULL["today"].items() if key != "preferment"}
    day = lf.Day.from_dict({**without, "dough": dough})
    assert lf.advance(lf.State(), lf.mix_of(day).replace(dough_c=25)).amounts.dough_g == pytest.approx(6 * 310 / 0.96)
    assert "assumed_flour_g" not in [notice.code for notice in lf.assumptions_of(day)]


@pytest.mark.parametrize(
    ("dough", "percent"),
    [
        ({"water_percent": 30}, "30"),
        ({"water_percent": 10, "milk_percent": 30}, "36.439"),
        ({"water_percent": 120, "milk_percent": 20}, "137.626"),
    ],
)
def test_too_little_or_too_much_water_in_all_is_refused(dough, percent):
    """Milk brings water of its own, so that little may be poured."""
    with pytest.raises(lf.InvalidInput, match=f"water {percent} % is outside 40 to 130 %; percent are of the flour"):
        lf.water_of(a_day(**WATER, dough=dough))
    mix = lf.mix_of(a_day(**WATER, dough={"water_percent": 10, "milk_percent": 40}))
    assert mix.percent.water_percent == pytest.approx(10 + 40 * lf.Composition.of("milk").water, rel=1e-14)


@pytest.mark.parametrize("yeast", YEASTS)
def test_each_kind_of_yeast_is_weighed_in(yeast):
    mix = lf.mix_of(a_day(**WATER, dough={"yeast": yeast, "yeast_percent": 1.2, "flour_g": 1000}))
    weights = {name: getattr(mix, f"{name}_g") for name in ("instant", "active_dry", "compressed")}
    assert weights == {"instant": 0, "active_dry": 0, "compressed": 0, yeast.removesuffix("_unwetted"): 12}
    assert mix.yeast_unwetted == (yeast == "active_dry_unwetted")


@pytest.mark.parametrize(
    ("table", "mixing"),
    [
        ({"method": "hand"}, lf.ByMethod("hand")),
        ({"method": "hand", "minutes": 0}, lf.ByMethod("hand", 0)),
        ({"method": "SPIRAL", "hydration_kj_per_kg": 12}, lf.ByMethod("spiral", hydration_kj_per_kg=12)),
        ({"work_kj_per_kg": 9, "hydration_kj_per_kg": 0}, lf.ByWork(9, hydration_kj_per_kg=0)),
        ({"net_gain_kj_per_kg": -3, "minutes": 12}, lf.ByNetGain(-3, minutes=12)),
        ({"net_gain_kj_per_kg": 4, "sd_kj_per_kg": 0.5}, lf.ByNetGain(4, 0.5)),
        ({"rest": "50min"}, None),
    ],
)
def test_ways_of_mixing(table, mixing):
    assert lf.mix_of(a_day(**WATER, mixing=table)).mixing == mixing


def test_a_friction_of_the_users_own_counts_whatever_else_is_said():
    """It gives a wide net gain, found at 21 °C if nothing else is said; a rest is reckoned apart."""
    mix = lf.Mix.from_percent(flour_g=500, room_c=21)
    for friction, found_at_c in (({"friction": "6K"}, 21), ({"friction": "6K", "friction_at": "17C"}, 17)):
        tables = {"today": WATER["today"], "water": {"desired": "24C", **friction}}
        worth = lf.ByNetGain(lf.net_gain_from_friction(mix, 6, 24, measured_at_c=found_at_c), 2)
        day = a_day(**tables)
        assert lf.mix_of(day) == mix.replace(mixing=worth)
        assert lf.water_of(day) == lf.water_by_heat_balance(mix.replace(mixing=worth), 24, friction_k=6)
        assert lf.mix_of(a_day(**tables, mixing={"rest": "1h"})).mixing == worth
        assert lf.mix_of(a_day(**tables, mixing={"work_kj_per_kg": 4})).mixing == worth
        assert lf.mix_of(a_day(**tables, batch=[BATCH])).mixing == worth
        by_hand = lf.mix_of(a_day(**tables, mixing={"method": "hand", "minutes": 9})).mixing
        assert (by_hand.minutes, by_hand.sd_kj_per_kg) == (9, 2)
        found = {"assumed_friction_at_c"} & {notice.code for notice in lf.assumptions_of(day)}
        assert bool(found) == ("friction_at" not in friction)


def test_minutes_and_rest_of_each_batch_count():
    """Each batch with its own; what it does not say is the day's minutes and no rest, never today's."""
    batches = [BATCH, {**BATCH, "rest": "1h", "room": "12C"}, {**BATCH, "minutes": 25, "room": "12C", "bowl": "30C"}]
    tables = {
        "dough": {"flour_g": 800, "milk_percent": 15, "water_percent": 65},
        "bowl": {"material": "ceramic", "mass_g": 2000},
        "mixing": {"method": "Spiral", "minutes": 5, "rest": "2h"},
        "today": {"room": "3C", "flour": "4C", "bowl": "50C", "milk": "2C"},
    }
    bowl = lf.Bowl("ceramic", 2000)
    mix = lf.Mix.from_percent(flour_g=800, room_c=21, flour_c=20, water_c=28, milk_percent=15, bowl=bowl)
    mixes = [
        mix.replace(mixing=lf.ByNetGain(0, minutes=5)),
        mix.replace(mixing=lf.ByNetGain(0, minutes=5), rest_h=1, room_c=12),
        mix.replace(mixing=lf.ByNetGain(0, minutes=25), room_c=12, bowl=bowl.replace(temperature_c=30)),
    ]
    learned = lf.learned_mixing(a_day(batch=batches, **tables))
    assert learned.net_gain_kj_per_kg == lf.net_gain_from_batches(mixes, [25, 25, 25])
    assert learned.friction_k == lf.friction_from_batches(dough_c=25, flour_c=20, room_c=[21, 12, 12], water_c=28)
    assert learned.minutes == 5  # today's
    # Without a way of mixing today, those of the batches that know theirs.
    del tables["mixing"]
    assert lf.learned_mixing(a_day(batch=[*batches, {**BATCH, "minutes": 15}], **tables)).minutes == 20


def test_the_day_itself_is_its_last_batch():
    """If its dough and its water were measured; alone it says how it was, beside others it counts with them."""
    today = {"today": {"room": "20C", "flour": "18C"}, "dough": {"measured": "25C"}, "water": {"poured": "31C"}}
    learned = lf.learned_mixing(a_day(**today))
    assert learned.friction_k.each == [pytest.approx(3 * 25 - 20 - 18 - 31, rel=1e-12)]
    both = lf.learned_mixing(a_day(**today, batch=[BATCH]))
    assert both.friction_k.each == [3 * 25 - 20 - 21 - 28, learned.friction_k.mean]
    with pytest.raises(lf.InvalidInput, match="no batch is logged; write one with dough, water, flour and room"):
        lf.learned_mixing(a_day(**WATER))


def test_what_is_stated_counts_before_what_batches_say():
    gain = lf.learned_mixing(a_day(**WATER, batch=[BATCH])).net_gain_kj_per_kg
    worth = lf.net_gain_from_friction(lf.Mix.from_percent(flour_g=500, room_c=21), 3, 24, measured_at_c=21)
    for tables, mixing, friction_k in (
        ({}, lf.net_gain_of(gain), 6),
        ({"mixing": {"net_gain_kj_per_kg": 5}}, lf.ByNetGain(5), 6),
        ({"water": {"desired": "24C", "friction": "3K"}}, lf.ByNetGain(worth, 2), 3),
    ):
        day = lf.Day.from_dict({**WATER, "batch": [BATCH], **tables})
        assert lf.mix_of(day).mixing == mixing
        assert lf.water_of(day) == lf.water_by_heat_balance(lf.mix_of(day), 24, friction_k=friction_k)


def test_a_batch_that_cannot_be_is_named():
    with pytest.raises(lf.InvalidInput, match=r"batch 2 of 2: friction .*one of the temperatures must be wrong"):
        lf.learned_mixing(a_day(batch=[BATCH, {**BATCH, "dough": "40C"}]))
    heavy = {"dough": {"flour_g": 100}, "bowl": {"material": "steel", "mass_g": 3000}}
    with pytest.raises(lf.InvalidInput, match="batch 2 of 3: net mixing gain of this batch"):
        lf.learned_mixing(a_day(batch=[BATCH, {**BATCH, "bowl": "60C"}, BATCH], **heavy))


def test_water_that_cannot_be_poured_names_the_doughs_that_can():
    def day(desired_c):
        return lf.Day(today=lf.Today(room_c=5), water=lf.WantedWater(desired_c=desired_c))

    with pytest.raises(lf.NoSolution, match="reachable are doughs of") as refused:
        lf.water_of(day(44))
    assert refused.value.value == 44
    for desired_c in (refused.value.low + 1e-6, refused.value.high - 1e-6):
        assert 0 <= lf.water_of(day(desired_c)).water_c <= 60


# ---- a preferment ----------------------------------------------------------------------------------------------------

POOLISH = {"flour": "20%", "water": "100%", "yeast_percent": 0.3, "stands": "10h", "temperature": "20C"}


def poolish_state(flour_g=200, water_g=200, mixed_in_c=20, stands_h=10, altitude_m=0, kitchen=None, **more):
    """The same dough, made and left to stand by hand."""
    mix = lf.Mix(flour_g=flour_g, water_g=water_g, dough_c=20, **more)
    stage = lf.Stage("preferment", surroundings=R.dough(20), until_h=stands_h)
    process = lf.Process([mix, stage], altitude_m=altitude_m)
    state = lf.simulate(process, kitchen=kitchen, every_min=0, be_back_by=False).state.as_beginning()
    return state.replace(shells=[shell.replace(temperature_c=mixed_in_c) for shell in state.shells])


def test_a_preferment_with_hours_is_a_dough_that_ferments():
    """Without hours its warmth and its weight alone count, and it has no yeast of its own."""
    dough = {"flour_g": 1000, "water_percent": 70, "yeast_percent": 0.4, "altitude_m": 900}
    day = a_day(**WATER, dough=dough, preferment=POOLISH)
    mix = lf.mix_of(day)
    assert (mix.preferments, mix.flour_g, mix.water_g) == ([], 800, 500)
    assert mix.doughs == [poolish_state(instant_g=200 * 0.3 / 100, altitude_m=900)]
    still = {key: value for key, value in POOLISH.items() if key not in ("stands", "yeast_percent")}
    plain = lf.mix_of(a_day(**WATER, dough=dough, preferment=still))
    assert (plain.doughs, plain.preferments) == ([], [lf.Preferment(200, 200, temperature_c=20)])
    # What today's thermometer says of it counts before how warm it stood.
    today = {"room": "21C", "preferment": "17C"}
    cold = lf.mix_of(a_day(today=today, water=WATER["water"], dough=dough, preferment=POOLISH))
    assert cold.doughs == [poolish_state(instant_g=200 * 0.3 / 100, mixed_in_c=17, altitude_m=900)]
    # Its grams are its own; its yeast may be of another kind, and its salt is of its flour.
    grams = {"flour_g": 150, "water_g": 90, "yeast_g": 2, "salt_percent": 2, "stands": "10h", "temperature": "20C"}
    kitchen = lf.Kitchen(gassing_rate=13)
    own = lf.mix_of(a_day(**WATER, dough=dough, preferment={**grams, "yeast": "compressed"}), kitchen=kitchen)
    state = poolish_state(150, 90, compressed_g=2, salt_g=3, altitude_m=900, kitchen=kitchen)
    assert own.doughs == [state]
    assert (own.flour_g, own.water_g, own.salt_g) == (850, 610, 20)


# ---- stages ----------------------------------------------------------------------------------------------------------


def test_water_and_rise_agree_about_the_dough():
    """Milk, butter, a preferment that has fermented, two places by time of day: by hand, to the digit."""
    day = told("""
start = "18:00"
today = {room = "20C", flour = "18C", milk = "6C", butter = "15C", preferment = "22C"}
water = {desired = "25C"}
preferment = {flour = "20%", water = "100%", yeast_percent = 0.3, stands = "10h", temperature = "20C"}
bowl = {mass = "1.1kg"}
mixing = {method = "spiral", minutes = 6, rest = "30min"}
[dough]
flour = "1kg"
water = "52%"
milk = "120g"
butter = "8%"
yeast_percent = 0.6
altitude = "300m"
[[stage]]
name = "bulk"
piece = "tub"
until_rise = "80%"
folds = ["30min"]
handling = ["divide", "round"]
[[stage]]
name = "proof"
piece = "ball"
pieces = 8
refrigerator = "5C"
place = [{from = "+1 6:30", proof_box = "26C"}]
until_rise = "140%"
final_proof = true
""")
    mix = lf.Mix(
        **{"flour_g": 800, "water_g": 320, "milk_g": 120, "butter_g": 80, "salt_g": 20, "instant_g": 6},
        **{"room_c": 20, "flour_c": 18, "milk_c": 6, "butter_c": 15},
        doughs=[poolish_state(instant_g=200 * 0.3 / 100, mixed_in_c=22, altitude_m=300)],
        bowl=lf.Bowl("steel", 1100),
        mixing=lf.ByMethod("spiral", 6),
        rest_h=0.5,
    )
    plan = lf.water_by_heat_balance(mix, 25)
    assert lf.water_of(day) == plan
    places = [lf.Place(5, air="refrigerator"), lf.Place(26, air="proof_box", from_h=24 + 6.5)]
    bulk = lf.Stage("bulk", surroundings=R.room(20), until_rise_percent=80, folds_h=[0.5], handling=["divide", "round"])
    proof = lf.Stage(
        "proof", surroundings=R(places), until_rise_percent=140, final_proof=True, piece=lf.Piece.ball(pieces=8)
    )
    process = lf.process_of(day)
    assert process == lf.Process([mix.with_water(plan), bulk, proof], start_h=18, altitude_m=300)
    assert lf.dough_by_heat_balance(process.steps[0]) == pytest.approx(25, abs=1e-9)
    state = lf.advance(lf.State(), process.steps[0])
    assert state.shells[0].temperature_c == pytest.approx(25, abs=1e-9)
    (first, second) = lf.simulate(process).stages
    assert first.start_h == pytest.approx(18.6, rel=1e-15)
    assert first.end_h < second.start_h + 1e-12 < 30.5 < second.end_h


def test_the_dough_at_the_end_of_mixing():
    """Measured counts before poured, poured before planned; where no balance can be made, what is said of it."""
    bulk = {"name": "bulk", "until_h": 1}
    mix = lf.Mix.from_percent(flour_g=500, room_c=21, instant_percent=0.7)
    tables = {**RISING, "water": {"desired": "24C", "poured": "30C"}}
    measured = {"yeast_percent": 0.7, "measured": "26C"}
    learned = lf.mix_of(a_day(**{**tables, "dough": measured}))
    assert steps_of(bulk, **{**tables, "dough": measured})[0] == learned.replace(dough_c=26, water_c=30)
    assert steps_of(bulk, **{**RISING, "dough": measured})[0] == mix.replace(dough_c=26)
    assert steps_of(bulk, **tables)[0] == mix.replace(water_c=30)
    assert steps_of(bulk, **RISING)[0] == mix.with_water(lf.water_by_heat_balance(mix, 24))
    no_room = {"dough": RISING["dough"]}
    assert steps_of(bulk, **no_room, water={"desired": "24C"})[0] == mix.replace(room_c=None, dough_c=24)
    assert steps_of({**bulk, "dough": "22C"}, **no_room)[0] == mix.replace(room_c=None, dough_c=22)
    with pytest.raises(
        lf.InvalidInput, match="the dough's temperature at the end of mixing is not known; give"
    ) as told:
        steps_of(bulk, **no_room)
    assert told.value.path == "water.desired_c"


def test_a_stage_without_a_place_is_held_at_what_came_of_the_mixing():
    """Not at what was wanted, where other water was poured."""
    poured, held = steps_of({"name": "bulk", "until_h": 1}, **{**RISING, "water": {"desired": "24C", "poured": "30C"}})
    (place,) = held.surroundings.places
    assert (place.is_dough, place.temperature_c) == (True, pytest.approx(lf.dough_by_heat_balance(poured), abs=1e-9))


def test_where_a_stage_is():
    """What it does not say is the stage's before it; a piece without a place is in today's room, cold or not."""
    stages = [
        {"name": "held", "until_h": 1},
        {"name": "still held", "until_h": 1},
        {"name": "cold", "refrigerator": "4C", "fan": True, "piece": "tub", "vessel_g": 800, "until_h": 9},
        {"name": "still cold", "until_h": 1},
        {"name": "out", "piece": "ball", "piece_g": 80, "until_h": 1},
        {"name": "same balls", "proof_box": "27C", "humidity_percent": 75, "until_h": 1},
    ]
    _, *steps = steps_of(*stages, **RISING)
    cold = R.refrigerator(4, fan=True)
    tub, ball = lf.Piece.tub(vessel_g=800), lf.Piece.ball(80)
    assert [(stage.name, stage.surroundings, stage.piece) for stage in steps] == [
        ("held", R.dough(24), lf.Piece()),
        ("still held", R.dough(24), lf.Piece()),
        ("cold", cold, tub),
        ("still cold", cold, tub),
        ("out", R.room(21), ball),
        ("same balls", R([lf.Place(27, air="proof_box", humidity_percent=75)]), ball),
    ]
    assumed = [notice for notice in lf.assumptions_of(a_day(*stages, **RISING)) if notice.code == "assumed_place"]
    assert [notice.text for notice in assumed] == [
        'stage "held" is held at 24 °C: it has no place',
        'stage "still held" is where "held" is: it has no place of its own',
        'stage "still cold" is where "cold" is: it has no place of its own',
        'stage "out" is in today\'s room, 21 °C: it has a piece and no place',
    ]
    with pytest.raises(lf.InvalidInput, match=r"a piece has no place; give it one, or \[today\] room"):
        steps_of({"name": "a", "piece": "ball", "until_h": 1}, dough=RISING["dough"], water={"desired": "24C"})
    mix, stage = steps_of(
        {"name": "b", "until_h": 1}, dough=RISING["dough"], today={"room": "20C"}, water={"poured": "30C"}
    )
    assert stage.surroundings == R.dough(lf.dough_by_heat_balance(mix))


def test_all_that_is_said_of_a_piece_and_a_stage():
    stage = {"name": "proof", "room": "22C", "heat_transfer_w_per_m2_k": 9, "piece": "Oblong", "diameter_cm": 9}
    stage |= {"length_cm": 22, "cover": "cloth", "worktop": "stone", "until_rise": "70%", "standing": "free"}
    stage |= {"acceptable_rise": ["60%", "85%"], "folds": ["10min", "0.5h"], "handling": ["fold"], "final_proof": True}
    (_, stage) = steps_of(stage, **RISING)
    assert stage == lf.Stage(
        "proof",
        surroundings=R([lf.Place(22, heat_transfer_w_per_m2_k=9)]),
        piece=lf.Piece.oblong(diameter_cm=9, length_cm=22, cover="cloth", worktop="stone"),
        until_rise_percent=70,
        acceptable_rise_percent=(60, 85),
        folds_h=[10 / 60, 0.5],
        handling=["fold"],
        standing="free",
        final_proof=True,
    )


def test_hours_of_the_day_or_from_the_end_of_mixing():
    mixing = {"method": "hand", "minutes": 15, "rest": "45min"}
    stage = {"name": "bulk", "room": "20C", "until_h": 1}
    for times, start_h, is_clock in (
        ({}, -1, False),
        ({"start": "8:15"}, 8.25, True),
        ({"mixed": "9:30"}, 8.5, True),
        ({"start": "8:15", "mixed": "9:30"}, 8.5, True),  # what was done counts
        ({"start": "23:30", "mixed": "0:45"}, 23.75, True),  # after midnight
    ):
        day = a_day(stage, **RISING, mixing=mixing, **times)
        assert (lf.process_of(day).start_h, lf.has_clock(day)) == (pytest.approx(start_h, rel=1e-15), is_clock)
        (told,) = lf.simulate(lf.process_of(day)).stages
        assert told.start_h == pytest.approx(start_h + 1, abs=1e-12)


def test_what_was_done_counts_before_what_was_planned():
    """A stage that has ended ends then; one without an end goes on until the next one begins."""
    stages = [
        {"name": "bulk", "room": "20C", "until_rise_percent": 90, "ended": "12:10"},
        {"name": "cold", "refrigerator": "4C"},
        {"name": "warm", "from": "7:00", "proof_box": "26C", "until_h": 1.5},
        {"name": "proof", "room": "20C", "until_h": 1, "ended": "8:20"},
        {"name": "late", "from": "8:20", "until_h": 1, "room": "20C"},
    ]
    _, *steps = steps_of(*stages, **RISING, start="9:00")
    ends = [(stage.until_rise_percent, stage.until_h, stage.ends_h) for stage in steps]
    assert ends == [
        (None, None, 12 + 10 / 60),
        (None, None, 31),
        (None, 1.5, None),
        (None, None, 24 + 8 + 20 / 60),  # done a little before what was planned, not a day later
        (None, 1, None),
    ]
    for without in (stages[:1], stages[1:3]):
        with pytest.raises(lf.InvalidInput, match="a time of day says nothing without the day's own; give start, when"):
            steps_of(*without, **RISING)


def test_places_by_time_of_day_logs_and_a_swing():
    log = {"time_h": [0, 4], "temperature_c": [19, 21]}
    stage = {
        "name": "bulk",
        "room_log": log,
        "place": [{"from": "23:00", "refrigerator": "5C"}, {"from": "7:15", "room": "18C", "swing": "3K"}],
        "until_h": 14,
    }
    (mix, held) = steps_of(stage, **RISING, mixed="20:00", mixing={"method": "hand", "minutes": 30})
    course = lf.Course([20, 24], [19, 21])  # a log's hours count from the end of mixing
    swing = lf.DailySwing(18, 3, 16)
    assert held.surroundings == R(
        [lf.Place(course=course), lf.Place(5, air="refrigerator", from_h=23), lf.Place(swing=swing, from_h=31.25)]
    )
    assert mix.mixing == lf.ByMethod("hand", 30)
    warmest = {"name": "bulk", "room": "18C", "swing": "3K", "warmest": "14:30", "until_h": 2}
    assert steps_of(warmest, **RISING, mixed="20:00")[1].surroundings == R([lf.Place(swing=lf.DailySwing(18, 3, 14.5))])
    only = {"name": "bulk", "place": [{"room": "18C"}, {"from": "22:00", "refrigerator": "5C"}], "until_h": 2}
    assert steps_of(only, **RISING, mixed="20:00")[1].surroundings == R(
        [lf.Place(18), lf.Place(5, air="refrigerator", from_h=22)]
    )
    with pytest.raises(lf.InvalidInput, match="from when the dough is there is not said; a time of day") as refused:
        steps_of({**stage, "place": [{"refrigerator": "5C"}]}, **RISING, mixed="20:00")
    assert refused.value.path == "stage[0].place[0].from"
    for piece_of_air in ({"room": "18C", "swing": "3K"}, {"room": "18C", "place": [{"from": "9:00", "room": "2C"}]}):
        with pytest.raises(lf.InvalidInput, match="a time of day says nothing without the day's own"):
            steps_of({"name": "bulk", "until_h": 2, **piece_of_air}, **RISING)


@pytest.mark.parametrize(
    ("text", "after_h", "hours"),
    [
        ("8:15", 0, 8.25),
        ("08:15", 8.25, 8.25),
        ("8:15", 8.26, 32.25),
        ("0:00", 24, 24),
        ("23:59", 49, 48 + 24 - 1 / 60),
        ("+1 7:30", 0, 31.5),
        ("+0 7:30", 9, 7.5),
        ("+2 0:05", 9, 48 + 5 / 60),
    ],
)
def test_times_of_day(text, after_h, hours):
    assert lf.moment_h(text, after_h) == pytest.approx(hours, rel=1e-15)
    assert lf.moment_h(lf.moment_text(hours), hours - 1) == pytest.approx(hours, rel=1e-15)


@pytest.mark.parametrize(
    "text", ["", "8", "8:5", "24:00", "8:60", "-1:00", "8:15 ", "+8:15", "+1  8:15", "8.15", "8:155"]
)
def test_what_is_no_time_of_day(text):
    with pytest.raises(lf.InvalidInput, match="is no time of day; write 8:15 or 18:30"):
        lf.moment_h(text)


@pytest.mark.parametrize(
    ("hours", "text"),
    [(0, "0:00"), (18.5, "18:30"), (23.999, "+1 0:00"), (31.5, "+1 7:30"), (-0.5, "−1 23:30"), (49.02, "+2 1:01")],
)
def test_moments_as_a_baker_reads_them(hours, text):
    assert lf.moment_text(hours) == text


@pytest.mark.parametrize("hours", [math.nan, math.inf, -math.inf, 1e300])
def test_what_is_no_moment(hours):
    with pytest.raises(lf.InvalidInput):
        lf.moment_text(hours)


def test_a_day_by_hand_stage_by_stage():
    """Held at dough temperatures, as the second opinion has it: the numbers from the file alone."""
    day = lf.read_day(BY_HAND)
    own = ("name", "until_h", "until_rise_percent", "folds_h", "handling", "standing", "final_proof")
    stages = [
        lf.DayStage(dough_c=dough_c, **{key: getattr(stage, key) for key in own})
        for stage, dough_c in zip(day.stage, (24, 22, 22), strict=True)
    ]
    day = day.replace(stage=stages, dough=day.dough.replace(measured_c=24), yeast_water=None)
    told = lf.simulate(lf.process_of(day)).stages
    expected = independent.run(
        [
            independent.Mix(24, flour_g=800, water_g=528, salt_g=16.8, yeast=[("active_dry", 7.2)]),
            independent.Stage("b", dough_c=24, until_rise_percent=95, folds_h=[0.4, 0.9], handling=["divide", "round"]),
            independent.Stage("r", dough_c=22, until_h=0.25, handling=["mould"]),
            independent.Stage("p", dough_c=22, until_rise_percent=70),
        ],
        altitude_m=600,
    )
    for own, other in zip(told, expected, strict=True):
        assert own.end_h == pytest.approx(other.end_h, abs=1e-6)
        assert own.rise_percent == pytest.approx(other.rise_percent, abs=1e-5)


def test_a_day_with_a_preferment_milk_and_butter_and_two_places_by_the_second_opinion():
    """The poolish ferments, joins with milk and butter, and the dough is carried to a colder room at an hour."""
    day = lf.Day.from_dict(
        {
            "start": "8:00",
            "today": {"room": "23C", "flour": "21C", "milk": "15C", "butter": "19C", "preferment": "22C"},
            "water": {"desired": "24.5C"},
            "dough": {"flour_g": 900, "water_percent": 45, "milk_g": 120, "butter_percent": 6, "sugar_percent": 3}
            | {"yeast": "compressed", "yeast_percent": 0.9},
            "preferment": {"flour_g": 200, "water_percent": 100, "yeast_percent": 0.2, "stands": "8h"}
            | {"temperature": "20C"},
            "mixing": {"work_kj_per_kg": 4},
            "stage": [
                {"name": "bulk", "piece": "tub", "room": "23C", "until_h": 4, "handling": ["divide", "round"]}
                | {"place": [{"from": "9:30", "room": "15C"}]},
                {"name": "proof", "piece": "ball", "pieces": 2, "room": "20C", "until_rise_percent": 60},
            ],
        }
    )
    mix, bulk, proof = lf.process_of(day).steps
    mixed = lf.advance(lf.State(time_h=8), mix)
    assert mixed.temperature_c == pytest.approx(24.5, abs=1e-9)
    told = lf.simulate(lf.process_of(day))
    water = {each.name: each.composition.water for each in lf.ingredients()}
    milk_g, butter_g = mix.milk_g * water["milk"], mix.butter_g * water["butter"]
    poolish = independent.run(
        [
            independent.Mix(20, flour_g=200, water_g=200, yeast=[("compressed", 0.4)]),
            independent.Stage("preferment", dough_c=20, until_h=8),
        ]
    )[-1].state
    poolish = replace(poolish, time_h=8, temperature_c=22)  # measured when it was mixed in

    def in_air(stage, air, state, before, **end):
        capacity = 1000 * state.heat_capacity_kj_k / stage.piece.pieces
        return independent.Stage(
            stage.name,
            ambient_c=air,
            capacity_j_k=capacity,
            ua_w_k=capacity / before.time_constant_h / 3600,
            flour_g_of_piece=state.amounts.flour_g / stage.piece.pieces,
            handling=stage.handling,
            **end,
        )

    after_bulk = lf.advance(mixed, bulk)
    expected = independent.run(
        [
            independent.Mix(
                24.5,
                flour_g=mix.flour_g,
                water_g=mix.water_g + milk_g + butter_g,
                salt_g=mix.salt_g,
                sugar_g=mix.sugar_g,
                other_g=mix.milk_g + mix.butter_g - milk_g - butter_g,
                yeast=[("compressed", mix.compressed_g)],
            ),
            in_air(bulk, lambda time_h: 23.0 if time_h < 9.5 else 15.0, mixed, told["bulk"], until_h=4),
            in_air(proof, 20.0, after_bulk, told["proof"], until_rise_percent=60),
        ],
        state=poolish,
        max_step_h=0.02,
    )
    for own, other in zip(told.stages, expected, strict=True):
        assert own.end_h == pytest.approx(other.end_h, abs=1e-4)
        assert own.end_c == pytest.approx(other.temperature_c, abs=1e-4)
        assert own.rise_percent == pytest.approx(other.rise_percent, abs=1e-3)


def test_one_stage_held_is_hours_to_rise():
    dough = {"dough_c": 23, "yeast_percent": 0.7}
    (risen,) = lf.simulate(
        lf.process_of(a_day(a_stage(until_h=None, until_rise="90%"), dough={"yeast": "instant", "yeast_percent": 0.7}))
    ).stages
    assert risen.hours == pytest.approx(lf.hours_to_rise(90, **dough), rel=1e-12)
    (timed,) = lf.simulate(lf.process_of(a_day(STAGE, dough={"yeast_percent": 0.7}))).stages
    assert timed.rise_percent == pytest.approx(lf.rise_after(2, **dough), rel=1e-12)


@pytest.mark.parametrize(
    ("stages", "words"),
    [
        ([], "the day has no stage; give one with a name and an end"),
        ([a_stage(folds_h=[1, 0.5])], "the folds are not in the order of time; give hours from the stage's start"),
        ([a_stage(folds_h=[3])], "a fold at 3 h comes after the stage's end at 2 h; fold earlier or end later"),
    ],
)
def test_what_a_process_of_a_day_needs(stages, words):
    with pytest.raises(lf.InvalidInput) as refused:
        lf.process_of(a_day(*stages, dough={"yeast_percent": 1}, water={"desired": "24C"}))
    assert words in str(refused.value)


@pytest.mark.parametrize(
    ("dough", "perishable"),
    [
        ({"milk_percent": 1, "water_percent": 65}, True),
        ({"egg_percent": 1, "water_percent": 65}, True),
        ({"milk_percent": 0, "egg_percent": 0, "water_percent": 65}, False),
        ({"butter_percent": 10, "oil_percent": 10, "water_percent": 65}, False),
        ({"perishable": True}, True),
        ({"perishable": False, "milk_percent": 1, "water_percent": 65}, True),
    ],
)
def test_milk_and_egg_make_a_dough_perishable(dough, perishable):
    answer = lf.ask({"ask": "simulate", "day": a_day(a_stage(until_h=5), dough={"yeast_percent": 0.1, **dough})})
    assert ("perishable_held" in [notice["code"] for notice in answer["notices"]]) == perishable


# ---- one day, one answer ---------------------------------------------------------------------------------------------

ONE_DAY = """
title = "Milk rolls for Monday, laid in the cold overnight (invented)"
start = "17:30"

[today]
room = "50F"
flour = "14C"
milk = "6C"
butter = "14C"

[water]
desired = "23C"

[dough]
flour = "0.9kg"
water = "48%"
milk = "20%"
butter_g = 63
yeast_percent = 0.9
salt = "1.9%"

[preferment]
flour = "20%"
water = "100%"
yeast_percent = 0.2
stands = "9h"
temperature = "21C"

[bowl]
mass = "1.3kg"

[mixing]
method = "Stand mixer"
minutes = 8

[[stage]]
name = "bulk"
piece = "tub"
room_log = "kitchen.csv"
until_rise = "75%"
handling = ["divide", "round"]

[[stage]]
name = "proof"
piece = "ball"
pieces = 20
refrigerator = "4C"
until_rise_percent = 80
final_proof = true

[[stage.place]]
from = "+1 6:00"
proof_box = "28C"
"""
QUESTIONS = {
    "water": {},
    "simulate": {"every_min": 5},
    "forecast": {"draws": 64},
    "choose": {"draws": 64, "what": "yeast", "ready": "+1 8:00"},
}


def one_day():
    """The same day as values."""
    return lf.Day(
        title="Milk rolls for Monday, laid in the cold overnight (invented)",
        start="17:30",
        today=lf.Today(room_c=10, flour_c=14, milk_c=6, butter_c=14),
        water=lf.WantedWater(desired_c=23),
        dough=lf.DayDough(
            flour_g=900, water_percent=48, milk_percent=20, butter_g=63, yeast_percent=0.9, salt_percent=1.9
        ),
        preferment=lf.DayPreferment(
            flour_percent=20, water_percent=100, yeast_percent=0.2, stands_h=9, temperature_c=21
        ),
        bowl=lf.DayBowl(mass_g=1300),
        mixing=lf.DayMixing(method="stand_mixer", minutes=8),
        stage=[
            lf.DayStage(
                name="bulk",
                piece="tub",
                room_log=lf.Course([0, 2, 9], [19, 20.5, 17]),
                until_rise_percent=75,
                handling=["divide", "round"],
            ),
            lf.DayStage(
                name="proof",
                piece="ball",
                pieces=20,
                refrigerator_c=4,
                place=[lf.DayPlace(from_="+1 6:00", proof_box_c=28)],
                until_rise_percent=80,
                final_proof=True,
            ),
        ],
    )


@pytest.fixture
def read_one_day(tmp_path):
    written(tmp_path, LOG, "kitchen.csv")
    return lf.read_day(written(tmp_path, ONE_DAY))


def text_of(question, day):
    return json.dumps({"ask": question, "day": day, **QUESTIONS[question]})


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_file_values_and_a_document_have_one_answer(read_one_day, question):
    assert read_one_day == one_day()
    answer = lf.ask(text_of(question, one_day().to_dict()))
    assert lf.ask(text_of(question, read_one_day.to_dict())) == answer
    sparse = json.loads(one_day().to_json())
    del sparse["format"], sparse["version"]
    assert lf.ask(text_of(question, sparse)) == answer
    assert lf.ask(text_of(question, sparse), threads=1) == answer
    assert lf.ask({"ask": question, "day": read_one_day, **QUESTIONS[question]}) == json.loads(answer)


@pytest.mark.parametrize("question", QUESTIONS)
def test_c_has_the_same_answer(read_one_day, question):
    library = library_in_c()
    asked = text_of(question, read_one_day.to_dict())
    answer = ctypes.c_void_p()
    assert library.ferment_ask(asked.encode(), answer) == 0, library.ferment_last_error().decode()
    told = ctypes.string_at(answer)
    library.ferment_free(answer)
    assert told.decode() == lf.ask(asked)


def test_the_answers_are_those_of_the_functions(read_one_day):
    day = read_one_day
    process = lf.process_of(day)
    water, told, foretold, chosen = (lf.ask({"ask": q, "day": day, **more}) for q, more in QUESTIONS.items())
    plan = lf.water_of(day)
    assert lf.WaterPlan.from_dict({key: water[key] for key in plan.to_dict()}) == plan
    assert lf.Mix.from_dict(water["mix"]) == process.steps[0]
    timeline = lf.simulate(process, every_min=5)
    assert lf.Timeline.from_dict({key: told[key] for key in timeline.to_dict()}) == timeline
    expected = lf.forecast(process, draws=64)
    assert [stage["ready_h"] for stage in foretold["stages"]] == [stage.ready_h for stage in expected.stages]
    choice = lf.yeast_for(process, stage="proof", ready_h=32, draws=64)
    assert chosen["value"] == choice.value
    assert (chosen["title"], chosen["clock"]) == (day.title, True)
    assert [notice["code"] for notice in chosen["assumed"]] == [n.code for n in lf.assumptions_of(day)]


# ---- random content --------------------------------------------------------------------------------------------------

scalars = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=8)
    | st.dates()
    | st.times()
    | st.sampled_from(["20C", "68F", "3K", "fold", "tin", "free", "instant", "-500F", 10**400, 0.7, 2, "30min", "1h"])
    | st.sampled_from(["steel", "gold", "hand", "dark_rye", 100, 1200, -1, "6C", "Stand mixer", "1,000g", "8:15", "2%"])
)
MEMBERS = sorted({row["name"] for form in lf._core._forms() if "Day" in form["name"] for row in form["rows"]})
names = st.text(max_size=6) | st.sampled_from([*MEMBERS, "room", "desired", "friction", "rest", "stands", "until_rise"])
values = st.recursive(
    scalars, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(names, inner, max_size=4), max_leaves=12
)


def within(name, low=None, high=None):
    """A number anywhere in a field's bounds, or in a part of them."""
    return st.floats(FIELDS[name].low if low is None else low, FIELDS[name].high if high is None else high)


degrees = st.integers(0, 45).map(lambda c: f"{c}C") | st.integers(33, 110).map(lambda f: f"{f}F")
colder = st.integers(-20, 45).map(lambda c: f"{c}C")
times = st.integers(0, 600).map(lambda minutes: f"{minutes}min") | st.integers(0, 20).map(lambda h: f"{h}h")
clocks = st.times().map(lambda time: f"{time.hour}:{time.minute:02}")


def some(**strategies):
    return st.fixed_dictionaries({}, optional=strategies)


@st.composite
def plausible_batches(draw):
    """Batches as they come out of most mixing: the water follows from a friction that is allowed."""
    dough_c, flour_c, room_c = draw(st.tuples(st.integers(20, 28), st.integers(10, 28), st.integers(12, 28)))
    water_c = min(max(3 * dough_c - flour_c - room_c - draw(st.integers(-5, 15)), 0), 60)
    batch = {"dough_c": dough_c, "flour_c": flour_c, "room_c": room_c, "water_c": water_c}
    return {**batch, **draw(some(bowl=degrees, milk=degrees, butter=colder, rest=times, minutes=within("mixing_min")))}


plausible_mixing = st.one_of(
    some(rest=times),
    some(method=st.sampled_from(OFFERED), rest=times),
    st.fixed_dictionaries({"method": st.sampled_from(OFFERED), "minutes": within("mixing_min")}),
    st.fixed_dictionaries({"work_kj_per_kg": within("work_kj_per_kg", high=40)}),
    st.fixed_dictionaries({"net_gain_kj_per_kg": st.floats(-10, 40)}, optional={"minutes": within("mixing_min")}),
)
plausible_preferment = st.fixed_dictionaries(
    {"flour_percent": st.floats(1, 40), "water_percent": st.floats(50, 120)}
) | st.fixed_dictionaries(
    {
        "flour": st.integers(5, 40).map(lambda percent: f"{percent}%"),
        "water": st.integers(50, 120).map(lambda percent: f"{percent}%"),
        "yeast_percent": st.floats(0.05, 1),
        "stands": times,
        "temperature": st.integers(4, 30).map(lambda c: f"{c}C"),
    },
    optional={"yeast": st.sampled_from(YEASTS), "salt_percent": st.floats(0, 2)},
)
plausible_stage = st.fixed_dictionaries(
    {"name": st.text("abcd", min_size=1, max_size=3)},
    optional={
        "room": st.integers(12, 30).map(lambda c: f"{c}C"),
        "piece": st.sampled_from(["tub", "ball", "oblong"]),
        "handling": st.lists(st.sampled_from(["fold", "divide", "round", "mould"]), max_size=2),
        "final_proof": st.booleans(),
        "place": st.lists(st.fixed_dictionaries({"from": clocks, "refrigerator": st.just("5C")}), max_size=2),
    },
).flatmap(
    lambda stage: (
        st.fixed_dictionaries({"until_h": st.floats(0.1, 6)}).map(lambda end: {**stage, **end})
        | st.fixed_dictionaries({"until_rise_percent": st.floats(5, 120)}).map(lambda end: {**stage, **end})
    )
)
plausible_days = st.fixed_dictionaries(
    {
        "start": clocks,
        "today": st.fixed_dictionaries(
            {"room": st.integers(12, 32).map(lambda c: f"{c}C")},
            optional={
                "flour": colder,
                "bowl": colder,
                "butter": colder,
                "tap": degrees,
                "milk": degrees,
                "egg": degrees,
            },
        ),
        "water": st.fixed_dictionaries(
            {"desired": st.integers(15, 32).map(lambda c: f"{c}C")},
            optional={"friction": st.integers(-10, 25).map(lambda k: f"{k}K")},
        ),
        "dough": st.fixed_dictionaries(
            {"flour_g": st.floats(300, 5000), "water_percent": st.floats(40, 90), "yeast_percent": st.floats(0.1, 4)},
            optional={
                "yeast": st.sampled_from(YEASTS),
                "salt_percent": st.floats(0, 3),
                "sugar_percent": st.floats(0, 15),
                "milk_percent": st.floats(0, 25),
                "egg_g": st.floats(0, 100),
                "butter_percent": st.floats(0, 25),
                "oil_percent": st.floats(0, 25),
                "altitude_m": st.floats(0, 2000),
            },
        ),
        "stage": st.lists(plausible_stage, min_size=1, max_size=3, unique_by=lambda stage: stage["name"]),
    },
    optional={
        "bowl": st.fixed_dictionaries({"mass_g": st.floats(20, 4000)}),
        "mixing": plausible_mixing,
        "preferment": plausible_preferment,
        "yeast_water": st.fixed_dictionaries({"water_g": st.floats(1, 90), "temperature": degrees, "stands": times}),
        "batch": st.lists(plausible_batches(), min_size=1, max_size=3),
    },
)


@given(st.dictionaries(names, values, max_size=5) | plausible_days)
def test_any_content_is_read_or_refused(content):
    day = attempt(lambda: day_of(content, "day.toml"), lf.InvalidInput)
    if isinstance(day, lf.InvalidInput):
        assert str(day).startswith("day.toml: ")
        return
    assert lf.Day.from_json(day.to_json()) == day


@given(plausible_days)
def test_the_water_of_any_day_is_that_of_its_process(content):
    """Whatever the day: the plan's water makes the desired dough, and the process has that very mix."""
    day = lf.Day.from_dict(content)
    plan = attempt(lambda: lf.water_of(day), *REFUSALS)
    if isinstance(plan, REFUSALS):
        assert str(plan)
        assert isinstance(attempt(lambda: lf.process_of(day), *REFUSALS), REFUSALS)
        return
    mix = lf.mix_of(day).with_water(plan)
    assert lf.dough_by_heat_balance(mix) == pytest.approx(plan.desired_c, abs=1e-7)
    assert plan.pour_g + plan.ice_g == pytest.approx(plan.water_g, rel=1e-12)
    assert 0 <= plan.ice_g <= plan.water_g * (1 + 1e-12)
    assert 0 <= plan.pour_c <= 60
    assert plan.low_c <= plan.desired_c <= plan.high_c
    assert sum(share.dough_k_per_k for share in plan.shares) == pytest.approx(1, rel=1e-9)
    process = attempt(lambda: lf.process_of(day), *REFUSALS)
    if isinstance(process, REFUSALS):
        assert isinstance(process, lf.InvalidInput)
        return
    assert process.steps[0] == mix
    assert [stage.name for stage in process.steps[1:]] == [stage.name for stage in day.stage]
    told = attempt(lambda: lf.simulate(process, every_min=0, be_back_by=False), *REFUSALS)
    if isinstance(told, REFUSALS):
        assert str(told)
        return
    assert [stage.name for stage in told.stages] == [stage.name for stage in day.stage]
    assert all(math.isfinite(stage.end_h) and stage.start_h <= stage.end_h for stage in told.stages)


@given(st.lists(plausible_batches(), min_size=1, max_size=4), plausible_days)
def test_the_batches_of_any_day_are_worked_out_or_refused(batches, content):
    learned = attempt(lambda: lf.learned_mixing(lf.Day.from_dict({**content, "batch": batches})), *REFUSALS)
    if isinstance(learned, REFUSALS):
        assert str(learned)
        return
    for found, name in ((learned.friction_k, "friction_k"), (learned.net_gain_kj_per_kg, "net_gain_kj_per_kg")):
        assert len(found.each) == len(batches)
        assert all(FIELDS[name].low <= value <= FIELDS[name].high for value in found.each)
        assert found.mean == pytest.approx(sum(found.each) / len(found.each), rel=1e-9, abs=1e-9)
        assert (found.sd is None) == (len(found.each) == 1)
    assert 0 <= learned.minutes <= 60
