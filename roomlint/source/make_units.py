"""Writes `units.py`, the table of common unit spellings, from pint: `python -m roomlint.source.make_units`."""

import math
from pathlib import Path

from roomlint.source.ask_pint import CANONICAL, look_up

# Spelling in a file = spelling for pint, where the two differ; the words before the colon are the dimension.
SPELLINGS = """
length: m mm cm km um in inch inches ft foot feet yd yard yards mil=thou thou meter meters metre metres
length: millimeter millimeters millimetre millimetres centimeter centimeters centimetre centimetres
length: '=ft ''=in "=in in.=in ft.=ft
area: m2 mm2 cm2 in2 ft2 sq_m=m2 sq_mm=mm2 sq_cm=cm2 sq_in=in2 sq_ft=ft2 sqft=ft2 sqmm=mm2 kcmil cmil MCM=kcmil
volume: m3 cm3 mm3 in3 ft3 L l=L ml=mL mL litre litres liter liters cu_ft=ft3 cu_in=in3 cu_m=m3
angle: deg degree degrees ° rad mrad
mass: kg g mg t lb lbs oz pound pounds lbm=lb lb.=lb
force: N kN lbf kgf
time: s ms us ns min h second seconds minute minutes hour hours sec=s
frequency: Hz kHz MHz GHz mHz
level: dB=decibel dB(A)=decibel dB(C)=decibel dB(Z)=decibel dBA=decibel dBC=decibel dBZ=decibel dB_SPL=decibel
level: dB_A=decibel dB_C=decibel dB_(A)=decibel dB_(C)=decibel db=decibel dBFS=decibel dB_FS=decibel
power: W mW kW watt watts BTU/h Btu/h=BTU/h BTU/hr=BTU/h Btu/hr=BTU/h hp
apparent_power: VA kVA V*A
voltage: V mV kV uV volt volts Vrms=V V_rms=V V_RMS=V
current: A mA kA uA amp=A amps=A ampere amperes
impedance: ohm ohms kohm mohm Mohm Ohm=ohm Ohms=ohm
temperature: degC degF K °C °F celsius fahrenheit
ratio: % percent ppm
illuminance: lx lux fc=lumen/ft2 ftc=lumen/ft2 lm/m2 lm/ft2
luminous_flux: lm klm lumen lumens
luminance: cd/m2 nit nits fL=candela/ft2/pi
airflow: m3/s m3/h L/s l/s=L/s L/min l/min=L/min cfm=ft3/min CFM=ft3/min ft3/min m3/min
pressure: Pa kPa hPa MPa mPa psf=lbf/ft2 psi lbf/ft2 N/m2 kN/m2 N/mm2
data_rate: Gb/s=gigabit/s Gbit/s Mb/s=megabit/s Mbit/s kb/s=kilobit/s kbit/s Gbps=gigabit/s Mbps=megabit/s
resistance_per_length: ohm/m mohm/m ohm/km mohm/ft ohm/ft ohm/kft ohms/km ohms/m ohms/kft
speed: m/s km/h ft/s ft/min mph mm/s fpm=ft/min
"""
_TARGET = Path(__file__).with_name("units.py")


def table() -> dict[str, tuple[str, float, float]]:
    """Return spelling -> (dimension, factor, offset), every entry as pint has it."""
    entries: dict[str, tuple[str, float, float]] = {}
    for line in SPELLINGS.strip().splitlines():
        dimension, _, words = line.partition(": ")
        for word in words.split():
            spelling, _, expression = word.replace("_", " ").partition("=")
            unit = look_up(expression or spelling)
            if unit.dimension != dimension:
                raise ValueError(f"pint takes `{expression or spelling}` for {unit.dimension}, not {dimension}")
            entries[spelling] = (dimension, _neat(unit.factor), _neat(unit.offset))
    return entries


def source() -> str:
    """Return the text of `units.py`."""
    lines = [f"    {_quoted(key)}: ({_quoted(kind)}, {x!r}, {y!r})," for key, (kind, x, y) in table().items()]
    dimensions = [f"    {_quoted(dimension)}," for dimension in CANONICAL]
    return "\n".join(
        [
            '"""Common unit spellings, as pint has them: written by `python -m roomlint.source.make_units`."""',
            "",
            "# fmt: off",
            "UNITS: dict[str, tuple[str, float, float]] = {",
            *lines,
            "}",
            '"""Spelling -> dimension, factor, offset: canonical value = number * factor + offset."""',
            "",
            "DIMENSIONS = (",
            *dimensions,
            ")",
            "",
        ]
    )


def _neat(value: float) -> float:
    """Drop the last bits' noise of pint's floating-point chain: a foot is 0.3048 m by definition."""
    short = float(f"{value:.12g}")
    return short if math.isclose(short, value, rel_tol=1e-15) else value


def _quoted(text: str) -> str:
    return repr(text) if '"' in text else f'"{text}"'


if __name__ == "__main__":
    _TARGET.write_text(source(), encoding="utf-8")
