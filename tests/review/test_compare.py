"""Each verdict against an earlier review: house decisions, waivers and the design are never told as one another."""

from __future__ import annotations

import json
import subprocess
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from roomlint.design.house import House
from roomlint.measure.figure import Figure
from roomlint.report import write
from roomlint.review.basis import practice
from roomlint.review.compare import FINGERPRINT, NotOursError, compare, earlier_of, fingerprint, read_sarif
from roomlint.review.review import Decided, Review, RoomReview
from roomlint.review.rule import Rule
from roomlint.review.spool import spooled
from roomlint.review.subjects import Subjects
from roomlint.review.verdict import By, Kind, Level, State, Verdict, Waived, Way
from roomlint.review.window import Window, Windows, by_reference, decide
from roomlint.source.place import Place

if TYPE_CHECKING:
    from pathlib import Path

FILE = "attic.room.yaml"
STAGE = Window(22.0, 32.0, "deg")
WIDER = Window(15.0, 32.0, "deg")
TIGHTER = Window(26.0, 32.0, "deg")
ACCEPTED = Waived("glass", "lead", "", Place(FILE, 9, 1, 9, 2))
PAGE = "Left and right stand 22 to 32 degrees out.\n\nWhy: A habit."


def verdict(value=17.4, *, window=STAGE, level=Level.WARNING, subject="loudspeaker/left", line=1, **more):
    """Return what the window says of an azimuth; None is one that lacks an input."""
    figure = Figure.plain("azimuth", "deg", value, u=0.0) if value is not None else None
    kind = Kind(decide(figure, window, guarded=False)[0]) if figure is not None else Kind.OPEN
    made = Verdict(
        rule="angle.front-pair",
        kind=kind,
        level=level if kind is Kind.FAIL else None,
        subject=subject,
        words=subject,
        place=Place(FILE, line, 1, line, 2),
        figure=figure,
        window=window if figure is not None else None,
        margin=window.margin(value) if value is not None else None,
    )
    return replace(made, **more)


RULE = Rule(
    id="angle.front-pair",
    level=Level.WARNING,
    bases=(practice("a habit"),),
    each=Subjects("front loudspeaker", lambda _: ()),
    judge=lambda *_: Figure.plain("azimuth", "deg", 0.0, u=0.0),
    says={"fail": "stands {figure}; {window} wanted"},
    since="0.1.0",
    docstring=PAGE,
    window=Windows(STAGE),
)


def room_of(*verdicts, file=FILE, code="A", house=None, **more):
    return RoomReview(file, code, "", "", house or House(), verdicts, **more)


def review(*verdicts, **more):
    return Review((room_of(*verdicts, **more),), (RULE,))


def compared(now, then, **more):
    return compare(review(*now, **more), earlier_of(review(*then), "HEAD~1"))


def change(now, then):
    return compared([now], [then]).rooms[0].verdicts[0].change


def told(now, then):
    found = change(now, then)
    return found.way, found.by


def test_what_was_not_there_is_new() -> None:
    room = compared([verdict()], []).rooms[0]
    assert room.compared
    assert (room.verdicts[0].change.state, room.verdicts[0].change.way) == (State.NEW, Way.NEW)


def test_moved_lines_change_nothing() -> None:
    assert change(verdict(line=80), verdict(line=3)).state is State.UNCHANGED


@pytest.mark.parametrize(("value", "way"), [(18.0, Way.BETTER), (16.0, Way.WORSE), (40.0, Way.WORSE), (17.4, None)])
def test_figures_are_compared_with_the_earlier_one_at_hand(value: float, way: Way | None) -> None:
    found = change(verdict(value), verdict())
    assert (found.way, found.by) == (way, By.DESIGN)
    assert (found.before.value if way else found.before) == (17.4 if way else None)


def uncertain(value, u, rule="angle.front-pair"):
    """Return a failing verdict whose figure is known to within so much."""
    return verdict(value, rule=rule, figure=Figure.plain("azimuth", "deg", value, u=u))


