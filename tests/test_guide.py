"""The contributor's guide: the rule that it adds in one sitting is made, and its cases and edges hold."""

from __future__ import annotations

import re
import textwrap
from pathlib import Path
from typing import Any

from roomlint.edges import check_edge
from roomlint.testing import check_case

GUIDE = (Path(__file__).parent.parent / "DEVELOPERS.md").read_text(encoding="utf-8")


def test_the_rule_of_the_guide_holds_its_cases() -> None:
    blocks = re.findall(r"^ +```python\n(.*?)^ +```$", GUIDE, flags=re.DOTALL | re.MULTILINE)
    made: dict[str, Any] = {}
    for block in blocks:
        exec(textwrap.dedent(block), made)  # noqa: S102  our own page
    rule = made["near_seat"]
    assert {case.kind for case in made["CASES"]} == {"pass", "fail", "open", "notApplicable"}
    for case in made["CASES"]:
        check_case(case, [rule])
    for edge in made["EDGES"]:
        check_edge(edge, [rule])
