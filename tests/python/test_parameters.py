"""The frozen set 2026-1: the file in data/parameters and the values built in are the same."""

import sys
from pathlib import Path

import libferment as lf

if sys.version_info >= (3, 11):
    import tomllib
else:
    import tomli as tomllib

SET = Path(__file__).parents[2] / "data" / "parameters" / "2026-1.toml"


def test_the_file_and_the_library_hold_the_same_set() -> None:
    written = tomllib.loads(SET.read_text(encoding="utf-8"))
    kitchen = lf.Kitchen.named(written.pop("name"))
    assert kitchen == lf.Kitchen()
    assert kitchen.to_dict()["law"] == written.pop("law")
    assert list(written) == [parameter.name for parameter in lf.parameters()]
    for parameter in lf.parameters():
        row = written[parameter.name]
        assert row["value"] == getattr(kitchen, parameter.name) == parameter.initial
        assert (row["unit"], row["low"], row["high"]) == (parameter.unit, parameter.low, parameter.high)
        assert row["scale"] == parameter.scale
        assert row.get("prior_sd", 0.0) == parameter.prior_sd
        assert (row["meaning"], row["source"]) == (parameter.meaning, parameter.source)


def test_every_parameter_says_where_it_comes_from() -> None:
    for parameter in lf.parameters():
        assert parameter.source, parameter.name
        assert parameter.meaning, parameter.name


def test_the_prior_is_the_covariance_of_the_default_kitchen() -> None:
    learned = [parameter for parameter in lf.parameters() if parameter.scale != "fixed"]
    covariance = lf.Kitchen().covariance
    assert covariance.shape == (len(learned), len(learned))
    for place, parameter in enumerate(learned):
        assert covariance[place, place] == parameter.prior_sd**2
        assert sum(abs(covariance[place])) == covariance[place, place]
