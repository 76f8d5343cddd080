"""Temperature logs: what is read, what is refused with which words, what is said about gaps. All data are invented."""

import math
import re
import subprocess
import sys
from datetime import datetime, timedelta, timezone

import numpy as np
import pandas as pd
import pytest
from box import attempt
from hypothesis import given
from hypothesis import strategies as st

import libferment as lf
from libferment import temperature_log as logs

TWO = "0,24\n0.5,25\n"


@pytest.fixture
def read(tmp_path):
    """Write a text (or bytes) as log.csv and read it."""

    def write_and_read(text, **options):
        file = tmp_path / "log.csv"
        file.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
        return logs.read_temperature_log(file, **options)

    return write_and_read


@pytest.fixture
def refused(read):
    """The words a log is refused with; they begin with the file."""

    def words(text, **options):
        with pytest.raises(lf.InvalidInput) as problem:
            read(text, **options)
        file, rest = str(problem.value).split("log.csv", 1)
        assert file
        return rest.removeprefix(":").strip()

    return words


def readings(log):
    return list(zip(log.time_h.tolist(), log.temperature_c.tolist(), strict=True))


# ---- forms of the file -----------------------------------------------------------------------------------------------


def test_a_log_is_two_arrays_of_floats(read):
    log = read("time_h,temperature_c\n0,24\n0.5,25.5\n")
    assert isinstance(log, logs.TemperatureLog)
    assert (log.time_h.dtype, log.temperature_c.dtype) == (np.float64, np.float64)
    assert (log.time_h.tolist(), log.temperature_c.tolist()) == ([0, 0.5], [24, 25.5])
    assert (log.start, log.notices) == (None, ())


def test_a_path_may_be_a_text(tmp_path):
    (tmp_path / "log.csv").write_text(TWO, encoding="utf-8")
    assert readings(logs.read_temperature_log(str(tmp_path / "log.csv"), unit="C")) == [(0, 24), (0.5, 25)]


def test_to_frame(read):
    expected = pd.DataFrame({"time_h": [0.0, 0.5], "temperature_c": [24.0, 25.0]})
    pd.testing.assert_frame_equal(read(TWO, unit="C").to_frame(), expected)


@pytest.mark.parametrize(
    "text",
    [
        "time_h,temperature_c\n0,24.5\n0.5,25\n",
        "time_h;temperature_c\n0;24.5\n0.5;25\n",
        "time_h;temperature_c\n0;24,5\n0,5;25\n",
        "time_h;temperature_c\n0;24,5;60\n0,5;25;61;\n",
        "time_h\ttemperature_c\n0\t24,5\n0,5\t25\n",
        "time_h\ttemperature_c\n0\t24.5\n.5\t25.\n",
        "\ufefftime_h,temperature_c\r\n0,24.5\r\n0.5,25\r\n",
        "time_h,temperature_c\r0,24.5\r0.5,25",
        "time_h,temperature_c,note\n0,24.5,warm, near the oven\n0.5,25,,,door open\n",
        '"time_h" , "temperature_c"\n"0","24.5"\n"0.5","25"\n',
        'time_h, temperature_c, note\n0, "24.5", "warm, near the oven"\n0.5, 25,\n',
        "  time_h ,\ttemperature_c \n 0 , 24.5\n+0.5,2.5e1\n",
        "time_h,temperature_c,humidity,note\n0,24.5,60,a note\n0.5,25,61\n",
        "number,humidity;2,temperature_c,time_h\n1,60,24.5,0\n2,60,25,0.5\n",  # a semicolon in one line divides nothing
        "time_h;temperature, °C;note\n0;24,5;warm, near the oven; door open\n0,5;25\n",
        'time_h,note,temperature_c\n0,"two\nlines",24.5\n0.5,,25\n',
        '"time\n(h)","temperature\nin C"\n0,24.5\n0.5,25\n',
        "time_h,temperature_c\n0,24.5,\n0.5,25,,\n,,\n",
    ],
)
def test_delimiters_quotes_and_further_columns(read, text):
    assert readings(read(text)) == [(0, 24.5), (0.5, 25)]


def test_blank_lines_and_remarks_are_skipped_and_counted(read, refused):
    text = '# a "remark, with\n\ntime_h,temperature_c\n  # 1,99\n0,24\n\n0.5,{}\n'
    assert readings(read(text.format(25))) == [(0, 24), (0.5, 25)]
    assert refused(text.format("warm")).startswith('line 7: the temperature "warm"')


def test_a_quoted_line_break_counts_as_a_line(refused):
    assert refused('time_h,temperature_c,note\n0,24,"a\nb\nc"\n0.5,warm,\n').startswith("line 5: the temperature")


@pytest.mark.parametrize(
    ("header", "unit"),
    [
        ("temperature_c", "C"),
        ("Temperature_F", "F"),
        ("°C", "C"),
        ("°F", "F"),
        ("º f", "F"),
        ("C", "C"),
        ("f", "F"),
        ("temp (F)", "F"),
        ("Temperature [°F]", "F"),
        ("TEMPERATURE (C)", "C"),
        ("tempC", "C"),
        ("temp F", "F"),
        ("degC", "C"),
        ("degrees F", "F"),
        ("Probe 1 Celsius", "C"),
        ("fahrenheit", "F"),
        ("Temperature, °C", "C"),
        ("Temperature in F", "F"),
        ("room_c", "C"),
        ("dough_f (final)", "F"),
    ],
)
def test_units_in_the_header(read, header, unit):
    log = read(f"time;{header}\n0;50\n0,5;59\n")
    assert log.temperature_c.tolist() == ([50, 59] if unit == "C" else [10, 15])


