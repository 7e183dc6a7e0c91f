"""What holds for all tests."""

import os

from hypothesis import HealthCheck, settings

# No test is a timed test: a machine that is shared is slow at times. And one tree gets one answer, every time: a
# gate never turns red over what a change has not touched; to look farther, set ROOMLINT_EXPLORE.
settings.register_profile(
    "rooms",
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],
    derandomize=not os.environ.get("ROOMLINT_EXPLORE"),
)
settings.load_profile("rooms")
