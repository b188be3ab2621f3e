"""Whether a leaf still works on a hinge width when what is built is a little off what is drawn.

For the tab "How sure", and `compare --sure`. In: a study, a leaf of it and a hinge width; the tolerances are
the opening's own or the usual ones. Out: `analysis.tolerance_result` gives a `ToleranceResult`: the worst
case, the share of seeded draws that work, what each thing off by itself does, and what there is to spare.
`deviations` says what may be off and answers for many such leaves at once, `turning_points` how far off each
may be, `findings` puts a result into words. A study never asks this room; it knows no drawing and no window.
Worst cases are looked for, not proved: see `analysis`. Inches; degrees outside, radians inside.
"""
