"""Sentences are the trade's: the rule's template, elements by their names, what is missing in an installer's words."""

from __future__ import annotations

import pytest

from roomlint.report.asking import block, lacks
from roomlint.report.merging import merged, of_several
from roomlint.report.names import Names, key_words, reading_words, wanted_words
from roomlint.report.telling import Rules, Telling, told
from roomlint.review.engine import ids_above
from roomlint.review.verdict import Kind, Level, Way
from roomlint.review.window import Window
from roomlint.source.tree import read_tree


def telling_of(make, *verdicts, rules=(), **more):
    return Telling(make.room(*verdicts, **more), Rules(rules or (make.rule(),)))


def entries(make, *verdicts, **more):
    return [entry.text for entry in merged(verdicts, telling_of(make, *verdicts, **more))]


def test_a_finding_is_its_rule_s_template_filled_in(make):
    assert told(make.verdict(), make.rule()) == "stands 17.4 deg left; the stage wants it 22 to 32 deg out"


def test_the_same_finding_in_feet_and_inches(make):
    rule = make.rule(window=Window(0.5, None, "m"), says={"fail": "{figure} from the {wall}; {window} wanted"})
    verdict = make.verdict(figure=make.figure(0.25, "m"), window=Window(0.5, None, "m"), facts={"wall": "rear wall"})
    assert told(verdict, rule) == "0.25 m from the rear wall; at least 0.50 m wanted"
    assert told(verdict, rule, "us") == "9 7/8 in from the rear wall; at least 19 3/4 in wanted"


def test_the_uncertainty_is_told_where_it_matters(make):
    near, far = (make.verdict(figure=make.figure(value, u=0.4)) for value in (21.5, 10.0))
    assert told(near, make.rule()).endswith("22 to 32 deg out (± 0.4 deg)")
    assert "±" not in told(far, make.rule())


def test_a_close_call_says_so_in_the_rule_s_own_words(make):
    close = make.verdict(Kind.REVIEW, figure=make.figure(21.9, u=0.4), window=Window(22.0, 32.0, "deg"))
    assert told(close, make.rule()) == (
        "stands 21.9 deg left; the stage wants it 22 to 32 deg out (± 0.4 deg): too close to tell"
    )


@pytest.mark.parametrize(
    ("key", "words"),
    [
        ("position", "position"),
        ("position.from_front", "how far from the front"),
        ("ear.height", "height"),
        ("mounting.fixing.thread", "length of thread"),
        ("mounting.fixing.top_count", "number of top screws"),
        ("room.ceiling.height", "height of the ceiling"),
        ("seats[].reference", "reference of the seats"),
        ("low_pass", "low pass"),
        ("product", "product sheet"),
        ("loudspeaker", "loudspeaker data"),
    ],
)
def test_what_is_missing_is_told_in_an_installer_s_words(key, words):
    assert key_words(key) == words


def test_what_to_measure_is_told_by_element_and_direction():
    assert reading_words("sofa-right", "ear.from_front") == "sofa-right, from the front"


def test_an_element_is_called_by_its_id_and_where_that_is_not_enough_by_its_kind(make):
    verdicts = [
        make.verdict(subject=key) for key in ("picture/picture", "circuit/picture", "seat/left", "loudspeaker/left")
    ]
    names = Names(verdicts)
    assert [names.one(verdict.subject) for verdict in verdicts] == [
        "picture", "circuit picture", "seat left", "loudspeaker left",
    ]  # fmt: skip
    assert Names().one("surface/rear") == "rear wall"
    assert Names().one("design/basement") == "room"


def test_the_pair_is_told_once_with_its_figures_to_either_side(make):
    pair = [make.verdict(subject=f"loudspeaker/{name}", figure=make.figure(value)) for name, value in
            (("left", 17.4), ("right", -17.9))]  # fmt: skip
    assert entries(make, *pair) == [
        "left, right: each stands 17.4 to 17.9 deg to either side; the stage wants it 22 to 32 deg out"
    ]


