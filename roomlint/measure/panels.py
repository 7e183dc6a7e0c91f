"""What a panel's test report says of how it burns."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import need
from roomlint.design.quantity import read
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.shell import Treatment
    from roomlint.measure.figure import Figure


class Panels(View):
    """Figures of acoustic panels."""

    def flame_spread(self, panel: Treatment) -> Figure:
        """Flame-spread index of a panel."""
        index = need(panel.flame_spread, panel, "flame_spread")
        return self._index("flame-spread index", index, panel, "flame_spread")

    def smoke(self, panel: Treatment) -> Figure:
        """Smoke-developed index of a panel."""
        index = need(panel.smoke_developed, panel, "smoke_developed")
        return self._index("smoke-developed index", index, panel, "smoke_developed")

    def _index(self, name: str, index: float, panel: Treatment, key: str) -> Figure:
        written = read(index, 0.0, "", panel.at.get(key))
        return self.figure(name, "", lambda w: w(written), panel)
