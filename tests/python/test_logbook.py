"""Logbooks: which tables and folders are read, and with which words rows and files are left out. All data invented."""

import datetime
import math
import pickle
from collections.abc import Sequence
from io import StringIO
from pathlib import Path

import numpy as np
import pandas as pd
import pytest
from box import attempt
from hypothesis import given
from hypothesis import strategies as st

import libferment as lf
from libferment import logbook as books

DEMO = Path(__file__).resolve().parents[2] / "data" / "demo"
HEADER = "dough_c,yeast,rise,time_min"
ROW = "24,0.7,60,80"


@pytest.fixture(autouse=True, scope="module")
def contents():
    """The contents of which days were built."""
    built, build = [], books._day_from

    def noted(content):
        built.append(content)
        return build(content)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(books, "_day_from", noted)
        yield built


@pytest.fixture
def read(tmp_path):
    """Write a text (or bytes) as rises.csv and read it."""

    def write_and_read(text):
        file = tmp_path / "rises.csv"
        file.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
        return lf.read_logbook(file)

    return write_and_read


@pytest.fixture
def read_contents(read, contents):
    """What the days of a table were built of; all of its rows must be good."""

    def read_and_take(text):
        contents.clear()
        book = read(text)
        assert book.problems == []
        assert [day.title for day in book] == book.names == [content["title"] for content in contents]
        return list(contents)

    return read_and_take


@pytest.fixture
def refused(read):
    """The words a whole table is refused with; they begin with the file."""

    def words(text):
        with pytest.raises(lf.InvalidInput) as problem:
            read(text)
        file, rest = str(problem.value).split("rises.csv", 1)
        assert file
        return rest.removeprefix(":").strip()

    return words


@pytest.fixture
def left_out(read):
    """The words a row is left out with, in line 3; a good one is before it."""

    def words(row, header=HEADER, good=ROW):
        book = read(f"{header}\n{good}\n{row}\n")
        assert (len(book), len(book.problems)) == (1, 1)
        assert book.problems[0].startswith("rises.csv, line 3, ")
        return book.problems[0].removeprefix("rises.csv, line 3, ")

    return words


def a_content(title="line 2", *, dough=(), stage=(), seen=(), **others):
    """The content of a day as HEADER and ROW make it, but for what is given."""
    return {
        "title": title,
        **others,
        "dough": {
            "flour_g": 500,
            "measured_c": 24,
            "yeast": "instant",
            "yeast_percent": 0.7,
            "salt_percent": 2,
            "water_percent": 65,
            "sugar_percent": 0,
            **dict(dough),
        },
        "stage": [dict(stage) or {"name": "bulk", "dough_c": 24, "until_h": pytest.approx(80 / 60, rel=1e-15)}],
        "seen": [dict(seen) or {"stage": "bulk", "at": "80min", "rise_percent": 60}],
    }


# ---- a row and its day -----------------------------------------------------------------------------------------------


def test_a_row_is_a_day_and_what_was_seen_of_it(read_contents):
    assert read_contents(f"{HEADER}\n{ROW}\n") == [a_content()]


def test_all_columns(read_contents):
    text = (
        "Kind;Date;Packet;Yeast Kind;Sugar;Water (%);salt_percent;YEAST;flour_kg;Stage;Rise %;Dough temp (°F);Room_c;"
        "Time;Mixed\n"
        "not yet;2026-10-04;second, blue;Active dry;5;70;1,8;0,9 %;1,2;final proof;40;77;19,5;0:20;21:40\n"
    )
    expected = a_content(
        date="2026-10-04",
        mixed="21:40",
        dough={
            "flour_g": 1200,
            "measured_c": pytest.approx(25, rel=1e-15),
            "yeast": "Active dry",
            "yeast_percent": 0.9,
            "salt_percent": 1.8,
            "water_percent": 70,
            "sugar_percent": 5,
            "packet": "second, blue",
        },
        stage={"name": "final proof", "piece": "tub", "room_c": 19.5, "until_h": 160 / 60},
        seen={"stage": "final proof", "at": "0:20", "not_yet_percent": 40},
    )
    assert read_contents(text) == [expected]


