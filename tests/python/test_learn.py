"""A kitchen learned from logs, against SciPy's optimum of the posterior written down anew."""

import math

import numpy as np
import pytest
from scipy.optimize import minimize
from scipy.stats import t as student

import libferment as lf

ROWS = [row for row in lf.parameters() if row.scale != "fixed"]
NAMES = [row.name for row in ROWS]
SCALE = 0.10  # of the noise of ln time
RISES = [  # dough °C, instant %, rise %, hours over what the default kitchen expects, how it was seen
    (24.0, 0.7, 90.0, 0.80, "at"),
    (19.0, 0.4, 60.0, 0.85, "at"),
    (26.0, 1.1, 120.0, 0.70, "at"),
    (22.0, 0.5, 80.0, 0.90, "past"),
    (21.0, 0.8, 70.0, 0.60, "not_yet"),
]


def hours(rise, kitchen):
    dough_c, yeast_percent, rise_percent, *_ = rise
    return lf.hours_to_rise(rise_percent, dough_c=dough_c, yeast_percent=yeast_percent, kitchen=kitchen)


def log_of(rise):
    dough_c, yeast_percent, rise_percent, times, was = rise
    mix = lf.Mix(flour_g=1000, water_g=650, salt_g=20, instant_g=10 * yeast_percent, dough_c=dough_c)
    seen_h = times * hours(rise, lf.Kitchen())
    bulk = lf.Stage("bulk", surroundings=lf.Surroundings.dough(dough_c), until_h=seen_h)
    return lf.Log(process=lf.Process([mix, bulk]), seen=[lf.Sighting("bulk", seen_h, rise_percent, was=was)])


def kitchen_at(z):
    default = lf.Kitchen()
    return lf.Kitchen(
        **{
            row.name: lf.moved(row, getattr(default, row.name), row.prior_sd * by)
            for row, by in zip(ROWS, z, strict=True)
        }
    )


def slopes(z):
    """d ln time/d ln gassing rate of each rise."""
    kitchen, step = kitchen_at(z), 0.01
    more, less = (kitchen.replace(gassing_rate=kitchen.gassing_rate * math.exp(by)) for by in (step, -step))
    return [math.log(hours(rise, more) / hours(rise, less)) / (2 * step) for rise in RISES]


def cost(z, by_bake=None):
    """Minus ln of the posterior, the bake by a fine sum; its effect on ln time by such slopes, if they are given."""
    total = 0.5 * float(z @ z)
    kitchen = kitchen_at(z)
    bakes = np.linspace(-4.5, 4.5, 61)
    rates = kitchen.gassing_rate * np.exp(math.hypot(kitchen.bake_sd, kitchen.model_sd) * bakes)
    weights = np.exp(-0.5 * bakes**2) / np.exp(-0.5 * bakes**2).sum()
    for place, rise in enumerate(RISES):
        seen_h = rise[3] * hours(rise, lf.Kitchen())
        if by_bake is None:
            off = (
                np.array([math.log(seen_h / hours(rise, kitchen.replace(gassing_rate=rate))) for rate in rates]) / SCALE
            )
        else:
            off = (
                math.log(seen_h / hours(rise, kitchen)) - by_bake[place] * np.log(rates / kitchen.gassing_rate)
            ) / SCALE
        likelihood = {"at": student.pdf(off, 4), "past": student.cdf(off, 4), "not_yet": student.sf(off, 4)}[rise[4]]
        total -= math.log(weights @ likelihood)
    return total


def test_the_mode_is_the_one_that_scipy_finds():
    told = lf.calibration([log_of(rise) for rise in RISES])
    default = lf.Kitchen()
    scale = {"linear": lambda x: x, "logarithmic": math.log, "logit": lambda x: math.log(x / (1 - x))}
    ours = np.array(
        [
            (scale[row.scale](getattr(told.kitchen, row.name)) - scale[row.scale](getattr(default, row.name)))
            / row.prior_sd
            for row in ROWS
        ]
    )
    nowhere = np.zeros(len(ROWS))
    by_bake = slopes(ours)
    theirs = minimize(cost, nowhere, args=(by_bake,), method="BFGS", options={"gtol": 1e-3})
    assert theirs.fun < cost(nowhere, by_bake) - 1
    assert cost(ours, by_bake) == pytest.approx(theirs.fun, abs=1e-4)
    assert ours == pytest.approx(theirs.x, abs=0.01)
    # That the bake's effect is taken as a straight line moves the mode by a small part of what is left uncertain.
    curved = minimize(cost, ours, method="BFGS", options={"gtol": 1e-3})
    left = np.array([row.sd / row.prior_sd for row in told.kitchen.learned])
    assert np.all(np.abs(ours - curved.x) < 0.15 * left)


