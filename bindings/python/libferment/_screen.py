"""What the command prints for people: numbers in their words, and the screens of the bowl."""

from __future__ import annotations

import math

from rich.console import Console
from rich.markup import escape

from libferment import _quantities as quantities
from libferment import bowl as bowls
from libferment._core import (
    ByMethod,
    ByNetGain,
    ByWork,
    Mix,
    Notice,
    Process,
    Timeline,
    WaterPlan,
    fahrenheit,
    mixing_methods,
    mixing_minutes,
    water_by_heat_balance,
)
from libferment._errors import NoSolution
from libferment._output import Screen, Sheet
from libferment.day import Day
from libferment.questions import Answer, Until
from libferment.stages import ConstantComparison, StagePlan

_LABELS = {method.name: method.label for method in mixing_methods()}


def signed(value: float, digits: int = 1) -> str:
    """Write a number with a true minus sign; never a negative zero."""
    return f"{round(value, digits) + 0.0:.{digits}f}".replace("-", "−")


def degrees(temperature_c: float) -> str:
    """Write a temperature in both scales."""
    return f"{signed(temperature_c)} °C ({signed(fahrenheit(temperature_c), 0)} °F)"


def kelvins(difference_k: float) -> str:
    """Write a difference of temperatures in both scales."""
    return f"{signed(difference_k)} K ({signed(1.8 * difference_k, 0)} °F)"


def print_notices(console: Console, notices: list[Notice]) -> None:
    """Print cautions, the word of their severity first."""
    for notice in notices:
        word = "note" if notice.severity == "info" else notice.severity
        console.print(f"[bold]{word}[/bold]: {escape(notice.text)}", highlight=False)


def _print_title(console: Console, day: Day) -> None:
    if day.title:
        console.print(f"[italic]{escape(day.title)}[/italic]")


# ---- the water plan --------------------------------------------------------------------------------------------------


def print_plan(day: Day, plan: bowls.Plan) -> None:
    """Print the answer first, then what else one might ask, then what it is made of."""
    console = Screen()
    _print_title(console, day)
    console.print(_how_warm(day, plan.water))
    for line in (*_on_ice(plan), _how_sure(day, plan), _on_rest(day, plan), *_on_rule(day, plan.water)):
        console.print(line)
    console.print(_table_of_shares(plan.water))
    for line in _assumed(day):
        console.print(line)
    print_notices(console, plan.water.notices)
    for line in _how_to_log(day, plan):
        console.print(line)


def _how_warm(day: Day, water: WaterPlan) -> str:
    tap_c = day.temperatures_c.get("tap")
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


def _on_ice(plan: bowls.Plan) -> list[str]:
    water, mix = plan.water, plan.mix
    if 0 < water.ice_g < 0.01 * water.water_g:
        return []
    if water.ice_g:
        kind = "wet, melting ice" if mix.ice_c == 0 else f"ice straight from the freezer ({signed(mix.ice_c, 0)} °C)"
        other = "" if mix.ice_c == 0 else "; of wet, melting ice it takes more (--ice 0C)"
        return [f"Weigh {kind}{other}. It is part of the water: crush it and mix until none is left."]
    if mix.tap_c is not None:
        return ["No ice is needed."]
    if water.water_c > 25:
        return []
    return ["If your tap is warmer than that, give --tap, and the ice is worked out."]


def _how_sure(day: Day, plan: bowls.Plan) -> str:
    mixing = plan.mix.mixing
    if day.batches and not isinstance(day.mixing, ByNetGain):
        basis = f"from {_count(len(day.batches), 'logged batch')}"
    elif isinstance(mixing, ByMethod) or mixing is None:
        basis = f"typical for {_LABELS[mixing.method if mixing else 'hand']}; yours may differ"
    else:
        basis = "from the work you gave" if isinstance(mixing, ByWork) else "from the net gain you gave"
        if day.mixing is None:
            basis = "from the friction you gave"
    low, high = signed(plan.water.low_c), signed(plan.water.high_c)
    return f"In 9 batches of 10 the dough should come out at {low} to {high} °C ({basis})."


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}" + ("" if number == 1 else "es")


def _on_rest(day: Day, plan: bowls.Plan) -> str:
    water = plan.water
    if day.rest_h:
        return (
            f"Flour and water meet at {signed(water.wetted_c)} °C and are at {signed(water.rested_c)} °C "
            f"after the rest of {quantities.clock_text(day.rest_h)}, when all else joins."
        )
    try:
        rested = water_by_heat_balance(plan.mix.replace(rest_h=0.5), water.desired_c)
    except NoSolution:
        return "A rest of flour and water for 30 min first is out of the water's reach here."
    how = f"water at {degrees(rested.water_c)}"
    if rested.ice_g:
        how = f"{rested.pour_g:.0f} g from the tap and {rested.ice_g:.0f} g of ice"
    return f"If flour and water rest for 30 min first, take {how} (--rest 30min)."


