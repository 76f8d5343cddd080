"""docs/proof_and_room.md: the final proof in rooms of 18 to 30 °C, after a bulk by rise and after one by the clock."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from matplotlib.figure import Figure
from writing import BLUE, DARK, ORANGE, clock, save, table, text_of, wrapped

import libferment as lf

PICTURE = "proof_and_room.svg"
DOSES = {0.3: (DARK, "-"), 0.6: (BLUE, "--"), 1.2: (ORANGE, "-.")}  # % instant, with colour and line
USUAL_C = 24.0  # the room whose bulk the clock is set by
ROOMS = [18 + 0.5 * step for step in range(25)]
SHOWN = (18, 21, 24, 27, 30)
BULK_PERCENT, PROOF_PERCENT = 90, 75
PIECES = 2


@dataclass(frozen=True)
class Bulk:
    """How a bulk ends: by its rise, or by the clock, so many times as long as the rise takes in the usual room."""

    name: str
    times: float | None

    def end(self, dose: float) -> dict[str, float]:
        """As a stage takes it."""
        if self.times is None:
            return {"until_rise_percent": BULK_PERCENT}
        return {"until_h": self.times * minutes(dose, USUAL_C, BY_RISE)[0] / 60}


BY_RISE = Bulk(f"bulk to +{BULK_PERCENT} %", None)
BY_CLOCK = Bulk("bulk by the clock", 1)
TOO_LONG = Bulk("twice as long by the clock", 2)
BULKS = (BY_RISE, BY_CLOCK, TOO_LONG)


@cache
def minutes(dose: float, room_c: float, bulk: Bulk) -> tuple[float, float, float]:
    """Minutes of the bulk, its rise in percent, minutes of the final proof; all in one room."""
    room = lf.Surroundings.room(room_c)
    mix = lf.Mix(flour_g=1000, water_g=680, salt_g=20, instant_g=10 * dose, dough_c=room_c)
    ball, loaf = lf.Piece.ball(pieces=PIECES), lf.Piece.oblong(pieces=PIECES)
    steps = [
        mix,
        lf.Stage("bulk", surroundings=room, handling=["divide", "round"], **bulk.end(dose)),
        lf.Stage("bench rest", surroundings=room, piece=ball, until_h=0.25, handling=["mould"]),
        lf.Stage("final proof", surroundings=room, piece=loaf, until_rise_percent=PROOF_PERCENT, standing="free"),
    ]
    first, *_, last = lf.simulate(lf.Process(steps), every_min=0, be_back_by=False).stages
    return 60 * first.hours, first.rise_percent, 60 * last.hours


def proof(dose: float, room_c: float, bulk: Bulk) -> str:
    """Its minutes, in words."""
    return f"{text_of(minutes(dose, room_c, bulk)[2], 0)} min"


def page() -> str:
    """The page."""
    rows = []
    for bulk in BULKS:
        for dose in DOSES:
            cells = [bulk.name, f"{dose} %"]
            for room_c in SHOWN:
                bulk_min, rise, proof_min = minutes(dose, room_c, bulk)
                cells.append(f"{clock(bulk_min / 60)}, +{text_of(rise, 0)} %; **{text_of(proof_min, 0)}**")
            rows.append(cells)
    few, middle, _ = DOSES
    cold, warm = SHOWN[0], SHOWN[-1]
    return wrapped(f"""\
# The final proof and the room

A dough of 1 kg of flour, 68 % water and 2 % salt, as warm as its room when it is mixed, ferments in a tub, is divided
in two, rounded, rests for 15 min, is moulded, and proofs free standing to +{PROOF_PERCENT} %, all in one room; by the
default parameters. Once the bulk ends when it has risen by {BULK_PERCENT} %; once by the clock, after the hours that
this takes at {USUAL_C:.0f} °C, whatever the room; once after twice these hours. Written by `./dev validate`.

A warm room shortens the final proof: with {middle} % of instant yeast it takes {proof(middle, cold, BY_RISE)} at
{cold} °C and {proof(middle, warm, BY_RISE)} at {warm} °C. How the bulk was ended shows much less in it
({proof(middle, cold, BY_CLOCK)} and {proof(middle, warm, BY_CLOCK)} by the clock, although the bulk rose by
{text_of(minutes(middle, cold, BY_CLOCK)[1], 0)} % in the one room and by
{text_of(minutes(middle, warm, BY_CLOCK)[1], 0)} % in the other), because dividing, rounding and moulding press out most
of the gas, whatever there was. It does show when the bulk went on far too long in the warmth: such a dough runs short
of sugar, and its pieces begin larger, so that the same rise needs more gas. With {few} % yeast, left
twice as long, the proof takes {proof(few, 27, TOO_LONG)} at 27 °C and {proof(few, warm, TOO_LONG)} at {warm} °C, where
after a bulk by rise it takes {proof(few, 27, BY_RISE)} and {proof(few, warm, BY_RISE)}: the warm room no longer helps.
So end the bulk by what you see in the tub, not by the clock; then a warmer room makes the proof shorter.

![Minutes of the final proof against the room]({PICTURE})

Bulk, its rise, and **minutes of the final proof**:

{table(["bulk", "instant yeast", *(f"{room_c} °C" for room_c in SHOWN)], rows)}
""")


def picture(path: Path) -> None:
    """A panel for each way of ending the bulk."""
    figure = Figure(figsize=(9, 3.6), layout="constrained")
    for axes, bulk in zip(figure.subplots(1, len(BULKS), sharey=True), BULKS, strict=True):
        for dose, (colour, line) in DOSES.items():
            proofs = [minutes(dose, room_c, bulk)[2] for room_c in ROOMS]
            axes.plot(ROOMS, proofs, line, color=colour, label=f"{dose} % instant")
        axes.set(title=bulk.name, xlabel="room, °C", xticks=SHOWN)
        axes.grid(color="#DDDDDD", linewidth=0.5)
    figure.axes[0].set(ylabel="final proof, min", ylim=(0, None))
    figure.axes[0].legend(loc="upper right")
    save(figure, path)
