"""Drivers of a front, and noise by octave, as a file tells them."""

from __future__ import annotations

from typing import Any

import pytest

from roomlint.sample import at, room
from roomlint.testing import changed, room_of

SHEET: dict[str, Any] = {
    "roomlint_product": 1, "id": "slim", "kind": "loudspeaker",
    "loudspeaker": {"drivers": [
        {"right": "-100 mm", "to": "1.3 kHz"}, {"right": "100 mm", "to": "2.5 kHz"},
        {"right": "0 mm", "from": "2.5 kHz"},
    ]},
}  # fmt: skip
ROOM = room({"id": "centre", "label": "M+000", "product": "slim"})


def test_drivers_are_read_with_their_places_and_bands() -> None:
    speaker = room_of(ROOM, [SHEET]).design.loudspeakers[0]
    assert speaker.product is not None
    assert speaker.product.loudspeaker is not None
    drivers = speaker.product.loudspeaker.drivers
    found = [(one.right_m, one.from_hz, one.to_hz) for one in drivers]
    assert [[None if q is None else q.value for q in row] for row in found] == [
        [-0.1, None, 1300.0], [0.1, None, 2500.0], [0.0, 2500.0, None],
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"loudspeaker.drivers.0.from": "2 kHz"}, "does not begin below its end"),
        ({"loudspeaker.drivers.0.right": None}, "right"),
    ],
)
def test_drivers_that_nobody_builds_are_refused(changes: dict[str, Any], says: str) -> None:
    with pytest.raises(ValueError, match=says):
        room_of(ROOM, [changed(SHEET, changes)])


def test_a_band_of_noise_that_is_no_octave_is_refused() -> None:
    with pytest.raises(ValueError, match="750 Hz"):
        room_of(room(noise={"octaves": {"750 Hz": "20 dB"}}))


def test_where_every_driver_is_listed_a_spacing_beside_them_is_told_as_not_looked_at() -> None:
    from roomlint.design.element import unread
    from roomlint.review.book import load_book
    from roomlint.review.engine import review_room

    both = changed(SHEET, {"loudspeaker.driver_spacing": "180 mm", "loudspeaker.crossover": "2 kHz"})
    data = changed(ROOM, {"loudspeakers.0.position": at(0.0, 2.0), "loudspeakers.0.aim": {"seat": "seat"}})
    one = room_of(data, [both])
    review_room(one, [rule for rule in load_book().rules if rule.id == "aim.centre-interference"])
    left = {key.key for key in unread(one.design.products[0])}
    assert {"loudspeaker.driver_spacing", "loudspeaker.crossover"} <= left
