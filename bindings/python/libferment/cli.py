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
from libferment import bowl as bowls
from libferment import day as days
from libferment import stages


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


def _weight(field_name: str) -> _Quantity:
    return _Quantity("weight", quantities.grams, field_name)


def _hours(field_name: str) -> _Quantity:
    return _Quantity("time", quantities.hours, field_name)


DIFFERENCE = _Quantity("difference", quantities.difference_k)
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
    return f"{_signed(temperature_c)} °C ({_signed(lf.fahrenheit(temperature_c), 0)} °F)"


def _kelvins(difference_k: float) -> str:
    return f"{_signed(difference_k)} K ({_signed(1.8 * difference_k, 0)} °F)"


def _signed(value: float, digits: int = 1) -> str:
    """Write a number with a true minus sign; never a negative zero."""
    return f"{round(value, digits) + 0.0:.{digits}f}".replace("-", "−")


def _print_notices(console: Console, notices: list[lf.Notice]) -> None:
    for notice in notices:
        word = "note" if notice.severity == "info" else notice.severity
        console.print(f"[bold]{word}[/bold]: {escape(notice.text)}", highlight=False)


def _print_json(command: str, result: Mapping[str, Any], notices: list[Any]) -> None:
    document = {
        "libferment": lf.__version__,
        "command": command,
        **result,
        "notices": [notice if isinstance(notice, dict) else notice.to_dict() for notice in notices],
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
    click.option("--water-g", type=_weight("water_g"), help="All of the water; a day file gives it by water_percent."),
    click.option("--bowl", type=click.Choice(tuple(lf.bowl_materials())), help="What the bowl is made of."),
    click.option("--bowl-g", type=_weight("bowl_g"), help="Weight of the bowl."),
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
        known = day.bowl or lf.Bowl()
        weight = known.mass_g if given["bowl_g"] is None else given["bowl_g"]
        if not weight:
            raise lf.InvalidInput("a bowl needs its weight; add --bowl-g, such as --bowl-g 1200g")
        day = replace(day, bowl=lf.Bowl(given["bowl"] or known.material, weight))
    if given["rest"] is not None:
        day = replace(day, rest_h=given["rest"])
    if given["water_g"] is not None:
        flour_g = bowls.ASSUMED_FLOUR_G if day.flour_g is None else day.flour_g
        percent = quantities.within(
            "water_percent", 100 * given["water_g"] / flour_g, f"water on {flour_g:g} g of flour"
        )
        day = replace(day, flour_g=flour_g, dough={**day.dough, "water_percent": percent})
    return day


@main.command()
@day_argument
@click.option("--desired", type=_temperature("desired_c"), help="Dough temperature wanted at the end of mixing.")
@bowl_options
@click.option("--tap", type=_temperature("tap_c"), help="Tap water temperature, to tell how much ice or warm water.")
@click.option("--ice", type=_temperature("ice_c"), help="Ice temperature; 0C when it is wet. [default: -18C]")
@click.option("--friction", type=DIFFERENCE, help="Warming by mixing in the factor rule, a difference: 3K or 6F.")
@click.option(
    "--mixing", type=click.Choice([m.name for m in lf.mixing_methods()]), help="How it is mixed. [default: hand]"
)
@click.option("--minutes", type=_number("mixing_min"), help="Minutes of mixing. [default: the method's usual time]")
@click.option("--net-gain", type=_number("net_gain_kj_per_kg"), help="Instead: kJ/kg, from `libferment friction`.")
@click.option("--yeast-water", type=_temperature("water_c"), help="Temperature of the water that wets the yeast.")
@click.option("--yeast-water-g", type=_weight("water_g"), help="Its weight; part of all of the water.")
@json_option
def water(day_file: str | None, as_json: bool, **given: Any) -> None:
    """Water temperature for a desired dough temperature, by heat balance and by the trade's factor rule.

    DAY_FILE is a TOML file with today's temperatures; options count before it.
    """
    day = _day_with(day_file, given)
    if given["desired"] is not None:
        day = replace(day, desired_c=given["desired"])
    if given["friction"] is not None:
        day = replace(day, friction_k=given["friction"])
    if given["mixing"] is not None and given["net_gain"] is not None:
        raise click.UsageError("give either --mixing or --net-gain: each is all of the mixing heat")
    if given["mixing"] is not None:
        day = replace(day, mixing=lf.ByMethod(given["mixing"], given["minutes"]), batches=())
    elif given["net_gain"] is not None:
        day = replace(day, mixing=lf.ByNetGain(given["net_gain"]))
    elif given["minutes"] is not None:
        raise click.UsageError("--minutes needs --mixing")
    if (given["yeast_water"] is None) != (given["yeast_water_g"] is None):
        raise click.UsageError("give both --yeast-water and --yeast-water-g, or neither")
    if given["yeast_water"] is not None:
        day = replace(day, yeast_water=lf.Water(given["yeast_water_g"], given["yeast_water"], wets_yeast=True))
    plan = bowls.water_plan_of(day)
    if as_json:
        result = {
            **plan.to_dict(),
            "temperatures_c": dict(day.temperatures_c),
            "mix": bowls.mix_of(day).with_water(plan).to_dict(),
        }
        notices = result.pop("notices")
        _print_json("water", result, notices)
        return
    _print_plan(day, plan)


_BATCH = escape("[[batch]]")


def _print_plan(day: days.Day, plan: lf.WaterPlan) -> None:
    """Print the answer first, then what it is made of, then what else one might ask."""
    console = _console()
    if day.title:
        console.print(f"[italic]{escape(day.title)}[/italic]")
    for line in (_how_warm(day, plan), *_on_ice(day, plan), _how_sure(day, plan)):
        console.print(line)
    console.print(_table_of_shares(plan))
    for line in (_on_rest(day, plan), *_on_rule(day, plan)):
        console.print(line)
    if day.flour_g is None:
        console.print(f"Reckoned for {bowls.ASSUMED_FLOUR_G:.0f} g of flour; give --flour-g for yours.")
    _print_notices(console, plan.notices)


def _table_of_shares(plan: lf.WaterPlan) -> Table:
    table = _table("", "into the bowl", "weight", "at", "moves the dough")
    small = [share for share in plan.shares if share.dough_k_per_k < 0.01]
    for share in plan.shares:
        if share in small:
            continue
        row = [
            share.name,
            f"{share.mass_g:.0f} g" if share.mass_g else "",
            f"{_signed(share.temperature_c)} °C",
            f"{share.dough_k_per_k:.2f} K per K",
        ]
        table.add_row(*(f"[bold]{cell}[/bold]" if share.name == "main water" else cell for cell in row))
    if small:
        table.add_row(", ".join(share.name for share in small), f"{sum(share.mass_g for share in small):.0f} g")
    table.add_section()
    gain = _signed(plan.gain_k) if plan.gain_k < 0 else f"+{_signed(plan.gain_k)}"
    table.add_row("mixing, wetting, dissolving", "", "", f"{gain} K")
    table.add_row("dough", f"{plan.dough_g:.0f} g", f"{_signed(plan.desired_c)} °C", "")
    return table


def _how_warm(day: days.Day, plan: lf.WaterPlan) -> str:
    tap_c = day.temperatures_c.get("tap")
    if plan.ice_g:
        return (
            f"[bold]Pour {plan.pour_g:.0f} g from the tap, {_degrees(plan.pour_c)}, "
            f"and {plan.ice_g:.0f} g of ice[/bold]: together as cold as water at {_degrees(plan.water_c)}."
        )
    line = f"[bold]Pour {plan.pour_g:.0f} g of water at {_degrees(plan.water_c)}[/bold]"
    return line + ("." if tap_c is None else f": the tap's {_degrees(tap_c)} warmed by {plan.water_c - tap_c:.1f} K.")


def _on_ice(day: days.Day, plan: lf.WaterPlan) -> list[str]:
    ice_c = day.temperatures_c.get("ice", -18.0)
    if plan.ice_g:
        return [f"The ice is part of the water; weigh it ({ice_c:g} °C) and mix until it is gone."]
    if "tap" in day.temperatures_c:
        return []
    return ["If your tap is warmer than that, give --tap, and the ice is worked out."]


def _how_sure(day: days.Day, plan: lf.WaterPlan) -> str:
    basis = "from how you mix"
    if day.batches and not isinstance(day.mixing, lf.ByNetGain):
        basis = f"from {len(day.batches)} logged batch" + ("es" if len(day.batches) > 1 else "")
    elif isinstance(day.mixing, lf.ByNetGain) or day.friction_k is not None:
        basis = "from the mixing heat you gave"
    return (
        f"In 9 batches of 10 the dough should come out at {plan.low_c:.1f} to {plan.high_c:.1f} °C ({basis}). "
        f"Measure it, log it as a {_BATCH}, and the next plan is surer."
    )


def _on_rest(day: days.Day, plan: lf.WaterPlan) -> str:
    if day.rest_h:
        return (
            f"Flour and water meet at {plan.wetted_c:.1f} °C and are at {plan.rested_c:.1f} °C after the rest of "
            f"{quantities.clock_text(day.rest_h)}, when all else joins."
        )
    try:
        rested = bowls.water_plan_of(replace(day, rest_h=0.5))
    except lf.NoSolution:
        return "If flour and water are to rest for 30 min first, no water is warm or cold enough."
    return f"If flour and water rest for 30 min first, take water at {_degrees(rested.water_c)} (--rest 30min)."


def _on_rule(day: days.Day, plan: lf.WaterPlan) -> list[str]:
    known = [day.temperatures_c["room"], plan.friction_k]
    names = ["flour", "room"]
    if day.preferment:
        known.insert(1, day.temperatures_c.get("preferment", day.temperatures_c["room"]))
        names.append("preferment")
    factors = len(names) + 1
    known.insert(0, factors * plan.desired_c - plan.factor_rule_c - sum(known))  # the flours' mean
    less = "".join(f" {'−' if value >= 0 else '+'} {abs(value):.1f}" for value in known)
    whose = "as you gave it" if day.friction_k is not None else "from your batches" if plan.friction_given else "here"
    return [
        f"The trade's factor rule says {_degrees(plan.factor_rule_c)}: "
        f"{factors} × {plan.desired_c:.1f}{less} ({', '.join(names)}, friction).",
        f"Why they differ: {escape(plan.reason)}.",
        f"Friction is what mixing adds in that rule, {_kelvins(plan.friction_k)} {whose}; "
        "`libferment friction` finds yours from a batch.",
    ]


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
        for name in ("flour", "room"):
            if name not in temperatures:
                raise lf.InvalidInput(f"a batch needs the temperature of the {name}; give --{name}")
        day = replace(day, batches=(days.Batch(given["dough"], given["water"], temperatures),))
    learned = bowls.learned_from(day)
    if as_json:
        _print_json(
            "friction", {"friction_k": learned.friction.to_dict(), "net_gain_kj_per_kg": learned.net_gain.to_dict()}, []
        )
        return
    console = _console()
    table = _table(day.title, "batch", "friction", "net gain")
    for place, (friction_k, gain) in enumerate(zip(learned.friction.each, learned.net_gain.each, strict=True), 1):
        table.add_row(str(place), _kelvins(friction_k), f"{_signed(gain)} kJ/kg")
    table.add_section()
    table.add_row(
        "[bold]mean[/bold]",
        f"[bold]{_kelvins(learned.friction.mean)}[/bold]",
        f"[bold]{_signed(learned.net_gain.mean)} kJ/kg[/bold]",
    )
    if learned.friction.sd is not None and learned.net_gain.sd is not None:
        table.add_row("spread (sd)", _kelvins(learned.friction.sd), f"{_signed(learned.net_gain.sd)} kJ/kg")
    console.print(table)
    console.print(
        "The friction is right in kitchens like those of these batches; the net gain in "
        + ("any kitchen" if learned.minutes else "warmer and colder ones too, nearly (give the minutes of mixing)")
        + ", for this mixer and this size of batch."
    )
    console.print(
        f"Log every batch as a {_BATCH} in the day file, or write the net gain into {escape('[mixing]')} "
        "net_gain_kj_per_kg."
    )


@main.command()
@day_argument
@click.option("--rise", "rise_percent", type=_number("rise_percent"), help="Volume gained, %: doubled is 100.")
@click.option(
    "--after", type=_hours("time_h"), help="Instead of --rise: how far the dough has risen after 2.5h or 90min."
)
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
        _rise_of_day(day if dough is None else stages.at_dough_temperature(day, dough), as_json)
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
    plans = stages.plan_stages(day)
    notices = stages.notices_of_stages(day, plans)
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
