"""Reads seats, picture, loudspeakers and subwoofers, and how each is held."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Value
from roomlint.design.listening import (
    Aim,
    Departure,
    Fixing,
    Loudspeaker,
    Mounting,
    Picture,
    Projector,
    Seat,
    Subwoofer,
)
from roomlint.design.reader import unique

if TYPE_CHECKING:
    from roomlint.design.reader import Reader

OTHER_HOLDS = ("stand", "furniture", "grid-ceiling", "electrical-box")
"""What a thing may be held by besides a wall, the ceiling or the floor."""


def read_seats(root: Reader) -> tuple[Seat, ...]:
    """Return the seats; at most one may be the reference seat."""
    unique(root.each("seats"), "seat")
    seats = tuple(_seat(reader) for reader in root.each("seats"))
    references = [seat for seat in seats if seat.reference]
    for seat in references[1:]:
        text = f"only one seat can be the reference seat; {references[0].id!r} already is."
        root.book.tell(seat.at.get("reference") or seat.at, text)
    return seats


def _seat(reader: Reader) -> Seat:
    return Seat(
        at=reader.node,
        id=reader.text("id") or "",
        ear=reader.position("ear"),
        facing_deg=reader.angle("facing") or Value(0.0, 0.0, "deg"),
        row=reader.whole("row"),
        reference=bool(reader.flag("reference")),
        eye_height_m=reader.surveyed("eye_height", positive=True),
        head_top_m=reader.surveyed("head_top", positive=True),
        back_top_m=reader.surveyed("back_top", positive=True),
        width_m=reader.length("width"),
        depth_m=reader.length("depth"),
        open_length_m=reader.length("open_length"),
        recline_deg=reader.angle("recline"),
        riser_m=reader.length("riser"),
    )


def read_picture(root: Reader) -> Picture | None:
    """Return the picture."""
    reader = root.below("picture")
    if reader is None:
        return None
    projector = reader.below("projector")
    return Picture(
        at=reader.node,
        id="picture",
        kind=reader.text("kind"),
        product=reader.product("product", "display", "screen"),
        centre=reader.position("centre"),
        width_m=reader.length("width"),
        height_m=reader.length("height"),
        lines=reader.whole("lines"),
        formats=tuple(float(node.value) for node in reader.nodes("formats")),
        transparent=reader.flag("transparent"),
        ambient_lx=reader.quantity("ambient", "illuminance"),
        mounting=read_mounting(reader),
        projector=Projector(
            at=projector.node,
            id=projector.text("id") or "projector",
            product=projector.product("product", "projector"),
            lens=projector.position("lens"),
            mounting=read_mounting(projector),
        )
        if projector is not None
        else None,
    )


def read_loudspeakers(root: Reader) -> tuple[Loudspeaker, ...]:
    """Return the loudspeakers."""
    unique([*root.each("loudspeakers"), *root.each("subwoofers")], "loudspeaker or subwoofer")
    return tuple(_loudspeaker(reader) for reader in root.each("loudspeakers"))


def _loudspeaker(reader: Reader) -> Loudspeaker:
    departure = reader.below("departure")
    return Loudspeaker(
        at=reader.node,
        id=reader.text("id") or "",
        label=reader.text("label"),
        product=reader.product("product", "loudspeaker"),
        position=reader.position("position"),
        aim=_aim(reader),
        mounting=read_mounting(reader),
        departure=Departure(departure.node, "", departure.text("because") or "", departure.text("meets"))
        if departure is not None
        else None,
        behind_screen=reader.flag("behind_screen"),
        port_clearance_m=reader.surveyed("port_clearance"),
    )


def _aim(reader: Reader) -> Aim | None:
    below = reader.below("aim")
    if below is None:
        return None
    seat = below.one_of("seat", below.book.seats, "seat")
    angles = below.angle("azimuth"), below.angle("elevation")
    if below.at("seat") is not None and any(angle is not None for angle in angles):
        below.book.tell(below.node, "aim either at a seat or by angles, not both.")
    return Aim(below.node, "", below.book.seats[seat] if seat is not None else None, *angles)


def read_subwoofers(root: Reader) -> tuple[Subwoofer, ...]:
    """Return the subwoofers."""
    return tuple(
        Subwoofer(
            at=reader.node,
            id=reader.text("id") or "",
            product=reader.product("product", "subwoofer"),
            label=reader.text("label"),
            position=reader.position("position"),
            facing_deg=reader.angle("facing"),
            mounting=read_mounting(reader),
            level_db=reader.quantity("level", "level"),
            delay_s=reader.quantity("delay", "time"),
            inverted=reader.flag("inverted"),
            low_pass_hz=reader.quantity("low_pass", "frequency", positive=True),
            port_clearance_m=reader.surveyed("port_clearance"),
        )
        for reader in root.each("subwoofers")
    )


def read_mounting(owner: Reader) -> Mounting | None:
    """Return how a thing is held."""
    reader = owner.below("mounting")
    if reader is None:
        return None
    fixing = reader.below("fixing")
    return Mounting(
        at=reader.node,
        id=owner.text("id") or "",
        on=reader.one_of("on", (*reader.book.surfaces, *OTHER_HOLDS), "surface"),
        product=reader.product("product", "mount"),
        fixing=read_fixing(fixing) if fixing is not None else None,
        extension_m=reader.length("extension"),
        swivel_deg=reader.angle("swivel"),
        tilt_deg=reader.angle("tilt"),
        drop_m=reader.length("drop"),
        secondary=reader.text("secondary"),
        secondary_fall_m=reader.quantity("secondary_fall", "length"),
        sling_angle_deg=reader.angle("sling_angle"),
        breaking_load_n=reader.quantity("breaking_load", "force", positive=True),
        strap=reader.text("strap"),
        accessories_kg=reader.quantity("accessories", "mass"),
        carpet=reader.flag("carpet"),
    )


def read_fixing(reader: Reader) -> Fixing:
    """Return the fasteners of a mount or a panel."""
    return Fixing(
        at=reader.node,
        id="",
        fastener=reader.text("fastener"),
        into=reader.text("into"),
        diameter_m=reader.length("diameter"),
        length_m=reader.length("length"),
        thread_m=reader.length("thread"),
        count=reader.whole("count"),
        top_count=reader.whole("top_count"),
        row_spacing_m=reader.length("row_spacing"),
        edge_offset_m=reader.quantity("edge_offset", "length"),
        grain=reader.text("grain"),
        wet=reader.flag("wet"),
        attic=reader.flag("attic"),
        anchor_approval=reader.text("anchor_approval"),
        anchor_ultimate_n=reader.quantity("anchor_ultimate", "force", positive=True),
        backing=reader.text("backing"),
        engineer=reader.text("engineer"),
    )
