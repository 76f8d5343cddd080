"""A temperature log: the readings of a probe or thermometer, time and °C or °F, read from a CSV file."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta, timezone
from io import StringIO
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from libferment._cells import (
    CLOCK,
    UNITS_PER_HOUR,
    Row,
    about_comma,
    clock_h,
    count,
    degrees_of,
    number_of,
    rows_of_text,
    shown,
    table_text,
)
from libferment._core import Notice, celsius
from libferment._errors import InvalidInput

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt
    import pandas as pd

_LOWEST_AND_HIGHEST = {"C": (-50.0, 120.0), "F": (-58.0, 248.0)}  # the same two temperatures
_SINCE_1970 = 1e8
"""A time that is a plain number from here on, three years in seconds, is a date in seconds or milliseconds."""
_HOW_TO_WRITE_DATES = "write dates as 2026-03-01 07:10, or count hours, min or s from the log's start"
_TIME_WORDS = {"time", "date", "datetime", "timestamp", "clock", "elapsed"}
_HOURS_UNSAID = {"time", "elapsed", "since", "from", "the", "start"}
"""Words of a time's header that leave its numbers hours."""

_DATE = re.compile(
    r"(?P<day>\d{4}-\d\d-\d\d)(?:T|\s+)"
    + CLOCK.pattern
    + r"\s*(?:(?P<utc>Z)|(?P<zone>[-+−]\d\d)(?::?(?P<rest>\d\d))?)?"
)
_DEGREES = re.compile(
    r"(?:[°º(\[_,/]|deg(?:rees?)?|temp(?:erature)?|\bin)[\s.-]*([cf])(?![a-z0-9])|^([cf])$|(celsius|fahrenheit)",
    re.IGNORECASE,
)
_PROBE_OFF = re.compile(r"[-–—]*|nan|n/?a|null|none|off|err(or)?", re.IGNORECASE)


@dataclass(frozen=True, eq=False)
class TemperatureLog:
    """The readings of a log in the order of their times; the two arrays have the shape (readings,)."""

    time_h: npt.NDArray[np.float64]
    """Hours from the first reading; as in the file if its times are plain numbers."""
    temperature_c: npt.NDArray[np.float64]
    """°C."""
    start: datetime | None
    """Date and time of the first reading; None if the file has no dates."""
    notices: tuple[Notice, ...] = ()
    start_h: float | None = None
    """Hour of the day of the first reading, by the log's own clock; None if its times are plain numbers."""

    @property
    def day_h(self) -> npt.NDArray[np.float64]:
        """Hours of the first reading's day: what a process that counts from midnight takes. Raises InvalidInput."""
        if self.start_h is None:
            raise InvalidInput("the log's times are plain numbers: its day is not known", advice="use time_h")
        return self.time_h + self.start_h

    def to_frame(self) -> pd.DataFrame:
        """Build a pandas DataFrame with time_h and temperature_c, by date if the log has one. Needs pandas."""
        import pandas as pd

        frame = pd.DataFrame({"time_h": self.time_h, "temperature_c": self.temperature_c})
        if self.start is not None:
            frame.index = pd.Timestamp(self.start) + pd.to_timedelta(self.time_h, unit="h")
        return frame


class _Table(NamedTuple):
    """The file in rows and columns, and which of them matter."""

    header: list[str] | None
    rows: list[Row]
    delimiter: str
    time: int
    temperature: int

    @property
    def decimal_comma(self) -> bool:
        return self.delimiter != ","

    def name(self, column: int) -> str:
        return self.header[column] if self.header else ""


class _Times(NamedTuple):
    """The times of all rows as hours, in the order of the rows."""

    hours: list[float]
    dates: list[datetime]
    """The same as dates; empty if the file has none."""
    as_in_file: bool
    """Whether they are plain numbers, to be counted from where the file counts."""


class _Problems:
    """What is wrong with single lines, to be refused in one message."""

    def __init__(self) -> None:
        self._found: dict[int, str] = {}

    def add(self, line: int, text: str) -> None:
        self._found.setdefault(line, text)

    def refuse(self) -> None:
        if self._found:
            line = min(self._found)
            many = f" ({len(self._found)} bad lines in all)" if len(self._found) > 1 else ""
            raise InvalidInput(f"line {line}: {self._found[line]}{many}")


