"""Values from outside the project, row by row from tests/reference, and the library's answer to each by any kitchen.

The first line of an answer's docstring says how its row was understood; docs/validation.md prints it."""

import csv
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path

import libferment as lf

TABLES = Path(__file__).resolve().parents[1] / "reference"
NAMES = ("fermentation", "outside", "water_temperature", "bowl_examples", "heat", "worked_examples")
SETS = ("2026-1", "2026-2")
GAS_CONSTANT = 8.314462618  # J/(mol·K), CODATA 2018
ATMOSPHERE_PA = 101325  # definition
ZERO_CELSIUS_K = 273.15  # definition
G_PER_LB = 453.59237  # international pound, exact
NACL_G_PER_MOL = 58.443  # standard atomic weights
KG_WATER_PER_MOL = 0.0180153  # standard atomic weights
ROUNDING = 16 * 2**-53  # relative: an exact °F on its way through °C

# The rows of fermentation.csv were computed with a start-up of 0.25 h for every kind of yeast.
START_UP = dict.fromkeys(
    ("start_up_compressed_h", "start_up_instant_h", "start_up_active_dry_h", "start_up_active_dry_unwetted_h"), 0.25
)


@dataclass(frozen=True)
class Check:
    """A row: a band, or numbers with a tolerance each, and what the library has for it."""

    table: str
    row: dict[str, str]

    @property
    def id(self) -> str:
        return self.row["id"]

    @property
    def quantity(self) -> str:
        return self.row.get("quantity") or self.row["method"]

    @property
    def misses(self) -> str:
        """Why the library's default set is outside; empty where it is inside."""
        return self.row.get("misses", "")

    @property
    def band(self) -> tuple[float, float] | None:
        return (float(self.row["low"]), float(self.row["high"])) if "low" in self.row else None

    @property
    def expected(self) -> list[float]:
        return [float(text) for text in self.row["expected"].partition(" ")[0].split("/")]

    @property
    def tolerance(self) -> list[float]:
        """One for each expected number."""
        each = [float(text) for text in self.row["tolerance"].split("/")]
        return each * len(self.expected) if len(each) == 1 else each

    @property
    def unit(self) -> str:
        return self.row.get("unit") or self.row.get("expected", "").partition(" ")[2]

    @property
    def sets(self) -> tuple[str, ...]:
        """The parameter sets that it judges: a row computed for one set says so."""
        named = tuple(name for name in SETS if f"parameter set {name}" in self.row["inputs"])
        return named or SETS

    @property
    def understood(self) -> str:
        """How the row was understood."""
        answer = ANSWERS[self.id]
        return (answer.func if isinstance(answer, partial) else answer).__doc__.partition("\n")[0].rstrip(".")

    def values(self, kitchen: lf.Kitchen) -> list[float]:
        kitchen = kitchen.replace(**START_UP) if self.table == "fermentation" else kitchen
        return [float(value) for value in ANSWERS[self.id](self.row, kitchen)]

    def is_met(self, values: list[float]) -> bool:
        if self.band:
            return all(self.band[0] <= value <= self.band[1] for value in values)
        return len(values) == len(self.expected) and all(
            abs(value - expected) <= (tolerance or ROUNDING * abs(expected))
            for value, expected, tolerance in zip(values, self.expected, self.tolerance, strict=True)
        )

    def off(self, values: list[float]) -> float:
        """The worst value's place in the band: 0 in its geometric middle, -1 and 1 at its edges.

        With a tolerance: difference over tolerance. A tolerance of 0 is met or not, whatever the rounding."""
        if self.band:
            low, high = self.band
            all_off = [math.log(value / math.sqrt(low * high)) / math.log(math.sqrt(high / low)) for value in values]
        elif not any(self.tolerance):
            return 0.0 if self.is_met(values) else math.inf
        else:
            triples = zip(values, self.expected, self.tolerance, strict=True)
            all_off = [(value - expected) / tolerance for value, expected, tolerance in triples]
        return max(all_off, key=abs)


def read_checks() -> list[Check]:
    checks = []
    for name in NAMES:
        with (TABLES / f"{name}.csv").open(encoding="utf-8", newline="") as file:
            checks += [Check(name, row) for row in csv.DictReader(file)]
    return checks


def numbers(text):
    """Every number of a text, as 12, 0.5 and .5; a minus sign counts after a space."""
    return [float(found) for found in re.findall(r"(?:(?<= )-)?(?:\d+(?:\.\d+)?|\.\d+)", text)]


def before(text, unit):
    """The number that stands before a unit or a word."""
    found = re.search(rf"(\d+(?:\.\d+)?) {re.escape(unit)}", text)
    assert found, f'no number before "{unit}" in "{text}"'
    return float(found[1])


def percent(text, name):
    """Percent of flour, 0 where the row says "no salt"."""
    return 0.0 if f"no {name}" in text else before(text, f"% {name}")


def fahrenheit_of(text, name):
    found = re.search(rf"\b{name} (\d+(?:\.\d+)?) F", text)
    assert found, f'no temperature of "{name}" in "{text}"'
    return float(found[1])


def celsius_of(text, name):
    return lf.celsius(fahrenheit_of(text, name))


# Temperature.


