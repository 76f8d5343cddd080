"""A day file: today's temperatures, the dough and its stages, read from TOML and worked out stage by stage."""

from __future__ import annotations

import difflib
import math
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from libferment import _quantities as quantities
from libferment._core import (
    Dough,
    DoughState,
    Kitchen,
    Notice,
    check,
    handled,
    hours_until,
    mixed,
    over_proof_ratio,
    rested,
    volume_ratio,
    water_by_factor_rule,
)
from libferment._errors import InvalidInput, NoSolution, OutsideModel

if sys.version_info >= (3, 11):
    import tomllib
else:
    import tomli as tomllib

HANDLINGS = ("fold", "divide", "round", "mould")
DOUGH_NUMBERS = ("yeast_percent", "salt_percent", "water_percent", "sugar_percent", "gluten_percent", "altitude_m")


@dataclass(frozen=True)
class Stage:
    """One stage of the day at a constant dough temperature."""

    name: str
    dough_c: float
    until_rise_percent: float | None = None
    until_h: float | None = None
    folds_h: tuple[float, ...] = ()
    handling: tuple[str, ...] = ()
    standing: str = "tin"
    final_proof: bool = False


@dataclass(frozen=True)
class Day:
    """Today's temperatures in °C, the formula in percent of flour weight, and the stages."""

    title: str = ""
    temperatures_c: Mapping[str, float] = field(default_factory=dict)
    desired_c: float | None = None
    friction_k: float | None = None
    flour_g: float | None = None
    yeast: str = "instant"
    dough: Mapping[str, float] = field(default_factory=dict)
    perishable: bool = False
    stages: tuple[Stage, ...] = ()


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


class _Table:
    """One table of the file: takes keys out, and complains about what is left."""

    def __init__(self, content: object, where: str, known: tuple[str, ...]) -> None:
        if not isinstance(content, dict):
            raise InvalidInput(f"{where} must be a table, got {_shown(content)}")
        self.where = where
        self.content = content
        for key in content:
            if key not in known:
                near = difflib.get_close_matches(key, known, 1, 0.5)
                hint = f'did you mean "{near[0]}"?' if near else "known: " + ", ".join(known)
                raise InvalidInput(f'{where} has an unknown key "{key}"; {hint}')

    def _take(self, key: str, kinds: tuple[type, ...], wanted: str) -> Any:
        if key not in self.content:
            return None
        value = self.content[key]
        if (isinstance(value, bool) and bool not in kinds) or not isinstance(value, kinds):
            raise InvalidInput(f"{self.where} {key} must be {wanted}, got {_shown(value)}")
        return value

    def text(self, key: str) -> str | None:
        value: str | None = self._take(key, (str,), "a text in quotes")
        return value

    def flag(self, key: str) -> bool:
        return bool(self._take(key, (bool,), "true or false"))

    def number(self, key: str, what: str = "a number") -> float | None:
        value = self._take(key, (int, float), what)
        return None if value is None else self.float_of(key, value)

    def float_of(self, key: str, value: float) -> float:
        try:
            return float(value)
        except OverflowError:
            raise InvalidInput(f"{self.where} {key} is a number too large for any dough") from None

    def quantity(self, key: str, read: Callable[[str, str], float], example: str) -> float | None:
        if key not in self.content:
            return None
        value = self.content[key]
        if isinstance(value, (int, float)) and not isinstance(value, bool):
            number = self.float_of(key, value)
            raise InvalidInput(
                f'{self.where} {key} = {number:g} has no unit; write it in quotes with one, such as "{example}"'
            )
        if not isinstance(value, str):
            raise InvalidInput(
                f'{self.where} {key} must be a text with a unit, such as "{example}", got {_shown(value)}'
            )
        return read(value, f"{self.where} {key}")

    def temperature_c(self, key: str, field_name: str) -> float | None:
        return self._within(field_name, key, self.quantity(key, quantities.temperature_c, "18.5C"))

    def bounded(self, key: str, field_name: str, what: str = "a number") -> float | None:
        return self._within(field_name, key, self.number(key, what))

    def _within(self, field_name: str, key: str, value: float | None) -> float | None:
        return None if value is None else quantities.within(field_name, value, f"{self.where} {key}")

    def list_of(self, key: str, kinds: tuple[type, ...], wanted: str) -> list[Any]:
        values = self._take(key, (list,), f"a list of {wanted}")
        for value in values or []:
            if isinstance(value, bool) or not isinstance(value, kinds):
                raise InvalidInput(f"{self.where} {key} must be a list of {wanted}, got {_shown(value)} in it")
        return values or []


def _shown(value: object) -> str:
    words = {str: "the text", bool: "", int: "the number", float: "the number", list: "the list", dict: "the table"}
    shown = str(value).lower() if isinstance(value, bool) else f'"{value}"' if isinstance(value, str) else str(value)
    return f"{words.get(type(value), type(value).__name__)} {shown}".strip()


