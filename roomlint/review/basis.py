"""Why a window is what it is."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Grade(StrEnum):
    """How firm a basis is."""

    READ = "read"
    """A published text, read."""
    SECOND_HAND = "second-hand"
    """A published text, known through somebody who quotes it."""
    PRACTICE = "practice"
    """Common practice of the trade; no published source."""
    MEMORY = "memory"
    """A value from memory, not confirmed."""


@dataclass(frozen=True, slots=True)
class Basis:
    """One reason for a window: a clause, a practice or a memory."""

    grade: Grade
    document: str = ""
    edition: str = ""
    clause: str = ""
    note: str = ""

    @property
    def confirmed(self) -> bool:
        """Whether the published text itself was read."""
        return self.grade is Grade.READ

    def __str__(self) -> str:
        """Return the basis as a message cites it, with its grade."""
        if not self.document:
            text = {Grade.PRACTICE: "common practice", Grade.MEMORY: "value from memory"}.get(
                self.grade, str(self.grade)
            )
            return f"{text}: {self.note}" if self.note else text
        cited = ", ".join(part for part in (f"{self.document} {self.edition}".strip(), self.clause) if part)
        grade = {Grade.SECOND_HAND: "second-hand", Grade.MEMORY: "from memory", Grade.PRACTICE: "common practice"}
        return f"{cited} ({grade[self.grade]})" if self.grade in grade else cited


def standard(document: str, clause: str = "", *, edition: str = "", read: bool, note: str = "") -> Basis:
    """Return the basis of a published document; `read` says whether its text was read or is known second-hand."""
    return Basis(Grade.READ if read else Grade.SECOND_HAND, document, edition, clause, note)


def practice(note: str) -> Basis:
    """Return the basis of a common practice of the trade."""
    return Basis(Grade.PRACTICE, note=note)


def memory(note: str, *, document: str = "", clause: str = "", edition: str = "") -> Basis:
    """Return the basis of a value from memory, with the document it is thought to stand in."""
    return Basis(Grade.MEMORY, document, edition, clause, note)
