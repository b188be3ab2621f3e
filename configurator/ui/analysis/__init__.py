"""The pages under the picture that answer questions about one opening, and the findings beside it.

In: the session's study. Out: tables and charts worded in `wording` and drawn in `drawing`; edits only where
a value is taken. One module a page: comparison, widths and angles, the whole swing, tolerances, what if,
and where a number comes from.
"""
