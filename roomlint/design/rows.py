"""Rows of seats of one entry, the platforms that seats stand on, and ears measured from there."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, TypeAlias

from roomlint.design.base import Point
from roomlint.design.element import WAITING
from roomlint.design.quantity import exact
from roomlint.design.repeated import copied

if TYPE_CHECKING:
    from roomlint.design.listening import Seat
    from roomlint.design.quantity import Quantity
    from roomlint.design.reader import Book
    from roomlint.design.shell import Riser

    Plan: TypeAlias = tuple[Quantity, Quantity]


def row(one: Seat, book: Book) -> tuple[Seat, ...]:
    """Return the seats that an entry with `count` stands for, from left to right, or the one of any other entry."""
    count: int | None = one.given("count")
    spacing: Quantity | None = one.given("spacing_m")
    node = one.at.get("ear")
    ear: Point | None = one.given("ear")
    plan = (ear.x, ear.y) if ear is not None else book.halves.get(node) if node is not None else None
    if count is None or spacing is None:
        if count is not None and one.at.get("spacing") is None:
            book.cross(one.at.get("count") or one.at, "a row of seats needs spacing, from ear to ear.")
        for key in ("spacing", "reference_number") if one.at.get("count") is None else ():
            needless = one.at.get(key)
            if needless is not None:
                book.cross(needless, f"{key} belongs to a row; say by count how many seats it has.")
        _seat(one, plan, book)
        return (one,)
    chosen, name = _reference(one, count, book), one.id
    seats = [one, *(copied(one, f"{name}-{number}", book) for number in range(2, count + 1))]
    one.__dict__["id"] = f"{name}-1"
    facing = one.given("facing_deg")
    turn = math.radians(facing.value) if facing is not None else 0.0
    for number, seat in enumerate(seats, 1):
        if chosen is not None:
            seat.put("reference", number == chosen, "reference_number")
            if number != chosen:
                seat.__dict__[WAITING].pop("reference_number", None)  # it is the chosen one's to be read
        if plan is None:
            continue
        aside = spacing * (number - (count + 1) / 2.0)
        x, y = plan[0] + aside * math.cos(turn), plan[1] + aside * math.sin(turn)
        if ear is not None:
            seat.put("ear", Point(x, y, ear.z), "count", "spacing_m")
        book.derive(seat, "ear", x, "row")
        _seat(seat, (x, y), book)
    return tuple(seats)


def _reference(one: Seat, count: int, book: Book) -> int | None:
    """Return which seat of a row is the reference seat: the one it names, or the middle one."""
    number: int | None = one.given("reference_number")
    if number is not None and number > count:
        book.cross(one.at.get("reference_number") or one.at, f"the row has {count} seats, and no seat {number}.")
        return None
    said_so = one.at.get("reference")
    if number is not None and said_so is not None and said_so.value is False:
        book.cross(said_so, f"reference says that none of the row is, and reference_number that seat {number} is.")
        return None
    if number is None and one.given("reference"):
        if count % 2 == 0:
            said = f"a row of {count} has no middle seat; say by reference_number which is the reference seat."
            book.cross(one.at.get("reference") or one.at, said)
            return None
        return (count + 1) // 2
    return number


def _seat(seat: Seat, plan: Plan | None, book: Book) -> None:
    """Put a seat on the platform under it, and its ear as high above that as the file says."""
    if plan is None:
        return
    platform = _under(plan, book)
    if platform is not None and seat.given("riser_m") is None:
        height = platform.given("height")
        seat.put(
            "riser_m", height, *((platform, key) for key in ("from_left", "from_front", "width", "depth", "height"))
        )
        book.derive(seat, "riser", height, "riser")
    above: Quantity | None = seat.given("ear_above_m")
    if above is None:
        return
    if seat.given("ear") is not None and seat.at.get("ear_above") is not None and _says_height(seat):
        book.cross(above.at or seat.at, "give either the ear's own height above the floor or ear_above, not both.")
        return
    riser: Quantity | None = seat.given("riser_m")
    z = above + (riser if riser is not None else exact(0.0, "m"))
    seat.put("ear", Point(*plan, z), "ear_above_m", "riser_m", "count", "spacing_m")
    book.derive(seat, "ear.height", z, "riser")


def _says_height(seat: Seat) -> bool:
    node = seat.at.get("ear")
    return node is not None and node.get("height") is not None


def _under(plan: Plan, book: Book) -> Riser | None:
    """Return the platform that a place is over; of several, the highest."""
    shell = book.shell
    found = [one for one in (shell.given("risers") or () if shell is not None else ()) if one.holds(plan, book)]
    return max(found, key=lambda one: one.given("height").value, default=None)
