"""Documents: any value there and back to the same digits, anything damaged refused with its way, schemas that fit."""

import copy
import ctypes
import json
import math
from pathlib import Path

import jsonschema
import pytest
from box import attempt
from hypothesis import example, given, settings
from hypothesis import strategies as st
from in_c import library_in_c
from libferment.day import read_content

import libferment as lf

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"
FORMS = {form["name"]: form for form in lf._core._forms()}
NUMBER, COUNT, FLAG, TEXT, NAME, RANGE, ENTRY, VALUE = range(8)
FLAGS = {row["name"] for form in FORMS.values() for row in form["rows"] if row["kind"] == FLAG}
RANGES = {row["name"] for form in FORMS.values() for row in form["rows"] if row["kind"] == RANGE}
R = lf.Surroundings


def a_day(**tables):
    """A day with about all that a day can have."""
    return lf.Day.from_dict(
        {
            "title": "Oat rolls for the school fair (invented)",
            "date": "2026-11-29",
            "start": "17:00",
            "today": {"room": "20C", "flour": "17C", "milk": "6C", "butter": "15C", "ice": "-8C"},
            "water": {"desired": "24C"},
            "dough": {
                "flour": "1kg",
                "water": "50%",
                "milk": "15%",
                "butter_g": 40,
                "yeast_percent": 0.8,
                "pieces": 24,
                "piece": "60g",
            },
            "flour": [{"percent": 80}, {"percent": 20, "kind": "Medium rye", "moisture_percent": 12}],
            "preferment": {
                "flour_percent": 15,
                "water_percent": 100,
                "yeast_percent": 0.2,
                "stands": "8h",
                "temperature": "20C",
            },
            "yeast_water": {"water": "40g", "temperature": "35C", "stands": "5min"},
            "bowl": {"mass": "1.1kg"},
            "mixing": {"method": "spiral", "minutes": 6},
            "stage": [
                {
                    "name": "bulk",
                    "piece": "tub",
                    "until_rise": "75%",
                    "folds": ["30min"],
                    "handling": ["divide", "round"],
                    "acceptable_rise": ["60%", "90%"],
                    "room_log": {"time_h": [0, 3], "temperature_c": [20, 18.25]},
                },
                {
                    "name": "proof",
                    "piece": "ball",
                    "refrigerator": "4C",
                    "place": [{"from": "+1 6:00", "room": "19C", "swing": "2K"}],
                    "until_rise_percent": 80,
                    "final_proof": True,
                },
            ],
            "seen": [
                {"stage": "bulk", "at": "18:00", "already_past_percent": 10, "dough": "23C"},
                {"stage": "bulk", "between": ["18:10", "65min"], "rise_percent": 40},
                {"stage": "bulk", "at": "18:30", "height_cm": 7.5, "start_height_cm": 5},
                {"stage": "bulk", "at": "20:00", "over_proofed": True},
            ],
            "batch": [{"dough": "24C", "water": "22C", "flour": "18C", "room": "20C", "minutes": 6}],
            **tables,
        }
    )


DAY = a_day()
PROCESS = lf.process_of(DAY)


def values_inside(value):
    """The value and all that it holds, in every depth."""
    yield value
    for row in FORMS[type(value).__name__]["rows"]:
        if row["kind"] == VALUE:
            held = getattr(value, row["name"])
            held = held.values() if isinstance(held, dict) else held if row["many"] else [held]
            for each in held:
                if type(each).__name__ in FORMS:
                    yield from values_inside(each)


