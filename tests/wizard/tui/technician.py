"""A scripted technician, who answers as a person does and counts answers and keystrokes.

The vehicles are invented: a crossover truck on radius arms whose readings are all known.
"""

from dataclasses import dataclass, field

import numpy as np
from textual.pilot import Pilot

from core.kinematics.linkage import Linkage
from core.text.quantity import INCH
from tests.geometries import parallel_pair, true_readings
from tests.wizard.tui.driving import measuring, settle
from wizard.tui.screens.home import HomeScreen
from wizard.tui.widgets.field import Field
from wizard.tui.widgets.sheet import Sheet

STATIONS = {
    "track_bar.frame": 3.0,
    "track_bar.axle": 2.5,
    "drag_link.frame": 7.5,
    "drag_link.axle": 6.5,
}
"""Distance of each pivot ahead of the axle, in."""

HABITS = {
    "vehicle.tag": "FG-8",
    "session.technician": "T. I.",
    "readings.guide.frame.height": "16 1/2",
    "readings.guide.frame.station": "-36",
    "readings.guide.span": "34",
    "readings.steering.arm": "6 1/2",
    "readings.steering.pitman_arm": "6",
    "walk_round.rim_play": "1",
    "walk_round.steering_wheel_diameter": "16",
}
"""Texts that are the same for every vehicle here."""

PASSED = ("readings.guide.castor", "readings.kingpin", "readings.braces", "readings.wheels.hub")
"""Beginnings of the paths that this technician passes on: they take a lift or a second person."""


def readings_of(parallel_deg: float) -> dict[str, str]:
    """Readings of a truck whose links differ by an angle, as a technician types them."""
    linkage = with_stations(parallel_pair(slope_deg=8.0, parallel_deg=parallel_deg))
    true = true_readings(linkage, datum=36 * INCH)
    typed = {}
    for name, value in true.items():
        if name.endswith(".slope"):
            typed[name] = f"{round(np.degrees(value) * 2) / 2:g}"
        elif name not in ("steering.arm", "steering.pitman_arm", "wheels.hub_height"):
            typed[name] = sixteenths(value / INCH)
    return {f"readings.{name}": text for name, text in typed.items()}


def with_stations(linkage: Linkage) -> Linkage:
    """The linkage with its pivots ahead of the axle."""
    ahead = {pivot: np.array([inches * INCH, 0.0, 0.0]) for pivot, inches in STATIONS.items()}
    return linkage.with_pivots({name: linkage.pivot(name) + by for name, by in ahead.items()})


def sixteenths(inches: float) -> str:
    """A length as it is typed: "17 5/8"."""
    count = round(inches * 16)
    whole, part = divmod(abs(count), 16)
    divisor = int(np.gcd(part, 16))
    fraction = f"{part // divisor}/{16 // divisor}" if part else ""
    sign = "-" if count < 0 else ""
    return sign + " ".join(filter(None, (str(whole) if whole or not part else "", fraction)))


@dataclass
class Technician:
    """A technician at the keys.

    Attributes
    ----------
    pilot : Pilot
    texts : dict
        Texts by the path of the question.
    answers : int
        Answers given: each list, each field, and each sheet as a whole.
    on_sheets : int
        Lines of sheets that were ticked, typed or passed.
    keystrokes : int
    asked : list of str
        Paths of the questions in the order in which they were answered.
    """

    pilot: Pilot[None]
    texts: dict[str, str]
    answers: int = 0
    on_sheets: int = 0
    keystrokes: int = 0
    asked: list[str] = field(default_factory=list)

    async def press(self, *keys: str) -> None:
        """Press keys one after the other."""
        self.keystrokes += len(keys)
        await self.pilot.press(*keys)

    async def type(self, text: str) -> None:
        """Type a text; every character is a keystroke."""
        self.keystrokes += len(text)
        field_ = self.pilot.app.screen.query_one(Field)
        field_.begin(text)

    async def answer(self) -> None:
        """Answer the question at hand."""
        flow = measuring(self.pilot).flow
        question, path = flow.question, flow.question.path
        self.asked.append(path)
        if flow.sheet:
            self.on_sheets += 1
            self.answers += question is flow.sheet[0]
        else:
            self.answers += 1
        if question.kind == "show":
            await settle(self.pilot)
            await self.press("enter")
            await settle(self.pilot)
        elif path in self.texts:
            await self.type(self.texts[path])
            await self.press("enter")
        elif path.startswith(PASSED):
            await self.press("f4")
        elif question.choices or question.kind == "profile":
            await self.choose(path)
        else:
            await self.press("enter")

    async def choose(self, path: str) -> None:
        """Choose from a list: mostly what is marked, else the usual line."""
        keys = {"session.profile": "1", "layout.steering_box": "1", "layout.ball": "1"}
        sheet = self.pilot.app.screen.query_one(Sheet)
        if sheet.display:
            await self.press(next(line.key for line in sheet.lines if line.path == path))
            if measuring(self.pilot).flow.question.path == path:  # the last line to tick
                await self.press("enter")
        elif path in keys:
            await self.press(keys[path], "enter")
        else:
            await self.press("enter")

    async def file(self) -> None:
        """Measure a vehicle from home to the filed record."""
        await self.press("enter")
        for _ in range(120):
            if isinstance(self.pilot.app.screen, HomeScreen):
                return
            await self.answer()
            assert self.asked.count(self.asked[-1]) < 3, f"{self.asked[-1]} is not accepted"
        raise AssertionError(f"never filed; the last questions: {self.asked[-5:]}")


def technician_for(pilot: Pilot[None], parallel_deg: float) -> Technician:
    """A technician before a truck whose links differ by an angle."""
    return Technician(pilot, {**HABITS, **readings_of(parallel_deg)})
