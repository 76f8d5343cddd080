"""A second opinion on a day of dough: the same model put together anew, every stage solved by SciPy.

Units: °C, h, grams; per 100 g of flour (gluten counts as flour) mmol of CO2, g of gassing dry matter and mL.
Steps are ``Mix`` and ``Stage``; ``run`` carries a ``State`` through them and gives a ``Result`` for each stage.
"""

import bisect
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

T_MIN_C, T_OPT_C, T_MAX_C, T_REF_C = -2.0, 40.0, 45.0, 25.0
DRY_MATTER = {"instant": 0.30 / 0.33, "active_dry": 0.75, "active_dry_unwetted": 0.75, "compressed": 0.30}
START_UP_H = {"instant": 0.25, "active_dry": 0.25, "active_dry_unwetted": 0.8, "compressed": 0.2}
LAG_H, GROWTH_PER_H, GROWTH_G = 2.7, 0.24, 0.18
MMOL_PER_G_H = 11.0
DENSITY, VOID = 1.26, 0.06
HEAT_J_PER_MMOL = 50.7
GAS_CONSTANT, ZERO_C_K, ATMOSPHERE_PA = 8.314462618, 273.15, 101325.0
LOOK_AHEAD_H = 48.0


@dataclass(frozen=True)
class Parameters:
    """What the parameter sets do not have in common."""

    most_gas: float = 50.0
    lowest_activity: float = 0.88
    water_exponent: float = 0.5
    divide: float = 0.70  # shares of the gas in the cells that a handling leaves
    round: float = 0.60
    mould: float = 0.40
    fold: float = 0.85
    machine_mould: float = 0.20
    too_large_bulk: float = 0.60  # by the largest volume
    too_risen_in_tin_percent: float = 200.0

    too_large = {"tin": 0.87, "free": 0.65}  # noqa: RUF012 - the same in every set
    too_risen_free_percent = 130.0


SET_2026_2 = Parameters()
SET_2026_1 = Parameters(45.0, 0.92, 0.0, 0.5, 0.4, 0.2, too_large_bulk=0.87, too_risen_in_tin_percent=130.0)


# ---- what is asked ---------------------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Mix:
    """Ingredients in grams that join the dough so far, or start one, and the temperature of the dough after it."""

    dough_c: float
    flour_g: float = 0.0  # without the gluten
    water_g: float = 0.0
    salt_g: float = 0.0
    sugar_g: float = 0.0
    gluten_g: float = 0.0
    other_g: float = 0.0  # what is neither of these nor water: the solids of milk, egg and fat
    yeast: Sequence[tuple[str, float]] = ()  # kind and grams as weighed, each a cohort of its own


@dataclass(frozen=True)
class Piecewise:
    """A temperature linear between knots and constant outside; in process hours, or in those of the stage."""

    times_h: Sequence[float]
    temperatures_c: Sequence[float]
    of_stage: bool = False

    def __post_init__(self):
        if len(self.times_h) != len(self.temperatures_c) or np.any(np.diff(self.times_h) <= 0):
            raise ValueError("one temperature per time, and times that grow")

    def shifted(self, start_h):
        """The same in process hours, for a stage that starts at start_h."""
        return Piecewise(np.asarray(self.times_h) + start_h * self.of_stage, self.temperatures_c)

    def __call__(self, time_h):
        return np.interp(time_h, self.times_h, self.temperatures_c)


@dataclass(frozen=True)
class Daily:
    """A temperature that swings over 24 process hours."""

    mean_c: float
    half_range_k: float
    warmest_h: float

    def __call__(self, time_h):
        return self.mean_c + self.half_range_k * np.cos((2 * np.pi / 24) * (time_h - self.warmest_h))


Temperature = float | tuple[Sequence[float], Sequence[float]] | Callable[[float], float]


