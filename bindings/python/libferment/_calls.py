"""Calls that no signature fits, in one line that names what was given; and signatures as inspect reads them."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from libferment._errors import InvalidInput


class Parameter(NamedTuple):
    """A parameter of a signature with types, as the bindings write it."""

    name: str
    kind: str
    """Its type, or empty for the marks ``*`` and ``/``."""
    default: str | None


def _split(text: str) -> list[str]:
    """Split at the commas that stand in no bracket and no quotes."""
    parts, depth, quote, start = [], 0, "", 0
    for place, sign in enumerate(text):
        if quote:
            quote = "" if sign == quote else quote
        elif sign in "'\"":
            quote = sign
        elif sign in "([{<":
            depth += 1
        elif sign in ")]}>" and text[place - 1] != "-":
            depth -= 1
        elif sign == "," and depth == 0:
            parts.append(text[start:place].strip())
            start = place + 1
    return [*parts, text[start:].strip()] if text.strip() else []


def parameters_of(signature: str) -> tuple[str, list[Parameter], str]:
    """Take ``name(a: float, *, b: str = 'x') -> float`` apart: name, parameters, what is returned."""
    name, _, rest = signature.partition("(")
    inside, _, returned = rest.rpartition(") -> ")
    found = []
    for part in _split(inside):
        head, _, default = part.partition(" = ")
        parameter, _, kind = head.partition(": ")
        found.append(Parameter(parameter, kind, default or None))
    return name, found, returned


def _literal(default: str) -> str:
    """Write a default as a signature can hold it."""
    is_literal = re.fullmatch(r"None|True|False|-?[\d.]+(e-?\d+)?|'[^']*'|\[\]|\(\)", default)
    return default if is_literal else "..."


def plain_signature(signature: str) -> str | None:
    """Write a signature without types, for ``__text_signature__``; None if it is of another form."""
    if not re.match(r"\w+\(.*\) -> .", signature):
        return None
    name, parameters, _ = parameters_of(signature)
    written = [
        each.name + ("" if each.default is None else f"={_literal(each.default)}")
        for each in parameters
        if each.name != "/"
    ]
    return f"{name}({', '.join(written)})"


_NUMBER = re.compile(r"Supports(Float|Int|Index)|\bfloat\b|\bint\b|ArrayLike")


def _fits(kind: str, value: Any) -> bool:
    """Whether a value may be what a parameter takes; in doubt it may."""
    if value is None:
        return "None" in kind
    if isinstance(value, bool):
        return "bool" in kind or not _NUMBER.search(kind)
    names = {cls.__name__ for cls in type(value).__mro__}
    if isinstance(value, (int, float)):
        return bool(_NUMBER.search(kind))
    if isinstance(value, str):
        return re.search(r"\bstr\b|ArrayLike", kind) is not None
    if isinstance(value, (list, tuple)):
        return re.search(r"Sequence|list|tuple|ArrayLike", kind) is not None
    return any(re.search(rf"\b{name}\b", kind) for name in names - {"object"}) or "Callable" in kind


def _wanted(kind: str) -> str:
    """Say what a parameter takes."""
    kind = re.sub(r"\b(libferment\._core|collections\.abc|typing|datetime|numpy\.typing)\.", "", kind)
    for written, said in (
        ("SupportsFloat | SupportsIndex", "number"),
        ("SupportsInt | SupportsIndex", "whole number"),
        ("float", "number"),
        ("ArrayLike", "array"),
        (" | None", ""),
        (" | ", " or "),
        ("str", "text"),
    ):
        kind = kind.replace(written, said)
    return kind


def wrong_call(signature: str, given: Sequence[Any], named: Mapping[str, Any]) -> InvalidInput:
    """Make the error of a call that does not fit: what is unknown, missing, too much or of a wrong kind."""
    function, parameters, _ = parameters_of(signature)
    marks = [each.name for each in parameters]
    parameters = [each for each in parameters if each.name not in ("*", "/")]
    unnamed = parameters[: marks.index("*")] if "*" in marks else parameters
    known = [each.name for each in parameters if each.name != "self"]
    for name in named:
        if name not in known:
            near = next((each for each in known if each.startswith(f"{name}_")), None)
            close = near or next(iter(difflib.get_close_matches(name, known, 1)), None)
            advice = f"did you mean {close}?" if close else f"known: {', '.join(known)}"
            return InvalidInput(f'{function} takes no "{name}"', path=name, advice=advice)
    if len(given) > len(unnamed):
        more = parameters[len(unnamed)].name if len(parameters) > len(unnamed) else ""
        return InvalidInput(
            f"{function} takes at most {len(unnamed)} arguments without a name, got {len(given)}",
            advice=f"name the others, such as {more}=..." if more else "leave the others out",
        )
    values = {each.name: value for each, value in zip(unnamed, given, strict=False)} | dict(named)
    for each in parameters:
        if each.default is None and each.name not in values:
            return InvalidInput(
                f"{function} needs {each.name}, a {_wanted(each.kind)}", path=each.name, advice=f"see help({function})"
            )
    for each in parameters:
        if each.name in values and not _fits(each.kind, values[each.name]):
            value = values[each.name]
            shown = repr(value) if len(repr(value)) < 60 else f"{repr(value)[:56]} ..."
            return InvalidInput(
                f"a {_wanted(each.kind)} is wanted, got {type(value).__name__} {shown}",
                path=each.name,
                advice=f"see help({function})",
            )
    kinds = ", ".join(f"{name}: {type(value).__name__}" for name, value in values.items())
    return InvalidInput(
        f"{function} was called with arguments of a wrong kind ({kinds})", advice=f"see help({function})"
    )
