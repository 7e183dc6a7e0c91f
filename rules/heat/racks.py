"""Racks: air that moves, air that is enough, air that is cool."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Level, No, at_least, at_most, computed, fails, found, need, passes, practice, rule, standard

from . import CAUTION, RACKS, with_equipment

if TYPE_CHECKING:
    from roomlint.design.supply import Rack
    from roomlint.review import Applies, Figure, Found, Room, Says, Windows

WARM_DEGC: Final = 30.0
RECOMMENDED_DEGC: Final = 27.0
WHOLE_PERCENT: Final = 100.0


def _closed(_: Room, rack: Rack) -> Applies:
    return True if need(rack.enclosed, rack, "enclosed") else No("it stands open")


@rule(
    "heat.closed",
    level=Level.ERROR,
    basis=practice("what gives off heat in a closed cabinet has air moved through it"),
    each=RACKS,
    when=(_closed, with_equipment),
    says={
        "still": "is closed, nothing moves air through it, and its equipment gives off {heat}",
        "moved": "air is moved through it",
    },
    at="airflow",
    caution=CAUTION,
    since="0.3.0",
)
def closed(room: Room, rack: Rack) -> Says:
    """No closed cabinet holds equipment that gives off heat without air that is moved through it.

    Why: Air that cannot leave warms until something switches off, or something else gives way.

    How decided: Closed, with equipment that draws power in it, and the word `none` for its air.

    Remedy: A fan with a way in below and a way out above, or doors that let air through.

    When to waive: A cabinet that its maker rates for the heat, in writing.
    """
    if rack.no_airflow:
        return fails("still", heat=room.figures.heating.heat(rack))
    need(rack.airflow_m3_s, rack, "airflow")
    return passes("moved")


def _moved(_: Room, rack: Rack) -> Applies:
    if rack.no_airflow:
        if need(rack.enclosed, rack, "enclosed"):
            return No("nothing moves air through it", unless=("heat.closed",))
        return No("it stands open, and air moves by itself")
    return True


@rule(
    "heat.airflow",
    level=Level.WARNING,
    basis=(
        practice("air leaves a rack at most 10 K (18 degF) warmer than it enters"),
        practice("3600 P / (1.2 x 1005 x dT): the energy that air of 20 degC carries"),
    ),
    each=RACKS,
    when=(with_equipment, _moved),
    window=at_least(WHOLE_PERCENT, "%"),
    says="moves {figure} of the {needed} that carry {heat} away; {window} wanted",
    after=("heat.closed",),
    at="airflow",
    cure=("airflow",),
    caution=CAUTION,
    since="0.3.0",
)
def airflow(room: Room, rack: Rack) -> Found:
    """The air that is moved through a rack carries its heat away with a rise of 10 K at most.

    Why: The topmost amplifier breathes what all below it gave off.

    How decided: The heat of all equipment in it: power in use by its sheet, else its nameplate; of an amplifier that
    states neither an eighth of its rated power on all channels over its efficiency (0.25, class D 0.60), not below its
    idle power, less what goes to the loudspeakers. Such an estimate finds fault and clears nothing. 2.985 m3/h for each
    W and K.

    Remedy: A larger fan, a freer way in and out, or less in this rack.

    When to waive: Temperatures were measured in use, on a warm day, and are on record.
    """
    heating = room.figures.heating
    share, missing = heating.air_share(rack), heating.undeclared(rack)
    if missing is not None and share.value - share.u >= WHOLE_PERCENT:
        raise missing
    return found(share, needed=heating.air_needed(rack), heat=heating.heat(rack))


def inlet_window(room: Room, rack: Rack) -> Windows:
    """Return the windows of the air that a rack takes in: the makers' limit is an error beyond."""
    limit = room.figures.heating.inlet_limit_degc(rack)
    warm = min(WARM_DEGC, limit)
    return at_most(warm, "degC", note=min(RECOMMENDED_DEGC, warm), error=limit)


@rule(
    "heat.inlet",
    level=Level.WARNING,
    basis=(
        standard("ASHRAE TC 9.9 thermal guidelines", "recommended inlet", read=False, note="18 to 27 degC, guidance"),
        practice(
            "30 degC at the inlet is warm; beyond 40 degC, or the lowest maximum of the makers, nothing is covered"
        ),
    ),
    each=RACKS,
    when=with_equipment,
    window=computed(
        "degC",
        "30 degC, a note from 27 degC, an error beyond 40 degC or the lowest maximum of what is in it",
        inlet_window,
    ),
    says="takes in air of {figure}; {window} wanted",
    after=("heat.closed",),
    at="inlet",
    cure=("inlet",),
    caution=CAUTION,
    since="0.3.0",
)
def inlet(room: Room, rack: Rack) -> Figure:
    """The air that a rack takes in is no warmer than its equipment may take.

    Why: Every fan blows what it is given; each ten degrees halve the life of the supplies, and limits trip in the film.

    How decided: The temperature at the inlet against 30 degC, or the lowest maximum on the sheets of what is in it
    where that is lower; an error beyond that maximum, or 40 degC. A note beyond the recommended 27 degC.

    Remedy: Cooler air from the room, no exhaust before an inlet, or another place.

    When to waive: The maker's sheet allows more, and is corrected.
    """
    return room.figures.heating.inlet(rack)
