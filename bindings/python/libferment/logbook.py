"""A logbook: earlier days and what was seen of them, from a folder of day files or a table of rises."""

from __future__ import annotations

import datetime
import difflib
import math
import os
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar, overload

from libferment._cells import (
    CLOCK,
    NUMBER,
    UNITS_PER_HOUR,
    about_comma,
    count,
    counted_h,
    degrees_of,
    number_of,
    rows_of_text,
    shown,
    table_text,
)
from libferment._core import Day, celsius, moment_h
from libferment._documents import ask, text_of
from libferment._errors import Error, InvalidInput, NoSolution, OutsideModel
from libferment._files import files_in, is_folder
from libferment.day import in_writing, read_day

if TYPE_CHECKING:
    import pandas as pd

_DEGREES = {
    **dict.fromkeys(("c", "degc", "celsius"), "C"),
    **dict.fromkeys(("f", "degf", "fahrenheit"), "F"),
}
_GRAMS = {**dict.fromkeys(("g", "gram", "grams"), 1.0), "kg": 1000.0}
_PERCENT = dict.fromkeys(("%", "percent", "pct"), 1.0)
_FILLERS = {"temperature": {"temp", "temperature", "deg", "degrees"}}
"""Words of a header that say nothing more, by quantity."""
_WORDS_FOR_UNITS: dict[str, Mapping[str, Any]] = {
    "temperature": _DEGREES,
    "time": UNITS_PER_HOUR,
    "mass": _GRAMS,
    "percent": _PERCENT,
}


class _Column(NamedTuple):
    quantity: str
    example: str
    """How a cell is written."""
    members: tuple[str, ...]
    """Where it stands in a day; by them the column is found that the library refuses."""
    is_needed: bool = False


_COLUMNS = {
    "date": _Column("text", "2026-10-04", ("date",)),
    "dough": _Column("temperature", "24.5C or 76F", ("dough.measured_c", "stage[0].dough_c"), is_needed=True),
    "room": _Column("temperature", "21C or 70F", ("stage[0].room_c",)),
    "yeast": _Column("percent", "0.7 or 0.7%", ("dough.yeast_percent",), is_needed=True),
    "yeast_kind": _Column("text", "instant", ("dough.yeast",)),
    "packet": _Column("text", "its name or its date", ("dough.packet",)),
    "salt": _Column("percent", "2 or 2%", ("dough.salt_percent",)),
    "water": _Column("percent", "65 or 65%", ("dough.water_percent",)),
    "sugar": _Column("percent", "5 or 5%", ("dough.sugar_percent",)),
    "flour": _Column("mass", "500 g or 0.5 kg", ("dough.flour_g",)),
    "stage": _Column("text", "bulk", ("stage[0].name", "seen[0].stage")),
    "rise": _Column(
        "percent",
        "60 or 60%",
        ("seen[0].rise_percent", "seen[0].not_yet_percent", "seen[0].already_past_percent"),
        is_needed=True,
    ),
    "time": _Column("time", "80 min or 1 h 20 min", ("stage[0].until_h", "seen[0].at"), is_needed=True),
    "mixed": _Column("clock", "21:40", ("mixed",)),
    "kind": _Column("text", "at, not yet or past", ()),
}
_COLUMN_OF = {member: name for name, column in _COLUMNS.items() for member in column.members}
_HEADER = "date,dough_c,yeast_percent,rise,time_min"
_SEEN_AS = {
    **dict.fromkeys(("at", "reached"), "rise_percent"),
    "not_yet": "not_yet_percent",
    **dict.fromkeys(("past", "already_past"), "already_past_percent"),
}


