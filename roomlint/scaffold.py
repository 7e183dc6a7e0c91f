"""Writes the two files of a new rule, to be filled in: `python -m roomlint.testing new CHAPTER.RULE`."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from roomlint import __version__
from roomlint.review.rule import CAUTIOUS, CHAPTERS, FILL_IN

if TYPE_CHECKING:
    from pathlib import Path

_CAUTION = f'    caution="{FILL_IN}: what a person must mind, and whose word counts in the end.",\n'
_RULE = '''"""{fill}: what the rules of this module are about."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.review import LOUDSPEAKERS, Level, at_least, need, practice, rule

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Figure, Room


@rule(
    "{rule}",
    level=Level.NOTE,
    basis=practice("{fill}: where the limit comes from"),
    each=LOUDSPEAKERS,
    window=at_least(0.3, "m"),
    says="{fill}: {{figure}}; {{window}} wanted",
    cure=("position",),
    at="position",
{caution}    since="{version}",
)
def {name}(room: Room, speaker: Loudspeaker) -> Figure:
    """{fill}: what holds in a good design, in one sentence.

    Why: {fill}: what goes wrong otherwise.

    How decided: {fill}: the figure, in words, and its limits.

    Remedy: {fill}: what a designer does about it.

    When to waive: {fill}: when it is acceptable after all.
    """
    height = need(speaker.position, speaker, "position").z
    return room.figures.angles.figure("height above the floor", "m", lambda w: w(height))
'''
_CASES = '''"""Cases of {rule}."""

from __future__ import annotations

from roomlint.edges import Edge
from roomlint.sample import room, speaker
from roomlint.testing import Case, Never, changed

LEFT = room(speaker("left", "M+030", -1.5, 2.6))
LOW = changed(LEFT, {{"loudspeakers.0.position.height": "0.2 m"}})
NOWHERE = changed(LEFT, {{"loudspeakers.0.position": None}})

CASES: list[Case | Never] = [
    Case("{rule}", "pass", LEFT, figure=1.2, source="{fill}: where this figure was worked out"),
    Case("{rule}", "fail", LOW, level="note"),
    Case("{rule}", "open", NOWHERE),
    Case("{rule}", "notApplicable", room()),
]

EDGES: list[Edge] = [
    Edge("{rule}", LEFT, "loudspeakers.0.position.height", 0.0, 2.0, 1),
]
'''


def scaffold(rule_id: str, top: Path) -> tuple[Path, Path]:
    """Write a rule's module and its cases below a checkout's top; raises ValueError when they cannot be written."""
    chapter, _, slug = rule_id.partition(".")
    if chapter not in CHAPTERS or not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", slug):
        raise ValueError(f"{rule_id!r} is not CHAPTER.RULE in small letters; chapters: {', '.join(CHAPTERS)}")
    name = slug.replace("-", "_")
    module, cases = top / "rules" / chapter / f"{name}.py", top / "tests" / "rules" / chapter / f"cases_{name}.py"
    for path in (module, cases):
        if path.exists():
            raise ValueError(f"{path} is there already")
        if not path.parent.parent.is_dir():
            raise ValueError(f"{path.parent.parent} is not there; call this from the top of the checkout")
    for folder in (module.parent, cases.parent):
        folder.mkdir(exist_ok=True)
    start = module.parent / "__init__.py"
    if not start.exists():
        start.write_text(f'"""Chapter {chapter}: {FILL_IN}: what it is about."""\n', encoding="utf-8")
    caution = _CAUTION if chapter in CAUTIOUS else ""
    fields = {"rule": rule_id, "name": name, "fill": FILL_IN, "version": __version__, "caution": caution}
    module.write_text(_RULE.format(**fields), encoding="utf-8")
    cases.write_text(_CASES.format(**fields), encoding="utf-8")
    return module, cases
