"""FG-1: as built, lifted with nothing corrected, put right and measured again. Invented."""

from tests.demo.typed import STANDS, TIGHT, Typed, laid_out, link, pivot, vehicle, wheels

AS_BUILT = Typed(
    id="FG-1_20261013-080512_first_c7h2",
    opened="2026-10-13T08:05:12+02:00",
    closed="2026-10-13T08:47:40+02:00",
    answers={
        **vehicle("FG-1", "invented: crew carrier as built", "18240 km", "coil-crossover"),
        **TIGHT,
        **STANDS,
        "stance.ride_height.left": "20 1/8",
        "stance.ride_height.right": "20 1/16",
        **laid_out("knuckle"),
        **pivot("track_bar.frame", "19 3/4; 19 13/16", "22 7/16", "3 1/8"),
        **pivot("track_bar.axle", "15 1/4; 15 1/4", "55 9/16", "2 1/2"),
        **pivot("drag_link.frame", "23 1/4; 23 3/16", "19 1/16", "9"),
        **pivot("drag_link.axle", "18 1/2; 18 9/16", "57", "6 1/2"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "33 1/4", "7.5"),
        **link("drag_link", "38 5/16", "7"),
        "readings.steering.arm": "6",
        "readings.steering.pitman_arm": "6 1/4",
        "readings.steering.ratio": "16",
        "readings.travel.bump": "4",
        "readings.travel.droop": "4 1/2",
        "vehicle.wheelbase": "112",
        "session.note": "Measured before the lift, so that there is a before.",
    },
    decision=("signed", "2026-10-13T11:30:00+02:00", "Kept as the reference for this truck."),
)

LIFTED = Typed(
    id="FG-1_20261103-093048_re-measure_m4x8",
    opened="2026-11-03T09:30:48+01:00",
    closed="2026-11-03T10:12:05+01:00",
    follows=AS_BUILT.id,
    answers={
        "vehicle.description": "invented: crew carrier, only lifted by 5 in",
        "vehicle.odometer": "19115 km",
        "complaint.reported": ["steers-when-held", "pulls-under-braking"],
        "complaint.note": "Darts to the left over every bridge joint since the long springs.",
        "session.altered": ["ride_height"],
        **TIGHT,
        **STANDS,
        "stance.ride_height.left": "25 1/8",
        "stance.ride_height.right": "25 1/16",
        **pivot("track_bar.frame", "24 11/16; 24 3/4", "22 9/16", "2 7/8"),
        **pivot("track_bar.axle", "15 1/4; 15 5/16", "55 7/16", "2 3/8"),
        **pivot("drag_link.frame", "28 3/16; 28 1/4", "19", "8 7/8"),
        **pivot("drag_link.axle", "18 1/2; 18 1/2", "57", "6 9/16"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "34 7/16", "16"),
        **link("drag_link", "39 5/16", "14"),
        "readings.travel.bump": "4",
        "readings.travel.droop": "4 1/2",
    },
    plan=("track bar bracket raised at the axle",),
    decision=("signed", "2026-11-03T13:05:00+01:00", "Go ahead with the bracket."),
)

FIXED = Typed(
    id="FG-1_20261110-141530_re-measure_w9q3",
    opened="2026-11-10T14:15:30+01:00",
    closed="2026-11-10T14:52:11+01:00",
    follows=LIFTED.id,
    answers={
        "vehicle.description": "invented: crew carrier, bracket raised",
        "vehicle.odometer": "19121 km",
        "complaint.reported": [],
        "session.altered": ["track_bar.axle", "lengths"],
        **TIGHT,
        **STANDS,
        "stance.ride_height.left": "25 1/8",
        "stance.ride_height.right": "25 1/8",
        **pivot("track_bar.frame", "24 3/4; 24 13/16", "22 9/16", "2 15/16"),
        **pivot("track_bar.axle", "15 15/16; 16", "55 7/16", "2 5/8"),
        **pivot("drag_link.frame", "28 5/16; 28 1/4", "19", "8 15/16"),
        **pivot("drag_link.axle", "18 7/16; 18 1/2", "57", "6 1/2"),
        **wheels("16 1/2", "6", "68"),
        **link("track_bar", "34 1/4", "15"),
        **link("drag_link", "39 5/16", "14.5"),
        "session.note": "Alignment set and road-tested after this.",
    },
    decision=("signed", "2026-11-10T16:20:00+01:00", ""),
)

SESSIONS = (AS_BUILT, LIFTED, FIXED)
