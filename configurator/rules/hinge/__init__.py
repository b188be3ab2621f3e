"""The hinge, part by part: size and number, weight, width, metal, finish, pin, screws, each with its reason.

In come a filled opening, what was asked for by hand or by the job's standard (which outrank the rules, in
that order), and `answers`: what the geometry says of one leaf on one width. Out go a `Reason` a part, with
what else could be chosen. `leaf_hinge` holds what no width decides, `width` picks the width. It does not know
how the parts are put together, nor what the checks say of them.
"""
