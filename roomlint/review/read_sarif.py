"""Reads an earlier review from a SARIF file that this program wrote, result by result, however large the file is."""

from __future__ import annotations

import codecs
import json
import pickle
import tempfile
import weakref
from collections import defaultdict
from json import JSONDecodeError
from pathlib import Path
from typing import IO, TYPE_CHECKING, Any, Final

from roomlint.measure.figure import Figure
from roomlint.review.earlier import Earlier, EarlierRoom
from roomlint.review.review import Decided
from roomlint.review.verdict import Kind, Level, State, Verdict, Waived
from roomlint.review.window import Window
from roomlint.source.place import Place

if TYPE_CHECKING:
    from collections.abc import Iterator

TOOL: Final = "roomlint"
UNREADABLE: Final = "file.unreadable"
MOST_SIGNS: Final = 64 * 1024 * 1024
"""Of one value that is read as a whole: a result, or the list of rules."""
_AT_ONCE: Final = 1 << 16
_BLANK: Final = " \t\n\r"


class NotOursError(ValueError):
    """A file that is no SARIF log of this program; the text says why."""


def is_json(path: str) -> bool:
    """Return whether there is an ordinary file of that name that begins as JSON does, however it is called."""
    file = Path(path)
    try:
        if not file.is_file():  # a pipe would hold the run
            return False
        with file.open("rb") as stream:
            start = stream.read(_AT_ONCE)
    except (OSError, ValueError):
        return False
    return start.removeprefix(codecs.BOM_UTF8).lstrip(_BLANK.encode())[:1] in {b"{", b"["}


def read_sarif(path: str) -> Earlier:
    """Read an earlier review from a SARIF file that this program wrote; raises `NotOursError`."""
    found = _Found()
    try:
        _read(path, found)
    except NotOursError:
        found.close()
        raise
    return found.earlier(f"report {path}")


def _read(path: str, found: _Found) -> None:
    try:
        with Path(path).open("rb") as stream:
            for run in _Reader(stream).runs():
                found.run(run)
    except OSError as error:
        raise NotOursError(f"{path} cannot be read: {error.strerror}.") from None
    except _ForeignError:
        raise NotOursError(
            f"{path} is a SARIF file of another program; only a file that {TOOL} wrote can be compared with."
        ) from None
    except _LacksError:
        raise NotOursError(f"{path} lacks what {TOOL} writes into its SARIF files; write it again.") from None
    except (ValueError, RecursionError, OverflowError):  # a number without end where a line or a figure belongs
        raise NotOursError(f"{path} is no SARIF file that can be read.") from None
    if not found.runs:
        raise NotOursError(f"{path} is no SARIF file that can be read.")


class _ForeignError(Exception):
    """Another program wrote it."""


class _LacksError(Exception):
    """A result lacks what ours have."""


class _Reader:
    """A JSON text that is read as far as it is asked for."""

    def __init__(self, stream: IO[bytes]) -> None:
        self._stream = stream
        self._decode = codecs.getincrementaldecoder("utf-8-sig")()
        self._json = json.JSONDecoder(parse_constant=_no_number)
        self._text = ""
        self._at = 0
        self._is_whole = False

    def runs(self) -> Iterator[Iterator[tuple[str, Any]]]:
        """Yield the runs of a log, each as its properties in their order; `results` come one by one."""
        for name in self._properties():
            if name == "runs":
                for _ in self._items():
                    yield self._run()
            else:
                self._value()

    def _run(self) -> Iterator[tuple[str, Any]]:
        for name in self._properties():
            if name == "results":
                for _ in self._items():
                    yield name, self._value()
            else:
                yield name, self._value()

    def _properties(self) -> Iterator[str]:
        self._take("{")
        if self._peek() == "}":
            self._at += 1
            return
        while True:
            name = self._value()
            if not isinstance(name, str):
                raise JSONDecodeError("a name is a text", self._text[:80], 0)
            self._take(":")
            yield name
            if self._take(",}") == "}":
                return

    def _items(self) -> Iterator[None]:
        self._take("[")
        if self._peek() == "]":
            self._at += 1
            return
        while True:
            yield None
            if self._take(",]") == "]":
                return

    def _take(self, wanted: str) -> str:
        sign = self._peek()
        if not sign or sign not in wanted:
            raise JSONDecodeError(f"{wanted} expected", self._text[:80], 0)
        self._at += 1
        return sign

    def _peek(self) -> str:
        while True:
            while self._at < len(self._text) and self._text[self._at] in _BLANK:
                self._at += 1
            if self._at < len(self._text):
                return self._text[self._at]
            if not self._more():
                return ""

    def _more(self) -> bool:
        """Read on: as much again as waits, so that a long value is not tried over and over."""
        if self._is_whole:
            return False
        data = self._stream.read(max(_AT_ONCE, len(self._text) - self._at))
        self._is_whole = not data
        self._text = self._text[self._at :] + self._decode.decode(data, final=self._is_whole)
        self._at = 0
        return True

    def _value(self) -> Any:  # noqa: ANN401  whatever JSON holds
        self._peek()
        while True:
            try:
                value, end = self._json.raw_decode(self._text, self._at)
            except JSONDecodeError:
                if len(self._text) - self._at > MOST_SIGNS or not self._more():
                    raise
                continue
            if end == len(self._text) and self._more():
                continue  # a number may go on
            self._at = end
            return value


