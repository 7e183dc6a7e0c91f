"""Cases of the chapter aim."""

from __future__ import annotations

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

# Seen from the left loudspeaker, 3.8 m in front of the row: the middle seat lies 1.2 m aside, atan(1.2/3.8) =
# 17.5255 deg, the side seat 2.1 m, atan(2.1/3.8) = 28.9264 deg; between them 11.4009 deg. All ears at its height.
ROOM = {
    "roomlint": 1,
    "survey": {"tolerance": "0 mm"},
    "room": {
        "size": {"width": "4 m", "length": "6 m"},
        "ceiling": {"shape": "flat", "height": "2.4 m"},
    },
    "seats": [
        {
            "id": "middle",
            "reference": True,
            "ear": {"from_left": "2 m", "from_front": "4 m", "height": "1.1 m"},
        },
        {"id": "aside", "ear": {"from_left": "2.9 m", "from_front": "4 m", "height": "1.1 m"}},
    ],
    "loudspeakers": [
        {
            "id": "left",
            "label": "M+030",
            "product": "box",
            "position": {"from_left": "0.8 m", "from_front": "0.2 m", "height": "1.1 m"},
            "aim": {"seat": "middle"},
            "mounting": {"on": "front", "product": "bracket"},
        },
        {
            "id": "right",
            "label": "M-030",
            "product": "box",
            "position": {"from_left": "3.2 m", "from_front": "0.2 m", "height": "1.1 m"},
            "aim": {"seat": "middle"},
            "mounting": {"on": "front", "product": "bracket"},
        },
    ],
}
BOX = {
    "roomlint_product": 1,
    "id": "box",
    "kind": "loudspeaker",
    "loudspeaker": {"horizontal_coverage": "90 deg", "vertical_coverage": "30 deg", "baffle_angle": "0 deg"},
}
NARROW = changed(BOX, {"loudspeaker.horizontal_coverage": "20 deg"})
BRACKET = {
    "roomlint_product": 1,
    "id": "bracket",
    "kind": "mount",
    "mount": {"motion": "swivel", "swivel": "45 deg", "tilt": "15 deg"},
}
PLATE = changed(BRACKET, {"mount": {"motion": "fixed"}})
SHEETS = (BOX, BRACKET)

# A loudspeaker in the ceiling 1.3 m above the ear and 1.8 m away in plan: atan(1.8/1.3) = 54.1623 deg off square down.
OVERHEAD = changed(
    ROOM,
    {
        "seats.1": None,
        "loudspeakers": [
            {
                "id": "top",
                "label": "U+045",
                "product": "disc",
                "position": {"from_left": "2 m", "from_front": "2.2 m", "height": "2.4 m"},
                "mounting": {"on": "ceiling"},
            }
        ],
    },
)
DISC = {
    "roomlint_product": 1,
    "id": "disc",
    "kind": "loudspeaker",
    "loudspeaker": {"horizontal_coverage": "90 deg", "baffle_angle": "0 deg", "placement": ["in-ceiling"]},
}
POINTED_DISC = changed(DISC, {"loudspeaker.baffle_angle": "50 deg"})

