"""What the command prints for people: screens over the library's answers, numbers in their words."""

from __future__ import annotations

import math
from types import SimpleNamespace

from rich.console import Console
from rich.markup import escape

from libferment import _core
from libferment._core import Day, Process, fahrenheit, mix_of, mixing_methods, mixing_minutes
from libferment._errors import Error
from libferment._kitchen import by_kitchen, chosen_kitchen
from libferment._output import Screen, Sheet

_LABELS = {method.name: method.label for method in mixing_methods()}
LATER = "after more than two days"
"""When a dough is over-proofed that is not so in the two days which are followed."""
UNUSUAL_GAIN_KJ_PER_KG = (-3.0, 25.0)


# ---- numbers in words ------------------------------------------------------------------------------------------------


def signed(value: float, digits: int = 1) -> str:
    """Write a number with a true minus sign; never a negative zero."""
    return f"{round(value, digits) + 0.0:.{digits}f}".replace("-", "−")


def degrees(temperature_c: float) -> str:
    """Write a temperature in both scales."""
    return f"{signed(temperature_c)} °C ({signed(fahrenheit(temperature_c), 0)} °F)"


def kelvins(difference_k: float) -> str:
    """Write a difference of temperatures in both scales."""
    return f"{signed(difference_k)} K ({signed(1.8 * difference_k, 0)} °F)"


def duration(time_h: float) -> str:
    """Write hours as a baker reads them: ``2 h 35 min``."""
    minutes = round(time_h * 60)
    return f"{minutes} min" if minutes < 60 else f"{minutes // 60} h {minutes % 60:02d} min"


def hour(time_h: float | None, clock: bool, never: str = "never") -> str:
    """Write an hour of an answer: as a clock if it is of the day, else as time since the end of mixing."""
    if time_h is None:
        return never
    return _core.moment_text(time_h) if clock else duration(time_h)


def print_notices(console: Console, notices: list[SimpleNamespace]) -> None:
    """Print cautions, the word of their severity first."""
    for notice in notices:
        word = "note" if notice.severity == "info" else notice.severity
        console.print(f"[bold]{word}[/bold]: {escape(notice.text)}", highlight=False)


_OF_THE_BOWL = {
    "assumed_flour_g": "--flour-g",
    "assumed_water_percent": "--water-g",
    "assumed_no_bowl": "--bowl, --bowl-g",
    "assumed_friction_at_c": "--friction-at",
}
_OF_THE_RISE = {"assumed_water_percent": "--water-percent", "assumed_salt_percent": "--salt-percent"}


def _print_assumed(console: Console, assumed: list[SimpleNamespace], options: dict[str, str]) -> None:
    """Say what was reckoned with and not given, with the option that gives it."""
    others = []
    for each in assumed:
        if each.code != "assumed_place":
            others.append(f"{each.text} ({options[each.code]})" if each.code in options else each.text)
    if others:
        console.print(f"Assumed: {', '.join(others)}.")
    for each in assumed:
        if each.code == "assumed_place":
            console.print(f"{escape(each.text[0].upper() + each.text[1:])}.")


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}" + ("" if number == 1 else "es")


# ---- the water plan --------------------------------------------------------------------------------------------------


def print_plan(day: Day, water: SimpleNamespace, rested: SimpleNamespace | None) -> None:
    """Print the answer first, then what else one might ask, then what it is made of."""
    console = Screen()
    if day.title:
        console.print(f"[italic]{escape(day.title)}[/italic]")
    console.print(_how_warm(water))
    lines = [*_on_ice(water), _how_sure(day, water), _on_rest(water, rested), *_on_rule(day, water)]
    for line in lines:
        console.print(line)
    console.print(_table_of_shares(water))
    _print_assumed(console, [each for each in water.assumed if each.code != "assumed_place"], _OF_THE_BOWL)
    print_notices(console, water.notices)
    for line in _how_to_log(day, water):
        console.print(line)