def test_the_days_of_a_table(read, contents):
    contents.clear()
    book = read(f"{HEADER},room_c,yeast_kind\n{ROW}\n25,1,80,120,19,compressed\n")
    assert book.days == [lf.Day.from_dict(content) for content in contents]
    assert [day.stage[0].until_h for day in book] == [pytest.approx(80 / 60), 2]
    assert [day.stage[0].dough_c for day in book] == [24, None]
    assert [day.stage[0].room_c for day in book] == [None, 19]
    assert book[1].dough.yeast == "compressed"


@pytest.mark.parametrize(
    ("kind", "member"),
    [
        ("", "rise_percent"),
        ("at", "rise_percent"),
        ("Reached", "rise_percent"),
        ("not_yet", "not_yet_percent"),
        ("Not yet", "not_yet_percent"),
        ("past", "already_past_percent"),
        ("already past", "already_past_percent"),
        ("already-past", "already_past_percent"),
    ],
)
def test_kinds_of_what_was_seen(read_contents, kind, member):
    (content,) = read_contents(f"{HEADER},kind\n{ROW},{kind}\n")
    assert content["seen"] == [{"stage": "bulk", "at": "80min", member: 60}]


@pytest.mark.parametrize(
    ("header", "cell", "at", "hours"),
    [
        ("time_min", "80", "80min", 80 / 60),
        ("time (min)", "80.5", "80.5min", 80.5 / 60),
        ("time_h", "1.5", "90min", 1.5),
        ("time (h)", "1:20", "80min", 80 / 60),
        ("time_s", "90", "1.5min", 0.025),
        ("time", "1:20", "80min", 80 / 60),
        ("time", "26:05", "1565min", 1565 / 60),
        ("time", "1:20:30", "80.5min", 80.5 / 60),
        ("time", "80 min", "80min", 80 / 60),
        ("time", "80min", "80min", 80 / 60),
        ("time", "1 h 20 min", "80min", 80 / 60),
        ("time", "1h20min", "80min", 80 / 60),
        ("time", "1.5 Hours", "90min", 1.5),
        ("time", "1 hour 20 minutes 30 s", "80.5min", 80.5 / 60),
        ("time_h", "80 min", "80min", 80 / 60),
        ("time_min", "1.5 h", "90min", 1.5),
    ],
)
def test_times_after_the_end_of_mixing(read_contents, header, cell, at, hours):
    quoted = f'"{header}"'
    (content,) = read_contents(f"dough_c,yeast,rise,{quoted}\n24,0.7,60,{cell}\n")
    assert content["seen"][0]["at"] == at
    assert content["stage"][0]["until_h"] == pytest.approx(hours, rel=1e-15)


@pytest.mark.parametrize(
    ("mixed", "time", "minutes"),
    [
        ("21:40", "23:00", 80),
        ("21:40", "0:20", 160),
        ("21:40:00", "23:00:00", 80),
        ("21:40", "+1 7:30", 590),
    ],
)
def test_times_of_day(read_contents, mixed, time, minutes):
    (content,) = read_contents(f"dough_c,yeast,rise,mixed,time\n24,0.7,60,{mixed},{time}\n")
    assert (content["mixed"], content["seen"][0]["at"]) == tuple(
        text.removesuffix(":00") if text.count(":") == 2 else text for text in (mixed, time)
    )
    assert content["stage"][0]["until_h"] == minutes / 60


def test_with_a_clock_a_time_with_a_unit_still_counts_from_the_mixing(read_contents):
    for time in ("80 min", "+80 min", "1 h 20 min"):
        (content,) = read_contents(f"dough_c,yeast,rise,mixed,time\n24,0.7,60,21:40,{time}\n")
        assert content == a_content(mixed="21:40")


@pytest.mark.parametrize(
    ("header", "cell", "degrees"),
    [
        ("dough_c", "24.5", 24.5),
        ("dough (°C)", "24.5", 24.5),
        ("Dough Temperature [C]", "24.5", 24.5),
        ("DOUGH CELSIUS", "24.5", 24.5),
        ("dough", "24.5C", 24.5),
        ("dough", "24.5 °c", 24.5),
        ("dough_f", "77", 25),
        ("dough °F", "77", 25),
        ("dough fahrenheit", "77", 25),
        ("dough", "77F", 25),
        ("dough", "77 °F", 25),
        ("dough_c", "77F", 25),
        ("dough_f", "25C", 25),
    ],
)
def test_units_of_temperatures(read_contents, header, cell, degrees):
    (content,) = read_contents(f"{header},yeast,rise,time_min\n{cell},0.7,60,80\n")
    assert content["dough"]["measured_c"] == content["stage"][0]["dough_c"] == pytest.approx(degrees, rel=1e-15)


