"""What was set, measured and recorded when a room was set up: order of the steps, entries, records of the site."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, Final, TypeAlias, TypeVar

from roomlint.design.base import Missing, need, unsaid
from roomlint.design.listening import Loudspeaker
from roomlint.figures import settings
from roomlint.measure.playing import FRONT_PAIR
from roomlint.measure.records import Records
from roomlint.measure.routing import FRONTS

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.design.listening import Subwoofer
    from roomlint.design.record import Item, Preset, Setting, Step
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

    Source: TypeAlias = "Loudspeaker | Subwoofer"

T = TypeVar("T", bound="Step | Item")
FIRST: Final = {
    "routing": ("wiring",),
    "polarity": ("wiring",),
    "subwoofers": ("wiring", "polarity"),
    "crossovers": ("wiring", "polarity", "subwoofers"),
    "delays": ("wiring", "polarity"),
    "levels": ("wiring", "polarity"),
    "correction": ("wiring", "polarity", "subwoofers", "crossovers", "delays", "levels"),
    "verification": ("wiring", "polarity", "subwoofers", "crossovers", "delays", "levels", "correction"),
}
"""What each step of a calibration rests on: common practice; polarity before delay and level in two web guides."""
LAST: Final = "taste"
PROOF: Final = "verification"
"""What measures all that was set: whatever was set again after the last of it was never measured."""
EQUAL_GAIN: Final = "amplifiers of equal gain"
MAJORITY: Final = 3
"""So many tell by themselves which one of them is off."""


class Commissioning(Records):
    """The record of the setting up."""

    def setting(self, source: Source) -> Setting:
        """Return what is entered for a source, or raise `Missing`."""
        found = self.figures.delays.setting_of(source)
        if found is None:
            raise Missing(self.design, "calibration.settings")
        return found

    def settings(self) -> tuple[Setting, ...]:
        """Return everything that is entered; raises `Missing` where the file does not speak of entries."""
        calibration, node = self.design.calibration, self.design.at.get("calibration")
        if not calibration.settings and (node is None or node.get("settings") is None):
            raise Missing(self.design, "calibration.settings")
        return calibration.settings

    def subwoofers(self) -> tuple[Subwoofer, ...]:
        """Return the subwoofers; raises `Missing` where the file does not speak of any."""
        missing = unsaid(self.design, "subwoofers")
        if missing is not None:
            raise missing
        return self.design.subwoofers

    # The steps of the calibration

    def steps(self) -> tuple[Step, ...]:
        """Return the steps; raises `Missing` where the file does not speak of any."""
        calibration = self.design.calibration
        node = self.design.at.get("calibration")
        if not calibration.steps and (node is None or node.get("steps") is None):
            raise Missing(self.design, "calibration.steps")
        return calibration.steps

    def lacking_steps(self) -> tuple[str, ...]:
        """Return the kinds of steps that every calibration of such a room has and this one lacks, in their order."""
        wanted = ["wiring", "polarity", "delays", "levels"]
        if len(self.design.subwoofers) > 1:
            wanted.insert(2, "subwoofers")
        if self.design.subwoofers:
            wanted.insert(-2, "crossovers")
        steps = self.steps()
        there = {step.kind for step in steps}
        if "correction" in there:
            wanted.append("verification")
        lacking = tuple(kind for kind in wanted if kind not in there)
        bare = next((step for step in steps if step.kind is None), None)
        if lacking and bare is not None:
            # It may be the one.
            raise Missing(bare, "kind")
        if not lacking:
            # With subwoofers there would be steps more.
            self.subwoofers()
        return lacking

    def too_early(self, step: Step) -> tuple[str, ...]:
        """Return the kinds of steps that a step rests on and that were done after it only.

        By their days, of one day by the order of the file. After a taste curve nothing else is set, and after the last
        verification nothing that it verifies.
        """
        steps, own = self.steps(), need(step.kind, step, "kind")
        need(step.on, step, "on")
        at = steps.index(step)
        first = FIRST.get(own, ())
        found: dict[str, list[bool]] = {}
        for place, other in enumerate(steps):
            if other is step or other.kind == own:
                continue
            kind = need(other.kind, other, "kind")
            if own == LAST or kind in first:
                need(other.on, other, "on")
                found.setdefault(kind, []).append(_precedes(other, step, place < at))
        enough = all if own == LAST or (own == PROOF and not self._again_later(step)) else any
        return tuple(kind for kind, before in found.items() if not enough(before))

    def _again_later(self, step: Step) -> bool:
        steps = self.steps()
        at = steps.index(step)
        return any(
            other is not step and other.kind == step.kind and _precedes(step, other, at < place)
            for place, other in enumerate(steps)
        )

    def taste_apart_of_record(self) -> str:
        """Return in which way steps and presets disagree about a taste curve; empty where they agree."""
        steps, presets = self.steps(), self.presets()
        kinds, marks = [step.kind for step in steps], [preset.taste for preset in presets]
        was_set, is_stored = LAST in kinds, True in marks
        if was_set and not is_stored:
            for preset in presets:
                need(preset.taste, preset, "taste")
            return "unstored"
        if is_stored and not was_set:
            for step in steps:
                need(step.kind, step, "kind")
            return "unset"
        return ""

    def closed_before(self, day: date) -> Step | Item | None:
        """Return the first record from before a day that can only be made once the walls are closed.

        What is not done closes nothing; of what is done without a day it is not known, unless another tells.
        """
        proved = [item for item in self.design.handover if item.kind == "stud-proved"]
        every: list[Step | Item] = [*self.design.calibration.steps, *proved]
        records = [one for one in every if one.done is not False]
        found = _first_before(records, day)
        for one in records if found is None else ():
            if one.done:
                need(one.on, one, "on")
        return found

    def stale(self, kind: str, steps: tuple[Step, ...]) -> tuple[Item, Step] | None:
        """Return the newest document of a kind and a step that was done after it; None where none was."""
        items = [item for item in self.items(kind) if item.done]
        if not items:
            return None
        newest = max(items, key=lambda item: need(item.on, item, "on"))
        made = need(newest.on, newest, "on")
        later = [step for step in steps if step.done is not False and need(step.on, step, "on") > made]
        for step in later:
            need(step.done, step, "done")
        return (newest, later[-1]) if later else None

    def set_before(self, day: date) -> Step | None:
        """Return the first step from before a day that a change of firmware would undo; the wiring is none.

        One without a day or a kind may be it, unless another tells.
        """
        steps = [step for step in self.steps() if step.kind != "wiring" and step.done is not False]
        found = _first_before([step for step in steps if step.kind is not None], day)
        for step in steps if found is None else ():
            if need(step.on, step, "on") < day:
                need(step.kind, step, "kind")
        return found

    # Presets

    def presets(self) -> tuple[Preset, ...]:
        """Return the presets; raises `Missing` where the file does not speak of any."""
        calibration, node = self.design.calibration, self.design.at.get("calibration")
        if not calibration.presets and (node is None or node.get("presets") is None):
            raise Missing(self.design, "calibration.presets")
        return calibration.presets

    def presets_of(self, mode: str) -> tuple[Preset, ...]:
        """Return the presets of a listening mode."""
        presets = self.presets()
        found = tuple(preset for preset in presets if preset.mode == mode)
        bare = next((preset for preset in presets if preset.mode is None), None)
        if not found and bare is not None:
            raise Missing(bare, "mode")
        return found

    # Entries and measurements

    def not_entered(self, source: Source) -> tuple[str, ...]:
        """Return what is not entered for a source, in words; a subwoofer's own knobs count as entries."""
        setting = self.figures.delays.setting_of(source)
        own = None if isinstance(source, Loudspeaker) else source
        delay = (setting is not None and (setting.delay_s or setting.distance_m)) or (own is not None and own.delay_s)
        found = [] if delay else ["delay"]
        for words, attr in (("level", "level_db"), ("polarity", "inverted")):
            held = [getattr(one, attr) for one in (setting, own) if one is not None]
            if all(value is None for value in held):
                found.append(words)
        crossed = setting is not None and setting.crossover_hz is not None
        if isinstance(source, Loudspeaker) and self.design.subwoofers and not crossed:
            found.append("crossover")
        if not found and isinstance(source, Loudspeaker) and not crossed:
            self.subwoofers()
        return tuple(found)

    def level_error(self, source: Source) -> Figure:
        """How far the level measured of a source is from the reference level."""
        setting, calibration = self.setting(source), self.design.calibration
        measured = need(setting.measured_level_db, setting, "measured_level")
        wanted = need(calibration.reference_level_db, calibration, "reference_level")
        return self.figure("measured level against the reference level", "dB", lambda w: abs(w(measured) - w(wanted)))

    def trim_error(self, speaker: Loudspeaker) -> Figure:
        """How far the level entered for a loudspeaker is from what its sensitivity and its distance ask for.

        Both against the middle one of the fronts, so that the common gain drops out and one's slip is its own; where
        the centre has an amplifier of its own or none is there, against the mean of the front pair, and one of the
        pair against the other.
        """
        routing = self.figures.routing
        fronts = [
            one
            for one in self.design.loudspeakers
            if one.label in FRONT_PAIR or (one.label in FRONTS and not routing.is_active(one))
        ]
        if speaker in fronts and len(fronts) < MAJORITY:
            fronts.remove(speaker)
        if not fronts:
            raise self.figures.arrangement.unlabelled() or Missing(self.design, "loudspeakers")

        def set_up(world: World, one: Loudspeaker) -> float:
            setting = self.setting(one)
            return world(need(setting.level_db, setting, "level")) + self._arrives_db(world, one)

        def compute(world: World) -> float:
            world.assume(EQUAL_GAIN)
            return set_up(world, speaker) - settings.middle(set_up(world, one) for one in fronts)

        return self.figure("entered level against the drawing", "dB", compute)

    def _arrives_db(self, world: World, speaker: Loudspeaker) -> float:
        level = self.figures.levels.voltage_sensitivity_db(world, speaker)
        seat = self.figures.delays.reference()
        return settings.level_at_seat_db(level, self.figures.delays.far_m(world, speaker, seat))

    def crossovers_apart(self, left: Loudspeaker, right: Loudspeaker) -> Figure:
        """How far apart the crossovers of a left and a right are."""

        def hz(world: World, one: Loudspeaker) -> float:
            setting = self.setting(one)
            return world(need(setting.crossover_hz, setting, "crossover"))

        return self.figure("difference of the crossovers", "Hz", lambda w: abs(hz(w, left) - hz(w, right)))

    def crossover_ratio(self, subwoofer: Subwoofer) -> Figure:
        """Crossover of a subwoofer over the highest one of the loudspeakers."""
        own = self.setting(subwoofer)
        corner = need(own.crossover_hz, own, "crossover")
        entered = [self.setting(one) for one in self.design.loudspeakers]
        # One that is not entered may be the highest.
        others = [need(one.crossover_hz, one, "crossover") for one in entered]
        if not others:
            raise Missing(self.design, "loudspeakers")
        return self.figure("crossover over the loudspeakers'", "", lambda w: w(corner) / max(w(hz) for hz in others))

    def measured_late(self, source: Source) -> Figure:
        """How much later a source arrived than the fronts, as measured: than the middle one, which one's slip leaves.

        Of two fronts, than the mean of both, and one of the two than the other.
        """
        fronts = [one for one in self.design.loudspeakers if one.label in FRONTS]
        if source in fronts and len(fronts) < MAJORITY:
            fronts.remove(source)
        if not fronts:
            raise self.figures.arrangement.unlabelled() or Missing(self.design, "loudspeakers")

        def compute(world: World) -> float:
            return self._arrived_ms(world, source) - settings.middle(self._arrived_ms(world, one) for one in fronts)

        return self.figure("measured arrival after the fronts", "ms", compute)

    def _arrived_ms(self, world: World, source: Source) -> float:
        setting = self.setting(source)
        return 1e3 * world(need(setting.measured_arrival_s, setting, "measured_arrival"))

    def subwoofers_spread(self) -> Figure:
        """Time between the first and the last subwoofer, as measured."""
        subwoofers = self.design.subwoofers

        def compute(world: World) -> float:
            arrived = [self._arrived_ms(world, one) for one in subwoofers]
            return max(arrived) - min(arrived)

        return self.figure("time between the subwoofers", "ms", compute)

    def in_step_ms(self) -> float:
        """Return a quarter of a period at the highest crossover that is entered for a loudspeaker, ms."""
        crossover = self.figures.bass.highest_shared()
        if crossover is None:
            raise Missing(self.design, "calibration.settings")
        return settings.quarter_period_ms(crossover.value)


def _first_before(records: Sequence[T], day: date) -> T | None:
    early = [one for one in records if one.on is not None and one.on < day]
    return min(early, key=lambda one: one.on or date.max, default=None)


def _precedes(other: Step, step: Step, before: bool) -> bool:  # noqa: FBT001  the order of the file
    """Whether another step was done before a step: by their days where these differ, or else by the file's order."""
    if other.on is None or step.on is None or other.on == step.on:
        return before
    return other.on < step.on
