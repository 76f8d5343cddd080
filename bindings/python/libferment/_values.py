"""What the compiled value classes share in Python: how they are shown, turned into plain data and rebuilt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from libferment._core import Choice, Forecast, Notice, StageForecast, StageResult, Timeline


def plain(value: Any) -> Any:
    """Turn a value class into a dict, lists of them into lists; leave numbers and texts alone."""
    if isinstance(value, (list, tuple)):
        return [plain(item) for item in value]
    if hasattr(value, "to_dict"):
        content = plain_dict(value.to_dict())
        return {"type": type(value).__name__, **content} if type(value).__name__.startswith("By") else content
    return value


def plain_dict(values: Mapping[str, Any]) -> dict[str, Any]:
    """Turn every value of a dict into plain data."""
    return {name: plain(value) for name, value in values.items()}


def shown(self: object, values: Mapping[str, Any], defaults: Mapping[str, Any]) -> str:
    """Write the call that makes this value, without what is at its default."""
    given = {name: value for name, value in values.items() if name not in defaults or value != defaults[name]}
    return f"{type(self).__name__}({', '.join(f'{name}={value!r}' for name, value in given.items())})"


def rebuilt(kind: type, values: Mapping[str, Any]) -> object:
    """Make the value again from its keywords; what pickle calls."""
    return kind(**values)


def _hours(hours: float) -> str:
    minutes = round(60 * hours)
    return f"{minutes // 60} h {minutes % 60:02d} min" if minutes >= 0 else f"{hours:.2f} h"


def _lines_of_stages(timeline: Timeline) -> list[tuple[str, ...]]:
    """One line for each stage: name, start, end, dough temperatures, rise, be back by."""
    return [
        (
            stage.name,
            _hours(stage.start_h),
            _hours(stage.end_h) if stage.ended else "not ended",
            f"{stage.start_c:.1f} to {stage.end_c:.1f} °C",
            f"{stage.rise_percent:.0f} %",
            "" if stage.be_back_by_h is None else _hours(stage.be_back_by_h),
        )
        for stage in timeline.stages
    ]


_HEADINGS = ("stage", "from", "until", "dough", "rise", "be back by")


def stage_result_text(stage: StageResult) -> str:
    """Say in a line what a stage came to."""
    end = f"ends at {stage.end_h:.4g} h" if stage.ended else f"stopped at {stage.end_h:.4g} h"
    return f"<StageResult {stage.name}: {end}, {stage.end_c:.1f} °C, rise {stage.rise_percent:.4g} %>"


def _table_text(rows: Sequence[Sequence[str]], notices: Sequence[Notice]) -> str:
    """Line up the columns of a small table, cautions below."""
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))]
    lines = ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
    return "\n".join([*lines, *(f"{notice.severity}: {notice.text}" for notice in notices)])


def _table_html(rows: Sequence[Sequence[str]], notices: Sequence[Notice]) -> str:
    """Show the same for a notebook."""
    head = "".join(f"<th>{heading}</th>" for heading in rows[0])
    body = "".join("<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in rows[1:])
    told = "".join(f"<p><b>{notice.severity}</b>: {escape(notice.text)}</p>" for notice in notices)
    return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>{told}"


def timeline_text(timeline: Timeline) -> str:
    """Show the stages of a timeline as a small table, and its cautions."""
    return _table_text([_HEADINGS, *_lines_of_stages(timeline)], timeline.notices)


def timeline_html(timeline: Timeline) -> str:
    """Show the same for a notebook."""
    return _table_html([_HEADINGS, *_lines_of_stages(timeline)], timeline.notices)


def _maybe(hours: float | None) -> str:
    return "never" if hours is None else _hours(hours)


def _rows_of_forecast(forecast: Forecast) -> list[tuple[str, ...]]:
    rows: list[tuple[str, ...]] = [("stage", "ready", "9 in 10 between", "look first", "be back by", "never ready")]
    for stage in forecast.stages:
        early, late = stage.interval_h(0.9)
        rows.append(
            (
                stage.name,
                _maybe(stage.ready_h),
                f"{_maybe(early)} and {_maybe(late)}" if early != late else "",
                _maybe(stage.look_first_h) if stage.by_rise else "",
                "after more than two days" if stage.be_back_by_h is None else _hours(stage.be_back_by_h),
                f"{100 * stage.never_ready:.0f} %" if stage.never_ready else "",
            )
        )
    return rows


def stage_forecast_text(stage: StageForecast) -> str:
    """Say in a line when a stage will be ready."""
    early, late = stage.interval_h(0.9)
    return f"<StageForecast {stage.name}: ready at {_maybe(stage.ready_h)} ({_maybe(early)} to {_maybe(late)})>"


def forecast_text(forecast: Forecast) -> str:
    """Show the stages of a forecast as a small table, and its cautions."""
    return _table_text(_rows_of_forecast(forecast), forecast.notices)


def forecast_html(forecast: Forecast) -> str:
    """Show the same for a notebook."""
    return _table_html(_rows_of_forecast(forecast), forecast.notices)


_CHOICES = {
    "yeast_g": ("yeast", "{:.2f} g"),
    "water_c": ("water", "{:.1f} °C"),
    "air_c": ("air", "{:.1f} °C"),
    "start_h": ("start at", "{:.2f} h"),
    "move_h": ("move at", "{:.2f} h"),
}


def _rows_of_choice(choice: Choice) -> list[tuple[str, ...]]:
    name, form = _CHOICES[choice.what]
    rows: list[tuple[str, ...]] = [("choice", "", "ready"), (name, form.format(choice.value), _hours(choice.ready_h))]
    if choice.rounded != choice.value:
        rows.append((f"{name}, weighed", f"{choice.rounded:.4g} g", _hours(choice.rounded_ready_h)))
    return rows


def choice_text(choice: Choice) -> str:
    """Show a choice and what comes of it."""
    return _table_text(_rows_of_choice(choice), choice.notices)


def choice_html(choice: Choice) -> str:
    """Show the same for a notebook."""
    return _table_html(_rows_of_choice(choice), choice.notices)
