"""Every format is found by its name, reads a review once and writes it part by part."""

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
    text = make.report(kind, make.review())
    assert text == "" or text.endswith("\n")


@pytest.mark.parametrize("kind", sorted(WRITERS))
def test_every_format_does_not_read_the_rooms_again_and_again(make, kind):
    """Many rooms wait on the disk: one reading is for the findings, another may be for the exit status."""
    rooms = Rooms([make.room(make.verdict(), house=make.house(angle__front_pair={"level": "note"}))])
    for _ in write(kind, Review(rooms, (make.rule(),), against="main")):
        pass
    assert rooms.readings <= 2


@pytest.mark.parametrize("kind", ["text", "lines", "sarif"])
def test_no_format_waits_for_the_last_room_before_it_writes_the_first(make, kind):
    def rooms():
        yield make.room(make.verdict(), code="first", file="first.room.yaml")
        raise LookupError

    class Endless(list):
        def __iter__(self):
            return rooms()

    parts = write(kind, Review(Endless(), (make.rule(),)))
    assert any("first" in part for part in parts)


@pytest.mark.parametrize("kind", sorted(WRITERS))
def test_the_same_review_gives_the_same_bytes(make, kind):
    review = make.review(make.basement(), make.quick(), rules=make.rules())
    assert make.report(kind, review) == make.report(kind, review)
