"""What the wiring rules of each part of the world ask of a final circuit, where they differ from each other.

Planning figures; the adopted code and a licensed electrician decide. Grades stand beside each value.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

Family = Literal["nfpa", "iec", "bs", "asnzs", "other"]
"""NFPA 70; IEC 60364 and what follows it; BS 7671; AS/NZS 3000; a code that is none of these."""

FAMILY: Final[Mapping[str, Family]] = MappingProxyType(
    {
        "nec2017": "nfpa",
        "nec2020": "nfpa",
        "nec2023": "nfpa",
        "nec2026": "nfpa",
        "iec60364": "iec",
        "bs7671": "bs",
        "asnzs3000": "asnzs",
        "other": "other",
    }
)

RESIDUAL_MA: Final = 30.0
"""BS 7671 411.3.3 (read in a guide), IEC 60364-4-41 411.3.3 (through a rule of the German accident insurers) and
AS/NZS 3000:2018 2.6.3.2 (through makers' and inspectors' accounts) all say 30 mA."""
RESIDUAL_UP_TO_A: Final = 32.0
"""Socket circuits up to this rating (IEC 60364-4-41, second-hand; BS 7671 the same); AS/NZS: every final circuit of a
dwelling, whatever its rating."""

LIGHTING_DROP_PERCENT: Final = 3.0
OTHER_DROP_PERCENT: Final = 5.0
"""From the origin of the installation, public supply: BS 7671 Appendix 4 Table 4Ab (second-hand), IEC 60364-5-52
Annex G (from memory); AS/NZS 3000 3.6.2: 5 % for all (from memory). NFPA 70 recommends 3 % on the branch and 5 % in
all."""

PLUG_A: Final[Mapping[str, float]] = MappingProxyType(
    {
        "nema-1-15": 15.0,
        "nema-5-15": 15.0,
        "nema-5-20": 20.0,
        "bs1363": 13.0,
        "cee7-4": 16.0,
        "cee7-7": 16.0,
        "cee7-16": 2.5,
        "cee7-17": 16.0,
        "as3112-10": 10.0,
        "as3112-15": 15.0,
        "iec60309-16": 16.0,
        "iec60309-32": 32.0,
    }
)
"""Rated current of plugs: 13 A and 16 A read second-hand, the others from memory."""
LARGEST_GENERAL_SOCKET_A: Final = 32.0
"""IEC 60364-4-41, 411.3.3 (second-hand): socket-outlets up to this rating have residual-current protection."""
_SOCKETS_OF: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {
        "nema-1-15": ("nema-5-15", "nema-5-20"),
        "nema-5-15": ("nema-5-15", "nema-5-20"),
        "nema-5-20": ("nema-5-20",),
        "bs1363": ("bs1363",),
        "cee7-4": ("cee7-3",),
        "cee7-7": ("cee7-3", "cee7-5"),
        "cee7-16": ("cee7-3", "cee7-5"),
        "cee7-17": ("cee7-3", "cee7-5"),
        "as3112-10": ("as3112-10", "as3112-15"),
        "as3112-15": ("as3112-15",),
        "iec60309-16": ("iec60309-16",),
        "iec60309-32": ("iec60309-32",),
    }
)
FUSED_PLUG: Final = "bs1363"
LEAST_FUSE_A: Final = 3.0
"""The smallest fuse that such a plug is commonly sold with (from memory)."""

_DEVICE_BEHIND: Final[Mapping[str, float]] = MappingProxyType(
    {
        "nema-5-15": 15.0,
        "nema-5-20": 20.0,
        "bs1363": 32.0,
        "cee7-3": 20.0,
        "cee7-5": 20.0,
        "as3112-10": 32.0,
        "as3112-15": 32.0,
        "iec60309-16": 16.0,
        "iec60309-32": 32.0,
    }
)
"""Greatest overcurrent device that such a socket-outlet is fitted behind: BS 1363 up to 32 A (second-hand); sockets of
16 A behind 20 A as France has it, AS 3112 behind 32 A, both from memory; any other behind its own."""


def plug_fits(plug: str, socket: str) -> bool:
    """Whether a plug of one form goes into a receptacle of another and meets its earth. Source: the standards named."""
    return socket in _SOCKETS_OF[plug]


def greatest_device_a(socket: str) -> float:
    """Greatest rating of the overcurrent device before a socket-outlet of a form, A. Source: as the table says."""
    return _DEVICE_BEHIND[socket]
