"""The way from a content channel to a loudspeaker: line output, amplifier output, cable, and what each can take."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias, TypeGuard

from roomlint.design.base import Missing, need
from roomlint.design.listening import Loudspeaker
from roomlint.figures import amplifier_load
from roomlint.measure.powered import draws
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.design.listening import Subwoofer
    from roomlint.design.products import AmplifierData
    from roomlint.design.quantity import Quantity
    from roomlint.design.supply import Amplifier, Cable, Feed, Processor, Sent
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

    Source: TypeAlias = "Loudspeaker | Subwoofer"
    Driver: TypeAlias = "Amplifier | Processor"

LOW: Final = "low frequencies"
"""The one signal of all subwoofers, as a channel beside the labels."""
FRONTS: Final = frozenset({"M+030", "M-030", "M+000"})
_ALONE = "an output is not bridged where nothing is said of it"
_TO_SOURCE: Final = frozenset({"loudspeaker", "line-level", "network"})
_LINKING: Final = frozenset({"line-level", "network"})
"""What carries a signal to a loudspeaker, and to an amplifier."""
DIP: Final = "a cabinet dips to 80 % of its rated impedance where its sheet does not say"
_REFERRED_OHM: Final = 8.0


class Driven(NamedTuple):
    """An amplifier's output, with the amplifier it belongs to."""

    feed: Feed
    driver: Driver


