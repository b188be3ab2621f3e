"""A whole job counted into an order, priced, and frozen as revisions.

For: what is ordered for a job, with the proof that nothing is missing from it. In: openings and the facts of
a job, a price list, an earlier revision. Out: tallies, a take-off, priced lines, changes since a revision.
Knows nothing of how any of it is laid out (`documents`), drawn, written or shown.

`studied` studies an opening or keeps its fault, and says what an order leaves out and what an error holds.
`tally` is what is kept of each study, `book` keeps those of a job, `helpers` makes those of a large job on
every core. `lines` makes a line of each product; `reconcile` counts them a second way; `other_ways` has lines
for what is no butt, `order_findings` the cautions; `take_off` puts these together. `price_list` reads prices,
`prices` applies them. `revisions` freezes an order and finds what changed since. `uniform` asks whether one
hinge width would do for all, `substitute` where a hinge on the shelf will.
"""
