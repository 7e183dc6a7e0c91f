"""What overhead rules rest on: a document of the country where the room is, beside the one whose numbers were read."""

from __future__ import annotations

from roomlint.review.basis import Grade
from roomlint.review.book import load_book

FROM_ABROAD = "DGUV"
AT_HOME = "ANSI E1."
ON_ROPES = [
    rule for rule in load_book().rules if any((one.document or "").startswith(FROM_ABROAD) for one in rule.bases)
]


def test_what_catches_a_fall_rests_on_a_document_of_the_united_states_too() -> None:
    assert {rule.id for rule in ON_ROPES} >= {"mount.secondary", "mount.secondary-rating", "mount.secondary-fall"}
    for rule in ON_ROPES:
        assert [one for one in rule.bases if (one.document or "").startswith(AT_HOME)], rule.id


def test_a_document_says_which_country_it_is_of_and_what_was_read_of_it() -> None:
    """Where only title and scope of a standard are known, it is no document that was read."""
    for rule in ON_ROPES:
        for one in rule.bases:
            document = one.document or ""
            if document.startswith(FROM_ABROAD):
                assert "Germany" in one.note
                assert one.grade is Grade.READ
            if document.startswith(AT_HOME):
                assert "United States" in one.note
                assert one.grade is not Grade.READ
