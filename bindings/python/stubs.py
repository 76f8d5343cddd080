"""Writes the type stubs of the compiled part from the module itself: its forms and its typed signatures.

``python bindings/python/stubs.py FILE``: values take and show what their forms say, names are Literals, and a function
that broadcasts has two signatures: numbers in, a float out; arrays in, an array out.
"""

from __future__ import annotations

import inspect
import re
import sys
from pathlib import Path
from textwrap import indent, wrap
from typing import Any

from libferment._calls import Parameter, parameters_of

from libferment import _core

FORMS = {form["name"]: form for form in _core._forms()}
NUMBER, COUNT, FLAG, TEXT, NAME, RANGE, ENTRY, VALUE = range(8)
HEADER = '''# mypy: disable-error-code="overload-overlap"
"""The compiled part of libferment; use `import libferment`. Written by ./dev stubs."""

import collections.abc
import datetime
import os
import typing

import numpy
import numpy.typing

_Numbers: typing.TypeAlias = numpy.typing.ArrayLike
_Array: typing.TypeAlias = numpy.typing.NDArray[numpy.float64]

'''
NAMES = {row["name"]: tuple(row["names"]) for form in FORMS.values() for row in form["rows"] if row["kind"] == NAME}
NAMES |= {"from_yeast": NAMES["yeast"], "to_yeast": NAMES["yeast"], "unreachable": ("raise", "inf")}


def literal(names: tuple[str, ...] | list[str]) -> str:
    """Write names as a Literal."""
    return f"typing.Literal[{', '.join(repr(name) for name in names)}]"


def simple(kind: str, name: str = "") -> str:
    """Write a type of the bindings as users think of it."""
    kind = kind.replace("libferment._core.", "")
    for written, meant in (
        ("typing.SupportsFloat | typing.SupportsIndex", "float"),
        ("typing.SupportsInt | typing.SupportsIndex", "int"),
        ("numpy.typing.ArrayLike", "_Numbers"),
        ("numpy.typing.NDArray[numpy.float64]", "_Array"),
    ):
        kind = kind.replace(written, meant)
    kind = re.sub(r"\bobject\b", "typing.Any", kind)
    kind = kind.replace("numpy.ndarray", "numpy.typing.NDArray[typing.Any]")
    kind = re.sub(r"\bIterator$", "Iterator[typing.Any]", kind)
    kind = re.sub(r"\b(list|tuple)$", r"\1[typing.Any]", kind) if kind != "tuple" else "tuple[typing.Any, ...]"
    if name in NAMES and re.fullmatch(r"str( \| None)?", kind):
        kind = kind.replace("str", literal(NAMES[name]))
    return kind


def default_of(default: str) -> str:
    """Write a default that is a literal, else an ellipsis."""
    plain = re.fullmatch(r"None|True|False|-?[\d.]+(e-?\d+)?|'[^']*'", default)
    return default if plain else "..."


def written(parameters: list[Parameter], arrays: bool | None = None) -> str:
    """Parameters of a stub; `arrays` False leaves arrays out."""
    parts = []
    for each in parameters:
        if not each.kind:
            parts.append(each.name)
            continue
        kind = "" if each.name == "self" else simple(each.kind, each.name)
        if arrays is False:
            kind = kind.replace(" | _Numbers", "")
        parts.append(
            each.name
            + (f": {kind}" if kind else "")
            + ("" if each.default is None else f" = {default_of(each.default)}")
        )
    return ", ".join(parts)


def doc_text(doc: str | None, margin: str) -> str:
    """Write a docstring, or an empty body."""
    if not doc:
        return f"{margin}...\n"
    lines = []
    for line in f'"""{doc.strip()}"""'.split("\n"):
        under = " " * (len(line) - len(line.lstrip()) + 4) if line.startswith(" ") else ""
        lines += wrap(line, 120 - len(margin), subsequent_indent=under, break_long_words=False) or [""]
    return indent("\n".join(lines), margin).replace("\\", "\\\\") + "\n"


def function(signature: str, doc: str | None, margin: str = "", static: bool = False) -> str:
    """One function or method, in two signatures if it broadcasts."""
    name, parameters, returned = parameters_of(signature)
    mark = f"{margin}@staticmethod\n" if static else ""
    body = doc_text(doc, margin + "    ")
    if re.match(r"typing\.Any$|.* \| numpy\.ndarray$", returned) and any("ArrayLike" in p.kind for p in parameters):
        one, _, many = (simple(returned) if "|" in returned else "float | _Array").partition(" | ")
        numbers = f"def {name}({written(parameters, arrays=False)}) -> {one}: ...\n"
        arrays = f"def {name}({written(parameters)}) -> {many}:\n"
        over = f"{margin}@typing.overload\n"
        return f"{over}{mark}{margin}{numbers}{over}{mark}{margin}{arrays}{body}"
    return f"{mark}{margin}def {name}({written(parameters)}) -> {simple(returned)}:\n{body}"


def item_kind(row: dict[str, Any], given: bool) -> str:
    """The type of one item of a member, as it is given or as it is shown."""
    kind = {NUMBER: "float", COUNT: "int", FLAG: "bool", TEXT: "str", RANGE: "tuple[float, float]"}.get(row["kind"])
    if row["kind"] == NAME:
        kind = literal(row["names"])
    if row["kind"] == RANGE and row["never"]:
        kind = "tuple[float | None, float | None]"
    if row["kind"] == VALUE:
        kind = " | ".join(row["forms"]) + (" | str" if given and row["has_shorthand"] else "")
    if given and row["is_time"] and not row["many"]:
        kind = f"{kind} | datetime.timedelta" + (" | datetime.time" if row["is_moment"] else "")
    return str(kind)


