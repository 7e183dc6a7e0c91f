"""Cases of what is entered for distance and time."""

from __future__ import annotations

from typing import Any

from distance_rooms import BARE, LINE, SHOWN, SYNC, WARM, WIRED, display, settings, sheet

from roomlint.edges import Edge
from roomlint.sample import at, room, speaker
from roomlint.testing import Case, Never, changed


def sub(away: float, delay: str) -> dict[str, Any]:
    centre = speaker("centre", "M+000", 0.0, 3.1)
    entered = settings(("centre", "delay", "0 ms"))
    return room(centre, subwoofers=[{"id": "sub", "position": at(away, 0.0), "delay": delay}], calibration=entered)


# Left and right 2.60 m off by 5-12-13 triangles, the centre 2.10 m; the left one's delay is 6 ms.
FRONTS = (
    speaker("left", "M+030", -1.0, 2.4),
    speaker("right", "M-030", 1.0, 2.4),
    speaker("centre", "M+000", 0.0, 2.1),
)
THREE = room(
    *FRONTS,
    calibration=settings(("left", "delay", "6 ms"), ("right", "delay", "0 ms"), ("centre", "delay", "1.457 ms")),
)
# All three as they should be for 2.60 m, and the left one drawn at 3.10 m on the same line.
AFIELD = changed(
    room(speaker("left", "M+030", -1.192308, 2.861538), *FRONTS[1:]),
    {"calibration": settings(("left", "delay", "0 ms"), ("right", "delay", "0 ms"), ("centre", "delay", "1.457 ms"))},
)
AFIELD_OUTSIDE = changed(AFIELD, {"loudspeakers.0.position.from_left": "9 m"})

