"""The command ``libferment``: water temperature and rise times, from options or a day file."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

import click

import libferment as lf
from libferment import _quantities as quantities
from libferment import bowl as bowls
from libferment import day as days
from libferment import questions, stages
from libferment._output import Screen, Sheet, is_utf, output, plain
from libferment._screen import (
    degrees,
    print_learned,
    print_notices,
    print_piece,
    print_plan,
    print_stages,
    print_until,
)
from libferment._values import choice_row, stage_row


class _Quantity(click.ParamType):  # type: ignore[type-arg]  # generic only from click 8.4 on
    """A number with a unit, read and checked against the field table."""

    def __init__(self, name: str, read: Callable[[str, str], float], field_name: str | None = None) -> None:
        self.name = name
        self._read = read
        self._field_name = field_name

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        if isinstance(value, float):
            return value
        what = (param.name or self.name).replace("_", " ") if param else self.name
        try:
            number = self._read(str(value), what)
            return number if self._field_name is None else quantities.within(self._field_name, number, what, value)
        except lf.InvalidInput as problem:
            self.fail(str(problem), param, ctx)


def _temperature(field_name: str) -> _Quantity:
    return _Quantity("temperature", quantities.temperature_c, field_name)


def _number(field_name: str) -> _Quantity:
    return _Quantity("number", quantities.number, field_name)


def _weight(field_name: str) -> _Quantity:
    return _Quantity("weight", quantities.grams, field_name)


def _hours(field_name: str) -> _Quantity:
    return _Quantity("time", quantities.hours, field_name)


DIFFERENCE = _Quantity("difference", quantities.difference_k, "friction_k")


class _Name(click.Choice):  # type: ignore[type-arg]  # generic only from click 8.2 on
    """A name of a table, however it is spelt: "Stand mixer" is stand_mixer."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Any:
        return super().convert(re.sub(r"[\s-]+", "_", str(value).strip().lower()), param, ctx)


_NAME_OF_MIXING = _Name(tuple(method.name for method in lf.mixing_methods()))
YEASTS = ("instant", "active_dry", "active_dry_unwetted", "compressed")


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
            print(f"error: {plain(quantities.in_writing(problem))}", file=sys.stderr)
            ctx.exit(2 if isinstance(problem, ValueError) else 1)


def _print_json(command: str, result: Mapping[str, Any], notices: list[Any]) -> None:
    document = {
        "libferment": lf.__version__,
        "command": command,
        **result,
        "notices": [notice if isinstance(notice, dict) else notice.to_dict() for notice in notices],
    }
    print(json.dumps(document, ensure_ascii=not is_utf(sys.stdout.encoding), indent=2, allow_nan=False))


day_argument = click.argument("day_file", required=False, type=click.Path(dir_okay=False))
json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs.")


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
    click.option("--flour", type=_temperature("flour_c"), help="Flour temperature. [default: the room's]"),
    click.option("--room", type=_temperature("room_c"), help="Room temperature."),
    click.option("--preferment", type=_temperature("preferment_c"), help="Preferment temperature, if there is one."),
    click.option(
        "--preferment-g", type=_weight("flour_g"), help="Its weight: half flour, half water; else a day file."
    ),
    click.option("--flour-g", type=_weight("flour_g"), help="All of the flour: 900g or 2lb."),
    click.option("--water-g", type=_weight("water_g"), help="All of the water. [default: 65 % of the flour]"),
    click.option(
        "--bowl", type=_Name(tuple(lf.bowl_materials())), help="What the bowl is made of: ceramic, steel, ..."
    ),
    click.option("--bowl-g", type=_weight("bowl_g"), help="Weight of the bowl."),
    click.option("--mixing", type=_NAME_OF_MIXING, help="How it is mixed: hand, stand_mixer, ... [default: hand]"),
    click.option("--minutes", type=_number("mixing_min"), help="Minutes of mixing. [default: the method's usual time]"),
    click.option("--rest", type=_hours("rest_h"), help="Flour and water rest so long before yeast and salt: 30min."),
)


