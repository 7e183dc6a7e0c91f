"""How often each rule fires in generated rooms that a decent designer might have drawn; run by hand.

    python tests/bench/rule_rates.py [ROOMS] [CHAPTER ...]

Boxes of 3 to 8 m, L-shapes and mono-pitch attics; one or two rows of one to six seats; five or seven loudspeakers set
out by the layout's angles as the walls allow, one or two subwoofers at usual places; with and without product sheets,
entered settings and a survey's tolerance. Printed per rule: the share of rooms in which it fails at each level, asks a
person, stays open or tells something. A rule that fires in nearly every room says nothing about any of them.
"""

from __future__ import annotations

import copy
import math
import random
import sys
from collections import Counter, defaultdict
from typing import Any

from drawn_lining import lined
from drawn_wiring import AMPLIFIER, PASSIVE, PROCESSOR, STAGES, record, wiring

from roomlint.review.book import load_book
from roomlint.review.engine import review_room
from roomlint.testing import room_of

Data = dict[str, Any]
CHAPTERS = ("boundary", "bass", "decay", "distance", "aim", "level", "noise", "channel", "handover")
SPEED_M_S = 343.2
SURROUNDS = (110.0, -110.0)
REARS = (135.0, -135.0)
BOX: Data = {
    "roomlint_product": 1, "id": "box", "kind": "loudspeaker", "width": "0.20 m", "height": "0.35 m", "depth": "0.28 m",
    "mass": "8 kg",
    "loudspeaker": {
        "horizontal_coverage": "100 deg", "vertical_coverage": "60 deg", "baffle_angle": "0 deg",
        "low_limit": "50 Hz", "high_limit": "20 kHz", "port": {"face": "rear", "diameter": "50 mm"},
        "placement": ["stand", "on-wall"],
    },
}  # fmt: skip
FLAT: Data = {
    "roomlint_product": 1, "id": "flat", "kind": "loudspeaker", "width": "0.25 m", "height": "0.35 m",
    "depth": "0.12 m", "mass": "4 kg",
    "loudspeaker": {
        "horizontal_coverage": "100 deg", "vertical_coverage": "60 deg", "baffle_angle": "0 deg",
        "low_limit": "70 Hz", "high_limit": "20 kHz", "port": {"face": "none"}, "placement": ["on-wall"],
    },
}  # fmt: skip
LOW: Data = {
    "roomlint_product": 1, "id": "low", "kind": "subwoofer", "width": "0.38 m", "height": "0.40 m", "depth": "0.38 m",
    "mass": "20 kg", "loudspeaker": {"low_limit": "25 Hz", "high_limit": "180 Hz", "port": {"face": "none"}},
}  # fmt: skip


CLOTH: Data = {
    "roomlint_product": 1, "id": "cloth", "kind": "screen", "picture": {"gain": 1.1, "half_gain": "50 deg"},
}  # fmt: skip
LIGHT: Data = {
    "roomlint_product": 1, "id": "light", "kind": "projector", "width": "0.4 m", "height": "0.15 m", "depth": "0.35 m",
    "picture": {
        "aspect": 1.7778, "throw_min": 1.3, "throw_max": 2.1, "shift_reference": "full-height", "shift_vertical": 65,
        "shift_horizontal": 25, "luminous_flux": "1600 lm", "contrast": 2000,
    },
}  # fmt: skip


LOW["apparent_power"] = "350 VA"
for _sheet in (BOX, FLAT):
    _sheet["loudspeaker"] |= PASSIVE
BANDS = ("63 Hz", "125 Hz", "250 Hz", "500 Hz", "1 kHz", "2 kHz", "4 kHz", "8 kHz")
SHEETS = (BOX, FLAT, LOW, AMPLIFIER, PROCESSOR, CLOTH, LIGHT)


