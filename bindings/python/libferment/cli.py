"""The command ``libferment``: water temperature and rise times, from options or a day file.

Options are entries of a day: each is put where it stands in a day file, and the library reads it there.
"""

from __future__ import annotations

import contextlib
import json
import re
import sys
from collections.abc import Callable, Mapping
from types import SimpleNamespace
from typing import Any

import click

import libferment as lf
from libferment import _core
from libferment._documents import text_of
from libferment._kitchen import chosen_kitchen, kitchen_option, with_kitchen
from libferment._output import is_utf, output, plain
from libferment._screen import (
    print_dough,
    print_forecast,
    print_mixing,
    print_piece,
    print_plan,
    print_stages,
)
from libferment.day import in_writing, read_content

Content = dict[str, Any]
_NUMBER = re.compile(r"\s*[-+−]?\d+([.,]\d+)?\s*%?\s*")
_WEIGHT = re.compile(r"[-+−]?[\d.,]+\s*(g|kg|oz|lb)?", re.IGNORECASE)
_TWO_WAYS = re.compile(r"\d{1,3}(,\d{3})+")
_UNIT = re.compile(r"_(c|k|h|g|m|percent)$")

# Where an option stands in a day: its table, and its key with the unit in the name.
_WATER = {
    "flour": ("today", "flour_c"),
    "room": ("today", "room_c"),
    "tap": ("today", "tap_c"),
    "ice": ("today", "ice_c"),
    "preferment": ("today", "preferment_c"),
    "desired": ("water", "desired_c"),
    "friction": ("water", "friction_k"),
    "friction_at": ("water", "friction_at_c"),
    "flour_g": ("dough", "flour_g"),
    "water_g": ("dough", "water_g"),
    "bowl": ("bowl", "material"),
    "bowl_g": ("bowl", "mass_g"),
    "mixing": ("mixing", "method"),
    "minutes": ("mixing", "minutes"),
    "net_gain": ("mixing", "net_gain_kj_per_kg"),
    "rest": ("mixing", "rest_h"),
    "yeast_water": ("yeast_water", "temperature_c"),
    "yeast_water_g": ("yeast_water", "water_g"),
}
_DOUGH = {
    name: ("dough", name)
    for name in ("yeast", "yeast_percent", "salt_percent", "water_percent", "sugar_percent", "gluten_percent")
} | {"altitude_m": ("dough", "altitude_m"), "mixed": ("", "mixed"), "start": ("", "start")}
_STAGE = {
    "room": "room_c",
    "refrigerator": "refrigerator_c",
    "proof_box": "proof_box_c",
    "room_log": "room_log",
    "dough_log": "dough_log",
    "piece": "piece",
    "piece_g": "piece_g",
    "cover": "cover",
    "rise": "until_rise_percent",
    "after": "until_h",
}
_KINDS = {"yeast", "piece"}
"""Stems that are names of their own."""
_COUNTS = {"minutes", "net_gain_kj_per_kg"}
"""Numbers whose key keeps its unit."""
_INSTEAD = {
    "water_g": "water_percent",
    "water_percent": "water_g",
    "salt_percent": "salt_g",
    "yeast_percent": "yeast_g",
    "sugar_percent": "sugar_g",
    "gluten_percent": "gluten_g",
}
_ADVICE = {
    "net_gain_kj_per_kg": "find it from batches: `libferment friction`",
    "batch": "write a [[batch]] with dough, water, flour and room, or give --dough, --water, --flour and --room",
}
"""What to do, where the library's advice is for programs."""


def _put(table: Content, key: str, text: str) -> None:
    """Put an option into a table as the file would have it: a number, or a text with its unit."""
    stem = _UNIT.sub("", key)
    for other in {key, stem, _INSTEAD.get(key, key)} - _KINDS:
        table.pop(other, None)
    text = text.strip()
    if key.endswith("_percent") and not _NUMBER.fullmatch(text):
        raise lf.InvalidInput(f'"{text}" is not a number', path=key, advice="write the number alone, such as 0.6")
    if key.endswith("_g") and not _WEIGHT.fullmatch(text):
        raise lf.InvalidInput(f'"{text}" is no weight', path=key, advice="write for example 500g or 18oz")
    is_number = _NUMBER.fullmatch(text) and not (key.endswith("_g") and _TWO_WAYS.fullmatch(text))
    if is_number and (key in _COUNTS or key.endswith(("_g", "_m", "_percent"))):
        table[key] = float(text.replace("%", "").replace(",", ".").replace("−", "-"))
    else:
        table[stem] = text


