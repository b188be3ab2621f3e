"""A building model as the table that the intake reads: a row a door, behind its cells what is known.

What a model leaves open is asked once for all doors, as with a schedule: what its overall sizes are of, which
side is outside, and which to believe where a door's operation type and its shape disagree.
"""

import math
import re
from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from configurator.building.along_wall import Frame, obstructions_of
from configurator.building.records import BuildingModel, ModelDoor, Sides
from configurator.intake.sheet import SheetRow
from configurator.intake.table import Behind, ScheduleTable
from configurator.model import WallLayer
from configurator.tables import FrameSizeRow, table
from configurator.units import MM_PER_INCH

_USUAL_FRAME = "knocked-down drywall"
_LINING = 1 / 16
_ON_A_64TH = 1e-4
_CORRIDOR = re.compile(
    r"\b(?:corridor|hall(?:way)?|lobby|vestibule|passage|concourse|foyer|stair(?:s|well)?|circulation|landing)\b",
    re.IGNORECASE,
)
_WAYS: tuple[tuple[str, str], ...] = (
    ("DOUBLE_DOOR_SINGLE_SWING_OPPOSITE", "double-egress pair"),
    ("DOUBLE_DOOR_DOUBLE_SWING", "double-acting pair"),
    ("DOUBLE_SWING", "double-acting door"),
    ("SLIDING", "sliding door"),
    ("FOLDING", "folding door"),
    ("REVOLVING", "revolving door"),
    ("ROLLINGUP", "rolling door"),
    ("LIFTING", "overhead door"),
)
"""What is no door on butt hinges by its operation type, in words that the intake asks about."""
_MEASURED = "what stands along the wall is measured from the frame: say what the overall size is of"
_NOT_LOOKED = "what stands along the wall was not looked for"


def model_table(model: BuildingModel) -> ScheduleTable:
    """Return a model as a table: its headings are those of a schedule, its unit that of the file."""
    marks, told = _marks(model.doors)
    unit = "mm" if model.metric else "in"
    texts = sorted({title for door in model.doors for title in door.texts})
    headings = (
        *(title.format(unit=unit) for title in _HEADINGS),
        *(f"Model {title.lower()}" for title in texts),
    )
    rows, behind = [], {}
    for line, (door, mark) in enumerate(zip(model.doors, marks, strict=True), 1):
        row = _Row(door, mark, model.metric, texts)
        rows.append(SheetRow(line, tuple(row.cells[heading] for heading in (*_HEADINGS, *texts))))
        for heading, found in row.behind.items():
            place = _HEADINGS.index(heading)
            behind[line, place, row.cells[heading]] = found
    return ScheduleTable(
        model.file,
        0,
        tuple(("", heading) for heading in headings),
        tuple(rows),
        (),
        (*model.told, told) if told else model.told,
        behind=behind,
        source="model",
    )


_HEADINGS = (
    "Mark", "Level", "From room", "To room", "Width ({unit})", "Height ({unit})", "Leaves", "Hand",
    "Door type", "Thickness ({unit})", "Frame face ({unit})", "Jamb depth ({unit})",
    "Wall thickness ({unit})", "Wall layers", "Frame proud of wall ({unit})", "Found along the wall",
    "Fire rating", "Exposure", "Closer", "Accessible", "Global id", "Model type", "Model name", "Model tag",
)  # fmt: skip


# --- Marks ---


def _marks(doors: Sequence[ModelDoor]) -> tuple[tuple[str, ...], str]:
    """Return every door's mark, and which of its names was taken for it."""
    names = dict.fromkeys(name for door in doors for name in door.marks)
    offered: dict[str, list[str]] = {name: [door.marks.get(name, "") for door in doors] for name in names}
    offered |= {"Name": [door.name for door in doors], "Tag": [door.tag for door in doors]}
    best = max(offered, key=lambda name: _worth(offered[name], name))
    told = f"the marks are the doors' {best}; another column can be chosen" if best not in names else ""
    return tuple(offered[best]), told


