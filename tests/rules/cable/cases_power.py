"""Cases of signals and power beside each other, and of what shares a raceway."""

from __future__ import annotations

from typing import Any

from cable_rooms import BARE, OTHERS, SHEETS, UNSAID, WIRED, piped, under

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

CABLE = "cables.0"
POWER = {"carries": "mains", "marking": "NM"}
SIX = {"carries": "network", "marking": "CMR", "outer_diameter": "6.2 mm"}
SIX_A = {"carries": "network", "marking": "CMR", "outer_diameter": "7.5 mm"}
FILL = "NFPA 70:2017 chapter 9 Table 4, worked by hand"
TRUNKING: dict[str, Any] = {"kind": "trunking", "size": None, "inner_area": "1500 mm2"}
PARTITION = "raceways.0.partition"


def beside(kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the one run and the power beside it."""
    made = {key if key == "cables" else f"{CABLE}.{key}": value for key, value in (changes or {}).items()}
    return Case("cable.power-distance", kind, changed(more.pop("base", WIRED), made), SHEETS, **more)


def pipe(rule: str, kind: str, room: dict[str, Any], changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of a raceway."""
    return Case(f"cable.{rule}", kind, changed(room, changes or {}), SHEETS, **more)


SHARED = piped(POWER, {})
SPLIT = piped(POWER, {}, **TRUNKING)
MIXED = piped({}, SIX)
FOUR = piped(SIX_A, SIX_A, SIX_A, SIX_A)
OUTSIDE = {"cables.1.raceway": None}
NUMBERED = {
    "nec2017": "NFPA 70 725.136", "nec2020": "NFPA 70 725.136", "nec2023": "NFPA 70 725.136", "nec2026": "articles 720 to 725",
    "bs7671": "BS 7671, 528.1", "iec60364": "IEC 60364-5-52, 528.1", "asnzs3000": "AS/NZS 3000, 3.9.8",
    "other": "every wiring code",
}  # fmt: skip

CASES: list[Case | Never] = [
    beside("pass", figure=300.0, source="as measured"),
    beside("fail", {"beside_power": "20 mm"}, level="warning", says="20 mm beside power"),
    beside("fail", {"beside_power": "46 mm"}, figure=46.0, source="below 50 mm"),
    beside("pass", {"beside_power": "100 mm"}),
    beside("fail", {"beside_power": "100 mm", "carries": "line-level"}, level="note", says="at least 0.30 m"),
    beside("fail", {"beside_power": "20 mm", "carries": "network"}, level="warning"),
    beside("review", {"beside_power": "55 mm ± 20 mm"}),
    beside("open", {"beside_power": "20 mm", "power_exception": None}, says="power_exception"),
    beside("open", {"beside_power": None}, says="beside_power"),
    beside("open", {"carries": None}, says="carries"),
    beside("open", base=UNSAID, says="cables"),
    beside("notApplicable", {"beside_power": "20 mm", "power_exception": "power-sheathed"}, says="between"),
    beside("notApplicable", {"beside_power": "none"}, says="no power"),
    beside("notApplicable", {"carries": "mains"}),
    beside("notApplicable", base=BARE),
    *(beside("fail", {"beside_power": "20 mm"}, base=under(code)) for code in OTHERS),

    pipe("with-power", "fail", SHARED, level="error", says="run-1 together with run-2"),
    *(pipe("with-power", "fail", under(code, SHARED), says=clause) for code, clause in NUMBERED.items()),
    pipe("with-power", "fail", SPLIT, {PARTITION: False}),
    pipe("with-power", "pass", SPLIT, {PARTITION: True}, says="partition"),
    pipe("with-power", "open", SPLIT, says="partition"),
    pipe("with-power", "pass", piped({}, {})),
    pipe("with-power", "pass", piped(POWER)),
    pipe("with-power", "pass", piped({"carries": "lighting"}, {})),
    pipe("with-power", "fail", piped({"carries": "lighting", "marking": "NM"}, {})),
    pipe("with-power", "open", piped({}, {}), OUTSIDE, says="raceway"),
    pipe("with-power", "open", piped({"carries": "lighting", "marking": None}, {}), says="marking"),
    pipe("with-power", "open", SHARED, {"project.codes.electrical": None}, says="codes"),
    pipe("with-power", "open", UNSAID, says="cables"),
    pipe("with-power", "open", WIRED, {"raceways": None, f"{CABLE}.raceway": None}, says="raceways"),
    pipe("with-power", "notApplicable", WIRED),
    pipe("with-power", "notApplicable", WIRED, {"raceways": None}),
    pipe("with-power", "notApplicable", piped()),

    pipe("audio-apart", "fail", MIXED, level="warning", says="725.139(F) keeps loudspeakers apart"),
    pipe("audio-apart", "fail", under("nec2026", MIXED), says="articles 720 to 725"),
    pipe("audio-apart", "pass", piped({}, {})),
    pipe("audio-apart", "pass", piped(SIX, SIX)),
    pipe("audio-apart", "open", piped(SIX, SIX), OUTSIDE, says="raceway"),
    pipe("audio-apart", "open", UNSAID),
    *(pipe("audio-apart", "notApplicable", under(code, MIXED), says=words) for code, words in OTHERS.items()),
    pipe("audio-apart", "notApplicable", piped()),

    # Four of 7.5 mm are 176.7 mm2: more than the 137 mm2 of 3/4 in, within the 222 mm2 of 1 in.
    pipe("fill", "fail", FOUR, level="warning", figure=51.6, within=0.1, source=FILL, says="at most 40 %"),
    pipe("fill", "fail", FOUR, {"raceways.0.size": "1"}, level="note", figure=31.8, within=0.1, source=FILL),
    pipe("fill", "pass", piped(SIX, SIX, SIX), figure=26.4, within=0.1, source=FILL),
    pipe("fill", "fail", piped({"outer_diameter": "10 mm"}, {"outer_diameter": "10 mm"}, size="1/2"), says="at most 31 %"),
    pipe("fill", "fail", piped({"outer_diameter": "11 mm"}, size="1/2"), level="note", figure=48.7, within=0.1, source=FILL),
    pipe("fill", "fail", piped({"outer_diameter": "12 mm"}, size="1/2"), level="warning", says="at most 53 %"),
    pipe("fill", "fail", FOUR, {"raceways.0.length": "0.6 m"}, level="note"),
    pipe("fill", "pass", FOUR, {"raceways.0.inner_diameter": "35 mm"}, figure=18.37, within=0.01, source="4 x 7.5^2 / 35^2"),
    pipe("fill", "pass", piped({}, **TRUNKING), figure=3.351, source="pi / 4 x 8^2 / 1500"),
    pipe("fill", "open", piped({}, **{**TRUNKING, "inner_area": None}), says="inner_area"),
    pipe("fill", "open", piped({}, kind="pvc"), says="inner_diameter"),
    pipe("fill", "open", piped({"outer_diameter": None}), says="outer_diameter"),
    pipe("fill", "open", piped({}, length=None), says="length"),
    pipe("fill", "open", piped({}, {}), OUTSIDE, says="raceway"),
    pipe("fill", "open", UNSAID),
    pipe("fill", "review", FOUR, {"raceways.0.inner_diameter": "24 mm ± 1 mm"}),
    pipe("fill", "notApplicable", piped()),
    pipe("fill", "notApplicable", WIRED),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("cable.power-distance", changed(WIRED, {f"{CABLE}.carries": "network"}), f"{CABLE}.beside_power", 10, 500, 2, "mm",
         0.001, products=SHEETS),
    Edge("cable.fill", FOUR, "cables.0.outer_diameter", 1, 20, 1, "mm", 0.001, products=SHEETS),
]  # fmt: skip
