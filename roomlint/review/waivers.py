"""Waivers: which failures they meet, and whether they hold."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import timedelta
from typing import TYPE_CHECKING

from roomlint.measure.figure import Figure
from roomlint.review.rule import GUARDED
from roomlint.review.verdict import Fate, Kind, Level, Unheld, Verdict, Waived

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import date

    from roomlint.design.model import Design
    from roomlint.design.record import Waiver

ON_RECORD = GUARDED
"""Chapters whose errors are waived only by a named approver with a document: people can get hurt."""
ABOUT_WAIVER = "waiver/"
"""What the subject of a finding about a waiver begins with."""
SOON = timedelta(days=30)
"""A waiver that ends within this time is told of."""


@dataclass(frozen=True, slots=True)
class Waiving:
    """A waiver that meets a failure."""

    waiver: Waiver
    verdict: Verdict
    unheld: Unheld | None
    """Why it does not hold; None when it does."""

    @property
    def fate(self) -> Fate:
        """What becomes of it."""
        return self.unheld.fate if self.unheld is not None else Fate.HOLDS


def apply_waivers(
    verdicts: Iterable[Verdict], waivers: tuple[Waiver, ...], today: date | None
) -> tuple[list[Verdict], list[Waiving]]:
    """Return the verdicts with every accepted failure marked, and what became of each waiver that met one.

    A failure whose waiver does not hold stands, and says why it is open again.
    """
    done: list[Verdict] = []
    waivings: list[Waiving] = []
    for verdict in verdicts:
        if verdict.kind is not Kind.FAIL:
            done.append(verdict)
            continue
        met = [_waiving(waiver, verdict, today) for waiver in waivers if meets(waiver, verdict)]
        waivings += met
        done.append(_with(verdict, met))
    return done, waivings


def accepts(finding: Verdict, failure: Verdict) -> bool:
    """Return whether the waiver that a finding is about names a failure: its rule, and ids of its subject."""
    if not finding.subject.startswith(ABOUT_WAIVER):
        return False
    rule, _, subject = finding.subject.removeprefix(ABOUT_WAIVER).partition(" for ")
    return rule == failure.rule and set(subject.split("+")) <= ids_of(failure.subject)


def meets(waiver: Waiver, verdict: Verdict) -> bool:
    """Return whether a waiver is about a verdict: the same rule, and every id it names is part of the subject.

    A waiver of `side-left` meets that loudspeaker at every seat, one of `side-left+middle` at one seat only. Where two
    elements of different kinds share an id, `seat/left` names the seat.
    """
    return waiver.rule == verdict.rule and named(waiver) <= ids_of(verdict.subject)


def named(waiver: Waiver) -> set[str]:
    """Return the ids that a waiver's subject names."""
    return {part.strip() for part in waiver.subject.split("+")}


def ids_of(subject: str) -> set[str]:
    """Return the names that the elements of a subject's key answer to: `left` and `loudspeaker/left`."""
    parts = subject.split("+")
    return {*parts, *(part.partition("/")[2] for part in parts)}


def subject_ids(design: Design, verdicts: Iterable[Verdict]) -> set[str]:
    """Return every id that a waiver of this design can name."""
    known = {design.id, design.key}
    for element in design.named_elements():
        known |= {element.id, element.key}
    for verdict in verdicts:
        known |= ids_of(verdict.subject)
    return known


def _with(verdict: Verdict, met: list[Waiving]) -> Verdict:
    if not met:
        return verdict
    held = next((waiving.waiver for waiving in met if waiving.fate is Fate.HOLDS), None)
    if held is None:
        return replace(verdict, unheld=met[0].unheld)
    waived = Waived(
        because=held.because or "",
        approved_by=held.approved_by or "",
        until=held.until.isoformat() if held.until is not None else "",
        place=held.place,
        document=held.document or "",
    )
    return replace(verdict, waived=waived)


def _waiving(waiver: Waiver, verdict: Verdict, today: date | None) -> Waiving:
    return Waiving(waiver, verdict, _unheld(waiver, verdict, today))


def _unheld(waiver: Waiver, verdict: Verdict, today: date | None) -> Unheld | None:
    if waiver.because is None or not waiver.because.strip():
        return Unheld(Fate.WITHOUT_REASON)
    if verdict.level is Level.ERROR and verdict.rule.partition(".")[0] in ON_RECORD:
        lacks = tuple(key for key in ("approved_by", "document") if getattr(waiver, key) is None)
        if lacks:
            return Unheld(Fate.UNSUPPORTED, lacks=lacks)
    if waiver.until is not None and today is not None and today > waiver.until:
        return Unheld(Fate.EXPIRED, ended=waiver.until.isoformat())
    return _bounded(waiver.bound, verdict) if waiver.bound is not None else None


def _bounded(bound: str, verdict: Verdict) -> Unheld | None:
    from roomlint.review.units import in_unit  # the quantity parser is needed only where a waiver has a bound

    figure, window = verdict.figure, verdict.window
    if figure is None or window is None:
        return Unheld(Fate.BOUND_UNFIT, bound=bound)
    try:
        limit = in_unit(bound, figure.unit)
    except ValueError as error:
        return Unheld(Fate.BOUND_UNFIT, bound=bound, unfit=str(error).rstrip("."))
    below = window.nearer_side(figure.value) == "below"
    # Where people can get hurt the whole uncertainty counts against the waiver, as it counts against the figure.
    doubt = figure.u if verdict.rule.partition(".")[0] in GUARDED else 0.0
    passed = (limit - figure.value if below else figure.value - limit) + doubt
    if passed > 1e-9 * max(1.0, abs(limit)):
        return Unheld(Fate.BOUND_PASSED, bound=bound, passed=Figure.plain("beyond the bound", figure.unit, passed))
    return None
