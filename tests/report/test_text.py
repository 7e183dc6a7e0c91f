"""The text report is read by people and by editors that know the GNU form."""

from __future__ import annotations

import subprocess
import sys
from time import perf_counter

import pytest

from roomlint.report.text import text_report
from roomlint.review.verdict import Kind, Level, State


def test_a_small_review_reads_like_this(make):
    left = make.verdict(message="left: azimuth is 26.0 deg left, 2.0 deg below the window 28.0 to 32.0 deg.")
    aim = make.verdict(Kind.REVIEW, rule="aim.seat", message="left: too close to tell.", place=make.place(3))
    sub = make.verdict(
        Kind.OPEN, rule="bass.spread", missing="subwoofers[0].position", message="sub: cannot be decided."
    )
    review = make.review(make.room(left, aim, sub))
    assert text_report(review) == (
        "rooms/attic.room.yaml:3:3: review: left: too close to tell. [aim.seat]\n"
        "rooms/attic.room.yaml:7:3: warning: left: azimuth is 26.0 deg left, 2.0 deg below the window 28.0 to 32.0 deg."
        " [angle.front-pair]\n"
        "\n"
        "1 room, 1 rule: 0 errors, 1 warning, 0 notes, 1 for review, 1 open, 0 passed, 0 not applicable, 0 waived.\n"
        "To find out next (a rule may then ask for one more input):\n"
        "  give subwoofers[0].position in rooms/attic.room.yaml and 1 verdict is decided\n"
    )


@pytest.mark.parametrize("kind", [Kind.OPEN, Kind.PASS, Kind.NOT_APPLICABLE, Kind.INFORMATIONAL])
def test_what_needs_no_action_shows_only_when_asked_for(make, kind):
    review = make.review(make.room(make.verdict(kind, message="left: fine.")))
    assert "left: fine." not in text_report(review)
    assert "left: fine. [angle.front-pair]" in text_report(review, verdicts=True)


def test_a_waived_failure_shows_who_accepted_it_until_when_and_why(make):
    report = text_report(make.review(make.room(make.verdict(message="left: wrong.", waived=make.waived()))))
    assert ":7:3: waived: left: wrong. Accepted by R. Lead until 2027-06-30: glass. [angle.front-pair]" in report
    assert "0 warnings" in report
    assert "1 waived" in report


def test_findings_are_sorted_by_place_then_rule_then_subject(make):
    verdicts = [
        make.verdict(place=make.place(9)),
        make.verdict(rule="b.b", subject="loudspeaker/z"),
        make.verdict(rule="b.b", subject="loudspeaker/a"),
        make.verdict(rule="a.a"),
    ]
    lines = text_report(make.review(make.room(*verdicts))).splitlines()[:4]
    assert [line.rpartition("[")[2] for line in lines] == ["a.a]", "b.b]", "b.b]", "angle.front-pair]"]
    assert "a: azimuth" in lines[1]


def test_equal_findings_are_all_shown(make):
    verdict = make.verdict()
    assert text_report(make.review(make.room(verdict, verdict))).count("26.0 deg") == 2


def test_a_finding_in_a_shared_sheet_says_which_room_it_is_about(make):
    verdict = make.verdict(place=make.place(file="sheets/a.product.yaml"))
    assert "(room rooms/attic.room.yaml)" in text_report(make.review(make.room(verdict)))


def test_unreadable_files_stand_among_the_findings_and_are_counted(make):
    report = text_report(make.review(problems=(make.problem("unknown key `seat`."), make.problem("no unit.", line=4))))
    assert report.startswith("rooms/attic.room.yaml:1:1: error: unknown key `seat`. [file.unreadable]\n")
    assert "1 file could not be read" in report


def test_only_the_five_most_wanted_keys_are_listed_and_the_rest_is_counted(make):
    opens = [make.verdict(Kind.OPEN, missing=f"seats[{index}].ear") for index in range(7)]
    report = text_report(make.review(make.room(*opens)))
    assert report.count("  give ") == 5
    assert "and 2 more keys, shown by --verdicts" in report


def test_a_key_of_another_file_is_not_sent_to_the_room_file(make):
    verdict = make.verdict(Kind.OPEN, missing="mass in sheets/a.product.yaml")
    assert "give mass in sheets/a.product.yaml (for rooms/attic.room.yaml)" in text_report(
        make.review(make.room(verdict))
    )