@pytest.mark.parametrize(
    ("was", "now", "u", "way"),
    [
        (17.40, 17.32, 0.0, None),  # nobody can read a difference below the printed tenth
        (17.4, 17.3, 0.0, Way.WORSE),
        (17.4, 17.0, 0.5, None),  # another survey could have given that
        (17.4, 17.8, 0.5, None),
        (17.4, 16.8, 0.5, Way.WORSE),
        (17.4, 18.0, 0.5, Way.BETTER),
        (17.4, 40.0, 0.5, Way.WORSE),  # out of the other side, farther than it was
    ],
)
def test_a_figure_is_better_or_worse_only_beyond_its_uncertainty_and_the_printed_digit(was, now, u, way) -> None:
    assert change(uncertain(now, u), uncertain(was, u)).way is way


def test_a_delay_that_differs_in_the_third_decimal_is_as_it_was() -> None:
    def late(value):
        figure = Figure.plain("delay off the drawing", "ms", value, u=0.0)
        return verdict(17.4, rule="distance.delay-entered", figure=figure, window=Window(None, 0.5, "ms"))

    found = change(late(0.763), late(0.756))
    assert (found.state, found.way, found.before) == (State.UNCHANGED, None, None)


def test_where_people_can_get_hurt_whatever_can_be_read_is_worse_and_better_only_what_is_certain() -> None:
    assert change(uncertain(17.3, 0.5, "mount.x"), uncertain(17.4, 0.5, "mount.x")).way is Way.WORSE
    assert change(uncertain(17.5, 0.5, "mount.x"), uncertain(17.4, 0.5, "mount.x")).way is None
    assert change(uncertain(18.0, 0.5, "mount.x"), uncertain(17.4, 0.5, "mount.x")).way is Way.BETTER


def test_a_figure_that_moves_into_the_window_is_cured_however_little_it_moved() -> None:
    assert change(uncertain(22.1, 0.0), uncertain(21.9, 0.0)).way is Way.GONE


def test_a_loosened_window_makes_nothing_better() -> None:
    assert told(verdict(17.4, window=WIDER), verdict(17.4)) == (Way.GONE, By.HOUSE)
    assert told(verdict(14.0, window=WIDER), verdict(14.0)) == (None, By.HOUSE)


def test_a_tightened_window_makes_no_design_worse() -> None:
    assert told(verdict(24.0, window=TIGHTER), verdict(24.0)) == (Way.NEW, By.HOUSE)


def test_a_design_that_got_worse_under_a_loosened_window_is_still_worse() -> None:
    assert told(verdict(10.0, window=WIDER), verdict(14.0)) == (Way.WORSE, By.DESIGN)


def test_a_design_that_was_cured_is_cured_by_the_design_even_where_the_window_moved() -> None:
    assert told(verdict(27.0, window=TIGHTER), verdict(17.4)) == (Way.GONE, By.DESIGN)


def test_what_moved_into_the_window_of_then_is_cured_by_the_design_whatever_today_s_window() -> None:
    """A note's edge is another window than that of the warning, and no decision of a house."""
    assert told(verdict(27.0, window=WIDER), verdict(17.4)) == (Way.GONE, By.DESIGN)
    assert told(verdict(10.0, window=TIGHTER), verdict(24.0)) == (Way.NEW, By.DESIGN)


def test_a_level_that_the_house_raised_is_the_house_s_doing() -> None:
    now = verdict(level=Level.ERROR, overridden=("level",))
    assert told(now, verdict()) == (Way.WORSE, By.HOUSE)


def test_waivers_are_a_kind_of_their_own() -> None:
    waived = verdict(waived=ACCEPTED)
    assert told(waived, verdict()) == (Way.GONE, By.WAIVER)
    assert told(verdict(), waived) == (Way.NEW, By.WAIVER)
    assert told(verdict(waived=replace(ACCEPTED, until="2027-01-01")), waived) == (None, By.WAIVER)


def test_newly_undecided_is_told() -> None:
    found = change(verdict(None), verdict(25.0))
    assert (found.state, found.way, found.was) == (State.UPDATED, Way.UNKNOWN, "pass")


def test_what_left_the_design_is_gone_and_what_passes_now_is_cured_where_it_stands() -> None:
    room = compared([verdict(25.0)], [verdict(), verdict(subject="loudspeaker/right")]).rooms[0]
    assert [(gone.subject, gone.change.state) for gone in room.gone] == [("loudspeaker/right", State.ABSENT)]
    assert room.verdicts[0].change.way is Way.GONE