CASES: list[Case | Never] = [
    Case(
        "distance.delay-range",
        "pass",
        WIRED,
        [sheet(delay_range="12 ms")],
        subject="loudspeaker/near",
        figure=2.9138,
        source="1.00 m over 343.2 m/s by hand",
    ),
    Case(
        "distance.delay-range",
        "fail",
        WIRED,
        [sheet(delay_range="2 ms")],
        subject="loudspeaker/near",
        level="error",
    ),
    Case(
        "distance.delay-range", "pass", WIRED, [sheet(delay_range="2 ms")], subject="loudspeaker/middle", figure=0.7284
    ),
    # What is entered is more than the processor gives, however little is needed.
    Case(
        "distance.delay-range",
        "fail",
        changed(WIRED, {"calibration": settings(("far", "delay", "14 ms"))}),
        [sheet(delay_range="12 ms")],
        subject="loudspeaker/far",
        level="error",
        figure=14.0,
    ),
    Case("distance.delay-range", "open", WIRED, [sheet(delay_step="0.02 ms")]),
    Case("distance.delay-range", "notApplicable", BARE),
    Case(
        "distance.delay-entered",
        "pass",
        changed(LINE, {"calibration": settings(("near", "delay", "2.914 ms"))}),
        subject="loudspeaker/near",
    ),
    Case(
        "distance.delay-entered",
        "fail",
        changed(LINE, {"calibration": settings(("near", "delay", "2.60 ms"))}),
        subject="loudspeaker/near",
        level="warning",
        figure=0.31375,
        source="1.00 / 343.2 s less 2.60 ms by hand",
        says="2.91 ms",
    ),
    # 2.914 ms in steps of 0.05 ms is 2.90 ms.
    Case(
        "distance.delay-entered",
        "fail",
        changed(WIRED, {"calibration": settings(("near", "delay", "2.60 ms"))}),
        [sheet(delay_step="0.05 ms")],
        subject="loudspeaker/near",
        says="2.90 ms",
    ),
    Case(
        "distance.delay-entered",
        "fail",
        changed(LINE, {"calibration": settings(("near", "delay", "2.86 ms"))}),
        subject="loudspeaker/near",
        level="note",
    ),
    # Left and right are equally far, so that neither is the farthest: the one that is 6 ms late is told, nobody else.
    *(
        Case(
            "distance.delay-entered",
            kind,
            THREE,
            subject=f"loudspeaker/{name}",
            level=level,
            figure=figure,
            within=2e-3,
            source=source,
            says=says,
        )
        for name, kind, level, figure, source, says in (
            ("left", "fail", "warning", 6.0, "6 ms where none is due", "0 ms wanted"),
            ("right", "pass", None, 0.0, "as far as the left", ""),
            ("centre", "pass", None, 0.0, "0.50 m nearer over 343.2 m/s by hand: 1.457 ms", ""),
        )
    ),
    # Drawn half a metre farther than it stands, it would have to play before the others: its place is told, not theirs.
    *(
        Case(
            "distance.delay-entered",
            kind,
            AFIELD,
            subject=f"loudspeaker/{name}",
            figure=figure,
            within=2e-3,
            source="0.50 m over 343.2 m/s by hand",
            says=says,
        )
        for name, kind, figure, says in (
            ("left", "fail", 1.457, "no delay is short enough"),
            ("right", "pass", 0.0, ""),
            ("centre", "pass", 0.0, ""),
        )
    ),
    Case("distance.delay-entered", "open", AFIELD_OUTSIDE, subject="loudspeaker/left", says="layout.inside-room"),
    Case("distance.delay-entered", "open", changed(LINE, {"calibration": settings(("near", "level", "0 dB"))})),
    Case("distance.delay-entered", "open", LINE, says="calibration.settings"),
    Case(
        "distance.delay-entered",
        "notApplicable",
        changed(LINE, {"calibration": settings(("far", "distance", "3.1 m"))}),
        subject="loudspeaker/far",
    ),
    Case(
        "distance.entered",
        "pass",
        changed(LINE, {"calibration": settings(("far", "distance", "3.1 m"))}),
        subject="loudspeaker/far",
    ),
    Case(
        "distance.entered",
        "fail",
        changed(LINE, {"calibration": settings(("far", "distance", "2.9 m"))}),
        subject="loudspeaker/far",
        level="warning",
        figure=0.2,
        source="3.10 - 2.90 m by hand",
    ),
    Case(
        "distance.entered",
        "open",
        changed(LINE, {"calibration": settings(("far", "distance", "2.9 m")), "loudspeakers.0.position": None}),
    ),
    # A processor that takes steps of half a metre is told the nearest of them.
    Case(
        "distance.entered",
        "fail",
        changed(WIRED, {"calibration": settings(("far", "distance", "2.9 m"))}),
        products=[sheet(distance_step="0.5 m")],
        subject="loudspeaker/far",
        says="3 m wanted",
    ),
    Case("distance.entered", "open", LINE, says="calibration.settings"),
    Case(
        "distance.entered",
        "notApplicable",
        changed(LINE, {"calibration": settings(("far", "delay", "0 ms"))}),
        subject="loudspeaker/far",
    ),
    Case(
        "distance.sound-speed",
        "fail",
        WARM,
        [sheet(speed_of_sound="340 m/s")],
        figure=1.2690,
        source="340 over 344.37 m/s, the ISO 9613-1 value at 22 degC",
    ),
    Case(
        "distance.sound-speed",
        "pass",
        WARM,
        [sheet(assumed_temperature="20 degC")],
    ),
    Case(
        "distance.sound-speed", "open", changed(WIRED, {"survey.temperature": None}), [sheet(speed_of_sound="340 m/s")]
    ),
    Case("distance.sound-speed", "open", BARE, says="processor"),
    Never("distance.sound-speed", "notApplicable", "a file without a processor may be of a room that has one"),
    Case(
        "distance.sound-picture",
        "fail",
        SHOWN,
        [display("120 ms"), *SYNC],
        level="error",
        figure=100.0,
        source="120 less 20 ms by hand",
    ),
    Case("distance.sound-picture", "fail", SHOWN, [display("80 ms"), *SYNC], level="warning"),
    # 20 ms less 160 ms: 140 ms late, between 125 and 185.
    Case(
        "distance.sound-picture",
        "fail",
        SHOWN,
        [display("20 ms"), sheet(audio_latency="160 ms")],
        level="warning",
        figure=-140.0,
        says="the sound is behind the picture",
        source="20 less 160 ms by hand",
    ),
    Case("distance.sound-picture", "pass", SHOWN, [display("40 ms"), *SYNC]),
    Case("distance.sound-picture", "open", SHOWN, [display("40 ms"), sheet(delay_range="12 ms")]),
    Case("distance.sound-picture", "notApplicable", BARE),
    Case(
        "distance.delay-entered",
        "review",
        {**changed(LINE, {"calibration": settings(("near", "delay", "2.85 ms"))}), "survey": {"tolerance": "30 mm"}},
        subject="loudspeaker/near",
    ),
    Case(
        "distance.entered",
        "review",
        {**changed(LINE, {"calibration": settings(("far", "distance", "2.96 m"))}), "survey": {"tolerance": "30 mm"}},
        subject="loudspeaker/far",
    ),
    # 1.0 m of way is 2.914 ms: the subwoofer 4.10 m away and the centre 3.10 m, no delays.
    Case("distance.subwoofer-arrival", "pass", sub(3.1, "0 ms"), figure=0.0, within=1e-6, source="the same distance"),
    Case(
        "distance.subwoofer-arrival", "pass", sub(2.1, "0 ms"), figure=-2.9138, source="-1.0 m over 343.2 m/s by hand"
    ),
    # 3 ms are within a quarter of a period at 80 Hz, and not at 120 Hz, where it has 2.08 ms.
    Case("distance.subwoofer-arrival", "pass", sub(3.1, "3 ms"), figure=3.0, source="the delay entered"),
    Case(
        "distance.subwoofer-arrival",
        "fail",
        changed(sub(3.1, "3 ms"), {"calibration.settings.0.crossover": "120 Hz"}),
        figure=3.0,
        says="2.08",
    ),
    Case("distance.subwoofer-arrival", "fail", sub(3.1, "8 ms"), level="note", figure=8.0, source="the delay entered"),
    Case("distance.subwoofer-arrival", "fail", sub(1.1, "0 ms"), figure=-5.8275, source="-2.0 m over 343.2 m/s"),
    Case("distance.subwoofer-arrival", "open", changed(sub(3.1, "0 ms"), {"subwoofers.0.delay": None}), says="delay"),
    Case("distance.subwoofer-arrival", "notApplicable", BARE),
    Case("distance.subwoofer-arrival", "review", {**sub(3.1, "3.12 ms"), "survey": {"tolerance": "30 mm"}}),
]