def factor(temperature_c, kitchen):
    """Speed of the reference dough over its speed at 25 °C: the kitchen's temperature law alone."""
    return lf.speed(dough_c=temperature_c, kitchen=kitchen)


def factor_ratio(row, kitchen):
    """Temperature factor at the first temperature over that at the second."""
    above, below = numbers(row["quantity"])
    return [factor(above, kitchen) / factor(below, kitchen)]


def factor_steps(row, kitchen):
    """Temperature factor 1 °C warmer over itself, at each of the three temperatures."""
    one, *temperatures = numbers(row["quantity"])
    assert one == 1
    assert len(temperatures) == 3
    return [factor(t + one, kitchen) / factor(t, kitchen) for t in temperatures]


def factor_at(row, kitchen):
    """Temperature factor, 1 at 25 °C."""
    return [factor(before(row["inputs"], "C"), kitchen)]


def law_over_its_optimum(row, kitchen):
    """`Cardinal` at each temperature over its value at the optimum."""
    t_min, t_opt, t_max, *temperatures = numbers(row["inputs"].replace("/", " "))
    law = lf.Cardinal(t_min_c=t_min, t_opt_c=t_opt, t_max_c=t_max)
    return [law.factor(t) / law.factor(t_opt) for t in temperatures]


def square_root_rates(row, kitchen):
    """`SquareRoot` times the rate at 25 °C, where it is 1 by definition; that rate by the printed formula."""
    b, t_min, c, t_max, *temperatures = numbers(row["inputs"].replace("/", " "))
    law = lf.SquareRoot(t_min_c=t_min, t_max_c=t_max, decline_per_k=c)
    rate_at_25 = (b * (25 - t_min) * (1 - math.exp(c * (25 - t_max)))) ** 2
    return [rate_at_25 * law.factor(t) for t in temperatures]


def arrhenius_ratios(row, kitchen):
    """`Arrhenius` at the first temperature over the second."""
    energy_kj, *temperatures = numbers(row["inputs"])
    law = lf.Arrhenius(energy_kj)
    pairs = zip(temperatures[::2], temperatures[1::2], strict=True)
    return [law.factor(over) / law.factor(under) for over, under in pairs]


def energy_of_q10(row, kitchen):
    """Energy at which `Arrhenius` has that Q10 from 20 to 30 °C; the law is exponential in its energy."""
    per_kj = math.log(lf.Arrhenius(60).factor(30) / lf.Arrhenius(60).factor(20)) / 60
    return [math.log(numbers(row["inputs"])[-1]) / per_kj]


def q10_step(row, kitchen):
    """`ConstantQ10` that many °C above 25 over 25 °C."""
    q10, step = re.match(r"Q10 ([\d.]+)(?: over|;) ([\d.]+) C", row["inputs"]).groups()
    return [lf.ConstantQ10(float(q10)).factor(25 + float(step)) / lf.ConstantQ10(float(q10)).factor(25)]


# Gas, at one dough temperature from the end of mixing on.


def gas_mmol(hours, dough_c, compressed_percent, kitchen, *, salt, water, sugar=0.0):
    """CO2 made, mmol per 100 g of flour."""
    speed = lf.speed(dough_c=dough_c, salt_percent=salt, water_percent=water, sugar_percent=sugar, kitchen=kitchen)
    return lf.gas_made(
        hours * speed, yeast_percent=compressed_percent, yeast="compressed", sugar_percent=sugar, kitchen=kitchen
    )


def ml_per_mmol(temperature_c):
    return 1e3 * GAS_CONSTANT * (temperature_c + ZERO_CELSIUS_K) / ATMOSPHERE_PA


def most_gas_mmol(sugar_percent, kitchen):
    """All the CO2 a dough's sugars give, as the error for more than that names it."""
    try:
        lf.equivalent_hours_for_gas(1000, yeast_percent=1, sugar_percent=sugar_percent, kitchen=kitchen)
    except lf.NoSolution as refused:
        return refused.high
    raise AssertionError("a dough made 1000 mmol")


def ml_of_hexose(temperature_c, kitchen):
    # 1.0526 g hexose per g sucrose; 0.95 is the yield in the model's capacity, the rows ask for a yield of 1.
    mmol = (most_gas_mmol(1, kitchen) - most_gas_mmol(0, kitchen)) / (1.0526 * 0.95)
    return mmol * ml_per_mmol(temperature_c)


def gas_of_hexose(row, kitchen):
    """What 1 % sugar adds to the gas a dough can make, less its yield of 0.95, as mL."""
    return [ml_of_hexose(float(re.search(r"at ([\d.]+) C", row["quantity"])[1]), kitchen)]


def gas_of_hexose_at_each(row, kitchen):
    """As F7a, at each temperature."""
    return [ml_of_hexose(t, kitchen) for t in numbers(row["inputs"].partition(" C")[0].replace("/", " "))]


def flour_gas_ml(row, kitchen):
    """CO2 made in the hours, for the flour's weight, as mL at the dough's temperature."""
    text, t = row["inputs"], before(row["inputs"], "C")
    mmol = gas_mmol(
        before(row["quantity"], "h"),
        t,
        percent(text, "compressed"),
        kitchen,
        salt=percent(text, "salt"),
        water=percent(text, "water"),
    )
    return [mmol * before(row["quantity"], "g flour") / 100 * ml_per_mmol(t)]


