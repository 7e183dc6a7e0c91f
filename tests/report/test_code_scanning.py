"""Code hosts read a part of SARIF only; what they would show wrongly must not reach them."""

from __future__ import annotations

import json

import pytest

from roomlint.report.code_scanning import code_scanning_report
from roomlint.review.verdict import Kind, Level, State


def run_of(review, **more):
    return json.loads(code_scanning_report(review, **more))["runs"][0]


def told(run):
    return [note["message"]["text"] for note in run["invocations"][0]["toolConfigurationNotifications"]]


def test_only_failures_that_nobody_accepted_become_alerts(make):
    verdicts = [
        make.verdict(change=make.change("", state=State.NEW)),
        make.verdict(subject="loudspeaker/b", waived=make.waived(), change=make.change()),
        *(make.verdict(kind, subject=f"loudspeaker/{kind}") for kind in Kind if kind is not Kind.FAIL),
    ]
    gone = (make.verdict(subject="old/one"),)
    run = run_of(make.review(make.room(*verdicts, gone=gone, compared=True), against="main"))
    assert [result["locations"][0]["logicalLocations"][0]["name"] for result in run["results"]] == ["left"]
    counted = "1 for review, 1 gone, 1 informational, 1 not applicable, 1 open, 1 passed, 1 waived"
    assert told(run) == [f"Left out of this report: {counted}. The full SARIF report holds everything."]


def test_the_alert_s_identity_does_not_hang_on_lines(make):
    first, second = (run_of(make.review(make.room(make.verdict(place=make.place(line))))) for line in (3, 70))
    hashes = [run["results"][0]["partialFingerprints"]["primaryLocationLineHash"] for run in (first, second)]
    assert hashes[0] == hashes[1]
    assert hashes[0].endswith(":1")


def test_equal_findings_keep_apart(make):
    run = run_of(make.review(make.room(make.verdict(), make.verdict(message="another"))))
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


def test_when_there_are_too_many_rules_those_that_found_something_stay(make):
    rules = (make.rule("a.a"), make.rule("b.b"), make.rule("c.c"))
    run = run_of(make.review(make.room(make.verdict(rule="c.c")), rules=rules), most_rules=2)
    assert [rule["id"] for rule in run["tool"]["driver"]["rules"]] == ["a.a", "c.c"]
    assert run["results"][0]["ruleIndex"] == 1
    assert "1 rule beyond the first 2" in told(run)[0]


@pytest.mark.parametrize("length", [1000, 1023, 1024, 5000])
def test_no_text_is_longer_than_hosts_take(make, length):
    long = "x" * length
    rule = make.rule(docstring=f"{long}.\n\nWhy: {long}.")
    run = run_of(make.review(make.room(make.verdict(message=long)), rules=(rule,)))
    descriptor = run["tool"]["driver"]["rules"][0]
    texts = [run["results"][0]["message"], descriptor["shortDescription"], descriptor["fullDescription"]]
    assert all(len(text["text"]) <= 1024 for text in texts)
    assert texts[0]["text"].endswith(".")


def test_every_alert_has_a_physical_place(make):
    result = run_of(make.review(make.room(make.verdict(subject=""))))["results"][0]
    assert result["locations"][0]["physicalLocation"]["region"]["startLine"] == 7


def test_what_a_host_ignores_is_not_sent(make):
    text = code_scanning_report(make.review(make.room(make.verdict())))
    assert not {"taxa", "taxonomies", "relationships", "suppressions", "baselineState"} & set(text.split('"'))
