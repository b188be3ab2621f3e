"""Every number of the comparison found a second time, from its formula alone, step by step.

For the tab that shows the work. In: a candidate and the key of a number in the results. Out:
`derive.derive` gives a `Derivation`: steps of letters and values, each letter with its meaning and the lines
of the plan it stands for; its last value equals the candidate's. A key of the comparison needs one function
here and an entry in `derive`, and a test walks them all. `terms` are formulas that can be written and worked
out, `case` hands out the letters of a leaf, `places` says of which lengths a corner's place is the sum,
`meetings` finds the closed form that gave a contact, `passages` that of a least gap.
This room never calls the geometry for the number it derives, and knows no drawing. Inches and degrees.
"""