def some_values():
    """Of every form some valid values: what is given, and what the library answers."""
    bulk = lf.Stage("bulk", surroundings=R([lf.Place(swing=lf.DailySwing(18, 3, 16))]), until_h=4)
    plain = lf.Process([lf.Mix.from_percent(flour_g=500, room_c=20, instant_percent=0.9, water_c=28), bulk])
    risen = plain.replace(steps=[plain.steps[0], lf.Stage("bulk", surroundings=R.room(20), until_rise_percent=90)])
    middle = lf.simulate(plain, stop_h=1.5, every_min=20)
    gain = lf.Mix.from_percent(flour_g=300, room_c=20, mixing=lf.ByWork(9), preferments=[lf.Preferment(30, 20)])
    looks = [lf.Sighting("bulk", 3, 60), lf.Sighting("bulk", 1.5, 20, was="past", not_yet_h=0.5)]
    log = lf.Log(name="a bake", process=plain, seen=looks)
    mixed = lf.Day.from_dict(
        {
            "today": {"room": "20C"},
            "water": {"poured": "26C"},
            "dough": {"flour": "500g", "measured": "24C", "packet": "opened in May"},
        }
    )
    found = [
        DAY,
        PROCESS,
        plain,
        log,
        lf.calibration([log]),
        *lf.calibrate([log]).learned,
        *lf.compare_laws([log, log, log]),
        lf.calibrate([mixed]),
        lf.next_look(risen, draws=8),
        middle,
        lf.simulate(PROCESS, every_min=30),
        lf.forecast(PROCESS, draws=8),
        lf.yeast_for(risen, stage="bulk", ready_h=3, draws=8),
        lf.water_of(DAY),
        lf.learned_mixing(DAY),
        lf.explain(90, dough_c=19, yeast_percent=0.7),
        lf.Composition.of("egg"),
        gain,
        gain.replace(mixing=lf.ByMethod("hand", 9)),
        gain.replace(mixing=lf.ByNetGain(5, 1, 9)),
        gain.percent,
        lf.SquareRoot(),
        lf.Arrhenius(),
        lf.ConstantQ10(),
        lf.Cardinal(),
        *(lf.Factor.from_dict(factor) for factor in lf.explain(90, dough_c=19, yeast_percent=0.7).to_dict()["factors"]),
        lf.Piece.ball(80).node(80, R.room(20)),
        lf.Dough(dough_c=20, yeast_percent=1),
        lf.PercentFormula(flour_g=500, flours=[lf.FlourShare(60), lf.FlourShare(40, "dark_rye")]),
        *(lf.Kitchen().with_law(law) for law in (lf.SquareRoot(), lf.Arrhenius(), lf.ConstantQ10(), lf.Cardinal())),
    ]
    by_form = {}
    for value in found:
        for each in values_inside(value):
            by_form.setdefault(type(each).__name__, []).append(each)
    return by_form


VALUES = some_values()
SMALL = [
    *VALUES["Day"],
    VALUES["Process"][1],
    VALUES["State"][0],
    VALUES["Forecast"][0],
    VALUES["WaterPlan"][0],
    VALUES["Kitchen"][0],
    VALUES["Explanation"][0],
]


# ---- there and back --------------------------------------------------------------------------------------------------


def changed_member(draw, row, value):
    """Another content for one member: whatever its kind may hold, near to what is there."""
    if row["optional"] and not row["many"] and not row["never"] and draw(st.booleans()):
        return None
    finite = st.floats(allow_nan=False, allow_infinity=False)
    near = st.floats(0.5, 2) if isinstance(value, float) and math.isfinite(value) else None
    number = finite if near is None else finite | near.map(lambda times: times * value).filter(math.isfinite)
    if row["never"]:
        number = number | st.none()
    one = {
        NUMBER: number,
        COUNT: st.integers(0, 2**53 - 1),
        FLAG: st.booleans(),
        TEXT: st.text(),
        NAME: st.sampled_from(row["names"] or [""]),
        RANGE: st.lists(number, min_size=2, max_size=2),
        VALUE: st.sampled_from([each for form in row["forms"] for each in VALUES[form]] or [None]),
    }.get(row["kind"])
    if row["kind"] == ENTRY:
        return draw(st.dictionaries(st.text(), finite, max_size=3))
    return draw(st.lists(one, max_size=4) if row["many"] else one)


@st.composite
def any_value(draw):
    """A value of any form, with some members changed to what its checks allow."""
    form = draw(st.sampled_from(sorted(FORMS)))
    value = draw(st.sampled_from(VALUES[form]))
    for row in draw(st.lists(st.sampled_from(FORMS[form]["rows"]), max_size=4)):
        name = row["name"]
        if name == "factors":  # shown by their names
            continue
        content = changed_member(draw, row, getattr(value, name))
        made = attempt(
            lambda value=value, name=name, content=content: value.replace(**{name: content}), lf.InvalidInput
        )
        value = value if isinstance(made, lf.InvalidInput) else made
    return value


def test_there_are_values_of_every_form():
    assert set(VALUES) == set(FORMS)


