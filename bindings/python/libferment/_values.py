"""What the compiled value classes share in Python: how they are shown, turned into plain data and rebuilt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import pandas as pd

    from libferment._core import (
        Choice,
        Explanation,
        Forecast,
        HeatShare,
        Kitchen,
        Node,
        Notice,
        Percent,
        StageForecast,
        StageResult,
        Timeline,
        WaterPlan,
    )


def shown(self: object, values: Mapping[str, Any], defaults: Mapping[str, Any]) -> str:
    """Write the call that makes this value, without what is at its default."""
    given = {name: value for name, value in values.items() if name not in defaults or value != defaults[name]}
    return f"{type(self).__name__}({', '.join(f'{name}={value!r}' for name, value in given.items())})"


def rebuilt(kind: type, values: Mapping[str, Any]) -> object:
    """Make the value again from its keywords; what pickle calls."""
    return kind(**values)


def _hours(hours: float) -> str:
    minutes = round(60 * hours)
    if 0 <= minutes < 60:
        return f"{minutes} min"
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


def _late(stage: StageForecast) -> str:
    """Write when one dough in ten has risen too far; nothing for a stage that cannot within its time."""
    if stage.be_back_by_h is not None:
        return _hours(stage.be_back_by_h)
    return "after more than two days" if stage.by_rise else ""


def _rows_of_forecast(forecast: Forecast) -> list[tuple[str, ...]]:
    headings = ("stage", "look first", "be back by", "usually ready", "9 in 10 between", "never ready")
    rows: list[tuple[str, ...]] = [headings]
    for stage in forecast.stages:
        early, late = stage.interval_h(0.9)
        rows.append(
            (
                stage.name,
                _maybe(stage.look_first_h) if stage.by_rise else "",
                _late(stage),
                _maybe(stage.ready_h),
                f"{_maybe(early)} and {_maybe(late)}" if early != late else "",
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
        rows.append((f"{name}, weighed", f"{choice.rounded:.4g} g", _maybe(choice.rounded_ready_h)))
    return rows


def choice_text(choice: Choice) -> str:
    """Show a choice and what comes of it."""
    return _table_text(_rows_of_choice(choice), choice.notices)


def choice_html(choice: Choice) -> str:
    """Show the same for a notebook."""
    return _table_html(_rows_of_choice(choice), choice.notices)


def _frame(rows: Any) -> pd.DataFrame:
    import pandas as pd

    return pd.DataFrame(rows)


def plan_frame(plan: WaterPlan) -> pd.DataFrame:
    """Show how much each thing counts for the water, by name."""
    return _frame([share.to_dict() for share in plan.shares]).set_index("name")


def timeline_frame(timeline: Timeline) -> pd.DataFrame:
    """Show the columns of a timeline, with the stages' names."""
    names = [stage.name for stage in timeline.stages]
    columns = {"stage": [names[index] for index in timeline.stage]}
    for name in ("time_h", "mean_c", "core_c", "surface_c", "air_c", "equivalent_h", "co2_mmol", "rise_percent"):
        columns[name] = getattr(timeline, name)
    return _frame(columns)


def stage_row(stage: StageForecast) -> dict[str, Any]:
    """Turn the forecast of a stage into a flat row: the 90 % interval in place of all draws."""
    row = stage.to_dict()
    del row["ready"]
    (early, late), (opens, closes) = row.pop("likely_h"), row.pop("window_h")
    head = {name: row.pop(name) for name in ("name", "by_rise", "ready_h")}
    return head | {"early_h": early, "late_h": late, "window_from_h": opens, "window_to_h": closes} | row


def forecast_frame(forecast: Forecast) -> pd.DataFrame:
    """Show the stages of a forecast, by name."""
    return _frame([stage_row(stage) for stage in forecast.stages]).set_index("name")


def notice_text(notice: Notice) -> str:
    """Say a notice in a line."""
    return f"<{notice.severity} {notice.code}: {notice.text}>"


def share_text(share: HeatShare) -> str:
    """Say how much one thing counts."""
    return f"<HeatShare {share.name} {share.dough_k_per_k:.4g}>"


def node_text(node: Node) -> str:
    """Say what a piece is to heat."""
    return f"<Node {node.mass_g:.4g} g, {node.heat_loss_w_per_k:.4g} W/K, time constant {node.time_constant_h:.4g} h>"


def explanation_text(explanation: Explanation) -> str:
    """Walk from the reference dough to this one, a factor in each line."""
    lines = [f"{explanation.reference_h:.4g} h in the reference dough (25 °C, 1 % instant yeast, 2 % salt, 65 % water)"]
    lines += [
        f"  × {each['times']:.4g}  {each['name']} {each['from_value']:.4g} → {each['to_value']:.4g}"
        for each in explanation.to_dict()["factors"]
        if each["times"] != 1
    ]
    return "\n".join([*lines, f"  = {explanation.hours:.4g} h"])


def _lines_of_plan(plan: WaterPlan) -> list[tuple[str, str]]:
    """Name and value of each line that a water plan shows."""
    lines = [
        ("water", f"{plan.water_c:.1f} °C for a dough of {plan.desired_c:.1f} °C"),
        ("pour", f"{plan.pour_g:.0f} g at {plan.pour_c:.1f} °C"),
    ]
    if plan.ice_g > 0:
        lines.append(("ice", f"{plan.ice_g:.0f} g"))
    lines += [
        ("likely dough", f"{plan.low_c:.1f} °C to {plan.high_c:.1f} °C"),
        ("factor rule", f"{plan.factor_rule_c:.1f} °C; it would make the dough {plan.dough_by_rule_c:.1f} °C"),
        ("why", plan.reason),
    ]
    return lines + [("warning" if each.severity == "warning" else "note", each.text) for each in plan.notices]


def plan_text(plan: WaterPlan) -> str:
    """Show a water plan, line by line."""
    return "\n".join(f"{name}: {value}" for name, value in _lines_of_plan(plan))


def plan_html(plan: WaterPlan) -> str:
    """Show the same for a notebook."""
    left = 'style="text-align:left"'
    rows = (f"<tr><th {left}>{name}</th><td {left}>{escape(value)}</td></tr>" for name, value in _lines_of_plan(plan))
    return f"<table>{''.join(rows)}</table>"


def percent_text(percent: Percent) -> str:
    """Write a formula in percent, with as few digits as show it and nothing that is nothing."""
    parts = [f"{name}={value:.4g}" for name, value in percent.to_dict().items() if value]
    return f"Percent({', '.join(parts)})"


def kitchen_text(kitchen: Kitchen) -> str:
    """Write a kitchen without the numbers of its covariance and its bakes, but say that there are some."""
    values, defaults = kitchen.to_dict(), type(kitchen)().to_dict()
    del values["name"]
    hidden = [name for name in ("covariance", "history", "mixing") if values.pop(name)]
    text = shown(kitchen, ({"name": kitchen.name} if kitchen.name else {}) | values, defaults | {"name": ""})
    return f"{text[:-1]}, {', '.join(f'{name}=...' for name in hidden)})" if hidden else text