@pytest.mark.parametrize("header", ["temperature", "probe", "Probe C", "temp_final", "temp °C/°F", "oven in front"])
def test_headers_that_tell_no_unit(read, refused, header):
    text = f"time,{header}\n0,50\n0.5,59\n"
    words = refused(text)
    assert "nothing tells whether the temperatures are °C or °F" in words
    assert 'unit="C" or unit="F"' in words
    assert read(text, unit="C").temperature_c.tolist() == [50, 59]
    assert read(text, unit="F").temperature_c.tolist() == [10, 15]


@pytest.mark.parametrize(
    ("cells", "expected"),
    [
        (("24.5C", "25 C"), [24.5, 25]),
        (("24.5 °C", "25c"), [24.5, 25]),
        (("50 °F", "59F"), [10, 15]),
        (("50 degF", "59\u00a0ºf"), [10, 15]),
        (("50F", "59"), [10, 15]),
        (("50", "59F"), [10, 15]),
        (("−5C", "-6.5C"), [-5, -6.5]),
    ],
)
def test_units_in_the_cells(read, cells, expected):
    rows = "".join(f"{place},{cell}\n" for place, cell in enumerate(cells))
    assert read(rows).temperature_c.tolist() == expected
    assert read(f"time,temperature\n{rows}").temperature_c.tolist() == expected


def test_fahrenheit_is_converted_as_the_library_does(read):
    log = read("time,temp (F)\n0,76.1\n0.5,78.3\n")
    assert log.temperature_c.tolist() == [lf.celsius(76.1), lf.celsius(78.3)]


def test_the_same_unit_may_be_told_thrice(read):
    assert read("time,temperature_f\n0,50F\n0.5,59F\n", unit="F").temperature_c.tolist() == [10, 15]


@pytest.mark.parametrize(
    ("text", "unit", "expected"),
    [
        ("time,temp_c\n0,24\n0.5,25\n", "F", ['header "temp_c" says °C', 'unit="F" says °F']),
        ("time,temp_f\n0,24\n0.5,25\n", "C", ['unit="C" says °C', 'header "temp_f" says °F']),
        ("time,temp_c\n0,24\n0.5,77F\n", None, ['header "temp_c" says °C', 'line 3 ("77F") says °F']),
        ("0,24C\n0.5,77F\n", None, ['line 1 ("24C") says °C', 'line 2 ("77F") says °F']),
        ("0,24C\n0.5,25\n", "F", ['line 1 ("24C") says °C', 'unit="F" says °F']),
    ],
)
def test_units_that_contradict_are_refused(refused, text, unit, expected):
    words = refused(text, unit=unit)
    assert all(part in words for part in expected)
    assert "a log has one unit" in words


# ---- columns ---------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "time,temp_c,temp_f\n0,24,75.2\n0.5,25,77\n",
            'several columns could be the temperature: "temp_c" (column 2), "temp_f" (column 3); keep one of them',
        ),
        (
            "time,temperature_c,dew point (°C)\n0,24,9\n1,24,9\n",
            '"temperature_c" (column 2), "dew point (°C)" (column 3)',
        ),
        ("time,room,dough\n0,24,25\n1,24,25\n", '"room" (column 2), "dough" (column 3)'),
        ("0,24C,60\n1,25C,61\n", "several columns could be the temperature: column 2, column 3; keep one of them"),
        ("1,07:10,24C\n2,07:20,24C\n", "several columns could be the temperature: column 1, column 3"),
        (
            "Date,Time,temp_c\n2026-03-01,07:10,24\n",
            'could be the time: "Date" (column 1), "Time" (column 2); keep one',
        ),
        ("2026-03-01,07:10,24C\n2026-03-01,07:20,24C\n", "could be the time: column 1, column 2"),
        ("time_h,time_min,temp_c\n0,0,24\n", 'could be the time: "time_h" (column 1), "time_min" (column 2)'),
        ("index,temp_c\n0,24\n1,25\n", 'no column of the header ("index", "temp_c") is the time; name it time,'),
    ],
)
def test_ambiguous_columns_are_refused(refused, text, expected):
    words = refused(text)
    assert expected in words
    assert ("with a point" in words) == ("temperature: column" in words)  # no header tells the columns apart


@pytest.mark.parametrize(
    "text",
    [
        "time,dough,note\n0,24C,a\n0.5,25C,b\n",  # the only column with numbers
        "h,dough,note\n0,24C,x\n0.5,25C,y\n",  # a unit alone names the time
        "elapsedTime,min,temp_c\n0,23,24\n0.5,23,25\n",  # the word comes before the unit
        "0,24C\n0.5,25C\n",
        "time,temperature,humidity\n0,24C,60\n0.5,25C,60\n",
        "time,note,dough\n0,,24C\n0.5,,25C\n",
        "00:00,24C,a,b\n00:30,25C,c\n",
        "a,00:00,24C\nb,00:30,25C\n",  # without a header the clock is the time wherever it stands
    ],
)
def test_columns_that_can_only_be_one_thing(read, text):
    assert readings(read(text)) == [(0, 24), (0.5, 25)]


