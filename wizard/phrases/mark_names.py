"""Marks in photographs, and what photographs assume, by the names the trade has for them."""

from core.entry_checks.reading_names import PLACES
from core.readings.photograph import CONTACTS, HUBS, OWN_POINTS, PLUMB

POINTS = {
    **PLACES,
    **dict(zip(HUBS, ("left hub", "right hub"), strict=True)),
    **dict(zip(CONTACTS, ("left tyre's contact", "right tyre's contact"), strict=True)),
    **dict(zip(PLUMB, ("plumb line's top", "plumb line's bottom"), strict=True)),
    **{point: f"own point {number}" for number, point in enumerate(OWN_POINTS, start=1)},
}
"""Points that can be marked."""

_ASSUMED = {
    "photographs.wheels": "place of the wheels in the photographs",
    "photographs.plumb": "hang of the plumb line",
    "photographs.anywhere": "place of the own points",
}


def photograph_name(name: str) -> str:
    """A mark or an assumption of the photographs in words: "mark of … in photograph 1".

    Raises
    ------
    KeyError
        No photograph has such a name.
    """
    if name in _ASSUMED:
        return _ASSUMED[name]
    number, _, point = name.removeprefix("photographs.").partition(".")
    if point == "camera":
        return f"camera of photograph {number}"
    return f"mark of the {POINTS[point]} in photograph {number}"
