"""The calibration's steps and presets: which there are, in which order, by whom, and what is stored for whom."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import ROOM, Level, No, fails, need, passes, practice, rule

from . import MODES, ORDER, PRESETS, STEPS, TASKS, USUAL, at_handover

if TYPE_CHECKING:
    from roomlint.design.model import Design
    from roomlint.design.record import Item, Mode, Preset, Step
    from roomlint.review import Applies, Room, Says


def _holds_taste(_: Room, preset: Preset) -> Applies:
    return True if need(preset.taste, preset, "taste") else No("it holds no taste curve")


@rule(
    "handover.steps",
    level=Level.WARNING,
    basis=(ORDER, USUAL),
    each=ROOM,
    when=at_handover,
    says={
        "short": "its calibration has no step for {lacks}",
        "whole": "its calibration has every step",
    },
    at="calibration.steps",
    since="0.3.0",
)
def steps(room: Room, _design: Design) -> Says:
    """The calibration has a step for wiring, polarity, delays and levels, and for subwoofers and their crossovers.

    Why: What was not done cannot be told from what was done well, until somebody hears it.

    How decided: Kinds of the steps in the file. Subwoofers among themselves are a step of their own where there are
    two or more, crossovers where there is one.

    Remedy: Do the step, and write it down with its day.

    When to waive: A room of two loudspeakers that its owner sets up.
    """
    lacks = room.figures.commissioning.lacking_steps()
    return fails("short", lacks=lacks) if lacks else passes("whole")


@rule(
    "handover.order",
    level=Level.WARNING,
    basis=(ORDER, USUAL),
    each=STEPS,
    when=at_handover,
    says={
        "early": "was done before {steps}, which it rests on; do it again",
        "last": "was not the last step: {steps} came after it",
        "fine": "follows what it rests on",
    },
    at="kind",
    since="0.3.0",
)
def order(room: Room, step: Step) -> Says:
    """Each step of the calibration follows those that it rests on.

    Why: Levels that are set before a crossed wire is found are set for the crossed wire. A correction made before the
    subwoofers agree among themselves corrects their quarrel. A taste curve that is set first is measured away, or is
    taken for the room.

    How decided: Wiring and polarity before delays and levels; subwoofers among themselves before crossovers and the
    correction of the whole; correction after all of these; a taste curve after everything. By their days, of one day by
    the order of the file; a step that was done again counts by its first time, before a taste curve by its last.

    Remedy: Do the step again, and write down its new day.

    When to waive: The step was checked again afterwards and nothing had to be changed.
    """
    commissioning = room.figures.commissioning
    early = commissioning.too_early(step)
    if not early:
        return passes("fine")
    return fails("last" if step.kind == "taste" else "early", steps=early)


@rule(
    "handover.done",
    level=Level.WARNING,
    basis=practice("done is done by somebody on a day"),
    each=TASKS,
    when=at_handover,
    says={
        "not": "is not done",
        "ahead": "is called done on {on}, a day to come",
        "done": "is done",
    },
    at="done",
    since="0.3.0",
)
def done(room: Room, task: Step | Item) -> Says:
    """Every step and every item on the list is done, by somebody, on a day, with its evidence.

    Why: A list with open items is handed over as a promise; who gave it, nobody remembers.

    How decided: What the file says of it. Done without who, when and where the evidence is leaves it open; a day
    to come is a slip.

    Remedy: Do it, or strike it off the list.

    When to waive: Agreed with the client to be done by a later day.
    """
    if not need(task.done, task, "done"):
        return fails("not")
    need(task.by, task, "by")
    day = need(task.on, task, "on")
    if room.today is not None and day > room.today:
        return fails("ahead", on=day.isoformat())
    need(task.evidence, task, "evidence")
    return passes("done")


@rule(
    "handover.presets",
    level=Level.WARNING,
    basis=practice("a stereo preset and an all-channels preset are both left behind"),
    each=MODES,
    when=at_handover,
    says={
        "none": "no preset is stored for it",
        "stored": "{presets} is stored for it",
    },
    since="0.3.0",
)
def presets(room: Room, mode: Mode) -> Says:
    """A preset is stored for every listening mode.

    Why: What is not stored is gone with the next power cut, or with the first curious finger.

    How decided: Presets of the calibration that name the mode. That there is a mode of two channels and one of all of
    them is judged by `channel.stereo-mode` and `channel.full-mode`.

    Remedy: Store it, and export it.

    When to waive: A mode that the processor makes by itself of another's preset.
    """
    stored = tuple(preset.words for preset in room.figures.commissioning.presets_of(mode.id))
    return passes("stored", presets=stored) if stored else fails("none")


@rule(
    "handover.taste-apart",
    level=Level.WARNING,
    basis=USUAL,
    each=PRESETS,
    when=(at_handover, _holds_taste),
    says={
        "only": "holds a taste curve, and no preset of its mode is without one",
        "apart": "keeps its taste curve apart from {presets}",
    },
    at="taste",
    since="0.3.0",
)
def taste_apart(room: Room, preset: Preset) -> Says:
    """A taste curve is a preset of its own, beside the one as calibrated.

    Why: Mixed into the calibration it cannot be taken out again, and the next who measures corrects it away.

    How decided: Another preset of the same listening mode without a taste curve.

    Remedy: Store the calibration without the curve as well.

    When to waive: The processor keeps its curve in a store of its own that can be switched off.
    """
    mode = need(preset.mode, preset, "mode")
    others = [one for one in room.figures.commissioning.presets_of(mode) if one is not preset]
    plain = tuple(one.words for one in others if one.taste is False)
    if plain:
        return passes("apart", presets=plain)
    for one in others:
        need(one.taste, one, "taste")
    return fails("only")


@rule(
    "handover.taste-record",
    level=Level.WARNING,
    basis=USUAL,
    each=ROOM,
    when=at_handover,
    says={
        "unstored": "had a taste curve set, and no preset is marked to hold it: it may be in the calibration",
        "unset": "has a preset with a taste curve, and no step that set it",
        "fine": "steps and presets agree about a taste curve",
    },
    at="calibration.presets",
    since="0.3.0",
)
def taste_record(room: Room, _design: Design) -> Says:
    """A taste curve that was set is in a preset that says so, and the other way round.

    Why: A curve that is in no preset of its own is in the calibration, and nobody can take it out again.

    How decided: A step of that kind against presets that are marked to hold a taste curve.

    Remedy: Store the curve in a preset of its own and mark it, or strike the step out.

    When to waive: Never; correct the record.
    """
    apart = room.figures.commissioning.taste_apart_of_record()
    return fails(apart) if apart else passes("fine")