def _day_with(day_file: str | None, given: Mapping[str, Any]) -> days.Day:
    """The day of the file, with the options of the bowl counting before it."""
    day = days.read_day(day_file) if day_file else days.Day()
    measured = {key: given[key] for key in days.TEMPERATURES if given.get(key) is not None and key != "bowl"}
    day = replace(day, temperatures_c={**day.temperatures_c, **measured}, flour_g=given["flour_g"] or day.flour_g)
    if given["preferment_g"] is not None:
        day = replace(day, preferment=lf.Preferment(given["preferment_g"] / 2, given["preferment_g"] / 2))
    if given["bowl"] is not None or given["bowl_g"] is not None:
        material = given["bowl"] or (day.bowl.material if day.bowl else None)
        weight = given["bowl_g"] if given["bowl_g"] is not None else (day.bowl.mass_g if day.bowl else None)
        if material is None:
            raise lf.InvalidInput("a bowl needs its material; add --bowl, such as --bowl ceramic")
        if not weight:
            raise lf.InvalidInput("a bowl needs its weight; add --bowl-g, such as --bowl-g 1200g")
        day = replace(day, bowl=lf.Bowl(material, days.plausible_bowl_g(weight, "bowl g")))
    if given["rest"] is not None:
        day = replace(day, rest_h=given["rest"])
    if given["water_g"] is not None:
        if day.flour_g is None:
            raise lf.InvalidInput(
                "--water-g needs --flour-g: how much water there is, is counted in percent of the flour"
            )
        what = f"water of {given['water_g']:g} g on {day.flour_g:g} g of flour,"
        percent = quantities.within("poured_water_percent", 100 * given["water_g"] / day.flour_g, what)
        day = replace(day, dough={**day.dough, "water_percent": percent})
    if given["mixing"] is not None:
        day = replace(day, mixing=lf.ByMethod(given["mixing"], given["minutes"]))
    elif given["minutes"] is not None and isinstance(day.mixing, (lf.ByMethod, lf.ByNetGain)):
        day = replace(day, mixing=day.mixing.replace(minutes=given["minutes"]))
    elif given["minutes"] is not None and given.get("net_gain") is None:
        raise click.UsageError("--minutes needs --mixing")
    return day


@main.command()
@day_argument
@click.option("--desired", type=_temperature("desired_c"), help="Dough temperature wanted at the end of mixing.")
@bowl_options
@click.option("--tap", type=_temperature("tap_c"), help="Tap water temperature, to tell how much ice or warm water.")
@click.option("--ice", type=_temperature("ice_c"), help="Ice temperature; 0C when it is wet. [default: -18C]")
@click.option(
    "--friction",
    type=DIFFERENCE,
    help="Friction of the factor rule, a difference: 3K or 6F; with --friction-at for the balance, too.",
)
@click.option(
    "--friction-at",
    type=_temperature("room_c"),
    help="Temperature of the room it was found in, flour and bowl alike.",
)
@click.option(
    "--net-gain", type=_number("net_gain_kj_per_kg"), help="What your mixing adds, kJ/kg, from `libferment friction`."
)
@click.option("--yeast-water", type=_temperature("water_c"), help="Temperature of the water that wets the yeast.")
@click.option("--yeast-water-g", type=_weight("water_g"), help="Its weight; part of all of the water.")
@json_option
def water(day_file: str | None, as_json: bool, **given: Any) -> None:
    """How warm to take the water, so that the dough ends at the temperature you want.

    By a heat balance, with the bakers' factor rule beside it. DAY_FILE is a TOML file with today's temperatures;
    options count before it. Without a file:

    libferment water --desired 21C --room 19C --flour-g 1.1kg --water-g 790g --bowl steel --bowl-g 1250g --mixing spiral
    """
    if given["mixing"] is not None and given["net_gain"] is not None:
        raise click.UsageError("give either --mixing or --net-gain: each is all of the mixing heat")
    day = _day_with(day_file, given)
    for option, member in (("desired", "desired_c"), ("friction", "friction_k"), ("friction_at", "friction_at_c")):
        if given[option] is not None:
            day = replace(day, **{member: given[option]})
    if given["mixing"] is not None:
        day = replace(day, batches=())
    if given["net_gain"] is not None:
        day = replace(day, mixing=lf.ByNetGain(given["net_gain"], minutes=given["minutes"] or 0.0))
    if (given["yeast_water"] is None) != (given["yeast_water_g"] is None):
        raise click.UsageError("give both --yeast-water and --yeast-water-g, or neither")
    if given["yeast_water"] is not None:
        day = replace(day, yeast_water=lf.Water(given["yeast_water_g"], given["yeast_water"], wets_yeast=True))
    plan = bowls.plan_of(day)
    if as_json:
        result = plan.water.to_dict()
        notices = result.pop("notices")
        result |= {"temperatures_c": dict(day.temperatures_c), "mix": plan.mix.with_water(plan.water).to_dict()}
        _print_json("water", result, notices)
        return
    print_plan(day, plan)


