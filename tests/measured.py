"""Sessions of known linkages, with their adjusted pivots and their measured linkage."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

import numpy as np

from core.adjustment.least_squares import Adjustment
from core.kinematics.linkage import Linkage
from core.sessions.session import Session
from core.uncertainty.measured_linkage import adjusted, measured_linkage
from core.uncertainty.propagation import MeasuredLinkage, Source
from tests.geometries import document_of, session_of, true_readings


class MeasuredSession(NamedTuple):
    """A session with the results that a verdict starts from."""

    session: Session
    adjustment: Adjustment
    measured: MeasuredLinkage


def measure(
    linkage: Linkage, readings: Mapping[str, float | Iterable[float]] | None = None
) -> MeasuredSession:
    """A session on a linkage; without readings it has every true reading."""
    read = true_readings(linkage) if readings is None else readings
    return measure_session(session_of(document_of(linkage, read)))


def measure_session(session: Session) -> MeasuredSession:
    """A session with its adjustment and its measured linkage."""
    adjustment = adjusted(session)
    return MeasuredSession(session, adjustment, measured_linkage(session, adjustment))


def with_covariance(linkage: Linkage, covariance: np.ndarray) -> MeasuredLinkage:
    """A measured linkage whose parameters have this covariance."""
    values, vectors = np.linalg.eigh(covariance)
    influence = vectors * np.sqrt(np.maximum(values, 0.0))
    sources = tuple(Source(f"source {i}", is_assumed=False) for i in range(len(covariance)))
    return MeasuredLinkage(linkage, sources, influence)
