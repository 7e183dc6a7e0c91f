"""The kinds of keys with a plain value: text, day, number, yes or no. Each is one class that reads and describes it."""

from __future__ import annotations

import re
from datetime import date
from functools import cache
from typing import TYPE_CHECKING, Any, Final, Literal, TypeVar, overload

from roomlint.design.element import ABSENT, Element, Key
from roomlint.source.day import DayError, read_day

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.design.reader import Book
    from roomlint.source.node import Node

T = TypeVar("T")

LONGEST_TEXT: Final = 400
LONGEST_NAME: Final = 63
NONE: Final = "none"
"""The word that states that there is no such thing, where leaving the key out states nothing."""
_IDENT = "^[a-z0-9][a-z0-9-]{0,62}$"
_LABEL = "^((M|U|UH|T|B)[+-](0[0-9]{2}|1[0-7][0-9]|180)|M[+-]SC|LFE[12]?)$"
_DAY = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
_SYSTEM = "^[0-9]{1,2}\\+[0-9]{1,2}\\+[0-9]{1,2}$"


class Text(Key[T]):
    """A text, of a form or one of a few words if need be."""

    def __init__(
        self, about: str, *, example: str = "", form: str = "", most: int = LONGEST_TEXT, words: Sequence[str] = (),
        part: str = "", proves: bool = False, **more: Any,  # noqa: ANN401  what every key takes
    ) -> None:  # fmt: skip
        """`form` is a regular expression for the whole text; `part` names a definition that several keys share.

        `proves`: somebody rests on what it names, so that a word for nothing is refused.
        """
        super().__init__(about, **more)
        self.example = example or (words[0] if words else "")
        self.form = form
        self.most = most
        self.words = tuple(words)
        self.part = part
        self.proves = proves
        self._among = frozenset(words)

    def fits(self, value: object) -> bool:
        """Whether a value has the structure that is wanted."""
        if type(value) is not str:
            return False
        if self._among:
            return value in self._among
        if self.form:
            return _whole(self.form).match(value) is not None
        return 0 < len(value) <= self.most

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401, ARG002
        """Return the text."""
        if self.fits(node.value):
            if self.proves and names_nothing(node.value):
                way = "write none for the whole" if self.required else "leave the key out"
                book.cross(node, f"{node.value!r} names nothing that anybody can look up; {way}.")
            return node.value
        book.broken = True
        return ABSENT

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:
        """Return a string with its form, its words or its length."""
        made: dict[str, Any] = {"description": self.about, "type": "string"}
        if self.words:
            made["enum"] = list(self.words)
        elif self.form:
            made["pattern"] = self.form
        else:
            made |= {"minLength": 1, "maxLength": self.most}
        made["examples"] = [self.example]
        if not self.part:
            return made
        parts[self.part] = made | {"description": PARTS[self.part][0], "examples": list(PARTS[self.part][1])}
        return {"$ref": f"#/$defs/{self.part}", "description": self.about}


_NOTHING: Final = frozenset({
    "", "n/a", "na", "nil", "no", "no document", "none", "none yet", "not applicable", "not known", "not yet",
    "nothing", "pending", "tba", "tbc", "tbd", "to be confirmed", "to be done", "to come", "to follow", "unknown",
})  # fmt: skip


def names_nothing(said: str) -> bool:
    """Whether a text stands where a name belongs, and is only a word for there being none, or no word at all."""
    bare = re.sub(r"^[\W_]+|[\W_]+$", "", said.casefold())
    return " ".join(bare.split()) in _NOTHING


PARTS = {
    "id": (
        "A name for this element, unique in its list; waivers and reports use it.",
        ("left", "side-right", "row2-centre"),
    ),
    "label": (
        "A loudspeaker label of ITU-R BS.2051, such as M+030 (ear layer, 30 degrees left), U-045 or LFE1.",
        ("M+030", "M+000", "U-045", "LFE1"),
    ),
    "layout": (
        "A layout by its name as ITU-R BS.2051 writes them, upper + middle + bottom loudspeakers, such as 6+5+0.",
        ("4+7+0", "6+5+0"),
    ),
    "date": ("A day, as year-month-day.", ("2027-06-30",)),
}  # fmt: skip
"""Definitions of texts that several keys share: what they are, and examples."""


@cache
def _whole(form: str) -> re.Pattern[str]:
    """Return a form for the whole of a text: JSON Schema's `$` is its end, Python's also stands before a line break."""
    return re.compile(form.removesuffix("$") + r"\Z")