def _grams(text: str) -> float:
    """Read a weight for a key whose stem is taken."""
    table: Content = {}
    _put(table, "mass_g", text)
    grams = lf.DayFlour.from_json(text_of(table)).mass_g
    return 0.0 if grams is None else grams


def _hours(text: str) -> float:
    """Read a time such as 9h or 90min."""
    hours = lf.DayStage.from_json(text_of({"name": "until", "until": text})).until_h
    return 0.0 if hours is None else hours


def _degrees_c(text: str) -> float:
    """Read the temperature of a dough."""
    measured_c = lf.DayDough.from_json(text_of({"measured": text})).measured_c
    return 0.0 if measured_c is None else measured_c


def _spelt(name: str) -> str:
    return f"--{name.replace('_', '-')}"


class _Commands(click.Group):
    """Turns our errors into a line on standard error: 2 for a bad input, 1 for a question without an answer."""

    def main(self, *args: Any, **options: Any) -> Any:
        with output():
            return super().main(*args, **options)

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except click.ClickException as problem:
            vars(problem)["message"] = plain(problem.message)  # it names what was typed
            raise
        except lf.Error as problem:
            print(f"error: {plain(in_writing(problem))}", file=sys.stderr)
            ctx.exit(2 if isinstance(problem, ValueError) else 1)


class Day:
    """A day that is asked about: its file's content with the options in it."""

    def __init__(self, day_file: str | None, options: Mapping[tuple[str, str], str]) -> None:
        """Read the file, if there is one. `options` says which option stands where."""
        self.path = day_file
        self.content = read_content(day_file) if day_file else {}
        self._options = dict(options)
        self._given: set[tuple[str, str]] = set()
        if not all(isinstance(self.content.get(table, {}), dict) for table, _ in options):
            _ = self.day  # tells which table is none

    def stands(self, option: str, where: tuple[str, str]) -> None:
        """Say where an option stands that was given, in the day or beside it."""
        self._options[where] = option
        self._given.add(where)

    def put(self, where: tuple[str, str], text: str) -> None:
        """Let an option count before the file."""
        table, key = where
        self._given.add(where)
        try:
            _put(self.content.setdefault(table, {}) if table else self.content, key, text)
        except lf.InvalidInput as problem:
            problem.path = self._options[where]
            raise

    @staticmethod
    def read(option: str, reading: Callable[[], Any]) -> Any:
        """Read an option that stands nowhere in a day."""
        try:
            return reading()
        except lf.InvalidInput as problem:
            problem.path = option
            raise

    def put_all(self, given: Mapping[str, Any], where: Mapping[str, tuple[str, str]]) -> None:
        """Let all of these options count that are given."""
        for option, place in where.items():
            if given.get(option) is not None:
                self.put(place, given[option])

    @property
    def day(self) -> lf.Day:
        """Build the day itself. Raises InvalidInput in the words of the file, or of the option."""
        day: lf.Day = self._in_words(lambda: lf.Day.from_json(text_of(self.content)))
        return day

    def _option_of(self, path: str) -> str:
        """Find the option that stands at a path; beside a file, or for a name alone, if it was given."""
        for (table, key), option in self._options.items():
            names = (key, _UNIT.sub("", key))
            is_given = (table, key) in self._given
            if path in (f"{table}.{name}" if table else name for name in names) and (is_given or not self.path):
                return option
            is_alone = is_given and table not in ("yeast_water", "bowl", "batch[0]")
            if is_alone and path in (*names, _INSTEAD.get(key)):
                return option
        return ""

    def _placed(self, path: str) -> str:
        """The path as a file has it, or as in_writing will word it: from the table on."""
        path = re.sub(r"^steps\[(\d+)\]", lambda found: f"stage[{int(found[1]) - 1}]", path)
        path = re.sub(r"^(flour|stage)s\b", r"\1", path)
        tables = [name for name, table in self.content.items() if isinstance(table, dict) and path in table]
        if len(tables) == 1:
            return f"{tables[0]}.{path}"
        table, _, key = path.partition(".")
        if isinstance(self.content.get(table), list):
            return f"[[{table}]] {key}".strip()
        if key and table.isidentifier() and table not in self.content:
            return f"[{table}] {key}"
        return path if key or path in self.content else ""

    def _advice(self, advice: str) -> str:
        """Name the option beside the key, or in its place where there is no file."""

        def with_option(found: re.Match[str]) -> str:
            names = (found[2], f"{found[2]}_c", f"{found[2]}_k")
            option = next((self._options[found[1], name] for name in names if (found[1], name) in self._options), "")
            return f"{found[0]} ({option})" if option and self.path else option or found[0]

        return re.sub(r"\[(\w+)\] (\w+)", with_option, advice)

    def _in_words(self, work: Callable[[], Any]) -> Any:
        """Name the option, or the file and the place in it, where something is wrong."""
        try:
            return work()
        except lf.Error as problem:
            path = re.sub(r"^day\.", "", problem.path)
            if not self.path:
                path = re.sub(r"^stage\[0\]|^steps\[1\]", "stage", path)
            problem.advice = _ADVICE.get(path.rpartition(".")[2]) or self._advice(problem.advice)
            option = self._option_of(path)
            if option or not self.path:
                problem.path = option
                raise
            if path:
                problem.path = self._placed(path)
                problem.problem = in_writing(problem, self.content)
                problem.advice = problem.meant = ""
            problem.path = self.path if path or isinstance(problem, lf.InvalidInput) else ""
            raise

    def ask(self, question: str, **members: Any) -> tuple[str, SimpleNamespace]:
        """Ask about the day: the answer's text, and the same to read from."""
        text = text_of(with_kitchen({"ask": question, "day": self.day, **members}))
        answer = self._in_words(lambda: _core.ask(text))
        return answer, _read(answer)


