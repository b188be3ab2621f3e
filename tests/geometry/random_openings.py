"""Random openings of every arrangement, mounting and surroundings, for the judge and for comparisons."""

from dataclasses import dataclass

from configurator.geometry.pin import Hanging
from configurator.geometry.shapes import Hardware, Leaf, Obstruction, OtherHalf, OtherLeaf


@dataclass
class Problem:
    hanging: Hanging
    leaf: Leaf
    hardware: tuple = ()
    obstructions: tuple = ()
    other: OtherLeaf | None = None


def _sixteenth(chance, low, high):
    return chance.randint(round(low * 16), round(high * 16)) / 16


def random_hanging(chance, **given):
    thick = chance.choice([1.375, 1.75, 1.75, 1.75, 2.0, 2.25])
    values = {
        "O": chance.choice([24, 30, 32, 36, 36, 42, 48]) + chance.choice([0, 0, 0.3711]),
        "T": thick,
        "g_h": chance.choice([0.0625, 0.09375, 0.125, 0.125, 0.11]),
        "g_l": chance.choice([0.0625, 0.125, 0.125]),
        "beta": chance.choice([0, 0.0625, 0.0625]),
        "R": thick + chance.choice([0.1875, 0.1875, 0.0625, 0.25, 0.5, 1.0]),
        "k": chance.choice([0.0625, 0.0625, 0.03, 0]),
        "s": chance.choice([0.625, 0.4375, 0]),
        "F": chance.choice([2, 2, 1.75, 1, 0.75]),
        "D": chance.choice([5.875, 4.5625, 8, 3.5]),
        "p": chance.choice([0.5, 0.5, 0, 0.25, -0.5, -1.0, -2.0]) + chance.choice([0, 0.0173]),
        "b": 0.25,
        "t": 0.134,
        "W": chance.choice([3.5, 4, 4, 4.5, 4.5, 5, 6, 7]),
        "d_b": chance.choice([0.5, 0.58, 0.75]),
    }
    return Hanging(**(values | given))


def random_thing(chance, kind=None):
    kind = kind or chance.choice(["chair rail", "base", "casing", "wainscot", "column", "other", "other"])
    side = "latch" if chance.random() < 0.1 else "hinge"
    low = chance.choice([None, 0.0, 20.0, 32.0])
    high = chance.choice([None, 36.0, 40.0, 8.0]) if not low else chance.choice([None, low + 6])
    common = {"kind": kind, "side": side, "bottom": low, "top": high}
    if kind == "return wall":
        return Obstruction(kind=kind, fills=True, start=_sixteenth(chance, 0, 30) + 0.01)
    if kind == "casing":
        return Obstruction(
            **common,
            from_frame=True,
            projection=_sixteenth(chance, 0.25, 2),
            start=chance.choice([0, -0.5, 0.25]),
            length=chance.choice([None, 3.25, 2.0]),
        )
    if kind == "column":
        size = _sixteenth(chance, 0.5, 12)
        far = chance.choice([None, size + _sixteenth(chance, 0, 20)])
        return Obstruction(**common, diameter=size, start=_sixteenth(chance, 0, 30), projection=far)
    if kind == "other":
        return Obstruction(
            **common,
            projection=_sixteenth(chance, 0.5, 10),
            start=_sixteenth(chance, 0, 34) if chance.random() < 0.9 else -_sixteenth(chance, 0.5, 40),
            length=_sixteenth(chance, 0.5, 10),
            offset=_sixteenth(chance, 0, 30),
        )
    return Obstruction(
        **common,
        projection=_sixteenth(chance, 0.25, 3),
        start=_sixteenth(chance, 0, 4),
        length=chance.choice([None, None, 6.0, 20.0]),
    )


def random_hardware(chance):
    kind = chance.choice(["lever", "knob", "knob", "pull", "panic device", "closer", "other"])
    width = 2.0 if kind == "knob" else chance.choice([1.0, 4.0, 4.5, 12.0])
    return Hardware(
        kind=kind,
        projection=_sixteenth(chance, 1, 4) + (1.0 if kind == "knob" else 0.0),
        from_latch_edge=width / 2 + _sixteenth(chance, 0.5, 8),
        width=width,
        height=chance.choice([38.0, 42.0, 80.0, 6.0]),
        vertical=chance.choice([2.0, 3.5, 10.0]),
        face="push" if chance.random() < 0.15 else "pull",
        round=kind == "knob" and chance.random() < 0.8,
    )


