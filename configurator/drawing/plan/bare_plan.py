"""A plan of the closed door without dimensions or notes, as it stands beside a question about it."""

from configurator.drawing.base.view import Group, paper
from configurator.drawing.plan.panel import moving_parts
from configurator.drawing.plan.sheet import plan_sheet
from configurator.study import Study
from configurator.units import Display


def bare_plan(study: Study, width: float, height: float) -> tuple[Group, ...]:
    """Return the plans of a study so many points wide and high; nothing in them tells a number or an angle.

    The small picture is left out too: its arc ends where the swing does.
    """
    sheet = plan_sheet(study, Display(), width, height)
    ground, *_ = sheet.still
    views = [Group(one.main.view, (*one.main.still, *moving_parts(one, 0.0))) for one in sheet.panels]
    whole = paper(width, height)
    return (Group(whole, ground.primitives), *views)
