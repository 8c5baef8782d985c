"""Sheet to take photographs by: where to stand, what has to be in the picture, what to tape."""

from dataclasses import dataclass

from core.kinematics.pivots import PIVOTS
from core.readings.photograph import CONTACTS, HUBS, PLUMB
from wizard import __version__
from wizard.phrases.cautions import CAUTIONS
from wizard.phrases.mark_names import POINTS
from wizard.printed.rendering import render

TEMPLATE = "photograph_sheet.html"

STEPS = (
    "Stand the vehicle on level ground, on its wheels, wheels straight ahead, loaded as it drives.",
    "Hang a plumb line beside the axle where the picture shows it. It tells what is upright.",
    "Stand two to three paces ahead of the axle. Hold the camera level, at the height of the hubs "
    "or a little above.",
    "Take both hubs and both tyres down to the floor into the picture. Do not zoom with the screen "
    "and do not cut the picture afterwards.",
    "Take a second picture from 3 ft further left, and a third from 3 ft further right.",
    "Wipe the bolts and balls at the four ends of track bar and drag link, so that they show.",
)
"""How photographs are taken."""

BLANKS = (
    "Track: middle of tread to middle of tread",
    "Track bar, centre to centre",
    "Drag link, centre to centre",
    "Hub height above the floor",
    "Castor, if it is known",
)
"""Tape readings that help most; none is needed."""


@dataclass(frozen=True)
class PhotographSheet:
    """Data of the sheet, which the template lays out."""

    title: str
    steps: tuple[str, ...]
    in_view: tuple[str, ...]
    blanks: tuple[str, ...]
    cautions: tuple[str, ...]
    paper: str
    program_version: str = __version__


def photograph_sheet_html(paper: str = "letter") -> str:
    """HTML text of the sheet.

    Parameters
    ----------
    paper : "letter" or "a4"
    """
    sheet = PhotographSheet(
        title="Photographs of a front axle",
        steps=STEPS,
        in_view=tuple(POINTS[point] for point in (*PIVOTS, *HUBS, *CONTACTS, *PLUMB)),
        blanks=BLANKS,
        cautions=tuple(CAUTIONS),
        paper=paper,
    )
    return render(TEMPLATE, sheet)