def _no_number(text: str) -> float:
    raise ValueError(f"{text} is no number")


class _Found:
    """What the runs of a file hold, the verdicts kept on the disk."""

    def __init__(self) -> None:
        self.runs = 0
        self._file = tempfile.TemporaryFile()  # noqa: SIM115  open for as long as the earlier review is
        self._starts: dict[str, list[int]] = defaultdict(list)
        self._codes: dict[str, str] = {}
        self._houses: dict[str, dict[str, Decided]] = defaultdict(dict)
        self._unread: set[str] = set()
        self._standing: dict[str, dict[str, str]] | None = None
        self._room = ""
        self._waiting: list[Verdict] = []

    def run(self, properties: Iterator[tuple[str, Any]]) -> None:
        """Take in one run; it must be ours, and say so before its results."""
        is_ours = False
        for name, value in properties:
            if name == "tool":
                self._tool(value)
                is_ours = True
            elif name == "results":
                if not is_ours:
                    raise _LacksError
                self._result(value)
            elif name == "invocations":
                self._invocations(value)
            elif name == "properties":
                self._properties(value)
        self._flush()
        if not is_ours:
            raise ValueError("a run without a tool")
        self.runs += 1

    def _tool(self, tool: Any) -> None:  # noqa: ANN401  whatever JSON holds
        try:
            is_ours = tool["driver"]["name"] == TOOL
        except (KeyError, TypeError):
            raise ValueError("no tool") from None
        if not is_ours:
            raise _ForeignError
        self._own_rules(tool)

    def _properties(self, about: Any) -> None:  # noqa: ANN401  whatever JSON holds
        if not isinstance(about, dict):
            return
        codes, houses = about.get("codes"), about.get("houses")
        if isinstance(codes, dict):
            self._codes |= {str(file): str(code) for file, code in codes.items()}
        if isinstance(houses, dict):
            told = {file: one for file, one in houses.items() if isinstance(one, dict)}
            stood = {file: {str(name): str(value) for name, value in one.items()} for file, one in told.items()}
            self._standing = (self._standing or {}) | stood

    def close(self) -> None:
        """Forget what was found."""
        self._file.close()

    def _result(self, result: Any) -> None:  # noqa: ANN401  whatever JSON holds
        try:
            if result.get("baselineState") == State.ABSENT:
                return
            if _rule_of(result) == UNREADABLE:
                self._unread.add(str(result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]))
                return
            room, verdict = _verdict(result)
        except (ValueError, KeyError, TypeError, IndexError, AttributeError, ArithmeticError):
            raise _LacksError from None
        if room != self._room:
            self._flush()
            self._room = room
        self._waiting.append(verdict)

    def _flush(self) -> None:
        if self._waiting:
            self._file.seek(0, 2)
            self._starts[self._room].append(self._file.tell())
            pickle.dump(self._waiting, self._file, pickle.HIGHEST_PROTOCOL)
            self._waiting = []

    def _own_rules(self, tool: dict[str, Any]) -> None:
        """Take in the rules that houses wrote as data: they stand in an extension that is named after the file."""
        try:
            for extension in tool.get("extensions", ()):
                for rule in extension["rules"]:
                    self._own_rule(rule, rule.get("properties", {}))
        except (KeyError, TypeError, AttributeError):
            raise _LacksError from None

    def _own_rule(self, rule: dict[str, Any], about: dict[str, Any]) -> None:
        edges = about.get("written")
        if edges is not None:
            level = rule.get("defaultConfiguration", {}).get("level")
            decided = Decided(_text(edges.get("low")), _text(edges.get("high")), _text(level), is_own=True)
            self._houses[str(about["house"])][str(rule["id"])] = decided

    def _invocations(self, invocations: Any) -> None:  # noqa: ANN401  whatever JSON holds
        try:
            for invocation in invocations:
                for override in invocation.get("ruleConfigurationOverrides", ()):
                    configuration = override["configuration"]
                    edges = configuration.get("parameters", {})
                    decided = Decided(
                        _text(edges.get("low")), _text(edges.get("high")), _text(configuration.get("level"))
                    )
                    self._houses[str(override["properties"]["house"])][str(override["descriptor"]["id"])] = decided
        except (KeyError, TypeError, AttributeError):
            raise _LacksError from None

    def earlier(self, name: str) -> Earlier:
        """Return what was found as an earlier review."""
        file, starts = self._file, dict(self._starts)

        def load(room: str) -> EarlierRoom:
            verdicts: dict[tuple[str, str], Verdict] = {}
            for start in starts[room]:
                file.seek(start)
                kept: list[Verdict] = pickle.load(file)  # noqa: S301  written by this very process
                verdicts |= {(verdict.rule, verdict.subject): verdict for verdict in kept}
            return EarlierRoom(room, verdicts)

        weakref.finalize(load, file.close)
        codes = {room: self._codes.get(room, "") for room in starts}
        return Earlier(name, codes, load, dict(self._houses), frozenset(self._unread), self._standing)


