"""The file behind the window: opened, saved, watched, and its unsaved work kept against a crash.

In: commands and the file's news. Out: questions as lines with answers, never dialogs in the way.
`project_file` does the reading and writing.
"""
