"""What to find out next: the elements that lack something, the most hazardous first, and what to write where."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

from roomlint.report.names import WHOLE
from roomlint.review.verdict import Kind, Level
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.review.verdict import Verdict, Wanted

HAZARD: Final = {"mount": 0, "mains": 1, "heat": 2, "access": 3}
"""Chapters in which people can get hurt, the gravest first."""
DRILLING: Final = frozenset({"mount", "mains"})
"""Load paths and circuits: what is not known there is told before all else."""
_NO_HAZARD: Final = 9
_POINT: Final = "{from_left: , from_front: , height: }"
_POINTS: Final = frozenset({"position", "ear", "centre", "lens"})
_ITEM: Final = "- "
_STEP: Final = re.compile(r"[^.\[\]]+|\[\d*\]")


@dataclass(slots=True)
class Lack:
    """An element that lacks something, and how many judgements wait for it."""

    subject: str
    file: str
    order: int = 0
    """Where the first verdict that wants something of it stood."""
    hazard: int = _NO_HAZARD
    waiting: int = 0
    wanted: dict[str, Wanted] = field(default_factory=dict)
    """What it lacks, by key."""
    drilling: dict[str, Wanted] = field(default_factory=dict)
    """That of it which a load path or a circuit wants."""
    judged: dict[str, None] = field(default_factory=dict)
    """What the load paths and circuits that want it are judged of, where the element is the room."""
    rules: dict[str, Verdict] = field(default_factory=dict)
    """The rules about load paths and circuits that want it, each by one verdict."""

    @property
    def of(self) -> tuple[str, ...]:
        """Whom it is told of: the element, or, where the room lacks a key below a list, what is judged by it."""
        in_lists = self.subject.partition("/")[0] in WHOLE and all("[" in key for key in self.drilling)
        others = tuple(key for key in self.judged if key.partition("/")[0] not in WHOLE)
        return others if in_lists and others else (self.subject,)


def lacks(verdicts: Iterable[Verdict]) -> list[Lack]:
    """Return the elements that lack something, ranked by hazard and then by how many judgements wait."""
    found: dict[tuple[str, str, str], Lack] = {}
    for verdict in verdicts:
        wanted = verdict.wanted
        if wanted is None or verdict.kind is not Kind.OPEN:
            continue
        # Two of one name in one file, such as the first receptacle of each circuit, lack what they lack each.
        at = wanted.path.removesuffix(wanted.key)
        lack = found.setdefault((wanted.file, wanted.subject, at), Lack(wanted.subject, wanted.file, len(found)))
        chapter = verdict.rule.partition(".")[0]
        lack.hazard = min(lack.hazard, HAZARD.get(chapter, _NO_HAZARD))
        lack.waiting += 1
        lack.wanted.setdefault(wanted.key, wanted)
        if chapter in DRILLING:
            lack.drilling.setdefault(wanted.key, wanted)
            lack.rules.setdefault(verdict.rule, verdict)
            lack.judged[verdict.subject.partition("+")[0]] = None
    return sorted(found.values(), key=lambda lack: (lack.hazard, -lack.waiting, lack.file, lack.subject))


def is_hazard(verdict: Verdict) -> bool:
    """Whether a load path or a circuit fails as an error, or a person must decide on it."""
    if verdict.rule.partition(".")[0] not in DRILLING or verdict.waived is not None:
        return False
    return verdict.kind is Kind.REVIEW or verdict.level is Level.ERROR


def hazard_order(verdict: Verdict) -> tuple[int, float]:
    """Return where a hazard stands among others: what is plainly wrong, then the farthest outside its window."""
    if verdict.kind is Kind.REVIEW:
        return 2, 0.0
    if verdict.figure is None or verdict.window is None or verdict.margin is None:
        return 0, 0.0
    edge = next((abs(edge) for edge in (verdict.window.high, verdict.window.low) if edge), 1.0)
    return 1, verdict.margin / edge


def block(chosen: Iterable[Lack], width: int = 0) -> list[str]:
    """Return what elements of one file lack as lines of YAML to paste into it and fill in.

    With a width an element stands in braces, on as few lines as it fits on; without, each of its keys has a line.
    """
    root: dict[str, Any] = {}
    for lack in chosen:
        for wanted in lack.wanted.values():
            _put(root, wanted)
    return list(_lines(root, 0, width))


def _put(root: dict[str, Any], wanted: Wanted) -> None:
    at, ids = root, iter(wanted.above)
    steps = _STEP.findall(wanted.path)
    for step in steps[:-1]:
        name = f"{_ITEM}{next(ids, '') or 'id: ...'}" if step.startswith("[") else step
        below = at.setdefault(name, {})
        at = below if isinstance(below, dict) else {}
    last = one_line(steps[-1]) if steps else ""
    if last and not last.startswith("["):
        at.setdefault(last, _POINT if last in _POINTS else "")


def _flow(at: dict[str, Any]) -> str:
    """Return nested keys on one line, each with room for its value."""
    told = (f"{name}: {_flow(value) if isinstance(value, dict) else value}" for name, value in at.items())
    return f"{{{', '.join(told)}}}"


def _in_braces(at: dict[str, Any], indent: str, width: int) -> list[str]:
    """Return an item of a list in braces, its keys on as few lines as they fit on."""
    parts = [f"{name}: {_flow(value) if isinstance(value, dict) else value}" for name, value in at.items()]
    lines = [f"{indent}- {{"]
    for number, part in enumerate(parts, start=1):
        whole = f"{part}{',' if number < len(parts) else '}'}"
        # A value in braces of its own is folded only where a line of its own is too short for it.
        fits = len(indent) + 3 + len(whole) <= width
        for told in [whole] if fits else re.split(r"(?<=,) ", whole):
            if len(lines[-1]) + 1 + len(told) > width and not lines[-1].endswith("- {"):
                lines.append(f"{indent}   {told}")
            else:
                lines[-1] += told if lines[-1].endswith("- {") else f" {told}"
    return lines


def _is_list(at: dict[str, Any]) -> bool:
    return any(name.startswith(_ITEM) for name in at)


def _holds_a_list(at: dict[str, Any]) -> bool:
    return any(isinstance(below, dict) and (_is_list(below) or _holds_a_list(below)) for below in at.values())


def _lines(at: dict[str, Any], depth: int, width: int) -> list[str]:
    lines = []
    for name, value in at.items():
        indent = "  " * depth
        if name.startswith(_ITEM):
            if width and not _holds_a_list(value):
                key, _, told = one_line(name.removeprefix(_ITEM)).partition(": ")
                lines += _in_braces({key: told, **value}, indent, width)
                continue
            lines.append(f"{indent}{one_line(name)}")
            lines += _lines(value, depth + 1, width)
        elif isinstance(value, dict) and _is_list(value):
            lines.append(f"{indent}{one_line(name)}:")
            lines += _lines(value, depth + 1, width)
        elif isinstance(value, dict):
            whole = f"{indent}{one_line(name)}: {_flow(value)}"
            if _holds_a_list(value) or (width and len(whole) > width):
                lines += [f"{indent}{one_line(name)}:", *_lines(value, depth + 1, width)]
            else:
                lines.append(whole)
        else:
            lines.append(f"{indent}{name}: {value}".rstrip())
    return lines
