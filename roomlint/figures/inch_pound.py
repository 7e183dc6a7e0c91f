"""Exact conversions for the published formulas that are written in inches and pounds.

Each is a definition or follows from one: the inch (25.4 mm), the pound (0.45359237 kg) and standard gravity
(9.80665 m/s2) are exact by international agreement, so nothing is lost on the way to SI and back.
"""

from typing import Final

INCH_MM: Final = 25.4
FOOT_M: Final = 0.3048
POUND_KG: Final = 0.45359237
STANDARD_GRAVITY_M_S2: Final = 9.80665

POUND_FORCE_N: Final = POUND_KG * STANDARD_GRAVITY_M_S2
POUND_FORCE_PER_INCH_N_MM: Final = POUND_FORCE_N / INCH_MM
PSI_MPA: Final = POUND_FORCE_N / INCH_MM**2
PSF_PA: Final = POUND_FORCE_N / FOOT_M**2


def fahrenheit_to_celsius(temperature_f: float) -> float:
    """Celsius temperature of a Fahrenheit one: (F - 32) x 5/9. Exact by definition of the two scales."""
    return (temperature_f - 32.0) * 5.0 / 9.0
