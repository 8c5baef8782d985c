"""Answers: every question gets nonsense; it is taken, queried or refused in one line."""

import random
from pathlib import Path
from typing import Any

import tomli_w

from core.entry_checks.outcome import Queried, Refused
from tests.abuse.nonsense import TEXTS, VALUES
from tests.abuse.tally import Tally
from tests.wizard.tui.driving import answered_until
from wizard.flow import drafts
from wizard.flow.answering import answer_question, keep_queried
from wizard.flow.flow import Flow
from wizard.locations import PROFILES


def attack(count: int, folder: Path) -> Tally:
    """Give `count` nonsense answers, each to a question by chance."""
    tally, chance = Tally(), random.Random(3)
    folder.mkdir(exist_ok=True)
    begun = answered_until(Flow(drafts.new_session(drafts.now())), "file")
    for _ in range(count):
        flow = begun.going_to(chance.choice(begun.asked).path)
        if not flow.question.is_answered_by_a_value:
            continue
        given: Any = chance.choice(TEXTS)
        if flow.question.kind == "any of" or chance.random() < 0.2:
            given = [given, chance.choice(TEXTS)]
        elif chance.random() < 0.2:
            given = chance.choice([value for value in VALUES if isinstance(value, bool | str)])
        tally.tried += 1
        _answer(tally, flow, given, folder)
    return tally


def _answer(tally: Tally, flow: Flow, given: Any, folder: Path) -> None:
    place = f"{flow.question.path} = {given!r:.80}"
    try:
        outcome = answer_question(flow, given, [PROFILES], folder)
        if isinstance(outcome, Queried):
            tally.expect(outcome.message.isprintable(), f"{place}: {outcome.message!r}")
            outcome = keep_queried(flow, outcome.value, "seen\x1b[31m")
        if isinstance(outcome, Refused):
            tally.expect(outcome.message.isprintable(), f"{place}: {outcome.message!r}")
        else:
            tomli_w.dumps(dict(outcome.document))
    except Exception as error:
        tally.faults.append(f"{place}: {error!r}")
