"""What a design works out of what its file says: a quantity that is a function of others, and the record of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.quantity import Quantity, Share

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.element import Element
    from roomlint.design.quantity import Reading

_LEAST_MOVE: Final = 1e-4
"""What a reading is moved by, in its unit, where it is exact itself."""


class Worked(NamedTuple):
    """One value that was worked out: of which element and key, and of what (`ceiling`, `pair`, `row`, ...)."""

    element: Element
    key: str
    quantity: Quantity
    way: str


def worked_out(unit: str, compute: Callable[[Callable[[Quantity], float]], float]) -> Quantity:
    """Return a quantity that is computed of others, with the readings of all of them.

    `compute` gets something that gives each quantity its number. To first order the quantity moves with each reading as
    it does over the reading's own uncertainty; in a world in which readings are moved it is computed anew. Whatever
    refuses to be computed raises `Refused`.
    """
    seen: dict[Reading, None] = {}

    def as_read(quantity: Quantity) -> float:
        seen.update(dict.fromkeys(share.reading for share in quantity.shares))
        return quantity.value

    value = compute(as_read)
    shares = tuple(Share(reading, _slope(compute, reading)) for reading in seen)
    return Quantity(value, unit, shares, compute)


def _slope(compute: Callable[[Callable[[Quantity], float]], float], reading: Reading) -> float:
    step = max(reading.u, _LEAST_MOVE)

    def moved(by: float) -> Callable[[Quantity], float]:
        return lambda quantity: (
            quantity.value + by * sum(share.slope for share in quantity.shares if share.reading is reading)
        )

    return (compute(moved(step)) - compute(moved(-step))) / (2.0 * step)
