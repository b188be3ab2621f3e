"""Doors at random, written into models and described as the openings that must be read from them."""

import math
import random

from tests.building.author import INCHES, Author, turned

SCHEMAS = ("IFC2X3", "IFC4", "IFC4X3")
FACE = 2.0
"""Inches that every frame shows; the overall sizes are those of the frame."""
LAYERS = ("gypsum", "stud", "tile", "block", "air")


def sixteenths(rng, least, most):
    return rng.randint(round(16 * least), round(16 * most)) / 16


def random_door(author, rng, mark, place):
    """Write one door with its wall and neighbours; return the keys of the opening that it is."""
    operation = rng.choice(("SINGLE_SWING_LEFT", "SINGLE_SWING_RIGHT"))
    layers = [(rng.choice(LAYERS), sixteenths(rng, 0.5, 4)) for _ in range(rng.randint(0, 3))]
    layers.insert(rng.randint(0, len(layers)), ("core", sixteenths(rng, 3.5, 8)))
    total, flipped, offset = math.fsum(each for _, each in layers), rng.random() < 0.5, sixteenths(rng, -3, 3)
    length = 400.0
    wall = author.wall(place, length, layers, flipped=flipped, offset=offset)
    low, high = (offset - total, offset) if flipped else (offset, offset + total)
    width, height = sixteenths(rng, 28, 60), sixteenths(rng, 78, 96)
    back = rng.random() < 0.5
    # A door turned about stands with its x against the wall's; its y = 0 is the wall face behind it.
    own = place @ (
        turned(length / 2 + width / 2, high, 0, 180) if back else turned(length / 2 - width / 2, low)
    )
    proud = sixteenths(rng, -0.25, 0.75)
    frame, thick = (-0.25, total + proud), rng.choice((1.375, 1.75, 2.25))
    left = operation.endswith("LEFT")
    handle = width - 5 if left else 5
    author.door(
        wall, own, width, height, operation, tag=mark, frame=frame, leaf=(frame[1] - thick, frame[1]),
        handle=handle if rng.random() < 0.5 else None, lining={"LiningThickness": FACE},
        panel={"PanelDepth": thick}, through=(-30.0, 30.0),
        swing=(-1 if left else 1, 1) if rng.random() < 0.3 else None,
    )  # fmt: skip
    reach = width - 2 * FACE
    things = [*_things(rng, reach)]
    for thing in things:
        _author(author, own, thing, left, width, total, height)
    from_pull = layers if flipped != back else layers[::-1]
    return {
        "mark": mark,
        "hand": "LH" if left else "RH",
        "size": {"width": reach, "height": height - FACE},
        "door": {"thickness": thick},
        "frame": {"face": FACE, "jamb_depth": frame[1] - frame[0]},
        "wall": {
            "thickness": total,
            "layers": [{"name": name, "thickness": each} for name, each in from_pull],
            "frame_proud": proud,
        },
        "obstructions": things,
    }


def _things(rng, reach):
    """Yield things as they would be typed, side by side so that none hides another."""
    for side in ("hinge", "latch"):
        start = sixteenths(rng, 0, 4)
        if rng.random() < 0.6:
            bottom = sixteenths(rng, 4, 60)
            length = sixteenths(rng, 4, 12)
            yield {"kind": "chair rail", "side": side, "projection": sixteenths(rng, 0.5, 4), "start": start,
                   "length": length, "bottom": bottom, "top": bottom + sixteenths(rng, 1, 9)}  # fmt: skip
            start += length + 1
        if rng.random() < 0.5:
            length = sixteenths(rng, 2, 6)
            yield {"kind": "other", "side": side, "projection": sixteenths(rng, 2, 20), "start": start,
                   "length": length, "offset": sixteenths(rng, 1, 20)}  # fmt: skip
            start += length + 1
        if rng.random() < 0.4:
            yield {"kind": "return wall", "side": side, "start": start}
        elif rng.random() < 0.5:
            yield {"kind": "column", "side": side, "start": start, "diameter": sixteenths(rng, 4, 12),
                   "offset": sixteenths(rng, 0.5, 6)}  # fmt: skip


