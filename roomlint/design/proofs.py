"""What stands for a statement that somebody must be able to check: who decided, what holds, which document says so.

Each can also be the word `none`: that there is no such thing is then stated, which is not the same as unsaid.
"""

from __future__ import annotations

from roomlint.design.keys import choice, day, quantity, text
from roomlint.design.parts import Proof, stated

__all__ = ["AnchorApproval", "Engineer", "FireApproval", "Proof", "Secondary", "Strap", "stated"]

STRUCTURE = ("joist", "rafter", "beam", "truss", "stud", "blocking", "concrete", "masonry", "steel")
"""What carries, so that something may be attached to it."""


class _Attached(Proof):
    """Something that holds a thing at a point of its own."""

    attached_to = choice("What it is attached to.", *STRUCTURE, required=True)
    rating = quantity("What it may carry, as marked.", "force", key="rating", example="500 N")
    document = text("The document that says what it carries.", "data sheet 4")
    on = day("When it was fitted or seen.", told=True)
    by = text("Who fitted or saw it.", "A. N. Installer", told=True)

    @property
    def words(self) -> str:
        """What it is and what it is attached to."""
        return f"{self.given('kind')} to {self.given('attached_to')}".replace("-", " ")


class Secondary(_Attached):
    """What holds a thing when its mount fails, at an attachment of its own; or none."""

    KIND = "secondary"
    PART = "secondary"

    kind = choice("What it is.", "wire-rope", "chain", "bracket", "rod", required=True)


class Strap(_Attached):
    """What keeps a standing thing from tipping; or none."""

    KIND = "strap"
    PART = "strap"

    kind = choice("What it is.", "strap", "bracket", "wire-rope", "chain", required=True)


class _Documented(Proof):
    """A decision that a document records."""

    document = text("Which document says so.", "calculation sheet 3", required=True)
    on = day("The day of the document.", told=True)

    @property
    def words(self) -> str:
        """The document."""
        return str(self.given("document") or "none")


class Engineer(_Documented):
    """The engineer's decision; or none."""

    KIND = "engineer"
    PART = "engineer"

    by = text("Who decided.", "A. N. Engineer", required=True, told=True)


class AnchorApproval(_Documented):
    """The approval of an anchor for its base; or none."""

    KIND = "anchor approval"
    PART = "anchor_approval"


class FireApproval(_Documented):
    """The approval of a lining by a large-scale fire test; or none."""

    KIND = "approval"
    PART = "fire_approval"

    fire_class = text("The class that the document gives.", "B-s1,d0", key="class")
