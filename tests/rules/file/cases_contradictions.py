"""Cases of what a file says twice and differently."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import at, room, speaker
from roomlint.testing import Case, Never, changed

SPEAKERS = (speaker("far", "M+000", 0.0, 3.0), speaker("near", "M+030", 0.0, 2.0))
BARE = room(*SPEAKERS)
SUB: dict[str, Any] = {"id": "sub", "position": {"from_left": "1 m", "from_front": "0.3 m", "height": "0.3 m"}}
WITH_SUB = room(subwoofers=[SUB])
# The processor makes 1.0 m over 343.2 m/s of the two distances: 2.9138 ms for the near one.
BOTH = room(
    *SPEAKERS,
    calibration={
        "settings": [
            {"id": "far", "distance": "3.0 m"},
            {"id": "near", "distance": "2.0 m", "delay": "2.91 ms"},
        ]
    },
)
DELAY = "calibration.settings.1.delay"
NO_MISSING = "an entry, or a label, is there or it is not; what is not entered contradicts nothing"

TURNED = room(
    speaker("side", "M+090", -2.3, 0.0, aim={"azimuth": "-90 deg", "elevation": "0 deg"},
            mounting={"on": "left", "swivel": "0 deg", "tilt": "0 deg"})
)  # fmt: skip
"""On the left wall, which faces right, and aimed there."""
SWIVEL, TILT = "loudspeakers.0.mounting.swivel", "loudspeakers.0.mounting.tilt"

REACH = "file.reach-and-place"
ARM = room(speaker("side", "M+090", -2.35, 0.0, mounting={"on": "left", "extension": "0.15 m"}))
"""On an arm on the left wall, 0.15 m off it, as far as the arm reaches."""
POLE = room(
    picture={
        "kind": "display", "centre": at(0, 3.35), "mounting": {"on": "front", "extension": "0.10 m"},
        "projector": {"id": "beamer", "lens": at(0, 0, 0.8), "mounting": {"on": "ceiling", "drop": "0.50 m"}},
    }
)  # fmt: skip
"""A display 0.15 m off the front wall, and a projector 0.6 m under the ceiling."""
EXTENSION, DROP = "loudspeakers.0.mounting.extension", "picture.projector.mounting.drop"

SIZE = "file.picture-and-sheet"
PAINTING = room(picture={"kind": "display", "product": "display", "width": "1.439 m", "height": "0.809 m"})
"""65 in by 16:9 are 1.4390 m by 0.8094 m."""


def display(**more: Any) -> list[dict[str, Any]]:
    """Return the sheet of a display 65 in across, in a cabinet 10 mm wider."""
    data = {
        "kind": "display",
        "width": "1.449 m",
        "height": "0.83 m",
        "picture": {"diagonal": "65 in", "aspect": 1.7778},
    }
    return [{"roomlint_product": 1, "id": "display", **{key: value for key, value in (data | more).items() if value}}]


CLEAR = "file.rack-clear"
RACK = "electronics.racks.0"
# Its front is 2.5 m behind the front wall and looks there, its back 3.0 m before the rear wall.
RACKED = room(electronics={"amplifiers": "none", "racks": [
    {"id": "rack", "position": at(1.0, 1.0, -1.2), "facing": "0 deg", "width": "0.6 m", "height": "1.0 m", "depth": "0.5 m",
     "front_clear": "2.4 m"}]})  # fmt: skip
POST = {"id": "post", "kind": "post", "from_left": "3.4 m", "from_front": "1.0 m", "width": "0.2 m", "depth": "0.2 m",
        "bottom": "0 m", "top": "2.6 m"}  # fmt: skip

CASES: list[Case | Never] = [
    Case(SIZE, "pass", PAINTING, display(), figure=0.05, within=0.1, source="65 in by 16:9, to a millimetre"),
    Case(SIZE, "fail", changed(PAINTING, {"picture.width": "1.884 m", "picture.height": "1.060 m"}), display(), level="warning",
         figure=30.9, within=0.1, source="85 over 65 is 1.308"),
    Case(SIZE, "fail", changed(PAINTING, {"picture.height": "1.079 m"}), display(), figure=33.3, within=0.1,
         source="4:3 instead of 16:9: 1.079 over 0.809"),
    # Without a diagonal on its sheet a display is held against its cabinet: as large at most, and no small part of it.
    Case(SIZE, "pass", PAINTING, display(picture=None), figure=-0.7, within=0.1, source="1.439 over 1.449"),
    Case(SIZE, "fail", changed(PAINTING, {"picture.width": "1.60 m"}), display(picture=None), figure=10.4, within=0.1,
         source="1.60 over 1.449"),
    Case(SIZE, "fail", changed(PAINTING, {"picture.width": "0.80 m", "picture.height": "0.45 m"}), display(picture=None),
         figure=29.8, within=0.1, source="0.85 less 0.80 over 1.449"),
    # No picture is wider than its screen, whatever the sheet says of a diagonal.
    Case(SIZE, "fail", changed(PAINTING, {"picture.kind": "projection"}), display(picture=None, kind="screen", width="1.0 m"),
         figure=43.9, within=0.1, source="1.439 over 1.0"),
    Case(SIZE, "pass", changed(PAINTING, {"picture.kind": "projection"}), display(picture=None, kind="screen", height="0.1 m"),
         figure=-0.7, within=0.1, source="a case that it is let down from, 10 mm wider"),
    Case(SIZE, "review", changed(PAINTING, {"picture.width": "1.467 m ± 10 mm"}), display()),
    Case(SIZE, "open", changed(PAINTING, {"picture.product": None}), says="product"),
    Case(SIZE, "open", changed(PAINTING, {"picture.height": None}), display(), says="height"),
    Case(SIZE, "open", PAINTING, display(picture=None, width=None), says="width"),
    Case(SIZE, "open", changed(PAINTING, {"picture.kind": "projection"}), display(picture=None, kind="screen", width=None), says="diagonal"),
    Case(SIZE, "notApplicable", changed(PAINTING, {"picture.width": None, "picture.height": None}), display()),
    Case(SIZE, "notApplicable", room()),
    Case(CLEAR, "pass", RACKED, figure=-0.1, source="2.4 less 2.5 m"),
    Case(CLEAR, "fail", changed(RACKED, {f"{RACK}.front_clear": "3.0 m"}), level="warning", figure=0.5, source="3.0 less 2.5 m"),
    Case(CLEAR, "fail", changed(RACKED, {f"{RACK}.rear_clear": "3.4 m"}), figure=0.4, source="3.4 less 3.0 m"),
    Case(CLEAR, "fail", changed(RACKED, {"room.obstacles": [POST]}), figure=1.1, source="2.4 m less 1.3 m to the post"),
    Case(CLEAR, "fail", changed(RACKED, {f"{RACK}.facing": "90 deg", f"{RACK}.front_clear": "4.0 m"}), figure=0.5,
         source="it looks to the left wall, 3.5 m off"),
    Case(CLEAR, "review", changed(RACKED, {f"{RACK}.front_clear": "2.61 m", "survey.tolerance": "30 mm"})),
    Case(CLEAR, "open", changed(RACKED, {f"{RACK}.position": None}), says="position"),
    Case(CLEAR, "open", changed(RACKED, {f"{RACK}.width": None}), says="width"),
    Case(CLEAR, "notApplicable", changed(RACKED, {f"{RACK}.front_clear": None})),
    Case(CLEAR, "notApplicable", room()),
    Case("file.aim-and-mount", "pass", TURNED, figure=0.0, source="both face right", within=1e-6),
    Case("file.aim-and-mount", "fail", changed(TURNED, {SWIVEL: "20 deg"}), level="warning", figure=20.0, source="turned in one plane"),
    Case("file.aim-and-mount", "fail", changed(TURNED, {TILT: "-12 deg"}), figure=12.0, source="turned in one plane"),
    # What is not written of the two is told as taken for none.
    Case("file.aim-and-mount", "pass", changed(TURNED, {TILT: None}), figure=0.0, source="both face right", within=1e-6),
    Case("file.aim-and-mount", "open", changed(TURNED, {"loudspeakers.0.aim": {"elevation": "0 deg"}}), says="azimuth"),
    Case("file.aim-and-mount", "open", changed(TURNED, {"loudspeakers": None}), says="loudspeakers"),
    Case("file.aim-and-mount", "open", changed(TURNED, {"loudspeakers.0.mounting": None}), says="mounting"),
    Case("file.aim-and-mount", "notApplicable", changed(TURNED, {SWIVEL: None, TILT: None})),
    Case("file.aim-and-mount", "notApplicable", changed(TURNED, {"loudspeakers.0.aim": None})),
    Case("file.aim-and-mount", "notApplicable", changed(TURNED, {"loudspeakers.0.mounting.on": "stand"})),
    Case(REACH, "pass", ARM, figure=0.0, source="0.15 m off the wall, and as far"),
    Case(REACH, "fail", changed(ARM, {EXTENSION: "0.40 m"}), level="warning", figure=0.25, source="0.40 less 0.15 m"),
    Case(REACH, "pass", POLE, subject="picture/picture", figure=-0.05, source="0.10 less 0.15 m"),
    Case(REACH, "fail", changed(POLE, {"picture.mounting.extension": "0.5 m"}), subject="picture/picture", figure=0.35,
         source="0.5 less 0.15 m"),
    Case(REACH, "pass", POLE, subject="projector/beamer", figure=-0.1, source="0.5 less 0.6 m"),
    Case(REACH, "fail", changed(POLE, {DROP: "2.0 m"}), subject="projector/beamer", figure=1.4, source="2.0 less 0.6 m"),
    Case(REACH, "review", changed(ARM, {EXTENSION: "0.20 m", "survey.tolerance": "30 mm"})),
    Case(REACH, "open", changed(POLE, {"picture.projector.lens": None}), subject="projector/beamer", says="lens"),
    Case(REACH, "open", changed(ARM, {"loudspeakers.0.mounting": None}), says="mounting"),
    Case(REACH, "notApplicable", changed(ARM, {EXTENSION: None}), says="is not written"),
    Case(REACH, "notApplicable", changed(ARM, {"loudspeakers.0.mounting.on": "stand"}), says="on a stand"),
    Case("file.delay-and-distance", "pass", BOTH, subject="loudspeaker/near+setting/near"),
    Case("file.delay-and-distance", "fail", changed(BOTH, {DELAY: "3.5 ms"}), subject="loudspeaker/near+setting/near", level="error",
         figure=0.5862, source="3.5 ms less 1.0 m over 343.2 m/s"),
    Case("file.delay-and-distance", "notApplicable", BOTH, subject="loudspeaker/far+setting/far"),
    Case("file.delay-and-distance", "notApplicable", BARE),
    Case("file.delay-and-distance", "review", changed(BOTH, {DELAY: "3.0 ms ± 0.05 ms"}), subject="loudspeaker/near+setting/near"),
    Never("file.delay-and-distance", "open", NO_MISSING),
    # What waits for it: neither entry is judged against the drawing while the two contradict each other.
    Case("distance.delay-entered", "open", changed(BOTH, {DELAY: "3.5 ms"}), subject="loudspeaker/near",
         says="file.delay-and-distance"),
    Case("file.subwoofer-label", "pass", WITH_SUB),
    Case("file.subwoofer-label", "pass", changed(WITH_SUB, {"subwoofers.0.label": "LFE1"})),
    # A subwoofer under a loudspeaker's label would let the channel set look complete.
    Case("file.subwoofer-label", "fail", changed(WITH_SUB, {"subwoofers.0.label": "M+030"}), level="error", says="M+030"),
    Case("file.subwoofer-label", "notApplicable", BARE),
    Never("file.subwoofer-label", "open", NO_MISSING),
    Case("file.loudspeaker-label", "pass", BARE),
    Case("file.loudspeaker-label", "fail", changed(BARE, {"loudspeakers.0.label": "LFE1"}), subject="loudspeaker/far",
         level="error"),
    Case("file.loudspeaker-label", "open", changed(BARE, {"loudspeakers.0.label": None}), subject="loudspeaker/far"),
    Case("file.loudspeaker-label", "notApplicable", room()),
]  # fmt: skip

EDGES: list[Edge] = [
    Edge(
        SIZE,
        changed(PAINTING, {"picture.height": "0.8094 m"}),
        "picture.width",
        1.439,
        1.6,
        1,
        unit="m",
        products=display(),
    ),
    Edge(CLEAR, RACKED, f"{RACK}.front_clear", 1.0, 4.0, 1),
    Edge(REACH, ARM, EXTENSION, 0.1, 0.6, 1),
    Edge("file.aim-and-mount", TURNED, SWIVEL, 1.0, 12.0, 1, unit="deg"),
    Edge(
        "file.delay-and-distance",
        BOTH,
        DELAY,
        2.5,
        3.3,
        2,
        unit="ms",
        scale=1e-3,
        subject="loudspeaker/near+setting/near",
    ),
]
