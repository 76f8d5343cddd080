"""A day file: today's temperatures, the bowl, the dough and its stages, read from TOML."""

from __future__ import annotations

import difflib
import math
import re
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, cast

from libferment import _quantities as quantities
from libferment._core import (
    Bowl,
    ByMethod,
    ByNetGain,
    ByWork,
    FlourShare,
    Piece,
    Preferment,
    Surroundings,
    Water,
    bowl_materials,
    convert_yeast,
    mixing_minutes,
)
from libferment._errors import InvalidInput
from libferment._files import read_text
from libferment.temperature_log import read_temperature_log

if sys.version_info >= (3, 11):
    import tomllib
else:
    import tomli as tomllib

HANDLINGS = ("fold", "divide", "round", "mould")
DOUGH_NUMBERS = ("yeast_percent", "salt_percent", "water_percent", "sugar_percent", "gluten_percent", "altitude_m")
ENRICHING = ("milk_percent", "egg_percent", "butter_percent", "oil_percent")
TEMPERATURES = ("flour", "room", "tap", "preferment", "refrigerator", "bowl", "milk", "egg", "butter", "ice")


@dataclass(frozen=True)
class Stage:
    """One stage of the day: held at a dough temperature, or in surroundings to which the dough drifts."""

    name: str
    surroundings: Surroundings
    until_rise_percent: float | None = None
    until_h: float | None = None
    folds_h: tuple[float, ...] = ()
    handling: tuple[str, ...] = ()
    standing: str = "tin"
    final_proof: bool = False
    piece: Piece = field(default_factory=Piece)

    @property
    def dough_c(self) -> float | None:
        """The temperature the dough is held at; None where it drifts, or was measured."""
        first = self.surroundings.places[0]
        return first.temperature_c if first.is_dough else None

    @property
    def refrigerator_c(self) -> float | None:
        """The air of the refrigerator it is in; None elsewhere."""
        first = self.surroundings.places[0]
        return first.temperature_c if "refrigerator" in first.air and not first.is_dough else None


@dataclass(frozen=True)
class Batch:
    """One batch as it was logged: the dough at the end of mixing and what it was mixed from, °C."""

    dough_c: float
    water_c: float
    temperatures_c: Mapping[str, float]
    rest_h: float = 0.0
    minutes: float = 0.0
    """Minutes of mixing in the room; 0 if they are not known."""
    minutes_given: bool = field(default=False, compare=False)
    """Whether they are this batch's own, not the file's."""


@dataclass(frozen=True)
class Day:
    """Today's temperatures in °C, the formula in percent of flour weight, the bowl, the mixing and the stages."""

    title: str = ""
    temperatures_c: Mapping[str, float] = field(default_factory=dict)
    desired_c: float | None = None
    friction_k: float | None = None
    friction_at_c: float | None = None
    """Temperature of the room the friction was found in; then it tells the heat balance about the mixing, too."""
    flour_g: float | None = None
    yeast: str = "instant"
    dough: Mapping[str, float] = field(default_factory=dict)
    perishable: bool = False
    flours: tuple[FlourShare, ...] = ()
    preferment: Preferment | None = None
    yeast_water: Water | None = None
    bowl: Bowl | None = None
    mixing: ByMethod | ByWork | ByNetGain | None = None
    rest_h: float = 0.0
    batches: tuple[Batch, ...] = ()
    stages: tuple[Stage, ...] = ()


class _Table:
    """One table of the file: takes keys out, and complains about what is left."""

    def __init__(self, content: object, where: str, known: tuple[str, ...]) -> None:
        if not isinstance(content, dict):
            raise InvalidInput(f"{where} must be a table, got {_shown(content)}")
        self.where = where
        self.content = content
        for key in content:
            if key not in known:
                near = difflib.get_close_matches(key, known, 1, 0.55)
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

    def name(self, key: str) -> str | None:
        """Read a name of a table, however it is spelt: "Stand mixer" is stand_mixer."""
        value = self.text(key)
        return None if value is None else re.sub(r"[\s-]+", "_", value.strip().lower())

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

    def hours(self, key: str, field_name: str) -> float | None:
        return self._within(field_name, key, self.quantity(key, quantities.hours, "30min"))

    def needed(self, key: str, value: float | None, wanted: str) -> float:
        if value is None:
            raise InvalidInput(f"{self.where} needs {key}, {wanted}")
        return value

    def difference_k(self, key: str, field_name: str) -> float | None:
        return self._within(field_name, key, self.quantity(key, quantities.difference_k, "6K"))

    def bounded(self, key: str, field_name: str, what: str = "a number") -> float | None:
        return self._within(field_name, key, self.number(key, what))

    def _within(self, field_name: str, key: str, value: float | None) -> float | None:
        return None if value is None else quantities.within(field_name, value, f"{self.where} {key}", self.content[key])

    def list_of(self, key: str, kinds: tuple[type, ...], wanted: str) -> list[Any]:
        if wanted.startswith("[[") and isinstance(self.content.get(key), dict):
            raise InvalidInput(f"{self.where} has [{key}]; there may be several, so write [[{key}]] with two brackets")
        values = self._take(key, (list,), f"a list of {wanted}")
        for value in values or []:
            if isinstance(value, bool) or not isinstance(value, kinds):
                raise InvalidInput(f"{self.where} {key} must be a list of {wanted}, got {_shown(value)} in it")
        return values or []