EDGES: list[Edge] = [
    Edge(
        "distance.delay-range",
        WIRED,
        "loudspeakers.2.position.from_front",
        0.5,
        3.0,
        1,
        subject="loudspeaker/near",
        products=[sheet(delay_range="2 ms")],
    ),
    Edge(
        "distance.sound-speed",
        WARM,
        "survey.temperature",
        0.0,
        40.0,
        2,
        unit="degC",
        products=[sheet(speed_of_sound="340 m/s")],
    ),
    Edge(
        "distance.sound-picture",
        SHOWN,
        "picture.video_latency",
        0.0,
        200.0,
        2,
        unit="ms",
        scale=1e-3,
        products=[display("40 ms"), *SYNC],
        sheet="screen",
    ),
    Edge(
        "distance.delay-entered",
        changed(LINE, {"calibration": settings(("near", "delay", "2.914 ms"))}),
        "calibration.settings.0.delay",
        2.92,
        3.2,
        2,
        unit="ms",
        scale=1e-3,
        subject="loudspeaker/near",
    ),
    Edge(
        "distance.entered",
        changed(LINE, {"calibration": settings(("far", "distance", "3.2 m"))}),
        "calibration.settings.0.distance",
        3.11,
        3.4,
        2,
        subject="loudspeaker/far",
    ),
    Edge("distance.subwoofer-arrival", sub(3.1, "0 ms"), "subwoofers.0.delay", 0.0, 6.0, 1, unit="ms", scale=1e-3),
]