def _read(text: str) -> SimpleNamespace:
    answer: SimpleNamespace = json.loads(text, object_hook=lambda each: SimpleNamespace(**each))
    return answer


def _print_json(text: str) -> None:
    """Print an answer for programs: its text, in ASCII where the output has no more."""
    print(text if is_utf(sys.stdout.encoding) else json.dumps(json.loads(text), separators=(",", ":")))


day_argument = click.argument("day_file", required=False, type=click.Path(dir_okay=False))
json_option = click.option("--json", "as_json", is_flag=True, help="Print the answer as JSON, for programs.")


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(lf.__version__, prog_name="libferment")
def main() -> None:
    """How warm the water must be, and when the dough is ready.

    Temperatures are written with their unit: 25.5C or 78F. Raw flour and raw dough are not safe to eat.
    """


def _options(
    *options: Callable[[Callable[..., None]], Callable[..., None]],
) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """Put several options on a command, in their order."""

    def decorate(command: Callable[..., None]) -> Callable[..., None]:
        for option in reversed(options):
            command = option(command)
        return command

    return decorate


bowl_options = _options(
    click.option("--flour", metavar="TEMPERATURE", help="Flour temperature. [default: the room's]"),
    click.option("--room", metavar="TEMPERATURE", help="Room temperature."),
    click.option("--preferment", metavar="TEMPERATURE", help="Preferment temperature, if there is one."),
    click.option("--preferment-g", metavar="WEIGHT", help="Its weight: half flour, half water; else a day file."),
    click.option("--flour-g", metavar="WEIGHT", help="All of the flour: 900g or 2lb."),
    click.option("--water-g", metavar="WEIGHT", help="All of the water. [default: 65 % of the flour]"),
    click.option("--bowl", metavar="NAME", help="What the bowl is made of: ceramic, steel, ..."),
    click.option("--bowl-g", metavar="WEIGHT", help="Weight of the bowl."),
    click.option("--mixing", metavar="NAME", help="How it is mixed: hand, stand_mixer, ... [default: hand]"),
    click.option("--minutes", metavar="MINUTES", help="Minutes of mixing. [default: the method's usual time]"),
    click.option("--rest", metavar="TIME", help="Flour and water rest so long before yeast and salt: 30min."),
)


