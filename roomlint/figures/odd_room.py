"""Response of a room by its plan and ceiling, asked for in two steps: solve it, then ask for pressures."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.figures.room_response import RoomResponse, solve

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.modal_sum import ComplexArray, Points

__all__ = ["solve", "transfer"]


def transfer(
    room: RoomResponse, sources: Points, receivers: Points, frequencies_hz: Sequence[float], decay_s: float
) -> ComplexArray:
    """Return the pressure at each receiver for each source alone, as `RoomResponse.transfer` does."""
    return room.transfer(sources, receivers, frequencies_hz, decay_s)
