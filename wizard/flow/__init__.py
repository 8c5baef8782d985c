"""How a session passes through its questions, from the first answer to the filed record.

In: Answers, and files on the disk.
Out: The next question, drafts kept on the disk, finished records, plans that are chosen.
"""