@pytest.mark.parametrize("form", sorted(FORMS))
def test_a_value_comes_back_as_it_was(form):
    for value in VALUES[form]:
        text = value.to_json()
        assert type(value).from_json(text) == value
        assert type(value).from_json(text).to_json() == text
        assert type(value).from_dict(value.to_dict()) == value
        heading = json.loads(text)
        words = "".join(f" {letter.lower()}" if letter.isupper() else letter for letter in form)
        assert (heading["format"], heading["version"]) == (f"libferment{words}", 1)


@settings(max_examples=4 * settings().max_examples)
@given(any_value())
def test_any_value_comes_back_as_it_was(value):
    text = value.to_json()
    back = type(value).from_json(text)
    assert back == value
    assert back.to_json() == text
    assert type(value).from_dict(value.to_dict()) == value


def test_a_file_holds_the_document(tmp_path):
    for value in SMALL:
        value.save(tmp_path / "value.json")
        assert (tmp_path / "value.json").read_bytes() == value.to_json().encode() + b"\n"
        assert type(value).load(tmp_path / "value.json") == value


# ---- what is damaged -------------------------------------------------------------------------------------------------


def refused(text, form=lf.Day):
    """The one error with which a document is refused."""
    with pytest.raises(lf.InvalidInput) as told:
        form.from_json(text)
    assert told.value.problem
    assert (str(told.value.path) + ": " if told.value.path else "") + told.value.problem in str(told.value)
    return told.value


def places(content, path=""):
    """Each place of a document with the way to it; content of entries has no form and is left out."""
    items = content.items() if isinstance(content, dict) else enumerate(content) if isinstance(content, list) else ()
    for key, each in items:
        way = f"{path}[{key}]" if isinstance(key, int) else f"{path}.{key}" if path else key
        yield way, content, key
        if key != "values":
            yield from places(each, way)


def damaged(value, choose, change):
    """A copy of a value's document, changed at one of its places, and the way there."""
    content = json.loads(value.to_json())
    way, holder, key = choose(list(places(content)))
    change(holder, key)
    return json.dumps(content), way


some_document = st.sampled_from(SMALL)
MARK = "«»"
NO_NUMBERS = ("NaN", "Infinity", "-Infinity", "nan", "1e999", "-1e999", "+1", ".5", "1.", "1e", "--1")


@given(st.data(), some_document)
def test_a_document_that_is_cut_off_is_refused_with_the_way(data, value):
    text = value.to_json()
    end = data.draw(st.integers(0, len(text.encode()) - 1))
    cut = text.encode()[:end]
    told = refused(cut, type(value))
    assert bool(told.path) == (b'"format"' in cut)  # the first key
    question = attempt(lambda: lf.ask(json.dumps({"ask": "water", "day": {}})[: end % 28]), lf.Error)
    assert isinstance(question, lf.InvalidInput)


@given(st.data(), some_document)
def test_a_byte_that_flips_is_refused_or_another_value(data, value):
    text = bytearray(value.to_json().encode())
    at = data.draw(st.integers(0, len(text) - 1))
    text[at] ^= 1 << data.draw(st.integers(0, 7))
    read = attempt(lambda: type(value).from_json(bytes(text)), lf.InvalidInput)
    if isinstance(read, lf.InvalidInput):
        assert read.problem
    else:
        assert type(value).from_json(read.to_json()) == read


@given(st.binary() | st.text().map(lambda text: text.encode()) | st.text('[]{}:,"0123.eE-+\\u tfn').map(str.encode))
@example(b"")
@example(b"null")
@example(b"[]")
@example(b'"Day"')
@example(b"{} {}")
@example(b"\xef\xbb\xbf{\xff}")
def test_any_bytes_are_no_document(text):
    read = attempt(lambda: lf.Process.from_json(text), lf.InvalidInput)
    assert isinstance(read, lf.InvalidInput)  # the least of a process is its steps
    assert read.problem


@given(st.data(), some_document)
def test_a_wrong_type_is_told_with_the_way(data, value):
    def choose(all_places):
        return data.draw(st.sampled_from([place for place in all_places if place[2] not in FLAGS]))

    def change(holder, key):
        holder[key] = True

    text, way = damaged(value, choose, change)
    member, _, item = way.rpartition("[")
    is_of_range = item and member.rpartition(".")[2] in RANGES
    assert refused(text, type(value)).path == (member if is_of_range else way)


