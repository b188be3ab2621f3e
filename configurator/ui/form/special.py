"""Fields that hold more than one plain value: the opening's size, and a projection and its origin."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QPushButton, QToolButton

from configurator.model.paths import words_of
from configurator.tables import ObstructionKindRow, row_of
from configurator.ui.kit.fields import Assumptions, ChoiceField, LineField
from configurator.ui.kit.kinds import LENGTH, SIZE, USUAL_HEIGHT, NotReadError
from configurator.ui.kit.layout import QuietCombo, across, add
from configurator.ui.kit.look import sized
from configurator.ui.state.session import Session
from configurator.units import Display, LengthError, format_feet, format_size, parse_length

if TYPE_CHECKING:  # loaded when it is asked for
    from configurator.ui.form.hand_finder import HandFinder


class OpeningSizeField(LineField):
    """Opening width x height on one line: `3070`, `3-0 x 7-0` or `36 x 84`; asks if it looks turned round."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, "size", SIZE)
        self.swap, self.keep = QPushButton("Swap"), QPushButton("Keep it")
        self.swap.clicked.connect(self._swap)
        self.keep.clicked.connect(self._confirm)
        for answer in (self.swap, self.keep):
            sized(answer, -1)
            answer.hide()
        self._kept: Any = None
        self._alone: dict[str, float] = {}
        add(self._column, across(self.swap, self.keep))

    def read(self, text: str) -> Any:
        """Read a size; a width alone goes with the height there is. Raises NotReadError."""
        self._alone = {}
        try:
            return super().read(text)
        except NotReadError as error:
            size = self.session.value("size")
            try:
                width = LENGTH.read(text, self.session.display)
            except NotReadError:
                raise error from None
            self._alone = {"width": width, "height": size.height if size else USUAL_HEIGHT}
            return self._alone

    def show_state(self, assumed: Assumptions) -> None:
        """Show the size, say how a width alone was read, and ask about one that is wider than high."""
        super().show_state(assumed)
        size = self.session.value("size")
        question = size_question(size.width, size.height, self.session.display) if size else ""
        if size == self._kept:
            question = ""
        if not self.refused:
            self.note.say(
                question or self._read_alone(size), "warning" if question else "quiet", self.session.dark
            )
        for answer in (self.swap, self.keep):
            answer.setVisible(bool(question) and not self.refused)

    def _read_alone(self, size: Any) -> str:
        """Say that a width was typed alone and what height goes with it; nothing where that is not so."""
        if size is None or self._alone != {"width": size.width, "height": size.height}:
            return ""
        return f"Read as {self.write(size)}: a width alone leaves the height as it is."

    def _confirm(self) -> None:
        """Ask no more about this size: the door is that wide."""
        self._kept = self.session.value("size")
        self.editor.setFocus()
        self.session.changed.emit("edit")

    def _swap(self) -> None:
        size = self.session.value("size")
        self.commit({"width": size.height, "height": size.width})