D3_INPUTS = "2.8 % compressed, 28.5 C, 55 % water"


def salted_gas(row, kitchen):
    """CO2 made in 3 h from the end of mixing with the salt, over that without it."""
    assert row["inputs"] in (D3_INPUTS, "as D3")
    assert row["quantity"].startswith("3-h total gas")
    over, under = (
        gas_mmol(
            3,
            before(D3_INPUTS, "C"),
            percent(D3_INPUTS, "compressed"),
            kitchen,
            salt=salt,
            water=percent(D3_INPUTS, "water"),
        )
        for salt in numbers(row["quantity"])[1:]
    )
    return [over / under]


def sponge_gas(row, kitchen):
    """CO2 made in the hours at that dough temperature, from the end of mixing."""
    text = row["inputs"]
    hours, t = before(text, "h"), before(text, "C")
    dose, water, salt = (percent(text, name) for name in ("compressed", "water", "salt"))
    return [gas_mmol(hours, t, dose, kitchen, salt=salt, water=water)]


def poolish_gas(row, kitchen):
    """Largest over smallest CO2 made by the table's six doses, each in its hours, without salt."""
    text = row["inputs"]
    pairs = re.findall(r"([\d.]+)(?: %)?/([\d.]+)", text)
    assert len(pairs) == 6
    made = [
        gas_mmol(float(h), before(text, "C"), float(dose), kitchen, salt=0, water=percent(text, "water"))
        for dose, h in pairs
    ]
    return [max(made) / min(made)]


def cold_day_gas(row, kitchen):
    """CO2 made in the first 24 h by a dough held at the one temperature over the other; 2 % salt."""
    dose, water = percent(row["inputs"], "compressed"), percent(row["inputs"], "water")
    over, under = numbers(row["quantity"])
    return [
        gas_mmol(24, over, dose, kitchen, salt=2, water=water) / gas_mmol(24, under, dose, kitchen, salt=2, water=water)
    ]


def sweet_gas(row, kitchen):
    """CO2 made in the 90 min with the sugar over that without it, the same yeast on flour in both."""
    text = row["inputs"]
    dose, water, salt = (percent(text, name) for name in ("compressed", "water", "salt"))
    hours, t = before(text, "min") / 60, before(text, "C")
    over, under = (
        gas_mmol(hours, t, dose, kitchen, salt=salt, water=water, sugar=sugar) for sugar in numbers(row["quantity"])
    )
    return [over / under]


# Volume and rise, at one dough temperature from the end of mixing on.


def rise_hours(row, rise_percent, kitchen, **changed):
    """Hours to a rise of the dough that the row describes: what it does not say is the reference dough's."""
    text = row["inputs"]
    kind = next(kind for kind in ("compressed", "instant", "active dry") if f"% {kind}" in text)
    dough = {"yeast": kind.replace(" ", "_"), "yeast_percent": percent(text, kind)}
    for name in ("salt", "water", "sugar"):
        if f"% {name}" in text or f"no {name}" in text:
            dough[f"{name}_percent"] = percent(text, name)
    if found := re.search(r"([\d.]+) C\b", text):
        dough["dough_c"] = float(found[1])
    return lf.hours_to_rise(rise_percent, **{**dough, **changed}, kitchen=kitchen)


def salt_ratio(row, kitchen):
    """Hours to double with the salt over those without."""
    with_salt, without = numbers(row["quantity"])
    return [rise_hours(row, 100, kitchen, salt_percent=with_salt) / rise_hours(row, 100, kitchen, salt_percent=without)]


def yeast_ratio(row, kitchen):
    """Hours to double with the one dose over those with the other."""
    doses = numbers(row["quantity"])
    fresh = {"yeast": "compressed", "dough_c": 25, "salt_percent": 2, "water_percent": 62}
    assert row["inputs"] == "25 C, 2 % salt, 62 % water"
    over, under = (lf.hours_to_rise(100, yeast_percent=dose, **fresh, kitchen=kitchen) for dose in doses)
    return [over / under]


def hours_to_double(row, kitchen):
    """Hours from the end of mixing to twice the mixed volume."""
    return [rise_hours(row, 100, kitchen)]


def hours_to_double_at_both(row, kitchen):
    """Hours from the end of mixing to twice the mixed volume, at both ends of the range of temperature."""
    low_c, high_c = re.search(r"(\d+)-(\d+) C", row["inputs"]).groups()
    return [rise_hours(row, 100, kitchen, dough_c=float(t)) for t in (low_c, high_c)]


def hours_to_half_more(row, kitchen):
    """Hours from the end of mixing to +50 %."""
    assert row["quantity"] == "hours to +50 %"
    return [rise_hours(row, 50, kitchen)]


def minutes_to_three_quarters_more(row, kitchen):
    """Minutes from the end of mixing to +75 %, as a dough that was not handled; 2 % salt."""
    assert row["quantity"] == "minutes to +75 %"
    return [60 * rise_hours(row, 75, kitchen)]


def halved_per_step(row, kitchen):
    """Hours to double at the lower over those at the higher temperature; 1 % instant yeast, reference dough."""
    over, under = (
        lf.hours_to_rise(100, dough_c=t, yeast_percent=1, kitchen=kitchen) for t in numbers(row["inputs"])[:2]
    )
    return [over / under]


