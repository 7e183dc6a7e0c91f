"""The comment on a pull request is read by the lead, who has little time, and by a code host, which has limits."""

from __future__ import annotations

import pytest

from roomlint.report.markdown import MARKER, MOST
from roomlint.report.markdown_text import code, data
from roomlint.review.review import Decided, WorkedOut
from roomlint.review.verdict import By, Kind, Level, State, Way
from roomlint.review.window import Window


def comment(make, *rooms, verdicts=False, **more):
    return make.report("markdown", make.review(*rooms, **more), verdicts=verdicts)


def shown(text):
    """Return the lines that a reader sees before unfolding anything."""
    return [line for line in text.partition("<details>")[0].splitlines() if line]


def test_a_small_review_reads_like_this(make):
    verdicts = [
        make.verdict(level=Level.ERROR, remedy=make.remedy()),
        make.open("position", rule="bass.x", subject="subwoofer/sub"),
        make.verdict(subject="loudspeaker/right", waived=make.waived()),
    ]
    assert comment(make, make.room(*verdicts)) == (
        f"{MARKER}\n"
        "**Held back:** A1, 1 point at error or above (angle.front-pair).\n"
        "\n"
        "**Read first**\n"
        "\n"
        "1. **error** left: stands 17.4 deg left; the stage wants it 22 to 32 deg out (angle.front-pair, "
        "`rooms/attic.room.yaml:7`)<br>→ place it 0.80 to 1.10 m from the left \\(now 0.50 m\\)\n"
        "\n"
        "**To find out next**\n"
        "\n"
        "- sub: position (1 check waits)\n"
        "\n"
        "<details>\n"
        "<summary>Accepted failures: 1</summary>\n"
        "\n"
        "- right: stands 17.4 deg left; the stage wants it 22 to 32 deg out. Accepted by R. Lead until 2027-06-30: "
        "glass. (angle.front-pair)\n"
        "\n"
        "</details>\n"
        "<details>\n"
        "<summary>Why: the bases of what is read first: 1</summary>\n"
        "\n"
        "- angle.front-pair: ITU-R BS.775 3, Figure 1 \\(published text, read\\)\n"
        "\n"
        "</details>\n"
        "\n"
        "1 room: 1 error, 0 warnings, 0 notes, 0 for a person to decide, 1 open, 0 passed, 0 not applicable, "
        "1 accepted.\n"
    )


def test_what_holds_a_room_back_is_counted_as_its_list_counts_it(make):
    alike = [make.verdict(level=Level.ERROR, subject=f"loudspeaker/{side}") for side in ("left", "right")]
    assert shown(comment(make, make.room(*alike)))[1] == (
        "**Held back:** A1, 1 point at error or above (angle.front-pair)."
    )
    unknown = make.open("position", rule="bass.x", subject="subwoofer/sub")
    assert shown(comment(make, make.room(unknown, open_level=Level.ERROR)))[1] == (
        "**Held back:** A1, 1 check that lacks a value at this stage (bass.x)."
    )


def moved(make, way, value, before, *, kind=Kind.FAIL, **more):
    change = make.change(way, before=make.figure(before) if before is not None else None)
    return make.verdict(kind, figure=make.figure(value), window=Window(22.0, 32.0, "deg"), change=change, **more)


def test_what_is_new_or_worse_comes_first_then_what_was_cured_each_before_and_after(make):
    verdicts = [
        make.verdict(level=Level.ERROR, subject="loudspeaker/old", change=make.change(state=State.UNCHANGED)),
        moved(make, Way.WORSE, 15.0, 17.4, subject="loudspeaker/worse"),
        moved(make, Way.GONE, 24.0, 17.4, kind=Kind.PASS, subject="loudspeaker/cured"),
    ]
    quiet = make.room(file="b.room.yaml", code="loft", compared=True)
    text = comment(make, make.room(*verdicts, compared=True), quiet, against="main")
    lines = shown(text)
    assert lines[1].startswith("**Held back:** A1, 1 finding at error")
    assert lines[2] == "Compared with main: 1 worse, 1 cured."
    assert "worse: stands 17.4 → 15.0 deg left" in lines[4]
    assert "old: stands 17.4 deg left" in lines[5]
    assert "- A1: cured: azimuth 17.4 → 24.0 deg left; 22 to 32 deg" in text
    assert "As before: loft." in lines


