"""Every format is found by its name."""

from __future__ import annotations

import pytest

from roomlint.report import WRITERS, write


@pytest.mark.parametrize("kind", sorted(WRITERS))
def test_every_format_writes_an_empty_review(make, kind):
    assert write(kind, make.review()).endswith("\n")
