"""What the fasteners go into: whether wall, fastener and base belong together."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.design.shell import Treatment
from roomlint.review import Level, No, asks, at_least, fails, found, passes, practice, rule, standard

from . import CAREFUL, CAUSES, CAUTION, HELD, NDS, UNCOVERED, base_of, en1995, fixed, holder, in_wood, plain

if TYPE_CHECKING:
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Found, Room, Says

LIGHT_KG: Final = 2.3
"""5 lb: what a flat panel may weigh to be stuck on a wall."""
LININGS: Final = frozenset({"board", "plaster", "tile", "glass", "grid"})
NEVER: Final = frozenset({"nail", "drywall-screw", "adhesive"})
_TIMBER: Final = frozenset({"blocking", "beam", "plywood-backing", "furring", "hat-channel"})
_ANCHORS: Final = frozenset({"expansion-anchor", "concrete-screw", "adhesive-anchor", "through-bolt"})
_SCREWS: Final = frozenset({"lag-screw", "wood-screw", "structural-screw", "through-bolt"})
_LINED: Final = frozenset({"furring", "hat-channel", "blocking", "beam", "plywood-backing"})
HAS: Final = {
    "wood-stud": _TIMBER | {"stud"},
    "steel-stud": frozenset({"steel-stud", "blocking", "plywood-backing", "hat-channel"}),
    "joist": _TIMBER | {"joist"},
    "truss": _TIMBER | {"stud", "joist"},
    "engineered": _TIMBER | {"stud", "joist"},
    "masonry": _LINED | {"masonry"},
    "hollow-block": _LINED | {"hollow-block"},
    "concrete": _LINED | {"concrete"},
    "furring": _LINED,
    "hat-channel": _LINED,
    "brick-veneer": frozenset({"brick-veneer"}),
}
"""What there is to fasten into behind a surface of each kind; every one has its lining besides."""
BELONGS: Final = {
    **dict.fromkeys(("stud", "joist", "blocking", "beam"), _SCREWS),
    "plywood-backing": _SCREWS | {"toggle"},
    "steel-stud": frozenset({"steel-screw", "toggle", "through-bolt"}),
    "concrete": _ANCHORS,
    "masonry": _ANCHORS,
    "brick-veneer": _ANCHORS,
    "hollow-block": _ANCHORS | {"toggle"},
    "furring": _SCREWS,
    "hat-channel": frozenset({"steel-screw", "toggle"}),
    "board": frozenset({"toggle", "expansion-anchor", "clamp", "adhesive"}),
    "plaster": frozenset({"toggle", "clamp"}),
}
"""Which fasteners are made for which base; no fastener is for glass, tile or a ceiling grid."""


def bears_on_board(room: Room, thing: Held) -> bool:
    """Whether it is meant to be held by the board: a light panel on a wall, or a flush loudspeaker by its clamps."""
    mounts = room.figures.mounts
    if isinstance(thing, Treatment):
        return mounts.on(thing) != "ceiling" and mounts.into(thing) == "board"
    return mounts.flush(thing) and mounts.fastener(thing) == "clamp" and mounts.into(thing) in {"board", "plaster"}


def no_own_board(room: Room, thing: Held) -> Applies:
    """Whether the base must be framing."""
    return No("the board is meant to hold it, judged by its mass") if bears_on_board(room, thing) else True


@rule(
    "mount.wall-kind",
    level=Level.ERROR,
    basis=practice("a fastener holds in what is really behind the board; a file that names two things is wrong in one"),
    each=HELD,
    when=fixed,
    says={
        "differs": "is fastened into {into}, but {wall} is {kind}; one of the two is wrong",
        "wall": "is fastened into joists, but it hangs on {wall}; one of the two is wrong",
        "overhead": "is fastened into studs, but {wall} is overhead, where joists carry; one of the two is wrong",
        "agrees": "{wall} has {into}",
        "unknown": "nobody knows what is behind {wall}: prove it before drilling",
    },
    at="mounting.fixing.into",
    caution=CAUTION + " Prove what is behind the board before drilling.",
    since="0.2.0",
)
def wall_kind(room: Room, thing: Held) -> Says:
    """What the fasteners go into is what the wall or ceiling is made of.

    Why: A screw drawn for a wood stud holds a fraction in sheet steel and nothing in block.

    How decided: The fixing's base against the framing of the surface it is on. Either of them can be the wrong one, so
    that both places are told and nothing else about the fixing is judged until they agree. Joists are overhead and
    studs in walls. Lining, blocking and beams can be anywhere.

    Remedy: Find out what is behind the board, and correct the one that is wrong.

    When to waive: Never; correct the file.
    """
    mounts = room.figures.mounts
    into, surface = mounts.into(thing), mounts.surface(thing)
    above, wall = mounts.on(thing) == "ceiling", holder(mounts.on(thing))
    if into == ("stud" if above else "joist"):
        return fails("overhead" if above else "wall", related=(surface.framing,), wall=wall)
    kind = need(surface.framing.kind, surface, "framing.kind")
    if kind == "unknown":
        return asks("unknown", wall=wall)
    if into in LININGS or into in HAS[kind]:
        return passes("agrees", wall=wall, into=base_of(into))
    related = (surface.framing,)
    return fails("differs", related=related, into=base_of(into), wall=wall, kind=plain(kind))


@rule(
    "mount.substrate",
    level=Level.ERROR,
    basis=(practice("nothing but framing or structure carries equipment"), CAREFUL),
    each=HELD,
    when=(fixed, no_own_board),
    says={
        "lining": "its fasteners hold in {into} only; move to a stud or joist or add blocking behind",
        "uncovered": "its fasteners hold in {into}, which no table here covers; an engineer decides",
        "structure": "its fasteners hold in {into}",
    },
    after=("mount.wall-kind",),
    at="mounting.fixing.into",
    caution=CAUTION + " Board has no equipment capacity.",
    since="0.1.0",
)
def substrate(room: Room, thing: Held) -> Says:
    """Fasteners of what hangs go into framing or structure, not into a lining.

    Why: Linings crush, crack and pull out slowly; what looks firm on the day falls later.

    How decided: Board, plaster, tile, glass and ceiling grid fail; furring, hat channel and brick veneer go to an
    engineer, since nobody here knows what holds them; wood, steel studs, masonry and concrete pass here and are judged
    by other rules. Light panels on a wall and flush loudspeakers on their clamps are judged by mount.board-load. What
    `mount.panel-overhead` asked of panels is asked here and by mount.fastener-kind.

    Remedy: Move to a stud or joist, or put blocking behind the board.

    When to waive: Never for equipment.
    """
    into = room.figures.mounts.into(thing)
    if into in LININGS:
        return fails("lining", into=base_of(into))
    return asks("uncovered", into=base_of(into)) if into in UNCOVERED else passes("structure", into=base_of(into))


@rule(
    "mount.fastener-kind",
    level=Level.ERROR,
    basis=(practice("no nail, drywall screw or adhesive carries equipment"), CAREFUL),
    each=HELD,
    when=fixed,
    says={
        "never": "no {fastener} may hold it; use screws or bolts in framing",
        "light": "a light panel stuck on the wall",
        "good": "hangs on {fastener}",
    },
    at="mounting.fixing.fastener",
    caution=CAUTION,
    since="0.1.0",
)
def fastener_kind(room: Room, thing: Held) -> Says:
    """Nothing hangs on nails, drywall screws or adhesive.

    Why: Nails creep out under steady pull, drywall screws are brittle, adhesive peels off paint and paper.

    How decided: The fastener is none of these. A flat panel of at most 2.3 kg (5 lb) on a wall may be stuck on;
    overhead nothing may.

    Remedy: Lag screws in framing, through-bolts, or the anchor that the mount's instructions name.

    When to waive: Never; nothing makes such a fixing lasting.
    """
    mounts = room.figures.mounts
    fastener = mounts.fastener(thing)
    if fastener not in NEVER:
        return passes("good", fastener=plain(fastener))
    stuck = fastener == "adhesive" and isinstance(thing, Treatment) and mounts.on(thing) != "ceiling"
    if stuck and mounts.edge_case_mass(thing) <= LIGHT_KG:
        return passes("light")
    return fails("never", fastener=plain(fastener))


def known_base(room: Room, thing: Held) -> Applies:
    """Whether its base is one that a fastener can be made for."""
    into = room.figures.mounts.into(thing)
    return True if into in BELONGS else No(f"no fastener is made for {base_of(into)}")


@rule(
    "mount.fastener-base",
    level=Level.ERROR,
    basis=practice("each fastener is made for its base: threads for wood, toggles for cavities, anchors for masonry"),
    each=HELD,
    when=(fixed, known_base),
    says={"foreign": "a {fastener} does not hold in {into}; use {proper}", "good": "a {fastener} in {into}"},
    after=("mount.wall-kind", "mount.substrate", "mount.fastener-kind"),
    at="mounting.fixing.fastener",
    caution=CAUTION,
    since="0.2.0",
)
def fastener_base(room: Room, thing: Held) -> Says:
    """Each fastener is made for what it goes into.

    Why: A toggle finds no cavity in a stud, an expansion anchor splits it, a lag strips sheet steel at once.

    How decided: Lag, wood and structural screws and bolts for wood; self-drilling screws, toggles and bolts for steel
    studs; anchors, concrete screws and bolts for masonry and concrete. What else would be computed waits for it.

    Remedy: The fastener that the mount's instructions name for that base.

    When to waive: When the fastener's own approval names that base.
    """
    mounts = room.figures.mounts
    fastener, into = mounts.fastener(thing), mounts.into(thing)
    if fastener in BELONGS[into]:
        return passes("good", fastener=plain(fastener), into=base_of(into))
    proper = " or ".join(sorted(plain(one) for one in BELONGS[into] if one != "adhesive")[:3])
    return fails("foreign", fastener=plain(fastener), into=base_of(into), proper=proper)


def sized(room: Room, thing: Held) -> Applies:
    """Whether the wood standard has a least size for its fastener."""
    mounts = room.figures.mounts
    return (
        True
        if mounts.has_least_size(thing)
        else No(f"its own document says which {plain(mounts.fastener(thing))} is thick enough")
    )


@rule(
    "mount.fastener-size",
    level=Level.ERROR,
    basis=(
        standard(NDS, "Table 12.2A", edition="2015", read=False, note="lag screws from 1/4 in"),
        en1995("8.7.2(4)", "6 to 12 mm, from memory"),
        practice("bolts no thinner than that, wood screws no thinner than number 6, a choice of this rule book"),
    ),
    each=HELD,
    when=(fixed, in_wood, sized),
    window=at_least(1.0, ""),
    says="its {fastener} is {figure} times as thick as the least with a published value; {window} wanted",
    after=CAUSES,
    cure=("mounting.fixing.diameter",),
    at="mounting.fixing.diameter",
    caution=CAUTION,
    since="0.2.0",
)  # fmt: skip
def fastener_size(room: Room, thing: Held) -> Found:
    """Fasteners in wood are thick enough for the wood standard to have a value for them.

    Why: A thin bolt bends and cuts along the grain long before anybody would expect.

    How decided: Nominal diameter over the least one: 6.35 mm (1/4 in) of lag screws and bolts, 3.51 mm (number 6) of
    wood screws; 6 mm of lag screws and bolts in wood that EN 1995-1-1 judges.

    Remedy: The fastener that the mount's instructions name.

    When to waive: When the fastener's evaluation report is given for it.
    """
    mounts = room.figures.mounts
    return found(mounts.size_ratio(thing), fastener=plain(mounts.fastener(thing)))


@rule(
    "mount.end-grain",
    level=Level.ERROR,
    basis=(
        standard(NDS, "12.5.2", edition="2015", read=False),
        en1995("8.7.2", "no pull for good at less than 30 degrees to the grain, in a textbook's page"),
    ),
    each=HELD,
    when=(fixed, in_wood),
    says={"pulled": "its {fastener} would be pulled out of end grain; enter the side of the member",
          "good": "its {fastener} is in {grain} grain"},
    after=CAUSES,
    at="mounting.fixing.grain",
    caution=CAUTION,
    since="0.1.0",
)  # fmt: skip
def end_grain(room: Room, thing: Held) -> Says:
    """No wood screw is pulled out of end grain.

    Why: Thread in end grain shears the fibres off along their length.

    How decided: Wood screws in end grain fail; a lag screw keeps 0.75 of its value, which the withdrawal rule counts,
    but fails too in wood that EN 1995-1-1 judges; side grain passes.

    Remedy: Turn the joint so that the screw enters the side of the member, or use a through-bolt.

    When to waive: Never for a pulled screw.
    """
    mounts = room.figures.mounts
    fixing, fastener = mounts.fixing(thing), mounts.fastener(thing)
    grain = need(fixing.grain, fixing, "grain")
    screw = fastener == "wood-screw" or (fastener == "lag-screw" and mounts.by_eurocode(thing))
    pulled = grain == "end" and screw
    said = fails if pulled else passes
    return said("pulled" if pulled else "good", fastener=plain(fastener), grain=grain)
