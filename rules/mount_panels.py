"""Acoustic panels as things that hang and as linings that burn: part of the chapter mount."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.proofs import stated
from roomlint.review import Level, Says, Window, asks, fails, need, passes, practice, rule, standard

if TYPE_CHECKING:
    from roomlint.design.shell import Treatment
    from roomlint.review import Figure, Room

CAUTION = (
    "The building official and the fire code decide; test reports come from the maker, and a licensed engineer decides "
    "what hangs overhead."
)
_LINING = frozenset({"absorber", "diffuser", "bass-trap", "canopy"})


def _linings(room: Room) -> tuple[Treatment, ...]:
    return tuple(panel for panel in room.design.treatments if panel.kind in _LINING)


@rule(
    "mount.panel-flame-spread",
    level=Level.ERROR,
    basis=standard("International Residential Code", "R302.9", read=False),
    each=_linings,
    reads=("treatments[].flame_spread",),
    since="0.1.0",
    window=Window(None, 200.0, ""),
    at="flame_spread",
    caution=CAUTION,
)
def panel_flame_spread(room: Room, panel: Treatment) -> Figure:
    """A panel's flame-spread index is at most 200.

    Why: A lined room burns over its linings first, and people sit in the dark beside them.

    How decided: The index of the tested panel, by ASTM E84; the residential code allows 200. European classes do not
    convert into it.

    Remedy: A panel with a test report, or another core and fabric.

    When to waive: Where another code is adopted and its class is documented.
    """
    return room.figures.mounts.flame_spread(panel)


@rule(
    "mount.panel-smoke",
    level=Level.ERROR,
    basis=standard("International Residential Code", "R302.9", read=False),
    each=_linings,
    reads=("treatments[].smoke_developed",),
    since="0.1.0",
    window=Window(None, 450.0, ""),
    at="smoke_developed",
    caution=CAUTION,
)
def panel_smoke(room: Room, panel: Treatment) -> Figure:
    """A panel's smoke-developed index is at most 450.

    Why: Smoke hides the way out before heat does any harm.

    How decided: The index of the tested panel, by ASTM E84; the residential code allows 450.

    Remedy: A panel with a test report, or another core and fabric.

    When to waive: Where another code is adopted and its class is documented.
    """
    return room.figures.mounts.smoke(panel)


@rule(
    "mount.foam-barrier",
    level=Level.ERROR,
    basis=standard("International Residential Code", "R316", read=False, note="approval route from memory"),
    each=lambda room: tuple(panel for panel in _linings(room) if panel.material in {None, "open-cell-foam"}),
    reads=("treatments[].material", "treatments[].thermal_barrier", "treatments[].approval"),
    since="0.1.0",
    at="material",
    caution=CAUTION + " A good flame-spread class alone does not make exposed foam acceptable.",
)
def foam_barrier(room: Room, panel: Treatment) -> Says:
    """Acoustic foam lies behind a thermal barrier or has a specific approval.

    Why: Foam plastic burns fast and hot, whatever class its small sample reached.

    How decided: Open-cell foam needs thermal_barrier: true, or an approval by a large-scale test.

    Remedy: Mineral wool or polyester instead of foam; or the foam's own approval document.

    When to waive: When the official accepted the material in writing.
    """
    need(panel.material, panel, "material")
    approval = stated(panel.approval)
    if approval is not None:
        return passes(f"approved: {approval.words}.")
    if need(panel.thermal_barrier, panel, "thermal_barrier"):
        return passes("it lies behind a thermal barrier.")
    return fails("exposed foam without a thermal barrier or an approval; use mineral wool or polyester.")


@rule(
    "mount.panel-overhead",
    level=Level.ERROR,
    basis=practice("panels overhead are fixed to framing by fasteners, never by adhesive alone"),
    each=lambda room: tuple(panel for panel in _linings(room) if panel.on == "ceiling" or panel.kind == "canopy"),
    reads=("treatments[].mounting.fixing.fastener", "treatments[].mounting.fixing.into", "treatments[].on"),
    since="0.1.0",
    at="mounting.fixing",
    caution=CAUTION,
)
def panel_overhead(room: Room, panel: Treatment) -> Says:
    """A panel overhead is fastened to framing.

    Why: Adhesive lets go years later, with warmth and vibration, over the seats.

    How decided: Adhesive, nails and drywall screws fail; so does board as the only support. An anchor in board goes to
    a person.

    Remedy: Screws or bolts into joists, and a wire as a second means.

    When to waive: Never for adhesive alone.
    """
    fixing = need(panel.fixing, panel, "mounting.fixing")
    fastener, into = need(fixing.fastener, fixing, "fastener"), need(fixing.into, fixing, "into")
    if fastener in {"adhesive", "nail", "drywall-screw"}:
        return fails(f"hangs on {fastener.replace('-', ' ')} overhead; fasten it to the joists.")
    if into in {"board", "plaster", "tile", "grid"}:
        document = stated(fixing.engineer) or stated(fixing.anchor_approval)
        if document is None:
            return fails(f"hangs in {into} only, overhead; fasten it to the joists.")
        return asks(f"hangs in {into} by {document.words}: does that cover this mass?")
    return passes(f"{fastener.replace('-', ' ')} in {into}.")