@pytest.mark.parametrize(
    "text",
    [
        "dough_c,yeast,rise,time_min\n24,0.7,60,80\n",
        "time_min,rise,yeast,dough_c\n80,60,0.7,24\n",
        "dough_c;yeast;rise;time_min\n24;0,7;60;80\n",
        "dough_c\tyeast\trise\ttime_min\n24.0\t0.7\t60\t80\n",
        "\ufeffdough_c,yeast,rise,time_min\r\n24,0.7,60,80\r\n",
        "dough_c,yeast,rise,time_min\r24,0.7,60,80",
        '"dough_c" , "yeast","rise","time_min"\n "24","0.7","60%","80 min"\n',
        "dough_c,yeast,rise,time_min,,\n24,0.7,60,80,,,\n,,,\n",
        "dough_c,yeast,rise,time_min,salt,date,mixed,stage\n24,0.7,60,80\n",
        "DOUGH C,Yeast Percent,Rise (%),Time [min]\n+24,.7,6e1,80\n",
        "dough,yeast_pct,rise_percent,time\n24C,0.7%,60 %,80 min\n",
    ],
)
def test_forms_of_a_table(read_contents, text):
    assert read_contents(text) == [a_content()]


def test_blank_lines_and_remarks_are_skipped_and_counted(read):
    book = read(f"# what rose\n\n{HEADER}\n  # {ROW}\n{ROW}\n\n24,0.7,high,80\n")
    assert (book.names, book.problems) == (
        ["line 5"],
        ['rises.csv, line 7, rise: "high" is not a number; write 60 or 60%'],
    )


# ---- rows that are left out ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("24,0.7,abc,80", 'rise: "abc" is not a number; write 60 or 60%'),
        ("24,0.7,nan,80", 'rise: "nan" is not a number; write 60 or 60%'),
        ("24,0.7,,80", "rise: nothing is written; write 60 or 60%"),
        ("24,0.7", "rise: nothing is written; write 60 or 60%; time: nothing is written; write 80 min or 1 h 20 min"),
        ("24,3 g,60,80", 'yeast: "3 g" has the unit "g"; write 0.7 or 0.7%'),
        ("24,instant,60,80", 'yeast: "instant" is not a number; write 0.7 or 0.7%'),
        ("warm,0.7,60,80", 'dough: "warm" is not a number of °C or °F; write 24.5C or 76F'),
        (
            '24,"0,7",60,80',
            'yeast: "0,7" is not a number; write 0.7 or 0.7%; a decimal comma needs a semicolon or a tab between the '
            "columns",
        ),
        (
            "24,5,0.7,60,80",
            '"80" stands in a column without a name; name it, or take it out; a decimal comma needs a semicolon or a '
            "tab between the columns",
        ),
        ('24,0.7,60,"80\n24,0.7,60,90', "time: the cell has several lines; is a quotation mark left open?"),
        ("24,0.7,60,soon", 'time: "soon" is no time after the end of mixing; write 80 min or 1 h 20 min'),
        (
            "24,0.7,60,1:20",
            'time: "1:20" may be hours and minutes, or minutes and seconds; write 80 min or 1 h 20 min',
        ),
        ("24,0.7,60,20 min 1 h", 'time: "20 min 1 h" is no time after'),
        ("24,0.7,60,1 h -20 min", 'time: "1 h -20 min" is no time after'),
        ("24,0.7,60,1 h 20", 'time: "1 h 20" is no time after'),
        # What the library itself refuses, by the column and with what was written.
        ("75,0.7,60,80", "dough: dough temperature 75 °C is outside −2 to 45 °C; if you meant 75 °F, write 75F; "),
        ("160F,0.7,60,80", 'dough: "160F" is refused: dough temperature 71.1111 °C is outside −2 to 45 °C; measure'),
        ("24,70,60,80", "yeast: yeast 70 % is outside 0.01 to 16 %; 3 g on 500 g of flour are 0.6"),
        ("24,0.7,60,70000", 'time: "70000" is refused: length of a stage 1166.67 h is outside 0 to 1000 h'),
        ("24,0.7,60,-5", 'time: "-5" is refused: length of a stage −0.0833333 h is outside 0 to 1000 h'),
    ],
)
def test_a_bad_row_is_left_out_with_words(left_out, row, words):
    assert left_out(row).startswith(words)


