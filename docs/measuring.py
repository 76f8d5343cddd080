"""docs/what_is_worth_measuring.md: what each parameter, and each slip at the bench, moves on the demo day."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from matplotlib.figure import Figure
from writing import BLUE, ORANGE, ROOT, clock, save, signed, table, text_of, wrapped

import libferment as lf

PICTURE = "what_is_worth_measuring.svg"
DAY = ROOT / "data" / "demo" / "day.toml"
STAGES = ("bulk", "final proof")


@dataclass(frozen=True)
class Moved:
    """Something moved down and up, and the minutes by which bulk and final proof then take longer."""

    name: str
    low: str
    high: str
    by_low: tuple[float, float]
    by_high: tuple[float, float]

    @property
    def largest(self) -> float:
        """The most minutes by which the final proof is ready earlier or later."""
        return max(abs(sum(self.by_low)), abs(sum(self.by_high)))

    @property
    def counts(self) -> bool:
        """Whether it moves either stage by half a minute."""
        return max(abs(minutes) for minutes in (*self.by_low, *self.by_high)) >= 0.5


@cache
def day() -> lf.Process:
    """The demo day."""
    return lf.process_of(lf.read_day(DAY))


def minutes_of(process: lf.Process, kitchen: lf.Kitchen) -> tuple[float, float]:
    """Minutes of bulk and final proof."""
    timeline = lf.simulate(process, kitchen=kitchen, every_min=0, be_back_by=False)
    bulk, proof = (60 * timeline[name].hours for name in STAGES)
    return bulk, proof


@cache
def usual() -> tuple[float, float]:
    """Minutes of the day as it is."""
    return minutes_of(day(), lf.Kitchen())


def later(process: lf.Process, kitchen: lf.Kitchen) -> tuple[float, float]:
    """Minutes by which the stages take longer than usual."""
    bulk, proof = minutes_of(process, kitchen)
    return bulk - usual()[0], proof - usual()[1]


def short(value: float) -> str:
    """Three figures."""
    return text_of(value, max(0, 2 - math.floor(math.log10(abs(value))))).replace("-", "−")


@cache
def parameters() -> list[Moved]:
    """Every learnable parameter, moved by its prior standard deviation in its own scale; the largest first."""
    kitchen, rows = lf.Kitchen(), []
    for parameter in lf.parameters():
        if parameter.scale == "fixed":
            continue
        usually = getattr(kitchen, parameter.name)
        low, high = (lf.moved(parameter, usually, by) for by in (-parameter.prior_sd, parameter.prior_sd))
        moved = [later(day(), kitchen.replace(**{parameter.name: value})) for value in (low, high)]
        unit = f" {parameter.unit}" if parameter.unit else ""
        rows.append(Moved(parameter.label, f"{short(low)}{unit}", f"{short(high)}{unit}", *moved))
    return sorted(rows, key=lambda row: -row.largest)


def with_mix(**changed) -> lf.Process:
    """The day with another mix."""
    mix, *stages = day().steps
    return day().replace(steps=[mix.replace(**changed), *stages])


def with_place(stage: int, warmer_k: float) -> lf.Process:
    """The day with a stage's place warmer."""
    steps = list(day().steps)
    (place,) = steps[stage].surroundings.places
    warmer = place.replace(temperature_c=place.temperature_c + warmer_k)
    steps[stage] = steps[stage].replace(surroundings=lf.Surroundings([warmer]))
    return day().replace(steps=steps)


@cache
def slips() -> list[Moved]:
    """What is measured or weighed wrongly, and what no measuring takes away; the largest first."""
    kitchen = lf.Kitchen()
    mix = day().steps[0]
    dough_c = lf.dough_by_heat_balance(mix)
    spread = math.hypot(kitchen.bake_sd, kitchen.model_sd)

    def both(name: str, low: str, high: str, change: Callable[[int], tuple[float, float]]) -> Moved:
        return Moved(name, low, high, change(-1), change(1))

    def of_bake(sign: int) -> tuple[float, float]:
        return later(day(), kitchen.replace(gassing_rate=kitchen.gassing_rate * math.exp(sign * spread)))

    rows = [
        both("dough after mixing", "1 °C colder", "1 °C warmer",
             lambda sign: later(with_mix(dough_c=dough_c + sign), kitchen)),
        both("yeast", "5 % less", "5 % more",
             lambda sign: later(with_mix(compressed_g=mix.compressed_g * (1 + 0.05 * sign)), kitchen)),
        both("salt", "5 % less", "5 % more",
             lambda sign: later(with_mix(salt_g=mix.salt_g * (1 + 0.05 * sign)), kitchen)),
        both("water", "2 % less", "2 % more",
             lambda sign: later(with_mix(water_g=mix.water_g * (1 + 0.02 * sign), dough_c=dough_c), kitchen)),
        both("larder of the bulk", "1 °C colder", "1 °C warmer", lambda sign: later(with_place(1, sign), kitchen)),
        both("proof box", "1 °C colder", "1 °C warmer", lambda sign: later(with_place(2, sign), kitchen)),
        both("from bake to bake", "slower by one sd", "faster by one sd", of_bake),
    ]  # fmt: skip
    return sorted(rows, key=lambda row: -row.largest)


