"""Propagation of the uncertainty of a measured linkage to its results.

A result that is nearly linear in the pivots takes linear propagation with covariances (GUM,
JCGM 100:2008, 5.2.2). The peak over the working travel is not linear: it takes a Monte Carlo
(JCGM 101:2008) on the full model.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from core.kinematics.linkage import Linkage, scalars_of, with_scalars
from core.kinematics.vectors import Array
from core.statistics.random_numbers import standard_normal

PORTION = 1_000
"""Drawn geometries that are computed at a time."""

HALF_SPAN = 1e-3
"""Half the span of a central difference, in standard uncertainties of its parameter."""


@dataclass(frozen=True)
class Source:
    """A source of uncertainty: a reading, or a value that was assumed.

    Attributes
    ----------
    name : str
        Name of the reading, "steering.arm".
    is_assumed : bool
        True if nobody took that reading.
    """

    name: str
    is_assumed: bool


@dataclass(frozen=True, eq=False)
class MeasuredLinkage:
    """A measured linkage with the uncertainty of its parameters.

    The K parameters are x, y and z of each pivot in turn (mm), then the dimensions of
    `core.kinematics.linkage.scalars_of` (mm, rad or plain numbers).

    Attributes
    ----------
    linkage : Linkage
        Without leading axes.
    sources : tuple of n Source
    influence : array (K, n)
        Change of each parameter with one standard uncertainty of each source. The sources are
        independent, so the covariance is influence @ influence.T.
    """

    linkage: Linkage
    sources: tuple[Source, ...]
    influence: Array

    @cached_property
    def covariance(self) -> Array:
        """Covariance of the parameters, array (K, K)."""
        return np.asarray(self.influence @ self.influence.T)

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
        spans = (2 * self._steps).reshape(-1, *[1] * (results.ndim - 1))
        return np.asarray((results[:count] - results[count:]) / spans)

    @cached_property
    def _steps(self) -> Array:
        """Half the span of the difference of each parameter, array (K,)."""
        u = np.sqrt(np.diag(self.covariance))
        return np.asarray(HALF_SPAN * np.where(u > 0, u, 1.0))

    @cached_property
    def _stepped(self) -> Linkage:
        """The linkage with each parameter in turn a step larger, then each a step smaller."""
        centre = parameters(self.linkage)
        steps = np.diag(self._steps)
        return with_parameters(self.linkage, np.concatenate([centre + steps, centre - steps]))

    def standard_uncertainty(self, gradient: Array) -> Array:
        """Standard uncertainty of results, array (...).

        Parameters
        ----------
        gradient : array (K, ...)
            Derivative of the results with respect to each parameter.
        """
        return np.asarray(np.sqrt(self.variances(gradient).sum(axis=0)))

    def variances(self, gradient: Array) -> Array:
        """Part of the variance of results that each source contributes, array (n, ...).

        Parameters
        ----------
        gradient : array (K, ...)
            Derivative of the results with respect to each parameter.
        """
        return np.asarray(np.tensordot(self.influence.T, gradient, axes=1) ** 2)


def parameters(linkage: Linkage) -> Array:
    """The parameters of a linkage (see `MeasuredLinkage`), array (..., K)."""
    parts = [linkage.pivot(name) for name in linkage.pivots]
    parts += [np.asarray(value, dtype=float)[..., None] for value in scalars_of(linkage).values()]
    shape = np.broadcast_shapes(*(part.shape[:-1] for part in parts))
    return np.concatenate(
        [np.broadcast_to(part, (*shape, part.shape[-1])) for part in parts], axis=-1
    )


def parameter_names(linkage: Linkage) -> tuple[str, ...]:
    """Names of the parameters of a linkage: "track_bar.frame.x", "steering.arm"."""
    coordinates = (f"{pivot}.{axis}" for pivot in linkage.pivots for axis in "xyz")
    return (*coordinates, *scalars_of(linkage))


def with_parameters(linkage: Linkage, values: Array) -> Linkage:
    """The linkage with other parameters, an array (..., K)."""
    names = linkage.pivots
    pivots = {name: values[..., 3 * i : 3 * i + 3] for i, name in enumerate(names)}
    start = 3 * len(names)
    scalars = {name: values[..., start + i] for i, name in enumerate(scalars_of(linkage))}
    return with_scalars(linkage.with_pivots(pivots), scalars)