@given(st.data(), some_document)
def test_an_unknown_key_is_told_with_the_way(data, value):
    def choose(all_places):
        tables = [place for place in all_places if isinstance(place[1], dict) and ".values." not in place[0]]
        return data.draw(st.sampled_from(tables))

    def change(holder, key):
        holder["xyzzy"] = 1

    text, way = damaged(value, choose, change)
    told = refused(text, type(value))
    assert told.path == (way.rpartition(".")[0] + ".xyzzy").lstrip(".")
    assert 'the key "xyzzy" is unknown' in told.problem


@given(st.data(), some_document, st.sampled_from(NO_NUMBERS))
def test_what_is_no_number_or_too_large_is_told_with_the_way(data, value, written):
    def choose(all_places):
        numbers = [place for place in all_places if type(place[1][place[2]]) in (int, float) and place[0] != "version"]
        return data.draw(st.sampled_from(numbers))

    def change(holder, key):
        holder[key] = MARK

    text, way = damaged(value, choose, change)
    assert refused(text.replace(json.dumps(MARK), written), type(value)).path == way


@given(st.data(), some_document)
def test_a_key_that_stands_twice_is_told_with_the_way(data, value):
    def choose(all_places):
        return data.draw(st.sampled_from([place for place in all_places if isinstance(place[1], dict)]))

    def change(holder, key):
        its = holder.pop(key)
        holder[MARK] = its
        holder[MARK + MARK] = its
        twice.append(key)

    twice = []
    text, way = damaged(value, choose, change)
    text = text.replace(json.dumps(MARK + MARK), json.dumps(twice[0])).replace(json.dumps(MARK), json.dumps(twice[0]))
    told = refused(text, type(value))
    assert told.path == way
    assert told.problem == "it stands twice"


@pytest.mark.parametrize(
    ("text", "path", "words"),
    [
        ("", "", "the text is empty"),
        ("[" * 33 + "]" * 33, "[0]" * 32, "more than 32 deep"),
        ("[" * 1_000_000, "[0]" * 32, "more than 32 deep"),
        ('{"a":' * 1_000_000, ".".join("a" * 32), "more than 32 deep"),
        ('{"title":"' + "x" * 10_000_000 + '"}', "", "the text has 10000012 bytes, and a document at most 8388608"),
        ("{" + ",".join(f'"k{i}":1' for i in range(2000)) + "}", "k1000", "more than 1000 keys"),
        ('{"' + "k" * 5000 + '":1}', "", "a key of 5000 letters is unknown"),
        ('{"title":\n"a"\n,}', "title", "line 3, column 2"),
        ('{"format":"libferment mix"}', "format", 'it is the text "libferment mix", and "libferment day" is wanted'),
        ('{"version":2}', "version", "this libferment reads version 1"),
        ('{"title":"\\ud800"}', "title", "it is not valid JSON"),
        (b'{"title":"\xff"}', "title", "it is not valid JSON"),
        (b'{"title":"\xc3"}', "title", "it is not valid JSON"),
        (b'{"\xed\xa0\x80":1}', "", "it is not valid JSON"),
        ('{"stage":[{"name":"a","until_h":1},{"name":"b","until_h":-1}]}', "stage[1].until_h", "is outside"),
    ],
)
def test_documents_that_are_none(text, path, words):
    told = refused(text)
    assert told.path == path
    assert words in told.problem
    assert len(str(told)) < 12000


class Odd:
    """What has no plain form."""


LOOP = {}
LOOP["title"] = LOOP


@pytest.mark.parametrize(
    ("values", "path"),
    [
        ({"dough": {"flour_g": math.nan}}, "dough.flour_g"),
        ({"stage": [{"name": "a", "until_h": 1, "folds_h": [1, math.nan]}]}, "stage[0].folds_h[1]"),
        ({"dough": {"flour_g": math.inf}}, "dough.flour_g"),
        ({"stage": [{"name": "a", "until_h": 1, "folds_h": [1, -math.inf]}]}, "stage[0].folds_h[1]"),
        ({"dough": {"flour_g": 10**400}}, "dough.flour_g"),
        ({"dough": {"flour_g": 10**9999}}, "dough.flour_g"),
        ({"title": "\ud800"}, "title"),
        ({"dough": {"\ud800": 1}}, "dough"),
        ({"title": {1, 2}}, "title"),
        ({"flour": [{"kind": b"rye"}]}, "flour[0].kind"),
        ({"title": Odd()}, "title"),
        (LOOP, ""),
        ([1], ""),
        (None, ""),
        (7, ""),
    ],
)
def test_dicts_that_are_no_document(values, path):
    for call in (lf.Day.from_dict, lf.Process.from_dict):
        with pytest.raises(lf.InvalidInput) as told:
            call(copy.copy(values))
        if call == lf.Day.from_dict:
            assert told.value.path == path
    with pytest.raises(lf.InvalidInput):
        lf.ask({"ask": "water", "day": values})


