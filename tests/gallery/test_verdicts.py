"""Every verdict on the four example projects and the gallery, as it was last declared.

`verdicts.txt` is written by `python tests/gallery/test_verdicts.py --write` and read by whoever changes a rule or a
figure: its difference is what that change does to a reader's rooms. Never renew it without having read the difference.
"""

from __future__ import annotations

import difflib
import sys
from collections import Counter
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any

import gallery_rooms

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.review.session import Choices, run
from roomlint.review.window import Windows
from roomlint.testing import room_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.review.verdict import Verdict

HERE = Path(__file__).parent
PROJECTS = HERE.parent.parent / "example_projects"
DECLARED = HERE / "verdicts.txt"
TODAY = date(2026, 11, 25)
RENEWED_BY = "python tests/gallery/test_verdicts.py --write"
TOLD = ("fail", "review", "informational")
"""Kinds that are told one by one. What is open is told by rule and missing key in an example project, by chapter in the
gallery, whose rooms have no more in them than what they show; the rest is counted by chapter."""


def rooms() -> Iterator[tuple[str, Iterable[Verdict]]]:
    book = load_book()
    for path in sorted(PROJECTS.glob("*/*.room.yaml")):
        review = run([str(path)], book, Choices(today=TODAY))
        assert not review.problems
        assert not review.troubles
        yield f"{path.parent.name}/{path.name}", review.rooms[0].verdicts
    for name, data in vars(gallery_rooms).items():
        if isinstance(data, dict) and {"roomlint", "room"} <= data.keys():
            outcome = review_room(room_of(data, gallery_rooms.PRODUCTS), book.rules)
            assert not outcome.troubles
            yield name.lower().replace("_", " "), outcome.verdicts


def _one(verdict: Verdict) -> str:
    level = f" {verdict.level}" if verdict.level is not None else ""
    waived = " (waived)" if verdict.waived is not None else ""
    # Elements of a pair stand in the order of the file, which is no part of what is found.
    return f"{verdict.kind}{level} {verdict.rule} {'+'.join(sorted(verdict.subject.split('+')))}{waived}"


def lines(name: str, verdicts: Iterable[Verdict]) -> Iterator[str]:
    """Yield what is declared of one room, in an order of its own: that of the rule book is nobody's promise."""
    found = list(verdicts)
    yield f"== {name}"
    yield from sorted(_one(verdict) for verdict in found if str(verdict.kind) in TOLD)
    whole = "/" in name
    wanted: Counter[str] = Counter()
    for verdict in found:
        if str(verdict.kind) == "open":
            key = f"wants {verdict.wanted.key}" if verdict.wanted is not None else "follows from another"
            wanted[f"open {verdict.rule if whole else verdict.rule.partition('.')[0]} {key}"] += 1
    yield from (f"{line} x {count}" for line, count in sorted(wanted.items()))
    counts = Counter((verdict.rule.partition(".")[0], str(verdict.kind)) for verdict in found)
    for chapter in sorted({chapter for chapter, _ in counts}):
        quiet = [f"{counts[chapter, kind]} {kind}" for kind in ("pass", "notApplicable") if counts[chapter, kind]]
        if quiet:
            yield f"{chapter}: {', '.join(quiet)}"


def windows() -> Iterator[str]:
    """Yield the windows that are constants: the walk to an edge takes the edge from the rule, so it is written here."""
    yield "== windows"
    for rule in load_book().rules:
        if isinstance(rule.window, Windows):
            for kind in ("window", "target", "limit"):
                one = getattr(rule.window, kind)
                if one is not None:
                    yield f"{rule.id} {kind}: {one.low} to {one.high} {one.unit}".rstrip()


def declared() -> str:
    parts: list[Any] = ["\n".join(windows())]
    parts += ["\n".join(lines(name, verdicts)) for name, verdicts in rooms()]
    return "\n\n".join([f"Written by {RENEWED_BY}; read the difference before it is committed.", *parts, ""])


def test_every_verdict_is_the_declared_one() -> None:
    was, now = DECLARED.read_text(encoding="utf-8"), declared()
    changed = difflib.unified_diff(was.splitlines(), now.splitlines(), "declared", "found", lineterm="", n=0)
    assert was == now, "\n".join(["verdicts changed; if that is meant: " + RENEWED_BY, *changed])


if __name__ == "__main__":
    if sys.argv[1:] != ["--write"]:
        sys.exit(f"usage: {RENEWED_BY}")
    DECLARED.write_text(declared(), encoding="utf-8")
