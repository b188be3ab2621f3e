"""Rules: what a hinge has to be, and what is worth a remark, each rule a pure function with its source.

In come an opening (`model`), the tables, and an answer of the geometry for a width that matters. Out go a
`Specification` (every part of the hinges with its reason), findings (`finding`) and the hinges to order
(`hinge_items`). `filling` puts a value where none was given, `hinge` chooses the hinge, `checks` tests the
choice and the opening whoever chose; `specification` stands over all three, `wording` writes numbers and
names inside a sentence. A room knows only those before it. None of them knows how an answer was worked out,
nor a study, a drawing, a file or the window.
"""
