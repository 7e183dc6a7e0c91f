"""Cases of racks, their heat and their air."""

from __future__ import annotations

from typing import Any

from cable_rooms import RACKED, sheet

from roomlint.edges import Edge
from roomlint.testing import Case, Never, changed

RACK = "electronics.racks.0"
HOT = sheet()
AIR = "2.985 m3/h for each W and K, by hand"


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, hot: dict[str, Any] = HOT, **more: Any) -> Case:
    """Return a case of the rack."""
    made = {key if "." in key else f"{RACK}.{key}": value for key, value in (changes or {}).items()}
    return Case(f"heat.{rule}", kind, changed(RACKED, made), [hot], **more)


IN_USE = sheet(power="300 W")
PLATE = sheet(power=None, apparent_power="200 VA", amplifier={"channels": 7})
SILENT_SHEET = sheet(power=None)
CLASS_D = sheet(power=None, amplifier={"channels": 7, "power": "100 W", "technology": "class-d"})
NOTHING = {"electronics.racks": "none"}
SILENT = {"electronics.racks": None}
EMPTY = {"contains": []}

CASES: list[Case | Never] = [
    on("closed", "pass"),
    on("closed", "fail", {"airflow": "none"}, level="error", says="gives off 262 W"),
    on("closed", "open", {"airflow": None}, says="airflow"),
    on("closed", "open", {"enclosed": None}, says="enclosed"),
    on("closed", "open", {"contains": None}, says="contains"),
    on("closed", "open", SILENT, says="racks"),
    # A file that lists no loudspeaker either may have a rack all the same.
    Case("heat.closed", "open", changed(RACKED, {"loudspeakers": "none", "electronics": None}), says="racks"),
    on("closed", "notApplicable", {"enclosed": False, "airflow": "none"}),
    on("closed", "notApplicable", EMPTY),
    on("closed", "notApplicable", NOTHING),

    # 262.5 W ask for 78.4 m3/h at 10 K; 300 W for 89.6.
    on("airflow", "pass", figure=127.6, within=0.1, source=AIR),
    on("airflow", "fail", {"airflow": "50 m3/h"}, level="warning", figure=63.8, within=0.1, source=AIR, says="carry 262 W"),
    on("airflow", "pass", {}, IN_USE, figure=111.7, within=0.1, source="100 / 89.55"),
    on("airflow", "pass", {}, PLATE, figure=167.5, within=0.1, source="100 / (2.985 x 200 / 10)"),
    # Seven channels of 100 W, class AB, at an eighth: 87.5 W out, 350 W from the mains, 262.5 W that stay.
    on("airflow", "fail", {"airflow": "50 m3/h"}, SILENT_SHEET, figure=63.8, within=0.1, source=AIR),
    on("airflow", "open", {}, SILENT_SHEET, says="power"),
    # Idle at 360 W: 272.5 W stay.
    on("airflow", "fail", {"airflow": "50 m3/h"}, sheet(power=None, idle_power="360 W"), figure=61.5, within=0.1, source=AIR),
    # Class D: 145.8 W from the mains, 58.3 W that stay.
    on("airflow", "fail", {"airflow": "10 m3/h"}, CLASS_D, figure=57.4, within=0.1, source=AIR),
    on("airflow", "fail", {"airflow": "80 m3/h ± 5 m3/h"}, level="warning"),
    # A sheet of no power at all asks for no air; there is no share of none.
    on("airflow", "review", {}, sheet(power="0 W"), says="air needed must be above zero"),
    on("airflow", "open", {"airflow": None}, says="airflow"),
    on("airflow", "open", {"airflow": "none"}, says="heat.closed"),
    on("airflow", "open", {"airflow": "none", "enclosed": None}, says="enclosed"),
    on("airflow", "open", {"contains": None}, says="contains"),
    on("airflow", "open", {"electronics.amplifiers.0.product": None}, says="product"),
    on("airflow", "open", {}, sheet(power=None, amplifier={"channels": 7}), says="power"),
    on("airflow", "open", SILENT, says="racks"),
    on("airflow", "notApplicable", {"airflow": "none", "enclosed": False}),
    on("airflow", "notApplicable", EMPTY),
    on("airflow", "notApplicable", NOTHING),

    on("inlet", "pass", figure=24.0, source="as measured"),
    on("inlet", "fail", {"inlet": "28 degC"}, level="note", says="at most 27"),
    on("inlet", "fail", {"inlet": "32 degC"}, level="warning", says="at most 30"),
    on("inlet", "fail", {"inlet": "36 degC"}, level="error"),
    on("inlet", "fail", {"inlet": "41 degC"}, sheet(maximum_inlet="50 degC"), level="error"),
    on("inlet", "fail", {"inlet": "26 degC"}, sheet(maximum_inlet="25 degC"), level="error", says="at most 25"),
    on("inlet", "fail", {"inlet": "29 degC ± 2 degC"}, level="warning"),
    on("inlet", "open", {"inlet": None}, says="inlet"),
    on("inlet", "open", {}, sheet(maximum_inlet=None), says="maximum_inlet"),
    on("inlet", "open", {"contains": None}, says="contains"),
    on("inlet", "open", {"airflow": "none"}, says="heat.closed"),
    on("inlet", "open", SILENT, says="racks"),
    on("inlet", "notApplicable", EMPTY),
    on("inlet", "notApplicable", NOTHING),
]  # fmt: skip
EDGES: list[Edge] = [
    Edge("heat.airflow", RACKED, f"{RACK}.airflow", 10, 300, 1, "m3/h", 1 / 3600, products=[HOT]),
    Edge("heat.inlet", RACKED, f"{RACK}.inlet", 10, 50, 3, "degC", products=[HOT]),
]  # fmt: skip