@pytest.mark.parametrize(
    "text", ["time_h,temperature_c\n0,24,5\n0.5,25,5\n", "0,24\n0.5,25,5C\n", "temp_c,time_h\n24,5,0\n25,5,0,5\n"]
)
def test_a_decimal_comma_between_commas_is_refused(refused, text):
    words = refused(text, unit="C")
    assert re.match(r"line 2: more than the 2 columns of the first line", words)
    assert "decimal comma" in words
    assert ("(2 bad lines in all)" in words) == text.startswith("t")


def test_a_decimal_comma_without_a_header_is_refused(refused):
    words = refused("0,24,5\n0,25,5\n", unit="C")
    assert "column 2, column 3" in words
    assert "write it with a point, not a comma" in words


def test_a_quoted_decimal_comma_between_commas_is_refused(refused):
    words = refused('time_h,temperature_c\n0,24\n0.5,"1,025"\n')
    assert words.startswith('line 3: the temperature "1,025" is not a number')
    assert "a decimal comma needs a semicolon or a tab" in words
    assert refused('time_s,temperature_c\n999,24\n"1,025",24\n').startswith('line 3: the time "1,025" cannot be read')


# ---- times -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("first", "second", "start"),
    [
        ("2026-03-01 07:10", "2026-03-01 07:40", datetime(2026, 3, 1, 7, 10)),
        ("2026-03-01T07:10:30", "2026-03-01T07:40:30", datetime(2026, 3, 1, 7, 10, 30)),
        ("2026-03-01 07:10:30.25", "2026-03-01 07:40:30.250000", datetime(2026, 3, 1, 7, 10, 30, 250000)),
        ("2026-02-28 23:50", "2026-03-01 00:20", datetime(2026, 2, 28, 23, 50)),
        ("2026-03-01T07:10Z", "2026-03-01T07:40:00 Z", datetime(2026, 3, 1, 7, 10, tzinfo=timezone.utc)),
        (
            "2026-10-25 02:50+02:00",  # the clocks are set back
            "2026-10-25 02:20+0100",
            datetime(2026, 10, 25, 2, 50, tzinfo=timezone(timedelta(hours=2))),
        ),
        (
            "2026-03-01 07:10+01",
            "2026-03-01 07:40+01:00",
            datetime(2026, 3, 1, 7, 10, tzinfo=timezone(timedelta(hours=1))),
        ),
        (
            "2026-03-01 07:10-03:30",
            "2026-03-01 07:40:00.0000009−03:30",
            datetime(2026, 3, 1, 7, 10, tzinfo=timezone(-timedelta(hours=3, minutes=30))),
        ),
    ],
)
def test_dates(read, first, second, start):
    for header in ("", "timestamp,temp\n", "Date/Time,temp\n"):
        log = read(f"{header}{first},24C\n{second},25C\n")
        assert log.time_h == pytest.approx([0, 0.5], abs=1e-12)
        assert log.start == start
        assert log.start.tzinfo == start.tzinfo


def test_a_clock_counts_from_the_first_reading_and_has_no_date(read):
    log = read("clock,temp_c\n7:10,24\n07:40:30,25\n08:10:07.5,26\n")
    assert log.time_h == pytest.approx([0, 0.5 + 30 / 3600, 1 + 7.5 / 3600], abs=1e-12)
    assert log.start is None


def test_a_clock_passes_midnight_as_often_as_the_log_does(read):
    clocks = ["18:00", "05:30", "18:30", "00:10", "06:00", "12:00", "18:00", "23:59:59", "00:00"]
    log = read("".join(f"{clock},24C\n" for clock in clocks), longest_gap_h=24)
    late = 47 + 3599 / 3600
    assert log.time_h == pytest.approx(
        np.array([18, 29.5, 42.5, 48 + 1 / 6, 54, 60, 66, late + 24, 72]) - 18, abs=1e-12
    )


@pytest.mark.parametrize(
    ("before", "now"), [("20:00", "08:00"), ("17:50", "00:10"), ("07:10", "07:00"), ("23:00", "22:59")]
)
def test_other_steps_back_of_a_clock_are_no_midnight(refused, before, now):
    words = refused(f"{before},24C\n{now},24C\n")
    assert words.startswith(f'line 2: the time "{now}" goes back from "{before}" in line 1; put the readings in order')
    assert "zone" not in words


@pytest.mark.parametrize(
    ("header", "per_hour"),
    [
        ("", 1),
        ("time,temp\n", 1),
        ("elapsed time,temp\n", 1),
        ("time_h,temp\n", 1),
        ("h,temp\n", 1),
        ("Time (hours),temp\n", 1),
        ("TIME_MIN,temp\n", 60),
        ("minutes,temp\n", 60),
        ("elapsedMin,temp\n", 60),
        ("time [s],temp\n", 3600),
        ("Time since start in seconds,temp\n", 3600),
    ],
)
def test_plain_numbers_stay_as_in_the_file(read, header, per_hour):
    log = read(f"{header}{-0.5 * per_hour},24C\n{0.25 * per_hour},25C\n")
    assert log.time_h.tolist() == [-0.5, 0.25]
    assert log.start is None