@pytest.mark.parametrize(
    ("question", "path", "words"),
    [
        ("[1]", "", "a question is a table, got a list"),
        ("{}", "ask", "nothing is asked; known: water, mixing"),
        ('{"ask":"wter"}', "ask", 'question "wter" is unknown; did you mean water?'),
        ('{"ask":3}', "ask", "a text is wanted, got the number 3"),
        ('{"ask":"water"}', "day", "WaterQuestion needs day"),
        ('{"ask":"water","day":{},"days":1}', "days", 'the key "days" is unknown; did you mean day?'),
        ('{"ask":"water","day":{"today":{"room":"20"}}}', "day.today.room", "room temperature 20 has no unit"),
        ('{"ask":"simulate"}', "day", "a question is about a day or about a process"),
        ('{"ask":"simulate","day":{"stage":[{"name":"a","until_h":-1}]}}', "day.stage[0].until_h", "is outside"),
        ('{"ask":"forecast","day":{},"draws":1.5}', "draws", "a whole number from 0 is wanted, got the number 1.5"),
        ('{"ask":"keys","of":"Dya"}', "of", 'no form is called "Dya"; did you mean Day?'),
        (
            '{"ask":"rise","dough_c":20,"yeast_percent":1}',
            "rise_percent",
            "a rise or a time is given, the other one as",
        ),
    ],
)
def test_questions_that_are_none(question, path, words):
    with pytest.raises(lf.InvalidInput) as told:
        lf.ask(question)
    assert told.value.path == path
    assert words in str(told.value)


def test_c_refuses_what_is_damaged():
    library = library_in_c()
    for question, words in (
        (b"\xff", "it is not valid JSON at line 1, column 1"),
        (b'{"ask":"water","day":{"title":"\xff"}}', "day.title: it is not valid JSON"),
        (b'{"ask":"water","day":{"title":"\xc3"}}', "day.title: it is not valid JSON"),
        (b'{"ask":"water","day":{"title":"x', "day.title: the text breaks off"),
        (b"[" * 9999, "more than 32 deep"),
        (b'{"ask":"' + b"x" * 10_000_000 + b'"}', "the text has 10000010 bytes"),
        (b"", "the text is empty"),
        (None, "a pointer is null"),
    ):
        answer = ctypes.c_void_p(77)
        assert library.ferment_ask(question, answer) == lf.InvalidInput.status
        assert answer.value == 77
        assert words in library.ferment_last_error().decode()
    assert library.ferment_ask(b'{"ask":"keys","of":"Day"}', None) == lf.InvalidInput.status
    library.ferment_free(None)


# ---- answers ---------------------------------------------------------------------------------------------------------


def test_answers_hold_the_notices_of_the_functions():
    day = a_day(
        dough={"flour": "1kg", "yeast_percent": 0.02, "sugar": "12%", "perishable": True}, water={"desired": "31C"}
    )
    process = lf.process_of(day)
    told = {
        "water": ({}, lf.water_of(day)),
        "simulate": ({"every_min": 30}, lf.simulate(process, every_min=30)),
        "forecast": ({"draws": 16}, lf.forecast(process, draws=16, seen=lf.log_of(day).seen)),
    }
    for question, (options, expected) in told.items():
        answer = lf.ask({"ask": question, "day": day, **options})
        assert answer["notices"] == [notice.to_dict() for notice in expected.notices]
        assert answer["assumed"] == [notice.to_dict() for notice in lf.assumptions_of(day)]
    assert {notice.code for notice in told["simulate"][1].notices} >= {"sugar_high", "perishable_held"}
    dough = {"dough_c": 39, "yeast_percent": 0.02, "sugar_percent": 12}
    cautions = [notice.to_dict() for notice in lf.cautions(**dough)]
    assert len(cautions) >= 3
    assert lf.ask({"ask": "cautions", **dough})["notices"] == cautions
    rise = lf.ask({"ask": "rise", "rise_percent": 90, **dough})
    assert (rise["hours"], rise["notices"]) == (lf.hours_to_rise(90, **dough), cautions)
    rise = lf.ask({"ask": "rise", "time_h": 3, **dough})
    assert rise["rise_percent"] == lf.rise_after(3, **dough)
    explained = lf.ask({"ask": "explain", "rise_percent": 90, **dough})
    assert lf.Explanation.from_dict(explained) == lf.explain(90, **dough)
    learned = lf.ask({"ask": "mixing", "day": day})
    assert learned["net_gain_kj_per_kg"] == lf.learned_mixing(day).net_gain_kj_per_kg.to_dict()


