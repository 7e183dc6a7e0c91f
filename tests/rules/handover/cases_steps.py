"""Cases of the calibration's steps and presets."""

from __future__ import annotations

from datetime import date
from typing import Any

from handover_rooms import (
    BARE,
    CORRECTION,
    CROSSOVERS,
    DELAYS,
    EARLY,
    EARLY_SAID,
    LEVELS,
    NO_STAGE,
    POLARITY,
    READY,
    SHEETS,
    STEPS,
    SUBWOOFERS,
    TASTE,
    VERIFICATION,
    WIRING,
    step,
)

from roomlint.testing import Case, Never, changed


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of the room at its handover."""
    return Case(f"handover.{rule}", kind, changed(more.pop("base", READY), changes or {}), SHEETS, **more)


def moved(*order: int) -> dict[str, Any]:
    """Return the steps in another order, all on one day."""
    return {STEPS: [{**READY["calibration"]["steps"][at], "on": "2026-06-02"} for at in order]}


PRESETS = "calibration.presets"
ALL = (WIRING, POLARITY, SUBWOOFERS, CROSSOVERS, DELAYS, LEVELS, CORRECTION, TASTE)

CASES: list[Case | Never] = [
    on("steps", "pass"),
    on("steps", "fail", {f"{STEPS}.{POLARITY}": None}, level="warning", says="no step for polarity"),
    on("steps", "fail", {f"{STEPS}.{SUBWOOFERS}": None}, says="subwoofers"),
    # Whoever corrects measures once more.
    on("steps", "fail", {f"{STEPS}.{VERIFICATION}": None}, says="verification"),
    on("steps", "pass", {f"{STEPS}.{SUBWOOFERS}": None, "subwoofers.1": None, "calibration.settings.3": None}),
    on("steps", "fail", {f"{STEPS}": []}, says="wiring, polarity, subwoofers, crossovers, delays, levels"),
    # The step without a kind may be the one.
    on("steps", "open", {f"{STEPS}.{POLARITY}.kind": None}, says="kind"),
    # With subwoofers there would be more steps.
    on("steps", "open", {"subwoofers": None, "calibration.settings": None}, says="subwoofers"),
    on("steps", "open", {STEPS: None}, says="calibration.steps"),
    on("steps", "open", base=NO_STAGE, says="stage"),
    on("steps", "notApplicable", base=EARLY),
    on("steps", "notApplicable", base=BARE, says=EARLY_SAID),

    on("order", "pass"),
    on("order", "fail", moved(WIRING, LEVELS, POLARITY, SUBWOOFERS, CROSSOVERS, DELAYS, CORRECTION, TASTE),
       subject="step/levels", level="warning", says="before polarity"),
    # The whole was corrected before the subwoofers agreed among themselves.
    on("order", "fail", moved(WIRING, POLARITY, CROSSOVERS, DELAYS, LEVELS, CORRECTION, SUBWOOFERS, TASTE),
       subject="step/correction", says="before subwoofers"),
    on("order", "fail", moved(WIRING, POLARITY, CROSSOVERS, DELAYS, LEVELS, CORRECTION, SUBWOOFERS, TASTE),
       subject="step/crossovers", says="before subwoofers"),
    on("order", "fail", moved(WIRING, POLARITY, TASTE, SUBWOOFERS, CROSSOVERS, DELAYS, LEVELS, CORRECTION),
       subject="step/taste", says="not the last step"),
    # The list is in order and the days are not.
    on("order", "fail", {f"{STEPS}.{POLARITY}.on": "2026-06-09"}, subject="step/levels", says="before polarity"),
    on("order", "pass", {f"{STEPS}.9": step("verification", "2026-06-04", id="again")}, subject="step/levels"),
    # What was set once more after all was verified was never measured, unless it is verified once more too.
    on("order", "fail", {
        f"{STEPS}.{TASTE}": step("verification", "2026-06-05", id="proof"),
        f"{STEPS}.9": step("levels", "2026-06-06", id="again"),
    }, subject="step/proof", says="before levels"),
    on("order", "pass", {
        f"{STEPS}.{TASTE}": step("verification", "2026-06-05", id="proof"),
        f"{STEPS}.9": step("levels", "2026-06-06", id="again"),
        f"{STEPS}.10": step("verification", "2026-06-07", id="proof-again"),
    }, subject="step/proof"),
    on("order", "fail", {f"{STEPS}.9": step("levels", "2026-06-05", id="again")}, subject="step/taste"),
    on("order", "pass", {f"{STEPS}.9": step("polarity", "2026-06-03", id="again")}, subject="step/levels"),
    on("order", "open", {f"{STEPS}.{LEVELS}.kind": None}, subject="step/levels", says="kind"),
    on("order", "open", {f"{STEPS}.9": {"id": "more", "done": True}}, subject="step/levels", says="kind of more"),
    on("order", "open", {STEPS: None}, says="calibration.steps"),
    on("order", "open", base=NO_STAGE, says="stage"),
    on("order", "notApplicable", base=EARLY),
    on("order", "notApplicable", base=BARE, says=EARLY_SAID),

    on("done", "pass"),
    on("done", "fail", {f"{STEPS}.{LEVELS}.done": False}, subject="step/levels", level="warning"),
    on("done", "fail", {"handover.0.done": False}, subject="handover item/stud-proved"),
    on("done", "open", {f"{STEPS}.{LEVELS}.done": None}, subject="step/levels", says="done"),
    on("done", "open", {f"{STEPS}.{LEVELS}.by": None}, subject="step/levels", says="by"),
    on("done", "open", {f"{STEPS}.{LEVELS}.on": None}, subject="step/levels", says="on"),
    on("done", "open", {f"{STEPS}.{LEVELS}.evidence": None}, subject="step/levels", says="evidence"),
    on("done", "open", {"handover": None}, subject="design/case", says="handover"),
    on("done", "notApplicable", base=EARLY),
    on("done", "notApplicable", base=BARE, says=EARLY_SAID),

    # Dates are held against the day of the check.
    on("done", "fail", {f"{STEPS}.{LEVELS}.on": "2031-01-01"}, subject="step/levels", today=date(2026, 6, 30), says="a day to come"),
    on("done", "pass", subject="step/levels", today=date(2026, 6, 30)),

    on("presets", "pass"),
    on("presets", "fail", {"listening_modes.1": {"id": "film", "layout": "0+5+0"}}, subject="listening mode/film",
       level="warning", says="no preset"),
    on("presets", "fail", {PRESETS: []}),
    on("presets", "open", {PRESETS: None}, says="calibration.presets"),
    on("presets", "open", {f"{PRESETS}.0.mode": None, f"{PRESETS}.1.mode": None}, says="mode"),
    on("presets", "open", {"listening_modes": None, PRESETS: None}, says="listening_modes"),
    on("presets", "open", base=NO_STAGE),
    on("presets", "notApplicable", base=EARLY),
    on("presets", "notApplicable", base=changed(BARE, {"listening_modes": None}), says=EARLY_SAID),

    on("taste-apart", "pass", subject="preset/warm", says="plain"),
    on("taste-apart", "fail", {f"{PRESETS}.0": None}, subject="preset/warm", level="warning"),
    on("taste-apart", "fail", {f"{PRESETS}.0.taste": True}, subject="preset/warm"),
    on("taste-apart", "open", {f"{PRESETS}.0.taste": None}, subject="preset/warm", says="taste"),
    on("taste-apart", "open", {f"{PRESETS}.1.mode": None}, subject="preset/warm", says="mode"),
    on("taste-apart", "open", {PRESETS: None}),
    on("taste-apart", "notApplicable", subject="preset/plain"),
    on("taste-apart", "notApplicable", base=BARE, says=EARLY_SAID),

    on("taste-record", "pass"),
    on("taste-record", "fail", {f"{PRESETS}.1": None}, level="warning", says="may be in the calibration"),
    on("taste-record", "fail", {f"{STEPS}.{TASTE}": None}, says="no step that set it"),
    on("taste-record", "pass", {f"{STEPS}.{TASTE}": None, f"{PRESETS}.1": None}),
    on("taste-record", "open", {f"{PRESETS}.1.taste": None}, says="taste"),
    on("taste-record", "open", {f"{STEPS}.{TASTE}.kind": None}, says="kind"),
    on("taste-record", "open", {PRESETS: None}, says="calibration.presets"),
    on("taste-record", "notApplicable", base=EARLY),
]  # fmt: skip
