"""Plugs and cords: what carries a load from its receptacle."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Level, No, at_most, computed, fails, memory, need, passes, rule, standard

from . import CAUTION, CONTRADICTED, HAZARD, LOADS, LOADS_ALONE, Fed, nfpa, plugged

if TYPE_CHECKING:
    from roomlint.design.supply import Load
    from roomlint.review import Applies, Figure, Room, Says, Windows


def plugs_by_form(room: Room, _: Fed[Load]) -> Applies:
    """Whether plugs are held to their own rating, and not to NFPA 70's shares of the circuit."""
    if room.figures.mains.family == "nfpa":
        return No("NFPA 70 holds plugs to shares of receptacle and circuit")
    return True


def plug_limit(room: Room, fed: Fed[Load]) -> Windows:
    """Return the least rating on the way of a load."""
    return at_most(room.figures.protection.plug(fed.item, fed.circuit).limit, "A")


@rule(
    "mains.plug-rating",
    level=Level.ERROR,
    basis=(
        standard("BS 1363-1", "13 A, fuse to BS 1362", read=False),
        standard("IEC TR 60083", "plugs of 16 A", read=False, note="through an account of the trade"),
        memory("10 A and 15 A of AS/NZS 3112, 2.5 A of CEE 7/16"),
    ),
    each=LOADS_ALONE,
    when=(plugs_by_form, plugged),
    window=computed("A", "the least of plug, fuse in the plug and socket", plug_limit),
    says="draws {figure}; its plug, fuse and socket carry {window}",
    after=CONTRADICTED,
    at="plug",
    caution=CAUTION,
    since="0.2.0",
)
def plug_rating(room: Room, fed: Fed[Load]) -> Figure:
    """A load draws no more than its plug, the fuse in it and the socket are rated for.

    Why: Contacts that carry more than they are made for glow before any breaker opens.

    How decided: Nameplate current against the least rating on the way: the form of the plug, the fuse of a BS 1363
    plug, the socket's form and rating. What is not known is asked for where it decides. NFPA 70 has shares instead.

    Remedy: A connection by an electrician for what draws more, or the right fuse.

    When to waive: Never without a licensed electrician's document.
    """
    return room.figures.protection.plug(fed.item, fed.circuit).figure


def into_the_wall(_: Room, fed: Fed[Load]) -> Applies:
    """Whether a load is plugged into a receptacle of the house itself."""
    if fed.item.unit is None:
        return True
    return No("it is plugged into a strip, a conditioner or an uninterruptible supply")


@rule(
    "mains.plug-fits",
    level=Level.WARNING,
    basis=memory("which plug goes into which receptacle and meets its earth there, by the standards of both"),
    each=LOADS,
    when=(plugged, into_the_wall),
    says={
        "not": "has a plug to {plug}, which a receptacle to {form} does not take",
        "fits": "its plug fits its receptacle",
    },
    at="plug",
    caution=CAUTION,
    since="0.2.0",
)
def plug_fits(room: Room, fed: Fed[Load]) -> Says:
    """A load's plug is of a form that its receptacle takes.

    Why: What does not fit gets an adapter, and adapters lose the earth, the fuse or the rating.

    How decided: Form of the plug against the form of the receptacle. From memory, so a warning at most.

    Remedy: A receptacle of the plug's form, or a cord with the other plug from the maker.

    When to waive: A cord set that the maker supplies for the country.
    """
    if room.figures.protection.plug_fits(fed.item, fed.circuit):
        return passes("fits")
    receptacle = room.figures.protection.receptacle_of(fed.item, fed.circuit)
    form = receptacle.form if receptacle is not None else None
    return fails("not", plug=str(fed.item.plug).upper(), form=str(form).upper())


def has_cord(room: Room, fed: Fed[Load]) -> Applies:
    """Whether a load has a cord: what is plugged in does, and what is said to have a concealed one."""
    return True if fed.item.cord_concealed else plugged(room, fed)


@rule(
    "mains.concealed-cord",
    level=Level.ERROR,
    basis=(nfpa("400.12 and 400.10(A)(11)"), HAZARD),
    each=LOADS,
    when=has_cord,
    says={
        "concealed": "its cord is concealed without a listed inlet assembly",
        "kit": "a listed inlet assembly carries it through the wall",
        "open": "its cord is in the open",
    },
    at="cord_concealed",
    caution=CAUTION,
    since="0.1.0",
)
def concealed_cord(_: Room, fed: Fed[Load]) -> Says:
    """No power cord runs inside or through a wall, floor or ceiling.

    Why: A cord is no fixed wiring: inside a wall it is neither protected nor seen when it fails.

    How decided: A load whose cord is stated as concealed, unless a listed inlet assembly is stated. What is wired in
    place has no cord, unless the file says so.

    Remedy: A receptacle behind the equipment by an electrician, or a listed inlet kit.

    When to waive: Never without a licensed electrician's document.
    """
    if not need(fed.item.cord_concealed, fed.item, "cord_concealed"):
        return passes("open")
    return passes("kit") if fed.item.listed_inlet_kit else fails("concealed")
