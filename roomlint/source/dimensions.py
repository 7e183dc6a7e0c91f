"""The one table of units: what each dimension is written in, and how each unit is read, scaled and shown.

A *dimension* is what a key of a file wants (a length, a level). A *symbol* is a unit that the program itself writes:
a figure carries one, a window of a house file is held against it, and a report shows it with so many decimals.
Spellings that people write are in `units`; what a spelling means is pint's to say.
"""

from __future__ import annotations

from typing import NamedTuple


class Dimension(NamedTuple):
    """What a quantity is: its own unit, and how a message names it and shows one."""

    unit: str
    """The symbol of the unit that a design keeps it in."""
    words: str
    example: str
    customary: str
    """An example in the units of the United States, where they differ."""
    pint: str
    """The same unit as pint spells it; empty where pint has no such thing."""
    low: float
    high: float
    """What no residential media room leaves, so that beyond it a value is a slip of the pen; in the own unit."""

    @property
    def suffix(self) -> str:
        """The end of an attribute's name that tells the unit: `width_m`, `rate_gb_s`."""
        return self.unit.lower().replace("/", "_").replace("%", "")


_NO_LIMIT = 1e12

DIMENSIONS: dict[str, Dimension] = {
    "length": Dimension("m", "a length", "2.40 m", "7 ft 6 in", "m", 0.0, 200.0),
    "area": Dimension("m2", "an area", "1.5 m2", "16 ft2", "m**2", 0.0, 1e4),
    "volume": Dimension("m3", "a volume", "45 m3", "1600 ft3", "m**3", 0.0, 1e4),
    "angle": Dimension("deg", "an angle", "20 deg", "20 deg", "degree", -180.0, 180.0),
    "mass": Dimension("kg", "a mass", "12.5 kg", "35 lb", "kg", 0.0, 1000.0),
    "force": Dimension("N", "a force", "880 N", "200 lbf", "N", 0.0, 1e6),
    "time": Dimension("s", "a time", "4.2 ms", "4.2 ms", "s", 0.0, 60.0),
    "frequency": Dimension("Hz", "a frequency", "80 Hz", "80 Hz", "Hz", 1.0, 1e5),
    "level": Dimension("dB", "a level", "105 dB", "105 dB", "decibel", -120.0, 160.0),
    "power": Dimension("W", "a power", "100 W", "100 W", "W", 0.0, 1e5),
    "apparent_power": Dimension("VA", "an apparent power", "850 VA", "850 VA", "volt_ampere", 0.0, 1e5),
    "voltage": Dimension("V", "a voltage", "120 V", "120 V", "V", 0.0, 1000.0),
    "current": Dimension("A", "a current", "12 A", "12 A", "A", 0.0, 400.0),
    "impedance": Dimension("ohm", "an impedance", "8 ohm", "8 ohm", "ohm", 0.0, 1e5),
    "temperature": Dimension("degC", "a temperature", "21 degC", "70 degF", "degC", -40.0, 60.0),
    "conductor": Dimension("m2", "a conductor size", "2.5 mm2", "14 AWG", "", 0.0, 0.001),
    "ratio": Dimension("", "a ratio", "80 %", "80 %", "dimensionless", -_NO_LIMIT, _NO_LIMIT),
    "illuminance": Dimension("lx", "an illuminance", "5 lx", "0.5 fc", "lux", 0.0, 1e5),
    "luminous_flux": Dimension("lm", "a luminous flux", "1800 lm", "1800 lm", "lumen", 0.0, 1e5),
    "luminance": Dimension("cd/m2", "a luminance", "48 cd/m2", "14 fL", "candela/m**2", 0.0, 1e5),
    "airflow": Dimension("m3/s", "an air flow", "90 m3/h", "55 cfm", "m**3/s", 0.0, 10.0),
    "pressure": Dimension("Pa", "a pressure", "1.9 kPa", "40 psf", "Pa", -_NO_LIMIT, _NO_LIMIT),
    "data_rate": Dimension("Gb/s", "a data rate", "18 Gb/s", "18 Gb/s", "gigabit/s", 0.0, 1000.0),
    "resistance_per_length": Dimension(
        "ohm/m", "a resistance per length", "8.3 ohm/km", "2.5 ohm/kft", "ohm/m", 0.0, 100.0
    ),
    "speed": Dimension("m/s", "a speed", "343 m/s", "1130 ft/s", "m/s", 0.0, 1000.0),
}


class Symbol(NamedTuple):
    """A unit as figures carry and reports show it."""

    dimension: str
    scale: float
    """How much of the dimension's own unit one of it is."""
    decimals: int
    """How many a message shows; more would claim more than the trade measures."""
    customary: str = ""
    """The symbol that a report in the units of the United States shows instead, where there is one."""
    offset: float = 0.0
    """Own unit = scale * number + offset; only a temperature has one."""


SHORT_M = 0.1
"""Lengths below this are told in millimetres."""
CONDUCTOR_M2 = 1e-3
"""Areas below this are sections of wires."""

