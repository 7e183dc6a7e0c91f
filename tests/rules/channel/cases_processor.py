"""Cases of what the processor is set up for."""

from __future__ import annotations

from typing import Any

from channel_rooms import EMPTY, LS, RS, SHEETS, UNSAID, C, L, R, processor, upper

from roomlint.sample import room
from roomlint.testing import Case, Never, changed

FIVE = changed(room(L, R, C, LS, RS), {"electronics": {"processor": {"product": "proc"}}})
SIX_ABOVE = changed(room(L, R, C, LS, RS, *upper(30, 90, 135)), {"electronics": {"processor": {"product": "proc"}}})
DECLARED = {"electronics.processor.unfitted": ["M+135", "M-135"]}
BARE = {"loudspeakers.0.label": None}


def on(rule: str, kind: str, changes: dict[str, Any] | None = None, **more: Any) -> Case:
    """Return a case of five loudspeakers with a processor."""
    base, own = more.pop("base", FIVE), more.pop("sheet", None)
    sheets = [sheet for sheet in SHEETS if own is None or sheet["id"] != "proc"] + ([own] if own is not None else [])
    return Case(f"channel.{rule}", kind, changed(base, changes or {}), sheets, **more)


CASES: list[Case | Never] = [
    on("decoded", "pass", says="5 of 15"),
    on("decoded", "fail", sheet=processor(decoded=3), level="error", says="5 channels and its processor decodes 3"),
    # What is declared and not fitted is decoded all the same.
    on("decoded", "fail", DECLARED, sheet=processor(decoded=6), says="7 channels"),
    # The layout that is followed counts, though a loudspeaker of it is missing yet.
    on("decoded", "fail", {"layout": "4+5+0"}, sheet=processor(decoded=7), says="9 channels"),
    on("decoded", "open", BARE, says="label"),
    on("decoded", "open", sheet=processor(decoded=None), says="decoded"),
    on("decoded", "open", base=UNSAID, says="electronics.processor"),
    on("decoded", "notApplicable", base=EMPTY),

    on("processed", "pass"),
    on("processed", "fail", sheet=processor(processed=3), level="error", says="leave 2 out"),
    on("processed", "pass", DECLARED, sheet=processor(processed=5)),
    on("processed", "open", BARE, sheet=processor(processed=4), says="label"),
    # Four of the five have labels, and that is too many already.
    on("processed", "fail", BARE, sheet=processor(processed=3)),
    on("processed", "open", sheet=processor(processed=None), says="processed"),
    on("processed", "open", base=UNSAID),
    on("processed", "notApplicable", base=EMPTY),

    on("layout-taken", "pass", says="0+5+0"),
    # Six upper channels are taken with seven at the ears only: a room of five declares two that are not fitted.
    on("layout-taken", "fail", base=SIX_ABOVE, level="error",
       says="6 upper channels with 7 ear-layer ones, not 5: declare 2 more unfitted"),
    on("layout-taken", "pass", DECLARED, base=SIX_ABOVE, says="6+7+0"),
    on("layout-taken", "fail", {"loudspeakers.5": upper(30)[0]}, says="is set up as 1+5+0"),
    # A pair that stands under another label than the layout's is one pair all the same.
    on("layout-taken", "pass", {"layout": "0+5+0", "loudspeakers.3.label": "M+090", "loudspeakers.4.label": "M-090"}),
    on("layout-taken", "open", BARE, says="label"),
    on("layout-taken", "open", sheet=processor(layouts=None), says="layouts"),
    on("layout-taken", "open", base=UNSAID),
    on("layout-taken", "notApplicable", base=EMPTY),

    on("unfitted", "pass", says="declares every channel fitted"),
    on("unfitted", "pass", DECLARED, base=SIX_ABOVE, says="M+135, M-135"),
    on("unfitted", "fail", {"electronics.processor.unfitted": ["M+000"]}, level="error", says="a loudspeaker plays there"),
    on("unfitted", "fail", {"electronics.processor.unfitted": ["M+000"], "loudspeakers.2": None}, says="which it must have"),
    on("unfitted", "open", DECLARED, base=SIX_ABOVE, sheet=processor(layouts=[{"layout": "6+7+0"}]), says="unfitted"),
    on("unfitted", "open", DECLARED, base=SIX_ABOVE, sheet=processor(layouts=None), says="layouts"),
    on("unfitted", "open", base=UNSAID),
    Never("channel.unfitted", "notApplicable", "a file that does not speak of a processor may have one"),
]  # fmt: skip