def test_a_failure_that_cannot_be_decided_now_is_not_gone() -> None:
    room = compared([verdict(None)], [verdict()]).rooms[0]
    assert room.gone == ()
    assert room.verdicts[0].change.way is Way.UNKNOWN


@pytest.mark.parametrize(
    ("now", "then", "gates"),
    [
        (verdict(), None, True),
        (verdict(), verdict(), False),
        (verdict(19.0), verdict(), False),
        (verdict(15.0), verdict(), True),
        (verdict(), verdict(25.0), True),
        (verdict(level=Level.ERROR), verdict(), True),
        (verdict(), verdict(level=Level.ERROR), False),
        (verdict(), verdict(waived=ACCEPTED), True),
        (verdict(waived=ACCEPTED), None, False),
        (verdict(None), verdict(25.0), True),
        (verdict(None), verdict(None), False),
        (verdict(24.0, window=TIGHTER), verdict(24.0), True),
    ],
)
def test_gating_only_what_is_new_or_worse(now, then, *, gates: bool) -> None:
    more = {"gate": Level.WARNING, "gate_new": True, "open_level": Level.WARNING}
    room = compared([now], [then] if then is not None else [], **more).rooms[0]
    assert bool(list(room.gating())) is gates


class Decision:
    """What a house file decides of one rule."""

    def __init__(self, low=None, high=None, level=None):
        self.id, self.because = "angle.front-pair", ""
        self.low, self.high, self.level, self.sets_window = low, high, level, bool(low or high)


def house(**decided):
    return House("house.yaml", decisions={"angle.front-pair": Decision(**decided)} if decided else {})


@pytest.mark.parametrize(
    ("then", "now", "way"),
    [
        ({}, {"low": "15 deg"}, "loosened"),
        ({"low": "15 deg"}, {}, "tightened"),
        ({"low": "20 deg"}, {"low": "24 deg"}, "tightened"),
        ({"level": "note"}, {"level": "error"}, "tightened"),
        ({}, {"level": "note"}, "loosened"),
        ({"low": "20 deg", "high": "40 deg"}, {"low": "24 deg", "high": "45 deg"}, "changed"),
    ],
)
def test_decisions_of_the_house_are_told_with_their_direction(then, now, way: str) -> None:
    was = earlier_of(review(verdict(), house=house(**then)), "HEAD")
    (found,) = compare(review(verdict(), house=house(**now)), was).house_changes
    assert (found.file, found.rule, found.way) == ("house.yaml", "angle.front-pair", way)


def test_a_window_that_follows_from_the_design_is_no_decision_of_the_house() -> None:
    by_case = replace(RULE, window=by_reference(home=Windows(STAGE), critical=Windows(TIGHTER)))

    def way(rule, **decided):
        was = earlier_of(Review((room_of(verdict(24.0)),), (rule,)), "HEAD")
        now = Review((room_of(verdict(24.0, window=TIGHTER), house=house(**decided)),), (rule,))
        return compare(now, was).rooms[0].verdicts[0].change

    assert way(RULE).by is By.HOUSE  # its one window is another: the rule book's doing
    assert way(by_case).by is By.DESIGN
    assert way(by_case, low="30 deg").by is By.HOUSE
    assert way(by_case).window == STAGE

    # The same edge, once of the window and once of the target: what was a warning is a note.
    def level(rule):
        was = earlier_of(Review((room_of(verdict(20.0)),), (rule,)), "HEAD")
        now = Review((room_of(verdict(20.0, level=Level.NOTE)),), (rule,))
        return compare(now, was).rooms[0].verdicts[0].change

    assert (level(RULE).way, level(RULE).by) == (Way.BETTER, By.HOUSE)
    assert (level(by_case).way, level(by_case).by) == (Way.BETTER, By.DESIGN)


def test_the_same_edge_in_another_unit_is_no_change() -> None:
    was = earlier_of(review(verdict(), house=house(low="20 deg")), "HEAD")
    assert compare(review(verdict(), house=house(low="20.0 deg")), was).house_changes == ()


