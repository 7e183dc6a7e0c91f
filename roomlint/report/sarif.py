"""The SARIF 2.1.0 report: every verdict, every rule that ran, and what the house decided."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from roomlint.report.digest import Digest
from roomlint.report.sarif_results import BASE, Files, Results, entries, text_of
from roomlint.report.sarif_tool import NAME, Tool

if TYPE_CHECKING:
    from roomlint.review.review import Review

Json = dict[str, Any]

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
CATEGORY = f"{NAME}/"
"""What code hosts tell runs apart by; without the slash at its end they read an empty category."""
SPREAD = frozenset({"run", "tool", "driver", "extensions", "extension", "rules", "taxonomies", "invocations"})
"""Objects and lists that are written over several lines, so that two reports can be compared line by line."""


def sarif_report(review: Review, *, verdicts: bool = True, root: str = "", command: str = "") -> str:
    """Return the whole review as SARIF: every kind of verdict, whatever `verdicts` says.

    Paths are made relative to `root`, the root of the repository, when they are absolute; `command` is the command
    line, told only when given, because it may name folders of a machine.
    """
    del verdicts
    tool, files, digest = Tool(review.rules), Files(root), Digest(review)
    results, lines = Results(review, tool, files), []
    for room in review.rooms:
        digest.add(room)
        lines += [(key, compact(results.one(verdict, room, gone=gone))) for key, verdict, gone in entries(room)]
    lines.sort()
    run = run_of(review, tool, files, digest, command)
    taxonomies = tool.taxonomies()
    if taxonomies:
        run["taxonomies"] = taxonomies
    return dump(run, [line for _, line in lines])


def run_of(review: Review, tool: Tool, files: Files, digest: Digest, command: str = "") -> Json:
    """Return a run as plain data, without its results."""
    return {
        "tool": tool.component(),
        "automationDetails": {"id": CATEGORY},
        "columnKind": "unicodeCodePoints",
        "originalUriBaseIds": {BASE: {"description": {"text": "The folder that the paths are relative to."}}},
        "invocations": [_invocation(review, tool, files, digest, command)],
        "properties": _counts(review, digest),
    }


def dump(run: Json, results: list[str]) -> str:
    """Return a log of one run as JSON text: compact, but a line for each result, given as text, and each rule."""
    told = f'{_dump(run, "run")[:-1]},\n"results":[\n{f",{chr(10)}".join(results)}\n]}}'
    text = f'{{"$schema":{compact(SCHEMA)},"version":"2.1.0","runs":[\n{told}\n]}}\n'
    return text.encode("utf-8", "backslashreplace").decode()


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


def _invocation(review: Review, tool: Tool, files: Files, digest: Digest, command: str) -> Json:
    configuration = _configuration(review, tool, files, digest)
    execution = [
        {
            "descriptor": tool.notice("rule.broken"),
            "associatedRule": tool.reference(trouble.rule),
            "level": "error",
            "message": text_of(trouble.text),
        }
        for trouble in review.troubles
    ]
    failed = any(notice["level"] == "error" for notice in (*configuration, *execution))
    invocation: Json = {"executionSuccessful": not failed, "exitCode": review.exit_status}
    if command:
        invocation["commandLine"] = command
    invocation["ruleConfigurationOverrides"] = _overrides(digest, tool)
    invocation["toolConfigurationNotifications"] = configuration
    invocation["toolExecutionNotifications"] = execution
    return invocation


def _configuration(review: Review, tool: Tool, files: Files, digest: Digest) -> list[Json]:
    told: list[Json] = [
        {
            "descriptor": tool.notice("file.unreadable"),
            "level": "error",
            "message": text_of(problem.text),
            "locations": [{"physicalLocation": files.physical(problem.place)}],
        }
        for problem in sorted(review.problems)
    ]
    told += [
        {
            "descriptor": tool.notice("path.empty"),
            "level": "warning" if review.rooms else "error",
            "message": text_of(f"Nothing to check in {name}: no file there ends in .room.yaml"),
        }
        for name in review.unmatched
    ]
    if not (review.rooms or told):
        told.append(
            {
                "descriptor": tool.notice("path.empty"),
                "level": "error",
                "message": text_of("There was no room to check"),
            }
        )
    told += [
        {"descriptor": tool.notice("house.loosened"), "level": "warning", "message": text_of(text)}
        for text in digest.loosened()
    ]
    return told


def _overrides(digest: Digest, tool: Tool) -> list[Json]:
    made = []
    for file, decision in digest.decisions():
        edges = {"low": decision.low, "high": decision.high}
        given = {name: edge for name, edge in edges.items() if edge is not None}
        configuration: Json = {"level": decision.level} if decision.level is not None else {}
        if given:
            configuration["parameters"] = given
        about = {"house": file, "because": decision.because or ""}
        made.append(
            {
                "descriptor": tool.reference(decision.id),
                "configuration": configuration,
                "properties": {key: text for key, text in about.items() if text},
            }
        )
    return made


def _counts(review: Review, digest: Digest) -> Json:
    missing = [{"room": file, "key": key, "verdicts": count} for file, key, count in digest.missing()]
    counted: Json = {"rooms": digest.rooms, "verdicts": dict(sorted(digest.counts.items())), "missingInputs": missing}
    if review.against:
        counted["against"] = review.against
    return counted
