"""The commands of a kitchen that learns: what they write, what they say, and what they refuse without writing."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

import libferment as lf
from libferment import _files, _kitchen, cli

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"
BOOK = str(DEMO / "logbook")


@pytest.fixture(autouse=True)
def _own_folder(tmp_path, monkeypatch):
    """Nobody's own kitchen counts."""
    monkeypatch.setattr(_kitchen.click, "get_app_dir", lambda name: str(tmp_path / "config" / name))


def run(*arguments, columns=100):
    result = CliRunner(env={"COLUMNS": str(columns)}).invoke(cli.main, [str(each) for each in arguments])
    assert result.exception is None or isinstance(result.exception, SystemExit), repr(result.exception)
    assert "Traceback" not in result.output
    return result


def answer(*arguments, columns=100):
    result = run(*arguments, columns=columns)
    assert result.exit_code == 0, result.output
    return " ".join(result.stdout.split())


def refusal(*arguments):
    result = run(*arguments)
    assert result.exit_code == 2, result.output
    assert result.stdout == ""
    (line,) = [line for line in result.stderr.splitlines() if line.startswith("error: ")]
    return line


@pytest.fixture
def day(tmp_path):
    """The demo's Sunday with a clock; its comments are to stay."""
    path = tmp_path / "day.toml"
    text = (DEMO / "day.toml").read_text(encoding="utf-8").replace("[today]", 'mixed = "8:30"\n\n[today]', 1)
    path.write_text(text, encoding="utf-8")
    return path


WAYS = {
    "60%": {"rise_percent": 60},
    "not-yet 60%": {"not_yet_percent": 60},
    "not yet 60": {"not_yet_percent": 60},
    "past 60%": {"already_past_percent": 60},
    "23.1C": {"dough_c": pytest.approx(23.1)},
    "73F": {"dough_c": pytest.approx(22.78, abs=0.01)},
    "over-proofed": {"over_proofed": True},
    "collapsed": {"collapsed": True},
}


@pytest.mark.parametrize("what", WAYS)
def test_a_look_is_written_into_the_day(day, what):
    before = day.read_text(encoding="utf-8")
    told = answer("seen", day, "bulk", "11:45", *what.split())
    after = day.read_text(encoding="utf-8")
    assert after.startswith(before.rstrip())
    (look,) = lf.read_day(day).seen
    assert (look.stage, look.at) == ("bulk", "11:45")
    for name, value in WAYS[what].items():
        assert getattr(look, name) == value
    assert f"Written down: bulk, {what} at 11:45." in told
    assert "bulk: ready at" in told
    assert "final proof: ready at" in told
    assert "(before: " in told or "dough" in str(WAYS[what])


def test_a_height_between_two_times_and_a_second_look(day):
    answer("seen", day, "bulk", "90min", "6.5cm", "--start-height", "5cm")
    answer("seen", day, "bulk", "12:00", "50%", "--between", "11:30")
    first, second = lf.read_day(day).seen
    assert (first.height_cm, first.start_height_cm, first.at) == (6.5, 5, "90min")
    assert (second.between, second.rise_percent) == (["11:30", "12:00"], 50)
    assert [look.was for look in lf.log_of(lf.read_day(day)).seen] == ["height", "past"]


def test_the_new_forecast_is_that_of_the_document(day):
    result = run("seen", day, "bulk", "11:45", "60%", "--json")
    told = json.loads(result.stdout)
    asked = lf.ask({"ask": "forecast", "day": lf.read_day(day)})
    assert [stage["ready_h"] for stage in told["stages"]] == [stage["ready_h"] for stage in asked["stages"]]
    assert told["effective_draws"] < 512


def test_a_stage_ends_and_its_end_is_written_once(day):
    told = answer("ended", day, "bulk", "13:20")
    assert "final proof: ready at" in told
    assert "bulk: ready" not in told
    text = day.read_text(encoding="utf-8")
    assert text.count("ended = ") == 1
    assert 'room = "14C"             # the larder' in text
    answer("ended", day, "bulk", "13:30")
    assert lf.read_day(day).stage[0].ended == "13:30"
    assert day.read_text(encoding="utf-8").count("ended = ") == 1
    answer("seen", day, "final proof", "14:10", "20%")
    (look,) = lf.log_of(lf.read_day(day)).seen
    assert (look.stage, look.rise_percent) == ("final proof", 20)
    assert look.time_h == pytest.approx(14 + 1 / 6)