@pytest.mark.parametrize(
    ("column", "cell", "words"),
    [
        ("date", "4.10.2026", 'date: "4.10.2026" is no date; write it as 2026-11-29'),
        ("date", "2026-02-30", 'date: "2026-02-30" is no date; write it as 2026-11-29'),
        ("room", "21", 'room: "21" may be °C or °F; write 21C or 21F, or name the column room_c or room_f'),
        ("room_c", "300", "room: room temperature 300 °C is outside"),
        ("yeast_kind", "fresh", 'yeast_kind: yeast kind "fresh" is unknown; known: instant, active_dry'),
        ("salt", "200", "salt: salt 200 % is outside"),
        ("water", "0.65", "water: water 0.65 % is outside"),
        ("sugar", "-2", 'sugar: "-2" is refused: sugar −2 % is outside 0 to 40 %'),
        ("flour", "500", 'flour: "500" has no unit; write 500 g or 0.5 kg, or name the column flour_g'),
        ("flour", "2 cups", 'flour: "2 cups" has the unit "cups"; write 500 g or 0.5 kg'),
        ("flour_g", "much", 'flour: "much" is not a number; write 500 g or 0.5 kg'),
        ("stage", "x" * 101, 'stage: "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx..." is refused: a name of 101 letters'),
        ("kind", "maybe", 'kind: "maybe" is unknown; write at, not yet or past'),
        ("mixed", "25:00", 'mixed: "25:00" is no time of day; write 8:15 or 18:30'),
        ("mixed", "21:40:30", 'mixed: "21:40:30" is no time of day; write 8:15 or 18:30'),
    ],
)
def test_a_bad_cell_of_a_column_that_may_be_missing(left_out, column, cell, words):
    assert left_out(f"{ROW},{cell}", f"{HEADER},{column}", f"{ROW},").startswith(words)


@pytest.mark.parametrize(
    ("header", "row", "words"),
    [
        ("dough,yeast,rise,time", "76,0.7,60,80 min", 'dough: "76" may be °C or °F; write 76C or 76F, or name the'),
        ("dough,yeast,rise,time", "24C,0.7,60,80", 'time: "80" has no unit; write 80 min or 1 h 20 min, or name the'),
        ("dough,yeast,rise,time", "24C,0.7,60,1:75", 'time: "1:75" has more than 59 minutes or seconds; write 1:20 or'),
        (
            "dough,yeast,rise,time,mixed",
            "24C,0.7,60,22:10,",
            'time: "22:10" is a time of day, and mixed is empty; fill it in, or write 80 min here',
        ),
        (
            "dough,yeast,rise,time,mixed",
            "24C,0.7,60,22.10,21:40",
            'time: "22.10" has no unit; write 80 min or 1 h 20 min, or a time of day such as 23:10, or name the column',
        ),
        ("dough,yeast,rise,time,mixed", "24C,0.7,60,24:10,21:40", 'time: "24:10" is no time of day; write 8:15 or'),
        (
            "dough,yeast,rise,time_h,mixed",
            "24C,0.7,60,1:20,21:40",
            'time: "1:20" is a time of day, but the header says h; name the column time',
        ),
    ],
)
def test_units_that_are_missing_are_asked_for(left_out, header, row, words):
    good = "24C,0.7,60,80 min" + ",21:40" * header.endswith("mixed")
    assert left_out(row, header, good).startswith(words)


def test_good_rows_are_kept_and_bad_ones_are_counted(read):
    book = read(f"{HEADER}\n{ROW}\n24,0.7,abc,80\n25,1,60,70\n,0.7,60,80\n")
    assert isinstance(book, Sequence)
    assert (len(book), book.names, len(book.problems)) == (2, ["line 2", "line 4"], 2)
    assert list(book) == book.days == [book[0], book[-1]] == book[:]
    assert repr(book) == (
        "<Logbook rises.csv: 2 days, 2 left out>\n"
        '  rises.csv, line 3, rise: "abc" is not a number; write 60 or 60%\n'
        "  rises.csv, line 5, dough: nothing is written; write 24.5C or 76F"
    )
    assert pickle.loads(pickle.dumps(book)) == book


