"""Chapter decay: how long sound rings in the room, and from where on that can be said."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import Subjects

if TYPE_CHECKING:
    from roomlint.design.shell import Shell

ROOM_SHELL: Subjects[Shell] = Subjects("room", lambda room: (room.design.shell,))
