"""What can go wrong. Each class also derives from a builtin, so that ``except ValueError`` works."""

from __future__ import annotations


class Error(Exception):
    """Base of all errors of libferment.

    Attributes tell a program what the text tells a person; ``None`` where they do not apply.
    """

    status: int = 99
    """Status code, the same as in the C interface."""
    field: str = ""
    """Name of the input in the field table."""
    value: float | None = None
    low: float | None = None
    """Lowest allowed or reachable value."""
    high: float | None = None
    """Highest allowed or reachable value."""
    ranges: tuple[tuple[float, float], ...] = ()
    """Reachable values between low and high, where they have holes."""
    index: int | None = None
    """First offending value of an array, counted through the flattened array."""
    count: int | None = None
    """How many values of the array offend."""


class InvalidInput(Error, ValueError):
    """A value that no dough can have, or of a wrong form."""


class OutsideModel(Error, ValueError):
    """A possible dough, but outside what the model describes."""


class NoSolution(Error, ArithmeticError):
    """A question without an answer; the message says what is reachable."""


class NotConverged(Error, ArithmeticError):
    """An iteration failed: a defect of the library, please report it."""


class InternalError(Error, RuntimeError):
    """Anything else."""
