"""Widgets and work that several views share.

`layout` puts widgets side by side and keeps pools of them, `table` is every table and what it shows, `fields`
and `kinds` type values, `sections` and `message_line` show them, `canvas` and `chart_canvas` draw with
matplotlib, `look` has measures and colours, `runner` is the one way to run what takes long. Knows no view,
and of the session only what a field needs.

Two rules hold here and in every view, each with a test. No Python object is ever made for a layout item (no
`itemAt`, no `takeAt`, and no filled layout is added to another): Qt frees layout items without telling, and a
Python object that outlives one ends the program some thousand steps later. And no view is torn down to be
made anew: its widgets are kept in lists of our own, filled again, and hidden while there is nothing for them.
"""