@pytest.mark.parametrize("header", ["timestamp", "date", "time_ms", "time (days)", "time (h:min)"])
def test_plain_numbers_of_an_unknown_unit_are_refused(refused, header):
    words = refused(f"{header},temp_c\n0,24\n1,25\n")
    assert words.startswith(f'the header "{header}" does not tell the unit of its numbers; name the column time_h')


@pytest.mark.parametrize(
    "time",
    [
        "2026-02-30 07:10",
        "2026-03-01 24:00",
        "2026-03-01",
        "2026-03-01 07:60",
        "2026-03-01 07:10+25:00",
        "01.03.2026 07:10",
        "24:00",
        "07:60",
        "07:10:60",
        "7:1",
        "7:10 PM",
        "noon",
        "nan",
        "inf",
        "-inf",
        "1e999",
        "1 h",
        "",
    ],
)
def test_times_that_cannot_be_read_are_refused(refused, time):
    first = "2026-03-01 07:00" if "2026" in time else "07:00" if ":" in time else "0"
    words = refused(f"time,temp_c\n{first},24\n{time},25\n")
    assert words.startswith(f'line 3: the time "{time}" cannot be read; write 2026-03-01 07:10')
    assert "bad lines" not in words


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("2026-03-01 07:10", "07:20"),
        ("07:10", "0.5"),
        ("0", "2026-03-01 07:10"),
        ("2026-03-01 07:10", "2026-03-01 07:20Z"),
        ("2026-03-01 07:10+01:00", "2026-03-01 07:20"),
    ],
)
def test_times_of_two_forms_are_refused(refused, first, second):
    words = refused(f"{first},24C\n{second},25C\n")
    assert words.startswith(f'line 2: the time "{second}" has another form than "{first}" in line 1')


@pytest.mark.parametrize(
    ("before", "now", "problem"),
    [
        ("2026-03-01 07:10", "2026-03-01 07:00", "goes back from"),
        ("2026-03-01 07:10", "2026-03-01 07:10:00", "repeats"),
        ("2026-03-01 07:10Z", "2026-03-01 07:20+00:15", "goes back from"),
        ("07:10", "07:10", "repeats"),
        ("0.5", "0.25", "goes back from"),
        ("0.5", "0.50", "repeats"),
    ],
)
def test_times_that_go_back_or_repeat_are_refused(refused, before, now, problem):
    words = refused(f"time,temp_c\n{before},24\n\n{now},25\n")
    assert words.startswith(f'line 4: the time "{now}" {problem} "{before}" in line 2; put the readings in order')
    assert ("write the times with their zone" in words) == ("2026" in now and "+" not in now)


def test_a_step_back_counts_against_the_latest_time(refused):
    words = refused("0,24C\n3,24C\n1,24C\n2,24C\n4,24C\n")
    assert words.startswith('line 3: the time "1" goes back from "3" in line 2')
    assert "(2 bad lines in all)" in words


# ---- temperatures ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("temperature", ["warm", "24.5.1", "24 K", "inf", "-inf", "1e999", "24,5", "24 25", "C", "1_0"])
def test_temperatures_that_cannot_be_read_are_refused(refused, temperature):
    words = refused(f'time,temp_c\n0,24\n0.5,"{temperature}"\n1,25\n')
    assert words.startswith(
        f'line 3: the temperature "{temperature}" is not a number of °C or °F; write for example 24.5'
    )
    assert "bad lines" not in words
    assert ("decimal comma" in words) == ("," in temperature)


def test_several_bad_lines_are_counted_and_the_first_is_named(refused):
    words = refused("time,temp_c\n0,24\nnoon,hot\n1,warm\n2,25\nnever,25\n")
    assert words.startswith('line 3: the time "noon" cannot be read')
    assert words.endswith("(2 bad lines in all)")
    assert refused("time,temp_c\n0,24\n1,hot\n2,warm\n3,25\n").endswith("(2 bad lines in all)")


def test_a_long_cell_is_shown_short(refused):
    words = refused(f"time,temp_c\n0,24\n1,{'x' * 1000}\n")
    assert f'"{"x" * 37}..."' in words
    assert len(words) < 300


@pytest.mark.parametrize(
    ("unit", "value", "range_and_hint"),
    [
        ("C", "-50.1", "-50.1 °C is outside -50 to 120 °C; take out the line"),
        ("C", "120.1", "120.1 °C is outside -50 to 120 °C; if the log is in °F (120.1 °F is 48.9 °C)"),
        ("C", "212", "212 °C is outside -50 to 120 °C; if the log is in °F (212 °F is 100.0 °C)"),
        ("C", "249", "249 °C is outside -50 to 120 °C; take out the line"),
        ("F", "-58.1", "-58.1 °F is outside -58 to 248 °F; take out the line"),
        ("F", "248.1", "248.1 °F is outside -58 to 248 °F; take out the line"),
    ],
)
def test_temperatures_of_no_kitchen_are_refused(refused, unit, value, range_and_hint):
    words = refused(f"0,24\n0.5,{value}\n", unit=unit)
    assert words.startswith(f"line 2: the temperature {range_and_hint}")


