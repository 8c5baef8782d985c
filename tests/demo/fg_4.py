"""FG-4: too close to call; the advice names the readings that settle it. Invented."""

from tests.demo.typed import (
    STANCE,
    WALK_ROUND,
    TypedSession,
    kingpin,
    layout,
    pivot,
    vehicle,
    wheels,
)

CLOSE = TypedSession(
    id="FG-4_20260922-131920_first_n5v4",
    opened="2026-09-22T13:19:20+02:00",
    closed="2026-09-22T13:51:08+02:00",
    answers={
        **vehicle(
            "FG-4",
            "invented: supply truck on high steering arms",
            "9460 km",
            "high-steer",
            "steers-when-held",
        ),
        **WALK_ROUND,
        **STANCE,
        **layout("knuckle"),
        **pivot("track_bar.frame", "26 1/2", "22 15/16", "2 3/8"),
        **pivot("track_bar.axle", "22 1/16", "55 1/2", "1 7/16"),
        **pivot("drag_link.frame", "30 13/16", "20 7/16", "8 1/2"),
        **pivot("drag_link.axle", "26 5/16", "59 1/16", "7 1/8"),
        **wheels("18 1/4", "5 15/16", "68"),
        "readings.track_bar.bent": False,
        "readings.track_bar.slope": "7.5",
        "readings.drag_link.bent": False,
        "readings.drag_link.slope": "6.5",
        **kingpin("5"),
        "readings.steering.arm": "7",
        "readings.travel.bump": "5",
        "readings.travel.droop": "5 1/2",
    },
)

SESSIONS = (CLOSE,)
