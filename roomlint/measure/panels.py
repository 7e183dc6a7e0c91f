"""What a panel's test report says of how it burns."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import need
from roomlint.measure.figure import Figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.shell import Treatment


class Panels(View):
    """Figures of acoustic panels."""

    @staticmethod
    def flame_spread(panel: Treatment) -> Figure:
        """Flame-spread index of a panel."""
        return Figure.plain("flame-spread index", "", need(panel.flame_spread, panel, "flame_spread"))

    @staticmethod
    def smoke(panel: Treatment) -> Figure:
        """Smoke-developed index of a panel."""
        return Figure.plain("smoke-developed index", "", need(panel.smoke_developed, panel, "smoke_developed"))
