"""What draws from the mains, and which circuits feed it."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from roomlint.design.base import Missing, need, unsaid
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Loudspeaker, Picture, Projector, Subwoofer
    from roomlint.design.products import Product
    from roomlint.design.supply import Amplifier, Circuit, Load, Processor, Rack
    from roomlint.measure.world import World

    Item: TypeAlias = "Amplifier | Processor | Subwoofer | Loudspeaker | Picture | Projector"


class Way(NamedTuple):
    """A load and the circuit that it is on."""

    load: Load
    circuit: Circuit


class Powered(View):
    """The equipment of a design that draws from the mains."""

    @cached_property
    def items(self) -> tuple[Item | Missing, ...]:
        """Everything that is powered; a `Missing` for what cannot be told from the file and its sheets."""
        design = self.design
        found: list[Item | Missing] = [*design.amplifiers, *self._unsaid()]
        if design.processor is not None:
            found.append(design.processor)
        found += (one for subwoofer in design.subwoofers if (one := self._bass(subwoofer)) is not None)
        found += (speaker for speaker in design.loudspeakers if draws(speaker.product))
        found += self._picture()
        return tuple(found)

    def _unsaid(self) -> Iterator[Missing]:
        """Yield what a file says nothing of, so that something may be there that draws."""
        there = {"electronics.amplifiers": self.design.amplifiers, "picture": self.design.picture}
        missing = (unsaid(self.design, way) for way, found in there.items() if not found)
        return (one for one in missing if one is not None)

    @cached_property
    def _driven(self) -> frozenset[str]:
        """Ids of what an amplifier's output drives."""
        feeds = (feed for amplifier in self.design.amplifiers for feed in amplifier.feeds)
        return frozenset(ident for feed in feeds for ident in feed.loudspeakers)

    def _bass(self, subwoofer: Subwoofer) -> Subwoofer | Missing | None:
        drawing = draws(subwoofer.product)
        if drawing is None and subwoofer.id in self._driven:
            return None
        if drawing is None:
            product = subwoofer.product
            return Missing(product, "apparent_power") if product is not None else Missing(subwoofer, "product")
        return subwoofer if drawing else None

    def _picture(self) -> Iterator[Item | Missing]:
        picture = self.design.picture
        if picture is None:
            return
        sheet = picture.product.kind if picture.product is not None else ""
        kind = picture.kind or {"display": "display", "screen": "projection"}.get(sheet)
        if kind == "display":
            yield picture
        if picture.projector is not None:
            yield picture.projector
        elif kind == "projection":
            yield Missing(picture, "projector")
        if kind is None and picture.projector is None:
            yield Missing(picture, "kind")

    @cached_property
    def ways(self) -> tuple[Way, ...]:
        """Every load with its circuit."""
        return tuple(Way(load, circuit) for circuit in self.design.circuits for load in circuit.loads)

    def feeding(self, item: Item) -> tuple[Way, ...]:
        """Return the loads that stand for an item: by its own name, or by the rack's that it is in."""
        racks = {rack.id for rack in self.design.racks if item in self.in_rack(rack)}
        return tuple(way for way in self.ways if way.load.feeds is not None and way.load.feeds in {item.id, *racks})

    def items_of(self, load: Load) -> tuple[Item, ...]:
        """Return the powered items that a load stands for."""
        named = tuple(item for item in self._sure if item.id == load.feeds)
        if named or load.feeds is None:
            return named
        rack = next((rack for rack in self.design.racks if rack.id == load.feeds), None)
        return self.in_rack(rack) if rack is not None else ()

    def in_rack(self, rack: Rack) -> tuple[Item, ...]:
        """Return the powered items that stand in a rack, by its own list or by theirs."""
        return tuple(item for item in self._sure if item.id in rack.contains or getattr(item, "rack", None) == rack.id)

    @cached_property
    def _sure(self) -> tuple[Item, ...]:
        return tuple(item for item in self.items if not isinstance(item, Missing))

    def sheet_va(self, world: World, load: Load) -> float:
        """Return what the sheets of a load's items say that they draw together, VA."""
        total = 0.0
        for item in self.items_of(load):
            product = need(item.product, item, "product")
            total += world(need(product.apparent_power_va, product, "apparent_power"))
        return total


def draws(product: Product | None) -> bool | None:
    """Return whether a product draws from the mains by its sheet, None when the sheet does not say."""
    if product is None:
        return None
    stated = [q.value for q in (product.apparent_power_va, product.power_w, product.idle_power_w) if q is not None]
    return any(value > 0.0 for value in stated) if stated else None
