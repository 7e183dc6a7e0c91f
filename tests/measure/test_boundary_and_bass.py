"""What walls and subwoofers do at the seats, bound to a design: against sums by trying, and with its uncertainty."""

from __future__ import annotations

import cmath
import math
import random
from typing import Any

import pytest

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.sample import EAR, room, speaker
from roomlint.testing import changed, room_of

BOOK = load_book()
SPEED_M_S = 343.2
STAND = {"mounting": {"on": "stand"}}


def _two_paths_db(direct_m: float, image_m: float, share: float) -> tuple[float, float]:
    """Return where the sum of a direct and a reflected wave is lowest between 60 and 200 Hz, and how low, by trying."""

    def level(hz: float) -> float:
        k = 2.0 * math.pi * hz / SPEED_M_S
        wave = cmath.exp(-1j * k * direct_m) / direct_m + share * cmath.exp(-1j * k * image_m) / image_m
        return 20.0 * math.log10(abs(wave) * direct_m)

    return min(((hz / 10.0, level(hz / 10.0)) for hz in range(600, 2001)), key=lambda found: found[1])


# Straight ahead, 30 and 60 degrees aside of the seat, each as far from the wall behind it: the way by the wall grows
# by 2 p cos(theta), not by 2 p / cos(theta).
@pytest.mark.parametrize(("aside", "behind"), [(0.0, 0.6), (1.2, 0.7), (1.6, 0.9)])
def test_null_of_the_wall_behind_is_that_of_two_waves_at_any_angle(aside: float, behind: float) -> None:
    data = changed(
        room(speaker("left", "M+030", -aside, EAR[1] - behind, **STAND)),
        {"room.size": {"width": "12 m", "length": "9 m"}, "seats.0.ear.from_left": "6 m",
         "loudspeakers.0.position.from_left": f"{6.0 - aside} m"},
    )  # fmt: skip
    held = room_of(data)
    (one,) = held.design.loudspeakers
    dip = next(dip for dip in held.figures.boundary.dips(one, held.reference_seat) if dip.surface == "front")
    direct, image = math.hypot(aside, EAR[1] - behind), math.hypot(aside, EAR[1] + behind)
    hz, level = _two_paths_db(direct, image, 0.85)
    assert dip.frequency.value == pytest.approx(hz, abs=0.5)
    assert dip.level.value == pytest.approx(level, abs=0.05)


def test_every_figure_of_the_walls_and_of_the_room_carries_the_tapes_uncertainty() -> None:
    data = room(speaker("left", "M+030", -1.0, 2.6, **STAND), survey={"tolerance": "20 mm", "temperature": "20 degC"})
    held = room_of(data)
    (one,), view = held.design.loudspeakers, held.figures.boundary
    figures = [view.power_dip(one), view.corner(one), held.figures.bass.volume()]
    figures += [dip.level for dip in view.dips(one, held.reference_seat)]
    figures += [step for step in (held.figures.bass.axial_step(largest=True),) if step is not None]
    assert all(figure.u > 0.0 for figure in figures)
    # Only the length of the room and where the ear is bring anything to the way to the rear wall: two tapes.
    behind = room_of(changed(data, {"seats.0.ear.from_front": "5.5 m"}))
    seat = behind.reference_seat
    assert behind.figures.boundary.seat_to_wall(seat).u == pytest.approx(0.02 * math.sqrt(2.0), rel=0.01)


def test_a_band_that_nobody_gave_is_told() -> None:
    place = {"from_left": "2.5 m", "from_front": "1.0 m", "height": "0.2 m"}
    held = room_of(room(subwoofers=[{"id": "low", "position": place}]))
    null = held.figures.boundary.own_null(held.design.subwoofers[0])
    assert any("80 Hz" in words for words in null.assumes)


def _row(**more: Any) -> dict[str, Any]:
    front = {"from_left": "2.5 m", "from_front": "0.3 m", "height": "0.2 m"}
    subs = [{"id": "front", "position": front}, {"id": "rear", "position": {**front, "from_front": "5.7 m"}}]
    return room(seats=((-0.8, 0.3), (0.8, 0.0)), subwoofers=subs, **more)


@pytest.mark.parametrize(
    "entered", [{"inverted": True}, {"level": "-10 dB"}, {"delay": "8 ms"}], ids=("polarity", "level", "delay")
)
def test_what_is_entered_for_a_subwoofer_reaches_the_seats(entered: dict[str, Any]) -> None:
    plain = room_of(_row()).figures.bass.seat_spread().value
    other = room_of(_row(calibration={"settings": [{"id": "rear", **entered}]})).figures.bass.seat_spread().value
    assert abs(other - plain) > 0.3


def test_a_dip_moves_with_the_places_and_a_lone_seat_has_one_too() -> None:
    held = room_of(changed(_row(survey={"tolerance": "30 mm"}), {"seats.2": None}))
    bass = held.figures.bass
    one, other = (bass.other_dip(seat).figure for seat in bass.placed_seats())
    assert min(one.u, other.u) > 0.05
    lone = room_of(changed(_row(), {"seats.2": None, "seats.1": None})).figures.bass
    assert lone.own_dip(lone.placed_seats()[0]).figure.value < 0.0


def test_two_places_from_one_wall_move_together() -> None:
    """A room whose width is in doubt moves what is measured from its right as one: between them nothing changes."""
    places = ("1.0 m", "2.0 m")
    data = changed(
        _row(survey={"tolerance": "0 mm", "temperature": "20 degC"}),
        {"room.size.width": "5 m ± 30 mm"} | {f"seats.{n}.ear.from_left": None for n in (0, 1)}
        | {f"seats.{n}.ear.from_right": at for n, at in enumerate(places)},
    )  # fmt: skip
    bass = room_of(data).figures.bass
    readings = {share.reading for share in bass.seat_spread().shares}
    assert len(readings) == 1


def test_the_size_of_a_room_is_told_once_and_fails_nothing() -> None:
    """Published good ratios and rooms at random alike: nobody corrects the size of a room that stands."""
    by = random.Random(7)
    sizes = [(2.7 * wide, 2.7 * long, 2.7) for wide, long in ((1.14, 1.39), (1.28, 1.54), (1.60, 2.33))]
    sizes += [(by.uniform(3.0, 6.0), by.uniform(4.0, 8.0), by.uniform(2.3, 3.0)) for _ in range(20)]
    rules = [rule for rule in BOOK.rules if rule.id in {"bass.room-modes", "bass.room-volume", "bass.proportions"}]
    for width, length, height in sizes:
        data = changed(
            room(), {"seats": None, "room.size": {"width": f"{width:.2f} m", "length": f"{length:.2f} m"},
                     "room.ceiling.height": f"{height:.2f} m"},
        )  # fmt: skip
        told = [verdict for verdict in review_room(room_of(data), rules).verdicts if verdict.kind == "informational"]
        failed = [verdict for verdict in review_room(room_of(data), rules).verdicts if verdict.kind == "fail"]
        assert [verdict.rule for verdict in told] == ["bass.room-modes"]
        assert failed == []