def _text(value: Any) -> str | None:  # noqa: ANN401  whatever JSON holds
    return str(value) if value is not None else None


def _rule_of(result: dict[str, Any]) -> str:
    return str(result["ruleId"] if "ruleId" in result else result["rule"]["id"])


def _verdict(result: dict[str, Any]) -> tuple[str, Verdict]:
    kind = Kind(result.get("kind", "fail"))
    about: dict[str, Any] = result["properties"]
    physical = result["locations"][0]["physicalLocation"]
    line = int(physical.get("region", {}).get("startLine", 1))
    file = str(physical["artifactLocation"]["uri"])
    return str(about.get("room") or file), Verdict(
        rule=_rule_of(result),
        kind=kind,
        level=Level(result.get("level", "warning")) if kind is Kind.FAIL else None,
        subject=str(about["subject"]),
        words=str(about.get("words") or about["subject"]),
        place=Place(file, line, 1, line, 1),
        because=str(result["message"]["text"]).replace("{{", "{").replace("}}", "}"),
        figure=(figure := _figure(about.get("figure"))),
        window=_window(about.get("window"), figure.unit if figure is not None else ""),
        margin=float(about["margin"]) if about.get("margin") is not None else None,
        waived=_waived(result),
    )


def _figure(given: Any) -> Figure | None:  # noqa: ANN401  whatever JSON holds
    if not given:
        return None
    value, u = float(given["value"]), float(given.get("uncertainty") or 0.0)
    return Figure.plain(str(given.get("name", "")), str(given["unit"]), value, u=u)


def _window(given: Any, unit: str) -> Window | None:  # noqa: ANN401  whatever JSON holds
    if not given:
        return None
    low, high = (float(given[key]) if given.get(key) is not None else None for key in ("low", "high"))
    return Window(low, high, str(given.get("unit", unit)))


def _waived(result: dict[str, Any]) -> Waived | None:
    suppressions = result.get("suppressions") or ()
    if not suppressions:
        return None
    first: dict[str, Any] = suppressions[0]
    about = first.get("properties", {})
    return Waived(
        because=str(first.get("justification", "")),
        approved_by=str(about.get("approvedBy", "")),
        until=str(about.get("until", "")),
        place=Place("", 1, 1, 1, 1),
        document=str(about.get("document", "")),
    )
