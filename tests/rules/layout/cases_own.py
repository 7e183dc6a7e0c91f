"""Cases of layouts that the standard does not list."""

from __future__ import annotations

from offsets import EMPTY, LS, RS, C, L, R, room, speaker

from roomlint.testing import Case, Never, changed

PAIRS, LABEL, SET = "layout.pairs-complete", "layout.published-label", "layout.channel-set"
SIX = [
    speaker("front-left", "U+045", -1.3, 1.3, 1.3),
    speaker("front-right", "U-045", 1.3, 1.3, 1.3),
    speaker("beside-left", "U+090", -1.8, 0.0, 1.3),
    speaker("beside-right", "U-090", 1.8, 0.0, 1.3),
    speaker("rear-left", "U+135", -1.3, -1.3, 1.3),
    speaker("rear-right", "U-135", 1.3, -1.3, 1.3),
]
OWN = room(L, R, C, LS, RS, *SIX, layout="6+5+0")
UNFITTED = {"electronics": {"processor": {"id": "brain", "unfitted": ["U+090", "U-090"]}}}
HALF = changed(OWN, {"loudspeakers.10": None})

CASES: list[Case | Never] = [
    Case(SET, "pass", OWN, says="as many loudspeakers in each layer as 6+5+0 names"),
    Case(SET, "fail", HALF, says="6+5+0 is 6 upper, 5 ear-layer, 0 bottom; here are 5, 5, 0"),
    # Two that are declared and left out on purpose count as named.
    Case(SET, "pass", changed(OWN, {"loudspeakers": [L, R, C, LS, RS, *SIX[:2], *SIX[4:]], **UNFITTED})),
    # A processor that takes six upper channels only over seven ear-layer ones has two declared that are not fitted.
    Case(SET, "pass", changed(OWN, {"electronics": {"processor": {"id": "brain", "unfitted": ["M+135", "M-135"]}}})),
    Case(SET, "pass", changed(OWN, {"layout": "6+7+0", "electronics": {"processor": {"id": "brain", "unfitted": ["M+135", "M-135"]}}})),
    # Who writes the ear layer first is told what the name counts.
    Case(SET, "fail", changed(OWN, {"layout": "5+6+0"}), says="5+6+0 is 5 upper, 6 ear-layer, 0 bottom; here are 6, 5, 0"),
    Case(SET, "pass", room(L, R, C, *SIX[:2], layout="2+3+0")),
    Case(SET, "open", changed(OWN, {"loudspeakers.10.label": None}), says="label of rear-right"),
    Case(PAIRS, "pass", OWN),
    Case(PAIRS, "fail", HALF, subject="loudspeaker/rear-left", level="error", says="U-135 is neither there"),
    Case(PAIRS, "pass", changed(OWN, {"loudspeakers": [L, R, C, LS, RS, *SIX[:3], *SIX[4:]], "electronics": {"processor": {"id": "brain", "unfitted": ["U-090"]}}})),
    Case(PAIRS, "fail", room(L, C), subject="loudspeaker/left"),
    Case(PAIRS, "open", changed(OWN, {"loudspeakers.10.label": None}), subject="loudspeaker/rear-left", says="label of rear-right"),
    Case(PAIRS, "notApplicable", room(L, C, layout="0+5+0"), says="0+5+0 lists its labels"),
    Case(PAIRS, "notApplicable", EMPTY),
    Case(LABEL, "pass", OWN, subject="loudspeaker/beside-left", says="the tables that have it: 9+10+3"),
    # Of the tables that have M+110 those with five in the ear layer hold.
    Case(LABEL, "pass", OWN, subject="loudspeaker/ls", says="0+5+0, 2+5+0, 4+5+0, 4+5+1"),
    Case(LABEL, "fail", changed(OWN, {"loudspeakers.7.label": "U+070"}), subject="loudspeaker/beside-left", level="note", says="no table of ITU-R BS.2051 has U+070"),
    Case(LABEL, "open", changed(OWN, {"loudspeakers.7.label": None}), subject="loudspeaker/beside-left"),
    Case(LABEL, "open", changed(OWN, {"layout": None})),
    Case(LABEL, "notApplicable", room(L, R, layout="0+2+0"), says="has a table of its own"),
    Case(LABEL, "notApplicable", EMPTY),
]  # fmt: skip
