"""Law of propagation against example H.2 of the GUM (JCGM 100:2008).

The example measures resistance and reactance at once. The inputs are V, I and phi with their
correlations. The results are R = V cos(phi) / I, X = V sin(phi) / I and Z = V / I with theirs.
The guide rounds its inputs, so the last digits of its results differ by one or two.
"""

from math import cos, sin

import numpy as np
import pytest

from tests.geometries import parallel_pair
from tests.measured import with_covariance

V, CURRENT, PHI = 4.999, 0.019661, 1.04446  # table H.2, arithmetic means

# table H.3: combined standard uncertainties and correlation coefficients of the results
R = (127.732, 0.071)
X = (219.847, 0.295)
Z = (254.260, 0.236)
CORRELATIONS = {("R", "X"): -0.588, ("R", "Z"): -0.485, ("X", "Z"): 0.993}


@pytest.fixture
def inputs():
    """V, I and phi in the place of the parameters of a measured linkage."""
    u = np.array([0.0032, 0.0000095, 0.00075])  # table H.2
    r = np.array([[1.0, -0.36, 0.86], [-0.36, 1.0, -0.65], [0.86, -0.65, 1.0]])  # table H.2
    return with_covariance(parallel_pair(), r * np.outer(u, u))


# Derivatives with respect to V, I and phi.
GRADIENTS = {
    "R": np.array([cos(PHI) / CURRENT, -V * cos(PHI) / CURRENT**2, -V * sin(PHI) / CURRENT]),
    "X": np.array([sin(PHI) / CURRENT, -V * sin(PHI) / CURRENT**2, V * cos(PHI) / CURRENT]),
    "Z": np.array([1 / CURRENT, -V / CURRENT**2, 0.0]),
}


def test_values():
    resistance, reactance = V * cos(PHI) / CURRENT, V * sin(PHI) / CURRENT
    impedance = V / CURRENT
    assert resistance == pytest.approx(R[0], abs=0.002)
    assert reactance == pytest.approx(X[0], abs=0.006)
    assert impedance == pytest.approx(Z[0], abs=0.002)


@pytest.mark.parametrize(("name", "u"), [("R", R[1]), ("X", X[1]), ("Z", Z[1])])
def test_standard_uncertainties(inputs, name, u):
    assert inputs.standard_uncertainty(GRADIENTS[name]) == pytest.approx(u, abs=0.002)


def test_many_results_at_once(inputs):
    together = inputs.standard_uncertainty(np.stack(list(GRADIENTS.values()), axis=-1))
    assert together == pytest.approx([R[1], X[1], Z[1]], abs=0.002)


@pytest.mark.parametrize(("pair", "correlation"), CORRELATIONS.items())
def test_correlations_of_the_results(inputs, pair, correlation):
    one, other = (GRADIENTS[name] for name in pair)
    # u2(a + b) - u2(a - b) = 4 u(a, b)
    covariance = (
        inputs.standard_uncertainty(one + other) ** 2
        - inputs.standard_uncertainty(one - other) ** 2
    ) / 4
    found = covariance / (inputs.standard_uncertainty(one) * inputs.standard_uncertainty(other))
    # The last digits of the guide's inputs change its correlations by this much.
    assert found == pytest.approx(correlation, abs=0.01)
