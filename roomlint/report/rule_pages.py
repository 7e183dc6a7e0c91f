"""The rule book: the list of rules, one rule's page, and the whole book with an index of its sources."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.report.markdown_text import prose
from roomlint.report.words import decided, printable, sentence
from roomlint.review.basis import Grade
from roomlint.review.engine import house_window
from roomlint.review.rule import CHAPTERS, HEADINGS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.design.house import House
    from roomlint.review.basis import Basis
    from roomlint.review.rule import Rule
    from roomlint.review.window import Window

GRADES = {
    Grade.READ: "published text, read",
    Grade.SECOND_HAND: "published text, known second-hand",
    Grade.PRACTICE: "common practice, no published source",
    Grade.MEMORY: "value from memory, not confirmed",
}
WHOLE = "the document as a whole"
"""Stands for the clause where a basis names none."""


def rules_text(rules: Iterable[Rule]) -> str:
    """Return the rules as a list by chapter: id, level, first sentence of the page."""
    lines: list[str] = []
    for chapter, group in _by_chapter(rules):
        width = max(len(rule.id) for rule in group)
        lines += ["", chapter] if lines else [chapter]
        lines += [f"  {rule.id:{width}}  {rule.level:7}  {rule.summary}" for rule in group]
    return printable(lines)


def rule_text(rule: Rule, house: House | None = None) -> str:
    """Return one rule's page; with a house, what it decided about the rule."""
    page = rule.page
    lines = [f"{rule.id}: {rule.level}", "", page.summary, "", *_numbers(rule, house), ""]
    for heading in HEADINGS:
        if heading in page.parts:
            lines += [f"{heading}: {page.parts[heading]}", ""]
    lines += ["Basis:", *(f"  {basis_words(basis)}" for basis in rule.bases), ""]
    if rule.caution:
        lines += [f"Caution: {_caution(rule)}", ""]
    lines += [f"Reads: {', '.join(rule.reads)}", f"Since: {rule.since}, from {rule.package} {rule.version}".rstrip()]
    return printable(lines)


def rules_json(rules: Iterable[Rule]) -> str:
    """Return the rules as a JSON list of objects."""
    import json  # the lists and pages for reading do without

    return json.dumps([_plain(rule) for rule in _sorted(rules)], ensure_ascii=False, indent=2)


def rules_markdown(rules: Iterable[Rule], house: House | None = None) -> str:
    """Return the whole book in Markdown: every page, then an index from each document and clause to the rules."""
    rules = _sorted(rules)
    lines = ["# Rule book", "", f"{len(rules)} rules.", ""]
    for chapter, group in _by_chapter(rules):
        lines += [f"## {chapter}", ""]
        for rule in group:
            lines += [f"### {rule.id}", "", *rule_markdown(rule, house)]
    lines += ["## Sources", "", *_index(rules)]
    return printable(lines)


def rule_markdown(rule: Rule, house: House | None = None) -> list[str]:
    """Return the lines of one rule's page in Markdown, without its heading and without HTML."""
    page = rule.page
    lines = [f"**{rule.level}** · {prose(page.summary)}", ""]
    lines += [f"- {prose(line)}" for line in _numbers(rule, house)]
    lines += [""]
    for heading in HEADINGS:
        if heading in page.parts:
            lines += [f"**{heading}:** {prose(page.parts[heading])}", ""]
    lines += ["**Basis:**", "", *(f"- {prose(basis_words(basis))}" for basis in rule.bases), ""]
    if rule.caution:
        lines += [f"**Caution:** {prose(_caution(rule))}", ""]
    lines += [f"Reads {', '.join(f'`{key}`' for key in rule.reads)}; since {rule.since}.", ""]
    return lines


def basis_words(basis: Basis) -> str:
    """Return a basis with its grade spelt out."""
    cited = ", ".join(part for part in (document_of(basis), basis.clause) if part)
    words = f"{cited} ({GRADES[basis.grade]})" if cited else GRADES[basis.grade]
    return f"{words}: {basis.note}" if basis.note else words


def document_of(basis: Basis) -> str:
    """Return a basis's document with its edition; empty when it names none."""
    return f"{basis.document} {basis.edition}".strip() if basis.document else ""


def _caution(rule: Rule) -> str:
    """Return a rule's caution without the word that the page puts before it."""
    text = rule.caution.removeprefix("Caution: ")
    return text[:1].upper() + text[1:]


