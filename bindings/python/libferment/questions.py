"""A day asked backwards: what to choose so that a stage is ready at an hour."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from libferment._core import (
    Choice,
    Forecast,
    Process,
    StageForecast,
    Surroundings,
    forecast,
    latest_start,
    refrigerate_from,
    room_for,
    yeast_for,
)
from libferment._errors import InvalidInput, NoSolution
from libferment._quantities import clock_text, in_writing

CHOICES = ("yeast", "room", "start", "refrigerator")


@dataclass(frozen=True)
class Answer:
    """What a question came to: a choice, or why there is none."""

    asked: str
    choice: Choice | None
    reason: str = ""


@dataclass(frozen=True)
class Until:
    """A day that is to be ready at an hour: its forecast, how likely it is, and what would make it so."""

    forecast: Forecast
    stage: StageForecast
    ready_h: float
    by_then: float
    """Share of doughs that are ready by that hour."""
    answers: tuple[Answer, ...]


def _asked(name: str, ask: Callable[[], Choice]) -> Answer:
    try:
        return Answer(name, ask())
    except NoSolution as problem:
        low, high = problem.low, problem.high
        if low is None or high is None:
            return Answer(name, None, "it is never ready")
        return Answer(name, None, f"within reach is {clock_text(low)} to {clock_text(high)}")
    except InvalidInput as problem:
        return Answer(name, None, in_writing(problem))


def until(
    process: Process,
    ready_h: float,
    *,
    stage: str | None = None,
    scale_g: float = 0.0,
    choose: tuple[str, ...] = ("yeast", "room", "start"),
    refrigerator_c: float = 4.0,
) -> Until:
    """Work out what makes a stage of a process ready at an hour, h of the process; the last stage if none is named.

    Raises InvalidInput; OutsideModel.
    """
    told = forecast(process)
    by_name = {each.name: each for each in told.stages}
    if stage is not None and stage not in by_name:
        raise InvalidInput(f'no stage is named "{stage}"; known: {", ".join(by_name)}')
    its = told.stages[-1] if stage is None else by_name[stage]
    wanted: dict[str, Any] = {"stage": its.name, "ready_h": ready_h}
    cold = Surroundings.refrigerator(refrigerator_c)
    questions: dict[str, Callable[[], Choice]] = {
        "yeast": lambda: yeast_for(process, scale_g=scale_g, **wanted),
        "room": lambda: room_for(process, **wanted),
        "start": lambda: latest_start(process, **wanted),
        "refrigerator": lambda: refrigerate_from(process, refrigerator=cold, **wanted),
    }
    by_then = float((its.ready <= ready_h).mean())
    return Until(told, its, ready_h, by_then, tuple(_asked(name, questions[name]) for name in choose))
