"""Whole sessions in a real terminal: typed by keys, killed, resumed, filed, read back.

The answers are those of the first truck of the demo, which is invented.
"""

import re
import signal
import subprocess
from collections.abc import Mapping
from types import MappingProxyType

import pytest

from core.documents.document import value_at, with_value
from core.documents.record import read_document
from core.profiles.profile import profile_names
from tests.demo import fg_1, fg_2
from tests.terminal.terminal import Terminal, installed
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.questions.question import Question
from wizard.questions.short_way import SHORT_STEPS, tick_values
from wizard.questions.steps import STEPS
from wizard.questions.walk_round import CAUTIONS

pytestmark = pytest.mark.skipif(
    not hasattr(signal, "SIGKILL"), reason="this system has no pseudo-terminals"
)

SMALLEST, LARGE = (80, 24), (120, 40)
QUESTIONS = {
    question.path: question
    for step in (*STEPS, *SHORT_STEPS)
    for question in step.questions
    if question.path != "enough"
}
RESULT_SCREENS = {
    "It is decided": "enough",
    "1 verdict": "verdict",
    "before beside after": "compare",
    "fewest parts first": "fix",
    "nothing is to be done": "fix",
}
"""Words that only one screen with a result shows, and the name of the screen."""


class Session:
    """A session that is taken through the wizard by its keys.

    Parameters
    ----------
    terminal : Terminal
    answers : mapping
        Answers by the path of the question; other questions are skipped.
    reasons : mapping
        Reasons for keeping queried answers, by the path of the question.
    """

    def __init__(
        self,
        terminal: Terminal,
        answers: Mapping[str, object],
        reasons: Mapping[str, str] = MappingProxyType({}),
    ) -> None:
        self.terminal = terminal
        self.answers = answers
        self.reasons = reasons

    @property
    def place(self) -> str | None:
        """Path of the question on the screen, or name of the screen with a result."""
        lines = re.sub("[\u2800-\u28ff]", " ", self.terminal.text).splitlines()  # no picture
        text, left_half = (
            " ".join(" ".join(line[:columns] for line in lines).split())
            for columns in (None, self.terminal.screen.columns // 2)  # beside the picture
        )
        for words, name in RESULT_SCREENS.items():
            if words in text:
                return name
        for path, question in QUESTIONS.items():
            if question.ask in text or question.ask in left_half:
                return path
        return None

    def answer_until(self, path: str) -> None:
        """Answer one question after the other until one is reached."""
        place = self.terminal.until(lambda: self.place)
        while place != path:
            self.terminal.press(*self.keys(place))
            if place in self.reasons:
                self.terminal.wait_for("F5 keep it")
                self.terminal.press("F5")
                self.terminal.wait_for("keep it for this reason")
                self.terminal.press(self.reasons[place], "enter")
            before = place
            place = self.terminal.until(
                lambda before=before: self.place if self.place not in (None, before) else None
            )

    def keys(self, place: str) -> tuple[str, ...]:
        """Keys to press at a place; a question without an answer is skipped."""
        question = QUESTIONS.get(place)
        if question is None or not question.is_answered_by_a_value:
            return ("enter",)
        if place not in self.answers:
            return ("F4",)
        answer = self.answers[place]
        if question.kind == "profile":
            return (str(profile_names([PROFILES]).index(str(answer)) + 1), "enter")
        if question.choices:
            return keys_of_choice(question, answer)
        return (str(answer), "enter")


def keys_of_choice(question: Question, answer: object) -> tuple[str, ...]:
    """Numbers of the chosen lines, and Enter after them."""
    wanted = answer if isinstance(answer, list) else [answer]
    choices = enumerate(question.choices, 1)
    numbers = [str(number) for number, choice in choices if choice.value in wanted]
    return (*numbers, "enter")


def answers_in(document):
    """Answers of the technician in a document, without ids and times."""
    tables = ("vehicle", "complaint", "walk_round", "stance", "layout", "instruments", "readings")
    session = {
        key: value_at(document, f"session.{key}")
        for key in ("kind", "technician", "units", "profile", "note", "altered")
    }
    return {"session": session} | {key: document.get(key) for key in tables}


class ShortSession(Session):
    """The same on the short way, whose sheets are ticked by letters."""

    def keys(self, place: str) -> tuple[str, ...]:
        """Keys to press at a place; on a sheet a sound line is ticked by its letter."""
        for step in SHORT_STEPS:
            ticked = [each.path for each in step.questions if tick_values(each)]
            if step.is_sheet and place in ticked and place != CAUTIONS:
                lines = [path for path in ticked if path != CAUTIONS]
                letter = "abcdefghij"[lines.index(place)]
                return (letter, "enter") if place == lines[-1] else (letter,)
        return super().keys(place)


def test_a_short_session_in_the_smallest_terminal(tmp_path):
    answers = {
        path: answer
        for path, answer in fg_2.RE_MOUNTED.answers.items()
        if not path.startswith("instruments.") and path != "session.units"
    }
    terminal = Terminal("--files", str(tmp_path / "files"), size=SMALLEST)
    terminal.wait_for("Nothing is filed here yet")
    terminal.press("enter")
    ShortSession(terminal, answers).answer_until("enough")
    assert "so far ✗ bump steer" in terminal.text
    terminal.press("enter")
    terminal.wait_for("peak steer")
    terminal.press("F9")
    terminal.wait_for("is kept, unfinished")
    terminal.press("F9")
    assert terminal.ended() == 0


@pytest.mark.parametrize("size", [SMALLEST, LARGE])
def test_a_sheet_is_typed_in_as_a_table(tmp_path, size):
    files = tmp_path / "files"
    answers = {
        path: answer
        for path, answer in fg_2.RE_MOUNTED.answers.items()
        if not path.startswith("instruments.") and path != "session.units"
    }
    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("Nothing is filed here yet")
    terminal.press("enter")
    ShortSession(terminal, answers).answer_until("readings.track_bar.frame.height")
    terminal.press("Ctrl+T")
    terminal.wait_for("Ctrl+T questions")
    ends = [f"{link}.{end}" for link in ("track_bar", "drag_link") for end in ("frame", "axle")]
    for end in ends[:2]:
        type_line(terminal, answers, end)
    terminal.press("2 3")
    terminal.wait_for(" 2 3")
    terminal.kill()
    (draft,) = (files / "unfinished").glob("*.toml")
    assert readings_in(draft) == typed(answers, ends[:2])

    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("unfinished, go on")
    terminal.press("enter")
    terminal.wait_for("how high is it above")
    terminal.press("Ctrl+T")
    terminal.wait_for("Ctrl+T questions")
    for end in ends[2:]:
        type_line(terminal, answers, end)
    terminal.press("Ctrl+T")
    terminal.wait_for("Ctrl+T table")
    assert readings_in(draft) == typed(answers, ends)
    terminal.press("F9")
    terminal.wait_for("is kept, unfinished")
    terminal.press("F9")
    assert terminal.ended() == 0


def type_line(terminal, answers, end):
    """Type a line of the table: height, offset, station. Its cells show the first characters."""
    for coordinate in ("height", "offset", "station"):
        reading = answers[f"readings.{end}.{coordinate}"]
        terminal.press(reading)
        terminal.wait_for(f" {reading}")
        terminal.press("enter")
        terminal.wait_for(f"✓{reading[:6]}")


def readings_in(draft):
    """Readings of the links' ends in a draft, by their paths."""
    links = value_at(read_document(draft), "readings")
    return {
        f"{link}.{end}.{coordinate}": reading
        for link in ("track_bar", "drag_link")
        for end in ("frame", "axle")
        for coordinate, reading in links.get(link, {}).get(end, {}).items()
    }


def typed(answers, ends):
    """Readings of some ends as they were typed, in inches."""
    return {
        f"{end}.{coordinate}": [
            f"{text} in" for text in answers[f"readings.{end}.{coordinate}"].split("; ")
        ]
        for end in ends
        for coordinate in ("height", "offset", "station")
    }


def test_a_session_in_the_smallest_terminal(tmp_path):
    first_session(tmp_path / "files", SMALLEST)


def test_a_vehicle_from_an_empty_folder_to_the_re_measure(tmp_path):
    files = tmp_path / "files"
    filed = first_session(files, LARGE)
    again = re_measure(files, LARGE)
    read = read_document(again)
    lifted = answers_in(read_document(fg_1.LIFTED.path_in(DEMO_SESSIONS)))
    assert answers_in(read) == with_value(
        lifted, "vehicle.description", fg_1.AS_BUILT.answers["vehicle.description"]
    )
    assert value_at(read, "session.follows") == value_at(read_document(filed), "session.id")
    assert value_at(read, "plan.moves")
    evenarc("check", again, exit_code=1, output="✗ BUMP STEER")
    evenarc("compare", filed, again, exit_code=1, output="✗ NOT SHOWN")
    evenarc("fix", again, "--json", exit_code=0, output='"plans": [{')


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_a_signal_ends_the_program_and_removes_the_demo(tmp_path, monkeypatch, number):
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    terminal = Terminal("demo", size=SMALLEST)
    terminal.wait_for("FG-6")
    assert list(tmp_path.iterdir())
    terminal.child.kill(number)
    assert terminal.ended() == 0
    assert not list(tmp_path.iterdir())


def test_a_key_that_is_no_text_ends_the_program_with_one_line(tmp_path):
    terminal = Terminal("--files", str(tmp_path), size=LARGE)
    terminal.wait_for("Nothing is filed here yet")
    terminal.child.send(b"\xb0")
    terminal.wait_for("a fault in the program")
    assert "Traceback" not in terminal.text
    assert terminal.ended() == 2


def first_session(files, size):
    """File a first session; the program is killed on the way. Returns the record."""
    answers = fg_1.AS_BUILT.answers
    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("Nothing is filed here yet")
    terminal.press("enter")
    terminal.wait_for("long way")
    terminal.press("Ctrl+L")
    terminal.wait_for("short way")
    session = Session(terminal, answers)
    session.answer_until("readings.drag_link.axle.height")
    terminal.press("17 3")
    terminal.wait_for("17 3")
    terminal.kill()
    (draft,) = (files / "unfinished").glob("*.toml")
    kept = read_document(draft)
    assert value_at(kept, "readings.drag_link.frame.station") == [
        f"{answers['readings.drag_link.frame.station']} in"
    ]
    assert value_at(kept, "readings.drag_link.axle") is None

    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("unfinished, go on")
    terminal.press("enter")
    session = Session(terminal, answers)
    assert terminal.until(lambda: session.place) == "readings.drag_link.axle.height"
    session.answer_until("file")
    terminal.press("enter")
    terminal.wait_for("filed, and read back")
    terminal.press("F9")
    assert terminal.ended() == 0

    (record,) = files.glob("FG-1/*.toml")
    assert not list((files / "unfinished").iterdir())
    read = read_document(record)
    assert answers_in(read) == answers_in(read_document(fg_1.AS_BUILT.path_in(DEMO_SESSIONS)))
    assert value_at(read, "session.opened") <= value_at(read, "session.closed")
    evenarc("check", record, exit_code=0, output="✓ STEERS TRUE")
    return record


def re_measure(files, size):
    """File a re-measure of the vehicle, lifted, with a plan. Returns the record."""
    answers = fg_1.LIFTED.answers
    terminal = Terminal("--files", str(files), size=size)
    terminal.wait_for("✓ steers true")
    terminal.press("down", "F6")
    terminal.wait_for("long way")
    terminal.press("Ctrl+L")
    terminal.wait_for("short way")
    Session(terminal, answers, fg_1.LIFTED.reasons).answer_until("file")
    terminal.press("enter")
    terminal.wait_for("filed, and read back")
    terminal.press("F9")
    assert terminal.ended() == 0
    (record,) = files.glob("FG-1/*re-measure*.toml")
    return record


def evenarc(*arguments, exit_code, output):
    """Run a command, and check its exit code and its output."""
    ran = subprocess.run(
        [*installed(), *map(str, arguments)],
        check=False,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert ran.returncode == exit_code, ran.stderr
    assert output in ran.stdout
    assert not ran.stderr
