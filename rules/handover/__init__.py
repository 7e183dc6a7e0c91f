"""Chapter handover: how the room was set up, what is entered and stored, and what the site and the client are left."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Missing, No, Subjects, practice, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.record import Item, Preset, Step
    from roomlint.design.supply import Cable, Circuit
    from roomlint.review import Applies, Room

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


def every_step(room: Room) -> Iterator[Step | Missing]:
    """Yield the steps of the calibration; a file that does not list any may have some."""
    node = room.design.at.get("calibration")
    if not room.design.calibration.steps and (node is None or node.get("steps") is None):
        yield Missing(room.design, "calibration.steps")
    yield from room.design.calibration.steps


def every_task(room: Room) -> Iterator[Step | Item | Missing]:
    """Yield the steps of the calibration and the items of the handover."""
    yield from every_step(room)
    if not room.design.handover and room.design.at.get("handover") is None:
        yield Missing(room.design, "handover")
    yield from room.design.handover


def every_preset(room: Room) -> Iterator[Preset | Missing]:
    """Yield the presets; a file that does not list any may have some."""
    node = room.design.at.get("calibration")
    if not room.design.calibration.presets and (node is None or node.get("presets") is None):
        yield Missing(room.design, "calibration.presets")
    yield from room.design.calibration.presets


def every_cable(room: Room) -> Iterator[Cable | Missing]:
    """Yield the cables; a file that does not list any may have some."""
    if not room.design.cables and room.design.at.get("cables") is None:
        yield Missing(room.design, "cables")
    yield from room.design.cables


def every_circuit(room: Room) -> Iterator[Circuit | Missing]:
    """Yield the circuits; a file that does not speak of circuits may have some."""
    if not room.design.circuits and room.design.at.get("circuits") is None:
        yield Missing(room.design, "circuits")
    yield from room.design.circuits


STEPS: Final[Subjects[Step]] = Subjects("step of the calibration", every_step)
TASKS: Final[Subjects[Step | Item]] = Subjects("step or item to hand over", every_task)
PRESETS: Final[Subjects[Preset]] = Subjects("preset", every_preset)
CABLES: Final[Subjects[Cable]] = Subjects("cable", every_cable)
CIRCUITS: Final[Subjects[Circuit]] = Subjects("circuit", every_circuit)
