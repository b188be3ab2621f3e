"""The main window: its commands, the openings, the pages, and the work on one opening put together.

In: a session and preferences. Out: what stands on the screen, and when it is loaded: the window is painted
first, the picture next, pages when first asked for. `window` is the frame; `commands` are all commands as
data, from which `command_bar` makes menus, tool bar, keys and tabs, and `palette` what is found by words.
`start` is the page where nothing is begun, `pages` those about the whole job, `work` the work on one opening,
`beside` the windows beside it. `environment` says whether a window can open at all, before Qt is loaded.
"""
