"""Which loudspeakers there are: labels, pairs, channel sets, and where the layout wants each."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.design.base import Missing, Pair, need
from roomlint.figures import own_layouts
from roomlint.figures.layouts import layout_of, parse_label
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Mapping

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.figures.layouts import Position, Range
    from roomlint.figures.own_layouts import Counts, Published
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

Source: TypeAlias = "Loudspeaker | Subwoofer"

CLAIMS: Final[Mapping[str, Mapping[str, Range]]] = {
    "home-tolerance": {"M110": (100.0, 135.0), "M090": (60.0, 100.0), "M135": (135.0, 150.0)},
    "common-practice": {
        "M030": (22.0, 30.0),
        "M110": (90.0, 110.0),
        "M090": (90.0, 110.0),
        "M135": (135.0, 150.0),
    },
}
"""Ranges of azimuth, deg, that a declared departure may meet instead of its layout's.

Home: a listening study of home rooms (Japan Audio Society working group, AES Japan report, 2012) for the surround pair,
a published home layout guide (CEA/CEDIA-CEB22, 2009, second-hand) for sides and rears. Trade: common practice.
"""
_SINGLE_DEG: Final = 2.0
"""A single direction of a layout is met this closely; ours."""
_WITH_SCREEN_EDGES: Final = "4+9+0"
BESIDE_DEG: Final = 90.0
"""From so far round on a loudspeaker is not before the listener."""


class ChannelSet(NamedTuple):
    """Labels that a layout has and the room lacks, those it has too many, and those left out on purpose."""

    missing: tuple[str, ...]
    extra: tuple[str, ...]
    unfitted: tuple[str, ...]


class Arrangement(View):
    """The layout and what the file makes of it."""

    def position(self, source: Source) -> Position | None:
        """Return where the layout puts a source; None when it has no such label."""
        layout, label = need(self.design.layout, self.design, "layout"), need(source.label, source, "label")
        if own_layouts.is_listed(layout):
            return layout_of(layout).positions.get(label)
        found = own_layouts.published(layout, label)
        return found.position if found is not None else None

    @property
    def is_own(self) -> bool:
        """Whether the layout is one of the room's own, which the standard has no table of; one that is named."""
        return not own_layouts.is_listed(need(self.design.layout, self.design, "layout"))

    def published(self, source: Source) -> Published | None:
        """Return where the standard's tables put the label of a source in a layout of one's own; None: no table has it.

        A layout that has a table of its own is judged by that alone, so there is none for it either.
        """
        layout, label = need(self.design.layout, self.design, "layout"), need(source.label, source, "label")
        return None if own_layouts.is_listed(layout) else own_layouts.published(layout, label)

    def azimuth_range(self, speaker: Loudspeaker) -> Range | None:
        """Return the layout's range of a loudspeaker toward its own side, deg; a single direction with 2 deg around."""
        position = self.position(speaker)
        if position is None:
            return None
        low, high = sorted(position.azimuth_ranges[0])
        if parse_label(position.label).side < 0:
            low, high = -high, -low
        return (low, high) if low < high else (low - _SINGLE_DEG, high + _SINGLE_DEG)

    def shared_range(self, speaker: Loudspeaker) -> Range | None:
        """Return the range toward its own side that all tables share which a layout of one's own rests on, deg."""
        found = self.published(speaker)
        if found is None or found.shared is None:
            return None
        low, high = found.shared
        return (-high, -low) if parse_label(found.position.label).side < 0 else (low, high)

    def claimed_range(self, speaker: Loudspeaker, claim: str) -> Range | None:
        """Return the range that a departure claims to meet, toward the label's side, deg; None when there is none."""
        label = need(speaker.label, speaker, "label")
        return CLAIMS.get(claim, {}).get(label.replace("+", "").replace("-", ""))

    def inside_layout(self, speaker: Loudspeaker, seat: Seat) -> Figure | None:
        """How far inside its layout's azimuth range a loudspeaker stands; negative outside; None without a range."""
        allowed = self.azimuth_range(speaker)
        if allowed is None:
            return None
        low, high = allowed

        def compute(world: World) -> float:
            outward = self.figures.angles.outward_deg(world, speaker, seat)
            return min(outward - low, high - outward)

        return self.figure("way inside the layout's range", "deg", compute)

    def side(self, speaker: Loudspeaker) -> str:
        """Return the side that a label names: left, right or neither."""
        return {1: "left", -1: "right"}.get(parse_label(need(speaker.label, speaker, "label")).side, "")

    def is_placed(self, source: Source) -> bool:
        """Return whether the layout says where a source stands."""
        position = self.position(source)
        return position is not None and position.is_placed

    def pairs(self) -> tuple[Pair[Loudspeaker], ...]:
        """Return each loudspeaker of the left with the one that has the mirrored label, in the order of the file."""
        right = {speaker.label: speaker for speaker in reversed(self.design.loudspeakers) if speaker.label}
        found = []
        for speaker in self.design.loudspeakers:
            label = parse_label(speaker.label) if speaker.label is not None else None
            if label is not None and label.side > 0 and label.mirrored in right:
                found.append(Pair(speaker, right[label.mirrored]))
        return tuple(found)

    def surrounds(self) -> bool:
        """Whether a loudspeaker of the ear layer stands beside or behind the seats, by its label."""
        labels = (parse_label(one.label) for one in self.design.loudspeakers if one.label is not None)
        return any(one.layer == "M" and abs(one.azimuth_deg or 0.0) >= BESIDE_DEG for one in labels)

    def fitted(self) -> frozenset[str]:
        """Return the labels of all channels that something plays.

        Any subwoofer carries the LFE channels, and a subwoofer carries no other: a label of the layers on it is a slip.
        """
        labels = {speaker.label for speaker in self.design.loudspeakers if speaker.label}
        return frozenset(labels | ({"LFE", "LFE1", "LFE2"} if self.design.subwoofers else set()))

    def unlabelled(self) -> Missing | None:
        """Return the first loudspeaker that has no label, as what is missing; it may be any of them."""
        bare = next((speaker for speaker in self.design.loudspeakers if speaker.label is None), None)
        return Missing(bare, "label") if bare is not None else None

    def channel_set(self, layout: str) -> ChannelSet:
        """Return what a layout has that the room lacks, what the room has too many, and what is left out."""
        there, wanted = self.fitted(), layout_of(layout).labels
        processor = self.design.processor
        unfitted = set(processor.unfitted) if processor is not None else set()
        extra = sorted(label for label in there - set(wanted) if not label.startswith("LFE"))
        return ChannelSet(
            tuple(label for label in wanted if label not in there | unfitted),
            tuple(extra),
            tuple(label for label in wanted if label in unfitted - there),
        )

    def named_counts(self, layout: str) -> Counts | None:
        """Return what the name of a layout of one's own counts; None for one that the standard lists by its labels."""
        return None if own_layouts.is_listed(layout) else own_layouts.counts_of(layout)

    def counts(self) -> tuple[Counts, Counts]:
        """Return how many loudspeakers each layer has, and how many with those left out on purpose."""
        return own_layouts.counted(self.fitted()), own_layouts.counted(self._there())

    def partner_missing(self, speaker: Loudspeaker) -> str:
        """Return the mirrored label of a loudspeaker where no other has it and none is left out; else empty."""
        mirrored = parse_label(need(speaker.label, speaker, "label")).mirrored
        return "" if mirrored in self._there() else mirrored

    def _there(self) -> frozenset[str]:
        processor = self.design.processor
        return self.fitted() | frozenset(processor.unfitted if processor is not None else ())

    def screen_edge(self, speaker: Loudspeaker) -> Position:
        """Return where a screen-edge loudspeaker may stand, which only one layout says, whatever the room's own is."""
        return layout_of(_WITH_SCREEN_EDGES).positions[need(speaker.label, speaker, "label")]
