"""Chapter distance: how far things stand, when their sound arrives, and what is entered in the processor for it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import LOUDSPEAKERS, Seen, Subjects, at_each_seat, memory, pair_of, standard

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.model import Design
    from roomlint.review import Applies, Missing, Pair, Room

AIR = standard("ISO 9613-1", "formula A.5", edition="1993", read=False, note="through two public packages")
EARS = standard("published precedence-effect studies", "summing localisation, leading source", read=False)
TUTORIAL = standard("monitoring tutorial on BS.775-1 and BS.1116-1", edition="2005", read=False)
HOME_STUDY = standard("Japan Audio Society working group on home theatre", "AES Japan report, 2012", read=False)
CHANNELS_ALIKE = memory("100 microseconds between channels", document="ITU-R BS.1116")
FRONT_PAIR: Subjects[Pair[Loudspeaker]] = pair_of("M+030", "M-030", "front pair")


def _other_seats(room: Room) -> Iterator[Seat]:
    yield from room.figures.delays.other_seats()


def _pair_at_seats(room: Room) -> Iterator[Seen[Pair[Loudspeaker], Seat] | Missing]:
    for pair in FRONT_PAIR.find(room):
        if isinstance(pair, Exception):
            yield pair
        else:
            yield from (Seen(pair, seat) for seat in room.figures.delays.other_seats())


def _at_seats(room: Room) -> Iterator[Seen[Loudspeaker, Seat]]:
    for speaker in room.design.loudspeakers:
        yield from (Seen(speaker, seat) for seat in room.figures.delays.other_seats())


OTHER_SEATS: Subjects[Seat] = Subjects("seat beside the reference seat", _other_seats, ("seats",))
PAIR_AT_SEATS: Subjects[Seen[Pair[Loudspeaker], Seat]] = Subjects(
    "front pair with a seat beside the reference seat", _pair_at_seats, ("loudspeakers", "seats")
)
AT_OTHER_SEATS: Subjects[Seen[Loudspeaker, Seat]] = Subjects(
    "loudspeaker with a seat beside the reference seat", _at_seats, ("loudspeakers", "seats")
)
EVERY_SEAT: Subjects[Seen[Loudspeaker, Seat]] = at_each_seat(LOUDSPEAKERS)


def processor_stands(room: Room, _: Design) -> Applies:
    """Whether the file has electronics; a room without any is not known to have no processor, so its key is wanted."""
    room.figures.delays.processor()
    return True
