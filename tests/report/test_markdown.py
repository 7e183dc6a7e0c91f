"""The comment on a pull request is read by the lead, who has little time, and by a code host, which has limits."""

from __future__ import annotations

import pytest

from roomlint.report.markdown import MOST, markdown_report
from roomlint.report.markdown_text import code, data
from roomlint.review.verdict import Kind, Level, State


def test_a_small_review_reads_like_this(make):
    text = "left: azimuth is 26.0 deg, 2.0 deg below the window 28.0 to 32.0 deg."
    verdicts = [
        make.verdict(level=Level.ERROR, message=f"{text} Basis: ITU-R BS.775 3, Figure 1."),
        make.verdict(Kind.OPEN, rule="bass.x", missing="seats[0].ear", message="seat: cannot be decided."),
        make.verdict(subject="loudspeaker/right", message="right: wrong.", waived=make.waived()),
    ]
    assert markdown_report(make.review(make.room(*verdicts))) == (
        "**A1 Attic: stopped by the gate (error): 1 finding.** `rooms/attic.room.yaml`, design: "
        "1 error, 0 warnings, 0 notes, 0 for review, 1 open, 0 passed, 0 not applicable, 1 waived.\n"
        "\n"
        "**What fails, and what a person must decide**\n"
        "\n"
        "| level | where | finding | rule | basis |\n"
        "|---|---|---|---|---|\n"
        "| error | `rooms/attic.room.yaml:7` | left: azimuth is 26.0 deg, 2.0 deg below the window 28.0 to 32.0 deg. "
        "| angle.front-pair | ITU-R BS.775 3, Figure 1 \\(published text, read\\) |\n"
        "\n"
        "**1 verdict could not be decided.** What would decide most:\n"
        "\n"
        "- give seats\\[0\\].ear in rooms/attic.room.yaml: 1 verdict\n"
        "\n"
        "**Accepted failures**\n"
        "\n"
        "| where | finding | rule | by | until | because |\n"
        "|---|---|---|---|---|---|\n"
        "| `rooms/attic.room.yaml:90` | right: wrong. | angle.front-pair | R. Lead | 2027-06-30 | glass. |\n"
        "\n"
        "<details>\n"
        "<summary>All that fails, is for review or is open: 3</summary>\n"
        "\n"
        "- `rooms/attic.room.yaml:7` error: left: azimuth is 26.0 deg, 2.0 deg below the window 28.0 to 32.0 deg. "
        "(angle.front-pair)\n"
        "- `rooms/attic.room.yaml:7` waived: right: wrong. (angle.front-pair)\n"
        "- `rooms/attic.room.yaml:7` open: seat: cannot be decided. (bass.x)\n"
        "\n"
        "</details>\n"
        "\n"
    )


def test_new_and_worse_findings_come_first_when_compared(make):
    verdicts = [
        make.verdict(level=Level.ERROR, message="old.", change=make.change(state=State.UNCHANGED)),
        make.verdict(level=Level.NOTE, message="new.", subject="seat/b", change=make.change("", state=State.NEW)),
    ]
    report = markdown_report(make.review(make.room(*verdicts, compared=True), against="main"))
    assert "| new | `rooms/attic.room.yaml:7` | new. | angle.front-pair |" in report
    table = report.partition("| level |")[2]
    assert table.index("new.") < table.index("old.")


def test_a_compared_review_without_changes_says_so(make):
    assert "**Against main: nothing changed.**" in markdown_report(
        make.review(make.room(compared=True), against="main")
    )


def test_rooms_that_are_stopped_come_first(make):
    rooms = (make.room(file="a.room.yaml"), make.room(make.verdict(level=Level.ERROR), file="b.room.yaml"))
    lines = markdown_report(make.review(*rooms)).splitlines()
    assert lines[0].startswith("**2 rooms, 1 stopped by the gate**: 1 error")
    assert "`b.room.yaml`" in lines[2]
    assert "`a.room.yaml`" in lines[3]


def test_cautions_of_failing_rules_are_carried(make):
    rules = (make.rule("mount.x", caution="Ask a structural engineer."),)
    verdict = make.verdict(rule="mount.x", message="left: wrong. Ask a structural engineer.")
    report = markdown_report(make.review(make.room(verdict), rules=rules))
    assert "**Cautions**\n\n- Ask a structural engineer.\n" in report


def test_what_the_house_changed_is_listed_with_its_reason(make):
    house = make.house(angle__front_pair={"level": "note", "because": "narrow rooms"})
    report = markdown_report(make.review(make.room(house=house, loosened=("mount.x: level note instead of error",))))
    assert "- angle.front-pair, by `house.yaml`: level note: narrow rooms." in report
    assert "- **Loosened where people can get hurt:** mount.x: level note instead of error." in report


def test_passes_are_listed_only_when_asked_for(make):
    review = make.review(make.room(make.verdict(Kind.PASS, message="left: fine.")))
    assert "left: fine." not in markdown_report(review)
    assert "left: fine." in markdown_report(review, verdicts=True)


@pytest.mark.parametrize("sign", ["x", "|", "@", "<"])
def test_the_comment_stays_within_the_limit_and_says_what_it_leaves_out(make, sign):
    verdicts = [
        make.verdict(
            subject=f"loudspeaker/s{line}",
            message=sign * 300,
            place=make.place(line),
            waived=make.waived(because=sign * 99) if line % 3 == 0 else None,
            change=make.change("", state=State.NEW),
        )
        for line in range(1, 200)
    ]
    rooms = [make.room(*verdicts, file=f"{index}.room.yaml", compared=True) for index in range(40)]
    problems = tuple(make.problem(sign * 200, line=line) for line in range(1, 200))
    report = markdown_report(make.review(*rooms, problems=problems, against="main"), verdicts=True)
    assert len(report) <= MOST
    assert report.count(" more in the full report.") >= 5
    assert report.rstrip().endswith("</details>")


def test_unreadable_files_and_broken_rules_are_told(make):
    report = markdown_report(make.review(problems=(make.problem("no unit."),), troubles=(make.trouble("a", "broke"),)))
    assert report.startswith("**No room was reviewed.**\n")
    assert "- `rooms/attic.room.yaml:1` no unit." in report
    assert "- A rule broke: broke." in report


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("a|b", "a\\|b"),
        ("<b>", "&lt;b&gt;"),
        ("[x](y)", "\\[x\\]\\(y\\)"),
        ("*a* `b`", "\\*a\\* \\`b\\`"),
        ("@team #1", "@<!-- -->team #<!-- -->1"),
        ("https://x", "https:<!-- -->//x"),
        ("a\n# b", "a #<!-- --> b"),
    ],
)
def test_data_cannot_become_markup(text, shown):
    assert data(text) == shown


@pytest.mark.parametrize(("text", "shown"), [("a", "`a`"), ("a`b", "``a`b``"), ("`a", "`` `a ``"), ("a|b", "`a\\|b`")])
def test_data_cannot_leave_a_code_span(text, shown):
    assert code(text) == shown
