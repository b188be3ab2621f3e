"""One length of an opening varied and all else held: how far the door opens over the whole range.

For the what-if tab and its chart. In: a study, one of its candidates, a parameter (`parameters_of` lists what
can be varied and the ways to hold the rest) and a hold. Out: `curve.what_if` gives the curve and the
thresholds, which are the values at which an answer changes. `samples` fills in and hangs the opening at a
few values; between two of them the geometry's numbers run straight, so `geometry.many` answers hundreds at
once. `thresholds` tells what changes between two close values, `barrel` where the barrel comes free.
This room studies nothing whole, changes no record and knows no words and no drawing. Inches, degrees.
"""
