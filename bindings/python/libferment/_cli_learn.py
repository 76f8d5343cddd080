"""Commands of a kitchen that learns: what was seen goes into the day's file, a logbook becomes a kitchen."""

from __future__ import annotations

import contextlib
import json
import math
import re
import sys
from collections.abc import Sequence
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import click

import libferment as lf
from libferment._documents import text_of
from libferment._files import read_text, write_text
from libferment._kitchen import kitchen_option, own_path, with_kitchen
from libferment._screen_learn import print_learned, print_seen
from libferment.day import content_of, day_of, in_writing

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_PERCENT = re.compile(r"(\d+(?:[.,]\d+)?)\s*%?")
_CENTIMETRES = re.compile(r"(\d+(?:[.,]\d+)?)\s*cm", re.IGNORECASE)
_TEMPERATURE = re.compile(r"[-−+]?\d+(?:[.,]\d+)?\s*°?[CF]", re.IGNORECASE)
_WAYS = {"not-yet": "not_yet_percent", "past": "already_past_percent", "already-past": "already_past_percent"}
_MARKS = {"over-proofed": "over_proofed", "overproofed": "over_proofed", "collapsed": "collapsed"}
Entry = dict[str, str | float | bool | list[str]]


def _number(text: str) -> float:
    number = float(text.replace(",", "."))
    return int(number) if number.is_integer() else number


def _what(words: Sequence[str]) -> Entry:
    """Read what was seen: ``60%``, ``not-yet 60%``, ``past 60%``, ``23.1C``, ``7.5cm``, ``over-proofed``."""
    text = " ".join(words).strip().lower().replace("not yet", "not-yet").replace("already past", "past")
    if text in _MARKS:
        return {_MARKS[text]: True}
    way, _, rest = text.partition(" ")
    if way in _WAYS and (percent := _PERCENT.fullmatch(rest.strip())):
        return {_WAYS[way]: _number(percent[1])}
    if _TEMPERATURE.fullmatch(text):
        return {"dough": text.upper().replace("°", "").replace(" ", "")}
    if height := _CENTIMETRES.fullmatch(text):
        return {"height_cm": _number(height[1])}
    if text.endswith("%") and (percent := _PERCENT.fullmatch(text)):
        return {"rise_percent": _number(percent[1])}
    raise lf.InvalidInput(
        f'"{" ".join(words)}" says nothing of the dough',
        path="WHAT",
        advice="write 60%, not-yet 60%, past 60%, 23.1C, 7.5cm, over-proofed or collapsed",
    )


def _toml(entry: Entry) -> str:
    lines = [f"{key} = {json.dumps(value, ensure_ascii=False)}" for key, value in entry.items()]
    return "\n".join(["[[seen]]", *lines, ""])


def _day_of(path: str, text: str) -> lf.Day:
    """The day of a file's text, written or not. Raises InvalidInput in the words of the file."""
    return day_of(content_of(text, path), path)


def _forecast(path: str, day: lf.Day) -> str | None:
    """The forecast of a day, as a document; None where it cannot be told."""
    try:
        return lf.ask(text_of(with_kitchen({"ask": "forecast", "day": day})))
    except lf.InvalidInput as problem:
        problem.path = problem.path.removeprefix("day.")
        raise lf.InvalidInput(f"{path}: {in_writing(problem)}") from None
    except lf.NoSolution:
        return None


def _read(answer: str | None) -> SimpleNamespace | None:
    if answer is None:
        return None
    read: SimpleNamespace = json.loads(answer, object_hook=lambda each: SimpleNamespace(**each))
    return read


def _write_and_tell(path: str, before: str, after: str, stage: str, what: str, as_json: bool) -> None:
    """Write the file, whole or not at all, when the library has read the day; then tell what it now expects."""
    day, old = _day_of(path, after), None
    told = _forecast(path, day)
    with contextlib.suppress(lf.Error):
        old = _forecast(path, _day_of(path, before))
    write_text(path, after)
    if as_json:
        print("null" if told is None else told)
        return
    print_seen(stage, what, _read(told), _read(old))


