"""What goes out: to narrow screens, poor encodings, full disks and closed pipes, and without control characters."""

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from libferment import _output

ROOT = Path(__file__).parents[2]
DEMO = "data/demo/day.toml"
COMMANDS = {
    "help": ["--help"],
    "help of a command": ["rise", "--help"],
    "version": ["--version"],
    "water": ["water", DEMO],
    "rise": ["rise", DEMO],
    "rise as JSON": ["rise", DEMO, "--json"],
    "friction": ["friction", DEMO],
    "until": ["rise", DEMO, "--mixed", "8:30", "--until", "17:00"],
    "one rise": ["rise", "--rise", "100", "--dough", "25C", "--yeast-percent", "0.6"],
    "a piece": ["rise", "--rise", "80", "--dough", "25C", "--room", "16C", "--yeast-percent", "0.6"],
}
EVERY = pytest.mark.parametrize("arguments", COMMANDS.values(), ids=COMMANDS)


def run(arguments, stdout=subprocess.PIPE, **environment):
    code = "import sys; from libferment.cli import main; main()"
    kept = {key: value for key, value in os.environ.items() if not key.startswith("PYTHON")}
    return subprocess.run(
        [sys.executable, "-c", code, *arguments],
        cwd=ROOT,
        env={**kept, "COLUMNS": "100", **environment},
        stdout=stdout,
        stderr=subprocess.PIPE,
        check=False,
    )


@EVERY
def test_a_full_disk_is_told_in_one_line(arguments):
    full = Path("/dev/full")
    if not full.exists():
        pytest.fail("this test needs /dev/full, which Linux has")
    with full.open("wb") as disk:
        done = run(arguments, stdout=disk)
    assert done.returncode == _output.OUTPUT_FAILED
    assert done.stderr.decode() == "error: the output cannot be written: No space left on device\n"


@EVERY
def test_a_reader_that_leaves_is_no_error(arguments):
    reading, writing = os.pipe()
    os.close(reading)
    done = run(arguments, stdout=writing)
    os.close(writing)
    assert done.returncode != 0
    assert done.stderr == b""


@EVERY
@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252", "utf-8"])
def test_every_encoding_shows_the_answer(arguments, encoding):
    done = run(arguments, PYTHONIOENCODING=encoding)
    assert done.returncode == 0
    assert done.stderr == b""
    shown, whole = done.stdout.decode(encoding), run(arguments, PYTHONIOENCODING="utf-8").stdout.decode()
    assert re.findall(r"\d+", shown) == re.findall(r"\d+", whole)
    if "--json" not in arguments:
        assert "?" not in shown.replace("What", "")


def test_signs_that_are_lacking_are_spelt():
    shown = run(["rise", DEMO], PYTHONIOENCODING="ascii").stdout.decode("ascii")
    assert "21.0 -> 17.2 deg C" in shown
    assert "deg C" not in run(["rise", DEMO], PYTHONIOENCODING="cp1252").stdout.decode("cp1252")


@EVERY
@pytest.mark.parametrize("columns", ["0", "1", "20", "30", "41", "60", "80"])
def test_no_number_is_lost_or_broken(arguments, columns):
    of = {each: run(arguments, COLUMNS=each, PYTHONIOENCODING="utf-8").stdout.decode() for each in ("200", columns)}
    wide, narrow = of["200"], of[columns]
    numbers = set(re.findall(r"\d[\d.:]*(?: (?:°C|K|g|kg|h|min|%)(?!\w))?", wide))
    if {"--json", "--help", "--version"} & set(arguments):  # documents, and screens of the argument parser
        assert narrow.strip()
        return
    assert {number for number in numbers if number not in narrow} == set()
    if columns not in ("0", "1"):
        assert max(len(line.rstrip()) for line in narrow.splitlines()) <= int(columns)


def test_a_sheet_that_does_not_fit_becomes_lines():
    shown = run(["rise", DEMO], COLUMNS="20", PYTHONIOENCODING="utf-8").stdout.decode()
    assert "bulk\n" in shown
    assert "  rise: 85 %\n" in shown
    assert "━" not in shown


HOSTILE = {
    "escape": "\x1b[31mred",
    "title of the window": "\x1b]0;owned\x07",
    "carriage return": "safe\rforged",
    "C1": "\x9b31m",
    "right to left": "\u202eesrever",
}


@pytest.mark.parametrize("words", HOSTILE.values(), ids=HOSTILE)
def test_control_characters_stay_out_of_the_terminal(tmp_path, words):
    written = "".join(f"\\u{ord(c):04x}" if not c.isascii() or ord(c) < 32 else c for c in words)
    path = tmp_path / "day.toml"
    stage = f'[[stage]]\nname = "{written}"\ndough = "24C"\n'
    for end in ("until_h = 2", "until_rise_percent = 900"):  # an answer, and an error that names the stage
        path.write_text(f'title = "{written}"\n[dough]\nyeast_percent = 0.5\n{stage}{end}\n', encoding="utf-8")
        for columns in ("100", "20"):
            done = run(["rise", str(path)], PYTHONIOENCODING="utf-8", COLUMNS=columns)
            out = done.stdout.decode() + done.stderr.decode()
            assert done.returncode == (0 if end == "until_h = 2" else 1)
            assert not re.search("[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]", out)
            assert f"<{ord(re.search('[^ -~]', words)[0]):04X}>" in out


def test_what_was_typed_is_shown_without_control_characters():
    done = run(["rise", "--dough", "\x1b[31m"], PYTHONIOENCODING="utf-8")
    assert done.returncode == 2
    assert b"\x1b" not in done.stderr
