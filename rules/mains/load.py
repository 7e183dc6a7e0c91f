"""What a circuit is asked to carry: the sum, one item, what is fastened, one receptacle, and switching on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Level, No, at_most, computed, fails, need, passes, practice, rule, standard

from . import (
    CAUTION,
    CIRCUITS,
    CONTRADICTED,
    LOADS,
    PLANNING,
    RECEPTACLES,
    Fed,
    is_shared,
    more_than_one,
    nfpa,
    on_shared,
    plugged,
    under_nfpa,
)

if TYPE_CHECKING:
    from roomlint.design.supply import Circuit, Load, Receptacle
    from roomlint.review import Applies, Figure, Room, Says, Windows


def feeds_something(room: Room, circuit: Circuit) -> Applies:
    """Whether a circuit has loads of the design, or lighting."""
    if room.figures.mains.loads(circuit) or circuit.feeds_lighting is not False:
        return True
    return No("nothing of the design is on it")


def claims_one(_: Room, circuit: Circuit) -> Applies:
    """Whether a circuit is said to feed one thing only."""
    return True if need(circuit.dedicated, circuit, "dedicated") else No("it is a shared circuit")


def takes_plugs(room: Room, fed: Fed[Receptacle]) -> Applies:
    """Whether something of the design is, or may be, plugged in here."""
    for load in room.figures.mains.loads(fed.circuit):
        if load.receptacle == fed.item.id or (load.receptacle is None and load.connection != "fastened"):
            return True
    return No("nothing of the design is plugged in here")


def tabled(room: Room, fed: Fed[Receptacle]) -> Applies:
    """Whether the table has a limit for such a receptacle on such a circuit."""
    if room.figures.mains.receptacle_is_tabled(fed.item, fed.circuit):
        return True
    return No("the table has no such receptacle on a circuit of that rating")


def plugs_or_lights(room: Room, circuit: Circuit) -> Applies:
    """Whether lighting or something with a plug shares a circuit with what is fastened in place."""
    loads = room.figures.mains.loads(circuit)
    if any(load.connection == "plug" for load in loads) or circuit.feeds_lighting:
        return True
    for load in loads:
        need(load.connection, load, "connection")
    need(circuit.feeds_lighting, circuit, "feeds_lighting")
    return No("neither lighting nor a plug shares the circuit")


@rule(
    "mains.individual",
    level=Level.ERROR,
    basis=(nfpa("Article 100, branch circuit, individual, and 210.22"), practice("one of two statements is wrong")),
    each=CIRCUITS,
    when=claims_one,
    says={
        "several": "is called dedicated to one item, yet feeds {what}",
        "one": "feeds one item",
    },
    at="dedicated",
    caution=CAUTION,
    since="0.2.0",
)
def individual(room: Room, circuit: Circuit) -> Says:
    """A circuit that is called dedicated feeds one piece of equipment.

    Why: The limits of shared circuits are lifted for a dedicated one, so a wrong word here lifts them where they are
    needed; and the electrician is told two different things.

    How decided: At most one load, one receptacle and no lighting on a circuit that the file calls dedicated. Rules
    that rest on the claim wait until it is settled.

    Remedy: Call the circuit shared, or give the other loads circuits of their own.

    When to waive: A device with two cords on one circuit, listed as two loads.
    """
    counted = [
        (len(circuit.loads), "loads"), (len(circuit.receptacles), "receptacles"),
    ]  # fmt: skip
    if more_than_one(circuit):
        what = [f"{count} {name}" for count, name in counted if count > 1]
        return fails("several", what=tuple(what + ["lighting"] * (circuit.feeds_lighting is True)))
    room.figures.mains.loads(circuit)
    need(circuit.receptacles or circuit.at.get("receptacles"), circuit, "receptacles")
    need(circuit.feeds_lighting, circuit, "feeds_lighting")
    return passes("one")


def rating_of(room: Room, circuit: Circuit) -> Windows:
    """Return the rating of the circuit as the limit of what it carries."""
    return at_most(room.figures.mains.rating_a(circuit), "A")


@rule(
    "mains.circuit-load",
    level=Level.ERROR,
    basis=(
        nfpa("210.20(A)"),
        standard("IEC 60364-4-43", "433.1.1", read=False, note="known through guides; BS 7671 the same"),
        PLANNING,
    ),
    each=CIRCUITS,
    when=feeds_something,
    window=computed("A", "the rating of the overcurrent device", rating_of),
    says="its loads ask for a rating of {figure}; its breaker or fuse is rated {limit}",
    after=CONTRADICTED,
    at="rating",
    caution=CAUTION,
    since="0.1.0",
)
def circuit_load(room: Room, circuit: Circuit) -> Figure:
    """A circuit's loads stay within the rating of its overcurrent device.

    Why: A breaker that carries its full rating for hours trips in the middle of the film, or ages.

    How decided: Sum of the nameplate currents of all loads and of the lighting, from the product sheets where the
    file gives none. By NFPA 70 what lasts three hours or more counts 1.25 times, and so does what nobody says of;
    other codes count it once (design current at most the rating). What is not known is asked for, unless the known
    part is too much already. Until it is known which code holds, both sums must agree.

    Remedy: Move a load to another circuit, or have another circuit run.

    When to waive: An electrician has confirmed the demand in writing.
    """
    return room.figures.mains.required(circuit)


@rule(
    "mains.plug-in-share",
    level=Level.WARNING,
    basis=nfpa("210.23(A)(1), since 2023 210.23(B)(1)"),
    each=LOADS,
    when=(under_nfpa, plugged, on_shared),
    window=at_most(80.0, "%"),
    says="takes {figure} of a shared circuit; {window} wanted of one plug-in item",
    after=("mains.individual", *CONTRADICTED),
    at="what",
    caution=CAUTION,
    since="0.1.0",
)
def plug_in_share(room: Room, fed: Fed[Load]) -> Figure:
    """One plug-in item takes at most 80 % of a shared circuit.

    Why: The rest is left for whatever else is plugged in; a power strip adds outlets, not capacity.

    How decided: Nameplate current over the circuit's rating, on circuits that are not dedicated to the item. A
    share of NFPA 70: neither IEC 60364, BS 7671 nor AS/NZS 3000 has one. The clause moved with the 2023 edition.

    Remedy: Give the item a circuit of its own.

    When to waive: With the authority's word.
    """
    return room.figures.mains.share(fed.item, fed.circuit)


@rule(
    "mains.fastened-share",
    level=Level.WARNING,
    basis=nfpa("210.23(A)(2), since 2023 210.23(B)(2)"),
    each=CIRCUITS,
    when=(under_nfpa, is_shared, plugs_or_lights),
    window=at_most(50.0, "%"),
    says="what is fastened in place takes {figure}; {window} wanted beside plugs or lighting",
    after=("mains.individual", *CONTRADICTED),
    at="loads",
    caution=CAUTION,
    since="0.1.0",
)
def fastened_share(room: Room, circuit: Circuit) -> Figure:
    """What is fastened in place takes at most half of a circuit that lights or plugs share.

    Why: Fixed equipment runs whenever it likes; half the circuit is kept for what people plug in.

    How decided: Nameplate currents of fastened loads over the rating, when the circuit also feeds lighting or
    plug-in loads and is not dedicated. A share of NFPA 70; the clause moved with the 2023 edition.

    Remedy: Move the fixed equipment to a circuit of its own.

    When to waive: The authority does not count the item as fastened in place.
    """
    return room.figures.mains.fastened_share(circuit)


def receptacle_limit(room: Room, fed: Fed[Receptacle]) -> Windows:
    """Return the most that all plugs on the receptacle may draw."""
    return at_most(room.figures.mains.receptacle_limit_a(fed.item, fed.circuit), "A")


@rule(
    "mains.receptacle-total",
    level=Level.WARNING,
    basis=nfpa("Table 210.21(B)(2)"),
    each=RECEPTACLES,
    when=(under_nfpa, on_shared, takes_plugs, tabled),
    window=computed("A", "12 A for a receptacle of 15 A, 16 A for one of 20 A, 24 A for one of 30 A", receptacle_limit),
    says="its plugs draw {figure} together; one receptacle carries {window}",
    after=("mains.individual", *CONTRADICTED),
    at="rating",
    caution=CAUTION,
    since="0.1.0",
)
def receptacle_total(room: Room, fed: Fed[Receptacle]) -> Figure:
    """All plugs on one receptacle of a shared circuit together stay within its share.

    Why: Two plugs of one receptacle can overload it without either being too large.

    How decided: Sum of nameplate currents against 12 A for a 15 A receptacle, 16 A for a 20 A one and 24 A for a 30
    A one. A plug-in load of the circuit that names no receptacle may be plugged in here. A table of NFPA 70.

    Remedy: Spread the plugs over receptacles, or use a circuit of its own.

    When to waive: With the authority's word.
    """
    return room.figures.mains.receptacle_total(fed.item, fed.circuit)


@rule(
    "mains.inrush",
    level=Level.NOTE,
    basis=practice("two large transformers switched on together trip domestic breakers"),
    each=CIRCUITS,
    when=feeds_something,
    says={
        "together": "{count} transformer supplies switch on together; the breaker may open",
        "sequence": "{count} transformer supplies, one after the other",
        "few": "transformer supplies on it: {count}",
    },
    at="sequenced",
    caution=CAUTION,
    since="0.1.0",
)
def inrush(room: Room, circuit: Circuit) -> Says:
    """Two or more large transformers on a circuit switch on one after the other.

    Why: A toroid draws many times its rating for a cycle or two; two of them together open a breaker.

    How decided: Number of loads with a mains-frequency transformer, by the file or the product sheet, against
    whether the circuit's loads are switched on in sequence.

    Remedy: A sequencer with one to three seconds between steps.

    When to waive: The equipment has its own soft start.
    """
    count, missing = room.figures.mains.linear_supplies(circuit)
    if count > 1 and circuit.sequenced is False:
        return fails("together", count=count)
    if missing is not None:
        raise missing
    if count <= 1:
        return passes("few", count=count)
    need(circuit.sequenced, circuit, "sequenced")
    return passes("sequence", count=count)