def water_ratio(row, kitchen):
    """Hours to double with the one water over those with the other."""
    over, under = (rise_hours(row, 100, kitchen, water_percent=water) for water in numbers(row["quantity"]))
    return [over / under]


def rise_of(row, hours, kitchen):
    text = row["inputs"]
    kind = "compressed" if "% compressed" in text else "instant"
    return lf.rise_after(
        hours,
        dough_c=before(text, "C"),
        yeast=kind,
        yeast_percent=percent(text, kind),
        water_percent=percent(text, "water"),
        salt_percent=percent(text, "salt"),
        sugar_percent=percent(text, "sugar") if "sugar" in text else 0,
        kitchen=kitchen,
    )


def rise_at_the_punch(row, kitchen):
    """Rise after the hours at that dough temperature, from the end of mixing."""
    return [rise_of(row, before(row["inputs"], "h"), kitchen)]


def poolish_rise(row, kitchen):
    """Rise after 3 h and after 4 h at that dough temperature, from the end of mixing."""
    assert row["quantity"] == "rise at 3 to 4 h"
    return [rise_of(row, hours, kitchen) for hours in (3, 4)]


def dissolved_over_cells(row, kitchen):
    """Dissolved: solubility × partial pressure × water; in the cells: pressure × volume/(R T); pressures cancel."""
    cells_ml, water_g, t = (before(row["inputs"], unit) for unit in ("mL cell gas", "g water", "C"))
    per_pa = lf.co2_solubility(t) * water_g / ATMOSPHERE_PA
    return [per_pa * 1e3 * GAS_CONSTANT * (t + ZERO_CELSIUS_K) / cells_ml]


def mixed_volume(row, kitchen):
    """Volume of a dough just mixed, of 100 g of flour."""
    dough_g = before(row["quantity"], "g dough")
    assert "void 6 %" in row["inputs"]
    mix = lf.Mix(dough_c=25, flour_g=100, instant_g=1.5, salt_g=2, water_g=dough_g - 100 - 1.5 - 2)
    return [lf.advance(lf.State(), mix, kitchen=kitchen).mixed_volume_ml]


def mixed_air(row, kitchen):
    """Volume just after mixing; the void's share of it; the air in it, here dry and at sea level."""
    assert row["inputs"] == "166 g; 1.26 g/mL; void 6 %; 30 C; 101325 Pa; dry air"
    mix = lf.Mix(dough_c=30, flour_g=100, water_g=62, salt_g=2, compressed_g=2)
    state = lf.advance(lf.State(), mix, kitchen=kitchen)
    moist_pa = lf.water_activity(salt_percent=2, water_percent=62) * lf.saturation_pressure_pa(30)
    air_mmol = state.shells[0].air_mmol * ATMOSPHERE_PA / (ATMOSPHERE_PA - moist_pa)
    return [state.mixed_volume_ml, state.mixed_volume_ml - 166 / kitchen.gas_free_density, air_mmol]


def salt_solution(row, kitchen):
    """Water activity of that much salt in a dough's water."""
    water_percent = 50
    salt_percent = before(row["inputs"], "mol/kg") * NACL_G_PER_MOL * water_percent / 1000
    return [lf.water_activity(salt_percent=salt_percent, water_percent=water_percent)]


def salted_doughs(row):
    water, *salts = numbers(row["inputs"].replace("/", " "))
    return [lf.water_activity(salt_percent=salt, water_percent=water) for salt in salts]


def activity_of_doughs(row, kitchen):
    """Water activity at each of the salts."""
    return salted_doughs(row)


def osmolality_of_doughs(row, kitchen):
    """Osmolality that the water activity stands for, -ln(activity)/0.0180153, at each of the salts."""
    return [-math.log(activity) / KG_WATER_PER_MOL for activity in salted_doughs(row)]


# Whole processes.


def dough_of(text, dough_c):
    """The mix of a text, of 1 kg of flour."""
    kinds = {f"{kind.replace(' ', '_')}_g": kind for kind in ("compressed", "instant", "active dry")}
    parts = {**kinds, "sugar_g": "sugar", "oil_g": "fat", "salt_g": "salt", "water_g": "water"}
    grams = {part: 10 * percent(text, name) for part, name in parts.items() if f"% {name}" in text}
    return lf.Mix(flour_g=1000, dough_c=dough_c, **grams)


def held(name, dough_c, **rest):
    return lf.Stage(name, surroundings=lf.Surroundings.dough(dough_c), **rest)


def proof_minutes(steps, kitchen):
    return 60 * lf.simulate(lf.Process(steps), kitchen=kitchen).stages[-1].hours


def folded_proof(row, kitchen):
    """Minutes of the final proof: folded once in bulk, divided and rounded, rested, moulded, at one temperature."""
    text = row["inputs"]
    t = before(text, "C")
    fold_min = float(re.search(r"one fold after (\d+) min", text)[1])
    rise_percent = float(re.search(r"\+(\d+) % rise", row["quantity"])[1])
    bulk_h, rest_h = before(text, "min from the end of mixing") / 60, before(text, "min rest") / 60
    steps = [
        dough_of(text, t),
        held("bulk", t, until_h=bulk_h, folds_h=[fold_min / 60], handling=["divide", "round"]),
        held("bench rest", t, until_h=rest_h, handling=["mould"]),
        held("final proof", t, until_rise_percent=rise_percent, standing="free", final_proof=True),
    ]
    return [proof_minutes(steps, kitchen)]


