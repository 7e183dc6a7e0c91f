"""Chapter handover: how the room was set up, what is entered and stored, and what the site and the client are left."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, TypeVar

from roomlint.design.element import Element
from roomlint.review import Missing, No, Subjects, practice, standard

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from roomlint.design.record import Item, Mode, Preset, Step
    from roomlint.design.supply import Cable, Circuit, Processor
    from roomlint.review import Applies, Room

E = TypeVar("E", bound=Element)

ORDER: Final = standard("two web guides to setting up a room", "polarity, delay, level, correction", read=False)
USUAL: Final = practice("subwoofers among themselves first, the whole after them, a taste curve last and apart")
RECORD: Final = practice("what is behind a finished wall is known by its record only")
CHECKLIST: Final = standard(
    "ANSI/INFOCOMM 10", "documentation, wiring, electrical and audio items", edition="2013", read=False,
    note="groups read in two checklists",
)  # fmt: skip


def at_handover(room: Room, _: object) -> Applies:
    """Whether the job is at its handover, as the file states."""
    project = room.design.project
    if project.stage is None:
        raise Missing(project, "stage")
    return True if project.stage == "handover" else No(f"the job is at {project.stage}")


def from_rough_in(room: Room, _: object) -> Applies:
    """Whether walls are being closed or are closed."""
    project = room.design.project
    if project.stage is None:
        raise Missing(project, "stage")
    return True if project.stage in {"rough-in", "handover"} else No(f"the job is at {project.stage}")


def absent(room: Room, key: str, *stages: str) -> Iterator[Missing]:
    """Yield what is missing where the file does not give a list: its key, at the stages that want it.

    Before them nothing: the subjects tell why by `early`.
    """
    project = room.design.project
    if project.stage is None:
        yield Missing(project, "stage")
    elif project.stage in stages:
        yield Missing(room.design, key)


def _early(wanted: Callable[[Room, object], Applies]) -> Callable[[Room], No | None]:
    """Return what tells why none is wanted yet: the stage, where the file states one."""

    def told(room: Room) -> No | None:
        answer = wanted(room, None) if room.design.project.stage is not None else True
        return answer if isinstance(answer, No) else None

    return told


def _calibrated(room: Room, key: str) -> bool:
    node = room.design.at.get("calibration")
    return node is not None and node.get(key) is not None


def every_step(room: Room) -> Iterator[Step | Missing]:
    """Yield the steps of the calibration; a file that does not list any may have some."""
    if not _calibrated(room, "steps"):
        yield from absent(room, "calibration.steps", "handover")
    yield from room.design.calibration.steps


def every_task(room: Room) -> Iterator[Step | Item | Missing]:
    """Yield the steps of the calibration and the items of the handover."""
    yield from every_step(room)
    if room.design.at.get("handover") is None:
        yield from absent(room, "handover", "handover")
    yield from room.design.handover


def every_preset(room: Room) -> Iterator[Preset | Missing]:
    """Yield the presets; a file that does not list any may have some."""
    if not _calibrated(room, "presets"):
        yield from absent(room, "calibration.presets", "handover")
    yield from room.design.calibration.presets


def every_mode(room: Room) -> Iterator[Mode | Missing]:
    """Yield the listening modes; a file that does not speak of any may have some."""
    if room.design.at.get("listening_modes") is None:
        yield from absent(room, "listening_modes", "handover")
    yield from room.design.modes


def every_cable(room: Room) -> Iterator[Cable | Missing]:
    """Yield the cables; a file that does not list any may have some."""
    if room.design.at.get("cables") is None:
        yield from absent(room, "cables", "rough-in", "handover")
    yield from room.design.cables


def every_circuit(room: Room) -> Iterator[Circuit | Missing]:
    """Yield the circuits; a file that does not speak of circuits may have some."""
    if room.design.at.get("circuits") is None:
        yield from absent(room, "circuits", "handover")
    yield from room.design.circuits


def every_processor(room: Room) -> Iterator[Processor | Missing]:
    """Yield the processor; a file that does not speak of one may have one."""
    processor = room.design.processor
    if processor is not None:
        yield processor
    else:
        yield from absent(room, "electronics.processor", "handover")


STEPS: Final[Subjects[Step]] = Subjects("step of the calibration", every_step, early=_early(at_handover))
TASKS: Final[Subjects[Step | Item]] = Subjects("step or item to hand over", every_task, early=_early(at_handover))
PRESETS: Final[Subjects[Preset]] = Subjects("preset", every_preset, early=_early(at_handover))
CABLES: Final[Subjects[Cable]] = Subjects("cable", every_cable, early=_early(from_rough_in))
CIRCUITS: Final[Subjects[Circuit]] = Subjects("circuit", every_circuit, early=_early(at_handover))
MODES: Final[Subjects[Mode]] = Subjects("listening mode", every_mode, early=_early(at_handover))
PROCESSORS: Final[Subjects[Processor]] = Subjects("processor", every_processor, early=_early(at_handover))