def _worth(texts: Sequence[str], name: str) -> float:
    """Return how well texts would do as marks: short, with a figure, each once; no editor's number."""
    good = [text for text in texts if len(text) <= 16 and any(map(str.isdigit, text))]
    numbered = sum(text.isdigit() and len(text) > 4 for text in good)
    once = len(set(good)) / max(len(good), 1)
    return once * (len(good) - numbered / 2) / max(len(texts), 1) - (0.001 if name == "Tag" else 0.0)


# --- A row ---


@dataclass
class _Row:
    """One door: its cells by heading, and what stands behind them."""

    door: ModelDoor
    mark: str
    metric: bool
    texts: Iterable[str]
    cells: dict[str, str] = field(default_factory=dict)
    behind: dict[str, Behind] = field(default_factory=dict)

    def __post_init__(self) -> None:
        door = self.door
        self.cells |= dict.fromkeys((*_HEADINGS, *self.texts), "")
        sides = door.sides or (-1, 1)
        self.cells |= {
            "Mark": self.mark,
            "Level": door.level,
            "From room": door.rooms.get(-sides[1], ""),
            "To room": door.rooms.get(sides[1], ""),
            "Leaves": "pair" if "DOUBLE_DOOR" in door.operation else "single",
            "Door type": next((words for way, words in _WAYS if door.operation.startswith(way) or (
                way in door.operation and not way.startswith("DOUBLE"))), ""),
            "Fire rating": door.rating,
            "Exposure": {True: "exterior", False: "interior", None: ""}[door.external],
            "Closer": _yes(door.self_closing),
            "Accessible": _yes(door.accessible),
            "Global id": door.global_id,
            "Model type": door.type_name,
            "Model name": door.name,
            "Model tag": door.tag,
            **door.texts,
        }  # fmt: skip
        self._size()
        self._hand()
        self._frame()
        self._wall()
        self._along()

    def _text(self, inches: float | None) -> str:
        if inches is None:
            return ""
        value = inches * MM_PER_INCH if self.metric else inches
        return f"{value:.4f}".rstrip("0").rstrip(".")

    def _exact(self, inches: float) -> float:
        """Return a length as it was given, without what a unit adds behind: a 64th, or the file's own."""
        steps = inches * 64
        if abs(steps - round(steps)) < _ON_A_64TH:
            return round(steps) / 64
        return round(inches * MM_PER_INCH, 5) / MM_PER_INCH if self.metric else round(inches, 6)

    def _put(self, heading: str, text: str, behind: Behind) -> None:
        self.cells[heading] = text
        self.behind[heading] = behind

    # --- Sizes ---

    @property
    def _face(self) -> float:
        """How wide the frame shows: its lining, else what is usual."""
        return self.door.lining_thickness or _usual_face()

    def _by_size(self, make: Callable[[bool], Behind], sentence: str) -> Behind:
        """Return what depends on what the overall size is of; `make` is told whether it is the frame's."""
        return Behind(
            question="overall size",
            sentence=sentence,
            answers={"opening": make(False), "frame": make(True)},
        )

    def _size(self) -> None:
        door = self.door
        for title, path, size, faces in (
            ("Width ({unit})", "size.width", door.width, 2),
            ("Height ({unit})", "size.height", door.height, 1),
        ):
            if size is None:
                self._put(title, "not given", Behind(sentence=door.refused or "the model gives none"))
            elif door.operation.startswith("SWING_FIXED"):
                reason = "a fixed leaf stands beside the swinging one: type the opening of the swinging leaf"
                self._put(
                    title, self._text(size), Behind(sentence=reason) if faces == 2 else Behind({path: size})
                )
            else:
                self._put(title, self._text(size), self._sized(path, size, faces))

    def _sized(self, path: str, size: float, faces: int) -> Behind:
        less = faces * self._face
        assumed = "" if self.door.lining_thickness else " of the usual width"
        told = f"the opening is the overall size less the frame's faces{assumed}"

        def make(of_frame: bool) -> Behind:
            return Behind({path: self._exact(size - less if of_frame else size)}, (told,) if of_frame else ())

        return self._by_size(make, f"{self._text(size)} overall: say what the overall size is of")

    # --- Hand ---

    def _variants(self) -> Mapping[str, Sides]:
        """Return where hinges and opening side are: one entry where operation and shape agree, else both."""
        door, shape = self.door, self.door.shape
        said = door.sides
        if door.pair:
            said = (-1, 1)
        if said is None:
            return {"shape": (shape.hinges, shape.opens)} if shape.hinges and shape.opens else {}
        seen = (said[0] if door.pair else shape.hinges or said[0], shape.opens or said[1])
        return {"operation": said} if seen == said else {"operation": said, "shape": seen}

    def _by_hand(self, make: Callable[[Sides], Behind]) -> Behind | None:
        """Return what depends on the hand; None where nothing is known of it."""
        variants = self._variants()
        if len(variants) < 2:
            return next((make(sides) for sides in variants.values()), None)
        left_open = Behind(told=("operation type and shape disagree: the hand is left open",))
        return Behind(
            question="hand of model",
            sentence=f"the operation type says {_seen(variants['operation'])}, and {self.door.shape.why} "
            f"{_seen(variants['shape'])}",
            answers={**{name: make(sides) for name, sides in variants.items()}, "open": left_open},
        )

    def _hand(self) -> None:
        door = self.door
        if door.refused and door.width is not None and door.height is not None:
            self._put(
                "Hand", "not known", Behind(sentence=f"{door.refused}; type the hand, or mend the model")
            )
            return
        if self.cells["Door type"]:
            return
        found = self._by_hand(self._trade_hand)
        variants = list(self._variants().values())
        if found is not None:
            self._put("Hand", " or ".join(map(_seen, variants)), found)

    def _trade_hand(self, sides: Sides) -> Behind:
        """Return the hand by which side is outside; that of a pair is of its leaf on the left."""
        told: tuple[str, ...] = ()
        if self.door.pair:
            told = ("the active leaf of a pair is taken as the one on the right, seen from the pull side",)
        elif self.door.sides is None:
            told = (f"the model says no operation: the hand is what {self.door.shape.why} shows",)
        inward, outward = _hands(sides)
        outside, why = self._outside(sides)
        if outside:
            hand = inward if outside == "push" else outward
            return Behind({"hand": hand}, (*told, why))
        return Behind(
            question="outside",
            told=told,
            sentence=f"{_seen(sides)}: say which side is outside",
            answers={
                "push": Behind({"hand": inward}),
                "pull": Behind({"hand": outward}),
                "open": Behind(told=("which side is outside is not known: the hand is left open",)),
            },
        )

    def _outside(self, sides: Sides) -> tuple[str, str]:
        """Return which side is outside, and why that is known; empty where it is not."""
        push, pull = self.door.rooms.get(-sides[1], ""), self.door.rooms.get(sides[1], "")
        if self.door.external and bool(push) != bool(pull):
            return ("pull" if push else "push"), "outside is the side of an exterior door that has no room"
        halls = [bool(_CORRIDOR.search(room)) for room in (push, pull)]
        if not self.door.external and push and pull and halls[0] != halls[1]:
            return ("push" if halls[0] else "pull"), "outside is the side of the corridor"
        return "", ""

    # --- Frame and wall ---

    def _frame(self) -> None:
        door = self.door
        if door.leaf_thickness:
            behind = Behind({"door.thickness": self._exact(door.leaf_thickness)})
            self._put("Thickness ({unit})", self._text(door.leaf_thickness), behind)
        if door.lining_thickness:
            behind = Behind({"frame.face": self._exact(door.lining_thickness)})
            self._put("Frame face ({unit})", self._text(door.lining_thickness), behind)
        depth = door.frame[1] - door.frame[0] if door.frame is not None else None
        told: tuple[str, ...] = ()
        if depth is not None and door.lining_depth is not None and abs(depth - door.lining_depth) > _LINING:
            told = (f"the lining is said to be {self._text(door.lining_depth)} deep and is drawn "
                    f"{self._text(depth)}: taken as said",)  # fmt: skip
        deep = door.lining_depth or depth
        if deep:
            self._put(
                "Jamb depth ({unit})", self._text(deep), Behind({"frame.jamb_depth": self._exact(deep)}, told)
            )
        if door.casing is not None:
            one, two = (self._text(part) for part in door.casing)
            ask = f"The model gives a casing of {one} by {two}: how far does it stand off the frame face?"
            self.behind["Global id"] = Behind({"global_id": door.global_id}, asks=(ask,))

    def _wall(self) -> None:
        door, wall = self.door, self.door.wall
        if not door.in_opening:
            self._put("Wall thickness ({unit})", "no opening", _NO_OPENING)
            return
        if wall is None:
            return
        if wall.low is None or wall.high is None:
            self._put("Wall thickness ({unit})", "not known", Behind(told=wall.told))
            return
        thick = self._exact(wall.high - wall.low)
        layers = tuple(
            WallLayer(name=layer.name[:100], thickness=self._exact(layer.thickness)) for layer in wall.layers
        )
        if layers:
            thick = math.fsum(layer.thickness for layer in layers)
        self._put("Wall thickness ({unit})", self._text(thick), Behind({"wall.thickness": thick}, wall.told))
        if layers:
            words = "; ".join(f"{layer.name} {self._text(layer.thickness)}" for layer in layers)
            behind = self._by_hand(
                lambda sides: Behind({"wall.layers": layers[:: -sides[1]]}, hands=_hands(sides))
            )
            if behind is not None:
                self._put("Wall layers", words, behind)
        if door.frame is not None:
            proud = {1: door.frame[1] - wall.high, -1: wall.low - door.frame[0]}
            behind = self._by_hand(
                lambda sides: Behind({"wall.frame_proud": self._exact(proud[sides[1]])}, hands=_hands(sides))
            )
            if behind is not None:
                self._put(
                    "Frame proud of wall ({unit})",
                    self._text(proud[(door.sides or (-1, 1))[1]]) or "0",
                    behind,
                )

    def _along(self) -> None:
        door = self.door
        if self.cells["Door type"]:
            return
        if door.refused or not door.in_opening or door.width is None:
            self._put("Found along the wall", "not looked for", Behind(told=(_NOT_LOOKED,)))
            return
        behind = self._by_hand(
            lambda sides: self._by_size(lambda frame: self._things(sides, frame), _MEASURED)
        )
        if behind is None:
            told = (f"{_NOT_LOOKED}: the model does not say which way the door opens",)
            self._put("Found along the wall", "not looked for", Behind(told=told))
            return
        names = Counter(box.element.rpartition(" (")[0] for boxes in door.beside.values() for box in boxes)
        words = ", ".join(f"{count} × {name}" if count > 1 else name for name, count in names.items())
        self._put("Found along the wall", words[:110] or "nothing", behind)

    def _things(self, sides: Sides, of_frame: bool) -> Behind:
        assert self.door.width is not None
        beyond = 0.0 if of_frame else self._face
        frame = Frame(-beyond, self.door.width + beyond)
        things, asks = obstructions_of(self.door, sides, frame)
        return Behind({"obstructions": things}, asks=asks, hands=_hands(sides))


_NO_OPENING = Behind(
    question="no opening",
    sentence="it stands in no opening of a wall: say what becomes of it",
    answers={
        "leave out": Behind(left_out="it stands in no opening of a wall"),
        "take": Behind(told=("it stands in no opening of a wall: its wall is not known",)),
    },
)


def _usual_face() -> float:
    rows = table(FrameSizeRow)
    return next(row.value for row in rows if row.kind == _USUAL_FRAME and row.key == "face" and row.value)


def _hands(sides: Sides) -> tuple[str, str]:
    """Return the hand of a door that opens inward, and that of the same door seen as opening outward."""
    return ("LH", "RHR") if sides[0] * sides[1] < 0 else ("RH", "LHR")


def _seen(sides: Sides) -> str:
    """Say where the hinges are as seen from the side that the door opens to."""
    return f"hinges on the {'right' if sides[0] * sides[1] < 0 else 'left'} as seen from the pull side"


def _yes(value: bool | None) -> str:
    return {True: "yes", False: "no", None: ""}[value]
