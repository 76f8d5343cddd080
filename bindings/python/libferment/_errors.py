"""What can go wrong. Each class also derives from a builtin, so that ``except ValueError`` works."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any


class Error(Exception):
    """Base of all errors of libferment: facts, from which the text is composed.

    Attributes tell a program what the text tells a person; ``None``, or empty, where they do not apply.
    """

    status: int = 99
    """Status code, the same as in the C interface."""

    def __init__(
        self,
        problem: str = "",
        *,
        path: str = "",
        value: float | None = None,
        low: float | None = None,
        high: float | None = None,
        ranges: Iterable[tuple[float, float]] = (),
        index: int | None = None,
        count: int | None = None,
        size: int | None = None,
        advice: str = "",
        meant: str = "",
    ) -> None:
        """Keep the facts."""
        super().__init__(problem)
        self.problem = problem
        """What is wrong: which value, which unit, which range."""
        self.path = path
        """Where: "dough_c", "waters[1].temperature_c"; or empty."""
        self.value = value
        self.low = low
        """Lowest allowed or reachable value."""
        self.high = high
        """Highest allowed or reachable value."""
        self.ranges = tuple(ranges)
        """Reachable values between low and high, where they have holes."""
        self.index = index
        """First offending value of an array, counted through the flattened array."""
        self.count = count
        """How many values of the array offend, of ``size``."""
        self.size = size
        self.advice = advice
        """What to do."""
        self.meant = meant
        """A unit in which the value would be allowed: "fahrenheit", "fahrenheit_difference" or empty."""

    def __reduce__(self) -> tuple[Any, ...]:
        """Keep the facts through pickle and copy."""
        return type(self), self.args, vars(self)

    def unit_meant(self) -> str:
        """Begin a sentence about the unit in which the value would be allowed, or leave it."""
        if not self.meant:
            return ""
        return f"if you meant {'a difference of ' if 'difference' in self.meant else ''}{self.value:g} °F"

    def __str__(self) -> str:
        """Compose the text: where, what is wrong, what to do."""
        call = "kelvins" if self.meant == "fahrenheit_difference" else "celsius"
        unit = self.unit_meant() and f"{self.unit_meant()}, pass {call}({self.value:g})"
        parts = [f"{self.path}: {self.problem}" if self.path else self.problem, unit, self.advice]
        where = "" if self.size is None else f" (first at index {self.index}, {self.count} of {self.size})"
        return "; ".join(part for part in parts if part) + where


class InvalidInput(Error, ValueError):
    """A value that no dough can have, or of a wrong form."""

    status = 1


class OutsideModel(Error, ValueError):
    """A possible dough, but outside what the model describes."""

    status = 2


class NoSolution(Error, ArithmeticError):
    """A question without an answer; the message says what is reachable."""

    status = 3


class NotConverged(Error, ArithmeticError):
    """An iteration failed: a defect of the library, please report it."""

    status = 4


class InternalError(Error, RuntimeError):
    """Anything else."""