def _require_stage(day: lf.Day, stage: str) -> None:
    known = [each.name for each in day.stage]
    if stage not in known:
        raise lf.InvalidInput(f'no stage is called "{stage}"', path="STAGE", advice=f"known: {', '.join(known)}")


@click.command()
@click.argument("day_file", type=click.Path(dir_okay=False))
@click.argument("stage")
@click.argument("at")
@click.argument("what", nargs=-1, required=True)
@click.option("--between", metavar="CLOCK|TIME", help="Not yet there at this time, and past at AT.")
@click.option("--start-height", metavar="HEIGHT", help="Height when the stage began, for a height: 5cm.")
@kitchen_option
@click.option("--json", "as_json", is_flag=True, help="Print the new forecast as JSON, for programs.")
def seen(
    day_file: str,
    stage: str,
    at: str,
    what: tuple[str, ...],
    between: str | None,
    start_height: str | None,
    as_json: bool,
) -> None:
    """Write down what was seen of the dough, and what that makes of the rest of the day.

    AT is a time of day, or a time since the stage began. WHAT is a rise, a height, the dough's temperature, or a word:

    libferment seen day.toml bulk 11:05 60%

    libferment seen day.toml bulk 90min not-yet 60%

    libferment seen day.toml "final proof" 15:20 24.5C

    libferment seen day.toml bulk 11:05 over-proofed
    """
    text = read_text(day_file, a_file="the day file")
    _require_stage(_day_of(day_file, text), stage)
    entry: Entry = {"stage": stage}
    entry |= {"at": at} if between is None else {"between": [between, at]}
    entry |= _what(what)
    if start_height is not None:
        height = _CENTIMETRES.fullmatch(start_height.strip())
        if height is None:
            raise lf.InvalidInput(f'"{start_height}" is no height', path="--start-height", advice="write 5cm")
        entry["start_height_cm"] = _number(height[1])
    after = f"{text.rstrip()}\n\n{_toml(entry)}"
    _write_and_tell(day_file, text, after, stage, f"{' '.join(what)} at {at}", as_json)


@click.command()
@click.argument("day_file", type=click.Path(dir_okay=False))
@click.argument("stage")
@click.argument("at")
@kitchen_option
@click.option("--json", "as_json", is_flag=True, help="Print the new forecast as JSON, for programs.")
def ended(day_file: str, stage: str, at: str, as_json: bool) -> None:
    """Write down when a stage really ended, and what that makes of the rest of the day.

    That is what was done, and says nothing of the rise: what was seen is a matter of its own.

    libferment ended day.toml bulk 11:10
    """
    text = read_text(day_file, a_file="the day file")
    before = _day_of(day_file, text)
    _require_stage(before, stage)
    after = _with_end(text, stage, at)
    day = _day_of(day_file, after)
    if [each.ended for each in day.stage if each.name == stage] != [at]:
        raise lf.InvalidInput(
            f'{day_file}: the table of stage "{stage}" is not found',
            advice=f'write ended = "{at}" into it by hand',
        )
    _write_and_tell(day_file, text, after, stage, f"ended at {at}", as_json)


def _with_end(text: str, stage: str, at: str) -> str:
    """The file's text with the end of a stage in its table, all else as it was."""
    lines = text.splitlines()
    named = re.compile(r"\s*name\s*=\s*[\"']" + re.escape(stage) + r"[\"']\s*(#.*)?")
    table = ""
    for place, line in enumerate(lines):
        if header := re.match(r"\s*\[+\s*([\w.]+)\s*\]+", line):
            table = header[1]
        if table != "stage" or not named.fullmatch(line):
            continue
        first = next((i for i in range(place, -1, -1) if lines[i].lstrip().startswith("[[")), 0)
        last = next((i for i in range(place + 1, len(lines)) if lines[i].lstrip().startswith("[")), len(lines))
        old = next((i for i in range(first, last) if re.match(r"\s*ended\s*=", lines[i])), None)
        new = f"ended = {json.dumps(at)}"
        if old is None:
            lines.insert(place + 1, new)
        else:
            lines[old] = new
        return "\n".join(lines) + "\n"
    return text