def _bowl_day(day_file: str | None, given: Mapping[str, Any]) -> Day:
    """Build the day of the file, with the options of the bowl counting before it."""
    options = {where: _spelt(name) for name, where in _WATER.items()}
    options |= {("preferment", "flour_g"): "--preferment-g", ("preferment", "water_g"): "--preferment-g"}
    options |= {("batch[0]", f"{key}_c"): _spelt(key) for key in ("dough", "water", "flour", "room", "preferment")}
    if given["mixing"] is not None and given.get("net_gain") is not None:
        raise click.UsageError("give either --mixing or --net-gain: each is all of the mixing heat")
    day = Day(day_file, options)
    if given["mixing"] is not None or given.get("net_gain") is not None:
        rest = {key: value for key, value in day.content.get("mixing", {}).items() if key in ("rest", "rest_h")}
        day.content["mixing"] = rest
    day.put_all(given, _WATER)
    if given["preferment_g"] is not None:
        half_g = day.read("--preferment-g", lambda: _grams(given["preferment_g"])) / 2
        day.content["preferment"] = {"flour_g": half_g, "water_g": half_g}
    for table, both in (
        ("bowl", {"material": "--bowl, such as --bowl ceramic", "mass": "--bowl-g, such as --bowl-g 1200g"}),
        ("yeast_water", {"temperature": "--yeast-water", "water": "--yeast-water-g"}),
    ):
        if given.get(table) is None and given.get(f"{table}_g") is None:
            continue
        for stem, option in both.items():
            if not any(_UNIT.sub("", key) == stem for key in day.content[table]):
                raise click.UsageError(f"{_spelt(table)} and {_spelt(table)}-g belong together; add {option}")
    return day


@main.command()
@day_argument
@click.option("--desired", metavar="TEMPERATURE", help="Dough temperature wanted at the end of mixing.")
@bowl_options
@click.option("--tap", metavar="TEMPERATURE", help="Tap water temperature, to tell how much ice or warm water.")
@click.option("--ice", metavar="TEMPERATURE", help="Ice temperature; 0C when it is wet. [default: -18C]")
@click.option(
    "--friction",
    metavar="DIFFERENCE",
    help="Friction of the factor rule, a difference: 3K or 6F; the heat balance counts it, too.",
)
@click.option(
    "--friction-at", metavar="TEMPERATURE", help="Temperature of room and flour where it was found. [default: 21C]"
)
@click.option("--net-gain", metavar="KJ/KG", help="What your mixing adds, kJ/kg, from `libferment friction`.")
@click.option("--yeast-water", metavar="TEMPERATURE", help="Temperature of the water that wets the yeast.")
@click.option("--yeast-water-g", metavar="WEIGHT", help="Its weight; part of all of the water.")
@kitchen_option
@json_option
def water(day_file: str | None, as_json: bool, **given: Any) -> None:
    """How warm to take the water, so that the dough ends at the temperature you want.

    By a heat balance, with the bakers' factor rule beside it. DAY_FILE is a TOML file with today's temperatures;
    options count before it. Without a file:

    libferment water --desired 24C --room 19C --tap 10C --flour-g 900g --bowl steel --bowl-g 900g
    """
    day = _bowl_day(day_file, given)
    if given["mixing"] is not None:
        day.content.pop("batch", None)  # mixed another way
    text, answer = day.ask("water")
    if as_json:
        _print_json(text)
        return
    asked, rested = day.day, None
    if answer.mix.rest_h == 0:
        mixing = {key: value for key, value in day.content.get("mixing", {}).items() if key != "rest"}
        day.content["mixing"] = {**mixing, "rest_h": 0.5}
        with contextlib.suppress(lf.NoSolution, lf.InvalidInput):
            _, rested = day.ask("water")
    print_plan(asked, answer, rested)