P2_INPUTS = (
    "0.7 % instant, 68 % water, 2 % salt, dough held at 24 C, bulk to +90 % with one fold after 45 min, "
    "divide and round, 15 min, mould"
)


def free_proof(row, kitchen):
    """Minutes of the final proof, the dough held at one temperature from mixing to the end."""
    if row["id"] == "P2":
        assert row["inputs"] == P2_INPUTS
    t = float(re.search(r"held at (\d+) C", row["inputs"])[1])
    bulk = held("bulk", t, until_rise_percent=90, folds_h=[45 / 60], handling=["divide", "round"])
    rest = held("bench rest", t, until_h=15 / 60, handling=["mould"])
    proof = held("final proof", t, until_rise_percent=75, standing="free", final_proof=True)
    return [proof_minutes([dough_of(P2_INPUTS, t), bulk, rest, proof], kitchen)]


def boxed_proof_steps(row):
    text = row["inputs"]
    t, bulk_min, box_c = (float(re.search(p, text)[1]) for p in (r"(\d+) C, bulk", r"bulk (\d+) min", r"box (\d+) C"))
    rest_min = float(re.search(r"round, (\d+) min", text)[1])
    bulk = held("bulk", t, until_h=bulk_min / 60, handling=["divide", "round"])
    rest = held("bench rest", t, until_h=rest_min / 60, handling=["mould"])
    rise_percent = float(re.search(r"\+(\d+) %", row["quantity"])[1])
    box = lf.Surroundings.humid_proof_box(box_c)
    proof = lf.Stage("final proof", surroundings=box, until_rise_percent=rise_percent, final_proof=True)
    return [dough_of(text, t), bulk, rest, proof]


def tin_proof(row, kitchen):
    """Minutes in the box, a piece in a tin of sheet steel; dough held at 27 °C up to moulding."""
    *steps, proof = boxed_proof_steps(row)
    piece = lf.Piece.tin(mass_g=before(row["inputs"], "g in a steel tin"))
    return [proof_minutes([*steps, proof.replace(piece=piece)], kitchen)]


def roll_proof(row, kitchen):
    """Minutes in the box, a ball under film; dough held at 27 °C up to moulding."""
    *steps, proof = boxed_proof_steps(row)
    piece = lf.Piece.ball(before(row["inputs"], "g pieces"))
    return [proof_minutes([*steps, proof.replace(piece=piece)], kitchen)]


def pup_loaf_steps(row):
    text = row["inputs"]
    t = before(text, "C")
    *rests, proof_min = (float(m) for m in re.search(r"(\d+), (\d+) and (\d+) min .* then (\d+) min", text).groups())
    handlings = ("divide", "divide", "mould")
    stages = [
        held(f"rest {i}", t, until_h=minutes / 60, handling=[handling])
        for i, (minutes, handling) in enumerate(zip(rests, handlings, strict=True), start=1)
    ]
    proof = held("proof", t, until_h=proof_min / 60, standing="tin", final_proof=True)
    return [dough_of(text, t), *stages, proof]


def pup_loaf(row, kitchen):
    """Dough held at 30 °C all through, a punch expelling as dividing does, moulding as by hand."""
    timeline = lf.simulate(lf.Process(pup_loaf_steps(row)), kitchen=kitchen)
    return [timeline.state.anchor_ratio * (1 + timeline.stages[-1].rise_percent / 100)]


# Garrison bread by sponge and dough as the Manual for Army Bakers (1916), pp 49-50, prints it (read): on 100 lb of
# flour 10 oz compressed yeast, 6 gal 3 qt water, 1.25 lb each of sugar, salt and oil. Half of the flour, 4 gal of the
# water and all of the yeast in the sponge for 5 h; then 2.5 h, punch, 0.5 h, punch and round, 15 min, mould into loaves
# of 2 lb 3.5 oz, 45 min in the pan.
SPONGE = lf.Mix(dough_c=26.7, flour_g=500, water_g=334, compressed_g=6.25)
GARRISON_DOUGH = lf.Mix(dough_c=26.7, flour_g=500, water_g=229, sugar_g=12.5, salt_g=12.5, oil_g=12.5)
GARRISON_LOAF_G = (2 + 3.5 / 16) * G_PER_LB


def garrison_rise(row, kitchen):
    """Rise in the pan with the dough held at 26.7 °C, and in a box of 32 °C; sponge and dough as the manual prints."""
    steps = [
        SPONGE,
        held("sponge", 26.7, until_h=5),
        GARRISON_DOUGH,
        held("dough", 26.7, until_h=2.5, handling=["divide"]),
        held("after the punch", 26.7, until_h=0.5, handling=["divide", "round"]),
        held("bench", 26.7, until_h=0.25, handling=["mould"]),
    ]
    piece = lf.Piece.tin(mass_g=GARRISON_LOAF_G)
    pans = (lf.Surroundings.dough(26.7), lf.Surroundings.proof_box(32))
    minutes = numbers(row["quantity"])[0]
    return [
        lf.simulate(
            lf.Process([*steps, lf.Stage("pan", piece=piece, surroundings=pan, until_h=minutes / 60)]), kitchen=kitchen
        )
        .stages[-1]
        .rise_percent
        for pan in pans
    ]


