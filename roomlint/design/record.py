"""What the team records beside the geometry: project, survey, modes, calibration, handover, waivers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.element import Element
from roomlint.design.keys import Ident, choice, day, flag, ident, labelled, number, system, text
from roomlint.design.measured import length, quantity
from roomlint.design.parts import named, part, several, words

if TYPE_CHECKING:
    from roomlint.design.reader import Book

_NEC_REGIONS = frozenset({"us", "ca", "jp", "other"})
_HOME = {"bs7671": {"uk", "other"}, "asnzs3000": {"au", "nz", "other"}, "iec60364": {"eu", "uk", "jp", "other"}}
"""Where a code can be in force; an edition of NFPA 70 can in North America, and where others adopted it."""


class Codes(Element):
    """Codes in force."""

    KIND = "codes"

    electrical = choice(
        "Electrical code and edition.",
        "nec2017",
        "nec2020",
        "nec2023",
        "nec2026",
        "bs7671",
        "iec60364",
        "asnzs3000",
        "other",
    )
    building = choice("Building code and edition.", "irc2018", "irc2021", "irc2024", "other", told=True)
    seismic_category = choice("Seismic design category.", "a", "b", "c", "d", "d0", "d1", "d2", "e", "f")


class Project(Element):
    """Which job this is."""

    KIND = "project"

    id_key = Ident("The team's code for the job.", example="attic-17", most=63, key="code", told=True)
    title = text("A title.", "Attic under a mono-pitch roof", told=True)
    about_it = text(
        "Anything a reader should know.", "Client keeps the roof window.", key="about", told=True, most=4000
    )
    stage = choice("How far the job is.", "survey", "design", "rough-in", "handover", told=True)
    region = choice("Where it is.", "us", "ca", "uk", "eu", "au", "nz", "jp", "other", told=True)
    reference = choice(
        "Which windows give warnings: home tolerances or the listening-room standards.", "home", "critical",
        default="home",
    )  # fmt: skip
    children = flag("Whether children live there.")
    codes = part("Codes in force.", Codes, always=True)

    @property
    def electrical_code(self) -> str | None:
        """The electrical code and its edition."""
        return self.codes.electrical

    @property
    def seismic_category(self) -> str | None:
        """The seismic design category."""
        return self.codes.seismic_category

    def settle(self, book: Book) -> None:
        """Hold the code against the region: only one of the two can be right."""
        book.stage = self.given("stage")
        region, codes = self.given("region"), self.given("codes")
        code = codes.given("electrical") if codes is not None else None
        if region is None or code in {None, "other"}:
            return
        if region not in (_NEC_REGIONS if code.startswith("nec") else _HOME[code]):
            text_of = f"{code} is not in force in region {region!r}; correct one of the two, or write `other`."
            book.cross(codes.at.get("electrical") or codes.at, text_of)


class Survey(Element):
    """How the room was measured."""

    KIND = "survey"
    ID = "survey"

    tolerance_m = length(
        "Uncertainty of every length of this file that does not carry its own: positions, sizes and openings, not"
        " nominal sizes such as boards and screws. Without it 10 mm are taken at survey and rough-in, 5 mm at design"
        " and handover.", zero=True, high=0.1, told=True, example="5 mm",
    )  # fmt: skip
    temperature_degc = quantity("Air temperature when listening.", "temperature")
    bass_decay_s = quantity(
        "Decay of the bass, the octave at 63 Hz, as measured in the room.", "time", low=0.1, high=5.0,
        example="0.45 s ± 0.1 s",
    )  # fmt: skip
    by = text("Who measured.", "A. N. Installer", told=True)
    on = day("When.", told=True)

    def settle(self, book: Book) -> None:
        """Let the lengths of the file carry its tolerance."""
        book.tolerance = self.given("tolerance_m")


class Mode(Element):
    """A listening mode."""

    KIND = "listening mode"

    id_key = ident()
    title = text("Title.", "All channels", told=True)
    layout = system("The layout it follows.")
    channels = words("Labels that play.", labelled("A label."), 40)


class Setting(Element):
    """What is entered for one loudspeaker or subwoofer, and what was measured of it."""

    KIND = "setting"

    id_key = Ident("Id of the loudspeaker or subwoofer.", example="side-left", most=63, told=True, required=True)
    delay_s = quantity("Delay entered.", "time", zero=True, high=0.5)
    distance_m = length("Distance entered.", zero=True, high=100.0, example="3.20 m")
    level_db = quantity("Level trim entered.", "level", low=-60.0, high=24.0, example="-1.5 dB")
    measured_level_db = quantity(
        "Level measured at the reference seat.", "level", low=0.0, high=140.0, zero=True, example="78.0 dB"
    )
    crossover_hz = quantity("Crossover frequency entered.", "frequency", low=20.0, high=1000.0)
    inverted = flag("Whether polarity is inverted.")
    measured_polarity = choice("Polarity measured with all that is entered in force.", "positive", "negative")
    measured_arrival_s = quantity(
        "Arrival measured at the reference seat with all that is entered in force, from one start for all.", "time",
        zero=True, high=1.0, example="12.40 ms",
    )  # fmt: skip

    def settle(self, book: Book) -> None:
        """See that the room has it."""
        node = self.at.get("id")
        if node is not None:
            book.refer("loudspeaker or subwoofer", node)


class Task(Element):
    """Something to do, and who did it when."""

    id_key = ident()
    done = flag("Whether it is done.")
    by = text("Who.", "installer", proves=True)
    on = day("When.")
    evidence = text("Where the evidence is.", "measurement sheet 4", proves=True)


class Step(Task):
    """A step of the calibration."""

    KIND = "step"

    kind = choice(
        "What is done.", "wiring", "routing", "polarity", "subwoofers", "crossovers", "delays", "levels", "correction",
        "verification", "taste",
    )  # fmt: skip
    what = text("The same in words.", "Polarity of every loudspeaker checked", told=True)


class Preset(Element):
    """What is stored in the processor for one listening mode."""

    KIND = "preset"

    id_key = ident()
    mode = named("The listening mode it is for.", "listening mode", "film")
    taste = flag("Whether it holds a taste curve, which the calibration does not.")


class Item(Task):
    """Something to verify, to record or to leave behind."""

    KIND = "handover item"

    kind = choice(
        "What is handed over or recorded.", "drawings", "settings", "responses", "instructions", "versions",
        "stud-proved", "pilot-hole", "torque", "photo-before-closing", "insulation-test", "residual-current-test",
        "other",
    )  # fmt: skip
    of = words("What it is a record of.", named("Id of an element.", "element", "picture"), 80)
    what = text("The same in words.", "Every mount pulled by hand in front of the client", told=True)
    version = text("Version of the firmware, of a record of versions.", "3.1.4", proves=True)


class Calibration(Element):
    """How the room is set up."""

    KIND = "calibration"
    ID = "calibration"

    reference_level_db = quantity(
        "Level of one main channel at the reference seat.", "level", low=30.0, high=120.0, example="78 dB"
    )
    hours_a_week = number("Hours of listening a week at that level.", 0, 168, example=10)
    settings = several("What is entered in the processor.", Setting, most=80, what="setting for")
    steps = several("Steps, in order.", Step, most=200, what="step")
    presets = several("What is stored for the listening modes.", Preset, most=40, what="preset")


class Waiver(Element):
    """One accepted failure."""

    KIND = "waiver"

    rule = text("Rule id.", "angle.front-pair", required=True, most=80, told=True)
    subject = text(
        "Element id, or ids joined by +; the design's own when the rule judges the room.", "side-left", required=True,
        most=200, told=True,
    )  # fmt: skip
    because = text("The reason.", "The client keeps the glass.", most=1000, told=True)
    approved_by = text("Who accepts it.", "lead", told=True, proves=True)
    until = day("Last day it holds.", told=True)
    bound = text("No worse than this.", "128 deg", most=80, told=True)
    """A quantity as text; the figure's unit says which unit it must fit."""
    document = text("Reference of the document that supports it.", "calculation sheet 3", told=True, proves=True)

    def settle(self, book: Book) -> None:  # noqa: ARG002  a waiver looks at nothing else
        """Name it after what it accepts."""
        self.__dict__["id"] = f"{self.given('rule')} for {self.given('subject')}"