@main.command()
@day_argument
@click.option("--dough", metavar="TEMPERATURE", help="Dough temperature measured at the end of mixing.")
@click.option("--water", metavar="TEMPERATURE", help="Temperature of the water that was poured.")
@bowl_options
@kitchen_option
@json_option
def friction(day_file: str | None, as_json: bool, **given: Any) -> None:
    """What mixing adds, from batches: the friction of the factor rule and the net gain of the heat balance.

    Reads the [[batch]] tables of a DAY_FILE, or one batch from --dough, --water, --flour and --room.
    """
    day = _bowl_day(day_file, given)
    if (given["dough"] is None) != (given["water"] is None):
        raise click.UsageError("a batch needs both --dough and --water, as measured")
    if given["dough"] is not None:
        # mixed like today's dough, of what today's is mixed from
        today = day.content.get("today", {})
        measured = {_UNIT.sub("", key): (key, value) for key, value in today.items()}
        if "room" not in measured:
            raise click.UsageError("a batch needs the temperature of the room; give --room")
        measured.setdefault("flour", (measured["room"][0].replace("room", "flour"), measured["room"][1]))
        kept = ("flour", "room", "preferment", "bowl", "milk", "egg", "butter")
        batch: Content = dict(measured[key] for key in kept if key in measured)
        batch |= {key: value for key, value in day.content.get("mixing", {}).items() if key in ("rest", "rest_h")}
        day.content["batch"] = [batch]
        for key in ("dough", "water"):
            day.stands(_spelt(key), ("batch[0]", f"{key}_c"))
            _put(batch, f"{key}_c", given[key])
    text, answer = day.ask("mixing")
    if as_json:
        _print_json(text)
        return
    print_mixing(day.day, answer)


@main.command()
@day_argument
@click.option("--rise", metavar="PERCENT", help="Volume gained, %: doubled is 100.")
@click.option("--after", metavar="TIME", help="Instead of --rise: how far the dough has risen after 2.5h or 90min.")
@click.option("--dough", metavar="TEMPERATURE", help="Temperature of the dough itself, not of the room.")
@click.option("--yeast-percent", metavar="PERCENT", help="Yeast, % of flour weight: 3 g on 500 g are 0.6.")
@click.option(
    "--yeast",
    metavar="[instant|active_dry|active_dry_unwetted|compressed]",
    help="Kind of yeast; fresh yeast is compressed. [default: instant]",
)
@click.option("--salt-percent", metavar="PERCENT", help="Salt, % of flour weight. [default: 2]")
@click.option("--water-percent", metavar="PERCENT", help="All water, % of flour weight. [default: 65]")
@click.option("--sugar-percent", metavar="PERCENT", help="Sugar, % of flour weight. [default: 0]")
@click.option("--gluten-percent", metavar="PERCENT", help="Added gluten, % of flour weight. [default: 0]")
@click.option("--altitude-m", metavar="METRES", help="Altitude, m. [default: 0]")
@click.option("--until", metavar="CLOCK|TIME", help="When it should be ready: 18:30, or 9h from the end of mixing.")
@click.option(
    "--start", metavar="CLOCK", help="When flour and water meet, as a clock: 8:00. Times are then clock times."
)
@click.option("--mixed", metavar="CLOCK", help="When the mixing ends, as a clock: 8:15. Times are then clock times.")
@click.option("--stage", metavar="NAME", help="The stage that should be ready then. [default: the last]")
@click.option(
    "--choose",
    multiple=True,
    type=click.Choice(("yeast", "room", "start", "refrigerate"), case_sensitive=False),
    help="What may be chosen for --until.",
)
@click.option("--scale", metavar="WEIGHT", help="What your scale shows: 0.1g or 1g; the yeast is rounded to it.")
@click.option("--room", metavar="TEMPERATURE", help="Room in which the dough drifts from --dough.")
@click.option("--refrigerator", metavar="TEMPERATURE", help="Or the refrigerator's air.")
@click.option("--proof-box", metavar="TEMPERATURE", help="Or the proof box's air.")
@click.option("--room-log", type=click.Path(dir_okay=False), help="Or its temperature log: CSV with time and C or F.")
@click.option("--dough-log", type=click.Path(dir_okay=False), help="Or that of a probe in the dough.")
@click.option("--piece", metavar="[tub|ball|oblong|flat|tin]", help="The dough's shape in the room. [default: tub]")
@click.option("--piece-g", metavar="WEIGHT", help="Its weight: 800g or 1.5kg. [default: that of 500 g of flour]")
@click.option("--cover", metavar="[film|cloth|lid]", help="Its cover: film, cloth or lid. [default: a lid, or film]")
@kitchen_option
@json_option
def rise(day_file: str | None, as_json: bool, **given: Any) -> None:
    """Hours to a rise: of a dough that stays at its temperature, or drifts in a room; with a DAY_FILE, all its stages.

    Options count before the day file; --dough is then the dough's temperature at the end of mixing. Without a file:

    libferment rise --rise 100 --dough 25C --room 16C --piece tub --piece-g 1.5kg --yeast-percent 0.6
    """
    places = [name for name in ("room", "refrigerator", "proof_box", "room_log", "dough_log") if given[name]]
    if given["until"] is None and (given["stage"] or given["choose"] or given["scale"]):
        raise click.UsageError("--stage, --choose and --scale belong to --until")
    if day_file is None:
        _require_one_dough(given, places)
        if not places and not (given["until"] or given["start"] or given["mixed"]):
            _rise_of_dough(given, as_json)
            return
    day = _rise_day(day_file, given, places)
    if given["until"] is not None:
        _rise_until(day, given, as_json)
        return
    text, answer = day.ask("simulate", every_min=1 if day_file is None else 0)
    if as_json:
        _print_json(text)
    elif day_file is None:
        print_piece(day.day, answer, _held(given, day))
    else:
        print_stages(day.day, answer)