def test_a_product_sheet_that_says_something_else_is_named() -> None:
    then = {"sheets": {"arm": "1", "box": "1", "gone": "1"}}
    now = {"sheets": {"arm": "2", "box": "1", "new": "1"}}
    found = compare(review(verdict(), **now), earlier_of(review(verdict(), **then), "HEAD")).rooms[0]
    assert found.sheets_changed == ("arm",)
    assert compare(review(verdict(), **now), earlier_of(review(verdict()), "HEAD")).rooms[0].sheets_changed == ()


def test_a_renamed_room_is_followed_by_git_s_word_or_by_its_code() -> None:
    earlier = earlier_of(review(verdict(), file="old/attic.room.yaml"), "HEAD")
    for renamed in ({}, {"new/attic.room.yaml": "old/attic.room.yaml"}):
        room = compare(review(verdict(), file="new/attic.room.yaml"), earlier, renamed).rooms[0]
        assert room.was_file == "old/attic.room.yaml"
        assert room.verdicts[0].change.state is State.UNCHANGED


def named(*subjects, values=(17.4, 40.0)):
    judged = zip(subjects, values, strict=True)
    return [verdict(value, subject=subject, line=line) for line, (subject, value) in enumerate(judged, 1)]


def test_an_element_of_another_name_is_followed_by_what_is_judged_of_it() -> None:
    was = earlier_of(review(*named("loudspeaker/left", "loudspeaker/left+seat/a")), "HEAD")
    room = compare(review(*named("loudspeaker/l", "loudspeaker/l+seat/a")), was).rooms[0]
    assert {one.change.state for one in room.verdicts} == {State.UNCHANGED}
    assert room.gone == ()


def test_elements_that_are_judged_alike_are_followed_in_the_order_of_the_file() -> None:
    values = (17.4, 17.4, 40.0)
    was = earlier_of(review(*named("loudspeaker/a", "loudspeaker/b", "seat/s", values=values)), "HEAD")
    room = compare(review(*named("loudspeaker/z", "loudspeaker/c", "seat/s", values=values)), was).rooms[0]
    assert {one.change.state for one in room.verdicts} == {State.UNCHANGED}
    assert room.gone == ()


@pytest.mark.parametrize("now", [("loudspeaker/l", 15.0), ("seat/l", 17.4)])
def test_what_is_judged_otherwise_or_of_another_kind_is_another_element(now: tuple[str, float]) -> None:
    was = earlier_of(review(verdict(17.4, subject="loudspeaker/left")), "HEAD")
    room = compare(review(verdict(now[1], subject=now[0])), was).rooms[0]
    assert room.verdicts[0].change.way is Way.NEW
    assert len(room.gone) == 1


def test_a_room_whose_code_is_another_keeps_what_is_judged_of_it_as_a_whole() -> None:
    earlier = earlier_of(review(verdict(subject="design/A+seat/middle")), "HEAD")
    room = compare(review(verdict(subject="design/B+seat/middle"), code="B"), earlier).rooms[0]
    assert (room.verdicts[0].change.state, room.gone) == (State.UNCHANGED, ())


def test_a_copied_room_is_not_taken_for_a_renamed_one() -> None:
    earlier = earlier_of(review(verdict()), "HEAD")
    both = Review((room_of(verdict()), room_of(verdict(), file="copy.room.yaml")), (RULE,))
    assert [room.verdicts[0].change.state for room in compare(both, earlier).rooms] == [State.UNCHANGED, State.NEW]


def test_a_room_that_is_no_longer_there_is_told_with_what_went() -> None:
    earlier = earlier_of(review(verdict(), file="old.room.yaml", code="B"), "HEAD")
    found = compare(review(verdict()), earlier, is_there=lambda _: False)
    assert [(gone.file, gone.code, gone.failures) for gone in found.departed] == [("old.room.yaml", "B", 1)]
    assert compare(review(verdict()), earlier).departed == ()


def test_what_could_not_be_read_then_is_told_in_the_name() -> None:
    from roomlint.source.place import Problem

    then = replace(review(), problems=(Problem(Place("b.room.yaml", 1, 1, 1, 1), "no unit."),))
    assert compare(review(verdict()), earlier_of(then, "main")).against == "main (b.room.yaml could not be read there)"


