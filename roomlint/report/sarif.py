"""The SARIF 2.1.0 report: every verdict, every rule that ran, and what the house decided."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from roomlint.report.sarif_results import BASE, Files, is_compared, results, text_of
from roomlint.report.sarif_tool import NAME, Tool
from roomlint.report.words import decisions, loosened

if TYPE_CHECKING:
    from roomlint.review.review import Review

Json = dict[str, Any]

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
CATEGORY = f"{NAME}/"
"""What code hosts tell runs apart by; without the slash at its end they read an empty category."""
SPREAD = frozenset({"runs", "tool", "driver", "extensions", "rules", "taxonomies", "invocations", "results"})
"""Objects and lists that are written over several lines, so that two reports can be compared line by line."""


def sarif_report(review: Review, *, verdicts: bool = True, root: str = "", command: str = "") -> str:
    """Return the whole review as SARIF: every kind of verdict, whatever `verdicts` says.

    Paths are made relative to `root`, the root of the repository, when they are absolute; `command` is the command
    line, told only when given, because it may name folders of a machine.
    """
    del verdicts
    return dump(sarif_log(review, root=root, command=command))


def sarif_log(review: Review, *, root: str = "", command: str = "") -> Json:
    """Return the SARIF log as plain data."""
    tool, files = Tool(review.rules), Files(root)
    run: Json = {
        "tool": tool.component(),
        "automationDetails": {"id": CATEGORY},
        "columnKind": "unicodeCodePoints",
        "originalUriBaseIds": {BASE: {"description": {"text": "The folder that the paths are relative to."}}},
        "invocations": [_invocation(review, tool, files, command)],
        "results": results(review, tool, files),
        "properties": _counts(review),
    }
    taxonomies = tool.taxonomies()
    if taxonomies:
        run["taxonomies"] = taxonomies
    return {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}


def dump(log: Json) -> str:
    """Return a log as JSON text: compact, but a line for each result and each rule."""
    text = _dump(log, "runs")
    return f"{text}\n".encode("utf-8", "backslashreplace").decode()


def _dump(value: Any, name: str) -> str:  # noqa: ANN401  whatever JSON holds
    if name in SPREAD and isinstance(value, dict):
        return "{" + ",\n".join(f"{json.dumps(key)}:{_dump(item, key)}" for key, item in value.items()) + "}"
    if name in {"runs", "extensions"} and isinstance(value, list):
        return "[\n" + ",\n".join(_dump(item, name) for item in value) + "\n]"
    if name in SPREAD and value:
        return "[\n" + ",\n".join(_compact(item) for item in value) + "\n]"
    return _compact(value)


def _compact(value: Any) -> str:  # noqa: ANN401  whatever JSON holds
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)


def _invocation(review: Review, tool: Tool, files: Files, command: str) -> Json:
    configuration = _configuration(review, tool, files)
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
    invocation["ruleConfigurationOverrides"] = _overrides(review, tool)
    invocation["toolConfigurationNotifications"] = configuration
    invocation["toolExecutionNotifications"] = execution
    return invocation


def _configuration(review: Review, tool: Tool, files: Files) -> list[Json]:
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
        for text in loosened(review)
    ]
    return told


def _overrides(review: Review, tool: Tool) -> list[Json]:
    made = []
    for file, decision in decisions(review):
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


def _counts(review: Review) -> Json:
    counted: Json = {
        "rooms": len(review.rooms),
        "verdicts": dict(sorted(review.counts().items())),
        "missingInputs": [
            {"room": file, "key": key, "verdicts": count} for file, key, count in review.missing_inputs()
        ],
    }
    if is_compared(review):
        counted["against"] = review.against
    return counted
