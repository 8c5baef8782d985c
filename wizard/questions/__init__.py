"""The questions of the wizard as data, one file a step.

In: Nothing; a question's condition is given the answers so far and the profile.
Out: Steps of questions, each with its guidance, its reason and where its answer is kept.
"""
