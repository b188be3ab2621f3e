"""Charts: values along a line, with marks, bands and words, as primitives like any other picture.

What comes in: what a study answers over widths, over the swing or over one thing varied. What goes out: a
`Chart`, which says what is shown and in which words, and from it a `ChartSheet` laid out in points for a
size. `swing_chart`, `width_chart` and `what_if_chart` make charts of studies; `chart_sheet` lays one out and
`chart_labels` finds room for its words.

A chart says everything in words as well, for whoever cannot see it. Nothing here knows a format or a window.
"""
