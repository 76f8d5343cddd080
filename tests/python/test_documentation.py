"""What the documentation says is so: every name has its words, and what the README shows is what is printed."""

import contextlib
import io
import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

import libferment as lf
from libferment import _core, _errors

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
FUNCTIONS = sorted(n for n in lf.__all__ if callable(getattr(lf, n)) and not isinstance(getattr(lf, n), type))
CLASSES = sorted(n for n in lf.__all__ if isinstance(getattr(lf, n), type))
TAKES_NOTHING = {"airs", "bowl_materials", "fields", "ingredients", "mixing_methods", "parameters", "worktops"}
# Units as the docstrings write them.
# They read and word what other functions reckon.
OF_A_DAY = {"ask", "learned_mixing", "mean_of_batches", "mix_of", "moment_h", "process_of", "read_day", "water_of"}
OF_A_DAY |= {"assumptions_of", "has_clock", "moment_text"}
RAISES_NOTHING = {"assumptions_of", "has_clock", "moment_text"}
UNITS = (
    "°C",
    "°F",
    " K",
    "K:",
    "%",
    "percent",
    " h",
    "hours",
    "mmol",
    "Pa",
    "mol/",
    " m",
    " g",
    "ratio",
    "share",
    "shares",
)


def test_all_is_exact():
    assert len(lf.__all__) == len(set(lf.__all__))
    assert [name for name in lf.__all__ if not hasattr(lf, name)] == []
    offered = {
        name
        for module in (_core, _errors)
        for name, value in vars(module).items()
        if getattr(value, "__module__", None) in (_core.__name__, _errors.__name__) and not name.startswith("_")
    }
    written_in_python = {
        "Logbook",
        "Table",
        "TemperatureLog",
        "calibrate",
        "calibration",
        "compare_laws",
        "read_day",
        "read_logbook",
        "read_temperature_log",
    }
    assert set(lf.__all__) == offered | {"__version__"} | written_in_python
    imported = {name for name in vars(lf) if not name.startswith("_")}
    assert imported - set(lf.__all__) <= {
        "annotations",
        "cli",
        "day",
        "learn",
        "logbook",
        "temperature_log",
    }  # modules


def words_of(name):
    """A docstring without the line of the signature."""
    text = getattr(lf, name).__doc__
    assert text, f"{name} has no docstring"
    return re.sub(rf"\A{name}\(.*\n", "", text).strip()


@pytest.mark.parametrize("name", FUNCTIONS)
def test_every_function_says_what_it_raises_and_its_units(name):
    words = words_of(name)
    assert len(words) > 20
    if name in TAKES_NOTHING:
        return
    if name not in RAISES_NOTHING:
        assert "Raises" in words
        assert "InvalidInput" in words or "as hours_to_rise" in words
    without_source = ("cautions", "over_proof_ratio", "explain", "read_temperature_log")
    assert "ource" in words or name in without_source or name in OF_A_DAY
    assert name in OF_A_DAY or any(unit in words for unit in UNITS)


@pytest.mark.parametrize("name", CLASSES)
def test_every_class_and_its_members_say_what_they_are(name):
    assert len(words_of(name)) > 10
    for member, value in vars(getattr(lf, name)).items():
        if callable(value) and not member.startswith("_"):
            assert value.__doc__, f"{name}.{member}"


@pytest.mark.parametrize("name", sorted(f.name for f in [*lf.fields(), *lf.parameters()]))
def test_every_field_says_what_it_means(name):
    (field,) = [f for f in [*lf.fields(), *lf.parameters()] if f.name == name]
    assert field.label
    assert field.meaning
    assert field.low < field.high
    assert field.initial is None or field.low <= field.initial <= field.high
    if field.quantity in ("temperature", "temperature_difference", "percent", "duration", "mass", "length"):
        unit = {"temperature": "°C", "temperature_difference": "K", "percent": "%", "duration": "h", "mass": "g"}
        assert field.unit in (unit.get(field.quantity), *(("m", "cm") if field.quantity == "length" else ()))


def test_names_carry_their_unit():
    endings = {"°C": "_c", "K": "_k", "%": "_percent", "h": "_h", "g": "_g", "m": "_m"}
    for field in [*lf.fields(), *lf.parameters()]:
        ending = endings.get(field.unit)
        assert ending is None or field.name.endswith(ending), field.name


def blocks(language):
    """Blocks of one language in the README, each with the block of text right after it, if there is one."""
    found = re.findall(rf"```{language}\n(.*?)```\n(?:\n```text\n(.*?)```)?", README, re.DOTALL)
    assert found, f"the README has no {language} block"
    return found


@pytest.mark.parametrize(("code", "shown"), blocks("python"))
def test_python_in_the_readme_prints_what_it_shows(code, shown):
    printed = io.StringIO()
    with contextlib.redirect_stdout(printed):
        exec(compile(code, "README.md", "exec"), {})
    if "print(" in code:
        assert shown, "the README shows no output for this block"
    assert printed.getvalue() == shown


def test_commands_in_the_readme_print_what_it_shows():
    shown = {}
    for block in re.findall(r"```text\n(\$ .*?)```", README, re.DOTALL):
        for command, output in re.findall(r"^\$ (.*)\n((?:(?!\$ ).*\n)*)", block, re.MULTILINE):
            shown[command] = output
    assert shown, "the README shows no command"
    for command, output in shown.items():
        name, *arguments = shlex.split(command)
        assert name == "libferment"
        finished = subprocess.run(
            [sys.executable, "-m", "libferment.cli", *arguments],
            cwd=ROOT,
            env={**os.environ, "COLUMNS": "90", "PYTHONIOENCODING": "utf-8"},
            capture_output=True,
            encoding="utf-8",
            check=True,
        )
        printed = [line.rstrip() for line in finished.stdout.rstrip().splitlines()]
        assert printed == [line.rstrip() for line in output.rstrip().splitlines()]


def test_commands_in_the_readmes_sentences_run():
    commands = re.findall(r"`(libferment [^`]+)`", README)
    assert len(commands) >= 2
    for command in commands:
        arguments = shlex.split(" ".join(command.split()))[1:]
        finished = subprocess.run(
            [sys.executable, "-m", "libferment.cli", *arguments], cwd=ROOT, capture_output=True, check=False
        )
        assert finished.returncode == 0, finished.stderr.decode()


def test_names_in_the_readme_exist():
    for name in re.findall(r"`?lf\.(\w+)", README):
        assert name in lf.__all__, name
