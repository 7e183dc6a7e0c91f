"""Quantities in the trade's forms; values from the definitions of the units and from ASTM B258."""

import math
import subprocess
import sys

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomlint.source import make_units
from roomlint.source.ask_pint import CANONICAL
from roomlint.source.dimensions import DIMENSIONS as KINDS
from roomlint.source.quantity import Measure, QuantityError, parse
from roomlint.source.units import DIMENSIONS, UNITS

INCH_M = 0.0254


@pytest.mark.parametrize(
    ("text", "metres"),
    [
        ("2.40 m", 2.4),
        ("35 cm", 0.35),
        ("5.5 mm", 0.0055),
        ("5.5mm", 0.0055),
        ("-120 mm", -0.12),
        ("\u2212120 mm", -0.12),
        ("2\u202f400\u00a0mm".replace("\u202f", ""), 2.4),
        ("7 ft 6 in", 90 * INCH_M),
        ("7ft6in", 90 * INCH_M),
        ("7' 6-1/2\"", 90.5 * INCH_M),
        ("7'-6 1/2\"", 90.5 * INCH_M),
        ("7\u2032 6\u00bd\u2033", 90.5 * INCH_M),
        ("7 ft 6 1/2 in", 90.5 * INCH_M),
        ("-7 ft 6 in", -90 * INCH_M),
        ("7 ft, 6 in", 90 * INCH_M),
        ('6"', 6 * INCH_M),
        ("3/8 in", 0.375 * INCH_M),
        ("1-1/2 in", 1.5 * INCH_M),
        ("1 1/2 in", 1.5 * INCH_M),
        ("\u00be in", 0.75 * INCH_M),
        ("7\u00bd ft", 90 * INCH_M),
        ("1e3 mm", 1.0),
        (".5 m", 0.5),
    ],
)
def test_lengths_as_the_trade_writes_them(text: str, metres: float) -> None:
    assert parse(text, "length").value == pytest.approx(metres, rel=1e-14)


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ("20 deg", "angle", 20.0),
        ("20\u00b0", "angle", 20.0),
        ("1 rad", "angle", 180 / math.pi),
        ("35 lb", "mass", 15.87573295),
        ("1 lb 8 oz", "mass", 0.680388555),
        ("50 lbf", "force", 222.41108076302503),
        ("1 kgf", "force", 9.80665),
        ("2.2 kHz", "frequency", 2200.0),
        ("4.2 ms", "time", 0.0042),
        ("105 dB", "level", 105.0),
        ("-1.5 dB", "level", -1.5),
        ("105 dB(A)", "level", 105.0),
        ("105 dB(C)", "level", 105.0),
        ("105 dB SPL", "level", 105.0),
        ("8 ohm", "impedance", 8.0),
        ("8 \u03a9", "impedance", 8.0),
        ("8 \u2126", "impedance", 8.0),
        ("21 degC", "temperature", 21.0),
        ("21 \u00b0C", "temperature", 21.0),
        ("70 degF", "temperature", 190 / 9),
        ("-40 \u00b0F", "temperature", -40.0),
        ("300 K", "temperature", 26.85),
        ("2.5 mm2", "conductor", 2.5e-6),
        ("2.5 mm\u00b2", "conductor", 2.5e-6),
        ("0.8", "ratio", 0.8),
        ("80 %", "ratio", 0.8),
        ("18 Gb/s", "data_rate", 18.0),
        ("100 Mb/s", "data_rate", 0.1),
        ("90 m3/h", "airflow", 0.025),
        ("1000 cfm", "airflow", 0.4719474432),
        ("1 fc", "illuminance", 1 / 0.09290304),
        ("16 fL", "luminance", 16 / 0.09290304 / math.pi),
        ("20 psf", "pressure", 957.6051796067173),
        ("8.3 ohm/km", "resistance_per_length", 0.0083),
        ("3412.14 BTU/h", "power", 1000.0),
        ("2 kVA", "apparent_power", 2000.0),
        ("1 furlong", "length", 201.168),
    ],
)
def test_units_convert(text: str, dimension: str, value: float) -> None:
    assert parse(text, dimension).value == pytest.approx(value, rel=5e-6)


