"""A kitchen learned from what was seen of its bakes."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Any

from libferment import _core
from libferment._core import Calibration, Day, Kitchen, LawFit, Log
from libferment._errors import InvalidInput
from libferment.logbook import Logbook, read_logbook

Bakes = Iterable[Day | Log] | Logbook | str | Path


def _bakes(days: Bakes) -> list[Day] | list[Log]:
    """Days, or logs where some are: a day with them becomes one."""
    if isinstance(days, (str, Path)):
        days = read_logbook(days)
    if isinstance(days, (Day, Log)):
        days = [days]
    bakes = list(days)
    for place, bake in enumerate(bakes):
        if not isinstance(bake, (Day, Log)):
            raise InvalidInput(
                f"a {type(bake).__name__} is no bake", path=f"days[{place}]", advice="give a Day, a Log or a logbook"
            )
    if all(isinstance(bake, Day) for bake in bakes):
        return [bake for bake in bakes if isinstance(bake, Day)]
    return _logs(bakes)


def _logs(bakes: Iterable[Day | Log]) -> list[Log]:
    return [bake if isinstance(bake, Log) else _core.log_of(bake) for bake in bakes]


def calibration(days: Bakes, prior: Kitchen | None = None, *, threads: int = 0, **options: Any) -> Calibration:
    """Learn a kitchen from bakes: the Kitchen, what each look says beside it, and how the search ended.

    Args:
        days: of Day, of Log, or both; a Logbook, or the path of one.
        prior: the kitchen before, with its covariance; the frozen set 2026-2 if not given.
        threads: that share the logs; 0: as many as the machine has.
        **options: bake_effect: each bake differs by bake_sd and model_sd, in ln gassing rate, integrated out; True.
            is_normal: noise of ln time is normal instead of Student's t with 4 degrees of freedom; False. flat_prior:
            the kitchen's uncertainty does not count, what has one is free; False. learn_spreads: from ten logs on
            bake_sd and log_time_scale are learned, too; True. importance: draws that correct the Laplace
            approximation, 0 for none.
            heat_of_fermentation; True.

    Raises InvalidInput naming the day and the look; NotConverged; NoSolution for a rise that no dough can have. Source:
    maximum a posteriori with Laplace covariance; Lange et al. 1989; adaptive quadrature of Liu & Pierce 1994;
    importance weights of Vehtari et al. 2024.
    """
    told: Calibration = _core._calibration(_bakes(days), prior, threads=threads, **options)
    return told


def calibrate(days: Bakes, prior: Kitchen | None = None, *, threads: int = 0, **options: Any) -> Kitchen:
    """Learn a kitchen from bakes: its parameters, covariance, spreads and history.

    ``kitchen.learned`` says how much was learned of each parameter, ``kitchen.notices`` which bake surprises.

    Args: as calibration, whose options are all of them. Raises InvalidInput, NotConverged, NoSolution. Source: as
    calibration.
    """
    return calibration(days, prior, threads=threads, **options).kitchen


def compare_laws(days: Bakes, prior: Kitchen | None = None, *, threads: int = 0, **options: Any) -> list[LawFit]:
    """Lay the temperature laws beside each other, each with its own fit to the bakes, the best first.

    A difference below twice its sd decides nothing; numbers are −2 ln of the likelihood, with 2 for each parameter.

    Args: as calibration. Raises InvalidInput, also for fewer than three bakes; NotConverged; NoSolution. Source:
    information criterion with effective parameters, Spiegelhalter et al. 2002; its sd, Vehtari et al. 2017.
    """
    fits: list[LawFit] = _core._compare_laws(_logs(_bakes(days)), prior, threads=threads, **options)
    return fits
