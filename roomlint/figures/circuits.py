"""Branch circuits of a dwelling: what current they must carry, and which clause says so in which edition.

After the National Electrical Code (NFPA 70); what other codes ask for is in `wiring_rules`. Sums are of nameplate
currents: a planning figure, no inspection; the adopted code, the authority having jurisdiction and a licensed
electrician decide. Grades: the 2020 and 2023 values were read in unofficial transcriptions, those of 2017 partly from
memory. Of 2026 change reports were read, second-hand: the factor for lasting loads stays in articles 210, 215 and 240
while other load calculations moved from article 220 to 120, and 210.12(E) kept its number; that the other clauses kept
theirs is from memory.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from roomlint.figures.domain import Refused, not_negative, positive

CodeEdition = Literal["nec2017", "nec2020", "nec2023", "nec2026"]
Topic = Literal[
    "continuous load",
    "one plug-in item",
    "fastened items",
    "individual circuit",
    "receptacle total",
    "receptacle rating",
    "small circuit",
    "copper size",
    "arc-fault protection",
    "arc-fault extension",
    "ground-fault protection",
    "dimmed receptacle",
    "receptacle spacing",
    "voltage drop",
    "concealed cord",
]

CONTINUOUS_FACTOR: Final = 1.25
"""Factor on loads expected to last three hours or more. A film evening does: treating the equipment of a media room
as continuous is the cautious practice of this program, not the code's wording."""

PLUG_IN_SHARE: Final = 0.80
"""Most of a shared circuit's rating that one cord-and-plug item may draw."""
FASTENED_SHARE: Final = 0.50
"""Most of a shared circuit's rating for everything fastened in place, when lights or plug-in items share it."""

LEAST_FOR_RECEPTACLES_A: Final = 15.0
"""Circuits of 10 A, new in 2023, feed no receptacle; before that there were none smaller than 15 A."""
_RECEPTACLE_TOTAL_A: Final[Mapping[tuple[float, float], float]] = MappingProxyType(
    {(15.0, 15.0): 12.0, (15.0, 20.0): 12.0, (20.0, 20.0): 16.0, (30.0, 30.0): 24.0}
)
_RECEPTACLES_FOR_CIRCUIT: Final[Mapping[float, tuple[float, ...]]] = MappingProxyType(
    {15.0: (15.0,), 20.0: (15.0, 20.0), 30.0: (30.0,)}
)
TABLED_A: Final = frozenset(_RECEPTACLES_FOR_CIRCUIT)
"""Ratings of circuits that may feed receptacles here."""

EDITIONS: Final[tuple[CodeEdition, ...]] = ("nec2017", "nec2020", "nec2023", "nec2026")
_CLAUSES: Final[Mapping[Topic, tuple[str, str, str]]] = MappingProxyType(
    {
        "continuous load": ("210.20(A)", "210.20(A)", "210.20(A)"),
        "one plug-in item": ("210.23(A)(1)", "210.23(A)(1)", "210.23(B)(1)"),
        "fastened items": ("210.23(A)(2)", "210.23(A)(2)", "210.23(B)(2)"),
        "individual circuit": ("210.22", "210.22", "210.22"),
        "receptacle total": ("Table 210.21(B)(2)", "Table 210.21(B)(2)", "Table 210.21(B)(2)"),
        "receptacle rating": ("Table 210.21(B)(3)", "Table 210.21(B)(3)", "Table 210.21(B)(3)"),
        "small circuit": ("210.3", "210.18", "210.23(A)"),
        "copper size": ("240.4(D)", "240.4(D)", "240.4(D)"),
        "arc-fault protection": ("210.12(A)", "210.12(A)", "210.12(B)"),
        "arc-fault extension": ("210.12(D)", "210.12(D)", "210.12(E)"),
        "ground-fault protection": ("210.8(A)", "210.8(A)", "210.8(A)"),
        "dimmed receptacle": ("404.14(E)", "404.14(E)", "404.14(F)"),
        "receptacle spacing": ("210.52(A)", "210.52(A)", "210.52(A)"),
        "voltage drop": ("210.19(A)", "210.19(A)", "210.19"),
        "concealed cord": ("400.12", "400.12", "400.12"),
    }
)
_SECOND_HAND_IN_2026: Final[frozenset[Topic]] = frozenset({"continuous load", "arc-fault extension"})
"""Clauses of which a report on the 2026 edition was read; of the others the number of 2023 is only thought to hold."""
_GROUND_FAULT_PLACES: Final = frozenset(
    {"unfinished-basement", "garage", "laundry", "kitchen", "bathroom", "crawl-space", "outdoors"}
)
REACH_OF_CHILDREN_M: Final = 1.7
"""Receptacles above this need not be tamper resistant: 1.7 m, 5-1/2 ft (NFPA 70 406.12, read in a transcription)."""
SINK_M: Final = 1.8
"""A receptacle nearer to a sink than this has ground-fault protection."""
ALL_BASEMENTS_SINCE: Final[CodeEdition] = "nec2020"