def test_a_learned_kitchen_narrows_the_next_forecast_and_is_saved(tmp_path):
    told = lf.calibration([log_of(rise) for rise in RISES])
    (rate,) = (row for row in told.kitchen.learned if row.name == "gassing_rate")
    assert rate.value == told.kitchen.gassing_rate > 12
    assert rate.share < 0.65
    process = lf.Process(
        [
            lf.Mix(flour_g=1000, water_g=650, salt_g=20, instant_g=6, dough_c=23),
            lf.Stage("bulk", surroundings=lf.Surroundings.dough(23), until_rise_percent=90),
        ]
    )
    before, after = (lf.forecast(process, kitchen=kitchen).stages[0] for kitchen in (None, told.kitchen))
    width = [math.log(late / early) for early, late in (its.interval_h(0.9) for its in (before, after))]
    assert width[1] < 0.7 * width[0]
    assert not [
        notice for notice in lf.forecast(process, kitchen=told.kitchen).notices if notice.code == "nothing_learned"
    ]
    path = tmp_path / "ours.json"
    told.kitchen.save(path)
    assert lf.Kitchen.load(path) == told.kitchen
    # Learned from, it goes on learning: the prior of the next.
    further = lf.calibration([log_of(RISES[0])], prior=told.kitchen)
    (again,) = (row for row in further.kitchen.learned if row.name == "gassing_rate")
    assert again.prior_sd == 0.3
    assert again.sd < rate.sd
    assert len(further.kitchen.history) == len(RISES) + 1
    assert told.kitchen.updated_with(log_of(RISES[0])) == further.kitchen


def test_refusals():
    log = log_of(RISES[0])
    with pytest.raises(lf.InvalidInput, match="there are no days"):
        lf.calibration([])
    with pytest.raises(lf.InvalidInput, match="a dict is no bake"):
        lf.calibrate([{}])
    with pytest.raises(lf.InvalidInput, match='no stage is named "proof"; known: bulk') as refused:
        lf.calibration([log, log.replace(seen=[lf.Sighting("proof", 1, 50)])])
    assert refused.value.path == "logs[1].seen[0].stage"
    with pytest.raises(lf.InvalidInput, match="sighting"):
        lf.Sighting("bulk", 1, 50, was="perhaps")
    with pytest.raises(lf.NoSolution, match="beyond what a dough can hold"):
        lf.calibration([log.replace(seen=[lf.Sighting("bulk", 1, 900)])])


def bulk_day(**changes):
    day = {
        "mixed": "22:30",
        "today": {"room": "19C"},
        "dough": {"flour": "900g", "yeast_percent": 0.5, "measured": "24C"},
        "stage": [
            {"name": "bulk", "piece": "tub", "until_rise_percent": 90, "handling": ["divide", "round"]},
            {"name": "proof", "piece": "oblong", "piece_g": 500, "until_rise_percent": 75},
        ],
    }
    return lf.Day.from_dict(day | changes)


def length(stage):
    early, late = stage.interval_h(0.9)
    return late - early


def test_what_one_log_would_leave_is_what_one_leaves():
    day = bulk_day()
    process = lf.process_of(day)
    before = lf.forecast(process)["bulk"]
    seen = {"stage": "bulk", "at": f"{60 * (before.ready_h - 22.5):.0f}min", "rise_percent": 90}
    kitchen = lf.calibrate([bulk_day(seen=[seen])])
    after = lf.forecast(process, kitchen=kitchen)["bulk"]
    assert before.interval_length_after_one_log_h == pytest.approx(length(after), rel=0.05)
    assert length(after) < 0.75 * length(before)


