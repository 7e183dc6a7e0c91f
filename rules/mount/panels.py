"""Acoustic panels as linings that burn, and holes for flush loudspeakers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import need
from roomlint.design.proofs import stated
from roomlint.review import Level, No, Subjects, asks, at_most, fails, passes, rule, standard

from . import CAUTION, HELD, PANELS

if TYPE_CHECKING:
    from roomlint.design.shell import Obstacle, Treatment
    from roomlint.measure.holding import Held
    from roomlint.review import Applies, Figure, Room, Says

SOFFITS: Subjects[Obstacle] = Subjects(
    "soffit", lambda room: (one for one in room.design.shell.obstacles if one.kind == "soffit"), ("room.obstacles",)
)
FIRE = "The building official and the fire code decide; test reports come from the maker."


@rule(
    "mount.panel-flame-spread",
    level=Level.ERROR,
    basis=standard("International Residential Code", "R302.9", read=False),
    each=PANELS,
    window=at_most(200.0, ""),
    says="its flame-spread index is {figure}; {window} wanted",
    at="flame_spread",
    caution=FIRE,
    since="0.1.0",
)
def panel_flame_spread(room: Room, panel: Treatment) -> Figure:
    """A panel's flame-spread index is at most 200.

    Why: A lined room burns over its linings first, and people sit in the dark beside them.

    How decided: The index of the tested panel, by ASTM E84; the residential code allows 200. European classes do not
    convert into it.

    Remedy: A panel with a test report, or another core and fabric.

    When to waive: Where another code is adopted and its class is documented.
    """
    return room.figures.panels.flame_spread(panel)


@rule(
    "mount.panel-smoke",
    level=Level.ERROR,
    basis=standard("International Residential Code", "R302.9", read=False),
    each=PANELS,
    window=at_most(450.0, ""),
    says="its smoke-developed index is {figure}; {window} wanted",
    at="smoke_developed",
    caution=FIRE,
    since="0.1.0",
)
def panel_smoke(room: Room, panel: Treatment) -> Figure:
    """A panel's smoke-developed index is at most 450.

    Why: Smoke hides the way out before heat does any harm.

    How decided: The index of the tested panel, by ASTM E84; the residential code allows 450.

    Remedy: A panel with a test report, or another core and fabric.

    When to waive: Where another code is adopted and its class is documented.
    """
    return room.figures.panels.smoke(panel)


def foam(_room: Room, panel: Treatment) -> Applies:
    """Whether it is made of foam."""
    material = need(panel.material, panel, "material")
    return True if material == "open-cell-foam" else No(f"it is made of {material.replace('-', ' ')}")


@rule(
    "mount.foam-barrier",
    level=Level.ERROR,
    basis=standard("International Residential Code", "R316", read=False, note="approval route from memory"),
    each=PANELS,
    when=foam,
    says={
        "bare": "is exposed foam without a thermal barrier or an approval; use mineral wool or polyester",
        "approved": "foam approved by {document}",
        "behind": "lies behind a thermal barrier",
    },
    at="material",
    caution=FIRE + " A good flame-spread class alone does not make exposed foam acceptable.",
    since="0.1.0",
)
def foam_barrier(_room: Room, panel: Treatment) -> Says:
    """Acoustic foam lies behind a thermal barrier or has a specific approval.

    Why: Foam plastic burns fast and hot, whatever class its small sample reached.

    How decided: Open-cell foam needs thermal_barrier: true, or the document of its approval by a large-scale test; the
    word none is a statement that there is no approval.

    Remedy: Mineral wool or polyester instead of foam; or the foam's own approval document.

    When to waive: When the official accepted the material in writing.
    """
    approval = stated(panel.approval)
    if approval is not None:
        return passes("approved", document=approval.words)
    return passes("behind") if need(panel.thermal_barrier, panel, "thermal_barrier") else fails("bare")


def flush(room: Room, thing: Held) -> Applies:
    """Whether it sits in the board itself."""
    mounts = room.figures.mounts
    if mounts.recessed(thing):
        return True
    return No("it is not recessed into the surface")


@rule(
    "mount.rated-surface",
    level=Level.WARNING,
    basis=standard("NFPA 70", "640.25 and 300.22(C)", edition="2020", read=False),
    each=HELD,
    when=flush,
    says={
        "rated": "flush in a {what}: is it listed for that, or in an enclosure that keeps the rating?",
        "plain": "the surface is neither rated nor a plenum",
    },
    at="mounting.on",
    caution=CAUTION + " Nobody cuts a rated membrane without the official's word.",
    since="0.1.0",
)
def rated_surface(room: Room, thing: Held) -> Says:
    """No hole for a flush loudspeaker breaks a fire-rated surface or a plenum.

    Why: A cut-out undoes the rating of the whole membrane unless the enclosure restores it.

    How decided: Flush in a surface that is rated or a plenum goes to a person: the loudspeaker is listed for it or sits
    in an enclosure that keeps the rating. A frame or bracket behind the board changes nothing about the hole.

    Remedy: A listed enclosure, or a surface loudspeaker.

    When to waive: When the enclosure's listing is on file.
    """
    surface = room.figures.mounts.surface(thing)
    rated, plenum = need(surface.fire_rated, surface, "fire_rated"), need(surface.plenum, surface, "plenum")
    if rated or plenum:
        return asks("rated", what="fire-rated surface" if rated else "plenum")
    return passes("plain")


@rule(
    "mount.fire-blocking",
    level=Level.WARNING,
    basis=standard("IRC", "R302.11", edition="2012", read=True, note="in a state's copy"),
    each=SOFFITS,
    says={
        "open": "is hollow, and nothing inside it keeps fire from running along it",
        "blocked": "is closed off inside",
        "none": "has no hollow",
    },
    at="fire_blocking",
    caution=FIRE,
    since="0.3.0",
)
def fire_blocking(_: Room, obstacle: Obstacle) -> Says:
    """The hollow of a soffit is closed off against fire.

    Why: A soffit or a cove of wood is a flue from wall to wall, above people who look the other way.

    How decided: What the file says of each soffit: closed off where it meets walls and ceiling and at least every 3.05
    m (10 ft) along it, open, or no hollow at all. Furred walls, double studs and stages have hollows of the same kind,
    which are for the builder.

    Remedy: Blocking of wood, board or mineral wool before the board goes up, and a photograph.

    When to waive: The building official accepts it, in writing.
    """
    word = need(obstacle.fire_blocking, obstacle, "fire_blocking")
    return fails("open") if word == "open" else passes(word)
