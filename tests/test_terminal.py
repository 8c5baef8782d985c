"""Whole sessions in a real terminal: typed key by key, killed, gone on with, filed, read back.

What is typed is that of the demo's first truck; it is invented.
"""

import signal
import subprocess
from collections.abc import Mapping

import pytest

from core.documents.document import value_at, with_value
from core.documents.record import read_document
from core.profiles.profile import profile_names
from tests.demo import fg_1
from tests.terminal.terminal import Terminal, installed
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.questions.question import Question
from wizard.questions.steps import STEPS

pytestmark = pytest.mark.skipif(
    not hasattr(signal, "SIGKILL"), reason="this system has no pseudo-terminals"
)

SMALLEST, LARGE = (80, 24), (120, 40)
QUESTIONS = {question.path: question for step in STEPS for question in step.questions}
SHOWN = {"1 answer": "verdict", "before beside after": "compare", "fewest parts first": "fix",
         "nothing is to be done": "fix"}  # fmt: skip
"""What a step that is only looked at is known by."""


class Session:
    """A session that is taken through the wizard by its keys."""

    def __init__(self, terminal: Terminal, answers: Mapping[str, object]) -> None:
        self.terminal = terminal
        self.answers = answers

    @property
    def place(self) -> str | None:
        """Path of the question on the screen, or what is shown instead."""
        lines = self.terminal.text.splitlines()
        text, left = (
            " ".join(" ".join(line[:columns] for line in lines).split())
            for columns in (None, self.terminal.screen.columns // 2)  # beside the picture
        )
        for words, name in SHOWN.items():
            if words in text:
                return name
        asked = (path for path, one in QUESTIONS.items() if one.ask in text or one.ask in left)
        return next(asked, None)

    def go_on_to(self, path: str) -> None:
        """Answer one question after the other until one is reached."""
        place = self.terminal.until(lambda: self.place)
        while place != path:
            self.terminal.press(*self.keys(place))
            left = place
            place = self.terminal.until(
                lambda left=left: self.place if self.place not in (None, left) else None
            )

    def keys(self, place: str) -> tuple[str, ...]:
        """What is pressed at a place; without an answer a question is skipped."""
        question = QUESTIONS.get(place)
        if question is None or not question.is_answered_by_a_value:
            return ("enter",)
        if place not in self.answers:
            return ("F4",)
        answer = self.answers[place]
        if question.kind == "profile":
            return (str(profile_names([PROFILES]).index(str(answer)) + 1), "enter")
        if question.choices:
            return choosing(question, answer)
        return (str(answer), "enter")


def choosing(question: Question, answer: object) -> tuple[str, ...]:
    """Numbers of the lines that are chosen, and Enter after them."""
    wanted = answer if isinstance(answer, list) else [answer]
    numbers = [str(i) for i, one in enumerate(question.choices, 1) if one.value in wanted]
    return (*numbers, "enter")


def told(document):
    """Everything that a technician typed or chose, without ids and times."""
    kept = ("vehicle", "complaint", "walk_round", "stance", "layout", "instruments", "readings")
    session = {
        key: value_at(document, f"session.{key}")
        for key in ("kind", "technician", "units", "profile", "note", "altered")
    }
    return {"session": session} | {key: document.get(key) for key in kept}


def test_the_smallest_terminal_is_enough(tmp_path):
    first_session(tmp_path / "files", SMALLEST)


def test_a_vehicle_from_nothing_to_the_re_measure(tmp_path):
    files = tmp_path / "files"
    filed = first_session(files, LARGE)
    again = re_measure(files, LARGE)
    read = read_document(again)
    lifted = told(read_document(fg_1.LIFTED.path_in(DEMO_SESSIONS)))
    assert told(read) == with_value(
        lifted, "vehicle.description", fg_1.AS_BUILT.answers["vehicle.description"]
    )
    assert value_at(read, "session.follows") == value_at(read_document(filed), "session.id")
    assert value_at(read, "plan.moves")
    evenarc("check", again, answers=1, says="✗ BUMP STEER")
    evenarc("compare", filed, again, answers=1, says="✗ NOT SHOWN")
    evenarc("fix", again, "--json", answers=0, says='"plans": [{')


@pytest.mark.parametrize("told", [signal.SIGTERM, signal.SIGHUP])
def test_told_to_end_it_quits_and_throws_the_demo_away(tmp_path, monkeypatch, told):
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    terminal = Terminal("demo", size=SMALLEST)
    terminal.wait_for("FG-6")
    assert list(tmp_path.iterdir())
    terminal.child.kill(told)
    assert terminal.ended() == 0
    assert not list(tmp_path.iterdir())


def test_a_key_that_is_no_text_ends_it_in_one_line(tmp_path):
    terminal = Terminal("--files", str(tmp_path), size=LARGE)
    terminal.wait_for("Nothing is filed here yet")
    terminal.child.send(b"\xb0")
    terminal.wait_for("a fault in the program")
    assert "Traceback" not in terminal.text
    assert terminal.ended() == 2


def first_session(files, size):
    """From an empty folder to a record, through a laptop that dies in the middle."""
    answers = fg_1.AS_BUILT.answers
    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("Nothing is filed here yet")
    terminal.press("enter")
    session = Session(terminal, answers)
    session.go_on_to("readings.drag_link.axle.height")
    terminal.press("17 3")
    terminal.wait_for("17 3")
    terminal.kill()
    (draft,) = (files / "unfinished").glob("*.toml")
    kept = read_document(draft)
    assert value_at(kept, "readings.drag_link.frame.station") == ["9 in"]
    assert value_at(kept, "readings.drag_link.axle") is None

    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("unfinished, go on")
    terminal.press("enter")
    session = Session(terminal, answers)
    assert terminal.until(lambda: session.place) == "readings.drag_link.axle.height"
    session.go_on_to("file")
    terminal.press("enter")
    terminal.wait_for("filed, and read back")
    terminal.press("F9")
    assert terminal.ended() == 0

    (record,) = files.glob("FG-1/*.toml")
    assert not list((files / "unfinished").iterdir())
    read = read_document(record)
    assert told(read) == told(read_document(fg_1.AS_BUILT.path_in(DEMO_SESSIONS)))
    assert value_at(read, "session.opened") <= value_at(read, "session.closed")
    evenarc("check", record, answers=0, says="✓ STEERS TRUE")
    return record


def re_measure(files, size):
    """The same vehicle lifted, measured again, with a plan that was chosen."""
    answers = fg_1.LIFTED.answers
    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("✓ steers true")
    terminal.press("down", "F6")
    Session(terminal, answers).go_on_to("file")
    terminal.press("enter")
    terminal.wait_for("filed, and read back")
    terminal.press("F9")
    assert terminal.ended() == 0
    (record,) = files.glob("FG-1/*re-measure*.toml")
    return record


def evenarc(*arguments, answers, says):
    """Run a command, and hold it to its exit code and to what it says first."""
    ran = subprocess.run(
        [*installed(), *map(str, arguments)],
        check=False,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert ran.returncode == answers, ran.stderr
    assert says in ran.stdout
    assert not ran.stderr