# A centre straight in front of the middle seat; the seat aside lies atan(0.9/3.8) = 13.3245 deg off.
CENTRE = changed(
    ROOM,
    {
        "survey.temperature": "20 degC",
        "loudspeakers": [
            {
                "id": "centre",
                "label": "M+000",
                "product": "twin",
                "position": {"from_left": "2 m", "from_front": "0.2 m", "height": "1.1 m"},
                "aim": {"azimuth": "180 deg", "elevation": "0 deg"},
            }
        ],
    },
)
TWIN = {
    "roomlint_product": 1,
    "id": "twin",
    "kind": "loudspeaker",
    "loudspeaker": {
        "horizontal_coverage": "90 deg",
        "vertical_coverage": "30 deg",
        "driver_spacing": "0.36 m",
        "crossover": "2.5 kHz",
    },
}
TWO_WAY = changed(TWIN, {"loudspeaker.driver_spacing": "0.24 m"})
HALF_WAY = changed(
    TWIN,
    {
        "loudspeaker.driver_spacing": None,
        "loudspeaker.crossover": None,
        "loudspeaker.drivers": [
            {"right": "-120 mm", "to": "1.3 kHz"},
            {"right": "120 mm", "to": "2.5 kHz"},
            {"right": "0 mm", "from": "2.5 kHz"},
        ],
    },
)
STANDING = changed(
    HALF_WAY,
    {
        "loudspeaker.drivers": [
            {"right": "0 mm", "up": "-120 mm", "to": "2.5 kHz"},
            {"right": "0 mm", "up": "120 mm", "to": "2.5 kHz"},
            {"right": "0 mm", "from": "2.5 kHz"},
        ]
    },
)
ALONE = changed(CENTRE, {"seats.1": None})
DOWN_12 = changed(ALONE, {"loudspeakers.0.aim.elevation": "-12 deg"})
DOWN_20 = changed(ALONE, {"loudspeakers.0.aim.elevation": "-20 deg"})
NOBODY = changed(ROOM, {"loudspeakers": "none"})
NO_AIM = changed(ROOM, {"loudspeakers.0.aim": None, "loudspeakers.0.mounting": None})
LEFT = "loudspeaker/left"
PAIR = "loudspeaker/left+loudspeaker/right"