BOXES = (lf.Surroundings.humid_proof_box, lf.Surroundings.proof_box)
PAN_LOAF = "1.4 % instant, 62 % water, 2 % salt, 27 C, bulk 90 min"  # as P1


def pan_loaf_in(box, kitchen, **end):
    steps = [
        dough_of(PAN_LOAF, 27),
        held("bulk", 27, until_h=1.5, handling=["divide", "round"]),
        held("bench rest", 27, until_h=0.25, handling=["mould"]),
        lf.Stage("final proof", piece=lf.Piece.tin(mass_g=510), surroundings=box, final_proof=True, **end),
    ]
    return lf.simulate(lf.Process(steps), kitchen=kitchen).stages[-1]


def proof_in_both_boxes(row, kitchen):
    """Time to double in the tin in the cold box over that in the hot one, humid boxes and dry ones; dough as in P1."""
    cold_c, hot_c = numbers(row["quantity"])
    return [
        pan_loaf_in(box(cold_c), kitchen, until_rise_percent=100).hours
        / pan_loaf_in(box(hot_c), kitchen, until_rise_percent=100).hours
        for box in BOXES
    ]


def loaf_after_a_box(row, kitchen):
    """Mean temperature after the minutes in a humid box, as the trade's are, and in a dry one; dough as in P1."""
    minutes, box_c = before(row["inputs"], "min"), numbers(row["quantity"])[0]
    return [pan_loaf_in(box(box_c), kitchen, until_h=minutes / 60).end_c for box in BOXES]


def back_over_ready(row, kitchen):
    """(be back by - end of mixing)/(ready - end of mixing) of the timeline; 65 % water, 2 % salt."""
    t = before(row["inputs"], "C")
    mix = lf.Mix(flour_g=1000, water_g=650, salt_g=20, instant_g=10 * percent(row["inputs"], "instant"), dough_c=t)
    (bulk,) = lf.simulate(lf.Process([mix, held("bulk", t, until_rise_percent=90)]), kitchen=kitchen).stages
    return [(bulk.be_back_by_h - bulk.start_h) / (bulk.end_h - bulk.start_h)]


def spread_of_bakes(row, kitchen):
    """The kitchen's spread of ln gassing rate from bake to bake, `bake_sd`."""
    return [kitchen.bake_sd]


# Water temperature.


def hand_friction(row, kitchen):
    """3 × desired - room - flour - the heat balance's water; 2 % salt, without a bowl and in 1 kg of steel."""
    text = row["inputs"]
    room_c, desired_c = (float(re.search(rf"{name} (\d+) C", text)[1]) for name in ("room and flour", "dough"))
    water_g = 10 * percent(text, "water")
    mix = lf.Mix(flour_g=1000, water_g=water_g, salt_g=20, room_c=room_c, flour_c=room_c, mixing="hand")
    mixes = (mix, mix.replace(bowl=lf.Bowl("steel", 1000)))
    return [3 * desired_c - 2 * room_c - lf.water_by_heat_balance(its, desired_c).water_c for its in mixes]


def factor_rule(row, kitchen):
    """The trade's rule."""
    text = row["inputs"]
    water_c = lf.water_by_factor_rule(
        celsius_of(text, "desired"),
        flour_c=celsius_of(text, "flour"),
        room_c=celsius_of(text, "room"),
        friction_k=lf.kelvins(fahrenheit_of(text, "friction")),
    )
    return [lf.fahrenheit(water_c)]


def friction_of_batch(row, kitchen):
    """The trade's rule turned round."""
    named = {f"{name}_c": celsius_of(row["inputs"], name) for name in ("room", "flour", "water", "dough")}
    return [lf.friction_from_batch(**named) * 1.8]


def mean_of_three(row, kitchen):
    """The dough by the trade's rule without friction."""
    text = row["inputs"]
    dough_c = lf.dough_by_factor_rule(
        celsius_of(text, "water"), flour_c=celsius_of(text, "flour"), room_c=celsius_of(text, "shop"), friction_k=0
    )
    return [lf.fahrenheit(dough_c)]


def trade_ice(row, kitchen):
    """The trade's rule for ice."""
    text = row["inputs"]
    water_g = before(text, "lb water") * G_PER_LB
    ice_g = lf.ice_by_trade_rule(water_g, tap_c=celsius_of(text, "tap"), wanted_c=celsius_of(text, "wanted"))
    return [ice_g / G_PER_LB]


def exact_ice(row, kitchen):
    """Ice by the heat balance."""
    water_g = numbers(row["inputs"])[0]
    tap_c, wanted_c = (float(re.search(rf"{name} (\d+) C", row["inputs"])[1]) for name in ("tap", "wanted"))
    ice_c = -18 if "ice at -18 C" in row["inputs"] else 0
    return [lf.ice_by_heat_balance(water_g, tap_c=tap_c, wanted_c=wanted_c, ice_c=ice_c)]


