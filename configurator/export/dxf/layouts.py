"""Pages as DXF: what is drawn at 1:1 in model space, and a layout with viewports for every page.

The unit is the inch, or the millimetre where the pages are metric.
"""

import io
import math
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager

import ezdxf
from ezdxf.document import Drawing
from ezdxf.layouts import Paperspace

from configurator.drawing.base.lettering import text_width
from configurator.drawing.base.primitives import Point, Primitive, Region, Text
from configurator.drawing.base.view import Box, Group
from configurator.drawing.pages.page import MM_PER_INCH, POINTS_PER_INCH, Detail, Page, Scale
from configurator.export.dxf.blocks import add_detail, add_furniture
from configurator.export.dxf.entities import NAMES, DxfPainter
from configurator.export.dxf.tables import NOT_PLOTTED, add_layers, new_drawing, per_inch
from configurator.export.painting import paint

_FULL = Scale("full size", 1.0)
_APART = {True: 300.0, False: 12.0}
"""Details stand this far apart in model space at least, millimetres or inches, their origins at multiples."""
_TITLE = 10.0
_TITLE_LAYER = "A-ANNO-TTLB"
_LONGEST_NAME = 80
_LOCKED = 16384
"""The flag of a viewport that keeps its scale."""
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
        drawing = new_drawing(metric=sheets[0].metric)
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
    unit, row = per_inch(drawing), 0.0
    apart = _APART[unit != 1.0]
    for page in pages:
        painters: list[DxfPainter] = []
        column = 0.0
        for detail in page.details:
            box = _about_origin(detail, unit)
            x = column if not painters else _stepped(column + apart - box.left, apart)
            y = row if not row else -_stepped(box.top - row, apart)
            painters.append(_painter(drawing, detail, (x, y)))
            title = text_width(_title_words(page, detail), _TITLE) / detail.view.scale * unit
            column = x + max(box.right, box.left + title)
        yield page, painters
        boxes = map(_box_in_model, page.details, painters)
        row = min((box.bottom for box in boxes), default=row) - apart


def _stepped(length: float, step: float) -> float:
    return step * math.ceil(length / step)


def _about_origin(detail: Detail, unit: float) -> Box:
    """Return what a detail's window shows from the detail's own origin, `unit` drawing units an inch."""
    window, (x, y), scale = detail.view.window, detail.view.origin, detail.view.scale / unit
    return Box(
        (window.left - x) / scale,
        (window.bottom - y) / scale,
        (window.right - x) / scale,
        (window.top - y) / scale,
    )


def _painter(drawing: Drawing, detail: Detail, at: Point) -> DxfPainter:
    view = detail.view
    return DxfPainter(
        drawing, drawing.modelspace(), detail.scale, per_inch(drawing) / view.scale, view.origin, at
    )


def _box_in_model(detail: Detail, painter: DxfPainter) -> Box:
    window = detail.view.window
    return Box(*painter.point((window.left, window.bottom)), *painter.point((window.right, window.top)))


def _add_page(drawing: Drawing, page: Page, painters: Sequence[DxfPainter]) -> list[Box]:
    """Draw a page and return what of model space it takes."""
    layout = _layout(drawing, page)
    for detail, painter in zip(page.details, painters, strict=True):
        add_detail(drawing, drawing.modelspace(), detail, painter, page.opening)
        paint([_title(page, detail)], painter)
        _add_viewport(layout, detail, painter, per_inch(drawing))
    on_paper = DxfPainter(drawing, layout, _FULL, per_inch(drawing) / POINTS_PER_INCH, (0.0, 0.0))
    add_furniture(drawing, layout, page, on_paper)
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
    unit = per_inch(drawing)
    size = (page.paper.width / MM_PER_INCH * unit, page.paper.height / MM_PER_INCH * unit)
    units = "inch" if unit == 1.0 else "mm"
    layout.page_setup(size=size, units=units, scale=(1, 1), name=page.paper.name, device="")
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


def _add_viewport(layout: Paperspace, detail: Detail, painter: DxfPainter, unit: float) -> None:
    """Show a detail on its page at its scale, where its window is; locked, so that no wheel changes it."""
    window = detail.view.window
    middle = ((window.left + window.right) / 2, (window.bottom + window.top) / 2)
    point = unit / POINTS_PER_INCH
    viewport = layout.add_viewport(
        center=(middle[0] * point, middle[1] * point),
        size=(window.width * point, window.height * point),
        view_center_point=painter.point(middle),
        view_height=window.height / detail.view.scale * unit,
        dxfattribs={"layer": NOT_PLOTTED},
    )
    viewport.dxf.flags |= _LOCKED


def _title(page: Page, detail: Detail) -> Group:
    """Return what says under a detail in model space what it is; its viewport does not show that."""
    window = detail.view.window
    at = detail.view.to_plan((window.left, window.bottom - 1.5 * _TITLE))
    return Group(detail.view, (Text(_TITLE_LAYER, at, _title_words(page, detail), _TITLE),))


def _title_words(page: Page, detail: Detail) -> str:
    return f"{page.title}: {detail.name}, {detail.scale.name}" if detail.name else page.title


def _look_at(drawing: Drawing, boxes: Sequence[Box]) -> None:
    """Open the drawing on all of it."""
    left, bottom = min(box.left for box in boxes), min(box.bottom for box in boxes)
    right, top = max(box.right for box in boxes), max(box.top for box in boxes)
    height = 1.1 * max(top - bottom, (right - left) / 1.6)
    drawing.set_modelspace_vport(height, center=((left + right) / 2, (bottom + top) / 2))
