"""A proof box with steam: water condenses on a dough that is colder than the air, and warms it sooner."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

import libferment as lf

S = lf.Surroundings
BOX_C = 38.0
DRY_W_M2_K, CONDENSING_W_M2_K = 12, 18
STILL = lf.Mix(flour_g=900, water_g=600, dough_c=24)  # without yeast: no heat of its own
SHAPES = {"ball": lf.Piece.ball, "oblong": lf.Piece.oblong, "flat": lf.Piece.flat, "tin": lf.Piece.tin}
SHAPES |= {"tub": lf.Piece.tub}


def node_in(where, piece):
    return piece.node(1500, where)


def by_transfer(w_per_m2_k, air_c=BOX_C):
    """A dry box whose air moves so much heat."""
    return S([lf.Place(air_c, air="proof_box", heat_transfer_w_per_m2_k=w_per_m2_k)])


def rested(where, hours=1.0, mix=STILL, piece=None, parts=1, **options):
    """The state after so long in a place, in one stage or in several of the same length."""
    piece = piece or lf.Piece.ball(pieces=2)
    stages = [lf.Stage(f"{part}", piece=piece, surroundings=where, until_h=hours / parts) for part in range(parts)]
    return lf.simulate(lf.Process([mix, *stages]), every_min=0, be_back_by=False, **options).state


def watts_per_k(where, dough_c, piece):
    """Heat that goes into a dough by K of difference, from how it warms in the first moments."""
    mix = STILL.replace(dough_c=dough_c)
    state = lf.advance(lf.State(), mix)
    (air_c,) = (place.temperature_c for place in where.places)
    hours = 1e-4
    warmed_k = rested(where, hours, mix, piece, tolerance=1e-10).temperature_c - dough_c
    capacity_j_k = 1000 * state.heat_capacity_kj_k / piece.pieces
    # Backwards from the end of the moment to its beginning, as a relaxation has it.
    return -math.log1p(-warmed_k / (air_c - dough_c)) * capacity_j_k / (3600 * hours)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize(
    ("warmer_k", "w_per_m2_k"),
    [(-5, DRY_W_M2_K), (0.01, DRY_W_M2_K), (10.05, CONDENSING_W_M2_K), (25, CONDENSING_W_M2_K)],
)
def test_heat_transfer_from_equal_temperatures_to_ten_degrees_warmer(shape, warmer_k, w_per_m2_k):
    piece = SHAPES[shape](pieces=3)
    dough_c = BOX_C - warmer_k
    humid, plain = (watts_per_k(where, dough_c, piece) for where in (S.humid_proof_box(BOX_C), by_transfer(w_per_m2_k)))
    assert humid == pytest.approx(plain, rel=1e-4)


def test_it_is_phased_in_smoothly():
    """By 3 x² − 2 x³ of the share of 10 K, so that it begins and ends without a kink."""
    piece = lf.Piece.ball(pieces=3)
    dry, wet = (watts_per_k(by_transfer(each), 30, piece) for each in (DRY_W_M2_K, CONDENSING_W_M2_K))
    found = []
    for warmer_k in (1, 2.5, 5, 7.5, 9):
        share = (watts_per_k(S.humid_proof_box(BOX_C), BOX_C - warmer_k, piece) - dry) / (wet - dry)
        x = warmer_k / 10
        assert share == pytest.approx(x * x * (3 - 2 * x), abs=2e-3)
        found.append(share)
    assert found == sorted(found)


@pytest.mark.parametrize("shape", SHAPES)
def test_the_node_tells_what_condensing_adds(shape):
    piece = SHAPES[shape](pieces=1)
    humid, dry, wet = (
        node_in(where, piece)
        for where in (S.humid_proof_box(BOX_C), S.proof_box(BOX_C), by_transfer(CONDENSING_W_M2_K))
    )
    assert humid.heat_loss_w_per_k == dry.heat_loss_w_per_k
    assert humid.heat_loss_w_per_k + humid.condensing_w_per_k == pytest.approx(wet.heat_loss_w_per_k, rel=1e-14)
    assert humid.condensing_w_per_k > 0 == dry.condensing_w_per_k == wet.condensing_w_per_k
    assert lf.airs()["humid_proof_box"] == lf.airs()["proof_box"] == DRY_W_M2_K


def test_what_was_measured_counts_alone():
    """A heat transfer of the place, or a heat loss of the piece: whatever condenses is in it."""
    given = S([lf.Place(BOX_C, air="humid_proof_box", heat_transfer_w_per_m2_k=15)])
    assert rested(given) == rested(by_transfer(15))
    piece = lf.Piece.ball(pieces=2, heat_loss_w_per_k=0.2)
    assert rested(S.humid_proof_box(BOX_C), piece=piece) == rested(S.proof_box(BOX_C), piece=piece)


@pytest.mark.parametrize("shape", SHAPES)
def test_a_warming_dough_against_scipys_solver(shape):
    piece = SHAPES[shape](pieces=2)

    def in_place(where):
        stage = lf.Stage("box", piece=piece, surroundings=where, until_h=3)
        return lf.simulate(lf.Process([STILL, stage]), every_min=15, tolerance=1e-9)

    timeline = in_place(S.humid_proof_box(BOX_C))
    dry_h, wet_h = (in_place(by_transfer(each)).stages[0].time_constant_h for each in (DRY_W_M2_K, CONDENSING_W_M2_K))
    assert timeline.stages[0].time_constant_h == dry_h

    def slope(_, dough_c):
        x = np.clip((BOX_C - dough_c) / 10, 0, 1)
        return (1 / dry_h + (1 / wet_h - 1 / dry_h) * x * x * (3 - 2 * x)) * (BOX_C - dough_c)

    solved = solve_ivp(slope, (0, 3), [24.0], t_eval=timeline.time_h, rtol=1e-11, atol=1e-11, method="DOP853")
    assert timeline.mean_c == pytest.approx(solved.y[0], abs=1e-6)
    dry = rested(S.proof_box(BOX_C), 0.25, piece=piece).temperature_c
    assert timeline.mean_c[1] > dry + 0.1


@pytest.mark.parametrize("options", [{}, {"tolerance": 1e-9}], ids=["as it is", "finely"])
@pytest.mark.parametrize("mix", [STILL, STILL.replace(instant_g=9, salt_g=18)], ids=["still", "with its own heat"])
@pytest.mark.parametrize("air_c", [30, 34.5, 38])
def test_a_stage_that_is_split_is_the_same(air_c, mix, options):
    """What condensing adds depends on the moment alone."""
    for parts in (2, 7):
        whole, split = (rested(S.humid_proof_box(air_c), 1.4, mix, parts=n, **options) for n in (1, parts))
        assert split.temperature_c == pytest.approx(whole.temperature_c, rel=1e-9)
        assert split.made_mmol == pytest.approx(whole.made_mmol, rel=1e-9)
        assert split.volume_ratio() == pytest.approx(whole.volume_ratio(), rel=1e-9)


def test_a_stage_that_is_stopped_goes_on_as_before():
    mix = STILL.replace(instant_g=9, salt_g=18)
    proof = lf.Stage("proof", piece=lf.Piece.ball(pieces=9), surroundings=S.humid_proof_box(36), until_h=1)
    process = lf.Process([mix, proof])
    middle = lf.simulate(process, stop_h=0.37, tolerance=1e-9).state
    whole, gone_on = (lf.simulate(process, state=state, tolerance=1e-9).state for state in (None, middle))
    assert gone_on.temperature_c == pytest.approx(whole.temperature_c, rel=1e-9)
    assert gone_on.made_mmol == pytest.approx(whole.made_mmol, rel=1e-9)


def test_a_proof_in_steam_is_ready_sooner_than_in_a_dry_box():
    def hours(where):
        mix = STILL.replace(instant_g=9, salt_g=18)
        proof = lf.Stage("proof", piece=lf.Piece.tin(pieces=2), surroundings=where, until_rise_percent=80)
        return lf.simulate(lf.Process([mix, proof])).stages[0].hours

    wet, humid, dry = (
        hours(where) for where in (by_transfer(CONDENSING_W_M2_K), S.humid_proof_box(BOX_C), S.proof_box(BOX_C))
    )
    assert wet < humid < dry
    # In a colder box nothing condenses.
    assert hours(S.humid_proof_box(20)) == pytest.approx(hours(S.proof_box(20)), rel=1e-9)


def test_a_day_has_steam_in_a_proof_box():
    def place(**written):
        day = {"stage": [{"name": "proof", "piece": "ball", "until_h": 1, **written}]}
        day |= {"dough": {"flour": "1kg", "measured": "24C", "yeast_percent": 1}, "today": {"room": "20C"}}
        return lf.process_of(lf.Day.from_dict(day)).steps[1].surroundings

    assert place(proof_box="35C", humid=True) == S.humid_proof_box(35)
    assert place(proof_box="35C", humid=False) == place(proof_box="35C") == S.proof_box(35)
    log = {"time_h": [0, 3], "temperature_c": [30, 36]}
    assert [each.air for each in place(proof_box_log=log, humid=True).places] == ["humid_proof_box"]
    for wrong in ({"room": "35C"}, {"refrigerator": "4C"}, {"dough": "24C"}):
        with pytest.raises(lf.InvalidInput, match="steam is reckoned with in a proof box alone") as refused:
            place(**wrong, humid=True)
        assert refused.value.path == "stage[0].humid"


def test_refusals():
    for air_c in (-1, 61, math.nan):
        with pytest.raises(lf.InvalidInput, match="proof box") as refused:
            S.humid_proof_box(air_c)
        assert refused.value.path == "air_c"
    with pytest.raises(lf.InvalidInput, match=r'air "humid_box" is unknown; .*humid_proof_box'):
        lf.Place(30, air="humid_box")
