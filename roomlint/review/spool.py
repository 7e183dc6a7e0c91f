"""Keeps the reviews of many rooms on the disk, so that their number does not fill the memory."""

from __future__ import annotations

import pickle
import tempfile
import weakref
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import IO, TYPE_CHECKING, overload

if TYPE_CHECKING:
    from roomlint.design.house import House
    from roomlint.review.review import RoomReview


class Spool(Sequence["RoomReview"]):
    """Reviews in a temporary file that nothing else can name; each is read when it is asked for.

    Houses stay in memory: they are few, and every room of one shares it. Where there is no room for a temporary file
    the reviews stay in memory too, which is only a pity.
    """

    def __init__(self) -> None:
        self._kept: list[tuple[int, int] | bytes] = []
        """Where a review starts in the file and how long it is, or the review itself."""
        self._houses: dict[str, House] = {}
        self._end = 0
        self._file: IO[bytes] | None = None
        self._is_full = False
        try:
            # Unbuffered, so that a disk that is full is met at the write that does not fit.
            self._file = tempfile.TemporaryFile(buffering=0)  # noqa: SIM115  open for as long as this lives
        except OSError:
            self._is_full = True
        else:
            weakref.finalize(self, self._file.close)

    def append(self, room: RoomReview) -> None:
        """Add a review at the end."""
        self._houses[room.house.file] = room.house
        data = pickle.dumps(replace(room, house=type(room.house)(room.house.file)), pickle.HIGHEST_PROTOCOL)
        if not self._is_full and self._write(data):
            self._kept.append((self._end, len(data)))
            self._end += len(data)
        else:
            self._is_full = True
            self._kept.append(data)

    def _write(self, data: bytes) -> bool:
        if self._file is None:
            return False
        try:
            self._file.seek(self._end)
            rest = memoryview(data)
            while rest:
                rest = rest[self._file.write(rest) :]
        except OSError:
            return False
        return True

    def __len__(self) -> int:
        return len(self._kept)

    @overload
    def __getitem__(self, index: int) -> RoomReview: ...
    @overload
    def __getitem__(self, index: slice) -> list[RoomReview]: ...
    def __getitem__(self, index: int | slice) -> RoomReview | list[RoomReview]:
        if isinstance(index, slice):
            return [self._read(kept) for kept in self._kept[index]]
        return self._read(self._kept[index])

    def __iter__(self) -> Iterator[RoomReview]:
        for kept in self._kept:
            yield self._read(kept)

    def _read(self, kept: tuple[int, int] | bytes) -> RoomReview:
        if isinstance(kept, tuple):
            kept = self._from_file(*kept)
        room: RoomReview = pickle.loads(kept)  # noqa: S301  written by this very process
        return replace(room, house=self._houses[room.house.file])

    def _from_file(self, start: int, length: int) -> bytes:
        assert self._file is not None  # noqa: S101  what was written was written to it
        self._file.seek(start)
        parts = []
        while length and (part := self._file.read(length)):
            parts.append(part)
            length -= len(part)
        return b"".join(parts)


def spooled(rooms: Iterable[RoomReview]) -> Spool:
    """Return reviews kept on the disk."""
    spool = Spool()
    for room in rooms:
        spool.append(room)
    return spool