def test_a_room_that_could_not_be_read_then_is_not_called_new() -> None:
    from roomlint.source.place import Problem

    then = replace(Review((), (RULE,)), problems=(Problem(Place("house.yaml", 1, 1, 1, 1), "no unit."),))
    (room,) = compare(review(verdict(), gate=Level.WARNING, gate_new=True), earlier_of(then, "main")).rooms
    assert not room.compared
    assert list(room.gating())


def test_many_rooms_are_compared_one_at_a_time() -> None:
    rooms = spooled(room_of(verdict(), file=f"{index}.room.yaml") for index in range(5))
    found = compare(Review(rooms, (RULE,)), earlier_of(Review(rooms, (RULE,)), "HEAD"))
    assert {room.verdicts[0].change.state for room in found.rooms} == {State.UNCHANGED}


def sarif(**result):
    about = {
        "ruleId": "angle.front-pair",
        "kind": "fail",
        "level": "warning",
        "message": {"text": "it fails."},
        "locations": [{"physicalLocation": {"artifactLocation": {"uri": FILE}, "region": {"startLine": 4}}}],
        "partialFingerprints": {FINGERPRINT: fingerprint(FILE, verdict())},
        "properties": {
            "room": FILE,
            "subject": "loudspeaker/left",
            "figure": {"name": "azimuth", "value": 16.9, "unit": "deg", "uncertainty": 0.0},
            "window": {"low": 22.0, "high": 32.0, "unit": "deg"},
            "margin": -5.1,
        },
    }
    return {"version": "2.1.0", "runs": [{"tool": {"driver": {"name": "roomlint"}}, "results": [about | result]}]}


def written(tmp_path: Path, text: str) -> str:
    (tmp_path / "then.sarif").write_text(text, encoding="utf-8")
    return str(tmp_path / "then.sarif")


def test_a_sarif_file_of_ours_stands_for_the_earlier_review(tmp_path: Path) -> None:
    room = compare(review(verdict()), read_sarif(written(tmp_path, json.dumps(sarif())))).rooms[0]
    found = room.verdicts[0].change
    assert (found.way, found.before.value) == (Way.BETTER, 16.9)


def test_the_uncertainty_of_a_sarif_file_is_read_and_may_be_left_out(tmp_path: Path) -> None:
    for given, u in (({"uncertainty": 1.5}, 1.5), ({}, 0.0), ({"uncertainty": None}, 0.0)):
        log = sarif()
        log["runs"][0]["results"][0]["properties"]["figure"] = {"name": "azimuth", "value": 16.9, "unit": "deg"} | given
        (found,) = read_sarif(written(tmp_path, json.dumps(log))).load(FILE).verdicts.values()
        assert found.figure.u == u


def test_what_was_already_gone_in_a_sarif_file_is_not_taken_up(tmp_path: Path) -> None:
    assert read_sarif(written(tmp_path, json.dumps(sarif(baselineState="absent")))).codes == {}


@pytest.mark.parametrize("indent", [None, 1])
def test_a_file_is_read_however_it_is_laid_out_and_however_large(indent, tmp_path: Path) -> None:
    log = sarif()
    one = log["runs"][0]["results"][0]
    for index in range(2000):
        about = one["properties"] | {"room": f"{index % 7}.room.yaml", "subject": f"loudspeaker/s{index}"}
        log["runs"][0]["results"].append(one | {"properties": about})
    earlier = read_sarif(written(tmp_path, json.dumps(log, indent=indent)))
    assert sum(len(earlier.load(file).verdicts) for file in earlier.codes) == 2001


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "no SARIF file"),
        ("{", "no SARIF file"),
        ("[]", "no SARIF file"),
        ("{}", "no SARIF file"),
        ('{"runs": [{}]}', "no SARIF file"),
        ('{"runs": [{"tool": 7}]}', "no SARIF file"),
        ("[" * 100_000, "no SARIF file"),
        ('{"a": ' + "[" * 100_000, "no SARIF file"),
        ('{"runs": [{"tool": {"driver": {"name": "other"}}}]}', "another program"),
        (json.dumps(sarif(kind="strange")), "lacks what roomlint writes"),
        (json.dumps(sarif(locations=[])), "lacks what roomlint writes"),
        (json.dumps(sarif(properties=[1])), "lacks what roomlint writes"),
        (json.dumps(sarif(level=[1])), "lacks what roomlint writes"),
        (json.dumps(sarif()).replace("16.9", "NaN"), "no SARIF file"),
        (json.dumps(sarif()).replace("16.9", "1e999"), "lacks what roomlint writes"),
        (json.dumps(sarif()).replace('"startLine": 4', '"startLine": 1e999'), "lacks what roomlint writes"),
    ],
)
def test_a_foreign_or_broken_file_is_refused_in_plain_words(text: str, says: str, tmp_path: Path) -> None:
    with pytest.raises(NotOursError, match=says):
        read_sarif(written(tmp_path, text))


