"""
The compiled part of libferment; use `import libferment`.
"""
from __future__ import annotations
import collections.abc
import datetime
import numpy
import numpy.typing
import typing
__all__: list[str] = ['Arrhenius', 'Cardinal', 'ConstantQ10', 'Dough', 'DoughState', 'Explanation', 'Field', 'Kitchen', 'Notice', 'Parameter', 'SquareRoot', 'air_pressure_pa', 'celsius', 'check', 'co2_solubility', 'convert_yeast', 'dough_by_factor_rule', 'equivalent_hours_for_gas', 'explain', 'fahrenheit', 'fields', 'friction_from_batch', 'gas_made', 'handled', 'hours_to_rise', 'hours_until', 'ice_by_trade_rule', 'kelvins', 'mixed', 'over_proof_ratio', 'parameters', 'reachable_rise', 'rested', 'rise_after', 'same_rise', 'saturation_pressure_pa', 'speed', 'volume_ratio', 'water_activity', 'water_by_factor_rule', 'yeast_for_rise']
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
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the factor is 0.
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
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the factor is 0.
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
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the factor is 0.
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
        
        Args: temperature_c: °C, a number or an array. Returns: the same shape. Raises InvalidInput; OutsideModel where the factor is 0.
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
class DoughState:
    """
    A dough between two moments of one process, per 100 g of flour. Make one with mixed().
    """
    def __repr__(self) -> str:
        ...
    @property
    def air_mmol(self) -> float:
        """
        air in the cells, mmol
        """
    @property
    def anchor_ratio(self) -> float:
        """
        volume over mixed volume at the last handling
        """
    @property
    def co2_mmol(self) -> float:
        """
        CO2 in cells and water as if nothing leaked since the last handling, mmol
        """
    @property
    def equivalent_h(self) -> float:
        """
        equivalent hours since the yeast met flour and water
        """
    @property
    def mixed_volume_ml(self) -> float:
        """
        volume just after mixing, mL
        """