@dataclass(frozen=True)
class Stage:
    """A time of rest: at a given dough temperature, or as one node in surroundings; until an hour or until a rise."""

    name: str
    dough_c: Temperature | None = None
    ambient_c: Temperature | None = None
    capacity_j_k: float | None = None
    ua_w_k: float | None = None
    ua_humid_w_k: float | None = None  # in air that is 10 K warmer and humid; phased in from 0 K on
    flour_g_of_piece: float | None = None
    heat: bool = True
    until_h: float | None = None  # from the stage's start
    until_rise_percent: float | None = None
    folds_h: Sequence[float] = ()  # from the stage's start
    handling: Sequence[str] = ()  # at the end, one after the other
    standing: str = "tin"  # or "free"
    final_proof: bool = False
    acceptable: tuple[float, float] | None = None  # rises in percent; by the wanted rise if not given
    is_preferment: bool = False  # is mixed into a dough: ``run`` sees it
    limit_h: float = 1000.0  # a rise not reached by then is an error

    def __post_init__(self):
        if (self.dough_c is None) == (self.ambient_c is None):
            raise ValueError(f"{self.name}: either the dough's temperature or that of its surroundings")
        if (self.until_h is None) == (self.until_rise_percent is None):
            raise ValueError(f"{self.name}: either an hour or a rise ends it")
        if self.is_node and None in (self.capacity_j_k, self.ua_w_k, self.flour_g_of_piece):
            raise ValueError(f"{self.name}: capacity, conductance and flour of the piece are needed")
        if any(not 0 < fold_h < self.longest_h for fold_h in self.folds_h):
            raise ValueError(f"{self.name}: folds lie inside the stage")
        if self.until_rise_percent is not None and not self.until_rise_percent > 0:
            raise ValueError(f"{self.name}: a rise is above zero")

    @property
    def is_node(self):
        return self.ambient_c is not None

    @property
    def longest_h(self):
        return self.limit_h if self.until_h is None else self.until_h

    @property
    def highest_rise(self):
        """The highest acceptable rise in percent; none of a stage that ends by time."""
        if self.acceptable is not None:
            return self.acceptable[1]
        if self.until_rise_percent is None:
            return math.inf
        return (1.33 if self.final_proof else 1.5) * self.until_rise_percent


# ---- what a dough is -------------------------------------------------------------------------------------------------


def temperature_factor(t_c):
    """Speed at a temperature by that at 25 °C: the cardinal law, zero outside its temperatures."""
    return _cardinal(t_c) / _CARDINAL_REF if T_MIN_C < t_c < T_MAX_C else 0.0


def _cardinal(t_c):
    span = T_OPT_C - T_MIN_C
    below = span * (span * (t_c - T_OPT_C) - (T_OPT_C - T_MAX_C) * (T_OPT_C + T_MIN_C - 2 * t_c))
    return (t_c - T_MAX_C) * (t_c - T_MIN_C) ** 2 / below


_CARDINAL_REF = _cardinal(T_REF_C)


def water_activity(salt_percent, sugar_percent, water_percent):
    """Of the dough's water, from salt and from the sugar above 4 percent."""
    mol = 2 * 0.92 * salt_percent / 58.443 + 2 * max(0.0, sugar_percent - 4) / 342.3
    return math.exp(-0.0180153 * mol / (water_percent / 1000))


def _solute(activity, lowest):
    return max(0.0, (activity - lowest) / (1 - lowest))


