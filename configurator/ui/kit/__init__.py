"""What every view of the window is put together from: rows and columns, pools of widgets, long work, tables.

In come widgets and rows of words; out goes how they stand, how Tab goes through them, what was chosen, and
how far work is. It knows no page, no job, no session and no study.

Two rules hold here and in every view, each with a test. No Python object is ever made for a layout item (no
`itemAt`, no `takeAt`, and no filled layout is added to another): Qt frees layout items without telling, and a
Python object that outlives one ends the program some thousand steps later. And no view is torn down to be
made anew: its widgets are kept in lists of our own, filled again, and hidden while there is nothing for them.
"""
