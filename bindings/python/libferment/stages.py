"""The stages of a day, worked out one after the other, and the cautions that belong to them."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from libferment import _quantities as quantities
from libferment._core import (
    Composition,
    Dough,
    DoughState,
    Kitchen,
    Notice,
    check,
    fields,
    handled,
    hours_until,
    mixed,
    over_proof_ratio,
    rested,
    volume_ratio,
)
from libferment._errors import InvalidInput, NoSolution, OutsideModel
from libferment.day import DOUGH_NUMBERS, ENRICHING, Day, Stage

(_WATER_PERCENT,) = (field.initial or 0.0 for field in fields() if field.name == "water_percent")


@dataclass(frozen=True)
class StagePlan:
    """When a stage is ready; hours without a word are counted from the end of mixing."""

    name: str
    dough_c: float
    start_h: float
    hours: float
    """Hours from the stage's start to its end."""
    rise_percent: float
    be_back_by_h: float | None
    """When the dough would be over-proofed if the stage went on; None if never."""
    folds_done: int
    folds_planned: int

    @property
    def ready_h(self) -> float:
        """When the stage is ready."""
        return self.start_h + self.hours


def _numbers(day: Day) -> dict[str, float]:
    """Collect the dough's percentages; all water counts for the yeast, also that of milk and egg."""
    numbers = {key: day.dough[key] for key in DOUGH_NUMBERS if key in day.dough}
    bound = [
        day.dough[key] * Composition.of(key.removesuffix("_percent")).water for key in ENRICHING if key in day.dough
    ]
    if bound:
        numbers["water_percent"] = numbers.get("water_percent", _WATER_PERCENT) + sum(bound)
    return numbers


def dough_of(day: Day, dough_c: float) -> Dough:
    """Build the day's dough at a temperature. Raises InvalidInput if the yeast is missing."""
    if "yeast_percent" not in day.dough:
        raise InvalidInput("[dough] needs yeast_percent: 3 g on 500 g of flour are 0.6")
    return Dough(dough_c=dough_c, yeast=day.yeast, **_numbers(day))


def _loss(kitchen: Kitchen, handling: str) -> float:
    return float(getattr(kitchen, f"{handling}_loss"))


def _hours_to(dough: Dough, state: DoughState, ratio: float, kitchen: Kitchen) -> float:
    try:
        return hours_until(dough, state, ratio, kitchen=kitchen)
    except (NoSolution, OutsideModel):
        return math.inf


def _plan_stage(
    dough: Dough, state: DoughState, stage: Stage, start_h: float, kitchen: Kitchen
) -> tuple[StagePlan, DoughState]:
    start_ratio = volume_ratio(dough, state, kitchen=kitchen)
    target = None if stage.until_rise_percent is None else start_ratio * (1 + stage.until_rise_percent / 100)

    def end_from(now: DoughState, elapsed: float) -> float:
        if target is None:
            assert stage.until_h is not None
            return stage.until_h
        return elapsed + _hours_to(dough, now, target, kitchen)

    elapsed, folds_done = 0.0, 0
    for fold_h in stage.folds_h:
        if end_from(state, elapsed) < fold_h:
            break
        state = rested(dough, state, fold_h - elapsed, kitchen=kitchen)
        state = handled(dough, state, kitchen.fold_loss, kitchen=kitchen)
        elapsed, folds_done = fold_h, folds_done + 1
    end_h = end_from(state, elapsed)
    if target is not None and math.isinf(end_h):
        try:
            hours_until(dough, state, target, kitchen=kitchen)
        except NoSolution as problem:
            reach = math.nan if problem.high is None else 100 * (problem.high / start_ratio - 1)
            raise NoSolution(
                f'stage "{stage.name}": a rise of {stage.until_rise_percent:g} % is never reached; '
                f"this dough rises by less than {reach:.0f} % in this stage; ask for less [until_rise_percent]"
            ) from None
    over_ratio = over_proof_ratio(
        dough, standing=stage.standing, final_proof=stage.final_proof, start_ratio=start_ratio, kitchen=kitchen
    )
    over_h = elapsed + _hours_to(dough, state, over_ratio, kitchen)
    state = rested(dough, state, end_h - elapsed, kitchen=kitchen)
    plan = StagePlan(
        name=stage.name,
        dough_c=stage.dough_c,
        start_h=start_h,
        hours=end_h,
        rise_percent=100 * (volume_ratio(dough, state, kitchen=kitchen) / start_ratio - 1),
        be_back_by_h=None if math.isinf(over_h) else start_h + over_h,
        folds_done=folds_done,
        folds_planned=len(stage.folds_h),
    )
    for handling in stage.handling:
        state = handled(dough, state, _loss(kitchen, handling), kitchen=kitchen)
    return plan, state


def plan_stages(day: Day, kitchen: Kitchen | None = None) -> list[StagePlan]:
    """Work out the stages one after the other, from the end of mixing.

    Each stage has one constant dough temperature. Raises InvalidInput; NoSolution for a rise a stage never reaches.
    """
    if not day.stages:
        raise InvalidInput("the day file has no [[stage]]; add one with a name and until_rise_percent or until_h")
    kitchen = kitchen or Kitchen()
    first = dough_of(day, day.stages[0].dough_c)
    state, start_h, plans = mixed(first, kitchen=kitchen), 0.0, []
    for stage in day.stages:
        try:
            plan, state = _plan_stage(first.at(stage.dough_c), state, stage, start_h, kitchen)
        except (InvalidInput, OutsideModel) as problem:
            raise type(problem)(f'stage "{stage.name}": {problem}') from None
        plans.append(plan)
        start_h = plan.ready_h
    return plans


def _time_counts(dough_c: float) -> bool:
    """Whether a perishable dough held at this temperature for long is a matter of safety."""
    return any(notice.code == "perishable_held" for notice in check(dough_c=dough_c, perishable_h=1000.0))


def notices_of_stages(day: Day, plans: list[StagePlan], kitchen: Kitchen | None = None) -> list[Notice]:
    """Collect the cautions that belong to a planned day, each once, most severe first."""
    found: dict[str, Notice] = {}
    for plan in plans:
        for notice in check(dough_c=plan.dough_c, yeast=day.yeast, kitchen=kitchen, **_numbers(day)):
            found.setdefault(notice.code, notice)
    if "refrigerator" in day.temperatures_c:
        for notice in check(refrigerator_c=day.temperatures_c["refrigerator"]):
            found.setdefault(notice.code, notice)
    if day.perishable:
        warm = [plan for plan in plans if _time_counts(plan.dough_c)]  # where time counts at all
        for notice in check(perishable_h=sum(plan.hours for plan in warm)):
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
    """Build the same day with all stages at one dough temperature, °C."""
    return replace(day, stages=tuple(replace(stage, dough_c=dough_c) for stage in day.stages))
