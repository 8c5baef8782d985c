"""The program knows every entry that it writes itself."""

import tomllib

from core.documents.document import with_value
from core.sessions.known_entries import unknown_names
from wizard.locations import DEMO_SESSIONS
from wizard.questions.steps import QUESTIONS


def test_no_demo_session_has_an_unknown_entry():
    for path in DEMO_SESSIONS.glob("*/*.toml"):
        assert unknown_names(tomllib.loads(path.read_text("utf-8"))) == ()


def test_every_question_has_a_known_path():
    for question in QUESTIONS.values():
        if question.is_answered_by_a_value:
            answer = [] if question.path == "readings.guide.castor" else "x"
            assert unknown_names(with_value({}, question.path, answer)) == ()