@dataclass(frozen=True)
class Formula:
    """What has gone into the dough, in grams, and the air pressure around it."""

    pressure_pa: float
    parameters: Parameters = SET_2026_2
    all_flour_g: float = 0.0
    gluten_g: float = 0.0
    water_g: float = 0.0
    salt_g: float = 0.0
    sugar_g: float = 0.0
    yeast_g: float = 0.0
    other_g: float = 0.0

    def plus(self, mix):
        return Formula(
            self.pressure_pa,
            self.parameters,
            self.all_flour_g + mix.flour_g + mix.gluten_g,
            self.gluten_g + mix.gluten_g,
            self.water_g + mix.water_g,
            self.salt_g + mix.salt_g,
            self.sugar_g + mix.sugar_g,
            self.yeast_g + sum(grams for _, grams in mix.yeast),
            self.other_g + mix.other_g,
        )

    def percent(self, grams):
        return 100 * grams / self.all_flour_g

    @cached_property
    def activity(self):
        return water_activity(self.percent(self.salt_g), self.percent(self.sugar_g), self.percent(self.water_g))

    @cached_property
    def solute_factor(self):
        lowest = self.parameters.lowest_activity
        by_activity = _solute(self.activity, lowest) / _solute(water_activity(2, 0, 65), lowest)
        return by_activity * (self.percent(self.water_g) / 65) ** self.parameters.water_exponent

    @cached_property
    def most_gas(self):
        return self.parameters.most_gas + 11.10 * self.percent(self.sugar_g)

    @cached_property
    def dough_ml(self):
        everything_g = self.all_flour_g + self.water_g + self.salt_g + self.sugar_g + self.yeast_g + self.other_g
        return self.percent(everything_g) / DENSITY

    @cached_property
    def start_ml(self):
        return self.dough_ml / (1 - VOID)

    @cached_property
    def onset(self):
        return 2.6 * (1 + 0.05 * self.percent(self.gluten_g))

    @cached_property
    def limit(self):
        return 4.8 * (1 + 0.05 * self.percent(self.gluten_g))

    def dry_pressure_pa(self, t_c):
        """Pressure of the gases in a cell other than water vapour (Buck 1996)."""
        return self.pressure_pa - self.activity * 611.21 * np.exp((18.678 - t_c / 234.5) * t_c / (257.14 + t_c))

    def ml_per_mmol(self, t_c):
        return 1e3 * GAS_CONSTANT * (t_c + ZERO_C_K) / self.dry_pressure_pa(t_c)

    def soluble_mmol(self, t_c):
        """CO2 in the dough's water under cells of nothing but CO2 (Weiss 1974)."""
        hundred_k = (t_c + ZERO_C_K) / 100
        mol_per_kg_atm = np.exp(-60.2409 + 93.4517 / hundred_k + 23.3585 * np.log(hundred_k))
        return mol_per_kg_atm * self.dry_pressure_pa(t_c) / ATMOSPHERE_PA * self.percent(self.water_g)


def pressure_pa(altitude_m):
    return ATMOSPHERE_PA * (1 - 0.0065 * altitude_m / 288.15) ** 5.255876


def _none():
    return np.empty(0)