@pytest.mark.parametrize(("unit", "low", "high"), [("C", -50, 120), ("F", -58, 248)])
def test_the_bounds_themselves_are_read(read, unit, low, high):
    assert read(f"0,{low}\n0.5,{high}\n", unit=unit).temperature_c == pytest.approx([-50, 120], abs=1e-12)


def test_several_temperatures_outside_are_counted(refused):
    words = refused("0,24C\n0.5,300C\n1,-300C\n")
    assert words.startswith("line 2: the temperature 300 °C")
    assert words.endswith("(2 bad lines in all)")


# ---- readings of a probe that was off --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "off", ["", "  ", "-", "--", "---", "NaN", "nan", "Err", "ERROR", "N/A", "null", "None", "off"]
)
def test_a_probe_that_was_off_is_skipped_with_a_notice(read, off):
    log = read(f"time,temp_c\n0,24\n0.25,{off}\n0.5,25\n0.75,{off}\n1,26\n")
    assert readings(log) == [(0, 24), (0.5, 25), (1, 26)]
    (notice,) = log.notices
    assert (notice.code, notice.severity) == ("log_readings_skipped", "caution")
    assert notice.values == {"count": 2, "first_line": 3}
    assert notice.text == "2 readings without a temperature skipped, the first in line 3"


def test_a_line_that_ends_early_is_skipped_with_a_notice(read):
    log = read("time,temp_c\n0,24\n0.5,25\n0.75\n")
    assert readings(log) == [(0, 24), (0.5, 25)]
    assert log.notices[0].text == "1 reading without a temperature skipped, the first in line 4"


def test_a_log_begins_with_its_first_temperature(read):
    log = read("2026-03-01 07:10,--\n2026-03-01 07:20,24C\n2026-03-01 07:50,25C\n")
    assert log.time_h == pytest.approx([0, 0.5], abs=1e-12)
    assert log.start == datetime(2026, 3, 1, 7, 20)
    assert read("07:10,--\n07:20,24C\n07:50,25C\n").time_h == pytest.approx([0, 0.5], abs=1e-12)
    assert read("1,--\n2,24C\n2.5,25C\n").time_h.tolist() == [2, 2.5]


def test_skipped_readings_still_pass_midnight(read):
    log = read("17:50,24C\n23:50,--\n00:10,--\n00:20,25C\n", longest_gap_h=24)
    assert log.time_h == pytest.approx([0, 6.5], abs=1e-12)


def test_skipped_readings_need_a_time_in_order(refused):
    assert refused("0,24C\n1,--\n0.5,--\n2,24C\n").startswith('line 3: the time "0.5" goes back from "1"')
    assert refused("0,24C\nnoon,--\n2,24C\n").startswith('line 2: the time "noon" cannot be read')


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("time,temp_c\n", "the log has 0 readings; it needs at least two"),
        ("time,temp_c\n0,24\n", "the log has 1 reading; it needs at least two"),
        ("0,24\n", "the log has 1 reading; it needs at least two"),
        (
            "time,temp_c\n0,24\n1,--\n2,\n",
            "the log has 1 reading (2 without a temperature, the first in line 3); it needs",
        ),
        ("0,--\n1,--\n", "the log has 0 readings (2 without a temperature, the first in line 1); it needs"),
    ],
)
def test_fewer_than_two_readings_are_refused(refused, text, expected):
    assert refused(text).startswith(expected)


# ---- gaps ------------------------------------------------------------------------------------------------------------


def test_a_gap_brings_a_notice(read):
    log = read("time_h,temp_c\n0,24\n1,24\n# away\n3.5,25\n")
    assert readings(log) == [(0, 24), (1, 24), (3.5, 25)]
    (notice,) = log.notices
    assert (notice.code, notice.severity) == ("log_gap", "caution")
    assert notice.values == {"count": 1, "longest_h": 2.5, "first_line": 3}
    assert notice.text == (
        "no reading for longer than 1 h: 2.5 h between lines 3 and 5; "
        "the temperature is taken as a straight line across"
    )


def test_gaps_are_collected_in_one_notice(read):
    log = read("".join(f"{place**2},24C\n" for place in range(7)))
    (notice,) = log.notices
    assert notice.values == {"count": 5, "longest_h": 11, "first_line": 2}
    assert "3 h between lines 2 and 3, 5 h between lines 3 and 4, 7 h between lines 4 and 5 and 2 more;" in notice.text
    (notice,) = read("0,24C\n2,24C\n4,24C\n6,24C\n8,24C\n").notices
    assert "2 h between lines 3 and 4 and 1 more; the temperature" in notice.text
    (notice,) = read("0,24C\n2,24C\n4,24C\n6,24C\n").notices
    assert "2 h between lines 3 and 4; the temperature" in notice.text


def test_the_longest_gap_can_be_chosen(read):
    assert [notice.code for notice in read(TWO, unit="C", longest_gap_h=0.4).notices] == ["log_gap"]
    assert read(TWO, unit="C", longest_gap_h=0.5).notices == ()
    assert read("0,24C\n99,25C\n", longest_gap_h=math.inf).notices == ()


def test_rounding_makes_no_gap(read):
    log = read("".join(f"{0.1 + hour:.1f},24C\n" for hour in range(100)))
    assert max(np.diff(log.time_h)) > 1  # by a rounding
    assert log.notices == ()