# ---- the file, its lines and its columns -----------------------------------------------------------------------------


def _table(text: str) -> _Table:
    rows, delimiter = rows_of_text(
        text, "at least two readings, each with a time and a temperature", "a time and a temperature"
    )
    decimal_comma = delimiter != ","
    first = rows[0].cells
    is_data = any(_form(cell, decimal_comma) or degrees_of(cell, decimal_comma) for cell in first)
    header = None if is_data else rows.pop(0).cells
    time = _time_column(first, header, decimal_comma)
    table = _Table(header, rows, delimiter, time, _temperature_column(first, header, rows, time, decimal_comma))
    if not decimal_comma:
        _refuse_decimal_commas(table, len(first))
    return table


def _refuse_decimal_commas(table: _Table, width: int) -> None:
    """Refuse rows that are too long with a number where the decimals of the temperature would stand."""
    problems = _Problems()
    after = max(table.time, table.temperature) + 1
    for row in table.rows:
        if any(row.cells[width:]) and row.cell(after)[:1].isdigit():
            problems.add(
                row.line,
                f"more than the {width} columns of the first line; if {shown(','.join(row.cells))} has a decimal "
                "comma, write a point, or a semicolon between the columns",
            )
    problems.refuse()


def _only(columns: list[int], header: list[str] | None, what: str) -> int:
    if len(columns) == 1:
        return columns[0]
    names = [
        f"{shown(header[column])} (column {column + 1})" if header else f"column {column + 1}" for column in columns
    ]
    raise InvalidInput(f"several columns could be the {what}: {', '.join(names)}; keep one of them in the file")


def _words(name: str) -> set[str]:
    """Split a header such as ``elapsedTime_min`` into its words."""
    return {word.lower() for word in re.findall(r"[A-Z]?[a-z]+|[A-Z]+(?![a-z])", name)}


def _unit_of_header(name: str) -> str | None:
    units = {next(filter(None, match.groups()))[0].upper() for match in _DEGREES.finditer(name)}
    return units.pop() if len(units) == 1 else None


def _names_temperature(name: str) -> bool:
    return bool(_DEGREES.search(name)) or any(word.startswith("temp") for word in _words(name))


def _time_column(first: list[str], header: list[str] | None, decimal_comma: bool) -> int:
    if header is None:
        dated = [column for column, cell in enumerate(first) if _form(cell, decimal_comma) in ("date", "clock")]
        return _only(dated or [0], header, "time")
    words = {column: _words(name) for column, name in enumerate(header) if not _names_temperature(name)}
    named = [column for column, its in words.items() if its & _TIME_WORDS]
    named = named or [column for column, its in words.items() if its & UNITS_PER_HOUR.keys()]
    if not named:
        names = ", ".join(shown(name) for name in header)
        raise InvalidInput(f"no column of the header ({names}) is the time; name it time, time_h, time_min or time_s")
    return _only(named, header, "time")


def _temperature_column(
    first: list[str], header: list[str] | None, rows: list[Row], time: int, decimal_comma: bool
) -> int:
    """Find the temperature by its name, else the only column with numbers, else the only other column."""
    others = [column for column in range(len(first)) if column != time]
    named = [column for column in others if header and _names_temperature(header[column])]
    read = [column for column in others if any(degrees_of(row.cell(column), decimal_comma) for row in rows)]
    try:
        return _only(named or read or others, header, "temperature")
    except InvalidInput as problem:
        if decimal_comma or header:
            raise
        raise InvalidInput(f"{problem}; if they are one number, write it with a point, not a comma") from None


# ---- times -----------------------------------------------------------------------------------------------------------


def _form(text: str, decimal_comma: bool) -> str | None:
    """Tell what a time looks like, right or wrong: date, clock or number; None if like none of them."""
    if re.match(r"\d{4}-\d\d-\d\d", text):
        return "date"
    if re.match(r"\d\d?:\d", text):
        return "clock"
    return None if number_of(text, decimal_comma) is None else "number"


