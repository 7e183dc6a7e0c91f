"""The report for people: a list of what to put right, room by room, as a lead walks a site with it."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from roomlint.report.changes import (
    departed_words,
    has_changed,
    house_lines,
)
from roomlint.report.digest import Digest
from roomlint.report.page import Footnotes, Page
from roomlint.report.room_text import RoomText
from roomlint.report.telling import Rules, Telling
from roomlint.report.words import at, count_of, decided, few, sentence, tally
from roomlint.review.review import Decided
from roomlint.source.say import one_line

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.report.wishes import Wishes
    from roomlint.review.review import Review, RoomReview


def text_report(review: Review, wishes: Wishes) -> Iterator[str]:
    """Yield the review as text for people, room by room."""
    page = Page(wishes.width, wishes.paint)
    digest, footnotes, rules = Digest(review), Footnotes(), Rules(review.rules)
    _incomplete(review, page)
    _decisions_changed(review, page)
    yield page.take()
    unmoved: list[str] = []
    is_full = False
    told: Counter[str] = Counter()
    """What the rooms' own lines count, so that the last line adds up with them."""
    for room in review.rooms:
        stops = digest.add(room)
        if room.compared and not stops and not has_changed(room):
            unmoved.append(_as_before(room))
            told.update(room.counts())
            continue
        page.number = 0
        text = RoomText(room, Telling(room, rules, wishes.units), page, footnotes, wishes)
        text.write(stops=stops)
        told.update(text.counts())
        is_full = text.is_tight and digest.rooms == 1
        page.blank(is_apart=not room.compared)
        yield page.take()
    if unmoved:
        page.line(f"As before: {few(unmoved, 12)}.")
    _closing(review, digest, told, page, footnotes, wishes, is_full=is_full)
    yield page.take()


def _as_before(room: RoomReview) -> str:
    """Return a room that stands as it stood, with the old faults that do not stop it."""
    faults = Counter(str(verdict.level) for verdict in room.verdicts if verdict.gates is not None)
    words = tally(faults, only=("error", "warning"), zeros=False)
    return one_line(f"{room.code or room.file} ({words})" if words else room.code or room.file)


def _incomplete(review: Review, page: Page) -> None:
    """Say first what makes the answer incomplete."""
    if review.problems:
        page.heading("Could not be read; rooms that need it were not reviewed", "error")
        for problem in sorted(review.problems):
            page.item(f"{at(problem.place)}: {one_line(sentence(problem.text))}", "error")
    if review.troubles:
        page.heading("Not complete", "error")
        for trouble in review.troubles:
            page.line(sentence(trouble.text), 2)
    for name in review.unmatched:
        page.line(f"Nothing to check in {one_line(name)}: no file there ends in .room.yaml.")
    page.blank()


def _decisions_changed(review: Review, page: Page) -> None:
    lines = house_lines(review)
    if lines:
        page.heading("Decisions of the house that changed")
        for line in lines:
            page.line(line, 2)
        page.blank()
    for room in review.departed:
        page.line(f"{departed_words(room)}.")


def _decided(digest: Digest, page: Page, wishes: Wishes) -> None:
    """Say what the houses decided, what of that is over, and what it made looser where people can get hurt."""
    decisions: dict[str, list[str]] = {}
    for file, decision in digest.decisions():
        words = decided(Decided(decision.low, decision.high, decision.level))
        decisions.setdefault(file, []).append(f"{decision.id} {words}")
    for file, told in decisions.items():
        page.line(f"Decided by {one_line(file)}: {'; '.join(told)}.", role="quiet")
    for _, text in digest.ended():
        page.line(sentence(text), role="error")
    for _, text in digest.loosened(wishes.units):
        page.line(f"Loosened where people can get hurt: {sentence(text)}", role="error")


def _closing(
    review: Review,
    digest: Digest,
    told: Counter[str],
    page: Page,
    footnotes: Footnotes,
    wishes: Wishes,
    *,
    is_full: bool,
) -> None:
    if footnotes.marks:
        page.blank(is_apart=not review.against and not is_full)
        for text, mark in footnotes.marks.items():
            page.marked(mark, sentence(text))
    page.blank(is_apart=not review.against)
    if review.against and digest.rooms == 1:
        page.line(f"Compared with {review.against}.")
    _decided(digest, page, wishes)
    # Counting what was not looked at would read as if nothing had been found.
    if digest.rooms > 1 or not (digest.rooms or review.problems):
        since = f"Compared with {review.against}: " if review.against else ""
        rooms = count_of(digest.rooms, "room", "rooms")
        page.line(f"{since}{rooms}, {digest.stopped} held back: {tally(told)}.")
    if review.problems:
        files = len({problem.place.file for problem in review.problems})
        page.line(f"{count_of(files, 'file', 'files')} could not be read.", role="error")
