"""The list for people: read on site in a minute, on a page or on a phone."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from roomlint.report import width_of
from roomlint.review.review import Decided
from roomlint.review.verdict import By, Fate, Follows, Kind, Level, State, Unheld, Way
from roomlint.review.window import Window, at_least, by_reference, computed


def test_a_small_review_reads_like_this(make):
    verdicts = [
        make.verdict(remedy=make.remedy()),
        make.verdict(Kind.REVIEW, rule="aim.seat", subject="loudspeaker/left", because="its cabinet hides the seat"),
        make.open("position", rule="bass.spread", subject="subwoofer/sub"),
    ]
    review = make.review(make.room(*verdicts, gate=Level.WARNING))
    assert make.report("text", review) == (
        "A1 · Attic\n"
        "design · held back by 1 point: 1 warning · rooms/attic.room.yaml\n"
        "\n"
        "Warnings\n"
        " 1. left: stands 17.4 deg left; the stage wants it 22 to 32 deg out\n"
        "    > place it 0.80 to 1.10 m from the left (now 0.50 m)\n"
        "\n"
        "For a person to decide\n"
        " ?  left: its cabinet hides the seat\n"
        "\n"
        "Folded: 1 check lacks a value (--missing). --basis names rules and sources.\n"
        "\n"
        "To find out next, for 1 check; write into the room file:\n"
        "    subwoofers:\n"
        "      - {id: sub, position: {from_left: , from_front: , height: }}\n"
    )


def test_a_basement_of_a_hundred_verdicts_fits_one_screen(make):
    room = make.basement()
    assert len(room.verdicts) > 90
    lines = make.report("text", make.review(room, rules=make.rules())).splitlines()
    assert len(lines) <= 45
    assert max(map(len, lines)) <= 100


def test_a_quick_file_fits_a_phone_in_feet_and_inches(make):
    text = make.report("text", make.review(make.quick(), rules=make.rules()), width=60)
    lines = text.splitlines()
    assert len(lines) <= 40
    assert max(map(len, lines)) <= 60
    assert " ft " in text
    assert " m " not in text


def test_what_nobody_knows_about_a_load_path_comes_before_all_else(make):
    verdicts = [
        make.verdict(level=Level.ERROR),
        make.open("mounting.fixing.thread", rule="mount.screw", subject="picture/picture"),
        make.open("gfci", rule="mains.outlet", subject="receptacle/bar"),
    ]
    rules = (make.rule(), make.rule("mount.screw", caution="Caution: it hangs over heads."))
    text = make.report("text", make.review(make.room(*verdicts), rules=rules))
    assert text.index("Before you drill or wire") < text.index("Errors")
    assert " ?  Not known – picture: length of thread (a); receptacle bar: ground-fault protection\n" in text


def test_the_gravest_come_first_and_an_element_s_lines_stand_together(make):
    verdicts = [
        make.verdict(rule="b.b", subject="loudspeaker/z", place=make.place(5)),
        make.verdict(rule="c.c", subject="loudspeaker/a", place=make.place(6)),
        make.verdict(rule="d.d", subject="loudspeaker/z", place=make.place(7), figure=make.figure(9.0)),
        make.verdict(rule="e.e", subject="loudspeaker/q", level=Level.ERROR, place=make.place(9)),
    ]
    lines = [line for line in make.report("text", make.review(make.room(*verdicts))).splitlines() if ". " in line[:5]]
    assert [line[4] for line in lines] == ["q", "z", "z", "a"]


def test_a_caution_is_a_footnote_told_once(make):
    rules = [make.rule(name, caution="Caution: an engineer decides. So it is.") for name in ("mount.a", "mount.b")]
    verdicts = [make.verdict(rule=rule.id, subject=f"loudspeaker/{rule.id[-1]}") for rule in rules]
    text = make.report("text", make.review(make.room(*verdicts), rules=rules))
    assert text.count("An engineer decides") == 1
    assert text.count("(a)") == 3
    assert "So it is." not in text
    assert "(b) So it is." in make.report("text", make.review(make.room(*verdicts), rules=rules), basis=True)


def test_notes_are_counted_and_folded_until_asked_for(make):
    notes = [
        make.verdict(level=Level.NOTE, rule=rule, subject="seat/a", figure=make.figure(value))
        for rule, value in (("bass.a", 1.0), ("bass.b", 2.0), ("aim.c", 3.0))
    ]
    review = make.review(make.room(*notes))
    assert "Folded: 3 notes (--notes)." in make.report("text", review)
    assert "Notes\n 1. a: " in make.report("text", review, notes=True)


@pytest.mark.parametrize(
    ("kind", "heading"),
    [
        (Kind.OPEN, "Something is missing"),
        (Kind.PASS, "Passed"),
        (Kind.NOT_APPLICABLE, "Does not apply"),
        (Kind.INFORMATIONAL, "Worth knowing"),
    ],
)
def test_what_needs_no_action_is_counted_and_shows_when_asked_for(make, kind, heading):
    review = make.review(make.room(make.verdict(kind, because="fine.")))
    assert "fine" not in make.report("text", review)
    assert f"{heading}: 1\n -  left: fine\n" in make.report("text", review, verdicts=True)


def test_accepted_failures_are_counted_and_told_with_who_why_and_until_when(make):
    review = make.review(make.room(make.verdict(waived=make.waived())))
    assert "1 accepted (--verdicts)" in make.report("text", review)
    assert "Accepted by R. Lead until 2027-06-30: glass." in make.report("text", review, verdicts=True)


def test_consequences_are_counted_not_told(make):
    waits = make.verdict(Kind.OPEN, follows=make.follows("mount.x", "loudspeaker/left", "left"))
    assert "1 waits for one above (--verdicts)" in make.report("text", make.review(make.room(make.verdict(), waits)))


def test_what_nobody_judged_and_what_is_assumed_is_told_once(make):
    figure = make.figure(10.0, assumes=("air at 20 degC",))
    verdicts = [make.verdict(figure=figure, subject=f"loudspeaker/{name}") for name in "ab"]
    room = make.room(*verdicts, unjudged=(make.unjudged("sofa", "recline"), make.unjudged("sofa", "depth")))
    text = make.report("text", make.review(room))
    assert "Not judged by any rule: sofa: recline, depth.\n" in text
    assert text.count("air at 20 degC") == 1


def test_bases_are_added_when_asked_for(make):
    review = make.review(make.room(make.verdict()))
    assert "BS.775" not in make.report("text", review)
    assert "ITU-R BS.775 3, Figure 1 (published text, read)" in make.report("text", review, basis=True)


def test_a_hint_of_the_house_stands_where_a_remedy_would(make):
    rule = make.rule("house.x", says={"fail": "is {figure}", "hint": "Lower it."}, package="house.yaml")
    text = make.report("text", make.review(make.room(make.verdict(rule="house.x")), rules=(rule,)))
    assert "    > Lower it.\n" in text


def test_a_waiver_that_does_not_hold_says_why(make):
    text = make.report("text", make.review(make.room(make.verdict(unheld=Unheld(Fate.EXPIRED, ended="2026-01-01")))))
    assert "    > its waiver expired on 2026-01-01\n" in text


def test_unreadable_files_and_broken_rules_come_first(make):
    review = make.review(
        problems=(make.problem("no unit", line=4),),
        troubles=(make.trouble("a", "rule a broke: KeyError: 1"),),
        unmatched=("rooms",),
    )
    lines = make.report("text", review).splitlines()
    assert lines[0] == "Could not be read; rooms that need it were not reviewed"
    assert lines[1] == " 1. rooms/attic.room.yaml:4:1: no unit."
    assert "  rule a broke: KeyError: 1." in lines
    assert "Nothing to check in rooms: no file there ends in .room.yaml." in lines


def test_what_the_house_changed_and_loosened_is_said_aloud(make):
    from roomlint.review.review import Loosened

    house = make.house(angle__front_pair={"low": "26 deg", "high": "34 deg", "level": "note"})
    loosened = (Loosened("mount.wood-screw", "house.yaml", Level.ERROR, Level.WARNING, make.place(3)),
                Loosened("mount.reach", "house.yaml", Window(None, 0.5, "m"), Window(None, 0.8, "m"),
                         make.place(4)))  # fmt: skip
    text = make.report("text", make.review(make.room(house=house, loosened=loosened)))
    assert "Decided by house.yaml: angle.front-pair 26 deg to 34 deg, level note." in text
    assert "Loosened where people can get hurt: mount.wood-screw: warning instead of error, by house.yaml." in text
    assert "mount.reach: at most 0.80 m instead of at most 0.50 m, by house.yaml." in " ".join(text.split())


def changed(make, way, *, by=By.DESIGN, **more):
    before = make.figure(15.0) if way in {Way.WORSE, Way.BETTER, Way.GONE} else None
    kind = Kind.PASS if way is Way.GONE else Kind.OPEN if way is Way.UNKNOWN else Kind.FAIL
    more = {"figure": make.figure(24.0 if way is Way.GONE else 17.4), "window": Window(22.0, 32.0, "deg")} | more
    if way is Way.UNKNOWN:
        more = {"wanted": make.wanted(), "subject": more["subject"]}
    return make.verdict(kind, change=make.change(way, by=by, before=before), **more)


def test_a_comparison_tells_house_waivers_and_design_apart_and_in_this_order(make):
    verdicts = [
        *(changed(make, way, subject=f"loudspeaker/{way.value.split()[0]}") for way in Way if way is not Way.CLOSE),
        changed(make, Way.GONE, by=By.HOUSE, subject="loudspeaker/let-off"),
        make.verdict(subject="loudspeaker/accepted", waived=make.waived(), change=make.change(Way.GONE, by=By.WAIVER)),
        make.verdict(subject="loudspeaker/same", change=make.change(state=State.UNCHANGED)),
    ]
    house_changes = (make.house_change("house.yaml", "angle.front-pair", "loosened", None, Decided("15 deg")),)
    review = make.review(make.room(*verdicts, compared=True), against="main", house_changes=house_changes)
    text = make.report("text", review)
    order = [
        (
            "Decisions of the house that changed\n"
            "  house.yaml: angle.front-pair loosened: 22 to 32 deg → at least 15 deg"
        ),
        "Waivers that changed\n  accepted [angle.front-pair]: Accepted by R. Lead until 2027-06-30: glass.",
        "not of the design\n 1. let-off: azimuth 15.0 → 24.0 deg left; 22 to 32 deg (was warning) (cured)",
        "New\n 2. new: stands 17.4 deg left",
        "Worse\n 3. worse: stands 15.0 → 17.4 deg left",
        "Better\n 4. better: stands 15.0 → 17.4 deg left",
        "Cured\n 5. gone: azimuth 15.0 → 24.0 deg left; 22 to 32 deg (was warning)",
        "Newly unknown\n 6. newly: not known: position of left",
        "As before: 1 warning.",
        "Compared with main.",
    ]
    places = [text.find(part) for part in order]
    assert -1 not in places, order[places.index(-1)]
    assert places == sorted(places)
    assert "same:" not in text


def test_rooms_in_which_nothing_moved_are_one_line(make):
    rooms = [make.room(file=f"{name}.room.yaml", code=name, compared=True) for name in ("loft", "bay")]
    text = make.report("text", make.review(*rooms, against="main"))
    assert "As before: loft, bay.\n" in text
    assert "loft.room.yaml" not in text


def test_a_room_that_is_gone_and_one_that_was_renamed_are_told(make):
    review = make.review(
        make.room(make.verdict(change=make.change(state=State.UNCHANGED)), compared=True, was_file="old.room.yaml"),
        against="main",
        departed=(make.departed("gone.room.yaml", "B", 2),),
    )
    text = make.report("text", review)
    assert "B is no longer there (gone.room.yaml); its 2 failures were not cured." in text
    assert "rooms/attic.room.yaml · was old.room.yaml" in text


def test_data_can_neither_break_a_line_nor_steer_the_terminal(make):
    room = make.room(make.verdict(Kind.REVIEW, because="a\nb \x1b[2J"), title="T\n\x1b[2J", file="x\n.room.yaml")
    text = make.report("text", make.review(room))
    assert "\x1b" not in text
    assert "a b \\x1b[2J" in text


def test_a_file_name_of_odd_bytes_can_be_printed(make):
    assert make.report("text", make.review(make.room(file="rooms/\udcff.room.yaml"))).encode("utf-8")


def test_looks_change_no_sign(make):
    review = make.review(make.basement(), rules=make.rules())
    painted = make.report("text", review, paint=lambda text, role: f"\x1b[1m{text}\x1b[0m" if role else text)
    assert "\x1b[1m" in painted
    assert painted.replace("\x1b[1m", "").replace("\x1b[0m", "") == make.report("text", review)


@pytest.mark.parametrize(("columns", "width"), [(None, 100), (0, 100), (250, 100), (72, 72), (5, 20)])
def test_a_report_is_as_wide_as_the_terminal_and_no_wider_than_a_page(columns, width):
    assert width_of(columns) == width


@pytest.mark.parametrize("width", [30, 60, 80, 100])
def test_no_line_is_wider_than_asked_for_but_what_is_to_be_copied(make, width):
    text = make.report(
        "text", make.review(make.basement(), make.quick(), rules=make.rules()), width=width, verdicts=True
    )
    assert not [line for line in text.splitlines() if len(line) > width and ": {" not in line and " " in line.strip()]


def test_the_text_report_loads_no_other_writer_and_no_encoder():
    code = "import sys, roomlint.report.text;print(*({'json', 'uuid', 'roomlint.report.sarif'} & set(sys.modules)))"
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout == "\n"


ROOM = """\
roomlint: 1
room: {size: {width: 4 m, length: 5 m}}
"""


@pytest.mark.parametrize(
    ("asked", "coloured"),
    [
        ({}, False),
        ({"FORCE_COLOR": "1"}, True),
        ({"FORCE_COLOR": "1", "NO_COLOR": "1"}, False),
        ({"FORCE_COLOR": "0"}, False),
    ],
)
def test_colour_is_for_terminals_and_for_whoever_asks(asked, coloured, tmp_path):
    (tmp_path / "a.room.yaml").write_text(ROOM, encoding="utf-8")
    kept = {name: value for name, value in os.environ.items() if name not in {"FORCE_COLOR", "NO_COLOR", "COLUMNS"}}
    done = subprocess.run(
        [sys.executable, "-m", "roomlint", "check", "a.room.yaml"],
        capture_output=True, cwd=tmp_path, env={**kept, **asked}, check=False,
    )  # fmt: skip
    assert (b"\x1b[" in done.stdout) is coloured
    assert done.stderr == b""


def test_the_output_is_as_wide_as_the_shell_says(tmp_path):
    (tmp_path / "a.room.yaml").write_text(ROOM, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "roomlint", "check", "a.room.yaml"],
        capture_output=True, cwd=tmp_path, env={**os.environ, "COLUMNS": "40"}, text=True, check=False,
    )  # fmt: skip
    assert max(map(len, done.stdout.splitlines())) <= 40


def test_what_was_not_looked_at_is_not_counted_as_nothing_found(make):
    for profile in ("text", "markdown"):
        told = make.report(profile, make.review(problems=(make.problem("no unit", line=4),)))
        assert "no unit" in told
        assert "0 errors" not in told
        assert "0 rooms" not in told
    assert "0 rooms" in make.report("text", make.review())


def test_a_room_that_is_gone_without_failures_left_none_uncured(make):
    text = make.report("text", make.review(against="main", departed=(make.departed("gone.room.yaml", "B", 0),)))
    assert "B is no longer there (gone.room.yaml).\n" in text
    assert "0 failures" not in text


def test_what_is_cured_is_told_without_a_remedy(make):
    gone = make.verdict(change=make.change(Way.GONE, state=State.ABSENT, was="warning"), remedy=make.remedy())
    text = make.report("text", make.review(make.room(gone, compared=True), against="main"))
    assert "no longer there" in text
    assert "> place it" not in text


def test_the_first_warnings_stand_on_a_page_however_full_it_is(make):
    unsure = [
        make.verdict(Kind.REVIEW, rule="aim.seat", subject=f"loudspeaker/s{number}", because=f"{number} hides the seat")
        for number in range(50)
    ]
    warned = [
        make.verdict(subject=f"loudspeaker/w{n}", figure=make.figure(9.0, u=n / 100), facts={"number": n})
        for n in range(9)
    ]
    room = make.room(*unsure, *warned)
    narrow = make.report("text", make.review(room), width=60)
    assert narrow.count("wants it 22") == 3
    assert "not listed here (--notes)" in narrow
    assert make.report("text", make.review(room)).count("wants it 22") >= 1


GAP = by_reference(home=at_least(0.5, "m"), critical=at_least(1.0, "m"))


@pytest.mark.parametrize(
    ("window", "edge", "own"),
    [
        (Window(0.5, None, "m"), "0.3 m", "at least 0.50 m →"),
        (Window(0.3048, None, "m"), "8 in", "at least 12 in →"),
        (GAP, "0.3 m", "at least 0.50 m at home, at least 1 m for critical listening →"),
        (GAP, "1 ft", "at least 19 3/4 in at home, at least 3 ft 3 1/2 in for critical listening →"),
        (computed("m", "by the circuit", lambda *_: at_least(1.0, "m")), "1 ft", "the rule book's own →"),
    ],
)
def test_what_a_house_had_not_decided_is_told_by_case_in_the_units_that_it_decides_in(make, window, edge, own):
    changes = (make.house_change("house.yaml", "boundary.gap", "loosened", None, Decided(edge)),)
    rules = (make.rule("boundary.gap", window=window),)
    text = make.report(
        "text", make.review(make.room(compared=True), against="main", house_changes=changes, rules=rules)
    )
    assert f"boundary.gap loosened: {own}" in " ".join(text.split())


def test_missing_lists_what_holds_the_room_back_though_it_only_waits(make):
    cause = make.verdict(rule="a.a", waived=make.waived())
    waits = make.verdict(Kind.OPEN, rule="b.b", follows=Follows("a.a", cause.subject, cause.words))
    review = make.review(make.room(waits, gate=Level.ERROR, open_level=Level.ERROR))
    assert "Held back by what waits" not in make.report("text", review)
    assert "Held back by what waits for another finding: 1" in make.report("text", review, missing=True)
