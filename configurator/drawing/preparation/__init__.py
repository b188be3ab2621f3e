"""What is let into door and frame: the sheet a shop cuts and drills by, for hinges and every other way.

What comes in: a study, as the other sheets have it. What goes out: `preparation_page`, a kind of sheet.
`preparation_facts` says what a butt of each mounting needs, with its table; `preparation_ways` what a pivot,
a continuous or a double-acting hinge needs; `preparation_parts` draws both, and the sections cut with the
same pieces. A template or the maker's drawing decides over it, which the sheet says.

Knows no format and no window.
"""
