"""The units of figures, for reading windows that a house file writes with other units."""

from __future__ import annotations

from roomlint.source.quantity import parse

DIMENSION = {
    "deg": ("angle", 1.0), "m": ("length", 1.0), "mm": ("length", 1e-3), "ms": ("time", 1e-3), "s": ("time", 1.0),
    "dB": ("level", 1.0), "Hz": ("frequency", 1.0), "%": ("ratio", 0.01), "": ("ratio", 1.0), "N": ("force", 1.0),
    "A": ("current", 1.0), "V": ("voltage", 1.0), "VA": ("apparent_power", 1.0), "W": ("power", 1.0),
    "ohm": ("impedance", 1.0), "kg": ("mass", 1.0), "degC": ("temperature", 1.0), "m2": ("area", 1.0),
}  # fmt: skip
"""Unit of a figure: its dimension, and how much of the dimension's own unit one of it is."""


def in_unit(text: str, unit: str) -> float:
    """Return a quantity's number in the unit of a figure; raises `QuantityError` when it does not fit."""
    dimension, scale = DIMENSION[unit]
    return parse(text, dimension).value / scale