@dataclass(frozen=True, eq=False)
class State:
    """The dough at a moment. Arrays hold one number per cohort of yeast."""

    formula: Formula
    time_h: float
    temperature_c: float
    made: float = 0.0
    # The CO2 and air held at the anchor, which is the start or the last handling.
    air: float = 0.0
    co2: float = 0.0
    made_at_anchor: float = 0.0
    anchor_ratio: float = 1.0
    dose: np.ndarray = field(default_factory=_none)
    tau_h: np.ndarray = field(default_factory=_none)
    age_h: np.ndarray = field(default_factory=_none)
    mass: np.ndarray = field(default_factory=_none)
    left: np.ndarray = field(default_factory=_none)  # of the share in the growth
    share: np.ndarray = field(default_factory=_none)
    past: np.ndarray = field(default_factory=lambda: np.empty(0, dtype=bool))

    def unleaked(self, made=None):
        """CO2 held if none had leaked since the anchor."""
        return self.co2 + (self.made if made is None else made) - self.made_at_anchor

    def cells(self, co2, t_c):
        """The part of the CO2 that is in the cells."""
        b = self.air + self.formula.soluble_mmol(t_c) - co2
        larger = (np.abs(b) + np.sqrt(b * b + 4 * co2 * self.air)) / 2
        return np.where(b > 0, co2 * self.air / larger, larger)

    def ratio(self, co2, t_c):
        """Volume by the volume right after mixing."""
        formula = self.formula
        gas_ml = (self.air + self.cells(co2, t_c)) * formula.ml_per_mmol(t_c)
        return (formula.dough_ml + gas_ml) / formula.start_ml

    def held_ratio(self, made=None, t_c=None):
        """The same with the leak past the onset; at this moment, or at arrays of gas made and temperature."""
        formula = self.formula
        free = self.ratio(self.unleaked(made), self.temperature_c if t_c is None else t_c)
        onset = max(formula.onset, self.anchor_ratio)
        over = np.maximum(free - onset, 0.0)
        leaky = formula.limit - (formula.limit - onset) * np.exp(-over / (formula.limit - formula.onset))
        return np.where(free <= onset, free, leaky)

    def held_co2(self):
        """CO2 in the dough after what has leaked."""
        formula, t_c = self.formula, self.temperature_c
        held = float(self.held_ratio())
        if held < max(formula.onset, self.anchor_ratio):
            return self.unleaked()
        cells = (held * formula.start_ml - formula.dough_ml) / formula.ml_per_mmol(t_c) - self.air
        return float(cells + formula.soluble_mmol(t_c) * cells / (self.air + cells))

    def anchored(self):
        """The same state, its anchor ratio that of its CO2 and air now."""
        return replace(self, anchor_ratio=float(self.ratio(self.co2, self.temperature_c)), made_at_anchor=self.made)

    def handled(self, name):
        """After a handling, which leaves its share of the gas in the cells."""
        co2, share = self.held_co2(), getattr(self.formula.parameters, name)
        in_cells = self.cells(co2, self.temperature_c)
        return replace(self, co2=float(co2 - in_cells + share * in_cells), air=share * self.air).anchored()

    def mixed(self, mix):
        """After ingredients have joined."""
        formula = self.formula.plus(mix)
        if formula.all_flour_g <= 0 or formula.water_g <= 0:
            raise ValueError("a dough has flour and water")
        w = self.formula.all_flour_g / formula.all_flour_g
        dissolved = 0.0
        if w > 0:
            held = self.held_co2()
            dissolved = float(held - self.cells(held, self.temperature_c))
        added = [(kind, grams) for kind, grams in mix.yeast if grams > 0]
        new = np.array([formula.percent(grams) * DRY_MATTER[kind] for kind, grams in added])
        mass = np.concatenate([w * self.mass, new])
        left, share = self.left, self.share
        if added or w < 1:
            old_left = self.left.sum() if self.left.size else GROWTH_G
            portion = mass / mass.sum() if mass.size else mass
            left = portion * (w * old_left + (1 - w) * GROWTH_G)
            share = portion * GROWTH_G
        return State(
            formula=formula,
            time_h=self.time_h,
            temperature_c=mix.dough_c,
            made=w * self.made,
            air=VOID * formula.start_ml / float(formula.ml_per_mmol(mix.dough_c)),
            co2=w * dissolved,
            dose=np.concatenate([w * self.dose, new]),
            tau_h=np.concatenate([self.tau_h, [START_UP_H[kind] for kind, _ in added]]),
            age_h=np.concatenate([self.age_h, np.zeros(new.size)]),
            mass=mass,
            left=left,
            share=share,
            past=np.concatenate([self.past, np.zeros(new.size, dtype=bool)]),
        ).anchored()


# ---- what comes of it ------------------------------------------------------------------------------------------------


@dataclass(frozen=True, eq=False)
class Series:
    """A stage over time."""

    time_h: np.ndarray
    temperature_c: np.ndarray
    rise_percent: np.ndarray
    made: np.ndarray