@dataclass(frozen=True, repr=False)
class Logbook(Sequence[Day]):
    """Days in the order in which they were written down, and what could not be read of the others."""

    days: list[Day]
    names: list[str]
    """Where each day came from: the name of its file, or its place in the table, such as line 7."""
    problems: list[str]
    """One text for each file or row that was left out: where, what is wrong, what to write."""
    source: str = ""

    def __len__(self) -> int:
        """Count the days that could be read."""
        return len(self.days)

    def __iter__(self) -> Iterator[Day]:
        """Go through the days."""
        return iter(self.days)

    @overload
    def __getitem__(self, index: int) -> Day: ...
    @overload
    def __getitem__(self, index: slice) -> list[Day]: ...
    def __getitem__(self, index: int | slice) -> Day | list[Day]:
        """Take a day, or a list of several."""
        return self.days[index]

    def __repr__(self) -> str:
        """Count what was read and what was not, and tell the first problems."""
        left_out = f", {len(self.problems)} left out" if self.problems else ""
        return "\n  ".join([f"<Logbook {self.source}: {count(len(self), 'day')}{left_out}>", *_first(self.problems)])


def _first(problems: Sequence[str], most: int = 5) -> list[str]:
    more = [f"and {len(problems) - most} more"] if len(problems) > most else []
    return [*problems[:most], *more]


# ---- the header ------------------------------------------------------------------------------------------------------


class _Heading(NamedTuple):
    column: str
    unit: str
    """The word for it; empty if the header tells none."""


def _words(text: str) -> list[str]:
    """Split a header such as ``dough (°F)`` into its words."""
    return [word for word in re.split(r"[\s_()\[\],/.°º-]+", text.lower().replace("%", " % ")) if word]


def _heading(text: str) -> _Heading | None:
    """Read a header: a column, and perhaps a unit; None if it is no known one."""
    words = _words(text)
    for name, column in _COLUMNS.items():
        own = name.split("_")
        if words[: len(own)] != own:
            continue
        further = [word for word in words[len(own) :] if word not in _FILLERS.get(column.quantity, ())]
        if not further:
            return _Heading(name, "")
        if len(further) == 1 and further[0] in _WORDS_FOR_UNITS.get(column.quantity, ()):
            return _Heading(name, further[0])
    return None


def _named(column: str) -> str:
    """Name a column with the unit without which it is never written."""
    return f"{column}_g" if _COLUMNS[column].quantity == "mass" else column


def _unknown(text: str) -> str:
    """Say that no column is called so, and which one may be meant."""
    near = difflib.get_close_matches("_".join(_words(text)), _COLUMNS, 1)
    meant = f"did you mean {_named(near[0])}? " if near else ""
    return f"the column {shown(text)} is unknown; {meant}known: {', '.join(map(_named, _COLUMNS))}"


def _headings(header: Sequence[str]) -> dict[int, _Heading]:
    """Read the first row; columns without a name are left out. Raises InvalidInput."""
    read = {place: _heading(text) for place, text in enumerate(header) if text}
    if not any(read.values()):
        names = ", ".join(shown(text) for text in header[:5])
        raise InvalidInput(f"no column has a known name ({names}); begin the table with a header such as {_HEADER}")
    headings: dict[int, _Heading] = {}
    for place, heading in read.items():
        if heading is None:
            raise InvalidInput(_unknown(header[place]))
        for before, other in headings.items():
            if other.column == heading.column:
                both = f"{shown(header[before])} and {shown(header[place])}"
                raise InvalidInput(f"two columns are the {heading.column}: {both}; keep one of them")
        headings[place] = heading
    there = {heading.column for heading in headings.values()}
    missing = [name for name, column in _COLUMNS.items() if column.is_needed and name not in there]
    if missing:
        raise InvalidInput(f"there is no column {' and no column '.join(missing)}; write a header such as {_HEADER}")
    return headings


# ---- cells -----------------------------------------------------------------------------------------------------------


_Value = TypeVar("_Value")


class _Unreadable(Exception):
    """What is wrong with a cell, and what to write."""


_AMOUNT = re.compile(rf"({NUMBER})\s*([^\W\d_]+|%)?")
_PART_OF_TIME = re.compile(rf"({NUMBER})\s*([^\W\d_]+)\s*")