def test_of_many_problems_some_are_shown(read):
    book = read(f"{HEADER}\n{ROW}\n" + "24,0.7,abc,80\n" * 9)
    assert repr(book).startswith("<Logbook rises.csv: 1 day, 9 left out>\n")
    assert repr(book).count("\n") == 6
    assert repr(book).endswith("\n  and 4 more")
    assert repr(read(f"{HEADER}\n{ROW}\n")) == "<Logbook rises.csv: 1 day>"


# ---- tables that are refused -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "the file is empty; it needs a header such as date,dough_c,yeast_percent,rise,time_min and a row for"),
        ("# nothing\n\n", "the file is empty"),
        ("dough_c\n24\n", 'line 1: "dough_c" is only one column; write a cell for each column in each line, with a'),
        (f"{HEADER}\n", "no row can be used: there is none below the header"),
        (
            f"{HEADER}\n24,0.7,abc,80\n",
            'no row can be used: rises.csv, line 2, rise: "abc" is not a number; write 60 or 60%',
        ),
        (
            f"{ROW}\n",
            'no column has a known name ("24", "0.7", "60", "80"); begin the table with a header such as date,dough_c,',
        ),
        (
            "dough_c,yeast,rise,tmie\n24,0.7,60,80\n",
            'the column "tmie" is unknown; did you mean time? known: date, dough, room, yeast, yeast_kind, packet, '
            "salt, water, sugar, flour_g, stage, rise, time, mixed, kind",
        ),
        (f"{HEADER},flower_g\n{ROW},500\n", 'the column "flower_g" is unknown; did you mean flour_g?'),
        (f"{HEADER},yeast_g\n{ROW},3\n", 'the column "yeast_g" is unknown; did you mean yeast?'),
        (f"{HEADER},xyz\n{ROW},3\n", 'the column "xyz" is unknown; known: date'),
        (f"{HEADER},dough_f\n{ROW},76\n", 'two columns are the dough: "dough_c" and "dough_f"; keep one of them'),
        ("dough_c,yeast,rise\n24,0.7,60\n", "there is no column time; write a header such as"),
        ("date,rise\n2026-10-04,60\n", "there is no column dough and no column yeast and no column time; write"),
        (f'{HEADER},packet\n{ROW},"open\n', "line 2: this is not CSV"),
    ],
)
def test_what_is_wrong_with_a_whole_table(refused, text, words):
    if '"open' in text:  # the quotation mark takes in the rest of the file, which must then be longer than any cell
        text += "x" * 200_000
    assert refused(text).startswith(words)


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (f"{HEADER}\n{ROW}\n".encode("utf-16"), "this is not UTF-8 text (it looks like UTF-16); save the table as CSV"),
        (f"{HEADER},stage\n{ROW},Gärung\n".encode("latin-1"), "line 2: this is not UTF-8 text; save the table as CSV"),
        (b"\x00\x01", "is not a text file; save the table as CSV in UTF-8"),
    ],
)
def test_files_that_are_no_utf8(refused, content, words):
    assert refused(content).startswith(words)


@pytest.mark.parametrize("name", ["none.csv", "none.toml", "none", "none/rises.csv"])
def test_a_missing_file(tmp_path, name):
    with pytest.raises(lf.InvalidInput, match=f"there is no file .*{name}"):
        lf.read_logbook(tmp_path / name)


@pytest.mark.parametrize("name", ["a\0b", "a" * 5000])
def test_impossible_names(name):
    with pytest.raises(lf.InvalidInput, match=r"zero character|cannot be read: File name too long"):
        lf.read_logbook(name)


@pytest.mark.parametrize("source", [None, 3, [], b"rises.csv", {"dough_c": [24]}])
def test_what_is_no_source(source):
    words = f"source must be a folder, a CSV file, a day file or a DataFrame; got {type(source).__name__}"
    with pytest.raises(lf.InvalidInput, match=words):
        lf.read_logbook(source)


# ---- frames ----------------------------------------------------------------------------------------------------------


def read_frame(contents, **columns):
    contents.clear()
    return lf.read_logbook(pd.DataFrame(columns)), list(contents)