def test_a_small_change_is_a_screen_at_most(make):
    from roomlint.review.compare import compare, earlier_of

    then = make.review(make.basement(), make.quick(), rules=make.rules())
    arm = make.verdict(level=Level.ERROR, rule="mount.x", subject="picture/picture")
    room = make.basement()
    now = make.review(
        make.room(*room.verdicts, arm, file=room.file, code=room.code, stage=room.stage),
        make.quick(),
        rules=make.rules(),
    )
    assert (
        len(shown(comment(make, *compare(now, earlier_of(then, "main")).rooms, rules=make.rules(), against="main")))
        <= 25
    )


def test_decisions_of_the_house_are_told_before_the_design(make):
    house_changes = (make.house_change("house.yaml", "angle.front-pair", "loosened", None, Decided("15 deg")),)
    let_off = make.verdict(Kind.PASS, change=make.change(Way.GONE, by=By.HOUSE))
    text = comment(make, make.room(let_off, compared=True), against="main", house_changes=house_changes)
    assert "- house.yaml: angle.front-pair loosened: 22 to 32 deg → at least 15 deg" in text
    assert text.index("Decisions of the house") < text.index("Because of that, not of the design")
    assert "**Cured**" not in text


def test_a_room_under_another_name_is_told_with_both(make):
    room = make.room(file="new.room.yaml", compared=True, was_file="old.room.yaml")
    assert "- A1: `old.room.yaml` → `new.room.yaml`" in comment(make, room, against="main")


def test_what_is_old_is_marked_and_folded_apart_from_what_is_new(make):
    new = [
        make.verdict(
            subject=f"loudspeaker/n{line}", facts={"n": line}, place=make.place(line), change=make.change(Way.NEW)
        )
        for line in range(7)
    ]
    old = make.verdict(subject="loudspeaker/old", change=make.change(state=State.UNCHANGED))
    text = comment(make, make.room(*new, old, compared=True, gate=Level.WARNING), against="main")
    shown_part, _, folded = text.partition("<details>")
    assert shown_part.count("**warning, new** n") == 5
    first, second = folded.split("<details>")[:2]
    assert "<summary>What else is new or worse: 2</summary>" in first
    assert "<summary>As before, not of this change: 1</summary>" in second
    assert "old: stands" in second


def test_what_is_unknown_assumed_or_not_looked_at_is_listed(make):
    figure = make.figure(17.4, assumes=("air at 20 degC",))
    verdicts = [make.verdict(figure=figure, change=make.change()), make.open("position", subject="subwoofer/sub")]
    room = make.room(*verdicts, compared=True, unjudged=(make.unjudged("sofa", "recline"),))
    text = comment(make, room, against="main")
    assert "- sub: position (1 check waits)" in text.partition("<summary>Not known: 1</summary>")[2]
    assert "- air at 20 degC\n" in text.partition("<summary>Assumed, because no file says it: 1</summary>")[2]
    assert "- sofa: recline" in text.partition("<summary>Not looked at by any rule: 1</summary>")[2]


def test_what_was_worked_out_is_listed(make):
    worked = (WorkedOut("up-left", "height", make.figure(2.41, "m"), "ceiling"),)
    text = comment(make, make.room(worked=worked))
    assert "2.41 m" in text.partition("<summary>Worked out of what the file says: 1</summary>")[2]


def test_a_compared_review_without_changes_says_so(make):
    assert "Compared with main: nothing changed." in comment(make, make.room(compared=True), against="main")


def test_an_incomplete_review_says_nothing_final(make):
    text = comment(make, problems=(make.problem("no unit."),), troubles=(make.trouble("a", "broke"),))
    assert "**Not complete: this review says nothing final.**" in text
    assert "- `rooms/attic.room.yaml:1` no unit." in text
    assert "- broke." in text


