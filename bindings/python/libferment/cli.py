"""The command ``libferment``: water temperature and rise times, from options or a day file."""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Callable, Mapping
from dataclasses import asdict, replace
from typing import Any

import click
from rich.console import Console
from rich.markup import escape
from rich.table import Table

import libferment as lf
from libferment import _quantities as quantities
from libferment import day as days


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
            return number if self._field_name is None else quantities.within(self._field_name, number, what)
        except lf.InvalidInput as problem:
            self.fail(str(problem), param, ctx)


def _temperature(field_name: str) -> _Quantity:
    return _Quantity("temperature", quantities.temperature_c, field_name)


def _number(field_name: str) -> _Quantity:
    return _Quantity("number", quantities.number, field_name)


DIFFERENCE = _Quantity("difference", quantities.difference_k)
HOURS = _Quantity("time", quantities.hours, "time_h")
_TAGS = "|".join(field.name for field in [*lf.fields(), *lf.parameters()])
YEASTS = ("instant", "active_dry", "active_dry_unwetted", "compressed")


def _for_the_command_line(message: str) -> str:
    """Advice in the words of the command line: ``write 78F`` rather than ``pass celsius(78)``."""
    message = re.sub(r"pass (?:celsius|kelvins)\(([^)]*)\)", r"write \1F", message)
    return re.sub(rf" \[({_TAGS}|until_rise_percent)\]", "", message)


class _Commands(click.Group):
    """Turns our errors into a line on standard error: 2 for a bad input, 1 for a question without an answer."""

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except lf.Error as problem:
            click.echo(f"error: {_for_the_command_line(str(problem))}", err=True)
            ctx.exit(2 if isinstance(problem, ValueError) else 1)


def _degrees(temperature_c: float) -> str:
    return f"{temperature_c:.1f} °C ({lf.fahrenheit(temperature_c):.0f} °F)"


def _kelvins(difference_k: float) -> str:
    return f"{difference_k:.1f} K ({1.8 * difference_k:.0f} °F)"


def _print_notices(console: Console, notices: list[lf.Notice]) -> None:
    for notice in notices:
        console.print(f"[bold]{notice.severity}[/bold]: {escape(notice.text)}", highlight=False)


def _print_json(command: str, result: Mapping[str, Any], notices: list[lf.Notice]) -> None:
    document = {
        "libferment": lf.__version__,
        "command": command,
        **result,
        "notices": [notice.to_dict() for notice in notices],
    }
    click.echo(json.dumps(document, ensure_ascii=False, indent=2, allow_nan=False))


def _console() -> Console:
    return Console(soft_wrap=False, highlight=False, emoji=False)


def _table(title: str, *columns: str) -> Table:
    table = Table(title=escape(title) or None, title_justify="left", show_edge=False, pad_edge=False)
    for place, column in enumerate(columns):
        table.add_column(column, justify="left" if place == 0 else "right")
    return table


day_argument = click.argument("day_file", required=False, type=click.Path(dir_okay=False))
json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON for programs.")


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(lf.__version__, prog_name="libferment")
def main() -> None:
    """How warm the water must be, and when the dough is ready.

    Temperatures are written with their unit: 25.5C or 78F. Raw flour and raw dough are not safe to eat.
    """


