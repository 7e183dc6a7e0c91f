"""Conductors: size, resistance, voltage drop, and what a loudspeaker cable loses.

Single phase, resistance only: fair to about 10 AWG or 6 mm2, where reactance is still small. Lengths are one way.
"""

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal, NamedTuple

from roomlint.figures.domain import Refused, between, not_negative, positive
from roomlint.figures.inch_pound import FOOT_M

ConductorClass = Literal["class 1/2", "class 5/6"]
Material = Literal["copper", "aluminium"]

COPPER_RESISTIVITY_OHM_M: Final = 1.7241e-8
"""Annealed copper at 20 C, 100 % IACS (IEC 60028; the last digit from memory)."""
COPPER_COEFFICIENT_PER_K: Final = 0.00393
"""Temperature coefficient of copper at 20 C (IEC 60028, from memory); agrees with 0.00323 at 75 C, which was read."""

ALUMINIUM_TO_COPPER: Final = 1.64
"""Resistance of an aluminium conductor over that of a copper one of the same area (28.264 over 17.241 nohm m, IEC 60889
and IEC 60028, from memory); the table of NFPA 70 gives 3.18 over 1.93 for 12 AWG, 1.65 (from memory)."""

_AWG_RANGE: Final = (-3, 40)
_TEMPERATURE_RANGE_C: Final = (-50.0, 150.0)
_REFERENCE_C: Final = 20.0
_FEET_PER_KFT: Final = 1000.0
_METRES_PER_KM: Final = 1000.0


class TableEight(NamedTuple):
    """Resistance at 75 C of uncoated copper, ohm per 1000 ft, solid and stranded."""

    solid: float
    stranded: float


NEC_TABLE_8: Final[Mapping[int, TableEight]] = MappingProxyType(
    {
        18: TableEight(7.77, 7.95),
        16: TableEight(4.89, 4.99),
        14: TableEight(3.07, 3.14),
        12: TableEight(1.93, 1.98),
        10: TableEight(1.21, 1.24),
        8: TableEight(0.764, 0.778),
    }
)
"""NFPA 70 chapter 9, Table 8 (read in transcriptions of 2017 and 2023). Mind the unit: some copies misprint ohm/ft."""

IEC_60228_OHM_PER_KM: Final[Mapping[float, Mapping[ConductorClass, float]]] = MappingProxyType(
    {
        0.5: {"class 1/2": 36.0, "class 5/6": 39.0},
        0.75: {"class 1/2": 24.5, "class 5/6": 26.0},
        1.0: {"class 1/2": 18.1, "class 5/6": 19.5},
        1.5: {"class 1/2": 12.1, "class 5/6": 13.3},
        2.5: {"class 1/2": 7.41, "class 5/6": 7.98},
        4.0: {"class 1/2": 4.61, "class 5/6": 4.95},
        6.0: {"class 1/2": 3.08, "class 5/6": 3.30},
        10.0: {"class 1/2": 1.83, "class 5/6": 1.91},
    }
)
"""Greatest resistance at 20 C of plain copper by cross-section in mm2, IEC 60228 (read second-hand)."""

_SAME_SIZE: Final = 0.02


def awg_diameter_mm(gauge: int) -> float:
    """Diameter of a solid AWG conductor, mm: 0.127 x 92^((36 - n) / 39). 0 for 1/0, -1 for 2/0, to -3 for 4/0.

    Valid for -3 to 40; ValueError outside. Source: ASTM B258 (read second-hand).
    """
    number = between("gauge", gauge, _AWG_RANGE, "AWG")
    return float(0.127 * 92.0 ** ((36.0 - number) / 39.0))


def awg_area_mm2(gauge: int) -> float:
    """Cross-section of a solid AWG conductor, mm2: pi d^2 / 4. ValueError as `awg_diameter_mm`. Source: geometry."""
    return math.pi / 4.0 * awg_diameter_mm(gauge) ** 2


def copper_ohm_per_m(area_mm2: float, temperature_c: float = 20.0) -> float:
    """Resistance of one copper conductor, ohm/m: 1.7241e-8 / area x (1 + 0.00393 (T - 20)).

    Valid for -50 to 150 C and an area above zero; ValueError outside. Stranding and tolerance are not in it: use the
    tables for installed cable. Source: IEC 60028 (from memory, supported by NFPA 70 chapter 9, Table 8).
    """
    area_m2 = positive("cross-section", area_mm2, "mm2") * 1e-6
    return at_temperature(COPPER_RESISTIVITY_OHM_M / area_m2, temperature_c)


def at_temperature(resistance_at_20c: float, temperature_c: float) -> float:
    """Carry a copper resistance from 20 C to another temperature: R (1 + 0.00393 (T - 20)), in the same unit.

    Valid for -50 to 150 C; ValueError outside or for a negative resistance. Source: IEC 60028 (from memory).
    """
    warmth = between("temperature", temperature_c, _TEMPERATURE_RANGE_C, "C") - _REFERENCE_C
    return not_negative("resistance", resistance_at_20c, "ohm") * (1.0 + COPPER_COEFFICIENT_PER_K * warmth)


