"""What the window works on: the one way in for every change, and what is on show.

In: edits, as a path and a value. Out: a new validated job on the history, the study of the opening that
changed, and one signal that says what was done. `session` is the state; `edits` and `paths` change records
as pure functions; `studies` remembers studies and holds one on trial; `status_warning` words what an
approved opening asks; `preferences` outlive a session. Knows no widget.
"""