@main.command()
@day_argument
@click.option("--dough", type=_temperature("dough_c"), help="Dough temperature measured at the end of mixing.")
@click.option("--water", type=_temperature("water_c"), help="Temperature of the water that was poured.")
@bowl_options
@json_option
def friction(day_file: str | None, as_json: bool, **given: Any) -> None:
    """What mixing adds, from batches: the friction of the factor rule and the net gain of the heat balance.

    Reads the [[batch]] tables of a DAY_FILE, or one batch from --dough, --water, --flour and --room.
    """
    day = _day_with(day_file, given)
    if (given["dough"] is None) != (given["water"] is None):
        raise click.UsageError("a batch needs both --dough and --water, as measured")
    if given["dough"] is not None:
        temperatures = {key: day.temperatures_c[key] for key in days.TEMPERATURES if key in day.temperatures_c}
        if "room" not in temperatures:
            raise lf.InvalidInput("a batch needs the temperature of the room; give --room")
        temperatures.setdefault("flour", temperatures["room"])
        minutes = 0.0 if day.mixing is None else lf.mixing_minutes(day.mixing)
        batch = days.Batch(given["dough"], given["water"], temperatures, day.rest_h, minutes)
        day = replace(day, batches=(batch,))
    elif given["mixing"] is not None or given["minutes"] is not None:
        assert day.mixing is not None
        minutes = lf.mixing_minutes(day.mixing)
        batches = tuple(b if b.minutes_given else replace(b, minutes=minutes) for b in day.batches)
        day = replace(day, batches=batches)
    learned = bowls.learned_from(day)
    if as_json:
        _print_json(
            "friction",
            {
                "friction_k": learned.friction.to_dict(),
                "net_gain_kj_per_kg": learned.net_gain.to_dict(),
                "minutes": learned.minutes,
            },
            [],
        )
        return
    print_learned(day, learned)


