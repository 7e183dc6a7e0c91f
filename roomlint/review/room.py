"""The room as a rule sees it: the design, its figures, and the house's standing decisions."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from roomlint.design.base import Missing
from roomlint.design.house import House
from roomlint.measure import Figures

MEASURED = frozenset({"survey", "rough-in", "handover"})
"""Stages at which what a file says was measured."""

if TYPE_CHECKING:
    from datetime import date

    from roomlint.design.base import Element, Subject
    from roomlint.design.listening import Seat
    from roomlint.design.model import Design
    from roomlint.design.quantity import Reading
    from roomlint.review.rule import AnyRule
    from roomlint.review.verdict import Verdict
    from roomlint.review.waivers import Waiving


class Room:
    """What every rule gets."""

    def __init__(
        self,
        design: Design,
        house: House | None = None,
        today: date | None = None,
        rule_ids: tuple[str, ...] = (),
        *,
        exact: bool = True,
    ) -> None:
        self.design: Design = design
        self.house = house or House()
        self.figures: Figures = Figures(design)
        self.today = today
        """The day that waivers are held against; without one none expires."""
        self.rule_ids = rule_ids
        """The ids of all rules there are, whether they run or not."""
        self.exact = exact
        """Whether somebody asks how far the figures that pass may be off."""
        self.ran: frozenset[str] = frozenset()
        """The ids of the rules that were run; filled in before the closing rules judge."""
        self.waiting: list[tuple[AnyRule, Subject]] = []
        """What was not judged because its cause failed: whatever cures the cause is held against it too."""
        self.found: tuple[Verdict, ...] = ()
        """What those rules found."""
        self.waivings: tuple[Waiving, ...] = ()
        """What became of each waiver that met a failure."""

    @property
    def critical(self) -> bool:
        """Whether the listening-room standards hold instead of home tolerances."""
        return self.design.project.reference == "critical"

    @property
    def measured(self) -> bool:
        """Whether its positions were measured on site; at the drawing board they are chosen."""
        project, survey = self.design.project, self.design.survey
        return project.stage in MEASURED if project.stage is not None else survey.tolerance_m is not None

    def unlabelled(self) -> Missing:
        """Return what is missing when a loudspeaker that no label names may be the one that is looked for."""
        speaker = next((speaker for speaker in self.design.loudspeakers if speaker.label is None), None)
        return Missing(speaker, "label") if speaker is not None else Missing(self.design, "loudspeakers")

    def name_of(self, reading: Reading) -> tuple[str, str]:
        """Return what the team calls a reading: the element that it belongs to, and the key below it."""
        if reading.at is None:
            return ("", reading.words)
        path = reading.at.path
        best: Element | None = None
        for element in self._elements:
            above = element.at.path
            if path.startswith(above) and (best is None or len(above) > len(best.at.path)):
                best = element
        if best is None or reading.at.place.file != self.design.file:
            return ("", path)
        return (best.words, path[len(best.at.path) :].lstrip("."))

    @cached_property
    def _elements(self) -> tuple[Element, ...]:
        return tuple(element for element in self.design.named_elements() if element.at.path)

    @cached_property
    def reference_seat(self) -> Seat:
        """The seat that the room is calibrated for; a lone seat is it without saying so."""
        seats = self.design.seats
        for seat in seats:
            if seat.reference:
                return seat
        if len(seats) == 1:
            return seats[0]
        raise Missing(self.design, "seats[].reference")
