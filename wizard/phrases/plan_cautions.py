"""Cautions of a plan: clearance, and the cautions of its parts."""

from collections.abc import Iterator

from core.fix.plan import Plan
from core.kinematics.pivots import GUIDE_PIVOTS
from core.text.plain_text import plain
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_pivot

CLEARANCE = {
    "track_bar.frame": "bar and bracket against axle housing, cover, sump and exhaust at full "
    "bump. Against the drag link, lock to lock",
    "track_bar.axle": "bar and bracket against frame, spring, sump and drag link at full bump. "
    "Against the wheel, lock to lock",
    "drag_link.frame": "pitman arm and ball against frame, spring and axle at full bump and full "
    "droop, lock to lock. The ball must not run out of its angle",
    "drag_link.axle": "drag link and arm against frame, spring and track bar at full bump. Against "
    "wheel and brake, lock to lock. The ball must not run out of its angle",
    **dict.fromkeys(
        (pivot for pivots in GUIDE_PIVOTS.values() for pivot in pivots),
        "arm or spring against frame, axle and wheel at full bump and full droop, lock to lock",
    ),
}
"""Where a moved pivot can touch (common practice, no source)."""


def clearance_facts(plan: Plan) -> Iterator[Fact]:
    """Clearance to check for each moved pivot, and the caution of each correction."""
    for pivot in plan.moved:
        yield Fact("clearance", f"{name_of_pivot(pivot)}: {CLEARANCE[pivot]}.", LOOK)
    for correction in dict.fromkeys(plan.corrections):
        if correction.caution:
            name = plain(correction.name)
            yield Fact("caution", f"{name}: {plain(correction.caution, 600)}", LOOK)