def test_seats_are_counted(make):
    def at(seat, *, fails):
        kind = Kind.FAIL if fails else Kind.PASS
        return make.verdict(
            kind, subject=f"loudspeaker/side+seat/s{seat}", figure=make.figure(10.0), window=Window(22.0, 32.0, "deg")
        )

    verdicts = [at(seat, fails=seat < 4) for seat in range(5)]
    telling = telling_of(make, *verdicts)
    assert merged(verdicts[:4], telling)[0].who == "side at 4 of 5 seats"
    assert merged(verdicts[:2], telling)[0].who == "side at s0, s1"
    assert merged(verdicts, telling_of(make, *[at(seat, fails=True) for seat in range(5)]))[0].who.startswith("side at")


def test_findings_with_other_windows_or_other_facts_are_not_told_as_one(make):
    rule = make.rule(window=Window(0.5, None, "m"), says={"fail": "{figure} from the {wall}"})
    verdicts = [
        make.verdict(subject=f"loudspeaker/s{index}", figure=make.figure(0.2, "m"), window=Window(0.5, None, "m"),
                     facts={"wall": wall})
        for index, wall in enumerate(("rear wall", "left wall"))
    ]  # fmt: skip
    assert len(entries(make, *verdicts, rules=(rule,))) == 2


def test_what_waits_names_the_cause(make):
    verdict = make.verdict(
        Kind.OPEN, subject="loudspeaker/left", follows=make.follows("layout.sides-swapped", "loudspeaker/left", "left")
    )
    cause = make.verdict(rule="layout.sides-swapped", said="swapped")
    swapped = make.rule("layout.sides-swapped", window=None, says={"swapped": "stands on the other side"})
    telling = telling_of(make, verdict, cause, rules=(swapped,))
    assert telling.sentence([verdict]) == "waits until this is put right: stands on the other side"
    telling.numbers[cause.rule, cause.subject] = 7
    assert telling.sentence([verdict]) == "waits for 7"
    assert told(verdict, None) == "waits until left is put right: sides swapped (layout)"


def test_what_does_not_apply_says_why(make):
    assert told(make.verdict(Kind.NOT_APPLICABLE, because="it stands on the floor"), None) == "it stands on the floor"


def test_a_remedy_says_where_to_put_it(make):
    telling = telling_of(make)
    assert telling.remedy(make.remedy(), "loudspeaker/left") == "place it 0.80 to 1.10 m from the left (now 0.50 m)"
    arm = make.remedy(0.1, 0.18, key="mounting.extension", subject="picture/picture")
    assert telling.remedy(arm, "picture/picture") == "let its arm reach 0.10 to 0.18 m (now 0.50 m)"
    aim = make.remedy(-151.0, -106.0, key="aim.azimuth", now=-90.0, unit="deg")
    assert telling.remedy(aim, "loudspeaker/left") == "turn it to 106.0 to 151.0 deg right (now 90.0 deg right)"
    ahead = make.remedy(-5.0, 12.0, key="aim.azimuth", now=30.0, unit="deg")
    assert telling.remedy(ahead, "loudspeaker/left") == "turn it to 5.0 deg right to 12.0 deg left (now 30.0 deg left)"
    breaks = make.remedy(breaks=("bass.seat-spread",))
    assert telling.remedy(breaks, "loudspeaker/right") == (
        "place left 0.80 to 1.10 m from the left (now 0.50 m), at the cost of seat spread (bass)"
    )


def test_a_remedy_of_a_pair_written_once_says_that_both_move(make):
    telling = telling_of(make)
    both = make.remedy(mirrored="loudspeaker/right", breaks=("bass.seat-spread",))
    assert telling.remedy(both, "loudspeaker/left") == (
        "place it 0.80 to 1.10 m from the left (now 0.50 m), and right with it, at the cost of seat spread (bass)"
    )
    of_both = "left, right: place each 0.80 to 1.10 m from the left (now 0.50 m)"
    assert telling.remedies([make.remedy(), make.remedy(subject="loudspeaker/right")]) == of_both


def test_at_the_drawing_board_one_chooses_and_on_site_one_measures(make):
    telling = telling_of(make)
    assert telling.again(make.again(("centre", "position.height"))) == "measure again within ± 3 mm: centre, height"
    assert telling.again(make.again(("centre", "position.height"), chosen=True)).startswith("choose a value clear of")


