"""Direct sound and mirror image: cancellations worked by hand at several angles, and an article's printed figures."""

from __future__ import annotations

import math

import pytest

from roomlint import roof
from roomlint.figures import boundary, images
from roomlint.figures.enclosure import enclosure

C = 343.2  # m/s at 20 degC, ISO 9613-1
BOX = ((0.0, 0.0), (12.0, 0.0), (12.0, 9.0), (0.0, 9.0))
ROOM = enclosure(BOX, roof.flat(BOX, 2.6))


def _front_wall(behind: float, direct: float, angle_deg: float) -> images.Reflection:
    """Return the reflection off the wall behind a loudspeaker for a listener some degrees off that wall's normal."""
    source = (6.0, 9.0 - behind, 1.1)
    turn = math.radians(angle_deg)
    ear = (6.0 + direct * math.sin(turn), source[1] - direct * math.cos(turn), 1.1)
    (found,) = [one for one in images.reflections_in(ROOM, source, ear) if one.kind == "wall" and one.number == 2]
    return found


# The mirror image stands 2 p behind the source; by the law of cosines it is sqrt(r2 + 4 p r cos(angle) + 4 p2) from
# the listener. p = 0.75, r = 3, 30 deg: sqrt(9 + 7.7942 + 2.25) = 4.3640, 1.3640 m longer, 343.2/2.7280 = 125.8 Hz,
# where c/4 over the slanting way to the wall, 0.75/cos 30 = 0.866 m, would say 99 Hz.
@pytest.mark.parametrize(
    ("behind", "direct", "angle", "image", "hertz"),
    [
        (0.75, 3.0, 0.0, 4.5000, 114.4),
        (0.75, 3.0, 30.0, 4.3640, 125.8),
        (1.20, 3.0, 30.0, 5.2183, 77.4),
        (0.36, 3.0, 30.0, 3.6414, 267.6),
        (0.75, 3.0, 45.0, 4.1969, 143.4),
        (0.75, 3.0, 60.0, 3.9686, 177.2),
        (0.50, 2.0, 80.0, 2.3863, 444.2),
    ],
)
def test_worked_cancellation_of_the_wall_behind(
    behind: float, direct: float, angle: float, image: float, hertz: float
) -> None:
    found = _front_wall(behind, direct, angle)
    assert found.path_m == pytest.approx(image, abs=6e-5)
    assert found.direct_m == pytest.approx(direct)
    assert boundary.path_null_hz(found.direct_m, found.path_m, C) == pytest.approx(hertz, abs=0.06)


# Direct 3.052 m, image 3.679 m: 343.2/(2 x 0.627) = 273.7 Hz.
def test_worked_cancellation_of_a_measured_pair_of_paths() -> None:
    assert boundary.path_null_hz(3.052, 3.679, C) == pytest.approx(273.7, abs=0.05)


# Heights 1.0 and 1.1 m, 3 m apart: direct sqrt(9.01) = 3.0017, off the floor sqrt(9 + 2.1^2) = 3.6620, 259.7 Hz at
# c = 343; ceiling at 2.6: sqrt(9 + 3.1^2) = 4.3139; side wall 6 m off: sqrt(9.01 + 144) = 12.3697.
def test_worked_floor_ceiling_and_side_wall() -> None:
    found = images.reflections_in(ROOM, (6.0, 5.0, 1.0), (6.0, 2.0, 1.1))
    paths = {(one.kind, one.number): one.path_m for one in found}
    assert paths[("floor", 0)] == pytest.approx(3.6620, abs=5e-5)
    assert paths[("ceiling", 0)] == pytest.approx(4.3139, abs=5e-5)
    assert paths[("wall", 1)] == paths[("wall", 3)] == pytest.approx(12.3697, abs=5e-5)
    assert boundary.path_null_hz(math.sqrt(9.01), paths[("floor", 0)], 343.0) == pytest.approx(259.7, abs=0.06)


# A slope of 45 deg from the rear edge: z = 1 + y. The point (5, 4, 1) is (1 + 4 - 1)/sqrt 2 = 2.8284 m under it; its
# mirror image swaps y + 1 and z: (5, 0, 5). The ear (5, 6, 1) is sqrt(36 + 16) = 7.2111 m from it; the bounce is where
# that line meets z = y + 1: (5, 0 + 6 t, 5 - 4 t), 5 - 4 t = 6 t + 1, t = 0.4: (5, 2.4, 3.4).
def test_worked_bounce_off_a_slope() -> None:
    facets = roof.mono_pitch(BOX, 1.0, 10.0, 0.0)
    found = images.reflections_in(enclosure(BOX, facets), (5.0, 4.0, 1.0), (5.0, 6.0, 1.0))
    (slope,) = [one for one in found if one.kind == "ceiling"]
    assert slope.image == pytest.approx((5.0, 0.0, 5.0))
    assert slope.bounce == pytest.approx((5.0, 2.4, 3.4))
    assert slope.path_m == pytest.approx(7.2111, abs=5e-5)


# An acoustics consultancy's article prints 81 Hz for a path longer by 7 ft (1130 ft/s): 1130/14 = 80.7.
def test_printed_cancellation_and_its_odd_multiples() -> None:
    assert [boundary.path_null_hz(10.0, 17.0, 1130.0, number=n) for n in (1, 2, 3)] == pytest.approx(
        [80.714, 242.143, 403.571], abs=1e-3
    )
    # What returns the pressure upside down cancels a whole wavelength apart.
    assert boundary.path_null_hz(10.0, 17.0, 1130.0, inverted=True) == pytest.approx(1130.0 / 7.0)


# Three boundaries 0.35, 1.10 and 1.12 m away dip by 2.6 dB in radiated power and not by the 11 dB that three equal
# ones do; and two of them opposite each other never stack.
def test_two_like_distances_and_a_short_one_leave_a_shallow_dip() -> None:
    _, level = boundary.deepest_power_dip([0.35, 1.10, 1.12], 30.0, 300.0, C)
    assert level == pytest.approx(-2.6, abs=0.05)
