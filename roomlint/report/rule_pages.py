"""The rule book: the list of rules, one rule's page, and the whole book with an index of its sources."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.report.markdown_text import prose
from roomlint.report.units import US, Units
from roomlint.report.words import decided, printable, sentence
from roomlint.review.basis import Grade
from roomlint.review.house_check import own_window
from roomlint.review.judging import house_window
from roomlint.review.review import Decided
from roomlint.review.rule import CHAPTERS, HEADINGS

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from roomlint.design.house import House
    from roomlint.review.basis import Basis
    from roomlint.review.rule import AnyRule
    from roomlint.review.window import Window, Windows

GRADES = {
    Grade.READ: "published text, read",
    Grade.SECOND_HAND: "published text, known second-hand",
    Grade.PRACTICE: "common practice, no published source",
    Grade.MEMORY: "value from memory, not confirmed",
}
WHOLE = "the document as a whole"
"""Stands for the clause where a basis names none."""


def rules_text(rules: Iterable[AnyRule]) -> str:
    """Return the rules as a list by chapter: id, level, first sentence of the page."""
    lines: list[str] = []
    for chapter, group in _by_chapter(rules):
        width = max(len(rule.id) for rule in group)
        lines += ["", chapter] if lines else [chapter]
        lines += [f"  {rule.id:{width}}  {rule.level:7}  {rule.summary}" for rule in group]
    return printable("\n".join([*lines, ""]))


def rule_text(rule: AnyRule, house: House | None = None) -> str:
    """Return one rule's page; with a house, what it decided about the rule."""
    page = rule.page
    lines = [f"{rule.id}: {rule.level}", "", page.summary, "", *_numbers(rule, house), ""]
    for heading in HEADINGS:
        if heading in page.parts:
            lines += [f"{heading}: {page.parts[heading]}", ""]
    lines += ["Basis:", *(f"  {basis_words(basis)}" for basis in rule.bases), ""]
    if rule.caution:
        lines += [f"Caution: {_caution(rule)}", ""]
    lines += [f"Since: {rule.since}, from {rule.package} {rule.version}".rstrip()]
    return printable("\n".join([*lines, ""]))


def rules_json(rules: Iterable[AnyRule]) -> str:
    """Return the rules as a JSON list of objects."""
    import json  # the lists and pages for reading do without

    return json.dumps([_plain(rule) for rule in _sorted(rules)], ensure_ascii=False, indent=2)


def rules_markdown(rules: Iterable[AnyRule], house: House | None = None) -> str:
    """Return the whole book in Markdown: every page, then an index from each document and clause to the rules."""
    rules = _sorted(rules)
    lines = ["# Rule book", "", f"{len(rules)} rules.", ""]
    for chapter, group in _by_chapter(rules):
        lines += [f"## {chapter}", ""]
        for rule in group:
            lines += [f"### {rule.id}", "", *rule_markdown(rule, house)]
    lines += ["## Sources", "", *_index(rules)]
    return printable("\n".join([*lines, ""]))


def rule_markdown(rule: AnyRule, house: House | None = None) -> list[str]:
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
    lines += [f"Since {rule.since}.", ""]
    return lines


def basis_words(basis: Basis) -> str:
    """Return a basis with its grade spelt out."""
    cited = ", ".join(part for part in (document_of(basis), basis.clause) if part)
    words = f"{cited} ({GRADES[basis.grade]})" if cited else GRADES[basis.grade]
    return f"{words}: {basis.note}" if basis.note else words


def document_of(basis: Basis) -> str:
    """Return a basis's document with its edition; empty when it names none."""
    return f"{basis.document} {basis.edition}".strip() if basis.document else ""


def _caution(rule: AnyRule) -> str:
    """Return a rule's caution without the word that the page puts before it."""
    text = rule.caution.removeprefix("Caution: ")
    return text[:1].upper() + text[1:]


def _sorted(rules: Iterable[AnyRule]) -> list[AnyRule]:
    order = {chapter: index for index, chapter in enumerate(CHAPTERS)}
    return sorted(rules, key=lambda rule: (order.get(rule.chapter, len(order)), rule.chapter, rule.id))


def _by_chapter(rules: Iterable[AnyRule]) -> Iterator[tuple[str, list[AnyRule]]]:
    groups: dict[str, list[AnyRule]] = {}
    for rule in _sorted(rules):
        groups.setdefault(rule.chapter, []).append(rule)
    yield from groups.items()


def _numbers(rule: AnyRule, house: House | None) -> list[str]:
    lines = [line for words, windows in rule.rows() for line in _windows(words, windows)]
    decision = house.decisions.get(rule.id) if house is not None else None
    window = own_window(rule)
    if house is not None and decision is not None and decision.sets_window and window is not None:
        # What holds comes first: an installer reads no further than the first window.
        lines = [f"In force: {_both(house_window(decision, window))}, by {house.file}", *lines]
    lines = lines or ["No window; see how it is decided"]
    if rule.critical_level is not None:
        lines.append(f"Level for critical listening: {rule.critical_level}")
    if rule.guarded:
        lines.append("Guarded: an edge inside the uncertainty counts as failed")
    if rule.after:
        lines.append(f"Waits for: {', '.join(rule.after)}")
    if house is not None and decision is not None:
        because = f", because: {sentence(decision.because)}" if decision.because else ""
        said = decided(Decided(decision.low, decision.high, decision.level))
        lines.append(f"Changed by {house.file}: {said}{because}")
    return lines


def _windows(words: str, windows: Windows | None) -> list[str]:
    """Return one case of a rule's windows, in both systems of units where they differ."""
    case = f" {words}" if words else ""
    if windows is None:
        return [f"Window{case}"]
    lines = [f"Window{case}: {_both(windows.window)}"]
    if windows.target is not None:
        lines.append(f"Target{case}: {_both(windows.target)}; outside it, inside the window, is a note")
    if windows.limit is not None:
        lines.append(f"Limit{case}: {_both(windows.limit)}; outside it is an error")
    return lines


def _both(window: Window) -> str:
    metric, us = Units().window(window), Units(US).window(window)
    return metric if metric == us else f"{metric} ({us})"


def _plain(rule: AnyRule) -> dict[str, object]:
    from roomlint.review.inputs import kept  # the text report reads no JSON

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
        "window": plain_window(own_window(rule)),
        "windows": [_plain_case(words, windows) for words, windows in rule.rows()],
        "critical_level": rule.critical_level.value if rule.critical_level is not None else None,
        "guarded": rule.guarded,
        "of": rule.each.name,
        "inputs": list(kept().get(rule.id) or dict.fromkeys(key for key in (rule.at, *rule.cure) if key)),
        "after": list(rule.after),
        "says": dict(rule.says),
        "caution": rule.caution,
        "since": rule.since,
        "package": rule.package,
        "version": rule.version,
    }


def _plain_case(words: str, windows: Windows | None) -> dict[str, object]:
    of = {
        name: plain_window(getattr(windows, name)) if windows is not None else None
        for name in ("window", "target", "limit")
    }
    return {"when": words, **of}


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


def _index(rules: Iterable[AnyRule]) -> Iterator[str]:
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


def _link(rule: AnyRule) -> str:
    anchor = "".join(sign for sign in rule.id if sign.isalnum() or sign in "-_")
    return f"[{rule.id}](#{anchor})"