@main.command()
@day_argument
@click.option("--desired", type=_temperature("desired_c"), help="Dough temperature wanted at the end of mixing.")
@click.option("--flour", type=_temperature("flour_c"), help="Flour temperature.")
@click.option("--room", type=_temperature("room_c"), help="Room temperature.")
@click.option("--preferment", type=_temperature("preferment_c"), help="Preferment temperature, if there is one.")
@click.option("--friction", type=DIFFERENCE, help="Warming by mixing, a difference: 3K or 6F. By hand about 0K to 3K.")
@click.option(
    "--tap", type=_temperature("tap_c"), help="Tap water temperature, to tell how much ice or warm water is needed."
)
@click.option(
    "--water-g", type=_number("water_g"), help="All of the water, g; a day file gives it by flour_g and water_percent."
)
@json_option
def water(day_file: str | None, as_json: bool, water_g: float | None, **given: float | None) -> None:
    """Water temperature for a desired dough temperature, by the trade's factor rule.

    DAY_FILE is a TOML file with today's temperatures; options count before it.
    """
    day = days.read_day(day_file) if day_file else days.Day()
    measured = {key: value for key in ("flour", "room", "preferment", "tap") if (value := given[key]) is not None}
    day = replace(
        day,
        temperatures_c={**day.temperatures_c, **measured},
        desired_c=day.desired_c if given["desired"] is None else given["desired"],
        friction_k=day.friction_k if given["friction"] is None else given["friction"],
    )
    water_c = days.water_of(day)
    if water_g is None and day.flour_g is not None and "water_percent" in day.dough:
        water_g = day.flour_g * day.dough["water_percent"] / 100
    tap_c = day.temperatures_c.get("tap")
    ice_g = None
    if tap_c is not None and water_g is not None and 0 <= water_c < tap_c:
        ice_g = lf.ice_by_trade_rule(water_g, tap_c=tap_c, wanted_c=water_c)
    notices = lf.check(water_c=water_c, yeast=day.yeast)
    if as_json:
        result = {
            "water_c": water_c,
            "method": "factor rule",
            "desired_c": day.desired_c,
            "temperatures_c": dict(day.temperatures_c),
            "friction_k": day.friction_k,
            "water_g": water_g,
            "ice_g": ice_g,
        }
        _print_json("water", result, notices)
        return
    assert day.desired_c is not None  # water_of refuses a day without them
    assert day.friction_k is not None
    console = _console()
    table = _table(day.title, "water temperature, by the factor rule", "")
    factors = [("flour", day.temperatures_c["flour"]), ("room", day.temperatures_c["room"])]
    if "preferment" in day.temperatures_c:
        factors.append(("preferment", day.temperatures_c["preferment"]))
    count = len(factors) + 1
    table.add_row(f"desired dough temperature, × {count}", _degrees(day.desired_c))
    for name, temperature_c in factors:
        table.add_row(f"less {name}", _degrees(temperature_c))
    table.add_row("less friction", _kelvins(day.friction_k))
    table.add_section()
    table.add_row("[bold]water[/bold]", f"[bold]{_degrees(water_c)}[/bold]")
    if ice_g is not None and water_g is not None:
        table.add_row("of the water, as ice", f"{ice_g:.0f} g")
        table.add_row("and from the tap", f"{water_g - ice_g:.0f} g")
    elif water_g is not None:
        table.add_row("amount", f"{water_g:.0f} g")
    console.print(table)
    _advise_on_water(console, day, water_c, tap_c, ice_g)
    _print_notices(console, notices)


def _advise_on_water(console: Console, day: days.Day, water_c: float, tap_c: float | None, ice_g: float | None) -> None:
    """What to do when the tap does not give that water, or no water does."""
    warmest = 45.0  # the warmest water that may touch yeast; above it the notices speak
    for limit_c, beyond in ((0.0, water_c < 0), (warmest, water_c > warmest)):
        if beyond:
            reached_c = lf.dough_by_factor_rule(
                limit_c,
                flour_c=day.temperatures_c["flour"],
                room_c=day.temperatures_c["room"],
                friction_k=day.friction_k or 0.0,
                preferment_c=day.temperatures_c.get("preferment"),
            )
            console.print(f"With water at {_degrees(limit_c)} the dough would be {_degrees(reached_c)}.")
            return
    if tap_c is None or ice_g is not None:
        return
    if water_c > tap_c:
        console.print(f"The tap gives {_degrees(tap_c)}: warm the water by {water_c - tap_c:.1f} K.")
    elif water_c < tap_c:
        share = lf.ice_by_trade_rule(100, tap_c=tap_c, wanted_c=water_c)
        console.print(f"The tap gives {_degrees(tap_c)}: take {share:.1f} % of the water as ice.")


