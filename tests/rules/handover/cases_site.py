"""Cases of records of the site and of documents."""

from __future__ import annotations

from typing import Any

from handover_rooms import BARE, EARLY, EARLY_SAID, NO_STAGE, READY, SHEETS, item, step

from roomlint.testing import Case, Never, changed

STUD, PILOT, TORQUE, PHOTO, INSULATION, TRIPPING, DRAWINGS = (f"handover.{place}" for place in range(7))
SETTINGS, RESPONSES = "handover.7", "handover.8"
VERSIONS = "handover.10"
FIXING = "loudspeakers.0.mounting.fixing"


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the room at its handover."""
    return Case(f"handover.{rule}", kind, changed(more.pop("base", READY), changes or {}), SHEETS, **more)


CASES: list[Case | Never] = [
    on("fixing-record", "pass", subject="loudspeaker/left"),
    on("fixing-record", "fail", {TORQUE: None}, subject="loudspeaker/left", level="warning", says="no record of torque"),
    on("fixing-record", "fail", {f"{PILOT}.of": ["right"], f"{STUD}.done": False}, subject="loudspeaker/left", says="stud proved, pilot hole"),
    # Proved, or bored, after the screw was drawn up: nobody saw what it found.
    on("fixing-record", "fail", {f"{PILOT}.on": "2027-01-01"}, subject="loudspeaker/left", says="pilot hole on record of 2027-01-01, after its torque of"),
    on("fixing-record", "fail", {f"{STUD}.on": "2027-01-01"}, subject="loudspeaker/left", says="stud proved on record of"),
    on("fixing-record", "open", {f"{STUD}.on": None}, subject="loudspeaker/left", says="on"),
    # A bolt in concrete has a torque and nothing to prove.
    on("fixing-record", "pass", {f"{FIXING}.fastener": "expansion-anchor", f"{FIXING}.into": "concrete", PILOT: None}, subject="loudspeaker/left"),
    on("fixing-record", "open", {f"{TORQUE}.done": None}, subject="loudspeaker/left", says="done"),
    on("fixing-record", "open", {f"{TORQUE}.kind": None}, subject="loudspeaker/left", says="kind"),
    on("fixing-record", "open", {f"{FIXING}.fastener": None}, subject="loudspeaker/left", says="fastener"),
    on("fixing-record", "open", {"handover": None}, subject="loudspeaker/left", says="handover"),
    on("fixing-record", "open", base=NO_STAGE),
    on("fixing-record", "notApplicable", subject="loudspeaker/right"),
    on("fixing-record", "notApplicable", {f"{FIXING}.fastener": "toggle", f"{FIXING}.into": "board"}, subject="loudspeaker/left"),
    on("fixing-record", "notApplicable", base=EARLY),

    on("photo-before-closing", "pass"),
    on("photo-before-closing", "fail", {PHOTO: None}, level="warning"),
    on("photo-before-closing", "fail", {f"{PHOTO}.done": False}),
    # Younger than the stud that was proved through the board.
    on("photo-before-closing", "fail", {f"{PHOTO}.on": "2026-06-02"}, says="of 2026-06-02, and wiring of 2026-06-01"),
    # What is not done closes no wall; of what is done without a day it is not known.
    on("photo-before-closing", "pass", {"calibration.steps": [step("wiring", "2026-04-01", done=False)]}),
    on("photo-before-closing", "open", {"calibration.steps.0.on": None}, says="on"),
    on("photo-before-closing", "fail", {"calibration.steps.0.on": None, f"{PHOTO}.on": "2026-06-03"}, says="stud-proved"),
    on("photo-before-closing", "open", {f"{PHOTO}.on": None}, says="on"),
    # At rough-in nothing is lost yet.
    on("photo-before-closing", "open", {PHOTO: None, "project.stage": "rough-in"}, says="handover"),
    on("photo-before-closing", "pass", {"project.stage": "rough-in"}),
    on("photo-before-closing", "open", {"cables.0.in_wall": None}, says="in_wall"),
    on("photo-before-closing", "open", {"cables": None, PHOTO: None}, says="cables"),
    on("photo-before-closing", "open", base=NO_STAGE, says="stage"),
    on("photo-before-closing", "notApplicable", {"cables.0.in_wall": False}),
    on("photo-before-closing", "notApplicable", base=EARLY),
    on("photo-before-closing", "notApplicable", base=changed(BARE, {"cables": None}), says=EARLY_SAID),

    on("circuit-tests", "pass"),
    on("circuit-tests", "fail", {INSULATION: None}, level="warning", says="no record of insulation test"),
    on("circuit-tests", "fail", {TRIPPING: None}, says="residual current test"),
    on("circuit-tests", "pass", {TRIPPING: None, "circuits.0": {"id": "rack", "gfci": False}}),
    on("circuit-tests", "pass", {TRIPPING: None, "circuits.0": {"id": "rack", "rcd": "none"}}),
    on("circuit-tests", "fail", {TRIPPING: None, "circuits.0": {"id": "rack", "rcd": "30 mA"}}),
    on("circuit-tests", "open", {"circuits.0": {"id": "rack"}}, says="gfci"),
    on("circuit-tests", "open", {f"{INSULATION}.on": None}, says="on"),
    on("circuit-tests", "open", {"circuits": None, TRIPPING: None, INSULATION: None}, says="circuits"),
    on("circuit-tests", "notApplicable", base=EARLY),
    on("circuit-tests", "notApplicable", base=changed(BARE, {"circuits": None}), says=EARLY_SAID),

    on("documents", "pass"),
    on("documents", "fail", {DRAWINGS: None}, level="warning", says="without drawings"),
    on("documents", "fail", {f"{DRAWINGS}.done": False}),
    on("documents", "fail", {"handover": []}, says="drawings, settings, responses, instructions"),
    on("documents", "fail", {f"{SETTINGS}.on": "2026-06-03"}, says="settings of 2026-06-03, and taste was done on 2026-06-04"),
    on("documents", "fail", {f"{RESPONSES}.on": "2026-06-02"}, says="responses of 2026-06-02, and correction was done on 2026-06-03"),
    on("documents", "open", {f"{RESPONSES}.on": None}, says="on"),
    on("documents", "open", {f"{DRAWINGS}.done": None}, says="done"),
    on("documents", "open", {f"{DRAWINGS}.kind": None}, says="kind"),
    on("documents", "open", {"handover": None}, says="handover"),
    on("documents", "notApplicable", base=EARLY),

    on("versions", "pass"),
    on("versions", "fail", {VERSIONS: None}, level="warning", says="no record"),
    on("versions", "fail", {f"{VERSIONS}.on": "2026-06-03"}, says="recorded on 2026-06-03, after polarity was set on 2026-06-02"),
    # A step without a day or a kind may be the first that was set.
    on("versions", "open", {"calibration.steps.1.on": None}, says="on"),
    on("versions", "fail", {"calibration.steps.1.on": None, f"{VERSIONS}.on": "2026-06-03"}, says="subwoofers was set"),
    on("versions", "open", {"calibration.steps.0.kind": None, f"{VERSIONS}.on": "2026-06-02"}, says="kind"),
    on("versions", "pass", {"calibration.steps": [step("wiring", "2026-05-01")]}),
    on("versions", "pass", {"calibration.steps": [step("levels", "2026-05-01", done=False)]}),
    on("versions", "open", {"calibration.steps": None}, says="calibration.steps"),
    on("versions", "open", {f"{VERSIONS}.version": None}, says="version"),
    on("versions", "open", {f"{VERSIONS}.on": None}, says="on"),
    on("versions", "open", {"handover.11": item("versions", "processor", id="two"), f"{VERSIONS}.version": None}, says="version"),
    on("versions", "open", {"electronics": None, "cables": None, "handover": []}, says="electronics.processor"),
    on("versions", "open", {"handover": None}, says="handover"),
    on("versions", "notApplicable", base=EARLY),
    on("versions", "notApplicable", base=changed(BARE, {"electronics": None, "cables": None}), says=EARLY_SAID),
]  # fmt: skip
