"""Days of the calendar as files and the command line write them: year-month-day, as in 2027-06-30."""

from __future__ import annotations

import re
from datetime import date

from roomlint.source.say import shorten

_FORM = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_YEAR_FIRST = re.compile(r"([0-9]{4})[-/. ]+([0-9]{1,2})[-/. ]+([0-9]{1,2})")
_YEAR_LAST = re.compile(r"([0-9]{1,2})[-/. ]+([0-9]{1,2})[-/. ]+([0-9]{4})")
_DAY_MONTH = re.compile(r"([0-9]{1,2})(?:st|nd|rd|th|\.)?[- ]+([A-Za-z]{3,9})\.?,?[- ]+([0-9]{4})")
_MONTH_DAY = re.compile(r"([A-Za-z]{3,9})\.? +([0-9]{1,2})(?:st|nd|rd|th)?,? +([0-9]{4})")
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")


class DayError(ValueError):
    """A text that is no day; the message says what to write."""


def read_day(text: str) -> date:
    """Return the day that a text gives; raises `DayError`.

    One form alone is read: forms that turn day and month round are how a waiver runs out five months early.
    """
    found = _FORM.fullmatch(text)
    if found is not None:
        try:
            return date(int(found[1]), int(found[2]), int(found[3]))
        except ValueError:
            raise DayError(f"{text!r} is not in the calendar; write a day that is, such as 2027-06-30.") from None
    meant = _meant(" ".join(text.split()))
    hint = f"write {meant.isoformat()}" if meant is not None else "write year-month-day, such as 2027-06-30"
    raise DayError(f"{shorten(text)!r} is not written as a day; {hint}.")


def _meant(text: str) -> date | None:
    """Return the one day that another way of writing can mean; None when it may be two days, or none."""
    for form, order in ((_YEAR_FIRST, (0, 1, 2)), (_DAY_MONTH, (2, 1, 0)), (_MONTH_DAY, (2, 0, 1))):
        found = form.fullmatch(text)
        if found is not None:
            year, month, day = (found.groups()[index] for index in order)
            return _date(year, month, day)
    found = _YEAR_LAST.fullmatch(text)
    if found is None:
        return None
    first, second, year = found.groups()
    days = {day for day in (_date(year, second, first), _date(year, first, second)) if day is not None}
    return days.pop() if len(days) == 1 else None


def _date(year: str, month: str, day: str) -> date | None:
    number = int(month) if month.isdecimal() else _month(month)
    try:
        return date(int(year), number, int(day))
    except ValueError:
        return None


def _month(word: str) -> int:
    start = word[:3].lower()
    return _MONTHS.index(start) + 1 if start in _MONTHS else 0
