"""Cases of cables in walls."""

from __future__ import annotations

from typing import Any

from cable_rooms import BARE, OTHERS, SHEETS, UNSAID, WIRED, piped, under
from channel_rooms import amplifier, box

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

CABLE = "cables.0"
TABLE = "NFPA 70:2017 Table 725.154(A)"
ONE = amplifier(2, output_class="class-1")


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, *sheets: dict[str, Any], **more: Any) -> Case:
    """Return a case of the one run; keys without a dot at a known list are the cable's."""
    made = {key if "." in key or key == "cables" else f"{CABLE}.{key}": value for key, value in (changes or {}).items()}
    ids = {sheet["id"] for sheet in sheets}
    return Case(
        f"cable.{rule}", kind, changed(more.pop("base", WIRED), made),
        [*sheets, *(one for one in SHEETS if one["id"] not in ids)], **more,
    )  # fmt: skip


NUMBERED = {"nec2017": "725.154", "nec2020": "725.154", "nec2023": "article 722", "nec2026": "article 722"}

CASES: list[Case | Never] = [
    *(on("listed", "fail", {"marking": "none"}, base=under(code), says=clause) for code, clause in NUMBERED.items()),
    *(
        on(rule, "notApplicable", base=under(code), says=words)
        for code, words in OTHERS.items()
        for rule in ("listed", "grade", "output-class")
    ),
    on("listed", "pass"),
    on("listed", "pass", {"marking": "CMX"}),
    on("listed", "pass", {"marking": "NM"}),
    on("listed", "fail", {"marking": "none"}, level="error", says="no marking"),
    on("listed", "fail", {"marking": "CL3", "carries": "mains"}, level="error", says="not made for it"),
    on("listed", "fail", {"marking": "none", "carries": "mains"}, says="not made for it"),
    on("listed", "pass", {"marking": "NM", "carries": "mains"}),
    Case("cable.listed", "notApplicable", piped({"carries": "mains", "marking": None}), SHEETS, says="single wires"),
    on("listed", "open", {"marking": "NM", "carries": "mains", "raceway": None}, says="raceway"),
    on("listed", "open", {"marking": None}, says="marking"),
    on("listed", "open", {"in_wall": None}, says="in_wall"),
    on("listed", "open", {"carries": None}, says="carries"),
    on("listed", "open", {"project.codes.electrical": None}, says="codes"),
    on("listed", "open", base=UNSAID, says="cables"),
    on("listed", "notApplicable", {"in_wall": False}),
    on("listed", "notApplicable", base=BARE),

    on("grade", "pass"),
    on("grade", "fail", {"plenum": True}, level="warning", says="CL2P, CL3P or CMP"),
    on("grade", "fail", {"plenum": True, "marking": "CMR"}),
    on("grade", "pass", {"plenum": True, "marking": "CL2P"}),
    on("grade", "fail", {"riser": True}, says="rises through floors"),
    on("grade", "pass", {"riser": True, "marking": "CMR"}),
    on("grade", "pass", {"riser": None, "plenum": None, "marking": "CMP"}),
    on("grade", "fail", {"marking": "CL3X"}, says="for cable below 6 mm"),
    on("grade", "pass", {"marking": "CL3X", "outer_diameter": "5 mm"}, source=TABLE),
    on("grade", "fail", {"marking": "CL3X", "outer_diameter": "6.2 mm ± 0.3 mm"}),
    on("grade", "open", {"marking": "CL3X", "outer_diameter": None}, says="outer_diameter"),
    on("grade", "open", {"plenum": None}, says="plenum"),
    on("grade", "open", {"riser": None}, says="riser"),
    on("grade", "open", {"marking": None}, says="marking"),
    on("grade", "open", {"marking": "none"}, says="cable.listed"),
    on("grade", "open", base=UNSAID),
    on("grade", "notApplicable", {"marking": "NM"}),
    # The jacket of house wiring burns in a duct as any other does: 300.22(C) wants metal around power.
    on("grade", "fail", {"marking": "NM", "plenum": True}, level="warning", says="300.22(C)"),
    on("grade", "fail", {"carries": "mains", "marking": "NM", "plenum": True}, says="300.22(C)"),
    on("grade", "open", {"carries": "mains", "marking": "NM", "plenum": None}, says="plenum"),
    on("grade", "notApplicable", {"in_wall": False}),
    on("grade", "notApplicable", {"carries": "mains"}),
    on("grade", "notApplicable", {"carries": "lighting", "marking": "NM"}),
    on("grade", "pass", {"carries": "lighting"}),
    on("grade", "notApplicable", base=BARE),

    on("edge", "pass", figure=40.0, source="as measured"),
    on("edge", "fail", {"edge_distance": "25 mm"}, level="warning", says="steel plate"),
    # What is short by less than a digit of a metre is short all the same: it is told in millimetres.
    on("edge", "fail", {"edge_distance": "29 mm"}, figure=29.0, source="below 31.75 mm"),
    on("edge", "pass", {"edge_distance": "1-1/4 in"}, figure=31.75, source="NFPA 70 300.4(A)(1): 1-1/4 in"),
    on("edge", "open", {"edge_distance": "25 mm", "nail_plate": None}, says="nail_plate"),
    on("edge", "pass", {"nail_plate": None}),
    on("edge", "open", {"edge_distance": None}, says="edge_distance"),
    on("edge", "review", {"edge_distance": "33 mm ± 5 mm"}),
    on("edge", "notApplicable", {"nail_plate": True}),
    on("edge", "notApplicable", {"edge_distance": "none"}, says="no framing"),
    on("edge", "notApplicable", {"in_wall": False}),
    on("edge", "notApplicable", base=BARE),
    *(on("edge", "fail", base=under(code), says="at least 50 mm") for code in (*OTHERS, "other")),
    *(on("edge", "pass", {"edge_distance": "50 mm"}, base=under(code)) for code in OTHERS),
    *(on("edge", "pass", base=under(code)) for code in ("nec2017", "nec2020", "nec2026")),

    on("output-class", "pass"),
    on("output-class", "fail", {}, ONE, level="warning", says="Class 1, which NFPA 70 640.9(C)"),
    on("output-class", "pass", {"marking": "NM"}, ONE),
    on("output-class", "open", {}, amplifier(2), says="output_class"),
    on("output-class", "open", {"marking": None}, ONE, says="marking"),
    on("output-class", "open", {"electronics.amplifiers.0.product": None}, says="product"),
    on("output-class", "notApplicable", {"carries": "line-level"}),
    on("output-class", "notApplicable", {"to": "amp"}),
    on("output-class", "notApplicable", base=BARE),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("cable.edge", changed(WIRED, {f"{CABLE}.nail_plate": False}), f"{CABLE}.edge_distance", 10, 90, 1, "mm", 0.001,
         products=SHEETS),
    Edge("cable.edge", under("bs7671"), f"{CABLE}.edge_distance", 10, 90, 1, "mm", 0.001, products=[box(), amplifier()]),
]  # fmt: skip
