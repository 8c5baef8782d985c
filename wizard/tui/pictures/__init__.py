"""What people look at before they read: pictures drawn in the terminal, one widget a file.

A picture is a frozen dataclass of plain numbers (`shown`); a widget draws it and computes
nothing about the vehicle.
"""