def _date(match: re.Match[str]) -> datetime:
    """Date and time, with the zone if there is one. Raises ValueError."""
    zone = None
    if match["utc"]:
        zone = timezone.utc
    elif match["zone"]:
        minutes = 60 * int(match["zone"][1:]) + int(match["rest"] or 0)
        zone = timezone(timedelta(minutes=minutes if match["zone"][0] == "+" else -minutes))
    microsecond = int((match["fraction"] or "")[:6].ljust(6, "0"))
    clock = int(match["hour"]), int(match["minute"]), int(match["second"] or 0), microsecond
    day = datetime.fromisoformat(match["day"])
    return datetime(day.year, day.month, day.day, *clock, tzinfo=zone)


def _time(text: str, form: str | None, decimal_comma: bool) -> datetime | float | None:
    """Read a time of that form: a date, hours since midnight or a number; None if it cannot be read."""
    if form == "number":
        return number_of(text, decimal_comma)
    match = (_DATE if form == "date" else CLOCK).fullmatch(text)
    try:
        return None if match is None else _date(match) if form == "date" else clock_h(match)
    except ValueError:
        return None


def _units_per_hour(table: _Table) -> float:
    """How many of the header's unit of time make an hour."""
    words = _words(table.name(table.time))
    units = {UNITS_PER_HOUR[word] for word in words & UNITS_PER_HOUR.keys()}
    if len(units) == 1:
        return units.pop()
    if words - _HOURS_UNSAID:
        raise InvalidInput(
            f"the header {shown(table.name(table.time))} does not tell the unit of its numbers; "
            "name the column time_h, time_min or time_s"
        )
    return 1.0


def _hours_by_clock(clocks: list[float]) -> list[float]:
    """Count on past midnight: a step back from the evening by more than half a day is the next day."""
    hours, midnight = clocks[:1], 0.0
    for before, now in pairwise(clocks):
        if before >= 18 and before - now > 12:
            midnight += 24
        hours.append(midnight + now)
    return hours


def _times(table: _Table) -> _Times:
    problems = _Problems()
    model: tuple[Row, str, bool] | None = None  # the first time that can be read: all others have its form and zone
    times: list[datetime | float] = []
    for row in table.rows:
        text = row.cell(table.time)
        form = _form(text, table.decimal_comma)
        time = _time(text, form, table.decimal_comma)
        if form is None or time is None:
            problems.add(
                row.line,
                f"the time {shown(text)} cannot be read; write 2026-03-01 07:10, the clock alone (07:10, up to 23:59) "
                "or a plain number of hours",
            )
            continue
        zoned = isinstance(time, datetime) and time.tzinfo is not None
        model = model or (row, form, zoned)
        if (form, zoned) != model[1:]:
            other = f"{shown(model[0].cell(table.time))} in line {model[0].line}"
            problems.add(row.line, f"the time {shown(text)} has another form than {other}; write all times in one form")
        times.append(time)
    problems.refuse()
    dates = [time for time in times if isinstance(time, datetime)]
    numbers = [time for time in times if not isinstance(time, datetime)]
    as_in_file = model is not None and model[1] == "number"
    if dates:
        hours = [(date - dates[0]).total_seconds() / 3600 for date in dates]
    elif as_in_file:
        per_hour = _units_per_hour(table)
        for row, number in zip(table.rows, numbers, strict=True):
            if abs(number) >= _SINCE_1970:
                text = shown(row.cell(table.time))
                problems.add(row.line, f"the time {text} looks like seconds since 1970; {_HOW_TO_WRITE_DATES}")
        problems.refuse()
        hours = [number / per_hour for number in numbers]
    else:
        hours = _hours_by_clock(numbers)
    _refuse_disorder(table, hours, bool(dates) and dates[0].tzinfo is None)
    return _Times(hours, dates, as_in_file)


def _refuse_disorder(table: _Table, hours: list[float], local_dates: bool) -> None:
    problems = _Problems()
    latest = 0
    for i in range(1, len(hours)):
        if hours[i] > hours[latest]:
            latest = i
            continue
        row, before = table.rows[i], table.rows[latest]
        problem = "repeats" if hours[i] == hours[latest] else "goes back from"
        advice = "; if the clocks were set back in between, write the times with their zone" if local_dates else ""
        both = f"{shown(row.cell(table.time))} {problem} {shown(before.cell(table.time))} in line {before.line}"
        problems.add(row.line, f"the time {both}; put the readings in order, one for each time{advice}")
    problems.refuse()


