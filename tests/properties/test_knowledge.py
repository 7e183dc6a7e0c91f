"""Knowledge only grows: without a key a verdict may become open, never a failure nothing and never a pass nothing."""

from __future__ import annotations

import os
import re
from typing import Any

from rich_rooms import keys_of, verdicts_of, without, written

EXCEPTIONS: dict[str, str] = {
    r"room\.obstacles": "an obstacle that is not in the file is not in the room",
    r".*\.(level|delay|inverted)": "a trim that is not entered is none",
    r".*\.mounting\.product": "a thing may hang without a mount of its own",
}

EVERY_KEY = "ROOMLINT_EVERY_KEY" in os.environ
"""All keys take half an hour: before a release, or when a rule's applicability changed."""
STRIDE = 29
"""Otherwise every so many; a prime, so that it falls on all keys of the elements that look alike."""


LOCATED = re.compile(r"\d+: ")
"""How a problem that was found in a file is told: the line first."""


def _excepted(path: str) -> bool:
    return any(re.fullmatch(pattern, path) for pattern in EXCEPTIONS)


def lost(data: dict[str, Any], base: dict[tuple[str, str], Any], way: tuple[str | int, ...]) -> list[str]:
    """Return every verdict that fell silent when a key was taken out.

    A verdict may move: without its label a loudspeaker is in no pair, and the same rule is newly open on it or on the
    room. An element that was taken out takes its verdicts along.
    """
    try:
        now = verdicts_of(without(data, way))
    except ValueError as error:
        # An error that is told at its line is an answer; any other is the program's own.
        return [] if LOCATED.match(str(error)) else [f"without {written(way)}: {error}"]
    there = {part for _, subject in now for part in subject.split("+")}
    opened = {
        key[0] for key, v in now.items() if str(v.kind) == "open" and str(getattr(base.get(key), "kind", "")) != "open"
    }
    told = []
    for (rule, subject), verdict in base.items():
        after = now.get((rule, subject))
        kind = str(after.kind) if after is not None else "gone"
        bad = {"notApplicable", "gone"} if str(verdict.kind) == "pass" else {"pass", "notApplicable", "gone"}
        if str(verdict.kind) not in {"pass", "fail", "review"} or kind not in bad:
            continue
        if kind == "gone" and (rule in opened or not set(subject.split("+")) <= there):
            continue
        told.append(f"without {written(way)}: {rule} of {subject}: {verdict.kind} became {kind}")
    return told


def test_no_key_that_is_taken_out_makes_a_verdict_fall_silent(rich) -> None:
    base = verdicts_of(rich)
    assert "pass" in {str(verdict.kind) for verdict in base.values()}  # a complete room has nothing open
    every = [way for way in keys_of(rich) if not _excepted(written(way))]
    keys = every[:: 1 if EVERY_KEY else min(STRIDE, len(every) // 10)]
    assert len(keys) >= 10
    told = [text for way in keys for text in lost(rich, base, way)]
    assert not told, "\n".join(told)