def test_what_the_house_changed_and_loosened_is_said_aloud(make):
    house = make.house(angle__front_pair={"low": "26 deg", "high": "34 deg", "level": "note"}, bass__other={})
    loosened = ("mount.wood-screw: level warning instead of error",)
    report = text_report(make.review(make.room(house=house, loosened=loosened)))
    assert "Rules changed by house.yaml: angle.front-pair (window 26 deg to 34 deg, level note)." in report
    assert "Loosened where people can get hurt: mount.wood-screw: level warning instead of error." in report


def test_broken_rules_are_told(make):
    report = text_report(make.review(make.room(), troubles=(make.trouble("bass.x", "rule bass.x broke: KeyError: 1"),)))
    assert "Not complete: rule bass.x broke: KeyError: 1." in report


def test_a_compared_review_tells_what_moved_and_by_how_much(make):
    figure = make.figure()
    verdicts = [
        make.verdict(subject="loudspeaker/new", change=make.change("", state=State.NEW)),
        make.verdict(subject="loudspeaker/worse", figure=figure, change=make.change(better_by=-1.2)),
        make.verdict(subject="loudspeaker/better", figure=figure, change=make.change(better_by=0.5)),
        make.verdict(subject="loudspeaker/raised", level=Level.ERROR, change=make.change("note")),
        make.verdict(subject="loudspeaker/reopened", change=make.change(was_waived=True)),
        make.verdict(subject="loudspeaker/accepted", waived=make.waived(), change=make.change()),
        make.verdict(Kind.PASS, subject="loudspeaker/cleared", change=make.change("error")),
        make.verdict(Kind.OPEN, subject="loudspeaker/open", change=make.change("pass")),
        make.verdict(subject="loudspeaker/same", change=make.change(state=State.UNCHANGED)),
    ]
    gone = (make.verdict(subject="loudspeaker/removed"), make.verdict(subject="loudspeaker/cleared"))
    report = text_report(make.review(make.room(*verdicts, gone=gone, compared=True), against="main"))
    assert "Against main: 1 new, 3 worse, 1 newly undecided, 1 newly waived, 1 better, 2 gone." in report
    assert "  worse by 1.2 deg: rooms/attic.room.yaml:7:3: worse: azimuth" in report
    assert "  better by 0.5 deg: rooms/attic.room.yaml:7:3: better: azimuth" in report
    assert "  worse, was note: rooms/attic.room.yaml:7:3: raised: azimuth" in report
    assert "  worse, no longer waived: rooms/attic.room.yaml:7:3: reopened: azimuth" in report
    assert "  gone: rooms/attic.room.yaml:7:3: removed [angle.front-pair]" in report
    assert "same" not in report.partition("Against")[2]


def test_data_can_neither_break_a_line_nor_steer_the_terminal(make):
    report = text_report(make.review(make.room(make.verdict(message="left:\nrooms/x:1:1: error: \x1b[2J no."))))
    assert "left: rooms/x:1:1: error: \\x1b[2J no." in report


def test_a_file_name_of_odd_bytes_can_be_printed(make):
    report = text_report(make.review(make.room(make.verdict(place=make.place(file="rooms/\udcff.room.yaml")))))
    assert report.encode("utf-8")


def test_colour_touches_the_level_only(make):
    review = make.review(make.room(make.verdict()))
    assert text_report(review, colour=True).replace("\x1b[33m", "").replace("\x1b[0m", "") == text_report(review)


def test_three_hundred_verdicts_take_less_than_three_milliseconds(make):
    review = make.review(make.room(*(make.verdict(subject=f"loudspeaker/s{index}") for index in range(300))))

    def took() -> float:
        start = perf_counter()
        text_report(review, verdicts=True)
        return perf_counter() - start

    assert min(took() for _ in range(20)) < 0.003


def test_the_text_report_loads_no_other_writer_and_no_encoder():
    code = (
        "import sys, roomlint.report.text;"
        "print(*({'json', 'hashlib', 'uuid', 'roomlint.report.sarif'} & set(sys.modules)))"
    )
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout == "\n"
