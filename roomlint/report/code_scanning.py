"""The part of SARIF that code hosts read, so that they show what stands open and nothing else.

Hosts take every result for an alert, whatever its kind, suppressions or baseline state say; so only failures that
nobody accepted go in, and a notification counts what was left out.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from roomlint.report.digest import Digest, Foremost
from roomlint.report.sarif import compact, dump, run_of
from roomlint.report.sarif_results import Files, Results, entries, text_of
from roomlint.report.sarif_tool import MOST_TEXT, Tool
from roomlint.report.words import COUNTED, count_of, place_key
from roomlint.review.compare import FINGERPRINT
from roomlint.review.verdict import Kind

if TYPE_CHECKING:
    from roomlint.review.review import Review, RoomReview
    from roomlint.review.rule import Rule
    from roomlint.review.verdict import Verdict

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
    digest = Digest(review)
    left_out, fired = Counter[str](), set[str]()
    shown: Foremost[tuple[Verdict, RoomReview]] = Foremost(most_results)
    for room in review.rooms:
        digest.add(room)
        for key, verdict, gone in entries(room):
            reason = _reason(verdict, gone=gone)
            if reason or verdict.level is None:
                left_out[reason] += 1
            else:
                shown.add((-verdict.level.rank, key), (verdict, room))
                fired.add(verdict.rule)
    told = [f"{number} {reason}" for reason, number in sorted(left_out.items())]
    if shown.total > most_results:
        beyond = count_of(shown.total - most_results, "failure", "failures")
        told.append(f"{beyond} beyond the {most_results} gravest")
    rules = sorted(review.rules, key=lambda rule: (rule.id not in fired, rule.id))[:most_rules]
    if len(rules) < len(review.rules):
        told.append(f"{count_of(len(review.rules) - len(rules), 'rule', 'rules')} beyond the first {most_rules}")
    return _log(review, rules, shown.items(), digest, told, root)


def _reason(verdict: Verdict, *, gone: bool) -> str:
    """Return why a verdict is not for a code host; empty when it is."""
    if gone:
        return "gone"
    if verdict.kind is not Kind.FAIL:
        return WORDS[verdict.kind.value]
    return "waived" if verdict.waived is not None else ""


def _log(  # each part of a log is made from another part of the review
    review: Review,
    rules: list[Rule],
    shown: list[tuple[Verdict, RoomReview]],
    digest: Digest,
    told: list[str],
    root: str,
) -> str:
    tool, files = Tool(rules), Files(root)
    results = Results(review, tool, files)
    shown.sort(key=lambda entry: (place_key(entry[0]), entry[1].file))
    seen: Counter[str] = Counter()
    alerts = [compact(_alert(results.one(verdict, room), seen)) for verdict, room in shown]
    run = run_of(review, tool, files, digest)
    _drop_sources(run)
    if told:
        text = f"Left out of this report: {', '.join(told)}. The full SARIF report holds everything"
        notice = {"descriptor": tool.notice("report.shortened"), "level": "note", "message": text_of(text)}
        run["invocations"][0]["toolConfigurationNotifications"].append(notice)
    return dump(run, alerts)


def _alert(result: Json, seen: Counter[str]) -> Json:
    """Return a result as hosts read it; `seen` counts how often each fingerprint came before.

    The identity is made of rule, file and elements instead of the lines around the finding.
    """
    alert = {name: value for name, value in result.items() if name not in UNREAD}
    text = result["message"]["text"]
    if len(text) > MOST_TEXT:
        alert["message"] = {"text": f"{text[: MOST_TEXT - 4].rstrip()} ..."}
    if "relatedLocations" in result:
        alert["relatedLocations"] = result["relatedLocations"][:MOST_RELATED]
    prints = result["partialFingerprints"]
    key = prints[FINGERPRINT]
    seen[key] += 1
    alert["partialFingerprints"] = {**prints, LINE_HASH: f"{key}:{seen[key]}"}
    return alert


def _drop_sources(run: Json) -> None:
    """Take out the taxonomies, which hosts do not read; each rule's help names its basis in words."""
    tool = run["tool"]
    tool["driver"].pop("supportedTaxonomies", None)
    for component in (tool["driver"], *tool.get("extensions", ())):
        for rule in component["rules"]:
            rule.pop("relationships", None)
