"""Reading a size: of an opening, of a hinge, and of the leaf that goes into the opening."""

from random import Random

from configurator.model import Opening
from configurator.practice.answers import LengthAnswer
from configurator.practice.leaves import hinge_size, usual_widths
from configurator.practice.problem import ASKED, Picture, Problem, Slip, Template
from configurator.practice.words import fraction
from configurator.practice.written import HingeSizeAnswer, OpeningSizeAnswer
from configurator.rules.filling.leaves import leaves_of
from configurator.rules.filling.usual import fill
from configurator.units import format_feet

TOPIC = "sizes"
_WIDTHS = tuple(range(24, 50, 2))
_HEIGHTS = (80, 82, 84, 90, 94, 96, 106)
_HINGE_HEIGHTS = (3.5, 4.0, 4.5, 5.0, 6.0)
_WIDTH_FIRST = "Opening sizes are feet and inches, width first."
_HEIGHT_FIRST = "Hinge sizes give the height first; door sizes give the width first."


def _written(width: int, height: int) -> str:
    """Write an opening size as a schedule does: in figures alone where a foot takes one figure of inches."""
    if width % 12 < 10 and height % 12 < 10:
        return f"{width // 12}{width % 12}{height // 12}{height % 12}"
    return f"{width // 12}-{width % 12} x {height // 12}-{height % 12}"


def _drawn_size(random: Random) -> tuple[str, int, int]:
    width, height = random.choice(_WIDTHS), random.choice(_HEIGHTS)
    return _written(width, height), width, height


def _foot_words(inches: float) -> str:
    feet, rest = (fraction(part) for part in divmod(inches, 12))
    return f"{feet} ft {rest} in = 12 × {feet} + {rest} = {fraction(inches)} in"


def _run_together(inches: int) -> float:
    """Return what feet and inches come to when their figures are taken for inches: 3-4 for 34."""
    return float(f"{inches // 12}{inches % 12}")


def _opening(width: float, height: float) -> Opening:
    return Opening.model_validate(
        {"mark": "practice", "hand": "LH", "size": {"width": width, "height": height}}
    )


