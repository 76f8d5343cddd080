# mypy: disable-error-code="overload-overlap"
"""The compiled part of libferment; use `import libferment`. Written by ./dev stubs."""

import collections.abc
import datetime
import os
import typing

import numpy
import numpy.typing

_Numbers: typing.TypeAlias = numpy.typing.ArrayLike
_Array: typing.TypeAlias = numpy.typing.NDArray[numpy.float64]

__version__: str
_signatures: dict[str, str]

class Amounts:
    """What a dough holds in all, g: all flour, added gluten included, all water.

    Args:
        flour_g: flour of the state, g.
        gluten_g: gluten of the state, g.
        water_g: water of the state, g.
        salt_g: salt of the state, g.
        sugar_g: sugar of the state, g.
        perishable_g: milk and egg of the state, g.
        dough_g: dough of the state, g.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        flour_g: float = 0.0,
        gluten_g: float = 0.0,
        water_g: float = 0.0,
        salt_g: float = 0.0,
        sugar_g: float = 0.0,
        perishable_g: float = 0.0,
        dough_g: float = 0.0,
    ) -> None: ...
    @property
    def flour_g(self) -> float:
        """flour of the state, g"""
    @property
    def gluten_g(self) -> float:
        """gluten of the state, g"""
    @property
    def water_g(self) -> float:
        """water of the state, g"""
    @property
    def salt_g(self) -> float:
        """salt of the state, g"""
    @property
    def sugar_g(self) -> float:
        """sugar of the state, g"""
    @property
    def perishable_g(self) -> float:
        """milk and egg of the state, g"""
    @property
    def dough_g(self) -> float:
        """dough of the state, g"""
    def replace(
        self,
        *,
        flour_g: float = ...,
        gluten_g: float = ...,
        water_g: float = ...,
        salt_g: float = ...,
        sugar_g: float = ...,
        perishable_g: float = ...,
        dough_g: float = ...,
    ) -> Amounts: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Amounts: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Amounts: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Amounts: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Arrhenius:
    """Factor exp(-(Ea/R)(1/T - 1/298.15 K)), Ea in kJ/mol. Honest for 18 to 32 °C only.

    Args:
        activation_energy_kj: activation energy of the Arrhenius law, kJ/mol.

    Raises InvalidInput."""
    def __init__(self, activation_energy_kj: float = 60.0) -> None: ...
    @property
    def activation_energy_kj(self) -> float:
        """activation energy of the Arrhenius law, kJ/mol"""
    def replace(self, *, activation_energy_kj: float = ...) -> Arrhenius: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Arrhenius: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Arrhenius: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Arrhenius: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @typing.overload
    def factor(self, temperature_c: float) -> float: ...
    @typing.overload
    def factor(self, temperature_c: float | _Numbers) -> _Array:
        """Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput."""
    @typing.overload
    def local_q10(self, temperature_c: float) -> float: ...
    @typing.overload
    def local_q10(self, temperature_c: float | _Numbers) -> _Array:
        """Local temperature coefficient, exp(10 K d ln factor/dT).

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where
        the
        factor is 0."""

class Batch:
    """An earlier batch of the same formula: what it was mixed from, and the dough that came of it.

    Args:
        dough_c: temperature of the dough itself, not of the room, °C.
        water_c: temperature of the water poured in, °C.
        flour_c: temperature of the flour in its bag, °C.
        room_c: air temperature where the dough is mixed, °C.
        preferment_c: temperature of the preferment when it is mixed in, °C.
        bowl_c: temperature of the bowl; the room's if not given, °C.
        milk_c: temperature of the milk; the room's if not given, °C.
        egg_c: temperature of the egg; the room's if not given, °C.
        butter_c: temperature of the butter; the room's if not given, °C.
        rest_h: hours flour and water rest before yeast, salt and the rest are mixed in, h.
        minutes: minutes of mixing or kneading; the method's usual time if not given, min.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        dough_c: float,
        water_c: float,
        flour_c: float,
        room_c: float,
        preferment_c: float | None = None,
        bowl_c: float | None = None,
        milk_c: float | None = None,
        egg_c: float | None = None,
        butter_c: float | None = None,
        rest_h: float | datetime.timedelta = 0.0,
        minutes: float | None = None,
    ) -> None: ...
    @property
    def dough_c(self) -> float:
        """temperature of the dough itself, not of the room, °C"""
    @property
    def water_c(self) -> float:
        """temperature of the water poured in, °C"""
    @property
    def flour_c(self) -> float:
        """temperature of the flour in its bag, °C"""
    @property
    def room_c(self) -> float:
        """air temperature where the dough is mixed, °C"""
    @property
    def preferment_c(self) -> float | None:
        """temperature of the preferment when it is mixed in, °C"""
    @property
    def bowl_c(self) -> float | None:
        """temperature of the bowl; the room's if not given, °C"""
    @property
    def milk_c(self) -> float | None:
        """temperature of the milk; the room's if not given, °C"""
    @property
    def egg_c(self) -> float | None:
        """temperature of the egg; the room's if not given, °C"""
    @property
    def butter_c(self) -> float | None:
        """temperature of the butter; the room's if not given, °C"""
    @property
    def rest_h(self) -> float:
        """hours flour and water rest before yeast, salt and the rest are mixed in, h"""
    @property
    def minutes(self) -> float | None:
        """minutes of mixing or kneading; the method's usual time if not given, min"""
    def replace(
        self,
        *,
        dough_c: float = ...,
        water_c: float = ...,
        flour_c: float = ...,
        room_c: float = ...,
        preferment_c: float | None = ...,
        bowl_c: float | None = ...,
        milk_c: float | None = ...,
        egg_c: float | None = ...,
        butter_c: float | None = ...,
        rest_h: float | datetime.timedelta = ...,
        minutes: float | None = ...,
    ) -> Batch: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Batch: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Batch: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Batch: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class BatchMean:
    """Mean of a number found from several batches, and its spread.

    Args:
        mean: of all.
        sd: from batch to batch; none from one batch.
        each: of every batch.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        mean: float = 0.0,
        sd: float | None = None,
        each: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
    ) -> None: ...
    @property
    def mean(self) -> float:
        """of all"""
    @property
    def sd(self) -> float | None:
        """from batch to batch; none from one batch"""
    @property
    def each(self) -> list[float]:
        """of every batch"""
    def replace(
        self,
        *,
        mean: float = ...,
        sd: float | None = ...,
        each: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
    ) -> BatchMean: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> BatchMean: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> BatchMean: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> BatchMean: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def __str__(self) -> str: ...

class Bowl:
    """The bowl the dough is mixed in, with its hook or paddle.

    Args:
        material: a row of bowl_materials().
        mass_g: weight of the bowl with its hook or paddle; 0: no bowl, g.
        temperature_c: temperature of the bowl; the room's if not given, °C.
        contact: share of the bowl that comes to the dough's temperature during mixing.

    Raises InvalidInput."""
    def __init__(
        self, material: str = "steel", mass_g: float = 0.0, *, temperature_c: float | None = None, contact: float = 0.8
    ) -> None: ...
    @property
    def material(self) -> str:
        """a row of bowl_materials()"""
    @property
    def mass_g(self) -> float:
        """weight of the bowl with its hook or paddle; 0: no bowl, g"""
    @property
    def temperature_c(self) -> float | None:
        """temperature of the bowl; the room's if not given, °C"""
    @property
    def contact(self) -> float:
        """share of the bowl that comes to the dough's temperature during mixing"""
    def replace(
        self, *, material: str = ..., mass_g: float = ..., temperature_c: float | None = ..., contact: float = ...
    ) -> Bowl: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Bowl: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Bowl: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Bowl: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class ByMethod:
    """Mixing heat from a method and its minutes; hydration and exchange with the room come on top.

    Args:
        method: a row of mixing_methods().
        minutes: minutes of mixing or kneading; the method's usual time if not given, min.
        hydration_kj_per_kg: heat that flour gives off when it is wetted, per kg of flour as weighed, kJ/kg.

    Raises InvalidInput."""
    def __init__(
        self, method: str, minutes: float | None = None, *, hydration_kj_per_kg: float | None = None
    ) -> None: ...
    @property
    def method(self) -> str:
        """a row of mixing_methods()"""
    @property
    def minutes(self) -> float | None:
        """minutes of mixing or kneading; the method's usual time if not given, min"""
    @property
    def hydration_kj_per_kg(self) -> float | None:
        """heat that flour gives off when it is wetted, per kg of flour as weighed, kJ/kg"""
    def replace(
        self, *, method: str = ..., minutes: float | None = ..., hydration_kj_per_kg: float | None = ...
    ) -> ByMethod: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> ByMethod: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> ByMethod: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> ByMethod: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class ByNetGain:
    """One number from logged batches in place of work, hydration and losses.

    Args:
        net_gain_kj_per_kg: work and hydration less losses during mixing, per kg of dough, from logged batches, kJ/kg.
        sd_kj_per_kg: standard deviation from batch to batch, kJ/kg.
        minutes: minutes of mixing in the room, whose exchange with it is then reckoned apart; 0: it is in the gain,
            min.

    Raises InvalidInput."""
    def __init__(self, net_gain_kj_per_kg: float, sd_kj_per_kg: float = 1.0, minutes: float = 0.0) -> None: ...
    @property
    def net_gain_kj_per_kg(self) -> float:
        """work and hydration less losses during mixing, per kg of dough, from logged batches, kJ/kg"""
    @property
    def sd_kj_per_kg(self) -> float:
        """standard deviation from batch to batch, kJ/kg"""
    @property
    def minutes(self) -> float:
        """minutes of mixing in the room, whose exchange with it is then reckoned apart; 0: it is in the gain, min"""
    def replace(
        self, *, net_gain_kj_per_kg: float = ..., sd_kj_per_kg: float = ..., minutes: float = ...
    ) -> ByNetGain: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> ByNetGain: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> ByNetGain: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> ByNetGain: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class ByWork:
    """Mixing heat from known work; hydration comes on top.

    Args:
        work_kj_per_kg: mixing work that stays in the dough as heat, per kg of dough, kJ/kg.
        hydration_kj_per_kg: heat that flour gives off when it is wetted, per kg of flour as weighed, kJ/kg.

    Raises InvalidInput."""
    def __init__(self, work_kj_per_kg: float, *, hydration_kj_per_kg: float | None = None) -> None: ...
    @property
    def work_kj_per_kg(self) -> float:
        """mixing work that stays in the dough as heat, per kg of dough, kJ/kg"""
    @property
    def hydration_kj_per_kg(self) -> float | None:
        """heat that flour gives off when it is wetted, per kg of flour as weighed, kJ/kg"""
    def replace(self, *, work_kj_per_kg: float = ..., hydration_kj_per_kg: float | None = ...) -> ByWork: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> ByWork: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> ByWork: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> ByWork: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Calibration:
    """What was learned from logs.

    Args:
        kitchen: its values and its covariance.
        residuals: look by look.
        linearisations: that it took.
        decrement: what a further step would gain, in ln of the posterior.
        k_hat: shape of the tail of importance weights: below 0.7 they can be trusted.
        log_likelihood: ln of the likelihood of each log.
        effective_parameters: how many the logs have pinned.
        notices: surprises, and what the logs could not teach.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        kitchen: Kitchen = ...,
        residuals: collections.abc.Sequence[Residual] = ...,
        linearisations: int = 0,
        decrement: float = 0.0,
        k_hat: float | None = None,
        log_likelihood: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        effective_parameters: float = 0.0,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> None: ...
    @property
    def kitchen(self) -> Kitchen:
        """its values and its covariance"""
    @property
    def residuals(self) -> list[Residual]:
        """look by look"""
    @property
    def linearisations(self) -> int:
        """that it took"""
    @property
    def decrement(self) -> float:
        """what a further step would gain, in ln of the posterior"""
    @property
    def k_hat(self) -> float | None:
        """shape of the tail of importance weights: below 0.7 they can be trusted"""
    @property
    def log_likelihood(self) -> list[float]:
        """ln of the likelihood of each log"""
    @property
    def effective_parameters(self) -> float:
        """how many the logs have pinned"""
    @property
    def notices(self) -> list[Notice]:
        """surprises, and what the logs could not teach"""
    def replace(
        self,
        *,
        kitchen: Kitchen = ...,
        residuals: collections.abc.Sequence[Residual] = ...,
        linearisations: int = ...,
        decrement: float = ...,
        k_hat: float | None = ...,
        log_likelihood: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        effective_parameters: float = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> Calibration: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Calibration: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Calibration: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Calibration: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Cardinal:
    """Cardinal temperatures with inflexion (Rosso et al. 1993), 0 outside (Tmin, Tmax). The default law.

    Args:
        t_min_c: notional temperature below which the clock stands still, °C.
        t_opt_c: temperature at which the clock runs fastest, °C.
        t_max_c: upper cardinal temperature, °C.

    Raises InvalidInput."""
    def __init__(self, *, t_min_c: float = -2.0, t_opt_c: float = 40.0, t_max_c: float = 45.0) -> None: ...
    @property
    def t_min_c(self) -> float:
        """notional temperature below which the clock stands still, °C"""
    @property
    def t_opt_c(self) -> float:
        """temperature at which the clock runs fastest, °C"""
    @property
    def t_max_c(self) -> float:
        """upper cardinal temperature, °C"""
    def replace(self, *, t_min_c: float = ..., t_opt_c: float = ..., t_max_c: float = ...) -> Cardinal: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Cardinal: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Cardinal: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Cardinal: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @typing.overload
    def factor(self, temperature_c: float) -> float: ...
    @typing.overload
    def factor(self, temperature_c: float | _Numbers) -> _Array:
        """Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput."""
    @typing.overload
    def local_q10(self, temperature_c: float) -> float: ...
    @typing.overload
    def local_q10(self, temperature_c: float | _Numbers) -> _Array:
        """Local temperature coefficient, exp(10 K d ln factor/dT).

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where
        the
        factor is 0."""

class Choice:
    """What to choose so that a stage is ready at an hour, and what comes of it.

    Args:
        what: yeast_g, water_c, air_c, start_h or move_h.
        now: what is chosen now; none where that is no one number.
        value: the choice; of several the least yeast, the coldest, the latest.
        all: every choice that is ready at that hour, rising.
        ready_h: h when it is ready with value.
        rounded: value on the user's scale.
        rounded_ready_h: h when it is ready with rounded; none if never.
        process: the process with rounded in it.
        notices: of that process.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        what: str = "",
        now: float | None = None,
        value: float = 0.0,
        all: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        ready_h: float = 0.0,
        rounded: float = 0.0,
        rounded_ready_h: float | None = 0.0,
        process: Process = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> None: ...
    @property
    def what(self) -> str:
        """yeast_g, water_c, air_c, start_h or move_h"""
    @property
    def now(self) -> float | None:
        """what is chosen now; none where that is no one number"""
    @property
    def value(self) -> float:
        """the choice; of several the least yeast, the coldest, the latest"""
    @property
    def all(self) -> list[float]:
        """every choice that is ready at that hour, rising"""
    @property
    def ready_h(self) -> float:
        """h when it is ready with value"""
    @property
    def rounded(self) -> float:
        """value on the user's scale"""
    @property
    def rounded_ready_h(self) -> float | None:
        """h when it is ready with rounded; none if never"""
    @property
    def process(self) -> Process:
        """the process with rounded in it"""
    @property
    def notices(self) -> list[Notice]:
        """of that process"""
    def replace(
        self,
        *,
        what: str = ...,
        now: float | None = ...,
        value: float = ...,
        all: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        ready_h: float = ...,
        rounded: float = ...,
        rounded_ready_h: float | None = ...,
        process: Process = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> Choice: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Choice: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Choice: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Choice: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def rounding_min(self) -> float | None:
        """minutes that rounding costs; None if it is never ready with it"""
    def _repr_html_(self) -> str: ...

class Cohort:
    """The yeast of one addition, with its own clock: g of gassing dry matter per 100 g of flour, equivalent hours.

    Args:
        yeast: its kind, which decides its start-up.
        dose_g: gassing dry matter as it came in, g per 100 g flour.
        mass_g: when its growth clock began, g per 100 g flour.
        room_g: what it can still grow from there, g per 100 g flour.
        increment_g: its share of the growth increment, g per 100 g flour.
        equivalent_h: equivalent hours since it met flour and water, h.
        growing_h: equivalent hours of its growth clock, h.
        past_lag: it grows at once: it had begun before it was mixed into a new dough.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
        dose_g: float = 0.0,
        mass_g: float = 0.0,
        room_g: float = 0.0,
        increment_g: float = 0.0,
        equivalent_h: float = 0.0,
        growing_h: float = 0.0,
        past_lag: bool = False,
    ) -> None: ...
    @property
    def yeast(self) -> typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"]:
        """its kind, which decides its start-up"""
    @property
    def dose_g(self) -> float:
        """gassing dry matter as it came in, g per 100 g flour"""
    @property
    def mass_g(self) -> float:
        """when its growth clock began, g per 100 g flour"""
    @property
    def room_g(self) -> float:
        """what it can still grow from there, g per 100 g flour"""
    @property
    def increment_g(self) -> float:
        """its share of the growth increment, g per 100 g flour"""
    @property
    def equivalent_h(self) -> float:
        """equivalent hours since it met flour and water, h"""
    @property
    def growing_h(self) -> float:
        """equivalent hours of its growth clock, h"""
    @property
    def past_lag(self) -> bool:
        """it grows at once: it had begun before it was mixed into a new dough"""
    def replace(
        self,
        *,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = ...,
        dose_g: float = ...,
        mass_g: float = ...,
        room_g: float = ...,
        increment_g: float = ...,
        equivalent_h: float = ...,
        growing_h: float = ...,
        past_lag: bool = ...,
    ) -> Cohort: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Cohort: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Cohort: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Cohort: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Composition:
    """What a food is made of, as mass fractions that sum to 1, and the heat properties that follow. Source: Choi & Okos
    1986 (from memory) with the mixture rules of ASHRAE Handbook - Refrigeration; no gas, no freezing.

    Args:
        water: share of the weight, a ratio.
        protein: share.
        fat: share.
        carbohydrate: share, without fibre.
        fibre: share.
        ash: share.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        water: float = 0.0,
        protein: float = 0.0,
        fat: float = 0.0,
        carbohydrate: float = 0.0,
        fibre: float = 0.0,
        ash: float = 0.0,
    ) -> None: ...
    @property
    def water(self) -> float:
        """share of the weight, a ratio"""
    @property
    def protein(self) -> float:
        """share"""
    @property
    def fat(self) -> float:
        """share"""
    @property
    def carbohydrate(self) -> float:
        """share, without fibre"""
    @property
    def fibre(self) -> float:
        """share"""
    @property
    def ash(self) -> float:
        """share"""
    def replace(
        self,
        *,
        water: float = ...,
        protein: float = ...,
        fat: float = ...,
        carbohydrate: float = ...,
        fibre: float = ...,
        ash: float = ...,
    ) -> Composition: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Composition: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Composition: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Composition: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @staticmethod
    def of(ingredient: str) -> Composition:
        """That of an ingredient of the table: bread, whole_wheat, milk, egg, butter, ... Raises InvalidInput naming the
        known ones."""
    def with_moisture(self, moisture_percent: float) -> Composition:
        """The same dry matter with another moisture, 5 to 20 %. Raises InvalidInput."""
    @typing.overload
    def specific_heat(self, temperature_c: float) -> float: ...
    @typing.overload
    def specific_heat(self, temperature_c: float | _Numbers) -> _Array:
        """kJ/(kg K); temperature_c: °C, a number or an array. Raises InvalidInput."""
    @typing.overload
    def density(self, temperature_c: float) -> float: ...
    @typing.overload
    def density(self, temperature_c: float | _Numbers) -> _Array:
        """kg/m³; temperature_c: °C, a number or an array. Raises InvalidInput."""
    @typing.overload
    def conductivity(self, temperature_c: float) -> float: ...
    @typing.overload
    def conductivity(self, temperature_c: float | _Numbers) -> _Array:
        """W/(m K), mean of the bounds along and across layers; temperature_c: °C, a number or an array. Raises
        InvalidInput."""
    @typing.overload
    def diffusivity(self, temperature_c: float) -> float: ...
    @typing.overload
    def diffusivity(self, temperature_c: float | _Numbers) -> _Array:
        """m²/s, conductivity/(density specific heat); temperature_c: °C, a number or an array. Raises InvalidInput."""

class ConstantQ10:
    """Factor q10^((T - 25)/10). Honest for 15 to 32 °C only.

    Args:
        q10: factor per 10 K of the constant-Q10 law.

    Raises InvalidInput."""
    def __init__(self, q10: float = 2.2) -> None: ...
    @property
    def q10(self) -> float:
        """factor per 10 K of the constant-Q10 law"""
    def replace(self, *, q10: float = ...) -> ConstantQ10: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> ConstantQ10: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> ConstantQ10: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> ConstantQ10: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @typing.overload
    def factor(self, temperature_c: float) -> float: ...
    @typing.overload
    def factor(self, temperature_c: float | _Numbers) -> _Array:
        """Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput."""
    @typing.overload
    def local_q10(self, temperature_c: float) -> float: ...
    @typing.overload
    def local_q10(self, temperature_c: float | _Numbers) -> _Array:
        """Local temperature coefficient, exp(10 K d ln factor/dT).

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where
        the
        factor is 0."""