# The mix of W11; W12 and W13 refer to it. Flour of 13 % moisture has the row's 1.80 kJ/(kg K).
W11 = lf.Mix(
    flours=[lf.Flour(1000, moisture_percent=13)],
    water_g=650,
    salt_g=20,
    room_c=21,
    mixing=lf.ByWork(0, hydration_kj_per_kg=0),
    heat_of_solution=False,
)
W12 = W11.replace(mixing=lf.ByWork(10, hydration_kj_per_kg=10), bowl=lf.Bowl("steel", 1200, contact=1))
W13 = W12.replace(water_g=600, waters=[lf.Water(50, 38)])


def planned(row, kitchen, *, mix):
    """Main water by the heat balance, heat of solution left out."""
    if row["id"] == "W11":
        text = "flour 1.000 kg 21 C c 1.80; water 0.650 kg c 4.186; salt 0.020 kg 21 C c 0.88; no bowl; no heat"
        assert row["inputs"] == f"{text}; desired 25 C"
    return [lf.water_by_heat_balance(mix, 25).water_c]


def warming_by_work(row, kitchen):
    """A mix whose only heat is the work, for 1 kg of something with the row's heat capacity."""
    wh_per_kg, c = numbers(row["inputs"])
    mix = lf.Mix(
        flour_g=500, water_g=325, room_c=20, water_c=20, mixing=lf.ByWork(3.6 * wh_per_kg, hydration_kj_per_kg=0)
    )
    flour = lf.Composition.of("bread")
    capacity = (0.500 * (1.80 + 2.5 * (flour.water - 0.13)) + 0.325 * 4.186) / 0.825
    return [(lf.dough_by_heat_balance(mix) - 20) * capacity / c]


def factor_rule_of_any_unit(row, kitchen):
    """The trade's rule, with a preferment where there is one."""
    in_fahrenheit = " F;" in row["inputs"]
    unit = "F" if in_fahrenheit else "C"
    found = dict(re.findall(rf"(\w+) (\d+) {unit}", row["inputs"]))
    point = lf.celsius if in_fahrenheit else float
    friction = float(re.search(r"friction (\d+)", row["inputs"])[1])
    water_c = lf.water_by_factor_rule(
        point(float(found["desired"])),
        flour_c=point(float(found["flour"])),
        room_c=point(float(found["room"])),
        preferment_c=point(float(found["preferment"])) if "preferment" in found else None,
        friction_k=lf.kelvins(friction) if in_fahrenheit else friction,
    )
    return [lf.fahrenheit(water_c) if in_fahrenheit else water_c]


def ice_per_lb(row, kitchen):
    """The trade's rule for ice."""
    return [
        lf.ice_by_trade_rule(1000, tap_c=celsius_of(row["inputs"], "tap"), wanted_c=celsius_of(row["inputs"], "wanted"))
        / 1000
    ]


def ice_in_water(row, kitchen):
    """Temperature of the water for which the heat balance asks for the row's ice: ice and water alone are no dough."""
    ice_kg, ice_c, water_kg, water_c = numbers(row["inputs"])
    low, high = -10.0, water_c
    while high - low > 1e-12:
        middle = (low + high) / 2
        needed = lf.ice_by_heat_balance(1000 * (ice_kg + water_kg), tap_c=water_c, wanted_c=middle, ice_c=ice_c)
        low, high = (middle, high) if needed > 1000 * ice_kg else (low, middle)
    return [(low + high) / 2]


def dough_that_keeps_its_temperature(row, kitchen):
    """Main water by the heat balance; all else has the dough's temperature: only the water's heat capacity counts."""
    flour_kg, room_c, _, water_kg, c_water, hydration = numbers(row["inputs"])
    mix = lf.Mix(
        flour_g=1000 * flour_kg,
        water_g=1000 * water_kg,
        room_c=room_c,
        mixing=lf.ByWork(0, hydration_kj_per_kg=hydration),
    )
    # The heat capacity is 4.186 here, the row's there.
    return [room_c + (lf.water_by_heat_balance(mix, room_c).water_c - room_c) * 4.186 / c_water]


def hydration(row, kitchen):
    """The heat balance's heat of hydration."""
    return [lf.heat_of_hydration(numbers(row["inputs"])[0]) / 2.326]  # 1 Btu/lb is 2.326 kJ/kg


def mechanical_development(row, kitchen):
    """The work of that way of mixing."""
    (method,) = [m for m in lf.mixing_methods() if m.name == "mechanical_development"]
    return [method.work_kj_per_kg]


def heat_of_solution(row, kitchen, *, name):
    """What dissolving takes from the net gain of a batch."""
    mix = lf.Mix(flour_g=500, water_g=325, room_c=20, **{name: 10})
    plain = lf.net_gain_from_batch(mix.replace(water_c=25, heat_of_solution=False), 25)
    dissolved = lf.net_gain_from_batch(mix.replace(water_c=25), 25)
    return [(dissolved - plain) * mix.percent.dough_g / 10 * numbers(row["inputs"])[0] / 1000]


# Heat properties.


def composition(text):
    names = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
    return lf.Composition(**{name: numbers(text[text.index(name) :])[0] for name in names if name in text})


H1_INPUTS = "water .7342; protein .2029; fat .0525; ash .0106; 5 C"


def specific_heat(row, kitchen):
    """Specific heat of that composition at that temperature."""
    assert row["id"] != "H1" or row["inputs"] == H1_INPUTS
    return [composition(row["inputs"]).specific_heat(before(row["inputs"], "C"))]


