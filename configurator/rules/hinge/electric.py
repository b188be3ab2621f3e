"""What carries wires to the door: one of its hinges, at which place, or a loop or transfer beside them."""

from collections.abc import Iterator, Sequence

from configurator.model import Hinge
from configurator.rules.finding import Finding, Fix, Severity, finding
from configurator.rules.hinge.leaf_hinge import LeafHinge
from configurator.rules.wording import an, counted
from configurator.tables import practice, words_of

BESIDE_THE_HINGES = ("door loop", "concealed transfer")
"""What carries wires without a hinge."""


def wires_asked(asked: Hinge) -> bool:
    """Return whether the door is to have wires at all."""
    return any(one is not None for one in (asked.electric, asked.transfer, asked.wires))


def beside_the_hinges(asked: Hinge) -> str | None:
    """Return the loop or transfer that carries the wires; None where a hinge does, or nothing."""
    return asked.transfer if asked.transfer in BESIDE_THE_HINGES else None


def wires_words(wires: int | None) -> str:
    """Return how many wires, in words; that the number is still asked for where nobody gave it."""
    return "wires, their number to be given" if wires is None else counted(wires, "wire", "wires")


def carries(wires: int | None) -> str:
    """Return the same after `carries`, as short as an order line is: `wires`, `8 wires`."""
    return "wires" if wires is None else wires_words(wires)


def electric_place(asked: Hinge, hinges: Sequence[LeafHinge]) -> int | None:
    """Return which hinge from the top carries wires: as asked, else the usual one where wires are asked for.

    None where no hinge carries any.
    """
    if not wires_asked(asked) or beside_the_hinges(asked):
        return None
    return asked.electric or _usual_place(max(one.count.value for one in hinges))


def electric_leaf(hinges: Sequence[LeafHinge], which: int | None) -> str | None:
    """Return the leaf whose hinge `which`, counted from the top, carries wires: the first with so many.

    None where no hinge is to carry wires, and where no leaf has so many.
    """
    return next((one.leaf.name for one in _with_so_many(hinges, which)), None)


def electric_findings(hinges: Sequence[LeafHinge], asked: Hinge) -> Iterator[Finding]:
    """Yield the findings about what carries wires; none where nothing does."""
    if beside := beside_the_hinges(asked):
        yield _beside(asked, beside)
    which = electric_place(asked, hinges)
    if which is None:
        return
    possible = _with_so_many(hinges, which)
    yield _place(asked, which, max(one.count.value for one in possible[:1] or hinges))
    if len(possible) > 1:
        yield _which_leaf(which, possible[0].leaf.name)


def _with_so_many(hinges: Sequence[LeafHinge], which: int | None) -> list[LeafHinge]:
    return [one for one in hinges if which is not None and one.count.value >= which]


def _usual_place(count: int) -> int:
    return 3 if count > 3 else min(2, count)


def _beside(asked: Hinge, beside: str) -> Finding:
    """Say what carries the wires beside the hinges; that a hinge is asked to as well is a warning."""
    if asked.electric is not None:
        message = (
            f"Hinge {asked.electric} from the top is to carry wires, and {an(beside)} too. No electric hinge "
            f"is ordered: take the {beside} out if the hinge is meant."
        )
        fix = (Fix("hinge.electric", None, f"Keep the {beside}"),)
        return finding("electric hinge idle", "warning", message, practice("transfer"), fix)
    ask = " Give their number to whoever supplies it." if asked.wires is None else ""
    cut = "is let into both edges between two hinges" if beside != "door loop" else "is seen on the door"
    message = (
        f"{an(beside).capitalize()} carries {wires_words(asked.wires)}, is ordered on a line of its own and "
        f"{cut}; its place is asked for.{ask}"
    )
    return finding("electric transfer", "note", message, practice("transfer"), wires=asked.wires or 0)


def _place(asked: Hinge, which: int, count: int) -> Finding:
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
        taken = (
            " Nobody said which hinge: check that this, the usual one, is meant."
            if asked.electric is None
            else ""
        )
        ask = " Give the number of wires to whoever supplies it." if asked.wires is None else ""
        message = (
            f"Hinge {which} from the top of {count} carries {carries(asked.wires)} and is ordered on a line "
            f"of its own.{taken}{ask}"
        )
    return finding(code, severity, message, practice("electric"), fix, which=which, count=count)


def _which_leaf(which: int, leaf: str) -> Finding:
    message = (
        f"Both leaves have a hinge {which} from the top, and nobody said which of the two carries wires. "
        f"It is counted on the {leaf} leaf. Say with the order on which leaf it hangs."
    )
    return finding("electric hinge leaf", "warning", message, practice("electric"), which=which)
