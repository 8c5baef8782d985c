"""The first step: which vehicle, who measures it, and what its driver reports."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from core.documents.record import SessionKind
from wizard.questions.question import Choice, Question, Step

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def is_re_measure(document: Document, _profile: Profile | None) -> bool:
    """True if the session follows an earlier one."""
    return bool(value_at(document, "session.kind") == SessionKind.RE_MEASURE)


STEP = Step(
    "Vehicle",
    "Which vehicle it is, and what its driver has noticed.",
    (
        Question(
            "vehicle.tag",
            "text",
            "Tag",
            "What is the vehicle called in the shop?",
            "Type its fleet tag, in letters, digits and dashes: FG-3. All sessions of one vehicle "
            "are kept in a folder of this name.",
            "With the same tag every time, the sessions of a vehicle stay together and can be "
            "compared.",
            picture="front",
        ),
        Question(
            "vehicle.description",
            "text",
            "Description",
            "What kind of vehicle is it?",
            "A few words that tell it from the others: body, wheels, lift. The tag need not be "
            "repeated.",
            "Who opens the session later should know which vehicle stood on the floor.",
            optional=True,
        ),
        Question(
            "session.technician",
            "text",
            "Technician",
            "Who takes the readings?",
            "The name or initials your shop signs with.",
            "The lead can then ask you about the session.",
        ),
        Question(
            "vehicle.odometer",
            "text",
            "Odometer",
            "What does the odometer show?",
            "As it is displayed, with its unit: 48210 km.",
            "Wear between two sessions depends on distance, not on date.",
            optional=True,
        ),
        Question(
            "session.profile",
            "profile",
            "Profile",
            "Which kind of axle and steering is it?",
            "Look under the front: which springs, and where the drag link goes. Take the nearest "
            "profile. Wheels that are sprung one by one have no solid axle: Evenarc is not for "
            "them.",
            "The profile has the usual range of every reading, the limits of the verdict, "
            "and a value for every reading that you skip.",
        ),
        Question(
            "complaint.reported",
            "any of",
            "Driver reports",
            "What does the driver report?",
            "Space ticks a line, Enter goes on. Nothing ticked means that nothing was reported.",
            "Measured bump steer should match the driver's report. If it does not, look further.",
            choices=(
                Choice("steers-when-held", "a bump steers it, with the wheel held"),
                Choice("wheel-turns-when-released", "the steering wheel turns by itself"),
                Choice("pulls-under-braking", "it pulls to a side under braking"),
                Choice("wanders", "it wanders"),
                Choice("wheel-off-centre", "the steering wheel stands off centre"),
                Choice("shimmy", "the front wheels shake (shimmy)"),
            ),
        ),
        Question(
            "complaint.note",
            "text",
            "In their words",
            "What did they say about it?",
            "The driver's own words, in short: when, where, at what speed.",
            "A note is still there at the re-measure; spoken words are not.",
            optional=True,
        ),
        Question(
            "session.altered",
            "any of",
            "Altered since",
            "What was altered since the earlier session?",
            "Space ticks a line, Enter goes on. Tick everything that was moved, changed or re-set, "
            "whoever did it.",
            "Pivots that nobody moved have to lie as before. "
            "They show that both sessions are right. After the verdict, the direct check lets the "
            "road wheels themselves show the fix.",
            choices=(
                Choice("track_bar.frame", "track bar's frame end"),
                Choice("track_bar.axle", "track bar's axle end"),
                Choice("drag_link.frame", "pitman arm or drag link's frame end"),
                Choice("drag_link.axle", "steering arm or drag link's axle end"),
                Choice("ride_height", "ride height: springs, load or tyres"),
                Choice("lengths", "a bar was re-set in length or replaced"),
            ),
            is_asked=is_re_measure,
        ),
    ),
)
