"""Exact plan geometry of one hung leaf: pure functions on numbers and small frozen records.

For: where the pin stands, how far the leaf opens and what stops it, the width left to pass, and the gaps at
its edges. In: a `Hanging` (the numbers of one hung leaf), a `Leaf`, and what stands about it. Out: a
`Solution`. Lengths are inches, angles radians. The origin is where the frame face on the pull side meets
the rabbet face of the hinge jamb; +x runs into the opening, +y out of the frame toward the side the door
swings into, and opening turns the leaf counter-clockwise about the pin. The other hand is the same problem,
mirrored in the drawing only. Knows the standard library and numpy; nothing of records, files, tables or the
trade's rules.

Start at `solve`, the one call the rest of the program needs. `pin` locates the pin and holds `TOLERANCE`,
the one tolerance: overlap no deeper is clear. `shapes` builds what turns and what stands, `polar` sees them
from the pin, `swing` finds first contact, `meeting_point` where. `gaps`, `least_gaps`, `edges`,
`clear_width` and `encroachment` answer one question each. `many/` answers many openings at once; `inverse/`
asks the questions backwards.
"""