def air_pressure_pa(altitude_m: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    Air pressure, Pa, at an altitude in m. Any shape in, the same shape out.
    
    Raises InvalidInput outside -500 to 6000 m. Source: ISO 2533 standard atmosphere.
    """
def celsius(fahrenheit: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    A temperature point in °F as °C: (F - 32)/1.8.
    
    Args: fahrenheit: a number or an array, °F, at or above -459.67.
    Returns: °C. Raises InvalidInput if not finite or below absolute zero. Source: definition of the scales.
    """
def check(*, dough_c: typing.SupportsFloat | typing.SupportsIndex | None = None, yeast_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, water_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, sugar_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, gluten_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, altitude_m: typing.SupportsFloat | typing.SupportsIndex | None = None, rise_percent: typing.SupportsFloat | typing.SupportsIndex | None = None, water_c: typing.SupportsFloat | typing.SupportsIndex | None = None, refrigerator_c: typing.SupportsFloat | typing.SupportsIndex | None = None, perishable_h: typing.SupportsFloat | typing.SupportsIndex | None = None, kitchen: Kitchen | None = None) -> list[Notice]:
    """
    The notices that belong to plain numbers, most severe first; an empty list if there is nothing to say.
    
    Args: numbers, all optional: °C, percent of flour, m, h. perishable_h: hours a dough with egg, milk or other perishable
    food is held at dough_c. Raises InvalidInput outside the field table, but answers any finite water_c.
    Source: limits of the trade (common practice) and of the laws; food safety defers to the local food code.
    """
def co2_solubility(temperature_c: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    Solubility of CO2 in water, mol/(kg atm). Any shape in, the same shape out.
    
    Raises InvalidInput. Source: Weiss 1974, Mar Chem 2:203.
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
def equivalent_hours_for_gas(co2_mmol: typing.SupportsFloat | typing.SupportsIndex, *, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> float:
    """
    Equivalent hours until that much CO2 is made, the inverse of gas_made.
    
    Args: numbers; co2_mmol in mmol per 100 g flour. Raises InvalidInput; NoSolution naming the most the sugars give.
    Source: closed form with Lambert's W before the yeast grows, a logarithm after.
    """
def explain(rise_percent: typing.SupportsFloat | typing.SupportsIndex, *, dough_c: typing.SupportsFloat | typing.SupportsIndex, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex = 2.0, water_percent: typing.SupportsFloat | typing.SupportsIndex = 65.0, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> Explanation:
    """
    The factors that made a time: yeast ×, temperature ×, salt ×, water ×, sugar ×, gluten ×, altitude ×.
    
    Args: numbers, as in hours_to_rise. Walks from the reference dough (25 °C, 1 % instant yeast, 2 % salt, 65 % water, no sugar, sea
    level) to this one, one change at a time; the product is exact, each factor depends a little on the order.
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
def friction_from_batch(*, dough_c: typing.SupportsFloat | typing.SupportsIndex, flour_c: typing.SupportsFloat | typing.SupportsIndex, room_c: typing.SupportsFloat | typing.SupportsIndex, water_c: typing.SupportsFloat | typing.SupportsIndex, preferment_c: typing.SupportsFloat | typing.SupportsIndex | None = None) -> float:
    """
    Friction of a batch, K: n dough - flour - room - water (- preferment).
    
    Args: numbers, °C, measured at one batch; use the result for the next batch of the same size on the same mixer.
    Raises InvalidInput, also if the friction lies outside -10 to 25 K. Source: trade textbooks.
    """
def gas_made(equivalent_h: typing.SupportsFloat | typing.SupportsIndex, *, yeast_percent: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> float:
    """
    CO2 made after some equivalent hours, mmol per 100 g flour.
    
    Args: numbers; equivalent_h in hours at the reference dough (25 °C, 2 % salt, 65 % water, no sugar). Raises InvalidInput.
    Source: model of this library: start-up, growth by a fixed increment after a lag, exhaustion of the sugars.
    """
def handled(dough: Dough, state: DoughState, loss_fraction: typing.SupportsFloat | typing.SupportsIndex, *, kitchen: Kitchen | None = None) -> DoughState:
    """
    The state after a handling that presses out a share (0 to 1) of the cells' gas; dissolved gas stays. Raises InvalidInput. Losses by handling are parameters of the kitchen: fold_loss, divide_loss, round_loss, mould_loss.
    """
def hours_to_rise(rise_percent: float | numpy.typing.ArrayLike, *, dough_c: float | numpy.typing.ArrayLike, yeast_percent: float | numpy.typing.ArrayLike, yeast: str = 'instant', salt_percent: float | numpy.typing.ArrayLike = 2.0, water_percent: float | numpy.typing.ArrayLike = 65.0, sugar_percent: float | numpy.typing.ArrayLike = 0.0, gluten_percent: float | numpy.typing.ArrayLike = 0.0, altitude_m: float | numpy.typing.ArrayLike = 0.0, kitchen: Kitchen | None = None, unreachable: str = 'raise') -> typing.Any:
    """
    Hours from the end of mixing until the dough has gained that much of its volume, at a constant dough temperature.
    
    Args: numbers or arrays that broadcast: rise_percent % of the volume just after mixing (doubled is 100); dough_c the dough's
    own temperature in °C, not the room's; yeast_percent as weighed, and the others, percent of flour weight; altitude_m in m.
    yeast: instant, active_dry (wetted first), active_dry_unwetted or compressed. unreachable: "raise", or "inf" for maps.
    Returns: hours, a number or an array of the common shape.
    Raises InvalidInput; NoSolution for a rise the dough cannot hold or make, naming the reachable rise; OutsideModel where the
    yeast stands still. For arrays the message names the first index and the count.
    Source: clock, gas and retention of the model in closed form (Rosso et al. 1993; Weiss 1974; Buck 1996; ISO 2533).
    """
def hours_until(dough: Dough, state: DoughState, ratio: typing.SupportsFloat | typing.SupportsIndex, *, kitchen: Kitchen | None = None) -> float:
    """
    Hours from this state until volume over mixed volume is `ratio`; 0 if it is already. Raises InvalidInput; NoSolution naming the reachable ratio; OutsideModel where the yeast stands still. Source: as hours_to_rise.
    """
def ice_by_trade_rule(water_g: typing.SupportsFloat | typing.SupportsIndex, *, tap_c: typing.SupportsFloat | typing.SupportsIndex, wanted_c: typing.SupportsFloat | typing.SupportsIndex) -> float:
    """
    Ice at 0 °C to put in place of that much of the water, g: water (tap - wanted)/(tap + 80).
    
    Args: numbers; water_g all of the water, g; temperatures °C. Raises InvalidInput; NoSolution if wanted is warmer than the tap.
    Source: trade textbooks, in °F (tap - wanted)/(tap + 112).
    """
def kelvins(fahrenheit_degrees: float | numpy.typing.ArrayLike) -> typing.Any:
    """
    A *difference* of temperatures in Fahrenheit degrees as K: F/1.8.
    
    Args: fahrenheit_degrees: a number or an array. 20 °F of friction are 11.1 K.
    Returns: K. Raises InvalidInput if not finite. Source: definition of the scales.
    """
def mixed(dough: Dough, *, kitchen: Kitchen | None = None) -> DoughState:
    """
    The state at the end of mixing. Raises InvalidInput. Source: ideal gas law for the air mixed in.
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
def rested(dough: Dough, state: DoughState, time_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, kitchen: Kitchen | None = None) -> DoughState:
    """
    The state that many hours (or a timedelta) later at dough.dough_c. Raises InvalidInput. Source: as hours_to_rise.
    """
def rise_after(time_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, dough_c: float | numpy.typing.ArrayLike, yeast_percent: float | numpy.typing.ArrayLike, yeast: str = 'instant', salt_percent: float | numpy.typing.ArrayLike = 2.0, water_percent: float | numpy.typing.ArrayLike = 65.0, sugar_percent: float | numpy.typing.ArrayLike = 0.0, gluten_percent: float | numpy.typing.ArrayLike = 0.0, altitude_m: float | numpy.typing.ArrayLike = 0.0, kitchen: Kitchen | None = None) -> typing.Any:
    """
    Rise in percent after some hours at a constant dough temperature, the inverse of hours_to_rise.
    
    Args: time_h: hours or a timedelta, a number or an array; the others as in hours_to_rise.
    Returns: percent, a number or an array of the common shape; 0 at 0 h. Raises InvalidInput.
    Source: as hours_to_rise.
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
def speed(*, dough_c: float | numpy.typing.ArrayLike, salt_percent: float | numpy.typing.ArrayLike = 2.0, water_percent: float | numpy.typing.ArrayLike = 65.0, sugar_percent: float | numpy.typing.ArrayLike = 0.0, kitchen: Kitchen | None = None) -> typing.Any:
    """
    Equivalent hours per hour: temperature factor × solute factor, 1 at the reference dough.
    
    Args: numbers or arrays that broadcast: dough_c in °C, the rest percent of flour weight.
    Returns: a number, or an array of the common shape; 0 where the yeast stands still.
    Raises InvalidInput. Source: the kitchen's temperature law; linear in water activity.
    """
def volume_ratio(dough: Dough, state: DoughState, *, kitchen: Kitchen | None = None) -> float:
    """
    Volume over the volume just after mixing. Raises InvalidInput. Source: Henry's law, ideal gas law, retention.
    """
def water_activity(*, salt_percent: typing.SupportsFloat | typing.SupportsIndex, water_percent: typing.SupportsFloat | typing.SupportsIndex, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0) -> float:
    """
    Water activity of the dough's water, exp(-0.0180153 osmolality), a ratio.
    
    Args: percent of flour weight, numbers. Raises InvalidInput.
    Source: ideal dilute solution with an osmotic coefficient of 0.92; within 0.005 of Robinson & Stokes 1959 (from memory).
    """
def water_by_factor_rule(desired_c: float | numpy.typing.ArrayLike, *, flour_c: float | numpy.typing.ArrayLike, room_c: float | numpy.typing.ArrayLike, friction_k: float | numpy.typing.ArrayLike, preferment_c: float | numpy.typing.ArrayLike | None = None) -> typing.Any:
    """
    Water temperature by the trade's factor rule, °C: n desired - flour - room (- preferment) - friction.
    
    Args: numbers or arrays that broadcast, °C; friction_k in K, a *difference* of temperatures; n = 3, or 4 with a preferment.
    Returns: a number, or an array of the common shape; may lie below 0 or above 60 °C: see check(water_c=...).
    Raises InvalidInput. Source: trade textbooks.
    """
def yeast_for_rise(rise_percent: typing.SupportsFloat | typing.SupportsIndex, target_h: float | datetime.timedelta | numpy.typing.ArrayLike, *, dough_c: typing.SupportsFloat | typing.SupportsIndex, yeast: str = 'instant', salt_percent: typing.SupportsFloat | typing.SupportsIndex = 2.0, water_percent: typing.SupportsFloat | typing.SupportsIndex = 65.0, sugar_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, gluten_percent: typing.SupportsFloat | typing.SupportsIndex = 0.0, altitude_m: typing.SupportsFloat | typing.SupportsIndex = 0.0, kitchen: Kitchen | None = None) -> typing.Any:
    """
    Yeast dose, percent of flour as weighed, with which the rise takes that long.
    
    Args: rise_percent %, target_h hours or a timedelta (a number or an array), the others numbers as in hours_to_rise.
    Returns: percent of that kind of yeast. Raises InvalidInput; NoSolution naming the hours that the smallest and largest dose give;
    OutsideModel. Source: bracketed root of hours_to_rise in the logarithm of the dose.
    """
__version__: str = '0.1.0'
