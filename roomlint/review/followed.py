"""Elements under another name: whoever only renames a loudspeaker has neither cured nor spoilt anything."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from roomlint.review.verdict import Verdict

    Key: TypeAlias = tuple[str, str]
    """A rule and its subject."""


def followed(was: Mapping[Key, Verdict], now: Iterable[Verdict]) -> Mapping[Key, Verdict]:
    """Return earlier verdicts under the names that their elements have today.

    An element that is gone and one that is new are the same when all that is judged of the one is judged of the other
    as it was: rule by rule, with the same figures. Elements that are judged alike are paired in the order of the file.
    """
    today = {(verdict.rule, verdict.subject): verdict for verdict in now}
    before_names, today_names = _names(was), _names(today)
    gone, come = before_names - today_names, today_names - before_names
    if not gone or not come:
        return was
    before, after = _alike(was, gone), _alike(today, come)
    renamed = {
        old: new
        for judged, olds in before.items()
        if len(olds) == len(news := after.get(judged, []))
        for old, new in zip(olds, news, strict=True)
    }
    if not renamed:
        return was
    return {
        (rule, "+".join(renamed.get(part, part) for part in subject.split("+"))): verdict
        for (rule, subject), verdict in was.items()
    }


def _names(verdicts: Iterable[Key]) -> set[str]:
    return {part for _, subject in verdicts for part in subject.split("+")}


def _alike(verdicts: Mapping[Key, Verdict], names: set[str]) -> dict[object, list[str]]:
    """Return names by kind of element and by all that is judged of it, each list in the order of the file."""
    judged: dict[str, Counter[tuple[str, ...]]] = {name: Counter() for name in names}
    lines: dict[str, int] = {}
    for (rule, subject), verdict in verdicts.items():
        parts = subject.split("+")
        for part in names.intersection(parts):
            value = "" if verdict.figure is None else f"{verdict.figure.value:.4g}"
            at = str(parts.index(part)) if len(parts) > 1 else ""
            judged[part][rule, verdict.kind.value, str(verdict.level), value, at] += 1
            lines[part] = min(lines.get(part, verdict.place.line), verdict.place.line)
    found: dict[object, list[str]] = {}
    for name in sorted(names, key=lambda name: (lines[name], name)):
        found.setdefault((name.partition("/")[0], frozenset(judged[name].items())), []).append(name)
    return found