class Course:
    """Measured temperatures, straight lines between; before the first and after the last as there.

    Args:
        time_h: a moment on the process's hour axis: 0 for its start, or the hour of the day, h.
        temperature_c: one for each, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        time_h: _Numbers | collections.abc.Sequence[datetime.timedelta],
        temperature_c: _Numbers | collections.abc.Sequence[datetime.timedelta],
    ) -> None: ...
    @property
    def time_h(self) -> list[float]:
        """a moment on the process's hour axis: 0 for its start, or the hour of the day, h"""
    @property
    def temperature_c(self) -> list[float]:
        """one for each, °C"""
    def replace(
        self,
        *,
        time_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        temperature_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
    ) -> Course: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Course: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Course: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Course: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DailySwing:
    """A temperature that swings over the day: mean_c + half_range_k·cos(2π(t − warmest_h)/24 h).

    Args:
        mean_c: over a day, °C.
        half_range_k: warmest less mean temperature of the day, a difference of temperatures, K.
        warmest_h: when a daily swing is warmest, on the process's hour axis, h.

    Raises InvalidInput."""
    def __init__(
        self, mean_c: float, half_range_k: float, warmest_h: float | datetime.timedelta | datetime.time = 16.0
    ) -> None: ...
    @property
    def mean_c(self) -> float:
        """over a day, °C"""
    @property
    def half_range_k(self) -> float:
        """warmest less mean temperature of the day, a difference of temperatures, K"""
    @property
    def warmest_h(self) -> float:
        """when a daily swing is warmest, on the process's hour axis, h"""
    def replace(
        self,
        *,
        mean_c: float = ...,
        half_range_k: float = ...,
        warmest_h: float | datetime.timedelta | datetime.time = ...,
    ) -> DailySwing: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DailySwing: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DailySwing: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DailySwing: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Day:
    """What a baker writes down of one bake.

    Args:
        title: in your own words.
        date: such as 2026-11-29.
        zone: time zone, for clocks.
        start: time of day at which flour and water meet.
        mixed: time of day at which the mixing ended.
        today: temperatures measured today.
        water: the dough that is wanted.
        dough: the formula.
        flour: one for each kind; bread flour if none.
        preferment: dough of an earlier mix.
        yeast_water: in which the yeast is wetted.
        bowl: none if not given.
        mixing: by hand if not given.
        batch: earlier batches.
        stage: one after the other.
        seen: looks at the stages.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        title: str = "",
        date: str = "",
        zone: str = "",
        start: str = "",
        mixed: str = "",
        today: Today = ...,
        water: WantedWater = ...,
        dough: DayDough = ...,
        flour: collections.abc.Sequence[DayFlour] = ...,
        preferment: DayPreferment | None = None,
        yeast_water: YeastWater | None = None,
        bowl: DayBowl | None = None,
        mixing: DayMixing = ...,
        batch: collections.abc.Sequence[Batch] = ...,
        stage: collections.abc.Sequence[DayStage] = ...,
        seen: collections.abc.Sequence[Seen] = ...,
    ) -> None: ...
    @property
    def title(self) -> str:
        """in your own words"""
    @property
    def date(self) -> str:
        """such as 2026-11-29"""
    @property
    def zone(self) -> str:
        """time zone, for clocks"""
    @property
    def start(self) -> str:
        """time of day at which flour and water meet"""
    @property
    def mixed(self) -> str:
        """time of day at which the mixing ended"""
    @property
    def today(self) -> Today:
        """temperatures measured today"""
    @property
    def water(self) -> WantedWater:
        """the dough that is wanted"""
    @property
    def dough(self) -> DayDough:
        """the formula"""
    @property
    def flour(self) -> list[DayFlour]:
        """one for each kind; bread flour if none"""
    @property
    def preferment(self) -> DayPreferment | None:
        """dough of an earlier mix"""
    @property
    def yeast_water(self) -> YeastWater | None:
        """in which the yeast is wetted"""
    @property
    def bowl(self) -> DayBowl | None:
        """none if not given"""
    @property
    def mixing(self) -> DayMixing:
        """by hand if not given"""
    @property
    def batch(self) -> list[Batch]:
        """earlier batches"""
    @property
    def stage(self) -> list[DayStage]:
        """one after the other"""
    @property
    def seen(self) -> list[Seen]:
        """looks at the stages"""
    def replace(
        self,
        *,
        title: str = ...,
        date: str = ...,
        zone: str = ...,
        start: str = ...,
        mixed: str = ...,
        today: Today = ...,
        water: WantedWater = ...,
        dough: DayDough = ...,
        flour: collections.abc.Sequence[DayFlour] = ...,
        preferment: DayPreferment | None = ...,
        yeast_water: YeastWater | None = ...,
        bowl: DayBowl | None = ...,
        mixing: DayMixing = ...,
        batch: collections.abc.Sequence[Batch] = ...,
        stage: collections.abc.Sequence[DayStage] = ...,
        seen: collections.abc.Sequence[Seen] = ...,
    ) -> Day: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Day: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Day: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Day: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DayBowl:
    """The bowl, with its hook or paddle.

    Args:
        material: of the bowl.
        mass_g: weight of the bowl with its hook or paddle; 0: no bowl, g.
        contact: share of the bowl that comes to the dough's temperature during mixing.

    Raises InvalidInput."""
    def __init__(self, *, material: str = "steel", mass_g: float, contact: float = 0.8) -> None: ...
    @property
    def material(self) -> str:
        """of the bowl"""
    @property
    def mass_g(self) -> float:
        """weight of the bowl with its hook or paddle; 0: no bowl, g"""
    @property
    def contact(self) -> float:
        """share of the bowl that comes to the dough's temperature during mixing"""
    def replace(self, *, material: str = ..., mass_g: float = ..., contact: float = ...) -> DayBowl: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DayBowl: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DayBowl: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DayBowl: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DayDough:
    """The formula of a day: each amount in percent of all flour or in grams.

    Args:
        flour_g: weight of a flour, g.
        yeast: its kind.
        packet: of the yeast, in your own words: a new one may be livelier.
        yeast_percent: besides that of a preferment, %.
        yeast_g: weight of the yeast, g.
        water_percent: water poured, that of portions and preferments included, percent of flour weight, %.
        water_g: all water that is poured, g.
        salt_percent: besides that of a preferment, %.
        salt_g: weight of salt, g.
        sugar_percent: added sugar as sucrose, percent of flour weight, %.
        sugar_g: weight of sugar, g.
        gluten_percent: vital wheat gluten, percent of total flour weight, %.
        gluten_g: weight of vital wheat gluten; it counts as flour, g.
        milk_percent: milk, egg, butter or oil, percent of flour weight, %.
        milk_g: weight of whole milk, g.
        egg_percent: milk, egg, butter or oil, percent of flour weight, %.
        egg_g: weight of whole egg without shell, g.
        butter_percent: milk, egg, butter or oil, percent of flour weight, %.
        butter_g: weight of butter, g.
        oil_percent: milk, egg, butter or oil, percent of flour weight, %.
        oil_g: weight of oil, g.
        pieces: pieces the dough is divided into.
        piece_g: weight of a piece as divided, g.
        loss_percent: dough that stays on bowl, hands and table, percent of the dough, %.
        altitude_m: height above sea level, for the air pressure, m.
        perishable: holds perishable food other than milk and egg.
        measured_c: of the dough at the end of mixing; counts before a planned one, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        flour_g: float | None = None,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
        packet: str = "",
        yeast_percent: float | None = None,
        yeast_g: float | None = None,
        water_percent: float | None = None,
        water_g: float | None = None,
        salt_percent: float | None = None,
        salt_g: float | None = None,
        sugar_percent: float | None = None,
        sugar_g: float | None = None,
        gluten_percent: float | None = None,
        gluten_g: float | None = None,
        milk_percent: float | None = None,
        milk_g: float | None = None,
        egg_percent: float | None = None,
        egg_g: float | None = None,
        butter_percent: float | None = None,
        butter_g: float | None = None,
        oil_percent: float | None = None,
        oil_g: float | None = None,
        pieces: float | None = None,
        piece_g: float | None = None,
        loss_percent: float = 0.0,
        altitude_m: float = 0.0,
        perishable: bool = False,
        measured_c: float | None = None,
    ) -> None: ...
    @property
    def flour_g(self) -> float | None:
        """weight of a flour, g"""
    @property
    def yeast(self) -> typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"]:
        """its kind"""
    @property
    def packet(self) -> str:
        """of the yeast, in your own words: a new one may be livelier"""
    @property
    def yeast_percent(self) -> float | None:
        """besides that of a preferment, %"""
    @property
    def yeast_g(self) -> float | None:
        """weight of the yeast, g"""
    @property
    def water_percent(self) -> float | None:
        """water poured, that of portions and preferments included, percent of flour weight, %"""
    @property
    def water_g(self) -> float | None:
        """all water that is poured, g"""
    @property
    def salt_percent(self) -> float | None:
        """besides that of a preferment, %"""
    @property
    def salt_g(self) -> float | None:
        """weight of salt, g"""
    @property
    def sugar_percent(self) -> float | None:
        """added sugar as sucrose, percent of flour weight, %"""
    @property
    def sugar_g(self) -> float | None:
        """weight of sugar, g"""
    @property
    def gluten_percent(self) -> float | None:
        """vital wheat gluten, percent of total flour weight, %"""
    @property
    def gluten_g(self) -> float | None:
        """weight of vital wheat gluten; it counts as flour, g"""
    @property
    def milk_percent(self) -> float | None:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def milk_g(self) -> float | None:
        """weight of whole milk, g"""
    @property
    def egg_percent(self) -> float | None:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def egg_g(self) -> float | None:
        """weight of whole egg without shell, g"""
    @property
    def butter_percent(self) -> float | None:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def butter_g(self) -> float | None:
        """weight of butter, g"""
    @property
    def oil_percent(self) -> float | None:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def oil_g(self) -> float | None:
        """weight of oil, g"""
    @property
    def pieces(self) -> float | None:
        """pieces the dough is divided into"""
    @property
    def piece_g(self) -> float | None:
        """weight of a piece as divided, g"""
    @property
    def loss_percent(self) -> float:
        """dough that stays on bowl, hands and table, percent of the dough, %"""
    @property
    def altitude_m(self) -> float:
        """height above sea level, for the air pressure, m"""
    @property
    def perishable(self) -> bool:
        """holds perishable food other than milk and egg"""
    @property
    def measured_c(self) -> float | None:
        """of the dough at the end of mixing; counts before a planned one, °C"""
    def replace(
        self,
        *,
        flour_g: float | None = ...,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = ...,
        packet: str = ...,
        yeast_percent: float | None = ...,
        yeast_g: float | None = ...,
        water_percent: float | None = ...,
        water_g: float | None = ...,
        salt_percent: float | None = ...,
        salt_g: float | None = ...,
        sugar_percent: float | None = ...,
        sugar_g: float | None = ...,
        gluten_percent: float | None = ...,
        gluten_g: float | None = ...,
        milk_percent: float | None = ...,
        milk_g: float | None = ...,
        egg_percent: float | None = ...,
        egg_g: float | None = ...,
        butter_percent: float | None = ...,
        butter_g: float | None = ...,
        oil_percent: float | None = ...,
        oil_g: float | None = ...,
        pieces: float | None = ...,
        piece_g: float | None = ...,
        loss_percent: float = ...,
        altitude_m: float = ...,
        perishable: bool = ...,
        measured_c: float | None = ...,
    ) -> DayDough: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DayDough: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DayDough: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DayDough: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DayFlour:
    """A flour by its share of the flours, or by its weight.

    Args:
        kind: a flour of the table.
        percent: of the flours, %.
        mass_g: its weight, in place of its share, g.
        moisture_percent: water in the flour as it is weighed, percent of its weight, %.
        temperature_c: temperature of the flour in its bag, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        kind: str = "bread",
        percent: float | None = None,
        mass_g: float | None = None,
        moisture_percent: float | None = None,
        temperature_c: float | None = None,
    ) -> None: ...
    @property
    def kind(self) -> str:
        """a flour of the table"""
    @property
    def percent(self) -> float | None:
        """of the flours, %"""
    @property
    def mass_g(self) -> float | None:
        """its weight, in place of its share, g"""
    @property
    def moisture_percent(self) -> float | None:
        """water in the flour as it is weighed, percent of its weight, %"""
    @property
    def temperature_c(self) -> float | None:
        """temperature of the flour in its bag, °C"""
    def replace(
        self,
        *,
        kind: str = ...,
        percent: float | None = ...,
        mass_g: float | None = ...,
        moisture_percent: float | None = ...,
        temperature_c: float | None = ...,
    ) -> DayFlour: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DayFlour: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DayFlour: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DayFlour: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DayMixing:
    """How the dough is mixed: a method, its work, or one net gain of earlier batches.

    Args:
        method: a way of mixing of the table.
        minutes: minutes of mixing or kneading; the method's usual time if not given, min.
        work_kj_per_kg: mixing work that stays in the dough as heat, per kg of dough, kJ/kg.
        net_gain_kj_per_kg: work and hydration less losses during mixing, per kg of dough, from logged batches, kJ/kg.
        sd_kj_per_kg: standard deviation from batch to batch, kJ/kg.
        hydration_kj_per_kg: heat that flour gives off when it is wetted, per kg of flour as weighed, kJ/kg.
        rest_h: hours flour and water rest before yeast, salt and the rest are mixed in, h.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        method: str | None = None,
        minutes: float | None = None,
        work_kj_per_kg: float | None = None,
        net_gain_kj_per_kg: float | None = None,
        sd_kj_per_kg: float | None = None,
        hydration_kj_per_kg: float | None = None,
        rest_h: float | datetime.timedelta = 0.0,
    ) -> None: ...
    @property
    def method(self) -> str | None:
        """a way of mixing of the table"""
    @property
    def minutes(self) -> float | None:
        """minutes of mixing or kneading; the method's usual time if not given, min"""
    @property
    def work_kj_per_kg(self) -> float | None:
        """mixing work that stays in the dough as heat, per kg of dough, kJ/kg"""
    @property
    def net_gain_kj_per_kg(self) -> float | None:
        """work and hydration less losses during mixing, per kg of dough, from logged batches, kJ/kg"""
    @property
    def sd_kj_per_kg(self) -> float | None:
        """standard deviation from batch to batch, kJ/kg"""
    @property
    def hydration_kj_per_kg(self) -> float | None:
        """heat that flour gives off when it is wetted, per kg of flour as weighed, kJ/kg"""
    @property
    def rest_h(self) -> float:
        """hours flour and water rest before yeast, salt and the rest are mixed in, h"""
    def replace(
        self,
        *,
        method: str | None = ...,
        minutes: float | None = ...,
        work_kj_per_kg: float | None = ...,
        net_gain_kj_per_kg: float | None = ...,
        sd_kj_per_kg: float | None = ...,
        hydration_kj_per_kg: float | None = ...,
        rest_h: float | datetime.timedelta = ...,
    ) -> DayMixing: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DayMixing: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DayMixing: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DayMixing: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DayPlace:
    """Where the dough is, and from when.

    Args:
        from_: time of day at which it comes there, such as 22:00.
        dough_c: temperature of the dough itself, not of the room, °C.
        room_c: air temperature where the dough is mixed, °C.
        refrigerator_c: air temperature inside the refrigerator, °C.
        proof_box_c: air temperature inside the proof box, °C.
        room_log: the room as it was measured.
        refrigerator_log: the refrigerator as it was measured.
        proof_box_log: the proof box as it was measured.
        dough_log: the dough as it was measured.
        fan: the refrigerator has a fan.
        humid: the proof box has steam or hot water in it.
        humidity_percent: relative humidity of the air, for a dough that is not covered, %.
        swing_k: of the air over the day: warmest less mean, K.
        warmest: time of day at which the air is warmest.
        heat_transfer_w_per_m2_k: heat between a surface and the air, radiation included, in place of the table's,
            W/(m²·K).

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        from_: str = "",
        dough_c: float | None = None,
        room_c: float | None = None,
        refrigerator_c: float | None = None,
        proof_box_c: float | None = None,
        room_log: Course | None = None,
        refrigerator_log: Course | None = None,
        proof_box_log: Course | None = None,
        dough_log: Course | None = None,
        fan: bool = False,
        humid: bool = False,
        humidity_percent: float | None = None,
        swing_k: float | None = None,
        warmest: str = "16:00",
        heat_transfer_w_per_m2_k: float | None = None,
    ) -> None: ...
    @property
    def from_(self) -> str:
        """time of day at which it comes there, such as 22:00"""
    @property
    def dough_c(self) -> float | None:
        """temperature of the dough itself, not of the room, °C"""
    @property
    def room_c(self) -> float | None:
        """air temperature where the dough is mixed, °C"""
    @property
    def refrigerator_c(self) -> float | None:
        """air temperature inside the refrigerator, °C"""
    @property
    def proof_box_c(self) -> float | None:
        """air temperature inside the proof box, °C"""
    @property
    def room_log(self) -> Course | None:
        """the room as it was measured"""
    @property
    def refrigerator_log(self) -> Course | None:
        """the refrigerator as it was measured"""
    @property
    def proof_box_log(self) -> Course | None:
        """the proof box as it was measured"""
    @property
    def dough_log(self) -> Course | None:
        """the dough as it was measured"""
    @property
    def fan(self) -> bool:
        """the refrigerator has a fan"""
    @property
    def humid(self) -> bool:
        """the proof box has steam or hot water in it"""
    @property
    def humidity_percent(self) -> float | None:
        """relative humidity of the air, for a dough that is not covered, %"""
    @property
    def swing_k(self) -> float | None:
        """of the air over the day: warmest less mean, K"""
    @property
    def warmest(self) -> str:
        """time of day at which the air is warmest"""
    @property
    def heat_transfer_w_per_m2_k(self) -> float | None:
        """heat between a surface and the air, radiation included, in place of the table's, W/(m²·K)"""
    def replace(
        self,
        *,
        from_: str = ...,
        dough_c: float | None = ...,
        room_c: float | None = ...,
        refrigerator_c: float | None = ...,
        proof_box_c: float | None = ...,
        room_log: Course | None = ...,
        refrigerator_log: Course | None = ...,
        proof_box_log: Course | None = ...,
        dough_log: Course | None = ...,
        fan: bool = ...,
        humid: bool = ...,
        humidity_percent: float | None = ...,
        swing_k: float | None = ...,
        warmest: str = ...,
        heat_transfer_w_per_m2_k: float | None = ...,
    ) -> DayPlace: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DayPlace: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DayPlace: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DayPlace: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DayPreferment:
    """Dough of an earlier mix; its flour and water count in the formula.

    Args:
        flour_g: weight of a flour, g.
        flour_percent: its flour, of all the flour, %.
        water_g: weight of water, g.
        water_percent: of its flour, %.
        yeast_g: weight of the yeast, g.
        yeast_percent: of its flour, %.
        yeast: its kind; the dough's if not given.
        salt_percent: of its flour, %.
        stands_h: hours until it is mixed in: it ferments so long, h.
        temperature_c: while it stands; also when it is mixed in, if today says nothing else, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        flour_g: float | None = None,
        flour_percent: float | None = None,
        water_g: float | None = None,
        water_percent: float | None = None,
        yeast_g: float | None = None,
        yeast_percent: float | None = None,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] | None = None,
        salt_percent: float | None = None,
        stands_h: float | datetime.timedelta | None = None,
        temperature_c: float | None = None,
    ) -> None: ...
    @property
    def flour_g(self) -> float | None:
        """weight of a flour, g"""
    @property
    def flour_percent(self) -> float | None:
        """its flour, of all the flour, %"""
    @property
    def water_g(self) -> float | None:
        """weight of water, g"""
    @property
    def water_percent(self) -> float | None:
        """of its flour, %"""
    @property
    def yeast_g(self) -> float | None:
        """weight of the yeast, g"""
    @property
    def yeast_percent(self) -> float | None:
        """of its flour, %"""
    @property
    def yeast(self) -> typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] | None:
        """its kind; the dough's if not given"""
    @property
    def salt_percent(self) -> float | None:
        """of its flour, %"""
    @property
    def stands_h(self) -> float | None:
        """hours until it is mixed in: it ferments so long, h"""
    @property
    def temperature_c(self) -> float | None:
        """while it stands; also when it is mixed in, if today says nothing else, °C"""
    def replace(
        self,
        *,
        flour_g: float | None = ...,
        flour_percent: float | None = ...,
        water_g: float | None = ...,
        water_percent: float | None = ...,
        yeast_g: float | None = ...,
        yeast_percent: float | None = ...,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] | None = ...,
        salt_percent: float | None = ...,
        stands_h: float | datetime.timedelta | None = ...,
        temperature_c: float | None = ...,
    ) -> DayPreferment: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DayPreferment: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DayPreferment: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DayPreferment: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class DayStage:
    """One stage of a day.

    Args:
        name: such as bulk.
        until_rise_percent: volume gained since the start of the stage, %.
        until_h: hours from the stage's start to its end, or a timedelta in Python, h.
        ended: time of day at which it really was.
        from_: time of day at which it comes there, such as 22:00.
        dough_c: temperature of the dough itself, not of the room, °C.
        room_c: air temperature where the dough is mixed, °C.
        refrigerator_c: air temperature inside the refrigerator, °C.
        proof_box_c: air temperature inside the proof box, °C.
        room_log: the room as it was measured.
        refrigerator_log: the refrigerator as it was measured.
        proof_box_log: the proof box as it was measured.
        dough_log: the dough as it was measured.
        fan: the refrigerator has a fan.
        humid: the proof box has steam or hot water in it.
        humidity_percent: relative humidity of the air, for a dough that is not covered, %.
        swing_k: of the air over the day: warmest less mean, K.
        warmest: time of day at which the air is warmest.
        heat_transfer_w_per_m2_k: heat between a surface and the air, radiation included, in place of the table's,
            W/(m²·K).
        place: further ones, in the order of time.
        piece: its shape; all of the dough in a tub if none was said.
        piece_g: weight of a piece as divided, g.
        pieces: equal ones that share all of the dough, if their weight is not given.
        diameter_cm: diameter of a piece, or of the tub at the dough, cm.
        length_cm: length of a long piece, cm.
        depth_cm: depth of the dough in its tub, cm.
        material: of a tub.
        vessel_g: weight of the tub, which warms and cools with the dough; 0: not counted, g.
        cover: a tub has a lid, other pieces film.
        worktop: a tub stands on wood, other pieces in the air.
        heat_loss_w_per_k: heat a piece loses to its surroundings per kelvin, in place of what its shape and cover give,
            W/K.
        folds_h: hours from the stage's start to a fold, h.
        handling: what ends the stage, in order.
        standing: in a tin (also a tub) or free; by the shape if not given.
        final_proof: its own over-proof limit counts; if not given, so it is in the last stage unless that is a tub or
            in a refrigerator.
        acceptable_rise_percent: volume gained since the start of the stage, %.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        name: str,
        until_rise_percent: float | None = None,
        until_h: float | datetime.timedelta | None = None,
        ended: str = "",
        from_: str = "",
        dough_c: float | None = None,
        room_c: float | None = None,
        refrigerator_c: float | None = None,
        proof_box_c: float | None = None,
        room_log: Course | None = None,
        refrigerator_log: Course | None = None,
        proof_box_log: Course | None = None,
        dough_log: Course | None = None,
        fan: bool = False,
        humid: bool = False,
        humidity_percent: float | None = None,
        swing_k: float | None = None,
        warmest: str = "16:00",
        heat_transfer_w_per_m2_k: float | None = None,
        place: collections.abc.Sequence[DayPlace] = ...,
        piece: typing.Literal["tub", "ball", "oblong", "flat", "tin"] | None = None,
        piece_g: float | None = None,
        pieces: float = 1.0,
        diameter_cm: float | None = None,
        length_cm: float | None = None,
        depth_cm: float | None = None,
        material: str = "plastic",
        vessel_g: float = 0.0,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = None,
        worktop: typing.Literal["air", "wood", "stone"] | None = None,
        heat_loss_w_per_k: float | None = None,
        folds_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        handling: collections.abc.Sequence[typing.Literal["fold", "divide", "round", "mould", "machine_mould"]] = ...,
        standing: typing.Literal["tin", "free"] | None = None,
        final_proof: bool | None = None,
        acceptable_rise_percent: tuple[float, float] | None = None,
    ) -> None: ...
    @property
    def name(self) -> str:
        """such as bulk"""
    @property
    def until_rise_percent(self) -> float | None:
        """volume gained since the start of the stage, %"""
    @property
    def until_h(self) -> float | None:
        """hours from the stage's start to its end, or a timedelta in Python, h"""
    @property
    def ended(self) -> str:
        """time of day at which it really was"""
    @property
    def from_(self) -> str:
        """time of day at which it comes there, such as 22:00"""
    @property
    def dough_c(self) -> float | None:
        """temperature of the dough itself, not of the room, °C"""
    @property
    def room_c(self) -> float | None:
        """air temperature where the dough is mixed, °C"""
    @property
    def refrigerator_c(self) -> float | None:
        """air temperature inside the refrigerator, °C"""
    @property
    def proof_box_c(self) -> float | None:
        """air temperature inside the proof box, °C"""
    @property
    def room_log(self) -> Course | None:
        """the room as it was measured"""
    @property
    def refrigerator_log(self) -> Course | None:
        """the refrigerator as it was measured"""
    @property
    def proof_box_log(self) -> Course | None:
        """the proof box as it was measured"""
    @property
    def dough_log(self) -> Course | None:
        """the dough as it was measured"""
    @property
    def fan(self) -> bool:
        """the refrigerator has a fan"""
    @property
    def humid(self) -> bool:
        """the proof box has steam or hot water in it"""
    @property
    def humidity_percent(self) -> float | None:
        """relative humidity of the air, for a dough that is not covered, %"""
    @property
    def swing_k(self) -> float | None:
        """of the air over the day: warmest less mean, K"""
    @property
    def warmest(self) -> str:
        """time of day at which the air is warmest"""
    @property
    def heat_transfer_w_per_m2_k(self) -> float | None:
        """heat between a surface and the air, radiation included, in place of the table's, W/(m²·K)"""
    @property
    def place(self) -> list[DayPlace]:
        """further ones, in the order of time"""
    @property
    def piece(self) -> typing.Literal["tub", "ball", "oblong", "flat", "tin"] | None:
        """its shape; all of the dough in a tub if none was said"""
    @property
    def piece_g(self) -> float | None:
        """weight of a piece as divided, g"""
    @property
    def pieces(self) -> float:
        """equal ones that share all of the dough, if their weight is not given"""
    @property
    def diameter_cm(self) -> float | None:
        """diameter of a piece, or of the tub at the dough, cm"""
    @property
    def length_cm(self) -> float | None:
        """length of a long piece, cm"""
    @property
    def depth_cm(self) -> float | None:
        """depth of the dough in its tub, cm"""
    @property
    def material(self) -> str:
        """of a tub"""
    @property
    def vessel_g(self) -> float:
        """weight of the tub, which warms and cools with the dough; 0: not counted, g"""
    @property
    def cover(self) -> typing.Literal["film", "cloth", "lid", "open"] | None:
        """a tub has a lid, other pieces film"""
    @property
    def worktop(self) -> typing.Literal["air", "wood", "stone"] | None:
        """a tub stands on wood, other pieces in the air"""
    @property
    def heat_loss_w_per_k(self) -> float | None:
        """heat a piece loses to its surroundings per kelvin, in place of what its shape and cover give, W/K"""
    @property
    def folds_h(self) -> list[float]:
        """hours from the stage's start to a fold, h"""
    @property
    def handling(self) -> list[typing.Literal["fold", "divide", "round", "mould", "machine_mould"]]:
        """what ends the stage, in order"""
    @property
    def standing(self) -> typing.Literal["tin", "free"] | None:
        """in a tin (also a tub) or free; by the shape if not given"""
    @property
    def final_proof(self) -> bool | None:
        """its own over-proof limit counts; if not given, so it is in the last stage unless that is a tub or in a
        refrigerator"""
    @property
    def acceptable_rise_percent(self) -> tuple[float, float] | None:
        """volume gained since the start of the stage, %"""
    def replace(
        self,
        *,
        name: str = ...,
        until_rise_percent: float | None = ...,
        until_h: float | datetime.timedelta | None = ...,
        ended: str = ...,
        from_: str = ...,
        dough_c: float | None = ...,
        room_c: float | None = ...,
        refrigerator_c: float | None = ...,
        proof_box_c: float | None = ...,
        room_log: Course | None = ...,
        refrigerator_log: Course | None = ...,
        proof_box_log: Course | None = ...,
        dough_log: Course | None = ...,
        fan: bool = ...,
        humid: bool = ...,
        humidity_percent: float | None = ...,
        swing_k: float | None = ...,
        warmest: str = ...,
        heat_transfer_w_per_m2_k: float | None = ...,
        place: collections.abc.Sequence[DayPlace] = ...,
        piece: typing.Literal["tub", "ball", "oblong", "flat", "tin"] | None = ...,
        piece_g: float | None = ...,
        pieces: float = ...,
        diameter_cm: float | None = ...,
        length_cm: float | None = ...,
        depth_cm: float | None = ...,
        material: str = ...,
        vessel_g: float = ...,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = ...,
        worktop: typing.Literal["air", "wood", "stone"] | None = ...,
        heat_loss_w_per_k: float | None = ...,
        folds_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        handling: collections.abc.Sequence[typing.Literal["fold", "divide", "round", "mould", "machine_mould"]] = ...,
        standing: typing.Literal["tin", "free"] | None = ...,
        final_proof: bool | None = ...,
        acceptable_rise_percent: tuple[float, float] | None = ...,
    ) -> DayStage: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> DayStage: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> DayStage: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> DayStage: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Dough:
    """One dough at one temperature, for the functions between two moments of a process.

    Args:
        dough_c: temperature of the dough itself, not of the room, °C.
        yeast_percent: yeast as weighed, percent of flour weight, %.
        yeast: its kind.
        salt_percent: salt, percent of flour weight, %.
        water_percent: all water of the formula, percent of flour weight, %.
        sugar_percent: added sugar as sucrose, percent of flour weight, %.
        gluten_percent: vital wheat gluten, percent of total flour weight, %.
        altitude_m: height above sea level, for the air pressure, m.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        dough_c: float,
        yeast_percent: float,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
        salt_percent: float = 2.0,
        water_percent: float = 65.0,
        sugar_percent: float = 0.0,
        gluten_percent: float = 0.0,
        altitude_m: float = 0.0,
    ) -> None: ...
    @property
    def dough_c(self) -> float:
        """temperature of the dough itself, not of the room, °C"""
    @property
    def yeast_percent(self) -> float:
        """yeast as weighed, percent of flour weight, %"""
    @property
    def yeast(self) -> typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"]:
        """its kind"""
    @property
    def salt_percent(self) -> float:
        """salt, percent of flour weight, %"""
    @property
    def water_percent(self) -> float:
        """all water of the formula, percent of flour weight, %"""
    @property
    def sugar_percent(self) -> float:
        """added sugar as sucrose, percent of flour weight, %"""
    @property
    def gluten_percent(self) -> float:
        """vital wheat gluten, percent of total flour weight, %"""
    @property
    def altitude_m(self) -> float:
        """height above sea level, for the air pressure, m"""
    def replace(
        self,
        *,
        dough_c: float = ...,
        yeast_percent: float = ...,
        yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = ...,
        salt_percent: float = ...,
        water_percent: float = ...,
        sugar_percent: float = ...,
        gluten_percent: float = ...,
        altitude_m: float = ...,
    ) -> Dough: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Dough: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Dough: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Dough: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def at(self, dough_c: float) -> Dough:
        """the same dough at another temperature, °C"""

class Explanation:
    """The factors that made a time.

    Args:
        reference_h: hours of the same rise in the reference dough with 1 % instant yeast.
        factors: one change after the other.
        hours: reference_h times all factors.

    Raises InvalidInput."""
    def __init__(
        self, *, reference_h: float = 0.0, factors: collections.abc.Sequence[Factor] = ..., hours: float = 0.0
    ) -> None: ...
    @property
    def reference_h(self) -> float:
        """hours of the same rise in the reference dough with 1 % instant yeast"""
    @property
    def hours(self) -> float:
        """reference_h times all factors"""
    def replace(
        self, *, reference_h: float = ..., factors: collections.abc.Sequence[Factor] = ..., hours: float = ...
    ) -> Explanation: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Explanation: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Explanation: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Explanation: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def factors(self) -> dict[str, float]:
        """name → hours times this; to_dict has the values as well"""

class Factor:
    """Which factor made how much of a time.

    Args:
        name: yeast, temperature, salt, water, sugar, gluten or altitude.
        from_value: value in the reference dough.
        to_value: value in this dough.
        times: hours times this.

    Raises InvalidInput."""
    def __init__(
        self, *, name: str = "", from_value: float = 0.0, to_value: float = 0.0, times: float = 1.0
    ) -> None: ...
    @property
    def name(self) -> str:
        """yeast, temperature, salt, water, sugar, gluten or altitude"""
    @property
    def from_value(self) -> float:
        """value in the reference dough"""
    @property
    def to_value(self) -> float:
        """value in this dough"""
    @property
    def times(self) -> float:
        """hours times this"""
    def replace(
        self, *, name: str = ..., from_value: float = ..., to_value: float = ..., times: float = ...
    ) -> Factor: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Factor: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Factor: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Factor: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Field:
    """A row of the field table: name, unit, bounds, default, meaning and source of an input."""
    @property
    def name(self) -> str: ...
    @property
    def label(self) -> str: ...
    @property
    def unit(self) -> str: ...
    @property
    def low(self) -> float:
        """lowest allowed value"""
    @property
    def high(self) -> float:
        """highest allowed value"""
    @property
    def initial(self) -> float | None:
        """default, or None if the input must be given"""
    @property
    def quantity(self) -> str: ...
    @property
    def meaning(self) -> str: ...
    @property
    def source(self) -> str: ...
    def __repr__(self) -> str: ...

class Flour:
    """A flour of a mix.

    Args:
        mass_g: weight of a flour, g.
        kind: a flour of ingredients().
        moisture_percent: water in the flour as it is weighed, percent of its weight, %.
        temperature_c: temperature of the flour in its bag, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        mass_g: float,
        kind: str = "bread",
        *,
        moisture_percent: float | None = None,
        temperature_c: float | None = None,
    ) -> None: ...
    @property
    def mass_g(self) -> float:
        """weight of a flour, g"""
    @property
    def kind(self) -> str:
        """a flour of ingredients()"""
    @property
    def moisture_percent(self) -> float | None:
        """water in the flour as it is weighed, percent of its weight, %"""
    @property
    def temperature_c(self) -> float | None:
        """temperature of the flour in its bag, °C"""
    def replace(
        self,
        *,
        mass_g: float = ...,
        kind: str = ...,
        moisture_percent: float | None = ...,
        temperature_c: float | None = ...,
    ) -> Flour: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Flour: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Flour: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Flour: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class FlourShare:
    """One flour's share of a formula given in percent.

    Args:
        percent: one flour's share of the flours, added gluten and preferments apart, %.
        kind: a flour of ingredients().
        moisture_percent: water in the flour as it is weighed, percent of its weight, %.
        temperature_c: temperature of the flour in its bag, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        percent: float,
        kind: str = "bread",
        *,
        moisture_percent: float | None = None,
        temperature_c: float | None = None,
    ) -> None: ...
    @property
    def percent(self) -> float:
        """one flour's share of the flours, added gluten and preferments apart, %"""
    @property
    def kind(self) -> str:
        """a flour of ingredients()"""
    @property
    def moisture_percent(self) -> float | None:
        """water in the flour as it is weighed, percent of its weight, %"""
    @property
    def temperature_c(self) -> float | None:
        """temperature of the flour in its bag, °C"""
    def replace(
        self,
        *,
        percent: float = ...,
        kind: str = ...,
        moisture_percent: float | None = ...,
        temperature_c: float | None = ...,
    ) -> FlourShare: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> FlourShare: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> FlourShare: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> FlourShare: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Forecast:
    """When each stage will be ready. forecast["bulk"] is the StageForecast of that name.

    Args:
        stages: those not over yet.
        effective_draws: that are left by what was seen; all if nothing was.
        notices: cautions, most severe first.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        stages: collections.abc.Sequence[StageForecast] = ...,
        effective_draws: float = 0.0,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> None: ...
    @property
    def stages(self) -> list[StageForecast]:
        """those not over yet"""
    @property
    def effective_draws(self) -> float:
        """that are left by what was seen; all if nothing was"""
    @property
    def notices(self) -> list[Notice]:
        """cautions, most severe first"""
    def replace(
        self,
        *,
        stages: collections.abc.Sequence[StageForecast] = ...,
        effective_draws: float = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> Forecast: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Forecast: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Forecast: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Forecast: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def __getitem__(self, name: str) -> StageForecast: ...
    def __len__(self) -> int: ...
    def __iter__(self) -> collections.abc.Iterator[typing.Any]: ...
    def to_frame(self) -> typing.Any:
        """The stages as a pandas DataFrame."""
    def _repr_html_(self) -> str: ...

class HeatShare:
    """How much one thing counts for the dough's temperature.

    Args:
        name: such as main water, bread flour, bowl, or room for the exchange with it.
        mass_g: g of dough; 0 for bowl and room.
        temperature_c: °C, as it comes.
        dough_k_per_k: K of dough per K of this; all of them sum to 1.
        water_k_per_k: K by which the main water must change per K of this, for the same dough.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        name: str = "",
        mass_g: float = 0.0,
        temperature_c: float = 0.0,
        dough_k_per_k: float = 0.0,
        water_k_per_k: float = 0.0,
    ) -> None: ...
    @property
    def name(self) -> str:
        """such as main water, bread flour, bowl, or room for the exchange with it"""
    @property
    def mass_g(self) -> float:
        """g of dough; 0 for bowl and room"""
    @property
    def temperature_c(self) -> float:
        """°C, as it comes"""
    @property
    def dough_k_per_k(self) -> float:
        """K of dough per K of this; all of them sum to 1"""
    @property
    def water_k_per_k(self) -> float:
        """K by which the main water must change per K of this, for the same dough"""
    def replace(
        self,
        *,
        name: str = ...,
        mass_g: float = ...,
        temperature_c: float = ...,
        dough_k_per_k: float = ...,
        water_k_per_k: float = ...,
    ) -> HeatShare: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> HeatShare: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> HeatShare: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> HeatShare: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Ingredient:
    """A row of the table of ingredients: what it is made of, and the source."""
    @property
    def name(self) -> str: ...
    @property
    def label(self) -> str: ...
    @property
    def is_flour(self) -> bool:
        """counts in the 100 % of baker's percent"""
    @property
    def composition(self) -> Composition:
        """mass fractions"""
    @property
    def source(self) -> str: ...
    def __repr__(self) -> str: ...

