"""The frame and the wall where they are cut: sections through jamb, head and sill, keyed to an elevation.

What comes in: a study, as the other sheets have it. What goes out: `sections_page`, one more kind of sheet.
`section` says what is cut and has what the sections share; `jamb_section` cuts level through the hinge jamb,
`head_and_sill` upright through head and floor, `keyed_elevation` shows where each is cut. Jamb and head are
one profile: the head is the jamb turned, its face as wide unless the job says more.

Knows no format and no window. What was not given and has no usual value is left out and said to be.
"""
