"""Openings that the geometry tests share: the worked cases, built by hand."""

from configurator.geometry.pin import Hanging
from configurator.geometry.shapes import Hardware, Leaf, Obstruction

BARRELS = ((7.0, 11.5), (40.0, 44.5), (74.0, 78.5))
LEAF = Leaf(bottom=0.75, top=83.875, barrels=BARRELS)
BEVEL = 0.0625

RAIL = Obstruction(kind="chair rail", projection=1.75, start=0.5, bottom=32, top=42)
BOX = Hardware(kind="lever", projection=2.5, from_latch_edge=2.75, width=4, height=38, vertical=3.5)


def case_a(W=4.0, **given):
    """The worked case: 36 in opening, 1-3/4 in door, frame 1/2 proud, square latch edge."""
    values = {
        "O": 36, "T": 1.75, "g_h": 0.125, "g_l": 0.125, "beta": 0, "R": 1.9375, "k": 0.0625, "s": 0.625,
        "F": 2, "D": 5.875, "p": 0.5, "b": 0.25, "t": 0.134, "W": W, "d_b": 0.58,
    }  # fmt: skip
    return Hanging(**(values | given))


def linen_closet(W=3.5):
    """A 32 in wood door, 1-3/8 thick, in a wood frame cased at a 1/4 in reveal, with plinth blocks."""
    return case_a(
        W, O=32, T=1.375, g_h=0.09375, g_l=0.09375, beta=BEVEL, R=1.4375, s=0.4375, F=0.75, D=4.5625,
        p=0.03125, t=0.123, d_b=0.5,
    )  # fmt: skip


CASING = Obstruction(kind="casing", from_frame=True, projection=0.6875, start=-0.5, length=3.25)
PLINTH = Obstruction(kind="casing", from_frame=True, projection=1.0625, start=-0.5, length=3.5, top=8)