def test_a_file_that_is_no_text_is_refused(tmp_path: Path) -> None:
    (tmp_path / "then.sarif").write_bytes(b'{"runs": "\xff\xfe"}')
    with pytest.raises(NotOursError, match="no SARIF file"):
        read_sarif(str(tmp_path / "then.sarif"))


def test_what_the_program_wrote_it_reads_back_as_unchanged(tmp_path: Path) -> None:
    decided = house(low="20 deg", level="note")
    mine = Review(
        (
            room_of(verdict(), verdict(25.0, subject="loudspeaker/right"), house=decided),
            room_of(verdict(None), verdict(40.0, subject="seat/a", waived=ACCEPTED), file="b.room.yaml", code="B"),
        ),
        (RULE,),
    )
    path = written(tmp_path, "".join(write("sarif", mine)))
    found = compare(mine, read_sarif(path))
    assert {one.change.state for room in found.rooms for one in room.verdicts} == {State.UNCHANGED}
    assert found.house_changes == ()
    assert read_sarif(path).codes == {FILE: "A", "b.room.yaml": "B"}
    assert read_sarif(path).houses == {"house.yaml": {"angle.front-pair": Decided("20 deg", None, "note")}}


def test_an_unreadable_file_in_an_earlier_report_is_not_a_room_without_failures(tmp_path: Path) -> None:
    from roomlint.source.place import Problem

    then = replace(review(verdict()), problems=(Problem(Place("b.room.yaml", 1, 1, 1, 1), "no unit."),))
    earlier = read_sarif(written(tmp_path, "".join(write("sarif", then))))
    assert set(earlier.codes) == {FILE}
    assert earlier.unread == {"b.room.yaml"}


def test_identities_are_the_same_from_every_folder_of_a_repository(tmp_path: Path, monkeypatch) -> None:
    subprocess.run(["git", "init", "--quiet", str(tmp_path)], check=True)
    (tmp_path / "rooms").mkdir()
    logs = []
    for folder, file in ((tmp_path, "rooms/a.room.yaml"), (tmp_path / "rooms", "a.room.yaml")):
        monkeypatch.chdir(folder)
        place = Place(file, 1, 1, 1, 2)
        logs.append("".join(write("sarif", review(verdict(place=place), file=file))))
    assert logs[0] == logs[1]
    assert '"uri":"rooms/a.room.yaml"' in logs[0]


@pytest.mark.parametrize(
    ("then", "now", "way", "stages", "values"),
    [
        ({"gates": {"design": "warning"}}, {}, "loosened", ("design",), ("warning", "error")),
        ({}, {"gate": "note"}, "tightened", ("survey", "design", "rough-in", "handover"), ("error", "note")),
        ({"opens": {"rough-in": "warning"}}, {"opens": {"rough-in": "note"}}, "loosened", ("rough-in",),
         ("warning", "note")),
        ({"required": {"design": ("mount", "mains")}}, {"required": {"design": ("mount",)}}, "loosened", ("design",),
         ("mains, mount", "mount")),
        ({}, {"required": {"design": ("mount",)}}, "tightened", ("design",), ("none", "mount")),
        ({"required": {"design": ("mount",)}}, {"required": {"design": ("mains",)}}, "changed", ("design",),
         ("mount", "mains")),
    ],
)  # fmt: skip
@pytest.mark.parametrize("by_file", [False, True])
def test_what_a_house_decides_about_its_stages_is_told_with_its_direction(
    then, now, way, stages, values, by_file, tmp_path: Path
) -> None:
    was = review(verdict(), house=House("house.yaml", **then))
    earlier = read_sarif(written(tmp_path, "".join(write("sarif", was)))) if by_file else earlier_of(was, "HEAD")
    done = compare(review(verdict(), house=House("house.yaml", **now)), earlier)
    (found,) = done.standing_changes
    assert (found.file, found.way, found.stages, (found.was, found.now)) == ("house.yaml", way, stages, values)
    for form in ("text", "markdown"):
        assert f"{way}: {values[0]} → {values[1]}" in "".join(write(form, done))


