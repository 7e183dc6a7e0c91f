"""Verdicts out: a finished review goes in, text comes out."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from roomlint.review.review import Review

WRITERS = {
    "text": ("roomlint.report.text", "text_report"),
    "sarif": ("roomlint.report.sarif", "sarif_report"),
    "code-scanning": ("roomlint.report.code_scanning", "code_scanning_report"),
    "markdown": ("roomlint.report.markdown", "markdown_report"),
    "annotations": ("roomlint.report.annotations", "annotations_report"),
}
"""Format to the module and the function that writes it; a writer loads only when it is asked for."""


def write(kind: str, review: Review, *, verdicts: bool = False) -> str:
    """Return a finished review in one of the formats.

    `verdicts` asks the formats meant for reading to show what is open, passed or not applicable too; the formats meant
    for machines decide for themselves, and the full SARIF always holds every verdict.
    """
    module, function = WRITERS[kind]
    text: str = getattr(import_module(module), function)(review, verdicts=verdicts)
    return text
