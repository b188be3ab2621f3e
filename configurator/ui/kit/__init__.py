"""Widgets and work that several views share.

`layout` puts widgets side by side and keeps them in lists of its own, `fields` and `kinds` type values,
`sections` and `message_line` show them, `fitted_table` is a table to read, `canvas` and `chart_canvas` draw
with matplotlib, `look` has measures and colours, `runner` is the one way to run what takes long. Knows no
view, and of the session only what a field needs.
"""
