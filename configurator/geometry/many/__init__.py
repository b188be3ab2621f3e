"""The answers of `geometry.solve` for many openings at once, in numpy: for schedules and sampled tolerances.

In: what is the same in all openings once, what varies as columns. Out: columns of answers, equal to the
single path to 1e-12, which the tests hold. `solve_many` gives contact, clear width and latch edge;
`answers` the rest, kept apart because sampling asks only for the first a hundred thousand times. Inches and
radians.
"""
