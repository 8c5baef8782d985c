"""FG-1: as built, then lifted with nothing corrected, then fixed and measured again. Invented.

The truck has radius arms. The lift leaves its two links nearly parallel, but the arms turn the
axle, and the drag link is no longer square to the path of its ball.
"""

from tests.demo.typed import (
    STANCE,
    TECHNICIAN,
    WALK_ROUND,
    TypedSession,
    board_check,
    guide_pivot,
    kingpin,
    layout,
    link,
    pivot,
    vehicle,
    wheels,
)

AS_BUILT = TypedSession(
    id="FG-1_20261013-080512_first_c7h2",
    opened="2026-10-13T08:05:12+02:00",
    closed="2026-10-13T08:47:40+02:00",
    answers={
        **vehicle("FG-1", "invented: crew carrier as built", "18240 km", "coil-crossover"),
        **WALK_ROUND,
        **STANCE,
        "stance.ride_height.left": "20 1/8",
        "stance.ride_height.right": "20 1/16",
        **layout("knuckle", guide="radius-arms"),
        **pivot("track_bar.frame", "19 3/4; 19 11/16", "22 7/16", "3 1/8"),
        **pivot("track_bar.axle", "15 5/16; 15 1/4", "55 9/16", "2 7/16"),
        **pivot("drag_link.frame", "23 5/8; 23 9/16", "19 1/16", "8 7/8"),
        **pivot("drag_link.axle", "18 7/16; 18 9/16", "57", "6 3/8"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "33 7/16", "7.5"),
        **link("drag_link", "38 5/16", "7.5"),
        **guide_pivot("frame", "16 15/16", "-36"),
        "readings.guide.span": "34",
        **kingpin("5.5"),
        "readings.steering.arm": "6",
        "readings.steering.pitman_arm": "6 1/4",
        "readings.steering.ratio": "16",
        "readings.travel.bump": "4",
        "readings.travel.droop": "4 1/2",
        "vehicle.wheelbase": "112",
        "session.note": "Measured before the lift, to compare with later.",
    },
    decision=("signed", "2026-10-13T11:30:00+02:00", "Kept as the reference for this truck."),
)

LIFTED = TypedSession(
    id="FG-1_20261103-093048_re-measure_m4x8",
    opened="2026-11-03T09:30:48+01:00",
    closed="2026-11-03T10:12:05+01:00",
    follows=AS_BUILT.id,
    answers={
        "vehicle.description": "invented: crew carrier, only lifted by 5 in",
        "session.technician": TECHNICIAN,
        "vehicle.odometer": "19115 km",
        "complaint.reported": ["steers-when-held", "pulls-under-braking"],
        "complaint.note": "Steers to the left by itself at every bridge joint since the long "
        "springs.",
        "session.altered": ["ride_height"],
        **WALK_ROUND,
        **STANCE,
        "stance.ride_height.left": "25 1/8",
        "stance.ride_height.right": "25 1/16",
        **pivot("track_bar.frame", "24 3/4; 24 3/4", "22 7/16", "3 9/16"),
        **pivot("track_bar.axle", "14 13/16; 14 7/8", "55 1/2", "2 5/16"),
        **pivot("drag_link.frame", "28 5/8; 28 11/16", "19 1/16", "9 3/8"),
        **pivot("drag_link.axle", "17 1/2; 17 9/16", "56 15/16", "6 5/8"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "34 9/16", "16.5"),
        **link("drag_link", "39 11/16", "16.5"),
        **guide_pivot("frame", "21 7/8", "-35 9/16"),
        "readings.guide.span": "34",
        **kingpin("-2.5"),
        "readings.travel.bump": "4",
        "readings.travel.droop": "4 1/2",
    },
    reasons={"readings.kingpin.castor": "the lift turned the axle; read again on the sheet"},
    plan=("pitman arm with more drop",),
    decision=("signed", "2026-11-03T13:05:00+01:00", "Go ahead with the arm."),
)

FIXED = TypedSession(
    id="FG-1_20261110-141530_re-measure_w9q3",
    opened="2026-11-10T14:15:30+01:00",
    closed="2026-11-10T14:52:11+01:00",
    follows=LIFTED.id,
    answers={
        "vehicle.description": "invented: crew carrier, pitman arm with more drop",
        "session.technician": TECHNICIAN,
        "vehicle.odometer": "19121 km",
        "complaint.reported": [],
        "session.altered": ["drag_link.frame", "lengths"],
        **WALK_ROUND,
        **STANCE,
        "stance.ride_height.left": "25 1/8",
        "stance.ride_height.right": "25 1/8",
        **pivot("track_bar.frame", "24 3/4; 24 13/16", "22 7/16", "3 3/8"),
        **pivot("track_bar.axle", "14 7/8; 14 7/8", "55 5/8", "2 3/16"),
        **pivot("drag_link.frame", "27 3/4; 27 5/8", "19 1/16", "9 5/16"),
        **pivot("drag_link.axle", "17 5/8; 17 5/8", "57 1/8", "6 3/4"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "34 5/8", "16.5"),
        **link("drag_link", "39 5/16", "15"),
        "readings.steering.pitman_arm": "6 1/4",
        "session.note": "Alignment set and road-tested after this.",
    },
    decision=("signed", "2026-11-10T16:20:00+01:00", ""),
)

MEASURED = TypedSession(
    id="FG-1_20261117-090210_re-measure_d5t8",
    opened="2026-11-17T09:02:10+01:00",
    closed="2026-11-17T10:05:37+01:00",
    follows=FIXED.id,
    answers={
        **{
            path: answer
            for path, answer in FIXED.answers.items()
            if path.startswith(("walk_round.", "stance.", "readings."))
        },
        "vehicle.description": "invented: crew carrier, steer measured on the jack",
        "session.technician": TECHNICIAN,
        "vehicle.odometer": "19480 km",
        "complaint.reported": [],
        "session.altered": [],
        "session.note": "Springs out, steer read with the board while the axle was jacked.",
    },
    direct=board_check(
        "left",
        ("30 1/2", "12 1/16", "12 1/8"),
        ("29 1/2", "12 1/16", "12 1/8"),
        ("28 1/2", "12 1/8", "12 1/4"),
        ("27 1/2", "12 1/16", "12 1/4"),
        ("31 1/2", "12 1/16", "12 1/8"),
        ("32 1/2", "12 1/16", "12 3/16"),
        ("33 1/2", "12", "12 3/16"),
        ("30 1/2", "12 1/16", "12 1/8"),
    ),
)
"""A week later: the wheels themselves do what the pivots say."""

SESSIONS = (AS_BUILT, LIFTED, FIXED, MEASURED)
