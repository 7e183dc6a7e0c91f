"""Records of the site and documents that are left behind."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.listening import FREE
from roomlint.review import ROOM, Level, Missing, No, Subjects, fails, memory, need, passes, practice, rule

from . import CABLES, CHECKLIST, CIRCUITS, PROCESSORS, RECORD, at_handover, from_rough_in

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.design.supply import Cable, Circuit, Processor
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Room, Says

HELD: Subjects[Held] = Subjects("device, rack or panel", lambda room: room.figures.mounts.held())
_STANDS: Final = FREE | {"grid-ceiling", "electrical-box"}


def _fastened(room: Room, thing: Held) -> Applies:
    on = room.figures.mounts.on(thing)
    if on in _STANDS:
        return No("no fastener of its own holds it to the building")
    wanted = room.figures.commissioning.wanted_records(thing)
    return True if wanted else No("such a fixing asks for no record")


def _concealed(_: Room, cable: Cable) -> Applies:
    return True if need(cable.in_wall, cable, "in_wall") else No("it runs in the open")


@rule(
    "handover.fixing-record",
    level=Level.WARNING,
    basis=RECORD,
    each=HELD,
    when=(at_handover, _fastened),
    says={
        "short": "has no record of {lacks}",
        "order": "has its {first} on record of {on}, after its {later} of {later_on}",
        "whole": "has its fixing on record",
    },
    at="mounting.fixing",
    since="0.3.0",
)
def fixing_record(room: Room, thing: Held) -> Says:
    """Every fixing has its record: the stud proved, the pilot hole, the torque.

    Why: Whether a screw found the stud is seen once, while it is driven; afterwards only a record tells.

    How decided: In studs, joists and other framing the framing is proved; lag and wood screws have a pilot hole; lag
    screws, bolts, structural screws and anchors a torque. Each is a handover item of that kind that names the thing,
    and their days are in that order: what is recorded after the screw was driven was not seen.

    Remedy: Prove it again, and write down who did and when.

    When to waive: The installer's own form has it, and is named as its document.
    """
    lacks = room.figures.commissioning.unrecorded(thing)
    if lacks:
        return fails("short", lacks=lacks)
    late = room.figures.commissioning.out_of_order(thing)
    if late is None:
        return passes("whole")
    (first, on), (later, later_on) = late
    return fails("order", first=first, on=on.isoformat(), later=later, later_on=later_on.isoformat())


@rule(
    "handover.photo-before-closing",
    level=Level.WARNING,
    basis=RECORD,
    each=CABLES,
    when=(from_rough_in, _concealed),
    says={
        "none": "no photograph shows its run before the wall was closed",
        "late": "its photograph is of {on}, and {closed} of {closed_on}, when the wall was closed",
        "shown": "a photograph shows its run",
    },
    at="in_wall",
    since="0.3.0",
)
def photo_before_closing(room: Room, cable: Cable) -> Says:
    """A photograph shows every concealed cable before its wall is closed.

    Why: Who drills there next has nothing else to go by.

    How decided: A handover item of that kind that names the cable. At rough-in the wall may still be open, so that
    nothing is wrong yet and the photograph is asked for; at handover it is too late. A photograph that is younger than
    the first step of the calibration, or than the first stud that was proved through the board, shows a closed wall.

    Remedy: Take it while the wall is open; later, trace the run and draw it.

    When to waive: A run in a raceway that the drawings show.
    """
    commissioning = room.figures.commissioning
    photograph = commissioning.record("photo-before-closing", cable)
    if photograph is not None:
        day = need(photograph.on, photograph, "on")
        closed = commissioning.closed_before(day)
        if closed is not None:
            closed_on = need(closed.on, closed, "on").isoformat()
            return fails("late", on=day.isoformat(), closed=closed.words, closed_on=closed_on)
        return passes("shown")
    if room.design.project.stage == "rough-in":
        raise Missing(room.design, "handover")
    return fails("none")


@rule(
    "handover.circuit-tests",
    level=Level.WARNING,
    basis=(
        practice("each new circuit is tested by whoever made it, and the day of each test is kept"),
        memory("insulation and residual-current devices are tested and recorded", document="IEC 60364-6"),
    ),
    each=CIRCUITS,
    when=at_handover,
    says={
        "short": "has no record of {lacks}",
        "whole": "has its tests on record",
    },
    since="0.3.0",
)
def circuit_tests(room: Room, circuit: Circuit) -> Says:
    """Every circuit has the days of its insulation test and of the test of its residual-current device on record.

    Why: A device that was never tripped is a promise, and a nick in a cable shows in the insulation test or in a fire.

    How decided: A handover item for each test that names the circuit, done, with its day; the second where the circuit
    has a residual-current or ground-fault device. What is tested, and how, the local code and a licensed electrician
    decide.

    Remedy: Have the electrician test it and leave the sheet.

    When to waive: The electrician's own certificate covers it, and is named as its document.
    """
    commissioning, lacks = room.figures.commissioning, []
    for kind in commissioning.tests_of(circuit):
        record = commissioning.record(kind, circuit)
        if record is None:
            lacks.append(kind.replace("-", " "))
        else:
            need(record.on, record, "on")
    return fails("short", lacks=tuple(lacks)) if lacks else passes("whole")


@rule(
    "handover.documents",
    level=Level.WARNING,
    basis=CHECKLIST,
    each=ROOM,
    when=at_handover,
    says={
        "short": "is handed over without {lacks}",
        "stale": "is handed over with {kind} of {on}, and {step} was done on {step_on}",
        "whole": "is handed over with its documents",
    },
    at="handover",
    since="0.3.0",
)
def documents(room: Room, _design: Design) -> Says:
    """Drawings as built, an export of the settings, the measured responses and instructions are left behind.

    Why: The next who works here starts from these, or from the beginning.

    How decided: Handover items of these kinds that are done; the export of the settings no older than the last step
    that set something, the responses no older than the last one that they should show.

    Remedy: Export, print, and leave them in the room and in the project's folder.

    When to waive: A room that the same team keeps under contract.
    """
    commissioning = room.figures.commissioning
    lacks = commissioning.lacking_documents()
    if lacks:
        return fails("short", lacks=lacks)
    for kind, but in (("settings", {"wiring", "verification"}), ("responses", {"wiring", "verification", "taste"})):
        steps = tuple(step for step in commissioning.steps() if step.kind not in but)
        stale = commissioning.stale(kind, steps)
        if stale is not None:
            item, step = stale
            on, later = (one.on.isoformat() if one.on is not None else "" for one in stale)
            return fails("stale", kind=item.kind or "", on=on, step=step.words, step_on=later)
    return passes("whole")


@rule(
    "handover.versions",
    level=Level.WARNING,
    basis=practice("versions are brought up to date and recorded before settings, for an update can erase them"),
    each=PROCESSORS,
    when=at_handover,
    says={
        "none": "the version of its firmware is on no record",
        "late": "its firmware was recorded on {on}, after {step} was set on {set_on}",
        "first": "its firmware was recorded before anything was set",
    },
    since="0.3.0",
)
def versions(room: Room, processor: Processor) -> Says:
    """The processor's firmware is on record, from before it was set.

    Why: An update can erase or change what was set; who does not know the version cannot tell whether it did.

    How decided: A handover item of that kind that names the processor, with the version and its day, against the day of
    the first step of the calibration but the wiring.

    Remedy: Write the version down, and check the settings if it came after them.

    When to waive: The maker says that the update keeps the settings, and a measurement shows it.
    """
    commissioning = room.figures.commissioning
    record = commissioning.record("versions", processor)
    if record is None:
        return fails("none")
    need(record.version, record, "version")
    day = need(record.on, record, "on")
    first = commissioning.set_before(day)
    if first is not None:
        set_on = need(first.on, first, "on").isoformat()
        return fails("late", on=day.isoformat(), step=first.words, set_on=set_on)
    return passes("first")