def loudness(number: int) -> tuple[Data, ...]:
    """Return the sheets of one room, as loud as what people buy: by a chance of their own, so that rooms stay."""
    chance = random.Random(number + 2_000_000)
    sheets = copy.deepcopy(SHEETS)
    by_id = {sheet["id"]: sheet for sheet in sheets}
    for name in ("box", "flat"):
        by_id[name]["loudspeaker"] |= {
            "sensitivity": f"{chance.choice((84, 86, 87, 88, 90, 92))} dB",
            "power_rating": f"{chance.choice((60, 100, 150))} W",
            "maximum_level": f"{chance.choice((104, 107, 109, 111, 114))} dB",
        }  # fmt: skip
    if chance.random() < 0.5:
        by_id["box"]["loudspeaker"] |= {
            "driver_spacing": f"{chance.uniform(0.14, 0.30):.2f} m", "crossover": f"{chance.uniform(1.4, 2.8):.1f} kHz",
        }  # fmt: skip
    by_id["low"]["loudspeaker"]["maximum_level"] = f"{chance.choice((108, 112, 115, 118, 122))} dB"
    by_id["amp"]["amplifier"]["power"] = f"{chance.choice((60, 80, 100, 120, 150, 200))} W"
    by_id["light"]["picture"]["noise"] = f"{chance.choice((22, 24, 26, 28, 30, 32))} dB"
    return sheets


def heard(number: int, data: Data) -> None:
    """Add what levels and noise ask for: a reference level, hours, the background, what hums; now and then not."""
    chance = random.Random(number + 3_000_000)
    if chance.random() < 0.6:
        data.setdefault("calibration", {}).setdefault(
            "reference_level", f"{chance.choice((72, 75, 75, 78, 78, 80, 82, 85))} dB"
        )
        data["calibration"]["hours_a_week"] = chance.choice((5, 8, 10, 15, 20, 30))
    data.setdefault("project", {}).setdefault("reference", chance.choice(("home", "home", "home", "critical")))
    data["project"]["children"] = chance.random() < 0.4
    data.setdefault("picture", "none")
    if chance.random() < 0.7:
        number_of = chance.uniform(14, 30)
        shape = (44, 34, 28, 22, 17, 13, 9, 6)
        spectrum = [level + number_of - 15 - abs(chance.gauss(0.0, 3.0)) for level in shape]
        data["noise"] = {
            "octaves": {band: f"{max(level, 5.0):.0f} dB" for band, level in zip(BANDS, spectrum, strict=True)},
            "sources": "none" if chance.random() < 0.5 else [
                {"id": "grille", "position": at(1.0, 1.0, 2.3), "level": f"{chance.uniform(18, 34):.0f} dB"}
            ],
        }  # fmt: skip


def at(x: float, y: float, z: float) -> Data:
    """Return a position, as a tape gives it."""
    return {"from_left": f"{x:.2f} m", "from_front": f"{y:.2f} m", "height": f"{z:.2f} m"}


def metres(place: Data) -> tuple[float, ...]:
    """Return a position's numbers."""
    return tuple(float(place[key].split()[0]) for key in ("from_left", "from_front", "height"))