def heat_removed(row, kitchen):
    """Mass × difference × specific heat of H1."""
    lamb = composition(H1_INPUTS).specific_heat(5)
    return [before(row["inputs"], "kg of H1") * before(row["inputs"], "K") * lamb]


def pure(row, kitchen, *, name):
    """Specific heat of the component alone."""
    return [lf.Composition(**{name: 1}).specific_heat(before(row["inputs"], "C"))]


def flour_in_the_balance(row, kitchen):
    """What 1 K of the flour counts in the heat balance against 1 K of as much water."""
    mix = lf.Mix(flours=[lf.Flour(1000, moisture_percent=numbers(row["inputs"])[0])], water_g=1000, room_c=20)
    weights = lf.water_by_heat_balance(mix, 22).to_frame()["dough_k_per_k"]
    return [4.186 * weights["bread flour"] / weights["main water"]]


def white_bread(row, kitchen):
    """Specific heat of bread flour's composition with that much water, at 25 °C."""
    bread = lf.Composition.of("bread")
    moisture = numbers(row["inputs"])[0] / 100
    dry = {name: getattr(bread, name) for name in ("protein", "fat", "carbohydrate", "fibre", "ash")}
    share = (1 - moisture) / (1 - bread.water)
    return [lf.Composition(water=moisture, **{name: part * share for name, part in dry.items()}).specific_heat(25)]


def each(row, kitchen, *, function):
    """The library's function of that name at each."""
    return list(function(numbers(row["inputs"])))


ANSWERS: dict[str, Callable] = {
    "F1": factor_ratio,
    "F2": factor_ratio,
    "F3": factor_steps,
    "F4": salt_ratio,
    "F5a": yeast_ratio,
    "F5b": yeast_ratio,
    "F6": hours_to_double,
    "F7a": gas_of_hexose,
    "F7b": gas_of_hexose,
    "F8": dissolved_over_cells,
    "F9": mixed_volume,
    "F10": folded_proof,
    **{f"F11-{molality}": salt_solution for molality in ("0.5", "1", "2")},
    **{f"F12-{temperature}": factor_at for temperature in (10, 18, 30, 38)},
    **{f"F13-{place}": hours_to_double for place in range(1, 7)},
    **{f"F14-{place}": hours_to_double for place in range(1, 7)},
    "D1": flour_gas_ml,
    "D3": salted_gas,
    "D4": salted_gas,
    "D5": rise_at_the_punch,
    "D7": sponge_gas,
    "D8": poolish_gas,
    "D10": pup_loaf,
    "D12": factor_ratio,
    "D14": factor_ratio,
    "D15": factor_ratio,
    "D16": garrison_rise,
    "D18": hours_to_half_more,
    "D20": poolish_rise,
    "D21": hours_to_double_at_both,
    "D24": proof_in_both_boxes,
    "D25": loaf_after_a_box,
    "D26": cold_day_gas,
    "D27": halved_per_step,
    "D28": sweet_gas,
    "D29": minutes_to_three_quarters_more,
    "D30": spread_of_bakes,
    "D32": sponge_gas,
    "P1": tin_proof,
    "P2": free_proof,
    "P3": free_proof,
    "P4": roll_proof,
    "P5": water_ratio,
    "P6": water_ratio,
    "P7": hand_friction,
    "P8": back_over_ready,
    "W1": factor_rule,
    "W2": friction_of_batch,
    "W3": factor_rule,
    "W4": mean_of_three,
    "W5": factor_rule,
    "W6": factor_rule,
    "W7": trade_ice,
    "W8": trade_ice,
    "W9": exact_ice,
    "W10": exact_ice,
    "W11": partial(planned, mix=W11),
    "W12": partial(planned, mix=W12),
    "W13": partial(planned, mix=W13),
    "W14": warming_by_work,
    "H1": specific_heat,
    "H2": heat_removed,
    "H3": partial(pure, name="water"),
    "H11": partial(each, function=lf.saturation_pressure_pa),
    "H12": partial(each, function=lf.co2_solubility),
    "H13": partial(each, function=lf.air_pressure_pa),
    **{f"B{place}": factor_rule_of_any_unit for place in (1, 2, 3, 4, 6)},
    "B5": mean_of_three,
    "B7": ice_per_lb,
    "B8": ice_per_lb,
    "B9": ice_in_water,
    "B10": ice_in_water,
    "B11": dough_that_keeps_its_temperature,
    "B12": hydration,
    "B13": mechanical_development,
    "B14": partial(heat_of_solution, name="salt_g"),
    "B15": partial(heat_of_solution, name="sugar_g"),
    **{f"B{place}": specific_heat for place in (16, 17, 18)},
    "B19": flour_in_the_balance,
    "B20": white_bread,
    "B21": partial(pure, name="fat"),
    "X1": law_over_its_optimum,
    "X2": square_root_rates,
    "X3": arrhenius_ratios,
    "X4": energy_of_q10,
    "X5": q10_step,
    "X6": q10_step,
    "X7": gas_of_hexose_at_each,
    "X8": mixed_air,
    "X11": osmolality_of_doughs,
    "X12": activity_of_doughs,
}

# The split of gas between cells and water for given air and solubility is no function of the Python package.
ONLY_IN_CPP = {"X9", "X10"}