def test_what_to_find_out_next_is_ranked_by_hazard_not_by_number(make):
    opens = [make.open("product", rule="bass.x", subject="amplifier/amp") for _ in range(9)]
    opens += [make.open("mounting.fixing.thread", rule="mount.x", subject="picture/picture")]
    assert [lack.subject for lack in lacks(opens)] == ["picture/picture", "amplifier/amp"]


def test_two_receptacles_of_one_name_lack_what_they_lack_each(make):
    opens = [
        make.verdict(
            Kind.OPEN,
            wanted=make.wanted("gfci", subject="receptacle/r1", path=f"circuits[{n}].receptacles[0].gfci",
                               above=(f"id: c{n}", "id: r1")),
        ) for n in range(2)
    ]  # fmt: skip
    assert len(lacks(opens)) == 2
    assert [line for line in block(lacks(opens)) if "gfci" in line or "id: c" in line] == [
        "  - id: c0", "        gfci:", "  - id: c1", "        gfci:",
    ]  # fmt: skip


def test_all_that_one_element_lacks_is_one_block_to_paste(make):
    opens = [
        make.open("position", subject="loudspeaker/left"),
        make.open("mounting.fixing.thread", subject="loudspeaker/left"),
        make.open("mounting.fixing.count", subject="loudspeaker/left"),
        make.verdict(
            Kind.OPEN,
            wanted=make.wanted(
                "gfci", subject="receptacle/bar", path="circuits[0].receptacles[1].gfci", above=("id: c1", "id: bar")
            ),
        ),
        make.verdict(
            Kind.OPEN, wanted=make.wanted("tolerance", subject="survey/", path="survey.tolerance", above=("",))
        ),
    ]
    assert block(lacks(opens)) == [
        "loudspeakers:",
        "  - id: left",
        "    position: {from_left: , from_front: , height: }",
        "    mounting: {fixing: {thread: , count: }}",
        "circuits:",
        "  - id: c1",
        "    receptacles:",
        "      - id: bar",
        "        gfci:",
        "survey: {tolerance: }",
    ]


def test_the_sheet_of_a_mount_is_not_that_of_what_hangs_on_it(make):
    assert wanted_words(make.wanted("product", path="loudspeakers[0].mounting.product")) == "sheet of its mount"
    assert wanted_words(make.wanted("product", path="loudspeakers[0].product")) == "product sheet"


def test_what_the_design_cured_is_told_with_the_window_that_it_failed(make):
    """A note's edge is wider than that of the warning, which is what is left to pass."""
    gap = {
        "kind": Kind.PASS,
        "level": None,
        "figure": make.figure(0.22, "m", name="gap"),
        "window": Window(0.0, None, "m"),
    }
    change = make.change(Way.GONE, before=make.figure(0.018, "m", name="gap"), window=Window(0.03, None, "m"))
    verdict = make.verdict(change=change, **gap)
    assert telling_of(make, verdict).sentence([verdict], moved=True).endswith("0.22 m; at least 0.03 m")


def test_what_an_amplifier_feeds_is_no_circuit(make):
    wanted = make.wanted("feeds", path="electronics.amplifiers[0].feeds")
    assert wanted_words(wanted) == "what its outputs drive"
    assert wanted_words(make.wanted("feeds", path="circuits[0].loads[1].feeds")) == "circuit"


def test_what_the_electronics_lack_is_told_of_the_room():
    assert Names().one("electronics/basement-08") == "room"


@pytest.mark.parametrize(
    ("says", "told"),
    [
        ("stands too low", "stand too low"),
        ("brings cable near the edge", "each brings cable near the edge"),
        ("is marked CL2 and rises through floors", "each is marked CL2 and rises through floors"),
        ("no drywall screw may hold it; use bolts", "no drywall screw may hold them; use bolts"),
        ("its feet stand over the plate of its stand", "their feet stand over the plate of their stand"),
        ("its plugs draw 13 A together", "for each, its plugs draw 13 A together"),
        ("swung aside it is too heavy", "for each, swung aside it is too heavy"),
        ("0.25 m from the rear wall", "0.25 m from the rear wall"),
    ],
)
def test_what_is_told_of_several_is_grammatical(says, told):
    assert of_several(says) == told


