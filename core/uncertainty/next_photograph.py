"""Advice where photographs are too close to call: a reading, one more photograph, or the tape.

Each candidate is tried on the normal matrix of the adjustment, before anything is taken. A further
photograph shows every point that is marked already, from a place beside an earlier camera.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import sqrt

import numpy as np

from core.adjustment.camera import FOCAL, NEAREST, PLACE, UNKNOWNS, project
from core.adjustment.least_squares import Adjustment
from core.adjustment.marks import MARKING_WITHIN, AdjustedCamera, Network
from core.adjustment.observation import Observations, predict
from core.adjustment.photograph_priors import camera_prior
from core.kinematics.vectors import Array
from core.readings.photograph import HUBS
from core.readings.reading import Instruments, Reading, claimed_uncertainty
from core.readings.survey import LINKS, SURVEY, WHEELS
from core.sessions.dimensions import TRACK
from core.sessions.session import Session
from core.statistics.conformity import magnitude_ruling
from core.text.quantity import INCH
from core.uncertainty.next_reading import (
    NOT_READ,
    Advice,
    ContestedRuling,
    Viewpoint,
    is_settled,
)
from core.uncertainty.propagation import MeasuredLinkage, parameter_names

HUB_HEIGHT = "wheels.hub_height"

SIDESTEP = 24 * INCH
"""Distance of a further camera from an earlier one, mm."""

FAR_BETTER = 1.5
"""Factor by which the tape has to take away more doubt than one reading or photograph."""


@dataclass(frozen=True)
class _Candidate:
    """Advice with the part of each contested variance that it takes away."""

    advice: Advice
    gains: tuple[float, ...]


def advice_with_photographs(
    session: Session,
    adjustment: Adjustment,
    measured: MeasuredLinkage,
    contested: Sequence[ContestedRuling],
) -> Advice:
    """The least further work that would settle a verdict, or the work that is worth most.

    A reading comes before a photograph, and a photograph before the tape.

    Parameters
    ----------
    session : Session
    adjustment : Adjustment
        With photographs.
    measured : MeasuredLinkage
    contested : sequence of ContestedRuling
    """
    trials = _Trials(session, adjustment, measured, contested)

    def worth(candidate: _Candidate) -> float:
        variances = [each.ruling.u**2 or 1.0 for each in contested]
        return sum(gain / u for gain, u in zip(candidate.gains, variances, strict=True))

    kinds = [
        sorted(kind, key=worth, reverse=True)
        for kind in (trials.of_readings(), trials.of_photographs(), trials.of_the_tape())
    ]
    for kind in kinds:
        for candidate in kind:
            if trials.settles(candidate):
                return candidate.advice
    best = max((kind[0] for kind in kinds[:2] if kind), key=worth, default=kinds[2][0])
    if worth(kinds[2][0]) > FAR_BETTER * worth(best):
        best = kinds[2][0]
    return Advice((), 0, best.advice.skipped, False, best.advice.photograph, best.advice.tape)


@dataclass(frozen=True, eq=False)
class _Trials:
    session: Session
    adjustment: Adjustment
    measured: MeasuredLinkage
    contested: Sequence[ContestedRuling]

    @property
    def network(self) -> Network:
        """All points and cameras."""
        assert self.adjustment.network is not None
        return self.adjustment.network

    @cached_property
    def gradients(self) -> Array:
        """Derivatives of the contested values by the unknowns of the network, array (c, n)."""
        network, names = self.network, parameter_names(self.measured.linkage)
        coordinates = self.adjustment.points.size
        gradients = np.zeros((len(self.contested), len(network.unknowns)))
        for row, each in zip(gradients, self.contested, strict=True):
            row[:coordinates] = each.gradient[:coordinates]
            for hub in HUBS:
                row[network.rows(hub).stop - 1] += each.gradient[names.index(HUB_HEIGHT)] / 2
        return gradients

    def settles(self, candidate: _Candidate) -> bool:
        """True if the verdict is settled where the new readings agree with the old ones."""
        decisions = []
        for each, gain in zip(self.contested, candidate.gains, strict=True):
            ruling = each.ruling
            u = sqrt(max(ruling.u**2 - gain, 0.0))
            decisions.append(magnitude_ruling(ruling.value, u, ruling.limit).verdict)
        return is_settled(decisions)

    def of_readings(self) -> Iterator[_Candidate]:
        """One reading that nobody took, of the pivots, the wheels or another dimension."""
        for name, (row, u) in self._rows().items():
            gains = self._gains(row[None] / u)
            yield _Candidate(Advice((), 0, (name,)), gains)
        by_ruling = [self.measured.variances(each.gradient) for each in self.contested]
        in_network = len(self.adjustment.sources)
        for i, source in enumerate(self.measured.sources[in_network:], in_network):
            if source.is_assumed and source.name not in (*NOT_READ, HUB_HEIGHT):
                gains = tuple(float(variances[i]) for variances in by_ruling)
                yield _Candidate(Advice((), 0, (source.name,)), gains)

    def of_photographs(self) -> Iterator[_Candidate]:
        """One more photograph from a place to the left, to the right, above or below a camera."""
        for camera in self.adjustment.cameras:
            for right, up in ((-1, 0), (1, 0), (0, 1), (0, -1)):
                view = Viewpoint(camera.photograph.number, right * SIDESTEP, up * SIDESTEP)
                information = self._information(camera, view)
                if information is not None:
                    gains = self._gains_of(information)
                    yield _Candidate(Advice((), 0, photograph=view), gains)

    def of_the_tape(self) -> Iterator[_Candidate]:
        """Heights of all pivots, and length and slope of each link."""
        rows = [
            row / u
            for name, (row, u) in self._rows().items()
            if name in SURVEY and not name.endswith(".station")
        ]
        gains = self._gains(np.array(rows)) if rows else tuple(0.0 for _ in self.contested)
        yield _Candidate(Advice((), 0, tape=True), gains)

    def _rows(self) -> dict[str, tuple[Array, float]]:
        """Derivatives (n,) of readings that nobody took, with their u, by name."""
        network, instruments = self.network, self.session.instruments
        taken = {item.name for item in self.adjustment.items}
        pivots = self.adjustment.pivots
        names = [f"{pivot}.{kind}" for kind in ("height", "station") for pivot in pivots]
        names += [
            f"{link}.{kind}"
            for kind in ("length", "slope")
            for link in LINKS
            if f"{link}.frame" in pivots
        ]
        rows = {}
        for name in names:
            if name not in taken:
                rows[name] = _row(name, network, instruments)
        left, right = (network.rows(hub) for hub in HUBS)
        dimensions = self.session.dimensions
        if dimensions[HUB_HEIGHT].is_assumed:
            row = np.zeros(len(network.unknowns))
            row[[left.stop - 1, right.stop - 1]] = 0.5
            rows[HUB_HEIGHT] = row, claimed_uncertainty(WHEELS[HUB_HEIGHT], instruments)
        if TRACK in dimensions and dimensions[TRACK].is_assumed:
            row = np.zeros(len(network.unknowns))
            row[left.start + 1], row[right.start + 1] = 1.0, -1.0
            rows[TRACK] = row, claimed_uncertainty("length", instruments)
        return rows

    def _gains(self, design: Array) -> tuple[float, ...]:
        """Variance that further observations take from each contested value."""
        return self._gains_of(design.T @ design)

    def _gains_of(self, information: Array) -> tuple[float, ...]:
        """The same from the information (n, n) that they add to the normal matrix."""
        cofactor = self.network.cofactor
        reached = self.gradients @ cofactor
        # (N + I)^-1 = C - C I (1 + C I)^-1 C.
        inner = np.linalg.solve(np.eye(len(cofactor)) + cofactor @ information, reached.T)
        return tuple(np.einsum("cn,nc->c", reached @ information, inner).tolist())

    def _information(self, near: AdjustedCamera, view: Viewpoint) -> Array | None:
        """Information about the points from a photograph beside another; None if it sees badly."""
        network = self.network
        count = len(network.points)
        points = network.unknowns[: 3 * count].reshape(-1, 3)
        marked = sorted({network.points.index(mark.point) for mark in self.adjustment.marks})
        unknowns = near.unknowns.copy()
        unknowns[PLACE] += (0.0, view.right, view.up)
        if unknowns[2] < SIDESTEP / 4:
            return None
        seen = project(np.tile(unknowns, (len(marked), 1)), points[marked])
        if (seen.depth < NEAREST).any():
            return None
        sighting = unknowns[FOCAL] * self.session.instruments.sighting / seen.depth
        u = np.hypot(MARKING_WITHIN * near.photograph.width, sighting) / sqrt(3)
        by_point = (seen.by_point / u[:, None, None]).reshape(-1, 3)
        by_camera = (seen.by_camera / u[:, None, None]).reshape(-1, UNKNOWNS)
        _, u_camera = camera_prior(near.photograph, 0.0, 0.0)
        design = np.zeros((2 * len(marked), len(network.unknowns)))
        for i, point in enumerate(marked):
            rows = slice(2 * i, 2 * i + 2)
            design[rows, 3 * point : 3 * point + 3] = by_point[rows]
        # The camera's own unknowns are eliminated.
        normal = by_camera.T @ by_camera + np.diag(1 / u_camera**2)
        mixed = by_camera.T @ design
        return np.asarray(design.T @ design - mixed.T @ np.linalg.solve(normal, mixed))


def _row(name: str, network: Network, instruments: Instruments) -> tuple[Array, float]:
    """Derivatives (n,) of a reading of the survey by the unknowns, and its u."""
    kind = SURVEY[name]
    size = 3 * len(network.points)
    observations = Observations.of([Reading(name, kind, (0.0,))], network.points)
    row = np.zeros(len(network.unknowns))
    row[:size] = predict(observations, network.unknowns[:size])[1][0]
    return row, claimed_uncertainty(kind, instruments)
