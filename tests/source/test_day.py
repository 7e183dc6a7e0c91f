"""Days are read in one form; any other is told with the day that it means, if it can mean but one."""

from datetime import date

import pytest

from roomlint.source.day import DayError, read_day


def test_a_day_is_year_month_day() -> None:
    assert read_day("2028-02-29") == date(2028, 2, 29)


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("20 Jan 2026", "write 2026-01-20"),
        ("20th January 2026", "write 2026-01-20"),
        ("Jan 20, 2026", "write 2026-01-20"),
        ("20.1.2026", "write 2026-01-20"),
        ("1/20/2026", "write 2026-01-20"),
        ("2026/1/20", "write 2026-01-20"),
        ("2026-1-20", "write 2026-01-20"),
        ("3/3/2026", "write 2026-03-03"),
        ("1/2/2026", "write year-month-day"),
        ("20260120", "write year-month-day"),
        ("2026-W04-2", "write year-month-day"),
        ("soon", "write year-month-day"),
        ("20 Foo 2026", "write year-month-day"),
        ("", "write year-month-day"),
        ("2026-02-29", "not in the calendar"),
        ("2026-13-01", "not in the calendar"),
        ("٢٠٢٦-٠١-٢٠", "write year-month-day"),
    ],
)
def test_any_other_form_is_told_with_what_to_write(text: str, word: str) -> None:
    with pytest.raises(DayError, match=word):
        read_day(text)