def _amount(text: str, column: str, unit: str, decimal_comma: bool) -> float:
    """Read a number of percent or grams; the unit of a cell counts before the header's."""
    quantity, example, *_ = _COLUMNS[column]
    units = _WORDS_FOR_UNITS[quantity]
    match = _AMOUNT.fullmatch(text)
    value = None if match is None else number_of(match[1], decimal_comma)
    if match is None or value is None:
        comma = "" if decimal_comma else about_comma(text)
        raise _Unreadable(f"{shown(text)} is not a number; write {example}{comma}")
    word = (match[2] or unit).lower()
    if not word and quantity != "percent":
        raise _Unreadable(f"{shown(text)} has no unit; write {example}, or name the column {_named(column)}")
    if word and word not in units:
        raise _Unreadable(f"{shown(text)} has the unit {shown(match[2])}; write {example}")
    return value * float(units.get(word, 1))


def _degrees(text: str, column: str, unit: str, decimal_comma: bool) -> tuple[float, str]:
    """Read a temperature in °C, and the unit in which it was written."""
    example = _COLUMNS[column].example
    read = degrees_of(text, decimal_comma)
    if read is None:
        comma = "" if decimal_comma else about_comma(text)
        raise _Unreadable(f"{shown(text)} is not a number of °C or °F; write {example}{comma}")
    value, own = read
    own = own or _DEGREES.get(unit, "")
    if not own:
        raise _Unreadable(
            f"{shown(text)} may be °C or °F; write {value:g}C or {value:g}F, or name the column {column}_c or "
            f"{column}_f"
        )
    return (float(celsius(value)) if own == "F" else value), own


def _minutes_of_parts(text: str, decimal_comma: bool) -> float | None:
    """Read ``1 h 20 min``: units from large to small, each once; None if it is no such text."""
    at, minutes, before = 0, 0.0, 0.0
    while at < len(text):
        match = _PART_OF_TIME.match(text, at)
        value = None if match is None else number_of(match[1], decimal_comma)
        per_hour = 0.0 if match is None else UNITS_PER_HOUR.get(match[2].lower(), 0.0)
        if match is None or value is None or per_hour <= before or (before and not match[1][0].isdigit()):
            return None
        minutes += value * 60 / per_hour
        at, before = match.end(), per_hour
    return minutes if text else None


def _minutes(text: str, unit: str, decimal_comma: bool, is_mixed_known: bool) -> float:
    """Read how long after the end of mixing; the unit of a cell counts before the header's."""
    parts = _minutes_of_parts(text, decimal_comma)
    if parts is not None:
        return parts
    clock = CLOCK.fullmatch(text)
    if clock is not None:
        if unit and UNITS_PER_HOUR[unit] != 1:
            raise _Unreadable(
                f"{shown(text)} may be hours and minutes, or minutes and seconds; write {_COLUMNS['time'].example}"
            )
        try:
            return 60 * counted_h(clock)
        except ValueError:
            raise _Unreadable(f"{shown(text)} has more than 59 minutes or seconds; write 1:20 or 80 min") from None
    value = number_of(text, decimal_comma)
    how = _COLUMNS["time"].example + (", or a time of day such as 23:10" if is_mixed_known else "")
    if value is None:
        comma = "" if decimal_comma else about_comma(text)
        raise _Unreadable(f"{shown(text)} is no time after the end of mixing; write {how}{comma}")
    if not unit:
        raise _Unreadable(f"{shown(text)} has no unit; write {how}, or name the column time_min or time_h")
    return value * 60 / UNITS_PER_HOUR[unit]


def _seen_as(text: str) -> str:
    """Read as what a rise was seen: the member of a sighting."""
    word = "_".join(re.split(r"[\s_-]+", text.lower()))
    if word not in _SEEN_AS:
        raise _Unreadable(f"{shown(text)} is unknown; write {_COLUMNS['kind'].example}")
    return _SEEN_AS[word]


