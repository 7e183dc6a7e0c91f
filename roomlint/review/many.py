"""Reviews many rooms in several processes; what comes out is the same, whatever their number."""

from __future__ import annotations

import os
import sys
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from dataclasses import replace
from multiprocessing import connection, get_context, parent_process
from signal import SIG_IGN, SIGINT, signal
from threading import Thread, current_thread, main_thread
from typing import TYPE_CHECKING

from roomlint.design.house import House
from roomlint.review.book import load_book
from roomlint.review.session import Choices, One, Reviewer

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from roomlint.review.desk import Desk

AT_ONCE = 16
"""Rooms handed to a process at a time: enough that the handing over costs little."""

_reviewer: list[Reviewer] = []


class ProcessEndedError(Exception):
    """A process that reviewed rooms was ended from outside, as when the memory runs out."""


def each_in_processes(paths: Sequence[str], choices: Choices, jobs: int, desk: Desk) -> Iterator[One]:
    """Yield what comes of each room file, in the order of the paths.

    The houses stay behind in the processes and are read again here, once each: their trees need not travel.
    """
    size = max(1, min(AT_ONCE, -(-len(paths) // jobs)))
    pool = ProcessPoolExecutor(
        min(jobs, -(-len(paths) // size)), mp_context=get_context("spawn"), initializer=_start, initargs=(choices,)
    )
    try:
        with _deaf_to_interrupts():
            found = pool.map(_one, paths, chunksize=size)
        for one in found:
            if one.room is not None and one.room.house.file:
                house, _ = desk.open_house(one.room.house.file)
                yield replace(one, room=replace(one.room, house=house))
            else:
                yield one
    except BrokenProcessPool:
        raise ProcessEndedError(
            "a process that reviewed rooms was ended from outside, perhaps for want of memory; "
            "use fewer --jobs, or fewer rooms at a time"
        ) from None
    finally:
        pool.shutdown(cancel_futures=True)  # after a mistake nobody waits for the rooms that are left


@contextmanager
def _deaf_to_interrupts() -> Iterator[None]:
    """Start processes that leave an interrupt from the keyboard to this one, which then ends the run quietly."""
    if current_thread() is not main_thread():  # only there can signals be set
        yield
        return
    before = signal(SIGINT, SIG_IGN)
    try:
        yield
    finally:
        signal(SIGINT, before)


def _start(choices: Choices) -> None:
    Thread(target=_end_with_parent, daemon=True).start()
    sys.stdout = sys.stderr  # what a rule prints must not get into a report
    _reviewer[:] = [Reviewer(load_book(), choices)]


def _end_with_parent() -> None:
    """End this process as soon as the one that started it is gone, however that ended."""
    parent = parent_process()
    if parent is not None:
        connection.wait([parent.sentinel])
        os._exit(1)


def _one(path: str) -> One:
    one = _reviewer[0].one(path)
    return replace(one, room=replace(one.room, house=House(one.room.house.file))) if one.room is not None else one
