"""Quantities as people write them: ``78F``, ``25.5C``, ``6K``, ``90min``. A unit is always asked for."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from libferment._core import celsius, fields, kelvins
from libferment._core import grams as grams_of_ounces
from libferment._errors import Error, InvalidInput

_FIELDS = {field.name: field for field in fields()}
_NUMBER_AND_UNIT = re.compile(r"\s*([-+−]?\d+(?:[.,]\d+)?)\s*°?\s*([A-Za-z]*)\s*")


def _split(text: str, what: str, example: str) -> tuple[float, str]:
    match = _NUMBER_AND_UNIT.fullmatch(text)
    if match is None:
        raise InvalidInput(f'{what} "{text}" is not a number with a unit; write for example {example}')
    value = float(match[1].replace("−", "-").replace(",", "."))
    if not math.isfinite(value):
        raise InvalidInput(f"{what} is a number of {len(match[1])} digits; write for example {example}")
    return value, match[2].lower()


def _with_unit(text: str, what: str, example: str, units: Mapping[str, Callable[[float], float]], advice: str) -> float:
    """Read a number whose unit is one of `units`; `advice` says how to write it, with {0} for the number."""
    value, unit = _split(text, what, example)
    if unit in units:
        return units[unit](value)
    problem = f'has the unit "{unit}"' if unit else "has no unit"
    raise InvalidInput(f"{what} {value:g} {problem}; {advice.format(f'{value:g}')}")


def temperature_c(text: str, what: str = "temperature") -> float:
    """Read a temperature such as ``25.5C`` or ``78F`` as °C. Raises InvalidInput."""
    return _with_unit(text, what, "25.5C or 78F", {"c": float, "f": celsius}, "write {0}C or {0}F")


def difference_k(text: str, what: str = "difference") -> float:
    """Read a difference of temperatures such as ``6K``, ``6C`` or ``11F`` as K. Raises InvalidInput."""
    advice = "it is a difference of temperatures: write {0}K, or {0}F for Fahrenheit degrees"
    return _with_unit(text, what, "6K or 11F", {"k": float, "c": float, "f": kelvins}, advice)


def hours(text: str, what: str = "time") -> float:
    """Read a time such as ``2.5h`` or ``90min`` as hours. Raises InvalidInput."""
    units = {"h": float, "min": lambda minutes: minutes / 60}
    return _with_unit(text, what, "2.5h or 90min", units, "write {0}h or {0}min")


def clock_h(text: str, what: str) -> float:
    """Read a clock such as ``8:15`` as hours of the day. Raises InvalidInput."""
    match = re.fullmatch(r"\s*(\d{1,2}):(\d{2})\s*", text)
    if match is None or int(match[1]) > 23 or int(match[2]) > 59:
        raise InvalidInput(f'{what} "{text}" is not a clock; write for example 8:15 or 18:30')
    return int(match[1]) + int(match[2]) / 60


@dataclass(frozen=True)
class Clock:
    """An hour at which something is to be ready, h from the end of mixing; writes hours as a clock if that is known."""

    until_h: float
    mixed_h: float | None = None
    """Hour of the day at which the mixing ends; None if it is not known."""

    @classmethod
    def of(cls, until: str | None, mixed: str | None) -> Clock | None:
        """Read ``18:30`` or ``9h``, and when the mixing ends. None if neither is given. Raises InvalidInput."""
        if until is None and mixed is None:
            return None
        if until is None:
            raise InvalidInput("--mixed belongs to --until: when should it be ready?")
        mixed_h = None if mixed is None else clock_h(mixed, "mixed")
        if ":" not in until:
            return cls(within("target_h", hours(until, "until"), "until", until), mixed_h)
        if mixed_h is None:
            raise InvalidInput(f'until "{until}" is a clock; say when the mixing ends too: --mixed 8:15')
        later = (clock_h(until, "until") - mixed_h) % 24
        return cls(within("target_h", later or 24.0, "until", until), mixed_h)

    def text(self, hours: float | None) -> str:
        """Write hours from the end of mixing, as a clock if that is known."""
        if hours is None:
            return "never"
        if self.mixed_h is None:
            return clock_text(hours)
        day, minutes = divmod(round(60 * (self.mixed_h + hours)), 24 * 60)
        days = "" if day == 0 else f" (+{day} d)" if day > 0 else f" (−{-day} d)"
        return f"{minutes // 60}:{minutes % 60:02d}{days}"


def grams(text: str, what: str = "weight") -> float:
    """Read a weight such as ``500``, ``500g``, ``1.2kg``, ``18oz`` or ``1.1lb`` as g. Raises InvalidInput."""
    if re.match(r"\s*\d{1,3}(,\d{3})+(?!\d)", text):
        raise InvalidInput(f'{what} "{text.strip()}" may be read in two ways; write it without a comma, such as 1000g')
    units = {
        "": float,
        "g": float,
        "kg": lambda kg: 1000 * kg,
        "oz": grams_of_ounces,
        "lb": lambda lb: grams_of_ounces(16 * lb),
    }
    return _with_unit(text, what, "500g or 18oz", units, "write {0}g, {0}kg, {0}oz or {0}lb")


def number(text: str, what: str = "number") -> float:
    """Read a plain number or percentage such as ``0.6``, ``0,6`` or ``0.6%``. Raises InvalidInput."""
    value, unit = _split(text.replace("%", ""), what, "0.6")
    if unit:
        raise InvalidInput(f'{what} {value:g} has the unit "{unit}"; write the number alone')
    return value


def within(field_name: str, value: float, what: str, typed: object = "") -> float:
    """Give the value back if the field table allows it for that field, else raise InvalidInput.

    `typed` is what was written: a number in °F gets no advice to write it in °F.
    """
    field = _FIELDS[field_name]
    if field.low <= value <= field.high:
        return value
    unit = f" {field.unit}" if field.unit else ""
    in_fahrenheit = str(typed).strip().lower().endswith("f")
    hint = ""
    if field.quantity == "temperature":
        number = round(1.8 * value + 32, 6) if in_fahrenheit else value
        if in_fahrenheit and field.low <= number <= field.high:
            hint = f"; if you meant {number:g} °C, write {number:g}C"
        elif not in_fahrenheit and field.low <= (number - 32) / 1.8 <= field.high:
            hint = f"; if you meant {number:g} °F, write {number:g}F"
    elif field.quantity == "temperature_difference":
        if not in_fahrenheit and field.low <= value / 1.8 <= field.high:
            hint = f"; if you meant a difference of {value:g} °F, write {value:g}F"
        hint += f"; {field.label} is a difference of temperatures, not a temperature point"
    raise InvalidInput(f"{what} {value:.4g}{unit} is outside {field.low:g} to {field.high:g}{unit}{hint}")


def clock_text(time_h: float) -> str:
    """Write hours as a baker reads them: ``2 h 35 min``."""
    minutes = round(time_h * 60)
    if minutes < 60:
        return f"{minutes} min"
    return f"{minutes // 60} h {minutes % 60:02d} min"


_ADVICE = {"net_gain_kj_per_kg": "find it from batches: `libferment friction`"}


def in_writing(error: Error) -> str:
    """Word an error for who writes quantities as texts, in a day file or an option: ``78F``, not ``celsius(78)``."""
    unit = error.unit_meant() and f"{error.unit_meant()}, write {error.value:g}F"
    parts = (error.problem, unit, _ADVICE.get(error.path, error.advice))
    return "; ".join(part for part in parts if part)