def test_what_a_pair_lacks_is_to_be_written_below_the_pair(make):
    tree, _ = read_tree("loudspeakers:\n- {id: centre}\n- {pair: [left, right]}\n- {label: M+110}\n", "a.room.yaml")
    assert tree is not None
    opens = []
    for number in range(3):
        path = f"loudspeakers[{number}].aim"
        wanted = make.wanted("aim", path=path, above=ids_above(tree, path))
        opens.append(make.verdict(Kind.OPEN, subject=f"loudspeaker/{number}", wanted=wanted))
    assert block(lacks(opens[:1]), 60) == ["loudspeakers:", "  - {id: centre, aim: }"]
    assert block(lacks(opens[1:2]), 60) == ["loudspeakers:", "  - {pair: [left, right], aim: }"]
    assert block(lacks(opens[2:]), 60) == ["loudspeakers:", "  - {id: ..., aim: }"]


def test_no_sentence_holds_a_place_in_a_list(make):
    room = make.basement()
    telling = Telling(room, Rules(make.rules()))
    assert not [one for verdict in room.verdicts if "[" in (one := telling.whole(verdict))]


@pytest.mark.parametrize("level", list(Level))
def test_levels_do_not_change_a_sentence(make, level):
    assert told(make.verdict(level=level), make.rule()) == told(make.verdict(), make.rule())


def test_a_dip_is_told_as_its_size_and_so_is_what_is_allowed(make):
    rule = make.rule(window=Window(-12.0, None, "dB"), says={"fail": "falls {size} below; {allowed} wanted"})
    verdict = make.verdict(figure=make.figure(-14.2, "dB", name="dip"), window=Window(-12.0, None, "dB"))
    assert told(verdict, rule) == "falls 14.2 dB below; at most 12 dB wanted"


def moved(make, **values):
    """Return the lines of loudspeakers whose azimuths moved, by their name: before and after."""
    verdicts = [
        make.verdict(
            subject=f"loudspeaker/{name}",
            figure=make.figure(now),
            change=make.change(Way.WORSE, before=make.figure(was)),
        )
        for name, (was, now) in values.items()
    ]
    return [entry.text for entry in merged(verdicts, telling_of(make, *verdicts), moved=True)]


def test_a_pair_that_moved_by_the_same_is_one_line(make):
    assert moved(make, left=(19.0, 17.4), right=(-19.0, -17.4)) == [
        "left, right: each stands 19.0 → 17.4 deg to either side; the stage wants it 22 to 32 deg out"
    ]
    assert moved(make, one=(19.0, 17.4), other=(19.0, 17.4)) == [
        "one, other: each stands 19.0 → 17.4 deg left; the stage wants it 22 to 32 deg out"
    ]


def test_what_moved_otherwise_or_stood_still_has_a_line_of_its_own(make):
    lines = moved(make, left=(19.0, 17.4), right=(-20.0, -17.4))
    assert [line.partition(":")[0] for line in lines] == ["left", "right"]
    assert "19.0 → 17.4 deg left" in lines[0]
    assert "20.0 → 17.4 deg right" in lines[1]


@pytest.mark.parametrize(
    ("key", "subject", "lacks", "says"),
    [
        ("smoke_alarm", "design/den", "room/room", "not known: where its smoke alarm is"),
        ("finish", "loudspeaker/left", "floor/floor", "not known: what it is covered with (floor)"),
        ("noise", "seat/sofa", "design/den", "not known: what is heard when nothing plays"),
        ("circuits", "subwoofer/sub", "design/den", "not known: circuits of the room"),
        ("circuits", "design/den", "design/den", "not known: circuits"),
        ("fire_rated", "loudspeaker/left", "ceiling/ceiling", "not known: fire rating of ceiling"),
    ],
)
def test_what_is_missing_is_a_sentence(key, subject, lacks, says, make):
    wanted = make.wanted(key, subject=lacks)
    verdict = make.verdict(subject=subject, kind=Kind.OPEN, level=None, figure=None, wanted=wanted)
    assert telling_of(make, verdict).sentence([verdict]) == says