def _on_rule(day: Day, water: WaterPlan) -> list[str]:
    known = [day.temperatures_c["room"], water.friction_k]
    names = ["flour", "room"]
    if day.preferment:
        known.insert(1, day.temperatures_c.get("preferment", day.temperatures_c["room"]))
        names.append("preferment")
    factors = len(names) + 1
    known.insert(0, factors * water.desired_c - water.factor_rule_c - sum(known))  # the flours' mean
    less = "".join(f" {'−' if value >= 0 else '+'} {abs(value):.1f}" for value in known)
    impossible = ", which is no water" if water.factor_rule_c < 0 else ""
    whose = "as you gave it" if day.friction_k is not None else "from your batches" if water.friction_given else "here"
    return [
        f"The bakers' factor rule says {degrees(water.factor_rule_c)}{impossible}: "
        f"{factors} × {water.desired_c:.1f}{less} ({', '.join(names)}, friction). It would make the dough "
        f"{signed(water.dough_by_rule_c)} °C.",
        f"Why they differ: {escape(water.reason)}.",
        f"Friction is the rule's number for mixing and all that it leaves out: {kelvins(water.friction_k)} {whose}; "
        "libferment friction finds yours from a batch.",
    ]


def _table_of_shares(water: WaterPlan) -> Sheet:
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


def _assumed(day: Day) -> list[str]:
    """Say what was reckoned with and not given."""
    assumed = []
    if day.flour_g is None:
        assumed.append(f"{bowls.ASSUMED_FLOUR_G:.0f} g of flour (--flour-g)")
    if "water_percent" not in day.dough:
        assumed.append("65 % water (--water-g)")
    if "salt_percent" not in day.dough:
        assumed.append("2 % salt")
    if day.bowl is None:
        assumed.append("no bowl (--bowl, --bowl-g)")
    return [f"Assumed: {', '.join(assumed)}."] if assumed else []


def _how_to_log(day: Day, plan: bowls.Plan) -> list[str]:
    """The lines to put into the day file when the dough is mixed."""
    water = plan.water
    if water.ice_g:
        return []  # a batch with ice is logged from Python, where its ice can be told
    room_c = day.temperatures_c["room"]
    lines = {
        "dough": "__C",
        "water": f"{water.pour_c:.1f}C",
        "flour": f"{day.temperatures_c.get('flour', room_c):g}C",
        "room": f"{room_c:g}C",
    }
    for key in ("preferment", "bowl", "milk", "egg", "butter"):
        if key in day.temperatures_c:
            lines[key] = f"{day.temperatures_c[key]:g}C"
    if day.rest_h:
        lines["rest"] = f"{60 * day.rest_h:.0f}min"
    batch = "\n".join(["[[batch]]", *(f'{key} = "{value}"' for key, value in lines.items())])
    minutes = 0.0 if plan.mix.mixing is None else mixing_minutes(plan.mix.mixing)
    if minutes:
        batch += f"\nminutes = {minutes:g}"
    return [
        "Measure the dough at the end of mixing, add this to the day file, and the next plan is surer:",
        escape(batch),
    ]


# ---- what batches say ------------------------------------------------------------------------------------------------

UNUSUAL_GAIN_KJ_PER_KG = (-3.0, 25.0)


