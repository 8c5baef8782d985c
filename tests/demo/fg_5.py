"""FG-5: an inverted-Y linkage; its toe changes with travel. Invented."""

from tests.demo.typed import (
    STANCE,
    WALK_ROUND,
    TypedSession,
    kingpin,
    layout,
    link,
    pivot,
    vehicle,
    wheels,
)

TOE = TypedSession(
    id="FG-5_20260915-084655_first_f8k6",
    opened="2026-09-15T08:46:55+02:00",
    closed="2026-09-15T09:40:17+02:00",
    answers={
        **vehicle(
            "FG-5",
            "invented: command truck, tie rod on the drag link",
            "33020 km",
            "coil-inverted-y",
            "wanders",
            "pulls-under-braking",
        ),
        "complaint.note": "Wears its front tyres at the inner edge.",
        **WALK_ROUND,
        **STANCE,
        "stance.ride_height.left": "20 1/2",
        "stance.ride_height.right": "20 1/2",
        **layout("inverted-y"),
        **pivot("track_bar.frame", "24 3/4; 24 3/4", "23", "2 7/8"),
        **pivot("track_bar.axle", "20 3/4; 20 13/16", "56", "1 7/8"),
        **pivot("drag_link.frame", "22 3/16; 22 1/4", "20 1/16", "9 1/2"),
        **pivot("drag_link.axle", "17 7/16; 17 7/16", "60 1/16", "6 3/8"),
        **pivot("tie_rod.near", "17; 17", "13 1/16", "6 3/8"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "33 1/4", "7"),
        **link("drag_link", "40 3/8", "7"),
        "readings.guide.castor": "6 at 0; 6.5 at 2",
        **kingpin("5"),
        "readings.steering.arm": "6 1/2",
        "readings.steering.pitman_arm": "6",
        "readings.tie_rod.joint_from_far_ball": "9",
        "readings.tie_rod.near_arm": "6 1/2",
        "readings.travel.bump": "4",
        "readings.travel.droop": "4 1/2",
        "vehicle.wheelbase": "116",
    },
)

SESSIONS = (TOE,)
