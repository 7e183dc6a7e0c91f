"""The part of SARIF that code hosts read, so that they show what stands open and nothing else.

Hosts take every result for an alert, whatever its kind, suppressions or baseline state say; so only failures that
nobody accepted go in, and what makes a file unreadable, and a notification counts what was left out.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any, Final

from roomlint.report.digest import Foremost
from roomlint.report.sarif import Log, compact
from roomlint.report.sarif_results import Files, Results, text_of
from roomlint.report.sarif_tool import MOST_TEXT, Tool
from roomlint.report.telling import Rules, Telling
from roomlint.report.words import COUNTED, count_of, place_key, sentence
from roomlint.review.compare import FINGERPRINT
from roomlint.review.verdict import Kind

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.wishes import Wishes
    from roomlint.review.review import Review
    from roomlint.review.verdict import Verdict

Json = dict[str, Any]

MOST_RESULTS: Final = 5_000
MOST_RULES: Final = 25_000
LINE_HASH: Final = "primaryLocationLineHash"
"""The only fingerprint that hosts use; the part after the colon tells equal ones apart."""
WORDS: Final = {name: many for name, _, many in COUNTED}
UNREAD: Final = ("suppressions", "baselineState")
"""Properties of a result that hosts ignore."""


def alerts_report(
    review: Review, wishes: Wishes, *, most_results: int = MOST_RESULTS, most_rules: int = MOST_RULES
) -> Iterator[str]:
    """Yield the failures that nobody accepted, and the files that cannot be read, as the SARIF that code hosts read."""
    chosen = review.rules[:most_rules]
    tool, files, rules = Tool(chosen, for_hosts=True), Files(), Rules(review.rules)
    log = Log(review, tool, files)
    results = Results(tool, files, compared=False)
    left_out, seen = Counter[str](), Counter[str]()
    # The gravest are kept as text; which they are is known when all rooms are through.
    shown: Foremost[tuple[tuple[object, ...], str]] = Foremost(most_results)
    for number, problem in enumerate(sorted(review.problems)):
        key = (0, number)
        shown.add((-4, key), (key, compact(_alert(results.unreadable(problem), seen))))
    for index, room in enumerate(review.rooms, 1):
        log.add(room)
        telling = Telling(room, rules, wishes.units)
        if room.gone:
            left_out["gone"] += len(room.gone)
        for number, verdict in enumerate(sorted(room.verdicts, key=place_key)):
            reason = _reason(verdict)
            if reason or verdict.level is None:
                left_out[reason] += 1
                continue
            result = results.one(verdict, telling)
            result["message"] = text_of(_text(verdict, telling))
            key = (index, number)
            shown.add((-verdict.level.rank, key), (key, compact(_alert(result, seen))))
    told = [f"{number} {reason}" for reason, number in sorted(left_out.items())]
    if shown.total > most_results:
        beyond = count_of(shown.total - most_results, "failure", "failures")
        told.append(f"{beyond} beyond the {most_results} gravest")
    if len(chosen) < len(review.rules):
        told.append(f"{count_of(len(review.rules) - len(chosen), 'rule', 'rules')} beyond the first {most_rules}")
    yield from log.start()
    for _, text in sorted(shown.items(), key=lambda entry: entry[0]):
        yield log.text(text)
    yield from log.end(told=told)


def _reason(verdict: Verdict) -> str:
    """Return why a verdict is not for a code host; empty when it is."""
    if verdict.kind is not Kind.FAIL:
        return WORDS[verdict.kind.value]
    return WORDS["waived"] if verdict.waived is not None else ""


def _text(verdict: Verdict, telling: Telling) -> str:
    """Return what an alert says: the finding, what clears it, and the caution where people can get hurt."""
    parts = [telling.whole(verdict)]
    if verdict.remedy is not None:
        words = telling.remedy(verdict.remedy, verdict.subject)
        parts.append(sentence(words[:1].upper() + words[1:]))
    rule = telling.rule(verdict)
    if rule is not None and rule.caution:
        parts.append(sentence(rule.caution))
    text = " ".join(parts)
    return text if len(text) <= MOST_TEXT else f"{text[: MOST_TEXT - 4].rstrip()} ..."


def _alert(result: Json, seen: Counter[str]) -> Json:
    """Return a result as hosts read it; `seen` counts how often each fingerprint came before.

    The identity is made of rule, file and elements instead of the lines around the finding.
    """
    alert = {name: value for name, value in result.items() if name not in UNREAD}
    text = result["message"]["text"]
    if len(text) > MOST_TEXT:
        alert["message"] = {"text": f"{text[: MOST_TEXT - 4].rstrip()} ..."}
    prints = result["partialFingerprints"]
    key = prints[FINGERPRINT]
    seen[key] += 1
    alert["partialFingerprints"] = {**prints, LINE_HASH: f"{key}:{seen[key]}"}
    return alert