class Kitchen:
    """Every parameter of the model with its uncertainty. Kitchen() is the frozen set 2026-2; libferment.parameters()
    lists units, bounds, priors and sources.

    Args:
        name: your own name of it.
        law: the temperature law that drives the clock.
        t_min_c: notional temperature below which the clock stands still, °C.
        t_opt_c: temperature at which the clock runs fastest, °C.
        t_max_above_opt_k: upper cardinal temperature less the optimum, K.
        q10: factor per 10 K of the constant-Q10 law.
        activation_energy_kj: activation energy of the Arrhenius law, kJ/mol.
        root_t_min_c: notional minimum of the square-root law, °C.
        root_t_max_c: notional maximum of the square-root law, °C.
        root_decline_per_k: c of the square-root law, 1/K.
        aw_min: water activity at which gas production ends.
        gassing_rate: CO2 per gram of gassing yeast dry matter and hour at the reference dough, mmol/(g·h).
        start_up_compressed_h: time constant of the approach to full rate, equivalent hours, h.
        start_up_instant_h: time constant of the approach to full rate, equivalent hours, h.
        start_up_active_dry_h: time constant of the approach to full rate, equivalent hours, h.
        start_up_active_dry_unwetted_h: time constant of the approach to full rate, equivalent hours, h.
        growth_rate: specific growth rate of the yeast per equivalent hour, 1/h.
        growth_lag_h: equivalent hours before the yeast begins to grow, h.
        growth_increment: yeast dry matter a dough can add, whatever the dose, g per 100 g flour.
        gas_capacity: CO2 the flour's own sugars can give, mmol per 100 g flour.
        retention_onset: volume over the volume just after mixing up to which all gas is held, times the mixed volume.
        retention_limit: volume over the volume just after mixing that is never passed, times the mixed volume.
        void_fraction: share of air in the dough just after mixing, of volume.
        gas_free_density: density of the dough without gas, g/mL.
        water_exponent: speed goes with (water/65 %) to this power, beside water activity.
        high_sugar_factor: speed of doughs with 20 % sugar and more over what water activity makes it; phased in from 10
            %, times.
        kept_by_fold: share of the cells' gas that a fold leaves, of the gas in the cells.
        kept_by_divide: share of the cells' gas that dividing leaves, of the gas in the cells.
        kept_by_round: share of the cells' gas that rounding leaves, of the gas in the cells.
        kept_by_mould: share of the cells' gas that moulding by hand leaves, of the gas in the cells.
        kept_by_machine_mould: share of the cells' gas that moulding by machine leaves, of the gas in the cells.
        piece_heat_loss_factor: heat loss of every piece over what its shape and cover give, unless it was measured,
            times.
        over_proof_tin: share of the largest volume at which dough in a tin or tub is over-proofed, of the largest
            volume.
        over_proof_free: share of the largest volume at which dough standing free is over-proofed, of the largest
            volume.
        over_proof_bulk: share of the largest volume at which a bulk that ends by time is over-proofed, of the largest
            volume.
        over_proof_rise_free_percent: rise at which a final proof is over-proofed, %.
        over_proof_rise_tin_percent: rise at which a final proof is over-proofed, %.
        bake_sd: sd of the yeast's part from bake to bake, of ln gassing rate.
        model_sd: sd of what the model gets wrong from bake to bake, of ln gassing rate.
        packet_sd: sd of the yeast's part from one packet of it to the next, of ln gassing rate.
        log_time_scale: scale of the noise of the logged time to a rise, Student's t with 4 degrees of freedom; its sd
            is 1.41 times that, of ln time.
        covariance: of the learnable parameters in the coordinates in which they are learned, n × n; the prior's if
            empty.
        learned_from: the frozen set before the first log.
        packet: of the yeast that it knows.
        history: the bakes it was learned from.
        mixing: what it has learned of ways of mixing.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        name: str = "",
        law: typing.Literal["cardinal", "square_root", "arrhenius", "constant_q10"] = "cardinal",
        t_min_c: float = -2.0,
        t_opt_c: float = 40.0,
        t_max_above_opt_k: float = 5.0,
        q10: float = 2.2,
        activation_energy_kj: float = 60.0,
        root_t_min_c: float = -2.0,
        root_t_max_c: float = 47.0,
        root_decline_per_k: float = 0.37,
        aw_min: float = 0.88,
        gassing_rate: float = 11.0,
        start_up_compressed_h: float | datetime.timedelta = 0.2,
        start_up_instant_h: float | datetime.timedelta = 0.25,
        start_up_active_dry_h: float | datetime.timedelta = 0.25,
        start_up_active_dry_unwetted_h: float | datetime.timedelta = 0.8,
        growth_rate: float = 0.24,
        growth_lag_h: float | datetime.timedelta = 2.7,
        growth_increment: float = 0.18,
        gas_capacity: float = 50.0,
        retention_onset: float = 2.6,
        retention_limit: float = 4.8,
        void_fraction: float = 0.06,
        gas_free_density: float = 1.26,
        water_exponent: float = 0.5,
        high_sugar_factor: float = 1.0,
        kept_by_fold: float = 0.85,
        kept_by_divide: float = 0.7,
        kept_by_round: float = 0.6,
        kept_by_mould: float = 0.4,
        kept_by_machine_mould: float = 0.2,
        piece_heat_loss_factor: float = 1.0,
        over_proof_tin: float = 0.87,
        over_proof_free: float = 0.65,
        over_proof_bulk: float = 0.6,
        over_proof_rise_free_percent: float = 130.0,
        over_proof_rise_tin_percent: float = 200.0,
        bake_sd: float = 0.12,
        model_sd: float = 0.08,
        packet_sd: float = 0.15,
        log_time_scale: float = 0.1,
        covariance: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        learned_from: str = "",
        packet: str = "",
        history: collections.abc.Sequence[LearnedBake] = ...,
        mixing: collections.abc.Sequence[LearnedGain] = ...,
    ) -> None: ...
    @property
    def law(self) -> typing.Literal["cardinal", "square_root", "arrhenius", "constant_q10"]:
        """the temperature law that drives the clock"""
    @property
    def t_min_c(self) -> float:
        """notional temperature below which the clock stands still, °C"""
    @property
    def t_opt_c(self) -> float:
        """temperature at which the clock runs fastest, °C"""
    @property
    def t_max_above_opt_k(self) -> float:
        """upper cardinal temperature less the optimum, K"""
    @property
    def q10(self) -> float:
        """factor per 10 K of the constant-Q10 law"""
    @property
    def activation_energy_kj(self) -> float:
        """activation energy of the Arrhenius law, kJ/mol"""
    @property
    def root_t_min_c(self) -> float:
        """notional minimum of the square-root law, °C"""
    @property
    def root_t_max_c(self) -> float:
        """notional maximum of the square-root law, °C"""
    @property
    def root_decline_per_k(self) -> float:
        """c of the square-root law, 1/K"""
    @property
    def aw_min(self) -> float:
        """water activity at which gas production ends"""
    @property
    def gassing_rate(self) -> float:
        """CO2 per gram of gassing yeast dry matter and hour at the reference dough, mmol/(g·h)"""
    @property
    def start_up_compressed_h(self) -> float:
        """time constant of the approach to full rate, equivalent hours, h"""
    @property
    def start_up_instant_h(self) -> float:
        """time constant of the approach to full rate, equivalent hours, h"""
    @property
    def start_up_active_dry_h(self) -> float:
        """time constant of the approach to full rate, equivalent hours, h"""
    @property
    def start_up_active_dry_unwetted_h(self) -> float:
        """time constant of the approach to full rate, equivalent hours, h"""
    @property
    def growth_rate(self) -> float:
        """specific growth rate of the yeast per equivalent hour, 1/h"""
    @property
    def growth_lag_h(self) -> float:
        """equivalent hours before the yeast begins to grow, h"""
    @property
    def growth_increment(self) -> float:
        """yeast dry matter a dough can add, whatever the dose, g per 100 g flour"""
    @property
    def gas_capacity(self) -> float:
        """CO2 the flour's own sugars can give, mmol per 100 g flour"""
    @property
    def retention_onset(self) -> float:
        """volume over the volume just after mixing up to which all gas is held, times the mixed volume"""
    @property
    def retention_limit(self) -> float:
        """volume over the volume just after mixing that is never passed, times the mixed volume"""
    @property
    def void_fraction(self) -> float:
        """share of air in the dough just after mixing, of volume"""
    @property
    def gas_free_density(self) -> float:
        """density of the dough without gas, g/mL"""
    @property
    def water_exponent(self) -> float:
        """speed goes with (water/65 %) to this power, beside water activity"""
    @property
    def high_sugar_factor(self) -> float:
        """speed of doughs with 20 % sugar and more over what water activity makes it; phased in from 10 %, times"""
    @property
    def kept_by_fold(self) -> float:
        """share of the cells' gas that a fold leaves, of the gas in the cells"""
    @property
    def kept_by_divide(self) -> float:
        """share of the cells' gas that dividing leaves, of the gas in the cells"""
    @property
    def kept_by_round(self) -> float:
        """share of the cells' gas that rounding leaves, of the gas in the cells"""
    @property
    def kept_by_mould(self) -> float:
        """share of the cells' gas that moulding by hand leaves, of the gas in the cells"""
    @property
    def kept_by_machine_mould(self) -> float:
        """share of the cells' gas that moulding by machine leaves, of the gas in the cells"""
    @property
    def piece_heat_loss_factor(self) -> float:
        """heat loss of every piece over what its shape and cover give, unless it was measured, times"""
    @property
    def over_proof_tin(self) -> float:
        """share of the largest volume at which dough in a tin or tub is over-proofed, of the largest volume"""
    @property
    def over_proof_free(self) -> float:
        """share of the largest volume at which dough standing free is over-proofed, of the largest volume"""
    @property
    def over_proof_bulk(self) -> float:
        """share of the largest volume at which a bulk that ends by time is over-proofed, of the largest volume"""
    @property
    def over_proof_rise_free_percent(self) -> float:
        """rise at which a final proof is over-proofed, %"""
    @property
    def over_proof_rise_tin_percent(self) -> float:
        """rise at which a final proof is over-proofed, %"""
    @property
    def bake_sd(self) -> float:
        """sd of the yeast's part from bake to bake, of ln gassing rate"""
    @property
    def model_sd(self) -> float:
        """sd of what the model gets wrong from bake to bake, of ln gassing rate"""
    @property
    def packet_sd(self) -> float:
        """sd of the yeast's part from one packet of it to the next, of ln gassing rate"""
    @property
    def log_time_scale(self) -> float:
        """scale of the noise of the logged time to a rise, Student's t with 4 degrees of freedom; its sd is 1.41 times
        that, of ln time"""
    @property
    def learned_from(self) -> str:
        """the frozen set before the first log"""
    @property
    def packet(self) -> str:
        """of the yeast that it knows"""
    @property
    def history(self) -> list[LearnedBake]:
        """the bakes it was learned from"""
    @property
    def mixing(self) -> list[LearnedGain]:
        """what it has learned of ways of mixing"""
    def replace(
        self,
        *,
        name: str = ...,
        law: typing.Literal["cardinal", "square_root", "arrhenius", "constant_q10"] = ...,
        t_min_c: float = ...,
        t_opt_c: float = ...,
        t_max_above_opt_k: float = ...,
        q10: float = ...,
        activation_energy_kj: float = ...,
        root_t_min_c: float = ...,
        root_t_max_c: float = ...,
        root_decline_per_k: float = ...,
        aw_min: float = ...,
        gassing_rate: float = ...,
        start_up_compressed_h: float | datetime.timedelta = ...,
        start_up_instant_h: float | datetime.timedelta = ...,
        start_up_active_dry_h: float | datetime.timedelta = ...,
        start_up_active_dry_unwetted_h: float | datetime.timedelta = ...,
        growth_rate: float = ...,
        growth_lag_h: float | datetime.timedelta = ...,
        growth_increment: float = ...,
        gas_capacity: float = ...,
        retention_onset: float = ...,
        retention_limit: float = ...,
        void_fraction: float = ...,
        gas_free_density: float = ...,
        water_exponent: float = ...,
        high_sugar_factor: float = ...,
        kept_by_fold: float = ...,
        kept_by_divide: float = ...,
        kept_by_round: float = ...,
        kept_by_mould: float = ...,
        kept_by_machine_mould: float = ...,
        piece_heat_loss_factor: float = ...,
        over_proof_tin: float = ...,
        over_proof_free: float = ...,
        over_proof_bulk: float = ...,
        over_proof_rise_free_percent: float = ...,
        over_proof_rise_tin_percent: float = ...,
        bake_sd: float = ...,
        model_sd: float = ...,
        packet_sd: float = ...,
        log_time_scale: float = ...,
        covariance: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        learned_from: str = ...,
        packet: str = ...,
        history: collections.abc.Sequence[LearnedBake] = ...,
        mixing: collections.abc.Sequence[LearnedGain] = ...,
    ) -> Kitchen: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Kitchen: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Kitchen: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Kitchen: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def name(self) -> str:
        """its own name, or that of the frozen set it is; empty for a changed one"""
    @property
    def covariance(self) -> _Array:
        """n × n, in the fitted coordinates of the learnable parameters, in the order of the table; the prior's if it
        has none of its own"""
    @staticmethod
    def named(name: str) -> Kitchen:
        """A frozen named parameter set. Known: "2026-2", the default, and "2026-1". Raises InvalidInput."""
    @property
    def temperature_law(self) -> Cardinal | SquareRoot | Arrhenius | ConstantQ10:
        """the temperature law with its parameters"""
    def with_law(self, law: Cardinal | SquareRoot | Arrhenius | ConstantQ10) -> Kitchen:
        """The kitchen with this temperature law and its parameters. Raises InvalidInput."""
    @property
    def learned(self) -> list[Learned]:
        """how much it knows of each parameter beside the frozen set that it was learned from"""
    @property
    def notices(self) -> list[Notice]:
        """bakes that surprise, and what its bakes could not teach"""
    def updated_with(self, day: Day | Log) -> Kitchen:
        """The kitchen that one bake more has taught, a Day or a Log; spreads stay. To learn anew, give calibrate the
        whole logbook. Raises InvalidInput, NotConverged, NoSolution."""