def test_a_frame_equals_its_file(read, contents):
    text = (
        "date,dough_c,room (°F),yeast_percent,packet,rise,time,mixed,kind\n"
        "2026-10-04,24.5,70,0.7,1234,60,23:00,21:40,at\n"
        "2026-10-05,25,,1,,80,80 min,,past\n"
        ",160,70,1,,80,80 min,,\n"
        "2026-10-06,24,70,1,x,,80 min,,\n"
    )
    contents.clear()
    of_file = read(text)
    in_file = list(contents)
    contents.clear()
    of_frame = lf.read_logbook(pd.read_csv(StringIO(text)))
    assert [content | {"title": ""} for content in contents] == [content | {"title": ""} for content in in_file]
    assert (of_file.names, of_frame.names) == (["line 2", "line 3"], ["row 0", "row 1"])
    assert len(of_file.problems) == 2
    assert [text.replace("line 4", "row 2").replace("line 5", "row 3") for text in of_file.problems] == [
        text.replace("DataFrame", "rises.csv") for text in of_frame.problems
    ]


def test_values_of_a_frame(contents):
    book, (first, second) = read_frame(
        contents,
        date=[pd.Timestamp("2026-10-04"), datetime.date(2026, 10, 5)],
        dough_c=np.array([24, 24.5], np.float32),
        yeast=[0.7, "0,7%"],
        rise=pd.array([60, 80], "Int64"),
        time=[pd.Timedelta(hours=1.5), datetime.time(0, 20)],
        mixed=[None, datetime.time(21, 40)],
        packet=[1234.0, np.nan],
    )
    assert book.problems == []
    assert (first["date"], second["date"]) == ("2026-10-04", "2026-10-05")
    assert (first["dough"]["measured_c"], first["dough"]["packet"]) == (24, "1234")
    assert (second["dough"]["measured_c"], second["dough"]["yeast_percent"]) == (24.5, 0.7)
    assert first["seen"] == [{"stage": "bulk", "at": "90min", "rise_percent": 60}]
    assert second["seen"] == [{"stage": "bulk", "at": "00:20", "rise_percent": 80}]
    assert (second["mixed"], second["stage"][0]["until_h"]) == ("21:40", 160 / 60)


@pytest.mark.parametrize("gap", [math.nan, None, pd.NA, pd.NaT, ""])
def test_gaps_in_a_frame(gap):
    frame = pd.DataFrame(
        {"dough_c": [24, gap, 24, gap], "yeast": [0.7, 0.7, 0.7, gap], "rise": [60, 60, gap, gap], "time_min": gap},
        index=["a", "b", "c", "d"],
    ).astype(object)
    frame.loc["a", "time_min"] = 80
    book = lf.read_logbook(frame)
    assert (book.names, book.source) == (["row a"], "DataFrame")
    assert [text.split(" is written")[0] for text in book.problems] == [
        "DataFrame, row b, dough: nothing",
        "DataFrame, row c, rise: nothing",
    ]


@pytest.mark.parametrize("cell", [math.inf, True, [60], {"rise": 60}, "60 g", pd.Timestamp("2026-10-04 21:40")])
def test_what_no_rise_can_be_in_a_frame(cell):
    frame = pd.DataFrame({"dough_c": [24, 24], "yeast": 0.7, "rise": [60, cell], "time_min": 80})
    book = lf.read_logbook(frame)
    assert book.problems[0].startswith("DataFrame, row 1, rise: ")
    assert book.problems[0].endswith("; write 60 or 60%")


def test_half_a_character_in_a_frame():
    frame = pd.DataFrame({"dough_c": [24, 24], "yeast": 0.7, "rise": 60, "time_min": 80, "stage": ["a", "\ud800"]})
    assert "holds half a character" in lf.read_logbook(frame).problems[0]


@pytest.mark.parametrize(
    ("frame", "words"),
    [
        (pd.DataFrame(), "DataFrame: no column has a known name"),
        (pd.DataFrame({"dough_c": [24], 3: [1]}), 'DataFrame: the column "3" is unknown'),
        (pd.DataFrame([[24, 25]], columns=["dough_c", "dough_c"]), "DataFrame: two columns are the dough"),
        (pd.DataFrame({"dough_c": [], "yeast": [], "rise": [], "time_min": []}), "DataFrame: no row can be used: "),
    ],
)
def test_frames_that_are_refused(frame, words):
    with pytest.raises(lf.InvalidInput) as refused:
        lf.read_logbook(frame)
    assert str(refused.value).startswith(words)


# ---- folders and day files -------------------------------------------------------------------------------------------