# ---- temperatures ----------------------------------------------------------------------------------------------------


def _readings(table: _Table) -> list[tuple[float, str] | None]:
    """Read the temperatures of all rows, with the units in their cells; None where the probe was off."""
    problems = _Problems()
    readings: list[tuple[float, str] | None] = []
    for row in table.rows:
        text = row.cell(table.temperature)
        reading = degrees_of(text, table.decimal_comma)
        if reading is None and not _PROBE_OFF.fullmatch(text):
            problems.add(
                row.line,
                f"the temperature {shown(text)} is not a number of °C or °F; write for example 24.5, and nothing "
                f"or -- where the probe was off{about_comma(text)}",
            )
        readings.append(reading)
    problems.refuse()
    return readings


def _unit(table: _Table, readings: list[tuple[float, str] | None], argument: str | None) -> str:
    """Find the one unit that the argument, the header and the cells agree on."""
    told: dict[str, str] = {}
    if argument is not None:
        told[argument] = f'unit="{argument}"'
    name = table.name(table.temperature)
    in_header = _unit_of_header(name)
    if in_header:
        told.setdefault(in_header, f"the header {shown(name)}")
    for row, reading in zip(table.rows, readings, strict=True):
        if reading is not None and reading[1]:
            told.setdefault(reading[1], f"line {row.line} ({shown(row.cell(table.temperature))})")
    if not told:
        raise InvalidInput(
            'nothing tells whether the temperatures are °C or °F; say unit="C" or unit="F", or name the column '
            "temperature_c or temperature_f"
        )
    if len(told) > 1:
        raise InvalidInput(
            f"{told['C']} says °C, but {told['F']} says °F; a log has one unit: correct the one that is wrong"
        )
    return next(iter(told))


def _refuse_outside(table: _Table, readings: list[tuple[float, str] | None], unit: str) -> None:
    problems = _Problems()
    low, high = _LOWEST_AND_HIGHEST[unit]
    for row, reading in zip(table.rows, readings, strict=True):
        if reading is None or low <= reading[0] <= high:
            continue
        value = reading[0]
        hint = "take out the line if the probe was wrong"
        if high < value <= _LOWEST_AND_HIGHEST["F"][1]:
            hint = f"if the log is in °F ({value:g} °F is {celsius(value):.1f} °C), say so in its header or by unit"
        problems.add(row.line, f"the temperature {value:g} °{unit} is outside {low:g} to {high:g} °{unit}; {hint}")
    problems.refuse()


# ---- the log ---------------------------------------------------------------------------------------------------------


class _Readings(NamedTuple):
    """What a log holds, by whichever way it was read; one value for each row of the file."""

    hours: npt.NDArray[np.float64]
    degrees: npt.NDArray[np.float64]
    """In the file's unit; not a number where the probe was off."""
    lines: npt.NDArray[np.int64]
    unit: str
    as_in_file: bool
    start_of: Callable[[int], datetime | None]
    """Date and time of a row, if the file has dates."""


def _skipped(lines: npt.NDArray[np.int64]) -> list[Notice]:
    if not len(lines):
        return []
    first = int(lines[0])
    text = f"{count(len(lines), 'reading')} without a temperature skipped, the first in line {first}"
    return [Notice("log_readings_skipped", "caution", {"count": len(lines), "first_line": first}, text)]


def _gaps(lines: npt.NDArray[np.int64], hours: npt.NDArray[np.float64], longest_gap_h: float) -> list[Notice]:
    """Say in one notice where no reading was taken for too long."""
    waits = hours[1:] - hours[:-1]
    rows = (waits > longest_gap_h * (1 + 1e-9)).nonzero()[0]  # a difference of two rounded times
    if not len(rows):
        return []
    waited = ", ".join(f"{waits[i]:.3g} h between lines {lines[i]} and {lines[i + 1]}" for i in rows[:3])
    more = f" and {len(rows) - 3} more" if len(rows) > 3 else ""
    text = (
        f"no reading for longer than {longest_gap_h:g} h: {waited}{more}; "
        "the temperature is taken as a straight line across"
    )
    values = {"count": len(rows), "longest_h": float(waits.max()), "first_line": int(lines[rows[0]])}
    return [Notice("log_gap", "caution", values, text)]


