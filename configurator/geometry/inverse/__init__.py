"""The geometry asked backwards: the hinge width, projection or place of a stop for a wanted angle.

In: a hung leaf, what stands about it, and the angle wanted. Out: exact spans of hinge widths (`widths`),
from the widths at which anything can change (`break_widths`, closed form), and the tip of a wall or floor
stop with the angle the door rests at (`bumper`). Uses `geometry` and `geometry.many`; neither knows this
room. Inches, radians.
"""