def _shown(value: object) -> str:
    words = {str: "the text", bool: "", int: "the number", float: "the number", list: "the list", dict: "the table"}
    shown = str(value).lower() if isinstance(value, bool) else f'"{value}"' if isinstance(value, str) else str(value)
    return f"{words.get(type(value), type(value).__name__)} {shown}".strip()


PLACES = ("dough", "room", "refrigerator", "proof_box", "room_log", "dough_log")
DIMENSIONS = ("diameter_cm", "length_cm", "depth_cm")
PIECE = ("piece", "piece_g", "pieces", *DIMENSIONS, "material", "vessel_g", "cover", "worktop")


def surroundings_of(key: str, value: Any) -> Surroundings:
    """Build the surroundings that a key of PLACES names: a temperature in °C, or the path of a temperature log.

    Raises InvalidInput.
    """
    if key in ("room_log", "dough_log"):
        log = read_temperature_log(value)
        make = Surroundings.dough_measured if key == "dough_log" else Surroundings.measured
        return make(log.time_h, log.temperature_c)
    makers: dict[str, Callable[[float], Surroundings]] = {
        "dough": Surroundings.dough,
        "room": Surroundings.room,
        "refrigerator": Surroundings.refrigerator,
        "proof_box": Surroundings.proof_box,
    }
    return makers[key](value)


def _log(table: _Table, key: str, folder: Path) -> Surroundings | None:
    """Read a temperature log beside the day file; its hours are counted from the end of mixing."""
    name = table.text(key)
    if name is None:
        return None
    try:
        return surroundings_of(key, folder / name)
    except InvalidInput as problem:
        raise InvalidInput(f"{table.where} {key}: {quantities.in_writing(problem)}") from None


def _where(table: _Table, before: Surroundings | None, room_c: float | None, folder: Path) -> Surroundings:
    """Read what the dough of a stage sits in: its own key, else today's room for a piece, else as the stage before."""
    given = [key for key in PLACES if key in table.content]
    if len(given) > 1:
        raise InvalidInput(f"{table.where} has both {given[0]} and {given[1]}; a stage is in one place")
    for key in ("dough", "room", "refrigerator", "proof_box"):
        temperature_c = table.temperature_c(key, f"{key}_c")
        if temperature_c is not None:
            return surroundings_of(key, temperature_c)
    for key in ("room_log", "dough_log"):
        log = _log(table, key, folder)
        if log is not None:
            return log
    if before is None or ("piece" in table.content and before.places[0].is_dough):
        if "piece" in table.content and room_c is not None:
            return Surroundings.room(room_c)
        if before is None:
            raise InvalidInput(
                f'{table.where} has no dough temperature; add dough = "22C" to it, or [water] desired for all stages; '
                'or say where it drifts: room = "17C" or refrigerator = "4C"'
            )
        raise InvalidInput(f'{table.where} has a piece but no place; add room = "17C" to it, or [today] room')
    return before


def _piece(table: _Table) -> Piece | None:
    """Read the piece a stage's dough is in; None if it does not say."""
    given = [key for key in PIECE if key in table.content]
    if not given:
        return None
    shape = table.name("piece")
    if shape is None:
        raise InvalidInput(f'{table.where} has {given[0]} but no piece; add piece = "ball", "oblong" or "tub"')
    fields = {"piece_g": "mass_g", "pieces": "pieces", "vessel_g": "vessel_g"}
    fields |= {key: key for key in DIMENSIONS}
    given_piece: dict[str, Any] = {
        name: table.bounded(key, key) for key, name in fields.items() if key in table.content
    }
    given_piece |= {key: table.name(key) for key in ("material", "cover", "worktop") if key in table.content}
    try:
        return Piece(shape=cast("Any", shape), **given_piece)
    except InvalidInput as problem:
        raise InvalidInput(f"{table.where}: {quantities.in_writing(problem)}") from None