def _one_way(random: Random, name: str, first: bool) -> Problem:
    size, width, height = _drawn_size(random)
    right, other = (width, height) if first else (height, width)
    half, wrong = ("first", "height") if first else ("last", "width")
    return Problem(
        question=f"The door schedule says {size}. How {name} is the opening, in inches?",
        answer=LengthAnswer(right, turned=True),
        hint=f"The {half} figures are the {'width' if first else 'height'}: feet, then inches.",
        slips=(
            Slip(other, f"That is the {wrong}. Width stands before height."),
            Slip(_run_together(right), "The figures are feet and inches, not inches: a foot is twelve."),
            Slip(10 * (right // 12) + right % 12, "A foot is twelve inches, not ten."),
        ),
        solution=(
            "The first figures are the width, the last the height.",
            f"{_foot_words(right)}.",
        ),
        convention=_WIDTH_FIRST,
        picture=Picture(
            "front",
            (("width", f"width {ASKED}"),) if first else (("height", f"height {ASKED}"),),
            (_opening(width, height),),
        ),
    )


def _width(random: Random) -> Problem:
    return _one_way(random, "wide", first=True)


def _height(random: Random) -> Problem:
    return _one_way(random, "high", first=False)


def _in_feet(random: Random) -> Problem:
    _, width, height = _drawn_size(random)
    right = OpeningSizeAnswer(width, height)
    return Problem(
        question=f"An opening is {width} in wide and {height} in high. Write its size the way a "
        "schedule does.",
        answer=right,
        hint="Feet and inches of the width first, then of the height.",
        solution=(
            f"Width first: {_foot_words(width)}.",
            f"Then the height: {_foot_words(height)}. {right.shown}.",
        ),
        convention=_WIDTH_FIRST,
        picture=Picture(
            "front", (("width", f"{width} in"), ("height", f"{height} in")), (_opening(width, height),)
        ),
    )


def _feet(random: Random) -> Problem:
    inches = random.randrange(13, 120) + random.choice((0, 1, 2, 3, 5, 7)) / 8
    whole, part = divmod(inches, 12)
    return Problem(
        question=f"How many inches is {format_feet(inches)}?",
        answer=LengthAnswer(inches, turned=True),
        hint="Twelve inches to the foot, then the inches that are left.",
        slips=(
            Slip(10 * whole + part, "A foot is twelve inches, not ten."),
            Slip(12 * whole, "That is the feet alone; the inches come on top."),
        ),
        solution=(f"12 × {fraction(whole)} + {fraction(part)} = {fraction(inches)} in.",),
        picture=Picture("tape", words=(f"{format_feet(inches)} = {ASKED} in",), values=(inches,)),
    )


def _drawn_hinge(random: Random) -> tuple[float, float]:
    height = random.choice(_HINGE_HEIGHTS)
    return height, random.choice([width for width in usual_widths(height) if width != height])


def _hinge_width(random: Random) -> Problem:
    height, width = _drawn_hinge(random)
    return Problem(
        question=f"A hinge is {hinge_size(height, width)}. How wide is it, laid open flat?",
        answer=LengthAnswer(width, limit="stock"),
        hint="A hinge size names its height along the barrel first.",
        slips=(
            Slip(height, "That is the height, along the barrel. The width is the second figure."),
            Slip(width / 2, "That is one leaf. The open width goes across both."),
            Slip(2 * width, "The second figure already goes across both leaves."),
        ),
        solution=(
            "The first figure of a hinge size is its height, the second its width with both leaves open.",
            f"Here the open width is {fraction(width)} in.",
        ),
        convention=_HEIGHT_FIRST,
        picture=Picture("sample", (("width", f"open width {ASKED}"),), values=(height, width)),
    )


def _hinge_size(random: Random) -> Problem:
    height, width = _drawn_hinge(random)
    return Problem(
        question=(
            f"On the bench, laid open, a hinge measures {fraction(width)} in across both leaves and "
            f"{fraction(height)} in along the barrel. How is its size written?"
        ),
        answer=HingeSizeAnswer(height, width),
        hint="The length along the barrel is the height, and it goes first.",
        slips=(Slip((height, width / 2), "The second figure goes across both leaves, not one."),),
        solution=(
            "Along the barrel is the height, and it is written first; across the open leaves is the width.",
            f"{hinge_size(height, width)}.",
        ),
        convention=_HEIGHT_FIRST,
        picture=Picture(
            "sample",
            (("width", f"{fraction(width)} in across"), ("height", f"{fraction(height)} in along")),
            values=(height, width),
        ),
    )


def _drawn_opening(random: Random) -> Opening:
    gaps = (0.09375, 0.125, 0.15625)
    door = {
        "hinge_gap": random.choice(gaps),
        "latch_gap": random.choice(gaps),
        "head_gap": random.choice(gaps),
        "undercut": random.choice((0.25, 0.5, 0.625, 0.75)),
    }
    size = {"width": random.choice(_WIDTHS), "height": random.choice(_HEIGHTS)}
    return Opening.model_validate({"mark": "practice", "hand": "LH", "size": size, "door": door})


def _leaf_width(random: Random) -> Problem:
    opening = _drawn_opening(random)
    filled = fill(opening)
    width, wide = leaves_of(filled)[0].width, filled.opening_width
    return Problem(
        question=(
            f"The opening is {fraction(wide)} in between the rabbets. Gaps: "
            f"{fraction(filled.hinge_gap)} in on "
            f"the hinge side, {fraction(filled.latch_gap)} in on the latch side. How wide is the "
            "door itself, on "
            "its pull face?"
        ),
        answer=LengthAnswer(width),
        hint="The door is the opening less the gap on either side.",
        slips=(
            Slip(wide, "That is the opening. The door is narrower by both gaps."),
            Slip(wide - filled.hinge_gap, "The gap on the latch side comes off too."),
            Slip(wide - filled.latch_gap, "The gap on the hinge side comes off too."),
            Slip(
                wide + filled.hinge_gap + filled.latch_gap,
                "The gaps come off; the door goes into the opening.",
            ),
        ),
        solution=(
            "Net door width: w = O − hinge-side gap − latch-side gap.",
            f"{fraction(wide)} − {fraction(filled.hinge_gap)} − {fraction(filled.latch_gap)} "
            f"= {fraction(width)} in.",
        ),
        convention="The nominal door width is the opening's, rabbet to rabbet; the net width the leaf's.",
        picture=Picture(
            "front", (("width", f"{fraction(wide)} in"), ("leaf_width", f"door {ASKED}")), (opening,)
        ),
    )


def _leaf_height(random: Random) -> Problem:
    opening = _drawn_opening(random)
    filled = fill(opening)
    height, high = leaves_of(filled)[0].height, filled.opening_height
    return Problem(
        question=(
            f"From the finished floor to the head rabbet it is {fraction(high)} in. Head gap "
            f"{fraction(filled.head_gap)} in, undercut {fraction(filled.undercut)} in. How high is "
            "the door itself?"
        ),
        answer=LengthAnswer(height),
        hint="The door is the opening less what is left free above it and below it.",
        slips=(
            Slip(high, "That is the opening. The door is lower by head gap and undercut."),
            Slip(high - filled.head_gap, "The undercut comes off too."),
            Slip(high - filled.undercut, "The head gap comes off too."),
        ),
        solution=(
            "The leaf is the opening height less head gap and undercut.",
            f"{fraction(high)} − {fraction(filled.head_gap)} − {fraction(filled.undercut)} = "
            f"{fraction(height)} in.",
        ),
        convention="The opening height is counted from the finished floor to the head rabbet.",
        picture=Picture(
            "front", (("height", f"{fraction(high)} in"), ("leaf_height", f"door {ASKED}")), (opening,)
        ),
    )


TEMPLATES = (
    Template("opening width from figures", TOPIC, 1, _width),
    Template("opening height from figures", TOPIC, 1, _height),
    Template("feet into inches", TOPIC, 1, _feet),
    Template("open width of a hinge", TOPIC, 1, _hinge_width),
    Template("hinge size from measures", TOPIC, 1, _hinge_size),
    Template("opening size in figures", TOPIC, 2, _in_feet),
    Template("net width of a door", TOPIC, 2, _leaf_width),
    Template("net height of a door", TOPIC, 2, _leaf_height),
)