def _how_warm(water: SimpleNamespace) -> str:
    tap_c = water.mix.tap_c
    if 0 < water.ice_g < 0.01 * water.water_g:
        return (
            f"[bold]Pour {water.water_g:.0f} g straight from the tap, {degrees(water.pour_c)}[/bold]: it is only "
            f"{kelvins(water.pour_c - water.water_c)} too warm; {water.ice_g:.0f} g of ice in it would make it exact."
        )
    if water.ice_g:
        line = f"[bold]Pour {water.pour_g:.0f} g from the tap, {degrees(water.pour_c)}, and {water.ice_g:.0f} g of ice"
        as_cold = (
            "colder than any water alone" if water.water_c < 0 else f"as cold as water at {degrees(water.water_c)}"
        )
        return f"{line}[/bold]: together {as_cold}."
    line = f"[bold]Pour {water.pour_g:.0f} g of water at {degrees(water.water_c)}[/bold]"
    return line + (
        "." if tap_c is None else f": {kelvins(water.water_c - tap_c)} warmer than the tap's {degrees(tap_c)}."
    )


def _on_ice(water: SimpleNamespace) -> list[str]:
    mix = water.mix
    if 0 < water.ice_g < 0.01 * water.water_g:
        return []
    if water.ice_g:
        kind = "wet, melting ice" if mix.ice_c == 0 else f"ice straight from the freezer ({signed(mix.ice_c, 0)} °C)"
        other = "" if mix.ice_c == 0 else "; of wet, melting ice it takes more (--ice 0C)"
        return [f"Weigh {kind}{other}. It is part of the water: crush it and mix until none is left."]
    if mix.tap_c is not None:
        return ["No ice is needed."]
    return [] if water.water_c > 25 else ["If your tap is warmer than that, give --tap, and the ice is worked out."]


def _how_sure(day: Day, water: SimpleNamespace) -> str:
    said, mixing = day.mixing, water.mix.mixing
    if day.batch and said.net_gain_kj_per_kg is None:
        basis = f"from {_count(len(day.batch), 'logged batch')}"
    elif mixing is None or mixing.type == "ByMethod":
        basis = f"typical for {_LABELS[mixing.method if mixing else 'hand']}; yours may differ"
    elif mixing.type == "ByWork":
        basis = "from the work you gave"
    else:
        basis = f"from the {'friction' if said.net_gain_kj_per_kg is None else 'net gain'} you gave"
    low, high = signed(water.low_c), signed(water.high_c)
    return f"In 9 batches of 10 the dough should come out at {low} to {high} °C ({basis})."


def _on_rest(water: SimpleNamespace, rested: SimpleNamespace | None) -> str:
    rest_h = water.mix.rest_h
    if rest_h:
        return (
            f"Flour and water meet at {signed(water.wetted_c)} °C and are at {signed(water.rested_c)} °C "
            f"after the rest of {duration(rest_h)}, when all else joins."
        )
    if rested is None:
        return "A rest of flour and water for 30 min first is out of the water's reach here."
    how = f"water at {degrees(rested.water_c)}"
    if rested.ice_g:
        how = f"{rested.pour_g:.0f} g from the tap and {rested.ice_g:.0f} g of ice"
    return f"If flour and water rest for 30 min first, take {how} (--rest 30min)."


