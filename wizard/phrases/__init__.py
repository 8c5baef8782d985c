"""Words of the program: sentences, names and help texts. No widgets, no tables.

In: Results of core, answers, questions.
Out: Text, and facts: a name, a text, and a mark where somebody has to look.
"""