def test_skipped_readings_leave_a_gap(read):
    log = read("0,24C\n1,--\n2,25C\n")
    assert [notice.code for notice in log.notices] == ["log_readings_skipped", "log_gap"]
    assert "2 h between lines 1 and 3" in log.notices[1].text


# ---- files and arguments ---------------------------------------------------------------------------------------------


def test_no_file_and_a_folder_are_refused(tmp_path):
    with pytest.raises(lf.InvalidInput, match=r"\Athere is no file .*none\.csv\Z"):
        logs.read_temperature_log(tmp_path / "none.csv")
    with pytest.raises(lf.InvalidInput, match=rf"\A{re.escape(str(tmp_path))} is a folder; name the CSV file in it\Z"):
        logs.read_temperature_log(tmp_path)
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(lf.InvalidInput, match=r"cannot be read|there is no file"):
        logs.read_temperature_log(tmp_path / "file" / "log.csv")


def test_what_is_no_text_is_refused(refused):
    latin = "time,temperature (°C)\n0,24\n1,25\n".encode("latin-1")
    assert refused(latin).startswith("line 1: this is not UTF-8 text; save the log as CSV in UTF-8")
    assert refused(b"time,temp_c\n0,24\n1,\xff\n").startswith("line 3: this is not UTF-8 text")
    assert refused(b"PK\0\1,\0\n").startswith("is not a text file")


@pytest.mark.parametrize("text", ["", "\ufeff", "\n \n", "# time,temp_c\n"])
def test_an_empty_file_is_refused(refused, text):
    assert refused(text).startswith("the file is empty; it needs at least two readings")


def test_a_single_column_is_refused(refused):
    assert refused("temp_c\n24\n25\n").startswith('line 1: "temp_c" is only one column; write a time and a')


def test_an_open_quotation_mark_is_refused(refused):
    words = refused('time,temp_c\n0,24\n1,"25\n' + 20000 * "2,25,note\n")
    assert words.startswith("line 3: this is not CSV")
    assert "is a quotation mark left open?" in words
    assert refused('time,temp_c\n0,24\n1,"25\n2,26\n').startswith("line 3: the temperature")


@pytest.mark.parametrize("unit", ["K", "c", "", 1])
def test_other_units_are_refused(tmp_path, unit):
    with pytest.raises(lf.InvalidInput, match=f'unit must be "C" or "F".*got {unit!r}'):
        logs.read_temperature_log(tmp_path / "none.csv", unit=unit)


@pytest.mark.parametrize("hours", [0, -1, math.nan])
def test_the_longest_gap_must_be_positive(tmp_path, hours):
    with pytest.raises(lf.InvalidInput, match=f"longest_gap_h must be a positive number of hours, got {hours!r}"):
        logs.read_temperature_log(tmp_path / "none.csv", longest_gap_h=hours)


def test_the_module_is_imported_without_numpy_and_pandas():
    code = "import sys, libferment.temperature_log; sys.exit(bool({'numpy', 'pandas'} & set(sys.modules)))"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


# ---- what is written is read back ------------------------------------------------------------------------------------

HOUR_US = 3_600_000_000
START = datetime(2026, 2, 28, 21, 17, 4)
PER_HOUR = {"time_h": 1, "time_min": 60, "seconds": 3600}


@st.composite
def written_logs(draw):
    """The text of a log with the options to read it, and what must come out: hours, °C, start."""
    delimiter = draw(st.sampled_from([",", ";", "\t"]))
    decimal_comma = delimiter != "," and draw(st.booleans())

    def number(value):
        return repr(value).replace(".", ",") if decimal_comma else repr(value)

    form = draw(st.sampled_from(["date", "zoned", "clock", *PER_HOUR]))
    steps = draw(st.lists(st.integers(1000, 5 * HOUR_US), min_size=1, max_size=12))
    passed = [timedelta(microseconds=sum(steps[:count])) for count in range(len(steps) + 1)]
    hours, start = [time / timedelta(hours=1) for time in passed], None
    if form in PER_HOUR:
        shift = draw(st.floats(-100, 100))
        hours = [shift + time for time in hours]
        times = [number(PER_HOUR[form] * time) for time in hours]
    elif form == "clock":
        times = [(START + time).time().isoformat() for time in passed]
    else:
        zone = timezone(timedelta(minutes=draw(st.integers(-720, 720)))) if form == "zoned" else None
        start = START.replace(tzinfo=zone)
        times = [(start + time).isoformat(draw(st.sampled_from("T "))) for time in passed]

    unit = draw(st.sampled_from("CF"))
    low, high = (-50, 120) if unit == "C" else (-58, 248)
    degrees = draw(st.lists(st.floats(low, high), min_size=len(times), max_size=len(times)))
    celsius = degrees if unit == "C" else [(value - 32) / 1.8 for value in degrees]
    told_by = draw(st.sampled_from(["header", "cells", "argument"]))
    suffix = draw(st.sampled_from([unit, f" °{unit}"])) if told_by == "cells" else ""

    lines = [delimiter.join((time, number(value) + suffix)) for time, value in zip(times, degrees, strict=True)]
    if told_by == "header" or PER_HOUR.get(form, 1) != 1 or draw(st.booleans()):
        names = form if form in PER_HOUR else "time", f"temp ({unit})" if told_by == "header" else "temp"
        lines.insert(0, delimiter.join(names))
    for place in draw(st.lists(st.integers(0, len(lines)), max_size=2)):
        lines.insert(place, draw(st.sampled_from(["", "# a remark, with; all\tdelimiters"])))
    text = draw(st.sampled_from(["", "\ufeff"])) + draw(st.sampled_from(["\n", "\r\n"])).join(lines)
    return text, {"unit": unit} if told_by == "argument" else {}, hours, celsius, start


