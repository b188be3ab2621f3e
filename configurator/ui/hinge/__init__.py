"""The hinge of the opening on show, part by part, its finishes, and the order line it makes.

In: the study's specification. Out: overrides as edits under `hinge`. What a part costs elsewhere is tried
by the study.
"""
