"""Sheets to hand on: details at a true scale on a paper of a known size, with their title block.

What comes in: a study, the job's facts, a paper, a scale or none, and how lengths are written. What goes out:
a `Page`: details, which are primitives in inches of the real thing seen through a view of a true scale, and
furniture in points of the paper. `plan_page` and `elevation_page` lay out a sheet each;
`frame` gives border, title block, notes and scale bars, and says what room they leave; `blocks` sets details
with strings of dimensions side by side, and `dimension_string` places their texts off one another.

What finds no room is counted and said to be missing. Nothing here knows a format or the window.
"""