def _on_rule(day: Day, water: SimpleNamespace) -> list[str]:
    preferment_c = next((share.temperature_c for share in water.shares if share.name == "preferment"), None)
    known = {"room": water.mix.room_c}
    if preferment_c is not None:
        known["preferment"] = preferment_c
    known["friction"] = water.friction_k
    factors = len(known) + 1
    flour_c = factors * water.desired_c - water.factor_rule_c - sum(known.values())  # the flours' mean
    numbers = {"flour": flour_c} | known
    less = "".join(f" {'−' if value >= 0 else '+'} {abs(value):.1f}" for value in numbers.values())
    impossible = ", which is no water" if water.factor_rule_c < 0 else ""
    given = day.water.friction_k is not None
    whose = "as you gave it" if given else "from your batches" if water.friction_given else "here"
    return [
        f"The bakers' factor rule says {degrees(water.factor_rule_c)}{impossible}: "
        f"{factors} × {water.desired_c:.1f}{less} ({', '.join(numbers)}). It would make the dough "
        f"{signed(water.dough_by_rule_c)} °C.",
        f"Why they differ: {escape(water.reason)}.",
        f"Friction is the rule's number for mixing and all that it leaves out: {kelvins(water.friction_k)} {whose}; "
        "libferment friction finds yours from a batch.",
    ]


def _table_of_shares(water: SimpleNamespace) -> Sheet:
    table = Sheet("", "into the bowl", "weight", "at", "1 K more moves the dough")
    small = [share for share in water.shares if share.dough_k_per_k < 0.01]
    for share in water.shares:
        if share in small:
            continue
        row = [
            share.name,
            f"{share.mass_g:.0f} g" if share.mass_g else "",
            f"{signed(share.temperature_c)} °C",
            f"{share.dough_k_per_k:.2f} K",
        ]
        table.add_row(*(f"[bold]{cell}[/bold]" if share.name == "main water" else cell for cell in row))
    small_g = sum(share.mass_g for share in small)
    if small:
        table.add_row(", ".join(share.name for share in small), f"{small_g:.0f} g" if small_g else "")
    table.add_section()
    table.add_row("mixing, wetting, dissolving", "", "", f"{'+' if water.gain_k >= 0 else ''}{signed(water.gain_k)} K")
    table.add_row("dough", f"{water.dough_g:.0f} g", f"{signed(water.desired_c)} °C", "")
    return table


def _how_to_log(day: Day, water: SimpleNamespace) -> list[str]:
    """The lines to put into the day file when the dough is mixed."""
    if water.ice_g:
        return []  # a batch with ice is logged from Python, where its ice can be told
    today, room_c = day.today, water.mix.room_c
    flour_c = room_c if today.flour_c is None else today.flour_c
    lines = {"dough": "__C", "water": f"{water.pour_c:.1f}C", "flour": f"{flour_c:g}C", "room": f"{room_c:g}C"}
    for key in ("preferment", "bowl", "milk", "egg", "butter"):
        own_c = getattr(today, f"{key}_c")
        if own_c is not None:
            lines[key] = f"{own_c:g}C"
    if day.mixing.rest_h:
        lines["rest"] = f"{60 * day.mixing.rest_h:.0f}min"
    batch = "\n".join(["[[batch]]", *(f'{key} = "{value}"' for key, value in lines.items())])
    mixing = mix_of(day).mixing
    minutes = 0.0 if mixing is None else mixing_minutes(mixing)
    if minutes:
        batch += f"\nminutes = {minutes:g}"
    return [
        "Measure the dough at the end of mixing, add this to the day file, and the next plan is surer:",
        escape(batch),
    ]


# ---- what batches say ------------------------------------------------------------------------------------------------