@main.command()
@day_argument
@click.option("--rise", "rise_percent", type=_number("rise_percent"), help="Volume gained, %: doubled is 100.")
@click.option("--after", type=HOURS, help="Instead of --rise: how far the dough has risen after 2.5h or 90min.")
@click.option("--dough", type=_temperature("dough_c"), help="Temperature of the dough itself, not of the room.")
@click.option("--yeast-percent", type=_number("yeast_percent"), help="Yeast, % of flour weight: 3 g on 500 g are 0.6.")
@click.option("--yeast", type=click.Choice(YEASTS), help="Kind of yeast; fresh yeast is compressed. [default: instant]")
@click.option("--salt-percent", type=_number("salt_percent"), help="Salt, % of flour weight. [default: 2]")
@click.option("--water-percent", type=_number("water_percent"), help="All water, % of flour weight. [default: 65]")
@click.option("--sugar-percent", type=_number("sugar_percent"), help="Sugar, % of flour weight. [default: 0]")
@click.option("--gluten-percent", type=_number("gluten_percent"), help="Added gluten, % of flour weight. [default: 0]")
@click.option("--altitude-m", type=_number("altitude_m"), help="Altitude, m. [default: 0]")
@json_option
def rise(
    day_file: str | None,
    rise_percent: float | None,
    after: float | None,
    dough: float | None,
    yeast: str | None,
    as_json: bool,
    **given: float | None,
) -> None:
    """Hours to a rise at a constant dough temperature; with a DAY_FILE, all its stages one after the other.

    Options count before the day file; --dough then holds for all stages.
    """
    formula = {key: value for key, value in given.items() if value is not None}
    if day_file:
        if rise_percent is not None or after is not None:
            raise click.UsageError("a day file has its own stages; give either the file, or --rise or --after")
        day = days.read_day(day_file)
        day = replace(day, dough={**day.dough, **formula}, yeast=yeast or day.yeast)
        _rise_of_day(day if dough is None else days.at_dough_temperature(day, dough), as_json)
        return
    if (rise_percent is None) == (after is None):
        raise click.UsageError("give a day file, or one of --rise (how far) and --after (how long)")
    missing = [
        name for name, value in (("--dough", dough), ("--yeast-percent", given["yeast_percent"])) if value is None
    ]
    if missing:
        raise click.UsageError(f"missing {' and '.join(missing)}")
    assert dough is not None
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
    notices = lf.check(rise_percent=rise_percent, **dough)
    if as_json:
        _print_json("rise", {"rise_percent": rise_percent, **dough, **explained}, notices)
        return
    console = _console()
    console.print(
        f"[bold]{quantities.clock_text(hours)}[/bold] to a rise of {rise_percent:g} % "
        f"with the dough at {_degrees(dough['dough_c'])}"
    )
    if explained["factors"]:
        table = _table("", "what makes the time", "reference", "here", "hours ×")
        table.add_row("reference dough", "", "", quantities.clock_text(explained["reference_h"]))
        for factor in explained["factors"]:
            if factor["times"] != 1:
                table.add_row(factor["name"], f"{factor['from']:.3g}", f"{factor['to']:.3g}", f"{factor['times']:.2f}")
        console.print(table)
    _print_notices(console, notices)


def _rise_after(time_h: float, dough: dict[str, Any], as_json: bool) -> None:
    rise_percent = lf.rise_after(time_h, **dough)
    notices = lf.check(**dough)
    if rise_percent > 1:  # a rise that cannot be seen needs no caution
        notices = lf.check(rise_percent=rise_percent, **dough)
    if as_json:
        _print_json("rise", {"time_h": time_h, **dough, "rise_percent": rise_percent}, notices)
        return
    console = _console()
    console.print(
        f"a rise of [bold]{rise_percent:.0f} %[/bold] after {quantities.clock_text(time_h)} "
        f"with the dough at {_degrees(dough['dough_c'])}"
    )
    _print_notices(console, notices)


def _rise_of_day(day: days.Day, as_json: bool) -> None:
    plans = days.plan_stages(day)
    notices = days.notices_of_stages(day, plans)
    if as_json:
        result = {"title": day.title, "stages": [{**asdict(plan), "ready_h": plan.ready_h} for plan in plans]}
        _print_json("rise", result, notices)
        return
    console = _console()
    table = _table(day.title, "stage", "dough", "rise", "takes", "ready at", "be back by")
    for plan in plans:
        be_back_by = "any time" if plan.be_back_by_h is None else quantities.clock_text(plan.be_back_by_h)
        table.add_row(
            escape(plan.name),
            f"{plan.dough_c:.1f} °C",
            f"{plan.rise_percent:.0f} %",
            f"[bold]{quantities.clock_text(plan.hours)}[/bold]",
            quantities.clock_text(plan.ready_h),
            be_back_by,
        )
    console.print(table)
    for plan in plans:
        if plan.folds_done < plan.folds_planned:
            console.print(
                f"{escape(plan.name)}: ready before fold {plan.folds_done + 1} of {plan.folds_planned}; "
                "leave the rest out."
            )
    console.print("Counted from the end of mixing; be back by: from then on the dough is over-proofed.")
    console.print(
        "Times are for a dough that stays at its temperature, by the parameter set 2026-1, not yet your kitchen's: "
        "look early."
    )
    _print_notices(console, notices)


if __name__ == "__main__":
    sys.exit(main())
