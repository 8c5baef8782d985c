"""Levenberg-Marquardt steps to a minimum of a bundle adjustment, with the analytic Jacobian."""

import numpy as np

from core.adjustment.bundle import Problem, Solution
from core.kinematics.vectors import Array

MOST_STEPS = 130
CONVERGED = 1e-7
"""Largest last step, in standard uncertainties of each unknown with the others fixed."""

SLOW = 60
"""Steps after which the second derivatives are taken."""
DIFFERENCE = 1e-4
"""Step of their differences, in standard uncertainties of each unknown with the others fixed."""
MOST_ROUNDS = 20
SETTLED = 1e-9
"""Largest relative change of a mark's uncertainty from one round to the next."""

FIRST_DAMPING = 1e-3
LEAST_DAMPING, MOST_DAMPING = 1e-9, 1e9
BETTER_FACTOR, WORSE_FACTOR = 5.0, 3.0
"""Damping falls with each better step, and grows with each worse one."""


def descend(problem: Problem, start: Array, most_steps: int) -> Solution | None:
    """The minimum below a start; None where there is none.

    The uncertainty of a mark depends on its distance from the camera. It is held while the steps go
    down, and computed again at their end, until it stays.
    """
    here = problem.at(start)
    for _ in range(MOST_ROUNDS):
        if here is None:
            return None
        there = _descend_with_fixed_weights(problem, here, most_steps)
        if there is None:
            return None
        here = problem.at(there.unknowns)
        if here is not None and np.abs(here.u_marks / there.u_marks - 1).max() < SETTLED:
            return here
    return None


def _descend_with_fixed_weights(
    problem: Problem, here: Solution, most_steps: int
) -> Solution | None:
    """The minimum by Levenberg-Marquardt steps; None where they do not converge.

    A mark or a reading that is far off leaves a large residual, and then the normal matrix alone
    converges slowly. After some steps the true second derivatives take its place.
    """
    damping, bends = FIRST_DAMPING, _normal(here)
    for count in range(most_steps):
        scale = np.sqrt(np.diag(_normal(here)))
        downhill = here.design.T @ here.misfit / scale
        step = _step(bends / np.outer(scale, scale), downhill, damping)
        if np.abs(step).max() < CONVERGED and damping <= FIRST_DAMPING:
            return here
        there = problem.at(here.unknowns + step / scale, here.u_marks)
        if there is None or there.chi_square > here.chi_square * (1 + 1e-12):
            damping *= WORSE_FACTOR
            if damping > MOST_DAMPING:
                return None
            continue
        here = there
        damping = max(damping / BETTER_FACTOR, LEAST_DAMPING)
        bends = _normal(here) if count < SLOW else _second_derivatives(problem, here)
    return None


def _normal(here: Solution) -> Array:
    return np.asarray(here.design.T @ here.design)


def _step(scaled: Array, downhill: Array, damping: float) -> Array:
    """Damped step; where the matrix is not positive definite, one that leads downhill.

    That step takes the matrix with the magnitudes of its eigenvalues.
    """
    damped = scaled + damping * np.eye(len(scaled))
    try:
        np.linalg.cholesky(damped)
        return np.asarray(np.linalg.solve(damped, downhill))
    except np.linalg.LinAlgError:
        values, vectors = np.linalg.eigh(scaled)
        return np.asarray(vectors @ (vectors.T @ downhill / (np.abs(values) + damping)))


def _second_derivatives(problem: Problem, here: Solution) -> Array:
    """Second derivatives (n, n) of half the sum of squares, by differences of the first ones."""
    uphill = -here.design.T @ here.misfit
    rows = []
    for i, step in enumerate(DIFFERENCE / np.sqrt(np.diag(_normal(here)))):
        unknowns = here.unknowns.copy()
        unknowns[i] += step
        beside = problem.at(unknowns, here.u_marks)
        if beside is None:
            return _normal(here)
        rows.append((-beside.design.T @ beside.misfit - uphill) / step)
    both = np.array(rows)
    return np.asarray((both + both.T) / 2)


def cofactor_of(solution: Solution) -> Array:
    """Covariance (n, n) of the unknowns at a minimum, where every observation has its u."""
    normal = _normal(solution)
    scale = np.sqrt(np.diag(normal))
    return np.asarray(np.linalg.inv(normal / np.outer(scale, scale)) / np.outer(scale, scale))