def _stage(
    content: object, number: int, before: Stage | None, day: _Table, room_c: float | None, folder: Path
) -> Stage:
    keys = ("name", "until_rise_percent", "until_h", "folds_h", "handling", "standing", "final_proof", *PLACES, *PIECE)
    table = _Table(content, f"[[stage]] {number}", keys)
    name = table.text("name") or f"stage {number}"
    table.where = f'[[stage]] "{name}"'
    desired_c = day.temperature_c("desired", "desired_c")
    first = None if desired_c is None else Surroundings.dough(desired_c)
    surroundings = _where(table, first if before is None else before.surroundings, room_c, folder)
    piece = _piece(table) or (Piece() if before is None else before.piece)
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
    return Stage(
        name, surroundings, rise, until_h, tuple(folds), tuple(handling), standing, table.flag("final_proof"), piece
    )


def _flour(content: object, number: int) -> FlourShare:
    table = _Table(content, f"[[flour]] {number}", ("kind", "percent", "moisture_percent", "temperature"))
    return FlourShare(
        table.needed("percent", table.bounded("percent", "flours_percent"), "its share of all flour, such as 20"),
        table.name("kind") or "bread",
        moisture_percent=table.bounded("moisture_percent", "moisture_percent"),
        temperature_c=table.temperature_c("temperature", "flour_c"),
    )


def _batch(content: object, number: int, minutes: float) -> Batch:
    keys = ("dough", "water", "flour", "room", "preferment", "bowl", "milk", "egg", "butter")
    table = _Table(content, f"[[batch]] {number}", (*keys, "rest", "minutes"))
    read = {key: table.temperature_c(key, f"{key}_c") for key in keys}
    example = 'a temperature with its unit, such as "25.3C"'
    needed = {key: table.needed(key, read[key], example) for key in ("dough", "water", "flour", "room")}
    others = {key: value for key, value in read.items() if key in TEMPERATURES and value is not None}
    own_minutes = table.bounded("minutes", "mixing_min")
    rest_h = table.hours("rest", "rest_h") or 0.0
    known = minutes if own_minutes is None else own_minutes
    return Batch(needed["dough"], needed["water"], others, rest_h, known, own_minutes is not None)


def _yeast_water(content: object) -> Water:
    table = _Table(content, "[yeast_water]", ("water_g", "temperature", "stands"))
    return Water(
        table.needed("water_g", table.bounded("water_g", "water_g"), "a weight in g, such as 50"),
        table.needed("temperature", table.temperature_c("temperature", "water_c"), 'such as "38C"'),
        wets_yeast=True,
        stands_h=table.hours("stands", "stands_h") or 0.0,
    )


def _preferment(content: object) -> Preferment:
    table = _Table(content, "[preferment]", ("flour_g", "water_g"))
    grams = {
        key: table.needed(key, table.bounded(key, key), "a weight in g, such as 200") for key in ("flour_g", "water_g")
    }
    return Preferment(**grams)


def _bowl(content: object) -> Bowl:
    table = _Table(content, "[bowl]", ("material", "mass_g"))
    material, grams = table.name("material"), table.bounded("mass_g", "bowl_g")
    if material is None:
        raise InvalidInput(f"[bowl] needs a material, one of {', '.join(bowl_materials())}")
    return Bowl(
        material, plausible_bowl_g(table.needed("mass_g", grams, "a weight in g, such as 1200"), "[bowl] mass_g")
    )


def plausible_bowl_g(mass_g: float, what: str) -> float:
    """Give the weight back unless it looks like kilograms. Raises InvalidInput."""
    if 0 < mass_g < 20:
        raise InvalidInput(
            f"{what} {mass_g:g} g is no bowl for a dough; it is in grams: {mass_g:g} kg are {1000 * mass_g:g}"
        )
    return mass_g


def _mixing(table: _Table) -> ByMethod | ByWork | ByNetGain | None:
    method = table.name("method")
    work, gain = (
        table.bounded("work_kj_per_kg", "work_kj_per_kg"),
        table.bounded("net_gain_kj_per_kg", "net_gain_kj_per_kg"),
    )
    minutes, hydration = (
        table.bounded("minutes", "mixing_min"),
        table.bounded("hydration_kj_per_kg", "hydration_kj_per_kg"),
    )
    if sum(given is not None for given in (method, work, gain)) > 1:
        raise InvalidInput(
            "[mixing] takes one of method, work_kj_per_kg and net_gain_kj_per_kg: each is all of the heat"
        )
    if gain is not None and hydration is not None:
        raise InvalidInput("[mixing] net_gain_kj_per_kg holds the hydration already; leave hydration_kj_per_kg out")
    sd = table.bounded("sd_kj_per_kg", "sd_kj_per_kg")
    if sd is not None and gain is None:
        raise InvalidInput("[mixing] sd_kj_per_kg is the spread of net_gain_kj_per_kg; give that too, or leave it out")
    if gain is not None:
        known = ByNetGain(gain, minutes=minutes or 0.0)
        return known if sd is None else known.replace(sd_kj_per_kg=sd)
    if work is not None and minutes is not None:
        raise InvalidInput("[mixing] work_kj_per_kg is the work whatever its minutes; leave minutes out")
    if work is not None:
        return ByWork(work, hydration_kj_per_kg=hydration)
    if method is None and (minutes is not None or hydration is not None):
        raise InvalidInput('[mixing] needs a method beside minutes, such as method = "stand_mixer"')
    return None if method is None else ByMethod(method, minutes, hydration_kj_per_kg=hydration)


