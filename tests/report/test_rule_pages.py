"""The rule book prints from the rules alone."""

from __future__ import annotations

import json

from click.testing import CliRunner

from roomlint.cli import main
from roomlint.report.rule_pages import rule_text, rules_json, rules_markdown, rules_text
from roomlint.review.basis import memory, practice, standard
from roomlint.review.verdict import Level
from roomlint.review.window import Cases, at_least


def test_a_page_reads_like_this(make):
    house = make.house(angle__front_pair={"low": "26 deg", "because": "glass walls"})
    assert rule_text(make.rule(), house) == (
        "angle.front-pair: warning\n\n"
        "Left and right stand 30 degrees either side.\n\n"
        "In force: 26 to 32 deg, by house.yaml\n"
        "Window: 22 to 32 deg\n"
        "Changed by house.yaml: at least 26 deg, because: glass walls.\n\n"
        "Why: A narrow front pair sounds like one source.\n\n"
        "How decided: The azimuth of each is compared with the window.\n\n"
        "Remedy: Move the pair apart.\n\n"
        "When to waive: Where a window stands in the way.\n\n"
        "Basis:\n  ITU-R BS.775 3, Figure 1 (published text, read)\n\n"
        "Since: 0.1.0, from roomlint 0.1.0\n"
    )


def test_a_page_carries_every_grade_and_the_caution(make):
    bases = (
        standard("A", "1", read=False),
        practice("usual"),
        memory("roughly"),
    )
    page = rule_text(
        make.rule(
            "mount.x",
            bases=bases,
            caution="Caution: ask an engineer.",
            window=Cases("m", (("at home", at_least(0.5, "m", error=0.3)),), lambda *_: at_least(0.5, "m")),
            says={"fail": "{figure}"},
        )
    )
    assert "A, 1 (published text, known second-hand)" in page
    assert "common practice, no published source: usual" in page
    assert "value from memory, not confirmed: roughly" in page
    assert "Caution: Ask an engineer." in page
    assert "Limit at home: at least 0.30 m (at least 12 in); outside it is an error" in page
    assert "Guarded: " in page


def test_the_list_groups_by_chapter_in_the_book_s_order(make):
    rules = [make.rule("mount.x"), make.rule("house.own"), make.rule("angle.b"), make.rule("angle.a")]
    lines = [line.split()[0] for line in rules_text(rules).splitlines() if line]
    assert lines == ["angle", "angle.a", "angle.b", "mount", "mount.x", "house", "house.own"]


def test_the_json_list_has_what_other_programs_need(make):
    entry = json.loads(rules_json([make.rule(level=Level.ERROR)]))[0]
    assert entry["basis"] == [
        {
            "grade": "read",
            "document": "ITU-R BS.775",
            "edition": "3",
            "clause": "Figure 1",
            "note": "",
            "confirmed": True,
        }
    ]
    assert entry["window"] == {"low": 22.0, "high": 32.0, "unit": "deg"}
    assert (entry["windows"][0]["target"], entry["level"], entry["chapter"]) == (None, "error", "angle")
    assert entry["of"] == "front loudspeaker"
    assert entry["says"] == {"fail": "stands {figure}; the stage wants it {window} out"}


def test_the_book_s_index_leads_from_each_clause_to_its_rules(make):
    rules = [make.rule(), make.rule("bass.x", bases=(practice("usual"),))]
    book = rules_markdown(rules)
    assert "### angle.front-pair\n" in book
    assert "- Figure 1: [angle.front-pair](#anglefront-pair) (published text, read)" in book
    assert "- common practice, no published source: [bass.x](#bassx)" in book


def test_a_page_in_markdown_holds_no_html(make):
    book = rules_markdown([make.rule(docstring="A < B, see `a<b>`.\n\nWhy: <script>.")])
    assert "A &lt; B, see `a<b>`." in book
    assert "&lt;script&gt;" in book


def test_a_page_is_no_wider_than_the_terminal_and_one_line_a_paragraph_elsewhere(monkeypatch):
    monkeypatch.setenv("COLUMNS", "60")
    narrow = CliRunner().invoke(main, ["rules", "mount.fastener-combined"]).output
    assert max(map(len, narrow.splitlines())) <= 60
    monkeypatch.delenv("COLUMNS")
    whole = CliRunner().invoke(main, ["rules", "mount.fastener-combined"]).output
    assert " ".join(narrow.split()) == " ".join(whole.split())
    assert max(map(len, whole.splitlines())) > 200
