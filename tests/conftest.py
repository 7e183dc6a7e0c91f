"""What holds for all tests."""

from hypothesis import settings

# No test is a timed test: a machine that is shared is slow at times.
settings.register_profile("rooms", deadline=None)
settings.load_profile("rooms")
