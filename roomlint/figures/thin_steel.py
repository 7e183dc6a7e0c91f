"""Screws in steel studs: pull-out from thin sheet (American Iron and Steel Institute S100, allowable strength).

The formula and sheet thicknesses are from memory; a later review of several hundred tests found that the formula
should be adjusted, so the figure is a first look and never a design value. Board between bracket and stud, prying
and the twist of an unbraced stud are not in it: an engineer decides.
"""

from typing import Final

from roomlint.figures.domain import positive
from roomlint.figures.inch_pound import INCH_MM

DESIGN_THICKNESS_MM: Final = {
    18: 0.0188 * INCH_MM,
    33: 0.0346 * INCH_MM,
    43: 0.0451 * INCH_MM,
    54: 0.0566 * INCH_MM,
}
"""Design thickness of studs by their designation in mils, from memory."""

PULL_OUT_SAFETY_FACTOR: Final = 3.0
"""Allowable-strength factor on screw pull-out (read in two makers' table notes)."""


def pull_out_nominal_n(sheet_mm: float, screw_diameter_mm: float, ultimate_mpa: float) -> float:
    """Nominal pull-out of a screw from sheet steel, N: 0.85 t d Fu.

    Sizes in mm, ultimate strength in MPa, each above zero; Refused otherwise. At least three threads must show
    behind the sheet. Source: AISI S100 section J4 (from memory).
    """
    thickness = positive("sheet thickness", sheet_mm, "mm")
    diameter = positive("screw diameter", screw_diameter_mm, "mm")
    return 0.85 * thickness * diameter * positive("ultimate strength", ultimate_mpa, "MPa")


def pull_out_allowable_n(sheet_mm: float, screw_diameter_mm: float, ultimate_mpa: float) -> float:
    """Give the allowable pull-out, N: the nominal over 3.0. Refused and source as `pull_out_nominal_n`."""
    return pull_out_nominal_n(sheet_mm, screw_diameter_mm, ultimate_mpa) / PULL_OUT_SAFETY_FACTOR