def test_a_process_or_a_state_is_asked_about_as_a_day_is():
    """What is given as a value is that value, and goes on from a state in the middle of a stage."""
    day = a_day()
    by_day = lf.ask({"ask": "simulate", "day": day, "every_min": 30})
    by_process = lf.ask({"ask": "simulate", "process": PROCESS, "every_min": 30})
    for key in ("time_h", "stages", "notices", "state"):
        assert by_process[key] == by_day[key]
    assert (by_process["title"], by_process["clock"], by_process["assumed"]) == ("", False, [])
    half = lf.simulate(PROCESS, stop_h=19, every_min=0)
    on = lf.simulate(PROCESS, state=half.state, every_min=0)
    answer = lf.ask({"ask": "simulate", "process": PROCESS, "state": half.state, "every_min": 0})
    assert answer["stages"] == json.loads(on.to_json())["stages"]
    kitchen = lf.Kitchen(gassing_rate=14)
    answer = lf.ask({"ask": "rise", "rise_percent": 90, "dough_c": 20, "yeast_percent": 1, "kitchen": kitchen})
    assert answer["hours"] == lf.hours_to_rise(90, dough_c=20, yeast_percent=1, kitchen=kitchen)


# ---- schemas ---------------------------------------------------------------------------------------------------------

STAGE = {"name": "bulk", "until_h": 2}
ASKED = {
    "Day": DAY,
    "Process": PROCESS,
    "Mix": VALUES["Mix"][0],
    "State": VALUES["State"][0],
    "Kitchen": VALUES["Kitchen"][0],
}
QUESTIONS = {
    "WaterQuestion": {"ask": "water", "day": DAY},
    "MixingQuestion": {"ask": "mixing", "day": DAY},
    "SimulateQuestion": {"ask": "simulate", "day": DAY, "every_min": 60},
    "ForecastQuestion": {"ask": "forecast", "process": PROCESS, "draws": 8},
    "ChooseQuestion": {"ask": "choose", "day": DAY, "what": "yeast", "ready": "+1 9:00", "draws": 8},
    "RiseQuestion": {"ask": "rise", "rise": "90%", "dough": "19C", "yeast_percent": 0.7},
    "ExplainQuestion": {"ask": "explain", "rise_percent": 90, "dough_c": 19, "yeast_percent": 0.7},
    "CautionsQuestion": {"ask": "cautions", "dough": "39C"},
    "KeysQuestion": {"ask": "keys", "of": "Day"},
}
ANSWERS = {name.replace("Question", "Answer"): question for name, question in QUESTIONS.items()}
ANSWERS["Explanation"] = ANSWERS.pop("ExplainAnswer")
del ANSWERS["KeysAnswer"]


def schema(form):
    return jsonschema.Draft202012Validator(lf.ask({"ask": "keys", "of": form}))


def complaints(validator, content):
    """What a schema says against a document, in short."""
    return [f"{error.json_path}: {error.message[:200]}" for error in validator.iter_errors(content)]


DAY_SCHEMA = schema("Day")


@pytest.mark.parametrize("form", [*ASKED, *QUESTIONS, *ANSWERS])
def test_a_schema_is_one(form):
    jsonschema.Draft202012Validator.check_schema(schema(form).schema)


@pytest.mark.parametrize("form", ASKED)
def test_a_schema_accepts_what_is_written(form):
    for value in VALUES[form]:
        assert complaints(schema(form), json.loads(value.to_json())) == []


@pytest.mark.parametrize("form", ANSWERS)
def test_the_schema_of_an_answer_accepts_it(form):
    assert complaints(schema(form), lf.ask(ANSWERS[form])) == []


