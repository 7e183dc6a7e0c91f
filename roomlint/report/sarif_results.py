"""Verdicts as results of SARIF 2.1.0: places, fingerprints, suppressions, baseline states."""

from __future__ import annotations

import math
from pathlib import PurePath
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

from roomlint.report.names import key_words
from roomlint.report.rule_pages import plain_window
from roomlint.report.words import place_key, printable, sentence
from roomlint.review.compare import FINGERPRINT, fingerprint
from roomlint.review.read_sarif import UNREADABLE
from roomlint.review.verdict import Kind, State, Verdict
from roomlint.source.files import from_top
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.measure.figure import Figure
    from roomlint.report.sarif_tool import Tool
    from roomlint.report.telling import Telling
    from roomlint.review.review import RoomReview
    from roomlint.review.verdict import Again, Change, Remedy, Waived, Wanted
    from roomlint.review.window import Window
    from roomlint.source.place import Place, Problem

Json = dict[str, Any]

BASE = "%SRCROOT%"
DETAILED = frozenset({Kind.FAIL, Kind.REVIEW})
"""Kinds whose results also tell the place of each input; in all others this would double the report."""
MOST_RELATED = 10
"""Inputs whose places a result tells, as many as hosts keep; the others are counted."""
TRACKED = DETAILED | {Kind.OPEN}
"""Kinds that somebody follows from one report to the next: the others need no fingerprint and no name in words."""


class Files:
    """Paths as SARIF wants them: from the top of the repository, with forward slashes, wherever the program runs."""

    def __init__(self) -> None:
        self._relative: dict[str, str] = {}
        self._locations: dict[str, Json] = {}

    def relative(self, file: str) -> str:
        """Return a path from the top of its repository."""
        if file not in self._relative:
            self._relative[file] = from_top(file)
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


class Elements:
    """The elements that results are about, each told once in a run; a result names it by its index."""

    def __init__(self) -> None:
        self._index: dict[str, int] = {}

    def of(self, subject: str) -> list[Json]:
        """Return the logicalLocations of a subject."""
        keys = dict.fromkeys(subject.split("+"))
        return [{"index": self._index.setdefault(key, len(self._index))} for key in keys]

    def told(self) -> list[Json]:
        """Return the run's logicalLocations."""
        found = []
        for key in self._index:
            kind, slash, name = key.partition("/")
            found.append({"name": name, "fullyQualifiedName": key, "kind": kind} if slash else {"name": key})
        return found


class Results:
    """Makes results of verdicts, one at a time."""

    def __init__(self, tool: Tool, files: Files, elements: Elements | None = None, *, compared: bool) -> None:
        self._tool = tool
        self._files = files
        self._elements = elements
        """None for readers that ignore logical locations."""
        self._compared = compared
        """SARIF wants baseline states on all results of a run or on none."""

    def unreadable(self, problem: Problem) -> Json:
        """Return what makes a file unreadable as a result, so that it has a place and nobody takes it for mended."""
        file = printable(self._files.relative(problem.place.file))
        verdict = Verdict(UNREADABLE, Kind.OPEN, None, problem.text, "", problem.place)
        result: Json = {
            **self._tool.of_result(UNREADABLE),
            "kind": "fail",
            "level": "error",
            "message": text_of(problem.text),
            "locations": [{"physicalLocation": self._files.physical(problem.place)}],
            "partialFingerprints": {FINGERPRINT: fingerprint(file, verdict)},
            "suppressions": [],
            "properties": {"room": file},
        }
        return result | ({"baselineState": State.NEW.value} if self._compared else {})

    def one(self, verdict: Verdict, telling: Telling) -> Json:
        """Return a verdict as a result; one that an earlier revision had and this one has not is absent."""
        files, room = self._files, telling.room
        file = printable(files.relative(room.file))
        location: Json = {"physicalLocation": files.physical(verdict.place)}
        if self._elements is not None:
            location["logicalLocations"] = self._elements.of(verdict.subject)
        result: Json = {
            **self._tool.of_result(verdict.rule, room.house.file),
            "kind": verdict.kind.value,
            "level": verdict.level.value if verdict.level is not None else "none",
            "message": _message(verdict, telling),
            "locations": [location],
            "suppressions": [_suppression(verdict.waived, verdict.place, files)] if verdict.waived is not None else [],
            "properties": _properties(verdict, file, files, telling),
        }
        if verdict.kind in TRACKED:
            result["partialFingerprints"] = {FINGERPRINT: fingerprint(file, verdict)}
        if verdict.kind in DETAILED and verdict.related:
            result["relatedLocations"] = [
                {"physicalLocation": files.physical(related.place), "message": _rests(related.words)}
                for related in verdict.related[:MOST_RELATED]
            ]
            if len(verdict.related) > MOST_RELATED:
                result["properties"]["restsOnMore"] = len(verdict.related) - MOST_RELATED
        if self._compared:
            state = verdict.change.state if verdict.change is not None else State.NEW
            result["baselineState"] = state.value
        return result


def entries(room: RoomReview) -> Iterator[Verdict]:
    """Yield the verdicts of a room, then those that are gone from it, each in the order of the file."""
    yield from sorted(room.verdicts, key=place_key)
    yield from sorted(room.gone, key=place_key)


