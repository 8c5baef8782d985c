"""FG-2: the drag link re-mounted above the steering arm, the track bar not moved. Invented.

Moving one link without the other makes bump steer (common practice, no source).
"""

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

RE_MOUNTED = TypedSession(
    id="FG-2_20261006-101003_first_t6b5",
    opened="2026-10-06T10:10:03+02:00",
    closed="2026-10-06T10:58:21+02:00",
    answers={
        **vehicle(
            "FG-2",
            "invented: plough truck, drag link re-mounted above the arm",
            "41870 km",
            "coil-crossover",
            "steers-when-held",
            "wheel-turns-when-released",
            "wanders",
        ),
        "complaint.note": "Since the drag link was re-mounted to clear the plough frame.",
        **WALK_ROUND,
        **STANCE,
        "stance.ride_height.left": "21 3/16",
        "stance.ride_height.right": "21 1/4",
        **layout("knuckle"),
        "layout.ball": "above",
        **pivot("track_bar.frame", "20; 20", "23 3/16", "2 3/8"),
        **pivot("track_bar.axle", "15 1/4; 15 5/16", "55 15/16", "2 15/16"),
        **pivot("drag_link.frame", "23 9/16; 23 1/2", "20", "8 7/16"),
        **pivot("drag_link.axle", "20 9/16; 20 5/8", "58", "6 3/16"),
        **wheels("16 7/16", "6", "68"),
        **link("track_bar", "33 1/8", "8.5"),
        **link("drag_link", "38 3/16", "4.5"),
        "readings.guide.castor": "6 at 0; 6.5 at 2",
        **kingpin("5"),
        "readings.steering.arm": "6 1/4",
        "readings.steering.pitman_arm": "6 1/4",
        "readings.travel.bump": "3 3/4",
        "readings.travel.droop": "4 1/2",
        "vehicle.wheelbase": "112",
    },
    plan=("track bar bracket raised at the axle",),
)

SESSIONS = (RE_MOUNTED,)
