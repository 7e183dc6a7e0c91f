"""The figures that a house file can name: what each is of, and where it comes from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from roomlint.design.base import need

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.measure import Figures
    from roomlint.measure.figure import Figure


@dataclass(frozen=True, slots=True)
class Named:
    """A figure by its name."""

    name: str
    unit: str
    of: tuple[str, ...]
    """What it is a figure of: loudspeakers, subwoofers or seats, as a window rule's `each` names them."""
    heard: bool
    """Whether it is of a source as heard at a seat."""
    means: str
    compute: Callable[..., Figure]
    """Takes the figures, the element and, when heard, the seat."""


def _height(figures: Figures, source: Any) -> Figure:  # noqa: ANN401  a loudspeaker or a subwoofer
    place = need(source.position, source, "position")
    return figures.angles.figure("height above the floor", "m", lambda w: w(place.z))


def _ear_height(figures: Figures, seat: Any) -> Figure:  # noqa: ANN401
    ear = need(seat.ear, seat, "ear")
    return figures.angles.figure("ear height above the floor", "m", lambda w: w(ear.z))


def _above_ear(figures: Figures, source: Any, seat: Any) -> Figure:  # noqa: ANN401
    place, ear = need(source.position, source, "position"), need(seat.ear, seat, "ear")
    return figures.angles.figure("height above the ear", "m", lambda w: w(place.z) - w(ear.z))


SOURCES = ("loudspeakers", "subwoofers")
NAMED = {
    named.name: named
    for named in (
        Named(
            "azimuth",
            "deg",
            SOURCES,
            heard=True,
            means="angle from straight ahead as heard at the seat, positive to the left",
            compute=lambda figures, source, seat: figures.angles.azimuth(source, seat),
        ),
        Named(
            "outward",
            "deg",
            ("loudspeakers",),
            heard=True,
            means="angle from straight ahead toward the side that the label names",
            compute=lambda figures, source, seat: figures.angles.outward(source, seat),
        ),
        Named(
            "elevation",
            "deg",
            SOURCES,
            heard=True,
            means="angle above the seat's ear",
            compute=lambda figures, source, seat: figures.angles.elevation(source, seat),
        ),
        Named(
            "distance",
            "m",
            SOURCES,
            heard=True,
            means="distance from the seat's ear",
            compute=lambda figures, source, seat: figures.angles.distance(source, seat),
        ),
        Named("height", "m", SOURCES, heard=False, means="height of the centre above the floor", compute=_height),
        Named("height-above-ear", "m", SOURCES, heard=True, means="height above the seat's ear", compute=_above_ear),
        Named(
            "ear-height", "m", ("seats",), heard=False, means="height of the ear above the floor", compute=_ear_height
        ),
        Named(
            "seat-to-wall",
            "m",
            ("seats",),
            heard=False,
            means="distance from the ear to the nearest wall",
            compute=lambda figures, seat: figures.boundary.seat_to_wall(seat),
        ),
        Named(
            "deepest-dip",
            "dB",
            ("seats",),
            heard=False,
            means="lowest bass level of the seat, over a third of an octave, against the mean of the other seats",
            compute=lambda figures, seat: figures.bass.deepest_dip(seat),
        ),
    )
}
"""All names, in the order that they are listed."""
