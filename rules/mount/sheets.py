"""What a room file says of a mount against the mount's own sheet: where the two differ, one of them is wrong."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Level, No, at_most, fails, need, passes, practice, rule

from . import CAUTION, HELD, fixed, own_mount

if TYPE_CHECKING:
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Figure, Room, Says

SHEET: Final = practice("a mount has the holes and the reach that its maker gave it; a room file changes neither")
ROUNDED: Final = practice("up to 1 mm is rounding between units, a choice of this rule book")
SAME: Final = at_most(1.0, "mm")


def counted(room: Room, thing: Held) -> Applies:
    """Whether the room file counts its fasteners."""
    fixing = room.figures.mounts.fixing(thing)
    stated = fixing.count is not None or fixing.top_count is not None
    return True if stated else No("its fixing counts no fasteners beside the mount's sheet")


@rule(
    "mount.sheet-fasteners",
    level=Level.ERROR,
    basis=SHEET,
    each=HELD,
    when=(fixed, own_mount, counted),
    says={
        "more": "is given {given} fasteners; its mount's sheet has {sheet}",
        "fewer": "its mount's sheet wants {sheet} fasteners; {given} given",
        "more-on-top": "is given {given} fasteners in the top row; its mount's sheet has {sheet} there",
        "fewer-on-top": "its mount's sheet wants {sheet} fasteners in the top row; {given} given",
        "same": "has the fasteners of its mount's sheet",
    },
    at="mounting.fixing",
    caution=CAUTION,
    since="0.2.0",
)
def sheet_fasteners(room: Room, thing: Held) -> Says:
    """A mount is fastened by as many fasteners as its sheet has, in all and in the top row.

    Why: More fasteners than the plate has holes exist on paper only, and a hole left empty leaves its share of the
    pull to the others.

    How decided: Count and top row of the fixing against those of the mount's sheet. Where they differ, every other
    rule counts the fewer of the two. A fixing that counts nothing is not judged here.

    Remedy: A fastener in framing for every hole that the mount's instructions name; correct whichever of fixing and
    sheet is wrong.

    When to waive: Fewer, when the mount's instructions allow it for this wall and this mass.
    """
    mounts = room.figures.mounts
    fixing, mount = mounts.fixing(thing), mounts.mount(thing)
    rows = (("", fixing.count, mount.fasteners), ("-on-top", fixing.top_count, mount.top_fasteners))
    for where, given, sheet in rows:
        if given is not None and sheet is not None and given != sheet:
            return fails(("more" if given > sheet else "fewer") + where, given=given, sheet=sheet)
    if fixing.count is not None:
        need(mount.fasteners, mount, "fasteners")
    if fixing.top_count is not None:
        need(mount.top_fasteners, mount, "top_fasteners")
    return passes("same")


def rows_stated(room: Room, thing: Held) -> Applies:
    """Whether the room file states the distance of its fastener rows."""
    stated = room.figures.mounts.fixing(thing).row_spacing_m is not None
    return True if stated else No("its fixing states no row spacing beside the mount's sheet")


@rule(
    "mount.sheet-rows",
    level=Level.ERROR,
    basis=(SHEET, ROUNDED),
    each=HELD,
    when=(fixed, own_mount, rows_stated),
    window=SAME,
    says="is given fastener rows {figure} farther apart than its mount's sheet has them",
    at="mounting.fixing.row_spacing",
    caution=CAUTION,
    since="0.2.0",
)
def sheet_rows(room: Room, thing: Held) -> Figure:
    """The fastener rows of a mount are no farther apart than on its sheet.

    Why: The pull on the top row falls as the rows are drawn apart, but the holes of the plate stay where they are.

    How decided: Row spacing of the fixing less that of the mount's sheet, at most 1 mm. Where the two differ, every
    other rule takes the smaller. A fixing that states none is not judged here.

    Remedy: Leave the row spacing to the mount's sheet, or correct the one that is wrong.

    When to waive: Never; correct the file.
    """
    return room.figures.mounts.rows_beyond_sheet(thing)


def reach_stated(room: Room, thing: Held) -> Applies:
    """Whether the room file states the reach in use."""
    stated = room.figures.mounts.mounting(thing).extension_m is not None
    return True if stated else No("its mounting states no reach beside the mount's sheet")


@rule(
    "mount.sheet-reach",
    level=Level.ERROR,
    basis=(SHEET, ROUNDED),
    each=HELD,
    when=(fixed, own_mount, reach_stated),
    window=SAME,
    says="is drawn {figure} farther out than its mount's sheet lets it reach",
    at="mounting.extension",
    caution=CAUTION,
    since="0.2.0",
)
def sheet_reach(room: Room, thing: Held) -> Figure:
    """A mount is drawn no farther out than its sheet lets it reach.

    Why: What stands farther out hangs on another mount or on an extension that nobody rated, with a longer lever.

    How decided: Reach in use less the largest reach of the mount's sheet, at most 1 mm. Where the two differ, every
    other rule takes the larger. A mounting that states none is not judged here.

    Remedy: A mount that reaches as far, or correct whichever of mounting and sheet is wrong.

    When to waive: Never; correct the file.
    """
    return room.figures.mounts.reach_beyond_sheet(thing)
