"""Reading a size: of an opening, of a hinge, and of the leaf that goes into the opening."""

from random import Random

from configurator.model import Opening
from configurator.practice.answers import CodeAnswer, HingeSizeAnswer, LengthAnswer
from configurator.practice.problem import Problem, Template
from configurator.practice.words import fraction
from configurator.rules.filling.leaves import leaves_of
from configurator.rules.filling.usual import fill
from configurator.rules.hinge.stock import stock_widths
from configurator.units import format_feet, parse_opening_size

TOPIC = "sizes"
_WIDTHS = tuple(range(24, 50, 2))
_HEIGHTS = (78, 80, 82, 84, 90, 94, 96, 108)


def _figures(inches: int) -> str:
    return f"{inches // 12}{inches % 12}"


def _drawn_size(random: Random) -> tuple[str, float, float] | None:
    """Draw an opening size written in figures alone; none where the figures read two ways."""
    width, height = random.choice(_WIDTHS), random.choice(_HEIGHTS)
    figures = _figures(width) + _figures(height)
    try:
        read = parse_opening_size(figures)
    except ValueError:
        return None
    return (figures, *read) if read == (width, height) else None


def _foot_words(inches: float) -> str:
    feet, rest = (fraction(part) for part in divmod(inches, 12))
    return f"{feet} ft {rest} in = 12 × {feet} + {rest} = {fraction(inches)} in"


def _width(random: Random) -> Problem | None:
    size = _drawn_size(random)
    if size is None:
        return None
    figures, width, _ = size
    return Problem(
        question=f"A door schedule gives the opening size {figures}. How wide is the opening, in inches?",
        answer=LengthAnswer(width),
        solution=(
            "The first figures are the width in feet and inches; width stands before height.",
            f"{_foot_words(width)}.",
        ),
        convention="Opening sizes in figures alone are feet and inches, width first.",
    )


def _height(random: Random) -> Problem | None:
    size = _drawn_size(random)
    if size is None:
        return None
    figures, _, height = size
    return Problem(
        question=f"A door schedule gives the opening size {figures}. How high is the opening, in inches?",
        answer=LengthAnswer(height),
        solution=(
            "The last figures are the height in feet and inches; width stands before height.",
            f"{_foot_words(height)}.",
        ),
        convention="Opening sizes in figures alone are feet and inches, width first.",
    )


def _in_figures(random: Random) -> Problem | None:
    size = _drawn_size(random)
    if size is None:
        return None
    figures, width, height = size
    return Problem(
        question=(
            f"An opening is {fraction(width)} in wide and {fraction(height)} in high. Write its size in "
            "figures alone."
        ),
        answer=CodeAnswer(figures, "opening size"),
        solution=(
            f"Width first: {_foot_words(width)}, written {_figures(int(width))}.",
            f"Then the height: {_foot_words(height)}, written {_figures(int(height))}. Together {figures}.",
        ),
        convention="Opening sizes in figures alone are feet and inches, width first.",
    )


def _feet(random: Random) -> Problem:
    inches = random.randrange(13, 120) + random.choice((0, 1, 2, 3, 5, 7)) / 8
    whole, part = divmod(inches, 12)
    written = format_feet(inches)
    return Problem(
        question=f"How many inches is {written}?",
        answer=LengthAnswer(inches),
        solution=(f"12 × {fraction(whole)} + {fraction(part)} = {fraction(inches)} in.",),
    )


def _drawn_hinge(random: Random) -> tuple[float, float]:
    height = random.choice((3.5, 4.0, 4.5, 5.0, 6.0))
    width = random.choice([width for width in stock_widths(height) if width != height])
    return height, width


def _hinge_width(random: Random) -> Problem:
    height, width = _drawn_hinge(random)
    return Problem(
        question=f"A hinge is {fraction(height)} x {fraction(width)}. What is its open width?",
        answer=LengthAnswer(width),
        solution=(
            "The first figure of a hinge size is its height, the second its width with both leaves open.",
            f"Here the open width is {fraction(width)} in.",
        ),
        convention="Hinge sizes give the height first; door sizes give the width first.",
    )


def _hinge_size(random: Random) -> Problem:
    height, width = _drawn_hinge(random)
    return Problem(
        question=(
            f"Laid open on the bench a hinge measures {fraction(width)} in across both leaves and "
            f"{fraction(height)} in along the barrel. How is its size written?"
        ),
        answer=HingeSizeAnswer(height, width),
        solution=(
            "Along the barrel is the height, and it is written first; across the open leaves is the width.",
            f"{fraction(height)} x {fraction(width)}.",
        ),
        convention="Hinge sizes give the height first; door sizes give the width first.",
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
    return Opening.model_validate({"mark": "practice", "size": size, "door": door})


def _leaf_width(random: Random) -> Problem:
    opening = _drawn_opening(random)
    filled = fill(opening)
    width = leaves_of(filled)[0].width
    return Problem(
        question=(
            f"The opening is {fraction(filled.opening_width)} in wide between the rabbet faces. The gap is "
            f"{fraction(filled.hinge_gap)} in on the hinge side and {fraction(filled.latch_gap)} in on the "
            "latch side. How wide is the door itself, on its pull face?"
        ),
        answer=LengthAnswer(width),
        solution=(
            "Net door width: w = O − hinge-side gap − latch-side gap.",
            f"{fraction(filled.opening_width)} − {fraction(filled.hinge_gap)} − {fraction(filled.latch_gap)} "
            f"= {fraction(width)} in.",
        ),
        convention="The nominal door width is the opening's, rabbet to rabbet; the net width the leaf's.",
    )


def _leaf_height(random: Random) -> Problem:
    opening = _drawn_opening(random)
    filled = fill(opening)
    height = leaves_of(filled)[0].height
    return Problem(
        question=(
            f"From the finished floor to the head rabbet it is {fraction(filled.opening_height)} in. The "
            f"head gap is {fraction(filled.head_gap)} in and the undercut {fraction(filled.undercut)} in. "
            "How high is the door itself?"
        ),
        answer=LengthAnswer(height),
        solution=(
            "The leaf is the opening height less head gap and undercut.",
            f"{fraction(filled.opening_height)} − {fraction(filled.head_gap)} − {fraction(filled.undercut)} "
            f"= {fraction(height)} in.",
        ),
        convention="The opening height is counted from the finished floor to the head rabbet.",
    )


TEMPLATES = (
    Template("opening width from figures", TOPIC, 1, _width),
    Template("opening height from figures", TOPIC, 1, _height),
    Template("feet into inches", TOPIC, 1, _feet),
    Template("open width of a hinge", TOPIC, 1, _hinge_width),
    Template("hinge size from measures", TOPIC, 1, _hinge_size),
    Template("opening size in figures", TOPIC, 2, _in_figures),
    Template("net width of a door", TOPIC, 2, _leaf_width),
    Template("net height of a door", TOPIC, 2, _leaf_height),
)
