"""The edge to the terminal: what goes out can be shown there, fits its width, and an output that fails is told."""

from __future__ import annotations

import codecs
import contextlib
import os
import re
import sys
from collections.abc import Iterator
from typing import Any

from rich.cells import cell_len
from rich.console import Console, ConsoleOptions, RenderResult
from rich.markup import escape, render
from rich.table import Table

OUTPUT_FAILED = 3
"""Exit status of a command whose output could not be written."""

_CONTROLS = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]")

_READABLE = {
    "°": "deg ",
    "−": "-",
    "–": "-",
    "—": "-",
    "×": "x",
    "÷": "/",
    "→": "->",
    "≤": "<=",
    "≥": ">=",
    "±": "+-",
    "µ": "u",
    "Σ": "sum ",
    "…": "...",
    "“": '"',
    "”": '"',
    "’": "'",
    "²": "2",
    "³": "3",
    "₂": "2",
    "─": "-",
    "━": "-",
    "│": "|",
    "┃": "|",
    "┼": "+",
    "╇": "+",
    "╋": "+",
}


def plain(text: str) -> str:
    """Show characters that would steer a terminal, or turn the direction of a text, as their codes."""
    return _CONTROLS.sub(lambda match: f"<{ord(match[0]):04X}>", text)


_JOINED = "\u2800"  # takes a cell, and is no white space at which a line would be broken
_NUMBER_AND_UNIT = re.compile(r"(?<=\d) (?=(?:°[CF]|%|[a-zA-Z]{1,3}(?:/[a-zA-Z]+)?)(?![a-zA-Z]))")


def _fit(text: str) -> str:
    """The text as it may go to a screen, a number and its unit as one word."""
    return _NUMBER_AND_UNIT.sub(_JOINED, plain(text))


def _readable(error: UnicodeError) -> tuple[str, int]:
    assert isinstance(error, UnicodeEncodeError)
    lacking = error.object[error.start : error.end]
    return "".join(_READABLE.get(character, "?") for character in lacking), error.end


codecs.register_error("libferment_readable", _readable)


def is_utf(encoding: str | None) -> bool:
    """Whether a stream of that encoding can show every character."""
    return (encoding or "").lower().replace("-", "").startswith("utf")


@contextlib.contextmanager
def output() -> Iterator[None]:
    """Let all that is printed be readable in the stream's encoding; tell in one line if it cannot be written."""
    for stream in (sys.stdout, sys.stderr):
        with contextlib.suppress(AttributeError, ValueError):
            stream.reconfigure(errors="libferment_readable")  # type: ignore[union-attr]
    try:
        try:
            yield
        finally:
            sys.stdout.flush()
    except BrokenPipeError:  # the reader has seen enough
        _leave_unwritten()
        sys.exit(OUTPUT_FAILED)
    except OSError as problem:
        _leave_unwritten()
        with contextlib.suppress(OSError):
            print(f"error: the output cannot be written: {problem.strerror}", file=sys.stderr, flush=True)
        sys.exit(OUTPUT_FAILED)


def _leave_unwritten() -> None:
    """What still waits to be written goes nowhere: Python would try again at its end."""
    with contextlib.suppress(OSError, ValueError, AttributeError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)


class Screen(Console):
    """A console of words as they are, without control characters, and never narrower than a word."""

    def __init__(self) -> None:
        super().__init__(soft_wrap=False, highlight=False, emoji=False)
        narrowest, usual = 20, 80
        if self.width < 1:
            self.width = usual  # COLUMNS=0 tells nothing
        self.width = max(self.width, narrowest)

    def print(self, *objects: Any, **options: Any) -> None:
        """Print words, or a Sheet."""
        with self.capture() as printed:
            super().print(*(_fit(each) if isinstance(each, str) else each for each in objects), **options)
        self.file.write(printed.get().replace(_JOINED, " "))


def _words(cell: str) -> str:
    return render(cell, emoji=False).plain


class Sheet:
    """A table whose first column stands left and the others right; line by line where it would not fit.

    Its cells are markup and are never cut nor broken; headers and the words of the first column may be.
    """

    def __init__(self, title: str, *columns: str) -> None:
        self._title = _fit(escape(title))
        self._columns = columns
        self._rows: list[tuple[str, ...] | None] = []

    def add_row(self, *cells: str) -> None:
        """Add a row, left to right; missing cells are empty."""
        self._rows.append(tuple(_fit(cell) for cell in cells) + ("",) * (len(self._columns) - len(cells)))

    def add_section(self) -> None:
        """Draw a line before the next row."""
        self._rows.append(None)

    def _widths(self, whole: bool) -> list[int]:
        """Widths that show every cell; the first column and all headers in whole lines, or word by word."""
        widths = []
        for i, column in enumerate(self._columns):
            cells = [_words(row[i]) for row in self._rows if row is not None]
            if i == 0 and not whole:
                cells = [word for cell in cells for word in cell.split()]
            widths.append(max(map(cell_len, [*cells, *([column] if whole else column.split())]), default=0))
        return widths

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        """Render as rich asks for it: a table, or its rows as lines where the screen is too narrow."""
        widths, least = self._widths(whole=True), self._widths(whole=False)
        room = options.max_width - 3 * (len(least) - 1)  # between the columns
        if sum(least) > room:
            yield from self._lines()
            return
        left = room - sum(least)
        for i in (
            *range(1, len(least)),
            0,
        ):  # headers in one line where there is room, the first column's words last
            more = min(widths[i] - least[i], left)
            widths[i] = least[i] + more
            left -= more
        table = Table(title=self._title or None, title_justify="left", show_edge=False, pad_edge=False)
        for i, (column, width) in enumerate(zip(self._columns, widths, strict=True)):
            table.add_column(column, justify="left" if i == 0 else "right", width=width)
        for row in self._rows:
            if row is None:
                table.add_section()
            else:
                table.add_row(*row)
        yield table

    def _lines(self) -> Iterator[str]:
        if self._title:
            yield f"[italic]{self._title}[/italic]"
        for row in self._rows:
            if row is None:
                continue
            # The first column names the row; where it has no name, the first that has words does.
            named = next((i for i, cell in enumerate(row) if _words(cell)), 0)
            yield f"[bold]{_words_kept(row[named])}[/bold]"
            for column, cell in zip(self._columns[named + 1 :], row[named + 1 :], strict=True):
                if _words(cell):
                    yield f"  {column}: {cell}" if column else f"  {cell}"


def _words_kept(cell: str) -> str:
    """The words of a cell as markup of their own."""
    return escape(_words(cell))
