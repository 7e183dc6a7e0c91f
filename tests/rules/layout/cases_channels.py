"""Cases of the channels."""

from __future__ import annotations

from offsets import EMPTY, LS, RS, C, L, R, at, room, speaker

from roomlint.testing import Case, Never, changed

SUB = {"id": "sub", "position": at(-2.0, 3.0, -1.0)}
PAIR = room(L, R)
FIVE = room(L, R, C, LS, RS, layout="0+5+0", subwoofers=[SUB])
NO_LEFT = changed(FIVE, {"loudspeakers.0": None})
TWICE = room(L, speaker("other", "M+030", -1.0, 2.0), speaker("third", None, 1.0, 2.0))


CASES: list[Case | Never] = [
    Case("layout.channel-set", "pass", FIVE),
    Case("layout.channel-set", "fail", changed(FIVE, {"loudspeakers.4": None}), says="M-110 missing from 0+5+0"),
    Case("layout.channel-set", "fail", changed(FIVE, {"layout": "0+7+0"}), says="M+090, M-090, M+135, M-135 missing"),
    Case("layout.channel-set", "fail", changed(FIVE, {"layout": "0+2+0"}), says="M+000, M+110, M-110 not in 0+2+0"),
    Case("layout.channel-set", "pass", changed(FIVE, {"loudspeakers.4": None, "electronics": {"processor": {"id": "brain", "unfitted": ["M-110"]}}}), says="on purpose"),
    # A subwoofer that is labelled as the left loudspeaker plays no left channel.
    Case("layout.channel-set", "fail", changed(NO_LEFT, {"subwoofers.0.label": "M+030"}), says="M+030 missing"),
    Case("layout.channel-set", "open", changed(FIVE, {"layout": None})),
    # The one without a label may be the one that is missing.
    Case("layout.channel-set", "open", changed(FIVE, {"loudspeakers.4.label": None}), says="label of rs"),
    Case("layout.channel-set", "notApplicable", EMPTY),
    Case("layout.one-label-each", "pass", FIVE, subject="loudspeaker/left"),
    Case("layout.one-label-each", "fail", TWICE, subject="loudspeaker/left", says="shares the label M+030"),
    Case("layout.one-label-each", "fail", TWICE, subject="loudspeaker/other", says="shares the label M+030"),
    Case("layout.one-label-each", "open", TWICE, subject="loudspeaker/third"),
    Case("layout.one-label-each", "open", room(speaker("left", None, -1.5, 2.6))),
    Case("layout.one-label-each", "notApplicable", EMPTY),
]  # fmt: skip