@pytest.fixture
def folder(tmp_path):
    for name in ("b.toml", "a.toml"):
        (tmp_path / name).write_text(f'title = "{name}"\n[dough]\nflour_g = 500\n', encoding="utf-8")
    return tmp_path


def test_a_folder_of_days_is_read_by_name(folder):
    (folder / "room.csv").write_text("time_h,temp_c\n0,20\n1,21\n", encoding="utf-8")
    book = lf.read_logbook(folder)
    assert [day.title for day in book] == book.names == ["a.toml", "b.toml"]
    assert (book.problems, repr(book)) == ([], f"<Logbook {folder.name}: 2 days>")
    assert lf.read_logbook(str(folder)) == book


def test_an_unreadable_day_is_told_and_the_others_are_used(folder):
    (folder / "aa.toml").write_text("[dough]\nflour_g = -1\n", encoding="utf-8")
    (folder / "c.toml").write_bytes('title = "x"'.encode("utf-16"))
    (folder / "d.toml").mkdir()
    book = lf.read_logbook(folder)
    assert book.names == ["a.toml", "b.toml"]
    assert [text.split(":")[0].split(" is")[0] for text in book.problems] == ["aa.toml", "c.toml", "d.toml"]
    assert "aa.toml: [dough] flour_g: flour −1 g is outside" in book.problems[0]
    assert repr(book).startswith(f"<Logbook {folder.name}: 2 days, 3 left out>\n  aa.toml: ")


def test_folders_without_a_day(tmp_path):
    with pytest.raises(lf.InvalidInput, match=r"there is no day file in the folder .*; a day file ends with \.toml"):
        lf.read_logbook(tmp_path)
    (tmp_path / "rises.csv").write_text("", encoding="utf-8")
    with pytest.raises(lf.InvalidInput, match=r"; name the table itself: .*rises\.csv"):
        lf.read_logbook(tmp_path)
    (tmp_path / "day.toml").write_text("flour = ", encoding="utf-8")
    with pytest.raises(lf.InvalidInput, match=r"no day file can be used: day\.toml is not valid TOML"):
        lf.read_logbook(tmp_path)


def test_one_day_file():
    book = lf.read_logbook(DEMO / "day.toml")
    assert (book.days, book.names, book.problems) == ([lf.read_day(DEMO / "day.toml")], ["day.toml"], [])


# ---- any table -------------------------------------------------------------------------------------------------------


@st.composite
def written_rises(draw):
    """A rise and one of the many ways of writing it in a table."""
    tenths = st.integers(0, 400).map(lambda number: number / 10)
    dough_c, room_c = draw(tenths), draw(st.none() | tenths)
    yeast, rise, minutes = draw(st.integers(1, 49)) / 10, draw(st.integers(1, 300)), draw(st.integers(1, 1439))
    delimiter = draw(st.sampled_from(",;\t"))
    comma = delimiter != "," and draw(st.booleans())

    def number(value):
        return f"{value:.10g}".replace(".", "," if comma else ".")

    def temperature(column, value):
        fahrenheit, in_header = draw(st.booleans()), draw(st.booleans())
        text = number(value * 1.8 + 32 if fahrenheit else value)
        unit = "F" if fahrenheit else "C"
        return (f"{column}_{unit}", text) if in_header else (column, f"{text}{draw(st.sampled_from(['', ' °']))}{unit}")

    cells = dict([temperature("dough", dough_c)])
    if room_c is not None:
        cells |= dict([temperature("room", room_c)])
    cells[draw(st.sampled_from(["yeast", "Yeast (%)"]))] = number(yeast) + draw(st.sampled_from(["", "%", " %"]))
    cells["rise"] = number(rise)
    clock = draw(st.none() | st.integers(0, 1439))
    if clock is not None:
        end = (clock + minutes) % 1440
        cells |= {"mixed": f"{clock // 60}:{clock % 60:02}", "time": f"{end // 60}:{end % 60:02}"}
    else:
        cells |= draw(
            st.sampled_from(
                [
                    {"time_min": number(minutes)},
                    {"time": f"{minutes} min"},
                    {"time": f"{minutes // 60}:{minutes % 60:02}"},
                    {"time": f"{minutes // 60} h {minutes % 60} min"},
                ]
            )
        )
    names = draw(st.permutations(list(cells)))
    quote = draw(st.sampled_from(["", '"']))
    lines = [
        delimiter.join(f"{quote}{text}{quote}" for text in row) for row in (names, [cells[name] for name in names])
    ]
    text = draw(st.sampled_from(["", "\ufeff"])) + draw(st.sampled_from(["\n", "\r\n"])).join(lines)
    return text, dough_c, room_c, yeast, rise, minutes


