"""The valid box: random doughs and kitchens anywhere inside the bounds of the field and parameter tables."""

from hypothesis import strategies as st

import libferment as lf

FIELDS = {field.name: field for field in lf.fields()}
PARAMETERS = {parameter.name: parameter for parameter in lf.parameters()}
YEASTS = ("instant", "active_dry", "active_dry_unwetted", "compressed")
FORMULA = ("salt_percent", "water_percent", "sugar_percent", "gluten_percent", "altitude_m")


def anywhere(name, low=None, high=None):
    """A number anywhere in a field's bounds, or in a part of them."""
    field = FIELDS[name]
    return st.floats(field.low if low is None else low, field.high if high is None else high)


def dose_bounds(yeast):
    """Smallest and largest dose of a kind of yeast, percent as weighed; a hair inside, where a conversion may round."""
    instant = FIELDS["instant_equivalent_percent"]
    least = lf.convert_yeast(instant.low, from_yeast="instant", to_yeast=yeast)
    most = lf.convert_yeast(instant.high, from_yeast="instant", to_yeast=yeast)
    return least * (1 + 1e-12), most * (1 - 1e-12)


@st.composite
def doughs(draw, **fixed):
    """Keyword arguments that describe a dough; fixed ones as given."""
    yeast = fixed.get("yeast") or draw(st.sampled_from(YEASTS))
    dough = {"dough_c": None, "yeast_percent": None, "yeast": yeast, **dict.fromkeys(FORMULA), **fixed}
    if dough["yeast_percent"] is None:
        dough["yeast_percent"] = draw(st.floats(*dose_bounds(yeast)))
    return {name: draw(anywhere(name)) if value is None else value for name, value in dough.items()}


def parameter(name, low=None, high=None):
    """A number anywhere in a parameter's bounds, or in a part of them."""
    row = PARAMETERS[name]
    return st.floats(row.low if low is None else low, row.high if high is None else high)


@st.composite
def kitchens(draw):
    """A valid kitchen with each parameter anywhere in its bounds, by one of the four laws.

    One rule ties two parameters together: gas begins to leak below the largest volume.
    """
    values = {name: draw(parameter(name)) for name in PARAMETERS}
    least = max(values["retention_onset"] * (1 + 1e-6), PARAMETERS["retention_limit"].low)
    values["retention_limit"] = draw(parameter("retention_limit", low=least))
    law = draw(st.sampled_from([None, lf.SquareRoot(), lf.Arrhenius(), lf.ConstantQ10()]))
    kitchen = lf.Kitchen(**values)
    return kitchen if law is None else kitchen.with_law(law)


def attempt(call, *errors):
    """What a call answers, or the error it refuses with."""
    try:
        return call()
    except errors as problem:
        return problem
