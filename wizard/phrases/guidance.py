"""The guidance of a question: its own, or the cautions where those are to be read."""

from wizard.phrases.cautions import CAUTION_LINES
from wizard.questions.question import Question
from wizard.questions.walk_round import CAUTIONS


def guidance_of(question: Question) -> str:
    """Guidance of a question: the action, and the way of the tape."""
    return CAUTION_LINES if question.path == CAUTIONS else question.guidance