@given(rise=written_rises())
def test_what_is_written_is_read_back(tmp_path_factory, contents, rise):
    text, dough_c, room_c, yeast, percent, minutes = rise
    file = tmp_path_factory.getbasetemp() / "rises.csv"
    file.write_bytes(text.encode("utf-8"))
    contents.clear()
    assert lf.read_logbook(file).problems == []
    (content,) = contents
    (stage,), (seen,), dough = content["stage"], content["seen"], content["dough"]
    assert dough["measured_c"] == pytest.approx(dough_c, abs=1e-8)
    air = "dough_c" if room_c is None else "room_c"
    assert stage[air] == pytest.approx(dough_c if room_c is None else room_c, abs=1e-8)
    assert (dough["yeast_percent"], seen["rise_percent"]) == (yeast, percent)
    assert stage["until_h"] == pytest.approx(minutes / 60, abs=1e-12)


PIECES = [
    "24",
    "24C",
    "0,7",
    "76 °F",
    "60%",
    "1:20",
    "80 min",
    "+1 7:30",
    "2026-10-04",
    "not yet",
    '"',
    "#",
    " ",
    "-",
    "g",
]
NAMES = ["dough", "dough_c", "room_f", "yeast", "yeast_kind", "rise", "time", "time_min", "mixed", "kind", "date", "x"]
CELLS = st.sampled_from([*PIECES, *NAMES]) | st.text(max_size=5)
TEXTS = st.lists(CELLS | st.sampled_from(list(",;\t\n\n")), max_size=40).map("".join)
TABLES = st.lists(st.lists(CELLS, min_size=4, max_size=6).map(",".join), max_size=4).map(
    lambda rows: "\n".join(["dough,yeast,rise,time,mixed,packet", "24C,0.7,60,80 min", *rows])
)


@given(text=TEXTS | TABLES | st.text())
def test_any_text_is_a_logbook_or_refused(tmp_path_factory, text):
    file = tmp_path_factory.getbasetemp() / "any.csv"
    file.write_bytes(text.encode("utf-8", "replace"))
    book = attempt(lambda: lf.read_logbook(file), lf.InvalidInput)
    if isinstance(book, lf.InvalidInput):
        assert str(book).startswith(str(file))
    else:
        assert len(book) == len(book.names) >= 1
        assert all(problem.startswith("any.csv, line ") for problem in book.problems)


@given(cells=st.lists(st.none() | st.floats() | st.integers() | st.booleans() | CELLS, min_size=4, max_size=4))
def test_any_frame_is_a_logbook_or_refused(cells):
    frame = pd.DataFrame([cells], columns=["dough_c", "yeast", "rise", "time_min"], dtype=object)
    assert isinstance(attempt(lambda: lf.read_logbook(frame), lf.InvalidInput), (lf.Logbook, lf.InvalidInput))


def test_looks_that_cannot_be_are_left_out(read, tmp_path):
    book = read(f"{HEADER}\n{ROW}\n24,0.7,-5,80\n24,0.7,60,0\n")
    assert len(book) == 1
    low, early = book.problems
    assert 'line 3, rise: "-5" is refused' in low
    assert "line 4" in early
    assert "begins at 0 h, and was looked at at 0 h" in early
    good = """
mixed = "9:00"
[dough]
yeast_percent = 0.7
measured = "24C"
[[stage]]
name = "bulk"
until_rise_percent = 90
[[seen]]
stage = "bulk"
at = "10:00"
rise_percent = 60
"""
    (tmp_path / "days").mkdir()
    (tmp_path / "days" / "a.toml").write_text(good, encoding="utf-8")
    bad = good + '[[seen]]\nstage = "bulk"\nat = "10:30"\nnot_yet_percent = 40\n'
    (tmp_path / "days" / "b.toml").write_text(bad, encoding="utf-8")
    folder = lf.read_logbook(tmp_path / "days")
    assert len(folder) == 1
    (problem,) = folder.problems
    assert problem.startswith("b.toml: seen[1]")
    assert "a rise does not fall" in problem
    assert lf.calibrate(folder).history[0].looks == 1
