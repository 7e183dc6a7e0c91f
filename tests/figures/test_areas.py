"""Areas of walls under any ceiling close the room: what faces one way faces the other way too."""

from __future__ import annotations

import math

import pytest

from roomlint import roof
from roomlint.cutting import inward_normal
from roomlint.figures import areas
from roomlint.figures.areas import Patch
from roomlint.plane import area_m2

BOX = ((0.0, 0.0), (5.0, 0.0), (5.0, 6.0), (0.0, 6.0))
ELL = ((0.0, 0.0), (5.0, 0.0), (5.0, 3.0), (3.0, 3.0), (3.0, 6.0), (0.0, 6.0))
TURNED = tuple((0.8 * x - 0.6 * y, 0.6 * x + 0.8 * y) for x, y in ELL)
ROOMS = {
    "flat": (BOX, roof.flat(BOX, 2.6)),
    "clockwise": (BOX[::-1], roof.mono_pitch(BOX[::-1], 2.0, 3.0, 90.0)),
    "gable": (BOX, roof.gable(BOX, 2.0, 3.5, -90.0, ridge_at_m=2.0)),
    "pitch over an L": (ELL, roof.mono_pitch(ELL, 2.0, 3.2, -90.0)),
    "gable over an L": (ELL, roof.gable(ELL, 2.0, 3.5, 0.0)),
    "turned": (TURNED, roof.mono_pitch(TURNED, 2.0, 3.2, 30.0)),
    "part-sloped": (BOX, roof.part_sloped(BOX, 2.8, 1.8, 1.2, [-90.0, 90.0])),
    "tray": (BOX, roof.tray(BOX, 2.5, 2.8, (1.0, 4.0, 1.0, 4.0), 0.3)),
}


@pytest.mark.parametrize("name", ROOMS)
def test_surfaces_of_a_room_close_it(name: str) -> None:
    outline, facets = ROOMS[name]
    total = [0.0, 0.0, area_m2(outline)]
    for number, area in enumerate(areas.wall_areas_m2(outline, facets)):
        x, y = inward_normal(outline, number)
        total[0] += area * x
        total[1] += area * y
    for facet in facets:
        for axis in range(3):
            total[axis] += facet.area_m2 * facet.normal[axis]
    assert total == pytest.approx([0.0, 0.0, 0.0], abs=1e-6)


def test_walls_of_a_box_by_hand() -> None:
    assert areas.wall_areas_m2(*ROOMS["flat"]) == pytest.approx((13.0, 15.6, 13.0, 15.6))


def test_gable_end_by_hand() -> None:
    outline, facets = BOX, roof.gable(BOX, 2.0, 3.5, 0.0)
    end = 5.0 * 2.0 + 5.0 * 1.5 / 2.0
    assert areas.wall_areas_m2(outline, facets) == pytest.approx((end, 12.0, end, 12.0))


def test_what_two_patches_share_by_hand() -> None:
    window, curtain = Patch(1.0, 0.9, 1.2, 1.1), Patch(0.5, 0.0, 1.0, 2.4)
    assert window.common_m2(curtain) == pytest.approx(0.5 * 1.1)
    assert curtain.common_m2(window) == pytest.approx(0.5 * 1.1)
    assert window.common_m2(Patch(3.0, 0.0, 1.0, 2.4)) == 0.0
    assert math.isclose(window.area_m2, 1.32)
