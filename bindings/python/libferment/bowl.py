"""The bowl of a day: its mix, the water plan, and what logged batches say about the mixing."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from libferment._core import (
    BatchMean,
    Bowl,
    ByNetGain,
    Mix,
    WaterPlan,
    friction_from_batches,
    mixing_minutes,
    net_gain_from_batches,
    net_gain_from_friction,
    net_gain_of,
    water_by_heat_balance,
)
from libferment._errors import InvalidInput
from libferment.day import Batch, Day

ASSUMED_FLOUR_G = 500.0
SD_OF_A_FRICTION = 2.0
"""kJ/kg: a friction from elsewhere tells less than a batch; engineering estimate, no source."""


@dataclass(frozen=True)
class Learned:
    """What logged batches say: the friction of the factor rule, K, and the net mixing gain, kJ per kg of dough."""

    friction: BatchMean
    net_gain: BatchMean
    minutes: float
    """Minutes of today's mixing in the room, whose exchange with it is not in the net gain; 0 if it is."""


def formula_of(day: Day) -> dict[str, Any]:
    """Collect the day's formula in percent, as Mix.from_percent takes it. Raises InvalidInput."""
    percent = {key: value for key, value in day.dough.items() if key not in ("yeast_percent", "altitude_m")}
    yeast = day.yeast.replace("_unwetted", "")
    percent[f"{yeast}_percent"] = day.dough.get("yeast_percent", 0.0)
    preferment = day.preferment
    if preferment is not None:
        preferment = preferment.replace(temperature_c=day.temperatures_c.get("preferment"))
    return {
        "flour_g": ASSUMED_FLOUR_G if day.flour_g is None else day.flour_g,
        "flours": list(day.flours),
        "waters": [] if day.yeast_water is None else [day.yeast_water],
        "preferments": [] if preferment is None else [preferment],
        **percent,
    }


def mix_of(day: Day) -> Mix:
    """Build the day's mix. Raises InvalidInput naming what is missing or cannot be."""
    if "room" not in day.temperatures_c:
        raise InvalidInput("the water temperature needs [today] room (--room); measure it where the dough is mixed")
    if day.flour_g is None and (day.bowl or day.yeast_water or day.preferment):
        raise InvalidInput(
            "beside weights of bowl, yeast_water or preferment, the flour's is needed: [dough] flour_g (--flour-g)"
        )
    if "preferment" in day.temperatures_c and day.preferment is None:
        raise InvalidInput(
            "the preferment has a temperature but no weight; give [preferment] flour_g and water_g (--preferment-g)"
        )
    names = ("flour", "tap", "milk", "egg", "butter", "ice")
    temperatures: dict[str, Any] = {
        f"{name}_c": day.temperatures_c[name] for name in names if name in day.temperatures_c
    }
    bowl = Bowl() if day.bowl is None else day.bowl.replace(temperature_c=day.temperatures_c.get("bowl"))
    return Mix.from_percent(
        room_c=day.temperatures_c["room"],
        bowl=bowl,
        mixing=day.mixing,
        rest_h=day.rest_h,
        **formula_of(day),
        **temperatures,
    )


def _mix_of_batch(day: Day, batch: Batch) -> Mix:
    """Build a batch's mix: today's formula and bowl, everything else as it was then."""
    mixing = ByNetGain(0, minutes=batch.minutes)
    then = replace(day, temperatures_c=batch.temperatures_c, rest_h=batch.rest_h, mixing=mixing)
    return mix_of(then).replace(water_c=batch.water_c)


def learned_from(day: Day) -> Learned:
    """Work out what the day's batches say of friction and net gain. Raises InvalidInput, naming the batch."""
    if not day.batches:
        raise InvalidInput(
            "no batch is logged; write a [[batch]] with dough, water, flour, room (--dough, --water, --flour, --room)"
        )
    dough_c = [batch.dough_c for batch in day.batches]
    temperatures = [batch.temperatures_c for batch in day.batches]
    preferments = None
    if day.preferment is not None:
        preferments = [known.get("preferment", known["room"]) for known in temperatures]
    friction = friction_from_batches(
        dough_c=dough_c,
        flour_c=[known["flour"] for known in temperatures],
        room_c=[known["room"] for known in temperatures],
        water_c=[batch.water_c for batch in day.batches],
        preferment_c=preferments,
    )
    gain = net_gain_from_batches([_mix_of_batch(day, batch) for batch in day.batches], dough_c)
    known = [batch.minutes for batch in day.batches if batch.minutes]
    minutes = sum(known) / len(known) if known else 0.0
    if known and day.mixing is not None:
        minutes = mixing_minutes(day.mixing)
    return Learned(friction, gain, minutes)


def planned_mix_of(day: Day) -> tuple[Mix, float, float | None]:
    """Build the mix with its mixing heat, and give the desired dough and the friction of the rule beside it.

    Logged batches give friction and net gain where the day does not state them; a friction gives a net gain if the day
    says in how warm a room it was found. Raises InvalidInput.
    """
    if day.desired_c is None:
        raise InvalidInput("the water temperature needs [water] desired (--desired)")
    if day.friction_at_c is not None and day.friction_k is None:
        raise InvalidInput("[water] friction_at (--friction-at) needs the friction found there: friction (--friction)")
    mix, friction_k = mix_of(day), day.friction_k
    if day.batches:
        learned = learned_from(day)
        if not isinstance(day.mixing, ByNetGain):
            mix = mix.replace(mixing=net_gain_of(learned.net_gain, learned.minutes))
        friction_k = learned.friction.mean if friction_k is None else friction_k
    elif friction_k is not None and day.friction_at_c is not None and mix.mixing is None:
        gain = net_gain_from_friction(mix, friction_k, day.desired_c, measured_at_c=day.friction_at_c)
        mix = mix.replace(mixing=ByNetGain(gain, SD_OF_A_FRICTION))
    return mix, day.desired_c, friction_k


@dataclass(frozen=True)
class Plan:
    """A day's mix with its mixing heat, and the water it needs."""

    mix: Mix
    water: WaterPlan


def plan_of(day: Day) -> Plan:
    """Work out the day's water.

    Raises InvalidInput naming what is missing; NoSolution naming the reachable dough temperatures.
    """
    mix, desired_c, friction_k = planned_mix_of(day)
    return Plan(mix, water_by_heat_balance(mix, desired_c, friction_k=friction_k))
