"""Where something stands in a file, and what is wrong with it there."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A span of text: lines and columns count from 1, columns in Unicode code points, the end exclusive."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int

    def __reduce__(self) -> tuple[type["Place"], tuple[str, int, int, int, int]]:
        """Travel as what it is made of: a run over many rooms moves hundreds of thousands of places."""
        return (Place, (self.file, self.line, self.column, self.end_line, self.end_column))


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """An error in a file: the text says what was found, what was expected and what to do."""

    place: Place
    text: str