@dataclass(frozen=True, eq=False)
class Result:
    """A stage that has passed. All but ``state`` is before the handling at its end."""

    name: str
    start_h: float
    end_h: float
    temperature_c: float
    rise_percent: float
    held_ratio: float
    equivalent_h: np.ndarray  # the age of each cohort, in the order in which they were added
    made: float
    heat_made_j: float  # of a piece in surroundings, else nan
    heat_lost_j: float
    state: State
    evaluations: int
    over_proofed_h: float  # infinite if it is not within LOOK_AHEAD_H of the end
    be_back_by_h: float  # the same, or when it passes the highest acceptable rise, whichever is first
    _ratio_at_start: float
    _segments: list  # the state at the start of each, and its dense solution
    _temperature: Callable | None
    _outside: Callable
    _end: State  # before the handling

    def at(self, time_h):
        """The stage at process hours, from its dense solution; at a fold, what is right after it."""
        time_h = np.asarray(time_h, dtype=float)
        if np.any((time_h < self.start_h) | (time_h > self.end_h)):
            raise ValueError("outside the stage")
        starts = [state.time_h for state, _ in self._segments]
        which = np.searchsorted(starts, time_h, side="right") - 1
        temperature_c, made, ratio = (np.empty(time_h.shape) for _ in range(3))
        for i in np.unique(which):
            here = which == i
            state, solution = self._segments[i]
            y = solution(time_h[here])
            made[here] = y[state.mass.size + 1]
            temperature_c[here] = self._temperature(time_h[here]) if self._temperature else y[state.mass.size + 2]
            ratio[here] = state.held_ratio(made[here], temperature_c[here])
        return Series(time_h, temperature_c, 100 * (ratio / self._ratio_at_start - 1), made)

    def series(self, points=201):
        return self.at(np.linspace(self.start_h, self.end_h, points))


def _temperature(given, start_h):
    """A temperature as a function of process hours that takes arrays, and the hours of its knots."""
    if isinstance(given, tuple):
        given = Piecewise(*given)
    if isinstance(given, Piecewise):
        given = given.shifted(start_h)
        return given, [float(knot) for knot in given.times_h]
    if callable(given):
        return given, []
    return (lambda time_h: given + 0.0 * time_h), []


def _phased_in(share):
    within = min(max(share, 0.0), 1.0)
    return within * within * (3 - 2 * within)


def _slopes(state, stage, outside):
    """The right-hand side from a state on: of clock, masses, gas made, and a node's temperature and loss."""
    n = state.mass.size
    dose, age_h, total = state.dose, state.age_h, state.mass + state.left
    minus_rate = -1 / state.tau_h
    growth = np.zeros(n)
    growth[state.past] = GROWTH_PER_H / state.share[state.past]
    solute, most_gas = state.formula.solute_factor, state.formula.most_gas
    if stage.is_node:
        capacity, loss_j_h_k = stage.capacity_j_k, 3600 * stage.ua_w_k
        humid_j_h_k = 0 if stage.ua_humid_w_k is None else 3600 * (stage.ua_humid_w_k - stage.ua_w_k)
        j_per_mmol = HEAT_J_PER_MMOL * stage.flour_g_of_piece / 100 * stage.heat

    def slopes(t, y):
        t_c = float(y[n + 2]) if stage.is_node else float(outside(t))
        speed = temperature_factor(t_c) * solute
        mass = y[1 : n + 1]
        work = mass - dose * np.exp((age_h + y[0]) * minus_rate)
        made = speed * (1 - y[n + 1] / most_gas) * MMOL_PER_G_H * work.sum()
        result = np.empty_like(y)
        result[0] = speed
        result[1 : n + 1] = speed * growth * mass * (total - mass)
        result[n + 1] = made
        if stage.is_node:
            colder = float(outside(t)) - t_c
            lost = -(loss_j_h_k + humid_j_h_k * _phased_in(colder / 10)) * colder
            result[n + 2] = (j_per_mmol * made - lost) / capacity
            result[n + 3] = lost
        return result

    return slopes


