"""The picture of an opening, its swing and its widths.

In: the session's study, angle and display. Out: what the canvas draws, and turns of the door. The drawing
itself is made in `drawing` and painted by `kit.canvas`.
"""
