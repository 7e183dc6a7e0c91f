"""Knowledge only grows: without a key a verdict may become open, never a failure nothing and never a pass nothing."""

from __future__ import annotations

import re
from typing import Any

from rich_rooms import keys_of, verdicts_of, without, written

SILENT = {"pass", "notApplicable"}
EXCEPTIONS: dict[str, str] = {
    # Which key, as a pattern of its path: why a verdict may vanish or change to the better with it.
}


def _excepted(path: str) -> bool:
    return any(re.fullmatch(pattern, path) for pattern in EXCEPTIONS)


def lost(data: dict[str, Any], base: dict[tuple[str, str], Any], way: tuple[str | int, ...]) -> list[str]:
    """Return every verdict that fell silent when a key was taken out."""
    try:
        now = verdicts_of(without(data, way))
    except ValueError:
        return []  # a located error is an answer
    told = []
    for (rule, subject), verdict in base.items():
        after = now.get((rule, subject))
        kind = str(after.kind) if after is not None else "gone"
        worse = str(verdict.kind) in {"fail", "review"} and kind in {*SILENT, "gone"}
        if worse or (str(verdict.kind) == "pass" and kind in {"notApplicable", "gone"}):
            told.append(f"without {written(way)}: {rule} of {subject}: {verdict.kind} became {kind}")
    return told


def test_no_key_that_is_taken_out_makes_a_verdict_fall_silent(rich) -> None:
    base = verdicts_of(rich)
    told = [
        text for way in keys_of(rich) if not _excepted(written(way)) for text in lost(rich, base, way)
    ]
    assert not told, "\n".join(told)
