"""The frozen sets: the files in data/parameters and the values built in are the same."""

import math
import sys
from pathlib import Path

import pytest

import libferment as lf

if sys.version_info >= (3, 11):
    import tomllib
else:
    import tomli as tomllib

SETS = {path.stem: path for path in (Path(__file__).parents[2] / "data" / "parameters").glob("*.toml")}
DEFAULT = "2026-2"
LEARNED = [parameter for parameter in lf.parameters() if parameter.scale != "fixed"]


def test_every_set_has_its_file() -> None:
    assert sorted(SETS) == ["2026-1", "2026-2"]
    with pytest.raises(lf.InvalidInput) as refused:
        lf.Kitchen.named("no such set")
    assert f"known: {', '.join(f'{chr(34)}{name}{chr(34)}' for name in sorted(SETS))}" in str(refused.value)


@pytest.mark.parametrize("name", SETS)
def test_the_file_and_the_library_hold_the_same_set(name: str) -> None:
    written = tomllib.loads(SETS[name].read_text(encoding="utf-8"))
    assert written.pop("name") == name
    kitchen = lf.Kitchen.named(name)
    assert kitchen.name == name
    assert kitchen.to_dict()["law"] == written.pop("law")
    assert list(written) == [parameter.name for parameter in lf.parameters()]
    sds = dict(zip([parameter.name for parameter in LEARNED], kitchen.covariance.diagonal() ** 0.5, strict=True))
    for parameter in lf.parameters():
        row = written[parameter.name]
        assert row["value"] == getattr(kitchen, parameter.name)
        assert (row["unit"], row["low"], row["high"]) == (parameter.unit, parameter.low, parameter.high)
        assert row["low"] <= row["value"] <= row["high"]
        assert row["scale"] == parameter.scale
        assert row.get("prior_sd", 0.0) == pytest.approx(sds.get(parameter.name, 0.0), rel=1e-15)
        assert (row["meaning"], row["source"]) == (parameter.meaning, parameter.source)


def test_the_default_is_the_newest_set() -> None:
    assert lf.Kitchen() == lf.Kitchen.named(DEFAULT)
    assert max(SETS) == DEFAULT
    for parameter in lf.parameters():
        assert parameter.initial == getattr(lf.Kitchen(), parameter.name)


def test_every_parameter_says_where_it_comes_from() -> None:
    for parameter in lf.parameters():
        assert parameter.source, parameter.name
        assert parameter.meaning, parameter.name


@pytest.mark.parametrize("name", SETS)
def test_the_prior_is_a_diagonal(name: str) -> None:
    covariance = lf.Kitchen.named(name).covariance
    assert covariance.shape == (len(LEARNED), len(LEARNED))
    for place in range(len(LEARNED)):
        assert sum(abs(covariance[place])) == covariance[place, place]


def test_the_prior_is_the_covariance_of_the_default_kitchen() -> None:
    for variance, parameter in zip(lf.Kitchen().covariance.diagonal(), LEARNED, strict=True):
        assert variance == parameter.prior_sd**2 > 0


def test_the_older_set_is_unsure_of_what_it_knew_alone() -> None:
    """What became uncertain with the newer set has no spread in the older one, its model neither."""
    older = lf.Kitchen.named("2026-1")
    sds = dict(zip([p.name for p in LEARNED], older.covariance.diagonal() ** 0.5, strict=True))
    assert sorted(name for name, sd in sds.items() if sd == 0) == [
        "high_sugar_factor",
        *(f"kept_by_{handling}" for handling in ("divide", "fold", "machine_mould", "mould", "round")),
        "piece_heat_loss_factor",
        "water_exponent",
    ]
    assert sds["aw_min"] == pytest.approx(0.012, rel=1e-15)
    assert (older.bake_sd, older.model_sd) == (0.12, 0)
    draws = lf.draws_of(older, draws=64)
    assert {getattr(draw, name) for draw in draws for name, sd in sds.items() if sd == 0 and "kept" in name} == {
        getattr(older, f"kept_by_{handling}") for handling in ("fold", "divide", "round", "mould")
    }


# ---- the coordinates in which parameters are learned -----------------------------------------------------------------

ROWS = {parameter.name: parameter for parameter in lf.parameters()}
TO_COORDINATE = {"linear": lambda x: x, "logarithmic": math.log, "logit": lambda x: math.log(x / (1 - x))}


def test_every_scale_has_parameters() -> None:
    assert {parameter.scale for parameter in lf.parameters()} == {"fixed", *TO_COORDINATE}


@pytest.mark.parametrize("name", ROWS)
@pytest.mark.parametrize("by", [-0.02, 0.0, 0.013])
def test_a_value_is_moved_in_its_coordinate(name: str, by: float) -> None:
    row = ROWS[name]
    by *= row.prior_sd  # so little that no bound is near
    moved = lf.moved(row, row.initial, by)
    if row.scale == "fixed":
        assert moved == row.initial
        return
    coordinate = TO_COORDINATE[row.scale]
    assert coordinate(moved) - coordinate(row.initial) == pytest.approx(by, rel=1e-9, abs=1e-14)
    assert lf.moved(row, moved, -by) == pytest.approx(row.initial, rel=1e-14)


@pytest.mark.parametrize("name", [parameter.name for parameter in LEARNED])
def test_a_moved_value_stays_inside_the_table(name: str) -> None:
    row = ROWS[name]
    for by in (1e3, 1e300):
        assert lf.moved(row, row.initial, by) == row.high
        assert lf.moved(row, row.initial, -by) == row.low
    assert lf.moved(row, row.low, -1.0) == row.low
    assert lf.moved(row, row.high, 1.0) == row.high


@pytest.mark.parametrize("name", ROWS)
def test_a_draw_is_a_moved_value(name: str) -> None:
    """A fixed parameter never moves, whatever is asked of it."""
    row = ROWS[name]
    for draw in lf.draws_of(draws=16):
        value = getattr(draw, name)
        assert (value == row.initial) if row.scale == "fixed" else (row.low <= value <= row.high)


def test_what_is_no_number_is_not_moved() -> None:
    row = ROWS["kept_by_fold"]
    for value, by in ((math.nan, 0.1), (0.5, math.nan), (math.inf, 0.1)):
        with pytest.raises(lf.InvalidInput):
            lf.moved(row, value, by)
    with pytest.raises(lf.InvalidInput, match="value: a number is wanted"):
        lf.moved(row, "0.5", 0.1)
    with pytest.raises(lf.InvalidInput, match="a Parameter is wanted"):
        lf.moved("kept_by_fold", 0.5, 0.1)