def table_eight_ohm_per_m(gauge: int, *, stranded: bool = False) -> float:
    """Resistance at 75 C by NFPA 70 chapter 9, Table 8, ohm/m.

    Valid for the sizes in `NEC_TABLE_8`; ValueError for others.
    """
    row = NEC_TABLE_8.get(gauge)
    if row is None:
        raise Refused(f"{gauge} AWG is not tabulated here: 18, 16, 14, 12, 10 and 8 AWG are")
    return (row.stranded if stranded else row.solid) / (_FEET_PER_KFT * FOOT_M)


def iec_60228_ohm_per_m(area_mm2: float, kind: ConductorClass = "class 1/2") -> float:
    """Greatest resistance at 20 C by IEC 60228, ohm/m; fixed wiring is class 1 or 2, flexible cord 5 or 6.

    Valid for the cross-sections in `IEC_60228_OHM_PER_KM`; ValueError for others.
    """
    row = IEC_60228_OHM_PER_KM.get(area_mm2)
    if row is None:
        raise Refused(f"{area_mm2:g} mm2 is not a tabulated cross-section: 0.5 to 10 mm2 in standard steps are")
    return row[kind] / _METRES_PER_KM


def voltage_drop_v(length_m: float, current_a: float, ohm_per_m: float) -> float:
    """Voltage lost on both conductors of a single-phase run, V: 2 L I R'.

    ValueError for a negative input. Source: Ohm's law; the resistance-only form is common practice at these sizes.
    """
    run = not_negative("one-way length", length_m, "m") * not_negative("resistance", ohm_per_m, "ohm/m")
    return 2.0 * run * not_negative("current", current_a, "A")


def drop_percent(drop_v: float, nominal_v: float) -> float:
    """Voltage drop as a percentage of the nominal voltage. ValueError for a nominal voltage not above zero."""
    return 100.0 * not_negative("voltage drop", drop_v, "V") / positive("nominal voltage", nominal_v, "V")


def greatest_length_m(limit_percent: float, nominal_v: float, current_a: float, ohm_per_m: float) -> float:
    """Greatest one-way length within a voltage drop, m: limit V / (2 I R').

    The United States code recommends 3 % on a branch and 5 % in all without requiring it. ValueError for an input not
    above zero. Source: Ohm's law.
    """
    allowed = positive("drop limit", limit_percent, "%") / 100.0 * positive("nominal voltage", nominal_v, "V")
    per_metre = 2.0 * positive("current", current_a, "A") * positive("resistance", ohm_per_m, "ohm/m")
    return allowed / per_metre


def installed_ohm_per_m(area_mm2: float, temperature_c: float, material: Material = "copper") -> float:
    """Resistance of one installed conductor, ohm/m, warm.

    A metric size counts with the greatest resistance that IEC 60228 allows it, any other area with that of its copper;
    aluminium 1.64 times as much. Valid for -50 to 150 C. Source: IEC 60228 (second-hand), IEC 60028 (from memory).
    """
    metric = next((size for size in IEC_60228_OHM_PER_KM if abs(size - area_mm2) <= _SAME_SIZE * size), None)
    if metric is not None:
        copper = at_temperature(iec_60228_ohm_per_m(metric), temperature_c)
    else:
        copper = copper_ohm_per_m(area_mm2, temperature_c)
    return copper * (ALUMINIUM_TO_COPPER if material == "aluminium" else 1.0)


def loop_ohm(length_m: float, ohm_per_m: float) -> float:
    """Resistance of both conductors of a cable, ohm: 2 L R'. ValueError for a negative input. Source: geometry."""
    length = not_negative("one-way length", length_m, "m")
    return 2.0 * length * not_negative("resistance", ohm_per_m, "ohm/m")


def wire_loss_db(loop: float, load_ohm: float) -> float:
    """Level lost in a loudspeaker cable, dB and positive: 20 lg((Z + R) / Z), R the loop resistance in ohm.

    ValueError for a negative loop or a load not above zero. Source: voltage divider, amplifier as a voltage source.
    """
    load = positive("load impedance", load_ohm, "ohm")
    return 20.0 * math.log10((load + not_negative("loop resistance", loop, "ohm")) / load)


def wire_tilt_db(loop: float, least_ohm: float, greatest_ohm: float) -> float:
    """Change of response that a cable causes between a loudspeaker's impedance extremes, dB, zero or positive.

    Formula: loss at the least impedance less loss at the greatest. ValueError if the least exceeds the greatest.
    Source: voltage divider.
    """
    if least_ohm > greatest_ohm:
        raise Refused(f"least impedance {least_ohm:g} ohm is above the greatest, {greatest_ohm:g} ohm")
    return wire_loss_db(loop, least_ohm) - wire_loss_db(loop, greatest_ohm)


def greatest_loop_ohm(loss_db: float, load_ohm: float) -> float:
    """Loop resistance that costs a given loss, ohm: Z (10^(dB/20) - 1). ValueError if not above zero."""
    load = positive("load impedance", load_ohm, "ohm")
    return float(load * (10.0 ** (positive("loss", loss_db, "dB") / 20.0) - 1.0))


def damping_factor(load_ohm: float, source_ohm: float, loop: float) -> float:
    """Load impedance over all resistance behind it, no unit: Z / (Z_out + R).

    ValueError for a load not above zero, negative resistances, or none at all. Source: definition.
    """
    behind = not_negative("output impedance", source_ohm, "ohm") + not_negative("loop resistance", loop, "ohm")
    return positive("load impedance", load_ohm, "ohm") / positive("output and loop resistance", behind, "ohm")