class Ident(Text[str]):
    """The key `id`: the element's own name."""

    def __set_name__(self, owner: type, attr: str) -> None:
        self.attr, self.name = "id", self.name or "id"

    def absent(self, element: Element) -> str:
        """Return the name that the element was given by the reader."""
        return element.id


class Day(Text[date | None]):
    """A day of the calendar."""

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401
        """Return the date."""
        value = super().take(node, book, element)
        if value is ABSENT:
            return ABSENT
        try:
            return read_day(value)
        except DayError as error:
            book.tell(node, str(error))
            return ABSENT


class Flag(Key["bool | None"]):
    """Yes or no."""

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401, ARG002
        """Return it."""
        if type(node.value) is bool:
            return node.value
        book.broken = True
        return ABSENT

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:  # noqa: ARG002
        """Return a boolean."""
        return {"description": self.about, "type": "boolean", "examples": [True]}


class Number(Key[T]):
    """A plain number within a range, whole if need be."""

    def __init__(
        self, about: str, low: float, high: float, *, example: float, only_whole: bool = False,
        **more: Any,  # noqa: ANN401  what every key takes
    ) -> None:  # fmt: skip
        super().__init__(about, **more)
        self.low, self.high, self.example, self.only_whole = low, high, example, only_whole

    def fits(self, value: object) -> bool:
        """Whether a value has the structure that is wanted; JSON takes 2.0 for a whole number."""
        if type(value) is not int and (type(value) is not float or (self.only_whole and not value.is_integer())):
            return False
        return self.low <= value <= self.high

    def take(self, node: Node, book: Book, element: Element) -> Any:  # noqa: ANN401, ARG002
        """Return the number."""
        if self.fits(node.value):
            return int(node.value) if self.only_whole else float(node.value)
        book.broken = True
        return ABSENT

    def schema(self, parts: dict[str, Any]) -> dict[str, Any]:  # noqa: ARG002
        """Return a number with its range."""
        kind = "integer" if self.only_whole else "number"
        made = {"description": self.about, "type": kind, "minimum": self.low, "maximum": self.high}
        return made | {"examples": [self.example]}


def ident(
    about: str = "A name for this element, unique in its list.", *, required: bool = True, key: str = ""
) -> Ident:
    """Declare the element's own id."""
    return Ident(about, form=_IDENT, part="id", told=True, required=required, default="", key=key)


@overload
def text(about: str, example: str, *, required: Literal[True], key: str = ..., told: bool = ..., most: int = ...,
         proves: bool = ...) -> Text[str]: ...  # fmt: skip
@overload
def text(about: str, example: str, *, default: str, key: str = ..., told: bool = ..., most: int = ...
         ) -> Text[str]: ...  # fmt: skip
@overload
def text(about: str, example: str, *, key: str = ..., told: bool = ..., most: int = ..., proves: bool = ...
         ) -> Text[str | None]: ...  # fmt: skip
def text(about: str, example: str, *, required: bool = False, default: str | None = None, **more: Any) -> Text[Any]:
    """Declare a free text."""
    return Text(about, example=example, required=required, default="" if required else default, **more)


@overload
def choice(about: str, *words: str, default: str, key: str = ..., told: bool = ..., required: bool = ...
           ) -> Text[str]: ...  # fmt: skip
@overload
def choice(about: str, *words: str, key: str = ..., told: bool = ..., required: bool = ...) -> Text[str | None]: ...
def choice(
    about: str, *words: str, default: str | None = None, key: str = "", told: bool = False, required: bool = False
) -> Text[Any]:
    """Declare one of a few words."""
    return Text(about, words=words, default=default, key=key, told=told, required=required)


def formed(about: str, form: str, example: str) -> Text[str | None]:
    """Declare a text of a form."""
    return Text(about, form=form, example=example)


def labelled(about: str) -> Text[str | None]:
    """Declare a loudspeaker label."""
    return Text(about, form=_LABEL, part="label")


def system(about: str) -> Text[str | None]:
    """Declare the name of a sound system."""
    return Text(about, form=_SYSTEM, part="layout")


def day(about: str, *, key: str = "", told: bool = False) -> Day:
    """Declare a day of the calendar."""
    return Day(about, form=_DAY, part="date", key=key, told=told)


def flag(about: str) -> Flag:
    """Declare a yes or no that may be unsaid."""
    return Flag(about)


def whole(about: str, low: int, high: int, *, example: int) -> Number[int | None]:
    """Declare a whole number."""
    return Number(about, low, high, example=example, only_whole=True)


def number(about: str, low: float, high: float, *, example: float) -> Number[float | None]:
    """Declare a plain number."""
    return Number(about, low, high, example=example)
