"""Chapter channel: from a content channel to its loudspeaker, by outputs, amplifiers and cables that are there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.review import SOURCES, Missing, No, Seen, Subjects, practice, unsaid

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.record import Mode
    from roomlint.design.supply import Amplifier, Feed, Processor
    from roomlint.review import Applies, Room

    Source: TypeAlias = "Loudspeaker | Subwoofer"
    Driver: TypeAlias = "Amplifier | Processor"

BUILT: Final = practice("a way that does not exist is found on paper, not when the walls are closed")
SHEET: Final = practice("what a processor takes and sets is what its sheet says")
LEFT_BEHIND: Final = practice("a stereo preset and an all-channels preset are both left behind")


@dataclass(frozen=True, slots=True)
class Output(Seen["Feed", "Amplifier | Processor"]):
    """An output of an amplifier."""

    joined: str = " of "

    @property
    def feed(self) -> Feed:
        """The output itself."""
        return self.source

    @property
    def driver(self) -> Driver:
        """The amplifier that it belongs to."""
        return self.seat


# Where no loudspeaker is listed yet, what drives it is not asked for.


def every_amplifier(room: Room) -> Iterator[Driver | Missing]:
    """Yield the amplifiers, the one inside the processor too; a file that does not speak of any may have some."""
    drivers, electronics = room.figures.routing.drivers, room.design.electronics
    told = electronics is not None and electronics.at.get("amplifiers") is not None
    if not drivers and not told and room.design.sources:
        yield Missing(room.design, "electronics.amplifiers")
    yield from drivers


def every_output(room: Room) -> Iterator[Output | Missing]:
    """Yield every output of every amplifier; one that does not list any may have some."""
    for driver in every_amplifier(room):
        if isinstance(driver, Missing):
            yield driver
        elif not driver.feeds and driver.at.get("feeds") is None:
            yield Missing(driver, "feeds")
        else:
            yield from (Output(feed, driver) for feed in driver.feeds)


def every_processor(room: Room) -> Iterator[Processor | Missing]:
    """Yield the processor; a file that does not speak of one may have one."""
    processor = room.design.processor
    if processor is not None:
        yield processor
    elif room.design.sources:
        yield Missing(room.design, "electronics.processor")


def every_mode(room: Room) -> Iterator[Mode | Missing]:
    """Yield the listening modes; a file that does not speak of any may have some."""
    if room.design.at.get("listening_modes") is None and room.design.sources:
        yield Missing(room.design, "listening_modes")
    yield from room.design.modes


AMPLIFIERS: Final[Subjects[Driver]] = Subjects("amplifier", every_amplifier, SOURCES.of)
OUTPUTS: Final[Subjects[Output]] = Subjects("amplifier output", every_output, SOURCES.of)
PROCESSORS: Final[Subjects[Processor]] = Subjects("processor", every_processor, SOURCES.of)
MODES: Final[Subjects[Mode]] = Subjects("listening mode", every_mode, SOURCES.of)


def with_sources(room: Room, _: object) -> Applies:
    """Whether anything plays in the room."""
    if room.design.sources:
        return True
    missing = unsaid(room.design, *SOURCES.of)
    if missing is not None:
        raise missing
    return No("no loudspeaker is listed")
