"""Pages as DXF: what is drawn at 1:1 in inches in model space, and a layout with viewports for every page."""

import io
import math
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager

import ezdxf
from ezdxf.document import Drawing
from ezdxf.layouts import Paperspace

from configurator.drawing.base.primitives import Point, Primitive, Region, Text
from configurator.drawing.base.view import Box, Group, paper
from configurator.drawing.pages.page import MM_PER_INCH, POINTS_PER_INCH, Detail, Page, Scale
from configurator.export.dxf_entities import NAMES, DxfPainter
from configurator.export.dxf_tables import NOT_PLOTTED, add_layers, new_drawing
from configurator.export.painting import paint

_FULL = Scale("full size", 1.0)
_APART = 12.0
"""Details stand this far apart in model space at least, inches, each with its origin at a whole foot."""
_TITLE = 10.0
_TITLE_LAYER = "A-ANNO-TTLB"
_LONGEST_NAME = 80
_NOT_IN_NAMES = str.maketrans(dict.fromkeys('<>/\\":;?*|=`,', "-"))


def dxf_bytes(pages: Iterable[Page]) -> bytes:
    """Return pages as one DXF drawing, the same bytes every time for the same pages.

    The first detail's own origin is that of model space; a layout is as large as its page's paper. Raises
    ValueError for no page.
    """
    sheets = list(pages)
    if not sheets:
        raise ValueError("there is no sheet to write")
    with _without_the_moment():
        drawing = new_drawing()
        drawing.appids.add(NAMES)
        add_layers(drawing, _layer_names(sheets))
        boxes = [
            box for page, painters in _placed(drawing, sheets) for box in _add_page(drawing, page, painters)
        ]
        if boxes:
            _look_at(drawing, boxes)
        # The library registers these as a set yields them, in another order in every run of the program.
        for kind in sorted(drawing.entitydb.dxf_types_in_use()):
            drawing.classes.add_class(kind)
        written = io.StringIO()
        drawing.write(written)
    return written.getvalue().encode("utf-8", "replace")


@contextmanager
def _without_the_moment() -> Iterator[None]:
    """Have the library write neither the time nor identifiers of its own: every file would be another."""
    before = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = before


def _layer_names(pages: Sequence[Page]) -> Iterator[str]:
    yield _TITLE_LAYER
    for page in pages:
        for group in page.groups:
            for item in group.primitives:
                yield from _layers_of(item)


def _layers_of(item: Primitive) -> Iterator[str]:
    yield item.layer
    if pattern := getattr(item, "pattern_layer", None):
        yield pattern
    if isinstance(item, Region):
        for bound in item.bounds:
            yield bound.layer


def _placed(drawing: Drawing, pages: Sequence[Page]) -> Iterator[tuple[Page, list[DxfPainter]]]:
    """Yield each page with a painter for each of its details: side by side, page under page."""
    row = 0.0
    for page in pages:
        painters: list[DxfPainter] = []
        column = 0.0
        for detail in page.details:
            box = _about_origin(detail)
            x = column if not painters else _whole_feet(column + _APART - box.left)
            y = row if not row else -_whole_feet(box.top - row)
            painters.append(_painter(drawing, detail, (x, y)))
            column = x + box.right
        yield page, painters
        boxes = map(_box_in_model, page.details, painters)
        row = min((box.bottom for box in boxes), default=row) - _APART


def _whole_feet(inches: float) -> float:
    return 12.0 * math.ceil(inches / 12.0)


def _about_origin(detail: Detail) -> Box:
    """Return what a detail's window shows, inches from the detail's own origin."""
    window, (x, y), scale = detail.view.window, detail.view.origin, detail.view.scale
    return Box(
        (window.left - x) / scale,
        (window.bottom - y) / scale,
        (window.right - x) / scale,
        (window.top - y) / scale,
    )


def _painter(drawing: Drawing, detail: Detail, at: Point) -> DxfPainter:
    view = detail.view
    return DxfPainter(drawing, drawing.modelspace(), detail.scale, 1 / view.scale, view.origin, at)


def _box_in_model(detail: Detail, painter: DxfPainter) -> Box:
    window = detail.view.window
    return Box(*painter.point((window.left, window.bottom)), *painter.point((window.right, window.top)))


def _add_page(drawing: Drawing, page: Page, painters: Sequence[DxfPainter]) -> list[Box]:
    """Draw a page and return what of model space it takes."""
    layout = _layout(drawing, page)
    for detail, painter in zip(page.details, painters, strict=True):
        paint([detail.group, _title(page, detail)], painter)
        _add_viewport(layout, detail, painter)
    on_paper = DxfPainter(drawing, layout, _FULL, 1 / POINTS_PER_INCH, (0.0, 0.0))
    paint([Group(paper(*page.paper.points), page.furniture)], on_paper)
    return list(map(_box_in_model, page.details, painters))


def _layout(drawing: Drawing, page: Page) -> Paperspace:
    """Return a new layout named after the page, as large as its paper, printed one to one."""
    name = _free_name(drawing, page.title)
    first = next((one for one in drawing.layout_names_in_taborder() if one == "Layout1"), None)
    if first is None:
        layout = drawing.layouts.new(name)
    else:
        drawing.layouts.rename(first, name)
        layout = drawing.paperspace(name)
    size = (page.paper.width / MM_PER_INCH, page.paper.height / MM_PER_INCH)
    layout.page_setup(size=size, units="inch", scale=(1, 1), name=page.paper.name, device="")
    for viewport in layout.viewports():  # the one for the paper itself
        viewport.dxf.layer = NOT_PLOTTED
    return layout


def _free_name(drawing: Drawing, title: str) -> str:
    """Return a page's title as a layout may be named: no marks, not too long, and not taken."""
    plain = "".join(letter if letter.isprintable() else " " for letter in title.translate(_NOT_IN_NAMES))
    base = plain.strip()[:_LONGEST_NAME] or "Sheet"
    taken = {name.lower() for name in drawing.layout_names()}
    names = (base if number == 1 else f"{base} ({number})" for number in range(1, len(taken) + 2))
    return next(name for name in names if name.lower() not in taken)


def _add_viewport(layout: Paperspace, detail: Detail, painter: DxfPainter) -> None:
    """Show a detail on its page at its scale, where its window is."""
    window = detail.view.window
    middle = ((window.left + window.right) / 2, (window.bottom + window.top) / 2)
    layout.add_viewport(
        center=(middle[0] / POINTS_PER_INCH, middle[1] / POINTS_PER_INCH),
        size=(window.width / POINTS_PER_INCH, window.height / POINTS_PER_INCH),
        view_center_point=painter.point(middle),
        view_height=window.height / detail.view.scale,
        dxfattribs={"layer": NOT_PLOTTED},
    )


def _title(page: Page, detail: Detail) -> Group:
    """Return what says under a detail in model space what it is; its viewport does not show that."""
    window = detail.view.window
    at = detail.view.to_plan((window.left, window.bottom - 1.5 * _TITLE))
    words = f"{page.title}: {detail.name}, {detail.scale.name}" if detail.name else page.title
    return Group(detail.view, (Text(_TITLE_LAYER, at, words, _TITLE),))


def _look_at(drawing: Drawing, boxes: Sequence[Box]) -> None:
    """Open the drawing on all of it."""
    left, bottom = min(box.left for box in boxes), min(box.bottom for box in boxes)
    right, top = max(box.right for box in boxes), max(box.top for box in boxes)
    height = 1.1 * max(top - bottom, (right - left) / 1.6)
    drawing.set_modelspace_vport(height, center=((left + right) / 2, (bottom + top) / 2))
