"""What every hinge open width would do for one leaf, and what another hinge part would change.

For the widths tab and chart, `compare --widths`, and the alternatives beside each hinge part. In: a study;
the leaves come from its hanger, which keeps what is hung. Out: `leaf_widths.widths_of` gives a leaf's least
width, its stock widths, the curve (`width_curve`) and the widths at which something turns (`break_points`);
`hinge_trials.trials` studies the opening again with another value of one part; `width_pair` picks the two
widths that an argument is made with. Worked out when asked for: a study never asks this room, and this room
knows no words, no drawing and no file. Inches and degrees.
"""
