"""Abuse of the program: kills, errors of the disk, races, nonsense answers, damaged records.

`python -m tests.abuse` runs all of it at full size and prints a table. The tests run a small part.
"""
