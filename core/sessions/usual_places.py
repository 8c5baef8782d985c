"""Usual places of the pivots, where photographs show them and no tape was laid.

A height is about the middle of the profile's usual range, with its half-width. So are the
stations of a drag link that runs fore and aft. A reading takes the place of such a value.
A record keeps these values in [assumed] and [assumed_within], as it keeps every value that was not
measured.
"""

from math import sqrt

from core.documents.entries import EntryError, quantity_at
from core.kinematics.pivots import DRAG_LINK_ENDS, Layout, pivots_of
from core.sessions.dimensions import Dimension
from core.sessions.sourced import Sources


def usual_places(sources: Sources, layout: Layout, has_track_bar: bool) -> dict[str, Dimension]:
    """Usual places by the name of the reading, "track_bar.frame.height".

    Parameters
    ----------
    sources : Sources
    layout : Layout
    has_track_bar : bool

    Raises
    ------
    core.documents.entries.EntryError
        An entry of [assumed] or [assumed_within] is faulty.
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    names = [f"{pivot}.height" for pivot in pivots_of(layout, has_track_bar)]
    if layout == Layout.FORE_AFT:
        names += [f"{pivot}.station" for pivot in DRAG_LINK_ENDS]
    return {name: _usual(sources, name) for name in names}


def _usual(sources: Sources, name: str) -> Dimension:
    """Value in the document, else the middle of the profile's usual range with its half-width."""
    value, within = (
        quantity_at(sources.document, f"{table}.{name}", sources.parse_length, "20 in")
        for table in ("assumed", "assumed_within")
    )
    if value is None or within is None:
        smallest, largest = sources.profile().ranges[name]
        value = (smallest + largest) / 2 if value is None else value
        within = (largest - smallest) / 2 if within is None else within
    if within <= 0:
        raise EntryError(f"assumed_within.{name}", 'should be more than 0, such as "6 in"')
    return Dimension(name, value, within / sqrt(3), is_assumed=True)
