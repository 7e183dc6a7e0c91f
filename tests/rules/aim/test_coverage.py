"""What lies beyond a coverage is more than 6 dB down; how much more its nominal angle does not tell."""

from __future__ import annotations

import math
import re

import pytest
from scipy.special import j1

from roomlint.report.telling import told
from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.verdict import Kind
from roomlint.testing import changed, room_of

ROOM = {
    "roomlint": 1,
    "survey": {"tolerance": "0 mm"},
    "room": {"size": {"width": "4 m", "length": "6 m"}, "ceiling": {"shape": "flat", "height": "2.4 m"}},
    "seats": [
        {"id": "middle", "reference": True, "ear": {"from_left": "2 m", "from_front": "4 m", "height": "1.1 m"}},
    ],
    "loudspeakers": [{
        "id": "left", "label": "M+030", "product": "box", "mounting": {"on": "stand"},
        "position": {"from_left": "2 m", "from_front": "1 m", "height": "1.1 m"},
    }],
}  # fmt: skip
BOX = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker",
    "loudspeaker": {"horizontal_coverage": "90 deg", "vertical_coverage": "60 deg", "baffle_angle": "0 deg"},
}  # fmt: skip
COVERAGE = [rule for rule in load_book().rules if rule.id == "aim.coverage"]
HALF_DEG = 45.0
AT_6_DB = 2.2151
"""Where 2 J1(x) / x is one half: ka sin(theta) at half the nominal coverage of a round piston in a baffle."""


def piston_db(off_deg: float) -> float:
    """Return the level of a piston that is 6 dB down at half its coverage, dB (the far field of a baffled piston)."""
    x = AT_6_DB * math.sin(math.radians(off_deg)) / math.sin(math.radians(HALF_DEG))
    return 20.0 * math.log10(abs(2.0 * float(j1(x)) / x))


@pytest.mark.parametrize("off_deg", [50.0, 60.0, 75.0, 89.0])
def test_only_that_it_is_more_than_6_db_down_is_told(off_deg: float) -> None:
    turned = changed(ROOM, {"loudspeakers.0.aim": {"azimuth": f"{180.0 - off_deg} deg"}})
    (verdict,) = review_room(room_of(turned, (BOX,)), COVERAGE).verdicts
    assert verdict.kind is Kind.FAIL
    assert verdict.figure is not None
    assert verdict.figure.value == pytest.approx(off_deg, abs=0.01)
    sentence = told(verdict, COVERAGE[0])
    assert re.findall(r"[\d.]+ dB", sentence) == ["6 dB"]
    assert "more than 6 dB" in sentence
    assert piston_db(off_deg) < -6.0


def test_a_piston_is_far_from_what_a_square_law_would_tell() -> None:
    """At 90 degrees a square law through 6 dB at 45 says 24 dB, the piston 14.7."""
    assert piston_db(HALF_DEG) == pytest.approx(-6.02, abs=0.01)
    assert piston_db(90.0) == pytest.approx(-14.7, abs=0.05)
