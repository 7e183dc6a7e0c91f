"""The living room under a gable, judged row by row: what each line must say was worked out by hand from the drawing.

Feet stay feet: `dx` is how far to the side, `dy` how far ahead of the ear, `rise` how far above it. The reference ear
is 9.5 ft from the left, 14 ft from the front, 3.5 ft up.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from roomlint.review.book import load_book
from roomlint.review.session import Choices, run
from roomlint.source.files import shown

if TYPE_CHECKING:
    from roomlint.review.review import RoomReview
    from roomlint.review.verdict import Verdict

FILE = Path(__file__).parent / "living-room" / "living-room.room.yaml"
FT_M = 0.3048
LOOKED_AT = frozenset({"layout", "angle", "aim", "distance", "boundary", "bass", "mount"})
"""The chapters that the rows below are of; the electronics are other chapters' and other tests'."""


@cache
def reviewed() -> RoomReview:
    review = run([shown(str(FILE))], load_book(), Choices(today=None))
    assert not review.problems, review.problems
    assert not review.troubles
    return review.rooms[0]


def of(rule: str, subject: str) -> Verdict:
    (found,) = [v for v in reviewed().verdicts if v.rule == rule and v.subject == subject]
    return found


def both(*names: str) -> str:
    return "+".join(f"loudspeaker/{name}" for name in names)


DESIGN = "design/living-room-6-5"
ROWS = [
    # The layout: six upper over five, no name of the standard. Two channels more are declared and not fitted.
    ("layout.channel-set", DESIGN, "pass", None),
    ("layout.one-label-each", "loudspeaker/left", "pass", None),
    ("layout.pairs-complete", "loudspeaker/upper-beside-left", "pass", None),
    ("layout.published-label", "loudspeaker/upper-beside-left", "pass", None),
    ("channel.mode-channels", "listening mode/stereo", "pass", None),
    ("channel.mode-channels", "listening mode/all", "pass", None),
    ("channel.fed", "loudspeaker/centre", "pass", None),
    ("channel.amplifier-outputs", "amplifier/amplifier-front", "pass", None),
    # left: dx 6.5, dy 11.75: atan(6.5/11.75) = 28.95.
    ("angle.front-pair", "loudspeaker/left", "pass", 28.951),
    ("angle.front-pair", "loudspeaker/right", "pass", 28.951),
    # The picture is 85 x 16/sqrt(337) = 74.08 in wide, half of it 3.087 ft, 13.583 ft ahead: 12.80; 28.95 - 12.80.
    ("angle.picture-edge", "loudspeaker/left", "fail", 16.148),
    # The tower's middle is 4 in under the ear, 13.428 ft away: atan(-0.3333/13.428) = -1.42.
    ("angle.ear-elevation", "loudspeaker/left", "pass", -1.422),
    # The centre: 20 in under the ear at 12.5 ft: -7.59; the picture's middle 10 in over it at 13.583 ft: 3.51.
    ("angle.centre-azimuth", "loudspeaker/centre", "pass", 0.0),
    ("angle.centre-picture", "loudspeaker/centre", "fail", 11.104),
    # In the rear corners: dx 8.5, dy -8.0: 90 + atan(8/8.5) = 133.26. It claims the home tolerance, which ends at 135.
    ("layout.departure", "loudspeaker/surround-left", "pass", 133.264),
    ("angle.surround-pair", "loudspeaker/surround-left", "notApplicable", None),
    # Half a foot over the ear at 11.673 ft: atan(0.5/11.673) = 2.45.
    ("angle.ear-elevation", "loudspeaker/surround-left", "pass", 2.453),
    # upper-front: dx 8.9167, dy 9: 44.73 of 30 to 60; rise 4.75 at 12.669: atan(4.75/12.669) = 20.55, 9.45 short of 30.
    ("angle.upper-azimuth", "loudspeaker/upper-front-left", "pass", 44.734),
    ("angle.upper-elevation", "loudspeaker/upper-front-left", "fail", 20.553),
    # upper-beside: square beside the seat; atan(4.75/8.9167) = 28.04, 1.96 short.
    ("angle.upper-azimuth", "loudspeaker/upper-beside-left", "pass", 90.0),
    ("angle.upper-elevation", "loudspeaker/upper-beside-right", "fail", 28.045),
    # upper-rear: dx 6.5, dy -8.4167: 90 + 52.32: inside 100 to 150 of two tables, past the 135 that all three share, a
    # note; rise 5.5 at 10.634: 27.35.
    ("angle.upper-azimuth", "loudspeaker/upper-rear-left", "fail", 142.321),
    ("angle.upper-elevation", "loudspeaker/upper-rear-left", "fail", 27.347),
    # Among six no pair has to serve front and rear alike.
    ("angle.over-head", "loudspeaker/upper-beside-left", "notApplicable", None),
    # 90 - 44.73, and 142.32 - 90; at the ear 133.26 - 28.95.
    ("angle.neighbour-gap", both("upper-front-left", "upper-beside-left"), "pass", 45.266),
    ("angle.neighbour-gap", both("upper-beside-left", "upper-rear-left"), "pass", 52.321),
    ("angle.neighbour-gap", both("left", "surround-left"), "pass", 104.313),
    # The widest gap at the ear is the one between left and surround, 104.31; the rear's is 360 - 2 x 133.26 = 93.47.
    ("angle.largest-gap", both("left", "right", "centre", "surround-left", "surround-right"), "pass", 104.313),
    # 7 in off the wall, its own depth: nothing behind the cabinet.
    ("layout.on-surface", "loudspeaker/upper-beside-left", "pass", 0.0),
    # The surround's middle is 12 in off the rear wall: 9 in of cabinet and 3 in of bracket.
    ("layout.on-surface", "loudspeaker/surround-right", "pass", 0.0),
    # The beside pair hangs above the glass: 8 ft 3 in less half of 12 in less 7 ft is 0.75 ft at the least.
    ("layout.clear-of-openings", "loudspeaker/upper-beside-left+opening/terrace-glass", "pass", 0.75 * FT_M),
    # Square out of the left wall, its axis 20 down: sofa-1 is 6.75 ft to the right, 4.75 down and 9 back. Along the
    # axis that is 6.75 cos 20 + 4.75 sin 20 = 7.968 ft, beside it 9: atan(9/7.968) = 48.48, past half of 90.
    ("aim.coverage", "loudspeaker/upper-front-left", "fail", 48.482),
    # Beside: the nearest of the three, sofa-1, is 6.75 ft off: atan(4.75/6.75) = 35.13 down, less 20 of the baffle.
    ("aim.coverage-height", "loudspeaker/upper-beside-left", "pass", 15.134),
    # Mirrored about the middle: no difference left.
    ("layout.pair-angle", both("upper-rear-left", "upper-rear-right"), "pass", 0.0),
    ("layout.pair-distance", both("upper-rear-left", "upper-rear-right"), "pass", 1.0),
    # A gable of 9 and 14 ft: the way from the ear to the eaves' wall is clear.
    ("layout.line-of-sight", "loudspeaker/upper-rear-left+seat/sofa-2", "pass", None),
    # The root of 11.75^2 + 6.5^2 + 0.3333^2 is 13.432 ft, 4.094 m: over the four metres that the tutorials stop at.
    ("distance.listening", "loudspeaker/left", "fail", 13.432 * FT_M),
    # 133.26 is 13.26 past the 120 that the layout's own range ends at: the departure is one.
    ("layout.departure-needed", "loudspeaker/surround-left", "pass", -13.264),
]


@pytest.mark.parametrize(("rule", "subject", "kind", "figure"), ROWS, ids=lambda x: str(x).rsplit("/", 1)[-1])
def test_row(rule: str, subject: str, kind: str, figure: float | None) -> None:
    found = of(rule, subject)
    assert found.kind.value == kind
    if figure is not None:
        assert found.figure is not None
        assert found.figure.value == pytest.approx(figure, abs=2e-3)


def test_the_lead_is_told_these_warnings_and_no_other() -> None:
    graver = {
        (v.rule, v.subject.removeprefix("loudspeaker/"))
        for v in reviewed().verdicts
        if v.kind.value == "fail" and v.rule.partition(".")[0] in LOOKED_AT and str(v.level) in {"warning", "error"}
    }
    uppers = [f"upper-{place}-{side}" for place in ("front", "beside", "rear") for side in ("left", "right")]
    assert graver == {
        *(("angle.upper-elevation", name) for name in uppers),
        ("aim.coverage", "upper-front-left"),
        ("aim.coverage", "upper-front-right"),
        ("boundary.surface-null", "centre"),
        ("mount.push-over", "left"),
        ("mount.push-over", "right"),
    }


def test_everything_that_the_file_leaves_out_is_told() -> None:
    ways = {(one.words, one.key): one.way for one in reviewed().worked}
    assert ways["terrace-glass", "from_wall_left"] == "wall"
    assert ways["sofa-3", "ear"] == "row"
    assert ways["sofa-3", "ear.height"] == "riser"
    assert ways["picture", "width"] == "diagonal"
    assert ways["upper-rear-right", "position"] == "pair"


def test_no_remedy_of_the_mirrored_names_a_place_that_the_file_does_not_give() -> None:
    remedies = [v.remedy for v in reviewed().verdicts if v.remedy is not None]
    assert remedies
    assert not any(remedy.words.endswith("-right") or remedy.words == "right" for remedy in remedies)
    assert ("loudspeaker/upper-rear-left", "loudspeaker/upper-rear-right") in {
        (remedy.subject, remedy.mirrored) for remedy in remedies
    }
    assert all(not remedy.mirrored for remedy in remedies if remedy.subject == "loudspeaker/centre")