@main.command()
@day_argument
@click.option("--rise", "rise_percent", type=_number("rise_percent"), help="Volume gained, %: doubled is 100.")
@click.option(
    "--after", type=_hours("time_h"), help="Instead of --rise: how far the dough has risen after 2.5h or 90min."
)
@click.option("--dough", type=_temperature("dough_c"), help="Temperature of the dough itself, not of the room.")
@click.option("--yeast-percent", type=_number("yeast_percent"), help="Yeast, % of flour weight: 3 g on 500 g are 0.6.")
@click.option("--yeast", type=_Name(YEASTS), help="Kind of yeast; fresh yeast is compressed. [default: instant]")
@click.option("--salt-percent", type=_number("salt_percent"), help="Salt, % of flour weight. [default: 2]")
@click.option("--water-percent", type=_number("water_percent"), help="All water, % of flour weight. [default: 65]")
@click.option("--sugar-percent", type=_number("sugar_percent"), help="Sugar, % of flour weight. [default: 0]")
@click.option("--gluten-percent", type=_number("gluten_percent"), help="Added gluten, % of flour weight. [default: 0]")
@click.option("--altitude-m", type=_number("altitude_m"), help="Altitude, m. [default: 0]")
@click.option("--until", "until_text", help="When it should be ready: 18:30, or 9h from the end of mixing.")
@click.option("--mixed", "mixed_text", help="When the mixing ends, as a clock: 8:15. Times are then clock times.")
@click.option("--stage", "stage_name", help="The stage that should be ready then. [default: the last]")
@click.option("--choose", multiple=True, type=_Name(questions.CHOICES), help="What may be chosen for --until.")
@click.option("--scale", type=_weight("salt_g"), help="What your scale shows: 0.1g or 1g; the yeast is rounded to it.")
@click.option("--room", type=_temperature("room_c"), help="Room in which the dough drifts from --dough.")
@click.option("--refrigerator", type=_temperature("refrigerator_c"), help="Or the refrigerator's air.")
@click.option("--proof-box", type=_temperature("proof_box_c"), help="Or the proof box's air.")
@click.option("--room-log", type=click.Path(dir_okay=False), help="Or its temperature log: CSV with time and C or F.")
@click.option("--dough-log", type=click.Path(dir_okay=False), help="Or that of a probe in the dough.")
@click.option("--piece", type=_Name(("ball", "oblong", "tub")), help="The dough's shape in the room. [default: tub]")
@click.option("--piece-g", type=_weight("piece_g"), help="Its weight: 800g or 1.5kg. [default: that of 500 g of flour]")
@click.option("--cover", type=_Name(("film", "cloth", "lid")), help="Its cover. [default: a lid, or film]")
@json_option
def rise(
    day_file: str | None,
    rise_percent: float | None,
    after: float | None,
    dough: float | None,
    yeast: str | None,
    as_json: bool,
    **given: Any,
) -> None:
    """Hours to a rise: of a dough that stays at its temperature, or drifts in a room; with a DAY_FILE, all its stages.

    Options count before the day file; --dough is then the dough's temperature at the end of mixing. Without a file:

    libferment rise --rise 100 --dough 25C --room 16C --piece tub --piece-g 1.5kg --yeast-percent 0.6
    """
    clock = quantities.Clock.of(given["until_text"], given["mixed_text"])
    if clock is None and (given["stage_name"] or given["choose"] or given["scale"]):
        raise click.UsageError("--stage, --choose and --scale belong to --until")
    formula = {key: given[key] for key in days.DOUGH_NUMBERS if given[key] is not None}
    where = {key: given[key] for key in days.PLACES if given.get(key) is not None}
    if day_file:
        if rise_percent is not None or after is not None:
            raise click.UsageError("a day file has its own stages; give either the file, or --rise or --after")
        if where or given["piece"] or given["piece_g"] or given["cover"]:
            raise click.UsageError("where the dough is, and its piece, stand in the day file's stages")
        day = days.read_day(day_file)
        day = replace(day, dough={**day.dough, **formula}, yeast=yeast or day.yeast)
        day = day if dough is None else stages.at_dough_temperature(day, dough)
        if clock is not None:
            _rise_until(day, clock, given, as_json)
            return
        _rise_of_day(day, as_json)
        return
    if (rise_percent is None) == (after is None):
        raise click.UsageError("give a day file, or one of --rise (how far) and --after (how long)")
    if len(where) > 1:
        raise click.UsageError("give one place: --" + " or --".join(name.replace("_", "-") for name in where))
    needed = [("--yeast-percent", given["yeast_percent"])]
    if "dough_log" not in where:
        needed.insert(0, ("--dough", dough))
    elif dough is not None:
        raise click.UsageError("--dough-log is the dough's temperature; leave --dough out")
    missing = [name for name, value in needed if value is None]
    if missing:
        raise click.UsageError(f"missing {' and '.join(missing)}")
    if where:
        ((key, value),) = where.items()
        options = {**given, "rise_percent": rise_percent, "after": after, "yeast": yeast}
        of_piece = _day_of_piece(days.surroundings_of(key, value), dough, options)
        if clock is not None:
            _rise_until(of_piece, clock, given, as_json)
            return
        _rise_of_piece(of_piece, as_json)
        return
    if given["piece"] or given["piece_g"] or given["cover"]:
        raise click.UsageError("a piece needs its place: --room, --refrigerator, --proof-box or --room-log")
    assert dough is not None
    if clock is not None:
        options = {**given, "rise_percent": rise_percent, "after": after, "yeast": yeast}
        _rise_until(_day_of_piece(lf.Surroundings.dough(dough), dough, options), clock, given, as_json)
        return
    one: dict[str, Any] = {"dough_c": dough, "yeast": yeast or "instant", **formula}
    if after is not None:
        _rise_after(after, one, as_json)
    elif rise_percent is not None:
        _hours_to_rise(rise_percent, one, as_json)


def _hours_to_rise(rise_percent: float, dough: dict[str, Any], as_json: bool) -> None:
    hours = lf.hours_to_rise(rise_percent, **dough)
    try:
        explained = lf.explain(rise_percent, **dough).to_dict()
    except lf.NoSolution:  # the reference dough, from which the factors count, does not rise so far
        explained = {"reference_h": None, "factors": [], "hours": hours}
    notices = lf.cautions(rise_percent=rise_percent, **dough)
    if as_json:
        _print_json("rise", {"rise_percent": rise_percent, **dough, **explained}, notices)
        return
    console = Screen()
    console.print(
        f"[bold]{quantities.clock_text(hours)}[/bold] to a rise of {rise_percent:g} % "
        f"with the dough at {degrees(dough['dough_c'])}"
    )
    if explained["factors"]:
        table = Sheet("", "what makes the time", "reference", "here", "hours ×")
        table.add_row("reference dough", "", "", quantities.clock_text(explained["reference_h"]))
        for factor in explained["factors"]:
            if factor["times"] != 1:
                table.add_row(
                    factor["name"], f"{factor['from_value']:.3g}", f"{factor['to_value']:.3g}", f"{factor['times']:.2f}"
                )
        console.print(table)
    print_notices(console, notices)