def print_mixing(day: Day, learned: SimpleNamespace) -> None:
    """Print friction and net gain of every batch, their mean and spread, and what to do with them."""
    console = Screen()
    if day.title:
        console.print(f"[italic]{escape(day.title)}[/italic]")
    table = Sheet("", "batch", "friction", "net gain")
    friction, gain = learned.friction_k, learned.net_gain_kj_per_kg
    for number, (friction_k, kj_per_kg) in enumerate(zip(friction.each, gain.each, strict=True), 1):
        table.add_row(str(number), kelvins(friction_k), f"{signed(kj_per_kg)} kJ/kg")
    table.add_section()
    table.add_row(
        "[bold]mean[/bold]", f"[bold]{kelvins(friction.mean)}[/bold]", f"[bold]{signed(gain.mean)} kJ/kg[/bold]"
    )
    if friction.sd is not None and gain.sd is not None:
        table.add_row("spread (sd)", kelvins(friction.sd), f"{signed(gain.sd)} kJ/kg")
    console.print(table)
    where = (
        "warm and cold rooms" if learned.minutes else "rooms much like these (tell --mixing, and it holds in others)"
    )
    console.print(
        f"The net gain is the heat your mixing leaves in a kilogram of dough. It holds in {where}, for this way of "
        "mixing and this size of batch. The friction holds in rooms like these batches' alone."
    )
    minutes = f" --minutes {learned.minutes:g}" if learned.minutes else ""
    console.print(f"Next time: libferment water ... --net-gain {round(gain.mean, 1) + 0.0:.1f}{minutes}")
    low, high = UNUSUAL_GAIN_KJ_PER_KG
    if not all(low <= each <= high for each in gain.each):
        console.print(
            f"[bold]caution[/bold]: a net gain outside {signed(low, 0)} to {high:.0f} kJ/kg is unusual; "
            "look for a mistyped temperature or a missing bowl."
        )
    _print_assumed(console, [each for each in learned.assumed if each.code != "assumed_place"], _OF_THE_BOWL)


# ---- a dough at one temperature --------------------------------------------------------------------------------------


def print_dough(rise: SimpleNamespace, explained: SimpleNamespace | None, dough_c: float, asked: str) -> None:
    """Print a rise and its hours, whichever was asked first, and the factors that make the hours."""
    console = Screen()
    dough = f"with the dough at {degrees(dough_c)}"
    if asked == "rise":
        console.print(f"a rise of [bold]{rise.rise_percent:.0f} %[/bold] after {duration(rise.hours)} {dough}")
    else:
        console.print(f"[bold]{duration(rise.hours)}[/bold] to a rise of {rise.rise_percent:g} % {dough}")
    if explained is not None:
        table = Sheet("", "what makes the time", "reference", "here", "hours ×")
        table.add_row("reference dough", "", "", duration(explained.reference_h))
        for factor in explained.factors:
            if factor.times != 1:
                table.add_row(factor.name, f"{factor.from_value:.3g}", f"{factor.to_value:.3g}", f"{factor.times:.2f}")
        console.print(table)
    print_notices(console, rise.notices)


# ---- the rises of a day ----------------------------------------------------------------------------------------------


def _drift_text(stage: SimpleNamespace) -> str:
    """Write the dough's temperature over a stage."""
    first, last = signed(stage.start_c), signed(stage.end_c)
    return f"{first} °C" if first == last else f"{first} → {last} °C"


def _counted(clock: bool) -> str:
    return "" if clock else "Counted from the end of mixing; "


def print_stages(day: Day, told: SimpleNamespace) -> None:
    """Print a day's stages as a table, and what its times hold for."""
    console = Screen()
    table = Sheet(told.title, "stage", "dough", "rise", "takes", "ready at", "be back by")
    for written, stage in zip(day.stage, told.stages, strict=True):
        table.add_row(
            escape(stage.name),
            _drift_text(stage),
            f"{stage.rise_percent:.0f} %",
            f"[bold]{duration(stage.end_h - stage.start_h)}[/bold]",
            hour(stage.end_h, told.clock),
            hour(stage.be_back_by_h, told.clock, LATER if written.until_rise_percent else ""),
        )
    console.print(table)
    for written, stage in zip(day.stage, told.stages, strict=True):
        if stage.folds_done < len(written.folds_h):
            console.print(
                f"{escape(stage.name)}: ready before fold {stage.folds_done + 1} of {len(written.folds_h)}; "
                "leave the rest out."
            )
    counted = _counted(told.clock)
    console.print(f"{counted}{'be' if counted else 'Be'} back by: from then on the dough has risen too far.")
    drifting = [stage for stage in told.stages if stage.time_constant_h is not None]
    if drifting:
        console.print(_on_drift(drifting[0]))
    _print_assumed(console, [each for each in told.assumed if _counts_for_rises(each, day)], _OF_THE_RISE)
    console.print(by_kitchen(chosen_kitchen()))
    print_notices(console, told.notices)


