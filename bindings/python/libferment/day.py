"""A day file: the document of a day, written as TOML."""

from __future__ import annotations

import datetime
import re
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from libferment._core import Day
from libferment._documents import text_of
from libferment._errors import Error, InvalidInput
from libferment._files import read_text
from libferment.temperature_log import read_temperature_log

if sys.version_info >= (3, 11):
    import tomllib
else:
    import tomli as tomllib

LOGS = ("room_log", "refrigerator_log", "proof_box_log", "dough_log")


def _with_logs(content: Any, folder: Path, where: str = "") -> Any:
    """Put the series of a thermometer in the place of its file's name."""
    if isinstance(content, list):
        return [_with_logs(each, folder, f"{where}[{i}]") for i, each in enumerate(content)]
    if not isinstance(content, dict):
        return content
    placed: dict[str, Any] = {}
    for key, value in content.items():
        path = f"{where}.{key}" if where else key
        if key in LOGS and isinstance(value, str):
            try:
                log = read_temperature_log(folder / value)
            except InvalidInput as problem:
                raise InvalidInput(problem.problem, path=path, advice=problem.advice) from None
            placed[key] = {"time_h": list(log.time_h), "temperature_c": list(log.temperature_c)}
        elif isinstance(value, datetime.time):
            placed[key] = value.strftime("%H:%M")
        elif isinstance(value, datetime.date) and not isinstance(value, datetime.datetime):
            placed[key] = value.isoformat()
        else:
            placed[key] = _with_logs(value, folder, path)
    return placed


def _in_toml(path: str, content: Mapping[str, Any]) -> str:
    """Word the way to a member as it stands in the file: ``[[stage]] "bulk" until_h``."""
    found = re.match(r"(\w+)(?:\[(\d+)\])?(?:\.(.+))?$", path)
    if found is None or not isinstance(content.get(found[1]), (dict, list)):
        return path
    table, index, rest = found[1], found[2], found[3] or ""
    if index is None:
        return f"[{table}] {rest}".strip()
    item = content[table][int(index)] if int(index) < len(content[table]) else {}
    name = item.get("name") if isinstance(item, dict) else None
    which = f'"{name}"' if isinstance(name, str) else str(int(index) + 1)
    return f"[[{table}]] {which} {rest}".strip()


def in_writing(error: Error, content: Mapping[str, Any] | None = None) -> str:
    """Word an error for who writes quantities as texts: ``78F``, not ``celsius(78)``; places as a file has them."""
    unit = error.unit_meant() and f"{error.unit_meant()}, write {error.value:g}F"
    where = _in_toml(error.path, content) if content is not None else error.path
    is_all = where == "stage" and content is None  # "the day has no stage" says it
    first = f"{where}: {error.problem}" if where and not is_all else error.problem
    return "; ".join(part for part in (first, unit, error.advice) if part)


def read_content(path: str | Path) -> dict[str, Any]:
    """Read a day file as plain data, logs in their place. Raises InvalidInput if it is missing or no TOML."""
    return content_of(read_text(path, a_file="the day file"), path)


def content_of(text: str, path: str | Path) -> dict[str, Any]:
    """Read the text of a day file that lies, or will lie, at a path. Raises InvalidInput if it is no TOML."""
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
        placed: dict[str, Any] = _with_logs(content, Path(path).parent)
    except RecursionError:
        raise InvalidInput(f"{path} is nested too deep for a day; tables in it hold tables once or twice") from None
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {in_writing(problem, content)}") from None
    return placed


def day_of(content: Mapping[str, Any], path: str | Path) -> Day:
    """Build the day of a file's content. Raises InvalidInput, naming the file, the table and the key."""
    try:
        return Day.from_json(text_of(content))
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {in_writing(problem, content)}") from None


def read_day(path: str | Path) -> Day:
    """Read a day file.

    Names of temperature logs in it (``room_log = "room.csv"``) are looked up beside the file. Raises InvalidInput if it
    is missing, no TOML, or has an unknown key, a wrong type, no unit, or what contradicts itself.
    """
    return day_of(read_content(path), path)
