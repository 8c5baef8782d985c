"""FG-6: a heavy truck with sound geometry, held back by a worn joint. Invented."""

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

WORN_JOINT = TypedSession(
    id="FG-6_20260908-070216_first_y3g7",
    opened="2026-09-08T07:02:16+02:00",
    closed="2026-09-08T08:01:44+02:00",
    answers={
        **vehicle(
            "FG-6",
            "invented: heavy recovery truck, worn joint",
            "88610 km",
            "heavy-truck",
            "steers-when-held",
            "wanders",
        ),
        **WALK_ROUND,
        "walk_round.steering_wheel_diameter": "460 mm",
        "walk_round.rim_play": "50 mm",
        "walk_round.rim_size": "20 in",
        "walk_round.linkage_play": "5 mm",
        "walk_round.joints.drag_link_axle": "loose",
        **STANCE,
        "stance.ride_height.left": "612 mm",
        "stance.ride_height.right": "609 mm",
        **layout("knuckle", "mm", guide="leaf"),
        **pivot("track_bar.frame", "690; 691", "641", "58"),
        **pivot("track_bar.axle", "541; 542", "1600", "43"),
        **pivot("drag_link.frame", "801; 799", "561", "296"),
        **pivot("drag_link.axle", "614; 614", "1719", "190"),
        **wheels("506", "150", "2150"),
        **link("track_bar", "972", "9"),
        **link("drag_link", "1181", "9"),
        "readings.guide.castor": "6 at 0; 6.5 at 50",
        **kingpin("5"),
        "readings.steering.arm": "205",
        "readings.steering.pitman_arm": "210",
        "readings.steering.ratio": "20",
        "vehicle.wheelbase": "4250",
        "session.note": "Ball at the far knuckle clicks when the wheel is rocked.",
    },
    reasons={
        "walk_round.joints.drag_link_axle": "felt and heard; new ball joint is ordered",
    },
    decision=("returned", "2026-09-08T09:15:00+02:00", "Joint first, then measure again."),
)

SESSIONS = (WORN_JOINT,)
