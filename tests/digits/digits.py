"""The library's digits before and after a rebuilding: answers of a thousand random processes, water plans and rises.

``python tests/digits/digits.py record FILE`` with the old library installed, ``compare FILE`` with the new one: they
agree to 1e-12. The record stays outside the repository; names that change are changed here in the same commit.
"""

import argparse
import json
import math
import random
import sys
from collections.abc import Iterator
from pathlib import Path

import libferment as lf

R = lf.Surroundings
PROCESSES, WATER_PLANS, RISES, FORECASTS, QUESTIONS = 1000, 1000, 1000, 1000, 150
TOLERANCE = 1e-12
YEASTS = ("instant", "active_dry", "active_dry_unwetted", "compressed")
LAWS = (lf.Cardinal(), lf.SquareRoot(), lf.Arrhenius(60), lf.ConstantQ10(2.5))


def a_formula(rng: random.Random, flour_g: float) -> dict[str, float]:
    """Weights of a mix with one or two kinds of yeast, some of it enriched."""
    grams = {
        "water_g": flour_g * rng.uniform(0.55, 0.85),
        "salt_g": flour_g * rng.uniform(0, 0.025),
        rng.choice(("instant_g", "active_dry_g", "compressed_g")): flour_g * rng.uniform(0.001, 0.02),
    }
    if rng.random() < 0.3:
        grams |= {"sugar_g": flour_g * rng.uniform(0.01, 0.15), "butter_g": flour_g * rng.uniform(0.01, 0.1)}
    if rng.random() < 0.2:
        grams |= {"milk_g": flour_g * rng.uniform(0.05, 0.2), "egg_g": flour_g * rng.uniform(0.02, 0.1)}
    if rng.random() < 0.2:
        grams |= {"gluten_g": flour_g * rng.uniform(0.01, 0.04), "oil_g": flour_g * 0.03}
    return grams


def surroundings(rng: random.Random, kind: int) -> lf.Surroundings:
    room_c = rng.uniform(15, 28)
    if kind == 0:
        return R.room(room_c)
    if kind == 1:
        return R.daily_swing(room_c, rng.uniform(1, 4), rng.uniform(10, 20))
    if kind == 2:
        hours = [0.0]
        while hours[-1] < 24:
            hours.append(hours[-1] + rng.uniform(0.2, 2))
        return R.measured(hours, [room_c + rng.uniform(-3, 3) for _ in hours])
    if kind == 3:
        cold_h = rng.uniform(0.5, 4)
        cold = R.refrigerator(rng.uniform(3, 7), fan=rng.random() < 0.5)
        return R.sequence([(-100, R.room(room_c)), (cold_h, cold), (cold_h + rng.uniform(5, 14), R.room(room_c))])
    if kind == 4:
        return R.proof_box(rng.uniform(24, 34), humidity_percent=75)
    return R.dough(rng.uniform(18, 30))


def a_piece(rng: random.Random, pieces: int) -> lf.Piece:
    cover = rng.choice(("film", "cloth", None))
    return rng.choice(
        (
            lf.Piece.ball(pieces=pieces, cover=cover, worktop=rng.choice(("wood", "stone", "air"))),
            lf.Piece.oblong(pieces=pieces, cover=cover),
            lf.Piece.tub(pieces=pieces, material=rng.choice(("steel", "plastic", "glass")), vessel_g=400),
        )
    )


def a_process(rng: random.Random) -> lf.Process:
    """A day of one or two mixes, a bulk with folds, a final proof."""
    flour_g = rng.uniform(400, 3000)
    mix = lf.Mix(
        room_c=rng.uniform(17, 26),
        flour_g=flour_g,
        **({"dough_c": rng.uniform(20, 28)} if rng.random() < 0.5 else {"water_c": rng.uniform(15, 35)}),
        **a_formula(rng, flour_g),
    )
    steps: list[lf.Mix | lf.Stage] = []
    if rng.random() < 0.25:
        poolish = lf.Mix(room_c=20, flour_g=150, water_g=150, instant_g=0.3, dough_c=22)
        steps += [poolish, lf.Stage("poolish", surroundings=R.room(rng.uniform(17, 24)), until_h=rng.uniform(4, 12))]
    bulk_h = rng.uniform(0.5, 3)
    bulk = lf.Stage(
        "bulk",
        piece=lf.Piece.tub() if rng.random() < 0.7 else lf.Piece.ball(),
        surroundings=surroundings(rng, rng.randrange(6)),
        folds_h=sorted(rng.uniform(0.1, 0.45) for _ in range(rng.randrange(3))),
        handling=rng.choice((["divide"], ["divide", "round"], ["mould"], [])),
        **({"until_h": bulk_h} if rng.random() < 0.5 else {"until_rise_percent": rng.uniform(20, 90)}),
    )
    proof = lf.Stage(
        "proof",
        piece=a_piece(rng, rng.randrange(1, 13)),
        surroundings=surroundings(rng, rng.randrange(6)),
        standing=rng.choice(("free", "tin")),
        final_proof=True,
        **({"until_h": rng.uniform(0.5, 2)} if rng.random() < 0.2 else {"until_rise_percent": rng.uniform(20, 90)}),
    )
    return lf.Process([*steps, mix, bulk, proof], start_h=rng.choice((0.0, 7.5)), altitude_m=rng.choice((0, 0, 1500)))


def numbers(value: object) -> list[float | None]:
    """Numbers of a list that may hold None."""
    return [None if each is None else float(each) for each in value]  # type: ignore[attr-defined]


