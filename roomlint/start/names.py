"""What a beginner's file calls its loudspeakers and openings: by where they stand, as the trade says it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.start.answers import Gap

_NAMES: Final = {
    "M030": "{side}", "M000": "centre", "M060": "wide-{side}", "M090": "side-{side}", "M110": "surround-{side}",
    "M135": "rear-{side}", "M180": "rear-centre", "MSC": "screen-{side}", "U000": "upper-centre",
    "U030": "upper-front-{side}", "U045": "upper-front-{side}", "U090": "upper-side-{side}",
    "U110": "upper-rear-{side}", "U135": "upper-rear-{side}", "U180": "upper-rear", "UH180": "upper-rear",
    "T000": "overhead", "B000": "low-centre", "B045": "low-{side}",
}  # fmt: skip


def name_of(label: str) -> str:
    """Return a name for the loudspeaker of a label: `M+030` is left, `U-135` upper-rear-right."""
    if label.startswith("LFE"):
        return "sub-right" if label == "LFE2" else "sub-left"
    bare = label.replace("+", "").replace("-", "")
    side = "left" if "+" in label else "right"
    return _NAMES.get(bare, bare.lower()).format(side=side)


def opening_name(openings: Sequence[Gap], number: int) -> str:
    """Return a name for an opening by its number from one: its kind, counted where there are several of it."""
    kind = openings[number - 1].kind
    same = [index for index, gap in enumerate(openings, 1) if gap.kind == kind]
    return kind if len(same) == 1 else f"{kind}-{same.index(number) + 1}"