def _counts_for_rises(assumed: SimpleNamespace, day: Day) -> bool:
    """The bowl counts where the dough's temperature follows from the water that was poured."""
    return assumed.code != "assumed_no_bowl" or (day.water.poured_c is not None and day.dough.measured_c is None)


def _on_drift(stage: SimpleNamespace) -> str:
    third = duration(stage.time_constant_h * math.log(3))
    return (
        f'A dough nears the place it is in and is warmed by its own fermentation; in stage "{escape(stage.name)}" the '
        f"difference falls to a third in {third}, reckoned from weight and shape: measure it once with a probe."
    )


def print_piece(day: Day, told: SimpleNamespace, held_h: float | None) -> None:
    """Print when a piece of dough is ready in its surroundings, and how it gets there."""
    console = Screen()
    (stage,) = told.stages
    takes = duration(stage.end_h - stage.start_h)
    by_rise = day.stage[0].until_rise_percent is not None
    answer = f"[bold]{takes}[/bold] to a rise of {stage.rise_percent:.0f} %"
    if not by_rise:
        answer = f"a rise of [bold]{stage.rise_percent:.0f} %[/bold] after {takes}"
    if abs(stage.end_c - stage.start_c) < 0.05:
        console.print(f"{answer}; the dough stays at {degrees(stage.start_c)}.")
    else:
        console.print(f"{answer}; the dough goes from {degrees(stage.start_c)} to {degrees(stage.end_c)}.")
    earlier_h = None if held_h is None else stage.end_h - stage.start_h - held_h
    if held_h is not None and earlier_h is not None and abs(earlier_h) >= 1 / 120:
        console.print(
            f"A dough that stayed at {degrees(stage.start_c)} would take {duration(held_h)}: that would be "
            f"{duration(abs(earlier_h))} too {'early' if earlier_h > 0 else 'late'}."
        )
    if stage.be_back_by_h is not None:
        console.print(f"Be back by {hour(stage.be_back_by_h, told.clock)}: from then on it has risen too far.")
    elif by_rise:
        console.print(f"It has risen too far {LATER}.")
    table = Sheet("", "at" if told.clock else "after", "surroundings", "dough", "rise")
    for row in _rows_to_show(told):
        air = "" if stage.time_constant_h is None else f"{signed(told.air_c[row])} °C"
        table.add_row(
            hour(told.time_h[row], told.clock),
            air,
            f"{signed(told.mean_c[row])} °C",
            f"{told.rise_percent[row]:.0f} %",
        )
    console.print(table)
    if stage.time_constant_h is not None:
        if any(each.code == "assumed_flour_g" for each in told.assumed):
            console.print("Reckoned for the dough of 500 g of flour; give --piece-g for yours.")
        console.print(_on_drift(stage))
    shown = ("assumed_water_percent", "assumed_salt_percent")
    _print_assumed(console, [each for each in told.assumed if each.code in shown], _OF_THE_RISE)
    console.print(by_kitchen(chosen_kitchen()))
    print_notices(console, told.notices)


def _rows_to_show(told: SimpleNamespace) -> list[int]:
    """Choose some seven moments of a timeline: its start, full steps of a round length, and its end."""
    times = told.time_h
    length_h = times[-1] - times[0]
    steps = (0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 168.0)
    step = next((step for step in steps if length_h / step <= 7), steps[-1])
    rows = [0]
    while (next_h := times[0] + len(rows) * step) < times[-1] - step / 4:
        rows.append(min(range(len(times)), key=lambda row: abs(times[row] - next_h)))
    return [*rows, len(times) - 1]


