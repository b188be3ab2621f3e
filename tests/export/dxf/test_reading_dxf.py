"""Another's drawing: what is read of it, what is refused, and how its lines come to lie under a plan."""

import math

import ezdxf
import pytest

from configurator.export.dxf import reading
from configurator.export.dxf.reading import ForeignDrawing, ForeignLine, read_drawing
from configurator.export.dxf.tracing import Placing, background_of, outline_of


def a_file(folder, units=4, name="level.dxf"):
    """A wall in millimetres, its corner at 10000, 5000, a round table twice as a block, and a word."""
    drawing = ezdxf.new("R2010", units=units)
    space = drawing.modelspace()
    space.add_line((10000, 5000), (11000, 5000), dxfattribs={"layer": "A-WALL"})
    space.add_text("ROOM", dxfattribs={"layer": "A-ANNO"})
    table = drawing.blocks.new("TABLE")
    table.add_circle((0, 0), 254)
    space.add_blockref("TABLE", (10000, 6000), dxfattribs={"layer": "A-FURN"})
    space.add_blockref("TABLE", (10508, 6000), dxfattribs={"layer": "A-FURN", "xscale": 2, "yscale": 2})
    drawing.saveas(folder / name)
    return folder / name


def square(layer="L", side=10.0):
    corners = [(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)]
    return [ForeignLine(layer, (a, b)) for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)]


def test_lines_are_read_with_layers_and_unit_and_the_rest_is_counted(tmp_path):
    drawing = read_drawing(a_file(tmp_path))
    assert (drawing.units, drawing.layers) == ("mm", {"A-FURN": 2, "A-WALL": 1})
    assert drawing.not_read == {"TEXT": 1}
    small, large = (line.points for line in drawing.lines if line.layer == "A-FURN")
    # A block stands where it is inserted, as large as it is scaled; its layer 0 is the layer of the block.
    assert all(math.dist(point, (10000, 6000)) == pytest.approx(254, rel=0.01) for point in small)
    assert all(math.dist(point, (10508, 6000)) == pytest.approx(508, rel=0.01) for point in large)


@pytest.mark.parametrize(("code", "unit"), [(1, "in"), (2, "ft"), (6, "m"), (0, "")])
def test_the_unit_is_the_files_or_is_asked(tmp_path, code, unit):
    drawing = read_drawing(a_file(tmp_path, code))
    assert drawing.units == unit
    if not unit:
        with pytest.raises(ValueError, match="does not say its unit"):
            background_of(drawing, Placing((0, 0), "", ("A-WALL",)))


def test_a_background_is_inches_from_the_corner(tmp_path):
    placing = Placing((10000, 5000), "mm", ("A-WALL",))
    assert background_of(read_drawing(a_file(tmp_path)), placing).lines == ("0,0 39.37,0",)


@pytest.mark.parametrize(
    ("changes", "line"),
    [
        ({"turned": 90.0}, "0,0 0,39.37"),
        ({"mirrored": True}, "0,0 -39.37,0"),
        ({"turned": 90.0, "mirrored": True}, "0,0 0,39.37"),
        # From 14 in the other way the line reaches over the 15 ft that are kept.
        ({"unit": "in", "at": (10100.0, 5000.0)}, "-100,0 180,0"),
    ],
)
def test_a_drawing_is_turned_mirrored_and_cut_off(tmp_path, changes, line):
    placing = Placing(**{"at": (10000.0, 5000.0), "unit": "mm", "layers": ("A-WALL",), **changes})
    assert background_of(read_drawing(a_file(tmp_path)), placing).lines == (line,)


def test_lines_far_off_and_layers_that_are_not_there_are_said(tmp_path):
    drawing = read_drawing(a_file(tmp_path))
    with pytest.raises(ValueError, match="within 15 ft"):
        background_of(drawing, Placing((0, 0), "mm", ("A-WALL",)))
    with pytest.raises(ValueError, match="no line on layer A-DOOR; there are A-FURN, A-WALL"):
        background_of(drawing, Placing((0, 0), "mm", ("A-DOOR",)))


