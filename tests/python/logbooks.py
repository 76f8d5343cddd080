"""Invented logbooks: kitchens drawn from the prior, and what would have been seen of their bakes."""

import math
from dataclasses import dataclass

import numpy as np

import libferment as lf

ROWS = [row for row in lf.parameters() if row.scale != "fixed"]
NEVER = 16.0  # h: so long is a dough watched


@dataclass(frozen=True)
class Bake:
    """A dough at one temperature, and the rise that is looked for."""

    dough_c: float
    yeast_percent: float
    salt_percent: float
    water_percent: float
    rise_percent: float

    def hours(self, kitchen):
        try:
            return lf.hours_to_rise(
                self.rise_percent,
                dough_c=self.dough_c,
                yeast_percent=self.yeast_percent,
                salt_percent=self.salt_percent,
                water_percent=self.water_percent,
                kitchen=kitchen,
            )
        except lf.NoSolution:
            return math.inf

    def log(self, looks):
        mix = lf.Mix(
            flour_g=1000,
            water_g=10 * self.water_percent,
            salt_g=10 * self.salt_percent,
            instant_g=10 * self.yeast_percent,
            dough_c=self.dough_c,
        )
        held = lf.Surroundings.dough(self.dough_c)
        bulk = lf.Stage("bulk", surroundings=held, until_h=max(look.time_h for look in looks))
        return lf.Log(process=lf.Process([mix, bulk]), seen=looks)


class World:
    """What the truth is drawn from; another world than the fit's, if its methods are."""

    def __init__(self, seed, fit=None):
        self.random = np.random.default_rng(seed)
        self.fit = lf.Kitchen() if fit is None else fit

    def kitchen(self):
        """Every parameter from its prior, inside the bounds of the table."""
        while True:
            values = {}
            for row in ROWS:
                by = row.prior_sd * self.random.standard_normal()
                values[row.name] = lf.moved(row, getattr(self.fit, row.name), by)
            inside = all(row.low < values[row.name] < row.high for row in ROWS)
            if inside and values["retention_limit"] > values["retention_onset"] + 0.3:
                return self.fit.replace(**values)

    def bake(self):
        random = self.random
        return Bake(
            random.uniform(16, 28),
            math.exp(random.uniform(math.log(0.1), math.log(1.5))),
            random.uniform(1.8, 2.2),
            random.uniform(60, 72),
            random.uniform(30, 150),
        )

    def true_hours(self, bake, kitchen):
        effect = math.hypot(self.fit.bake_sd, self.fit.model_sd) * self.random.standard_normal()
        return bake.hours(kitchen.replace(gassing_rate=min(kitchen.gassing_rate * math.exp(effect), 40)))

    def log(self, kitchen):
        """A bake watched to its end, or looked at once or twice by the clock."""
        random, bake = self.random, self.bake()
        logged_h = self.true_hours(bake, kitchen) * math.exp(self.fit.log_time_scale * random.standard_t(4))
        way = random.uniform()
        if way < 0.6:
            was, time_h = ("not_yet", NEVER) if logged_h > NEVER else ("at", logged_h)
            return bake.log([lf.Sighting("bulk", time_h, bake.rise_percent, was=was)])
        usual_h = bake.hours(self.fit)
        first_h, second_h = sorted(min(usual_h, NEVER) * np.exp(0.4 * random.standard_normal(2)))
        if way < 0.85:
            was = "not_yet" if logged_h > first_h else "past"
            return bake.log([lf.Sighting("bulk", first_h, bake.rise_percent, was=was)])
        if logged_h <= first_h:
            return bake.log([lf.Sighting("bulk", first_h, bake.rise_percent, was="past")])
        if logged_h > second_h:
            return bake.log([lf.Sighting("bulk", second_h, bake.rise_percent, was="not_yet")])
        return bake.log([lf.Sighting("bulk", second_h, bake.rise_percent, was="past", not_yet_h=first_h)])

    def logs(self, kitchen, count):
        return [self.log(kitchen) for _ in range(count)]

    def whole_day(self, kitchen):
        """A log of bulk, bench rest and proof in a room; the plan of it, and when its proof is really ready.

        A day whose dough never gets there is another day.
        """
        random = self.random
        while True:
            room = lf.Surroundings.room(random.uniform(16, 26))
            mix = lf.Mix(
                flour_g=900,
                water_g=9 * random.uniform(60, 72),
                salt_g=18,
                instant_g=9 * math.exp(random.uniform(math.log(0.3), math.log(1.2))),
                dough_c=random.uniform(20, 27),
            )
            bulk = lf.Stage("bulk", surroundings=room, until_rise_percent=90, handling=["divide", "round"])
            rest = lf.Stage("rest", surroundings=room, until_h=0.33, handling=["mould"])
            proof = lf.Stage("proof", piece=lf.Piece.oblong(500), surroundings=room, until_rise_percent=70)
            plan = lf.Process([mix, bulk, rest, proof])
            effect = math.hypot(self.fit.bake_sd, self.fit.model_sd) * random.standard_normal()
            true = kitchen.replace(gassing_rate=min(kitchen.gassing_rate * math.exp(effect), 40))
            try:
                real = lf.simulate(plan, true, every_min=0)
                risen_60 = plan.replace(steps=[mix, bulk.replace(until_rise_percent=60)])
                bulk_60_h = lf.simulate(risen_60, true, every_min=0).stages[0].end_h
                early = plan.replace(steps=[mix, bulk, rest, proof.replace(until_rise_percent=40)])
                proof_40_h = lf.simulate(early, true, every_min=0).stages[2].end_h
            except lf.NoSolution:
                continue
            ends = [stage.end_h for stage in real.stages]
            done = plan.replace(
                steps=[
                    mix,
                    bulk.replace(until_rise_percent=None, ends_h=ends[0]),
                    rest,
                    proof.replace(until_rise_percent=None, ends_h=ends[2] + 2),
                ]
            )
            seen = []
            for name, begin_h, hour, rise in (("bulk", 0, bulk_60_h, 60), ("proof", ends[1], proof_40_h, 40)):
                logged_h = begin_h + (hour - begin_h) * math.exp(self.fit.log_time_scale * random.standard_t(4))
                end_h = ends[0] if name == "bulk" else ends[2] + 2
                was = "at" if logged_h < end_h else "not_yet"
                seen.append(lf.Sighting(name, min(logged_h, end_h), rise, was=was))
            return lf.Log(process=done, seen=seen), plan, ends[2]


