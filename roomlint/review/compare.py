"""Compares a review with an earlier one, of another revision or from a SARIF file that this program wrote."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from roomlint.measure.figure import Figure
from roomlint.review.verdict import Change, Kind, Level, State, Verdict, Waived
from roomlint.source.place import Place

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from roomlint.review.review import Review, RoomReview

FINGERPRINT = "roomlint/v1"
MAX_BYTES = 256 * 1024 * 1024
TOOL = "roomlint"


class NotOursError(ValueError):
    """A file that is no SARIF log of this program; the text says why."""


def fingerprint(file: str, verdict: Verdict) -> str:
    """Return what identifies a verdict over the years: rule, file and element ids, never lines or wording."""
    return hashlib.sha256(f"{verdict.rule}\n{file}\n{verdict.subject}".encode("utf-8", "backslashreplace")).hexdigest()[
        :32
    ]


@dataclass(frozen=True, slots=True)
class Earlier:
    """The verdicts of an earlier review, by fingerprint, and what it is called."""

    name: str
    verdicts: Mapping[str, tuple[str, Verdict]]
    """Fingerprint to file and verdict."""


def earlier_of(review: Review, name: str) -> Earlier:
    """Return a review as an earlier one; files that were unreadable then are told in its name."""
    unread = sorted({problem.place.file for problem in review.problems})
    told = f" ({', '.join(unread[:3])}{' ...' if len(unread) > 3 else ''} could not be read there)" if unread else ""  # noqa: PLR2004  enough to see which
    found = {
        fingerprint(room.file, verdict): (room.file, verdict) for room in review.rooms for verdict in room.verdicts
    }
    return Earlier(f"{name}{told}", found)


def compare(review: Review, earlier: Earlier) -> Review:
    """Return the review with how each verdict stands to the earlier one, and which failures are gone."""
    done = (_room(room, earlier) for room in review.rooms)
    rooms: Sequence[RoomReview]
    if isinstance(review.rooms, tuple):
        rooms = tuple(done)
    else:
        from roomlint.review.spool import spooled  # loads only when there are many rooms

        rooms = spooled(done)
    return replace(review, rooms=rooms, against=earlier.name)


def _room(room: RoomReview, earlier: Earlier) -> RoomReview:
    now = {fingerprint(room.file, verdict): verdict for verdict in room.verdicts}
    verdicts = []
    for key, verdict in now.items():
        was = earlier.verdicts.get(key)
        verdicts.append(replace(verdict, change=_change(verdict, was[1] if was is not None else None)))
    held = {Kind.FAIL, Kind.OPEN, Kind.REVIEW}
    gone = [
        replace(was, change=Change(State.ABSENT, was=str(was.level)))
        for key, (file, was) in earlier.verdicts.items()
        if file == room.file and was.kind is Kind.FAIL and (key not in now or now[key].kind not in held)
    ]
    return replace(room, verdicts=tuple(verdicts), gone=tuple(gone), compared=True)


def _change(verdict: Verdict, was: Verdict | None) -> Change:
    if was is None:
        return Change(State.NEW)
    before = str(was.level or was.kind)
    better = None
    if verdict.margin is not None and was.margin is not None and _unit(verdict) == _unit(was):
        better = verdict.margin - was.margin
        if abs(better) <= 1e-6 * max(1.0, abs(was.margin)):
            better = 0.0
    same = (verdict.kind, verdict.level, verdict.waived is None) == (was.kind, was.level, was.waived is None)
    if same and not better:
        return Change(State.UNCHANGED, before, was.waived is not None, better)
    return Change(State.UPDATED, before, was.waived is not None, better)


def _unit(verdict: Verdict) -> str:
    return verdict.figure.unit if verdict.figure is not None else ""


def read_sarif(path: str) -> Earlier:
    """Read an earlier review from a SARIF file that this program wrote; raises `NotOursError`."""
    try:
        with Path(path).open("rb") as stream:
            data = stream.read(MAX_BYTES + 1)
    except OSError as error:
        raise NotOursError(f"{path} cannot be read: {error.strerror}.") from None
    if len(data) > MAX_BYTES:
        raise NotOursError(f"{path} is larger than {MAX_BYTES} bytes.")
    try:
        log = json.loads(data)
        runs = [run for run in log["runs"] if run["tool"]["driver"]["name"] == TOOL]
    except (ValueError, KeyError, TypeError, RecursionError):
        raise NotOursError(f"{path} is no SARIF file that can be read.") from None
    if not runs:
        raise NotOursError(
            f"{path} is a SARIF file of another program; only a file that {TOOL} wrote can be compared with."
        )
    try:
        found = dict(_result(result) for run in runs for result in run.get("results", ()) if _counts(result))
    except (ValueError, KeyError, TypeError, IndexError, AttributeError):
        raise NotOursError(f"{path} lacks what {TOOL} writes into its SARIF files; write it again.") from None
    return Earlier(path, found)


def _counts(result: dict[str, Any]) -> bool:
    return result.get("baselineState") != State.ABSENT


def _waived(result: dict[str, Any]) -> Waived | None:
    suppressions = result.get("suppressions") or ()
    return (
        Waived(str(suppressions[0].get("justification", "")), "", "", Place("", 1, 1, 1, 1)) if suppressions else None
    )


def _result(result: dict[str, Any]) -> tuple[str, tuple[str, Verdict]]:
    kind = Kind(result.get("kind", "fail"))
    about: dict[str, Any] = result.get("properties") or {}
    physical = result["locations"][0]["physicalLocation"]
    file = str(about.get("room") or physical["artifactLocation"]["uri"])
    line = int(physical.get("region", {}).get("startLine", 1))
    level = Level(result.get("level", "warning")) if kind is Kind.FAIL else None
    margin = about.get("margin")
    given = about.get("figure")
    verdict = Verdict(
        rule=str(result["ruleId"]),
        kind=kind,
        level=level,
        subject=str(about.get("subject", "")),
        words=" and ".join(part.partition("/")[2] for part in str(about.get("subject", "")).split("+")),
        message=str(result["message"]["text"]).replace("{{", "{").replace("}}", "}"),
        place=Place(file, line, 1, line, 1),
        figure=Figure(str(given["name"]), float(given["value"]), str(given["unit"])) if given else None,
        margin=float(margin) if margin is not None else None,
        waived=_waived(result),
    )
    key = str(result["partialFingerprints"][FINGERPRINT])
    return key, (file, verdict)
