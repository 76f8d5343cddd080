"""Documents: plain data in and out, and what people write in a day file put as a document has it."""

from __future__ import annotations

import datetime
import functools
import json
import math
import re
import sys
from collections.abc import Mapping
from typing import Any, overload

from libferment import _core
from libferment._errors import InvalidInput


@functools.cache
def _members_that_may_never_be() -> frozenset[str]:
    return frozenset(row["name"] for form in _core._forms() for row in form["rows"] if row["never"])


def _plain(value: Any, path: str = "") -> Any:
    """Turn a value into what JSON has: our own values, arrays, times; an hour that never comes is null."""
    if isinstance(value, float):
        if math.isfinite(value):
            return value
        if value > 0 and path.rpartition(".")[2].partition("[")[0] in _members_that_may_never_be():
            return None
        raise InvalidInput(f"{value} is no number that was measured", path=path)
    if isinstance(value, str):
        return _in_utf8(value, path)
    if isinstance(value, Mapping):
        return {
            _in_utf8(str(key), path): _plain(each, f"{path}.{key}" if path else str(key)) for key, each in value.items()
        }
    if isinstance(value, (list, tuple)):
        return [_plain(each, f"{path}[{i}]") for i, each in enumerate(value)]
    if isinstance(value, int) and abs(value) > sys.float_info.max:
        raise InvalidInput("a number too large for any dough", path=path)
    if isinstance(value, datetime.timedelta):
        return value.total_seconds() / (60 if re.search(r"(^|[._])min(utes)?$", path) else 3600)
    if isinstance(value, datetime.datetime):
        raise InvalidInput(
            f"{value} is a moment with a date",
            path=path,
            advice="write the date as date, and times of day as texts such as 18:30",
        )
    if isinstance(value, datetime.date):
        return value.isoformat()
    if isinstance(value, datetime.time):
        return value.strftime("%H:%M")
    if hasattr(value, "to_dict"):
        return _plain(value.to_dict(), path)
    if hasattr(value, "tolist"):  # an array, or a number of NumPy
        return _plain(value.tolist(), path)
    if value is None or isinstance(value, int):
        return value
    raise InvalidInput(f"no document can hold a {type(value).__name__}", path=path)


def _in_utf8(text: str, path: str) -> str:
    try:
        text.encode()
    except UnicodeEncodeError:
        raise InvalidInput(f"{text!r} holds half a character, which no document can", path=path) from None
    return text


def text_of(values: Any) -> str:
    """Write plain data as JSON. Raises InvalidInput, with the way to it, for what no document can hold."""
    try:
        return json.dumps(_plain(values), ensure_ascii=False, allow_nan=False)
    except RecursionError:
        raise InvalidInput("no document can hold this: it is nested too deep, or holds itself") from None


@overload
def ask(question: str, *, threads: int = 0) -> str: ...
@overload
def ask(question: Mapping[str, Any], *, threads: int = 0) -> dict[str, Any]: ...
def ask(question: str | Mapping[str, Any], *, threads: int = 0) -> str | dict[str, Any]:
    """Ask the library: a question in, its answer out, both as documents.

    ``ask({"ask": "water", "day": {"today": {"room": "19C"}, "water": {"desired": "24C"}, "dough": {"flour_g": 500}}})``

    Args:
        question: a dict, whose values may be our own (a Day, a Process, a Kitchen); or the text of a document.
        threads: for forecasts; 0: as many as the machine has.

    What can be asked: water, mixing, simulate, forecast, choose, look, learn, update, rise, explain, cautions, keys;
    ``{"ask": "keys", "of": "ForecastQuestion"}`` answers with the JSON Schema of a question. Returns a dict for a dict,
    a text for a text. Raises InvalidInput with the way to what is wrong, such as ``day.stage[1].until_h``; NoSolution;
    OutsideModel; NotConverged.
    """
    if isinstance(question, str):
        return _core.ask(question, threads)
    answer: dict[str, Any] = json.loads(_core.ask(text_of(question), threads))
    return answer