class Cooling(World):
    """The dough really cools by up to 4 K while the log says that it stays."""

    def true_hours(self, bake, kitchen):
        colder = Bake(
            bake.dough_c - self.random.uniform(0, 3),
            bake.yeast_percent,
            bake.salt_percent,
            bake.water_percent,
            bake.rise_percent,
        )
        return super().true_hours(colder, kitchen)


class SmoothError(World):
    """A smooth error of 12 % over temperature and dose, another one in every kitchen."""

    def kitchen(self):
        self.phases = self.random.uniform(0, 2 * math.pi, 2)
        return super().kitchen()

    def true_hours(self, bake, kitchen):
        wave = math.sin(bake.dough_c / 3 + self.phases[0]) + math.sin(2 * math.log(bake.yeast_percent) + self.phases[1])
        return super().true_hours(bake, kitchen) * math.exp(0.12 * wave)


class NoGrowth(World):
    """The yeast does not grow at all."""

    def kitchen(self):
        return super().kitchen().replace(growth_increment=0.01, growth_lag_h=12)


def interval_holds(kitchen, row, value, sd, level_sds):
    """Whether a true value lies in the interval of a learned one."""
    learned = getattr(kitchen, row.name)
    return lf.moved(row, learned, -level_sds * sd) < value < lf.moved(row, learned, level_sds * sd)


def hours_of_draws(bake, kitchen, draws=256):
    """The hours of a next bake, of every draw, rising."""
    return np.sort([bake.hours(draw) for draw in lf.draws_of(kitchen, draws=draws)])
