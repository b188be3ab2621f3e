"""What every picture is made of and laid out with: primitives, views, the drafting style, lettering.

What comes in: points, in inches of the real thing or points of paper. What goes out: primitives on named
layers, where a view puts them on a sheet, and what of them a window shows. `primitives` are the few things
there are to draw, `view` lays them on a sheet, `style` reads layers, inks and materials from resources/style,
`lettering` knows how wide a text is and finds room for it, `clip` and `on_sheet` cut lines and arcs off at a
window, `hatch` and `dimension_strokes` turn a material and a dimension into lines that every format draws
alike.

Nothing here knows a door, a hinge, a study, a format or the window.
"""
