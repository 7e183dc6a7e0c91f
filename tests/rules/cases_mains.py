"""Cases of the chapter mains."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.testing import Case, Never, changed

if TYPE_CHECKING:
    from collections.abc import Mapping

# A 20 A circuit in 12 AWG, 50 ft to the farthest outlet, with a 9 A rack that runs all evening and a 4 A vacuum.
ROOM = {
    "roomlint": 1,
    "project": {"codes": {"electrical": "nec2023"}},
    "room": {
        "size": {"width": "4 m", "length": "5 m"},
        "ceiling": {"shape": "flat", "height": "2.4 m"},
        "level": "basement",
    },
    "electronics": {"amplifiers": [{"id": "amp", "product": "seven"}]},
    "circuits": [
        {
            "id": "c1",
            "rating": "20 A",
            "voltage": "120 V",
            "conductor": "12 AWG",
            "material": "copper",
            "length": "50 ft",
            "dedicated": False,
            "feeds_lighting": False,
            "new": True,
            "afci": True,
            "gfci": True,
            "rcd": "30 mA",
            "sequenced": True,
            "earth_lifted": False,
            "feeder_drop": 1.0,
            "receptacles": [
                {
                    "id": "r1",
                    "rating": "20 A",
                    "height": "0.4 m",
                    "facing_up": False,
                    "tamper_resistant": True,
                    "dimmed": False,
                }
            ],
            "loads": [
                {
                    "id": "rack",
                    "feeds": "amp",
                    "current": "9 A",
                    "continuous": True,
                    "connection": "plug",
                    "receptacle": "r1",
                    "cord_concealed": False,
                    "linear_supply": True,
                },
                {
                    "id": "vacuum",
                    "current": "4 A",
                    "continuous": False,
                    "connection": "plug",
                    "receptacle": "r1",
                    "cord_concealed": False,
                    "linear_supply": False,
                },
            ],
        }
    ],
}
SEVEN = {
    "roomlint_product": 1,
    "id": "seven",
    "kind": "amplifier",
    "apparent_power": "1080 VA",
    "amplifier": {"channels": 7, "power": "100 W", "technology": "class-ab"},
}
C = "circuits.0"
RACK, VACUUM, OUTLET = f"{C}.loads.0", f"{C}.loads.1", f"{C}.receptacles.0"
RACK_KEY = "load/rack+circuit/c1"
BARE = changed(ROOM, {"circuits": None})
BRITISH = {"project.codes.electrical": "bs7671"}
NO_CODE = {"project.codes": None}
FASTENED = {f"{RACK}.connection": "fastened"}
NFPA = "NFPA 70 (2023), worked by hand"


def on(rule: str, kind: str, changes: Mapping[str, object] | None = None, **more: object) -> Case:
    """Return a case of the circuit above with some keys changed."""
    return Case(rule, kind, changed(ROOM, changes or {}), products=(SEVEN,), **more)  # type: ignore[arg-type]


RULES = (
    "mains.circuit-load", "mains.plug-in-share", "mains.fastened-share", "mains.receptacle-total",
    "mains.conductor-size", "mains.voltage-drop", "mains.total-drop", "mains.inrush", "mains.declared-draw",
    "mains.small-circuit-receptacle", "mains.arc-fault", "mains.ground-fault", "mains.tamper-resistant",
    "mains.facing-up", "mains.dimmed-receptacle", "mains.concealed-cord", "mains.lifted-earth",
    "mains.receptacle-rating", "mains.residual-current",
)  # fmt: skip

CASES: list[Case | Never] = [
    *(Case(rule, "notApplicable", BARE, products=(SEVEN,)) for rule in RULES),
    # 1.25 x 9 + 4 = 15.25 A: within 20 A and within 80 % of it, not within 15 A.
    on("mains.circuit-load", "pass", figure=15.25, source=NFPA),
    on("mains.circuit-load", "fail", {f"{C}.rating": "15 A"}, figure=15.25, level="error", source=NFPA),
    on("mains.circuit-load", "fail", {f"{VACUUM}.current": "6 A"}, level="note"),
    on("mains.circuit-load", "pass", {f"{RACK}.continuous": None}, says="three hours"),
    on("mains.circuit-load", "pass", {f"{RACK}.current": None}, figure=15.25, source="1080 VA over 120 V is 9 A"),
    on("mains.circuit-load", "pass", {f"{RACK}.current": None, f"{RACK}.apparent_power": "1080 VA"}, figure=15.25,
       source="1080 VA over 120 V is 9 A"),
    on("mains.circuit-load", "open", {f"{C}.loads": None}, says="loads"),
    on("mains.circuit-load", "open", {f"{VACUUM}.current": None}, says="apparent_power"),
    # A rack of 13 A by cord: too much for a shared 15 A circuit (12 A), within a 20 A one (16 A).
    on("mains.plug-in-share", "pass", {f"{RACK}.current": "13 A"}, subject=RACK_KEY, figure=65.0, source=NFPA),
    on("mains.plug-in-share", "fail", {f"{RACK}.current": "13 A", f"{C}.rating": "15 A"}, subject=RACK_KEY,
       figure=86.6667, level="warning", source=NFPA),
    on("mains.plug-in-share", "fail", {f"{RACK}.current": "17 A", **NO_CODE}, subject=RACK_KEY, level="note"),
    on("mains.plug-in-share", "open", {f"{C}.dedicated": None}, says="dedicated"),
    on("mains.plug-in-share", "notApplicable", {f"{C}.dedicated": True}),
    # 11 A fastened in place on a shared 20 A circuit is 55 %; 6 A is 30 %.
    on("mains.fastened-share", "fail", {**FASTENED, f"{RACK}.current": "11 A"}, figure=55.0, source=NFPA),
    on("mains.fastened-share", "fail", {**FASTENED, f"{RACK}.current": "11 A", "project.codes.electrical": "bs7671"},
       level="note"),
    on("mains.fastened-share", "pass", {**FASTENED, f"{RACK}.current": "6 A"}, figure=30.0, source=NFPA),
    on("mains.fastened-share", "open", {f"{RACK}.connection": None}, says="connection"),
    on("mains.fastened-share", "notApplicable", {**FASTENED, f"{VACUUM}.connection": "fastened"}),
    on("mains.fastened-share", "notApplicable", {f"{C}.dedicated": True}),
    on("mains.receptacle-total", "pass", figure=13.0, source="9 A + 4 A against 16 A of Table 210.21(B)(2)"),
    on("mains.receptacle-total", "fail", {f"{OUTLET}.rating": "15 A"}, figure=13.0,
       source="9 A + 4 A against 12 A of Table 210.21(B)(2)"),
    on("mains.receptacle-total", "fail", {f"{OUTLET}.rating": "15 A", "project.codes.electrical": "bs7671"},
       level="note"),
    on("mains.receptacle-total", "open", {f"{OUTLET}.rating": None}, says="rating"),
    on("mains.receptacle-total", "notApplicable", {f"{C}.dedicated": True}),
    on("mains.receptacle-total", "notApplicable", {f"{RACK}.receptacle": None, f"{VACUUM}.receptacle": None}),
    on("mains.receptacle-total", "review", {f"{OUTLET}.rating": "30 A"}),
    on("mains.conductor-size", "pass", figure=100.0, source="NFPA 70 (2023) Table 210.24(1): 12 AWG for 20 A"),
    # 2.081 mm2 of 14 AWG over 3.309 mm2 of 12 AWG, ASTM B258 sizes.
    on("mains.conductor-size", "fail", {f"{C}.conductor": "14 AWG"}, figure=62.89, level="error",
       source="NFPA 70 (2023) Table 210.24(1), ASTM B258"),
    on("mains.conductor-size", "open", {f"{C}.conductor": None}, says="conductor"),
    on("mains.conductor-size", "open", NO_CODE, says="project.codes.electrical"),
    on("mains.conductor-size", "notApplicable", BRITISH),
    on("mains.conductor-size", "review", {f"{C}.material": "aluminium"}),
    # 2 x 50 ft x 13 A x 1.93 ohm/kft = 2.509 V of 120 V = 2.091 %; 16 A: 2.57 %; 100 ft: 5.15 %.
    on("mains.voltage-drop", "pass", figure=2.091, source="NFPA 70 chapter 9, Table 8, 75 C solid, worked by hand"),
    on("mains.voltage-drop", "pass", {f"{VACUUM}.current": "7 A"}, figure=2.574, within=0.003,
       source="NFPA 70 chapter 9, Table 8, 75 C solid, worked by hand"),
    on("mains.voltage-drop", "fail", {f"{VACUUM}.current": "7 A", f"{C}.length": "100 ft"}, level="warning",
       says="5.15 %"),
    on("mains.voltage-drop", "fail", {f"{C}.length": "80 ft"}, level="note"),
    # 13 A over 20 m of 2.5 mm2 on 230 V by 18 mV/A/m: 4.68 V, 2.03 %.
    on("mains.voltage-drop", "pass",
       {**BRITISH, f"{C}.voltage": "230 V", f"{C}.conductor": "2.5 mm2", f"{C}.length": "20 m"}, figure=2.035,
       within=0.005, source="BS 7671 Appendix 4: 18 mV/A/m"),
    on("mains.voltage-drop", "open", {f"{C}.length": None}, says="length"),
    on("mains.voltage-drop", "review", {f"{C}.material": "aluminium"}),
    on("mains.total-drop", "pass", figure=3.091, source="Table 8 as above and 1 % of feeder, added by hand"),
    on("mains.total-drop", "fail", {f"{C}.feeder_drop": 3.0}),
    on("mains.total-drop", "open", {f"{C}.feeder_drop": None}, says="feeder_drop"),
    on("mains.inrush", "pass"),
    on("mains.inrush", "pass", {f"{VACUUM}.linear_supply": True}, says="in sequence"),
    on("mains.inrush", "fail", {f"{VACUUM}.linear_supply": True, f"{C}.sequenced": False}, level="note"),
    on("mains.inrush", "open", {f"{RACK}.linear_supply": None}, says="linear_supply"),
    # 7 x 100 W / 8 = 87.5 W out, 350 W mains, 350 / (120 x 0.65) = 4.487 A; 9 / 4.487 = 2.0057
    on("mains.declared-draw", "pass", figure=2.00571, source="IEC 60065 convention of 1/8, worked by hand"),
    on("mains.declared-draw", "fail", {f"{RACK}.current": "3 A"}, level="note"),
    on("mains.declared-draw", "open", {f"{C}.voltage": None}, says="voltage"),
    on("mains.small-circuit-receptacle", "pass"),
    on("mains.small-circuit-receptacle", "fail", {f"{C}.rating": "10 A"}, level="error"),
    on("mains.small-circuit-receptacle", "open", NO_CODE, says="project.codes.electrical"),
    on("mains.small-circuit-receptacle", "notApplicable", BRITISH),
    on("mains.arc-fault", "pass"),
    on("mains.arc-fault", "fail", {f"{C}.afci": False}, says="210.12(B)"),
    on("mains.arc-fault", "fail", {f"{C}.afci": False, "project.codes.electrical": "nec2020"}, says="210.12(A)"),
    on("mains.arc-fault", "open", {f"{C}.afci": None}, says="afci"),
    on("mains.arc-fault", "notApplicable", {f"{C}.new": False}),
    on("mains.arc-fault", "notApplicable", {f"{C}.voltage": "240 V"}),
    on("mains.arc-fault", "notApplicable", BRITISH),
    on("mains.ground-fault", "pass"),
    on("mains.ground-fault", "fail", {f"{C}.gfci": False}),
    on("mains.ground-fault", "open", {"room.level": None}, says="level"),
    on("mains.ground-fault", "notApplicable", {"room.level": "upper"}),
    on("mains.ground-fault", "notApplicable", {"project.codes.electrical": "nec2017"}),
    on("mains.tamper-resistant", "pass"),
    on("mains.tamper-resistant", "fail", {f"{OUTLET}.tamper_resistant": False}, level="note"),
    on("mains.tamper-resistant", "open", {f"{OUTLET}.height": None}, says="height"),
    on("mains.tamper-resistant", "notApplicable", {f"{OUTLET}.height": "1.9 m"}),
    on("mains.tamper-resistant", "notApplicable", BRITISH),
    on("mains.facing-up", "pass"),
    on("mains.facing-up", "pass", {f"{OUTLET}.facing_up": True, f"{OUTLET}.listed_for_floor": True}),
    on("mains.facing-up", "fail", {f"{OUTLET}.facing_up": True, f"{OUTLET}.listed_for_floor": False}),
    on("mains.facing-up", "open", {f"{OUTLET}.facing_up": None}, says="facing_up"),
    on("mains.dimmed-receptacle", "pass"),
    on("mains.dimmed-receptacle", "fail", {f"{OUTLET}.dimmed": True}, level="error"),
    on("mains.dimmed-receptacle", "open", {f"{OUTLET}.dimmed": None}, says="dimmed"),
    on("mains.concealed-cord", "pass"),
    on("mains.concealed-cord", "pass", {f"{RACK}.cord_concealed": True, f"{RACK}.listed_inlet_kit": True}),
    on("mains.concealed-cord", "fail", {f"{RACK}.cord_concealed": True}, subject="load/rack", level="error"),
    on("mains.concealed-cord", "open", {f"{RACK}.cord_concealed": None}, subject="load/rack"),
    on("mains.lifted-earth", "pass"),
    on("mains.lifted-earth", "fail", {f"{C}.earth_lifted": True}, level="error"),
    on("mains.lifted-earth", "open", {f"{C}.earth_lifted": None}, says="earth_lifted"),
    on("mains.receptacle-rating", "pass"),
    on("mains.receptacle-rating", "fail", {f"{C}.rating": "15 A"}, level="warning"),
    on("mains.receptacle-rating", "fail", {f"{C}.rating": "25 A"}),
    on("mains.receptacle-rating", "open", {f"{OUTLET}.rating": None}, says="rating"),
    on("mains.receptacle-rating", "notApplicable", BRITISH),
    on("mains.residual-current", "pass", BRITISH, figure=30.0, source="BS 7671 411.3.3: 30 mA"),
    on("mains.residual-current", "fail", {**BRITISH, f"{C}.rcd": "100 mA"}),
    on("mains.residual-current", "open", {**BRITISH, f"{C}.rcd": None}, says="rcd"),
    on("mains.residual-current", "notApplicable"),
]  # fmt: skip
