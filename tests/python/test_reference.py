"""Values from outside the project, row by row from tests/reference: each with its band or tolerance and its source."""

import pytest
from outside_checks import ANSWERS, ONLY_IN_CPP, SETS, read_checks

import libferment as lf

CHECKS = read_checks()
ANSWERED = [check for check in CHECKS if check.id not in ONLY_IN_CPP]


def test_the_tables_are_those_that_are_meant():
    ids = [check.id for check in CHECKS]
    assert len(ids) == 31 + 30 + 14 + 21 + 6 + 12
    assert sorted(ids) == sorted([*ANSWERS, *ONLY_IN_CPP])
    assert all(check.row["source"] and check.row["status"] for check in CHECKS)


def test_the_default_set_is_the_newest():
    assert lf.Kitchen() == lf.Kitchen.named(SETS[-1])


@pytest.mark.parametrize("check", ANSWERED, ids=lambda check: check.id)
def test_row(check):
    """A row that says why it is outside must be outside: a reason that has become stale fails."""
    values = check.values(lf.Kitchen.named(check.sets[-1]))
    assert values
    if check.misses:
        assert not check.is_met(values), f"no longer outside its band: clear the row's column, {check.misses}"
    else:
        assert check.is_met(values), f"{values}, off by {check.off(values):.2f}"