def test_looks_after_midnight_since_the_stage_began_between_and_by_height():
    looks = {
        "clock": {"at": "0:30", "rise_percent": 60},
        "since": {"at": "2h", "rise_percent": 60},
        "height": {"at": "+1 0:30", "height_cm": 7.5, "start_height_cm": 5},
        "between": {"between": ["0:00", "150min"], "rise_percent": 60},
    }
    seen = {name: lf.log_of(bulk_day(seen=[{"stage": "bulk"} | look])).seen for name, look in looks.items()}
    assert seen["clock"] == seen["since"] == [lf.Sighting("bulk", 24.5, 60)]
    assert seen["height"] == [lf.Sighting("bulk", 24.5, 50, was="height")]
    assert seen["between"] == [lf.Sighting("bulk", 25, 60, was="past", not_yet_h=24)]
    both = lf.log_of(bulk_day(seen=[{"stage": "bulk", "at": "1h", "not_yet_percent": 40, "dough": "23C"}])).seen
    assert both == [lf.Sighting("bulk", 23.5, dough_c=23, was="dough"), lf.Sighting("bulk", 23.5, 40, was="not_yet")]
    over = lf.log_of(bulk_day(seen=[{"stage": "bulk", "at": "9h", "collapsed": True}])).seen
    assert over == [lf.Sighting("bulk", 31.5, was="over_proofed")]
    quick, slow = (
        lf.calibrate([bulk_day(seen=[{"stage": "bulk", "at": at, "over_proofed": True}])]) for at in ("2h", "9h")
    )
    assert quick.gassing_rate > 12 > slow.gassing_rate


def test_a_day_in_progress_is_told_by_what_was_seen_of_it():
    before = lf.forecast(lf.process_of(bulk_day()))
    seen = [{"stage": "bulk", "at": "80min", "rise_percent": 60}]
    log = lf.log_of(bulk_day(seen=seen))
    after = lf.forecast(log.process, seen=log.seen)
    for stage in ("bulk", "proof"):
        assert length(after[stage]) < 0.65 * length(before[stage])
        assert after[stage].ready_h < before[stage].ready_h
    assert before.effective_draws == 512
    assert 100 < after.effective_draws < 512
    # Against many draws, weighted the same way.
    many = lf.forecast(log.process, seen=log.seen, draws=8192)
    for stage in ("bulk", "proof"):
        assert after[stage].ready_h == pytest.approx(many[stage].ready_h, abs=8 / 60)
        assert after[stage].interval_h(0.9) == pytest.approx(many[stage].interval_h(0.9), abs=20 / 60)
    # The answer of the document is the same.
    asked = lf.ask({"ask": "forecast", "day": bulk_day(seen=seen)})
    assert [stage["ready_h"] for stage in asked["stages"]] == [stage.ready_h for stage in after]
    # A question is asked of the dough as it was seen.
    choice = lf.room_for(log.process, stage="proof", ready_h=after["proof"].ready_h, seen=log.seen)
    assert choice.value == pytest.approx(19, abs=0.05)


def test_what_was_done_is_followed_and_not_learned_from():
    # Divided an hour early or late: the same yeast, for the proof knows by the hours that were logged.
    for ended, rise_percent in (("0:10", 30), ("2:10", 130)):
        stages = [
            stage | {"ended": ended} if stage["name"] == "bulk" else stage for stage in bulk_day().to_dict()["stage"]
        ]
        stages[0].pop("until_rise_percent")
        day = bulk_day(stage=stages)
        kitchen = lf.Kitchen(gassing_rate=13)
        told = lf.simulate(lf.process_of(day), kitchen)
        row = next(i for i, hour in enumerate(told.time_h) if hour > told.stages[1].start_h + 1.2)
        at = f"{60 * (told.time_h[row] - told.stages[1].start_h):.0f}min"
        seen = [{"stage": "proof", "at": at, "rise_percent": float(told.rise_percent[row])}]
        assert told.rise_percent[row] > rise_percent / 10
        (look,) = lf.calibration([bulk_day(stage=stages, seen=seen)], kitchen).residuals
        assert abs(look.standardised) < 0.1


