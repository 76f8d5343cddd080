"""Tables as people write them: the rows of a CSV text; the numbers, temperatures and clock times in its cells."""

from __future__ import annotations

import csv
import math
import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from libferment._errors import InvalidInput
from libferment._files import read_text

UNITS_PER_HOUR = {
    **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), 1.0),
    **dict.fromkeys(("min", "mins", "minute", "minutes"), 60.0),
    **dict.fromkeys(("s", "sec", "secs", "second", "seconds"), 3600.0),
}
NUMBER = r"[-+−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d+)?"
CLOCK = re.compile(r"(?P<hour>\d\d?):(?P<minute>\d\d)(?::(?P<second>\d\d)(?:[.,](?P<fraction>\d+))?)?")
_TEMPERATURE = re.compile(rf"({NUMBER})\s*(?:°|º|deg)?\s*([CFcf]?)")


class Row(NamedTuple):
    """A line's cells, without the blanks around them."""

    line: int
    cells: list[str]

    def cell(self, column: int) -> str:
        """Take the cell of a column; nothing where the line is too short."""
        return self.cells[column] if column < len(self.cells) else ""


def shown(text: str) -> str:
    """Quote what was written, cut if it is long."""
    return f'"{text}"' if len(text) <= 40 else f'"{text[:37]}..."'


def count(number: int, what: str) -> str:
    """Write how many: 1 row, 2 rows."""
    return f"{number} {what}" if number == 1 else f"{number} {what}s"


# ---- rows ------------------------------------------------------------------------------------------------------------


def table_text(path: str | Path, what: str) -> str:
    """Read a CSV file; its lines end with a line feed. Raises InvalidInput."""
    text = read_text(path, f"{what} as CSV in UTF-8", "the CSV file")
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _rows(lines: Iterable[str], delimiter: str) -> Iterator[Row]:
    """Read the lines that are not blank; a row has the number of its first line."""
    reader = csv.reader(lines, delimiter=delimiter, skipinitialspace=True)  # a quotation mark may follow a blank
    line = 1
    try:
        for cells in reader:
            stripped = [cell.strip() for cell in cells]
            if any(stripped):
                yield Row(line, stripped)
            line = reader.line_num + 1
    except csv.Error as problem:
        raise InvalidInput(f"line {line}: this is not CSV ({problem}); is a quotation mark left open?") from None


def _delimiter(lines: list[str], needs: str, a_line: str) -> str:
    """Find what divides the columns of the first two lines; a comma may also be a decimal comma, so it comes last."""
    filled = [row for row, line in enumerate(lines) if line.strip()][:2]
    if not filled:
        raise InvalidInput(f"the file is empty; it needs {needs}")

    def divided(delimiter: str) -> int:
        return sum(len(row.cells) > 1 for row in _rows(lines[: filled[-1] + 1], delimiter))

    best = max("\t;,", key=divided)
    if not divided(best):
        raise InvalidInput(
            f"line {filled[0] + 1}: {shown(lines[filled[0]].strip())} is only one column; write {a_line} in each line, "
            "with a comma, a semicolon or a tab between them, and # before a remark"
        )
    return best


def rows_of_text(text: str, needs: str, a_line: str) -> tuple[list[Row], str]:
    """Divide a CSV text into rows, without blank lines and remarks; at least one, and the delimiter.

    `needs` says what a file holds, `a_line` what a line of it does. Raises InvalidInput.
    """
    lines = ["\n" if line.lstrip().startswith("#") else f"{line}\n" for line in text.split("\n")]
    delimiter = _delimiter(lines, needs, a_line)
    return list(_rows(lines, delimiter)), delimiter


# ---- cells -----------------------------------------------------------------------------------------------------------


def number_of(text: str, decimal_comma: bool) -> float | None:
    """Read a finite number; None if it is none."""
    if not re.fullmatch(NUMBER, text) or ("," in text and not decimal_comma):
        return None
    value = float(text.replace("−", "-").replace(",", "."))
    return value if math.isfinite(value) else None


def about_comma(text: str) -> str:
    """Say what a decimal comma needs, if a cell that cannot be read has a comma."""
    return "; a decimal comma needs a semicolon or a tab between the columns" if "," in text else ""


def degrees_of(text: str, decimal_comma: bool) -> tuple[float, str] | None:
    """Read a temperature and its unit, "C", "F" or ""; None if it cannot be read."""
    match = _TEMPERATURE.fullmatch(text)
    value = None if match is None else number_of(match[1], decimal_comma)
    return None if match is None or value is None else (value, match[2].upper())


def counted_h(match: re.Match[str]) -> float:
    """Hours of a match of CLOCK, as they are counted. Raises ValueError past 59 minutes or seconds."""
    hour, minute, second = int(match["hour"]), int(match["minute"]), int(match["second"] or 0)
    if minute > 59 or second > 59:
        raise ValueError
    return hour + minute / 60 + (second + float(f"0.{match['fraction'] or 0}")) / 3600


def clock_h(match: re.Match[str]) -> float:
    """Hours since midnight of a match of CLOCK. Raises ValueError past 23:59:59."""
    if int(match["hour"]) > 23:
        raise ValueError
    return counted_h(match)
