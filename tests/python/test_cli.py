"""The command line: answers, JSON, exit codes and what it says to a wrong input. Never a traceback."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

import libferment as lf
from libferment import _quantities as quantities
from libferment import cli
from libferment import day as days

ROOT = Path(__file__).resolve().parents[2]
DEMO = str(ROOT / "data" / "demo" / "day.toml")
RULE = ["--flour", "20C", "--room", "21C", "--friction", "2K"]
ONE = ["--dough", "18C", "--yeast-percent", "0.6"]


def run(*arguments):
    """The finished command, with its output as one text and its error output as another."""
    result = CliRunner(env={"COLUMNS": "200"}).invoke(cli.main, list(arguments))
    assert result.exception is None or isinstance(result.exception, SystemExit), repr(result.exception)
    assert "Traceback" not in result.output
    return result


def answer(*arguments):
    result = run(*arguments)
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
    return result.stderr


@pytest.fixture
def write(tmp_path):
    def write_day(text):
        path = tmp_path / "day.toml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write_day


# ---- water -----------------------------------------------------------------------------------------------------------


def test_water_by_options():
    text = answer("water", "--desired", "24C", *RULE)
    assert re.search(r"desired dough temperature, × 3 +│ +24.0 °C \(75 °F\)", text)
    assert re.search(r"less flour +│ +20.0 °C \(68 °F\)", text)
    assert re.search(r"less friction +│ +2.0 K \(4 °F\)", text)
    assert re.search(r"water +│ +29.0 °C \(84 °F\)", text)
    document = as_json("water", "--desired", "24C", *RULE)
    assert document["water_c"] == lf.water_by_factor_rule(24, flour_c=20, room_c=21, friction_k=2)
    assert document["temperatures_c"] == {"flour": 20, "room": 21}
    assert (document["desired_c"], document["friction_k"], document["ice_g"]) == (24, 2, None)


def test_water_with_a_preferment():
    arguments = ["water", "--desired", "24C", *RULE, "--preferment", "18C"]
    assert re.search(r"× 4 .*less preferment +│ +18.0 °C", answer(*arguments), re.DOTALL)
    expected = lf.water_by_factor_rule(24, flour_c=20, room_c=21, friction_k=2, preferment_c=18)
    assert as_json(*arguments)["water_c"] == expected


def test_water_in_fahrenheit_is_the_same():
    in_celsius = as_json("water", "--desired", "25C", "--flour", "20C", "--room", "15C", "--friction", "5K")
    in_fahrenheit = as_json("water", "--desired", "77F", "--flour", "68F", "--room", "59F", "--friction", "9F")
    assert in_celsius == in_fahrenheit
    assert in_celsius["water_c"] == 35


def test_water_of_the_demo_day():
    text = answer("water", DEMO)
    assert text.startswith("Four small loaves, a cool Saturday (invented)")
    assert re.search(r"water +│ +34.5 °C \(94 °F\)", text)
    assert re.search(r"amount +│ +612 g", text)
    assert "The tap gives 11.0 °C (52 °F): warm the water by 23.5 K." in text
    document = as_json("water", DEMO)
    assert document["water_c"] == days.water_of(days.read_day(DEMO)) == 34.5
    assert document["water_g"] == 900 * 68 / 100


def test_options_count_before_the_day_file():
    document = as_json("water", DEMO, "--flour", "21C", "--desired", "26C", "--friction", "0K", "--water-g", "500")
    assert document["water_c"] == lf.water_by_factor_rule(26, flour_c=21, room_c=18, friction_k=0)
    assert document["water_g"] == 500


def test_ice_when_the_tap_is_too_warm():
    arguments = ["water", "--desired", "24C", "--flour", "30C", "--room", "30C", "--friction", "6K", "--tap", "20C"]
    arguments += ["--water-g", "600"]
    ice_g = lf.ice_by_trade_rule(600, tap_c=20, wanted_c=6)
    assert as_json(*arguments)["ice_g"] == ice_g
    text = answer(*arguments)
    assert re.search(rf"of the water, as ice +│ +{ice_g:.0f} g", text)
    assert re.search(rf"and from the tap +│ +{600 - ice_g:.0f} g", text)
    assert "The tap gives" not in text
    demo_ice_g = lf.ice_by_trade_rule(612, tap_c=40, wanted_c=34.5)
    assert as_json("water", DEMO, "--tap", "40C")["ice_g"] == demo_ice_g


def test_a_tap_that_is_too_warm_is_told_without_an_amount_too():
    text = answer("water", "--desired", "24C", "--flour", "30C", "--room", "30C", "--friction", "6K", "--tap", "20C")
    share = lf.ice_by_trade_rule(100, tap_c=20, wanted_c=6)
    assert f"The tap gives 20.0 °C (68 °F): take {share:.1f} % of the water as ice." in text


@pytest.mark.parametrize(
    ("desired", "flour", "code", "words"),
    [
        ("20C", "45C", "water_below_freezing", "does not exist as water"),
        ("24C", "40C", "water_cold_for_instant", "damages instant yeast"),
        ("30C", "17C", "water_warm_for_yeast", "too warm to wet yeast in"),
        ("30C", "12C", "water_hot_for_yeast", "harms yeast within minutes"),
        ("30C", "7C", "water_scalds", "can scald skin"),
        ("30C", "2C", "water_kills_yeast", "kills yeast; do not use it"),
    ],
)
def test_notices_of_the_water(desired, flour, code, words):
    arguments = ["water", "--desired", desired, "--flour", flour, "--room", "25C", "--friction", "2K"]
    notices = {notice["code"]: notice for notice in as_json(*arguments)["notices"]}
    assert words in notices[code]["text"]
    assert f"{notices[code]['severity']}: {notices[code]['text']}" in answer(*arguments)


def test_notices_of_another_yeast(write):
    path = write('[dough]\nyeast = "compressed"\n')
    cold = ["--desired", "24C", "--flour", "40C", "--room", "25C", "--friction", "2K"]
    assert as_json("water", path, *cold)["notices"] == []


def test_what_the_water_needs():
    text = refusal(2, "water", "--desired", "24C", "--flour", "20C")
    for name in ("[today] room", "[water] friction"):
        assert name in text
    assert "measure and write it, or give it as an option" in text


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


# ---- a day of stages -------------------------------------------------------------------------------------------------


def test_the_stages_of_the_demo_day():
    plans = days.plan_stages(days.read_day(DEMO))
    stages = as_json("rise", DEMO)["stages"]
    assert [stage["name"] for stage in stages] == ["bulk", "bench rest", "final proof"]
    for stage, plan in zip(stages, plans, strict=True):
        for name in ("name", "dough_c", "start_h", "hours", "rise_percent", "be_back_by_h", "folds_done", "ready_h"):
            assert stage[name] == getattr(plan, name)
    text = answer("rise", DEMO)
    for plan in plans:
        cells = (
            plan.name,
            f"{plan.dough_c:.1f} °C",
            f"{plan.rise_percent:.0f} %",
            *map(quantities.clock_text, (plan.hours, plan.ready_h, plan.be_back_by_h)),
        )
        assert re.search(r" +│ +".join(map(re.escape, cells)), text)


def test_options_of_a_days_stages():
    document = as_json("rise", DEMO, "--dough", "20C", "--yeast-percent", "0.3", "--yeast", "active_dry")
    day = days.at_dough_temperature(days.read_day(DEMO), 20)
    changed = days.Day(**{**day.__dict__, "yeast": "active_dry", "dough": {**day.dough, "yeast_percent": 0.3}})
    assert [stage["hours"] for stage in document["stages"]] == [plan.hours for plan in days.plan_stages(changed)]


def test_a_stage_that_is_ready_before_a_fold_says_so(write):
    path = write(
        "[dough]\nyeast_percent = 0.7\n"
        '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 50\nfolds_h = [0.1, 0.2, 5, 6]\n'
    )
    assert "bulk: ready before fold 3 of 4; leave the rest out." in answer("rise", path)
    assert as_json("rise", path)["stages"][0]["folds_done"] == 2
    assert "leave the rest out" not in answer("rise", DEMO)


def test_perishable_dough_is_warned_of(write):
    path = write(
        "[dough]\nyeast_percent = 0.1\nperishable = true\n"
        '[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 90\n'
    )
    assert "warning: a dough with egg, milk or other perishable food held for 7.38 h" in answer("rise", path)
    assert [notice["code"] for notice in as_json("rise", path)["notices"]] == ["perishable_held"]


def test_a_rise_that_a_stage_never_reaches(write):
    path = write('[dough]\nyeast_percent = 0.7\n[[stage]]\nname = "bulk"\ndough = "23C"\nuntil_rise_percent = 400\n')
    text = refusal(1, "rise", path)
    reach = lf.reachable_rise(dough_c=23, yeast_percent=0.7)
    assert f'stage "bulk": a rise of 400 % is never reached; this dough rises by less than {reach:.0f} %' in text


@pytest.mark.parametrize("words", ["[/bold]", "[red]", "a [/] b", ":smile:", "[link=x]", "50 % [x]"])
def test_titles_and_names_are_printed_as_they_are(write, words):
    path = write(
        f"title = '{words}'\n[today]\nflour = '20C'\nroom = '20C'\n[water]\ndesired = '24C'\nfriction = '2K'\n"
        f"[dough]\nyeast_percent = 0.7\n[[stage]]\nname = '{words}'\nuntil_h = 1\nfolds_h = []\n"
    )
    assert words in answer("water", path)
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
        (["rise", str(ROOT)], "is a directory"),
        (["rise", "--ries", "100"], "No such option"),
        (["bake"], "No such command"),
    ],
)  # fmt: skip
def test_a_bad_input_ends_with_2(arguments, words):
    assert words in refusal(2, *arguments)


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
    assert path in refusal(2, "rise", path)
    assert path in refusal(2, "water", path)


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
    ["20C", "68F", "3K", "90min", "nan", "1e400", "-1", "0.5", "100", "9" * 400 + "C", "instant"]
)


@given(
    st.sampled_from(["water", "rise"]),
    st.lists(
        st.tuples(
            st.sampled_from(
                [option.opts[0] for name in ("water", "rise") for option in cli.main.commands[name].params]
            ),
            words,
        ),
        max_size=6,
    ),
    st.booleans(),
)
def test_any_options_are_answered_or_refused(command, options, in_json):
    result = run(command, *(f"{name}={value}" for name, value in options), *(["--json"] if in_json else []))
    assert result.exit_code in (0, 1, 2)
    if result.exit_code == 0 and in_json:
        json.loads(result.stdout)
    if result.exit_code:
        assert result.stderr


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
        (1, ["rise", "--rise", "900", *ONE]),
        (2, ["rise", "--rise", "100", "--dough", "78C", "--yeast-percent", "1"]),
        (2, ["water", "nowhere.toml"]),
    ):
        finished = program(*arguments)
        assert finished.returncode == code, finished
        assert "Traceback" not in finished.stderr
        assert bool(finished.stdout) == (code == 0)


def test_help_names_every_option():
    for command in ("water", "rise"):
        text = answer(command, "--help")
        for option in cli.main.commands[command].params:
            if option.param_type_name == "option":
                assert option.opts[0] in text
                assert option.help
    assert "not safe to eat" in answer("--help")
    assert lf.__version__ in answer("--version")