CASES: list[Case | Never] = [
    Case("aim.coverage", "pass", ROOM, SHEETS, LEFT, figure=11.4009, source="difference of two arctangents"),
    Case(
        "aim.coverage",
        "fail",
        ROOM,
        (NARROW, BRACKET),
        LEFT,
        level="warning",
        figure=11.4009,
        says="aside sits 11.4 deg",
    ),
    # 6 dB x (54.16 / 45) squared is 8.7 dB.
    Case("aim.coverage", "fail", OVERHEAD, (DISC,), says="more than 6 dB down"),
    Case("aim.coverage", "fail", OVERHEAD, (DISC,), figure=54.1623, source="atan(1.8/1.3)"),
    Case("aim.coverage", "open", OVERHEAD, (POINTED_DISC,), says="aim"),
    Case("aim.coverage", "open", NO_AIM, SHEETS, LEFT, says="aim"),
    Case("aim.coverage", "notApplicable", NOBODY),
    Case("aim.coverage-height", "pass", ROOM, SHEETS, LEFT, figure=0.0),
    Case("aim.coverage-height", "fail", DOWN_20, (TWIN,), level="note", figure=20.0, source="tilted 20 deg below"),
    Case("aim.coverage-height", "open", NO_AIM, SHEETS, LEFT, says="aim"),
    Case("aim.coverage-height", "notApplicable", OVERHEAD, (DISC,), says="cone"),
    Case("aim.tilt", "pass", ROOM, SHEETS, LEFT, figure=0.0),
    Case("aim.tilt", "fail", DOWN_12, (TWIN,), level="note", figure=12.0, source="tilted 12 deg below the ear"),
    Case("aim.tilt", "open", changed(ROOM, {"loudspeakers.0.position": None}), SHEETS, LEFT),
    Case("aim.tilt", "notApplicable", OVERHEAD, (DISC,)),
    Case("aim.pair", "pass", ROOM, SHEETS, PAIR, figure=0.0),
    Case(
        "aim.pair",
        "fail",
        changed(ROOM, {"loudspeakers.1.aim": {"azimuth": "180 deg", "elevation": "0 deg"}}),
        SHEETS,
        PAIR,
        level="note",
        figure=17.5255,
        source="atan(1.2/3.8) against an axis on the ear",
    ),
    Case("aim.pair", "open", NO_AIM, SHEETS, PAIR, says="aim"),
    Case("aim.pair", "notApplicable", CENTRE, (TWIN,)),
    Case("aim.mount-reach", "pass", ROOM, SHEETS, LEFT, figure=0.0),
    Case(
        "aim.mount-reach",
        "fail",
        ROOM,
        (BOX, PLATE),
        LEFT,
        level="warning",
        figure=17.5255,
        says="asks 17.5 deg",
        source="atan(1.2/3.8) off square to the front wall",
    ),
    Case(
        "aim.mount-reach",
        "pass",
        changed(OVERHEAD, {"loudspeakers.0.aim": {"seat": "middle"}}),
        (POINTED_DISC,),
        figure=4.1623,
        source="atan(1.8/1.3) less the baffle's 50 deg",
    ),
    Case("aim.mount-reach", "open", ROOM, (BOX, changed(BRACKET, {"mount.tilt": None})), LEFT, says="tilt"),
    Case("aim.mount-reach", "open", CENTRE, (TWIN,), says="mounting.on"),
    Case("aim.mount-reach", "notApplicable", changed(CENTRE, {"loudspeakers.0.mounting": {"on": "stand"}}), (TWIN,)),
    Case("aim.mount-reach", "notApplicable", NOBODY),
    # All three added up in another program, over a third of an octave in 801 steps.
    Case(
        "aim.centre-interference",
        "fail",
        CENTRE,
        (TWIN,),
        level="warning",
        figure=17.83,
        within=0.15,
        source="the same sum in numpy",
        subject="loudspeaker/centre+seat/aside",
        says="kHz",
    ),
    Case(
        "aim.centre-interference",
        "fail",
        CENTRE,
        (TWO_WAY,),
        level="note",
        figure=5.517,
        within=0.02,
        source="the same sum in numpy",
        subject="loudspeaker/centre+seat/aside",
    ),
    # One of the two stops at 1.3 kHz, the other at 2.5 kHz: the lobe is gone.
    Case(
        "aim.centre-interference",
        "pass",
        CENTRE,
        (HALF_WAY,),
        figure=2.749,
        within=0.01,
        source="the same sum in numpy",
        subject="loudspeaker/centre+seat/aside",
    ),
    Case("aim.centre-interference", "pass", ALONE, (TWIN,), figure=0.0, within=0.01),
    # One over the other loses nothing beside the axis.
    Case("aim.centre-interference", "pass", CENTRE, (STANDING,), figure=0.0, within=0.01),
    Case(
        "aim.centre-interference", "open", CENTRE, (changed(TWIN, {"loudspeaker.crossover": None}),), says="crossover"
    ),
    Case("aim.centre-interference", "open", changed(CENTRE, {"loudspeakers.0.product": None}), says="product"),
    Case("aim.centre-interference", "notApplicable", ROOM, SHEETS),
    # A sheet that speaks of no drivers may be of a centre that has several; one alone is listed.
    Case(
        "aim.centre-interference",
        "open",
        CENTRE,
        (changed(TWIN, {"loudspeaker.driver_spacing": None}),),
        says="drivers",
    ),
    Case(
        "aim.centre-interference",
        "pass",
        CENTRE,
        (
            changed(
                TWIN,
                {
                    "loudspeaker.driver_spacing": None,
                    "loudspeaker.crossover": None,
                    "loudspeaker.drivers": [{"right": "0 mm"}],
                },
            ),
        ),
    ),
    # One turned 20 deg past the seat, the other 20 deg short of it: each is 20 deg off, and they are 40 deg apart.
    Case(
        "aim.pair",
        "fail",
        changed(
            ROOM,
            {
                "loudspeakers.0.aim": {"azimuth": f"{180 + 17.5255 + 20} deg", "elevation": "0 deg"},
                "loudspeakers.1.aim": {"azimuth": f"{180 - 17.5255 + 20} deg", "elevation": "0 deg"},
            },
        ),
        SHEETS,
        PAIR,
        figure=40.0,
        within=0.01,
        source="20 deg on either side of the seat",
    ),
    Case(
        "aim.pair",
        "pass",
        changed(
            ROOM,
            {
                "loudspeakers.0.aim": {"azimuth": f"{180 + 17.5255 + 20} deg", "elevation": "0 deg"},
                "loudspeakers.1.aim": {"azimuth": f"{180 - 17.5255 - 20} deg", "elevation": "0 deg"},
            },
        ),
        SHEETS,
        PAIR,
        figure=0.0,
        within=0.01,
        source="mirror images",
    ),
    Case(
        "aim.coverage",
        "review",
        {**ROOM, "survey": {"tolerance": "30 mm"}},
        (changed(BOX, {"loudspeaker.horizontal_coverage": "23 deg"}), BRACKET),
        LEFT,
    ),
    Case(
        "aim.coverage-height",
        "review",
        {**DOWN_20, "survey": {"tolerance": "50 mm"}},
        (changed(TWIN, {"loudspeaker.vertical_coverage": "40.5 deg"}),),
    ),
    Case(
        "aim.tilt",
        "review",
        {**changed(DOWN_12, {"loudspeakers.0.aim.elevation": "-10.2 deg"}), "survey": {"tolerance": "30 mm"}},
        (TWIN,),
    ),
    Case(
        "aim.pair",
        "review",
        {
            **changed(ROOM, {"loudspeakers.1.aim": {"azimuth": f"{180 - 17.5255 + 5.2} deg", "elevation": "0 deg"}}),
            "survey": {"tolerance": "30 mm"},
        },
        SHEETS,
        PAIR,
    ),
    Case(
        "aim.mount-reach",
        "review",
        {
            **changed(ROOM, {"loudspeakers.0.aim": {"azimuth": "189.8 deg", "elevation": "0 deg ± 1 deg"}}),
            "survey": {"tolerance": "30 mm"},
            "loudspeakers": [{**ROOM["loudspeakers"][0], "aim": {"azimuth": "189.8 deg ± 1 deg"}}],
        },
        (BOX, PLATE),
        LEFT,
    ),
    Case(
        "aim.centre-interference",
        "review",
        {**CENTRE, "survey": {"tolerance": "30 mm"}},
        (changed(TWIN, {"loudspeaker.driver_spacing": "0.2505 m"}),),
        subject="loudspeaker/centre+seat/aside",
    ),
    # Nearer than four times the outer driver's distance the formula does not hold.
    Case(
        "aim.centre-interference",
        "review",
        changed(CENTRE, {"seats.1.ear": {"from_left": "2.3 m", "from_front": "0.6 m", "height": "1.1 m"}}),
        (TWIN,),
        subject="loudspeaker/centre+seat/aside",
        says="one by one",
    ),
]