def test_more_lines_than_a_file_keeps_are_refused():
    lines = tuple(ForeignLine("L", ((0.0, n / 100), (1.0, n / 100))) for n in range(3001))
    with pytest.raises(ValueError, match="3,001 lines lie about the door; up to 3,000"):
        background_of(ForeignDrawing("x.dxf", "in", lines), Placing((0, 0), "in", ("L",)))


def test_a_long_line_is_kept_in_pieces_that_meet():
    wave = tuple((n / 10, math.sin(n)) for n in range(600))
    kept = background_of(
        ForeignDrawing("x.dxf", "in", (ForeignLine("L", wave),)), Placing((0, 0), "in", ("L",))
    )
    assert len(kept.lines) > 1
    assert all(len(line) <= 2000 for line in kept.lines)
    first, second = kept.lines[:2]
    assert first.split()[-1] == second.split()[0]


def test_lines_that_meet_in_any_order_are_one_outline():
    first, second, third, fourth = square()
    turned = ForeignLine("L", third.points[::-1])
    drawing = ForeignDrawing("x.dxf", "in", (second, fourth, turned, first))
    outline = outline_of(drawing, Placing((0, 0), "in", ("L",)))
    assert set(outline) == {(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)}
    area = (
        sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(outline, [*outline[1:], outline[0]], strict=True)) / 2
    )
    assert area == pytest.approx(100.0)  # counter-clockwise


def test_an_open_outline_says_where_and_several_say_how_many():
    with pytest.raises(ValueError, match=r"open at 0.000, 10.000 in"):
        outline_of(ForeignDrawing("x.dxf", "in", tuple(square()[:3])), Placing((0, 0), "in", ("L",)))
    apart = [ForeignLine("L", tuple((x + 50, y) for x, y in line.points)) for line in square()]
    with pytest.raises(ValueError, match="layer L make 2 outlines"):
        outline_of(ForeignDrawing("x.dxf", "in", (*square(), *apart)), Placing((0, 0), "in", ("L",)))


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "is no DXF drawing"),
        (b"AC1032" + b"\0" * 100, "is a DWG"),
        (b"  0\nSECTION\n  2\nENTITIES\n  0\nLINE\n 10\nabc\n", "cannot be read as a DXF|no lines|damaged"),
        (b"  0\nSECTION\n" + b"\xff" * 3000, "cannot be read as a DXF|no lines"),
        (b"  0\nSECTION\n  2\nENTITIES\n" + b"  0\nPOINT\n" * 40_001, "has 40,0.. entities"),
    ],
)
def test_what_is_no_drawing_is_refused_in_a_sentence(tmp_path, data, words):
    path = tmp_path / "bad.dxf"
    path.write_bytes(data)
    with pytest.raises(ValueError, match=words):
        read_drawing(path)


def test_what_is_too_large_is_refused_unread(tmp_path):
    path = tmp_path / "large.dxf"
    with path.open("wb") as file:
        file.truncate(reading.MOST_BYTES + 1)
    with pytest.raises(ValueError, match="has 12 MB; up to 12 MB are read: write out what stands about"):
        read_drawing(path)


def test_blocks_of_blocks_are_taken_apart_only_so_often(tmp_path):
    drawing = ezdxf.new("R2010", units=1)
    drawing.blocks.new("B0").add_line((0, 0), (1, 0))
    for deep in range(1, 8):
        block = drawing.blocks.new(f"B{deep}")
        for n in range(10):
            block.add_blockref(f"B{deep - 1}", (n, deep))
    drawing.modelspace().add_blockref("B7", (0, 0))
    drawing.saveas(tmp_path / "deep.dxf")
    with pytest.raises(ValueError, match="more than 5,000 blocks"):
        read_drawing(tmp_path / "deep.dxf")