def test_a_look_after_midnight(day):
    text = day.read_text(encoding="utf-8").replace('mixed = "8:30"', 'mixed = "21:00"').replace('"14C"', '"6C"')
    day.write_text(text, encoding="utf-8")
    answer("seen", day, "bulk", "1:30", "20%")
    assert lf.log_of(lf.read_day(day)).seen == [lf.Sighting("bulk", 25.5, 20)]


def test_what_is_refused_is_not_written(day):
    before = day.read_text(encoding="utf-8")
    assert 'STAGE: no stage is called "rise"; known: bulk, final proof' in refusal("seen", day, "rise", "11:00", "60%")
    assert 'WHAT: "soon" says nothing of the dough; write 60%, not-yet 60%' in refusal(
        "seen", day, "bulk", "11:00", "soon"
    )
    assert '"11" is no time' in refusal("seen", day, "bulk", "11", "60%")
    assert "end" in refusal("seen", day, "final proof", "16:00", "60%")  # when the bulk ended is not known
    assert "start_height_cm: a height says nothing" in refusal("seen", day, "bulk", "11:00", "6cm")
    assert '--start-height: "5" is no height; write 5cm' in refusal(
        "seen", day, "bulk", "11:00", "6cm", "--start-height", "5"
    )
    assert "no stage is called" in refusal("ended", day, "rise", "11:00")
    assert "ended" in refusal("ended", day, "bulk", "soon")
    assert day.read_text(encoding="utf-8") == before
    answer("seen", day, "bulk", "12:00", "60%")
    before = day.read_text(encoding="utf-8")
    assert "a rise does not fall" in refusal("seen", day, "bulk", "12:30", "not-yet", "40%")
    assert day.read_text(encoding="utf-8") == before


def test_a_slip_is_said_when_it_is_entered(day):
    told = answer("seen", day, "bulk", "3min", "90%")
    assert "is seen where" in told
    assert "is it a slip?" in told


def test_a_full_disk_leaves_the_day_as_it_was(day, monkeypatch):
    before = day.read_text(encoding="utf-8")

    def full(*_arguments, **_options):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(_files.os, "fdopen", full)
    assert "cannot be written: No space left on device" in run("seen", day, "bulk", "12:00", "60%").stderr
    assert day.read_text(encoding="utf-8") == before
    assert [each.name for each in day.parent.iterdir() if each.is_file()] == ["day.toml"]


def test_a_logbook_becomes_a_kitchen(tmp_path):
    path = tmp_path / "mine.json"
    told = answer("learn", BOOK, "--kitchen", path)
    kitchen = lf.Kitchen.load(path)
    assert kitchen == lf.calibrate(BOOK)
    assert f"Learned from {len(kitchen.history)} bakes with 15 looks; saved as" in told
    assert "Your yeast gasses" in told
    assert "A bulk like the last one is ready, in nine of ten, within" in told
    assert 'It knows the yeast "cubes of October"' in told
    assert "days old" in told
    assert len(run("learn", BOOK, "--kitchen", path, columns=80).stdout.splitlines()) <= 15
    everything = json.loads(run("learn", BOOK, "--kitchen", path, "--json").stdout)
    assert len(everything["residuals"]) == 15


