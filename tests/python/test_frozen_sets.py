"""The set 2026-1 answers as it did before another set became the default: recorded values, written by that library."""

import json

import pytest
import set_2026_1

import libferment as lf

RECORDED = json.loads(set_2026_1.RECORDED.read_text(encoding="utf-8"))
NOW = set_2026_1.answers(lf.Kitchen.named("2026-1"))
DIGITS = 1e-13  # a share of a loss is written as 1 - kept now: the last digit of a double


def test_closed_forms_to_the_digit():
    assert len(RECORDED["hours"]) == len(set_2026_1.DOUGHS)
    assert NOW["hours"] == pytest.approx(RECORDED["hours"], rel=DIGITS)


@pytest.mark.parametrize("name", RECORDED["ends"])
def test_simulations_to_the_digit(name):
    assert len(NOW["ends"][name]) == len(RECORDED["ends"][name])
    for now, recorded in zip(NOW["ends"][name], RECORDED["ends"][name], strict=True):
        assert now == pytest.approx(recorded, rel=1e-11)


@pytest.mark.parametrize("name", RECORDED["medians"])
def test_forecasts_to_a_hundredth(name):
    assert NOW["medians"][name] == pytest.approx(RECORDED["medians"][name], rel=0.01)


def test_the_default_is_another():
    other = set_2026_1.answers(lf.Kitchen())
    assert other["hours"] != pytest.approx(RECORDED["hours"], rel=0.01)