def print_learned(day: Day, learned: bowls.Learned) -> None:
    """Print friction and net gain of every batch, their mean and spread, and what to do with them."""
    console = Screen()
    _print_title(console, day)
    table = Sheet("", "batch", "friction", "net gain")
    friction, gain = learned.friction, learned.net_gain
    for number, (friction_k, kj_per_kg) in enumerate(zip(friction.each, gain.each, strict=True), 1):
        table.add_row(str(number), kelvins(friction_k), f"{signed(kj_per_kg)} kJ/kg")
    table.add_section()
    table.add_row(
        "[bold]mean[/bold]", f"[bold]{kelvins(friction.mean)}[/bold]", f"[bold]{signed(gain.mean)} kJ/kg[/bold]"
    )
    if friction.sd is not None and gain.sd is not None:
        table.add_row("spread (sd)", kelvins(friction.sd), f"{signed(gain.sd)} kJ/kg")
    console.print(table)
    console.print(
        "The net gain is the heat your mixing leaves in a kilogram of dough. It holds in "
        + (
            "warm and cold rooms"
            if learned.minutes
            else "rooms much like these (tell --mixing, and it holds in others)"
        )
        + ", for this way of mixing and this size of batch. The friction holds in rooms like these batches' alone."
    )
    minutes = f" --minutes {learned.minutes:g}" if learned.minutes else ""
    console.print(f"Next time: libferment water ... --net-gain {round(gain.mean, 1) + 0.0:.1f}{minutes}")
    low, high = UNUSUAL_GAIN_KJ_PER_KG
    if not all(low <= each <= high for each in gain.each):
        console.print(
            f"[bold]caution[/bold]: a net gain outside {signed(low, 0)} to {high:.0f} kJ/kg is unusual; "
            "look for a mistyped temperature or a missing bowl."
        )
    for line in _assumed(day):
        console.print(line)


LATER = "after more than two days"
"""When a dough is over-proofed that is not so in the two days which are followed."""

# ---- the rises -------------------------------------------------------------------------------------------------------


def _drift_text(plan: StagePlan) -> str:
    """Write the dough's temperature over a stage."""
    first, last = signed(plan.dough_c), signed(plan.end_c)
    return f"{first} °C" if first == last else f"{first} → {last} °C"


def print_stages(day: Day, plans: list[StagePlan]) -> None:
    """Print a day's stages as a table, and what its times hold for."""
    console = Screen()
    table = Sheet(day.title, "stage", "dough", "rise", "takes", "ready at", "be back by")
    for plan in plans:
        table.add_row(
            escape(plan.name),
            _drift_text(plan),
            f"{plan.rise_percent:.0f} %",
            f"[bold]{quantities.clock_text(plan.hours)}[/bold]",
            quantities.clock_text(plan.ready_h),
            LATER if plan.be_back_by_h is None else quantities.clock_text(plan.be_back_by_h),
        )
    console.print(table)
    for plan in plans:
        if plan.folds_done < plan.folds_planned:
            console.print(
                f"{escape(plan.name)}: ready before fold {plan.folds_done + 1} of {plan.folds_planned}; "
                "leave the rest out."
            )
    console.print("Counted from the end of mixing; be back by: from then on the dough is over-proofed.")
    drifting = [plan for plan in plans if plan.time_constant_h is not None]
    if len(drifting) < len(plans):
        held = "A dough" if not drifting else "Where no place is given, a dough"
        console.print(f"{held} stays at its temperature.")
    if drifting:
        console.print(_on_drift(drifting[0]))
    console.print("Times are by the parameter set 2026-1, not yet your kitchen's: look early.")


def _on_drift(plan: StagePlan) -> str:
    assert plan.time_constant_h is not None
    third = quantities.clock_text(plan.time_constant_h * math.log(3))
    return (
        f"A dough nears the place it is in and is warmed by its own fermentation; in the {escape(plan.name)} the "
        f"difference falls to a third in {third}, reckoned from weight and shape: measure it once with a probe."
    )


def print_piece(day: Day, plan: StagePlan, timeline: Timeline, compared: ConstantComparison | None) -> None:
    """Print when a piece of dough is ready in its surroundings, and how it gets there."""
    console = Screen()
    answer = f"[bold]{quantities.clock_text(plan.hours)}[/bold] to a rise of {plan.rise_percent:.0f} %"
    if day.stages[0].until_h is not None:
        answer = f"a rise of [bold]{plan.rise_percent:.0f} %[/bold] after {quantities.clock_text(plan.hours)}"
    if abs(plan.end_c - plan.dough_c) < 0.05:
        console.print(f"{answer}; the dough stays at {degrees(plan.dough_c)}.")
    else:
        console.print(f"{answer}; the dough goes from {degrees(plan.dough_c)} to {degrees(plan.end_c)}.")
    if compared is not None and abs(compared.earlier_h) >= 1 / 120:
        sooner = "early" if compared.earlier_h > 0 else "late"
        console.print(
            f"A dough that stayed at {degrees(plan.dough_c)} would take {quantities.clock_text(compared.hours)}: that "
            f"would be {quantities.clock_text(abs(compared.earlier_h))} too {sooner}."
        )
    if plan.be_back_by_h is not None:
        console.print(f"Be back by {quantities.clock_text(plan.be_back_by_h)}: from then on it is over-proofed.")
    elif day.stages[0].until_h is None:
        console.print(f"It is over-proofed {LATER}.")
    table = Sheet("", "after", "surroundings", "dough", "rise")
    for row in _rows_to_show(timeline):
        air = "" if plan.time_constant_h is None else f"{signed(timeline.air_c[row])} °C"
        table.add_row(
            quantities.clock_text(timeline.time_h[row]),
            air,
            f"{signed(timeline.mean_c[row])} °C",
            f"{timeline.rise_percent[row]:.0f} %",
        )
    console.print(table)
    if plan.time_constant_h is not None:
        if day.flour_g is None:
            console.print("Reckoned for the dough of 500 g of flour; give --piece-g for yours.")
        console.print(_on_drift(plan))
    console.print("Times are by the parameter set 2026-1, not yet your kitchen's: look early.")


