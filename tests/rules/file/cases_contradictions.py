"""Cases of what a file says twice and differently."""

from __future__ import annotations

from typing import Any

from roomlint.edges import Edge
from roomlint.sample import room, speaker
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

CASES: list[Case | Never] = [
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
