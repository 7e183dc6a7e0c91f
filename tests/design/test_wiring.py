"""What a file may say of outputs and what they drive."""

from __future__ import annotations

from typing import Any

import pytest

from roomlint.testing import changed, room_of

ROOM: dict[str, Any] = {
    "roomlint": 1,
    "room": {"size": {"width": "4 m", "length": "5 m"}},
    "loudspeakers": [{"id": "left"}],
    "electronics": {
        "processor": {"outputs": [{"output": 1, "plays": ["left"]}]},
        "amplifiers": [{"id": "amp", "feeds": [{"output": 1, "loudspeakers": ["left"]}]}],
    },
}


@pytest.mark.parametrize(
    "way", ["electronics.processor.outputs.0.plays", "electronics.amplifiers.0.feeds.0.loudspeakers"]
)
def test_a_loudspeaker_is_named_once_on_an_output(way: str) -> None:
    assert room_of(ROOM).design.amplifiers[0].feeds[0].loudspeakers == ("left",)
    with pytest.raises(ValueError, match=r"^\d+: 'left' stands twice here"):
        room_of(changed(ROOM, {way: ["left", "left"]}))


def test_what_is_driven_must_be_in_the_room() -> None:
    with pytest.raises(ValueError, match="no loudspeaker or subwoofer 'rigth'"):
        room_of(changed(ROOM, {"electronics.processor.outputs.0.plays": ["rigth"]}))


def test_a_processor_may_have_amplifiers_built_in_and_an_amplifier_decodes_nothing() -> None:
    sheet = {"roomlint_product": 1, "id": "one", "kind": "processor", "amplifier": {"channels": 11}}
    data = changed(ROOM, {"electronics.processor.product": "one"})
    product = room_of(data, [sheet]).design.processor
    assert product is not None
    with pytest.raises(ValueError, match="an amplifier has no processor data"):
        room_of(ROOM, [{"roomlint_product": 1, "id": "two", "kind": "amplifier", "processor": {"decoded": 5}}])