def _rows_to_show(timeline: Timeline) -> list[int]:
    """Choose some seven moments of a timeline: its start, full steps of a round length, and its end."""
    times = timeline.time_h
    steps = (0.25, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 168.0)
    step = next((step for step in steps if times[-1] / step <= 7), steps[-1])
    rows = [0]
    while (next_h := (len(rows)) * step) < times[-1] - step / 4:
        rows.append(int(abs(times - next_h).argmin()))
    return [*rows, len(times) - 1]


# ---- asked backwards -------------------------------------------------------------------------------------------------


def print_until(day: Day, process: Process, answer: Until, clock: quantities.Clock) -> None:
    """Print when each stage is ready with its window, how likely the wanted hour is, and what would make it so."""
    console = Screen()
    table = Sheet(day.title, "stage", "ready", "9 in 10 between", "look first", "be back by")
    for stage in answer.forecast.stages:
        early, late = stage.interval_h(0.9)
        table.add_row(
            escape(stage.name),
            f"[bold]{clock.text(stage.ready_h)}[/bold]",
            f"{clock.text(early)} and {clock.text(late)}" if early != late else "",
            clock.text(stage.look_first_h) if stage.by_rise else "",
            clock.text(stage.be_back_by_h) if stage.be_back_by_h is not None else LATER,
        )
    console.print(table)
    console.print(
        "Look first: one dough in ten has risen as far as is just acceptable; be back by: nine in ten are not "
        "over-proofed."
    )
    name, hour = escape(answer.stage.name), clock.text(answer.ready_h)
    console.print(f"By [bold]{hour}[/bold] the {name} is ready in {100 * answer.by_then:.0f} of 100 doughs.")
    choices = Sheet("", f"for the {name} to be ready at {hour}", "choose one", "instead of")
    for each in answer.answers:
        choices.add_row(*_row_of_answer(each, process, clock))
    console.print(choices)
    print_notices(console, [*answer.forecast.notices, *_notices_of(answer)])


def _row_of_answer(answer: Answer, process: Process, clock: quantities.Clock) -> tuple[str, str, str]:
    labels = {"yeast": "yeast", "room": "room", "start": "mixed", "refrigerator": "into the refrigerator"}
    label, choice = labels[answer.asked], answer.choice
    if choice is None:
        return label, "none", answer.reason
    if answer.asked == "yeast":
        mixes = [step for step in process.steps if isinstance(step, Mix)]
        now = sum(mix.instant_g + mix.active_dry_g + mix.compressed_g for mix in mixes)
        cost = f" ({signed(choice.rounding_min, 0)} min)" if choice.rounded != choice.value else ""
        return label, f"{choice.rounded:.3g} g{cost}", f"{now:.3g} g"
    if answer.asked == "room":
        places = [place for step in process.steps if not isinstance(step, Mix) for place in step.surroundings.places]
        rooms = [place.temperature_c for place in places if place.air == "room" and not place.is_dough]
        now_c = next((room for room in rooms if room is not None), None)
        others = "".join(f" or {signed(value)} °C" for value in choice.all[1:])
        return label, f"{signed(choice.value)} °C{others}", "" if now_c is None else f"{signed(now_c)} °C"
    if answer.asked == "start" and clock.mixed_h is None:
        return label, f"{quantities.clock_text(abs(choice.value))} {'later' if choice.value >= 0 else 'sooner'}", ""
    return label, clock.text(choice.value), clock.text(0.0) if answer.asked == "start" else ""


def _notices_of(answer: Until) -> list[Notice]:
    """Cautions of the choices that the forecast does not have."""
    known = {notice.code for notice in answer.forecast.notices}
    found: dict[str, Notice] = {}
    for each in answer.answers:
        for notice in each.choice.notices if each.choice is not None else []:
            if notice.code not in known:
                found.setdefault(notice.code, notice)
    return list(found.values())
