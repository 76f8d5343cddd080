"""by_hand.toml as the package alone has it."""

import libferment as lf


def by_hand_mix():
    """The mix of the file."""
    return lf.Mix.from_percent(
        flour_g=800,
        room_c=20,
        flour_c=18.5,
        tap_c=12,
        water_percent=66,
        salt_percent=2.1,
        active_dry_percent=0.9,
        waters=[lf.Water(70, 36, wets_yeast=True, stands_h=12 / 60)],
        bowl=lf.Bowl("ceramic", 1900),
        mixing=lf.ByMethod("hand", 12),
        rest_h=45 / 60,
    )