def _require_one_dough(given: Mapping[str, Any], places: list[str]) -> None:
    if (given["rise"] is None) == (given["after"] is None):
        raise click.UsageError("give a day file, or one of --rise (how far) and --after (how long)")
    if len(places) > 1:
        raise click.UsageError("give one place: --" + " or --".join(name.replace("_", "-") for name in places))
    if not places and (given["piece"] or given["piece_g"] or given["cover"]):
        raise click.UsageError("a piece needs its place: --room, --refrigerator, --proof-box or --room-log")
    if given["dough"] is not None and "dough_log" in places:
        raise click.UsageError("--dough-log is the dough's temperature; leave --dough out")
    needed = ["yeast_percent"] if "dough_log" in places else ["dough", "yeast_percent"]
    missing = [_spelt(name) for name in needed if given[name] is None]
    if missing:
        raise click.UsageError(f"missing {' and '.join(missing)}")


def _rise_day(day_file: str | None, given: Mapping[str, Any], places: list[str]) -> Day:
    """Build the day of the file; or of the one stage that the options describe."""
    options = {where: _spelt(name) for name, where in _DOUGH.items()}
    options |= {("stage", key): _spelt(name) for name, key in _STAGE.items()}
    options |= {("dough", "measured_c"): "--dough", ("dough", "piece_g"): "--piece-g"}
    day = Day(day_file, options)
    day.put_all(given, _DOUGH)
    if given["dough"] is not None:
        day.put(("dough", "measured_c"), given["dough"])
    if day_file is not None:
        if given["rise"] is not None or given["after"] is not None:
            raise click.UsageError("a day file has its own stages; give either the file, or --rise or --after")
        if places or given["piece"] or given["piece_g"] or given["cover"]:
            raise click.UsageError("where the dough is, and its piece, stand in the day file's stages")
        return day
    for name, key in _STAGE.items():
        if given[name] is not None and name not in ("room_log", "dough_log", "piece_g"):
            day.put(("stage", key), given[name])
    stage: Content = {"name": "rise", **day.content.pop("stage")}
    for name in ("room_log", "dough_log"):
        if given[name] is not None:
            log = lf.read_temperature_log(given[name])
            stage[name] = {"time_h": list(log.time_h), "temperature_c": list(log.temperature_c)}
            if name == "dough_log":
                day.content["dough"]["measured_c"] = float(log.temperature_c[0])
    if places:
        stage.setdefault("piece", "tub")
    day.content["stage"] = [stage]
    if given["piece_g"] is not None:
        piece_g = day.read("--piece-g", lambda: _grams(given["piece_g"]))
        day.content["dough"] |= {"pieces": 1, "piece_g": piece_g}
    return day


def _dough(given: Mapping[str, Any]) -> Content:
    """The dough at one temperature, as the questions about plain numbers have it."""
    dough: Content = {}
    for name in ("yeast", "yeast_percent", "salt_percent", "water_percent", "sugar_percent", "gluten_percent"):
        if given[name] is not None:
            _put(dough, name, given[name])
    for name, key in (("dough", "dough_c"), ("altitude_m", "altitude_m")):
        if given[name] is not None:
            _put(dough, key, given[name])
    return dough


