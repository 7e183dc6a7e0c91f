"""Chapter boundary: what walls, floor and ceiling do to loudspeakers, ports and seats."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import Missing, No, layered, pair_of

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Applies, Pair, Room, Subjects
    from roomlint.review.subjects import Source

STANDING: Final = frozenset({"stand", "floor", "furniture"})
EAR_LAYER: Subjects[Loudspeaker] = layered("M", name="ear-layer loudspeaker")
FRONT_PAIR: Subjects[Pair[Loudspeaker]] = pair_of("M+030", "M-030", "front pair")


def stands_free(_: Room, source: Source) -> Applies:
    """Whether it stands free in the room; what holds it must be said."""
    if source.mounting is None or source.mounting.on is None:
        raise Missing(source, "mounting.on")
    if source.mounting.on in STANDING:
        return True
    return No(f"it is mounted on {source.mounting.on}")
