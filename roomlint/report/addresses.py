"""Where people read on: the addresses that the installed package declares, and nothing made up where it has none."""

from __future__ import annotations

from functools import cache
from importlib.metadata import PackageNotFoundError, metadata
from typing import Final

HOME: Final = ("homepage", "repository", "source")
BOOK: Final = "rule book"
"""The address of the rule book as one page; each rule's heading there is an anchor."""


@cache
def _declared(package: str = "roomlint") -> dict[str, str]:
    try:
        urls = metadata(package).get_all("Project-URL") or []
    except PackageNotFoundError:
        return {}
    pairs = (url.partition(",") for url in urls)
    return {label.strip().casefold(): address.strip() for label, _, address in pairs}


def home() -> str:
    """Return the address of this project; empty while it declares none."""
    declared = _declared()
    return next((declared[label] for label in HOME if label in declared), "")


def page_of(rule_id: str) -> str:
    """Return the address of a rule's page; empty while no rule book is published."""
    book = _declared().get(BOOK, "")
    anchor = "".join(sign for sign in rule_id if sign.isalnum() or sign in "-_")
    return f"{book}#{anchor}" if book else ""
