"""What the parameter set 2026-1 answered before another became the default: 40 doughs, 10 processes.

Run as a program it writes what the library says now; the committed file was written before the set changed.
"""

import itertools
import json
import sys
from pathlib import Path

import libferment as lf

RECORDED = Path(__file__).with_suffix(".json")
DOUGHS = list(
    itertools.product((5, 18, 24, 31), (0.1, 0.7), ((0, 55, 0), (2, 65, 0), (2.2, 78, 6), (1.5, 52, 15), (2, 65, 25)))
)


def processes():
    """Processes whose every number is given: what is new since has no say in them."""
    mix = lf.Mix(flour_g=1000, water_g=680, salt_g=20, instant_g=6, dough_c=24.5)
    sweet = lf.Mix(flour_g=1000, water_g=550, salt_g=18, sugar_g=120, compressed_g=45, dough_c=27)
    places = {
        "room": lf.Surroundings.room(20),
        "refrigerator": lf.Surroundings.refrigerator(4),
        "box": lf.Surroundings.proof_box(30),
        "dough": lf.Surroundings.dough(24),
    }
    for name, place in places.items():
        bulk = lf.Stage("bulk", surroundings=place, until_h=2.5, folds_h=[0.75, 1.5], handling=["divide", "round"])
        rest = lf.Stage(
            "bench rest", piece=lf.Piece.ball(500), surroundings=places["room"], until_h=0.3, handling=["mould"]
        )
        proof = lf.Stage(
            "proof", piece=lf.Piece.oblong(500), surroundings=places["room"], until_rise_percent=60, final_proof=True
        )
        yield name, lf.Process([mix, bulk, rest, proof])
        yield (
            f"{name}, by rise",
            lf.Process(
                [sweet, bulk.replace(until_h=None, until_rise_percent=60, surroundings=places["room"]), rest, proof]
            ),
        )
    poolish = lf.Mix(flour_g=300, water_g=300, instant_g=0.3, dough_c=22)
    ripening = lf.Stage("poolish", surroundings=places["room"], until_h=12)
    dough = lf.Mix(flour_g=700, water_g=380, salt_g=20, instant_g=2, dough_c=25)
    yield "poolish", lf.Process([poolish, ripening, dough, bulk, rest, proof])
    night = lf.Surroundings.sequence([(0, places["room"]), (1.5, places["refrigerator"]), (13, places["room"])])
    yield "night", lf.Process([mix, lf.Stage("bulk", surroundings=night, until_rise_percent=110, handling=["fold"])])


def answers(kitchen):
    """Hours of closed forms; ends, temperatures and rises of simulations; medians of forecasts."""
    told = {"hours": [], "ends": {}, "medians": {}}
    for dough_c, yeast_percent, (salt, water, sugar) in DOUGHS:
        formula = {"salt_percent": salt, "water_percent": water, "sugar_percent": sugar}
        hours = lf.hours_to_rise(80, dough_c=dough_c, yeast_percent=yeast_percent, kitchen=kitchen, **formula)
        told["hours"].append(hours)
    for name, process in processes():
        timeline = lf.simulate(process, kitchen=kitchen)
        told["ends"][name] = [[stage.end_h, stage.end_c, stage.rise_percent] for stage in timeline.stages]
        told["medians"][name] = [stage.ready_h for stage in lf.forecast(process, kitchen=kitchen)]
    return told


if __name__ == "__main__":
    kitchen = lf.Kitchen.named("2026-1")
    RECORDED.write_text(json.dumps(answers(kitchen), indent=1) + "\n", encoding="utf-8")
    sys.stdout.write(f"{RECORDED}\n")