class LawFit:
    """How well a temperature law explains logs.

    Args:
        law: of temperature.
        criterion: information criterion: the least is best.
        difference: from the best.
        sd: of the difference.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        law: typing.Literal["cardinal", "square_root", "arrhenius", "constant_q10"] = "cardinal",
        criterion: float = 0.0,
        difference: float = 0.0,
        sd: float = 0.0,
    ) -> None: ...
    @property
    def law(self) -> typing.Literal["cardinal", "square_root", "arrhenius", "constant_q10"]:
        """of temperature"""
    @property
    def criterion(self) -> float:
        """information criterion: the least is best"""
    @property
    def difference(self) -> float:
        """from the best"""
    @property
    def sd(self) -> float:
        """of the difference"""
    def replace(
        self,
        *,
        law: typing.Literal["cardinal", "square_root", "arrhenius", "constant_q10"] = ...,
        criterion: float = ...,
        difference: float = ...,
        sd: float = ...,
    ) -> LawFit: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> LawFit: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> LawFit: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> LawFit: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Learned:
    """What was learned of a parameter.

    Args:
        name: of the parameter.
        value: now.
        sd: in the coordinate in which it is learned.
        prior_sd: before.
        share: of the prior's sd that is left: 1 is nothing learned.

    Raises InvalidInput."""
    def __init__(
        self, *, name: str = "", value: float = 0.0, sd: float = 0.0, prior_sd: float = 0.0, share: float = 1.0
    ) -> None: ...
    @property
    def name(self) -> str:
        """of the parameter"""
    @property
    def value(self) -> float:
        """now"""
    @property
    def sd(self) -> float:
        """in the coordinate in which it is learned"""
    @property
    def prior_sd(self) -> float:
        """before"""
    @property
    def share(self) -> float:
        """of the prior's sd that is left: 1 is nothing learned"""
    def replace(
        self, *, name: str = ..., value: float = ..., sd: float = ..., prior_sd: float = ..., share: float = ...
    ) -> Learned: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Learned: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Learned: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Learned: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class LearnedBake:
    """What a kitchen keeps of a bake it was learned from.

    Args:
        name: its own.
        date: such as 2026-11-29.
        packet: of yeast.
        dough_c: °C when the stage began that was looked at last.
        looks: how many.
        was: how the most surprising look was seen.
        seen: of the most surprising look: h since its stage began, % of rise or °C.
        expected: the same as the kitchen expects it; none where it never comes.
        standardised: the difference, by noise and bake.
        surprising: whether it is hardly believed.
        explanation: what would explain it, if it is a surprise.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        name: str = "",
        date: str = "",
        packet: str = "",
        dough_c: float = 0.0,
        looks: float = 0.0,
        was: typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"] = "at",
        seen: float = 0.0,
        expected: float | None = 0.0,
        standardised: float | None = 0.0,
        surprising: bool = False,
        explanation: str = "",
    ) -> None: ...
    @property
    def name(self) -> str:
        """its own"""
    @property
    def date(self) -> str:
        """such as 2026-11-29"""
    @property
    def packet(self) -> str:
        """of yeast"""
    @property
    def dough_c(self) -> float:
        """°C when the stage began that was looked at last"""
    @property
    def looks(self) -> float:
        """how many"""
    @property
    def was(self) -> typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"]:
        """how the most surprising look was seen"""
    @property
    def seen(self) -> float:
        """of the most surprising look: h since its stage began, % of rise or °C"""
    @property
    def expected(self) -> float | None:
        """the same as the kitchen expects it; none where it never comes"""
    @property
    def standardised(self) -> float | None:
        """the difference, by noise and bake"""
    @property
    def surprising(self) -> bool:
        """whether it is hardly believed"""
    @property
    def explanation(self) -> str:
        """what would explain it, if it is a surprise"""
    def replace(
        self,
        *,
        name: str = ...,
        date: str = ...,
        packet: str = ...,
        dough_c: float = ...,
        looks: float = ...,
        was: typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"] = ...,
        seen: float = ...,
        expected: float | None = ...,
        standardised: float | None = ...,
        surprising: bool = ...,
        explanation: str = ...,
    ) -> LearnedBake: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> LearnedBake: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> LearnedBake: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> LearnedBake: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class LearnedGain:
    """What a kitchen has learned of a way of mixing.

    Args:
        method: of mixing.
        net_gains_kj_per_kg: of each batch.
        minutes: of the latest; 0: it has none.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        method: str = "",
        net_gains_kj_per_kg: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        minutes: float = 0.0,
    ) -> None: ...
    @property
    def method(self) -> str:
        """of mixing"""
    @property
    def net_gains_kj_per_kg(self) -> list[float]:
        """of each batch"""
    @property
    def minutes(self) -> float:
        """of the latest; 0: it has none"""
    def replace(
        self,
        *,
        method: str = ...,
        net_gains_kj_per_kg: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        minutes: float = ...,
    ) -> LearnedGain: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> LearnedGain: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> LearnedGain: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> LearnedGain: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class LearnedMixing:
    """What earlier batches say of the mixing.

    Args:
        friction_k: K, of the factor rule.
        net_gain_kj_per_kg: kJ per kg of dough, of the heat balance.
        minutes: of today's mixing, whose exchange with the room is reckoned apart; 0 if it is in the gain.

    Raises InvalidInput."""
    def __init__(
        self, *, friction_k: BatchMean = ..., net_gain_kj_per_kg: BatchMean = ..., minutes: float = 0.0
    ) -> None: ...
    @property
    def friction_k(self) -> BatchMean:
        """K, of the factor rule"""
    @property
    def net_gain_kj_per_kg(self) -> BatchMean:
        """kJ per kg of dough, of the heat balance"""
    @property
    def minutes(self) -> float:
        """of today's mixing, whose exchange with the room is reckoned apart; 0 if it is in the gain"""
    def replace(
        self, *, friction_k: BatchMean = ..., net_gain_kj_per_kg: BatchMean = ..., minutes: float = ...
    ) -> LearnedMixing: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> LearnedMixing: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> LearnedMixing: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> LearnedMixing: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Log:
    """A bake as it was really done, with what was seen of it.

    Args:
        name: for reports.
        date: such as 2026-11-29.
        packet: of yeast.
        process: stages that end by the hours at which they ended.
        seen: looks at its stages.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        name: str = "",
        date: str = "",
        packet: str = "",
        process: Process,
        seen: collections.abc.Sequence[Sighting] = ...,
    ) -> None: ...
    @property
    def name(self) -> str:
        """for reports"""
    @property
    def date(self) -> str:
        """such as 2026-11-29"""
    @property
    def packet(self) -> str:
        """of yeast"""
    @property
    def process(self) -> Process:
        """stages that end by the hours at which they ended"""
    @property
    def seen(self) -> list[Sighting]:
        """looks at its stages"""
    def replace(
        self,
        *,
        name: str = ...,
        date: str = ...,
        packet: str = ...,
        process: Process = ...,
        seen: collections.abc.Sequence[Sighting] = ...,
    ) -> Log: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Log: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Log: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Log: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Mix:
    """One addition of ingredients: what comes into the bowl, how warm, and how it is mixed. In a process it joins the
    dough that is there, and takes its rest and the minutes that its mixing says; only the first needs flour.

    Args:
        room_c: air where the dough is mixed; whatever has no temperature of its own has it; needed without dough_c, °C.
        flour_g: weight of bread flour; other flours stand in flours, g.
        flours: other flours.
        water_g: weight of the main water, whose temperature is asked for, g.
        waters: portions of water of their own temperature.
        ice_g: weight of ice in place of that much of the water, g.
        preferments: doughs of earlier mixes.
        gluten_g: weight of vital wheat gluten; it counts as flour, g.
        milk_g: weight of whole milk, g.
        egg_g: weight of whole egg without shell, g.
        butter_g: weight of butter, g.
        oil_g: weight of oil, g.
        sugar_g: weight of sugar, g.
        salt_g: weight of salt, g.
        instant_g: weight of instant dry yeast, g.
        active_dry_g: weight of active dry yeast, g.
        compressed_g: weight of compressed (fresh) yeast, g.
        flour_c: temperature of the flour in its bag, °C.
        water_c: temperature of the water poured in, °C.
        ice_c: temperature of the ice: about −18 °C from a freezer, 0 °C when it is wet, °C.
        milk_c: temperature of the milk; the room's if not given, °C.
        egg_c: temperature of the egg; the room's if not given, °C.
        butter_c: temperature of the butter; the room's if not given, °C.
        tap_c: cold water as it comes from the tap, °C.
        bowl: the bowl, with its hook or paddle.
        mixing: the heat of mixing; kneading by hand if not given.
        heat_of_solution: salt and sugar cool as they dissolve.
        rest_h: hours flour and water rest before yeast, salt and the rest are mixed in, h.
        heat_loss_w_per_k: heat the covered dough in its bowl loses to the room per kelvin; estimated from the dough's
            weight if not given, W/K.
        doughs: doughs of other processes, mixed in as they are.
        dough_c: measured at the end of mixing, in place of the heat balance's, °C.
        perishable: holds perishable food other than milk and egg.
        yeast_unwetted: active dry yeast is stirred in dry.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        room_c: float | None = None,
        flour_g: float = 0.0,
        flours: collections.abc.Sequence[Flour] = ...,
        water_g: float = 0.0,
        waters: collections.abc.Sequence[Water] = ...,
        ice_g: float = 0.0,
        preferments: collections.abc.Sequence[Preferment] = ...,
        gluten_g: float = 0.0,
        milk_g: float = 0.0,
        egg_g: float = 0.0,
        butter_g: float = 0.0,
        oil_g: float = 0.0,
        sugar_g: float = 0.0,
        salt_g: float = 0.0,
        instant_g: float = 0.0,
        active_dry_g: float = 0.0,
        compressed_g: float = 0.0,
        flour_c: float | None = None,
        water_c: float | None = None,
        ice_c: float = -18.0,
        milk_c: float | None = None,
        egg_c: float | None = None,
        butter_c: float | None = None,
        tap_c: float | None = None,
        bowl: Bowl = ...,
        mixing: ByMethod | ByWork | ByNetGain | str | None = None,
        heat_of_solution: bool = True,
        rest_h: float | datetime.timedelta = 0.0,
        heat_loss_w_per_k: float | None = None,
        doughs: collections.abc.Sequence[State] = ...,
        dough_c: float | None = None,
        perishable: bool = False,
        yeast_unwetted: bool = False,
    ) -> None: ...
    @property
    def room_c(self) -> float | None:
        """air where the dough is mixed; whatever has no temperature of its own has it; needed without dough_c, °C"""
    @property
    def flour_g(self) -> float:
        """weight of bread flour; other flours stand in flours, g"""
    @property
    def flours(self) -> list[Flour]:
        """other flours"""
    @property
    def water_g(self) -> float:
        """weight of the main water, whose temperature is asked for, g"""
    @property
    def waters(self) -> list[Water]:
        """portions of water of their own temperature"""
    @property
    def ice_g(self) -> float:
        """weight of ice in place of that much of the water, g"""
    @property
    def preferments(self) -> list[Preferment]:
        """doughs of earlier mixes"""
    @property
    def gluten_g(self) -> float:
        """weight of vital wheat gluten; it counts as flour, g"""
    @property
    def milk_g(self) -> float:
        """weight of whole milk, g"""
    @property
    def egg_g(self) -> float:
        """weight of whole egg without shell, g"""
    @property
    def butter_g(self) -> float:
        """weight of butter, g"""
    @property
    def oil_g(self) -> float:
        """weight of oil, g"""
    @property
    def sugar_g(self) -> float:
        """weight of sugar, g"""
    @property
    def salt_g(self) -> float:
        """weight of salt, g"""
    @property
    def instant_g(self) -> float:
        """weight of instant dry yeast, g"""
    @property
    def active_dry_g(self) -> float:
        """weight of active dry yeast, g"""
    @property
    def compressed_g(self) -> float:
        """weight of compressed (fresh) yeast, g"""
    @property
    def flour_c(self) -> float | None:
        """temperature of the flour in its bag, °C"""
    @property
    def water_c(self) -> float | None:
        """temperature of the water poured in, °C"""
    @property
    def ice_c(self) -> float:
        """temperature of the ice: about −18 °C from a freezer, 0 °C when it is wet, °C"""
    @property
    def milk_c(self) -> float | None:
        """temperature of the milk; the room's if not given, °C"""
    @property
    def egg_c(self) -> float | None:
        """temperature of the egg; the room's if not given, °C"""
    @property
    def butter_c(self) -> float | None:
        """temperature of the butter; the room's if not given, °C"""
    @property
    def tap_c(self) -> float | None:
        """cold water as it comes from the tap, °C"""
    @property
    def bowl(self) -> Bowl:
        """the bowl, with its hook or paddle"""
    @property
    def mixing(self) -> ByMethod | ByWork | ByNetGain | None:
        """the heat of mixing; kneading by hand if not given"""
    @property
    def heat_of_solution(self) -> bool:
        """salt and sugar cool as they dissolve"""
    @property
    def rest_h(self) -> float:
        """hours flour and water rest before yeast, salt and the rest are mixed in, h"""
    @property
    def heat_loss_w_per_k(self) -> float | None:
        """heat the covered dough in its bowl loses to the room per kelvin; estimated from the dough's weight if not
        given, W/K"""
    @property
    def doughs(self) -> list[State]:
        """doughs of other processes, mixed in as they are"""
    @property
    def dough_c(self) -> float | None:
        """measured at the end of mixing, in place of the heat balance's, °C"""
    @property
    def perishable(self) -> bool:
        """holds perishable food other than milk and egg"""
    @property
    def yeast_unwetted(self) -> bool:
        """active dry yeast is stirred in dry"""
    def replace(
        self,
        *,
        room_c: float | None = ...,
        flour_g: float = ...,
        flours: collections.abc.Sequence[Flour] = ...,
        water_g: float = ...,
        waters: collections.abc.Sequence[Water] = ...,
        ice_g: float = ...,
        preferments: collections.abc.Sequence[Preferment] = ...,
        gluten_g: float = ...,
        milk_g: float = ...,
        egg_g: float = ...,
        butter_g: float = ...,
        oil_g: float = ...,
        sugar_g: float = ...,
        salt_g: float = ...,
        instant_g: float = ...,
        active_dry_g: float = ...,
        compressed_g: float = ...,
        flour_c: float | None = ...,
        water_c: float | None = ...,
        ice_c: float = ...,
        milk_c: float | None = ...,
        egg_c: float | None = ...,
        butter_c: float | None = ...,
        tap_c: float | None = ...,
        bowl: Bowl = ...,
        mixing: ByMethod | ByWork | ByNetGain | str | None = ...,
        heat_of_solution: bool = ...,
        rest_h: float | datetime.timedelta = ...,
        heat_loss_w_per_k: float | None = ...,
        doughs: collections.abc.Sequence[State] = ...,
        dough_c: float | None = ...,
        perishable: bool = ...,
        yeast_unwetted: bool = ...,
    ) -> Mix: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Mix: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Mix: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Mix: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def percent(self) -> Percent:
        """the mix in baker's percent"""
    def scaled_to(self, pieces: float, piece_g: float, loss_percent: float = 0.0) -> Mix:
        """The mix for a number of pieces of a weight: every ingredient by one factor; bowl, times and temperatures
        stay.

        Args: piece_g: g as divided. loss_percent: dough that stays on bowl, hands and table, percent of the dough (1 to
        3 is
        usual). Raises InvalidInput."""
    def with_yeast(self, yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"]) -> Mix:
        """The mix with all its yeast as one kind, by the trade's weight ratios. Raises InvalidInput."""
    def with_water(self, plan: WaterPlan) -> Mix:
        """The mix with a plan's water and ice in it."""
    @staticmethod
    def from_percent(
        *,
        flour_g: float,
        flours: collections.abc.Sequence[Flour] = ...,
        water_percent: float = 65.0,
        waters: collections.abc.Sequence[Water] = ...,
        preferments: collections.abc.Sequence[Preferment] = ...,
        gluten_percent: float = 0.0,
        milk_percent: float = 0.0,
        egg_percent: float = 0.0,
        butter_percent: float = 0.0,
        oil_percent: float = 0.0,
        sugar_percent: float = 0.0,
        salt_percent: float = 2.0,
        instant_percent: float = 0.0,
        active_dry_percent: float = 0.0,
        compressed_percent: float = 0.0,
        **others: typing.Any,
    ) -> Mix:
        """A Mix from baker's percent: percent of flour_g, which is all flour, added gluten included.

        Args: flour_g: g. flours: list of FlourShare that make 100 %, gluten and preferments apart; bread flour if
        empty.
        water_percent: water poured, of which waters and preferments (lists of Water and Preferment, g) are a part.
        Others as
        Mix. Raises InvalidInput, also for percent of the whole dough."""

class MixingMethod:
    """A way of mixing and the work it leaves in the dough as heat, kJ per kg of dough, in its usual time; or its net
    gain, which holds the flour's heat of hydration, too."""
    @property
    def name(self) -> str: ...
    @property
    def label(self) -> str: ...
    @property
    def work_kj_per_kg(self) -> float: ...
    @property
    def low_kj_per_kg(self) -> float: ...
    @property
    def high_kj_per_kg(self) -> float: ...
    @property
    def usual_min(self) -> float: ...
    @property
    def is_net_gain(self) -> bool: ...
    @property
    def source(self) -> str: ...
    def __repr__(self) -> str: ...

class NextLook:
    """A look that is worth its while.

    Args:
        stage: to look at.
        time_h: h of the process.
        rise_percent: %, what the usual dough has by then.
        told: share of the variance of ln time to the stage asked about that it takes.
        told_at_end: the same by seeing when its stage is ready.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        stage: str = "",
        time_h: float = 0.0,
        rise_percent: float = 0.0,
        told: float = 0.0,
        told_at_end: float = 0.0,
    ) -> None: ...
    @property
    def stage(self) -> str:
        """to look at"""
    @property
    def time_h(self) -> float:
        """h of the process"""
    @property
    def rise_percent(self) -> float:
        """%, what the usual dough has by then"""
    @property
    def told(self) -> float:
        """share of the variance of ln time to the stage asked about that it takes"""
    @property
    def told_at_end(self) -> float:
        """the same by seeing when its stage is ready"""
    def replace(
        self,
        *,
        stage: str = ...,
        time_h: float = ...,
        rise_percent: float = ...,
        told: float = ...,
        told_at_end: float = ...,
    ) -> NextLook: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> NextLook: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> NextLook: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> NextLook: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Node:
    """A piece of dough as heat sees it: capacity_j_k dT/dt = -heat_loss_w_per_k (T - air) + sources.

    Args:
        mass_g: g.
        volume_ml: mL.
        area_cm2: cm².
        capacity_j_k: J/K.
        heat_loss_w_per_k: W per K between the mean of the dough and the air.
        condensing_w_per_k: W per K that is added in humid air 10 K warmer, phased in from 0 K on.
        time_constant_h: h.
        inside_k_per_w: K: mean of the dough less its surface, per W of loss.
        core_over_mean: (core - surface)/(mean - surface) of a settled profile.
        settling_h: h in which a profile settles after a change.
        open_m2: m² that water evaporates from.
        open_inside_m2_k_per_w: m² K/W from the mean to the open surface.
        open_outside_w_per_m2_k: W/(m² K) from the open surface to the air.
        vapour_w_per_m2_pa: W/(m² Pa): heat by vapour per difference of pressure.
        water_activity: of the dough.
        humidity: of the air, 0 to 1.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        mass_g: float = 0.0,
        volume_ml: float = 0.0,
        area_cm2: float = 0.0,
        capacity_j_k: float = 0.0,
        heat_loss_w_per_k: float = 0.0,
        condensing_w_per_k: float = 0.0,
        time_constant_h: float = 0.0,
        inside_k_per_w: float = 0.0,
        core_over_mean: float = 1.0,
        settling_h: float = 0.0,
        open_m2: float = 0.0,
        open_inside_m2_k_per_w: float = 0.0,
        open_outside_w_per_m2_k: float = 0.0,
        vapour_w_per_m2_pa: float = 0.0,
        water_activity: float = 0.0,
        humidity: float = 0.0,
    ) -> None: ...
    @property
    def mass_g(self) -> float:
        """g"""
    @property
    def volume_ml(self) -> float:
        """mL"""
    @property
    def area_cm2(self) -> float:
        """cm²"""
    @property
    def capacity_j_k(self) -> float:
        """J/K"""
    @property
    def heat_loss_w_per_k(self) -> float:
        """W per K between the mean of the dough and the air"""
    @property
    def condensing_w_per_k(self) -> float:
        """W per K that is added in humid air 10 K warmer, phased in from 0 K on"""
    @property
    def time_constant_h(self) -> float:
        """h"""
    @property
    def inside_k_per_w(self) -> float:
        """K: mean of the dough less its surface, per W of loss"""
    @property
    def core_over_mean(self) -> float:
        """(core - surface)/(mean - surface) of a settled profile"""
    @property
    def settling_h(self) -> float:
        """h in which a profile settles after a change"""
    @property
    def open_m2(self) -> float:
        """m² that water evaporates from"""
    @property
    def open_inside_m2_k_per_w(self) -> float:
        """m² K/W from the mean to the open surface"""
    @property
    def open_outside_w_per_m2_k(self) -> float:
        """W/(m² K) from the open surface to the air"""
    @property
    def vapour_w_per_m2_pa(self) -> float:
        """W/(m² Pa): heat by vapour per difference of pressure"""
    @property
    def water_activity(self) -> float:
        """of the dough"""
    @property
    def humidity(self) -> float:
        """of the air, 0 to 1"""
    def replace(
        self,
        *,
        mass_g: float = ...,
        volume_ml: float = ...,
        area_cm2: float = ...,
        capacity_j_k: float = ...,
        heat_loss_w_per_k: float = ...,
        condensing_w_per_k: float = ...,
        time_constant_h: float = ...,
        inside_k_per_w: float = ...,
        core_over_mean: float = ...,
        settling_h: float = ...,
        open_m2: float = ...,
        open_inside_m2_k_per_w: float = ...,
        open_outside_w_per_m2_k: float = ...,
        vapour_w_per_m2_pa: float = ...,
        water_activity: float = ...,
        humidity: float = ...,
    ) -> Node: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Node: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Node: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Node: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def heat_loss_w(self, mean_c: float, air_c: float) -> float:
        """W that leave it, vapour included, at a mean temperature in air of that temperature, °C."""

class Notice:
    """A caution or a limit of validity that comes with a result.

    Args:
        code: stable, for a program.
        severity: info, caution or warning.
        values: the numbers in the text, by field name.
        text: English, complete with units.

    Raises InvalidInput."""
    def __init__(
        self,
        code: str,
        severity: typing.Literal["info", "caution", "warning"],
        values: collections.abc.Mapping[str, float],
        text: str,
    ) -> None: ...
    @property
    def code(self) -> str:
        """stable, for a program"""
    @property
    def severity(self) -> typing.Literal["info", "caution", "warning"]:
        """info, caution or warning"""
    @property
    def values(self) -> dict[str, float]:
        """the numbers in the text, by field name"""
    @property
    def text(self) -> str:
        """English, complete with units"""
    def replace(
        self,
        *,
        code: str = ...,
        severity: typing.Literal["info", "caution", "warning"] = ...,
        values: collections.abc.Mapping[str, float] = ...,
        text: str = ...,
    ) -> Notice: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Notice: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Notice: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Notice: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Parameter(Field):
    """A row of the parameter table: a field with its prior."""
    @property
    def scale(self) -> str:
        """fixed, linear, logarithmic or logit: the coordinate it is learned in"""
    @property
    def prior_sd(self) -> float:
        """sd in that coordinate"""