@given(log=written_logs())
def test_what_is_written_is_read_back(tmp_path_factory, log):
    text, options, hours, degrees, start = log
    file = tmp_path_factory.getbasetemp() / "round_trip.csv"
    file.write_bytes(text.encode("utf-8"))
    read = logs.read_temperature_log(file, longest_gap_h=math.inf, **options)
    np.testing.assert_allclose(read.time_h, hours, rtol=0, atol=1e-9)
    np.testing.assert_allclose(read.temperature_c, degrees, rtol=0, atol=1e-9)
    assert read.start == start
    assert [notice.code for notice in read.notices] in ([], ["log_spike"])


PIECES = [
    "0",
    "1.5",
    "07:10",
    "23:50",
    "2026-03-01 07:10",
    "24C",
    "77 °F",
    "--",
    "time",
    "temp_c",
    "x",
    "#",
    '"',
    " ",
    ",",
    ";",
]


@given(text=st.lists(st.sampled_from([*PIECES, "\n", ",", "\n"]), max_size=30).map("".join) | st.text())
def test_any_text_is_a_log_or_refused(tmp_path_factory, text):
    file = tmp_path_factory.getbasetemp() / "any.csv"
    file.write_bytes(text.encode("utf-8", "replace"))
    log = attempt(lambda: logs.read_temperature_log(file), lf.InvalidInput)
    if isinstance(log, lf.InvalidInput):
        assert str(log).startswith(str(file))
    else:
        assert log.time_h.shape == log.temperature_c.shape
        assert len(log.time_h) >= 2
        assert (np.diff(log.time_h) > 0).all()
        assert ((log.temperature_c >= -50) & (log.temperature_c <= 120)).all()


# ---- plain numbers that are dates, and leaps -------------------------------------------------------------------------


@pytest.mark.parametrize("header", ["time", "time_s", "elapsed_min"])
@pytest.mark.parametrize("since_1970", [1_760_000_000, 1_760_000_000_000, 1_760_000_000.5])
def test_seconds_since_1970_are_no_hours(refused, header, since_1970):
    words = refused(f"{header},temp_c\n{since_1970},20\n{since_1970 + 60},21\n")
    assert words.startswith(f'line 2: the time "{since_1970}" looks like seconds since 1970; write dates as 2026-03-01')


def test_a_leap_of_one_reading_is_told_and_kept(read):
    log = read("time_min,temp_c\n0,20\n0.5,80\n1,20\n2,20\n")
    (notice,) = log.notices
    assert (notice.code, notice.severity) == ("log_spike", "caution")
    assert notice.values == {"count": 1, "first_line": 3, "temperature_c": 80}
    assert "line 3 leaps to 80.0 °C between 20.0 and 20.0 °C within 1 min" in notice.text
    assert list(log.temperature_c) == [20, 80, 20, 20]
    assert read("time_min,temp_c\n0,20\n30,80\n60,20\n").notices == ()  # an oven may do that
    assert read("time_min,temp_c\n0,20\n1,4\n2,4\n").notices == ()  # a dough that is moved
    assert "; 1 more leap so" in read("time_s,temp_c\n0,20\n1,80\n2,20\n3,20\n4,-9\n5,20\n").notices[0].text


# ---- long logs, by whole columns -------------------------------------------------------------------------------------

LONG = 6_000


def long_log(time, temperature, header="time,temp_c", delimiter=","):
    rows = (delimiter.join((time(i), temperature(i))) for i in range(LONG))
    return "\n".join([header.replace(",", delimiter), *rows, ""])


def tenths(i):
    return f"{20 + (i * 7919) % 31 / 10:.1f}"


def clock(i):
    second = 7 * i + 80_000
    return f"{second // 3600 % 24:02d}:{second // 60 % 60:02d}:{second % 60:02d}"


