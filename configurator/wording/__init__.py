"""Answers as sentences and as rows of tables, and the glossary; nothing drawn, nothing computed.

In: a study, or an answer asked for beside it, and how lengths are displayed. Out: text that window, sheets,
documents and terminal show alike. `comparison` is the table of widths, each row with its unit; `hinge_*`
word the hinge and its order line; `swing_words`, `width_words`, `what_if_words`, `tolerance_rows`,
`derivation_words` word one page of answers each; `verdict`, with `client_words` and `cost_words` beside it,
is all that a client is told; `glossary` finds what a word means. A number is rounded in `units` only. Knows
no picture, no page and no window.
"""