class Routing(View):
    """Who drives what, through which output."""

    @cached_property
    def drivers(self) -> tuple[Driver, ...]:
        """Every amplifier, the one inside the processor last."""
        processor = self.design.processor
        inside = (processor,) if processor is not None and (processor.feeds or _amplifies(processor)) else ()
        return (*self.design.amplifiers, *inside)

    @cached_property
    def driven(self) -> tuple[Driven, ...]:
        """Every output of every amplifier."""
        return tuple(Driven(feed, driver) for driver in self.drivers for feed in driver.feeds)

    @cached_property
    def _source_of(self) -> dict[str, Source]:
        return {source.id: source for source in self.design.sources}

    def of_feed(self, feed: Feed) -> tuple[Source, ...]:
        """Return what an amplifier's output drives."""
        return tuple(self._source_of[ident] for ident in feed.loudspeakers)

    def of_sent(self, sent: Sent) -> tuple[Source, ...]:
        """Return what plays a line output's signal."""
        return tuple(self._source_of[ident] for ident in sent.plays)

    def feeding(self, source: Source) -> tuple[Driven, ...]:
        """Return the amplifier outputs that drive a source."""
        return tuple(one for one in self.driven if source.id in one.feed.loudspeakers)

    def unsaid_amplifier(self) -> Missing | None:
        """Return what is missing where an amplifier that would drive something may not be in the file."""
        electronics = self.design.electronics
        if not self.drivers and (electronics is None or electronics.at.get("amplifiers") is None):
            return Missing(self.design, "electronics.amplifiers")
        bare = next((driver for driver in self.drivers if driver.at.get("feeds") is None), None)
        return Missing(bare, "feeds") if bare is not None else None

    def is_active(self, source: Source) -> bool | None:
        """Whether a source has an amplifier of its own, by its sheet; None where neither sheet nor amplifier tells.

        A cabinet whose sheet says nothing of the mains is a passive one, as long as it is no subwoofer.
        """
        from roomlint.design.listening import Subwoofer

        if source.product is None:
            return None
        found = draws(source.product)
        return False if found is None and not isinstance(source, Subwoofer) else found

    def needs_amplifier(self, source: Source) -> bool:
        """Whether a source needs an amplifier beside it; raises `Missing` where nothing tells."""
        active = self.is_active(source)
        if active is None and not self.feeding(source):
            product = source.product
            raise Missing(product, "apparent_power") if product is not None else Missing(source, "product")
        return not active

    # The processor

    def processor(self) -> Processor:
        """Return the processor, or raise `Missing`."""
        return self.figures.delays.processor()

    @cached_property
    def sent(self) -> tuple[Sent, ...]:
        """Every line output; raises `Missing` where the file does not list them."""
        processor = self.processor()
        if not processor.outputs and processor.at.get("outputs") is None:
            raise Missing(processor, "outputs")
        return processor.outputs

    def sending(self, source: Source) -> tuple[Sent, ...]:
        """Return the line outputs that a source plays."""
        return tuple(sent for sent in self.sent if source.id in sent.plays)

    def driven_inside(self, source: Source) -> bool:
        """Whether the processor's own amplifier drives a source, so that it needs no line output."""
        return any(one.driver is self.design.processor for one in self.feeding(source))

    def channel(self, source: Source) -> str:
        """Return the channel that a source plays: its label, or the one of all subwoofers."""
        from roomlint.design.listening import Subwoofer

        return LOW if isinstance(source, Subwoofer) else need(source.label, source, "label")

    def channels(self, sources: tuple[Source, ...]) -> tuple[str, ...]:
        """Return the different channels that some sources play, in their order.

        Two that differ are enough; a label that is not there is asked for only where it decides.
        """
        known = {self.channel(source): None for source in sources if _named(source)}
        bare = next((source for source in sources if not _named(source)), None)
        if bare is not None and len(known) <= 1 and len(sources) > 1:
            raise Missing(bare, "label")
        return tuple(known)

    def lines_on(self, feed: Feed) -> tuple[str, ...]:
        """Return the line outputs that the loudspeakers on an amplifier's output play, as far as they are listed."""
        processor = self.design.processor
        outputs = processor.outputs if processor is not None else ()
        wired = frozenset(feed.loudspeakers)
        return tuple(dict.fromkeys(sent.number for sent in outputs if not wired.isdisjoint(sent.plays)))

    # Counts

    def outputs_of(self, driver: Driver) -> tuple[int, list[str]]:
        """Return how many outputs an amplifier's feeds use, bridged ones twice, and the numbers used more than once."""
        numbers = [feed.output for feed in driver.feeds if feed.output is not None]
        twice = sorted({number for number in numbers if numbers.count(number) > 1})
        return max([self.driven_channels(driver), *numbers]), [str(number) for number in twice]

    def driven_channels(self, driver: Driver) -> int:
        """Return how many channels of an amplifier work."""
        return sum(2 if feed.bridged else 1 for feed in driver.feeds)

    def amplifier_data(self, driver: Driver) -> AmplifierData:
        """Return an amplifier's sheet, or raise `Missing`."""
        product = need(driver.product, driver, "product")
        return need(product.amplifier, product, "amplifier")

    def amplifier_channels(self, driver: Driver) -> int:
        """Return how many channels an amplifier has by its sheet."""
        data = self.amplifier_data(driver)
        return need(data.channels, data, "channels")

    def wanted_channels(self) -> tuple[int, Missing | None]:
        """Return how many amplifier channels the room wants, and of what it is not known whether it wants one.

        What is wired to an output already counts by the output, so that two cabinets on one want one channel.
        """
        used = sum(self.driven_channels(driver) for driver in self.drivers)
        wanted, unknown = used, None
        for source in self.design.sources:
            if self.feeding(source):
                continue
            try:
                wanted += self.needs_amplifier(source)
            except Missing as missing:
                unknown = unknown or missing
        return wanted, unknown

    def lines_used(self) -> int:
        """Return how many line outputs play loudspeakers; those of subwoofers are counted apart."""
        return len(self.sent) - self.subwoofer_lines_used()

    def last_line(self) -> int:
        """Return the highest number of a line output in use."""
        return max((sent.output or 0 for sent in self.sent), default=0)

    def subwoofer_lines_used(self) -> int:
        """Return how many line outputs play a subwoofer."""
        subwoofers = {one.id for one in self.design.subwoofers}
        return sum(not subwoofers.isdisjoint(sent.plays) for sent in self.sent)

    # What an output sees

    def load(self, feed: Feed) -> Figure:
        """Rated impedance that an amplifier's output sees as wired."""
        return self.figure("load on the output", "ohm", lambda w: self.load_ohm(w, feed))

    def load_ohm(self, world: World, feed: Feed) -> float:
        """Return the rated impedance that an amplifier's output sees as wired, in a world."""
        sources = self.of_feed(feed)
        if len(sources) > 1:
            need(feed.wiring, feed, "wiring")
        if feed.bridged is None:
            world.assume(_ALONE)
        loads = [self.rating_ohm(world, source) for source in sources]
        return amplifier_load.series_ohm(loads) if feed.wiring == "series" else amplifier_load.parallel_ohm(loads)

    def rating_ohm(self, world: World, source: Source) -> float:
        """Return the rated impedance of a source to reckon with, in a world."""
        product = need(source.product, source, "product")
        data = need(product.loudspeaker, product, "loudspeaker")
        rated, least = data.impedance_ohm, data.minimum_impedance_ohm
        if rated is None and least is None:
            raise Missing(product, "loudspeaker.impedance")
        if least is None:
            world.assume(DIP)
        known = (world(rated) if rated is not None else None, world(least) if least is not None else None)
        return amplifier_load.rating_ohm(*known)

    # Lines of constant voltage

    @staticmethod
    def is_tapped(source: Source) -> TypeGuard[Loudspeaker]:
        """Whether a loudspeaker is set to a tap, or has taps to be set to."""
        if not isinstance(source, Loudspeaker):
            return False
        data = source.product.loudspeaker if source.product is not None else None
        return source.tap_w is not None or (data is not None and bool(data.taps))

    def taps(self, feed: Feed) -> tuple[Quantity, ...]:
        """Return the taps that are set on an output's line; raises `Missing` where one is not told."""
        speakers = [one for one in self.of_feed(feed) if self.is_tapped(one)]
        return tuple(need(one.tap_w, one, "tap") for one in speakers)

    def tap_use(self, feed: Feed, driver: Driver) -> Figure:
        """Taps on an output's line by the amplifier's rated power."""
        taps, data = self.taps(feed), self.amplifier_data(driver)
        power = need(data.power_w, data, "power")

        def compute(world: World) -> float:
            return amplifier_load.tap_share_percent([world(tap) for tap in taps], world(power))

        return self.figure("taps over the rated power", "%", compute)

    def line_ohm(self, world: World, source: Loudspeaker) -> float:
        """Return what one tapped loudspeaker loads its line with, ohm."""
        ways = self.feeding(source)
        if not ways:
            raise self.unsaid_amplifier() or Missing(self.design, "electronics.amplifiers[].feeds")
        data = self.amplifier_data(ways[0].driver)
        volts, tap = need(data.line_voltage_v, data, "line_voltage"), need(source.tap_w, source, "tap")
        return amplifier_load.line_ohm(world(volts), [world(tap)])

    def least_load(self, feed: Feed, driver: Driver) -> Quantity:
        """Return the least load that an amplifier takes with as many channels driven as its feeds use."""
        data = self.amplifier_data(driver)
        if feed.bridged:
            return need(data.bridged_load_ohm, data, "bridged_load")
        driven = self.driven_channels(driver)
        fitting = [row for row in data.least_loads if row.driven is not None and row.driven >= driven]
        if fitting:
            row = min(fitting, key=lambda row: row.driven or 0)
            return need(row.load_ohm, row, "load")
        return need(data.minimum_load_ohm, data, "minimum_load")

    def power_w(self, world: World, source: Source) -> float:
        """Return the rated power of what drives a source, brought to one load, W."""
        ways = self.feeding(source)
        if not ways:
            raise self.unsaid_amplifier() or Missing(self.design, "electronics.amplifiers[].feeds")
        data = self.amplifier_data(ways[0].driver)
        rated, into = need(data.power_w, data, "power"), need(data.power_into_ohm, data, "power_into")
        # Two channels that are bridged give one load twice the voltage of either.
        return (4.0 if ways[0].feed.bridged else 1.0) * amplifier_load.power_into_w(
            world(rated), world(into), _REFERRED_OHM
        )

    def rivals(self, speaker: Loudspeaker) -> tuple[Loudspeaker, ...]:
        """Return the driven loudspeakers that are none of the fronts; raises where a label would tell and is absent.

        Likewise where one is not driven yet, and an amplifier that is not in the file may drive it.
        """
        passive = [one for one in self.design.loudspeakers if one is not speaker and not self.is_active(one)]
        others = [one for one in passive if one.label is None or one.label not in FRONTS]
        for one in others:
            need(one.label, one, "label")
            unsaid = self.unsaid_amplifier()
            if unsaid is not None and not self.feeding(one):
                raise unsaid
        return tuple(one for one in others if self.feeding(one))

    def power_share(self, speaker: Loudspeaker, others: tuple[Loudspeaker, ...]) -> Figure:
        """Rated power behind a loudspeaker over the most behind any of some others."""

        def compute(world: World) -> float:
            return self.power_w(world, speaker) / max(self.power_w(world, other) for other in others)

        return self.figure("power over the most of the others", "", compute)

    # Cables

    def cables_to(self, source: Source) -> tuple[Cable, ...]:
        """Return the loudspeaker and line-level cables that end at a source; lighting and mains are none of them."""
        return tuple(cable for cable in self.design.cables if cable.end == source.id and cable.carries in _TO_SOURCE)

    def unsaid_run(self, source: Source) -> Missing | None:
        """Return what is missing of a cable that may be one to a source."""
        return self._unsaid(("to", source.id), carrying=_TO_SOURCE)

    def unsaid_link(self, amplifier: Driver) -> Missing | None:
        """Return what is missing of a cable that may be one from the processor to an amplifier."""
        return self._unsaid(("to", amplifier.id), ("from", self.processor().id), carrying=_LINKING)

    def _unsaid(self, *ends: tuple[str, str], carrying: frozenset[str]) -> Missing | None:
        for cable in self.design.cables:
            said = {"to": cable.end, "from": cable.start}
            asked = [(key, said[key], frozenset({wanted})) for key, wanted in ends]
            asked.append(("carries", cable.carries, carrying))
            bare = next((key for key, value, _ in asked if value is None), None)
            if bare is not None and all(value is None or value in wanted for _, value, wanted in asked):
                return Missing(cable, bare)
        return None

    def racks_of(self, driver: Driver) -> frozenset[str]:
        """Return the racks that an amplifier or the processor is in."""
        own = getattr(driver, "rack", None)
        return frozenset(rack.id for rack in self.design.racks if driver.id in rack.contains or rack.id == own)

    def links_to(self, amplifier: Driver) -> tuple[Cable, ...]:
        """Return the line-level and network cables that run from the processor to an amplifier."""
        processor = self.processor()
        return tuple(
            cable
            for cable in self.design.cables
            if cable.end == amplifier.id and cable.start == processor.id and cable.carries in _LINKING
        )

    def begins_of(self, source: Source) -> frozenset[str]:
        """Return the ids of what a source's cable may come from: what drives it, or its neighbour on one output."""
        ways = self.feeding(source)
        ids = {one.driver.id for one in ways}
        ids |= {ident for one in ways for ident in one.feed.loudspeakers if ident != source.id}
        processor = self.design.processor
        if not ways and processor is not None:
            ids |= {processor.id}
            ids |= {ident for sent in processor.outputs if source.id in sent.plays for ident in sent.plays}
        return frozenset(ids - {source.id})

    def rows(self) -> Iterator[tuple[Source, tuple[Sent, ...], tuple[Driven, ...], tuple[Cable, ...]]]:
        """Yield every source with its way: line outputs, amplifier outputs, cables."""
        processor = self.design.processor
        outputs = processor.outputs if processor is not None else ()
        for source in self.design.sources:
            sending = tuple(sent for sent in outputs if source.id in sent.plays)
            yield source, sending, self.feeding(source), self.cables_to(source)


def _named(source: Source) -> bool:
    from roomlint.design.listening import Subwoofer

    return isinstance(source, Subwoofer) or source.label is not None


def _amplifies(processor: Processor) -> bool:
    return processor.product is not None and processor.product.amplifier is not None
