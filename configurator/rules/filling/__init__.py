"""Filling in: every value that nobody gave, taken from the tables or from what was given, and noted.

In comes an `Opening` as it was described. Out goes a `FilledOpening` with every number present and, by path,
what was assumed and from where; and what follows from it: its leaves, where hinges sit, tolerances, what door
and frame are made of. What has no usual value is refused (`NotGivenError`), never guessed. It knows nothing
of the parts of a hinge, of widths or of findings.
"""
