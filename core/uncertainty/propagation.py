"""Propagation of the uncertainty of the readings to the results.

Linear propagation with covariances (GUM, JCGM 100:2008, 5.2.2) serves where a result is as good
as linear in the pivots. The peak over the working travel is not; its uncertainty is drawn on the
full model (Monte Carlo, JCGM 101:2008).
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from core.kinematics.linkage import Array, Linkage
from core.kinematics.pivots import pivots_of
from core.statistics.random_numbers import standard_normal

SCALARS = ("arm", "pitman_arm", "near_arm", "joint_from_far_ball", "hub_height")
"""Parameters of a linkage other than its pivots."""

PORTION = 1_000
"""Drawn geometries computed at a time."""

STEP = 1e-3
"""Half the span of a central difference, mm; its error is some 1e-9 of the derivative."""


@dataclass(frozen=True, eq=False)
class MeasuredLinkage:
    """A measured linkage: its parameters with their covariance.

    Parameters are the pivots' x, y, z in turn, then SCALARS; all mm.

    Attributes
    ----------
    linkage : Linkage
        No leading axes.
    covariance : array (K, K)
        mm2.
    """

    linkage: Linkage
    covariance: Array

    def draw(self, count: int, seed: int) -> Linkage:
        """A linkage of `count` geometries drawn with the covariance of the measured one.

        `count` is even, and much larger than the number of parameters.
        """
        return with_parameters(self.linkage, self._drawn(count, seed))

    def draw_portions(self, count: int, seed: int) -> Iterator[Linkage]:
        """The same geometries in portions that stay in the fast memory."""
        drawn = self._drawn(count, seed)
        for start in range(0, count, PORTION):
            yield with_parameters(self.linkage, drawn[start : start + PORTION])

    def _drawn(self, count: int, seed: int) -> Array:
        """Drawn parameters, array (count, K)."""
        sure = parameters(self.linkage)
        doubtful = np.flatnonzero(np.diag(self.covariance) > 0)
        values, vectors = np.linalg.eigh(self.covariance[np.ix_(doubtful, doubtful)])
        # The symmetric root: of equal readings the vectors themselves are any that the machine
        # chooses, and the same readings have to give the same answer on every machine.
        root = vectors * np.sqrt(np.maximum(values, 0.0)) @ vectors.T
        normal = standard_normal((len(root), count // 2), seed)
        # Made to have the covariance that they only nearly have: u is then twice as sure.
        nearly = np.linalg.cholesky(normal @ normal.T / (count // 2))
        spread = np.linalg.solve(nearly.T, root.T).T @ normal
        # Half of the draws mirror the other half about the measured geometry, which takes the
        # sampling error out of everything that is as good as linear. One parameter a row: what
        # follows works on all draws of one coordinate at a time.
        drawn = np.empty((len(sure), count))
        drawn[:] = sure[:, None]
        drawn[doubtful, : count // 2] += spread
        drawn[doubtful, count // 2 :] -= spread
        return drawn.T

    def gradient(self, result: Callable[[Linkage], Array]) -> Array:
        """Derivative of a result with each parameter.

        Parameters
        ----------
        result : callable
            Takes a Linkage with one leading axis (n,) and gives an array (n, ...).

        Returns
        -------
        array (K, ...)
        """
        there = np.asarray(result(self._nudged))
        count = len(there) // 2
        return np.asarray((there[:count] - there[count:]) / (2 * STEP))

    @cached_property
    def _nudged(self) -> Linkage:
        """The linkage with each parameter in turn a step larger, then each a step smaller."""
        centre = parameters(self.linkage)
        steps = STEP * np.eye(len(centre))
        return with_parameters(self.linkage, np.concatenate([centre + steps, centre - steps]))

    def u(self, gradient: Array) -> Array:
        """Standard uncertainty of results with this gradient (K, ...), array (...)."""
        variance = np.einsum("i...,ij,j...->...", gradient, self.covariance, gradient)
        return np.asarray(np.sqrt(np.maximum(variance, 0.0)))


def parameters(linkage: Linkage) -> Array:
    """The parameters of a linkage, array (..., K), mm."""
    pivots = [linkage.pivot(name) for name in pivots_of(linkage.layout)]
    scalars = [np.asarray(getattr(linkage, name), dtype=float)[..., None] for name in SCALARS]
    shape = np.broadcast_shapes(*(part.shape[:-1] for part in pivots + scalars))
    return np.concatenate(
        [np.broadcast_to(part, (*shape, part.shape[-1])) for part in pivots + scalars], axis=-1
    )


def with_parameters(linkage: Linkage, values: Array) -> Linkage:
    """The linkage with other parameters, array (..., K), mm."""
    names = pivots_of(linkage.layout)
    pivots = {name: values[..., 3 * i : 3 * i + 3] for i, name in enumerate(names)}
    scalars = {name: values[..., 3 * len(names) + i] for i, name in enumerate(SCALARS)}
    return replace(linkage.with_pivots(pivots), **scalars)  # type: ignore[arg-type]
