"""Every format is found by its name and reads a review the same careful way."""

from __future__ import annotations

from collections import UserList

import pytest

from roomlint.report import WRITERS, write
from roomlint.review.review import Review


class Rooms(UserList):
    """Rooms that count how often they are read from the start."""

    readings = 0

    def __iter__(self):
        self.readings += 1
        return super().__iter__()


@pytest.mark.parametrize("kind", sorted(WRITERS))
def test_every_format_writes_an_empty_review(make, kind):
    assert write(kind, make.review()).endswith("\n")


@pytest.mark.parametrize("kind", sorted(WRITERS))
def test_every_format_does_not_read_the_rooms_again_and_again(make, kind):
    """Many rooms wait on the disk: one reading is for the findings, another may be for the exit status."""
    rooms = Rooms([make.room(make.verdict(), house=make.house(angle__front_pair={"level": "note"}))])
    write(kind, Review(rooms, (make.rule(),), against="main"), verdicts=True)
    assert rooms.readings <= 2


@pytest.mark.parametrize("kind", sorted(WRITERS))
def test_the_order_of_rooms_does_not_change_a_byte(make, kind):
    rooms = [make.room(make.verdict(place=make.place(file=name)), file=name) for name in ("b.yaml", "a.yaml")]
    assert write(kind, make.review(*rooms)) == write(kind, make.review(*reversed(rooms)))
