"""The main window: its commands, the openings, the pages, and the work on one opening put together.

In: a session and preferences. Out: what stands on the screen, and when it is loaded: the window is painted
first, the picture next, pages when first asked for. `window` is the frame, `commands` the row of commands
as data, `pages` the pages about the whole job, `work` and `under_picture` the work on one opening.
`environment` says whether a window can open at all, before Qt is loaded.
"""
