"""Distributions, random numbers and decisions by probability of conformity.

In: Values, standard uncertainties, limits, seeds.
Out: Probabilities, draws, and the decision on one limit.
"""
