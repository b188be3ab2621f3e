"""The plan of an opening: each hinge width side by side, seen from above, framed about the hinge.

What comes in: a study, and the size of a sheet in points. What goes out: `Sheet`, with groups of primitives
for what stands still, and functions that return what turns, at any angle. `drawn_leaf` is a candidate with
what stands about it; `leaf`, `jamb`, `standing_things` and `swept` draw its parts in the axes of the
geometry, inches; `panel` frames one width and `sheet` lays all of them out; `dimensions`, `labels` and
`swing_notes` find room for words; `inset` is the small picture in a corner; `pointing` tells what lies at a
place.

The hand is a mirrored view and nothing else. Nothing here knows a page, a format or the window.
"""