class Drawn:
    """One room, drawn by chance within what is usual."""

    def __init__(self, number: int, *, seen: bool = False) -> None:
        self.number = number
        self.seen = seen
        self.by = random.Random(number)
        chance = self.by
        self.kind = chance.choices(("box", "attic", "ell"), (3, 1, 1))[0]
        self.width, self.length = chance.uniform(3.2, 5.5), chance.uniform(4.0, 8.0)
        self.height = chance.uniform(2.3, 2.9)
        self.sheets = chance.random() < 0.6
        self.also = random.Random(number + 1_000_000)
        """What came later draws by itself, so that the rest of the rooms stays what it was."""
        self.ear_y = self.length * chance.uniform(0.55, 0.72)
        self.ear_x = self.width / 2.0

    def shell(self) -> Data:
        """Return the room's shape; the L has its leg at the right rear."""
        if self.kind == "attic":
            low = self.by.uniform(1.6, 2.2)
            ceiling = {
                "shape": "mono-pitch", "low": f"{low:.2f} m", "high": f"{self.height + 0.4:.2f} m", "low_side": "rear"
            }  # fmt: skip
        else:
            ceiling = {"shape": "flat", "height": f"{self.height:.2f} m"}
        if self.kind != "ell":
            return {"size": {"width": f"{self.width:.2f} m", "length": f"{self.length:.2f} m"}, "ceiling": ceiling}
        leg, from_front = self.by.uniform(1.5, 3.0), self.length * self.by.uniform(0.5, 0.75)
        corners = [
            (0.0, 0.0, "front"), (self.width, 0.0, "right"), (self.width, from_front, "leg-front"),
            (self.width + leg, from_front, "leg-right"), (self.width + leg, self.length, "rear"),
            (0.0, self.length, "left"),
        ]  # fmt: skip
        outline = [{"from_left": f"{x:.2f} m", "from_front": f"{y:.2f} m", "wall": wall} for x, y, wall in corners]
        return {"outline": outline, "ceiling": ceiling}

    def seats(self) -> list[Data]:
        """Return one or two rows, the reference seat in or beside the middle of the first."""
        pitch, across = 0.65, int((self.width - 0.9) / 0.65)
        number = self.by.choice((1, 2, 2, 3, 3, 4, 5, 6))
        first = max(1, min(number, across, 4 if number > 3 else number))
        rows = [first]
        if number > first and self.length - self.ear_y > 1.5:
            rows.append(min(number - first, across))
        found: list[Data] = []
        for row, seats in enumerate(rows, 1):
            middle = (seats - 1) / 2.0
            for place in range(seats):
                x, y = self.ear_x + (place - middle) * pitch, self.ear_y + (row - 1) * 1.0
                ear = at(x, y, 1.1 if row == 1 else 1.35)
                found.append({"id": f"seat-{row}{place}", "row": row, "ear": ear, **self._reference(row, place, seats)})
        return found

    @staticmethod
    def _reference(row: int, place: int, seats: int) -> Data:
        return {"reference": True} if row == 1 and place == (seats - 1) // 2 else {}

    def _on_ray(self, degrees: float, margin: float) -> tuple[float, float]:
        """Return where a ray from the seat, `degrees` to the left of ahead, comes within a margin of the plain box."""
        x, y = -math.sin(math.radians(degrees)), -math.cos(math.radians(degrees))
        ways = [4.5]
        for start, step, end in ((self.ear_x, x, self.width), (self.ear_y, y, self.length)):
            if abs(step) > 1e-6:
                ways.append(((end - margin if step > 0 else margin) - start) / step)
        way = max(0.7, min(ways))
        return self.ear_x + way * x, self.ear_y + way * y

    def speakers(self, reference: str) -> list[Data]:
        """Return the loudspeakers: the front on stands or furniture, the others on stands or on the side walls."""
        gap = self.by.choice((0.45, 0.6, 0.8, 1.0))
        front: list[tuple[str, str, float, float]] = []
        spread = math.tan(math.radians(self.by.uniform(26.0, 30.0))) * (self.ear_y - gap)
        spread = min(spread, self.width / 2.0 - 0.45)
        front.append(("left", "M+030", self.ear_x - spread, gap))
        front.append(("right", "M-030", self.ear_x + spread, gap))
        if self.by.random() < 0.8:
            front.append(("centre", "M+000", self.ear_x, gap))
        found = []
        for name, label, x, y in front:
            held = "furniture" if name == "centre" else "stand"
            found.append(self._speaker(name, label, (x, y, 0.9 if name == "centre" else 1.05), held, reference))
        around = SURROUNDS + (REARS if self.by.random() < 0.3 else ())
        on_walls = self.by.random() < 0.5
        for degrees in around:
            side = "left" if degrees > 0 else "right"
            wall = on_walls and self.kind == "box" and abs(degrees) < 120.0
            x, y = self._on_ray(degrees, 0.14 if wall else 0.55)
            wall = wall and min(x, self.width - x) < 0.2
            name, label = f"{side}-{abs(degrees):.0f}", f"M{degrees:+04.0f}"
            found.append(self._speaker(name, label, (x, y, 1.3), side if wall else "stand", reference))
        return found

    def _speaker(self, name: str, label: str, place: tuple[float, float, float], held: str, reference: str) -> Data:
        data: Data = {"id": name, "label": label, "position": at(*place), "mounting": {"on": held}}
        if held in {"stand", "furniture"}:
            data["aim"] = {"seat": reference}
        product = "box" if held in {"stand", "furniture"} else "flat"
        return {**data, "product": product} if self.sheets else data

    def subwoofers(self) -> list[Data]:
        """Return one or two subwoofers where people put them."""
        off, w, le = 0.45, self.width, self.length
        one = self.by.choice([[(off, off)], [(w * 0.3, off)], [(w - off, off)], [(w * 0.7, off)]])
        two = self.by.choice(
            [[(w / 2, off), (w / 2, le - off)], [(off, off), (w - off, off)], [(off, off), (w - off, le - off)],
             [(off, le / 2), (w - off, le / 2)], [(w * 0.25, off), (w * 0.75, off)]]
        )  # fmt: skip
        places = self.by.choice([one, two])
        found: list[Data] = []
        for number, (x, y) in enumerate(places, 1):
            data: Data = {"id": f"sub-{number}", "position": at(x, y, 0.2), "mounting": {"on": "floor"}}
            data["facing"] = "180 deg" if y < le / 2 else "0 deg"
            found.append({**data, "product": "low"} if self.sheets else data)
        return found

    def picture(self) -> Data:
        """Return a display over a low board, or a screen with its projector at the ceiling."""
        chance, projected = self.also, self.also.random() < 0.5
        inches = chance.uniform(92, 130) if projected else chance.choice((55, 65, 65, 75, 77, 85))
        inches = min(inches, (self.width - 0.4) / 0.8716 / 0.0254)
        wide, high = inches * 0.0254 * 0.8716, inches * 0.0254 * 0.4903
        middle = min(chance.uniform(0.6, 0.85) + high / 2.0, self.height - 0.1 - high / 2.0)
        data: Data = {
            "kind": "projection" if projected else "display", "centre": at(self.ear_x, 0.1, middle),
            "width": f"{wide:.3f} m", "height": f"{high:.3f} m", "lines": 2160, "mounting": {"on": "front"},
        }  # fmt: skip
        if projected:
            throw = min(chance.uniform(1.3, 2.0) * wide, self.length - 0.5)
            lens = at(self.ear_x + chance.choice((0.0, 0.0, 0.15)), 0.1 + throw, self.height - chance.uniform(0.2, 0.4))
            data |= {"product": "cloth", "ambient": f"{chance.choice((0.5, 2, 5, 20))} lx"}
            data["projector"] = {"id": "projector", "product": "light", "lens": lens}
        return data

    def ways(self, shell: Data, seats: list[Data]) -> Data:
        """Add what chapter access asks for: a door, a platform, a keypad, an alarm."""
        chance = self.also
        wall = chance.choice(("rear", "left"))
        reach = (self.width if wall == "rear" else self.length) - 1.1
        door = {
            "id": "door", "kind": "door", "wall": wall, "from_wall_left": f"{chance.choice((0.15, 0.15, reach)):.2f} m",
            "width": f"{chance.choice((0.71, 0.76, 0.81, 0.86)):.2f} m", "sill": "0 m", "height": "2.03 m",
            "hinge": "left", "swing": chance.choice(("in", "out")), "egress": True,
        }  # fmt: skip
        high = chance.choice((0.18, 0.30, 0.36))
        risers: Any = "none"
        if any(seat["row"] > 1 for seat in seats):
            risers = [{"id": "step", "from_front": f"{self.ear_y + 0.5:.2f} m", "height": f"{high} m", "steps": 2}]
        keypad = [{"id": "keypad", "height": f"{chance.choice((1.1, 1.2, 1.4))} m"}]
        alarm = chance.choice(("in-room", "elsewhere"))
        return {
            **shell, "openings": [door], "obstacles": "none", "risers": risers, "controls": keypad, "smoke_alarm": alarm
        }  # fmt: skip

    def data(self) -> Data:
        """Return the whole file."""
        seats = self.seats()
        reference = next(seat["id"] for seat in seats if seat.get("reference"))
        speakers, subwoofers = self.speakers(reference), self.subwoofers()
        data: Data = {
            "roomlint": 1,
            "room": self.shell(),
            "seats": seats,
            "loudspeakers": speakers,
            "subwoofers": subwoofers,
        }
        if self.seen:
            for seat in seats:
                high = metres(seat["ear"])[2]
                seat |= {"eye_height": f"{high + 0.02:.2f} m", "head_top": f"{high + 0.13:.2f} m"}
            data |= {"room": self.ways(data["room"], seats), "picture": self.picture()}
        tolerance = self.by.choice((None, "20 mm", "30 mm"))
        if tolerance is not None:
            data["survey"] = {"tolerance": tolerance, "temperature": "20 degC"}
        if self.by.random() < 0.5:
            data["calibration"] = {"settings": self.settings(speakers, subwoofers, seats)}
        # What came later is drawn by a chance of its own, so that the rooms stay what they were.
        self.wire(data, random.Random(self.number))
        return data

    @staticmethod
    def wire(data: Data, chance: random.Random) -> None:
        """Add a stage, what drives the room, and at handover the record of its setting up."""
        stage = chance.choice(STAGES)
        data["project"] = {"code": "drawn", **({"stage": stage} if stage is not None else {})}
        if chance.random() < 0.8:
            data |= wiring(chance, data["loudspeakers"], data["subwoofers"])
        if stage == "handover" and "electronics" in data and "calibration" in data:
            made = record(chance, [*data["loudspeakers"], *data["subwoofers"]], data.get("cables", []))
            entered, measured = data["calibration"]["settings"], made["entries"]
            settings = [{**one, **more} for one, more in zip(entered, measured, strict=True)]
            data["handover"] = made["items"]
            presets = [
                one for one in made["presets"] if one["mode"] in {mode["id"] for mode in data["listening_modes"]}
            ]
            data["calibration"] = {
                "reference_level": "78 dB", "settings": settings, "steps": made["steps"], "presets": presets,
            }  # fmt: skip

    def settings(self, speakers: list[Data], subwoofers: list[Data], seats: list[Data]) -> list[Data]:
        """Return delays as a processor computes them from the drawing, to the hundredth of a millisecond."""
        ear = next(metres(seat["ear"]) for seat in seats if seat.get("reference"))
        crossover = self.by.choice(("80 Hz", "80 Hz", "100 Hz"))
        away = {source["id"]: math.dist(metres(source["position"]), ear) for source in (*speakers, *subwoofers)}
        farthest = max(away.values())
        found: list[Data] = []
        for source in (*speakers, *subwoofers):
            entry: Data = {"id": source["id"], "delay": f"{(farthest - away[source['id']]) / SPEED_M_S * 1e3:.2f} ms"}
            found.append({**entry, "crossover": crossover} if source in speakers else entry)
        return found


