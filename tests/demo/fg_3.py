"""FG-3: readings that do not close; the braces show which one is wrong. Invented.

By its pivots the truck steers true. The track bar's axle end is 20 1/4 in high and was read 2 in
too high. Without the braces the shop would have bought a bracket for nothing. The truck wanders
all the same: the direct check shows that a bush gives.
"""

from tests.demo.typed import (
    STANCE,
    TECHNICIAN,
    WALK_ROUND,
    TypedSession,
    board_check,
    kingpin,
    layout,
    link,
    pivot,
    vehicle,
    wheels,
)

NOT_CLOSING = TypedSession(
    id="FG-3_20260929-150744_first_r2d9",
    opened="2026-09-29T15:07:44+02:00",
    closed="2026-09-29T16:02:30+02:00",
    answers={
        **vehicle(
            "FG-3",
            "invented: stretcher truck, readings do not close",
            "27350 km",
            "coil-tie-rod",
            "wanders",
        ),
        **WALK_ROUND,
        **STANCE,
        "stance.ride_height.left": "20 3/4",
        "stance.ride_height.right": "20 3/4",
        **layout("tie-rod"),
        **pivot("track_bar.frame", "24 9/16", "21 15/16", "2 1/16"),
        **pivot("track_bar.axle", "22 1/4", "55", "2 7/8"),
        **pivot("drag_link.frame", "21 3/16", "19 7/16", "10 5/8"),
        **pivot("drag_link.axle", "16 3/4", "52", "7 5/8"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "33 5/16", "7"),
        **link("drag_link", "32 15/16", "7.5"),
        "readings.braces.frame_ends": "9 3/8",
        "readings.braces.axle_ends": "6 7/16",
        "readings.braces.frame_to_axle": "31 3/8",
        "readings.guide.castor": "6 at 0; 6.5 at 2",
        **kingpin("5"),
        "readings.steering.arm": "6 1/4",
        "readings.steering.pitman_arm": "6 1/4",
        "readings.travel.bump": "4",
        "readings.travel.droop": "4 1/2",
        "vehicle.wheelbase": "112",
        "session.note": "Called out before the height could be read again.",
    },
    reasons={
        "readings.track_bar.slope": "laid on three times, same reading each time",
        "readings.braces.axle_ends": "tape held straight by two people, same reading each time",
    },
)

MENDED = TypedSession(
    id="FG-3_20260930-081502_re-measure_k5d2",
    opened="2026-09-30T08:15:02+02:00",
    closed="2026-09-30T08:31:44+02:00",
    follows=NOT_CLOSING.id,
    answers={
        **{
            path: answer
            for path, answer in NOT_CLOSING.answers.items()
            if path.startswith(("walk_round.", "stance.", "readings."))
        },
        "vehicle.description": "invented: stretcher truck, slip mended",
        "session.technician": TECHNICIAN,
        "complaint.reported": ["wanders"],
        "session.altered": [],
        "session.note": "The height was read again: it was misread by 2 in the day before.",
    },
    reasons=NOT_CLOSING.reasons,
    mends=True,
)
"""The day after: the slip that the program named is mended."""

SOFT_BUSH = TypedSession(
    id="FG-3_20261002-132040_re-measure_b7s3",
    opened="2026-10-02T13:20:40+02:00",
    closed="2026-10-02T14:26:12+02:00",
    follows=MENDED.id,
    answers={
        **{
            path: answer
            for path, answer in MENDED.answers.items()
            if path.startswith(("walk_round.", "stance.", "readings."))
        },
        "readings.track_bar.axle.height": "20 1/4",
        "vehicle.description": "invented: stretcher truck, soft bush at the track bar",
        "session.technician": TECHNICIAN,
        "complaint.reported": ["wanders"],
        "session.altered": [],
        "session.note": "It still wanders, so the steer was measured on the jack.",
    },
    direct=board_check(
        "left",
        ("31", "12 3/8", "12 3/8"),
        ("30", "12 1/4", "12 1/2"),
        ("29", "12 1/16", "12 5/8"),
        ("28", "11 7/8", "12 3/4"),
        ("32", "12 1/2", "12 1/4"),
        ("33", "12 5/8", "12 1/8"),
        ("34", "12 13/16", "12 1/16"),
        ("31", "12 3/8", "12 3/8"),
    ),
)
"""Two days later: its pivots are sound, yet the wheels steer with the travel."""

SESSIONS = (NOT_CLOSING, MENDED, SOFT_BUSH)
