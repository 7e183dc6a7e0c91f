"""A whole design of one room."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from roomlint.design.base import Element

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Picture, Seat, Subwoofer
    from roomlint.design.record import Calibration, Mode, Project, Step, Survey, Waiver
    from roomlint.design.shell import Shell, Treatment
    from roomlint.design.supply import Amplifier, Cable, Circuit, Processor, Raceway, Rack


@dataclass(frozen=True, slots=True)
class Design(Element):
    """One design of one room, everything resolved; what the file leaves out is None or empty."""

    KIND: ClassVar[str] = "design"

    file: str
    project: Project
    survey: Survey
    shell: Shell
    layout: str | None
    """The layout's name in ITU-R BS.2051 terms, such as 4+7+0."""
    seats: tuple[Seat, ...]
    loudspeakers: tuple[Loudspeaker, ...]
    subwoofers: tuple[Subwoofer, ...]
    picture: Picture | None
    treatments: tuple[Treatment, ...]
    processor: Processor | None
    amplifiers: tuple[Amplifier, ...]
    racks: tuple[Rack, ...]
    raceways: tuple[Raceway, ...]
    cables: tuple[Cable, ...]
    circuits: tuple[Circuit, ...]
    modes: tuple[Mode, ...]
    calibration: Calibration
    handover: tuple[Step, ...]
    waivers: tuple[Waiver, ...]

    def labelled(self, *labels: str) -> Iterator[Loudspeaker]:
        """Yield the loudspeakers that carry one of the labels, in the order of the file."""
        return (speaker for speaker in self.loudspeakers if speaker.label in labels)

    @property
    def sources(self) -> tuple[Loudspeaker | Subwoofer, ...]:
        """Return everything that makes sound: the loudspeakers, then the subwoofers."""
        return (*self.loudspeakers, *self.subwoofers)

    def named_elements(self) -> Iterator[Element]:
        """Yield every element that has an id of its own in the file."""
        shell = self.shell
        yield from (shell, *shell.surfaces, *shell.openings, *shell.obstacles, *self.treatments)
        yield from (*self.seats, *self.loudspeakers, *self.subwoofers)
        yield from (element for element in (self.picture, self.processor) if element is not None)
        if self.picture is not None and self.picture.projector is not None:
            yield self.picture.projector
        yield from (*self.amplifiers, *self.racks, *self.raceways, *self.cables, *self.modes)
        for circuit in self.circuits:
            yield from (circuit, *circuit.receptacles, *circuit.loads)
        yield from (*self.calibration.settings, *self.calibration.steps, *self.handover)