def main(rooms: int, chapters: tuple[str, ...]) -> None:
    """Review the rooms and print the table."""
    book = load_book().rules
    judged = [rule for rule in book if rule.chapter in chapters]
    causes = {cause for rule in judged for cause in rule.after}
    rules = [rule for rule in book if rule in judged or rule.id in causes]
    fired: dict[str, Counter[str]] = defaultdict(Counter)
    found: Counter[str] = Counter()
    for number in range(rooms):
        drawn = Drawn(number, seen=bool({"picture", "access"} & set(chapters)))
        data = drawn.data()
        if {"level", "noise"} & set(chapters):
            heard(number, data)
        if "decay" in chapters:
            data = lined(random.Random(number + 2_000_000), data)
        room = room_of(data, loudness(number))
        outcome = review_room(room, rules)
        for trouble in outcome.troubles:
            print(f"room {number}: {trouble.text}\n{trouble.detail}", file=sys.stderr)
        kinds: dict[str, set[str]] = defaultdict(set)
        for verdict in outcome.verdicts:
            kind = str(verdict.level or verdict.kind)
            if verdict.follows is not None:
                kind = "follows"
            kinds[verdict.rule].add(kind)
            if kind in {"error", "warning", "note", "review"}:
                found[verdict.rule] += 1
                kinds[verdict.rule].add("fires")
        for rule, seen in kinds.items():
            fired[rule].update(seen)
    columns = ("fires", "error", "warning", "note", "review", "open", "informational", "pass", "notApplicable")
    print(f"{'% of ' + str(rooms) + ' rooms':34}" + "".join(f"{column[:8]:>9}" for column in columns) + "   a room")
    for rule in judged:
        shares = "".join(f"{fired[rule.id][column] / rooms:9.0%}" for column in columns)
        print(f"{rule.id:34}{shares}{found[rule.id] / rooms:9.2f}")


if __name__ == "__main__":
    arguments = sys.argv[1:]
    main(int(arguments[0]) if arguments else 150, tuple(arguments[1:]) or CHAPTERS)
