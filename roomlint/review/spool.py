"""Keeps the reviews of many rooms on the disk, so that their number does not fill the memory."""

from __future__ import annotations

import pickle
import tempfile
import weakref
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, overload

if TYPE_CHECKING:
    from roomlint.design.house import House
    from roomlint.review.review import RoomReview


class Spool(Sequence["RoomReview"]):
    """Reviews in a temporary file that nothing else can name; each is read when it is asked for.

    Houses stay in memory: they are few, and every room of one shares it.
    """

    def __init__(self) -> None:
        self._file = tempfile.TemporaryFile()  # noqa: SIM115  open for as long as this lives
        self._starts: list[int] = []
        self._houses: dict[str, House] = {}
        weakref.finalize(self, self._file.close)

    def append(self, room: RoomReview) -> None:
        """Add a review at the end."""
        self._houses[room.house.file] = room.house
        self._file.seek(0, 2)
        self._starts.append(self._file.tell())
        pickle.dump(replace(room, house=type(room.house)(room.house.file)), self._file, pickle.HIGHEST_PROTOCOL)

    def __len__(self) -> int:
        return len(self._starts)

    @overload
    def __getitem__(self, index: int) -> RoomReview: ...
    @overload
    def __getitem__(self, index: slice) -> list[RoomReview]: ...
    def __getitem__(self, index: int | slice) -> RoomReview | list[RoomReview]:
        if isinstance(index, slice):
            return [self._read(start) for start in self._starts[index]]
        return self._read(self._starts[index])

    def __iter__(self) -> Iterator[RoomReview]:
        for start in self._starts:
            yield self._read(start)

    def _read(self, start: int) -> RoomReview:
        self._file.seek(start)
        room: RoomReview = pickle.load(self._file)  # noqa: S301  written by this very process
        return replace(room, house=self._houses[room.house.file])


def spooled(rooms: Iterable[RoomReview]) -> Spool:
    """Return reviews kept on the disk."""
    spool = Spool()
    for room in rooms:
        spool.append(room)
    return spool
