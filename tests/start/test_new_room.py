"""What `roomlint new` writes: a room file that is read, checks without an error of its own, and says what it is."""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings

from roomlint.figures.layouts import LAYOUTS, layout_of
from roomlint.start.answers import Answers, Gap, Roof, UnfitError
from roomlint.start.places import Proposal, propose
from roomlint.start.room_file import MARK, MOST_QUICK_LINES, quick_text, room_text

sys.path.insert(0, str(Path(__file__).parent))
from answering import answers, design_of, said, uncommented, verdicts_of

METRIC, US = False, True


def plain(
    layout: str = "4+7+0", *, us: bool = US, width: float = 4.5, length: float = 6.0, high: float = 2.6
) -> Answers:
    roof = Roof("flat", height=said(high, us=us))
    return Answers(said(width, us=us), said(length, us=us), roof, (), (3,), None, layout, None, "den", "design", us)


IN_SIGHT = "picture.clear-view"
"""A warning, but one of the proposal's own making."""


def proposed(answered: Answers) -> Proposal | None:
    """Return the proposal; None where the room has no place for the seats or the picture, told by their option."""
    try:
        return propose(answered)
    except UnfitError as error:
        if error.option not in {"--seats", "--picture"} or not str(error):
            raise
        return None


def errors_of(text: str) -> list[str]:
    found = verdicts_of(text)
    # How large the picture is was answered; that it is too large for so small a room is told when it is checked.
    return [
        f"{one.rule} {one.subject}"
        for one in found
        if one.kind == "fail"
        and (one.rule == IN_SIGHT or (one.level == "error" and not one.rule.startswith("picture.")))
    ]


@given(answers())
@settings(max_examples=40)
def test_any_room_is_begun_without_an_error_of_its_own_making(answered: Answers) -> None:
    proposal = proposed(answered)
    if proposal is None:
        return
    quick, full = quick_text(answered, proposal), room_text(answered, proposal, "den.room.yaml")
    assert quick.count("\n") <= MOST_QUICK_LINES
    assert errors_of(quick) == []
    found = design_of(full)
    labels = [one.label for one in found.sources]
    assert sorted(map(str, labels)) == sorted(layout_of(answered.layout).labels)
    for one in proposal.placed:
        assert (one.spot is None) == bool(one.why_not)
    assert design_of(uncommented(full)).circuits
    again = propose(answered)
    assert (quick, full) == (quick_text(answered, again), room_text(answered, again, "den.room.yaml"))


@pytest.mark.parametrize("us", [METRIC, US])
@pytest.mark.parametrize("layout", LAYOUTS)
def test_an_ordinary_room_takes_every_layout_whole_and_nominal(layout: str, us: bool) -> None:  # noqa: FBT001
    answered = plain(layout, us=us)
    proposal = propose(answered)
    assert [one.label for one in proposal.placed if one.spot is None] == []
    crowded = layout == "9+10+3"  # twenty-four loudspeakers in a living room stand where there is room
    assert crowded or [one.label for one in proposal.loudspeakers if one.moved] == []
    assert errors_of(room_text(answered, proposal, "den.room.yaml")) == []


@pytest.mark.parametrize(
    "roof",
    [
        Roof("gable", low=said(2.7, us=US), height=said(4.3, us=US), ridge="front-to-rear"),
        Roof("gable", low=said(2.2, us=US), height=said(3.4, us=US), ridge="left-to-right"),
        Roof("mono-pitch", low=said(2.1, us=US), high=said(3.4, us=US), low_side="left"),
        Roof("mono-pitch", low=said(1.6, us=US), high=said(3.0, us=US), low_side="rear"),
        Roof("tray", low=said(2.4, us=US), height=said(2.7, us=US), margin=said(0.6, us=US)),
        Roof(
            "part-sloped",
            low=said(1.5, us=US),
            height=said(2.6, us=US),
            low_sides=("left", "right"),
            slope_width=said(1.1, us=US),
        ),
    ],
)
def test_under_a_slope_what_does_not_fit_is_told_and_the_rest_stands(roof: Roof) -> None:
    answered = replace(plain("4+5+0"), roof=roof)
    proposal = propose(answered)
    text = quick_text(answered, proposal)
    assert errors_of(text) == []
    for one in proposal.placed:
        assert (one.spot is not None) or f"id: {one.name}, label: {one.label}}}  {MARK}: no place" in text
    assert sum(one.spot is not None for one in proposal.placed) >= 8