def day_from(content: Mapping[str, Any], folder: str | Path = ".") -> Day:
    """Build a day from the content of a day file, whose temperature logs are in a folder.

    Raises InvalidInput naming table, key, value and what to do.
    """
    tables = (
        "title",
        "today",
        "water",
        "dough",
        "flour",
        "preferment",
        "yeast_water",
        "bowl",
        "mixing",
        "batch",
        "stage",
    )
    top = _Table(dict(content), "the day file", tables)
    today = _Table(content.get("today", {}), "[today]", TEMPERATURES)
    water = _Table(content.get("water", {}), "[water]", ("desired", "friction", "friction_at"))
    dough = _Table(content.get("dough", {}), "[dough]", ("flour_g", "yeast", "perishable", *DOUGH_NUMBERS, *ENRICHING))
    mixing = _Table(
        content.get("mixing", {}),
        "[mixing]",
        ("method", "minutes", "work_kj_per_kg", "net_gain_kj_per_kg", "sd_kj_per_kg", "hydration_kj_per_kg", "rest"),
    )
    temperatures = {key: today.temperature_c(key, f"{key}_c") for key in today.content}
    desired_c = water.temperature_c("desired", "desired_c")
    percent = "a number: percent of flour weight"
    bounds = {"water_percent": "poured_water_percent"}  # milk and egg bring water of their own
    numbers = {key: dough.bounded(key, bounds.get(key, key), percent) for key in DOUGH_NUMBERS}
    numbers |= {key: dough.bounded(key, "liquid_percent", percent) for key in ENRICHING}
    stages: list[Stage] = []
    for number, stage in enumerate(top.list_of("stage", (dict,), "[[stage]] tables"), 1):
        before = stages[-1] if stages else None
        stages.append(_stage(stage, number, before, water, temperatures.get("room"), Path(folder)))
    flour_g = dough.bounded("flour_g", "flour_g")
    yeast = dough.name("yeast") or "instant"
    convert_yeast(1.0, from_yeast=cast("Any", yeast), to_yeast="instant")  # refuses an unknown kind
    egg_or_milk = any(numbers[key] for key in ("milk_percent", "egg_percent"))
    way = _mixing(mixing)
    minutes = 0.0 if way is None else mixing_minutes(way)
    return Day(
        title=top.text("title") or "",
        temperatures_c={key: value for key, value in temperatures.items() if value is not None},
        desired_c=desired_c,
        friction_k=water.difference_k("friction", "friction_k"),
        friction_at_c=water.temperature_c("friction_at", "room_c"),
        flour_g=flour_g,
        yeast=yeast,
        dough={key: value for key, value in numbers.items() if value is not None},
        perishable=dough.flag("perishable") or egg_or_milk,
        flours=tuple(
            _flour(share, number) for number, share in enumerate(top.list_of("flour", (dict,), "[[flour]] tables"), 1)
        ),
        preferment=_preferment(content["preferment"]) if "preferment" in content else None,
        yeast_water=_yeast_water(content["yeast_water"]) if "yeast_water" in content else None,
        bowl=_bowl(content["bowl"]) if "bowl" in content else None,
        mixing=way,
        rest_h=mixing.hours("rest", "rest_h") or 0.0,
        batches=tuple(
            _batch(batch, number, minutes)
            for number, batch in enumerate(top.list_of("batch", (dict,), "[[batch]] tables"), 1)
        ),
        stages=tuple(stages),
    )


def read_day(path: str | Path) -> Day:
    """Read a day file.

    Raises InvalidInput if it is missing, no TOML, or has an unknown key, a wrong type or no unit.
    """
    text = read_text(path, a_file="the day file")
    try:
        content = tomllib.loads(text)
    except tomllib.TOMLDecodeError as problem:
        raise InvalidInput(
            f"{path} is not valid TOML: {problem}; numbers have a point (0.7), texts stand in quotes, every stage "
            "begins with [[stage]]"
        ) from None
    except RecursionError:
        raise InvalidInput(f"{path} is nested too deep for a day; lists in it hold texts or numbers alone") from None
    except ValueError:
        raise InvalidInput(f"{path} has a number of thousands of digits; write it as it was measured") from None
    try:
        return day_from(content, Path(path).parent)
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {problem}") from None
