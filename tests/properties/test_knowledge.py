"""Knowledge only grows: without a key a verdict may become open, never a failure nothing and never a pass nothing."""

from __future__ import annotations

import os
import re
from typing import TYPE_CHECKING

import pytest
from rich_rooms import LOCATED, keys_of, verdicts_of, without, written

if TYPE_CHECKING:
    from rich_rooms import Rich, Way

EXCEPTIONS: dict[str, str] = {
    r".*\.(level|delay|inverted)": "a trim that is not entered is none",
    r".*\.mounting\.(swivel|tilt)": "what is not turned stands square off its surface, and the report tells so",
    r"loudspeakers\[\]\.pair_middle": "a pair without one is mirrored about the room's middle, and the report tells so",
    r".*\.mounting\.product": "a thing may hang without a mount of its own",
    r".*\.mounting\.extension": "what a file does not repeat cannot contradict the mount's sheet",
    r".*\.departure": "what does not claim to depart is held against its own place",
    r"waivers": "a failure that nobody has accepted stands as it stood",
}
OF_RULES: dict[tuple[str, str], str] = {
    (r"loudspeakers\[\]\.aim", r"file\.aim-and-mount"): "an aim that a file does not write cannot contradict the mount",
    (r".*mounting\.(drop|extension)", r"file\.reach-and-place"): (
        "a reach that a file does not write cannot contradict the place"
    ),
    (r"electronics\.racks\[\]\.(front|rear)_clear", r"file\.rack-clear"): (
        "a free depth that a file does not write cannot contradict the drawing"
    ),
    (r"picture\.(width|height|diagonal|proportions)", r"file\.picture-and-sheet"): (
        "a size that a file does not write cannot contradict the sheet, whose own is taken"
    ),
    (r"calibration(\.reference_level)?", r"level\..*"): (
        "a level that is not said is the trade's own, and the report tells so; who says a higher one asks for more"
    ),
}
"""The same of some rules alone; all others are as silent or as loud without the key as they must be."""

EVERY_KEY = "ROOMLINT_EVERY_KEY" in os.environ
"""All keys of a room take up to two minutes: before a release, or when a rule's applicability changed."""
STRIDE = 29
"""Otherwise every so many; a prime, so that it falls on all keys of the elements that look alike."""
WHOLE = (
    "room.openings", "room.obstacles", "seats", "picture", "loudspeakers", "subwoofers", "treatments", "circuits",
    "electronics", "electronics.amplifiers", "electronics.racks",
)  # fmt: skip
"""Lists and parts that may be absent, so that a file which does not speak of them says nothing of them."""


def _excepted(path: str) -> bool:
    return any(re.fullmatch(pattern, path) for pattern in EXCEPTIONS)


def _let_off(path: str, rule: str) -> bool:
    return any(re.fullmatch(key, path) and re.fullmatch(of, rule) for key, of in OF_RULES)


def lost(room: Rich, way: Way) -> list[str]:
    """Return every verdict that fell silent when a key was taken out.

    A verdict may move: without its label a loudspeaker is in no pair, and the same rule is newly open on it or on the
    room. An element that was taken out takes its verdicts along.
    """
    rules = room.rules_of(way)
    base = room.said_by(rules)
    try:
        now = verdicts_of(without(room.data, way), rules)
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
        if str(verdict.kind) not in {"pass", "fail", "review"} or kind not in bad or verdict.waived is not None:
            continue
        if _let_off(written(way), rule):
            continue
        if kind == "gone" and (rule in opened or not set(subject.split("+")) <= there):
            continue
        told.append(f"without {written(way)}: {rule} of {subject}: {verdict.kind} became {kind}")
    return told


def test_no_key_that_is_taken_out_makes_a_verdict_fall_silent(rich: Rich) -> None:
    assert sum(str(verdict.kind) == "pass" for verdict in rich.said.values()) > 100
    every = [way for way in keys_of(rich.data) if not _excepted(written(way))]
    keys = every[:: 1 if EVERY_KEY else min(STRIDE, len(every) // 10)]
    assert len(keys) >= 10
    told = [text for way in keys for text in lost(rich, way)]
    assert not told, "\n".join(told)


@pytest.mark.parametrize("way", WHOLE)
def test_a_list_that_the_file_does_not_speak_of_is_never_a_list_of_nothing(rich: Rich, way: str) -> None:
    """Every rule that judged something of it has an open verdict then, or judges other things and lost only its own."""
    steps = tuple(way.split("."))
    data = rich.data
    for step in steps[:-1]:
        data = data.get(step, {})
    if steps[-1] not in data:
        return
    told = lost(rich, steps)
    assert not told, "\n".join(told)
    silent = "there is no "
    rules = rich.rules_of(steps)
    try:
        now = verdicts_of(without(rich.data, steps), rules)
    except ValueError:
        return  # something else of the file names what stands there; `lost` has seen that it is told at its line
    judged = {key[0] for key, verdict in rich.said_by(rules).items() if str(verdict.kind) in {"pass", "fail", "review"}}
    fell = sorted(rule for (rule, _), v in now.items() if rule in judged and v.because.startswith(silent))
    assert fell == []
