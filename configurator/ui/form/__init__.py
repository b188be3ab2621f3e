"""The form: what the user says about one opening.

In: the session's opening and its study, for what is assumed. Out: edits by path. `form` puts sections
together, `rows` and `layers` are its lists, `special` fields that hold more than one value, `presets` what
a new row starts from, `assumptions` what stands in for an empty field, `frame_notes` what frame and wall
say of each other. Knows no picture.
"""
