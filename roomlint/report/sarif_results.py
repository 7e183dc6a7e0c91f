"""Verdicts as results of SARIF 2.1.0: places, fingerprints, suppressions, baseline states."""

from __future__ import annotations

import math
import posixpath
from pathlib import PurePath
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from roomlint.report.digest import left
from roomlint.report.rule_pages import plain_window
from roomlint.report.words import one_line, place_key, sentence
from roomlint.review.compare import FINGERPRINT, fingerprint
from roomlint.review.verdict import Kind, State

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.sarif_tool import Tool
    from roomlint.review.review import Review, RoomReview
    from roomlint.review.verdict import Verdict
    from roomlint.source.place import Place

Json = dict[str, Any]
Key = tuple[tuple[str, int, int, str, str, str, str], str, bool]

BASE = "%SRCROOT%"
DETAILED = frozenset({Kind.FAIL, Kind.REVIEW})
"""Kinds whose results also tell each input's place and each clause; in all others this would triple the report."""


class Files:
    """Paths as SARIF wants them: relative to one root, with forward slashes."""

    def __init__(self, root: str = "") -> None:
        self._root = PurePath(root) if root else None
        self._relative: dict[str, str] = {}
        self._locations: dict[str, Json] = {}

    def relative(self, file: str) -> str:
        """Return a path relative to the root; one outside it stays as it is."""
        if file not in self._relative:
            path = PurePath(file)
            if self._root is not None and path.is_absolute() and path.is_relative_to(self._root):
                path = path.relative_to(self._root)
            self._relative[file] = posixpath.normpath(path.as_posix())
        return self._relative[file]

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


class Results:
    """Makes results of verdicts, one at a time."""

    def __init__(self, review: Review, tool: Tool, files: Files) -> None:
        self._tool = tool
        self._files = files
        self._compared = bool(review.against)
        """SARIF wants baseline states on all results of a run or on none."""

    def one(self, verdict: Verdict, room: RoomReview, *, gone: bool = False) -> Json:
        """Return a verdict as a result; one that an earlier revision had and this one has not is absent."""
        result = _result(verdict, room, self._tool, self._files)
        if self._compared:
            state = verdict.change.state if verdict.change is not None else State.NEW
            result["baselineState"] = State.ABSENT.value if gone else state.value
        return result


def entries(room: RoomReview) -> Iterator[tuple[Key, Verdict, bool]]:
    """Yield the verdicts of a room and those that are gone from it, with what results are sorted by."""
    for verdict in room.verdicts:
        yield (place_key(verdict), room.file, False), verdict, False
    for verdict in left(room):
        yield (place_key(verdict), room.file, True), verdict, True


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
    if verdict.kind not in DETAILED:
        return result
    if verdict.related:
        result["relatedLocations"] = [
            {
                "id": number,
                "physicalLocation": files.physical(related.place),
                "message": text_of(f"Depends on {related.text}"),
            }
            for number, related in enumerate(verdict.related, 1)
        ]
    taxa = tool.targets(verdict.rule)
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
    if figure is not None and math.isfinite(figure.value):
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