def _clock(text: str, after_h: float = 0.0) -> tuple[str, float]:
    """Read a time of day, as a day has it and as hours, at or after that hour."""
    in_minutes = text.removesuffix(":00") if text.count(":") == 2 else text  # as spreadsheets write it
    try:
        return in_minutes, float(moment_h(in_minutes, after_h))
    except InvalidInput as problem:
        raise _Unreadable(in_writing(problem)) from None


# ---- a row and its day -----------------------------------------------------------------------------------------------


class WrittenRow(NamedTuple):
    """What stands in a row, and how it is to be read."""

    name: str
    """Its place in the table, such as line 7."""
    cells: Mapping[str, str]
    """By column, for all columns of the table; empty where nothing is written."""
    units: Mapping[str, str]
    """Units of the header, by column."""
    decimal_comma: bool


class _Reading:
    """Reads the cells of a row one after the other and keeps what is wrong, to be told all at once."""

    def __init__(self, row: WrittenRow) -> None:
        self._row = row
        self.problems: dict[str, str] = {}

    def read(self, column: str, how: Callable[[str], _Value], default: _Value) -> _Value:
        text = self._row.cells.get(column, "")
        if text:
            try:
                return how(text)
            except _Unreadable as problem:
                self.problems[column] = str(problem)
        elif _COLUMNS[column].is_needed:
            self.problems[column] = f"nothing is written; write {_COLUMNS[column].example}"
        return default

    def text(self, column: str, default: str = "") -> str:
        return self.read(column, str, default)

    def amount(self, column: str, default: float = math.nan) -> float:
        unit = self._row.units.get(column, "")
        return self.read(column, lambda text: _amount(text, column, unit, self._row.decimal_comma), default)

    def degrees(self, column: str) -> float:
        unit = self._row.units.get(column, "")
        return self.read(column, lambda text: _degrees(text, column, unit, self._row.decimal_comma)[0], math.nan)


def _when(text: str, row: WrittenRow, mixed_h: float | None) -> tuple[str, float]:
    """Read when the dough was seen: as a day has it, and as hours after the end of mixing."""
    unit = row.units.get("time", "")
    looks_like_clock = CLOCK.fullmatch(text) or (text.startswith("+") and ":" in text)
    if "mixed" in row.cells and looks_like_clock:
        if unit:
            raise _Unreadable(f"{shown(text)} is a time of day, but the header says {unit}; name the column time")
        if mixed_h is None:
            raise _Unreadable(f"{shown(text)} is a time of day, and mixed is empty; fill it in, or write 80 min here")
        at, at_h = _clock(text, mixed_h)
        return at, round(60 * (at_h - mixed_h)) / 60
    minutes = round(_minutes(text, unit, row.decimal_comma, mixed_h is not None), 6)
    # The same number in both, so that what was seen at the end of a stage is not seen after it.
    return f"{minutes:.6f}".rstrip("0").rstrip(".") + "min", minutes / 60


def content_of(row: WrittenRow) -> tuple[dict[str, Any], dict[str, str]]:
    """Put a row as the content of a day, and what cannot be read of it, by column."""
    reading = _Reading(row)
    not_known: tuple[str, float | None] = ("", None)
    mixed, mixed_h = reading.read("mixed", _clock, not_known)
    dough_c, room_c = reading.degrees("dough"), reading.degrees("room")
    dough: dict[str, Any] = {
        "flour_g": reading.amount("flour", 500),
        "measured_c": dough_c,
        "yeast": reading.text("yeast_kind", "instant"),
        "yeast_percent": reading.amount("yeast"),
        "salt_percent": reading.amount("salt", 2),
        "water_percent": reading.amount("water", 65),
        "sugar_percent": reading.amount("sugar", 0),
    }
    packet, date, name = reading.text("packet"), reading.text("date"), reading.text("stage", "bulk")
    seen_as = reading.read("kind", _seen_as, "rise_percent")
    rise = reading.amount("rise")
    at, until_h = "", math.nan
    if "mixed" not in reading.problems:
        at, until_h = reading.read("time", lambda text: _when(text, row, mixed_h), (at, until_h))
    stage: dict[str, Any] = {"name": name}
    stage |= {"dough_c": dough_c} if math.isnan(room_c) else {"piece": "tub", "room_c": room_c}
    content: dict[str, Any] = {"title": row.name}
    content |= {"date": date} if date else {}
    content |= {"dough": dough | ({"packet": packet} if packet else {})}
    content |= {"mixed": mixed} if mixed else {}
    content |= {"stage": [stage | {"until_h": until_h}]}
    content |= {"seen": [{"stage": name, "at": at, seen_as: rise}]}
    return content, reading.problems


