"""Exact plan geometry of a hung door: pure functions on numbers and small frozen records.

Lengths are inches, angles radians. The origin is where the frame face on the pull side meets the rabbet face
of the hinge jamb; +x runs into the opening, +y out of the frame toward the side the door swings into, and
opening turns the leaf counter-clockwise about the pin. The mirrored hand is the same problem.

`solve`: `solve` and `scene`, everything about one leaf on one hinge width, for the rest of the program;
`Solution`, `Scene`.
`pin`: `Hanging`, the numbers of one hung leaf; `locate_pin`, `Pin`, the lengths that follow from the pin
alone, `backset_refusal`, and `TOLERANCE`, the one tolerance: overlap no deeper than that is clear.
`shapes`: `Shape`, and `Leaf`, `Hardware`, `Obstruction`, `OtherLeaf` of a pair and `OtherHalf` of a Dutch
door with what they carry, out of which the parts are built.
`swing`: `first_contact`, `Contact`. `polar`: the parts seen from the pin. `meeting_point`: where they touch.
`gaps`: `least_gap` over a swing; `least_gaps`: of a whole solution, bare and with hardware. `edges`: latch
and hinge edge, and the bevel that is needed.
`clear_width`, `encroachment`: at any angle, and the greatest.
`inverse`: `widths_that_work`, `least_hinge_width`, `greatest_hinge_width`, `greatest_projection`,
`greatest_angles`; `break_widths`: the widths at which anything can change.
`bumper`: where a wall or floor stop goes.
`batch`: `solve_many`, the same answers for many openings at once; `batch_answers`: the rest of them.
"""
