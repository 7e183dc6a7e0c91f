"""Code hosts read a part of SARIF only; what they would show wrongly must not reach them."""

from __future__ import annotations

import json

import pytest

from roomlint.report import Wishes
from roomlint.report.alerts import alerts_report
from roomlint.review.verdict import Kind, Level, Way


def run_of(review, **more):
    return json.loads("".join(alerts_report(review, Wishes(), **more)))["runs"][0]


def told(run):
    return [note["message"]["text"] for note in run["invocations"][0]["toolConfigurationNotifications"]]


def test_only_failures_that_nobody_accepted_become_alerts(make):
    verdicts = [
        make.verdict(change=make.change(Way.NEW)),
        make.verdict(subject="loudspeaker/b", waived=make.waived(), change=make.change()),
        *(make.verdict(kind, subject=f"loudspeaker/{kind}") for kind in Kind if kind is not Kind.FAIL),
    ]
    gone = (make.verdict(subject="old/one"),)
    run = run_of(make.review(make.room(*verdicts, gone=gone, compared=True), against="main"))
    assert [result["message"]["text"].partition(":")[0] for result in run["results"]] == ["left"]
    counted = "1 accepted, 1 for a person to decide, 1 gone, 1 informational, 1 not applicable, 1 open, 1 passed"
    assert told(run) == [f"Left out of this report: {counted}."]


def test_an_unreadable_file_is_an_alert_at_its_place_so_that_no_host_closes_the_others_for_mended(make):
    run = run_of(
        make.review(make.room(make.verdict()), problems=(make.problem("no unit", file="p.product.yaml", line=4),))
    )
    first = run["results"][0]
    assert (first["ruleId"], first["level"]) == ("file.unreadable", "error")
    assert first["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] == "p.product.yaml"
    assert first["locations"][0]["physicalLocation"]["region"]["startLine"] == 4
    assert run["tool"]["driver"]["rules"][first["ruleIndex"]]["id"] == "file.unreadable"


def test_an_alert_says_what_clears_it_and_the_caution(make):
    rule = make.rule("mount.x", caution="Caution: an engineer decides.")
    verdict = make.verdict(rule="mount.x", figure=make.figure(), window=rule.window.window, remedy=make.remedy())
    (result,) = run_of(make.review(make.room(verdict), rules=(rule,)))["results"]
    assert result["message"]["text"] == (
        "left: stands 17.4 deg left; the stage wants it 22 to 32 deg out. Place it 0.80 to 1.10 m from the left "
        "(now 0.50 m). Caution: an engineer decides."
    )


def test_the_alert_s_identity_does_not_hang_on_lines(make):
    first, second = (run_of(make.review(make.room(make.verdict(place=make.place(line))))) for line in (3, 70))
    hashes = [run["results"][0]["partialFingerprints"]["primaryLocationLineHash"] for run in (first, second)]
    assert hashes[0] == hashes[1]
    assert hashes[0].endswith(":1")


def test_equal_findings_keep_apart(make):
    run = run_of(make.review(make.room(make.verdict(), make.verdict())))
    hashes = [result["partialFingerprints"]["primaryLocationLineHash"] for result in run["results"]]
    assert [value[-2:] for value in hashes] == [":1", ":2"]


def test_when_there_are_too_many_the_gravest_stay_and_the_rest_is_counted(make):
    levels = (Level.NOTE, Level.ERROR, Level.WARNING, Level.ERROR)
    verdicts = [
        make.verdict(level=level, subject=f"loudspeaker/s{line}", place=make.place(line))
        for line, level in enumerate(levels, 1)
    ]
    run = run_of(make.review(make.room(*verdicts)), most_results=3)
    assert [result["level"] for result in run["results"]] == ["error", "warning", "error"]
    assert "1 failure beyond the 3 gravest" in told(run)[0]


def test_houses_beyond_what_hosts_take_share_an_extension_and_lose_no_result(make):
    rules = [make.rule("house.x", package=f"job{number}/house.yaml") for number in range(130)]
    rooms = [
        make.room(
            make.verdict(rule="house.x"),
            file=f"job{number}/a.room.yaml",
            house=make.house(file=f"job{number}/house.yaml"),
        )
        for number in range(130)
    ]
    run = run_of(make.review(*rooms, rules=(make.rule(), *rules)))
    assert len(run["tool"]["extensions"]) == 100
    assert len(run["results"]) == 130
    assert "31 houses wrote under the same id" in told(run)[0]
    for result in run["results"]:
        where = result["rule"]
        component = run["tool"]["extensions"][where["toolComponent"]["index"]]
        assert component["rules"][where["index"]]["id"] == "house.x"
        assert component["name"] == where["toolComponent"]["name"]


@pytest.mark.parametrize("length", [1000, 1023, 1024, 5000])
def test_no_text_is_longer_than_hosts_take(make, length):
    long = "x" * length
    rule = make.rule(docstring=f"{long}.\n\nWhy: {long}.")
    run = run_of(make.review(make.room(make.verdict(facts={"wall": long}, said="long")), rules=(rule,)))
    descriptor = run["tool"]["driver"]["rules"][0]
    texts = [run["results"][0]["message"], descriptor["shortDescription"], descriptor["fullDescription"]]
    assert all(len(text["text"]) <= 1024 for text in texts)
    assert texts[0]["text"].endswith(".")


def test_every_alert_has_a_physical_place(make):
    result = run_of(make.review(make.room(make.verdict(subject=""))))["results"][0]
    assert result["locations"][0]["physicalLocation"]["region"]["startLine"] == 7


def test_what_a_host_ignores_is_not_sent(make):
    text = "".join(alerts_report(make.review(make.room(make.verdict())), Wishes()))
    assert not {"taxa", "taxonomies", "relationships", "suppressions", "baselineState"} & set(text.split('"'))
