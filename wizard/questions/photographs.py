"""Photographs: a screen of its own asks for the marks."""

from wizard.questions.means import is_photographed
from wizard.questions.question import Question, Step

STEP = Step(
    "Photographs",
    "Where pivots, hubs and tyres are in the pictures.",
    (
        Question(
            "photographs",
            "show",
            "Photographs",
            "The photographs",
            "Choose the pictures, and mark the centres of pivots, hubs and tyre contacts in them.",
            is_asked=is_photographed,
        ),
        Question(
            "readings.wheels.track",
            "length",
            "Track",
            "How far apart are the middles of the front treads?",
            "Tape across in front of the axle, from the middle of one tread to the middle of the "
            "other, at the floor.",
            "One length sets the scale of the photographs. The parallel angle does not need it.",
            optional=True,
            repeats=True,
            assumed="wheels.track",
            examples=("62", "1575"),
            is_asked=is_photographed,
        ),
    ),
)