@pytest.mark.parametrize("form", QUESTIONS)
def test_the_schema_of_a_question_accepts_it(form):
    question = {
        key: json.loads(value.to_json()) if hasattr(value, "to_json") else value
        for key, value in QUESTIONS[form].items()
    }
    for value in question.values():
        if isinstance(value, dict):
            del value["format"], value["version"]
    lf.ask(json.dumps(question))
    assert complaints(schema(form), question) == []


@pytest.mark.parametrize("path", sorted(DEMO.glob("*.toml")), ids=lambda path: path.stem)
def test_the_schema_accepts_the_demo_days(path):
    assert complaints(DAY_SCHEMA, read_content(path)) == []


ALSO = [
    {},
    {"$schema": "day.json", "format": "libferment day", "version": 1},
    {"today": {"room": "20C", "tap": "50 °F", "ice": "−8,5C", "milk": None, "egg_c": None}},
    {"preferment": {"flour": "20%", "water": "100%"}},
    {"preferment": {"flour": "100g", "water_g": 100}},
    {"preferment": None, "bowl": None},
    {"dough": {"water": "700g", "salt": "2%", "flour": "2lb", "altitude": "1000ft", "yeast": "Active dry"}},
    {"mixing": {"rest": "1h 20min", "method": "Stand mixer"}, "flour": [{"mass": "500g", "kind": "Whole wheat"}]},
    {"stage": [{"name": "a", "until_rise": "80%", "acceptable_rise": ["60%", "90%"], "folds": ["20min", "1h"]}]},
    {"stage": [{**STAGE, "room_log": {"time": ["0h", "60min"], "temperature": ["20C", "70F"]}, "handling": ["Fold"]}]},
    {"stage": [STAGE], "seen": [{"stage": "bulk", "at": "9:00", "not_yet": "50%", "dough": "70F"}]},
    DAY.to_dict(),
]


@pytest.mark.parametrize("content", ALSO)
def test_the_schema_accepts_what_the_core_reads(content):
    text = json.dumps(content)
    lf.Day.from_json(text)
    assert complaints(DAY_SCHEMA, json.loads(text)) == []


WRONG = [
    {"dogh": {}},
    {"Title": "x"},
    {"title": 3},
    {"title": None},
    {"version": 2},
    {"today": []},
    {"today": {"xyzzy": 1}},
    {"today": {"flour": 20}},
    {"today": {"flour": "20"}},
    {"today": {"flour": "20h"}},
    {"today": {"flour": "warm"}},
    {"today": {"flour": ".5C"}},
    {"today": {"flour": "20C 20C"}},
    {"today": {"flour_c": "20C"}},
    {"today": {"flour_c": 61}},
    {"today": {"flour_c": 20, "flour": "20C"}},
    {"water": {"friction_k": -11}},
    {"water": {"friction": "6h"}},
    {"dough": None},
    {"dough": {"yeast": "fresh"}},
    {"dough": {"yeast": None}},
    {"dough": {"loss": None}},
    {"dough": {"flour_g": 0}},
    {"dough": {"flour_g": True}},
    {"dough": {"salt_percent": 18}},
    {"dough": {"water": 70}},
    {"dough": {"perishable": "yes"}},
    {"flour": {"percent": 100}},
    {"flour": [3]},
    {"flour": [{"percent": "50%"}]},
    {"preferment": {"flour_g": 100}},
    {"preferment": {"flour_g": 100, "flour_percent": 10, "water_g": 30}},
    {"yeast_water": {"water_g": 50}},
    {"bowl": {"material": "steel"}},
    {"bowl": {"mass_g": 2.1}},
    {"mixing": {"minutes": "5min"}},
    {"mixing": {"rest": "30"}},
    {"batch": [{"dough": "20C"}]},
    {"stage": {}},
    {"stage": None},
    {"stage": ["bulk"]},
    {"stage": [{"until_h": 1}]},
    {"stage": [{**STAGE, "piece": "square"}]},
    {"stage": [{**STAGE, "folds": [20]}]},
    {"stage": [{**STAGE, "folds_h": [-1]}]},
    {"stage": [{**STAGE, "handling": "fold"}]},
    {"stage": [{**STAGE, "handling": ["punch"]}]},
    {"stage": [{**STAGE, "acceptable_rise_percent": [80]}]},
    {"stage": [STAGE], "seen": [{"at": "9:00", "rise_percent": 50}]},
    {"stage": [STAGE], "seen": [{"stage": "bulk", "at": 9, "rise_percent": 50}]},
    {"stage": [{**STAGE, "room_log": "room.csv"}]},
    {"stage": [{**STAGE, "room_log": {"time_h": [0, 1]}}]},
    {"stage": [{**STAGE, "until": "85%"}]},
]

