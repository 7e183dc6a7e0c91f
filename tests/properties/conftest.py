"""Lets the tests of this folder import the rooms that stand beside them."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))


@pytest.fixture(params=("attic/attic", "basement/basement", "loft-bay/loft-bay", "shorthand"), scope="session")
def rich(request):
    from rich_rooms import rich_room  # the path to it is set above

    return rich_room(request.param)
