"""The C interface from another language, by ctypes: the same digits as C++, and its errors.

Needs a shared library: FERMENT_SHARED_LIBRARY=build/release/libferment.so
"""

import ctypes
import json
import math
import os
from pathlib import Path

import pytest

VECTORS = Path(__file__).resolve().parents[1] / "vectors"
OK, INVALID_INPUT, OUTSIDE_MODEL, NO_SOLUTION = range(4)
YEASTS = ["instant", "active_dry", "active_dry_unwetted", "compressed"]


class FactorRule(ctypes.Structure):
    _fields_ = [
        ("size", ctypes.c_uint32),
        ("has_preferment", ctypes.c_int32),
        ("desired_c", ctypes.c_double),
        ("flour_c", ctypes.c_double),
        ("room_c", ctypes.c_double),
        ("friction_k", ctypes.c_double),
        ("preferment_c", ctypes.c_double),
    ]


class Dough(ctypes.Structure):
    _fields_ = [
        ("size", ctypes.c_uint32),
        ("yeast", ctypes.c_int32),
        ("dough_c", ctypes.c_double),
        ("yeast_percent", ctypes.c_double),
        ("salt_percent", ctypes.c_double),
        ("water_percent", ctypes.c_double),
        ("sugar_percent", ctypes.c_double),
        ("altitude_m", ctypes.c_double),
    ]


@pytest.fixture(scope="module")
def library():
    path = os.environ.get("FERMENT_SHARED_LIBRARY")
    if not path:
        pytest.fail(
            "FERMENT_SHARED_LIBRARY is not set. Build a shared library (cmake --preset release && "
            "cmake --build --preset release) and set it to build/release/libferment.so"
        )
    if not Path(path).is_file():
        pytest.fail(f"FERMENT_SHARED_LIBRARY is {path}, which is not there")
    library = ctypes.CDLL(str(Path(path).resolve()))
    library.ferment_version.restype = ctypes.c_char_p
    library.ferment_last_error.restype = ctypes.c_char_p
    library.ferment_water_by_factor_rule.restype = ctypes.c_int32
    library.ferment_water_by_factor_rule.argtypes = [ctypes.POINTER(FactorRule), ctypes.POINTER(ctypes.c_double)]
    library.ferment_hours_to_rise.restype = ctypes.c_int32
    library.ferment_hours_to_rise.argtypes = [
        ctypes.c_double,
        ctypes.POINTER(Dough),
        ctypes.POINTER(ctypes.c_double),
    ]
    return library


def scenarios(name):
    content = json.loads((VECTORS / f"{name}.json").read_text(encoding="utf-8"))
    assert content["relative_tolerance"] == 1e-12
    return content["scenarios"]


def dough(**members):
    return Dough(ctypes.sizeof(Dough), **{"salt_percent": 2, "water_percent": 65, **members})


def hours_to_rise(library, rise_percent, inputs):
    """Status, and the answer or what the output held before."""
    out = ctypes.c_double(-12345.5)
    return library.ferment_hours_to_rise(rise_percent, inputs, out), out.value


def test_version(library):
    header = Path(__file__).resolve().parents[2] / "libferment/include/ferment/version.h"
    assert f'FERMENT_VERSION "{library.ferment_version().decode()}"' in header.read_text(encoding="utf-8")


@pytest.mark.parametrize("scenario", scenarios("hours_to_rise"))
def test_hours_are_those_of_cpp(library, scenario):
    inputs = dict(scenario)
    expected, rise_percent = inputs.pop("hours"), inputs.pop("rise_percent")
    inputs["yeast"] = YEASTS.index(inputs["yeast"])
    status, hours = hours_to_rise(library, rise_percent, dough(**inputs))
    assert status == OK, library.ferment_last_error().decode()
    assert hours == pytest.approx(expected, rel=1e-12, abs=0)


@pytest.mark.parametrize("scenario", scenarios("water_by_factor_rule"))
def test_water_is_that_of_cpp(library, scenario):
    inputs = dict(scenario)
    expected, preferment_c = inputs.pop("water_c"), inputs.pop("preferment_c")
    rule = FactorRule(ctypes.sizeof(FactorRule), preferment_c is not None, preferment_c=preferment_c or 0, **inputs)
    out = ctypes.c_double()
    assert library.ferment_water_by_factor_rule(rule, out) == OK, library.ferment_last_error().decode()
    assert out.value == pytest.approx(expected, rel=1e-12, abs=0)


@pytest.mark.parametrize(
    ("rise_percent", "members", "status", "words"),
    [
        (100, {"dough_c": 77, "yeast_percent": 1}, INVALID_INPUT, "did you mean 77 °F?"),
        (100, {"dough_c": math.nan, "yeast_percent": 1}, INVALID_INPUT, "dough temperature"),
        (0, {"dough_c": 25, "yeast_percent": 1}, INVALID_INPUT, "rise"),
        (100, {"dough_c": 25, "yeast_percent": 1, "yeast": 4}, INVALID_INPUT, "yeast kind 4 is unknown"),
        (100, {"dough_c": -2, "yeast_percent": 1}, OUTSIDE_MODEL, "stands still"),
        (900, {"dough_c": 25, "yeast_percent": 1}, NO_SOLUTION, "never reached"),
    ],
)
def test_refusals(library, rise_percent, members, status, words):
    assert hours_to_rise(library, rise_percent, dough(**members)) == (status, -12345.5)
    assert words in library.ferment_last_error().decode("utf-8")


def test_null_and_size(library):
    inputs = dough(dough_c=25, yeast_percent=1)
    assert hours_to_rise(library, 100, None) == (INVALID_INPUT, -12345.5)
    assert b"null pointer" in library.ferment_last_error()
    assert library.ferment_hours_to_rise(100, inputs, None) == INVALID_INPUT
    inputs.size -= 1
    assert hours_to_rise(library, 100, inputs) == (INVALID_INPUT, -12345.5)
    assert b"ferment_dough.size" in library.ferment_last_error()
    inputs.size += 1
    assert hours_to_rise(library, 100, inputs)[0] == OK
    assert library.ferment_last_error() == b""
