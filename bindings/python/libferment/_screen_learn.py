"""What the commands of a kitchen that learns print for people."""

from __future__ import annotations

import datetime
import math
from pathlib import Path
from types import SimpleNamespace

from rich.markup import escape

import libferment as lf
from libferment._output import Screen
from libferment._screen import LATER, hour, print_notices

_LABELS = {row.name: row for row in lf.parameters()}


def _window(stage: SimpleNamespace, clock: bool) -> str:
    early, late = stage.likely_h
    return f"{hour(early, clock)} to {hour(late, clock)}"


def print_seen(stage: str, what: str, told: SimpleNamespace | None, before: SimpleNamespace | None) -> None:
    """Print what a look makes of the rest of the day, the stage that was looked at first."""
    console = Screen()
    console.print(f"Written down: {escape(stage)}, {escape(what)}.")
    if told is None:
        console.print("The usual dough never gets to the end of this day: ask for a smaller rise, or warm it.")
        return
    old = {each.name: each for each in before.stages} if before is not None else {}
    names = [each.name for each in told.stages]
    for each in told.stages[names.index(stage) :]:
        if each.likely_h[0] == each.likely_h[1]:  # it has ended, or ends by a time
            continue
        line = f"[bold]{escape(each.name)}: ready at {hour(each.ready_h, told.clock)}[/bold]"
        line += f", nine in ten {_window(each, told.clock)}"
        was = old.get(each.name)
        if was is not None and was.likely_h != each.likely_h:
            line += f" (before: {hour(was.ready_h, told.clock)}, {_window(was, told.clock)})"
        console.print(f"{line}.")
        console.print(
            f"  Look first at {hour(each.look_first_h, told.clock)}, "
            f"be back by {hour(each.be_back_by_h, told.clock, LATER)}."
        )
    print_notices(console, [each for each in told.notices if each.severity != "info"])


def print_learned(book: lf.Logbook, told: lf.Calibration, path: Path) -> None:
    """Print in few lines what was learned, what was not, and what surprises."""
    console = Screen()
    kitchen = told.kitchen
    looks = len(told.residuals)
    bakes = len(kitchen.history)
    console.print(
        f"Learned from {bakes} bake{'' if bakes == 1 else 's'} with {looks} look{'' if looks == 1 else 's'}; "
        f"saved as {escape(str(path))}."
    )
    for problem in book.problems:
        console.print(f"[bold]not read[/bold]: {escape(problem)}")
    for line in _on_rate(kitchen):
        console.print(line)
    others = sorted((row for row in kitchen.learned if row.share < 0.9), key=lambda row: row.share)
    for row in others:
        if row.name != "gassing_rate":
            console.print(_on_parameter(row))
    for gain in kitchen.mixing:
        gains = gain.net_gains_kj_per_kg
        console.print(
            f"Mixing ({gain.method}) adds {sum(gains) / len(gains):.1f} kJ/kg by {len(gains)} "
            f"batch{'' if len(gains) == 1 else 'es'}: `libferment water` reckons with it."
        )
    still = [row for row in kitchen.learned if row.share >= 0.9]
    console.print(f"Not learned yet, and taken as not known: {len(still)} of {len(kitchen.learned)} parameters.")
    for line in _on_next(book, kitchen):
        console.print(line)
    if kitchen.packet:
        console.print(_on_packet(kitchen))
    for notice in told.notices:
        word = "note" if notice.severity == "info" else notice.severity
        console.print(f"[bold]{word}[/bold]: {escape(notice.text)}")


def _on_rate(kitchen: lf.Kitchen) -> list[str]:
    for row in kitchen.learned:
        if row.name == "gassing_rate" and row.share < 0.99:
            percent = 100 * (row.value / lf.Kitchen().gassing_rate - 1)
            way = "faster" if percent >= 0 else "slower"
            return [
                f"[bold]Your yeast gasses {abs(percent):.0f} % {way} than the table's[/bold], give or take "
                f"{100 * math.expm1(row.sd):.0f} %: {100 * row.share:.0f} % of what was not known of it is left."
            ]
    return []


def _on_parameter(row: lf.Learned) -> str:
    field = _LABELS[row.name]
    before = getattr(lf.Kitchen(), row.name)
    unit = f" {field.unit}" if field.unit else ""
    return (
        f"{field.label[0].upper()}{field.label[1:]}: {row.value:.3g}{unit} (the table has {before:.3g}); "
        f"{100 * row.share:.0f} % of what was not known is left."
    )


def _on_next(book: lf.Logbook, kitchen: lf.Kitchen) -> list[str]:
    """The window of a rise like the last one that was looked at, before and now."""
    for day in reversed(list(book)):
        looks = [look for look in day.seen if look.rise_percent]
        if not looks:
            continue
        look = max((each for each in looks if each.stage == looks[0].stage), key=lambda each: each.rise_percent or 0)
        first = [stage.name for stage in day.stage].index(look.stage)
        stages = day.stage[: first + 1]
        stages[first] = stages[first].replace(ended="", until_h=None, until_rise_percent=look.rise_percent)
        process = lf.process_of(day.replace(stage=stages, seen=[]))
        widths = []
        for its in (lf.Kitchen(), kitchen):
            try:
                early, late = lf.forecast(process, kitchen=its)[look.stage].interval_h(0.9)
            except lf.NoSolution:
                return []
            if early is None or late is None:
                return []
            widths.append(late - early)
        return [
            f"A {escape(look.stage)} like the last one is ready, in nine of ten, within {hour(widths[1], False)}; "
            f"before the first bake it was {hour(widths[0], False)}."
        ]
    return []


def _on_packet(kitchen: lf.Kitchen) -> str:
    dates = sorted(bake.date for bake in kitchen.history if bake.packet == kitchen.packet and bake.date)
    text = f'It knows the yeast "{escape(kitchen.packet)}"; another packet is taken as less certain.'
    if not dates:
        return text
    days = (datetime.date.today() - datetime.date.fromisoformat(dates[-1])).days
    return f"{text} Its newest bake is {days} day{'' if days == 1 else 's'} old." if days >= 0 else text