class Percent:
    """A mix in baker's percent: percent of the weight of all flour, added gluten included. water_percent counts all
    water, also that of milk, egg, butter and preferments.

    Args:
        flour_g: g of all flour, the 100 %.
        dough_g: g of everything together.
        water_percent: all water.
        poured_water_percent: only what is poured.
        gluten_percent: vital wheat gluten, percent of total flour weight, %.
        milk_percent: milk, egg, butter or oil, percent of flour weight, %.
        egg_percent: milk, egg, butter or oil, percent of flour weight, %.
        butter_percent: milk, egg, butter or oil, percent of flour weight, %.
        oil_percent: milk, egg, butter or oil, percent of flour weight, %.
        sugar_percent: added sugar as sucrose, percent of flour weight, %.
        salt_percent: salt, percent of flour weight, %.
        instant_percent: instant yeast.
        active_dry_percent: active dry yeast.
        compressed_percent: compressed yeast.
        instant_equivalent_percent: all yeast as instant yeast.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        flour_g: float = 0.0,
        dough_g: float = 0.0,
        water_percent: float = 0.0,
        poured_water_percent: float = 0.0,
        gluten_percent: float = 0.0,
        milk_percent: float = 0.0,
        egg_percent: float = 0.0,
        butter_percent: float = 0.0,
        oil_percent: float = 0.0,
        sugar_percent: float = 0.0,
        salt_percent: float = 0.0,
        instant_percent: float = 0.0,
        active_dry_percent: float = 0.0,
        compressed_percent: float = 0.0,
        instant_equivalent_percent: float = 0.0,
    ) -> None: ...
    @property
    def flour_g(self) -> float:
        """g of all flour, the 100 %"""
    @property
    def dough_g(self) -> float:
        """g of everything together"""
    @property
    def water_percent(self) -> float:
        """all water"""
    @property
    def poured_water_percent(self) -> float:
        """only what is poured"""
    @property
    def gluten_percent(self) -> float:
        """vital wheat gluten, percent of total flour weight, %"""
    @property
    def milk_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def egg_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def butter_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def oil_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def sugar_percent(self) -> float:
        """added sugar as sucrose, percent of flour weight, %"""
    @property
    def salt_percent(self) -> float:
        """salt, percent of flour weight, %"""
    @property
    def instant_percent(self) -> float:
        """instant yeast"""
    @property
    def active_dry_percent(self) -> float:
        """active dry yeast"""
    @property
    def compressed_percent(self) -> float:
        """compressed yeast"""
    @property
    def instant_equivalent_percent(self) -> float:
        """all yeast as instant yeast"""
    def replace(
        self,
        *,
        flour_g: float = ...,
        dough_g: float = ...,
        water_percent: float = ...,
        poured_water_percent: float = ...,
        gluten_percent: float = ...,
        milk_percent: float = ...,
        egg_percent: float = ...,
        butter_percent: float = ...,
        oil_percent: float = ...,
        sugar_percent: float = ...,
        salt_percent: float = ...,
        instant_percent: float = ...,
        active_dry_percent: float = ...,
        compressed_percent: float = ...,
        instant_equivalent_percent: float = ...,
    ) -> Percent: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Percent: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Percent: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Percent: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class PercentFormula:
    """A formula in baker's percent of flour_g, which is all flour, added gluten included.

    Args:
        flour_g: weight of a flour, g.
        flours: that make 100 %, gluten and preferments apart; bread flour if empty.
        water_percent: water poured, that of portions and preferments included, percent of flour weight, %.
        waters: portions of the water, in g.
        preferments: in g; their flour and water are part of the formula's.
        gluten_percent: vital wheat gluten, percent of total flour weight, %.
        milk_percent: milk, egg, butter or oil, percent of flour weight, %.
        egg_percent: milk, egg, butter or oil, percent of flour weight, %.
        butter_percent: milk, egg, butter or oil, percent of flour weight, %.
        oil_percent: milk, egg, butter or oil, percent of flour weight, %.
        sugar_percent: added sugar as sucrose, percent of flour weight, %.
        salt_percent: salt, percent of flour weight, %.
        instant_percent: yeast as weighed, percent of flour weight, %.
        active_dry_percent: yeast as weighed, percent of flour weight, %.
        compressed_percent: yeast as weighed, percent of flour weight, %.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        flour_g: float,
        flours: collections.abc.Sequence[FlourShare] = ...,
        water_percent: float = 65.0,
        waters: collections.abc.Sequence[Water] = ...,
        preferments: collections.abc.Sequence[Preferment] = ...,
        gluten_percent: float = 0.0,
        milk_percent: float = 0.0,
        egg_percent: float = 0.0,
        butter_percent: float = 0.0,
        oil_percent: float = 0.0,
        sugar_percent: float = 0.0,
        salt_percent: float = 2.0,
        instant_percent: float = 0.0,
        active_dry_percent: float = 0.0,
        compressed_percent: float = 0.0,
    ) -> None: ...
    @property
    def flour_g(self) -> float:
        """weight of a flour, g"""
    @property
    def flours(self) -> list[FlourShare]:
        """that make 100 %, gluten and preferments apart; bread flour if empty"""
    @property
    def water_percent(self) -> float:
        """water poured, that of portions and preferments included, percent of flour weight, %"""
    @property
    def waters(self) -> list[Water]:
        """portions of the water, in g"""
    @property
    def preferments(self) -> list[Preferment]:
        """in g; their flour and water are part of the formula's"""
    @property
    def gluten_percent(self) -> float:
        """vital wheat gluten, percent of total flour weight, %"""
    @property
    def milk_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def egg_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def butter_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def oil_percent(self) -> float:
        """milk, egg, butter or oil, percent of flour weight, %"""
    @property
    def sugar_percent(self) -> float:
        """added sugar as sucrose, percent of flour weight, %"""
    @property
    def salt_percent(self) -> float:
        """salt, percent of flour weight, %"""
    @property
    def instant_percent(self) -> float:
        """yeast as weighed, percent of flour weight, %"""
    @property
    def active_dry_percent(self) -> float:
        """yeast as weighed, percent of flour weight, %"""
    @property
    def compressed_percent(self) -> float:
        """yeast as weighed, percent of flour weight, %"""
    def replace(
        self,
        *,
        flour_g: float = ...,
        flours: collections.abc.Sequence[FlourShare] = ...,
        water_percent: float = ...,
        waters: collections.abc.Sequence[Water] = ...,
        preferments: collections.abc.Sequence[Preferment] = ...,
        gluten_percent: float = ...,
        milk_percent: float = ...,
        egg_percent: float = ...,
        butter_percent: float = ...,
        oil_percent: float = ...,
        sugar_percent: float = ...,
        salt_percent: float = ...,
        instant_percent: float = ...,
        active_dry_percent: float = ...,
        compressed_percent: float = ...,
    ) -> PercentFormula: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> PercentFormula: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> PercentFormula: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> PercentFormula: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Piece:
    """A mass of dough with a shape: its weight, or all of the dough shared between pieces, or what its dimensions hold.

    Args:
        shape: a tub (also a bowl), a ball, an oblong, a flat disc, or dough in a tin of sheet steel.
        mass_g: weight of a piece as divided, g.
        pieces: equal ones that share all of the dough, if their weight is not given.
        diameter_cm: diameter of a piece, or of the tub at the dough, cm.
        length_cm: length of a long piece, cm.
        depth_cm: depth of the dough in its tub, cm.
        material: of a tub, a row of bowl_materials().
        vessel_g: weight of the tub, which warms and cools with the dough; 0: not counted, g.
        cover: a tub has a lid, other pieces film, if not given.
        worktop: a tub stands on wood, other pieces in the air, if not given.
        heat_loss_w_per_k: heat a piece loses to its surroundings per kelvin, in place of what its shape and cover give,
            W/K.

    Raises InvalidInput."""
    def __init__(
        self,
        shape: typing.Literal["tub", "ball", "oblong", "flat", "tin"] = "tub",
        *,
        mass_g: float | None = None,
        pieces: float = 1.0,
        diameter_cm: float | None = None,
        length_cm: float | None = None,
        depth_cm: float | None = None,
        material: str = "plastic",
        vessel_g: float = 0.0,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = None,
        worktop: typing.Literal["air", "wood", "stone"] | None = None,
        heat_loss_w_per_k: float | None = None,
    ) -> None: ...
    @property
    def shape(self) -> typing.Literal["tub", "ball", "oblong", "flat", "tin"]:
        """a tub (also a bowl), a ball, an oblong, a flat disc, or dough in a tin of sheet steel"""
    @property
    def mass_g(self) -> float | None:
        """weight of a piece as divided, g"""
    @property
    def pieces(self) -> float:
        """equal ones that share all of the dough, if their weight is not given"""
    @property
    def diameter_cm(self) -> float | None:
        """diameter of a piece, or of the tub at the dough, cm"""
    @property
    def length_cm(self) -> float | None:
        """length of a long piece, cm"""
    @property
    def depth_cm(self) -> float | None:
        """depth of the dough in its tub, cm"""
    @property
    def material(self) -> str:
        """of a tub, a row of bowl_materials()"""
    @property
    def vessel_g(self) -> float:
        """weight of the tub, which warms and cools with the dough; 0: not counted, g"""
    @property
    def cover(self) -> typing.Literal["film", "cloth", "lid", "open"] | None:
        """a tub has a lid, other pieces film, if not given"""
    @property
    def worktop(self) -> typing.Literal["air", "wood", "stone"] | None:
        """a tub stands on wood, other pieces in the air, if not given"""
    @property
    def heat_loss_w_per_k(self) -> float | None:
        """heat a piece loses to its surroundings per kelvin, in place of what its shape and cover give, W/K"""
    def replace(
        self,
        *,
        shape: typing.Literal["tub", "ball", "oblong", "flat", "tin"] = ...,
        mass_g: float | None = ...,
        pieces: float = ...,
        diameter_cm: float | None = ...,
        length_cm: float | None = ...,
        depth_cm: float | None = ...,
        material: str = ...,
        vessel_g: float = ...,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = ...,
        worktop: typing.Literal["air", "wood", "stone"] | None = ...,
        heat_loss_w_per_k: float | None = ...,
    ) -> Piece: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Piece: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Piece: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Piece: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @staticmethod
    def ball(
        mass_g: float | None = None,
        *,
        pieces: float = 1.0,
        diameter_cm: float | None = None,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = None,
        worktop: typing.Literal["air", "wood", "stone"] | None = None,
        heat_loss_w_per_k: float | None = None,
    ) -> Piece:
        """A round piece. Raises InvalidInput."""
    @staticmethod
    def oblong(
        mass_g: float | None = None,
        *,
        pieces: float = 1.0,
        diameter_cm: float | None = None,
        length_cm: float | None = None,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = None,
        worktop: typing.Literal["air", "wood", "stone"] | None = None,
        heat_loss_w_per_k: float | None = None,
    ) -> Piece:
        """A long piece, four times as long as thick if neither is given. Raises InvalidInput."""
    @staticmethod
    def tub(
        mass_g: float | None = None,
        *,
        pieces: float = 1.0,
        diameter_cm: float | None = None,
        depth_cm: float | None = None,
        material: str = "plastic",
        vessel_g: float = 0.0,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = None,
        worktop: typing.Literal["air", "wood", "stone"] | None = None,
        heat_loss_w_per_k: float | None = None,
    ) -> Piece:
        """Dough in a round bowl or tub, half as deep as wide if neither is given. Raises InvalidInput."""
    @staticmethod
    def flat(
        mass_g: float | None = None,
        *,
        pieces: float = 1.0,
        diameter_cm: float | None = None,
        depth_cm: float | None = None,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = None,
        worktop: typing.Literal["air", "wood", "stone"] | None = None,
        heat_loss_w_per_k: float | None = None,
    ) -> Piece:
        """A disc with two faces and an edge: pizza, focaccia. Ten times as wide as thick if neither is given. Raises
        InvalidInput."""
    @staticmethod
    def tin(
        mass_g: float | None = None,
        *,
        pieces: float = 1.0,
        diameter_cm: float | None = None,
        length_cm: float | None = None,
        depth_cm: float | None = None,
        vessel_g: float = 0.0,
        cover: typing.Literal["film", "cloth", "lid", "open"] | None = None,
        worktop: typing.Literal["air", "wood", "stone"] | None = None,
        heat_loss_w_per_k: float | None = None,
    ) -> Piece:
        """Dough in a tin of sheet steel that stands in the air: length_cm, diameter_cm wide, depth_cm of the dough;
        twice as long as wide and half as deep if not given; vessel_g is the tin. Raises InvalidInput."""
    def node(
        self,
        dough_g: float,
        surroundings: Surroundings,
        *,
        specific_heat_kj: float = 2.8,
        density_g_per_ml: float = 1.18,
        time_h: float = 0.0,
    ) -> Node:
        """The piece as heat sees it: a Node with its heat loss and time constant.

        Args: dough_g: g of all of the dough. surroundings: Surroundings, read at time_h. specific_heat_kj: kJ/(kg K).
        density_g_per_ml: with the gas in it. Raises InvalidInput."""

class Place:
    """One place of the surroundings. Its temperature is steady, swings over the day or was measured.

    Args:
        temperature_c: a steady temperature, °C.
        swing: one that swings over the day.
        course: a measured one.
        from_h: a moment on the process's hour axis: 0 for its start, or the hour of the day, h.
        air: how the air moves heat.
        humidity_percent: relative humidity of the air, for a dough that is not covered, %.
        heat_transfer_w_per_m2_k: heat between a surface and the air, radiation included, in place of the table's,
            W/(m²·K).
        is_dough: the temperature is the dough's own.

    Raises InvalidInput."""
    def __init__(
        self,
        temperature_c: float | None = None,
        *,
        swing: DailySwing | None = None,
        course: Course | None = None,
        from_h: float | datetime.timedelta | datetime.time | None = None,
        air: typing.Literal["room", "refrigerator", "fan_refrigerator", "proof_box", "humid_proof_box"] = "room",
        humidity_percent: float | None = None,
        heat_transfer_w_per_m2_k: float | None = None,
        is_dough: bool = False,
    ) -> None: ...
    @property
    def temperature_c(self) -> float | None:
        """a steady temperature, °C"""
    @property
    def swing(self) -> DailySwing | None:
        """one that swings over the day"""
    @property
    def course(self) -> Course | None:
        """a measured one"""
    @property
    def from_h(self) -> float | None:
        """a moment on the process's hour axis: 0 for its start, or the hour of the day, h"""
    @property
    def air(self) -> typing.Literal["room", "refrigerator", "fan_refrigerator", "proof_box", "humid_proof_box"]:
        """how the air moves heat"""
    @property
    def humidity_percent(self) -> float | None:
        """relative humidity of the air, for a dough that is not covered, %"""
    @property
    def heat_transfer_w_per_m2_k(self) -> float | None:
        """heat between a surface and the air, radiation included, in place of the table's, W/(m²·K)"""
    @property
    def is_dough(self) -> bool:
        """the temperature is the dough's own"""
    def replace(
        self,
        *,
        temperature_c: float | None = ...,
        swing: DailySwing | None = ...,
        course: Course | None = ...,
        from_h: float | datetime.timedelta | datetime.time | None = ...,
        air: typing.Literal["room", "refrigerator", "fan_refrigerator", "proof_box", "humid_proof_box"] = ...,
        humidity_percent: float | None = ...,
        heat_transfer_w_per_m2_k: float | None = ...,
        is_dough: bool = ...,
    ) -> Place: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Place: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Place: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Place: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Preferment:
    """Dough of an earlier mix: its flour and water count in the formula, and it is wetted already.

    Args:
        flour_g: weight of a flour, g.
        water_g: weight of a portion of water of its own temperature, g.
        temperature_c: temperature of the preferment when it is mixed in, °C.

    Raises InvalidInput."""
    def __init__(self, flour_g: float, water_g: float, *, temperature_c: float | None = None) -> None: ...
    @property
    def flour_g(self) -> float:
        """weight of a flour, g"""
    @property
    def water_g(self) -> float:
        """weight of a portion of water of its own temperature, g"""
    @property
    def temperature_c(self) -> float | None:
        """temperature of the preferment when it is mixed in, °C"""
    def replace(
        self, *, flour_g: float = ..., water_g: float = ..., temperature_c: float | None = ...
    ) -> Preferment: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Preferment: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Preferment: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Preferment: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Process:
    """What happens to a dough, step after step.

    Args:
        steps: mixes and stages, one after the other.
        start_h: a moment on the process's hour axis: 0 for its start, or the hour of the day, h.
        altitude_m: height above sea level, for the air pressure, m.

    Raises InvalidInput."""
    def __init__(
        self,
        steps: collections.abc.Sequence[Mix | Stage],
        *,
        start_h: float | datetime.timedelta | datetime.time = 0.0,
        altitude_m: float = 0.0,
    ) -> None: ...
    @property
    def steps(self) -> list[Mix | Stage]:
        """mixes and stages, one after the other"""
    @property
    def start_h(self) -> float:
        """a moment on the process's hour axis: 0 for its start, or the hour of the day, h"""
    @property
    def altitude_m(self) -> float:
        """height above sea level, for the air pressure, m"""
    def replace(
        self,
        *,
        steps: collections.abc.Sequence[Mix | Stage] = ...,
        start_h: float | datetime.timedelta | datetime.time = ...,
        altitude_m: float = ...,
    ) -> Process: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Process: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Process: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Process: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Residual:
    """What a look says beside the kitchen that was learned from it.

    Args:
        log: from 0.
        look: of the log, from 0.
        was: how it was seen.
        expected: of a rise h since its stage began, the median; of a height %; of a dough °C.
        seen: the look's.
        standardised: difference of ln time by noise and bake.
        surprising: whether it is hardly believed.
        explanation: what would explain a surprise; often none.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        log: int = 0,
        look: int = 0,
        was: typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"] = "at",
        expected: float | None = 0.0,
        seen: float = 0.0,
        standardised: float | None = 0.0,
        surprising: bool = False,
        explanation: str = "",
    ) -> None: ...
    @property
    def log(self) -> int:
        """from 0"""
    @property
    def look(self) -> int:
        """of the log, from 0"""
    @property
    def was(self) -> typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"]:
        """how it was seen"""
    @property
    def expected(self) -> float | None:
        """of a rise h since its stage began, the median; of a height %; of a dough °C"""
    @property
    def seen(self) -> float:
        """the look's"""
    @property
    def standardised(self) -> float | None:
        """difference of ln time by noise and bake"""
    @property
    def surprising(self) -> bool:
        """whether it is hardly believed"""
    @property
    def explanation(self) -> str:
        """what would explain a surprise; often none"""
    def replace(
        self,
        *,
        log: int = ...,
        look: int = ...,
        was: typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"] = ...,
        expected: float | None = ...,
        seen: float = ...,
        standardised: float | None = ...,
        surprising: bool = ...,
        explanation: str = ...,
    ) -> Residual: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Residual: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Residual: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Residual: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Seen:
    """What was seen of a stage. What was done stands in the stage.

    Args:
        stage: its name.
        at: time of day, such as 11:05, or time since the stage began, such as 65min.
        between: two such times, in place of at: not yet there at the first, past at the second.
        rise_percent: volume gained since the start of the stage, %.
        not_yet_percent: it had not risen so far, %.
        already_past_percent: it had risen further, %.
        height_cm: of the dough in a vessel of straight sides, cm.
        start_height_cm: when the stage began; that of an earlier look if not given, cm.
        dough_c: temperature of the dough itself, not of the room, °C.
        over_proofed: it was past its highest acceptable rise.
        collapsed: it had fallen in: past its highest acceptable rise.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        stage: str,
        at: str = "",
        between: collections.abc.Sequence[str] = ...,
        rise_percent: float | None = None,
        not_yet_percent: float | None = None,
        already_past_percent: float | None = None,
        height_cm: float | None = None,
        start_height_cm: float | None = None,
        dough_c: float | None = None,
        over_proofed: bool = False,
        collapsed: bool = False,
    ) -> None: ...
    @property
    def stage(self) -> str:
        """its name"""
    @property
    def at(self) -> str:
        """time of day, such as 11:05, or time since the stage began, such as 65min"""
    @property
    def between(self) -> list[str]:
        """two such times, in place of at: not yet there at the first, past at the second"""
    @property
    def rise_percent(self) -> float | None:
        """volume gained since the start of the stage, %"""
    @property
    def not_yet_percent(self) -> float | None:
        """it had not risen so far, %"""
    @property
    def already_past_percent(self) -> float | None:
        """it had risen further, %"""
    @property
    def height_cm(self) -> float | None:
        """of the dough in a vessel of straight sides, cm"""
    @property
    def start_height_cm(self) -> float | None:
        """when the stage began; that of an earlier look if not given, cm"""
    @property
    def dough_c(self) -> float | None:
        """temperature of the dough itself, not of the room, °C"""
    @property
    def over_proofed(self) -> bool:
        """it was past its highest acceptable rise"""
    @property
    def collapsed(self) -> bool:
        """it had fallen in: past its highest acceptable rise"""
    def replace(
        self,
        *,
        stage: str = ...,
        at: str = ...,
        between: collections.abc.Sequence[str] = ...,
        rise_percent: float | None = ...,
        not_yet_percent: float | None = ...,
        already_past_percent: float | None = ...,
        height_cm: float | None = ...,
        start_height_cm: float | None = ...,
        dough_c: float | None = ...,
        over_proofed: bool = ...,
        collapsed: bool = ...,
    ) -> Seen: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Seen: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Seen: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Seen: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Shell:
    """A layer of the dough with a temperature of its own: how far it has come.

    Args:
        share: of the dough.
        temperature_c: temperature of the dough itself, not of the room, °C.
        equivalent_h: hours at the reference dough (25 °C, 2 % salt, 65 % water, no sugar), h.
        made_mmol: carbon dioxide per 100 g of flour, mmol per 100 g flour.
        co2_mmol: carbon dioxide per 100 g of flour, mmol per 100 g flour.
        air_mmol: air in the gas cells per 100 g of flour, mmol per 100 g flour.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        share: float = 1.0,
        temperature_c: float = 0.0,
        equivalent_h: float | datetime.timedelta = 0.0,
        made_mmol: float = 0.0,
        co2_mmol: float = 0.0,
        air_mmol: float = 0.0,
    ) -> None: ...
    @property
    def share(self) -> float:
        """of the dough"""
    @property
    def temperature_c(self) -> float:
        """temperature of the dough itself, not of the room, °C"""
    @property
    def equivalent_h(self) -> float:
        """hours at the reference dough (25 °C, 2 % salt, 65 % water, no sugar), h"""
    @property
    def made_mmol(self) -> float:
        """carbon dioxide per 100 g of flour, mmol per 100 g flour"""
    @property
    def co2_mmol(self) -> float:
        """carbon dioxide per 100 g of flour, mmol per 100 g flour"""
    @property
    def air_mmol(self) -> float:
        """air in the gas cells per 100 g of flour, mmol per 100 g flour"""
    def replace(
        self,
        *,
        share: float = ...,
        temperature_c: float = ...,
        equivalent_h: float | datetime.timedelta = ...,
        made_mmol: float = ...,
        co2_mmol: float = ...,
        air_mmol: float = ...,
    ) -> Shell: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Shell: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Shell: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Shell: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Sighting:
    """A look at a stage; what was done to the dough is none, it stands in the process.

    Args:
        stage: its name.
        time_h: of the process, h.
        rise_percent: volume gained since the start of the stage, %.
        was: at that rise, not yet there, or past it; of that rise by its height in straight sides; over-proofed; or of
            that temperature.
        not_yet_h: of the process, of a rise that was past at time_h: when it was not yet there, h.
        dough_c: temperature of the dough itself, not of the room, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        stage: str,
        time_h: float | datetime.timedelta | datetime.time,
        rise_percent: float | None = None,
        *,
        was: typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"] = "at",
        not_yet_h: float | datetime.timedelta | datetime.time | None = None,
        dough_c: float | None = None,
    ) -> None: ...
    @property
    def stage(self) -> str:
        """its name"""
    @property
    def time_h(self) -> float:
        """of the process, h"""
    @property
    def rise_percent(self) -> float | None:
        """volume gained since the start of the stage, %"""
    @property
    def was(self) -> typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"]:
        """at that rise, not yet there, or past it; of that rise by its height in straight sides; over-proofed; or of
        that temperature"""
    @property
    def not_yet_h(self) -> float | None:
        """of the process, of a rise that was past at time_h: when it was not yet there, h"""
    @property
    def dough_c(self) -> float | None:
        """temperature of the dough itself, not of the room, °C"""
    def replace(
        self,
        *,
        stage: str = ...,
        time_h: float | datetime.timedelta | datetime.time = ...,
        rise_percent: float | None = ...,
        was: typing.Literal["at", "not_yet", "past", "height", "over_proofed", "dough"] = ...,
        not_yet_h: float | datetime.timedelta | datetime.time | None = ...,
        dough_c: float | None = ...,
    ) -> Sighting: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Sighting: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Sighting: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Sighting: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class SquareRoot:
    """Factor proportional to [(T - Tmin)(1 - exp(c(T - Tmax)))]^2 (Ratkowsky et al. 1983), 0 outside.

    Args:
        t_min_c: notional minimum of the square-root law, °C.
        t_max_c: notional maximum of the square-root law, °C.
        decline_per_k: c of the square-root law, 1/K.

    Raises InvalidInput."""
    def __init__(self, *, t_min_c: float = -2.0, t_max_c: float = 47.0, decline_per_k: float = 0.37) -> None: ...
    @property
    def t_min_c(self) -> float:
        """notional minimum of the square-root law, °C"""
    @property
    def t_max_c(self) -> float:
        """notional maximum of the square-root law, °C"""
    @property
    def decline_per_k(self) -> float:
        """c of the square-root law, 1/K"""
    def replace(self, *, t_min_c: float = ..., t_max_c: float = ..., decline_per_k: float = ...) -> SquareRoot: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> SquareRoot: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> SquareRoot: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> SquareRoot: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @typing.overload
    def factor(self, temperature_c: float) -> float: ...
    @typing.overload
    def factor(self, temperature_c: float | _Numbers) -> _Array:
        """Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput."""
    @typing.overload
    def local_q10(self, temperature_c: float) -> float: ...
    @typing.overload
    def local_q10(self, temperature_c: float | _Numbers) -> _Array:
        """Local temperature coefficient, exp(10 K d ln factor/dT).

        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where
        the
        factor is 0."""

class Stage:
    """Time passes in some surroundings until a rise, for some hours, or until an hour; then the dough is handled.

    Args:
        name: such as bulk.
        surroundings: what the dough sits in.
        until_h: hours from the stage's start to its end, or a timedelta in Python, h.
        until_rise_percent: volume gained since the start of the stage, %.
        ends_h: hour of the process at which it ends; at once, if that is over, h.
        piece: all of the dough in a tub if not given.
        folds_h: hours from the stage's start to a fold, h.
        handling: what ends the stage, in order.
        standing: in a tin (also a tub) or free, for the over-proof limit; by the shape if not given.
        final_proof: its own over-proof limit counts; if not given, so it is in a process's last stage if the piece is
            no tub, unless it is in a refrigerator.
        acceptable_rise_percent: volume gained since the start of the stage, %.

    Raises InvalidInput."""
    def __init__(
        self,
        name: str,
        *,
        surroundings: Surroundings,
        until_h: float | datetime.timedelta | None = None,
        until_rise_percent: float | None = None,
        ends_h: float | datetime.timedelta | datetime.time | None = None,
        piece: Piece = ...,
        folds_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        handling: collections.abc.Sequence[typing.Literal["fold", "divide", "round", "mould", "machine_mould"]] = ...,
        standing: typing.Literal["tin", "free"] | None = None,
        final_proof: bool | None = None,
        acceptable_rise_percent: tuple[float, float] | None = None,
    ) -> None: ...
    @property
    def name(self) -> str:
        """such as bulk"""
    @property
    def surroundings(self) -> Surroundings:
        """what the dough sits in"""
    @property
    def until_h(self) -> float | None:
        """hours from the stage's start to its end, or a timedelta in Python, h"""
    @property
    def until_rise_percent(self) -> float | None:
        """volume gained since the start of the stage, %"""
    @property
    def ends_h(self) -> float | None:
        """hour of the process at which it ends; at once, if that is over, h"""
    @property
    def piece(self) -> Piece:
        """all of the dough in a tub if not given"""
    @property
    def folds_h(self) -> list[float]:
        """hours from the stage's start to a fold, h"""
    @property
    def handling(self) -> list[typing.Literal["fold", "divide", "round", "mould", "machine_mould"]]:
        """what ends the stage, in order"""
    @property
    def standing(self) -> typing.Literal["tin", "free"] | None:
        """in a tin (also a tub) or free, for the over-proof limit; by the shape if not given"""
    @property
    def final_proof(self) -> bool | None:
        """its own over-proof limit counts; if not given, so it is in a process's last stage if the piece is no tub,
        unless it is in a refrigerator"""
    @property
    def acceptable_rise_percent(self) -> tuple[float, float] | None:
        """volume gained since the start of the stage, %"""
    def replace(
        self,
        *,
        name: str = ...,
        surroundings: Surroundings = ...,
        until_h: float | datetime.timedelta | None = ...,
        until_rise_percent: float | None = ...,
        ends_h: float | datetime.timedelta | datetime.time | None = ...,
        piece: Piece = ...,
        folds_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        handling: collections.abc.Sequence[typing.Literal["fold", "divide", "round", "mould", "machine_mould"]] = ...,
        standing: typing.Literal["tin", "free"] | None = ...,
        final_proof: bool | None = ...,
        acceptable_rise_percent: tuple[float, float] | None = ...,
    ) -> Stage: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Stage: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Stage: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Stage: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class StageForecast:
    """When a stage will be ready, as a distribution. Hours of the process.

    Args:
        name: of the stage.
        by_rise: whether it ends by a rise; else by a time.
        ready: h when it is ready, of every draw, rising; infinite where never.
        too_late: h when it is past its highest acceptable rise or over-proofed, of every draw, not before it is ready,
            rising; infinite where never.
        ready_h: h, the median; none where never.
        likely_h: h between which it is ready in nine of ten draws.
        window_h: h, median hours of the lowest and the highest acceptable rise; none where never.
        look_first_h: h by which one dough in ten has the lowest acceptable rise.
        be_back_by_h: h by which nine in ten are neither past their highest acceptable rise nor over-proofed; none if
            after more than two days beyond the stage's end.
        over_proofed_h: h when the median dough is over-proofed.
        never_ready: share of doughs whose rise is never reached.
        rise_percent: %, median rise at its end.
        interval_length_after_one_log_h: h that one logged rise would leave of the 90 % interval.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        name: str = "",
        by_rise: bool = False,
        ready: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        too_late: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        ready_h: float | None = 0.0,
        likely_h: tuple[float | None, float | None] = ...,
        window_h: tuple[float | None, float | None] = ...,
        look_first_h: float | None = 0.0,
        be_back_by_h: float | None = 0.0,
        over_proofed_h: float | None = 0.0,
        never_ready: float = 0.0,
        rise_percent: float = 0.0,
        interval_length_after_one_log_h: float | None = 0.0,
    ) -> None: ...
    @property
    def name(self) -> str:
        """of the stage"""
    @property
    def by_rise(self) -> bool:
        """whether it ends by a rise; else by a time"""
    @property
    def ready(self) -> _Array:
        """h when it is ready, of every draw, rising; infinite where never"""
    @property
    def too_late(self) -> _Array:
        """h when it is past its highest acceptable rise or over-proofed, of every draw, not before it is ready, rising;
        infinite where never"""
    @property
    def ready_h(self) -> float | None:
        """h, the median; none where never"""
    @property
    def likely_h(self) -> tuple[float | None, float | None]:
        """h between which it is ready in nine of ten draws"""
    @property
    def window_h(self) -> tuple[float | None, float | None]:
        """h, median hours of the lowest and the highest acceptable rise; none where never"""
    @property
    def look_first_h(self) -> float | None:
        """h by which one dough in ten has the lowest acceptable rise"""
    @property
    def be_back_by_h(self) -> float | None:
        """h by which nine in ten are neither past their highest acceptable rise nor over-proofed; none if after more
        than two days beyond the stage's end"""
    @property
    def over_proofed_h(self) -> float | None:
        """h when the median dough is over-proofed"""
    @property
    def never_ready(self) -> float:
        """share of doughs whose rise is never reached"""
    @property
    def rise_percent(self) -> float:
        """%, median rise at its end"""
    @property
    def interval_length_after_one_log_h(self) -> float | None:
        """h that one logged rise would leave of the 90 % interval"""
    def replace(
        self,
        *,
        name: str = ...,
        by_rise: bool = ...,
        ready: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        too_late: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        ready_h: float | None = ...,
        likely_h: tuple[float | None, float | None] = ...,
        window_h: tuple[float | None, float | None] = ...,
        look_first_h: float | None = ...,
        be_back_by_h: float | None = ...,
        over_proofed_h: float | None = ...,
        never_ready: float = ...,
        rise_percent: float = ...,
        interval_length_after_one_log_h: float | None = ...,
    ) -> StageForecast: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> StageForecast: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> StageForecast: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> StageForecast: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def interval_h(self, level: float = 0.9) -> tuple[float | None, float | None]:
        """The hours between which it is ready with a probability. Raises InvalidInput."""
    def share_ready(self, time_h: float) -> float:
        """Share of the doughs that are ready at an hour and not yet too late: past their highest acceptable rise or
        over-proofed. Raises InvalidInput."""

