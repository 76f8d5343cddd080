"""What the compiled value classes share in Python: how they are shown, turned into plain data and rebuilt."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from libferment._core import StageResult, Timeline


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


def timeline_text(timeline: Timeline) -> str:
    """Show the stages of a timeline as a small table, and its cautions."""
    rows = [_HEADINGS, *_lines_of_stages(timeline)]
    widths = [max(len(row[i]) for row in rows) for i in range(len(_HEADINGS))]
    lines = ["  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]
    return "\n".join([*lines, *(f"{notice.severity}: {notice.text}" for notice in timeline.notices)])


def timeline_html(timeline: Timeline) -> str:
    """Show the same for a notebook."""
    head = "".join(f"<th>{heading}</th>" for heading in _HEADINGS)
    body = "".join(
        "<tr>" + "".join(f"<td>{escape(cell)}</td>" for cell in row) + "</tr>" for row in _lines_of_stages(timeline)
    )
    notices = "".join(f"<p><b>{notice.severity}</b>: {escape(notice.text)}</p>" for notice in timeline.notices)
    return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>{notices}"
