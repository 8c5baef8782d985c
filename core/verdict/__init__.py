"""The rules, the curves, and their meaning for the vehicle.

In: A session or a document.
Out: A Verdict: rules, peaks, sweep and events, each with its uncertainty; open questions.
"""