def _rise_of_dough(given: Mapping[str, Any], as_json: bool) -> None:
    names = {"rise_percent": "--rise", "rise": "--rise", "time_h": "--after", "time": "--after"}
    names |= {"dough_c": "--dough", "dough": "--dough"}

    def in_options(work: Callable[[], Any]) -> Any:
        try:
            return work()
        except lf.Error as problem:
            key = problem.path
            problem.path = names.get(key, _spelt(key) if key in given else "")
            if not problem.path and f"{key}_percent" in given:
                problem.path = _spelt(f"{key}_percent")
            elif key == "altitude":
                problem.path = "--altitude-m"
            raise

    dough = in_options(lambda: _dough(given))
    if given["rise"] is not None:
        in_options(lambda: _put(dough, "rise_percent", given["rise"]))
    else:
        _put(dough, "time_h", given["after"])
    text = in_options(lambda: _core.ask(text_of(with_kitchen({"ask": "rise", **dough}))))
    if as_json:
        _print_json(text)
        return
    explained = None
    if given["rise"] is not None:
        try:
            explained = _read(_core.ask(text_of(with_kitchen({"ask": "explain", **dough}))))
        except lf.NoSolution:  # the reference dough, from which the factors count, does not rise so far
            explained = None
    print_dough(_read(text), explained, _degrees_c(given["dough"]), asked="hours" if given["rise"] else "rise")


def _held(given: Mapping[str, Any], day: Day) -> float | None:
    """Hours that the same dough would take if it stayed at its first temperature; None if there is none to compare."""
    if given["rise"] is None or given["dough"] is None:
        return None
    dough = _dough(given)
    _put(dough, "rise_percent", given["rise"])
    try:
        hours: float = _read(_core.ask(text_of(with_kitchen({"ask": "rise", **dough})))).hours
    except lf.Error:
        return None
    return hours


def _rise_until(day: Day, given: Mapping[str, Any], as_json: bool) -> None:
    text, told = day.ask("forecast", every_draw=True)
    until = given["until"]
    if not told.clock and ":" in until:
        raise click.UsageError(f"--until {until} is a clock; say when the mixing ends, too: --mixed 8:15")
    named = {stage.name: stage for stage in told.stages}
    if given["stage"] is not None and given["stage"] not in named:
        raise lf.InvalidInput(f'no stage is named "{given["stage"]}"; known: {", ".join(named)}')
    stage = told.stages[-1] if given["stage"] is None else named[given["stage"]]
    process = lf.process_of(day.day, kitchen=chosen_kitchen())
    mixed_h = lf.advance(lf.State(time_h=process.start_h), process.steps[0]).time_h
    is_clock = ":" in until
    ready_h = day.read("--until", lambda: lf.moment_h(until, mixed_h) if is_clock else mixed_h + _hours(until))
    if ready_h <= mixed_h:
        raise lf.InvalidInput(f"{until} is not after the end of mixing", path="--until")
    scale: Content = {}
    if given["scale"]:
        day.stands("--scale", ("", "scale_g"))
        day.read("--scale", lambda: _put(scale, "scale_g", given["scale"]))
    choices: dict[str, str | lf.Error] = {}
    for what in given["choose"] or ("yeast", "room", "start"):
        members: Content = {"what": what, "stage": stage.name, "ready_h": ready_h}
        if what == "yeast":
            members |= scale
        if what == "refrigerate":
            members["moved"] = stage.name
        try:
            choices[what] = day.ask("choose", **members)[0]
        except (lf.NoSolution, lf.InvalidInput) as problem:
            if problem.path == "--scale":
                raise
            choices[what] = problem
    if as_json:
        answers = {
            what: each if isinstance(each, str) else json.dumps({"error": in_writing(each)}, ensure_ascii=False)
            for what, each in choices.items()
        }
        parts = ",".join(f'"{what}":{each}' for what, each in answers.items())
        _print_json(f'{{"ready_h":{json.dumps(ready_h)},"forecast":{text},"choices":{{{parts}}}}}')
        return
    read = {what: _read(each) if isinstance(each, str) else each for what, each in choices.items()}
    print_forecast(day.day, told, stage, ready_h, process, read)


from libferment._cli_learn import ended, learn, seen  # noqa: E402  they stand on what is above

for _command in (seen, ended, learn):
    main.add_command(_command)

if __name__ == "__main__":
    sys.exit(main())