def member_kind(row: dict[str, Any], given: bool) -> str:
    """Write the type of a member, as it is given or as it is shown."""
    if row["kind"] == ENTRY:
        return f"{'collections.abc.Mapping' if given else 'dict'}[str, float]"
    if row["column"] and not given:
        return "_Array" if row["kind"] == NUMBER else "numpy.typing.NDArray[numpy.uint64]"
    kind = item_kind(row, given)
    if row["many"]:
        if given and row["kind"] == NUMBER:
            return "_Numbers | collections.abc.Sequence[datetime.timedelta]"
        kind = f"collections.abc.Sequence[{kind}]" if given else f"list[{kind}]"
    return f"{kind} | None" if row["optional"] and "tuple[float | None" not in kind else kind


def default_text(value: Any) -> str:
    """Write a default of a form that is a literal, else an ellipsis."""
    return repr(value) if value is None or isinstance(value, (bool, int, float, str)) else "..."


def typed_call(form: dict[str, Any], callable_: Any, name: str) -> str:
    """The constructor of a value, or a maker, with the types of its rows."""
    rows = {row["name"]: row for each in (FORMS["PercentFormula"], form) for row in each["rows"]}
    parts = ["self"] if name == "__init__" else []
    marked = False
    for each in inspect.signature(callable_).parameters.values():
        if each.kind is each.KEYWORD_ONLY and not marked:
            parts.append("*")
            marked = True
        default = "" if each.default is each.empty else f" = {default_text(each.default)}"
        if each.kind is each.VAR_KEYWORD:
            parts.append(f"**{each.name}: typing.Any")
        else:
            parts.append(f"{each.name}: {member_kind(rows[each.name], True)}{default}")
    return ", ".join(parts)


def is_own(cls: type, member: str) -> bool:
    """Whether a class shows a member in a way of its own, with a type in its signature."""
    getter = getattr(vars(cls).get(member), "fget", None)
    return "->" in (getattr(getter, "__doc__", None) or "")


def of_form(form: dict[str, Any], cls: type) -> str:
    """What follows from the form."""
    text = f"    def __init__({typed_call(form, cls, '__init__')}) -> None: ...\n"
    for row in form["rows"]:
        if is_own(cls, row["name"]):
            continue
        text += f"    @property\n    def {row['name']}(self) -> {member_kind(row, False)}:\n"
        unit = f", {row['unit']}" if row["unit"] else ""
        text += doc_text(f"{row['about']}{unit}", "        ")
    changes = ", ".join(f"{row['name']}: {member_kind(row, True)} = ..." for row in form["rows"])
    name = form["name"]
    return text + (
        f"    def replace(self, *, {changes}) -> {name}: ...\n"
        "    def to_dict(self) -> dict[str, typing.Any]: ...\n"
        f"    @staticmethod\n    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> {name}: ...\n"
        "    def to_json(self) -> str: ...\n"
        f"    @staticmethod\n    def from_json(text: str) -> {name}: ...\n"
        "    def save(self, path: str | os.PathLike[str]) -> None: ...\n"
        f"    @staticmethod\n    def load(path: str | os.PathLike[str]) -> {name}: ...\n"
        "    def __eq__(self, other: object) -> bool: ...\n    def __hash__(self) -> int: ...\n"
    )


FROM_FORM = {
    "__init__",
    "replace",
    "to_dict",
    "from_dict",
    "to_json",
    "from_json",
    "save",
    "load",
    "__eq__",
    "__hash__",
    "__repr__",
    "__reduce__",
}


def of_class(name: str, cls: type) -> str:
    """A class: its form, and what else it has."""
    form = FORMS.get(name)
    base = cls.__bases__[0].__name__
    text = f"class {name}{'' if base == 'pybind11_object' else f'({base})'}:\n"
    text += doc_text(cls.__doc__, "    ") if cls.__doc__ else ""
    text += of_form(form, cls) if form else ""
    members = {row["name"] for row in form["rows"]} | FROM_FORM if form else set()
    members -= {member for member in members if is_own(cls, member)}
    for member, value in vars(cls).items():
        if member in members or member == "__doc__":
            continue
        signature = _core._signatures.get(f"{name}.{member}")
        static = isinstance(value, staticmethod)
        if isinstance(value, property):
            doc = value.fget.__doc__ or ""
            kind = re.match(r"\(.*?\) -> (.+)", doc) or re.match(r"\w*\(.*?\) -> (.+)", doc)
            text += f"    @property\n    def {member}(self) -> {simple(kind[1]) if kind else 'typing.Any'}:\n"
            text += doc_text(value.__doc__, "        ")
        elif signature:
            body = function(
                signature, None if member.startswith("__") else getattr(cls, member).__doc__, "    ", static
            )
            text += body.replace("other: typing.Any", "other: object") if member == "__eq__" else body
        elif static and form:
            text += (
                f"    @staticmethod\n    def {member}({typed_call(form, getattr(cls, member), member)}) -> {name}:\n"
            )
            text += doc_text(getattr(cls, member).__doc__, "        ")
    return text if text.count("\n") > 1 else text + "    ...\n"


def stubs() -> str:
    """Write the whole file."""
    classes = {name: value for name, value in vars(_core).items() if isinstance(value, type)}
    functions = {name: value for name, value in vars(_core).items() if callable(value) and not isinstance(value, type)}
    parts = [HEADER, "__version__: str\n_signatures: dict[str, str]\n"]
    parts += [of_class(name, classes[name]) for name in sorted(classes)]
    parts += [
        function(_core._signatures[name], functions[name].__doc__)
        if name in _core._signatures
        else f"def {name}(*args: typing.Any, **keywords: typing.Any) -> typing.Any: ...\n"
        for name in sorted(functions)
    ]
    return "\n".join(parts)


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(stubs(), encoding="utf-8")
