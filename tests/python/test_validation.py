"""The pages of docs are what the library says today, and what their prose claims is so."""

import re
import sys
from pathlib import Path

import pytest
from outside_checks import ONLY_IN_CPP, Check, read_checks

DOCS = Path(__file__).resolve().parents[2] / "docs"
sys.path.insert(0, str(DOCS))

import measuring  # noqa: E402  after the path
import proof_and_room  # noqa: E402
import validation  # noqa: E402
from write_pages import PAGES  # noqa: E402


@pytest.mark.parametrize("name", PAGES)
def test_a_page_is_current(name):
    committed = (DOCS / name).read_text(encoding="utf-8")
    assert PAGES[name].page() == committed, "run ./dev validate and commit"
    assert f"]({PAGES[name].PICTURE})" in committed
    picture = (DOCS / PAGES[name].PICTURE).read_text(encoding="utf-8")
    assert "</svg>" in picture
    assert len(picture) < 200_000
    assert f"]({name})" in (DOCS / "README.md").read_text(encoding="utf-8")


def test_every_row_stands_on_the_page_once():
    rows = re.findall(r"^\| ([A-Z]\d+[\w.-]*) \|", validation.page(), flags=re.MULTILINE)
    assert sorted(rows) == sorted(check.id for check in read_checks())
    assert all(validation.subject_of(check) for check in read_checks())


def test_what_cannot_be_asked_is_said():
    for row_id in ONLY_IN_CPP:
        assert re.search(rf"^\| {row_id} \|.* checked by the C\+\+ tests alone \|", validation.page(), re.MULTILINE)


def test_every_row_outside_has_its_reason_on_the_page():
    outside = [check for check in validation.judged(validation.NEW) if not validation.is_met(check, validation.NEW)]
    assert outside
    for check in outside:
        assert f"- {check.id}: {check.misses}." in validation.page()


BAND = {"id": "D1", "low": "2", "high": "8", "inputs": ""}
NUMBERS = {"id": "W7", "expected": "2/30 kg", "tolerance": "0.5/2", "inputs": ""}
EXACT = {"id": "W1", "expected": "67", "tolerance": "0", "inputs": ""}


@pytest.mark.parametrize(
    ("row", "values", "off", "inside"),
    [
        (BAND, [4], 0, True),
        (BAND, [2], -1, True),
        (BAND, [8], 1, True),
        (BAND, [4, 16], 2, False),
        (NUMBERS, [2.25, 30], 0.5, True),
        (NUMBERS, [2, 27], -1.5, False),
        (EXACT, [67 * (1 + 2**-51)], 0, True),
        (EXACT, [67.001], float("inf"), False),
    ],
)
def test_place_in_a_band(row, values, off, inside):
    assert Check("any", row).off(values) == pytest.approx(off, abs=1e-12)
    assert Check("any", row).is_met(values) is inside


def test_a_row_for_one_set_judges_that_set_alone():
    judged = {check.id: check.sets for check in read_checks() if len(check.sets) == 1}
    expected = {
        f"F{number}-{place}": (name,) for number, name in ((13, "2026-1"), (14, "2026-2")) for place in range(1, 7)
    }
    assert judged == expected


def test_what_the_prose_says_of_measuring():
    largest = {its.name: its.largest for its in (*measuring.parameters(), *measuring.slips())}
    assert max(largest, key=largest.get) == "gassing rate"
    measured = ["dough after mixing", "yeast", "larder of the bulk", "proof box", "salt"]
    assert measured == sorted(measured, key=largest.get, reverse=True)
    assert largest["salt"] < 5
    assert largest["water"] < 5


def test_what_the_prose_says_of_the_room():
    few, middle, _ = proof_and_room.DOSES
    minutes, by_rise = proof_and_room.minutes, proof_and_room.BY_RISE
    by_clock, too_long = proof_and_room.BY_CLOCK, proof_and_room.TOO_LONG
    proofs = [minutes(few, room_c, by_rise)[2] for room_c in proof_and_room.ROOMS]
    assert proofs == sorted(proofs, reverse=True)
    for room_c in (18, 30):  # the room counts by far more than how the bulk ended
        assert minutes(middle, room_c, by_clock)[2] == pytest.approx(minutes(middle, room_c, by_rise)[2], rel=0.15)
    assert minutes(middle, 18, by_rise)[2] > 2 * minutes(middle, 30, by_rise)[2]
    assert minutes(few, 30, too_long)[2] == pytest.approx(minutes(few, 27, too_long)[2], rel=0.02)