@pytest.mark.parametrize(
    # ASTM B258, table of solid round wires, cross-section in mm2 as commonly reprinted. The standard rounds the
    # diameters of the thinnest sizes to a tenth of a mil; those differ from its own law by some per cent.
    ("size", "area_mm2"),
    [("4/0 AWG", 107.2), ("0000 AWG", 107.2), ("1/0 AWG", 53.49), ("8 AWG", 8.367), ("#12 AWG", 3.309),
     ("14 AWG", 2.081), ("AWG 16", 1.309), ("24 awg", 0.2047)],
)  # fmt: skip
def test_gauge_gives_the_tabulated_area(size: str, area_mm2: float) -> None:
    assert parse(size, "conductor").value * 1e6 == pytest.approx(area_mm2, rel=5e-4)


@pytest.mark.parametrize(
    ("text", "dimension", "value", "u"),
    [
        ("2.40 m \u00b1 1 cm", "length", 2.4, 0.01),
        ("2.40 m +/- 10 mm", "length", 2.4, 0.01),
        ("2.40 m\u00b110 mm", "length", 2.4, 0.01),
        ("7 ft 6 in \u00b1 1/4 in", "length", 2.286, 0.00635),
        ("8 ohm \u00b1 10 %", "impedance", 8.0, 0.8),
        ("80 % \u00b1 5 %", "ratio", 0.8, 0.05),
        ("0.8 \u00b1 0.1", "ratio", 0.8, 0.1),
        ("68 degF \u00b1 9 degF", "temperature", 20.0, 5.0),
        ("105 dB \u00b1 1.5 dB", "level", 105.0, 1.5),
    ],
)
def test_uncertainty_is_read_in_the_same_unit(text: str, dimension: str, value: float, u: float) -> None:
    measure = parse(text, dimension)
    assert measure.value == pytest.approx(value, rel=1e-12)
    assert measure.u == pytest.approx(u, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "dimension", "word"),
    [
        ("2.4", "length", "no unit"),
        ("", "length", "2.40 m"),
        ("metre", "length", "number"),
        ("2.40 m \u00b1 1", "length", "uncertainty"),
        ("2.40 \u00b1 1 cm", "length", "no unit"),
        ("2.40 m \u00b1 -1 cm", "length", "negative"),
        ("2.40 m \u00b1 1 s", "length", "time"),
        ("2.40 m \u00b1 1 cm \u00b1 1 cm", "length", "not a unit"),
        ("2,40 m", "length", "decimal point"),
        ("1,200 mm", "length", "thousands"),
        ("1 200 mm", "length", "one"),
        ("7 ft 6", "length", "'6'"),
        ("7 ft 14 in", "length", "overlap"),
        ("7.5 ft 6 in", "length", "overlap"),
        ("6 in 7 ft", "length", "larger unit comes first"),
        ("1/0 in", "length", "zero"),
        ("nan m", "length", "number"),
        ("inf m", "length", "number"),
        ("1e999 m", "length", "too large"),
        ("2.40 m \u00b1 1e999 m", "length", "too large"),
        ("--2 m", "length", "number"),
        ("2.4 metrs", "length", "'metres'"),
        ("5 KHz", "frequency", "'kHz'"),
        ("5 MM", "length", "'mm'"),
        ("3 pin", "length", "'in'"),
        ("5 kg", "length", "a mass"),
        ("5 kg", "force", "a mass"),
        ("850 W", "apparent_power", "a power"),
        ("850 VA", "power", "an apparent power"),
        ("5 Hz", "data_rate", "a frequency"),
        ("20 deg", "temperature", "an angle"),
        ("20 dBm", "power", "another quantity"),
        ("5 J", "length", "another quantity"),
        ("-300 degC", "temperature", "absolute zero"),
        ("14 AWG", "length", "conductor size"),
        ("50 AWG", "conductor", "4/0"),
        ("2 m**9999999", "length", "not a unit"),
        ("8\u00b2 ft", "length", "raised"),
        ("1\u00b3.5 m", "length", "raised"),
        ("8 ft\u2074", "length", "raised"),
        ("1\u00bd2 ft", "length", "more than one number"),
        ("2.4 M", "length", "did you mean 'm'"),
        ("12 a", "current", "did you mean 'A'"),
        ("21 C", "temperature", "did you mean 'degC'"),
        ("7-8 ft", "length", "'7.5 ft \u00b1 0.5 ft'"),
        ("7 ft - 8 ft", "length", "'7.5 ft \u00b1 0.5 ft'"),
        ("2.4\u20132.6 m", "length", "'2.5 m \u00b1 0.1 m'"),
        ("7 to 8 ft", "length", "a range"),
        ("\u201c4.5 m\u201d", "length", "write '4.5 m' without them"),
        ("'4.5 m'", "length", "write '4.5 m' without them"),
        ("about 7 ft", "length", "write '7 ft'"),
        ("~2.4 m", "length", "write '2.4 m'"),
        ("max. 2.4 m", "length", "a limit"),
        ("9 in \u00b1 1e200 m", "length", "too large"),
        ("1e31 m", "length", "too large"),
        ("2 m" + " m" * 60, "length", "too long"),
    ],
)
def test_message_teaches(text: str, dimension: str, word: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse(text, dimension)
    assert word in str(caught.value)


@pytest.mark.parametrize("dimension", [*CANONICAL, "conductor"])
def test_every_dimension_has_an_example_that_it_reads(dimension: str) -> None:
    assert parse(KINDS[dimension].example, dimension).value > 0
    assert parse(KINDS[dimension].customary, dimension).value > 0


def test_table_is_as_pint_has_it_today() -> None:
    fresh = make_units.table()
    assert list(fresh) == list(UNITS)
    for spelling, (dimension, factor, offset) in fresh.items():
        assert UNITS[spelling][0] == dimension
        assert UNITS[spelling][1:] == (pytest.approx(factor, rel=1e-12), pytest.approx(offset, rel=1e-12))
    assert tuple(CANONICAL) == DIMENSIONS


REGISTRY = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
BY_PINT_NAME = [  # spelled alike in files and for pint, so that pint can be asked outright
    *("m", "mm", "cm", "ft", "inch", "yard", "kg", "g", "lb", "oz", "N", "kN", "lbf", "kgf", "s", "ms", "min", "hour"),
    *("Hz", "kHz", "W", "kW", "VA", "V", "mV", "A", "mA", "ohm", "kohm", "degC", "degF", "lux", "lumen", "deg", "rad"),
    *("Pa", "kPa", "psi", "km/h", "m/s", "ft/s", "mph", "L/s", "ohm/km", "kcmil", "nit"),
]


@given(
    unit=st.sampled_from(BY_PINT_NAME),
    number=st.floats(min_value=0, max_value=1e9).map(lambda x: float(f"{x:.9g}")),
)
@settings(max_examples=150, deadline=None)
def test_value_agrees_with_pint(unit: str, number: float) -> None:
    dimension = UNITS[unit][0]
    expected = REGISTRY.Quantity(number, unit).to(CANONICAL[dimension]).magnitude
    assert parse(f"{number!r} {unit}", dimension).value == pytest.approx(expected, rel=1e-9, abs=1e-9)


@given(
    text=st.text(st.sampled_from("0123456789 .,/-+'\"\u00b1\u00bdeEmftincdgkWVA%*^()\u00b0\u2126\u0660\n"), max_size=30)
    | st.text(max_size=30),
    dimension=st.sampled_from([*CANONICAL, "conductor"]),
)
@settings(max_examples=400, deadline=None)
def test_any_text_is_a_finite_measure_or_a_message(text: str, dimension: str) -> None:
    try:
        measure = parse(text, dimension)
    except QuantityError as error:
        told = str(error)
    else:
        told = ""
        assert math.isfinite(measure.value)
        assert math.isfinite(measure.u)
        assert measure.u >= 0
    assert "\n" not in told


def test_common_units_do_not_load_pint() -> None:
    code = "import sys; from roomlint.source.quantity import parse; parse('7 ft 6 in ± 1 cm', 'length');"
    code += "sys.exit('pint' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


def test_measure_has_no_uncertainty_unless_given() -> None:
    assert parse("2 m", "length") == Measure(2.0)


@pytest.mark.parametrize(("text", "given"), [("2 m \u00b1 0 mm", True), ("2 m", False), ("2 m +/- 1 cm", True)])
def test_exactly_is_told_apart_from_nothing_said(text: str, *, given: bool) -> None:
    assert parse(text, "length").u_given is given


def test_raised_digits_of_a_unit_are_read() -> None:
    assert parse("2 m\u00b2", "area") == Measure(2.0)
    assert parse("1 cd/m\u00b2", "luminance").value == 1.0
    assert parse("8\u00bd\u2033", "length").value == pytest.approx(8.5 * INCH_M, rel=1e-14)