# ---- forecasts, and questions asked backwards ------------------------------------------------------------------------

_CHOICES = {"yeast": "yeast", "room": "room", "start": "start", "refrigerate": "into the refrigerator"}


def print_forecast(
    day: Day,
    told: SimpleNamespace,
    wanted: SimpleNamespace,
    ready_h: float,
    process: Process,
    choices: dict[str, SimpleNamespace | Error],
) -> None:
    """Print when each stage is ready with its window, how likely the wanted hour is, and what would make it so."""
    console = Screen()
    table = Sheet(told.title, "stage", "look first", "be back by", "usually ready", "9 in 10 between")
    for stage in told.stages:
        early, late = stage.likely_h
        table.add_row(
            escape(stage.name),
            hour(stage.look_first_h, told.clock) if stage.by_rise else "",
            hour(stage.be_back_by_h, told.clock, LATER if stage.by_rise else ""),
            f"[bold]{hour(stage.ready_h, told.clock)}[/bold]",
            f"{hour(early, told.clock)} and {hour(late, told.clock)}" if early != late else "",
        )
    console.print(table)
    console.print(
        "Look first: one dough in ten has risen as far as is just acceptable; be back by: one in ten has risen too "
        "far. In a kitchen that has learned nothing the quickest dough may be past before the usual one is ready."
    )
    name, by = escape(wanted.name), hour(ready_h, told.clock)
    ready, late = (sum(each is not None and each <= ready_h for each in of) for of in (wanted.ready, wanted.too_late))
    in_time = 100 * (ready - late) / len(wanted.ready)
    console.print(f"At [bold]{by}[/bold] the {name} is ready, and not yet too far, in {in_time:.0f} of 100 doughs.")
    sheet = Sheet("", f"for the {name} to be ready at {by}", "choose one", "instead of")
    for what, choice in choices.items():
        if isinstance(choice, Error):
            sheet.add_row(_CHOICES[what], f"none: {_reason(choice, told.clock)}")
        else:
            sheet.add_row(_CHOICES[what], _chosen(choice, process.start_h), _now(choice))
    console.print(sheet)
    _print_assumed(console, [each for each in told.assumed if _counts_for_rises(each, day)], _OF_THE_RISE)
    notices = {notice.text: notice for notice in told.notices}
    for choice in choices.values():
        if not isinstance(choice, Error):
            notices |= {notice.text: notice for notice in choice.notices}
    print_notices(console, list(notices.values()))


def _reason(problem: Error, clock: bool) -> str:
    """Say why there is no choice."""
    if problem.low is not None and problem.high is not None:
        low, high = hour(problem.low, clock), hour(problem.high, clock)
        return f"ready at {low} whatever is chosen" if low == high else f"within reach is {low} to {high}"
    return escape(problem.problem)


def _chosen(choice: SimpleNamespace, start_h: float) -> str:
    if choice.what == "yeast_g":
        later_h = choice.rounded_ready_h - choice.ready_h
        is_told = round(60 * later_h) != 0
        cost = f" ({duration(abs(later_h))} {'later' if later_h > 0 else 'sooner'})" if is_told else ""
        return f"{choice.rounded:.3g} g{cost}"
    if choice.what == "air_c":
        return " or ".join(f"{signed(value)} °C" for value in choice.all)
    if choice.what == "start_h" and not choice.clock:
        later_h = choice.value - start_h
        return f"{duration(abs(later_h))} {'later' if later_h >= 0 else 'sooner'}"
    return hour(choice.value, choice.clock)


def _now(choice: SimpleNamespace) -> str:
    """Write what is chosen now."""
    if choice.now is None or (choice.what == "start_h" and not choice.clock):
        return ""
    if choice.what == "yeast_g":
        return f"{choice.now:.3g} g"
    return f"{signed(choice.now)} °C" if choice.what == "air_c" else hour(choice.now, choice.clock)