LONG_LOGS = {
    "seconds": long_log(lambda i: f"{i}", tenths, "time_s,temp_c"),
    "hours": long_log(lambda i: f"{i / 100}", tenths),
    "decimal commas": long_log(lambda i: f"{i}", lambda i: tenths(i).replace(".", ","), "time_s,temp_c", ";"),
    "dates": long_log(lambda i: f"{datetime(2026, 3, 1) + timedelta(seconds=7 * i)}", tenths),
    "dates with T": long_log(lambda i: (datetime(2026, 3, 1) + timedelta(seconds=7 * i)).isoformat(), tenths),
    "dates to the millisecond": long_log(
        lambda i: f"2026-02-28 23:{i // 600:02d}:{i % 600 // 10:02d}.{i % 10}25", tenths
    ),
    "clocks over midnight": long_log(clock, tenths),
    "clocks to the millisecond": long_log(lambda i: f"{clock(i)}.{i % 1000:03d}", tenths),
    "probe off": long_log(lambda i: f"{i}", lambda i: "--" if i % 500 == 3 else tenths(i), "time_s,temp_c"),
    "Fahrenheit": long_log(lambda i: f"{i}", lambda i: f"{70 + i % 9}", "time_s,temp_f"),
    "no header": long_log(lambda i: f"{i / 100}", tenths).split("\n", 1)[1],
    "remarks first": "# invented\n\n# again\n" + long_log(lambda i: f"{i}", tenths, "time_s,temp_c"),
    "three columns": long_log(lambda i: f"{i},note", tenths, "time_s,what,temp_c"),
    "spaces": long_log(lambda i: f" {i} ", lambda i: f" {tenths(i)}", "time_s,temp_c"),
}
UNITS = {"no header": {"unit": "C"}}
NOT_PLAIN = {
    "a quotation mark": LONG_LOGS["seconds"].replace("\n300,", '\n"300",'),
    "a unit in a cell": re.sub(r"\n300,([\d.]+)", r"\n300,\1 C", LONG_LOGS["seconds"]),
    "a blank line": LONG_LOGS["seconds"].replace("\n300,", "\n\n300,"),
    "a remark": LONG_LOGS["seconds"].replace("\n300,", "\n# slept\n300,"),
    "a clock with one digit": LONG_LOGS["clocks over midnight"].replace("\n09:", "\n9:"),
}
REFUSED = {
    "a word": (LONG_LOGS["seconds"].replace("\n300,", "\n300,warm"), 'the temperature "warm'),
    "out of order": (LONG_LOGS["seconds"].replace("\n300,", "\n30,"), 'line 302: the time "30" goes back'),
    "too hot": (LONG_LOGS["seconds"].replace("\n300,", "\n300,9"), "line 302: the temperature 9"),
    "decimal comma": (LONG_LOGS["seconds"].replace("\n300,", "\n300,2,"), "line 302: more than the 2 columns"),
    "no such number": (LONG_LOGS["seconds"].replace("\n300,", "\n3_00,"), 'line 302: the time "3_00" cannot be read'),
    "not a number": (LONG_LOGS["seconds"].replace("\n300,", "\nnan,"), 'line 302: the time "nan" cannot be read'),
    "no such hour": (LONG_LOGS["clocks over midnight"].replace("\n23:", "\n24:", 1), 'the time "24:'),
    "no such date": (LONG_LOGS["dates"].replace("03-01 04:00", "02-31 04:00", 1), 'the time "2026-02-31'),
}


def by_rows(monkeypatch, read, *arguments, **options):
    with monkeypatch.context() as patch:
        patch.setattr(logs, "_by_columns", lambda *_: None)
        return read(*arguments, **options)


@pytest.mark.parametrize("name", [*LONG_LOGS, *NOT_PLAIN])
def test_a_long_log_by_columns_is_that_by_rows_to_the_digit(monkeypatch, read, name):
    text = {**LONG_LOGS, **NOT_PLAIN}[name]
    options = UNITS.get(name, {})
    columns = logs._by_columns(text, options.get("unit"))
    assert (columns is not None) == (name in LONG_LOGS)
    log, careful = read(text, **options), by_rows(monkeypatch, read, text, **options)
    np.testing.assert_array_equal(log.time_h, careful.time_h)
    np.testing.assert_array_equal(log.temperature_c, careful.temperature_c)
    assert log.start == careful.start
    assert [n.to_dict() for n in log.notices] == [n.to_dict() for n in careful.notices]


@pytest.mark.parametrize(("text", "words"), REFUSED.values(), ids=REFUSED)
def test_what_is_wrong_in_a_long_log_is_told_with_its_line(monkeypatch, refused, text, words):
    assert words in refused(text)
    assert by_rows(monkeypatch, refused, text) == refused(text)


def test_a_log_is_taken_whole_and_keeps_its_start(tmp_path):
    path = tmp_path / "log.csv"
    path.write_text("time,°C\n2026-03-01 07:20,18.5\n2026-03-01 08:20,19.5\n2026-03-01 10:50,21\n", encoding="utf-8")
    log = lf.read_temperature_log(path)
    assert log.start_h == pytest.approx(7 + 20 / 60)
    assert log.day_h.tolist() == pytest.approx([7 + 20 / 60, 8 + 20 / 60, 10 + 50 / 60])
    assert lf.Surroundings.measured(log) == lf.Surroundings.measured(log.time_h, log.temperature_c)
    assert lf.Surroundings.dough_measured(log) == lf.Surroundings.dough_measured(log.time_h, log.temperature_c)
    assert str(log.to_frame().index[2]) == "2026-03-01 10:50:00"
    path.write_text("time,°C\n22:30,18.5\n23:30,19.5\n0:30,21\n", encoding="utf-8")
    night = lf.read_temperature_log(path)
    assert (night.start, night.start_h) == (None, 22.5)
    assert night.day_h.tolist() == [22.5, 23.5, 24.5]
    path.write_text("hours,°C\n0,18.5\n1,19.5\n", encoding="utf-8")
    numbers = lf.read_temperature_log(path)
    assert numbers.start_h is None
    with pytest.raises(lf.InvalidInput, match="its day is not known; use time_h"):
        numbers.day_h  # noqa: B018
    with pytest.raises(lf.InvalidInput, match=r"^temperature_c: times alone are no measured temperatures"):
        lf.Surroundings.measured([0, 1])
