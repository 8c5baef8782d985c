"""The Textual application: screens, widgets and pictures drawn in a terminal.

In: Keys, the mouse, and the files folder.
Out: What is seen in the terminal; every accepted answer goes to the draft store.
"""