def of_timeline(process: lf.Process) -> list[float | None]:
    timeline = lf.simulate(process, every_min=30)
    state = timeline.state
    columns = [timeline.time_h, timeline.mean_c, timeline.surface_c, timeline.equivalent_h]
    columns += [timeline.co2_mmol, timeline.rise_percent]
    stages = [
        [s.start_h, s.end_h, s.rise_percent, s.be_back_by_h, s.time_constant_h, s.heat_made_j, s.heat_lost_j]
        for s in timeline.stages
    ]
    last = [state.time_h, state.temperature_c, state.equivalent_h, state.made_mmol, state.heat_capacity_kj_k]
    return [each for column in columns + stages + [last] for each in numbers(column)]


def of_core(process: lf.Process) -> list[float | None]:
    return numbers(lf.simulate(process, every_min=30).core_c)


def of_forecast(process: lf.Process) -> list[float | None]:
    told = lf.forecast(process, draws=64)
    return [
        each
        for s in told.stages
        for each in numbers(
            (s.ready_h, *s.window_h, s.look_first_h, s.be_back_by_h, s.over_proofed_h, s.never_ready, s.rise_percent)
        )
    ]


def of_question(process: lf.Process, kind: int) -> list[float | None]:
    hour = lf.forecast(process, draws=64)["proof"].ready_h
    ask = (lf.yeast_for, lf.room_for, lf.water_for)[kind % 3]
    choice = ask(process, stage="proof", ready_h=hour, draws=64)
    return numbers((choice.value, choice.ready_h, *choice.all))


def of_water(rng: random.Random) -> list[float | None]:
    flour_g = rng.uniform(300, 5000)
    mix = lf.Mix(
        room_c=rng.uniform(15, 30),
        flour_c=rng.uniform(10, 28),
        tap_c=rng.uniform(5, 22),
        flour_g=flour_g,
        bowl=lf.Bowl(rng.choice(("steel", "ceramic", "glass")), rng.uniform(500, 3000)),
        mixing=lf.ByMethod(rng.choice(("hand", "stand_mixer", "spiral")), rng.uniform(3, 14)),
        rest_h=rng.choice((0, 0.5)),
        waters=[lf.Water(0.05 * flour_g, 35, wets_yeast=True, stands_h=0.2)] if rng.random() < 0.4 else [],
        **a_formula(rng, flour_g),
    )
    plan = lf.water_by_heat_balance(mix, rng.uniform(21, 28))
    return numbers((plan.water_c, plan.ice_g, plan.pour_g, plan.pour_c, plan.low_c, plan.high_c, plan.factor_rule_c))


def of_rise(rng: random.Random) -> list[float | None]:
    dough = {
        "dough_c": rng.uniform(4, 36),
        "yeast_percent": rng.uniform(0.05, 2.5),
        "yeast": rng.choice(YEASTS),
        "salt_percent": rng.uniform(0, 3),
        "water_percent": rng.uniform(50, 90),
        "sugar_percent": rng.uniform(0, 20),
        "altitude_m": rng.uniform(-100, 3000),
    }
    law = rng.choice(LAWS)
    kitchen = lf.Kitchen().with_law(law)
    rise_percent = rng.uniform(5, 150)
    time_h = lf.hours_to_rise(rise_percent, kitchen=kitchen, **dough)
    there = {"surroundings_c": rng.uniform(3, 30), "time_constant_h": rng.uniform(0.2, 5)}
    start_c = rng.uniform(5, 32)
    law = rng.choice(LAWS)
    gone_h = lf.drift_equivalent_h(time_h, start_c=start_c, kitchen=kitchen, **there)
    return numbers(
        (
            time_h,
            lf.rise_after(0.7 * time_h, kitchen=kitchen, **dough),
            lf.same_rise(time_h, from_c=dough["dough_c"], to_c=20, kitchen=kitchen),
            gone_h,
            law.factor(dough["dough_c"]),
            law.local_q10(dough["dough_c"]),
        )
    )


def answers() -> Iterator[tuple[str, list[float | None] | str]]:
    """Name and numbers of every answer, or the kind of its refusal."""

    def attempt(name: str, call, *arguments) -> tuple[str, list[float | None] | str]:
        try:
            return name, call(*arguments)
        except lf.Error as error:
            return name, type(error).__name__

    for i in range(RISES):
        yield attempt(f"rise {i}", of_rise, random.Random(f"rise {i}"))
    for i in range(WATER_PLANS):
        yield attempt(f"water {i}", of_water, random.Random(f"water {i}"))
    for i in range(PROCESSES):
        process = a_process(random.Random(f"process {i}"))
        yield attempt(f"process {i}", of_timeline, process)
        yield attempt(f"core {i}", of_core, process)
        if i < FORECASTS:
            yield attempt(f"forecast {i}", of_forecast, process)
        if i < QUESTIONS:
            yield attempt(f"question {i}", of_question, process, i)


def differ(old: float | None, new: float | None) -> bool:
    if old is None or new is None:
        return old is not new
    return not (old == new or math.isclose(old, new, rel_tol=TOLERANCE, abs_tol=TOLERANCE))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("command", choices=("record", "compare"))
    parser.add_argument("file", type=Path)
    arguments = parser.parse_args()
    if arguments.command == "record":
        arguments.file.write_text(json.dumps(dict(answers())))
        return
    old = json.loads(arguments.file.read_text())
    count, changed = 0, []
    for name, new in answers():
        was = old[name]
        count += 1
        if isinstance(was, str) or isinstance(new, str) or len(was) != len(new):
            same = was == new
        else:
            same = not any(differ(a, b) for a, b in zip(was, new, strict=True))
        if not same:
            changed.append(name)
            print(f"{name}\n  was {was}\n  is  {new}")
    print(f"{count} answers, {len(changed)} changed")
    sys.exit(bool(changed))


if __name__ == "__main__":
    main()