def test_cautions_of_what_is_read_first_are_carried_once(make):
    rules = [make.rule(name, caution="Caution: ask an engineer.") for name in ("mount.x", "mount.y")]
    verdicts = [make.verdict(rule=rule.id) for rule in rules]
    assert comment(make, make.room(*verdicts), rules=rules).count("> Ask an engineer.") == 1


def test_what_the_house_decided_is_folded_and_what_it_loosened_is_not(make):
    from roomlint.review.review import Loosened

    house = make.house(angle__front_pair={"level": "note", "because": "narrow rooms"})
    loosened = (Loosened("mount.x", "house.yaml", Level.ERROR, Level.NOTE, make.place(3)),)
    text = comment(make, make.room(house=house, loosened=loosened))
    assert "- angle.front-pair, by `house.yaml`: level note: narrow rooms." in text.partition("<details>")[2]
    assert (
        "**Loosened where people can get hurt:** mount.x: note instead of error, by house.yaml."
        in text.partition("<det")[0]
    )


def test_passes_are_counted_and_never_listed(make):
    room = make.room(make.verdict(Kind.PASS, because="fine."))
    for verdicts in (False, True):
        told = comment(make, room, verdicts=verdicts)
        assert "left: fine" not in told
        assert "1 passed" in told


@pytest.mark.parametrize("sign", ["x", "|", "@", "<"])
def test_the_comment_stays_within_the_limit_and_says_what_it_leaves_out(make, sign):
    verdicts = [
        make.verdict(
            Kind.REVIEW,
            subject=f"loudspeaker/s{line}",
            because=sign * 300 + str(line),
            place=make.place(line),
            change=make.change(Way.NEW, state=State.NEW),
        )
        for line in range(1, 200)
    ]
    rooms = [make.room(*verdicts, file=f"{index}.room.yaml", compared=True) for index in range(40)]
    problems = tuple(make.problem(sign * 200, line=line) for line in range(1, 200))
    text = comment(make, *rooms, problems=problems, against="main", verdicts=True)
    assert len(text) <= MOST
    assert " more in the full report." in text
    assert "and 189 more" in text
    assert text.rstrip().endswith("accepted.")


@pytest.mark.parametrize(
    ("text", "told"),
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
def test_data_cannot_become_markup(text, told):
    assert data(text) == told


@pytest.mark.parametrize(("text", "told"), [("a", "`a`"), ("a`b", "``a`b``"), ("`a", "`` `a ``"), ("a|b", "`a\\|b`")])
def test_data_cannot_leave_a_code_span(text, told):
    assert code(text) == told


def test_what_can_hurt_people_is_read_first_and_each_load_path_once(make):
    rules = [
        make.rule("angle.x", says={"fail": "stands askew"}, window=None),
        make.rule("mount.x", says={"fail": "is pulled too hard"}, window=None),
        make.rule("mount.y", says={"fail": "shears", "beside": "with shear too"}, window=None, beside=("mount.x",)),
    ]
    verdicts = [
        make.verdict(rule=rule.id, said="fail", level=Level.ERROR, figure=None, window=None, place=make.place(line))
        for line, rule in enumerate(rules, start=3)
    ]
    text = comment(make, make.room(*verdicts), rules=rules)
    first = [line for line in text.splitlines() if line[:2] in {"1.", "2.", "3."}]
    assert len(first) == 2
    assert "is pulled too hard; with shear too (mount.x, mount.y, " in first[0]
    assert "stands askew" in first[1]


def test_what_is_not_read_first_is_said_to_stand_below_in_a_comparison(make):
    old = [
        make.verdict(
            subject=f"loudspeaker/w{n}", figure=make.figure(9.0, u=n / 100), facts={"number": n},
            change=make.change(state=State.UNCHANGED),
        )
        for n in range(9)
    ]  # fmt: skip
    text = comment(make, make.room(*old, gate=Level.WARNING, compared=True), against="main")
    assert "- and 4 more, among what is folded below\n" in text