def test_a_gate_that_is_written_in_another_place_of_the_house_file_is_no_change() -> None:
    every = dict.fromkeys(("survey", "design", "rough-in", "handover"), "note")
    was = earlier_of(review(verdict(), house=House("house.yaml", gates=every)), "HEAD")
    assert compare(review(verdict(), house=House("house.yaml", gate="note")), was).standing_changes == ()


def test_an_earlier_report_that_does_not_record_the_stages_says_nothing_of_them(tmp_path: Path) -> None:
    earlier = read_sarif(written(tmp_path, json.dumps(sarif())))
    assert earlier.standing is None
    assert compare(review(verdict(), house=House("house.yaml", gate="note")), earlier).standing_changes == ()


def test_a_waiver_that_the_house_made_idle_is_the_house_s_doing_and_one_that_the_design_did_is_not() -> None:
    idle = replace(
        verdict(level=Level.WARNING, figure=None, window=STAGE, subject="waiver/angle.front-pair for left"),
        rule="file.waiver-unmatched",
    )
    fine = replace(idle, kind=Kind.PASS, level=None)
    accepted = verdict(17.4, waived=ACCEPTED)
    by_house = compared([verdict(17.4, window=WIDER), idle], [accepted, fine]).rooms[0]
    by_design = compared([verdict(25.0), idle], [accepted, fine]).rooms[0]
    assert [room.verdicts[1].change.by for room in (by_house, by_design)] == [By.HOUSE, By.DESIGN]
    assert by_house.verdicts[1].change.way is Way.NEW
    other = replace(idle, subject="waiver/angle.front-pair for right")
    found = compared([verdict(17.4, window=WIDER), other], [accepted, fine]).rooms[0].verdicts[1]
    assert (found.change.way, found.change.by) == (Way.NEW, By.DESIGN)


@pytest.mark.parametrize("given", [{"uncertainty": None}, {}, {"uncertainty": 0.0}])
def test_a_figure_whose_uncertainty_is_not_written_down_is_read_as_exact(given, tmp_path: Path) -> None:
    log = sarif()
    about = log["runs"][0]["results"][0]["properties"]
    about["figure"] = {"name": "azimuth", "value": 16.9, "unit": "deg"} | given
    (found,) = read_sarif(written(tmp_path, json.dumps(log))).load(FILE).verdicts.values()
    assert found.figure.u == 0.0
    assert found.figure.value == 16.9


def test_a_figure_keeps_the_uncertainty_that_is_written_down(tmp_path: Path) -> None:
    log = sarif()
    log["runs"][0]["results"][0]["properties"]["figure"]["uncertainty"] = 0.75
    (found,) = read_sarif(written(tmp_path, json.dumps(log))).load(FILE).verdicts.values()
    assert found.figure.u == 0.75


def test_a_rule_s_id_is_read_whatever_signs_are_escaped_in_it(tmp_path: Path) -> None:
    text = json.dumps(sarif())
    rule = f'"ruleId": {json.dumps(verdict().rule)}'
    assert rule in text
    escaped = "".join(f"\\u{ord(sign):04x}" for sign in verdict().rule)
    for name in ("ruleId", "".join(f"\\u{ord(sign):04x}" for sign in "ruleId")):
        path = written(tmp_path, text.replace(rule, f'"{name}": "{escaped}"'))
        room = compare(review(verdict(16.9)), read_sarif(path)).rooms[0]
        assert room.verdicts[0].change.state is State.UNCHANGED
        assert room.gone == ()
