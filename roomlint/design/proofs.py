"""What stands for a statement that somebody must be able to check: who decided, what holds, which document says so.

Each can also be the word `none`: that there is no such thing is then stated, which is not the same as unsaid. Inside
one, a document or a name that is only a word for nothing is refused: it would pass for the thing itself.
"""

from __future__ import annotations

from roomlint.design.keys import choice, day, text, whole
from roomlint.design.measured import length, quantity
from roomlint.design.parts import Proof, stated, words

__all__ = [
    "AnchorApproval", "BoxListing", "Engineer", "FastenerReport", "FireApproval", "Proof", "PullTest", "Secondary",
    "Strap", "stated",
]  # fmt: skip

STRUCTURE = ("joist", "rafter", "beam", "truss", "stud", "blocking", "concrete", "masonry", "steel")
"""What carries, so that something may be attached to it."""


class _Attached(Proof):
    """Something that holds a thing at a point of its own."""

    attached_to = choice("What it is attached to.", *STRUCTURE, required=True, told=True)
    rating = quantity("What it may carry, as marked.", "force", high=1e5, key="rating", example="500 N")
    document = text("The document that says what it carries.", "data sheet 4", told=True, proves=True)
    on = day("When it was fitted or seen.", told=True)
    by = text("Who fitted or saw it.", "A. N. Installer", told=True, proves=True)

    @property
    def words(self) -> str:
        """What it is and what it is attached to."""
        return f"{self.given('kind')} to {self.given('attached_to')}".replace("-", " ")


class Secondary(_Attached):
    """What holds a thing when its mount fails, at an attachment of its own; or none."""

    KIND = "secondary"
    PART = "secondary"

    kind = choice("What it is.", "wire-rope", "chain", "bracket", "rod", required=True, told=True)
    count = whole("How many of them, each at a point of its own.", 1, 12, example=2)


class Strap(_Attached):
    """What keeps a standing thing from tipping; or none."""

    KIND = "strap"
    PART = "strap"

    kind = choice("What it is.", "strap", "bracket", "wire-rope", "chain", required=True, told=True)


class _Documented(Proof):
    """A decision that a document records."""

    document = text("Which document says so.", "calculation sheet 3", required=True, told=True, proves=True)
    on = day("The day of the document.", told=True)

    @property
    def words(self) -> str:
        """The document."""
        return str(self.given("document") or "none")


class Engineer(_Documented):
    """The engineer's decision; or none."""

    KIND = "engineer"
    PART = "engineer"

    by = text("Who decided.", "A. N. Engineer", required=True, told=True, proves=True)


class AnchorApproval(_Documented):
    """The approval of an anchor for its base; or none."""

    KIND = "anchor approval"
    PART = "anchor_approval"

    bases = words(
        "The bases that the document covers.",
        choice("A base.", "concrete", "masonry", "hollow-block", "brick-veneer"),
        4,
    )
    embedment_m = length("The least depth that it asks for.", high=1.0, example="50 mm")
    edge_distance_m = length("The least distance to an edge that it asks for.", high=5.0, example="60 mm")
    spacing_m = length("The least spacing that it asks for.", high=3.0, example="120 mm")


class PullTest(_Documented):
    """A test on site: anchors of this kind that were pulled in this base; or none."""

    KIND = "pull test"
    PART = "pull_test"

    load_n = quantity("What each of them held.", "force", high=1e5, key="load", example="2 kN")
    count = whole("How many were pulled.", 1, 64, example=3)
    by = text("Who pulled them.", "A. N. Installer", told=True, proves=True)


class FastenerReport(_Documented):
    """What an evaluation report allows for one fastener in this base; or none."""

    KIND = "fastener report"
    PART = "fastener_report"

    withdrawal_n = quantity(
        "Allowable pull on one fastener under a permanent load; a design value of the Eurocode over 1.35.",
        "force",
        high=2e4,
        example="900 N",
    )
    shear_n = quantity(
        "Allowable shear of one fastener, with the board between if there is any.", "force", high=2e4, example="400 N"
    )


class BoxListing(_Documented):
    """What an electrical box is listed and marked to support; or none."""

    KIND = "box listing"
    PART = "box_listing"

    marked_mass_kg = quantity("The mass that is marked on it.", "mass", high=200.0, example="23 kg")


class FireApproval(_Documented):
    """The approval of a lining by a large-scale fire test; or none."""

    KIND = "approval"
    PART = "fire_approval"

    fire_class = text("The class that the document gives.", "B-s1,d0", key="class", told=True)
