"""The SARIF 2.1.0 report: every verdict, every rule that ran, and what the house decided; written room by room."""

from __future__ import annotations

import json
from collections import Counter
from typing import TYPE_CHECKING, Any, Final

from roomlint.report.digest import Digest
from roomlint.report.names import key_words
from roomlint.report.sarif_results import BASE, Elements, Files, Results, entries, text_of
from roomlint.report.sarif_tool import MOST_EXTENSIONS, NAME, Tool
from roomlint.report.telling import Rules, Telling
from roomlint.report.words import count_of, printable
from roomlint.source.files import from_top
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.wishes import Wishes
    from roomlint.review.review import Review, RoomReview
    from roomlint.review.verdict import Unjudged

Json = dict[str, Any]

SCHEMA: Final = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
CATEGORY: Final = f"{NAME}/"
"""What code hosts tell runs apart by; without the slash at its end they read an empty category."""
SPREAD: Final = frozenset({"tool", "driver", "extensions", "extension", "rules", "taxonomies", "invocations"})
"""Objects and lists that are written over several lines, so that two reports can be compared line by line."""
MOST_UNJUDGED: Final = 1000
"""Elements with keys that nobody judged, told one by one; the keys of the others are counted."""


def sarif_report(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield the whole review as SARIF: every kind of verdict, whatever the reader wished for but the units."""
    tool, files, rules = Tool(review.rules), Files(), Rules(review.rules)
    log, elements = Log(review, tool, files), Elements()
    yield from log.start()
    results = Results(tool, files, elements, compared=bool(review.against))
    for problem in sorted(review.problems):
        yield log.result(results.unreadable(problem))
    for room in review.rooms:
        log.add(room)
        telling = Telling(room, rules, wishes.units)
        for verdict in entries(room):
            yield log.result(results.one(verdict, telling))
    yield from log.end({"logicalLocations": elements.told(), "taxonomies": tool.taxonomies()})


class Log:
    """A log of one run as JSON text, its results one by one; what is known only at the end stands at the end."""

    def __init__(self, review: Review, tool: Tool, files: Files) -> None:
        self.review = review
        self.tool = tool
        self.digest = Digest(review)
        self._files = files
        self._unjudged: list[Json] = []
        self._unjudged_more = 0
        self._is_first = True

    def start(self) -> Iterator[str]:
        """Yield what stands before the results: the tool, so that a reader knows whose they are."""
        run = {
            "tool": self.tool.component(),
            "automationDetails": {"id": CATEGORY},
            "columnKind": "unicodeCodePoints",
            "originalUriBaseIds": {BASE: {"description": {"text": "The top folder of the repository."}}},
        }
        yield f'{{"$schema":{compact(SCHEMA)},"version":"2.1.0","runs":[\n{{'
        for name, value in run.items():
            yield printable(f"{compact(name)}:{_dump(value, name)},\n")
        yield '"results":['

    def add(self, room: RoomReview) -> None:
        """Take in what is told of a room beside its results."""
        self.digest.add(room)
        keys: dict[str, list[Unjudged]] = {}
        for one in room.unjudged:
            keys.setdefault(one.words, []).append(one)
        for words, of in keys.items():
            if len(self._unjudged) == MOST_UNJUDGED:
                self._unjudged_more += len(of)
                continue
            names = ", ".join(dict.fromkeys(key_words(one.key) for one in of))
            self._unjudged.append(
                {
                    "descriptor": self.tool.notice("key.unjudged"),
                    "level": "note",
                    "message": text_of(f"{words}: no rule that ran looks at its {names}"),
                    # Several things may be of one product, and a sheet's key is told once.
                    "locations": [
                        {"physicalLocation": self._files.physical(place)}
                        for place in dict.fromkeys(one.place for one in of)
                    ],
                }
            )

    def result(self, result: Json) -> str:
        """Return a result on a line of its own."""
        return self.text(compact(result))

    def text(self, result: str) -> str:
        """Return a result that is text already on a line of its own."""
        before, self._is_first = "\n" if self._is_first else ",\n", False
        return printable(f"{before}{result}")

    def end(self, more: Json | None = None, told: list[str] | None = None) -> Iterator[str]:
        """Yield what stands after the results: how the run went, and what was left out."""
        left_out = list(told or ())
        if self._unjudged_more:
            left_out.append(f"{count_of(self._unjudged_more, 'key', 'keys')} that no rule looked at")
        if self.tool.merged:
            left_out.append(
                f"all but one description of each rule that {self.tool.merged} houses wrote under the same id "
                f"(hosts take {MOST_EXTENSIONS} extensions)"
            )
        run: Json = {"invocations": [self._invocation(left_out)], "properties": self._counts()}
        run |= {name: value for name, value in (more or {}).items() if value}
        yield "\n]"
        for name, value in run.items():
            yield printable(f",\n{compact(name)}:{_dump(value, name)}")
        yield "}\n]}\n"

    def _invocation(self, left_out: list[str]) -> Json:
        configuration = self._configuration(left_out)
        execution = [
            {
                "descriptor": self.tool.notice("rule.broken"),
                "associatedRule": self.tool.reference(trouble.rule),
                "level": "error",
                "message": text_of(trouble.text),
            }
            for trouble in self.review.troubles
        ]
        failed = any(notice["level"] == "error" for notice in (*configuration, *execution))
        return {
            "executionSuccessful": not failed,
            "exitCode": self.review.exit_status,
            "ruleConfigurationOverrides": self._overrides(),
            "toolConfigurationNotifications": configuration,
            "toolExecutionNotifications": execution,
        }

    def _configuration(self, left_out: list[str]) -> list[Json]:
        review, tool = self.review, self.tool
        told: list[Json] = [
            {
                "descriptor": tool.notice("file.unreadable"),
                "level": "error",
                "message": text_of(problem.text),
                "locations": [{"physicalLocation": self._files.physical(problem.place)}],
            }
            for problem in sorted(review.problems)
        ]
        told += [
            {
                "descriptor": tool.notice("path.empty"),
                "level": "warning" if self.digest.rooms else "error",
                "message": text_of(f"Nothing to check in {name}: no file there ends in .room.yaml"),
            }
            for name in review.unmatched
        ]
        if not (self.digest.rooms or told):
            nothing = text_of("There was no room to check")
            told.append({"descriptor": tool.notice("path.empty"), "level": "error", "message": nothing})
        told += [
            {
                "descriptor": tool.notice("house.loosened"),
                "level": "warning",
                "message": text_of(text),
                "locations": [{"physicalLocation": self._files.physical(one.place)}],
            }
            for one, text in self.digest.loosened()
        ]
        told += [
            {
                "descriptor": tool.notice("house.ended"),
                "level": "warning",
                "message": text_of(text),
                "locations": [{"physicalLocation": self._files.physical(place)}],
            }
            for place, text in self.digest.ended()
        ]
        told += self._unjudged
        if left_out:
            text = f"Left out of this report: {', '.join(left_out)}"
            told.append({"descriptor": tool.notice("report.shortened"), "level": "note", "message": text_of(text)})
        return told

    def _overrides(self) -> list[Json]:
        made = []
        for file, decision in self.digest.decisions():
            edges = {"low": decision.low, "high": decision.high}
            given = {name: edge for name, edge in edges.items() if edge is not None}
            configuration: Json = {"level": decision.level} if decision.level is not None else {}
            if given:
                configuration["parameters"] = given
            about = {"house": from_top(file), "because": one_line(decision.because or "")}
            made.append(
                {
                    "descriptor": self.tool.reference(decision.id, file),
                    "configuration": configuration,
                    "properties": {key: text for key, text in about.items() if text},
                }
            )
        return made

    def _counts(self) -> Json:
        digest, review = self.digest, self.review
        codes = {printable(self._files.relative(file)): code for file, code in digest.codes.items()}
        counted: Json = {"rooms": digest.rooms, "verdicts": dict(sorted(digest.counts.items())), "codes": codes}
        counted["houses"] = {printable(file): stood for file, stood in sorted(digest.standing.items())}
        if review.against:
            ways = Counter(digest.ways)
            counted |= {"against": one_line(review.against), "changes": dict(sorted(ways.items()))}
        return counted


def compact(value: Any) -> str:  # noqa: ANN401  whatever JSON holds
    """Return a value as JSON text on one line."""
    return _ENCODER.encode(value)


_ENCODER = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def _dump(value: Any, name: str) -> str:  # noqa: ANN401  whatever JSON holds
    if name in SPREAD and isinstance(value, dict):
        return "{" + ",\n".join(f"{compact(key)}:{_dump(item, key)}" for key, item in value.items()) + "}"
    if name in SPREAD and value:
        inner = "extension" if name == "extensions" else ""
        return "[\n" + ",\n".join(_dump(item, inner) for item in value) + "\n]"
    return compact(value)
