"""The path of a session through its questions, from the first answer to the filed record.

Knows: The order of the questions, drafts, plans that are chosen.
In: Answers, and files on the disk.
Out: The next question, drafts on the disk, finished records.
"""