EDGES: list[Edge] = [
    Edge("aim.coverage", ROOM, "seats.1.ear.from_left", 2.2, 9.0, 1, subject=LEFT, products=SHEETS),
    Edge("aim.coverage-height", DOWN_12, "loudspeakers.0.aim.elevation", -30.0, 0.0, 1, unit="deg", products=(TWIN,)),
    Edge("aim.tilt", DOWN_12, "loudspeakers.0.aim.elevation", -30.0, 0.0, 1, unit="deg", products=(TWIN,)),
    Edge(
        "aim.pair",
        changed(ROOM, {"loudspeakers.1.aim": {"azimuth": "180 deg", "elevation": "0 deg"}}),
        "loudspeakers.1.aim.azimuth",
        163.0,
        190.0,
        1,
        unit="deg",
        subject=PAIR,
        products=SHEETS,
    ),
    Edge(
        "aim.mount-reach",
        changed(ROOM, {"loudspeakers.0.aim": {"azimuth": "187 deg", "elevation": "0 deg"}}),
        "loudspeakers.0.aim.azimuth",
        180.5,
        200.0,
        2,
        unit="deg",
        subject=LEFT,
        products=(BOX, PLATE),
    ),
    Edge(
        "aim.centre-interference",
        CENTRE,
        "seats.1.ear.from_left",
        2.05,
        3.0,
        2,
        products=(TWIN,),
        subject="loudspeaker/centre+seat/aside",
    ),
]