def text_of(message: str) -> Json:
    """Return a message object: one line, whole sentences, braces doubled as 3.11.5 wants them."""
    text = sentence(one_line(message))
    # Readers want a full stop at the end, and a question with one is no sentence.
    return {"text": _escaped(f"{text} Please check." if text.endswith("?") else text)}


def _escaped(text: str) -> str:
    return text.replace("{", "{{").replace("}", "}}")


def _message(verdict: Verdict, telling: Telling) -> Json:
    """Return what a verdict says: by its rule's own message string where there is one, and as text for everybody."""
    name = telling.names.subject(verdict)
    if verdict.kind is Kind.PASS and not verdict.said:
        # Most verdicts pass, and their figures stand among the properties: no sentence is made for nobody.
        return text_of(f"{name}: {'inside its window' if verdict.window is not None else 'nothing wrong'}")
    said = telling.said(verdict) if verdict.kind in {Kind.FAIL, Kind.INFORMATIONAL} else None
    if said is None:
        return text_of(f"{name}: {telling.sentence([verdict])}")
    text = _escaped(one_line(f"{name}: {said.text}."))
    return {"text": text, "id": said.name, "arguments": [name, *said.fields.values()]}


def _rests(path: str) -> Json:
    """Return what a finding rests on in words: a key's path loses its place in the list, which the region shows."""
    return text_of(f"Rests on {key_words(path.rpartition(']')[2].lstrip('.') or path)}")


def _suppression(waived: Waived, place: Place, files: Files) -> Json:
    """Return how a failure was accepted."""
    suppression: Json = {
        "kind": "inSource" if waived.place.file == place.file else "external",
        "status": "accepted",
        "justification": waived.because,
    }
    if waived.place.file:
        suppression["location"] = {"physicalLocation": files.physical(waived.place)}
    given = {"approvedBy": waived.approved_by, "until": waived.until, "document": waived.document}
    said = {key: text for key, text in given.items() if text}
    return {**suppression, "properties": said} if said else suppression


def _properties(verdict: Verdict, file: str, files: Files, telling: Telling) -> Json:
    """Return what programs need of a verdict; what it has none of is left out."""
    figure, wanted, follows, change = verdict.figure, verdict.wanted, verdict.follows, verdict.change
    given: Json = {
        "room": file if files.artifact(verdict.place.file)["uri"] != file else None,
        "subject": verdict.subject,
        "words": one_line(verdict.words) if verdict.kind in TRACKED else None,
        "figure": _figure(figure, is_named=verdict.kind is not Kind.PASS) if figure is not None else None,
        "assumes": list(figure.assumes) if figure is not None else None,
        "window": _window(verdict.window, figure),
        "margin": _number(verdict.margin) if verdict.margin is not None else None,
        "wanted": _wanted(wanted, files) if wanted is not None else None,
        "follows": {"rule": follows.rule, "subject": follows.subject} if follows is not None else None,
        "remedy": _remedy(verdict.remedy) if verdict.remedy is not None else None,
        "again": _again(verdict.again) if verdict.again is not None else None,
        "overridden": list(verdict.overridden),
        "waiver": telling.unheld(verdict.unheld) if verdict.unheld is not None else None,
    }
    told = {name: value for name, value in given.items() if value is not None and value not in ([], "")}
    return told | (_change(change) if change is not None else {})


def _change(change: Change) -> Json:
    given: Json = {
        "way": change.way.value if change.way is not None else None,
        "by": change.by.value if change.way is not None else None,
        "was": change.was or None,
        "before": _figure(change.before) if change.before is not None else None,
        "windowBefore": plain_window(change.window),
    }
    return {name: value for name, value in given.items() if value is not None}


def _wanted(wanted: Wanted, files: Files) -> Json:
    file = printable(files.relative(wanted.file))
    return {"subject": wanted.subject, "key": wanted.key, "path": wanted.path, "file": file}


def _again(again: Again) -> Json:
    names = [{"subject": name, "key": key} for name, key in again.names]
    within = again.within
    known = {"within": _number(within.value), "unit": within.unit} if within is not None else {}
    return {"readings": names, "chosen": again.chosen, **known}


def _window(window: Window | None, figure: Figure | None) -> Json | None:
    """Return a window with the edges that it has, in the figure's unit unless it says another."""
    if window is None:
        return None
    edges = {side: edge for side, edge in (("low", window.low), ("high", window.high)) if edge is not None}
    return edges if figure is not None and figure.unit == window.unit else {**edges, "unit": window.unit}


def _figure(figure: Figure, *, is_named: bool = True) -> Json:
    return {
        **({"name": figure.name} if is_named else {}),
        "value": _number(figure.value),
        "uncertainty": _number(figure.u),
        "unit": figure.unit,
    }


def _remedy(remedy: Remedy) -> Json:
    return {
        "subject": remedy.subject,
        "key": remedy.key,
        "low": _number(remedy.low.value),
        "high": _number(remedy.high.value),
        "now": _number(remedy.now.value),
        "unit": remedy.now.unit,
        "breaks": list(remedy.breaks),
        **({"mirrored": remedy.mirrored} if remedy.mirrored else {}),
    }


def _number(value: float) -> float | None:
    """Return a number to nine digits, so that the last bits of different machines do not differ in the report."""
    return float(f"{value:.9g}") if math.isfinite(value) else None
