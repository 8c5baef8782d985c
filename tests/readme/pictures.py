"""The pictures of the README, drawn by the program itself from the demo sessions.

    python -m tests.readme.pictures

draws them anew, and puts what `evenarc check` says into the README. They stand beside the tests
because a test keeps them true: it draws them again and compares. Only where_the_tape_goes.svg is
drawn by hand.
"""

import asyncio
import re
import shutil
from collections.abc import Awaitable, Callable
from contextlib import redirect_stdout
from dataclasses import dataclass
from functools import partial
from io import StringIO
from pathlib import Path
from tempfile import TemporaryDirectory

from textual.pilot import Pilot

from core.documents.record import read_document, save_draft
from core.profiles.profile import load_profile
from tests.demo import fg_1
from tests.demo.build import SESSIONS, answer_one, opened_flow
from tests.demo.typed import TypedSession
from wizard.commands import application
from wizard.flow.filed_records import read_and_judge
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.reports.verdict_in_words import print_verdict
from wizard.tui.host import Host
from wizard.tui.widgets.heading import Heading

FOLDER = Path(__file__).parent
README = FOLDER.parents[1] / "README.md"

Open = Callable[[Pilot[None], Path], Awaitable[None]]


@dataclass(frozen=True)
class Picture:
    """One screen: the name of its file, its size in columns and rows, and how to get there."""

    name: str
    size: tuple[int, int]
    open: Open


async def home(pilot: Pilot[None], _files: Path) -> None:
    """The home screen."""
    pilot.app.screen.query_one(Heading).right = "a copy of the demo sessions"


async def measuring(pilot: Pilot[None], files: Path) -> None:
    """A height is asked for, three pivots are there already."""
    app(pilot).resume(draft_at(files, fg_1.AS_BUILT, "readings.drag_link.axle.height"))
    await settled(pilot)
    await pilot.press(*("space" if key == " " else key for key in "18 1/2"))


async def verdict(pilot: Pilot[None], files: Path) -> None:
    """The verdict on the lifted truck."""
    app(pilot).open_record(fg_1.LIFTED.path_in(files))


async def plans(pilot: Pilot[None], files: Path) -> None:
    """What could be moved on the lifted truck."""
    app(pilot).resume(draft_at(files, fg_1.LIFTED, "fix"))


async def bench(pilot: Pilot[None], files: Path) -> None:
    """The truck as it was built, with a lift tried out."""
    app(pilot).open_record(fg_1.AS_BUILT.path_in(files))
    await settled(pilot)
    await pilot.press("b")
    await settled(pilot)
    await pilot.press("l", *"4", "enter")


async def compared(pilot: Pilot[None], files: Path) -> None:
    """Before beside after the fix."""
    app(pilot).compare_both(fg_1.LIFTED.path_in(files), fg_1.FIXED.path_in(files))


PICTURES = (
    Picture("home", (120, 17), home),
    Picture("measuring", (110, 34), measuring),
    Picture("verdict", (120, 46), verdict),
    Picture("plans", (120, 46), plans),
    Picture("bench", (120, 46), bench),
    Picture("before_and_after", (120, 44), compared),
)


def app(pilot: Pilot[None]) -> Host:
    """The wizard that is driven."""
    assert isinstance(pilot.app, Host)
    return pilot.app


def draft_at(files: Path, typed: TypedSession, path: str) -> Path:
    """A demo session that is still being typed, and has come to a question."""
    earlier = next((one for one in SESSIONS if one.id == typed.follows), None)
    flow = opened_flow(typed, read_document(earlier.path_in(files)) if earlier else None)
    while flow.question.path != path:
        flow = answer_one(flow, typed)
    return save_draft(files, flow.document)


async def settled(pilot: Pilot[None]) -> None:
    """Wait until everything is drawn, what runs beside the screen included."""
    await pilot.pause()
    await pilot.app.workers.wait_for_complete()
    await pilot.pause()


async def drawn(picture: Picture) -> str:
    """A picture as SVG."""
    with TemporaryDirectory() as folder:
        files = Path(folder) / "files"
        shutil.copytree(DEMO_SESSIONS, files)
        async with application(files, [PROFILES]).run_test(size=picture.size) as pilot:
            await settled(pilot)
            await picture.open(pilot, files)
            await settled(pilot)
            return self_contained(pilot.app.export_screenshot(title=""))


def self_contained(svg: str) -> str:
    """The same SVG without fonts from elsewhere, and without the name of this one drawing."""
    svg = re.sub(r"\s*@font-face \{.*?\}", "", svg, flags=re.DOTALL)
    svg = re.sub(r"<text[^>]*-title.*?</text>|<circle.*?/>", "", svg)
    svg = svg.replace("Fira Code, monospace", "DejaVu Sans Mono, Menlo, Consolas, monospace")
    return re.sub(r"terminal-\d+", "evenarc", svg)


def path_of(picture: Picture) -> Path:
    """Where a picture is kept."""
    return FOLDER / f"{picture.name}.svg"


def with_report(readme: str) -> str:
    """The README with the beginning of what `evenarc check` says of the lifted truck."""
    head, mark, rest = readme.partition("<!-- what evenarc check says -->\n```\n")
    _, fence, rest = rest.partition("```\n")
    return head + mark + report() + fence + rest


def report() -> str:
    """The beginning of the report on the lifted truck, as it is printed without colour."""
    path = fg_1.LIFTED.path_in(DEMO_SESSIONS)
    with redirect_stdout(StringIO()) as printed:
        document, verdict = read_and_judge(str(path), partial(load_profile, folders=[PROFILES]))
        print_verdict(document, verdict, str(path.relative_to(DEMO_SESSIONS.parent)))
    beginning = printed.getvalue().partition("\nWhy it steers")[0]
    return "".join(f"{line.rstrip()}\n" for line in beginning.splitlines())


def main() -> None:
    """Draw every picture anew."""
    for picture in PICTURES:
        path_of(picture).write_text(asyncio.run(drawn(picture)), encoding="utf-8")
    README.write_text(with_report(README.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
