"""The first step: which vehicle, who measures it, and what its driver reports."""

from __future__ import annotations

from typing import TYPE_CHECKING

from core.documents.document import Document, value_at
from wizard.questions.question import Choice, Question, Step

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def is_re_measure(document: Document, _profile: Profile | None) -> bool:
    """Whether the session follows an earlier one."""
    return bool(value_at(document, "session.kind") == "re-measure")


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
            "Typed the same way every time, its sessions stay together and before can be laid "
            "beside after.",
        ),
        Question(
            "vehicle.description",
            "text",
            "Description",
            "What kind of vehicle is it?",
            "A few words that tell it from the others: body, wheels, lift. No need to repeat the "
            "tag.",
            "Whoever opens the session later should know which one stood on the floor.",
            optional=True,
        ),
        Question(
            "session.technician",
            "text",
            "Technician",
            "Who takes the readings?",
            "The name or initials your shop signs with.",
            "The lead can ask you what was seen.",
        ),
        Question(
            "vehicle.odometer",
            "text",
            "Odometer",
            "What does the odometer show?",
            "As it stands there, with its unit: 48210 km.",
            "Wear between two sessions is told by distance, not by date.",
            optional=True,
        ),
        Question(
            "session.profile",
            "profile",
            "Profile",
            "Which kind of axle and steering is it?",
            "Look under the front: coil or leaf springs, and where the drag link goes. Take the "
            "nearest; it can be changed later and what you measured stays.",
            "The profile brings the usual range of every reading, the limits of the verdict and "
            "what is assumed when something is not measured.",
        ),
        Question(
            "complaint.reported",
            "any of",
            "Driver reports",
            "What does the driver report?",
            "Space ticks a line, Enter goes on. Nothing ticked means that nothing was reported.",
            "Bump steer that is measured should match what is felt. If it does not, look further.",
            choices=(
                Choice("steers-when-held", "a bump steers it, with the wheel held"),
                Choice("wheel-turns-when-released", "the steering wheel turns by itself"),
                Choice("pulls-under-braking", "it pulls to a side under braking"),
                Choice("wanders", "it wanders"),
            ),
        ),
        Question(
            "complaint.note",
            "text",
            "In their words",
            "What did they say about it?",
            "The driver's own words, as short as they can be: when, where, at what speed.",
            "What was said fades; what was written is there at the re-measure.",
            optional=True,
        ),
        Question(
            "session.altered",
            "any of",
            "Altered since",
            "What was altered since the earlier session?",
            "Space ticks a line, Enter goes on. Tick everything that was moved, changed or re-set, "
            "whoever did it.",
            "What nobody touched has to show the same shape as before: that is how the two "
            "sessions hold each other true.",
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