def _day_from(content: Mapping[str, Any]) -> Day:
    """Build a day that can be followed: some amounts the library refuses only with the whole formula at hand."""
    day = Day.from_json(text_of(content))
    _require_looks(day)
    return day


def _require_looks(day: Day) -> None:
    """Refuse looks that cannot be: before their stage, after its end, against each other. By following the day."""
    try:
        ask({"ask": "forecast", "day": day, "draws": 2})
    except InvalidInput as problem:
        problem.path = problem.path.removeprefix("day.")
        raise


def _refused(problem: Error, row: WrittenRow) -> str:
    """Word what the library says against a row: with the column and the cell in the place of the member."""
    column = _COLUMN_OF.get(problem.path)
    if column is None:
        return in_writing(problem)
    text = row.cells.get(column, "")
    if _COLUMNS[column].quantity == "temperature" and _degrees(text, column, row.units.get(column, ""), True)[1] == "F":
        problem.meant = ""  # it was °F
    problem.path = ""
    reason = in_writing(problem)
    return f"{column}: {reason}" if text in reason else f"{column}: {shown(text)} is refused: {reason}"


def _day_of_row(row: WrittenRow) -> Day | str:
    """Build the day of a row, or say what is wrong with it."""
    content, problems = content_of(row)
    if problems:
        return "; ".join(f"{column}: {problem}" for column, problem in problems.items())
    try:
        return _day_from(content)
    except (InvalidInput, OutsideModel, NoSolution) as problem:
        return _refused(problem, row)


# ---- tables ----------------------------------------------------------------------------------------------------------


class _Sheet(NamedTuple):
    name: str
    header: list[str]
    rows: list[tuple[str, list[str]]]
    """Name and cells of each."""
    decimal_comma: bool


def _sheet_of_text(text: str, name: str) -> _Sheet:
    rows, delimiter = rows_of_text(
        text, f"a header such as {_HEADER} and a row for each rise", "a cell for each column"
    )
    header = rows.pop(0).cells
    return _Sheet(name, header, [(f"line {row.line}", row.cells) for row in rows], delimiter != ",")


def _as_text(value: Any) -> str:
    """Write a cell of a frame as it would stand in a file."""
    if isinstance(value, datetime.timedelta):
        return f"{value.total_seconds() / 60} min"
    if isinstance(value, datetime.datetime):
        return value.isoformat(" ").removesuffix(" 00:00:00")
    if isinstance(value, datetime.time):
        return value.isoformat()
    # A column of whole numbers with a gap in it is one of floats.
    is_whole = isinstance(value, float) and value.is_integer()
    return str(int(value) if is_whole else value).strip()


def _sheet_of_frame(frame: pd.DataFrame) -> _Sheet:
    gaps = frame.isna().to_numpy()
    rows = []
    for (label, *values), is_gap in zip(frame.itertuples(name=None), gaps, strict=True):
        cells = ["" if gap else _as_text(value) for value, gap in zip(values, is_gap, strict=True)]
        if any(cells):
            rows.append((f"row {label}", cells))
    return _Sheet("DataFrame", [str(name).strip() for name in frame.columns], rows, True)


def _misplaced(texts: Sequence[str], headings: Mapping[int, _Heading], decimal_comma: bool) -> str:
    """Say which cell cannot belong where it stands: the row was divided wrongly; or nothing."""
    for place, text in enumerate(texts):
        if "\n" in text:  # other rows may be in it
            column = headings[place].column if place in headings else f"column {place + 1}"
            return f"{column}: the cell has several lines; is a quotation mark left open?"
        if text and place not in headings:
            comma = "" if decimal_comma else about_comma(",")  # one that divided a number
            return f"{shown(text)} stands in a column without a name; name it, or take it out{comma}"
    return ""