def test_every_command_takes_the_kitchen_and_names_the_own_one(tmp_path, day):
    path = tmp_path / "mine.json"
    answer("learn", BOOK, "--kitchen", path)
    plain, learned = (json.loads(run("rise", day, "--json", *more).stdout) for more in ([], ["--kitchen", path]))
    expected = lf.simulate(lf.process_of(lf.read_day(day)), kitchen=lf.Kitchen.load(path), every_min=0)
    assert learned["stages"][0]["end_h"] == expected.stages[0].end_h != plain["stages"][0]["end_h"]
    assert "Times are by your kitchen, learned from 5 bakes" in answer("rise", day, "--kitchen", path)
    until = ["rise", day, "--until", "17:00", "--json"]
    spans = []
    for more in ([], ["--kitchen", path]):
        early, late = json.loads(run(*until, *more).stdout)["forecast"]["stages"][1]["likely_h"]
        spans.append(late - early)
    assert spans[1] < 0.6 * spans[0]
    one = ["rise", "--rise", "100", "--dough", "24C", "--yeast", "compressed", "--yeast-percent", "1", "--json"]
    hours = [json.loads(run(*one, *more).stdout)["hours"] for more in ([], ["--kitchen", path])]
    assert hours[1] < hours[0]
    # One in the configuration folder is used, and named; a frozen set goes back.
    answer("learn", BOOK)
    result = run("rise", day, "--json")
    assert json.loads(result.stdout) == learned
    assert result.stderr.startswith("by your kitchen, ")
    assert json.loads(run("rise", day, "--json", "--kitchen", "2026-2").stdout) == plain
    for command in (["water", day], ["friction", day], until):
        assert run(*command).stderr.startswith("by your kitchen, ")


def test_measured_doughs_change_the_water(tmp_path):
    folder = tmp_path / "book"
    folder.mkdir()
    text = (DEMO / "day.toml").read_text(encoding="utf-8").split("[[batch]]")[0]
    for number, measured in enumerate(("22.4C", "22.9C")):
        today = text.replace("[water]", '[water]\npoured = "16C"').replace(
            "[dough]  ", f'[dough]\nmeasured = "{measured}"  '
        )
        (folder / f"{number}.toml").write_text(today, encoding="utf-8")
    told = answer("learn", folder, "--kitchen", tmp_path / "mine.json")
    assert "Mixing (stand_mixer) adds" in told
    plan = tmp_path / "plan.toml"
    plan.write_text(text, encoding="utf-8")
    water = [
        json.loads(run("water", plan, "--json", *more).stdout)["water_c"]
        for more in ([], ["--kitchen", tmp_path / "mine.json"])
    ]
    assert water[1] != pytest.approx(water[0], abs=0.2)


def test_a_logbook_with_a_day_that_cannot_be_read(tmp_path):
    folder = tmp_path / "book"
    shutil.copytree(BOOK, folder)
    (folder / "2026-10-11.toml").write_text("title = 3", encoding="utf-8")
    told = answer("learn", folder, "--kitchen", tmp_path / "mine.json")
    assert "Learned from 4 bakes" in told
    assert "not read: 2026-10-11.toml" in told or "2026-10-11.toml" in told
    assert "nothing" in refusal("learn", tmp_path / "nothing")
    (tmp_path / "empty").mkdir()
    assert "error: " in refusal("learn", tmp_path / "empty")


def test_kitchens_that_cannot_be_read(tmp_path, day):
    path = tmp_path / "mine.json"
    answer("learn", BOOK, "--kitchen", path)
    content = json.loads(path.read_text(encoding="utf-8"))
    path.write_text(json.dumps(content | {"version": 9}), encoding="utf-8")
    assert "--kitchen: " in refusal("rise", day, "--kitchen", path)
    path.write_text("{", encoding="utf-8")
    assert "mine.json" in refusal("rise", day, "--kitchen", path)
    assert "there is no file" in refusal("rise", day, "--kitchen", tmp_path / "other.json")
    assert "no parameter set is named" in refusal("rise", day, "--kitchen", "2031-1")
    own = _kitchen.own_path()
    own.parent.mkdir(parents=True)
    own.write_text("{}", encoding="utf-8")
    assert run("rise", day, "--kitchen", "2026-2").exit_code == 0


def test_a_plot(tmp_path):
    pytest.importorskip("matplotlib")
    answer("learn", BOOK, "--kitchen", tmp_path / "mine.json", "--plot", tmp_path / "mine.svg")
    assert "<svg" in (tmp_path / "mine.svg").read_text(encoding="utf-8")
    assert (
        "cannot be drawn" in run("learn", BOOK, "--kitchen", tmp_path / "mine.json", "--plot", tmp_path / "a.b").stderr
    )