_SPIKE_K, _SPIKE_H = 15.0, 5 / 60


def _spikes(
    lines: npt.NDArray[np.int64], hours: npt.NDArray[np.float64], celsius_: npt.NDArray[np.float64]
) -> list[Notice]:
    """Say where one reading leaps away from both its neighbours: no air or dough does that, a slipped probe does."""
    up, down = celsius_[1:-1] - celsius_[:-2], celsius_[1:-1] - celsius_[2:]
    leaps = (abs(up) > _SPIKE_K) & (abs(down) > _SPIKE_K) & (up * down > 0) & (hours[2:] - hours[:-2] <= _SPIKE_H)
    rows = leaps.nonzero()[0] + 1
    if not len(rows):
        return []
    i = rows[0]
    before, here, after = (f"{each:.1f}" for each in celsius_[i - 1 : i + 2])
    more = f"; {len(rows) - 1} more leap so" if len(rows) > 1 else ""
    text = (
        f"line {lines[i]} leaps to {here} °C between {before} and {after} °C within "
        f"{60 * (hours[i + 1] - hours[i - 1]):.2g} min, as no air or dough does{more}; it is kept: "
        "if the probe slipped, take the line out"
    )
    values = {"count": len(rows), "first_line": int(lines[i]), "temperature_c": float(celsius_[i])}
    return [Notice("log_spike", "caution", values, text)]


def _log(text: str, argument: str | None, longest_gap_h: float) -> TemperatureLog:
    import numpy as np

    readings = _by_columns(text, argument) or _by_rows(text, argument)
    kept = np.isfinite(readings.degrees).nonzero()[0]
    off = readings.lines[np.isnan(readings.degrees)]
    origin = 0.0 if readings.as_in_file else readings.hours[kept[0]]
    hours, lines, degrees = readings.hours[kept] - origin, readings.lines[kept], readings.degrees[kept]
    in_c = celsius(degrees) if readings.unit == "F" else degrees
    start = readings.start_of(int(kept[0]))
    return TemperatureLog(
        time_h=hours,
        temperature_c=in_c,
        start=start,
        notices=(*_skipped(off), *_gaps(lines, hours, longest_gap_h), *_spikes(lines, hours, in_c)),
        start_h=None if readings.as_in_file else _hour_of(start, origin),
    )


def _hour_of(start: datetime | None, by_clock_h: float) -> float:
    """Hour of the day: of a date, or of clocks alone, which count from the midnight before the first."""
    if start is None:
        return float(by_clock_h) % 24
    return start.hour + start.minute / 60 + (start.second + start.microsecond / 1e6) / 3600


def _by_rows(text: str, argument: str | None) -> _Readings:
    """Read cell by cell, as people write logs. Raises InvalidInput naming the line, the value and what to do."""
    import numpy as np

    table = _table(text)
    times, readings = _times(table), _readings(table)
    off = [row.line for row, reading in zip(table.rows, readings, strict=True) if reading is None]
    if len(readings) - len(off) < 2:
        skipped = f" ({len(off)} without a temperature, the first in line {off[0]})" if off else ""
        raise InvalidInput(f"the log has {count(len(readings) - len(off), 'reading')}{skipped}; it needs at least two")
    unit = _unit(table, readings, argument)
    _refuse_outside(table, readings, unit)
    return _Readings(
        np.array(times.hours),
        np.array([math.nan if reading is None else reading[0] for reading in readings]),
        np.array([row.line for row in table.rows]),
        unit,
        times.as_in_file,
        lambda row: times.dates[row] if times.dates else None,
    )


# ---- long logs -------------------------------------------------------------------------------------------------------

_LONG = 5_000
"""Lines from which a log is first tried by whole columns."""
_WIDEST = 32


