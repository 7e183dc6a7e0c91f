"""The body of a projector: what is taken for granted of it is told with every clearance."""

from __future__ import annotations

from roomlint.sample import room
from roomlint.testing import changed, room_of

LENS = {"from_left": "2.5 m", "from_front": "4.5 m", "height": "2.35 m"}
SHOWN = changed(room(), {"picture": {"kind": "projection", "projector": {"id": "projector", "lens": LENS}}})
PLACED = changed(SHOWN, {"picture.centre": {"from_left": "2.5 m", "from_front": "0.3 m", "height": "1.5 m"}})


def told(data: dict[str, object]) -> str:
    figures = room_of(data).figures
    projector = next(thing for thing in figures.bodies.things if thing.KIND == "projector")
    return "; ".join(figures.bodies.overlap(projector).figure.assumes)


def test_a_projector_without_a_picture_to_face_is_told_to_face_the_front() -> None:
    assert "faces the front" in told(SHOWN)
    assert "faces the front" not in told(PLACED)
