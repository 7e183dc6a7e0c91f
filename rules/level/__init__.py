"""Chapter level: how loud amplifiers, loudspeakers and subwoofers get at the seats, against what is asked for."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Window, Windows, practice, standard

if TYPE_CHECKING:
    from roomlint.review import Room

SHORT_DB: Final = 3.0
"""At home so much may be missing before it is more than a note."""
SPARE_DB: Final = 3.0
"""Twice the power in hand, for critical listening."""
CALIBRATION: Final = standard(
    "SMPTE RP 200", "reference level", edition="2012", read=False, note="85 dB at 20 dB under full scale, as quoted"
)
ROOMS: Final = standard(
    "ATSC A/85", "reference level by volume of the room", read=False,
    note="76 and 85 dB as quoted, rows between from memory",
)  # fmt: skip
SPARE: Final = practice("3 dB in hand for critical listening, 3 dB of want at home a note; the latter a choice of ours")


def reaching(room: Room, wanted_db: float) -> Windows:
    """Return the windows of a level that is asked for: strict for critical listening, with some want at home."""
    if room.critical:
        return Windows(Window(wanted_db, None, "dB"), target=Window(wanted_db + SPARE_DB, None, "dB"))
    return Windows(Window(wanted_db - SHORT_DB, None, "dB"), target=Window(wanted_db, None, "dB"))
