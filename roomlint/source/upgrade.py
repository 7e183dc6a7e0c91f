"""Rewrites a file of an older edition in today's form: only the places that changed, comments and order kept.

Nothing is invented. What an older file said in free words, where today somebody must be able to check it, goes into a
comment, so that the words are kept and the check asks for what stands for them.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.source.tree import read_tree

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from roomlint.source.node import Node
    from roomlint.source.place import Problem

_PROOFS: Final = ("secondary", "strap", "engineer", "anchor_approval", "approval")
"""Free texts until 0.1.0; a mapping of what can be checked, or the word none, since 0.2.0."""

_PANELS: Final = ("service", "subpanel")
"""What a circuit could start from until 0.2.0; since 0.3.0 it names one of the panels."""


class Change(NamedTuple):
    """One place that is rewritten, or that a person must look at; lines count from 1."""

    line: int
    text: str
    done: bool


class Upgrade(NamedTuple):
    """The new text and what was changed; problems when the file could not be read, and then nothing is changed."""

    text: str
    changes: tuple[Change, ...]
    problems: tuple[Problem, ...] = ()


class _Edit(NamedTuple):
    start: int
    end: int
    put: str


def upgrade(text: str, file: str, withdrawn: Mapping[str, str]) -> Upgrade:
    """Return a file in today's form; `withdrawn` gives for each rule that once was the one that took over."""
    root, problems = read_tree(text, file)
    if root is None or problems:
        return Upgrade(text, (), tuple(problems))
    shift = len(text) - len(text.removeprefix("\ufeff"))
    plain = text[shift:]
    work = _Work(plain)
    for node in _below(root):
        work.look(node)
    work.rules(root, withdrawn)
    work.panels(root)
    new = work.result()
    changes = tuple(sorted(work.changes))
    if read_tree(new, file)[1]:
        # Writing nothing is better than writing what cannot be read.
        return Upgrade(text, tuple(change._replace(done=False) for change in changes))
    return Upgrade(text[:shift] + new, changes)


def _below(node: Node) -> Iterator[Node]:
    """Yield every mapping of a tree, outer ones first; what an alias stands for is rewritten where it is written."""
    value = node.value if not node.is_alias else None
    if type(value) is dict:
        yield node
    for one in value.values() if type(value) is dict else value if type(value) is list else ():
        yield from _below(one)


