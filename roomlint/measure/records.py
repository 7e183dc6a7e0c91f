"""What was recorded on the site and is left behind: proofs of fixings, tests of circuits, documents."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need
from roomlint.design.listening import WOOD
from roomlint.measure.view import View

if TYPE_CHECKING:
    from datetime import date

    from roomlint.design.base import Element
    from roomlint.design.record import Item
    from roomlint.design.supply import Circuit
    from roomlint.measure.holding import Held

DOCUMENTS: Final = ("drawings", "settings", "responses", "instructions")
"""What is left behind on paper or on file."""
_TORQUED: Final = frozenset({
    "lag-screw", "through-bolt", "structural-screw", "expansion-anchor", "adhesive-anchor", "concrete-screw",
})  # fmt: skip
_PILOTED: Final = frozenset({"lag-screw", "wood-screw"})


class Records(View):
    """The records of a handover."""

    def items(self, kind: str) -> tuple[Item, ...]:
        """Return the handover items of a kind; raises `Missing` where the file does not speak of a handover."""
        if not self.design.handover and self.design.at.get("handover") is None:
            raise Missing(self.design, "handover")
        return tuple(item for item in self.design.handover if item.kind == kind)

    def record(self, kind: str, of: Element) -> Item | None:
        """Return the record of a kind that names an element and is done; None where there is none.

        Raises `Missing` where an item that names it does not say what it is, or whether it is done.
        """
        named = [item for item in self.items(kind) if of.id in item.of]
        found = next((item for item in named if item.done), None)
        if found is not None:
            return found
        unsaid = next((item for item in named if item.done is None), None)
        if unsaid is not None:
            raise Missing(unsaid, "done")
        bare = next((item for item in self.design.handover if item.kind is None and of.id in item.of), None)
        if bare is not None:
            raise Missing(bare, "kind")
        return None

    def wanted_records(self, thing: Held) -> tuple[str, ...]:
        """Return the kinds of records that a fixing asks for."""
        mounts = self.figures.mounts
        fastener, into = mounts.fastener(thing), mounts.into(thing)
        wanted = []
        if into in WOOD or into == "steel-stud":
            wanted.append("stud-proved")
        if fastener in _PILOTED and into in WOOD:
            wanted.append("pilot-hole")
        if fastener in _TORQUED:
            wanted.append("torque")
        return tuple(wanted)

    def unrecorded(self, thing: Held) -> tuple[str, ...]:
        """Return the kinds of records that a fixing asks for and that are not there, as words."""
        kinds = (kind for kind in self.wanted_records(thing) if self.record(kind, thing) is None)
        return tuple(kind.replace("-", " ") for kind in kinds)

    def out_of_order(self, thing: Held) -> tuple[tuple[str, date], tuple[str, date]] | None:
        """Return a record of a fixing that is younger than one that it comes before, with that one; None without."""
        kept = [
            (kind, record) for kind in self.wanted_records(thing) if (record := self.record(kind, thing)) is not None
        ]
        days = [(kind.replace("-", " "), need(record.on, record, "on")) for kind, record in kept]
        return next(((one, other) for one, other in pairwise(days) if one[1] > other[1]), None)

    def lacking_documents(self) -> tuple[str, ...]:
        """Return the kinds of documents that are not left behind; raises `Missing` where one is not said to be done."""
        lacking, unsaid = [], None
        for kind in DOCUMENTS:
            items = self.items(kind)
            if not any(item.done for item in items):
                lacking.append(kind)
                unsaid = unsaid or next((item for item in items if item.done is None), None)
        bare = next((item for item in self.design.handover if item.kind is None), None)
        if lacking and unsaid is not None:
            raise Missing(unsaid, "done")
        if lacking and bare is not None:
            raise Missing(bare, "kind")
        return tuple(lacking)

    def tests_of(self, circuit: Circuit) -> tuple[str, ...]:
        """Return the kinds of tests that a circuit asks for."""
        if circuit.rcd_a is not None or circuit.gfci:
            return ("insulation-test", "residual-current-test")
        if not circuit.no_rcd:
            need(circuit.gfci, circuit, "gfci")
        return ("insulation-test",)