class StageProgress:
    """How far a stage has come that is not over.

    Args:
        start_h: a moment on the process's hour axis: 0 for its start, or the hour of the day, h.
        start_c: temperature of the dough itself, not of the room, °C.
        start_ratio: volume over the volume just after mixing, times the mixed volume.
        folds_done: folds made.
        over_proofed_h: a moment on the process's hour axis: 0 for its start, or the hour of the day, h.
        heat_made_j: by fermentation, so far, per piece, J.
        heat_lost_j: to the surroundings, so far, per piece, J.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        start_h: float | datetime.timedelta | datetime.time = 0.0,
        start_c: float = 0.0,
        start_ratio: float = 1.0,
        folds_done: int = 0,
        over_proofed_h: float | datetime.timedelta | datetime.time | None = None,
        heat_made_j: float = 0.0,
        heat_lost_j: float = 0.0,
    ) -> None: ...
    @property
    def start_h(self) -> float:
        """a moment on the process's hour axis: 0 for its start, or the hour of the day, h"""
    @property
    def start_c(self) -> float:
        """temperature of the dough itself, not of the room, °C"""
    @property
    def start_ratio(self) -> float:
        """volume over the volume just after mixing, times the mixed volume"""
    @property
    def folds_done(self) -> int:
        """folds made"""
    @property
    def over_proofed_h(self) -> float | None:
        """a moment on the process's hour axis: 0 for its start, or the hour of the day, h"""
    @property
    def heat_made_j(self) -> float:
        """by fermentation, so far, per piece, J"""
    @property
    def heat_lost_j(self) -> float:
        """to the surroundings, so far, per piece, J"""
    def replace(
        self,
        *,
        start_h: float | datetime.timedelta | datetime.time = ...,
        start_c: float = ...,
        start_ratio: float = ...,
        folds_done: int = ...,
        over_proofed_h: float | datetime.timedelta | datetime.time | None = ...,
        heat_made_j: float = ...,
        heat_lost_j: float = ...,
    ) -> StageProgress: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> StageProgress: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> StageProgress: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> StageProgress: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class StageResult:
    """What a stage came to. Hours are of the process; rises are those of the stage before the handling that ends it.

    Args:
        name: of the stage.
        start_h: h of the process.
        end_h: h of the process.
        start_c: °C of the dough.
        end_c: °C of the dough.
        rise_percent: % since the stage's start.
        equivalent_h: equivalent hours that the stage took.
        folds_done: folds made; those planned after its end are not.
        over_proofed_h: h when it is, or would be, over-proofed; none if not within 48 h of its end.
        be_back_by_h: h when the dough has passed its highest acceptable rise or is over-proofed, or would have; none if
            not within 48 h of the stage's end.
        time_constant_h: h, of the piece in its first surroundings; none where the dough's temperature is given.
        heat_made_j: J per piece, by fermentation.
        heat_lost_j: J per piece, to the surroundings.
        ended: false if the simulation stopped before its end.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        name: str = "",
        start_h: float = 0.0,
        end_h: float = 0.0,
        start_c: float = 0.0,
        end_c: float = 0.0,
        rise_percent: float = 0.0,
        equivalent_h: float = 0.0,
        folds_done: int = 0,
        over_proofed_h: float | None = None,
        be_back_by_h: float | None = None,
        time_constant_h: float | None = None,
        heat_made_j: float = 0.0,
        heat_lost_j: float = 0.0,
        ended: bool = False,
    ) -> None: ...
    @property
    def name(self) -> str:
        """of the stage"""
    @property
    def start_h(self) -> float:
        """h of the process"""
    @property
    def end_h(self) -> float:
        """h of the process"""
    @property
    def start_c(self) -> float:
        """°C of the dough"""
    @property
    def end_c(self) -> float:
        """°C of the dough"""
    @property
    def rise_percent(self) -> float:
        """% since the stage's start"""
    @property
    def equivalent_h(self) -> float:
        """equivalent hours that the stage took"""
    @property
    def folds_done(self) -> int:
        """folds made; those planned after its end are not"""
    @property
    def over_proofed_h(self) -> float | None:
        """h when it is, or would be, over-proofed; none if not within 48 h of its end"""
    @property
    def be_back_by_h(self) -> float | None:
        """h when the dough has passed its highest acceptable rise or is over-proofed, or would have; none if not within
        48 h of the stage's end"""
    @property
    def time_constant_h(self) -> float | None:
        """h, of the piece in its first surroundings; none where the dough's temperature is given"""
    @property
    def heat_made_j(self) -> float:
        """J per piece, by fermentation"""
    @property
    def heat_lost_j(self) -> float:
        """J per piece, to the surroundings"""
    @property
    def ended(self) -> bool:
        """false if the simulation stopped before its end"""
    def replace(
        self,
        *,
        name: str = ...,
        start_h: float = ...,
        end_h: float = ...,
        start_c: float = ...,
        end_c: float = ...,
        rise_percent: float = ...,
        equivalent_h: float = ...,
        folds_done: int = ...,
        over_proofed_h: float | None = ...,
        be_back_by_h: float | None = ...,
        time_constant_h: float | None = ...,
        heat_made_j: float = ...,
        heat_lost_j: float = ...,
        ended: bool = ...,
    ) -> StageResult: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> StageResult: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> StageResult: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> StageResult: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def hours(self) -> float:
        """from start to end, h"""

class State:
    """Everything there is to know of a dough at a moment; simulate makes it.

    Args:
        time_h: a moment on the process's hour axis: 0 for its start, or the hour of the day, h.
        altitude_m: height above sea level, for the air pressure, m.
        steps_done: steps of its process that are over.
        amounts: what the dough holds, g.
        heat_capacity_kj_k: of all of the dough, kJ/K.
        inside_k: mean of the dough less its surface as the core feels it, K.
        shells: its layers from the core to the surface, one today.
        cohorts: the yeast of each addition.
        mixed_volume_ml: volume just after mixing, mL per 100 g of flour.
        anchor_ratio: volume over mixed volume at the last handling or mixing, times the mixed volume.
        perishable_h: between 5 and 60 °C with milk or egg in it, h.
        stage: of the stage that is under way.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        time_h: float | datetime.timedelta | datetime.time = 0.0,
        altitude_m: float = 0.0,
        steps_done: int = 0,
        amounts: Amounts = ...,
        heat_capacity_kj_k: float = 0.0,
        inside_k: float = 0.0,
        shells: collections.abc.Sequence[Shell] = ...,
        cohorts: collections.abc.Sequence[Cohort] = ...,
        mixed_volume_ml: float = 0.0,
        anchor_ratio: float = 1.0,
        perishable_h: float = 0.0,
        stage: StageProgress | None = None,
    ) -> None: ...
    @property
    def time_h(self) -> float:
        """a moment on the process's hour axis: 0 for its start, or the hour of the day, h"""
    @property
    def altitude_m(self) -> float:
        """height above sea level, for the air pressure, m"""
    @property
    def steps_done(self) -> int:
        """steps of its process that are over"""
    @property
    def amounts(self) -> Amounts:
        """what the dough holds, g"""
    @property
    def heat_capacity_kj_k(self) -> float:
        """of all of the dough, kJ/K"""
    @property
    def inside_k(self) -> float:
        """mean of the dough less its surface as the core feels it, K"""
    @property
    def shells(self) -> list[Shell]:
        """its layers from the core to the surface, one today"""
    @property
    def cohorts(self) -> list[Cohort]:
        """the yeast of each addition"""
    @property
    def mixed_volume_ml(self) -> float:
        """volume just after mixing, mL per 100 g of flour"""
    @property
    def anchor_ratio(self) -> float:
        """volume over mixed volume at the last handling or mixing, times the mixed volume"""
    @property
    def perishable_h(self) -> float:
        """between 5 and 60 °C with milk or egg in it, h"""
    @property
    def stage(self) -> StageProgress | None:
        """of the stage that is under way"""
    def replace(
        self,
        *,
        time_h: float | datetime.timedelta | datetime.time = ...,
        altitude_m: float = ...,
        steps_done: int = ...,
        amounts: Amounts = ...,
        heat_capacity_kj_k: float = ...,
        inside_k: float = ...,
        shells: collections.abc.Sequence[Shell] = ...,
        cohorts: collections.abc.Sequence[Cohort] = ...,
        mixed_volume_ml: float = ...,
        anchor_ratio: float = ...,
        perishable_h: float = ...,
        stage: StageProgress | None = ...,
    ) -> State: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> State: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> State: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> State: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @property
    def temperature_c(self) -> float:
        """°C, mean of the dough. Raises InvalidInput without one."""
    @property
    def equivalent_h(self) -> float:
        """equivalent hours since the first yeast met flour and water. Raises InvalidInput"""
    @property
    def made_mmol(self) -> float:
        """CO2 made of the sugars in the dough, mmol per 100 g of flour. Raises InvalidInput"""
    @property
    def co2_mmol(self) -> float:
        """CO2 held, mmol per 100 g of flour. Raises InvalidInput"""
    @property
    def air_mmol(self) -> float:
        """air in the cells, mmol per 100 g of flour. Raises InvalidInput"""
    def volume_ratio(self, kitchen: Kitchen | None = None) -> float:
        """Volume over the volume just after mixing. Raises InvalidInput without a dough."""
    def part(self, mass_g: float) -> State:
        """A part of the dough, g: the same dough, less of it. Raises InvalidInput if it weighs less."""
    def as_beginning(self) -> State:
        """The state as the beginning of another process. Raises InvalidInput in the middle of a stage."""

class Surroundings:
    """What the dough sits in over the day: a function of the process's hours, which never restarts with a stage.

    Args:
        places: in the order of time.

    Raises InvalidInput."""
    def __init__(self, places: collections.abc.Sequence[Place]) -> None: ...
    @property
    def places(self) -> list[Place]:
        """in the order of time"""
    def replace(self, *, places: collections.abc.Sequence[Place] = ...) -> Surroundings: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Surroundings: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Surroundings: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Surroundings: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    @staticmethod
    def room(
        room_c: float, *, humidity_percent: float | None = None, heat_transfer_w_per_m2_k: float | None = None
    ) -> Surroundings:
        """A room of one temperature, °C, -30 to 60. Raises InvalidInput."""
    @staticmethod
    def refrigerator(
        air_c: float,
        *,
        fan: bool = False,
        humidity_percent: float | None = None,
        heat_transfer_w_per_m2_k: float | None = None,
    ) -> Surroundings:
        """A refrigerator with air of that temperature, °C, -30 to 30, still or moved by a fan. Raises InvalidInput."""
    @staticmethod
    def measured(
        time_h: float | datetime.timedelta | _Numbers,
        temperature_c: float | _Numbers | None = None,
        *,
        air: typing.Literal["room", "refrigerator", "fan_refrigerator", "proof_box", "humid_proof_box"] = "room",
        humidity_percent: float | None = None,
        heat_transfer_w_per_m2_k: float | None = None,
    ) -> Surroundings:
        """Air of measured temperatures, straight lines between the readings.

        Args: time_h: h of the process, rising. temperature_c: °C, one for each; or a TemperatureLog in place of both,
        whose
        hours count from its first reading. Raises InvalidInput."""
    @staticmethod
    def daily_swing(
        mean_c: float,
        half_range_k: float,
        warmest_h: float = 16.0,
        *,
        air: typing.Literal["room", "refrigerator", "fan_refrigerator", "proof_box", "humid_proof_box"] = "room",
        humidity_percent: float | None = None,
        heat_transfer_w_per_m2_k: float | None = None,
    ) -> Surroundings:
        """A room that is warmest at warmest_h (h of the process), half_range_k above its mean, and coldest 12 h
        later.

        Args: mean_c: °C. half_range_k: K. Raises InvalidInput."""
    @staticmethod
    def proof_box(
        air_c: float, *, humidity_percent: float | None = None, heat_transfer_w_per_m2_k: float | None = None
    ) -> Surroundings:
        """A proof box with air of that temperature, °C, 0 to 60. Raises InvalidInput."""
    @staticmethod
    def humid_proof_box(air_c: float) -> Surroundings:
        """A proof box with steam or a pan of hot water in it, °C, 0 to 60: on a colder dough water condenses, which
        warms it sooner. Raises InvalidInput."""
    @staticmethod
    def dough(dough_c: float) -> Surroundings:
        """A dough that is held at a temperature of its own, °C, -2 to 45. Raises InvalidInput."""
    @staticmethod
    def dough_measured(
        time_h: float | datetime.timedelta | _Numbers, temperature_c: float | _Numbers | None = None
    ) -> Surroundings:
        """A dough whose own temperature was measured, by a probe in it; straight lines between the readings.

        Args: time_h: h of the process, rising. temperature_c: °C, one for each; or a TemperatureLog in place of both,
        whose
        hours count from its first reading. Raises InvalidInput."""
    @staticmethod
    def sequence(parts: collections.abc.Sequence[tuple[float, Surroundings]]) -> Surroundings:
        """One after the other: a list of (from_h, Surroundings), from_h in hours of the process, rising. Raises
        InvalidInput."""
    @typing.overload
    def temperature_at(self, time_h: float | datetime.timedelta) -> float: ...
    @typing.overload
    def temperature_at(self, time_h: float | datetime.timedelta | _Numbers) -> _Array:
        """Temperature at hours of the process, °C; a number or an array."""

