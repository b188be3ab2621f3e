"""What a draftsman keeps whole: door, frame, hinge and title block as blocks, paragraphs as one text.

A block carries attributes: of a part those of its opening, not shown; of a title block its fields, as shown.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import count, groupby
from types import MappingProxyType
from zlib import crc32

from ezdxf.document import Drawing
from ezdxf.entities import Insert
from ezdxf.layouts import BaseLayout, BlockLayout

from configurator.drawing.base.primitives import Dimension, Primitive, Text
from configurator.drawing.base.view import Group, paper
from configurator.drawing.pages.page import Detail, Page
from configurator.export.dxf.entities import DxfPainter, one_line
from configurator.export.dxf.tables import BOLD, CAPITALS, REGULAR, unseen
from configurator.export.painting import paint

DOOR, FRAME, HINGE, TITLE_BLOCK = "DOOR", "FRAME", "HINGE", "TITLE-BLOCK"
_PART_OF: Mapping[str, str] = MappingProxyType(
    {
        "A-DOOR": DOOR,
        "A-DOOR-SKIN": DOOR,
        "A-DOOR-HDWR": DOOR,
        "A-DOOR-FRAM": FRAME,
        "A-DETL-HNGE": HINGE,
    }
)
"""The layers whose lines are a part."""
_LAYER_OF = {DOOR: "A-DOOR", FRAME: "A-DOOR-FRAM", HINGE: "A-DETL-HNGE"}
_OF_TITLE = "A-ANNO-TTLB-LINE"
_UNSEEN_HEIGHT = 4.0
"""Points: as high as the least lettering, should somebody show it."""
_NOT_IN_NAMES = str.maketrans(dict.fromkeys(' <>/\\":;?*|=`,', "-"))


def add_detail(
    drawing: Drawing,
    space: BaseLayout,
    detail: Detail,
    painter: DxfPainter,
    opening: Sequence[tuple[str, str]],
) -> None:
    """Draw a detail: its door, frame and hinge each as one block where an opening is told, else plain."""
    tags = dict(detail.opening or opening)
    if tags and detail.hinge:
        tags["HINGE"] = detail.hinge
    for part, items in _in_parts(detail.primitives) if tags else [("", detail.primitives)]:
        if not part:
            paint([Group(detail.view, tuple(items))], painter)
            continue
        block = _new_block(drawing, f"{part}-{tags['MARK']}")
        paint([Group(detail.view, tuple(items))], painter.into(block))
        if len(block):
            _insert_part(space, block, painter, _LAYER_OF[part], tags)
        else:
            drawing.blocks.delete_block(block.name, safe=False)


def _in_parts(items: Sequence[Primitive]) -> Iterator[tuple[str, Sequence[Primitive]]]:
    """Yield what is drawn in order, a part whole where the last of it is drawn; "" is no part."""
    parts = [_part_of(item) for item in items]
    last = {part: index for index, part in enumerate(parts)}
    kept: dict[str, list[Primitive]] = {}
    for index, (part, item) in enumerate(zip(parts, items, strict=True)):
        if not part:
            yield part, (item,)
            continue
        kept.setdefault(part, []).append(item)
        if index == last[part]:
            yield part, kept[part]


def _part_of(item: Primitive) -> str:
    return "" if isinstance(item, Text | Dimension) else _PART_OF.get(item.layer, "")


def _insert_part(
    space: BaseLayout, block: BlockLayout, painter: DxfPainter, layer: str, tags: Mapping[str, str]
) -> None:
    inserted = space.add_blockref(block.name, painter.at, dxfattribs={"layer": layer})
    hidden = unseen(_UNSEEN_HEIGHT * painter.per_point, layer)
    for tag, value in tags.items():
        block.add_attdef(tag, (0.0, 0.0), dxfattribs={**hidden, "prompt": tag.capitalize()})
        inserted.add_attrib(tag, one_line(value), painter.at, hidden)


def add_furniture(drawing: Drawing, layout: BaseLayout, page: Page, painter: DxfPainter) -> None:
    """Draw what stands about the details: the title block as a block, a paragraph of notes as one text."""
    whole = paper(*page.paper.points)
    title = [item for item in page.furniture if _is_of_title(item)]
    others = [item for item in page.furniture if not _is_of_title(item)]
    for number, items in groupby(others, key=lambda item: item.paragraph if isinstance(item, Text) else 0):
        if number:
            painter.paragraph([item for item in items if isinstance(item, Text)])
        else:
            paint([Group(whole, tuple(items))], painter)
    if title:
        _insert_title(drawing, layout, title, painter, Group(whole, tuple(filter(_is_still, title))))


def _is_of_title(item: Primitive) -> bool:
    return item.layer == _OF_TITLE or (isinstance(item, Text) and bool(item.field))


def _is_still(item: Primitive) -> bool:
    """Whether it is the same on all sheets: lines, and the names of fields."""
    return not isinstance(item, Text) or item.layer != "A-ANNO-TTLB"


def _insert_title(
    drawing: Drawing, layout: BaseLayout, title: Sequence[Primitive], painter: DxfPainter, still: Group
) -> None:
    # Sheets of one paper and kind have one block, so that who edits it edits all of them.
    name = f"{TITLE_BLOCK}-{crc32(repr(still).encode()):08X}"
    block = drawing.blocks.get(name)
    is_new = block is None
    if block is None:
        block = drawing.blocks.new(name)
        paint([still], painter.into(block))
    inserted = layout.add_blockref(block.name, painter.at, dxfattribs={"layer": _OF_TITLE})
    for item in title:
        if isinstance(item, Text) and not _is_still(item):
            _add_field(block if is_new else None, inserted, item, painter)


def _add_field(block: BlockLayout | None, inserted: Insert, item: Text, painter: DxfPainter) -> None:
    tag = item.field.upper().replace(" ", "_")
    looks = {
        "layer": item.layer,
        "height": item.size * CAPITALS * painter.per_point,
        "style": BOLD if item.bold else REGULAR,
    }
    at = painter.point(item.at)
    if block is not None:
        block.add_attdef(tag, at, dxfattribs={**looks, "prompt": item.field})
    inserted.add_attrib(tag, one_line(item.text), at, looks)


def _new_block(drawing: Drawing, name: str) -> BlockLayout:
    """Return a new block, its name followed by a number where it is taken."""
    base = "".join(letter if letter.isprintable() else "-" for letter in name.translate(_NOT_IN_NAMES))[:80]
    names = (base if number == 1 else f"{base}-{number}" for number in count(1))
    return drawing.blocks.new(next(one for one in names if one not in drawing.blocks))
