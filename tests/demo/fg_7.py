"""FG-7: leaf springs, a drag link along the frame, no track bar. Invented.

The pitman arm of another truck was fitted. Its ball stands too high for the spring's own centre of
motion.
"""

from tests.demo.typed import (
    STANCE,
    WALK_ROUND,
    TypedSession,
    guide_pivot,
    kingpin,
    pivot,
    vehicle,
    wheels,
)

FORE_AFT = TypedSession(
    id="FG-7_20260901-101520_first_j4p6",
    opened="2026-09-01T10:15:20+02:00",
    closed="2026-09-01T10:58:31+02:00",
    answers={
        **vehicle(
            "FG-7",
            "invented: tracked-trailer tug on leaf springs",
            "61205 km",
            "leaf-fore-aft",
            "steers-when-held",
            "pulls-under-braking",
        ),
        **WALK_ROUND,
        **STANCE,
        "stance.ride_height.left": "19 1/2",
        "stance.ride_height.right": "19 7/16",
        "layout.steering": "fore-aft",
        "layout.arm": "inboard",
        "layout.pitman": "down",
        "layout.track_bar": False,
        "layout.guide": "leaf",
        "layout.steering_box": "left",
        "layout.ball": "above",
        "session.units": "in",
        **pivot("drag_link.frame", "22 15/16; 23", "12 1/16", "21"),
        **pivot("drag_link.axle", "20 1/16; 20 1/8", "11 1/16", "1/8"),
        **wheels("16 1/2", "6", "68"),
        "readings.drag_link.length": "21 1/4",
        "readings.drag_link.bent": False,
        "readings.drag_link.slope": "8",
        **guide_pivot("eye", "19 1/16", "25 15/16"),
        **guide_pivot("seat", "18", "0"),
        "readings.guide.span": "32",
        "readings.guide.castor": "4 at 0; 4 at 2",
        **kingpin("4"),
        "readings.steering.arm": "6 1/4",
        "readings.steering.pitman_arm": "8",
        "readings.steering.ratio": "20",
        "readings.travel.bump": "4",
        "readings.travel.droop": "4 1/2",
        "vehicle.wheelbase": "118",
        "session.note": "The arm came from another truck.",
    },
    plan=("pitman arm with more drop",),
)

SESSIONS = (FORE_AFT,)
