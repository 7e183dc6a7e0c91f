"""Chapter angle: where loudspeakers stand around the listener, judged at the reference seat."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.review import pair_of, practice, standard

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker
    from roomlint.review import Pair, Subjects

BS775 = standard("ITU-R BS.775-3", "figure 1", read=True)
BS2051 = standard(
    "ITU-R BS.2051-1", "loudspeaker position tables", read=False, note="through the public ADM renderer's data"
)
TRADE_FRONT = practice("front loudspeakers 22 to 30 degrees either side of straight ahead")
SETTING_OUT_DEG: Final = 0.5
"""How closely a published direction is met when a room is set out; ours."""
FRONT_PAIR: Subjects[Pair[Loudspeaker]] = pair_of("M+030", "M-030", "front pair")