class Timeline:
    """What a process did, minute by minute: columns of one length, the stages, the state at the end, and cautions.

    Args:
        time_h: h of the process.
        mean_c: °C, mean of the dough.
        core_c: °C in the middle, an estimate: a parabolic profile that settles after each change.
        surface_c: °C at the surface, an estimate for a settled profile.
        air_c: °C of the surroundings; the dough's where that is given.
        equivalent_h: equivalent hours since the first yeast.
        co2_mmol: CO2 made, mmol per 100 g of flour.
        rise_percent: %, since the start of the stage.
        stage: index of the stage in stages.
        stages: what each came to.
        state: at the end.
        notices: cautions, most severe first.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        time_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        mean_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        core_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        surface_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        air_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        equivalent_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        co2_mmol: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        rise_percent: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        stage: collections.abc.Sequence[int] = ...,
        stages: collections.abc.Sequence[StageResult] = ...,
        state: State = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> None: ...
    @property
    def time_h(self) -> _Array:
        """h of the process"""
    @property
    def mean_c(self) -> _Array:
        """°C, mean of the dough"""
    @property
    def core_c(self) -> _Array:
        """°C in the middle, an estimate: a parabolic profile that settles after each change"""
    @property
    def surface_c(self) -> _Array:
        """°C at the surface, an estimate for a settled profile"""
    @property
    def air_c(self) -> _Array:
        """°C of the surroundings; the dough's where that is given"""
    @property
    def equivalent_h(self) -> _Array:
        """equivalent hours since the first yeast"""
    @property
    def co2_mmol(self) -> _Array:
        """CO2 made, mmol per 100 g of flour"""
    @property
    def rise_percent(self) -> _Array:
        """%, since the start of the stage"""
    @property
    def stage(self) -> numpy.typing.NDArray[numpy.uint64]:
        """index of the stage in stages"""
    @property
    def stages(self) -> list[StageResult]:
        """what each came to"""
    @property
    def state(self) -> State:
        """at the end"""
    @property
    def notices(self) -> list[Notice]:
        """cautions, most severe first"""
    def replace(
        self,
        *,
        time_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        mean_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        core_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        surface_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        air_c: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        equivalent_h: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        co2_mmol: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        rise_percent: _Numbers | collections.abc.Sequence[datetime.timedelta] = ...,
        stage: collections.abc.Sequence[int] = ...,
        stages: collections.abc.Sequence[StageResult] = ...,
        state: State = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> Timeline: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Timeline: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Timeline: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Timeline: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def __getitem__(self, name: str) -> StageResult: ...
    def __len__(self) -> int: ...
    def __iter__(self) -> collections.abc.Iterator[typing.Any]: ...
    def to_frame(self) -> typing.Any:
        """The columns as a pandas DataFrame, with the stages' names."""
    def _repr_html_(self) -> str: ...

class Today:
    """What was measured today.

    Args:
        flour_c: of the flour in its bag; the room's if not given, °C.
        room_c: air temperature where the dough is mixed, °C.
        tap_c: cold water as it comes from the tap, °C.
        preferment_c: temperature of the preferment when it is mixed in, °C.
        refrigerator_c: air temperature inside the refrigerator, °C.
        bowl_c: temperature of the bowl; the room's if not given, °C.
        milk_c: temperature of the milk; the room's if not given, °C.
        egg_c: temperature of the egg; the room's if not given, °C.
        butter_c: temperature of the butter; the room's if not given, °C.
        ice_c: temperature of the ice: about −18 °C from a freezer, 0 °C when it is wet, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        flour_c: float | None = None,
        room_c: float | None = None,
        tap_c: float | None = None,
        preferment_c: float | None = None,
        refrigerator_c: float | None = None,
        bowl_c: float | None = None,
        milk_c: float | None = None,
        egg_c: float | None = None,
        butter_c: float | None = None,
        ice_c: float | None = None,
    ) -> None: ...
    @property
    def flour_c(self) -> float | None:
        """of the flour in its bag; the room's if not given, °C"""
    @property
    def room_c(self) -> float | None:
        """air temperature where the dough is mixed, °C"""
    @property
    def tap_c(self) -> float | None:
        """cold water as it comes from the tap, °C"""
    @property
    def preferment_c(self) -> float | None:
        """temperature of the preferment when it is mixed in, °C"""
    @property
    def refrigerator_c(self) -> float | None:
        """air temperature inside the refrigerator, °C"""
    @property
    def bowl_c(self) -> float | None:
        """temperature of the bowl; the room's if not given, °C"""
    @property
    def milk_c(self) -> float | None:
        """temperature of the milk; the room's if not given, °C"""
    @property
    def egg_c(self) -> float | None:
        """temperature of the egg; the room's if not given, °C"""
    @property
    def butter_c(self) -> float | None:
        """temperature of the butter; the room's if not given, °C"""
    @property
    def ice_c(self) -> float | None:
        """temperature of the ice: about −18 °C from a freezer, 0 °C when it is wet, °C"""
    def replace(
        self,
        *,
        flour_c: float | None = ...,
        room_c: float | None = ...,
        tap_c: float | None = ...,
        preferment_c: float | None = ...,
        refrigerator_c: float | None = ...,
        bowl_c: float | None = ...,
        milk_c: float | None = ...,
        egg_c: float | None = ...,
        butter_c: float | None = ...,
        ice_c: float | None = ...,
    ) -> Today: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Today: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Today: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Today: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class WantedWater:
    """What dough the water is to make, and what is known of it.

    Args:
        desired_c: dough temperature wanted at the end of mixing, °C.
        poured_c: what was poured: the dough's temperature follows, °C.
        friction_k: warming by mixing in the trade's factor rule, a difference of temperatures, K.
        friction_at_c: of room and flour where the friction was found; 21 °C if not given, °C.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        desired_c: float | None = None,
        poured_c: float | None = None,
        friction_k: float | None = None,
        friction_at_c: float | None = None,
    ) -> None: ...
    @property
    def desired_c(self) -> float | None:
        """dough temperature wanted at the end of mixing, °C"""
    @property
    def poured_c(self) -> float | None:
        """what was poured: the dough's temperature follows, °C"""
    @property
    def friction_k(self) -> float | None:
        """warming by mixing in the trade's factor rule, a difference of temperatures, K"""
    @property
    def friction_at_c(self) -> float | None:
        """of room and flour where the friction was found; 21 °C if not given, °C"""
    def replace(
        self,
        *,
        desired_c: float | None = ...,
        poured_c: float | None = ...,
        friction_k: float | None = ...,
        friction_at_c: float | None = ...,
    ) -> WantedWater: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> WantedWater: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> WantedWater: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> WantedWater: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class Water:
    """A portion of water of its own temperature, besides the main water.

    Args:
        mass_g: weight of a portion of water of its own temperature, g.
        temperature_c: temperature of the water poured in, °C.
        wets_yeast: the yeast is wetted in it and joins with it, after a rest.
        stands_h: hours a portion of water stands in the room before it is mixed in, h.
        cup_h: time in which the portion's difference to the room falls to 37 %, h.

    Raises InvalidInput."""
    def __init__(
        self,
        mass_g: float,
        temperature_c: float,
        *,
        wets_yeast: bool = False,
        stands_h: float | datetime.timedelta = 0.0,
        cup_h: float | datetime.timedelta = 0.3,
    ) -> None: ...
    @property
    def mass_g(self) -> float:
        """weight of a portion of water of its own temperature, g"""
    @property
    def temperature_c(self) -> float:
        """temperature of the water poured in, °C"""
    @property
    def wets_yeast(self) -> bool:
        """the yeast is wetted in it and joins with it, after a rest"""
    @property
    def stands_h(self) -> float:
        """hours a portion of water stands in the room before it is mixed in, h"""
    @property
    def cup_h(self) -> float:
        """time in which the portion's difference to the room falls to 37 %, h"""
    def replace(
        self,
        *,
        mass_g: float = ...,
        temperature_c: float = ...,
        wets_yeast: bool = ...,
        stands_h: float | datetime.timedelta = ...,
        cup_h: float | datetime.timedelta = ...,
    ) -> Water: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> Water: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> Water: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> Water: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

class WaterPlan:
    """How warm the main water must be, by the heat balance and by the trade's rule, and why they differ.

    Args:
        desired_c: °C of the dough at the end of mixing.
        water_c: °C the main water must have, ice in it counted; below 0 °C only with ice.
        water_g: g of main water, ice included.
        pour_c: °C of the water to pour: water_c, or the tap's if there is ice.
        pour_g: g to pour: water_g less the ice.
        ice_g: g of ice.
        factor_rule_c: °C of water by the trade's factor rule, for the same dough.
        friction_k: K of friction the rule was asked with.
        difference_k: K of water: factor_rule_c less water_c.
        dough_by_rule_c: °C of the dough that the rule's water would make.
        gain_k: K of dough by work, hydration and dissolving.
        k_per_kj_per_kg: K of dough per kJ of mixing per kg of dough.
        low_c: °C, lower end of the likely dough temperatures (90 %).
        high_c: °C, upper end.
        wetted_c: °C when flour and water have met, before the rest.
        rested_c: °C at the end of the rest.
        dough_g: g of dough.
        friction_given: else friction_k is what the balance needs where all is at 21 °C.
        reason: why rule and balance differ.
        shares: how much each thing counts.
        notices: cautions, most severe first.

    Raises InvalidInput."""
    def __init__(
        self,
        *,
        desired_c: float = 0.0,
        water_c: float = 0.0,
        water_g: float = 0.0,
        pour_c: float = 0.0,
        pour_g: float = 0.0,
        ice_g: float = 0.0,
        factor_rule_c: float = 0.0,
        friction_k: float = 0.0,
        difference_k: float = 0.0,
        dough_by_rule_c: float = 0.0,
        gain_k: float = 0.0,
        k_per_kj_per_kg: float = 0.0,
        low_c: float = 0.0,
        high_c: float = 0.0,
        wetted_c: float = 0.0,
        rested_c: float = 0.0,
        dough_g: float = 0.0,
        friction_given: bool = False,
        reason: str = "",
        shares: collections.abc.Sequence[HeatShare] = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> None: ...
    @property
    def desired_c(self) -> float:
        """°C of the dough at the end of mixing"""
    @property
    def water_c(self) -> float:
        """°C the main water must have, ice in it counted; below 0 °C only with ice"""
    @property
    def water_g(self) -> float:
        """g of main water, ice included"""
    @property
    def pour_c(self) -> float:
        """°C of the water to pour: water_c, or the tap's if there is ice"""
    @property
    def pour_g(self) -> float:
        """g to pour: water_g less the ice"""
    @property
    def ice_g(self) -> float:
        """g of ice"""
    @property
    def factor_rule_c(self) -> float:
        """°C of water by the trade's factor rule, for the same dough"""
    @property
    def friction_k(self) -> float:
        """K of friction the rule was asked with"""
    @property
    def difference_k(self) -> float:
        """K of water: factor_rule_c less water_c"""
    @property
    def dough_by_rule_c(self) -> float:
        """°C of the dough that the rule's water would make"""
    @property
    def gain_k(self) -> float:
        """K of dough by work, hydration and dissolving"""
    @property
    def k_per_kj_per_kg(self) -> float:
        """K of dough per kJ of mixing per kg of dough"""
    @property
    def low_c(self) -> float:
        """°C, lower end of the likely dough temperatures (90 %)"""
    @property
    def high_c(self) -> float:
        """°C, upper end"""
    @property
    def wetted_c(self) -> float:
        """°C when flour and water have met, before the rest"""
    @property
    def rested_c(self) -> float:
        """°C at the end of the rest"""
    @property
    def dough_g(self) -> float:
        """g of dough"""
    @property
    def friction_given(self) -> bool:
        """else friction_k is what the balance needs where all is at 21 °C"""
    @property
    def reason(self) -> str:
        """why rule and balance differ"""
    @property
    def shares(self) -> list[HeatShare]:
        """how much each thing counts"""
    @property
    def notices(self) -> list[Notice]:
        """cautions, most severe first"""
    def replace(
        self,
        *,
        desired_c: float = ...,
        water_c: float = ...,
        water_g: float = ...,
        pour_c: float = ...,
        pour_g: float = ...,
        ice_g: float = ...,
        factor_rule_c: float = ...,
        friction_k: float = ...,
        difference_k: float = ...,
        dough_by_rule_c: float = ...,
        gain_k: float = ...,
        k_per_kj_per_kg: float = ...,
        low_c: float = ...,
        high_c: float = ...,
        wetted_c: float = ...,
        rested_c: float = ...,
        dough_g: float = ...,
        friction_given: bool = ...,
        reason: str = ...,
        shares: collections.abc.Sequence[HeatShare] = ...,
        notices: collections.abc.Sequence[Notice] = ...,
    ) -> WaterPlan: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> WaterPlan: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> WaterPlan: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> WaterPlan: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...
    def to_frame(self) -> typing.Any:
        """The shares as a pandas DataFrame."""
    def _repr_html_(self) -> str: ...

class YeastWater:
    """Warm water of its own in which the yeast is wetted.

    Args:
        water_g: weight of water, g.
        temperature_c: temperature of the water poured in, °C.
        stands_h: hours a portion of water stands in the room before it is mixed in, h.

    Raises InvalidInput."""
    def __init__(self, *, water_g: float, temperature_c: float, stands_h: float | datetime.timedelta = 0.0) -> None: ...
    @property
    def water_g(self) -> float:
        """weight of water, g"""
    @property
    def temperature_c(self) -> float:
        """temperature of the water poured in, °C"""
    @property
    def stands_h(self) -> float:
        """hours a portion of water stands in the room before it is mixed in, h"""
    def replace(
        self, *, water_g: float = ..., temperature_c: float = ..., stands_h: float | datetime.timedelta = ...
    ) -> YeastWater: ...
    def to_dict(self) -> dict[str, typing.Any]: ...
    @staticmethod
    def from_dict(values: collections.abc.Mapping[str, typing.Any]) -> YeastWater: ...
    def to_json(self) -> str: ...
    @staticmethod
    def from_json(text: str) -> YeastWater: ...
    def save(self, path: str | os.PathLike[str]) -> None: ...
    @staticmethod
    def load(path: str | os.PathLike[str]) -> YeastWater: ...
    def __eq__(self, other: object) -> bool: ...
    def __hash__(self) -> int: ...

def _calibration(*args: typing.Any, **keywords: typing.Any) -> typing.Any: ...
def _compare_laws(*args: typing.Any, **keywords: typing.Any) -> typing.Any: ...
def _forms() -> list[typing.Any]: ...
def advance(state: State, step: Mix | Stage, *, kitchen: Kitchen | None = None) -> State:
    """One step of a process: the State after it.

    Args: state: State, State() to begin; its time is in h. step: Mix or Stage. Raises InvalidInput, NoSolution and
    OutsideModel as simulate. Source: as simulate."""

@typing.overload
def air_pressure_pa(altitude_m: float) -> float: ...
@typing.overload
def air_pressure_pa(altitude_m: float | _Numbers) -> _Array:
    """Air pressure, Pa, at an altitude in m. Any shape in, the same shape out.

    Raises InvalidInput outside -500 to 6000 m. Source: ISO 2533 standard atmosphere."""

def airs() -> dict[str, float]:
    """Kinds of air and the heat they take from a matt surface, W/(m² K), radiation included. Source: computed,
    Incropera's correlations (from memory)."""

def ask(question: str, threads: int = 0) -> str:
    """A question in, its answer out, both as the JSON text of documents.

    Args: question: such as '{"ask": "water", "day": {...}}'; threads: 0 for as many as the machine has.
    Raises InvalidInput with the way to what is wrong; NoSolution; OutsideModel."""

def assumptions_of(day: Day) -> list[Notice]:
    """What is reckoned with and was not given, and where a stage's dough is if it does not say: notices."""

def bowl_materials() -> dict[str, float]:
    """Materials of bowls and their specific heats, kJ/(kg K). Source: Incropera, Perry's (from memory)."""

def cautions(
    *,
    dough_c: float | None = None,
    yeast_percent: float | None = None,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float | None = None,
    water_percent: float | None = None,
    sugar_percent: float | None = None,
    gluten_percent: float | None = None,
    altitude_m: float | None = None,
    rise_percent: float | None = None,
    water_c: float | None = None,
    refrigerator_c: float | None = None,
    perishable_h: float | None = None,
    kitchen: Kitchen | None = None,
) -> list[Notice]:
    """The notices that belong to plain numbers, most severe first; an empty list if there is nothing to say.

    Args: numbers, all optional: °C, percent of flour, m, h. perishable_h: hours a dough with egg, milk or other
    perishable
    food is held at dough_c. Raises InvalidInput outside the field table, but answers any finite water_c.
    Source: limits of the trade (common practice) and of the laws; food safety defers to the local food code."""

@typing.overload
def celsius(fahrenheit: float) -> float: ...
@typing.overload
def celsius(fahrenheit: float | _Numbers) -> _Array:
    """A temperature point in °F as °C: (F - 32)/1.8.

    Args: fahrenheit: a number or an array, °F, at or above -459.67.
    Returns: °C. Raises InvalidInput if not finite or below absolute zero. Source: definition of the scales."""

@typing.overload
def co2_solubility(temperature_c: float) -> float: ...
@typing.overload
def co2_solubility(temperature_c: float | _Numbers) -> _Array:
    """Solubility of CO2 in water, mol/(kg atm). Any shape in, the same shape out.

    Raises InvalidInput. Source: Weiss 1974, Mar Chem 2:203."""

def conductivity_with_gas(conductivity_w_per_m_k: float, gas_fraction: float) -> float:
    """Conductivity of dough with gas cells, W/(m K): Maxwell and Eucken's rule.

    Args: numbers: W/(m K) of the dough without gas; share of gas in the volume, 0 to 1. Raises InvalidInput.
    Source: Maxwell and Eucken's rule as in ASHRAE Handbook - Refrigeration (from memory), gas 0.026 W/(m K)."""

def convert_yeast(
    yeast_percent: float,
    *,
    from_yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"],
    to_yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"],
) -> float:
    """The dose of another kind of yeast that gasses alike, percent of flour.

    Args: yeast_percent: number; kinds: instant, active_dry, active_dry_unwetted, compressed. Raises InvalidInput.
    Source: trade weight ratios compressed 1 : active dry 0.40 : instant 0.33."""

def dough_by_factor_rule(
    water_c: float, *, flour_c: float, room_c: float, friction_k: float, preferment_c: float | None = None
) -> float:
    """Dough temperature the factor rule expects, °C: the mean of the known temperatures and friction.

    Args: numbers, °C; friction_k in K. Raises InvalidInput. Source: trade textbooks."""

def dough_by_heat_balance(mix: Mix) -> float:
    """Dough temperature at the end of mixing, °C: the balance forward; the mix's water_c must be given.

    Raises InvalidInput; OutsideModel if ice would not melt or the dough be outside -2 to 45 °C. Source: as
    water_by_heat_balance."""

def draws_of(
    kitchen: Kitchen | None = None,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> list[Kitchen]:
    """The kitchens that a forecast draws: a list of Kitchen, the same every time.

    The kitchen's covariance moves its parameters, its bake_sd and model_sd the gassing rate once more. Raises
    InvalidInput.
    Source: Sobol's sequence, Joe & Kuo 2008."""

@typing.overload
def drift_equivalent_h(
    time_h: float | datetime.timedelta,
    *,
    start_c: float,
    surroundings_c: float,
    time_constant_h: float | datetime.timedelta,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> float: ...
@typing.overload
def drift_equivalent_h(
    time_h: float | datetime.timedelta | _Numbers,
    *,
    start_c: float | _Numbers,
    surroundings_c: float | _Numbers,
    time_constant_h: float | datetime.timedelta | _Numbers,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> _Array:
    """Equivalent hours of temperature that pass in a drifting dough: the integral of the kitchen's temperature
    factor, exactly.

    Args: numbers or arrays that broadcast: hours or timedeltas, °C. Salt and sugar multiply the result as they do
    speed().
    Returns: equivalent hours. Raises InvalidInput. Source: closed form by partial fractions for the cardinal law (Rosso
    et
    al. 1993), Gauss-Legendre quadrature to rounding for the others.

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""

@typing.overload
def drift_hours(
    equivalent_h: float | datetime.timedelta,
    *,
    start_c: float,
    surroundings_c: float,
    time_constant_h: float | datetime.timedelta,
    unreachable: typing.Literal["raise", "inf"] = "raise",
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> float: ...
@typing.overload
def drift_hours(
    equivalent_h: float | datetime.timedelta | _Numbers,
    *,
    start_c: float | _Numbers,
    surroundings_c: float | _Numbers,
    time_constant_h: float | datetime.timedelta | _Numbers,
    unreachable: typing.Literal["raise", "inf"] = "raise",
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> _Array:
    """Hours until equivalent hours have passed in a drifting dough; the inverse of drift_equivalent_h.

    Args: numbers or arrays that broadcast: equivalent hours, °C, hours or timedeltas. unreachable: "raise", or "inf"
    for
    maps. Raises InvalidInput; NoSolution where the clock stops before, naming what it reaches. Source: as
    drift_equivalent_h, by Halley's method.

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""

@typing.overload
def drifted_c(
    start_c: float,
    time_h: float | datetime.timedelta,
    *,
    surroundings_c: float,
    time_constant_h: float | datetime.timedelta,
    missing: str = "raise",
) -> float: ...
@typing.overload
def drifted_c(
    start_c: float | _Numbers,
    time_h: float | datetime.timedelta | _Numbers,
    *,
    surroundings_c: float | _Numbers,
    time_constant_h: float | datetime.timedelta | _Numbers,
    missing: str = "raise",
) -> _Array:
    """Temperature of a dough that relaxes to its surroundings, °C: surroundings + (start - surroundings)
    exp(-t/time_constant).

    Args: numbers or arrays that broadcast: °C; times in hours or timedeltas. Raises InvalidInput. Source: Newton's law
    of
    cooling.

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""

def equivalent_hours_for_gas(
    co2_mmol: float,
    *,
    yeast_percent: float,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    sugar_percent: float = 0.0,
    kitchen: Kitchen | None = None,
) -> float:
    """Equivalent hours until that much CO2 is made, the inverse of gas_made.

    Args: numbers; co2_mmol in mmol per 100 g flour. Raises InvalidInput; NoSolution naming the most the sugars give.
    Source: closed form with Lambert's W before the yeast grows, a logarithm after."""

@typing.overload
def explain(
    rise_percent: float,
    *,
    dough_c: float,
    yeast_percent: float,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float = 2.0,
    water_percent: float = 65.0,
    sugar_percent: float = 0.0,
    gluten_percent: float = 0.0,
    altitude_m: float = 0.0,
    kitchen: Kitchen | None = None,
) -> Explanation: ...
@typing.overload
def explain(
    rise_percent: float | _Numbers,
    *,
    dough_c: float | _Numbers,
    yeast_percent: float | _Numbers,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float | _Numbers = 2.0,
    water_percent: float | _Numbers = 65.0,
    sugar_percent: float | _Numbers = 0.0,
    gluten_percent: float | _Numbers = 0.0,
    altitude_m: float | _Numbers = 0.0,
    kitchen: Kitchen | None = None,
) -> numpy.typing.NDArray[typing.Any]:
    """The factors that made a time: yeast ×, temperature ×, salt ×, water ×, sugar ×, gluten ×, altitude ×.

    Args: as in hours_to_rise; of arrays an array of Explanations comes back. Walks from the reference dough (25 °C, 1 %
    instant yeast, 2 % salt, 65 % water, no sugar, sea level) to this one, one change at a time; the product is exact,
    each
    factor depends a little on the order. Raises as hours_to_rise. Source: ratios of hours_to_rise."""

@typing.overload
def fahrenheit(celsius: float) -> float: ...
@typing.overload
def fahrenheit(celsius: float | _Numbers) -> _Array:
    """A temperature point in °C as °F: 1.8 C + 32.

    Args: celsius: a number or an array, °C, at or above -273.15.
    Returns: °F. Raises InvalidInput if not finite or below absolute zero. Source: definition of the scales."""

def fields() -> list[Field]:
    """All inputs: the field table."""

def forecast(
    process: Process,
    kitchen: Kitchen | None = None,
    state: State | None = None,
    *,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> Forecast:
    """When each stage will be ready, with a window: a Forecast, the same every time.

    Args: process: Process. kitchen: its covariance is the uncertainty, the prior's if it has none. state: to forecast
    from
    the middle of the day. seen: of Sighting, what was seen of this dough, whose process is then the whole of it with
    the
    hours at which its stages ended: the draws are weighted by it. draws: kitchens of Sobol's sequence. seed:
    another one gives another set of draws. threads: that share the draws, 0 for those of the machine; the answer is the
    same. In every draw each stage ends when it is ready, so one stage's uncertainty carries into the next. Acceptable
    rises that a stage does not give are 75 to 150 % of its rise, 80 to 133 % for a final proof (common practice).
    Warmer
    dough is ready some 7 to 10 % per °C sooner near dough temperature; but after a bulk of a fixed time a warmer room
    can
    make the final proof longer: more of the sugars is spent. Times are in h. Raises as simulate for the kitchen's
    central
    values: InvalidInput, OutsideModel. Source: model of this library; Joe & Kuo 2008."""

def friction_from_batch(
    *, dough_c: float, flour_c: float, room_c: float, water_c: float, preferment_c: float | None = None
) -> float:
    """Friction of a batch, K: n dough - flour - room - water (- preferment).

    Args: numbers, °C, measured at one batch; use the result for the next batch of the same size on the same mixer.
    Raises InvalidInput, also if the friction lies outside -10 to 25 K. Source: trade textbooks."""

def friction_from_batches(
    *,
    dough_c: float | _Numbers,
    flour_c: float | _Numbers,
    room_c: float | _Numbers,
    water_c: float | _Numbers,
    preferment_c: float | _Numbers | None = None,
) -> BatchMean:
    """Friction from several batches on one mixer, K: their mean, spread and each one.

    Args: °C, arrays with one value for each batch, or numbers for all. Returns: BatchMean.
    Raises InvalidInput, also if a friction lies outside -10 to 25 K. Source: trade textbooks."""

def gas_made(
    equivalent_h: float,
    *,
    yeast_percent: float,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    sugar_percent: float = 0.0,
    kitchen: Kitchen | None = None,
) -> float:
    """CO2 made after some equivalent hours, mmol per 100 g flour.

    Args: numbers; equivalent_h in hours at the reference dough (25 °C, 2 % salt, 65 % water, no sugar). Raises
    InvalidInput. Source: model of this library: start-up, growth by a fixed increment after a lag, exhaustion of the
    sugars."""

@typing.overload
def grams(ounces: float) -> float: ...
@typing.overload
def grams(ounces: float | _Numbers) -> _Array:
    """A weight in avoirdupois ounces as grams: 28.349523125 g each.

    Args: ounces: a number or an array, at or above 0. Returns: g. Raises InvalidInput. Source: definition
    (international
    pound, 1959)."""

def has_clock(day: Day) -> bool:
    """Whether the hours of the day's process are of the day, from its 0:00."""

def heat_of_hydration(moisture_percent: float) -> float:
    """Heat that flour gives off when it is wetted, kJ per kg of flour as weighed, ± 40 %.

    Args: moisture_percent: a number, 5 to 20 % of the flour's weight. Raises InvalidInput.
    Source: fit of this project through 15.1 kJ/kg at 11.5 % (baking trade dictionary) and 105 kJ/kg of dry matter (from
    memory)."""

@typing.overload
def hours_to_rise(
    rise_percent: float,
    *,
    dough_c: float,
    yeast_percent: float,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float = 2.0,
    water_percent: float = 65.0,
    sugar_percent: float = 0.0,
    gluten_percent: float = 0.0,
    altitude_m: float = 0.0,
    kitchen: Kitchen | None = None,
    unreachable: typing.Literal["raise", "inf"] = "raise",
    missing: str = "raise",
) -> float: ...
@typing.overload
def hours_to_rise(
    rise_percent: float | _Numbers,
    *,
    dough_c: float | _Numbers,
    yeast_percent: float | _Numbers,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float | _Numbers = 2.0,
    water_percent: float | _Numbers = 65.0,
    sugar_percent: float | _Numbers = 0.0,
    gluten_percent: float | _Numbers = 0.0,
    altitude_m: float | _Numbers = 0.0,
    kitchen: Kitchen | None = None,
    unreachable: typing.Literal["raise", "inf"] = "raise",
    missing: str = "raise",
) -> _Array:
    """Hours from the end of mixing until the dough has gained that much of its volume, at a constant dough
    temperature.

    Args: numbers or arrays that broadcast: rise_percent % of the volume just after mixing (doubled is 100); dough_c the
    dough's own temperature in °C, not the room's; yeast_percent as weighed, and the others, percent of flour weight;
    altitude_m in m. yeast: instant, active_dry (wetted first), active_dry_unwetted or compressed. unreachable: "raise",
    or
    "inf" for maps. Returns: hours, a number or an array of the common shape. Raises InvalidInput; NoSolution for a rise
    the dough cannot hold or make, naming the reachable rise; OutsideModel where the yeast stands still. For arrays the
    message names the first index and the count. Source: clock, gas and retention of the model in closed form (Rosso et
    al.
    1993; Weiss 1974; Buck 1996; ISO 2533).

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""

def ice_by_heat_balance(water_g: float, *, tap_c: float, wanted_c: float, ice_c: float = 0.0) -> float:
    """Ice in place of that much of the water, g, from the enthalpies of ice and water.

    Args: numbers; water_g all of the water, g; temperatures °C; wanted_c may lie below 0. More than water_g: not enough
    even as ice. Raises InvalidInput; NoSolution if wanted is warmer than the tap. Source: enthalpy balance, c 4.186 and
    2.05 kJ/(kg K), 333.55 kJ/kg."""

def ice_by_trade_rule(water_g: float, *, tap_c: float, wanted_c: float) -> float:
    """Ice at 0 °C to put in place of that much of the water, g: water (tap - wanted)/(tap + 80).

    Args: numbers; water_g all of the water, g; temperatures °C. Raises InvalidInput; NoSolution if wanted is warmer
    than
    the tap. Source: trade textbooks, in °F (tap - wanted)/(tap + 112)."""

def ingredients() -> list[Ingredient]:
    """All ingredients with their composition: flours first. Source: USDA FoodData Central, by row."""

@typing.overload
def kelvins(fahrenheit_degrees: float) -> float: ...
@typing.overload
def kelvins(fahrenheit_degrees: float | _Numbers) -> _Array:
    """A *difference* of temperatures in Fahrenheit degrees as K: F/1.8.

    Args: fahrenheit_degrees: a number or an array. 20 °F of friction are 11.1 K.
    Returns: K. Raises InvalidInput if not finite. Source: definition of the scales."""

def latest_start(
    process: Process,
    *,
    stage: str,
    ready_h: float | datetime.timedelta,
    kitchen: Kitchen | None = None,
    state: State | None = None,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> Choice:
    """Latest hour at which the process may begin, h, for a stage to be ready at an hour: a Choice.

    Args: as yeast_for, without a state. Raises as yeast_for: InvalidInput, NoSolution. Source: as yeast_for."""

def learned_mixing(day: Day, kitchen: Kitchen | None = None) -> LearnedMixing:
    """What the day's batches say of the mixing: friction, K, and net gain, kJ per kg of dough.

    Args: day, with batches, or with its own dough and water measured; kitchen. Raises InvalidInput, naming the
    batch."""

def log_of(day: Day, kitchen: Kitchen | None = None) -> Log:
    """A day as a Log: its process, with the hours at which its stages really ended, and what was seen.

    log.process and log.seen are what forecast takes for a day under way. Raises as process_of: InvalidInput, also for a
    stage that is none of the day's or a time that cannot be. Hours are h of the day, from its 0:00, if it has a clock.
    Source: as process_of."""

def mean_of_batches(each: collections.abc.Sequence[float]) -> BatchMean:
    """The mean of a number found from several batches, and its spread. Raises InvalidInput without a batch."""

def mix_of(day: Day, kitchen: Kitchen | None = None) -> Mix:
    """The day's mix without a temperature of its water: formula, bowl, preferment, mixing heat.

    Args: day; kitchen: the parameters, for a preferment that ferments. Returns a Mix. Raises InvalidInput."""

def mixing_methods() -> list[MixingMethod]:
    """All ways of mixing, with the work each leaves in the dough, kJ/kg, and where it is from."""

def mixing_minutes(mixing: ByMethod | ByWork | ByNetGain) -> float:
    """Minutes of mixing in the room that a way of mixing says; 0 if it says none.

    Args: mixing: ByMethod, ByWork or ByNetGain. Raises InvalidInput. Source: usual times are common practice."""

def moment_h(text: str, after_h: float = 0.0) -> float:
    """A time of day such as "18:30" as hours from the day's 0:00: the first one from `after_h` on.

    "+1 7:30" is the next morning whatever came before. Raises InvalidInput."""

def moment_text(hours: float) -> str:
    """Hours from the day's 0:00 as a time of day, to the minute."""

def moved(parameter: Parameter, value: float, by: float) -> float:
    """A value moved in the coordinate in which its parameter is learned, and kept inside the table's bounds.

    Args: value: in the parameter's unit, by: in its coordinate. Raises InvalidInput for what is no number. Source:
    Parameter.scale."""

def net_gain_from_batch(mix: Mix, dough_c: float) -> float:
    """Net mixing gain of a batch, kJ per kg of dough: work, hydration and losses together.

    Args: mix: Mix with the water_c it was mixed with; of its mixing only the minutes are read: with a method, or a net
    gain with minutes, exchange with the room is reckoned apart. dough_c: °C at the end of mixing. Raises InvalidInput,
    also if the gain lies outside -30 to 120. Source: enthalpy balance."""

def net_gain_from_batches(mixes: collections.abc.Sequence[Mix], dough_c: collections.abc.Sequence[float]) -> BatchMean:
    """Net mixing gain from several batches on one mixer, kJ per kg: a BatchMean; for a mix take net_gain_of of it.

    Args: mixes: list of Mix with their water_c. dough_c: list of °C. Raises InvalidInput, naming the batch. Source:
    enthalpy balance."""

def net_gain_from_friction(mix: Mix, friction_k: float, desired_c: float, *, measured_at_c: float) -> float:
    """Net mixing gain worth a friction, kJ per kg of dough.

    Args: friction_k: K, found for such a mix, for a dough of desired_c (°C), in a room where flour, room and bowl had
    measured_at_c (°C). Raises InvalidInput. Source: the rule and the balance agree there."""

def net_gain_of(batches: BatchMean, minutes: float = 0.0) -> ByNetGain:
    """Mixing heat as a Mix takes it, from batches: their mean, and the spread that the next batch will show.

    Args: batches: BatchMean of net_gain_from_batches. minutes: min of mixing that the batches' mixing said, 0 if none.
    Returns: ByNetGain, kJ/kg. Few batches tell little of their spread: it is drawn toward 1 kJ/kg with the weight of
    four
    batches. Raises InvalidInput. Source: engineering estimate of the usual spread, no source."""

def next_look(
    process: Process,
    stage: str = "",
    kitchen: Kitchen | None = None,
    *,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> NextLook:
    """The look that would narrow a forecast most while there is still time to act on it: a NextLook.

    The earliest look at the first stage that ends by a rise which tells four fifths of what its end would tell of ln
    time
    to `stage`, the last one if not given. Hours are h of the process. Args: kitchen, seen, draws, heat_of_fermentation,
    seed, threads: as of forecast. Raises as forecast: InvalidInput, NoSolution, OutsideModel. Source: linear-Gaussian
    value
    of information, from the draws."""

@typing.overload
def ounces(grams: float) -> float: ...
@typing.overload
def ounces(grams: float | _Numbers) -> _Array:
    """A weight in grams as avoirdupois ounces.

    Args: grams: a number or an array, at or above 0. Returns: oz. Raises InvalidInput. Source: definition
    (international
    pound, 1959)."""

def over_proof_ratio(
    dough: Dough,
    *,
    standing: typing.Literal["tin", "free"],
    final_proof: bool,
    start_ratio: float = 1.0,
    kitchen: Kitchen | None = None,
) -> float:
    """Volume over mixed volume above which a dough is over-proofed, standing in a "tin" (or tub) or "free". Common
    practice, no source; the shares are parameters of the kitchen. Raises InvalidInput."""

def parameters() -> list[Parameter]:
    """All parameters of a kitchen: the parameter table."""

def process_of(day: Day, kitchen: Kitchen | None = None) -> Process:
    """The day as a process: its real mix, then its stages, one after the other.

    The mix has the water that is planned or was poured, or the dough as measured. Hours are of the day, from its 0:00,
    if
    `start` or `mixed` says so; else from the end of mixing. What was done counts before what was planned.

    Args: day; kitchen: the parameters, for a preferment that ferments. Returns a Process.
    Raises InvalidInput naming what is missing; NoSolution for a dough that no water makes."""

def reachable_rise(
    *,
    dough_c: float,
    yeast_percent: float,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float = 2.0,
    water_percent: float = 65.0,
    sugar_percent: float = 0.0,
    gluten_percent: float = 0.0,
    altitude_m: float = 0.0,
    kitchen: Kitchen | None = None,
) -> float:
    """The rise a dough nears but never reaches, percent: what it can hold, or what its sugars can make.

    Args: numbers, as in hours_to_rise. Raises InvalidInput. Source: as hours_to_rise."""

def refrigerate_from(
    process: Process,
    *,
    stage: str,
    ready_h: float | datetime.timedelta,
    moved: str | None = None,
    refrigerator: Surroundings,
    kitchen: Kitchen | None = None,
    state: State | None = None,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> Choice:
    """Latest hour, h, at which a dough goes into the refrigerator, to its stage's end, for a stage to be ready at an
    hour: a Choice.

    Args: as yeast_for. moved: the stage whose dough is moved; the same stage if not given. refrigerator: Surroundings,
    of
    any kind. Raises as yeast_for: InvalidInput, NoSolution. Source: as yeast_for."""

@typing.overload
def rise_after(
    time_h: float | datetime.timedelta,
    *,
    dough_c: float,
    yeast_percent: float,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float = 2.0,
    water_percent: float = 65.0,
    sugar_percent: float = 0.0,
    gluten_percent: float = 0.0,
    altitude_m: float = 0.0,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> float: ...
@typing.overload
def rise_after(
    time_h: float | datetime.timedelta | _Numbers,
    *,
    dough_c: float | _Numbers,
    yeast_percent: float | _Numbers,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float | _Numbers = 2.0,
    water_percent: float | _Numbers = 65.0,
    sugar_percent: float | _Numbers = 0.0,
    gluten_percent: float | _Numbers = 0.0,
    altitude_m: float | _Numbers = 0.0,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> _Array:
    """Rise in percent after some hours at a constant dough temperature, the inverse of hours_to_rise.

    Args: time_h: hours or a timedelta, a number or an array; the others as in hours_to_rise.
    Returns: percent, a number or an array of the common shape; 0 at 0 h. Raises InvalidInput.
    Source: as hours_to_rise.

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""

def room_for(
    process: Process,
    *,
    stage: str,
    ready_h: float | datetime.timedelta,
    air: typing.Literal["room", "refrigerator", "fan_refrigerator", "proof_box", "humid_proof_box"] = "room",
    kitchen: Kitchen | None = None,
    state: State | None = None,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> Choice:
    """Temperature of the room, °C, with which a stage is ready at an hour: a Choice. Of all steady places with such
    air up to the stage.

    After a bulk of a fixed time a warmer room can make the final proof longer: then several temperatures may be on
    time,
    and all are named. Args: as yeast_for. air: "room", "proof_box", "refrigerator" or "fan_refrigerator". Raises as
    yeast_for: InvalidInput, NoSolution. Source: as yeast_for."""

@typing.overload
def same_rise(
    time_h: float | datetime.timedelta,
    *,
    from_c: float,
    to_c: float,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> float: ...
@typing.overload
def same_rise(
    time_h: float | datetime.timedelta | _Numbers,
    *,
    from_c: float | _Numbers,
    to_c: float | _Numbers,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> _Array:
    """A known time at another dough temperature, hours: "2 h at 24 °C; mine is 18 °C".

    Args: numbers or arrays that broadcast: time_h in hours or a timedelta, from_c and to_c dough temperatures in °C.
    The yeast's strength and the formula cancel as long as they are the same; the dough makes the same gas, and a colder
    one
    stands a little lower at it. Raises InvalidInput; OutsideModel where the yeast stands still.
    Source: ratio of the kitchen's temperature law.

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""

@typing.overload
def saturation_pressure_pa(temperature_c: float) -> float: ...
@typing.overload
def saturation_pressure_pa(temperature_c: float | _Numbers) -> _Array:
    """Saturation vapour pressure over water, Pa. Any shape in, the same shape out.

    Raises InvalidInput. Source: Buck 1996."""

def series_equivalent_h(
    time_h: typing.Annotated[_Numbers, numpy.float64],
    temperature_c: typing.Annotated[_Numbers, numpy.float64],
    *,
    kitchen: Kitchen | None = None,
) -> _Array:
    """Equivalent hours over a measured temperature that is linear between readings, from the first reading to each.

    Args: time_h: hours, rising; temperature_c: °C, one for each; arrays of one dimension with at least two readings.
    Returns: equivalent hours, an array. Raises InvalidInput. Source: exact antiderivative of the cardinal law;
    quadrature
    for the others."""

def simulate(
    process: Process,
    kitchen: Kitchen | None = None,
    state: State | None = None,
    *,
    progress: collections.abc.Callable[[int, int, float], None] | None = None,
    heat_of_fermentation: bool = True,
    every_min: float = 1.0,
    be_back_by: bool = True,
    stop_h: float | datetime.timedelta | None = None,
    tolerance: float = 1e-05,
) -> Timeline:
    """Run a process through, or what a state has left of it: a Timeline.

    Args: process: Process. state: State to go on from, also in the middle of a stage. every_min: grid of the timeline,
    min; 0: starts and ends alone. be_back_by: follow each stage beyond its end to the over-proofed dough. stop_h: h of
    the
    process at which to stop. tolerance: of the speeds along a step; the result is far closer. progress: called before
    each
    step with its place, the number of steps and the hour; what it raises ends the simulation. Raises InvalidInput;
    NoSolution for a rise that is never reached, with what it reaches and when; OutsideModel if the dough leaves -2 to
    45
    °C, with the hour. Source: one node of heat, the clock and the gas of this library's model; 50.7 kJ per mol CO2."""

@typing.overload
def speed(
    *,
    dough_c: float,
    salt_percent: float = 2.0,
    water_percent: float = 65.0,
    sugar_percent: float = 0.0,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> float: ...
@typing.overload
def speed(
    *,
    dough_c: float | _Numbers,
    salt_percent: float | _Numbers = 2.0,
    water_percent: float | _Numbers = 65.0,
    sugar_percent: float | _Numbers = 0.0,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> _Array:
    """Equivalent hours per hour: temperature factor × solute factor, 1 at the reference dough.

    Args: numbers or arrays that broadcast: dough_c in °C, the rest percent of flour weight.
    Returns: a number, or an array of the common shape; 0 where the yeast stands still.
    Raises InvalidInput. Source: the kitchen's temperature law; linear in water activity.

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""

def take_out_at(
    process: Process,
    *,
    stage: str,
    ready_h: float | datetime.timedelta,
    moved: str | None = None,
    into: Surroundings,
    kitchen: Kitchen | None = None,
    state: State | None = None,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> Choice:
    """Latest hour, h, at which a dough comes out of its stage's refrigerator into a room, for a stage to be ready at
    an hour: a Choice.

    Args: as refrigerate_from. into: Surroundings in which it stays to the stage's end. Raises as yeast_for:
    InvalidInput,
    NoSolution. Source: as yeast_for."""

def water_activity(*, salt_percent: float, water_percent: float, sugar_percent: float = 0.0) -> float:
    """Water activity of the dough's water, exp(-0.0180153 osmolality), a ratio.

    Args: percent of flour weight, numbers. Raises InvalidInput.
    Source: ideal dilute solution with an osmotic coefficient of 0.92; within 0.005 of Robinson & Stokes 1959 (from
    memory)."""

@typing.overload
def water_by_factor_rule(
    desired_c: float,
    *,
    flour_c: float,
    room_c: float,
    friction_k: float,
    preferment_c: float | None = None,
    missing: str = "raise",
) -> float: ...
@typing.overload
def water_by_factor_rule(
    desired_c: float | _Numbers,
    *,
    flour_c: float | _Numbers,
    room_c: float | _Numbers,
    friction_k: float | _Numbers,
    preferment_c: float | _Numbers | None = None,
    missing: str = "raise",
) -> _Array:
    """Water temperature by the trade's factor rule, °C: n desired - flour - room (- preferment) - friction.

    Args: numbers or arrays that broadcast, °C; friction_k in K, a *difference* of temperatures; n = 3, or 4 with a
    preferment. Returns: a number, or an array of the common shape; may lie below 0 or above 60 °C: see
    cautions(water_c=...). Raises InvalidInput. Source: trade textbooks."""

def water_by_heat_balance(mix: Mix, desired_c: float, *, friction_k: float | None = None) -> WaterPlan:
    """Water temperature for a dough temperature, by the heat balance, with the factor rule beside it: a WaterPlan.

    Args: mix: Mix, its main water's temperature is not read. desired_c: °C at the end of mixing. friction_k: K, for the
    factor rule; alone; if not given, what the balance itself needs where everything is at 21 °C. For the balance a
    friction counts by net_gain_from_friction. Raises InvalidInput; NoSolution naming the reachable dough temperatures.
    Source: enthalpy balance with constant specific heats."""

def water_for(
    process: Process,
    *,
    stage: str,
    ready_h: float | datetime.timedelta,
    kitchen: Kitchen | None = None,
    state: State | None = None,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> Choice:
    """Temperature of the next mix's main water, °C, with which a stage is ready at an hour: a Choice.

    Args: as yeast_for; the mix must have water_g and no dough_c. Raises as yeast_for: InvalidInput, NoSolution. Source:
    as
    yeast_for."""

@typing.overload
def water_map(
    mix: Mix, desired_c: float, *, flour_c: float | None = None, room_c: float, missing: str = "raise"
) -> float: ...
@typing.overload
def water_map(
    mix: Mix,
    desired_c: float | _Numbers,
    *,
    flour_c: float | _Numbers | None = None,
    room_c: float | _Numbers,
    missing: str = "raise",
) -> _Array:
    """Water temperatures by the heat balance for many rooms, °C; like the factor rule they may lie below 0 or above
    60.

    Args: mix: Mix, whose flour_c and room_c are replaced. desired_c, flour_c, room_c: °C, numbers or arrays that
    broadcast; flour_c is room_c if not given. Returns: a number, or an array of the common shape. Raises InvalidInput.
    Source: as water_by_heat_balance."""

def water_of(day: Day, kitchen: Kitchen | None = None) -> WaterPlan:
    """The day's water, by the heat balance and by the trade's rule.

    Args: day, with [water] desired and [today] room; kitchen. Returns a WaterPlan. Raises InvalidInput; NoSolution."""

def with_packet(kitchen: Kitchen, packet: str) -> Kitchen:
    """The kitchen for a packet of yeast that it does not know: its gassing rate is less certain by packet_sd.

    Raises InvalidInput. Source: packet_sd of parameters()."""

def worktops() -> dict[str, float]:
    """Worktops and the heat they take from what stands on them over three hours, W/(m² K); 0 is as the air. Source:
    computed, k/√(παt)."""

def yeast_for(
    process: Process,
    *,
    stage: str,
    ready_h: float | datetime.timedelta,
    scale_g: float = 0.0,
    kitchen: Kitchen | None = None,
    state: State | None = None,
    threads: int = 0,
    draws: int = 512,
    tolerance: float = 0.03,
    heat_of_fermentation: bool = True,
    seen: float = ...,
    seed: int = 3,
) -> Choice:
    """Yeast in all, g as weighed, with which a stage is ready at an hour (the median of its forecast): a Choice.

    Every yeast of the mixes before the stage is changed by one factor, between 0.01 and 5 % as instant yeast. Args:
    ready_h: h of the process or a timedelta. scale_g: g that the user's scale shows, 0.1 or 1; 0 does not round. state,
    draws, heat_of_fermentation, seed, threads: as of forecast. Raises InvalidInput; NoSolution naming the hours
    within reach and the nearest choice. Source: the median of forecast as a curve over the choice; roots by TOMS
    748."""

@typing.overload
def yeast_for_rise(
    rise_percent: float,
    target_h: float | datetime.timedelta,
    *,
    dough_c: float,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float = 2.0,
    water_percent: float = 65.0,
    sugar_percent: float = 0.0,
    gluten_percent: float = 0.0,
    altitude_m: float = 0.0,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> float: ...
@typing.overload
def yeast_for_rise(
    rise_percent: float | _Numbers,
    target_h: float | datetime.timedelta | _Numbers,
    *,
    dough_c: float | _Numbers,
    yeast: typing.Literal["instant", "active_dry", "active_dry_unwetted", "compressed"] = "instant",
    salt_percent: float | _Numbers = 2.0,
    water_percent: float | _Numbers = 65.0,
    sugar_percent: float | _Numbers = 0.0,
    gluten_percent: float | _Numbers = 0.0,
    altitude_m: float | _Numbers = 0.0,
    kitchen: Kitchen | None = None,
    missing: str = "raise",
) -> _Array:
    """Yeast dose, percent of flour as weighed, with which the rise takes that long.

    Args: numbers or arrays that broadcast: rise_percent %, target_h hours or timedeltas, the others as in
    hours_to_rise.
    Returns: percent of that kind of yeast. Raises InvalidInput; NoSolution naming the hours that the smallest and
    largest
    dose give; OutsideModel. Source: bracketed root of hours_to_rise in the logarithm of the dose.

    missing: "raise", or "nan": where an input is not a number the answer is none either. What is masked is left out."""