def _rise_after(time_h: float, dough: dict[str, Any], as_json: bool) -> None:
    rise_percent = lf.rise_after(time_h, **dough)
    notices = lf.cautions(**dough)
    if rise_percent > 1:  # a rise that cannot be seen needs no caution
        notices = lf.cautions(rise_percent=rise_percent, **dough)
    if as_json:
        _print_json("rise", {"time_h": time_h, **dough, "rise_percent": rise_percent}, notices)
        return
    console = Screen()
    console.print(
        f"a rise of [bold]{rise_percent:.0f} %[/bold] after {quantities.clock_text(time_h)} "
        f"with the dough at {degrees(dough['dough_c'])}"
    )
    print_notices(console, notices)


def _day_of_piece(surroundings: lf.Surroundings, dough_c: float | None, given: Mapping[str, Any]) -> days.Day:
    """Build the one stage that the options describe: a piece of dough in its surroundings."""
    if given["yeast_percent"] is None:
        raise click.UsageError("missing --yeast-percent")
    if given["piece"] is None and (given["piece_g"] is not None or given["cover"] is not None):
        raise click.UsageError("--piece-g and --cover need --piece, such as --piece tub")
    piece = lf.Piece(given["piece"] or "tub", cover=given["cover"])
    names = [*days.DOUGH_NUMBERS]
    formula = {name: given[name] for name in names if given[name] is not None}
    stage = days.Stage("rise", surroundings, given["rise_percent"], given["after"], piece=piece)
    start_c = dough_c if dough_c is not None else float(surroundings.temperature_at(0.0))
    day = days.Day(desired_c=start_c, yeast=given["yeast"] or "instant", dough=formula, stages=(stage,))
    if given["piece_g"] is None:
        return day
    per_flour = stages.mix_at(day, start_c).percent.dough_g / bowls.ASSUMED_FLOUR_G
    return replace(day, flour_g=given["piece_g"] / per_flour)


def _rise_of_piece(day: days.Day, as_json: bool) -> None:
    timeline = lf.simulate(stages.process_of(day))
    plans = stages.plan_stages(day)
    notices = stages.notices_of_stages(day, plans)
    compared = stages.beside_constant(plans[0], day, 0)
    if as_json:
        result = {
            "stage": stages.plan_dict(plans[0]),
            "constant_hours": None if compared is None else compared.hours,
            "flour_g": day.flour_g or bowls.ASSUMED_FLOUR_G,
        }
        _print_json("rise", result, notices)
        return
    print_piece(day, plans[0], timeline, compared)
    print_notices(Screen(), notices)


def _rise_until(day: days.Day, clock: quantities.Clock, given: Mapping[str, Any], as_json: bool) -> None:
    process = stages.process_of(day)
    answer = questions.until(
        process,
        clock.until_h,
        stage=given["stage_name"],
        scale_g=given["scale"] or 0.0,
        choose=tuple(given["choose"]) or questions.CHOICES[:-1],
    )
    if as_json:
        result = {
            "until_h": answer.ready_h,
            "stage": answer.stage.name,
            "ready_by_then": answer.by_then,
            "forecast": [stage_row(stage) for stage in answer.forecast.stages],
            "choices": {
                each.asked: {"reason": each.reason} if each.choice is None else choice_row(each.choice)
                for each in answer.answers
            },
        }
        _print_json("rise", result, answer.forecast.notices)
        return
    print_until(day, process, answer, clock)


def _rise_of_day(day: days.Day, as_json: bool) -> None:
    plans = stages.plan_stages(day)
    notices = stages.notices_of_stages(day, plans)
    if as_json:
        _print_json("rise", {"title": day.title, "stages": [stages.plan_dict(plan) for plan in plans]}, notices)
        return
    print_stages(day, plans)
    print_notices(Screen(), notices)


if __name__ == "__main__":
    sys.exit(main())
