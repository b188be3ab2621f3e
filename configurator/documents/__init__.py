"""What an order desk hands on, as laid-out documents of plain values: no file format is known here.

For: the order, a quote, what goods come in by, labels, what changed since a revision, the door and hardware
schedules, the submittal and the sheet to measure on. In: tallies, a take-off, priced lines, changes (all of
`configurator.order`), openings as they were given. Out: a `Document`: a heading, tables of typed cells,
notes, and apart what is for the office; or the blocks of the field sheet, or labels.
Knows nothing of files, drawings or the window: `export` writes a document, the window shows its rows.

Start at `document`, which says what a document is, and `papers`, which has each by its kind. `line_words` has
an order line's words for a column; every other module is one document or two that belong together.
"""
