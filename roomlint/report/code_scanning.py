"""The part of SARIF that code hosts read, so that they show what stands open and nothing else.

Hosts take every result for an alert, whatever its kind, suppressions or baseline state say; so only failures that
nobody accepted go in, and a notification counts what was left out.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from roomlint.report.sarif import dump, sarif_log
from roomlint.report.sarif_results import text_of
from roomlint.report.sarif_tool import MOST_TEXT, NOTIFICATIONS
from roomlint.report.words import COUNTED, count_of
from roomlint.review.compare import FINGERPRINT
from roomlint.review.verdict import Kind, Level, State

if TYPE_CHECKING:
    from roomlint.review.review import Review

Json = dict[str, Any]

MOST_RULES = 25_000
MOST_RESULTS = 5_000
MOST_RELATED = 10
LINE_HASH = "primaryLocationLineHash"
"""The only fingerprint that hosts use; the part after the colon tells equal ones apart."""
WORDS = {name: many for name, _, many in COUNTED}
UNREAD = ("taxa", "suppressions", "baselineState")
"""Properties of a result that hosts ignore."""


def code_scanning_report(
    review: Review,
    *,
    verdicts: bool = False,
    root: str = "",
    most_results: int = MOST_RESULTS,
    most_rules: int = MOST_RULES,
) -> str:
    """Return the failures that nobody accepted, as the SARIF that code hosts read."""
    del verdicts
    rules = _rules(review, most_rules)
    log = sarif_log(replace(review, rules=rules), root=root)
    run = log["runs"][0]
    left_out: Counter[str] = Counter()
    shown = []
    for result in run["results"]:
        reason = _reason(result)
        if reason:
            left_out[reason] += 1
        else:
            shown.append(result)
    kept = sorted(sorted(range(len(shown)), key=lambda index: -_rank(shown[index]))[:most_results])
    run["results"] = [_alert(shown[index]) for index in kept]
    _hash_lines(run["results"])
    _drop_sources(run)
    told = [f"{number} {reason}" for reason, number in sorted(left_out.items())]
    if len(kept) < len(shown):
        told.append(f"{count_of(len(shown) - len(kept), 'failure', 'failures')} beyond the {most_results} gravest")
    if len(rules) < len(review.rules):
        told.append(f"{count_of(len(review.rules) - len(rules), 'rule', 'rules')} beyond the first {most_rules}")
    if told:
        text = f"Left out of this report: {', '.join(told)}. The full SARIF report holds everything"
        run["invocations"][0]["toolConfigurationNotifications"].append(
            {
                "descriptor": {"id": "report.shortened", "index": sorted(NOTIFICATIONS).index("report.shortened")},
                "level": "note",
                "message": text_of(text),
            }
        )
    return dump(log)


def _rules(review: Review, most: int) -> tuple[Any, ...]:
    """Return the rules that fit: those that found something first."""
    if len(review.rules) <= most:
        return review.rules
    fired = {verdict.rule for room in review.rooms for verdict in room.verdicts if verdict.kind is Kind.FAIL}
    return tuple(sorted(review.rules, key=lambda rule: (rule.id not in fired, rule.id))[:most])


def _reason(result: Json) -> str:
    """Return why a result is not for a code host; empty when it is."""
    if result.get("baselineState") == State.ABSENT:
        return "gone"
    if result["kind"] != Kind.FAIL:
        return WORDS[result["kind"]]
    return "waived" if result["suppressions"] else ""


def _rank(result: Json) -> int:
    return Level(result["level"]).rank


def _alert(result: Json) -> Json:
    alert = {name: value for name, value in result.items() if name not in UNREAD}
    text = result["message"]["text"]
    if len(text) > MOST_TEXT:
        alert["message"] = {"text": f"{text[: MOST_TEXT - 4].rstrip()} ..."}
    if "relatedLocations" in result:
        alert["relatedLocations"] = result["relatedLocations"][:MOST_RELATED]
    return alert


def _hash_lines(alerts: list[Json]) -> None:
    """Give each alert the identity that hosts use, made of rule, file and elements instead of the lines around it."""
    seen: Counter[str] = Counter()
    for alert in alerts:
        prints = alert["partialFingerprints"]
        key = prints[FINGERPRINT]
        seen[key] += 1
        alert["partialFingerprints"] = {**prints, LINE_HASH: f"{key}:{seen[key]}"}


def _drop_sources(run: Json) -> None:
    """Take out the taxonomies, which hosts do not read; each rule's help names its basis in words."""
    run.pop("taxonomies", None)
    tool = run["tool"]
    tool["driver"].pop("supportedTaxonomies", None)
    for component in (tool["driver"], *tool.get("extensions", ())):
        for rule in component["rules"]:
            rule.pop("relationships", None)