def test_a_loudspeaker_keeps_out_of_a_door_and_off_glass_and_its_pair_moves_with_it() -> None:
    us = METRIC
    free = {one.label: one for one in propose(plain("0+5+0", us=us)).placed}
    gap = Gap("glass-door", "left", said(1.0, us=us), said(3.0, us=us))
    answered = replace(plain("0+5+0", us=us), openings=(gap,), rows=(1,))
    found = {one.label: one for one in propose(answered).placed}
    left, right = found["M+110"].spot, found["M-110"].spot
    assert left is not None
    assert right is not None
    assert left != free["M+110"].spot
    # The opening runs from 2.0 to 5.0 m off the front wall; its way reaches a metre and a quarter into the room.
    assert not (1.75 < left[1] < 5.25 and left[0] < 1.25)
    assert left[0] == pytest.approx(4.5 - right[0])
    assert left[1:] == right[1:]


def test_every_proposed_line_is_marked_and_nothing_else_is() -> None:
    answered = replace(plain(), picture=("display", said(1.4, us=US)))
    proposal = propose(answered)
    for line in quick_text(answered, proposal).splitlines():
        proposed = any(key in line for key in ("ear:", "position:", "centre:"))
        assert (MARK in line) == proposed, line


def test_names_and_sizes_stand_as_they_were_said() -> None:
    answered = replace(plain(), width=said(3.81, us=US), code="yes")
    text = quick_text(answered, propose(answered))
    assert "width: 12 ft 6 in" in text
    assert design_of(text).project.id == "yes"
    assert "code: 'yes'" in text


@pytest.mark.parametrize(
    ("changes", "option", "words"),
    [
        ({"width": said(0.9, us=METRIC)}, "--width", "0.90 m is no side of a room"),
        ({"rows": (9,)}, "--seats", "9 seats side by side do not fit a room 4.50 m wide; 6 do."),
        ({"rows": (1, 1, 1, 1, 1, 1)}, "--seats", "6 rows 1.10 m apart do not fit a room 6.00 m long."),
        ({"picture": ("display", said(4.6, us=METRIC))}, "--picture", "does not fit a front wall 4.50 m wide"),
        ({"ear_from_front": said(7.0, us=METRIC)}, "--ear-from-front", "is not in a room 6.00 m long"),
        ({"roof": Roof("flat", height=said(1.0, us=METRIC))}, "--height", "a ceiling 1.6 m to 12 m high"),
        (
            {"roof": Roof("tray", said(2.7, us=METRIC), said(2.4, us=METRIC), margin=said(2.2, us=METRIC))},
            "--margin",
            "leave no raised part",
        ),
        (
            {
                "roof": Roof(
                    "part-sloped",
                    said(2.7, us=METRIC),
                    said(1.4, us=METRIC),
                    low_sides=("left", "right"),
                    slope_width=said(2.3, us=METRIC),
                )
            },
            "--slope-width",
            "leave no flat part",
        ),
        (
            {"openings": (Gap("door", "rear", said(4.0, us=METRIC), said(0.9, us=METRIC)),)},
            "--opening",
            "does not fit that wall, which is 4.50 m long",
        ),
    ],
)
def test_an_answer_that_is_no_room_is_refused_with_the_option_to_change(
    changes: dict[str, object], option: str, words: str
) -> None:
    with pytest.raises(UnfitError, match=words.replace(".", r"\.")) as refused:
        propose(replace(plain(us=METRIC), **changes))  # type: ignore[arg-type]
    assert refused.value.option == option


def test_the_keys_of_a_quick_file_are_few_and_short_enough_for_a_phone() -> None:
    answered = replace(plain(), picture=("display", said(1.4, us=US)))
    found: set[str] = set()

    def collect(node: object) -> None:
        if isinstance(node, dict):
            found.update(node)
        for one in node.values() if isinstance(node, dict) else node if isinstance(node, list) else ():
            collect(one)

    collect(design_of(quick_text(answered, propose(answered))).at.plain())
    assert max(map(len, found)) <= len("loudspeakers")
    assert len(found) <= 32