def _limits(stage, formula, ratio_at_start):
    """Volumes by that after mixing: over-proofed, and the highest acceptable."""
    p, largest = formula.parameters, formula.limit
    highest = ratio_at_start * (1 + stage.highest_rise / 100)
    limits = [p.too_large[stage.standing] * largest]
    if stage.final_proof:
        rise = p.too_risen_in_tin_percent if stage.standing == "tin" else p.too_risen_free_percent
        limits.append(ratio_at_start * (1 + rise / 100))
    elif math.isfinite(highest):
        limits.append(highest)
    elif not stage.is_preferment:
        limits.append(p.too_large_bulk * largest)
    return min(limits), highest


def _first_above(ratio_of, segments, limit):
    """The first process hour at which a volume is reached."""
    for first_h, last_h in segments:
        if last_h - first_h < 1e-8:
            continue
        hours = np.linspace(first_h, last_h, 400)
        inside = hours[1:-1]  # the ends belong to what comes before and after a fold
        above = np.concatenate([[ratio_of(first_h + 1e-9)], ratio_of(inside), [ratio_of(last_h - 1e-9)]]) >= limit
        if above[0]:
            return first_h
        if above.any():
            i = int(np.argmax(above))
            low, high = max(hours[i - 1], first_h + 1e-9), min(hours[i], last_h - 1e-9)
            return float(brentq(lambda h: float(ratio_of(h)) - limit, low, high, xtol=1e-12))
    return math.inf


def _lateness(result, stage, options):
    """When a dough that nobody touches is over-proofed, and when it is too late for it."""
    over, highest = _limits(stage, result.state.formula, result._ratio_at_start)
    outside = result._temperature or result._outside
    where = {"ambient_c": outside} if stage.is_node else {"dough_c": outside}
    left_alone = replace(stage, until_h=LOOK_AHEAD_H, until_rise_percent=None, folds_h=(), handling=(), **where)
    after = _ferment(result._end, left_alone, *options, looks_ahead=False)
    told = []
    for limit in (over, highest):
        when = math.inf
        for part in (result, after):
            starts = [state.time_h for state, _ in part._segments]
            spans = list(zip(starts, [*starts[1:], part.end_h], strict=True))
            start = part._ratio_at_start
            ratio_of = lambda h, part=part, start=start: (1 + part.at(h).rise_percent / 100) * start  # noqa: E731
            when = _first_above(ratio_of, [span for span in spans if span[1] > span[0]], limit)
            if when < math.inf:
                break
        told.append(when)
    return told[0], min(told)


