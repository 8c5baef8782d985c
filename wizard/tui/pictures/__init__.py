"""Pictures drawn in the terminal, one widget a file.

In: A frozen dataclass of plain numbers from `wizard.views`, given to `show`.
Out: A drawing; a picture computes nothing about the vehicle.
"""
