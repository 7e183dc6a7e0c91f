"""Receptacles: what they are rated for, where they are, and what feeds them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import (
    Cases,
    Level,
    Missing,
    No,
    at_least,
    at_most,
    computed,
    fails,
    memory,
    need,
    passes,
    practice,
    rule,
    standard,
)

from . import (
    CAUTION,
    CIRCUITS,
    EARLIER_NUMBER,
    HAZARD,
    RECEPTACLES,
    Fed,
    nfpa,
    under_nfpa,
)

if TYPE_CHECKING:
    from roomlint.design.supply import Circuit, Load, Receptacle, Unit
    from roomlint.review import Applies, Figure, Room, Says, Windows

BATH_M = {"bs": 2.5, "iec": 0.6, "asnzs": 0.6}
LARGEST_ON_SPUR = 2
"""Plugs that the one socket of an unfused spur takes: a double one."""


@rule(
    "mains.receptacle-rating",
    level=Level.WARNING,
    basis=nfpa("Table 210.21(B)(3); a single receptacle 210.21(B)(1)"),
    each=RECEPTACLES,
    when=under_nfpa,
    says={
        "wrong": "is rated {rating}, which a circuit of {device} may not have",
        "fits": "its rating fits the circuit",
    },
    after=("mains.individual",),
    at="rating",
    caution=CAUTION,
    since="0.1.0",
)
def receptacle_rating(room: Room, fed: Fed[Receptacle]) -> Says:
    """A receptacle's rating is one that its circuit may have.

    Why: A 20 A receptacle on a 15 A circuit invites a load that the circuit cannot feed.

    How decided: 15 A circuits take 15 A receptacles, 20 A circuits 15 or 20 A, 30 A circuits 30 A, under NFPA 70. The
    single receptacle of a dedicated circuit has the circuit's rating or more; a duplex is two receptacles.

    Remedy: Have the receptacle changed.

    When to waive: With the authority's word.
    """
    mains = room.figures.mains
    if mains.receptacle_fits(fed.item, fed.circuit):
        return passes("fits")
    return fails("wrong", rating=mains.own_rating(fed.item), device=mains.device(fed.circuit))


def behind_other_codes(room: Room, _: Fed[Receptacle]) -> Applies:
    """Whether a code of socket-outlets by form is in force."""
    if room.figures.mains.family == "nfpa":
        return No("NFPA 70 has a table of receptacle ratings")
    return True


def device_limit(room: Room, fed: Fed[Receptacle]) -> Windows:
    """Return the greatest device before a socket of that form."""
    return at_most(room.figures.protection.before_socket(fed.item, fed.circuit).limit, "A")


@rule(
    "mains.socket-device",
    level=Level.WARNING,
    basis=(
        standard("BS 7671", "433.1.204", read=False, note="BS 1363 behind 30 A or 32 A"),
        memory("sockets of 16 A behind 20 A at most, AS 3112 behind 32 A, any other behind its own rating"),
    ),
    each=RECEPTACLES,
    when=behind_other_codes,
    window=computed("A", "BS 1363 and AS 3112 32 A, CEE 7 20 A, IEC 60309 its own", device_limit),
    says="is behind a breaker or fuse of {figure}; a socket of that form wants {window}",
    at="form",
    caution=CAUTION,
    since="0.2.0",
)
def socket_device(room: Room, fed: Fed[Receptacle]) -> Figure:
    """A socket-outlet stands behind a device that its form is made for.

    Why: A socket of 16 A behind a device of 32 A lets two adaptors draw what its contacts cannot bear.

    How decided: Rating of the circuit's device against the form of the socket, outside NFPA 70. The 32 A of BS 1363 are
    quoted second-hand, the rest is from memory.

    Remedy: A smaller device, or a socket for the current.

    When to waive: The national rules allow it; the electrician says so.
    """
    return room.figures.protection.before_socket(fed.item, fed.circuit).figure


def is_british_ring(room: Room, circuit: Circuit) -> Applies:
    """Whether a circuit is a ring by BS 7671."""
    if room.figures.mains.family != "bs":
        return No("rings of socket-outlets are of BS 7671")
    if need(circuit.arrangement, circuit, "arrangement") != "ring":
        return No("it is a radial circuit")
    return True


@rule(
    "mains.spur",
    level=Level.WARNING,
    basis=standard("BS 7671", "Appendix 15", read=False, note="as a textbook of installation work tells it"),
    each=CIRCUITS,
    when=is_british_ring,
    says={
        "wide": "{receptacle} is on an unfused spur and takes {count} plugs; one single or double socket is the most",
        "many": "has {count} unfused spurs off {points} points of the ring; no more spurs than points",
        "few": "its unfused spurs are no more than its points",
    },
    at="receptacles",
    caution=CAUTION,
    since="0.2.0",
)
def spur(room: Room, circuit: Circuit) -> Says:
    """An unfused spur off a ring feeds one single or one double socket, and there are no more spurs than points.

    Why: A spur is one cable behind 32 A: with more sockets on it, more current flows than it is made for.

    How decided: Of a British ring, sockets stated to be on an unfused spur: how many plugs each takes, and how many
    they are beside the points on the ring itself. A spur with a fuse of its own counts for neither.

    Remedy: A fused connection before the spur, or the sockets taken into the ring.

    When to waive: Never without the electrician's calculation.
    """
    unfused = [one for one in circuit.receptacles if one.spur == "unfused"]
    for one in unfused:
        if one.outlets is not None and one.outlets > LARGEST_ON_SPUR:
            return fails("wide", receptacle=one.words, count=one.outlets)
    need(circuit.receptacles or circuit.at.get("receptacles"), circuit, "receptacles")
    for one in circuit.receptacles:
        need(one.spur, one, "spur")
        if one.spur == "unfused":
            need(one.outlets, one, "outlets")
    points = sum(one.spur == "none" for one in circuit.receptacles)
    if len(unfused) > points:
        return fails("many", count=len(unfused), points=points)
    return passes("few")


@rule(
    "mains.outlet-count",
    level=Level.WARNING,
    basis=practice("each plug has an outlet of the house; what is added on site is a strip behind the rack"),
    each=RECEPTACLES,
    says={
        "many": "has outlets for {outlets}, and {count} plugs are meant for it: {plugged}; add one, or fewer",
        "enough": "takes every plug that is meant for it",
    },
    at="outlets",
    caution=CAUTION,
    since="0.3.0",
)
def outlet_count(_: Room, fed: Fed[Receptacle]) -> Says:
    """A receptacle takes as many plugs as are meant for it.

    Why: The plug too many ends in an adapter or in a strip that nobody counted, warm and out of sight.

    How decided: Loads and units of the circuit that are plugged into this receptacle itself against its outlets. What
    is plugged into a strip, a conditioner or an uninterruptible supply counts once, as that.

    Remedy: Another receptacle, or a unit that is named in the file.

    When to waive: Never; name what stands in between.
    """
    circuit, outlet = fed.circuit, fed.item
    into_it: list[Unit | Load] = [one for one in circuit.units if one.unit is None]
    into_it += [one for one in circuit.loads if one.unit is None and one.connection != "fastened"]
    plugged = tuple(one.words for one in into_it if one.receptacle == outlet.id)
    outlets = need(outlet.outlets, outlet, "outlets") if len(plugged) > 1 else 1
    if len(plugged) > outlets:
        return fails("many", outlets=outlets, count=len(plugged), plugged=plugged)
    for key in ("loads", "units"):
        if circuit.at.get(key) is None:
            raise Missing(circuit, key)
    loose = next((one for one in into_it if one.receptacle is None), None)
    if loose is not None:
        raise Missing(loose, "receptacle")
    return passes("enough")


def in_a_bathroom(room: Room, fed: Fed[Receptacle]) -> Applies:
    """Whether a socket-outlet is in a bathroom under a code that keeps it away from bath and shower."""
    if room.figures.mains.family in {"nfpa", "other"}:
        return No("NFPA 70 asks for ground-fault protection there, and what another code asks is not known here")
    if need(fed.item.where, fed.item, "place") != "bathroom":
        return No("it is in no bathroom")
    return No("there is neither bath nor shower") if fed.item.no_bath else True


def from_bath(room: Room, _: Fed[Receptacle]) -> Windows:
    """Return how far a socket-outlet stays from bath and shower."""
    return at_least(BATH_M[room.figures.mains.family], "m")


@rule(
    "mains.bath-distance",
    level=Level.WARNING,
    basis=(
        memory("2.5 m beyond zone 1; 3 m before the amendment of 2022", document="BS 7671", clause="701.512.3"),
        memory("outside zone 2, 0.6 m, behind 30 mA", document="IEC 60364-7-701", clause="701.512.3"),
        memory("outside zone 2, 0.6 m beyond zone 1", document="AS/NZS 3000", clause="6.2.4.2"),
    ),
    each=RECEPTACLES,
    when=in_a_bathroom,
    window=Cases(
        "m",
        (("under BS 7671", at_least(2.5, "m")), ("under IEC 60364 and AS/NZS 3000", at_least(0.6, "m"))),
        from_bath,
    ),
    says="is {figure} from the edge of the bath or shower; {window} wanted",
    at="bath",
    caution=CAUTION,
    since="0.3.0",
)
def bath_distance(room: Room, fed: Fed[Receptacle]) -> Figure:
    """A socket-outlet in a bathroom stays away from bath and shower.

    Why: A media room with a bath beside it, or in it, tempts to plug a screen in within a wet hand's reach.

    How decided: The level distance that the file gives to the edge of bath or shower, in any bathroom that is not
    North American. Shaver units and extra-low voltage are other things. From memory, so a warning; the local code and
    its edition decide.

    Remedy: Another place for the socket, or none.

    When to waive: Never without the electrician who certifies the work.
    """
    return room.figures.protection.from_bath(fed.item)


@rule(
    "mains.tamper-resistant",
    level=Level.NOTE,
    basis=nfpa("406.12"),
    each=RECEPTACLES,
    when=under_nfpa,
    window=None,
    says={
        "not": "is within reach of children, {height} up, and not tamper resistant",
        "is": "is tamper resistant",
        "high": "is above 1.7 m (5 ft 6 in)",
    },
    at="tamper_resistant",
    caution=CAUTION,
    since="0.1.0",
)
def tamper_resistant(room: Room, fed: Fed[Receptacle]) -> Says:
    """A receptacle within reach of children is tamper resistant.

    Why: Dwellings need it below 1.7 m, behind furniture too.

    How decided: Receptacles that may not be above 1.7 m, their uncertainty counted, under NFPA 70. The sockets of
    BS 1363 have shutters by their standard.

    Remedy: Fit a tamper-resistant receptacle.

    When to waive: Under another code; the electrician decides.
    """
    if fed.item.tamper_resistant:
        return passes("is")
    height = room.figures.protection.height(fed.item)
    if room.figures.protection.out_of_reach(fed.item):
        return passes("high")
    need(fed.item.tamper_resistant, fed.item, "tamper_resistant")
    return fails("not", height=height)


@rule(
    "mains.facing-up",
    level=Level.WARNING,
    basis=(standard("NFPA 70", "406.5(H)", edition="2023", read=False), HAZARD),
    each=RECEPTACLES,
    says={
        "bare": "faces up and is not listed for that",
        "listed": "is listed for facing up",
        "not": "does not face up",
    },
    at="facing_up",
    caution=CAUTION,
    since="0.1.0",
)
def facing_up(_: Room, fed: Fed[Receptacle]) -> Says:
    """No receptacle in seating or a riser faces up unless it is listed for that.

    Why: Drinks and dust fall in.

    How decided: A receptacle that faces up must be stated as listed for it.

    Remedy: A listed floor box or furniture power unit.

    When to waive: Under another code; the electrician decides.
    """
    if not need(fed.item.facing_up, fed.item, "facing_up"):
        return passes("not")
    if need(fed.item.listed_for_floor, fed.item, "listed_for_floor"):
        return passes("listed")
    return fails("bare")


@rule(
    "mains.dimmed-receptacle",
    level=Level.ERROR,
    basis=(nfpa("404.14(E), since 2023 404.14(F)", note=EARLIER_NUMBER), HAZARD),
    each=RECEPTACLES,
    says={"dimmed": "is fed by a dimmer, which no receptacle may be", "direct": "no dimmer feeds it"},
    at="dimmed",
    caution=CAUTION,
    since="0.1.0",
)
def dimmed_receptacle(_: Room, fed: Fed[Receptacle]) -> Says:
    """No dimmer feeds a receptacle.

    Why: A dimmer is for lamps that are permanently connected; equipment on a dimmed receptacle fails or burns.

    How decided: A receptacle of which the file says that a dimmer feeds it.

    Remedy: Feed the receptacle undimmed.

    When to waive: The control is listed for that very load.
    """
    if need(fed.item.dimmed, fed.item, "dimmed"):
        return fails("dimmed")
    return passes("direct")