class _Work:
    """The edits of one file."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.newline = "\r\n" if "\r\n" in text else "\n"
        self.edits: list[_Edit] = []
        self.changes: list[Change] = []

    def result(self) -> str:
        """Return the text with all edits made."""
        parts, at = [], 0
        for edit in sorted(self.edits, key=lambda edit: (edit.start, edit.end)):
            parts += [self.text[at : edit.start], edit.put]
            at = max(at, edit.end)
        return "".join([*parts, self.text[at:]])

    def tell(self, node: Node, text: str, *, done: bool) -> None:
        """Note a change at a node's key."""
        place = node.key_place or node.place
        self.changes.append(Change(place.line, text, done))

    def look(self, node: Node) -> None:
        """Rewrite what changed in one mapping."""
        path = re.sub(r"\[\d+\]", "[]", node.path)
        drop = node.get("feeder_drop")
        if drop is not None and path == "circuits[]" and isinstance(drop.value, (int, float)):
            end = drop.span(self.text)[1]
            self.edits.append(_Edit(end, end, " %"))
            self.tell(drop, f"feeder_drop carries its unit: {drop.value} %", done=True)
        lighting = node.get("feeds_lighting")
        if lighting is not None and path == "circuits[]":
            said = "feeds_lighting is about lighting alone now, no longer about other plug-in loads; see that it is so"
            self.tell(lighting, said, done=False)
        fixing = node.get("fixing")
        if fixing is not None and path == "treatments[]":
            self._into_mounting(node, fixing)
        for name in _PROOFS:
            proof = node.get(name)
            if proof is None or (name == "approval" and path != "treatments[]"):
                continue
            if isinstance(proof.value, str) and proof.value != "none":
                self._into_a_comment(node, proof, name)

    def rules(self, root: Node, withdrawn: Mapping[str, str]) -> None:
        """Name the rules that took over in waivers and in decisions of the house."""
        for holder in ("waivers", "decisions"):
            listed = root.get(holder)
            for one in listed.value if listed is not None and type(listed.value) is list else ():
                rule = one.get("rule")
                after = withdrawn.get(rule.value) if rule is not None and isinstance(rule.value, str) else None
                if rule is None or after is None:
                    continue
                start, end = rule.span(self.text)
                self.edits.append(_Edit(start, end, after))
                bound = "; see that its bound still means the same" if one.get("bound") is not None else ""
                self.tell(rule, f"{rule.value} was withdrawn, {after} took over{bound}", done=True)

    def panels(self, root: Node) -> None:
        """List the panels that circuits start from, which were only words until 0.2.0."""
        circuits = root.get("circuits")
        if circuits is None or root.get("panels") is not None or type(circuits.value) is not list:
            return
        nodes = [node for one in circuits.value if type(one.value) is dict and (node := one.get("panel")) is not None]
        words = [word for word in _PANELS if any(node.value == word for node in nodes)]
        if not words:
            return
        if root.in_brackets:
            self.tell(nodes[0], "a panel is named and stands in the list `panels`; write it by hand", done=False)
            return
        start = circuits.key_start
        lines = "".join(f"  - {{id: {word}, kind: {word}}}{self.newline}" for word in words)
        self.edits.append(_Edit(start, start, f"panels:{self.newline}{lines}{self.newline}"))
        self.tell(nodes[0], f"the panel is named {words[0]} and stands in the list `panels`", done=True)

    def _into_mounting(self, treatment: Node, fixing: Node) -> None:
        """Put a panel's fixing into its mounting."""
        if treatment.get("mounting") is not None:
            self.tell(fixing, "a panel's fixing stands in its mounting now; move it there by hand", done=False)
            return
        start, end = fixing.key_start, fixing.span(self.text)[1]
        if not treatment.in_brackets and not fixing.in_brackets and type(fixing.value) is dict:
            indent = " " * (start - self.text.rfind("\n", 0, start) - 1)
            self.edits.append(_Edit(start, start, f"mounting:{self.newline}{indent}  "))
            inner = self.text.find("\n", start)
            while 0 <= inner < end:
                if self.text[inner + 1 : inner + 2] not in {"\n", "\r", ""}:
                    self.edits.append(_Edit(inner + 1, inner + 1, "  "))
                inner = self.text.find("\n", inner + 1)
        else:
            self.edits += [_Edit(start, start, "mounting: {"), _Edit(end, end, "}")]
        self.tell(fixing, "a panel's fixing stands in its mounting", done=True)

    def _into_a_comment(self, holder: Node, proof: Node, name: str) -> None:
        """Take a free text out and keep its words in a comment above its line."""
        start, end = proof.key_start, proof.span(self.text)[1]
        said = " ".join(str(proof.value).split())
        line = self.text.rfind("\n", 0, start) + 1
        before = self.text[line:start]
        # An anchor may be wanted elsewhere, and a mapping that becomes empty would say something else.
        fixed = (
            len(holder.value) == 1 or proof.is_alias or self.text[self.text.find(":", start) :].lstrip(": ")[0] == "&"
        )
        if fixed or (not holder.in_brackets and before.strip()):
            text = f"{name} is a mapping of what can be checked, or none, and no free text ({said}); write it by hand"
            self.tell(proof, text, done=False)
            return
        indent = " " * (len(before) - len(before.lstrip()))
        rest = self.text.find("\n", end)
        rest = rest if rest >= 0 else len(self.text)
        # What stood beside the words goes with them; between brackets the line stays, and its comment in it.
        beside = "" if holder.in_brackets else self.text[end:rest].strip()
        told = f"{name} said: {said}{'  ' if beside else ''}{beside}"
        self.edits.append(_Edit(line, line, f"{indent}# {told}{self.newline}"))
        if holder.in_brackets:
            after = re.compile(r"[ \t]*,[ \t]*").match(self.text, end)
            comma = re.compile(r",[ \t]*\Z").search(self.text[:start])
            cut = (start, after.end()) if after is not None else (comma.start() if comma is not None else start, end)
            self.edits.append(_Edit(*cut, ""))
        else:
            self.edits.append(_Edit(line, min(rest + 1, len(self.text)), ""))
        self.tell(proof, f"{name} is no free text any more; its words stand in a comment", done=True)