def _stage(content: object, place: int, dough_c: float | None) -> Stage:
    keys = ("name", "dough", "until_rise_percent", "until_h", "folds_h", "handling", "standing", "final_proof")
    table = _Table(content, f"[[stage]] {place}", keys)
    name = table.text("name") or f"stage {place}"
    table.where = f'[[stage]] "{name}"'
    own_c = table.temperature_c("dough", "dough_c")
    dough_c = dough_c if own_c is None else own_c
    if dough_c is None:
        raise InvalidInput(
            f'{table.where} has no dough temperature; add dough = "22C" to it, or [water] desired for all stages'
        )
    rise, until_h = table.bounded("until_rise_percent", "rise_percent"), table.bounded("until_h", "time_h")
    if (rise is None) == (until_h is None):
        raise InvalidInput(f"{table.where} must end by until_rise_percent or by until_h, one of the two")
    folds = [table.float_of("folds_h", fold) for fold in table.list_of("folds_h", (int, float), "hours")]
    if any(not math.isfinite(fold) or fold < 0 for fold in folds) or sorted(folds) != folds:
        raise InvalidInput(f"{table.where} folds_h must be hours from the stage's start, in order, got {folds}")
    if until_h is not None and folds and folds[-1] > until_h:
        raise InvalidInput(f"{table.where} has a fold at {folds[-1]:g} h, after its end at {until_h:g} h")
    handling = table.list_of("handling", (str,), "texts: " + ", ".join(HANDLINGS))
    for action in handling:
        if action not in HANDLINGS:
            raise InvalidInput(f'{table.where} handling "{action}" is unknown; known: ' + ", ".join(HANDLINGS))
    standing = table.text("standing") or "tin"
    if standing not in ("tin", "free"):
        raise InvalidInput(f'{table.where} standing "{standing}" is unknown; write "tin" (also for a tub) or "free"')
    return Stage(name, dough_c, rise, until_h, tuple(folds), tuple(handling), standing, table.flag("final_proof"))


def day_from(content: Mapping[str, Any]) -> Day:
    """Build a day from the content of a day file. Raises InvalidInput naming table, key, value and what to do."""
    top = _Table(dict(content), "the day file", ("title", "today", "water", "dough", "stage"))
    today = _Table(content.get("today", {}), "[today]", ("flour", "room", "tap", "preferment", "refrigerator"))
    water = _Table(content.get("water", {}), "[water]", ("desired", "friction"))
    dough = _Table(content.get("dough", {}), "[dough]", ("flour_g", "yeast", "perishable", *DOUGH_NUMBERS))
    temperatures = {key: today.temperature_c(key, f"{key}_c") for key in today.content}
    desired_c = water.temperature_c("desired", "desired_c")
    numbers = {key: dough.bounded(key, key, "a number: percent of flour weight") for key in DOUGH_NUMBERS}
    stages: list[Stage] = []
    for place, stage in enumerate(top.list_of("stage", (dict,), "[[stage]] tables"), 1):
        stages.append(_stage(stage, place, stages[-1].dough_c if stages else desired_c))
    flour_g = dough.number("flour_g")
    if flour_g is not None and not 1 <= flour_g <= 1e6:
        raise InvalidInput(f"[dough] flour_g {flour_g:g} g is outside 1 to 1000000 g")
    return Day(
        title=top.text("title") or "",
        temperatures_c={key: value for key, value in temperatures.items() if value is not None},
        desired_c=desired_c,
        friction_k=water.quantity("friction", quantities.difference_k, "6K"),
        flour_g=flour_g,
        yeast=dough.text("yeast") or "instant",
        dough={key: value for key, value in numbers.items() if value is not None},
        perishable=dough.flag("perishable"),
        stages=tuple(stages),
    )


def read_day(path: str | Path) -> Day:
    """Read a day file.

    Raises InvalidInput if it is missing, no TOML, or has an unknown key, a wrong type or no unit.
    """
    try:
        content = tomllib.loads(Path(path).read_text(encoding="utf-8-sig"))
    except FileNotFoundError:
        raise InvalidInput(f"there is no file {path}") from None
    except (OSError, UnicodeDecodeError) as problem:
        raise InvalidInput(f"{path} cannot be read: {problem}") from None
    except tomllib.TOMLDecodeError as problem:
        raise InvalidInput(
            f"{path} is not valid TOML: {problem}; numbers have a point (0.7), texts stand in quotes, every stage "
            "begins with [[stage]]"
        ) from None
    try:
        return day_from(content)
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {problem}") from None


def water_of(day: Day) -> float:
    """Water temperature of the day by the factor rule, °C. Raises InvalidInput naming what is missing."""
    given = {
        "[water] desired": day.desired_c,
        "[today] flour": day.temperatures_c.get("flour"),
        "[today] room": day.temperatures_c.get("room"),
        "[water] friction": day.friction_k,
    }
    missing = [name for name, value in given.items() if value is None]
    if missing:
        raise InvalidInput(
            "the water temperature needs " + ", ".join(missing) + "; measure and write it, or give it as an option"
        )
    desired_c, flour_c, room_c, friction_k = (value for value in given.values() if value is not None)
    preferment_c = day.temperatures_c.get("preferment")
    water_c = water_by_factor_rule(
        desired_c, flour_c=flour_c, room_c=room_c, friction_k=friction_k, preferment_c=preferment_c
    )
    return float(water_c)


def dough_of(day: Day, dough_c: float) -> Dough:
    """Build the day's dough at a temperature. Raises InvalidInput if the yeast is missing."""
    if "yeast_percent" not in day.dough:
        raise InvalidInput("[dough] needs yeast_percent: 3 g on 500 g of flour are 0.6")
    return Dough(dough_c=dough_c, yeast=day.yeast, **day.dough)


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
        for notice in check(dough_c=plan.dough_c, yeast=day.yeast, kitchen=kitchen, **day.dough):
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
