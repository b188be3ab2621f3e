"""The one hinge of an opening that carries wires: on which leaf, and whether its place is a good one."""

from collections.abc import Iterator, Sequence

from configurator.rules.finding import Finding, Fix, Severity, finding
from configurator.rules.hinge.leaf_hinge import LeafHinge
from configurator.tables import practice, words_of


def electric_leaf(hinges: Sequence[LeafHinge], which: int | None) -> str | None:
    """Return the leaf whose hinge `which`, counted from the top, carries wires: the first with so many.

    None where no hinge is to carry wires, and where no leaf has so many.
    """
    return next((one.leaf.name for one in _with_so_many(hinges, which)), None)


def electric_findings(hinges: Sequence[LeafHinge], which: int | None) -> Iterator[Finding]:
    """Yield the findings about the hinge that carries wires; none where none does."""
    if which is None:
        return
    possible = _with_so_many(hinges, which)
    yield _place(which, max(one.count.value for one in possible[:1] or hinges))
    if len(possible) > 1:
        yield _which_leaf(which, possible[0].leaf.name)


def _with_so_many(hinges: Sequence[LeafHinge], which: int | None) -> list[LeafHinge]:
    return [one for one in hinges if which is not None and one.count.value >= which]


def _place(which: int, count: int) -> Finding:
    """Judge the place on a leaf of so many hinges."""
    usual = 3 if count > 3 else 2
    fix: tuple[Fix, ...] = (Fix("hinge.electric", usual, f"Take hinge {usual}"),)
    code = "electric hinge place"
    severity: Severity = "error" if which > count else "warning"
    if which > count:
        message = (
            f"Hinge {which} from the top is to carry wires, but there are only {count}. Take hinge {usual}."
        )
    elif which == 1 or which != min(usual, count):
        message = f"Hinge {which} from the top is to carry wires: {words_of('electric')}. Take hinge {usual}."
    else:
        code, severity, fix = "electric hinge", "note", ()
        message = (
            f"Hinge {which} from the top of {count} carries wires and is ordered on a line of its own. "
            "Give the number of wires to whoever supplies it."
        )
    return finding(code, severity, message, practice("electric"), fix, which=which, count=count)


def _which_leaf(which: int, leaf: str) -> Finding:
    message = (
        f"Both leaves have a hinge {which} from the top, and nobody said which of the two carries wires. "
        f"It is counted on the {leaf} leaf. Say with the order on which leaf it hangs."
    )
    return finding("electric hinge leaf", "warning", message, practice("electric"), which=which)
