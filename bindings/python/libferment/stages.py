"""The stages of a day: its process, what it comes to, and the cautions that belong to it."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from typing import Any, cast

from libferment import _quantities as quantities
from libferment._core import (
    Kitchen,
    Mix,
    Notice,
    Process,
    Stage,
    Surroundings,
    Timeline,
    cautions,
    simulate,
)
from libferment._errors import Error, InvalidInput
from libferment.bowl import formula_of
from libferment.day import Day
from libferment.day import Stage as DayStage


@dataclass(frozen=True)
class StagePlan:
    """When a stage is ready; hours without a word are counted from the end of mixing."""

    name: str
    dough_c: float
    """The dough's temperature when the stage begins."""
    end_c: float
    """And when it ends."""
    start_h: float
    hours: float
    """Hours from the stage's start to its end."""
    rise_percent: float
    be_back_by_h: float | None
    """When the dough would be over-proofed if the stage went on; None if never."""
    folds_done: int
    folds_planned: int
    time_constant_h: float | None
    """In which the dough nears its surroundings; None where its temperature is given."""
    warm_h: float
    """Hours that it is between 5 and 60 °C, where perishable food does not keep."""

    @property
    def ready_h(self) -> float:
        """When the stage is ready."""
        return self.start_h + self.hours


def plan_dict(plan: StagePlan) -> dict[str, Any]:
    """Collect a plan's values for programs."""
    return {**asdict(plan), "ready_h": plan.ready_h}


def mix_at(day: Day, dough_c: float) -> Mix:
    """Build the day's mix as a dough of that temperature, °C. Raises InvalidInput if the yeast is missing."""
    if "yeast_percent" not in day.dough:
        raise InvalidInput("[dough] needs yeast_percent: 3 g on 500 g of flour are 0.6")
    return Mix.from_percent(dough_c=dough_c, yeast_unwetted=day.yeast == "active_dry_unwetted", **formula_of(day))


def _stage_of(stage: DayStage) -> Stage:
    return Stage(
        stage.name,
        piece=stage.piece,
        surroundings=stage.surroundings,
        until_h=stage.until_h,
        until_rise_percent=stage.until_rise_percent,
        folds_h=list(stage.folds_h),
        handling=cast("Any", stage.handling),
        standing=cast("Any", stage.standing),
        final_proof=stage.final_proof,
    )


def process_of(day: Day) -> Process:
    """Build the day as a process that begins at the end of mixing.

    Raises InvalidInput naming what is missing.
    """
    if not day.stages:
        raise InvalidInput("the day file has no [[stage]]; add one with a name and until_rise_percent or until_h")
    first = day.stages[0]
    dough_c = day.desired_c if first.dough_c is None else first.dough_c
    if dough_c is None:
        raise InvalidInput(
            "the dough's temperature at the end of mixing is not known; give [water] desired (or --dough on the "
            "command line)"
        )
    stages = [_stage_of(stage) for stage in day.stages]
    return Process([mix_at(day, dough_c), *stages], altitude_m=day.dough.get("altitude_m", 0.0))


def _warm_hours(timeline: Timeline, index: int) -> float:
    """Hours of a stage between 5 and 60 °C, by the minutes of the timeline."""
    its = timeline.stage == index
    times, warm = timeline.time_h[its], (timeline.mean_c[its] > 5) & (timeline.mean_c[its] < 60)
    hours = times[1:] - times[:-1]
    return float((hours * (warm[1:] & warm[:-1])).sum())


def plan_stages(day: Day, kitchen: Kitchen | None = None) -> list[StagePlan]:
    """Work out the stages one after the other, from the end of mixing.

    Raises InvalidInput; NoSolution for a rise a stage never reaches; OutsideModel.
    """
    timeline = simulate(process_of(day), kitchen)
    plans: list[StagePlan] = []
    for index, (stage, result) in enumerate(zip(day.stages, timeline.stages, strict=True)):
        start_h = plans[-1].ready_h if plans else 0.0
        plans.append(
            StagePlan(
                name=stage.name,
                dough_c=result.start_c,
                end_c=result.end_c,
                start_h=start_h,
                hours=result.hours if stage.until_h is None else stage.until_h,
                rise_percent=result.rise_percent,
                be_back_by_h=result.be_back_by_h,
                folds_done=result.folds_done,
                folds_planned=len(stage.folds_h),
                time_constant_h=result.time_constant_h,
                warm_h=_warm_hours(timeline, index),
            )
        )
    return plans


def notices_of_stages(day: Day, plans: list[StagePlan], kitchen: Kitchen | None = None) -> list[Notice]:
    """Collect the cautions that belong to a planned day, each once, most severe first."""
    percent = mix_at(day, plans[0].dough_c).percent
    numbers: dict[str, Any] = {
        "yeast_percent": percent.instant_equivalent_percent,
        "salt_percent": percent.salt_percent,
        "sugar_percent": percent.sugar_percent,
    }
    found: dict[str, Notice] = {}
    for plan in plans:
        for dough_c in (plan.dough_c, plan.end_c):
            for notice in cautions(dough_c=dough_c, kitchen=kitchen, **numbers):
                found.setdefault(notice.code, notice)
    airs = [day.temperatures_c["refrigerator"]] if "refrigerator" in day.temperatures_c else []
    airs += [stage.refrigerator_c for stage in day.stages if stage.refrigerator_c is not None]
    for air_c in airs:
        for notice in cautions(refrigerator_c=air_c):
            found.setdefault(notice.code, notice)
    if day.perishable:
        for notice in cautions(perishable_h=sum(plan.warm_h for plan in plans)):
            found.setdefault(notice.code, notice)
    for plan in plans:
        if plan.be_back_by_h is not None and plan.be_back_by_h < plan.ready_h:
            text = (
                f'stage "{plan.name}": the dough is over-proofed at {quantities.clock_text(plan.be_back_by_h)}, before '
                f"the stage ends at {quantities.clock_text(plan.ready_h)}; ask for a smaller rise or a shorter time"
            )
            values = {"be_back_by_h": plan.be_back_by_h, "ready_h": plan.ready_h}
            found[f"over_proofed {plan.name}"] = Notice("stage_over_proofed", "warning", values, text)
    rank = {"warning": 0, "caution": 1, "info": 2}
    return sorted(found.values(), key=lambda notice: rank[notice.severity])


def at_dough_temperature(day: Day, dough_c: float) -> Day:
    """Build the same day from another dough temperature, °C.

    It is that of the dough at the end of mixing, and of every stage whose dough is held at a temperature.
    """
    stages = tuple(
        stage if stage.dough_c is None else replace(stage, surroundings=Surroundings.dough(dough_c))
        for stage in day.stages
    )
    return replace(day, desired_c=dough_c, stages=stages)


@dataclass(frozen=True)
class ConstantComparison:
    """What a dough that stayed at its first temperature would do, beside what it does."""

    hours: float
    """Hours to the same rise at a constant temperature."""
    earlier_h: float
    """By how much that is too early."""


def beside_constant(plan: StagePlan, day: Day, index: int, kitchen: Kitchen | None = None) -> ConstantComparison | None:
    """Compare the first stage with the same dough held at its first temperature.

    None if there is nothing to compare.
    """
    stage = day.stages[index]
    if index > 0 or stage.dough_c is not None or stage.until_rise_percent is None:
        return None
    held = replace(day, stages=(replace(stage, surroundings=Surroundings.dough(plan.dough_c)),))
    try:
        (constant,) = plan_stages(held, kitchen)
    except Error:
        return None
    return ConstantComparison(constant.hours, plan.hours - constant.hours)