def clause(topic: Topic, edition: CodeEdition) -> str:
    """Name the clause that treats `topic` in one edition: the 2023 edition renumbered several.

    Source: NFPA 70 of 2020 and 2023, read in unofficial transcriptions; 2017 and the 2020 numbers of arc-fault
    extension, dimmed receptacle and small circuit from memory; 2026 as `clause_is_known` says.
    """
    return _CLAUSES[topic][min(EDITIONS.index(edition), 2)]


def clause_is_known(topic: Topic, edition: CodeEdition) -> bool:
    """Whether the number of a clause was found in a text on that very edition, not carried over from the one before."""
    return edition != "nec2026" or topic in _SECOND_HAND_IN_2026


def wants_ground_fault(place: str, edition: CodeEdition) -> bool:
    """Whether a dwelling's receptacle in such a place needs ground-fault protection.

    Source: NFPA 70 210.8(A): bathrooms, garages, outdoors, crawl spaces, kitchens, laundry areas and unfinished
    basements in every edition here (the list of 2014 was read in an ordinance that adopts it), since 2020 all basements
    (read second-hand). 2026 from memory.
    """
    if place == "finished-basement":
        return EDITIONS.index(edition) >= EDITIONS.index(ALL_BASEMENTS_SINCE)
    return place in _GROUND_FAULT_PLACES


def required_current_a(continuous_a: float, noncontinuous_a: float) -> float:
    """Least rating of the overcurrent device for its loads, A: noncontinuous + 1.25 x continuous.

    An assembly listed for 100 % is excepted by the code and not treated here. ValueError for a negative current.
    Source: NFPA 70 (2020, 2023) 210.20(A), and 210.19(A) for the conductor (read second-hand).
    """
    lasting = not_negative("continuous current", continuous_a, "A")
    return not_negative("noncontinuous current", noncontinuous_a, "A") + CONTINUOUS_FACTOR * lasting


def rating_share(current_a: float, rating_a: float) -> float:
    """Share of a circuit's rating that a current takes, no unit; compare with `PLUG_IN_SHARE` or `FASTENED_SHARE`.

    The two shares bind circuits with several outlets, not an individual circuit. ValueError for a negative current or a
    rating not above zero. Source: NFPA 70 210.23 (read second-hand).
    """
    return not_negative("current", current_a, "A") / positive("circuit rating", rating_a, "A")


def total_is_tabled(receptacle_a: float, circuit_a: float) -> bool:
    """Whether `receptacle_total_a` has a limit for such a receptacle on such a circuit."""
    return (receptacle_a, circuit_a) in _RECEPTACLE_TOTAL_A


def receptacle_total_a(receptacle_a: float, circuit_a: float) -> float:
    """Most that all plugs on one receptacle of a shared circuit may draw together, A.

    15 A receptacle on a 15 or 20 A circuit 12 A; 20 A on 20 A 16 A; 30 A on 30 A 24 A. ValueError for another pair,
    which the code does not tabulate. Source: NFPA 70 Table 210.21(B)(2) (read second-hand).
    """
    limit = _RECEPTACLE_TOTAL_A.get((receptacle_a, circuit_a))
    if limit is None:
        raise Refused(
            f"a {receptacle_a:g} A receptacle on a {circuit_a:g} A circuit is not in the table: "
            "15 on 15 or 20, 20 on 20 and 30 on 30 are"
        )
    return limit


def receptacle_fits(receptacle_a: float, circuit_a: float) -> bool:
    """Whether a receptacle of this rating may sit on a shared circuit of that rating (A).

    15 A: 15; 20 A: 15 or 20; 30 A: 30. ValueError for another circuit rating. Source: NFPA 70 Table 210.21(B)(3) (read
    second-hand).
    """
    allowed = _RECEPTACLES_FOR_CIRCUIT.get(circuit_a)
    if allowed is None:
        raise Refused(f"no receptacle rating is tabulated here for a {circuit_a:g} A circuit: 15, 20 and 30 A are")
    return receptacle_a in allowed