SYMBOLS: dict[str, Symbol] = {
    "m": Symbol("length", 1.0, 2, "ft"),
    "cm": Symbol("length", 0.01, 1, "in"),
    "mm": Symbol("length", 0.001, 0, "in"),
    "ft": Symbol("length", 0.3048, 2),
    "in": Symbol("length", 0.0254, 2),
    "m2": Symbol("area", 1.0, 2, "ft2"),
    "mm2": Symbol("area", 1e-6, 1, "in2"),
    "ft2": Symbol("area", 0.3048**2, 1),
    "in2": Symbol("area", 0.0254**2, 3),
    "m3": Symbol("volume", 1.0, 1, "ft3"),
    "ft3": Symbol("volume", 0.3048**3, 0),
    "deg": Symbol("angle", 1.0, 1),
    "kg": Symbol("mass", 1.0, 1, "lb"),
    "lb": Symbol("mass", 0.45359237, 1),
    "N": Symbol("force", 1.0, 0, "lbf"),
    "kN": Symbol("force", 1000.0, 2, "lbf"),
    "lbf": Symbol("force", 4.4482216152605, 0),
    "s": Symbol("time", 1.0, 2),
    "ms": Symbol("time", 0.001, 2),
    "Hz": Symbol("frequency", 1.0, 1),
    "kHz": Symbol("frequency", 1000.0, 2),
    "dB": Symbol("level", 1.0, 1),
    "W": Symbol("power", 1.0, 0),
    "VA": Symbol("apparent_power", 1.0, 0),
    "V": Symbol("voltage", 1.0, 0),
    "A": Symbol("current", 1.0, 1),
    "mA": Symbol("current", 0.001, 0),
    "ohm": Symbol("impedance", 1.0, 2),
    "degC": Symbol("temperature", 1.0, 1, "degF"),
    "degF": Symbol("temperature", 5.0 / 9.0, 0, offset=-160.0 / 9.0),
    "": Symbol("ratio", 1.0, 2),
    "%": Symbol("ratio", 0.01, 1),
    "lx": Symbol("illuminance", 1.0, 1, "fc"),
    "fc": Symbol("illuminance", 1.0 / 0.3048**2, 2),
    "lm": Symbol("luminous_flux", 1.0, 0),
    "cd/m2": Symbol("luminance", 1.0, 1, "fL"),
    "fL": Symbol("luminance", 3.4262590996353905, 1),
    "m3/s": Symbol("airflow", 1.0, 4, "cfm"),
    "m3/h": Symbol("airflow", 1.0 / 3600.0, 0, "cfm"),
    "cfm": Symbol("airflow", 0.3048**3 / 60.0, 0),
    "Pa": Symbol("pressure", 1.0, 0, "psf"),
    "kPa": Symbol("pressure", 1000.0, 2, "psf"),
    "psf": Symbol("pressure", 47.88025898033586, 2),
    "Gb/s": Symbol("data_rate", 1.0, 1),
    "ohm/m": Symbol("resistance_per_length", 1.0, 5, "ohm/kft"),
    "ohm/km": Symbol("resistance_per_length", 0.001, 2, "ohm/kft"),
    "ohm/kft": Symbol("resistance_per_length", 1.0 / 304.8, 2),
    "m/s": Symbol("speed", 1.0, 1, "ft/s"),
    "ft/s": Symbol("speed", 0.3048, 0),
}


def decimals(symbol: str) -> int:
    """Return how many decimals a unit is shown with."""
    unit = SYMBOLS.get(symbol)
    return unit.decimals if unit is not None else 2


def last_digit(symbol: str, value: float) -> float:
    """Return what one step of the last digit is worth that a report shows of a number, in that number's unit.

    A length is told in centimetres, a short one in millimetres, the section of a wire in tenths of a square millimetre;
    of other numbers below ten steps more digits are shown, two at most, until half a step is no more than a fiftieth.
    """
    unit = SYMBOLS.get(symbol)
    if unit is not None and unit.dimension == "length":
        return (0.001 if abs(value) * unit.scale < SHORT_M else 0.01) / unit.scale
    if symbol == "m2" and abs(value) < CONDUCTOR_M2:
        return 1e-7
    step: float = 10.0 ** -decimals(symbol)
    if abs(value) >= 10.0 * step:
        return step
    return next((finer for finer in (step, step / 10.0) if finer / 2.0 <= 0.02 * abs(value)), step / 100.0)


def in_symbol(value: float, symbol: str) -> float:
    """Return a number of the dimension's own unit in another unit of the table."""
    unit = SYMBOLS[symbol]
    return (value - unit.offset) / unit.scale


def customary(value: float, symbol: str) -> tuple[float, str]:
    """Return a number and its symbol in the units of the United States; unchanged where they are the same."""
    unit = SYMBOLS[symbol]
    if not unit.customary:
        return value, symbol
    return in_symbol(value * unit.scale + unit.offset, unit.customary), unit.customary


def customary_difference(value: float, symbol: str) -> float:
    """Return a difference, a margin or an uncertainty in that unit: no offset is in it."""
    unit = SYMBOLS[symbol]
    return value * unit.scale / SYMBOLS[unit.customary].scale if unit.customary else value
