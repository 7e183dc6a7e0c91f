"""Two mirrored loudspeakers of one entry, and what hangs at the ceiling without its height written down."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.design.base import Missing, Point
from roomlint.design.derived import worked_out
from roomlint.design.overhead import BELONGS
from roomlint.design.repeated import copied
from roomlint.refused import Refused

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.element import Element
    from roomlint.design.listening import Loudspeaker, Subwoofer
    from roomlint.design.quantity import Quantity
    from roomlint.design.reader import Book

    Source: TypeAlias = Loudspeaker | Subwoofer
    Plan: TypeAlias = tuple[Quantity, Quantity]

_MIRROR: Final = {"left": "right", "right": "left"}
_ALIKE: Final = frozenset({"front", "rear"})
_SIDES: Final = str.maketrans("+-", "-+")
_LFE: Final = {"LFE1": "LFE2", "LFE2": "LFE1"}
_TWO: Final = 2
_FLUSH: Final = frozenset({"in-wall", "in-ceiling"})


def pair(one: Source, book: Book) -> tuple[Source, ...]:
    """Return the left and the right that an entry with `pair` stands for, or the one of any other entry."""
    names: tuple[str, ...] | None = one.given("pair")
    node = one.at.get("pair")
    if node is None:
        middle = one.at.get("pair_middle")
        if middle is not None:
            book.cross(middle, "pair_middle belongs to a pair; write the two ids as pair: [left, right].")
        if one.at.get("id") is None:
            book.cross(one.at, f"give the {one.KIND} an id, or the ids of two mirrored ones as pair: [left, right].")
        _hang(one, one, book.halves.get(one.at.get("position") or one.at), book)
        return (one,)
    own = one.at.get("id")
    if own is not None:
        book.cross(own, "give either an id or a pair, not both: a pair names its two itself.")
    if not names or len(names) != _TWO:  # its form is told of already
        return (one,)
    left, right = one, copied(one, names[1], book)
    left.__dict__["id"] = names[0]
    right.__dict__["mirrors"] = left
    half = book.halves.get(one.at.get("position") or one.at)
    _mirror(left, right, book)
    _hang(left, left, half, book)
    _hang(right, left, (_across(half[0], left, book), half[1]) if half is not None else None, book)
    return (left, right)


def _mirror(left: Source, right: Source, book: Book) -> None:
    place: Point | None = left.given("position")
    if place is not None:
        x = _across(place.x, left, book)
        left.put("position", place, "pair_middle_m")
        right.put("position", Point(x, place.y, place.z), "pair_middle_m")
        book.derive(right, "position", x, "pair")
    label: str | None = left.given("label")
    if label is not None:
        if label[-3:] in {"000", "180"} or label == "LFE":
            said = f"{label} stands in the middle and has no partner; give the label of the left one, such as M+030"
            book.cross(left.at.get("label") or left.at, f"{said}.")
        right.put("label", _LFE.get(label) or label.translate(_SIDES))
    turned = ((right.given("aim"), "azimuth_deg"), (right.given("mounting"), "swivel_deg"), (right, "facing_deg"))
    for part, key in turned:
        angle: Quantity | None = part.given(key) if part is not None else None
        if angle is not None:
            part.put(key, angle * -1.0)
    _swap_wall(left, right, book)


def _across(x: Quantity, left: Source, book: Book) -> Quantity:
    middle: Quantity | None = left.given("pair_middle_m")
    if middle is not None:
        return x * -1.0 + middle * 2.0
    return x * -1.0 + book.width if book.width is not None else x


def _swap_wall(left: Source, right: Source, book: Book) -> None:
    """Put the right one on the other side's wall; of all other walls only the front and the rear mirror themselves."""
    mounting = right.given("mounting")
    on = mounting.given("on") if mounting is not None else None
    walls = book.names.get("wall", {})
    if on not in walls:
        return
    if on in _MIRROR and _MIRROR[on] in walls:
        mounting.put("on", _MIRROR[on])
    elif on not in _ALIKE:
        node = left.at.get("mounting")
        said = f"the wall {on!r} has no mirror; write the two loudspeakers apart."
        book.cross((node.get("on") if node is not None else None) or left.at, said)


def _hang(one: Source, entry: Source, plan: Plan | None, book: Book) -> None:
    """Work out the height of what is at the ceiling: that of the ceiling over it, less what is behind its front.

    Where nobody says how deep the cabinet is, the height stays unknown.
    """
    mounting, shell = entry.given("mounting"), book.shell
    ceiling = shell.given("ceiling") if shell is not None else None
    if plan is None or shell is None or ceiling is None or mounting is None or mounting.given("on") != "ceiling":
        return
    behind = _behind(entry)
    if behind is None:
        return
    x, y = plan

    def compute(w: Callable[[Quantity], float]) -> float:
        over: float = ceiling.height_over(w, shell, x, y)
        return over - sum(w(depth) for depth, _, _ in behind)

    try:
        z = worked_out("m", compute)
    except (Missing, Refused):
        return  # the ceiling is not described whole, or cannot be; that is told elsewhere
    keys = (ceiling.KEYS[name].attr for name in BELONGS[ceiling.given("shape") or "flat"])
    rests = [(ceiling, attr) for attr in keys if ceiling.given(attr) is not None]
    one.put("position", Point(x, y, z), "pair_middle_m", *rests, *((of, attr) for _, of, attr in behind))
    book.derive(one, "position.height", z, "ceiling")


def _behind(one: Source) -> list[tuple[Quantity, Element, str]] | None:
    """Return what is between the ceiling and the middle of a front: the mount's reach and drop, the cabinet's depth.

    Nothing, of what sits in the board itself. None where the depth is not known.
    """
    mounting, product = one.given("mounting"), one.given("product")
    mount = mounting.given("product")
    data = product.given("loudspeaker") if product is not None else None
    placement = data.given("placement") if data is not None else None
    if mount is None and placement and _FLUSH.intersection(placement):
        return []
    depth = product.given("depth_m") if product is not None else None
    if depth is None:
        return None
    found = [(depth, product, "depth_m")]
    moves = mount.given("mount") if mount is not None else None
    for of, attr in ((mounting, "extension_m"), (moves, "reach_m")):
        reach = of.given(attr) if of is not None else None
        if reach is not None:
            found.append((reach, of, attr))
            break
    drop = mounting.given("drop_m")
    return [*found, (drop, mounting, "drop_m")] if drop is not None else found