def _ferment(state, stage, rtol, atol, method, max_step_h, looks_ahead=True):
    """The result of a stage, segment by segment: from one fold, knot or end of a lag to the next."""
    start_h = state.time_h
    outside, knots = _temperature(stage.ambient_c if stage.is_node else stage.dough_c, start_h)
    state = replace(
        state,
        temperature_c=state.temperature_c if stage.is_node else float(outside(start_h)),
        past=state.past | (state.age_h >= LAG_H),
    )
    n = state.mass.size
    started = state
    ratio_at_start = float(state.held_ratio())
    end_h = start_h + stage.longest_h
    folds = {start_h + fold_h for fold_h in stage.folds_h}
    stops = sorted({end_h, *folds, *(knot for knot in knots if start_h < knot < end_h)})
    # A value's size, below which only its absolute error counts.
    sizes = np.concatenate([[1e-3], np.full(n, 1e-4), [1e-3], [1.0, stage.capacity_j_k] if stage.is_node else []])
    lost_j, evaluations, segments = 0.0, 0, []
    done = False
    while not done:
        stop = stops[bisect.bisect_right(stops, state.time_h)]
        y = np.concatenate([[0.0], state.mass, [state.made], [state.temperature_c, lost_j] if stage.is_node else []])
        events = []
        to_lag = np.where(state.past, np.inf, LAG_H - state.age_h)
        if not state.past.all():
            events.append(_lag_ends(to_lag.min()))
        if stage.until_rise_percent is not None:
            target = ratio_at_start * (1 + stage.until_rise_percent / 100)
            events.append(_risen(state, target, None if stage.is_node else outside))
        solution = solve_ivp(
            _slopes(state, stage, outside),
            (state.time_h, stop),
            y,
            method=method,
            rtol=rtol,
            atol=atol * sizes,
            events=events or None,
            dense_output=True,
            max_step=max_step_h,
        )
        if not solution.success:
            raise RuntimeError(f"{stage.name}: {solution.message}")
        evaluations += solution.nfev
        segments.append((state, solution.sol))
        fired = [times.size > 0 for times in solution.t_events or ()]
        time_h, y = float(solution.t[-1]), solution.y[:, -1]
        past = state.past
        if not past.all() and fired[0]:
            past = past | (to_lag <= to_lag.min() + 1e-12)
        state = replace(
            state,
            time_h=time_h,
            temperature_c=float(y[n + 2] if stage.is_node else outside(time_h)),
            age_h=state.age_h + y[0],
            mass=y[1 : n + 1],
            left=state.left - (y[1 : n + 1] - state.mass),
            made=float(y[n + 1]),
            past=past,
        )
        lost_j = float(y[n + 3]) if stage.is_node else math.nan
        if stage.until_rise_percent is not None and fired[-1]:
            done = True
        elif time_h == end_h:
            if stage.until_rise_percent is not None:
                raise RuntimeError(f"{stage.name}: no rise of {stage.until_rise_percent} % in {stage.limit_h} h")
            done = True
        elif time_h in folds:
            state = state.handled("fold")
    held = float(state.held_ratio())
    made_j = math.nan
    if stage.is_node:
        made_j = HEAT_J_PER_MMOL * stage.flour_g_of_piece / 100 * stage.heat * (state.made - started.made)
    after = state
    for name in stage.handling:
        after = after.handled(name)
    result = Result(
        name=stage.name,
        start_h=start_h,
        end_h=state.time_h,
        temperature_c=state.temperature_c,
        rise_percent=100 * (held / ratio_at_start - 1),
        held_ratio=held,
        equivalent_h=state.age_h,
        made=state.made,
        heat_made_j=made_j,
        heat_lost_j=lost_j,
        state=after,
        evaluations=evaluations,
        over_proofed_h=math.inf,
        be_back_by_h=math.inf,
        _ratio_at_start=ratio_at_start,
        _segments=segments,
        _temperature=None if stage.is_node else outside,
        _outside=outside,
        _end=state,
    )
    if not looks_ahead or state.mass.size == 0:
        return result
    over_h, late_h = _lateness(result, stage, (rtol, atol, method, max_step_h))
    return replace(result, over_proofed_h=over_h, be_back_by_h=late_h)


def _lag_ends(remaining_h):
    def event(_, y):
        return y[0] - remaining_h

    event.terminal, event.direction = True, 1
    return event


def _risen(state, target_ratio, outside):
    n = state.mass.size

    def event(t, y):
        return float(state.held_ratio(y[n + 1], y[n + 2] if outside is None else outside(t))) - target_ratio

    event.terminal, event.direction = True, 1
    return event


def run(
    steps,
    altitude_m=0.0,
    rtol=1e-9,
    atol=None,
    *,
    method="DOP853",
    max_step_h=np.inf,
    state=None,
    parameters=SET_2026_2,
):
    """The result of each stage of the steps, from process hour 0, or from the state given.

    ``atol`` is counted in sizes that are small for each quantity, and is rtol if not given. A rise that is reached and
    lost again inside one step of the solver is not seen: ``max_step_h`` makes the steps shorter.
    """
    atol = rtol if atol is None else atol
    if state is None:
        state = State(Formula(pressure_pa(altitude_m), parameters), time_h=0.0, temperature_c=math.nan)
    results = []
    for step, following in zip(steps, [*steps[1:], None], strict=True):
        if isinstance(step, Mix):
            state = state.mixed(step)
        elif state.formula.all_flour_g <= 0:
            raise ValueError("a dough is mixed first")
        else:
            step = replace(step, is_preferment=isinstance(following, Mix) and following.flour_g > 0)
            results.append(_ferment(state, step, rtol, atol, method, max_step_h))
            state = results[-1].state
    return results