def random_carried(chance, hanging, split=None):
    """What a closed leaf beside the swinging one carries: lapping it, just clear of it, or anywhere."""
    kind = chance.choice(["strip", "near", "near", "near", "behind", "behind", "any"])
    if split is not None:
        return _at_the_split(chance, hanging, split)
    if kind == "any":
        return random_hardware(chance)
    if kind == "behind":
        return Hardware(
            kind="panic device", face="push", projection=_sixteenth(chance, 2, 5), width=1.0,
            from_latch_edge=0.5 - hanging.g_l - _sixteenth(chance, 0, 2), height=40.0, vertical=6.0,
        )  # fmt: skip
    lap = 1.0 if kind == "strip" else hanging.g_l - chance.uniform(0.0, 0.1)
    face = "push" if chance.random() < 0.2 else "pull"
    return Hardware(
        kind="astragal", face=face, projection=0.25, from_latch_edge=1.0 - lap, width=2.0,
        height=42.0, vertical=80.0,
    )  # fmt: skip


def _at_the_split(chance, hanging, split):
    """A strip or a shelf near the split of a Dutch door, seldom so high that it crosses it."""
    strip = chance.random() < 0.5
    return Hardware(
        kind="astragal" if strip else "shelf",
        face=chance.choice(["pull", "push"]),
        projection=0.25 if strip else _sixteenth(chance, 4, 10),
        from_latch_edge=hanging.O / 2,
        width=hanging.O - chance.choice([4, 8]),
        height=split + chance.choice([-0.5625, -0.5625, 0.5625, 0.5625, 0.0, 3.0, -3.0]),
        vertical=1.0,
    )


def _dutch_leaf(chance, hanging, barrels):
    """One half, the other closed over or under it."""
    lower, upper = (0.75, 42.0), (42.125, 83.875)
    own, beside = chance.choice([(lower, upper), (upper, lower)])
    carried = tuple(random_carried(chance, hanging, 42.0625) for _ in range(chance.choice([0, 1, 1])))
    half = OtherHalf(bottom=beside[0], top=beside[1], hardware=carried)
    held = tuple(barrel for barrel in barrels if own[0] < barrel[0] < own[1])
    return Leaf(bottom=own[0], top=own[1], barrels=held, half=half if chance.random() < 0.8 else None)


def _other_leaf(chance, hanging):
    """The other leaf of a pair, closed more often than open."""
    w = chance.choice([18.0, 30.0, hanging.w])
    carried = tuple(random_carried(chance, hanging) for _ in range(chance.choice([0, 0, 1, 1, 2])))
    return OtherLeaf(
        opening=hanging.O + w + hanging.g_h, w=w, beta=hanging.beta, closed=chance.random() < 0.9,
        hardware=carried,
    )  # fmt: skip


SURFACE = ["half mortise", "half surface", "full surface", "swing clear"]
STYLES = ["walls", "walls", "things", "things", "return", "column", "knob", "bind", "bind"]
STYLES += ["pair", "pair", "pair", "dutch", "dutch", "mounting"]


def _given(chance, style):
    """What a style fixes of the hanging."""
    if style == "bind":
        return {"W": chance.choice([6.0, 7.0, 8.0, 9.0]), "beta": 0, "g_l": 0.0625}
    if style == "mounting":
        return {"mounting": chance.choice(SURFACE)}
    if style == "walls" and chance.random() < 0.9:
        return {"p": -_sixteenth(chance, 4, 120)}  # deep in a reveal
    if style == "pair":
        return {"beta": chance.choice([0, 0.0625]), "W": chance.choice([4, 5, 6, 7, 8.0])}
    return {}


def random_problem(chance):
    """One opening of any arrangement, mounting and surroundings, in sixteenths and odd values mixed."""
    style = chance.choice(STYLES)
    barrels = tuple((low, low + 4.5) for low in (10.0, 36.0, 46.0, 72.0))
    given = _given(chance, style)
    if chance.random() < 0.12:
        given |= {"mounting": chance.choice(SURFACE)}
    hanging = random_hanging(chance, **given)
    leaf = _dutch_leaf(chance, hanging, barrels) if style == "dutch" else Leaf(barrels=barrels)
    other = _other_leaf(chance, hanging) if style == "pair" else None
    things = {"things": 2, "pair": 1, "dutch": 2, "mounting": 1, "knob": 1}.get(style, 0)
    about = [random_thing(chance) for _ in range(things if chance.random() < 0.6 else 0)]
    if style in ("return", "column"):
        about.append(random_thing(chance, {"return": "return wall"}.get(style, style)))
    fitted = [random_hardware(chance) for _ in range(chance.choice([0, 1, 1, 2]))]
    if style == "dutch" and chance.random() < 0.4:
        fitted.append(random_carried(chance, hanging, 42.0625))
    if style == "pair" and chance.random() < 0.4:
        fitted.append(random_carried(chance, hanging))
    return Problem(hanging, leaf, tuple(fitted), tuple(about), other)