@click.command()
@click.argument("logbook", type=click.Path())
@click.option("--kitchen", "save_as", metavar="FILE", help="Where the kitchen goes. [default: your own]")
@click.option("--plot", metavar="FILE", help="Draw predicted against logged, and what was learned: svg, png or pdf.")
@click.option("--json", "as_json", is_flag=True, help="Print all that was learned as JSON, for programs.")
def learn(logbook: str, save_as: str | None, plot: str | None, as_json: bool) -> None:
    """Learn your kitchen from a LOGBOOK: a folder of day files with what was seen, or a table of rises (CSV).

    The kitchen is learned anew from all of it and saved; every other command then answers for it.

    libferment learn logbook/ --kitchen mine.json
    """
    book = lf.read_logbook(logbook)
    with _working(len(book)):
        told = lf.calibration(book)
    path = Path(save_as) if save_as is not None else own_path()
    if save_as is None:
        with contextlib.suppress(OSError):  # what cannot be made is told when the file cannot be written
            path.parent.mkdir(parents=True, exist_ok=True)
    write_text(path, told.kitchen.to_json() + "\n")
    if plot is not None:
        _draw(told, plot)
    if as_json:
        print(told.to_json())
        return
    print_learned(book, told, path)


@contextlib.contextmanager
def _working(bakes: int) -> Any:
    """Say that it takes a while, where somebody waits at a terminal."""
    if bakes < 20 or not sys.stderr.isatty():
        yield
        return
    from rich.console import Console

    with Console(stderr=True).status(f"learning from {bakes} bakes"):
        yield


def _draw(told: lf.Calibration, path: str) -> None:
    """Draw predicted against logged hours, and how each parameter narrowed."""
    try:
        from matplotlib.figure import Figure
    except ImportError:
        raise lf.InvalidInput(
            "plots need the package matplotlib, and it is not installed", path="--plot", advice="pip install matplotlib"
        ) from None
    figure = Figure(figsize=(8, 3.8), layout="constrained")
    left, right = figure.subplots(1, 2)
    _draw_hours(left, told)
    _draw_shares(right, told)
    try:
        figure.savefig(path)
    except (OSError, ValueError) as problem:
        raise lf.InvalidInput(f"{path} cannot be drawn: {problem}", path="--plot") from None


def _draw_hours(axes: Axes, told: lf.Calibration) -> None:
    from matplotlib.ticker import LogLocator, NullLocator

    looks = [look for look in told.residuals if look.was not in ("height", "dough") and look.expected is not None]
    noise = math.sqrt(2 * told.kitchen.log_time_scale**2 + told.kitchen.bake_sd**2 + told.kitchen.model_sd**2)
    for look in looks:
        if look.expected is None:
            continue
        ends = [look.expected * math.exp(sign * 1.645 * noise) for sign in (-1, 1)]
        colour = "#D55E00" if look.surprising else "#0072B2"
        axes.plot([look.seen, look.seen], ends, color=colour, alpha=0.4, linewidth=1)
        axes.plot(look.seen, look.expected, {"at": "o", "not_yet": ">", "past": "<"}.get(look.was, "s"), color=colour)
    hours = [value for look in looks for value in (look.seen, look.expected or look.seen)]
    ends = [0.8 * min(hours, default=1), 1.25 * max(hours, default=2)]
    axes.plot(ends, ends, color="#666666", linewidth=1)
    axes.set(xscale="log", yscale="log", xlabel="logged, h", ylabel="expected, h; bars: nine bakes of ten")
    for axis in (axes.xaxis, axes.yaxis):
        axis.set_major_locator(LogLocator(base=2))
        axis.set_major_formatter("{x:g}")
        axis.set_minor_locator(NullLocator())
    axes.set_title("Rises: expected and logged", fontsize=10)


def _draw_shares(axes: Axes, told: lf.Calibration) -> None:
    rows = sorted((row for row in told.kitchen.learned if row.share < 0.97), key=lambda row: row.share)
    names = [row.name.replace("_", " ") for row in rows]
    axes.barh(names, [100 * row.share for row in rows], color="#0072B2", height=0.6)
    axes.axvline(100, color="#666666", linewidth=1)
    axes.invert_yaxis()
    axes.set(xlim=(0, 105), xlabel="of the first uncertainty that is left, %")
    axes.set_title("What was learned", fontsize=10)
