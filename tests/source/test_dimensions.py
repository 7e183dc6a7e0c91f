"""The one table of units, held against pint."""

import re

import pint
import pytest

from roomlint.source.dimensions import DIMENSIONS, SYMBOLS, customary, customary_difference, in_symbol
from roomlint.source.quantity import parse

REGISTRY = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
AS_PINT = {
    "lx": "lux", "fc": "lumen/foot**2", "fL": "candela/foot**2/pi", "cfm": "foot**3/minute", "psf": "lbf/foot**2",
    "ohm/kft": "ohm/kilofoot", "Gb/s": "gigabit/s", "VA": "volt_ampere", "": "dimensionless", "dB": None,
}  # fmt: skip


@pytest.mark.parametrize("symbol", [name for name in SYMBOLS if AS_PINT.get(name, name) is not None])
def test_a_symbol_scales_as_pint_has_it(symbol: str) -> None:
    unit = SYMBOLS[symbol]
    own = DIMENSIONS[unit.dimension].pint
    spelling = re.sub(r"(?<=[a-z])([23])", r"**\1", AS_PINT.get(symbol, symbol) or "")
    expected = REGISTRY.Quantity(37.0, REGISTRY.parse_units(spelling)).to(own).magnitude
    assert unit.scale * 37.0 + unit.offset == pytest.approx(expected, rel=1e-12)
    assert in_symbol(expected, symbol) == pytest.approx(37.0)


@pytest.mark.parametrize("name", list(DIMENSIONS))
def test_every_dimension_has_a_symbol_of_its_own_unit(name: str) -> None:
    dimension = DIMENSIONS[name]
    assert SYMBOLS[dimension.unit].scale == 1.0
    assert name == "conductor" or SYMBOLS[dimension.unit].dimension == name


@pytest.mark.parametrize("symbol", [name for name in SYMBOLS if name not in {"", "ohm/kft"}])
def test_what_a_report_shows_a_file_may_write(symbol: str) -> None:
    unit = SYMBOLS[symbol]
    assert parse(f"3 {symbol}", unit.dimension).value == pytest.approx(unit.scale * 3 + unit.offset)


@pytest.mark.parametrize("symbol", list(SYMBOLS))
def test_a_customary_counterpart_is_of_the_same_dimension(symbol: str) -> None:
    other = SYMBOLS[symbol].customary
    assert not other or SYMBOLS[other].dimension == SYMBOLS[symbol].dimension


def test_customary_figures() -> None:
    assert customary(2.286, "m") == (pytest.approx(7.5), "ft")
    assert customary(21.0, "degC") == (pytest.approx(69.8), "degF")
    assert customary(105.0, "dB") == (105.0, "dB")
    assert customary_difference(2.0, "degC") == pytest.approx(3.6)
    assert customary_difference(0.3048, "m") == pytest.approx(1.0)