BOUNDS = "bounds of a text with a unit"
TWO = "two members contradict each other"
OTHERS = "a stage and the next one contradict each other"
TEXT_FORM = "the form of a text"
TABLE = "names of a table: flours, materials, methods"
CORE_ONLY = [
    ({"today": {"room": "99C"}}, BOUNDS),
    ({"dough": {"salt": "18%"}}, BOUNDS),
    ({"stage": [{"name": "a", "until": "2000h"}]}, BOUNDS),
    ({"dough": {"flour": "1,000g"}}, "a comma that may be read in two ways"),
    ({"dough": {"flour": "00000000000001000g"}}, "more digits than a number holds"),
    ({"bowl": {"material": "gold", "mass_g": 900}}, TABLE),
    ({"mixing": {"method": "blender"}}, TABLE),
    ({"flour": [{"kind": "spelt"}]}, TABLE),
    ({"stage": [{**STAGE, "piece": "tub", "material": "gold"}]}, TABLE),
    ({"format": "libferment mix"}, "another document"),
    ({"start": "8"}, TEXT_FORM),
    ({"date": "29.11.2026"}, TEXT_FORM),
    ({"stage": [{**STAGE, "ended": "9h"}]}, TEXT_FORM),
    ({"stage": [{"name": "", "until_h": 1}]}, "an empty name"),
    ({"dough": {"water": "70%", "water_percent": 70}}, "one quantity twice, where its text may be of two"),
    ({"dough": {"salt_g": 9, "salt_percent": 2}}, TWO),
    ({"dough": {"milk_percent": 10}}, TWO),
    ({"dough": {"pieces": 2}}, TWO),
    ({"flour": [{"mass_g": 500, "percent": 50}]}, TWO),
    ({"preferment": {"flour_g": 1, "water_g": 1, "yeast_g": 0.1}}, TWO),
    ({"preferment": {"flour_g": 1, "water_g": 1, "stands_h": 9}}, TWO),
    ({"mixing": {"minutes": 5}}, TWO),
    ({"mixing": {"method": "hand", "work_kj_per_kg": 9}}, TWO),
    ({"mixing": {"net_gain_kj_per_kg": 3, "hydration_kj_per_kg": 15}}, TWO),
    ({"mixing": {"method": "hand", "sd_kj_per_kg": 1}}, TWO),
    ({"stage": [{**STAGE, "until_rise_percent": 80}]}, TWO),
    ({"stage": [{**STAGE, "dough_c": 20, "room_c": 20}]}, TWO),
    ({"stage": [{**STAGE, "swing_k": 2}]}, TWO),
    ({"stage": [{**STAGE, "fan": True}]}, TWO),
    ({"stage": [{**STAGE, "pieces": 2}]}, TWO),
    ({"stage": [{**STAGE, "place": [{"from": "22:00"}]}]}, TWO),
    ({"stage": [STAGE], "seen": [{"stage": "bulk", "at": "9:00"}]}, TWO),
    ({"stage": [STAGE], "seen": [{"stage": "bulk", "rise_percent": 60}]}, TWO),
    ({"stage": [{**STAGE, "acceptable_rise_percent": [90, 60]}]}, "the order of two numbers"),
    ({"stage": [{**STAGE, "room_log": {"time_h": [0, 1], "temperature_c": [20]}}]}, "the length of two lists"),
    ({"stage": [{"name": "a"}]}, OTHERS),
    ({"stage": [STAGE, {**STAGE, "from": "9:00"}]}, OTHERS),
]


@pytest.mark.parametrize("content", WRONG)
def test_the_schema_refuses_what_the_core_refuses(content):
    with pytest.raises(lf.InvalidInput):
        lf.Day.from_json(json.dumps(content))
    assert not DAY_SCHEMA.is_valid(content)


@pytest.mark.parametrize(("content", "reason"), CORE_ONLY)
def test_what_the_core_alone_refuses(content, reason):
    """For a reason that a schema does not tell; where it does, the content belongs to the list above."""
    with pytest.raises(lf.InvalidInput):
        lf.Day.from_json(json.dumps(content))
    assert DAY_SCHEMA.is_valid(content), reason
