"""What lies along a wall, measured from whichever end or side is at hand."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.design.element import Element
from roomlint.design.measured import surveyed

if TYPE_CHECKING:
    from roomlint.design.outline import Corner
    from roomlint.design.quantity import Quantity
    from roomlint.design.reader import Book

_ACROSS: Final = 1e-3
"""A wall that leads no farther aside than this share of its length cannot be measured along that way."""
EDGE: Final = 3.0
"""What is in the room may leave its wall, or the room, by so many times what its lengths are good for."""
SLIP_M: Final = 0.01
"""And by this much more."""
_WAYS: Final = ("start_m", "wall_right_m", "from_left_m", "from_right_m", "from_front_m", "from_rear_m")
_KEYS: Final = ("from_wall_left", "from_wall_right", "from_left", "from_right", "from_front", "from_rear")


class Along(Element):
    """Something on a wall. It is measured once: from an end of the wall, or from a side of the room like all else.

    Every distance is to the edge that is nearest to where it is measured from.
    """

    start_m = surveyed(
        "From the left-hand end of its wall, seen from inside the room, to its nearer edge.", key="from_wall_left",
        zero=True, high=50.0, example="0.40 m",
    )  # fmt: skip
    wall_right_m = surveyed(
        "Instead: from the right-hand end of its wall, seen from inside.", key="from_wall_right", zero=True, high=50.0,
        example="0.40 m",
    )  # fmt: skip
    from_left_m = surveyed("Instead: from the left side of the room.", zero=True, high=50.0)
    from_right_m = surveyed("Instead: from the right side of the room.", zero=True, high=50.0)
    from_front_m = surveyed("Instead: from the front of the room.", zero=True, high=50.0)
    from_rear_m = surveyed("Instead: from the rear of the room.", zero=True, high=50.0)

    def begin(self, ends: tuple[Corner, Corner] | None, width: Quantity | None, book: Book) -> None:
        """Work out where it begins along its wall, from the left-hand end seen from inside, whatever was measured."""
        given = [(attr, key) for attr, key in zip(_WAYS, _KEYS, strict=True) if self.at.get(key) is not None]
        for _, key in given[1:]:
            said = f"measure it once along its wall: {given[0][1]} is given already."
            book.cross(self.at.get(key) or self.at, said)
        if len(given) != 1 or given[0][0] == "start_m" or ends is None:
            return
        attr, key = given[0]
        start = self._start(attr, key, ends, width, book)
        if start is not None:
            rests = ("width_m",) if hasattr(type(self), "width_m") else ()
            self.put("start_m", start, attr, *rests)
            book.derive(self, "from_wall_left", start, "wall")

    def fit_wall(self, ends: tuple[Corner, Corner], width: Quantity | None, book: Book) -> None:
        """See that it is within its wall, whichever end it was measured from."""
        node = next((node for key in _KEYS if (node := self.at.get(key)) is not None), None)
        start: Quantity | None = self.given("start_m")
        begins = start.value if start is not None else 0.0
        stops = begins + (width.value if width is not None else 0.0)
        whole_m, slack = math.dist(ends[0].spot, ends[1].spot), EDGE * book.tolerance_m + SLIP_M
        said = f"the wall {ends[0].wall!r}, which is {book.words(whole_m)} long."
        if begins < -slack:
            book.cross(node or self.at, f"it begins {book.words(-begins)} before the left-hand end of {said}")
        elif stops > whole_m + slack:
            at = width.at if width is not None else None
            book.cross(at or node or self.at, f"it ends {book.words(stops)} along {said}")

    def _start(
        self, attr: str, key: str, ends: tuple[Corner, Corner], width: Quantity | None, book: Book
    ) -> Quantity | None:
        far: Quantity | None = self.given(attr)
        if far is None or book.width is None or book.length is None:
            return None
        (x0, y0), (x1, y1) = ((end.x, end.y) for end in ends)
        across, ahead = x1.value - x0.value, y1.value - y0.value
        whole = math.hypot(across, ahead)
        if attr == "wall_right_m":
            begins = (x1 - x0) * (across / whole) + (y1 - y0) * (ahead / whole) - far
            pace = -whole
        else:
            # How far from that side the wall begins, and how fast it leads away from it.
            first, pace = {
                "from_left_m": (x0, across), "from_right_m": (book.width - x0, -across),
                "from_rear_m": (y0, ahead), "from_front_m": (book.length - y0, -ahead),
            }[attr]  # fmt: skip
            if abs(pace) < _ACROSS * whole:
                said = f"its wall runs along that side, so {key} says nothing of where on it; measure from another side"
                book.cross(self.at.get(key) or self.at, f"{said}, or from_wall_left.")
                return None
            begins = (far - first) * (whole / pace)
        if pace > 0.0:
            return begins
        if width is None:
            book.cross(self.at, "measured from that side its width is needed too; or give from_wall_left.")
            return None
        return begins - width

    def spread(self, width: Quantity | None, depth: Quantity | None, book: Book) -> None:
        """Work out where something flat on the ceiling or the floor begins, measured from the right or the rear."""
        for key in _KEYS[:2]:
            ended = self.at.get(key)
            if ended is not None:
                book.cross(ended, f"{key} counts from the end of a wall, and it lies on none; measure from a side.")
        for attr, other, extent, size in (
            ("from_left_m", "from_right_m", book.width, width), ("from_front_m", "from_rear_m", book.length, depth),
        ):  # fmt: skip
            near, away = attr.removesuffix("_m"), other.removesuffix("_m")
            far: Quantity | None = self.given(other)
            if far is None or extent is None:
                continue
            if self.at.get(near) is not None:
                book.cross(far.at or self.at, f"give either {near} or {away}, not both.")
                continue
            if size is None:
                book.cross(far.at or self.at, f"measured from that side its size is needed too; or give {near}.")
                continue
            start = extent - far - size
            self.put(attr, start, other)
            book.derive(self, near, start, "wall")