def rows_of(moved: list[Moved]) -> list[list[str]]:
    """Cells of a table."""
    rows = []
    for its in moved:
        stages = [signed(minutes) for pair in zip(its.by_low, its.by_high, strict=True) for minutes in pair]
        ready = [signed(sum(minutes)) for minutes in (its.by_low, its.by_high)]
        rows.append([its.name, its.low, its.high, *stages, *ready])
    return rows


HEAD = ["", "−", "+", "bulk −", "bulk +", "proof −", "proof +", "ready −", "ready +"]


def page() -> str:
    """The page."""
    counting = [its for its in parameters() if its.counts]
    silent = [its.name for its in parameters() if not its.counts]
    by_name = {its.name: its for its in (*parameters(), *slips())}

    def ready(name: str) -> str:
        its = by_name[name]
        earlier, later_ = sorted((sum(its.by_low), sum(its.by_high)))
        return f"{text_of(-earlier, 0)} min earlier to {text_of(later_, 0)} min later"

    bulk, proof = usual()
    dough_over_yeast = text_of(by_name["dough after mixing"].largest / by_name["yeast"].largest, 1)
    return wrapped(f"""\
# What is worth measuring

The demo day (`data/demo/day.toml`, an invented day: wholemeal dough of 21 °C, a bulk in a larder of 14 °C, a proof in
a box of 27 °C) takes {clock(bulk / 60)} for the bulk and {clock(proof / 60)} for the final proof of the loaf, by the
default parameters. Written by `./dev validate`.

## For a baker

Nothing moves this day as much as the strength of the yeast itself, which a jar or a block does not tell: over the
range of yeasts and ages it makes the loaf ready {ready("gassing rate")}. It cannot be measured beforehand, but
one rise that you watch and write down tells much of it. Next comes what a probe tells in ten seconds: the dough after
mixing. One degree is worth {ready("dough after mixing")} here, {dough_over_yeast} times as much as a slip of 5 % in
weighing the yeast ({ready("yeast")}). Then the place: a larder that is a degree off is worth
{ready("larder of the bulk")}, more than the proof box ({ready("proof box")}), because the bulk is longer; hang the
thermometer where the tub stands. Salt and water weighed a little wrong hardly matter ({ready("salt")} for 5 % of the
salt). And however well you measure, bakes of one recipe differ: two in three are ready
{ready("from bake to bake")} than usual. Do not chase the last minutes, look at the dough.

![Minutes by which bulk and final proof take longer]({PICTURE})

With an asterisk: a slip of the size in the first table, or the spread of bakes; the others are parameters, moved by
their prior standard deviation.

## Slips, and what remains

Minutes by which a stage takes longer (+) or shorter (−) than usual, and the loaf is ready later or earlier, when
something is less (columns −) or more (columns +) than thought. From bake to bake is the spread that the kitchen has
for it, `bake_sd` and `model_sd` together.

{table(HEAD, rows_of(slips()), "3 4 5 6 7 8")}

## Parameters

Each parameter alone, moved down and up by the standard deviation that is assumed before anything is learned, on its
own scale. A parameter that moves little on this day may count on another: much sugar, much yeast, a night in the
refrigerator.

{table(HEAD, rows_of(counting), "3 4 5 6 7 8")}

Less than half a minute on this day: {", ".join(silent)}.
""")


def picture(path: Path) -> None:
    """Bars of minutes, for slips and parameters alike."""
    shown = [*slips(), *(its for its in parameters() if its.counts)]
    shown.sort(key=lambda its: its.largest)
    figure = Figure(figsize=(9, 7), layout="constrained")
    axes = figure.subplots(1, 2, sharey=True)
    for stage, its_axes in enumerate(axes):
        for attribute, colour, hatch, label in (
            ("by_low", BLUE, "", "moved down (−)"),
            ("by_high", ORANGE, "////", "moved up (+)"),
        ):
            minutes = [getattr(its, attribute)[stage] for its in shown]
            its_axes.barh(
                range(len(shown)), minutes, color=colour, hatch=hatch, edgecolor="black", linewidth=0.5, label=label
            )
        its_axes.axvline(0, color="black", linewidth=0.8)
        its_axes.set(title=STAGES[stage], xlabel="min longer than usual")
        its_axes.grid(axis="x", color="#DDDDDD", linewidth=0.5)
        its_axes.set_axisbelow(True)
    measured = {its.name for its in slips()}
    axes[0].set_yticks(range(len(shown)), [f"{its.name} *" if its.name in measured else its.name for its in shown])
    figure.legend(*axes[0].get_legend_handles_labels(), loc="outside lower center", ncols=2)
    save(figure, path)