class HandField(ChoiceField):
    """The hand, with four pictures to find it by."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, "hand")
        self.finder: HandFinder | None = None
        self.by_picture = QToolButton()
        self.by_picture.setText("Find by picture…")
        self.by_picture.setAccessibleName("find the hand by a picture")
        self.by_picture.setToolTip("Four pictures, seen from outside: the side you unlock from")
        self.by_picture.clicked.connect(self._show_finder)
        add(self._column, self.by_picture)

    def _show_finder(self) -> None:
        from configurator.ui.form.hand_finder import HandFinder

        if self.finder is None:
            self.finder = HandFinder(self.session, self.window())
        self.finder.show_state("open")
        self.finder.show()
        self.finder.raise_()
        self.finder.activateWindow()


LEAVES = {"pair": ("active", "inactive"), "dutch": ("upper", "lower")}
"""The leaves there are to choose from; a single one is no choice."""


class LeafField(ChoiceField):
    """Which leaf carries a piece of hardware: those that the opening has, and one given that it has not."""

    def show_state(self, assumed: Assumptions) -> None:
        """Offer the leaves there are, and show the one that holds."""
        offered = list(LEAVES.get(self.session.value("leaves"), ()))
        given = self.session.value(self.path)
        words = [*offered, *([given] if given and given not in offered else [])]
        if words != [self.editor.itemText(place) for place in range(1, self.editor.count())]:
            while self.editor.count() > 1:
                self.editor.removeItem(1)
            for word in words:
                self.editor.addItem(word, word)
        super().show_state(assumed)


class DoorStopField(ChoiceField):
    """What the open door comes to rest against: nothing, a wall bumper or a floor stop of a usual size."""

    def __init__(self, session: Session) -> None:
        super().__init__(session, "door_stop.kind")
        self.editor.insertItem(0, "none", None)

    def commit(self, value: Any) -> None:
        """Put up a stop of the usual size, change the one there is to another kind, or take it away."""
        if value is None:
            self.session.edit("door_stop", None)
        elif self.session.value("door_stop") is None:
            self.session.edit("door_stop", {"kind": value})
        else:
            self.session.edit(self.path, value)


class ProjectionField(LineField):
    """How far a thing stands out, counted from the wall face or from the frame face, whichever is chosen.

    The record counts from the face its kind is measured from; `frame_proud` answers how far the frame
    face stands ahead of the wall, inches, or None while that is unknown.
    """

    def __init__(self, session: Session, path: str, frame_proud: Callable[[], float | None]) -> None:
        self._frame_proud = frame_proud
        self._from_frame = self._kept_from_frame = False
        super().__init__(session, path)
        self.counted = QuietCombo()
        self.counted.addItem("from wall face", False)
        self.counted.addItem("from frame face", True)
        self.counted.setAccessibleName("projection is counted")
        self.counted.activated.connect(self._count_anew)
        add(self._column, self.counted)

    def count_as_kept(self, kind: str) -> None:
        """Count from the face that the record of such a thing counts from."""
        from_frame = row_of(ObstructionKindRow, kind).measured_from == "frame"
        self._from_frame = self._kept_from_frame = from_frame
        self.counted.setCurrentIndex(int(self._from_frame))

    def write(self, value: Any) -> str:
        """Write the record's figure as counted from the chosen face."""
        return super().write(value - self._added())

    def read(self, text: str) -> float:
        """Read a figure counted from the chosen face. Raises NotReadError."""
        typed: float = super().read(text)
        if self._from_frame != self._kept_from_frame and self._frame_proud() is None:
            raise NotReadError(
                "Where the frame stands in the wall is not known yet; count from the other face."
            )
        return typed + self._added()

    def _added(self) -> float:
        """Return what the record's figure has more than the one on show."""
        proud = self._frame_proud() or 0.0
        return proud * (int(self._from_frame) - int(self._kept_from_frame))

    def _count_anew(self, place: int) -> None:
        self._from_frame = bool(self.counted.itemData(place))
        self.editor.being_typed = False
        self.session.withdraw(self.path)
        value = self.session.value(self.path)
        self._show_text("" if value is None else self.write(value))


COMPARE = "compare"
_AXIS = ("axis_off_face", "axis_from_heel")
USUAL_HINGE_HEIGHT = 4.5
"""Inches; what a 1-3/4 in door commonly takes, where the program has chosen nothing yet. No source."""


@dataclass(frozen=True, slots=True)
class WidthQuestion:
    """A question about a hinge typed as a size: what it asks, and the two widths that may be meant."""

    sentence: str
    swapped_label: str
    swapped: float
    kept_label: str
    kept: float


def size_question(width: float, height: float, display: Display) -> str:
    """Ask whether an opening wider than high was typed height first; empty where there is nothing to ask."""
    if width <= height:
        return ""
    wide = display.length(width) if display.metric else format_feet(width)
    return f"{wide} wide? Doors are width first. Swap?"


def read_hinge_width(text: str, height: float, display: Display) -> "float | WidthQuestion":
    """Read a hinge open width, alone or as the second number of a hinge size (height x width).

    Inches. `height` is the hinge height this door takes. A size that would make sense the other way round is
    answered by a question. Raises NotReadError.
    """
    parts = re.split(r"\s*[x×]\s*", text.strip().lower())
    try:
        numbers = [parse_length(part, metric=display.metric, negative=False) for part in parts]
    except LengthError as error:
        raise NotReadError(str(error)) from None
    if len(numbers) == 1:
        return numbers[0]
    if len(numbers) > 2:
        raise NotReadError(f"“{text.strip()[:24]}” is not a hinge size. Write height x width, as 4-1/2 x 4.")
    first, second = numbers
    if first != height and second == height:
        return _question(first, second, height)
    return second


def read_way(text: str, display: Display) -> dict[str, Any] | None:
    """Read a way of hanging with its axis, as `offset pivot 3/4, 3/4`: off the face, then from the heel.

    None where the text names no kind of way. Raises NotReadError.
    """
    words = " ".join(text.split())
    kind = next((one for one in words_of(f"{COMPARE}.hung_on") if words.lower().startswith(one)), None)
    if kind is None:
        return None
    rest = words[len(kind) :].strip(" ,")
    try:
        lengths = [parse_length(part, metric=display.metric) for part in rest.split(",")] if rest else []
    except LengthError as error:
        raise NotReadError(str(error)) from None
    if len(lengths) > len(_AXIS):
        raise NotReadError(f"Write its axis off the face, then from the heel, as {kind} 3/4, 3/4.")
    return {"hung_on": kind, **dict(zip(_AXIS, lengths, strict=False))}


def _question(first: float, second: float, height: float) -> WidthQuestion:
    swapped = f"{format_size(second)} x {format_size(first)}"
    sentence = (
        f"{format_size(first)} high? This door takes {format_size(height)} high. Did you mean {swapped}?"
    )
    kept = f"Keep {format_size(second)} in wide"
    return WidthQuestion(sentence, f"Swap: {swapped}", first, kept, second)
