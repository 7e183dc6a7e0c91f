"""Chapter heat: what equipment gives off where it stands, and the air that it takes in."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Missing, No, Subjects, unsaid

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.supply import Rack
    from roomlint.review import Applies, Room

CAUTION: Final = (
    "Caution: an estimate from sheets, no measurement; makers' instructions govern clearances and temperatures, and "
    "equipment in joinery is for the local code and whoever answers for ventilation and fire."
)


def every_rack(room: Room) -> Iterator[Rack | Missing]:
    """Yield the racks; a file that does not speak of any may have some."""
    missing = unsaid(room.design, "electronics.racks")
    if missing is not None and not room.design.racks:
        yield missing
    yield from room.design.racks


RACKS: Final[Subjects[Rack]] = Subjects("rack", every_rack)


def with_equipment(room: Room, rack: Rack) -> Applies:
    """Whether anything that draws power stands in a rack."""
    return True if room.figures.heating.contents(rack) else No("nothing in it draws power")