def test_measured_doughs_teach_the_mixing():
    def day(measured):
        return lf.Day.from_dict(
            {
                "today": {"room": "20C", "flour": "20C"},
                "water": {"poured": "24C", "desired": "24C"},
                "mixing": {"method": "spiral", "minutes": 6},
                "dough": {"flour": "900g", "yeast_percent": 0.5} | ({"measured": measured} if measured else {}),
                "stage": [{"name": "bulk", "until_rise_percent": 90}],
            }
        )

    kitchen = lf.calibrate([day("25.4C"), day("25.6C"), day("25.2C")])
    (gain,) = kitchen.mixing
    assert gain.method == "spiral"
    assert len(gain.net_gains_kj_per_kg) == 3
    batches = lf.learned_mixing(day("25.4C")).net_gain_kj_per_kg
    assert gain.net_gains_kj_per_kg[0] == pytest.approx(batches.mean)
    plan, before = (lf.water_of(day(None), kitchen=its) for its in (kitchen, None))
    assert lf.dough_by_heat_balance(
        lf.mix_of(day(None), kitchen=kitchen).replace(water_c=plan.water_c)
    ) == pytest.approx(24)
    assert plan.water_c != pytest.approx(before.water_c, abs=0.3)
    assert kitchen.history == []


def test_two_packets_of_yeast():
    def logs(packet, factor, count):
        kitchen = lf.Kitchen(gassing_rate=11 * factor)
        rises = [(18 + i, 0.4 + 0.05 * i, 60 + 5 * i) for i in range(count)]
        return [
            log_of((*rise, hours(rise, kitchen) / hours(rise, lf.Kitchen()), "at")).replace(packet=packet)
            for rise in rises
        ]

    old, new = logs("old", 0.8, 6), logs("new", 1.1, 2)
    both = lf.calibrate(old + new)
    assert both.packet == "new"
    apart, alone = lf.calibrate(old + [log.replace(packet="old") for log in new]), lf.calibrate(new)
    # The old packet's bakes draw the rate less than bakes of the same packet would, and still tell of it.
    assert apart.gassing_rate < both.gassing_rate < 1.1 * 11
    rate = {
        name: next(row.sd for row in its.learned if row.name == "gassing_rate")
        for name, its in {"both": both, "apart": apart, "alone": alone}.items()
    }
    assert rate["apart"] < rate["both"] < rate["alone"]
    unknown = lf.with_packet(both, "third")
    (wide,) = (row.sd for row in unknown.learned if row.name == "gassing_rate")
    assert wide == pytest.approx(math.hypot(rate["both"], 0.15))
    assert lf.with_packet(both, "new") == both


def test_bad_logbooks():
    def refused(match, *days, path=None):
        with pytest.raises(lf.InvalidInput, match=match) as problem:
            lf.calibrate(list(days))
        if path:
            assert problem.value.path == path

    look = {"stage": "bulk", "at": "1h", "rise_percent": 30}
    good = bulk_day(seen=[look])
    refused("nothing was seen on any of these days", bulk_day())
    refused(
        'no stage is called "dough"; known: bulk, proof',
        good,
        bulk_day(seen=[look | {"stage": "dough"}]),
        path="days[1].seen[0].stage",
    )
    refused(
        "begins at 22.5 h, and was looked at at 22 h",
        good,
        bulk_day(seen=[look, look | {"at": "+0 22:00"}]),
        path="days[1].seen[1].at",
    )
    refused(
        "a rise does not fall",
        bulk_day(seen=[look | {"at": "2h"}, {"stage": "bulk", "at": "3h", "not_yet_percent": 20}]),
        path="days[0].seen[1]",
    )
    refused(
        'when stage "bulk" ended is not known', bulk_day(seen=[{"stage": "proof", "at": "+1 4:00", "rise_percent": 30}])
    )
    refused(
        'when stage "proof" began is not known', bulk_day(seen=[{"stage": "proof", "at": "1h", "rise_percent": 30}])
    )
    with pytest.raises(lf.InvalidInput, match="no parameter set is named"):
        lf.Kitchen(learned_from="2030-9")


def test_a_typo_among_few_bakes_is_said_when_it_is_entered():
    typo = lf.calibration([bulk_day(seen=[{"stage": "bulk", "at": "3min", "rise_percent": 90}])])
    assert typo.residuals[0].surprising
    assert typo.residuals[0].explanation == "hours for minutes"
    assert "3 min where" in typo.notices[0].text
    assert "hours for minutes? 3 h 00 min would fit" in typo.notices[0].text