def _by_columns(text: str, argument: str | None) -> _Readings | None:
    """Read a long log of plain form by whole columns; None for any other, and for whatever is to be refused.

    What it reads, it reads as `_by_rows` does, to the same digits; that one also finds the words for what is wrong.
    """
    import numpy as np

    if text.count("\n", 0, 60 * _LONG) < _LONG or '"' in text or not text.isascii():
        return None
    begin = 0
    while text.startswith(("#", "\n"), begin):
        begin = text.index("\n", begin) + 1
    if text.find("#", begin) >= 0:
        return None
    head_end = begin
    for _ in range(50):
        head_end = text.index("\n", head_end) + 1
    try:
        table = _table(text[begin:head_end])
    except InvalidInput:
        return None
    width = len(table.header or table.rows[0].cells)
    if not (width == 2 or (table.header and _names_temperature(table.name(table.temperature)))):
        return None  # which column is the temperature, only the whole file tells
    first = text.index("\n", begin) + 1 if table.header else begin
    body = np.frombuffer(text[first:].rstrip("\n").encode("ascii") + b"\n", np.uint8)
    ends = (body == 10).nonzero()[0]
    starts = np.concatenate([[0], ends[:-1] + 1])
    if (np.add.reduceat(body == ord(table.delimiter), starts, dtype=np.int64) != width - 1).any():
        return None
    columns = _columns_of(text[first:], table)
    if columns is None or len(columns[0]) != len(ends):
        return None
    times, temperatures = columns
    degrees = _column_of_degrees(temperatures, table.decimal_comma)
    found = _column_of_hours(times, table)
    if degrees is None or found is None:
        return None
    hours, as_in_file, start_of = found
    read: list[tuple[float, str] | None] = []
    try:
        unit = _unit(table._replace(rows=[]), read, argument)
    except InvalidInput:
        return None
    low, high = _LOWEST_AND_HIGHEST[unit]
    known = degrees[np.isfinite(degrees)]
    if len(known) < 2 or known.min() < low or known.max() > high or not (np.diff(hours) > 0).all():
        return None
    first_line = text.count("\n", 0, first) + 1
    return _Readings(hours, degrees, first_line + np.arange(len(hours)), unit, as_in_file, start_of)


def _columns_of(body: str, table: _Table) -> tuple[npt.NDArray[np.bytes_], npt.NDArray[np.bytes_]] | None:
    """The cells of the two columns as bytes; None where one is too wide for a plain log."""
    import numpy as np

    kind = np.dtype([("time", f"S{_WIDEST}"), ("temperature", f"S{_WIDEST}")])
    try:
        which = (table.time, table.temperature)
        cells = np.loadtxt(StringIO(body), dtype=kind, delimiter=table.delimiter, usecols=which, comments=None)
    except ValueError:
        return None
    both = np.char.strip(cells["time"]), np.char.strip(cells["temperature"])
    if any((np.char.str_len(cells[name]) >= _WIDEST).any() for name in ("time", "temperature")):
        return None
    return both


def _column_of_numbers(cells: npt.NDArray[np.bytes_], decimal_comma: bool) -> npt.NDArray[np.float64] | None:
    import numpy as np

    characters = cells.view(np.uint8)
    if not np.isin(np.unique(characters), np.frombuffer(b"\0+-.,0123456789eE", np.uint8)).all():
        return None
    if (characters == ord(",")).any():
        if not decimal_comma:
            return None
        cells = np.char.replace(cells, b",", b".")
    try:
        numbers = cells.astype(np.float64)
    except ValueError:
        return None
    return numbers if np.isfinite(numbers).all() else None


def _column_of_degrees(cells: npt.NDArray[np.bytes_], decimal_comma: bool) -> npt.NDArray[np.float64] | None:
    import numpy as np

    numbers = _column_of_numbers(cells, decimal_comma)
    if numbers is not None:
        return numbers
    # Where the probe was off there are a few words; what they are is asked of each word once.
    words, which = np.unique(cells, return_inverse=True)
    if len(words) > len(cells) / 10:
        return None
    read = []
    for word in words:
        reading = degrees_of(word.decode(), decimal_comma)
        if (reading is None and not _PROBE_OFF.fullmatch(word.decode())) or (reading and reading[1]):
            return None
        read.append(math.nan if reading is None else reading[0])
    return np.array(read)[which]


