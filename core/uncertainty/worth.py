"""Worth of a reading that was not taken: what it would take away of the doubt of some results.

The model is linear, as in the budget. A reading of the survey is one more observation of the
pivots; a dimension that is read takes the place of its assumed value.
"""

import numpy as np

from core.adjustment.least_squares import DELTA_0, Adjustment
from core.adjustment.observation import NOTHING_REDUNDANT, Observations, predict
from core.kinematics.vectors import Array
from core.readings.reading import Instruments, Kind, Reading, claimed_uncertainty
from core.readings.survey import SURVEY, ends_of
from core.sessions.dimensions import READ
from core.uncertainty.next_reading import NOT_READ
from core.uncertainty.propagation import MeasuredLinkage

CASTOR_RISE = 50.0
"""Difference of the two heights at which castor is usually read, mm."""


def readings_left(adjustment: Adjustment, measured: MeasuredLinkage) -> tuple[str, ...]:
    """Names of the readings that were not taken: of the survey first, then the assumed values."""
    taken = {item.name for item in adjustment.items}
    survey = (
        name
        for name in SURVEY
        if name not in taken and set(ends_of(name)) <= set(adjustment.pivots)
    )
    assumed = (
        source.name
        for source in measured.sources
        if source.is_assumed and source.name not in (*NOT_READ, *SURVEY)
    )
    return (*survey, *assumed)


def variances_taken(
    adjustment: Adjustment,
    measured: MeasuredLinkage,
    instruments: Instruments,
    gradients: Array,
    name: str,
) -> Array:
    """Part of the variance of some results that one further reading would take away, array (R,).

    Parameters
    ----------
    adjustment : Adjustment
    measured : MeasuredLinkage
    instruments : Instruments
    gradients : array (K, R)
        Derivatives of the results with respect to each parameter of the measured linkage.
    name : str
        A reading that was not taken, as `readings_left` has them.
    """
    if name in SURVEY:
        slopes, u = _as_observation(adjustment, instruments, name)
        spread = adjustment.covariance @ slopes
        of_pivots = gradients[: len(adjustment.covariance)]
        return np.asarray((of_pivots.T @ spread) ** 2 / (u**2 + slopes @ spread))
    index = next(i for i, source in enumerate(measured.sources) if source.name == name)
    u_assumed = float(np.abs(measured.influence[:, index]).max())
    u_read = _u_of_dimension(name, instruments)
    left = u_read**2 / (u_read**2 + u_assumed**2) if u_assumed else 1.0
    return np.asarray(measured.variances(gradients)[index] * (1 - left))


def hidden_mistake(
    adjustment: Adjustment, instruments: Instruments, gradients: Array, name: str, link: str
) -> float:
    """Largest effect of a mistake that a set with one further reading still would not reveal.

    The mistakes are those of a link's heights and offsets, each as large as its smallest mistake
    that the set would reveal (W. Baarda, 1968: external reliability).

    Parameters
    ----------
    adjustment : Adjustment
    instruments : Instruments
    gradients : array (K, R)
        Derivatives of the results, each divided by the limit of its result.
    name : str
        A reading of the survey that was not taken.
    link : str
        "track_bar" or "drag_link".

    Returns
    -------
    float
        In limits of the results; inf where a mistake would stay hidden however large.
    """
    slopes, u_further = _as_observation(adjustment, instruments, name)
    spread = adjustment.covariance @ slopes
    cofactor = adjustment.covariance - np.outer(spread, spread) / (u_further**2 + slopes @ spread)
    rows = [i for i, item in enumerate(adjustment.items) if _is_end_of(item.name, link)]
    u = np.array([adjustment.items[i].u for i in rows])
    # The design of the readings so far: sensitivity = covariance @ design.T / u^2.
    design = np.linalg.solve(adjustment.covariance, adjustment.sensitivity[:, rows] * u**2).T
    redundancy = 1 - np.einsum("ab,bc,ac->a", design, cofactor, design) / u**2
    if (redundancy < NOTHING_REDUNDANT).any():
        return float("inf")
    mistakes = DELTA_0 * u / np.sqrt(redundancy)
    of_pivots = gradients[: len(adjustment.covariance)]
    effects = np.abs(of_pivots.T @ cofactor @ design.T / u**2 * mistakes)
    return float(effects.max())


def _is_end_of(name: str, link: str) -> bool:
    """True for a height or an offset of an end of a link."""
    return name.startswith(f"{link}.") and name.endswith((".height", ".offset"))


def is_checked(adjustment: Adjustment, link: str, least: float) -> bool:
    """True if other readings would reveal a share of a mistake at an end of a link.

    Parameters
    ----------
    adjustment : Adjustment
    link : str
        "track_bar" or "drag_link".
    least : float
        Least redundancy number that counts, 0 to 1.
    """
    return any(
        item.redundancy_number > least
        for item in adjustment.items
        if set(ends_of(item.name)) <= {f"{link}.frame", f"{link}.axle"}
    )


def _as_observation(
    adjustment: Adjustment, instruments: Instruments, name: str
) -> tuple[Array, float]:
    """Derivatives (3 P,) of a further reading by the coordinates, and its u."""
    kind = SURVEY[name]
    observations = Observations.of([Reading(name, kind, (0.0,))], adjustment.pivots)
    _, jacobian = predict(observations, adjustment.points)
    return jacobian[0], claimed_uncertainty(kind, instruments)


def _u_of_dimension(name: str, instruments: Instruments) -> float:
    """Standard uncertainty of a dimension that is read once."""
    kind: Kind | None = READ.get(name)
    if kind is None:  # the ratio of the steering box is counted or known
        return 0.0
    if kind == "gain":  # by castor at two heights: see core.readings.guide_survey.pitch_gain_of
        return float(instruments.angle_finder / np.sqrt(12) * np.sqrt(2) / CASTOR_RISE)
    return claimed_uncertainty(kind, instruments)
