"""
The compiled part of libferment; use `import libferment`.
"""
from __future__ import annotations
import collections.abc
import datetime
import numpy
import numpy.typing
import typing
__all__: list[str] = ['Amounts', 'Arrhenius', 'BatchMean', 'Bowl', 'ByMethod', 'ByNetGain', 'ByWork', 'Cardinal', 'Choice', 'Cohort', 'Composition', 'ConstantQ10', 'Course', 'DailySwing', 'Dough', 'Explanation', 'Field', 'Flour', 'FlourShare', 'Forecast', 'HeatShare', 'Kitchen', 'Mix', 'MixingMethod', 'Node', 'Notice', 'Parameter', 'Percent', 'Piece', 'Place', 'Preferment', 'Process', 'SquareRoot', 'Stage', 'StageForecast', 'StageProgress', 'StageResult', 'State', 'Surroundings', 'Timeline', 'Water', 'WaterPlan', 'advance', 'air_pressure_pa', 'airs', 'bowl_materials', 'cautions', 'celsius', 'co2_solubility', 'conductivity_with_gas', 'convert_yeast', 'dough_by_factor_rule', 'dough_by_heat_balance', 'draws_of', 'drift_equivalent_h', 'drift_hours', 'drifted_c', 'equivalent_hours_for_gas', 'explain', 'fahrenheit', 'fields', 'forecast', 'friction_from_batch', 'friction_from_batches', 'gas_made', 'grams', 'heat_of_hydration', 'hours_to_rise', 'ice_by_heat_balance', 'ice_by_trade_rule', 'kelvins', 'latest_start', 'mixing_methods', 'mixing_minutes', 'net_gain_from_batch', 'net_gain_from_batches', 'net_gain_from_friction', 'net_gain_of', 'ounces', 'over_proof_ratio', 'parameters', 'reachable_rise', 'refrigerate_from', 'rise_after', 'room_for', 'same_rise', 'saturation_pressure_pa', 'series_equivalent_h', 'simulate', 'speed', 'take_out_at', 'water_activity', 'water_by_factor_rule', 'water_by_heat_balance', 'water_for', 'water_map', 'worktops', 'yeast_for', 'yeast_for_rise']
class ConstantQ10:
    """
    Factor q10^((T - 25)/10). Honest for 15 to 32 °C only.
    """
    def __init__(self, q10: typing.SupportsFloat | typing.SupportsIndex = 2.2) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def factor(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput.
        """
    def local_q10(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Local temperature coefficient, exp(10 K d ln factor/dT).
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the
        factor is 0.
        """
    @property
    def q10(self) -> float:
        ...
class Arrhenius:
    """
    Factor exp(-(Ea/R)(1/T - 1/298.15 K)), Ea in kJ/mol. Honest for 18 to 32 °C only.
    """
    def __init__(self, activation_energy_kj: typing.SupportsFloat | typing.SupportsIndex = 60.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def factor(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput.
        """
    def local_q10(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Local temperature coefficient, exp(10 K d ln factor/dT).
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the
        factor is 0.
        """
    @property
    def activation_energy_kj(self) -> float:
        ...
class SquareRoot:
    """
    Factor proportional to [(T - Tmin)(1 - exp(c(T - Tmax)))]^2 (Ratkowsky et al. 1983), 0 outside.
    """
    def __init__(self, *, t_min_c: typing.SupportsFloat | typing.SupportsIndex = -2.0, t_max_c: typing.SupportsFloat | typing.SupportsIndex = 47.0, decline_per_k: typing.SupportsFloat | typing.SupportsIndex = 0.37) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def factor(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput.
        """
    def local_q10(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Local temperature coefficient, exp(10 K d ln factor/dT).
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the
        factor is 0.
        """
    @property
    def decline_per_k(self) -> float:
        ...
    @property
    def t_max_c(self) -> float:
        ...
    @property
    def t_min_c(self) -> float:
        ...
class Cardinal:
    """
    Cardinal temperatures with inflexion (Rosso et al. 1993), 0 outside (Tmin, Tmax). The default law.
    """
    def __init__(self, *, t_min_c: typing.SupportsFloat | typing.SupportsIndex = -2.0, t_opt_c: typing.SupportsFloat | typing.SupportsIndex = 40.0, t_max_c: typing.SupportsFloat | typing.SupportsIndex = 45.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def factor(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Speed at a temperature over the speed at 25 °C; 0 where the yeast stands still.
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput.
        """
    def local_q10(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        Local temperature coefficient, exp(10 K d ln factor/dT).
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the
        factor is 0.
        """
    @property
    def t_max_c(self) -> float:
        ...
    @property
    def t_min_c(self) -> float:
        ...
    @property
    def t_opt_c(self) -> float:
        ...
class Field:
    """
    A row of the field table: name, unit, bounds, default, meaning and source of an input.
    """
    def __repr__(self) -> str:
        ...
    @property
    def high(self) -> float:
        """
        highest allowed value
        """
    @property
    def initial(self) -> float | None:
        """
        default, or None if the input must be given
        """
    @property
    def label(self) -> str:
        ...
    @property
    def low(self) -> float:
        """
        lowest allowed value
        """
    @property
    def meaning(self) -> str:
        ...
    @property
    def name(self) -> str:
        ...
    @property
    def quantity(self) -> str:
        ...
    @property
    def source(self) -> str:
        ...
    @property
    def unit(self) -> str:
        ...
class Parameter(Field):
    """
    A row of the parameter table: a field with its prior.
    """
    @property
    def prior_sd(self) -> float:
        """
        sd of the value (linear) or of its natural logarithm (logarithmic)
        """
    @property
    def scale(self) -> str:
        """
        fixed, linear or logarithmic: the coordinate it is learned in
        """
class Notice:
    """
    A caution or a limit of validity that comes with a result.
    """
    def __init__(self, code: str, severity: str, values: collections.abc.Mapping[str, typing.SupportsFloat | typing.SupportsIndex], text: str) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    @property
    def code(self) -> str:
        """
        stable, for a program
        """
    @property
    def severity(self) -> str:
        """
        info, caution or warning
        """
    @property
    def text(self) -> str:
        ...
    @property
    def values(self) -> dict[str, float]:
        ...
class Kitchen:
    """
    Every parameter of the model with its uncertainty; a value.
    
    Kitchen() is the frozen set "2026-1". Kitchen(law=ConstantQ10(2.0), gassing_rate=12) changes some;
    libferment.parameters() lists them with units, bounds, priors and sources. Raises InvalidInput.
    """
    @staticmethod
    def named(name: str) -> Kitchen:
        """
        A frozen named parameter set. Known: "2026-1". Raises InvalidInput.
        """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, *, law: Cardinal | SquareRoot | Arrhenius | ConstantQ10 | None = None, **kwargs: typing.Any) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    @property
    def activation_energy_kj(self) -> float:
        """
        activation energy of the Arrhenius law, kJ/mol
        """
    @property
    def aw_min(self) -> float:
        """
        water activity at which gas production ends
        """
    @property
    def covariance(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        n × n, in the fitted coordinates of the learnable parameters, in the order of the table
        """
    @property
    def divide_loss(self) -> float:
        """
        share of the cells' gas lost by dividing, of the gas in the cells
        """
    @property
    def fold_loss(self) -> float:
        """
        share of the cells' gas lost by a fold, of the gas in the cells
        """
    @property
    def gas_capacity(self) -> float:
        """
        CO2 the flour's own sugars can give, mmol per 100 g flour
        """
    @property
    def gas_free_density(self) -> float:
        """
        density of the dough without gas, g/mL
        """
    @property
    def gassing_rate(self) -> float:
        """
        CO2 per gram of gassing yeast dry matter and hour at the reference dough, mmol/(g·h)
        """
    @property
    def growth_increment(self) -> float:
        """
        yeast dry matter a dough can add, whatever the dose, g per 100 g flour
        """
    @property
    def growth_lag_h(self) -> float:
        """
        equivalent hours before the yeast begins to grow, h
        """
    @property
    def growth_rate(self) -> float:
        """
        specific growth rate of the yeast per equivalent hour, 1/h
        """
    @property
    def law(self) -> Cardinal | SquareRoot | Arrhenius | ConstantQ10:
        """
        the temperature law with its parameters
        """
    @property
    def mould_loss(self) -> float:
        """
        share of the cells' gas lost by moulding, of the gas in the cells
        """
    @property
    def name(self) -> str:
        ...
    @property
    def over_proof_free(self) -> float:
        """
        share of the largest volume at which dough standing free is over-proofed, of the largest volume
        """
    @property
    def over_proof_rise_percent(self) -> float:
        """
        rise at which a final proof is over-proofed, %
        """
    @property
    def over_proof_tin(self) -> float:
        """
        share of the largest volume at which dough in a tin or tub is over-proofed, of the largest volume
        """
    @property
    def q10(self) -> float:
        """
        factor per 10 K of the constant-Q10 law
        """
    @property
    def retention_limit(self) -> float:
        """
        volume over the volume just after mixing that is never passed, times the mixed volume
        """
    @property
    def retention_onset(self) -> float:
        """
        volume over the volume just after mixing up to which all gas is held, times the mixed volume
        """
    @property
    def root_decline_per_k(self) -> float:
        """
        c of the square-root law, 1/K
        """
    @property
    def root_t_max_c(self) -> float:
        """
        notional maximum of the square-root law, °C
        """
    @property
    def root_t_min_c(self) -> float:
        """
        notional minimum of the square-root law, °C
        """
    @property
    def round_loss(self) -> float:
        """
        share of the cells' gas lost by rounding, of the gas in the cells
        """
    @property
    def start_up_active_dry_h(self) -> float:
        """
        time constant of the approach to full rate, equivalent hours, h
        """
    @property
    def start_up_active_dry_unwetted_h(self) -> float:
        """
        time constant of the approach to full rate, equivalent hours, h
        """
    @property
    def start_up_compressed_h(self) -> float:
        """
        time constant of the approach to full rate, equivalent hours, h
        """
    @property
    def start_up_instant_h(self) -> float:
        """
        time constant of the approach to full rate, equivalent hours, h
        """
    @property
    def t_max_above_opt_k(self) -> float:
        """
        upper cardinal temperature less the optimum, K
        """
    @property
    def t_min_c(self) -> float:
        """
        notional temperature below which the clock stands still, °C
        """
    @property
    def t_opt_c(self) -> float:
        """
        temperature at which the clock runs fastest, °C
        """
    @property
    def void_fraction(self) -> float:
        """
        share of air in the dough just after mixing, of volume
        """
class Flour:
    """
    A flour of a mix.
    
    Args: mass_g: g. kind: bread, all_purpose, whole_wheat, medium_rye or dark_rye. moisture_percent: of its weight, the
    table's if not given. temperature_c: °C, the mix's flour_c if not given. Checked when it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, mass_g: typing.SupportsFloat | typing.SupportsIndex, kind: str = 'bread', *, moisture_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, temperature_c: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Flour:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def kind(self) -> str:
        ...
    @property
    def mass_g(self) -> float:
        ...
    @property
    def moisture_percent(self) -> float | None:
        ...
    @property
    def temperature_c(self) -> float | None:
        ...
class Water:
    """
    A portion of water of its own temperature, besides the main water.
    
    Args: mass_g: g. temperature_c: °C. wets_yeast: the yeast is wetted in it and joins with it. stands_h: h or a timedelta
    that it stands in the room first, nearing the room's temperature with the time constant cup_h (h). Checked when it is
    used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, mass_g: typing.SupportsFloat | typing.SupportsIndex, temperature_c: typing.SupportsFloat | typing.SupportsIndex, *, wets_yeast: bool = False, stands_h: float | datetime.timedelta = 0.0, cup_h: typing.SupportsFloat | typing.SupportsIndex = 0.3) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Water:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def cup_h(self) -> float:
        ...
    @property
    def mass_g(self) -> float:
        ...
    @property
    def stands_h(self) -> float:
        ...
    @property
    def temperature_c(self) -> float:
        ...
    @property
    def wets_yeast(self) -> bool:
        ...
class Preferment:
    """
    Dough of an earlier mix: its flour and water count in the formula, and it is wetted already.
    
    Args: flour_g, water_g: g. temperature_c: °C, the room's if not given. Checked when it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, flour_g: typing.SupportsFloat | typing.SupportsIndex, water_g: typing.SupportsFloat | typing.SupportsIndex, *, temperature_c: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Preferment:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def flour_g(self) -> float:
        ...
    @property
    def temperature_c(self) -> float | None:
        ...
    @property
    def water_g(self) -> float:
        ...
class Percent:
    """
    A mix in baker's percent: percent of the weight of all flour, added gluten included.
    
    water_percent counts all water, also that of milk, egg, butter and preferments; poured_water_percent only what is
    poured.
    """
    def __repr__(self) -> str:
        ...
    def to_dict(self) -> dict[str, float]:
        ...
    @property
    def active_dry_percent(self) -> float:
        ...
    @property
    def butter_percent(self) -> float:
        ...
    @property
    def compressed_percent(self) -> float:
        ...
    @property
    def dough_g(self) -> float:
        ...
    @property
    def egg_percent(self) -> float:
        ...
    @property
    def flour_g(self) -> float:
        ...
    @property
    def gluten_percent(self) -> float:
        ...
    @property
    def instant_equivalent_percent(self) -> float:
        ...
    @property
    def instant_percent(self) -> float:
        ...
    @property
    def milk_percent(self) -> float:
        ...
    @property
    def oil_percent(self) -> float:
        ...
    @property
    def poured_water_percent(self) -> float:
        ...
    @property
    def salt_percent(self) -> float:
        ...
    @property
    def sugar_percent(self) -> float:
        ...
    @property
    def water_percent(self) -> float:
        ...
class FlourShare:
    """
    One flour's share of a formula given in percent.
    
    Args: percent: of the flours, added gluten and preferments apart. kind, moisture_percent, temperature_c: as Flour.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, percent: typing.SupportsFloat | typing.SupportsIndex, kind: str = 'bread', *, moisture_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, temperature_c: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> FlourShare:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def kind(self) -> str:
        ...
    @property
    def moisture_percent(self) -> float | None:
        ...
    @property
    def percent(self) -> float:
        ...
    @property
    def temperature_c(self) -> float | None:
        ...
class Explanation:
    """
    The factors that made a time.
    """
    def __repr__(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    @property
    def factors(self) -> dict[str, float]:
        """
        name → hours times this
        """
    @property
    def hours(self) -> float:
        """
        reference_h times all factors
        """
    @property
    def reference_h(self) -> float:
        """
        hours of the same rise in the reference dough with 1 % instant yeast
        """
class Dough:
    """
    One dough at one temperature, for the functions between two moments of a process.
    
    Args as in hours_to_rise. Nothing is checked before it is used.
    """
    def __init__(self, *, dough_c: typing.SupportsFloat | typing.SupportsIndex, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex = 2.0, water_percent: typing.SupportsFloat | typing.SupportsIndex = 65.0, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __repr__(self) -> str:
        ...
    def at(self, dough_c: typing.SupportsFloat | typing.SupportsIndex) -> Dough:
        """
        the same dough at another temperature, °C
        """
    @property
    def altitude_m(self) -> float:
        ...
    @property
    def dough_c(self) -> float:
        ...
    @property
    def gluten_percent(self) -> float:
        ...
    @property
    def salt_percent(self) -> float:
        ...
    @property
    def sugar_percent(self) -> float:
        ...
    @property
    def water_percent(self) -> float:
        ...
    @property
    def yeast(self) -> str:
        ...
    @property
    def yeast_percent(self) -> float:
        ...
class Composition:
    """
    What a food is made of, as mass fractions that sum to 1, and the heat properties that follow.
    
    Args: fractions of the weight, 0 to 1; carbohydrate without fibre. The methods raise InvalidInput unless they sum to 1
    (± 0.02). Source: Choi & Okos 1986 (from memory) with the mixture rules of ASHRAE Handbook - Refrigeration; no gas, no
    freezing.
    """
    @staticmethod
    def of(ingredient: str) -> Composition:
        """
        That of an ingredient of the table: bread, whole_wheat, milk, egg, butter, ... Raises InvalidInput naming the known ones.
        """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, *, water: typing.SupportsFloat | typing.SupportsIndex = 0.0, protein: typing.SupportsFloat | typing.SupportsIndex = 0.0, fat: typing.SupportsFloat | typing.SupportsIndex = 0.0, carbohydrate: typing.SupportsFloat | typing.SupportsIndex = 0.0, fibre: typing.SupportsFloat | typing.SupportsIndex = 0.0, ash: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def conductivity(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        W/(m K), mean of the bounds along and across layers; temperature_c: °C, a number or an array. Raises InvalidInput.
        """
    def density(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        kg/m³; temperature_c: °C, a number or an array. Raises InvalidInput.
        """
    def diffusivity(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        m²/s, conductivity/(density specific heat); temperature_c: °C, a number or an array. Raises InvalidInput.
        """
    def replace(self, **kwargs: typing.Any) -> Composition:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def specific_heat(self, temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
        """
        kJ/(kg K); temperature_c: °C, a number or an array. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    def with_moisture(self, moisture_percent: typing.SupportsFloat | typing.SupportsIndex) -> Composition:
        """
        The same dry matter with another moisture, 5 to 20 %. Raises InvalidInput.
        """
    @property
    def ash(self) -> float:
        ...
    @property
    def carbohydrate(self) -> float:
        ...
    @property
    def fat(self) -> float:
        ...
    @property
    def fibre(self) -> float:
        ...
    @property
    def protein(self) -> float:
        ...
    @property
    def water(self) -> float:
        ...
class Bowl:
    """
    The bowl the dough is mixed in, with its hook or paddle.
    
    Args: material: see bowl_materials(). mass_g: g. temperature_c: °C, the room's if not given. contact: share of it that
    comes to the dough's temperature. Raises InvalidInput for an unknown material; the rest is checked when it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, material: str = 'steel', mass_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, *, temperature_c: typing.SupportsFloat | typing.SupportsIndex | None = None, contact: typing.SupportsFloat | typing.SupportsIndex = 0.8) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Bowl:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def contact(self) -> float:
        ...
    @property
    def mass_g(self) -> float:
        ...
    @property
    def material(self) -> str:
        ...
    @property
    def temperature_c(self) -> float | None:
        ...
class MixingMethod:
    """
    A way of mixing and the work it leaves in the dough as heat, kJ per kg of dough, in its usual time.
    """
    def __repr__(self) -> str:
        ...
    @property
    def high_kj_per_kg(self) -> float:
        ...
    @property
    def label(self) -> str:
        ...
    @property
    def low_kj_per_kg(self) -> float:
        ...
    @property
    def name(self) -> str:
        ...
    @property
    def source(self) -> str:
        ...
    @property
    def usual_min(self) -> float:
        ...
    @property
    def work_kj_per_kg(self) -> float:
        ...
class ByMethod:
    """
    Mixing heat from a method and its minutes; hydration and exchange with the room come on top.
    
    Args: method: see mixing_methods(). minutes: min, the usual time if not given. hydration_kj_per_kg: kJ per kg of flour,
    by its moisture if not given. Raises InvalidInput for an unknown method; the rest is checked when it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, method: str, minutes: typing.SupportsFloat | typing.SupportsIndex | None = None, *, hydration_kj_per_kg: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> ByMethod:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def hydration_kj_per_kg(self) -> float | None:
        ...
    @property
    def method(self) -> str:
        ...
    @property
    def minutes(self) -> float | None:
        ...
class ByWork:
    """
    Mixing heat from known work; hydration comes on top.
    
    Args: work_kj_per_kg: kJ per kg of dough, 1 Wh/kg is 3.6. hydration_kj_per_kg: kJ per kg of flour, by its moisture if
    not given. Checked when it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, work_kj_per_kg: typing.SupportsFloat | typing.SupportsIndex, *, hydration_kj_per_kg: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> ByWork:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def hydration_kj_per_kg(self) -> float | None:
        ...
    @property
    def work_kj_per_kg(self) -> float:
        ...
class ByNetGain:
    """
    One number from logged batches in place of work, hydration and losses.
    
    Args: net_gain_kj_per_kg: kJ per kg of dough, see net_gain_from_batches. sd_kj_per_kg: its spread from batch to batch.
    minutes: min of mixing in the room, whose exchange with it is then reckoned apart; 0: it is in the gain. Checked when
    it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, net_gain_kj_per_kg: typing.SupportsFloat | typing.SupportsIndex, sd_kj_per_kg: typing.SupportsFloat | typing.SupportsIndex = 1.0, minutes: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> ByNetGain:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def minutes(self) -> float:
        ...
    @property
    def net_gain_kj_per_kg(self) -> float:
        ...
    @property
    def sd_kj_per_kg(self) -> float:
        ...
class BatchMean:
    """
    A number found from several batches: mean, sd (None from one batch) and each.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, each: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex]) -> None:
        """
        From the numbers of the batches. Raises InvalidInput.
        """
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def __str__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> BatchMean:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        mean, sd and each.
        """
    @property
    def each(self) -> list[float]:
        ...
    @property
    def mean(self) -> float:
        ...
    @property
    def sd(self) -> float | None:
        """
        from batch to batch; None from one batch
        """
class DailySwing:
    """
    A temperature that swings over the day: mean_c + half_range_k·cos(2π(t − warmest_h)/24 h).
    
    Args: mean_c: °C. half_range_k: K, warmest less mean. warmest_h: h of the process. Checked when it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, mean_c: typing.SupportsFloat | typing.SupportsIndex, half_range_k: typing.SupportsFloat | typing.SupportsIndex, warmest_h: typing.SupportsFloat | typing.SupportsIndex = 16.0) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> DailySwing:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def half_range_k(self) -> float:
        ...
    @property
    def mean_c(self) -> float:
        ...
    @property
    def warmest_h(self) -> float:
        ...
class Course:
    """
    Measured temperatures, straight lines between; before the first and after the last as there.
    
    Args: time_h: h of the process, rising; numbers, timedeltas or an array. temperature_c: °C, one for each. Checked when
    it is used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, time_h: float | datetime.timedelta | numpy.typing.ArrayLike, temperature_c: float | numpy.typing.ArrayLike) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Course:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def temperature_c(self) -> list[float]:
        ...
    @property
    def time_h(self) -> list[float]:
        ...
class Place:
    """
    One place of the surroundings.
    
    Args: temperature_c: °C, a number, DailySwing or Course. from_h: h of the process from which on the dough is there.
    air: "room", "refrigerator", "fan_refrigerator" or "proof_box". humidity_percent: relative, for an open dough.
    heat_transfer_w_per_m2_k: in place of the air's own. is_dough: the temperature is the dough's own. Checked when it is
    used.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, temperature_c: typing.SupportsFloat | typing.SupportsIndex | DailySwing | Course, *, from_h: typing.SupportsFloat | typing.SupportsIndex | None = None, air: str = 'room', humidity_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, heat_transfer_w_per_m2_k: typing.SupportsFloat | typing.SupportsIndex | None = None, is_dough: bool = False) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Place:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def air(self) -> str:
        ...
    @property
    def from_h(self) -> float | None:
        ...
    @property
    def heat_transfer_w_per_m2_k(self) -> float | None:
        ...
    @property
    def humidity_percent(self) -> float | None:
        ...
    @property
    def is_dough(self) -> bool:
        ...
    @property
    def temperature_c(self) -> float | DailySwing | Course:
        ...
class Surroundings:
    """
    What the dough sits in over the day. A value.
    
    A function of the process's hours: it never restarts with a stage. Best made by room, refrigerator, proof_box, measured,
    daily_swing, dough, dough_measured or sequence. Args: places: list of Place, in the order of time. Raises
    InvalidInput.
    """
    @staticmethod
    def daily_swing(mean_c: typing.SupportsFloat | typing.SupportsIndex, half_range_k: typing.SupportsFloat | typing.SupportsIndex, warmest_h: typing.SupportsFloat | typing.SupportsIndex = 16.0, *, air: str = 'room', humidity_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, heat_transfer_w_per_m2_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Surroundings:
        """
        A room that is warmest at warmest_h (h of the process), half_range_k above its mean, and coldest 12 h
        later.
        
        Args: mean_c: °C. half_range_k: K. Raises InvalidInput.
        """
    @staticmethod
    def dough(dough_c: typing.SupportsFloat | typing.SupportsIndex) -> Surroundings:
        """
        A dough that is held at a temperature of its own, °C, -2 to 45. Raises InvalidInput.
        """
    @staticmethod
    def dough_measured(time_h: float | datetime.timedelta | numpy.typing.ArrayLike, temperature_c: float | numpy.typing.ArrayLike) -> Surroundings:
        """
        A dough whose own temperature was measured, by a probe in it; straight lines between the readings.
        
        Args: time_h: h of the process, rising. temperature_c: °C, one for each. Raises InvalidInput.
        """
    @staticmethod
    def measured(time_h: float | datetime.timedelta | numpy.typing.ArrayLike, temperature_c: float | numpy.typing.ArrayLike, *, air: str = 'room', humidity_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, heat_transfer_w_per_m2_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Surroundings:
        """
        Air of measured temperatures, straight lines between the readings.
        
        Args: time_h: h of the process, rising. temperature_c: °C, one for each. Raises InvalidInput.
        """
    @staticmethod
    def proof_box(air_c: typing.SupportsFloat | typing.SupportsIndex, *, humidity_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, heat_transfer_w_per_m2_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Surroundings:
        """
        A proof box with air of that temperature, °C, 0 to 60. Raises InvalidInput.
        """
    @staticmethod
    def refrigerator(air_c: typing.SupportsFloat | typing.SupportsIndex, *, fan: bool = False, humidity_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, heat_transfer_w_per_m2_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Surroundings:
        """
        A refrigerator with air of that temperature, °C, -30 to 30, still or moved by a fan. Raises InvalidInput.
        """
    @staticmethod
    def room(room_c: typing.SupportsFloat | typing.SupportsIndex, *, humidity_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, heat_transfer_w_per_m2_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Surroundings:
        """
        A room of one temperature, °C, -30 to 60. Raises InvalidInput.
        """
    @staticmethod
    def sequence(parts: collections.abc.Sequence[tuple[typing.SupportsFloat | typing.SupportsIndex, Surroundings]]) -> Surroundings:
        """
        One after the other: a list of (from_h, Surroundings), from_h in hours of the process, rising. Raises
        InvalidInput.
        """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, places: collections.abc.Sequence[Place]) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Surroundings:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def temperature_at(self, time_h: float | datetime.timedelta | numpy.typing.ArrayLike) -> typing.Any:
        """
        Temperature at hours of the process, °C; a number or an array.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def places(self) -> list[Place]:
        ...
class Node:
    """
    A piece of dough as heat sees it: capacity_j_k dT/dt = -heat_loss_w_per_k (T - air) + sources.
    
    T is the mean temperature of the dough. Source: lumped analysis with the mean of a parabolic profile, Incropera, ch. 5
    (from memory).
    """
    def __repr__(self) -> str:
        ...
    def heat_loss_w(self, mean_c: typing.SupportsFloat | typing.SupportsIndex, air_c: typing.SupportsFloat | typing.SupportsIndex) -> float:
        """
        W that leave it, vapour included, at a mean temperature in air of that temperature, °C.
        """
    @property
    def area_cm2(self) -> float:
        ...
    @property
    def capacity_j_k(self) -> float:
        ...
    @property
    def heat_loss_w_per_k(self) -> float:
        ...
    @property
    def mass_g(self) -> float:
        ...
    @property
    def time_constant_h(self) -> float:
        ...
    @property
    def volume_ml(self) -> float:
        ...
class Piece:
    """
    Dough in one piece, a ball, an oblong, or in a tub. A value.
    
    Best made by ball, oblong or tub. Args: shape: "tub", "ball" or "oblong". mass_g: g; or pieces: the dough in so many
    equal ones; or all dimensions (diameter_cm; length_cm and diameter_cm; diameter_cm and depth_cm), cm. material,
    vessel_g: of a tub, see bowl_materials(); g, 0: not counted. cover: "film", "cloth", "lid" or "open"; a lid for a tub,
    film for others if not given. worktop: "air", "wood" or "stone"; wood for a tub, air for others if not given.
    heat_loss_w_per_k: W/K of the piece, in place of what its shape and cover give. Raises InvalidInput.
    """
    @staticmethod
    def ball(mass_g: typing.SupportsFloat | typing.SupportsIndex | None = None, *, pieces: typing.SupportsFloat | typing.SupportsIndex = 1.0, diameter_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, cover: str | None = None, worktop: str | None = None, heat_loss_w_per_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Piece:
        """
        A round piece. Raises InvalidInput.
        """
    @staticmethod
    def oblong(mass_g: typing.SupportsFloat | typing.SupportsIndex | None = None, *, pieces: typing.SupportsFloat | typing.SupportsIndex = 1.0, length_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, diameter_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, cover: str | None = None, worktop: str | None = None, heat_loss_w_per_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Piece:
        """
        A long piece, four times as long as thick if neither is given. Raises InvalidInput.
        """
    @staticmethod
    def tub(mass_g: typing.SupportsFloat | typing.SupportsIndex | None = None, *, pieces: typing.SupportsFloat | typing.SupportsIndex = 1.0, diameter_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, depth_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, material: str = 'plastic', vessel_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, cover: str | None = None, worktop: str | None = None, heat_loss_w_per_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> Piece:
        """
        Dough in a round bowl or tub, half as deep as wide if neither is given. Raises InvalidInput.
        """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, shape: str = 'tub', *, mass_g: typing.SupportsFloat | typing.SupportsIndex | None = None, pieces: typing.SupportsFloat | typing.SupportsIndex = 1.0, diameter_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, length_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, depth_cm: typing.SupportsFloat | typing.SupportsIndex | None = None, material: str = 'plastic', vessel_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, cover: str | None = None, worktop: str | None = None, heat_loss_w_per_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def node(self, dough_g: typing.SupportsFloat | typing.SupportsIndex, surroundings: Surroundings, *, specific_heat_kj: typing.SupportsFloat | typing.SupportsIndex = 2.8, density_g_per_ml: typing.SupportsFloat | typing.SupportsIndex = 1.18, time_h: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> Node:
        """
        The piece as heat sees it: a Node with its heat loss and time constant.
        
        Args: dough_g: g of all of the dough. surroundings: Surroundings, read at time_h. specific_heat_kj: kJ/(kg K).
        density_g_per_ml: with the gas in it. Raises InvalidInput.
        """
    def replace(self, **kwargs: typing.Any) -> Piece:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def cover(self) -> str | None:
        ...
    @property
    def depth_cm(self) -> float | None:
        ...
    @property
    def diameter_cm(self) -> float | None:
        ...
    @property
    def heat_loss_w_per_k(self) -> float | None:
        ...
    @property
    def length_cm(self) -> float | None:
        ...
    @property
    def mass_g(self) -> float | None:
        ...
    @property
    def material(self) -> str:
        ...
    @property
    def pieces(self) -> float:
        ...
    @property
    def shape(self) -> str:
        ...
    @property
    def vessel_g(self) -> float:
        ...
    @property
    def worktop(self) -> str | None:
        ...
class Amounts:
    """
    What a dough holds in all, g: all flour (added gluten included), all water, ... A value.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, *, flour_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, water_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, salt_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, sugar_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, perishable_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, dough_g: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Amounts:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def dough_g(self) -> float:
        ...
    @property
    def flour_g(self) -> float:
        ...
    @property
    def gluten_g(self) -> float:
        ...
    @property
    def perishable_g(self) -> float:
        ...
    @property
    def salt_g(self) -> float:
        ...
    @property
    def sugar_g(self) -> float:
        ...
    @property
    def water_g(self) -> float:
        ...
class Cohort:
    """
    The yeast of one addition, with its own clock: g of gassing dry matter per 100 g of flour, equivalent hours. A
    value.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, *, yeast: str = 'instant', dose_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, mass_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, room_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, increment_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, equivalent_h: typing.SupportsFloat | typing.SupportsIndex = 0.0, growing_h: typing.SupportsFloat | typing.SupportsIndex = 0.0, past_lag: bool = False) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Cohort:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def dose_g(self) -> float:
        """
        as it came in
        """
    @property
    def equivalent_h(self) -> float:
        """
        its age
        """
    @property
    def growing_h(self) -> float:
        """
        of its growth clock
        """
    @property
    def increment_g(self) -> float:
        """
        its share of the growth increment
        """
    @property
    def mass_g(self) -> float:
        """
        when its growth clock began
        """
    @property
    def past_lag(self) -> bool:
        ...
    @property
    def room_g(self) -> float:
        """
        what it can still grow from there
        """
    @property
    def yeast(self) -> str:
        ...
class StageProgress:
    """
    How far a stage has come that is not over. A value.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, *, start_h: typing.SupportsFloat | typing.SupportsIndex = 0.0, start_c: typing.SupportsFloat | typing.SupportsIndex = 0.0, start_ratio: typing.SupportsFloat | typing.SupportsIndex = 1.0, folds_done: typing.SupportsInt | typing.SupportsIndex = 0, over_proofed_h: typing.SupportsFloat | typing.SupportsIndex | None = None, heat_made_j: typing.SupportsFloat | typing.SupportsIndex = 0.0, heat_lost_j: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> StageProgress:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def folds_done(self) -> int:
        ...
    @property
    def heat_lost_j(self) -> float:
        ...
    @property
    def heat_made_j(self) -> float:
        ...
    @property
    def over_proofed_h(self) -> float | None:
        ...
    @property
    def start_c(self) -> float:
        ...
    @property
    def start_h(self) -> float:
        ...
    @property
    def start_ratio(self) -> float:
        ...
class State:
    """
    Everything there is to know of a dough at a moment. A value; simulate makes it.
    
    time_h: h of the process. temperature_c: °C, mean of the dough. amounts: Amounts, g. cohorts: list of Cohort. co2_mmol,
    air_mmol, made_mmol: per 100 g of flour. stage: the StageProgress of a stage that is under way, or None. save and load
    keep it in a file. Raises InvalidInput for what no process makes.
    """
    @staticmethod
    def from_dict(values: dict[str, typing.Any]) -> State:
        """
        The state that to_dict gave. Raises InvalidInput if it is damaged.
        """
    @staticmethod
    def load(path: typing.Any) -> State:
        """
        Read a saved state, to the same digits. Raises InvalidInput if it is damaged, of another version, or no state.
        """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, *, time_h: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0, steps_done: typing.SupportsInt | typing.SupportsIndex = 0, amounts: Amounts = ..., heat_capacity_kj_k: typing.SupportsFloat | typing.SupportsIndex = 0.0, temperature_c: typing.SupportsFloat | typing.SupportsIndex | None = None, inside_k: typing.SupportsFloat | typing.SupportsIndex = 0.0, cohorts: collections.abc.Sequence[Cohort] = [], equivalent_h: typing.SupportsFloat | typing.SupportsIndex = 0.0, made_mmol: typing.SupportsFloat | typing.SupportsIndex = 0.0, co2_mmol: typing.SupportsFloat | typing.SupportsIndex = 0.0, air_mmol: typing.SupportsFloat | typing.SupportsIndex = 0.0, mixed_volume_ml: typing.SupportsFloat | typing.SupportsIndex = 0.0, anchor_ratio: typing.SupportsFloat | typing.SupportsIndex = 1.0, perishable_h: typing.SupportsFloat | typing.SupportsIndex = 0.0, stage: StageProgress | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def as_beginning(self) -> State:
        """
        The state as the beginning of another process. Raises InvalidInput in the middle of a stage.
        """
    def part(self, mass_g: typing.SupportsFloat | typing.SupportsIndex) -> State:
        """
        A part of the dough, g: the same dough, less of it. Raises InvalidInput if it weighs less.
        """
    def replace(self, **kwargs: typing.Any) -> State:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def save(self, path: typing.Any) -> None:
        """
        Write the state to a file, whole or not at all: JSON with a version. Raises InvalidInput if it cannot be written.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    def volume_ratio(self, kitchen: Kitchen | None = None) -> float:
        """
        Volume over the volume just after mixing. Raises InvalidInput without a dough.
        """
    @property
    def air_mmol(self) -> float:
        ...
    @property
    def altitude_m(self) -> float:
        ...
    @property
    def amounts(self) -> Amounts:
        ...
    @property
    def anchor_ratio(self) -> float:
        ...
    @property
    def co2_mmol(self) -> float:
        ...
    @property
    def cohorts(self) -> list[Cohort]:
        ...
    @property
    def equivalent_h(self) -> float:
        ...
    @property
    def heat_capacity_kj_k(self) -> float:
        ...
    @property
    def inside_k(self) -> float:
        """
        K, mean of the dough less its surface as the core feels it
        """
    @property
    def made_mmol(self) -> float:
        ...
    @property
    def mixed_volume_ml(self) -> float:
        ...
    @property
    def perishable_h(self) -> float:
        ...
    @property
    def stage(self) -> StageProgress | None:
        ...
    @property
    def steps_done(self) -> int:
        ...
    @property
    def temperature_c(self) -> float | None:
        ...
    @property
    def time_h(self) -> float:
        ...
class HeatShare:
    """
    How much one thing counts for the dough's temperature.
    """
    def __repr__(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All of it.
        """
    @property
    def dough_k_per_k(self) -> float:
        """
        K of dough per K of this; all of them sum to 1
        """
    @property
    def mass_g(self) -> float:
        """
        g of dough; 0 for bowl and room
        """
    @property
    def name(self) -> str:
        ...
    @property
    def temperature_c(self) -> float:
        """
        °C, as it comes
        """
    @property
    def water_k_per_k(self) -> float:
        """
        K by which the main water must change per K of this
        """
class WaterPlan:
    """
    How warm the main water must be, by the heat balance and by the trade's rule, and why they differ.
    
    water_c: what the main water must have, °C. pour_g, pour_c, ice_g: what to pour, how warm, and how much ice.
    factor_rule_c: the rule's water. low_c, high_c: likely dough temperature, 90 %. wetted_c, rested_c: dough before and
    after the rest.
    """
    def __repr__(self) -> str:
        ...
    def _repr_html_(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    def to_frame(self) -> typing.Any:
        """
        The shares as a pandas DataFrame.
        """
    @property
    def desired_c(self) -> float:
        """
        °C of the dough at the end of mixing
        """
    @property
    def difference_k(self) -> float:
        """
        K of water: factor_rule_c less water_c
        """
    @property
    def dough_by_rule_c(self) -> float:
        """
        °C of the dough that the rule's water would make
        """
    @property
    def dough_g(self) -> float:
        """
        g of dough
        """
    @property
    def factor_rule_c(self) -> float:
        """
        °C of water by the trade's factor rule, for the same dough
        """
    @property
    def friction_given(self) -> bool:
        ...
    @property
    def friction_k(self) -> float:
        """
        K of friction the rule was asked with
        """
    @property
    def gain_k(self) -> float:
        """
        K of dough by work, hydration and dissolving
        """
    @property
    def high_c(self) -> float:
        """
        °C, upper end
        """
    @property
    def ice_g(self) -> float:
        """
        g of ice
        """
    @property
    def k_per_kj_per_kg(self) -> float:
        """
        K of dough per kJ of mixing per kg of dough
        """
    @property
    def low_c(self) -> float:
        """
        °C, lower end of the likely dough temperatures (90 %)
        """
    @property
    def notices(self) -> list[Notice]:
        ...
    @property
    def pour_c(self) -> float:
        """
        °C of the water to pour: water_c, or the tap's if there is ice
        """
    @property
    def pour_g(self) -> float:
        """
        g to pour: water_g less the ice
        """
    @property
    def reason(self) -> str:
        ...
    @property
    def rested_c(self) -> float:
        """
        °C at the end of the rest
        """
    @property
    def shares(self) -> list[HeatShare]:
        ...
    @property
    def water_c(self) -> float:
        """
        °C the main water must have, ice in it counted; below 0 °C only with ice
        """
    @property
    def water_g(self) -> float:
        """
        g of main water, ice included
        """
    @property
    def wetted_c(self) -> float:
        """
        °C when flour and water have met, before the rest
        """
class Mix:
    """
    One addition of ingredients: what comes into the bowl, how warm, and how it is mixed. A value.
    
    Args:
        room_c: °C; whatever has no temperature of its own has the room's. Needed unless dough_c is given.
        flour_g, gluten_g, water_g, ice_g, salt_g, sugar_g, milk_g, egg_g, butter_g, oil_g, instant_g, active_dry_g,
    compressed_g: g. flour_g is bread flour; water_g the main water, whose temperature is asked for. flours, waters,
    preferments: lists of Flour, Water and Preferment besides. flour_c, water_c, tap_c, ice_c, milk_c, egg_c, butter_c: °C;
    tap_c is needed to plan ice. bowl: Bowl. mixing: the name of a method, ByMethod, ByWork or ByNetGain; kneading by hand
    if not given. heat_of_solution: salt and sugar cool as they dissolve. rest_h: h or a timedelta that flour, water, milk
    and egg rest before all else joins. heat_loss_w_per_k: W/K of the covered dough in its bowl, estimated from its weight
    if not given. doughs: list of State, doughs of other processes that are mixed in as they are. dough_c: °C measured at
    the end of mixing, in place of the heat balance's. yeast_unwetted: active dry yeast is stirred in dry. In a process it
    joins the dough that is there, and takes its rest and the minutes that its mixing says; only the first needs flour.
    Raises InvalidInput.
    """
    @staticmethod
    def from_percent(*, flour_g: typing.SupportsFloat | typing.SupportsIndex, flours: collections.abc.Sequence[FlourShare] = [], water_percent: typing.SupportsFloat | typing.SupportsIndex = 65.0, waters: collections.abc.Sequence[Water] = [], preferments: collections.abc.Sequence[Preferment] = [], salt_percent: typing.SupportsFloat | typing.SupportsIndex = 2.0, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, milk_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, egg_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, butter_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, oil_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, instant_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, active_dry_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, compressed_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, **kwargs: typing.Any) -> Mix:
        """
        A Mix from baker's percent: percent of flour_g, which is all flour, added gluten included.
        
        Args: flour_g: g. flours: list of FlourShare that make 100 %, gluten and preferments apart; bread flour if empty.
        water_percent: water poured, of which waters and preferments (lists of Water and Preferment, g) are a part. Others as
        Mix. Raises InvalidInput, also for percent of the whole dough.
        """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, *, room_c: typing.SupportsFloat | typing.SupportsIndex | None = None, flour_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, flours: collections.abc.Sequence[Flour] = [], gluten_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, water_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, waters: collections.abc.Sequence[Water] = [], ice_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, preferments: collections.abc.Sequence[Preferment] = [], salt_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, sugar_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, milk_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, egg_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, butter_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, oil_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, instant_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, active_dry_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, compressed_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, flour_c: typing.SupportsFloat | typing.SupportsIndex | None = None, water_c: typing.SupportsFloat | typing.SupportsIndex | None = None, tap_c: typing.SupportsFloat | typing.SupportsIndex | None = None, ice_c: typing.SupportsFloat | typing.SupportsIndex = -18.0, milk_c: typing.SupportsFloat | typing.SupportsIndex | None = None, egg_c: typing.SupportsFloat | typing.SupportsIndex | None = None, butter_c: typing.SupportsFloat | typing.SupportsIndex | None = None, bowl: Bowl = ..., mixing: str | ByMethod | ByWork | ByNetGain | None = None, heat_of_solution: bool = True, rest_h: float | datetime.timedelta = 0.0, heat_loss_w_per_k: typing.SupportsFloat | typing.SupportsIndex | None = None, doughs: collections.abc.Sequence[State] = [], dough_c: typing.SupportsFloat | typing.SupportsIndex | None = None, yeast_unwetted: bool = False) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Mix:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def scaled_to(self, pieces: typing.SupportsFloat | typing.SupportsIndex, piece_g: typing.SupportsFloat | typing.SupportsIndex, loss_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> Mix:
        """
        The mix for a number of pieces of a weight: every ingredient by one factor; bowl, times and temperatures
        stay.
        
        Args: piece_g: g as divided. loss_percent: dough that stays on bowl, hands and table, percent of the dough (1 to 3 is
        usual). Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    def with_water(self, plan: WaterPlan) -> Mix:
        """
        The mix with a plan's water and ice in it.
        """
    def with_yeast(self, yeast: str) -> Mix:
        """
        The mix with all its yeast as one kind, by the trade's weight ratios. Raises InvalidInput.
        """
    @property
    def active_dry_g(self) -> float:
        ...
    @property
    def bowl(self) -> Bowl:
        ...
    @property
    def butter_c(self) -> float | None:
        ...
    @property
    def butter_g(self) -> float:
        ...
    @property
    def compressed_g(self) -> float:
        ...
    @property
    def dough_c(self) -> float | None:
        ...
    @property
    def doughs(self) -> list[State]:
        ...
    @property
    def egg_c(self) -> float | None:
        ...
    @property
    def egg_g(self) -> float:
        ...
    @property
    def flour_c(self) -> float | None:
        ...
    @property
    def flour_g(self) -> float:
        ...
    @property
    def flours(self) -> list[Flour]:
        ...
    @property
    def gluten_g(self) -> float:
        ...
    @property
    def heat_loss_w_per_k(self) -> float | None:
        ...
    @property
    def heat_of_solution(self) -> bool:
        ...
    @property
    def ice_c(self) -> float:
        ...
    @property
    def ice_g(self) -> float:
        ...
    @property
    def instant_g(self) -> float:
        ...
    @property
    def milk_c(self) -> float | None:
        ...
    @property
    def milk_g(self) -> float:
        ...
    @property
    def mixing(self) -> ByMethod | ByWork | ByNetGain | None:
        ...
    @property
    def oil_g(self) -> float:
        ...
    @property
    def percent(self) -> Percent:
        """
        the mix in baker's percent
        """
    @property
    def preferments(self) -> list[Preferment]:
        ...
    @property
    def rest_h(self) -> float:
        ...
    @property
    def room_c(self) -> float | None:
        ...
    @property
    def salt_g(self) -> float:
        ...
    @property
    def sugar_g(self) -> float:
        ...
    @property
    def tap_c(self) -> float | None:
        ...
    @property
    def water_c(self) -> float | None:
        ...
    @property
    def water_g(self) -> float:
        ...
    @property
    def waters(self) -> list[Water]:
        ...
    @property
    def yeast_unwetted(self) -> bool:
        ...
class Stage:
    """
    Time passes in some surroundings until a time or a rise, then the dough is handled. A value.
    
    Args: name. piece: Piece, all of the dough in a tub if not given. surroundings: Surroundings. until_h: h from the
    stage's start, or a timedelta; or until_rise_percent: volume gained since then, %. folds_h: list of h from the stage's
    start. handling: list of "fold", "divide", "round", "mould", what ends the stage. standing: "tin" (also a tub) or
    "free", and final_proof: for the over-proof limit. acceptable_rise_percent: (lowest, highest), %. Raises
    InvalidInput.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, name: str, *, piece: Piece = ..., surroundings: Surroundings, until_h: float | datetime.timedelta | None = None, until_rise_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, folds_h: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex] = [], handling: collections.abc.Sequence[str] = [], standing: str = 'tin', final_proof: bool = False, acceptable_rise_percent: tuple[typing.SupportsFloat | typing.SupportsIndex, typing.SupportsFloat | typing.SupportsIndex] | None = None) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Stage:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def acceptable_rise_percent(self) -> tuple[float, float] | None:
        ...
    @property
    def final_proof(self) -> bool:
        ...
    @property
    def folds_h(self) -> list[float]:
        ...
    @property
    def handling(self) -> list[str]:
        ...
    @property
    def name(self) -> str:
        ...
    @property
    def piece(self) -> Piece:
        ...
    @property
    def standing(self) -> str:
        ...
    @property
    def surroundings(self) -> Surroundings:
        ...
    @property
    def until_h(self) -> float | None:
        ...
    @property
    def until_rise_percent(self) -> float | None:
        ...
class Process:
    """
    What happens to a dough, step after step. A value.
    
    Args: steps: list of Mix and Stage. start_h: h, of the hour axis: 0, or the hour of the day it begins. altitude_m: m,
    of the kitchen. Checked when it is simulated.
    """
    def __eq__(self, arg0: typing.Any) -> bool:
        ...
    def __hash__(self) -> int:
        ...
    def __init__(self, steps: collections.abc.Sequence[Mix | Stage], *, start_h: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> None:
        ...
    def __reduce__(self) -> tuple[typing.Any, typing.Any]:
        ...
    def __repr__(self) -> str:
        ...
    def replace(self, **kwargs: typing.Any) -> Process:
        """
        A copy with these attributes changed. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        """
        All attributes, with plain dicts and lists for values inside.
        """
    @property
    def altitude_m(self) -> float:
        ...
    @property
    def start_h(self) -> float:
        ...
    @property
    def steps(self) -> list[Mix | Stage]:
        ...
class StageResult:
    """
    What a stage came to. Hours are of the process; rises are those before the handling.
    
    be_back_by_h: when the dough is, or would be, over-proofed; None if not within 48 h of the stage's end.
    time_constant_h: of the piece, None where the dough's temperature is given. heat_made_j, heat_lost_j: J per piece, by
    fermentation and to the surroundings.
    """
    def __repr__(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    @property
    def be_back_by_h(self) -> float | None:
        ...
    @property
    def end_c(self) -> float:
        ...
    @property
    def end_h(self) -> float:
        ...
    @property
    def ended(self) -> bool:
        """
        False if the simulation stopped before its end.
        """
    @property
    def equivalent_h(self) -> float:
        ...
    @property
    def folds_done(self) -> int:
        ...
    @property
    def heat_lost_j(self) -> float:
        ...
    @property
    def heat_made_j(self) -> float:
        ...
    @property
    def hours(self) -> float:
        ...
    @property
    def name(self) -> str:
        ...
    @property
    def rise_percent(self) -> float:
        ...
    @property
    def start_c(self) -> float:
        ...
    @property
    def start_h(self) -> float:
        ...
    @property
    def time_constant_h(self) -> float | None:
        ...
class Timeline:
    """
    What a process did, minute by minute.
    
    Columns of one length, NumPy arrays: time_h, mean_c, core_c, surface_c, air_c, equivalent_h, co2_mmol, rise_percent,
    and stage, the place in stages. stages: list of StageResult. state: the State at the end. notices: cautions, most
    severe first.
    """
    def __repr__(self) -> str:
        ...
    def _repr_html_(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    def to_frame(self) -> typing.Any:
        """
        The columns as a pandas DataFrame, with the stages' names.
        """
    @property
    def air_c(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        °C of the surroundings; the dough's where that is given
        """
    @property
    def co2_mmol(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        CO2 made, mmol per 100 g of flour
        """
    @property
    def core_c(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        °C in the middle, an estimate: a parabolic profile that settles after each change
        """
    @property
    def equivalent_h(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        equivalent hours since the first yeast
        """
    @property
    def mean_c(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        °C, mean of the dough
        """
    @property
    def notices(self) -> list[Notice]:
        ...
    @property
    def rise_percent(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        %, since the start of the stage
        """
    @property
    def stage(self) -> numpy.typing.NDArray[numpy.int64]:
        """
        place of the stage in stages
        """
    @property
    def stages(self) -> list[StageResult]:
        ...
    @property
    def state(self) -> State:
        ...
    @property
    def surface_c(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        °C at the surface, an estimate for a settled profile
        """
    @property
    def time_h(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        h of the process
        """
class StageForecast:
    """
    When a stage will be ready, as a distribution. Hours of the process; None where it never happens, or,
    of be_back_by_h, after more than two days beyond the stage's end.
    
    ready_h: median. window_h: median hours of the lowest and highest acceptable rise. look_first_h: one dough in ten has
    the lowest acceptable rise by then. be_back_by_h: nine in ten are not over-proofed by then. over_proofed_h: the median
    one is. never_ready: share of doughs whose rise is never reached. interval_length_after_one_log_h: what one logged rise
    would leave of the 90 % interval.
    """
    def __repr__(self) -> str:
        ...
    def interval_h(self, level: typing.SupportsFloat | typing.SupportsIndex = 0.9) -> tuple[float | None, float | None]:
        """
        The hours between which it is ready with a probability. Raises InvalidInput.
        """
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    @property
    def be_back_by_h(self) -> float | None:
        ...
    @property
    def by_rise(self) -> bool:
        """
        Whether it ends by a rise; else by a time.
        """
    @property
    def interval_length_after_one_log_h(self) -> float | None:
        ...
    @property
    def look_first_h(self) -> float | None:
        ...
    @property
    def name(self) -> str:
        ...
    @property
    def never_ready(self) -> float:
        ...
    @property
    def over_proofed_h(self) -> float | None:
        ...
    @property
    def ready(self) -> numpy.typing.NDArray[numpy.float64]:
        """
        Hours of every draw, rising; inf where never.
        """
    @property
    def ready_h(self) -> float | None:
        ...
    @property
    def rise_percent(self) -> float:
        ...
    @property
    def window_h(self) -> tuple[float | None, float | None]:
        ...
class Forecast:
    """
    When each stage will be ready. forecast["bulk"] is the StageForecast of that name.
    
    stages: list of StageForecast, those not over yet. notices: cautions, most severe first.
    """
    def __getitem__(self, arg0: str) -> StageForecast:
        ...
    def __repr__(self) -> str:
        ...
    def _repr_html_(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    def to_frame(self) -> typing.Any:
        """
        The stages as a pandas DataFrame.
        """
    @property
    def notices(self) -> list[Notice]:
        ...
    @property
    def stages(self) -> list[StageForecast]:
        ...
class Choice:
    """
    What to choose so that a stage is ready at an hour, and what comes of it.
    
    what: "yeast_g", "water_c", "air_c", "start_h" or "move_h". value: the choice; of several (all, rising) the least
    yeast, the coldest, the latest. rounded: value on the user's scale; rounded_ready_h: when it is ready with that;
    rounding_min: minutes that costs. process: the Process with rounded in it. notices: of that process.
    """
    def __repr__(self) -> str:
        ...
    def _repr_html_(self) -> str:
        ...
    def to_dict(self) -> dict[str, typing.Any]:
        ...
    @property
    def all(self) -> list[float]:
        ...
    @property
    def notices(self) -> list[Notice]:
        ...
    @property
    def process(self) -> Process:
        ...
    @property
    def ready_h(self) -> float:
        ...
    @property
    def rounded(self) -> float:
        ...
    @property
    def rounded_ready_h(self) -> float:
        ...
    @property
    def rounding_min(self) -> float:
        ...
    @property
    def value(self) -> float:
        ...
    @property
    def what(self) -> str:
        ...
def advance(state: State, step: Mix | Stage, *, kitchen: Kitchen | None = None) -> State:
    """
    One step of a process: the State after it.
    
    Args: state: State, State() to begin; its time is in h. step: Mix or Stage. Raises InvalidInput, NoSolution and
    OutsideModel as simulate. Source: as simulate.
    """
def air_pressure_pa(altitude_m: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    Air pressure, Pa, at an altitude in m. Any shape in, the same shape out.
    
    Raises InvalidInput outside -500 to 6000 m. Source: ISO 2533 standard atmosphere.
    """
def airs() -> dict[str, float]:
    """
    Kinds of air and the heat they take from a matt surface, W/(m² K), radiation included. Source: computed, Incropera's correlations (from memory).
    """
def bowl_materials() -> dict[str, float]:
    """
    Materials of bowls and their specific heats, kJ/(kg K). Source: Incropera, Perry's (from memory).
    """
def cautions(*, dough_c: typing.SupportsFloat | typing.SupportsIndex | None = None, yeast_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, water_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, sugar_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, gluten_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, altitude_m: typing.SupportsFloat | typing.SupportsIndex | None = None, rise_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, water_c: typing.SupportsFloat | typing.SupportsIndex | None = None, refrigerator_c: typing.SupportsFloat | typing.SupportsIndex | None = None, perishable_h: typing.SupportsFloat | typing.SupportsIndex | None = None, kitchen: Kitchen | None = None) -> list[Notice]:
    """
    The notices that belong to plain numbers, most severe first; an empty list if there is nothing to say.
    
    Args: numbers, all optional: °C, percent of flour, m, h. perishable_h: hours a dough with egg, milk or other perishable
    food is held at dough_c. Raises InvalidInput outside the field table, but answers any finite water_c.
    Source: limits of the trade (common practice) and of the laws; food safety defers to the local food code.
    """
def celsius(fahrenheit: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    A temperature point in °F as °C: (F - 32)/1.8.
    
    Args: fahrenheit: a number or an array, °F, at or above -459.67.
    Returns: °C. Raises InvalidInput if not finite or below absolute zero. Source: definition of the scales.
    """
def co2_solubility(temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    Solubility of CO2 in water, mol/(kg atm). Any shape in, the same shape out.
    
    Raises InvalidInput. Source: Weiss 1974, Mar Chem 2:203.
    """
def conductivity_with_gas(conductivity_w_per_m_k: typing.SupportsFloat | typing.SupportsIndex, gas_fraction: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Conductivity of dough with gas cells, W/(m K): Maxwell and Eucken's rule.
    
    Args: numbers: W/(m K) of the dough without gas; share of gas in the volume, 0 to 1. Raises InvalidInput.
    Source: Maxwell and Eucken's rule as in ASHRAE Handbook - Refrigeration (from memory), gas 0.026 W/(m K).
    """
def convert_yeast(yeast_percent: typing.SupportsFloat | typing.SupportsIndex, *, from_yeast: str, to_yeast: str) -> float:
    """
    The dose of another kind of yeast that gasses alike, percent of flour.
    
    Args: yeast_percent: number; kinds: instant, active_dry, active_dry_unwetted, compressed. Raises InvalidInput.
    Source: trade weight ratios compressed 1 : active dry 0.40 : instant 0.33.
    """
def dough_by_factor_rule(water_c: typing.SupportsFloat | typing.SupportsIndex, *, flour_c: typing.SupportsFloat | typing.SupportsIndex, room_c: typing.SupportsFloat | typing.SupportsIndex, friction_k: typing.SupportsFloat | typing.SupportsIndex, preferment_c: typing.SupportsFloat | typing.SupportsIndex | None = None) -> float:
    """
    Dough temperature the factor rule expects, °C: the mean of the known temperatures and friction.
    
    Args: numbers, °C; friction_k in K. Raises InvalidInput. Source: trade textbooks.
    """
def dough_by_heat_balance(mix: Mix) -> float:
    """
    Dough temperature at the end of mixing, °C: the balance forward; the mix's water_c must be given.
    
    Raises InvalidInput; OutsideModel if ice would not melt or the dough be outside -2 to 45 °C. Source: as
    water_by_heat_balance.
    """
def draws_of(kitchen: Kitchen | None = None, *, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, seed: typing.SupportsInt | typing.SupportsIndex = 3) -> list[Kitchen]:
    """
    The kitchens that a forecast draws: a list of Kitchen, the same every time.
    
    Args: bake_sd: share, sd of ln gassing rate from bake to bake. Raises InvalidInput. Source: Sobol's sequence, Joe & Kuo
    2008.
    """
def drift_equivalent_h(time_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, start_c: float | numpy.typing.ArrayLike, surroundings_c: float | numpy.typing.ArrayLike, time_constant_h: float | datetime.timedelta | numpy.typing.ArrayLike, kitchen: Kitchen | None = None) -> typing.Any:
    """
    Equivalent hours of temperature that pass in a drifting dough: the integral of the kitchen's temperature
    factor, exactly.
    
    Args: numbers or arrays that broadcast: hours or timedeltas, °C. Salt and sugar multiply the result as they do speed().
    Returns: equivalent hours. Raises InvalidInput. Source: closed form by partial fractions for the cardinal law (Rosso et
    al. 1993), Gauss-Legendre quadrature to rounding for the others.
    """
def drift_hours(equivalent_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, start_c: float | numpy.typing.ArrayLike, surroundings_c: float | numpy.typing.ArrayLike, time_constant_h: float | datetime.timedelta | numpy.typing.ArrayLike, unreachable: str = 'raise', kitchen: Kitchen | None = None) -> typing.Any:
    """
    Hours until equivalent hours have passed in a drifting dough; the inverse of drift_equivalent_h.
    
    Args: numbers or arrays that broadcast: equivalent hours, °C, hours or timedeltas. unreachable: "raise", or "inf" for
    maps. Raises InvalidInput; NoSolution where the clock stops before, naming what it reaches. Source: as
    drift_equivalent_h, by Halley's method.
    """
def drifted_c(start_c: float | numpy.typing.ArrayLike, time_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, surroundings_c: float | numpy.typing.ArrayLike, time_constant_h: float | datetime.timedelta | numpy.typing.ArrayLike) -> typing.Any:
    """
    Temperature of a dough that relaxes to its surroundings, °C: surroundings + (start - surroundings)
    exp(-t/time_constant).
    
    Args: numbers or arrays that broadcast: °C; times in hours or timedeltas. Raises InvalidInput. Source: Newton's law of
    cooling.
    """
def equivalent_hours_for_gas(co2_mmol: typing.SupportsFloat | typing.SupportsIndex, *, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> float:
    """
    Equivalent hours until that much CO2 is made, the inverse of gas_made.
    
    Args: numbers; co2_mmol in mmol per 100 g flour. Raises InvalidInput; NoSolution naming the most the sugars give.
    Source: closed form with Lambert's W before the yeast grows, a logarithm after.
    """
def explain(rise_percent: typing.SupportsFloat | typing.SupportsIndex, *, dough_c: typing.SupportsFloat | typing.SupportsIndex, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex = 2.0, water_percent: typing.SupportsFloat | typing.SupportsIndex = 65.0, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> Explanation:
    """
    The factors that made a time: yeast ×, temperature ×, salt ×, water ×, sugar ×, gluten ×, altitude ×.
    
    Args: numbers, as in hours_to_rise. Walks from the reference dough (25 °C, 1 % instant yeast, 2 % salt, 65 % water, no
    sugar, sea level) to this one, one change at a time; the product is exact, each factor depends a little on the order.
    Raises as hours_to_rise. Source: ratios of hours_to_rise.
    """
def fahrenheit(celsius: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    A temperature point in °C as °F: 1.8 C + 32.
    
    Args: celsius: a number or an array, °C, at or above -273.15.
    Returns: °F. Raises InvalidInput if not finite or below absolute zero. Source: definition of the scales.
    """
def fields() -> list[Field]:
    """
    All inputs: the field table.
    """
def forecast(process: Process, kitchen: Kitchen | None = None, state: State | None = None, *, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, heat_of_fermentation: bool = True, seed: typing.SupportsInt | typing.SupportsIndex = 3, threads: typing.SupportsInt | typing.SupportsIndex = 0) -> Forecast:
    """
    When each stage will be ready, with a window: a Forecast, the same every time.
    
    Args: process: Process. kitchen: its covariance is the uncertainty, the prior's if it has none. state: to forecast from
    the middle of the day. draws: kitchens of Sobol's sequence. bake_sd: spread of ln gassing rate from bake to bake. seed:
    another one gives another set of draws. threads: that share the draws, 0 for those of the machine; the answer is the
    same. In every draw each stage ends when it is ready, so one stage's uncertainty carries into the next. Acceptable
    rises that a stage does not give are 75 to 150 % of its rise, 80 to 133 % for a final proof (common practice). Warmer
    dough is ready some 7 to 10 % per °C sooner near dough temperature; but after a bulk of a fixed time a warmer room can
    make the final proof longer: more of the sugars is spent. Times are in h. Raises as simulate for the kitchen's central
    values: InvalidInput, OutsideModel. Source: model of this library; Joe & Kuo 2008.
    """
def friction_from_batch(*, dough_c: typing.SupportsFloat | typing.SupportsIndex, flour_c: typing.SupportsFloat | typing.SupportsIndex, room_c: typing.SupportsFloat | typing.SupportsIndex, water_c: typing.SupportsFloat | typing.SupportsIndex, preferment_c: typing.SupportsFloat | typing.SupportsIndex | None = None) -> float:
    """
    Friction of a batch, K: n dough - flour - room - water (- preferment).
    
    Args: numbers, °C, measured at one batch; use the result for the next batch of the same size on the same mixer.
    Raises InvalidInput, also if the friction lies outside -10 to 25 K. Source: trade textbooks.
    """
def friction_from_batches(*, dough_c: float | numpy.typing.ArrayLike, flour_c: float | numpy.typing.ArrayLike, room_c: float | numpy.typing.ArrayLike, water_c: float | numpy.typing.ArrayLike, preferment_c: float | numpy.typing.ArrayLike | None = None) -> BatchMean:
    """
    Friction from several batches on one mixer, K: their mean, spread and each one.
    
    Args: °C, arrays with one value for each batch, or numbers for all. Returns: BatchMean.
    Raises InvalidInput, also if a friction lies outside -10 to 25 K. Source: trade textbooks.
    """
def gas_made(equivalent_h: typing.SupportsFloat | typing.SupportsIndex, *, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> float:
    """
    CO2 made after some equivalent hours, mmol per 100 g flour.
    
    Args: numbers; equivalent_h in hours at the reference dough (25 °C, 2 % salt, 65 % water, no sugar). Raises
    InvalidInput. Source: model of this library: start-up, growth by a fixed increment after a lag, exhaustion of the
    sugars.
    """
def grams(ounces: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    A weight in avoirdupois ounces as grams: 28.349523125 g each.
    
    Args: ounces: a number or an array, at or above 0. Returns: g. Raises InvalidInput. Source: definition (international
    pound, 1959).
    """
def heat_of_hydration(moisture_percent: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Heat that flour gives off when it is wetted, kJ per kg of flour as weighed, ± 40 %.
    
    Args: moisture_percent: a number, 5 to 20 % of the flour's weight. Raises InvalidInput.
    Source: fit of this project through 15.1 kJ/kg at 11.5 % (baking trade dictionary) and 105 kJ/kg of dry matter (from
    memory).
    """
def hours_to_rise(rise_percent: float | numpy.typing.ArrayLike, *, dough_c: float | numpy.typing.ArrayLike, yeast_percent: float | numpy.typing.ArrayLike, yeast: str = 'instant', salt_percent: float | numpy.typing.ArrayLike = 2.0, water_percent: float | numpy.typing.ArrayLike = 65.0, sugar_percent: float | numpy.typing.ArrayLike = 0.0, gluten_percent: float | numpy.typing.ArrayLike = 0.0, altitude_m: float | numpy.typing.ArrayLike = 0.0, kitchen: Kitchen | None = None, unreachable: str = 'raise') -> typing.Any:
    """
    Hours from the end of mixing until the dough has gained that much of its volume, at a constant dough
    temperature.
    
    Args: numbers or arrays that broadcast: rise_percent % of the volume just after mixing (doubled is 100); dough_c the
    dough's own temperature in °C, not the room's; yeast_percent as weighed, and the others, percent of flour weight;
    altitude_m in m. yeast: instant, active_dry (wetted first), active_dry_unwetted or compressed. unreachable: "raise", or
    "inf" for maps. Returns: hours, a number or an array of the common shape. Raises InvalidInput; NoSolution for a rise
    the dough cannot hold or make, naming the reachable rise; OutsideModel where the yeast stands still. For arrays the
    message names the first index and the count. Source: clock, gas and retention of the model in closed form (Rosso et al.
    1993; Weiss 1974; Buck 1996; ISO 2533).
    """
def ice_by_heat_balance(water_g: typing.SupportsFloat | typing.SupportsIndex, *, tap_c: typing.SupportsFloat | typing.SupportsIndex, wanted_c: typing.SupportsFloat | typing.SupportsIndex, ice_c: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> float:
    """
    Ice in place of that much of the water, g, from the enthalpies of ice and water.
    
    Args: numbers; water_g all of the water, g; temperatures °C; wanted_c may lie below 0. More than water_g: not enough
    even as ice. Raises InvalidInput; NoSolution if wanted is warmer than the tap. Source: enthalpy balance, c 4.186 and
    2.05 kJ/(kg K), 333.55 kJ/kg.
    """
def ice_by_trade_rule(water_g: typing.SupportsFloat | typing.SupportsIndex, *, tap_c: typing.SupportsFloat | typing.SupportsIndex, wanted_c: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Ice at 0 °C to put in place of that much of the water, g: water (tap - wanted)/(tap + 80).
    
    Args: numbers; water_g all of the water, g; temperatures °C. Raises InvalidInput; NoSolution if wanted is warmer than
    the tap. Source: trade textbooks, in °F (tap - wanted)/(tap + 112).
    """
def kelvins(fahrenheit_degrees: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    A *difference* of temperatures in Fahrenheit degrees as K: F/1.8.
    
    Args: fahrenheit_degrees: a number or an array. 20 °F of friction are 11.1 K.
    Returns: K. Raises InvalidInput if not finite. Source: definition of the scales.
    """
def latest_start(process: Process, *, stage: str, ready_h: float | datetime.timedelta, kitchen: Kitchen | None = None, state: State | None = None, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, heat_of_fermentation: bool = True, seed: typing.SupportsInt | typing.SupportsIndex = 3, threads: typing.SupportsInt | typing.SupportsIndex = 0) -> Choice:
    """
    Latest hour at which the process may begin, h, for a stage to be ready at an hour: a Choice.
    
    Args: as yeast_for, without a state. Raises as yeast_for: InvalidInput, NoSolution. Source: as yeast_for.
    """
def mixing_methods() -> list[MixingMethod]:
    """
    All ways of mixing, with the work each leaves in the dough, kJ/kg, and where it is from.
    """
def mixing_minutes(mixing: ByMethod | ByWork | ByNetGain) -> float:
    """
    Minutes of mixing in the room that a way of mixing says; 0 if it says none.
    
    Args: mixing: ByMethod, ByWork or ByNetGain. Raises InvalidInput. Source: usual times are common practice.
    """
def net_gain_from_batch(mix: Mix, dough_c: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Net mixing gain of a batch, kJ per kg of dough: work, hydration and losses together.
    
    Args: mix: Mix with the water_c it was mixed with; of its mixing only the minutes are read: with a method, or a net
    gain with minutes, exchange with the room is reckoned apart. dough_c: °C at the end of mixing. Raises InvalidInput,
    also if the gain lies outside -30 to 120. Source: enthalpy balance.
    """
def net_gain_from_batches(mixes: collections.abc.Sequence[Mix], dough_c: collections.abc.Sequence[typing.SupportsFloat | typing.SupportsIndex]) -> BatchMean:
    """
    Net mixing gain from several batches on one mixer, kJ per kg: a BatchMean; for a mix take net_gain_of of it.
    
    Args: mixes: list of Mix with their water_c. dough_c: list of °C. Raises InvalidInput, naming the batch. Source:
    enthalpy balance.
    """
def net_gain_from_friction(mix: Mix, friction_k: typing.SupportsFloat | typing.SupportsIndex, desired_c: typing.SupportsFloat | typing.SupportsIndex, *, measured_at_c: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Net mixing gain worth a friction, kJ per kg of dough.
    
    Args: friction_k: K, found for such a mix, for a dough of desired_c (°C), in a room where flour, room and bowl had
    measured_at_c (°C). Raises InvalidInput. Source: the rule and the balance agree there.
    """
def net_gain_of(batches: BatchMean, minutes: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> ByNetGain:
    """
    Mixing heat as a Mix takes it, from batches: their mean, and the spread that the next batch will show.
    
    Args: batches: BatchMean of net_gain_from_batches. minutes: min of mixing that the batches' mixing said, 0 if none.
    Returns: ByNetGain, kJ/kg. Few batches tell little of their spread: it is drawn toward 1 kJ/kg with the weight of four
    batches. Raises InvalidInput. Source: engineering estimate of the usual spread, no source.
    """
def ounces(grams: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    A weight in grams as avoirdupois ounces.
    
    Args: grams: a number or an array, at or above 0. Returns: oz. Raises InvalidInput. Source: definition (international
    pound, 1959).
    """
def over_proof_ratio(dough: Dough, *, standing: str, final_proof: bool, start_ratio: typing.SupportsFloat | typing.SupportsIndex = 1.0, kitchen: Kitchen | None = None) -> float:
    """
    Volume over mixed volume above which a dough is over-proofed, standing in a "tin" (or tub) or "free". Common practice, no source; the shares are parameters of the kitchen. Raises InvalidInput.
    """
def parameters() -> list[Parameter]:
    """
    All parameters of a kitchen: the parameter table.
    """
def reachable_rise(*, dough_c: typing.SupportsFloat | typing.SupportsIndex, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex = 2.0, water_percent: typing.SupportsFloat | typing.SupportsIndex = 65.0, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> float:
    """
    The rise a dough nears but never reaches, percent: what it can hold, or what its sugars can make.
    
    Args: numbers, as in hours_to_rise. Raises InvalidInput. Source: as hours_to_rise.
    """
def refrigerate_from(process: Process, *, stage: str, ready_h: float | datetime.timedelta, moved: str | None = None, refrigerator: Surroundings, kitchen: Kitchen | None = None, state: State | None = None, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, heat_of_fermentation: bool = True, seed: typing.SupportsInt | typing.SupportsIndex = 3, threads: typing.SupportsInt | typing.SupportsIndex = 0) -> Choice:
    """
    Latest hour, h, at which a dough goes into the refrigerator, to its stage's end, for a stage to be ready at an
    hour: a Choice.
    
    Args: as yeast_for. moved: the stage whose dough is moved; the same stage if not given. refrigerator: Surroundings, of
    any kind. Raises as yeast_for: InvalidInput, NoSolution. Source: as yeast_for.
    """
def rise_after(time_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, dough_c: float | numpy.typing.ArrayLike, yeast_percent: float | numpy.typing.ArrayLike, yeast: str = 'instant', salt_percent: float | numpy.typing.ArrayLike = 2.0, water_percent: float | numpy.typing.ArrayLike = 65.0, sugar_percent: float | numpy.typing.ArrayLike = 0.0, gluten_percent: float | numpy.typing.ArrayLike = 0.0, altitude_m: float | numpy.typing.ArrayLike = 0.0, kitchen: Kitchen | None = None) -> typing.Any:
    """
    Rise in percent after some hours at a constant dough temperature, the inverse of hours_to_rise.
    
    Args: time_h: hours or a timedelta, a number or an array; the others as in hours_to_rise.
    Returns: percent, a number or an array of the common shape; 0 at 0 h. Raises InvalidInput.
    Source: as hours_to_rise.
    """
def room_for(process: Process, *, stage: str, ready_h: float | datetime.timedelta, air: str = 'room', kitchen: Kitchen | None = None, state: State | None = None, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, heat_of_fermentation: bool = True, seed: typing.SupportsInt | typing.SupportsIndex = 3, threads: typing.SupportsInt | typing.SupportsIndex = 0) -> Choice:
    """
    Temperature of the room, °C, with which a stage is ready at an hour: a Choice. Of all steady places with such
    air up to the stage.
    
    After a bulk of a fixed time a warmer room can make the final proof longer: then several temperatures may be on time,
    and all are named. Args: as yeast_for. air: "room", "proof_box", "refrigerator" or "fan_refrigerator". Raises as
    yeast_for: InvalidInput, NoSolution. Source: as yeast_for.
    """
def same_rise(time_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, from_c: float | numpy.typing.ArrayLike, to_c: float | numpy.typing.ArrayLike, kitchen: Kitchen | None = None) -> typing.Any:
    """
    A known time at another dough temperature, hours: "2 h at 24 °C; mine is 18 °C".
    
    Args: numbers or arrays that broadcast: time_h in hours or a timedelta, from_c and to_c dough temperatures in °C.
    The yeast's strength and the formula cancel as long as they are the same; the dough makes the same gas, and a colder one
    stands a little lower at it. Raises InvalidInput; OutsideModel where the yeast stands still.
    Source: ratio of the kitchen's temperature law.
    """
def saturation_pressure_pa(temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    Saturation vapour pressure over water, Pa. Any shape in, the same shape out.
    
    Raises InvalidInput. Source: Buck 1996.
    """
def series_equivalent_h(time_h: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], temperature_c: typing.Annotated[numpy.typing.ArrayLike, numpy.float64], *, kitchen: Kitchen | None = None) -> numpy.typing.NDArray[numpy.float64]:
    """
    Equivalent hours over a measured temperature that is linear between readings, from the first reading to each.
    
    Args: time_h: hours, rising; temperature_c: °C, one for each; arrays of one dimension with at least two readings.
    Returns: equivalent hours, an array. Raises InvalidInput. Source: exact antiderivative of the cardinal law; quadrature
    for the others.
    """
def simulate(process: Process, kitchen: Kitchen | None = None, state: State | None = None, *, heat_of_fermentation: bool = True, every_min: typing.SupportsFloat | typing.SupportsIndex = 1.0, be_back_by: bool = True, stop_h: float | datetime.timedelta | None = None, tolerance: typing.SupportsFloat | typing.SupportsIndex = 1e-05, progress: collections.abc.Callable[[int, int, float], None] | None = None) -> Timeline:
    """
    Run a process through, or what a state has left of it: a Timeline.
    
    Args: process: Process. state: State to go on from, also in the middle of a stage. every_min: grid of the timeline,
    min; 0: starts and ends alone. be_back_by: follow each stage beyond its end to the over-proofed dough. stop_h: h of the
    process at which to stop. tolerance: of the speeds along a step; the result is far closer. progress: called before each
    step with its place, the number of steps and the hour; what it raises ends the simulation. Raises InvalidInput;
    NoSolution for a rise that is never reached, with what it reaches and when; OutsideModel if the dough leaves -2 to 45
    °C, with the hour. Source: one node of heat, the clock and the gas of this library's model; 50.7 kJ per mol CO2.
    """
def speed(*, dough_c: float | numpy.typing.ArrayLike, salt_percent: float | numpy.typing.ArrayLike = 2.0, water_percent: float | numpy.typing.ArrayLike = 65.0, sugar_percent: float | numpy.typing.ArrayLike = 0.0, kitchen: Kitchen | None = None) -> typing.Any:
    """
    Equivalent hours per hour: temperature factor × solute factor, 1 at the reference dough.
    
    Args: numbers or arrays that broadcast: dough_c in °C, the rest percent of flour weight.
    Returns: a number, or an array of the common shape; 0 where the yeast stands still.
    Raises InvalidInput. Source: the kitchen's temperature law; linear in water activity.
    """
def take_out_at(process: Process, *, stage: str, ready_h: float | datetime.timedelta, moved: str | None = None, into: Surroundings, kitchen: Kitchen | None = None, state: State | None = None, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, heat_of_fermentation: bool = True, seed: typing.SupportsInt | typing.SupportsIndex = 3, threads: typing.SupportsInt | typing.SupportsIndex = 0) -> Choice:
    """
    Latest hour, h, at which a dough comes out of its stage's refrigerator into a room, for a stage to be ready at
    an hour: a Choice.
    
    Args: as refrigerate_from. into: Surroundings in which it stays to the stage's end. Raises as yeast_for: InvalidInput,
    NoSolution. Source: as yeast_for.
    """
def water_activity(*, salt_percent: typing.SupportsFloat | typing.SupportsIndex, water_percent: typing.SupportsFloat | typing.SupportsIndex, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> float:
    """
    Water activity of the dough's water, exp(-0.0180153 osmolality), a ratio.
    
    Args: percent of flour weight, numbers. Raises InvalidInput.
    Source: ideal dilute solution with an osmotic coefficient of 0.92; within 0.005 of Robinson & Stokes 1959 (from
    memory).
    """
def water_by_factor_rule(desired_c: float | numpy.typing.ArrayLike, *, flour_c: float | numpy.typing.ArrayLike, room_c: float | numpy.typing.ArrayLike, friction_k: float | numpy.typing.ArrayLike, preferment_c: float | numpy.typing.ArrayLike | None = None) -> typing.Any:
    """
    Water temperature by the trade's factor rule, °C: n desired - flour - room (- preferment) - friction.
    
    Args: numbers or arrays that broadcast, °C; friction_k in K, a *difference* of temperatures; n = 3, or 4 with a
    preferment. Returns: a number, or an array of the common shape; may lie below 0 or above 60 °C: see
    cautions(water_c=...). Raises InvalidInput. Source: trade textbooks.
    """
def water_by_heat_balance(mix: Mix, desired_c: typing.SupportsFloat | typing.SupportsIndex, *, friction_k: typing.SupportsFloat | typing.SupportsIndex | None = None) -> WaterPlan:
    """
    Water temperature for a dough temperature, by the heat balance, with the factor rule beside it: a WaterPlan.
    
    Args: mix: Mix, its main water's temperature is not read. desired_c: °C at the end of mixing. friction_k: K, for the
    factor rule; alone; if not given, what the balance itself needs where everything is at 21 °C. For the balance a
    friction counts by net_gain_from_friction. Raises InvalidInput; NoSolution naming the reachable dough temperatures.
    Source: enthalpy balance with constant specific heats.
    """
def water_for(process: Process, *, stage: str, ready_h: float | datetime.timedelta, kitchen: Kitchen | None = None, state: State | None = None, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, heat_of_fermentation: bool = True, seed: typing.SupportsInt | typing.SupportsIndex = 3, threads: typing.SupportsInt | typing.SupportsIndex = 0) -> Choice:
    """
    Temperature of the next mix's main water, °C, with which a stage is ready at an hour: a Choice.
    
    Args: as yeast_for; the mix must have water_g and no dough_c. Raises as yeast_for: InvalidInput, NoSolution. Source: as
    yeast_for.
    """
def water_map(mix: Mix, desired_c: float | numpy.typing.ArrayLike, *, flour_c: float | numpy.typing.ArrayLike | None = None, room_c: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    Water temperatures by the heat balance for many rooms, °C; like the factor rule they may lie below 0 or above
    60.
    
    Args: mix: Mix, whose flour_c and room_c are replaced. desired_c, flour_c, room_c: °C, numbers or arrays that
    broadcast; flour_c is room_c if not given. Returns: a number, or an array of the common shape. Raises InvalidInput.
    Source: as water_by_heat_balance.
    """
def worktops() -> dict[str, float]:
    """
    Worktops and the heat they take from what stands on them over three hours, W/(m² K); 0 is as the air. Source: computed, k/√(παt).
    """
def yeast_for(process: Process, *, stage: str, ready_h: float | datetime.timedelta, scale_g: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None, state: State | None = None, draws: typing.SupportsInt | typing.SupportsIndex = 512, bake_sd: typing.SupportsFloat | typing.SupportsIndex = 0.12, heat_of_fermentation: bool = True, seed: typing.SupportsInt | typing.SupportsIndex = 3, threads: typing.SupportsInt | typing.SupportsIndex = 0) -> Choice:
    """
    Yeast in all, g as weighed, with which a stage is ready at an hour (the median of its forecast): a Choice.
    
    Every yeast of the mixes before the stage is changed by one factor, between 0.01 and 5 % as instant yeast. Args:
    ready_h: h of the process or a timedelta. scale_g: g that the user's scale shows, 0.1 or 1; 0 does not round. state,
    draws, bake_sd, heat_of_fermentation, seed, threads: as of forecast. Raises InvalidInput; NoSolution naming the hours
    within reach and the nearest choice. Source: the median of forecast as a curve over the choice; roots by TOMS 748.
    """
def yeast_for_rise(rise_percent: typing.SupportsFloat | typing.SupportsIndex, target_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, dough_c: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex = 2.0, water_percent: typing.SupportsFloat | typing.SupportsIndex = 65.0, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> typing.Any:
    """
    Yeast dose, percent of flour as weighed, with which the rise takes that long.
    
    Args: rise_percent %, target_h hours or a timedelta (a number or an array), the others numbers as in hours_to_rise.
    Returns: percent of that kind of yeast. Raises InvalidInput; NoSolution naming the hours that the smallest and largest
    dose give; OutsideModel. Source: bracketed root of hours_to_rise in the logarithm of the dose.
    """
__version__: str = '0.1.0'