def _author(author, own, thing, left, width, wall, height):
    """Put a thing where it was described: measured along the wall from the frame's outer edge of its side."""
    at_left = (thing["side"] == "hinge") == left

    def across(start, end):
        return (-end, -start) if at_left else (width + start, width + end)

    start, off = thing["start"], wall + thing.get("offset", 0.0)
    if thing["kind"] == "column":
        radius = thing["diameter"] / 2
        x = sum(across(start, start + 2 * radius)) / 2
        author.thing("IfcColumn", "Column", [author.cylinder(x, off + radius, radius, 0, 120)], own)
    elif thing["kind"] == "return wall":
        solid = author.box(*across(start, start + 4.875), wall, wall + 150, 0, 120)
        author.thing("IfcWall", "Return", [solid], own)
    else:
        kind, name = (
            ("IfcRailing", "Chair rail") if thing["kind"] == "chair rail" else ("IfcFurniture", "Cabinet")
        )
        if author.old and kind == "IfcFurniture":
            kind = "IfcFurnishingElement"
        ends = across(start, start + thing["length"])
        solid = author.box(
            *ends, off, off + thing["projection"], thing.get("bottom", 0.0), thing.get("top", height + 5)
        )
        author.thing(kind, name, [solid], own)


def random_model(seed, count):
    """Return a model with doors at random, and the openings by mark that must come of it."""
    rng = random.Random(seed)
    author = Author(SCHEMAS[seed % 3], [*INCHES][seed % 4])
    wanted = {}
    for number in range(count):
        if number % 20 == 0 and number:
            author.add_storey(f"Level {number // 20 + 1}", 144.0 * (number // 20))
        mark = f"{100 + number}A"
        z = 144.0 * (number // 20)
        place = turned(1200.0 * (number % 20), 0.0, z, 0.0) @ turned(
            0, 0, 0, rng.choice((0, 90, 180, 37.5, 211.25))
        )
        wanted[mark] = random_door(author, rng, mark, place)
    return author, wanted


NEAR = {"column": 0.01}
"""A round thing comes as a polygon, so that its edge lies a little inside."""


def differences(found, wanted):
    """Yield what an opening that was read says otherwise than the one that was written."""
    for path in ("hand", "size.width", "size.height", "door.thickness", "frame.face", "frame.jamb_depth",
                 "wall.thickness", "wall.frame_proud"):  # fmt: skip
        own, value = found, wanted
        for key in path.split("."):
            own, value = getattr(own, key), value[key]
        if own != value and not (isinstance(value, float) and abs(own - value) < 1e-5):
            yield f"{path}: {value} written, {own} read"
    layers = [(layer.name, layer.thickness) for layer in found.wall.layers]
    asked = [(layer["name"], layer["thickness"]) for layer in wanted["wall"]["layers"]]
    if [name for name, _ in layers] != [name for name, _ in asked] or any(
        abs(one - two) > 1e-5 for (_, one), (_, two) in zip(layers, asked, strict=True)
    ):
        yield f"layers: {asked} written, {layers} read"
    yield from _things_differ(found.obstructions, wanted["obstructions"])


def _things_differ(found, wanted):
    left = list(found)
    for thing in wanted:
        alike = [one for one in left if all(_same(thing, key, getattr(one, key)) for key in KEYS)]
        if not alike:
            yield f"{thing} written, not read"
        else:
            left.remove(alike[0])
    yield from (f"{one} read, not written" for one in left)


KEYS = ("kind", "side", "start", "projection", "length", "offset", "diameter", "bottom", "top")


def _same(thing, key, value):
    wanted = thing.get(key)
    if isinstance(wanted, float) and isinstance(value, float):
        return abs(wanted - value) < NEAR.get(thing["kind"], 2e-4)
    return wanted == value
