"""Chapter mount: what holds every device, rack and panel up, in what, and who decides where no table does."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.listening import FREE, MASONRY, WOOD
from roomlint.review import No, Subjects, practice, standard

if TYPE_CHECKING:
    from roomlint.design.shell import Treatment
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Basis, Room

CAUTION: Final = (
    "Screening arithmetic only: the installer verifies the real framing, and the instructions of mount and fastener, "
    "a licensed engineer and the local code official decide."
)
NDS: Final = "National Design Specification for Wood Construction"
CAREFUL = practice("a cautious choice of this rule book")
WITHDRAWAL = standard(NDS, "12.2", edition="2015", read=False, note="table read in scan")


def en1995(clause: str, note: str) -> Basis:
    """Return the basis of a clause of EN 1995-1-1, for wood that is graded to a European class."""
    return standard("EN 1995-1-1", clause, edition="2004+A1:2008", read=False, note=note)


EN_WITHDRAWAL = en1995("8.7.2", "with EN 338 densities, gamma_M and kmod, in handbooks and public tables")

HELD: Subjects[Held] = Subjects(
    "device, rack or panel", lambda room: room.figures.mounts.held(),
    ("loudspeakers", "subwoofers", "picture", "electronics.racks", "treatments"),
)  # fmt: skip
PANELS: Subjects[Treatment] = Subjects("acoustic panel", lambda room: room.figures.mounts.panels(), ("treatments",))

CAUSES: Final = ("mount.wall-kind", "mount.substrate", "mount.fastener-kind", "mount.fastener-base")
"""A fastener that cannot hold there at all: what it would hold is not worth a second finding."""
SEATED: Final = (*CAUSES, "mount.end-grain", "mount.thread-in-wood")
REMEDIES: Final = ("mounting.fixing.length", "mounting.fixing.thread", "mounting.fixing.row_spacing")
"""What an installer can choose anew without another mount."""
ELSEWHERE: Final = ("layout.on-surface",)
"""Where a thing is not at the surface that is said to hold it, it is not known what holds it."""
UNCOVERED: Final = frozenset({"furring", "hat-channel", "brick-veneer"})
"""What may carry or not: no table here knows."""
_BASES = {"stud": "studs", "joist": "joists", "beam": "a beam", "steel-stud": "steel studs", "grid": "a ceiling grid"}
_OVERHEAD = {"ceiling": "the ceiling", "grid-ceiling": "a ceiling grid", "electrical-box": "an electrical box"}
_PLAIN = {"floor": "the floor", "stand": "a stand", "furniture": "furniture"}


def plain(word: str) -> str:
    """Return a word of a file as a sentence holds it."""
    return word.replace("-", " ")


def holder(on: str) -> str:
    """Return what a mount is on as a sentence holds it."""
    if on in _PLAIN:
        return _PLAIN[on]
    if on in _OVERHEAD:
        return _OVERHEAD[on]
    return f"the {on}" if on.endswith("wall") else f"the {on} wall"


def base_of(into: str) -> str:
    """Return what fasteners go into as a sentence holds it."""
    return _BASES.get(into, plain(into))


def fixed(room: Room, thing: Held) -> Applies:
    """Whether it hangs on a wall or the ceiling by fasteners."""
    on = room.figures.mounts.on(thing)
    if on in FREE:
        return No(f"it stands on {_PLAIN[on]}", unless=ELSEWHERE)
    if on == "grid-ceiling":
        return No("it lies in a ceiling grid")
    return No("an electrical box holds it") if on == "electrical-box" else True


def on_wall(room: Room, thing: Held) -> Applies:
    """Whether it hangs on a wall."""
    return No("it hangs from the ceiling", unless=ELSEWHERE) if room.figures.mounts.on(thing) == "ceiling" else True


def on_ceiling(room: Room, thing: Held) -> Applies:
    """Whether it hangs from the ceiling."""
    return True if room.figures.mounts.on(thing) == "ceiling" else No("it hangs on a wall", unless=ELSEWHERE)


def hangs_overhead(room: Room, thing: Held) -> Applies:
    """Whether it hangs over people's heads."""
    if room.figures.hanging.overhead(thing):
        return True
    on = room.figures.mounts.on(thing)
    return No(f"it stands on {_PLAIN[on]}" if on in FREE else "it hangs on a wall", unless=ELSEWHERE)


def in_wood(room: Room, thing: Held) -> Applies:
    """Whether its fasteners go into wood."""
    into = room.figures.mounts.into(thing)
    return True if into in WOOD else No(f"its fasteners go into {base_of(into)}")


def in_steel(room: Room, thing: Held) -> Applies:
    """Whether its fasteners go into steel studs."""
    into = room.figures.mounts.into(thing)
    return True if into == "steel-stud" else No(f"its fasteners go into {base_of(into)}")


def in_masonry(room: Room, thing: Held) -> Applies:
    """Whether its fasteners go into masonry or concrete."""
    into = room.figures.mounts.into(thing)
    return True if into in MASONRY else No(f"its fasteners go into {base_of(into)}")


def screwed(room: Room, thing: Held) -> Applies:
    """Whether it is held by lag or wood screws."""
    fastener = room.figures.mounts.fastener(thing)
    return True if room.figures.mounts.is_screw(thing) else No(f"a {plain(fastener)} is not judged by its thread here")


def own_mount(room: Room, thing: Held) -> Applies:
    """Whether it has a mount of its own, or should have."""
    mounts = room.figures.mounts
    on = mounts.on(thing)
    if on in FREE:
        return No(f"it stands on {_PLAIN[on]}")
    without = mounts.built_without(thing)
    return No(without) if without and not mounts.has_own_mount(thing) else True
