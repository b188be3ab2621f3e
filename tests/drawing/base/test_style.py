import pytest

import configurator.drawing.base.style as style
from configurator.drawing.plan.sheet import moving_groups, moving_note_groups, plan_sheet
from configurator.units import Display
from tests.drawing.cases import demo, random_study


def test_the_widths_are_the_drafting_series_in_points():
    assert style.layers()["A-WALL"].width == pytest.approx(0.5 * 72 / 25.4)
    assert {round(layer.width * 25.4 / 72, 2) for layer in style.layers().values()} <= set(style.SERIES)


def test_what_a_line_is_for_has_its_width():
    """National CAD Standard 3.1 as course notes quote it: patterns fine, dimensions and leaders thin, objects
    medium, profiles wide, sheet borders extra wide."""
    widths = {
        0.18: ["A-WALL-PATT", "A-DOOR-PATT", "A-DOOR-FRAM-PATT"],
        0.25: ["A-ANNO-DIMS", "A-ANNO-DIMS-AXIS", "A-ANNO-LEAD", "A-ANNO-TTLB-LINE"],
        0.35: ["A-DETL-HNGE", "A-DOOR-FRAM"],
        0.50: ["A-WALL", "A-DOOR", "A-DETL-MCUT"],
        0.70: ["A-ANNO-BRDR"],
    }
    for width, names in widths.items():
        assert [round(style.layers()[name].width * 25.4 / 72, 2) for name in names] == [width] * len(names)


def test_layers_are_named_as_the_cad_standard_writes_them():
    for name in style.layers():
        parts = name.split("-")
        assert parts[0] == "A"
        assert 2 <= len(parts) <= 4
        assert all(len(part) == 4 and part.isupper() for part in parts[1:])


def test_the_accent_and_the_warning_are_told_apart_without_colour():
    axis, contact, plain = (style.layers()[name] for name in ("A-ANNO-AXIS", "A-ANNO-REDL", "A-ANNO-LEAD"))
    assert axis.dash
    assert not contact.dash
    assert contact.width > plain.width
    assert len({axis.ink, contact.ink, plain.ink}) == 3


@pytest.mark.parametrize("mark", ["112A", "205A", "140A", "151A", "164A", "201A"])
def test_every_layer_and_material_used_is_in_the_style(mark):
    sheet = plan_sheet(demo(mark), Display(), 864, 540)
    groups = (*sheet.still, *sheet.notes, *moving_groups(sheet, 170), *moving_note_groups(sheet, 170))
    items = [item for group in groups for item in group.primitives]
    assert {item.layer for item in items} <= set(style.layers())
    assert {fill for item in items if (fill := getattr(item, "fill", None))} <= set(style.materials())


def test_every_frame_kind_and_construction_uses_only_the_style():
    for seed in range(25):
        sheet = plan_sheet(random_study(seed), Display(), 864, 540)
        items = [item for group in (*sheet.still, *moving_groups(sheet, 120)) for item in group.primitives]
        assert {item.layer for item in items} <= set(style.layers())
        assert {fill for item in items if (fill := getattr(item, "fill", None))} <= set(style.materials())


def test_a_width_that_no_pen_has_is_refused(monkeypatch):
    row = style._LayerRow("A-WALL", 0.4, (), "ink", "wall")
    with pytest.raises(ValueError, match="not a drafting width"):
        style._layer(row)
