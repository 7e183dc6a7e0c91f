"""Mirror-image reflections against pyroomacoustics' image sources and against worked tables."""

from __future__ import annotations

import numpy as np
import pyroomacoustics as pra
import pytest

from roomlint import roof
from roomlint.figures import enclosure, images

BOX = ((0.0, 0.0), (6.0, 0.0), (6.0, 4.5), (0.0, 4.5))
SOURCE, EAR = (1.0, 1.2, 1.0), (4.0, 2.25, 1.1)


def _ours() -> tuple[images.Reflection, ...]:
    return images.reflections_in(enclosure.room(BOX, roof.flat(BOX, 2.7)), SOURCE, EAR)


# A 6.0 x 4.5 x 2.7 m room, absorption 0.1, c = 343 m/s; the formulas (path difference over c; spreading) are those of
# the Master Handbook of Acoustics, 4th ed., p. 76, the images those of pyroomacoustics 0.10.1.
@pytest.mark.parametrize(
    ("image", "path", "delay", "level"),
    [
        ((1, 1.2, -1), 3.8095, 1.835, -2.03),
        ((1, -1.2, 1), 4.5730, 4.061, -3.61),
        ((1, 1.2, 4.4), 4.5818, 4.087, -3.63),
        ((-1, 1.2, 1), 5.1100, 5.627, -4.58),
        ((1, 7.8, 1), 6.3097, 9.124, -6.41),
        ((11, 1.2, 1), 7.0790, 11.367, -7.41),
    ],
)
def test_worked_first_reflections(image: tuple[float, float, float], path: float, delay: float, level: float) -> None:
    (found,) = [bounce for bounce in _ours() if bounce.image == pytest.approx(image)]
    assert found.path_m == pytest.approx(path, abs=5e-5)
    assert found.direct_m == pytest.approx(3.1800, abs=5e-5)
    assert found.delay_ms(343.0) == pytest.approx(delay, abs=1.5e-3)
    assert found.level_db(0.1) == pytest.approx(level, abs=0.006)


def test_images_are_those_of_pyroomacoustics() -> None:
    room = pra.ShoeBox([6.0, 4.5, 2.7], fs=48_000, max_order=1, materials=pra.Material(0.1))
    room.add_source(list(SOURCE))
    room.add_microphone(list(EAR))
    room.image_source_model()
    theirs = np.asarray(room.sources[0].images).T
    first_order = sorted(tuple(image) for image in theirs if not np.allclose(image, SOURCE))
    ours = sorted(bounce.image for bounce in _ours())
    assert np.allclose(ours, first_order, atol=1e-5)


def test_an_l_shaped_room_sees_the_images_that_pyroomacoustics_sees() -> None:
    outline = ((0.0, 0.0), (5.0, 0.0), (5.0, 2.5), (2.5, 2.5), (2.5, 5.0), (0.0, 5.0))
    source, ear = (1.3, 4.1, 1.0), (3.4, 1.2, 1.2)
    room = pra.Room.from_corners(np.array(outline).T, fs=48_000, max_order=1)
    room.extrude(2.4)
    room.add_source(list(source))
    room.add_microphone(list(ear))
    room.image_source_model()
    theirs = np.asarray(room.sources[0].images).T[np.asarray(room.visibility[0][0], dtype=bool)]
    first_order = sorted(tuple(image) for image in theirs if not np.allclose(image, source, atol=1e-4))
    shape = enclosure.room(outline, roof.flat(outline, 2.4))
    ours = sorted(bounce.image for bounce in images.reflections_in(shape, source, ear))
    assert len(ours) == len(first_order)
    assert np.allclose(ours, first_order, atol=1e-4)


# Needed absorption for a reflection 10 dB down, by path ratio: 1 - 0.1 ratio^2 worked by hand.
@pytest.mark.parametrize(
    ("ratio", "absorption"), [(1.2, 0.856), (1.4, 0.804), (1.6, 0.744), (2.0, 0.600), (2.5, 0.375), (3.17, 0.0)]
)
def test_worked_absorption_needed(ratio: float, absorption: float) -> None:
    assert images.absorption_needed(1.0, ratio, -10.0) == pytest.approx(absorption, abs=5e-4)
