"""Readings by the names the trade has for them."""

from collections.abc import Iterable

from core.entry_checks import reading_names as names
from core.readings.photograph import PHOTOGRAPHS
from core.readings.survey import COORDINATES, LINKS
from wizard.phrases.amounts import listed
from wizard.phrases.mark_names import photograph_name

LINK_NAMES = {**{link: names.PLACES[link] for link in LINKS}, "tie_rod": "tie rod"}
"""Names of the links."""

END_NAMES = {"frame": "frame end", "axle": "axle end", "near": "near ball"}
"""Names of the ends of a link; a picture without room names an end by its key."""


def name_of_reading(name: str) -> str:
    """A reading in words; a name that a record made up is shown as it stands."""
    try:
        if name.startswith(f"{PHOTOGRAPHS}."):
            return photograph_name(name)
        return names.reading_name(name)
    except KeyError:
        return name


def name_of_pivot(pivot: str) -> str:
    """A pivot in words."""
    return names.PLACES.get(pivot, pivot)


def names_of_readings(readings: Iterable[str]) -> str:
    """Several readings in words, those of one kind together: "stations of the … and …"."""
    by_kind: dict[str, list[str]] = {}
    for name in readings:
        place, _, kind = name.rpartition(".")
        is_of_a_place = place in names.PLACES and kind in (*COORDINATES, "length", "slope")
        by_kind.setdefault(kind if is_of_a_place else "", []).append(name)
    said = []
    for kind, of_kind in by_kind.items():
        if kind and len(of_kind) > 1:
            places = [name_of_pivot(name.rpartition(".")[0]) for name in of_kind]
            said.append(f"{kind}s of the {listed(places)}")
        else:
            said += [name_of_reading(name) for name in of_kind]
    return listed(said)
