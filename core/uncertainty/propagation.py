"""Propagation of the uncertainty of a measured linkage to its results.

A result that is nearly linear in the pivots takes linear propagation with covariances (GUM,
JCGM 100:2008, 5.2.2). The peak over the working travel is not linear: it takes a Monte Carlo
(JCGM 101:2008) on the full model.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from core.kinematics.linkage import Array, Linkage
from core.kinematics.pivots import pivots_of
from core.statistics.random_numbers import standard_normal

SCALARS = ("arm", "pitman_arm", "near_arm", "joint_from_far_ball", "hub_height")
"""Lengths that are measured beside the pivots: attributes of a linkage."""

PORTION = 1_000
"""Drawn geometries that are computed at a time."""

HALF_SPAN = 1e-3
"""Half the span of a central difference, mm. Its error is some 1e-9 of the derivative."""


@dataclass(frozen=True, eq=False)
class MeasuredLinkage:
    """A measured linkage with the covariance of its parameters.

    The K parameters are x, y and z of each pivot in turn, then SCALARS; all in mm.

    Attributes
    ----------
    linkage : Linkage
        Without leading axes.
    covariance : array (K, K)
        mm2.
    """

    linkage: Linkage
    covariance: Array

    def draw(self, count: int, seed: int) -> Linkage:
        """A linkage of `count` geometries, drawn from the covariance of the measured one.

        Parameters
        ----------
        count : int
            An even number, much larger than the number of parameters.
        seed : int
        """
        return with_parameters(self.linkage, self._drawn(count, seed))

    def draw_portions(self, count: int, seed: int) -> Iterator[Linkage]:
        """The same geometries as `draw`, in portions that stay in the processor's cache."""
        drawn = self._drawn(count, seed)
        for start in range(0, count, PORTION):
            yield with_parameters(self.linkage, drawn[start : start + PORTION])

    def _drawn(self, count: int, seed: int) -> Array:
        """Drawn parameters, array (count, K)."""
        measured = parameters(self.linkage)
        uncertain = np.flatnonzero(np.diag(self.covariance) > 0)
        values, vectors = np.linalg.eigh(self.covariance[np.ix_(uncertain, uncertain)])
        # Equal eigenvalues leave the choice of eigenvectors to the machine. The symmetric root
        # does not depend on that choice, so the draws are the same on every machine.
        root = vectors * np.sqrt(np.maximum(values, 0.0)) @ vectors.T
        normal = standard_normal((len(root), count // 2), seed)
        # The draws are scaled to have exactly the covariance: u then has half the sampling error.
        sampled_root = np.linalg.cholesky(normal @ normal.T / (count // 2))
        spread = np.linalg.solve(sampled_root.T, root.T).T @ normal
        # Half of the draws mirror the other half about the measured geometry. That removes the
        # sampling error from every result that is nearly linear. Each parameter is one row,
        # because the model works on all draws of one coordinate at a time.
        drawn = np.empty((len(measured), count))
        drawn[:] = measured[:, None]
        drawn[uncertain, : count // 2] += spread
        drawn[uncertain, count // 2 :] -= spread
        return drawn.T

    def gradient(self, result: Callable[[Linkage], Array]) -> Array:
        """Derivative of a result with respect to each parameter, by central differences.

        Parameters
        ----------
        result : callable
            Takes a Linkage with one leading axis (n,) and returns an array (n, ...).

        Returns
        -------
        array (K, ...)
        """
        results = np.asarray(result(self._stepped))
        count = len(results) // 2
        return np.asarray((results[:count] - results[count:]) / (2 * HALF_SPAN))

    @cached_property
    def _stepped(self) -> Linkage:
        """The linkage with each parameter in turn a step larger, then each a step smaller."""
        centre = parameters(self.linkage)
        steps = HALF_SPAN * np.eye(len(centre))
        return with_parameters(self.linkage, np.concatenate([centre + steps, centre - steps]))

    def standard_uncertainty(self, gradient: Array) -> Array:
        """Standard uncertainty of results, array (...).

        Parameters
        ----------
        gradient : array (K, ...)
            Derivative of the results with respect to each parameter.
        """
        variance = np.einsum("i...,ij,j...->...", gradient, self.covariance, gradient)
        return np.asarray(np.sqrt(np.maximum(variance, 0.0)))


def parameters(linkage: Linkage) -> Array:
    """The parameters of a linkage (see `MeasuredLinkage`), array (..., K), mm."""
    pivots = [linkage.pivot(name) for name in pivots_of(linkage.layout)]
    scalars = [np.asarray(getattr(linkage, name), dtype=float)[..., None] for name in SCALARS]
    shape = np.broadcast_shapes(*(part.shape[:-1] for part in pivots + scalars))
    return np.concatenate(
        [np.broadcast_to(part, (*shape, part.shape[-1])) for part in pivots + scalars], axis=-1
    )


def with_parameters(linkage: Linkage, values: Array) -> Linkage:
    """The linkage with other parameters, an array (..., K), mm."""
    names = pivots_of(linkage.layout)
    pivots = {name: values[..., 3 * i : 3 * i + 3] for i, name in enumerate(names)}
    scalars = {name: values[..., 3 * len(names) + i] for i, name in enumerate(SCALARS)}
    return replace(linkage.with_pivots(pivots), **scalars)  # type: ignore[arg-type]
