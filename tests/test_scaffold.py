"""A newcomer's first rule: two files are written, refused until they are filled in, and then hold."""

from __future__ import annotations

import importlib.util

import pytest

from roomlint.edges import check_edge
from roomlint.review.rule import FILL_IN, RuleError
from roomlint.scaffold import scaffold
from roomlint.testing import Case, check_case, main


@pytest.fixture
def checkout(tmp_path):
    (tmp_path / "rules").mkdir()
    (tmp_path / "tests" / "rules").mkdir(parents=True)
    return tmp_path


def load(path, name):
    spec = importlib.util.spec_from_file_location(name, path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("rule_id", ["layout.off-the-floor", "mount.off-the-floor"])
def test_a_new_rule_is_refused_until_filled_in_and_then_holds_its_cases(checkout, rule_id) -> None:
    module, cases = scaffold(rule_id, checkout)
    with pytest.raises(RuleError, match=f"still says {FILL_IN}"):
        load(module, "unfilled")
    for path in (module, cases):
        path.write_text(path.read_text().replace(FILL_IN, "Filled in"))
    rule = load(module, "filled").off_the_floor
    told = load(cases, "filled_cases")
    for case in told.CASES:
        assert isinstance(case, Case)
        check_case(case, [rule])
    for edge in told.EDGES:
        check_edge(edge, [rule])


def test_what_cannot_be_written_is_told(checkout, capsys, monkeypatch) -> None:
    monkeypatch.chdir(checkout)
    assert main(["new", "nonsense.rule"]) == 2
    assert "chapters: layout" in capsys.readouterr().err
    assert main(["new", "layout.one"]) == 0
    assert main(["new", "layout.one"]) == 2
    assert "is there already" in capsys.readouterr().err
    assert main([]) == 2
    monkeypatch.chdir(checkout / "tests" / "rules")
    assert main(["new", "layout.two"]) == 2
    assert "top of the checkout" in capsys.readouterr().err
