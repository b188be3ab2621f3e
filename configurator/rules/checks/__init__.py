"""Checks: what does not fit together, whoever chose it, each as a finding that ends in what to do.

In come a filled opening, the parts chosen for its hinges, and the geometry's answers. Out go findings with
their numbers, their source and, where one click mends it, the change. `hinge_checks` looks at the hinges,
`plan_findings` at one leaf on one width, `opening_findings` at the opening whatever hinge it gets. A check
chooses nothing, and knows nothing of other checks but the order they are called in.
"""