def _column_of_hours(
    cells: npt.NDArray[np.bytes_], table: _Table
) -> tuple[npt.NDArray[np.float64], bool, Callable[[int], datetime | None]] | None:
    import numpy as np

    form = _form(cells[0].decode(), table.decimal_comma)
    if form == "number":
        numbers = _column_of_numbers(cells, table.decimal_comma)
        if numbers is None or abs(numbers).max() >= _SINCE_1970:
            return None
        try:
            return numbers / _units_per_hour(table), True, lambda _: None
        except InvalidInput:
            return None
    width = len(cells[0])
    shape = {"clock": rb"\d\d:\d\d(:\d\d(\.\d+)?)?", "date": rb"\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d(\.\d{1,6})?)?"}
    if form not in shape or not re.fullmatch(shape[form], cells[0]) or (np.char.str_len(cells) != width).any():
        return None
    # All as the first: its digits are digits everywhere, and all else is the same.
    characters = np.ascontiguousarray(cells.astype(f"S{width}")).view(np.uint8).reshape(len(cells), width)
    is_digit = np.frombuffer(re.sub(rb"\d", b"0", cells[0]), np.uint8) == ord("0")
    digits = characters[:, is_digit]
    if (digits < ord("0")).any() or (digits > ord("9")).any():
        return None
    if (characters[:, ~is_digit] != characters[0, ~is_digit]).any():
        return None
    values = digits.astype(np.int64) - ord("0")
    clock = values if form == "clock" else values[:, 8:]
    hour, minute = 10 * clock[:, 0] + clock[:, 1], 10 * clock[:, 2] + clock[:, 3]
    whole = 10 * clock[:, 4] + clock[:, 5] if clock.shape[1] > 4 else np.zeros(len(cells), np.int64)
    if hour.max() > 23 or minute.max() > 59 or whole.max() > 59:
        return None
    if form == "date":
        year, month, day = values[:, :4] @ [1000, 100, 10, 1], values[:, 4:6] @ [10, 1], values[:, 6:8] @ [10, 1]
        months = (12 * (year - 1970) + month - 1).astype("datetime64[M]")
        days = months.astype("datetime64[D]") + (day - 1)
        if month.min() < 1 or month.max() > 12 or day.min() < 1 or (days.astype("datetime64[M]") != months).any():
            return None
        fraction = clock[:, 6:12]
        microseconds = fraction @ 10 ** np.arange(5, 5 - fraction.shape[1], -1)
        moments = days.astype("datetime64[us]") + (1_000_000 * (3600 * hour + 60 * minute + whole) + microseconds)
        hours = (moments - moments[0]).astype(np.int64) / 1e6 / 3600
        return hours, False, lambda row: moments[row].astype(datetime)
    second = whole.astype(np.float64)
    if width > len("00:00:00"):
        second += np.ascontiguousarray(characters[:, 8:]).view(f"S{width - 8}").ravel().astype(np.float64)
    clock_h = hour + minute / 60 + second / 3600
    next_day = (clock_h[:-1] >= 18) & (clock_h[:-1] - clock_h[1:] > 12)
    return clock_h + 24.0 * np.concatenate([[0], np.cumsum(next_day)]), False, lambda _: None


# ---- the reader ------------------------------------------------------------------------------------------------------


def read_temperature_log(path: str | Path, *, unit: str | None = None, longest_gap_h: float = 1.0) -> TemperatureLog:
    """Read a temperature log from a CSV file with a column of times and one of temperatures.

    Times are ISO dates, clocks such as 07:10, or plain numbers: hours unless the header names min or s. Temperatures
    are °C or °F, as the header, the cells or `unit` ("C" or "F") say. Columns are divided by commas, semicolons or
    tabs; lines that begin with # are remarks. Readings further apart than `longest_gap_h`, h, bring a notice.

    Raises InvalidInput naming file, line, value and what to do.
    """
    if unit not in (None, "C", "F"):
        raise InvalidInput(f'unit must be "C" or "F", or left out if the file tells it; got {unit!r}')
    if not longest_gap_h > 0:
        raise InvalidInput(f"longest_gap_h must be a positive number of hours, got {longest_gap_h!r}")
    text = table_text(path, "the log")
    try:
        return _log(text, unit, longest_gap_h)
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {problem}") from None
