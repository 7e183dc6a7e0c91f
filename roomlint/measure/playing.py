"""What the processor is set up for, and which channels each listening mode plays."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need
from roomlint.figures.layouts import layout_of, parse_label
from roomlint.figures.own_layouts import Counts, counted, counts_of, is_listed
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.products import ProcessorData, Taken
    from roomlint.design.record import Mode

FRONT_PAIR: Final = frozenset({"M+030", "M-030"})


class Playing(View):
    """Channels as the processor counts them."""

    @cached_property
    def fitted(self) -> tuple[str, ...]:
        """Return the different labels of the loudspeakers, in the order of the file; low-frequency channels apart."""
        return tuple(dict.fromkeys(label for one in self.design.loudspeakers if (label := one.label) and _full(label)))

    @cached_property
    def declared(self) -> tuple[str, ...]:
        """Return the labels that the processor is told of and that are left out on purpose."""
        processor = self.design.processor
        return tuple(dict.fromkeys(label for label in processor.unfitted if _full(label))) if processor else ()

    @cached_property
    def set_up(self) -> Counts:
        """Return how many channels the processor is set up for, by layer.

        What is fitted and what is declared and not fitted; no fewer than in the layout that is followed, for a
        loudspeaker of it that is not there yet comes.
        """
        told, layout = counted(dict.fromkeys((*self.fitted, *self.declared))), self.design.layout
        if layout is None:
            return told
        return Counts(*map(max, told, counts_of(layout)))

    def unlabelled(self) -> Missing | None:
        """Return what is missing where a loudspeaker without a label may play one channel more."""
        return self.figures.arrangement.unlabelled()

    def lines_wanted(self) -> int:
        """Return how many line outputs the fitted channels want at least, one each.

        What the processor's own amplifier drives wants none; while nothing says what that drives, it may drive as many
        as it has channels.
        """
        routing = self.figures.routing
        processor = routing.processor()
        speakers = [one for one in self.design.loudspeakers if one.label in self.fitted]
        labels = {one.label for one in speakers if not routing.driven_inside(one)}
        unsaid = processor in routing.drivers and not processor.feeds and processor.at.get("feeds") is None
        return len(labels) - (routing.amplifier_channels(processor) if unsaid else 0)

    def data(self) -> ProcessorData:
        """Return the processor's sheet, or raise `Missing`."""
        return self.figures.delays.needed_processor_data()

    def taken(self) -> tuple[Taken, ...]:
        """Return the layouts that the processor takes by its sheet; raises `Missing` where that says none."""
        data = self.data()
        return need(data.layouts or None, data, "layouts")

    def takes(self, counts: Counts) -> Taken | None:
        """Return the entry of the sheet for a layout of such counts; None where it takes none."""
        return next((one for one in self.taken() if one.layout == counts.name), None)

    def ear_wanted(self, counts: Counts) -> int | None:
        """Return how many ear-layer channels the processor wants for so many upper ones; None where no number helps.

        The least of its layouts that has these upper and bottom channels and as many in the ear layer or more.
        """
        layouts = [counts_of(one.layout or "0+0+0") for one in self.taken()]
        fitting = [
            one.middle
            for one in layouts
            if (one.upper, one.bottom) == (counts.upper, counts.bottom) and one.middle > counts.middle
        ]
        return min(fitting, default=None)

    # Listening modes

    def has_front_pair(self) -> bool:
        """Whether the room has the pair that plays two channels."""
        return set(self.fitted) >= FRONT_PAIR

    def never_played(self) -> tuple[str, ...]:
        """Return the fitted channels that no mode plays, in the order of the file."""
        heard = {label for mode in self.modes() for label in self.played(mode) or ()}
        low = ("LFE1",) if self.has_low_channel() and all(_full(label) for label in heard) else ()
        return (*(label for label in self.fitted if label not in heard), *low)

    def modes(self) -> tuple[Mode, ...]:
        """Return the listening modes; raises `Missing` where the file does not speak of any."""
        if not self.design.modes and self.design.at.get("listening_modes") is None:
            raise Missing(self.design, "listening_modes")
        return self.design.modes

    def played(self, mode: Mode) -> frozenset[str] | None:
        """Return the channels that a mode plays; of a layout by name without those that are declared and not fitted.

        None where the mode names neither channels nor a layout that says which they are.
        """
        if mode.channels:
            return frozenset(mode.channels)
        named = self._named(mode.layout)
        return None if named is None else frozenset(named) - set(self.declared)

    def _named(self, layout: str | None) -> tuple[str, ...] | None:
        """Return the channels of a layout by its name.

        The name of a layout of one's own counts channels and lists none: that of the room is what the room has.
        """
        if layout is not None and is_listed(layout):
            return layout_of(layout).labels
        return self.fitted if layout is not None and layout == self.design.layout else None

    def silent(self, mode: Mode) -> tuple[str, ...]:
        """Return the channels of a mode that nothing plays, in the order of the mode."""
        played = self.played(mode)
        if played is None:
            raise Missing(mode, "channels")
        order = mode.channels or self._named(mode.layout) or ()
        there = self.figures.arrangement.fitted()
        return tuple(label for label in order if label in played - there)

    def differing(self, mode: Mode) -> tuple[str, ...]:
        """Return the channels in which a mode's list and the layout that it names differ, low-frequency ones apart."""
        of_layout = self._named(mode.layout)
        if not mode.channels or of_layout is None:
            return ()
        listed, named = dict.fromkeys(mode.channels), dict.fromkeys(of_layout)
        apart = [label for label in (*named, *listed) if (label in listed) != (label in named)]
        return tuple(label for label in apart if _full(label) and (label in listed or label not in self.declared))

    def stereo_modes(self) -> tuple[Mode, ...]:
        """Return the modes in which the front pair plays alone; subwoofers may help it."""
        return tuple(mode for mode in self.modes() if _of_full(self.played(mode)) == FRONT_PAIR)

    def full_modes(self) -> tuple[Mode, ...]:
        """Return the modes in which every fitted channel plays."""
        wanted = frozenset(self.fitted)
        return tuple(mode for mode in self.modes() if self._whole(self.played(mode) or frozenset(), wanted))

    def _whole(self, played: frozenset[str], wanted: frozenset[str]) -> bool:
        """Whether channels hold the wanted ones, and low frequencies where the room has them as a channel."""
        return wanted <= played and (not self.has_low_channel() or any(not _full(label) for label in played))

    def has_low_channel(self) -> bool:
        """Whether a subwoofer plays the low-frequency channel, by its label or by the layout that is followed."""
        subwoofers, layout = self.design.subwoofers, self.design.layout
        labelled = any(one.label is not None and not _full(one.label) for one in subwoofers)
        followed = layout is not None and any(not _full(label) for label in layout_of(layout).labels)
        return labelled or (bool(subwoofers) and followed)

    def unsaid_mode(self) -> Missing | None:
        """Return what is missing where a mode that does not say what it plays may be the one that is looked for."""
        mode = next((mode for mode in self.design.modes if self.played(mode) is None), None)
        return Missing(mode, "channels") if mode is not None else None


def _full(label: str) -> bool:
    return not parse_label(label).is_lfe


def _of_full(labels: frozenset[str] | None) -> frozenset[str] | None:
    return None if labels is None else frozenset(label for label in labels if _full(label))