# ---- self-check ------------------------------------------------------------------------------------------------------


def _check():
    def dough(percent, dough_c):
        return Mix(dough_c, flour_g=1000, water_g=650, salt_g=20, yeast=[("instant", 10 * percent)])

    for percent, dough_c, low_h, high_h, parameters in (
        (0.2, 18, 7.9864, 7.9880, SET_2026_1),
        (1.0, 25, 1.0844, 1.0846, SET_2026_1),
        (1.0, 25, 1.0761, 1.0763, SET_2026_2),
    ):
        double = Stage("double", dough_c=dough_c, until_rise_percent=100)
        for rtol in (1e-6, 1e-9, 1e-12):
            (result,) = run([dough(percent, dough_c), double], rtol=rtol, parameters=parameters)
            print(f"{percent} % at {dough_c} °C, rtol {rtol:.0e}: doubled at {result.end_h:.10f} h")
            assert low_h <= result.end_h <= high_h
            assert abs(result.state.held_ratio() - 2) < 1e-9

    node = {"capacity_j_k": 3000.0, "ua_w_k": 0.35, "flour_g_of_piece": 500.0}
    steps = [
        Mix(24, flour_g=300, water_g=300, yeast=[("instant", 0.5)]),
        Stage("poolish", ambient_c=Daily(21, 3, 8), until_h=11, **node),
        Mix(23, flour_g=650, water_g=350, salt_g=19, sugar_g=40, gluten_g=10, yeast=[("compressed", 6)]),
        Stage("bulk", ambient_c=((0, 12, 14), (20, 21, 26)), until_h=4, folds_h=(0.5, 3), handling=("divide",), **node),
        Stage("cold", ambient_c=4, until_h=14, handling=("mould",), **node),
        Stage("proof", ambient_c=28, until_rise_percent=140, **node),
    ]
    results = run(steps, altitude_m=400)
    others = [
        run(steps, altitude_m=400, rtol=1e-12),
        run(steps, altitude_m=400, rtol=1e-6),
        run(steps, altitude_m=400, rtol=1e-11, method="LSODA"),
    ]
    begin_c = 24
    for result, stage, tight, rough, lsoda in zip(results, steps[1:2] + steps[3:], *others, strict=True):
        outside, _ = _temperature(stage.ambient_c, result.start_h)
        series = result.series(20001)
        by_series_j = 3600 * stage.ua_w_k * np.trapezoid(series.temperature_c - outside(series.time_h), series.time_h)
        off_j = result.heat_made_j - result.heat_lost_j - stage.capacity_j_k * (result.temperature_c - begin_c)
        begin_c = 23 if result.name == "poolish" else result.temperature_c
        print(
            f"{result.name}: ends {result.end_h:.6f} h, {result.temperature_c:.4f} °C, "
            f"rise {result.rise_percent:.4f} %, held {result.held_ratio:.4f}, made {result.made:.4f} mmol\n"
            f"    heat made {result.heat_made_j:.3f} J, lost {result.heat_lost_j:.3f} J, balance off by {off_j:.0e} J, "
            f"loss by series off by {by_series_j - result.heat_lost_j:.0e} J"
        )
        for name, other in (("rtol 1e-12", tight), ("rtol 1e-6", rough), ("LSODA", lsoda)):
            off_h, off_percent = other.end_h - result.end_h, other.rise_percent - result.rise_percent
            print(f"    {name}: {off_h:+.0e} h, {off_percent:+.0e} %, {other.evaluations} evaluations")
            assert abs(off_h) < 1e-5
            assert abs(off_percent) < 1e-3
        assert abs(off_j) < 1e-4
        assert abs(by_series_j - result.heat_lost_j) < 0.05
        assert abs(series.rise_percent[-1] - result.rise_percent) < 1e-6
        assert abs(series.made[-1] - result.made) < 1e-9


if __name__ == "__main__":
    _check()