def _of_sheet(sheet: _Sheet) -> Logbook:
    """Read all rows. Raises InvalidInput for the header, and if no row can be used."""
    headings = _headings(sheet.header)
    units = {heading.column: heading.unit for heading in headings.values() if heading.unit}
    book = Logbook([], [], [], sheet.name)
    for name, texts in sheet.rows:
        problem = _misplaced(texts, headings, sheet.decimal_comma)
        cells = {heading.column: texts[place] if place < len(texts) else "" for place, heading in headings.items()}
        read = problem or _day_of_row(WrittenRow(name, cells, units, sheet.decimal_comma))
        if isinstance(read, Day):
            book.days.append(read)
            book.names.append(name)
        else:
            book.problems.append(f"{sheet.name}, {name}, {read}")
    if not book.days:
        why = "; ".join(_first(book.problems, 3)) or "there is none below the header"
        raise InvalidInput(f"no row can be used: {why}")
    return book


# ---- folders ---------------------------------------------------------------------------------------------------------


def _of_folder(folder: Path) -> Logbook:
    """Read all day files. Raises InvalidInput if none can be used."""
    files = files_in(folder, ".toml")
    if not files:
        tables = files_in(folder, ".csv")
        advice = f"name the table itself: {tables[0]}" if tables else "a day file ends with .toml"
        raise InvalidInput(f"there is no day file in the folder {folder}; {advice}")
    book = Logbook([], [], [], folder.name or str(folder))
    for file in files:
        try:
            day = read_day(file)
        except InvalidInput as problem:
            book.problems.append(str(problem).replace(str(file), file.name, 1))
            continue
        try:
            if day.seen:
                _require_looks(day)
        except (InvalidInput, NoSolution, OutsideModel) as problem:
            book.problems.append(f"{file.name}: {in_writing(problem)}")
            continue
        book.days.append(day)
        book.names.append(file.name)
    if not book.days:
        raise InvalidInput(f"{folder}: no day file can be used: {'; '.join(_first(book.problems, 3))}")
    return book


# ---- the reader ------------------------------------------------------------------------------------------------------


def read_logbook(source: str | os.PathLike[str] | pd.DataFrame) -> Logbook:
    """Read earlier days: a folder of day files (``*.toml``), one day file, a CSV file or a DataFrame with a row a rise.

    Columns of a table, in any order: dough (its temperature when it was mixed), yeast (percent of the flour), rise (in
    percent) and time (after the end of mixing, or a time of day with the column mixed) are needed; date, room (without
    it the dough stays as warm), yeast_kind, packet, salt, water, sugar, flour (500 g), stage (bulk), mixed and kind
    (at, not yet, past) are not. Units stand in the header (``dough_c``, ``time (h)``) or in the cell (``75F``, ``1 h 20
    min``), which counts first. Columns are divided by commas, semicolons or tabs; lines that begin with # are remarks.

    What cannot be read is left out, and told in the logbook's `problems`. Raises InvalidInput if the source or a needed
    column is missing, a column is unknown, or nothing at all can be used.
    """
    if not isinstance(source, (str, os.PathLike)):
        if not hasattr(source, "itertuples"):
            raise InvalidInput(
                f"source must be a folder, a CSV file, a day file or a DataFrame; got {type(source).__name__}"
            )
        try:
            return _of_sheet(_sheet_of_frame(source))
        except InvalidInput as problem:
            raise InvalidInput(f"DataFrame: {problem}") from None
    path = Path(source)
    if is_folder(path):
        return _of_folder(path)
    if path.suffix.lower() == ".toml":
        return Logbook([read_day(path)], [path.name], [], path.name)
    text = table_text(path, "the table")
    try:
        return _of_sheet(_sheet_of_text(text, path.name))
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {problem}") from None