def _sorted(rules: Iterable[Rule]) -> list[Rule]:
    order = {chapter: index for index, chapter in enumerate(CHAPTERS)}
    return sorted(rules, key=lambda rule: (order.get(rule.chapter, len(order)), rule.chapter, rule.id))


def _by_chapter(rules: Iterable[Rule]) -> Iterator[tuple[str, list[Rule]]]:
    groups: dict[str, list[Rule]] = {}
    for rule in _sorted(rules):
        groups.setdefault(rule.chapter, []).append(rule)
    yield from groups.items()


def _numbers(rule: Rule, house: House | None) -> list[str]:
    lines = [f"Window: {rule.window}" if rule.window is not None else "Window: set by the case, or none; see below"]
    decision = house.decisions.get(rule.id) if house is not None else None
    if house is not None and decision is not None and decision.sets_window and rule.window is not None:
        # What holds comes first: an installer reads no further than the first window.
        lines = [
            f"Window in force: {house_window(decision, rule.window)}, by {house.file}",
            f"Own window: {rule.window}",
        ]
    if rule.target is not None:
        lines.append(f"Target: {rule.target}; outside it, inside the window, is a note")
    if rule.limit is not None:
        lines.append(f"Limit: {rule.limit}; outside it is an error")
    if rule.critical is not None:
        lines.append(f"Window of critical rooms: {rule.critical}")
    if rule.critical_level is not None:
        lines.append(f"Level in critical rooms: {rule.critical_level}")
    if rule.guarded:
        lines.append("Guarded: an edge of the window inside the uncertainty counts as failed")
    if house is not None and decision is not None:
        because = f", because: {sentence(decision.because)}" if decision.because else ""
        lines.append(f"Changed by {house.file}: {decided(decision)}{because}")
    return lines


def _plain(rule: Rule) -> dict[str, object]:
    page = rule.page
    return {
        "id": rule.id,
        "chapter": rule.chapter,
        "level": rule.level.value,
        "summary": page.summary,
        "why": page.parts.get("Why", ""),
        "how_decided": page.parts.get("How decided", ""),
        "remedy": page.parts.get("Remedy", ""),
        "when_to_waive": page.parts.get("When to waive", ""),
        "basis": [_plain_basis(basis) for basis in rule.bases],
        "window": plain_window(rule.window),
        "target": plain_window(rule.target),
        "limit": plain_window(rule.limit),
        "critical": plain_window(rule.critical),
        "critical_level": rule.critical_level.value if rule.critical_level is not None else None,
        "guarded": rule.guarded,
        "inputs": list(rule.reads),
        "caution": rule.caution,
        "since": rule.since,
        "package": rule.package,
        "version": rule.version,
    }


def _plain_basis(basis: Basis) -> dict[str, object]:
    return {
        "grade": basis.grade.value,
        "document": basis.document,
        "edition": basis.edition,
        "clause": basis.clause,
        "note": basis.note,
        "confirmed": basis.confirmed,
    }


def plain_window(window: Window | None) -> dict[str, float | str | None] | None:
    """Return a window as plain data."""
    return {"low": window.low, "high": window.high, "unit": window.unit} if window is not None else None


def _index(rules: Iterable[Rule]) -> Iterator[str]:
    cited: dict[str, dict[str, list[str]]] = {}
    without: dict[Grade, list[str]] = {}
    for rule in rules:
        for basis in rule.bases:
            if not basis.document:
                without.setdefault(basis.grade, []).append(_link(rule))
                continue
            clauses = cited.setdefault(document_of(basis), {})
            clauses.setdefault(basis.clause or WHOLE, []).append(f"{_link(rule)} ({GRADES[basis.grade]})")
    for document in sorted(cited):
        yield f"### {prose(document)}"
        yield ""
        for clause in sorted(cited[document]):
            yield f"- {prose(clause)}: {', '.join(dict.fromkeys(cited[document][clause]))}"
        yield ""
    if without:
        yield "### Without a published source"
        yield ""
        for grade in Grade:
            if grade in without:
                yield f"- {GRADES[grade]}: {', '.join(dict.fromkeys(without[grade]))}"


def _link(rule: Rule) -> str:
    anchor = "".join(sign for sign in rule.id if sign.isalnum() or sign in "-_")
    return f"[{rule.id}](#{anchor})"
