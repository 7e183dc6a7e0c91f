"""A mount of which only the swivel or only the tilt is written: what is taken for the other is told."""

from __future__ import annotations

import pytest

from roomlint.sample import room, speaker
from roomlint.testing import room_of

BOX = {"kind": "loudspeaker", "loudspeaker": {"horizontal_coverage": "90 deg"}}


@pytest.mark.parametrize(
    ("mounting", "told"),
    [
        ({"swivel": "20 deg"}, ["not tilted on its mount, as no tilt is given"]),
        ({"tilt": "-5 deg"}, ["not swivelled on its mount, as no swivel is given"]),
        ({"swivel": "20 deg", "tilt": "-5 deg"}, []),
        ({}, ["facing square out of the surface it is mounted on"]),
    ],
)
def test_what_is_taken_of_a_turned_mount_is_told(mounting: dict[str, str], told: list[str]) -> None:
    data = room(speaker("side", "M+090", -2.3, 0.0, product=BOX, mounting={"on": "left", **mounting}))
    checked = room_of(data)
    figure = checked.figures.aim.off_axis(checked.design.loudspeakers[0], checked.design.seats[0])
    assert [words for words in figure.assumes if "mount" in words] == told
