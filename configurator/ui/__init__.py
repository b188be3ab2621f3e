"""The window, and the only place that imports PySide6.

In: a job and what the user does. Out: changes to the job through `state.session`, and pictures, tables and
files made by the rooms below. `app` starts it. `state` is what every view is a function of; `kit` has the
widgets that views share; `window` is the main window, and `form`, `picture`, `hinge`, `analysis` and
`files` are its parts. `client`, `schedule`, `order`, `sheets`, `intake`, `practice` and `words` are pages
and windows of their own. Nothing here computes an answer or words a rule.
"""
