"""From a study to primitives on named layers, and from those to sheets at a true scale.

What comes in: a study, a job's facts, how lengths are written, a size in points or a paper. What goes out:
groups of primitives, each with the view that lays it on a sheet; pages, which are papers with such groups.
`base` is what every picture is made of; `plan` is an opening from above, on the screen and on paper; `pages`
are sheets to scale, `sections` the sheet that cuts through frame and wall, `client` what argues with two
widths, `charts` values along a line, `pictures` what explains a word. `sheets` is the door: every kind of
sheet by its name.

A drawing computes nothing that a study does not say, and knows no toolkit, no format and no window.
"""
