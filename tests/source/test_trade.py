"""What the trade calls things is answered with the word that the files have."""

from __future__ import annotations

import pytest

from roomlint.source.listing import listed
from roomlint.source.say import nearest
from roomlint.source.trade import SAID, ours

WORDS = frozenset(
    word
    for kind in ("room", "product", "house")
    for key in listed(kind)
    for word in (key.path.replace("[]", "").rpartition(".")[2], *key.choices)
)


def test_every_word_it_leads_to_stands_in_a_file() -> None:
    assert set(SAID) - WORDS == set()


def test_every_word_is_written_as_it_is_looked_up_and_leads_elsewhere() -> None:
    for name, said in SAID.items():
        assert name not in said
        for word in said:
            assert word == word.casefold().replace("_", "-").replace(" ", "-")
            assert ours(word, [name]) == name


@pytest.mark.parametrize(
    ("word", "known", "meant"),
    [
        ("doors", ["size", "floor", "openings"], "openings"),
        ("Drywall", ["gypsum", "plywood"], "gypsum"),
        ("cinder block", ["masonry", "hollow-block"], "hollow-block"),
        ("stud", ["wood-stud", "steel-stud"], "wood-stud"),
        ("timber", ["stud", "joist"], "stud"),
        ("power", ["mains", "network"], "mains"),
        # Where its word may not stand, what is most like it is the better guess.
        ("doors", ["floor", "size"], "floor"),
        ("widht", ["width", "length"], "width"),
        ("zzzz", ["width", "length"], None),
    ],
)
def test_the_word_that_may_stand_there_is_the_one_told(word: str, known: list[str], meant: str | None) -> None:
    assert nearest(word, known) == meant
