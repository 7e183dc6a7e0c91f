"""Knowledge only grows: without a key a verdict may become open, never a failure nothing and never a pass nothing."""

from __future__ import annotations

import re
from typing import Any

from rich_rooms import keys_of, verdicts_of, without, written

EXCEPTIONS: dict[str, str] = {
    # Which key, as a pattern of its path: why a verdict may vanish or change to the better with it.
}


def _excepted(path: str) -> bool:
    return any(re.fullmatch(pattern, path) for pattern in EXCEPTIONS)


def lost(data: dict[str, Any], base: dict[tuple[str, str], Any], way: tuple[str | int, ...]) -> list[str]:
    """Return every verdict that fell silent when a key was taken out.

    A verdict may move: without its label a loudspeaker is in no pair, and the same rule is open on the loudspeaker
    itself, or on the room. An element that was taken out takes its verdicts along.
    """
    try:
        now = verdicts_of(without(data, way))
    except ValueError:
        return []  # a located error is an answer
    there = {part for _, subject in now for part in subject.split("+")}
    still_open = {(rule, part) for (rule, subject), v in now.items() if str(v.kind) == "open" for part in subject.split("+")}
    whole_open = {rule for rule, part in still_open if part.startswith(("design/", "room/"))}
    told = []
    for (rule, subject), verdict in base.items():
        after = now.get((rule, subject))
        kind = str(after.kind) if after is not None else "gone"
        bad = {"notApplicable", "gone"} if str(verdict.kind) == "pass" else {"pass", "notApplicable", "gone"}
        if str(verdict.kind) not in {"pass", "fail", "review"} or kind not in bad:
            continue
        parts = subject.split("+")
        moved = rule in whole_open or any((rule, part) in still_open for part in parts)
        if kind == "gone" and (moved or not set(parts) <= there):
            continue
        told.append(f"without {written(way)}: {rule} of {subject}: {verdict.kind} became {kind}")
    return told


def test_no_key_that_is_taken_out_makes_a_verdict_fall_silent(rich) -> None:
    base = verdicts_of(rich)
    told = [
        text for way in keys_of(rich) if not _excepted(written(way)) for text in lost(rich, base, way)
    ]
    assert not told, "\n".join(told)
