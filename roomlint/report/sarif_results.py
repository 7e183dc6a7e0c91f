"""Verdicts as results of SARIF 2.1.0: places, fingerprints, suppressions, baseline states."""

from __future__ import annotations

import math
import posixpath
from pathlib import PurePath
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from roomlint.report.rule_pages import plain_window
from roomlint.report.words import left, one_line, place_key, sentence
from roomlint.review.compare import FINGERPRINT, fingerprint
from roomlint.review.verdict import Kind, State

if TYPE_CHECKING:
    from roomlint.report.sarif_tool import Tool
    from roomlint.review.review import Review, RoomReview
    from roomlint.review.verdict import Verdict
    from roomlint.source.place import Place

Json = dict[str, Any]

BASE = "%SRCROOT%"
WITH_TAXA = frozenset({Kind.FAIL, Kind.REVIEW})


class Files:
    """Paths as SARIF wants them: relative to one root, with forward slashes."""

    def __init__(self, root: str = "") -> None:
        self._root = PurePath(root) if root else None
        self._locations: dict[str, Json] = {}

    def relative(self, file: str) -> str:
        """Return a path relative to the root; one outside it stays as it is."""
        path = PurePath(file)
        if self._root is not None and path.is_absolute() and path.is_relative_to(self._root):
            path = path.relative_to(self._root)
        return posixpath.normpath(path.as_posix())

    def artifact(self, file: str) -> Json:
        """Return an artifactLocation."""
        if file not in self._locations:
            path = self.relative(file)
            if PurePath(path).is_absolute():
                self._locations[file] = {"uri": PurePath(path).as_uri()}
            else:
                self._locations[file] = {"uri": quote(path, errors="surrogateescape"), "uriBaseId": BASE}
        return self._locations[file]

    def physical(self, place: Place) -> Json:
        """Return a physicalLocation with an exact region, its end exclusive."""
        start = (max(place.line, 1), max(place.column, 1))
        end = max((place.end_line, place.end_column), start)
        region = {"startLine": start[0], "startColumn": start[1], "endLine": end[0], "endColumn": end[1]}
        return {"artifactLocation": self.artifact(place.file), "region": region}


def results(review: Review, tool: Tool, files: Files) -> list[Json]:
    """Return every verdict as a result, and what an earlier revision had and this one has not as absent ones."""
    compared = is_compared(review)
    found = [(room, verdict, False) for room in review.rooms for verdict in room.verdicts]
    found += [(room, verdict, True) for room in review.rooms for verdict in left(room)]
    found.sort(key=lambda entry: (place_key(entry[1]), entry[0].file, entry[2]))
    made = []
    for room, verdict, gone in found:
        result = _result(verdict, room, tool, files)
        if compared:
            state = verdict.change.state if verdict.change is not None else State.NEW
            result["baselineState"] = State.ABSENT.value if gone else state.value
        made.append(result)
    return made


def is_compared(review: Review) -> bool:
    """Return whether the run as a whole has baseline states: SARIF wants them on all results or on none."""
    return bool(review.against) or any(room.compared or room.gone for room in review.rooms)


def text_of(message: str) -> Json:
    """Return a message object: one line, whole sentences, braces doubled as 3.11.5 wants them."""
    return {"text": sentence(one_line(message)).replace("{", "{{").replace("}", "}}")}


def _result(verdict: Verdict, room: RoomReview, tool: Tool, files: Files) -> Json:
    file = files.relative(room.file).encode("utf-8", "backslashreplace").decode()
    result: Json = {
        **tool.of_result(verdict.rule),
        "kind": verdict.kind.value,
        "level": verdict.level.value if verdict.level is not None else "none",
        "message": text_of(verdict.message),
        "locations": [
            {"physicalLocation": files.physical(verdict.place), "logicalLocations": _logical(verdict.subject)}
        ],
        "partialFingerprints": {FINGERPRINT: fingerprint(file, verdict)},
        "suppressions": _suppressions(verdict, files),
        "properties": _properties(verdict, file),
    }
    if verdict.related:
        result["relatedLocations"] = [
            {
                "id": number,
                "physicalLocation": files.physical(related.place),
                "message": text_of(f"Depends on {related.text}"),
            }
            for number, related in enumerate(verdict.related, 1)
        ]
    taxa = tool.targets(verdict.rule) if verdict.kind in WITH_TAXA else []
    if taxa:
        result["taxa"] = taxa
    return result


def _logical(subject: str) -> list[Json]:
    """Return the elements that a verdict is about."""
    found = []
    for key in dict.fromkeys(subject.split("+")):
        kind, slash, name = key.partition("/")
        found.append({"name": name, "fullyQualifiedName": key, "kind": kind} if slash else {"fullyQualifiedName": key})
    return found


def _suppressions(verdict: Verdict, files: Files) -> list[Json]:
    """Return how a failure was accepted; an empty list says that it is known not to be."""
    waived = verdict.waived
    if waived is None:
        return []
    suppression: Json = {
        "kind": "inSource" if waived.place.file == verdict.place.file else "external",
        "status": "accepted",
        "justification": waived.because,
    }
    if waived.place.file:
        suppression["location"] = {"physicalLocation": files.physical(waived.place)}
    given = {"approvedBy": waived.approved_by, "until": waived.until, "document": waived.document}
    said = {key: text for key, text in given.items() if text}
    return [{**suppression, "properties": said} if said else suppression]


def _properties(verdict: Verdict, file: str) -> Json:
    given: Json = {"room": file, "subject": verdict.subject}
    figure = verdict.figure
    if figure is not None:
        given["figure"] = {
            "name": figure.name,
            "value": _number(figure.value),
            "uncertainty": _number(figure.u),
            "unit": figure.unit,
        }
        if figure.assumes:
            given["assumes"] = list(figure.assumes)
    window = plain_window(verdict.window)
    if window is not None:
        given["window"] = window
    if verdict.margin is not None:
        given["margin"] = _number(verdict.margin)
    if verdict.missing is not None:
        given["missing"] = verdict.missing
    if verdict.overridden:
        given["overridden"] = list(verdict.overridden)
    change = verdict.change
    if change is not None and change.was:
        given["was"] = change.was
        if change.better_by is not None:
            given["betterBy"] = _number(change.better_by)
    return given


def _number(value: float) -> float | None:
    """Return a number to nine digits, so that the last bits of different machines do not differ in the report."""
    return float(f"{value:.9g}") if math.isfinite(value) else None
