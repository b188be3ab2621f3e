"""The wall's layers, from the pull side in: names and thicknesses that add up to the wall."""

import math
from typing import Any

from PySide6.QtWidgets import QGridLayout, QLabel, QMenu, QPushButton, QToolButton, QWidget

from configurator.sentences import capitalized
from configurator.ui.kit.fields import Assumptions, LineField
from configurator.ui.kit.layout import GROW, Pool, across, down, fill
from configurator.ui.kit.look import GRID, sized
from configurator.ui.state.session import Session


class LayerThicknessField(LineField):
    """A layer's thickness; a wall thickness that was given follows the sum of its layers."""

    def __init__(self, session: Session, path: str, editor: "LayersEditor") -> None:
        self._layers = editor
        super().__init__(session, path)

    def commit(self, value: Any) -> None:
        """Change the layer and the wall's thickness with it."""
        data = self._layers.data()
        data[int(self.path.split(".")[2])]["thickness"] = value
        self.session.edit_many({self.path: value, **thickness_with(self.session, data)})


class LayerLine:
    """The widgets of one layer, side by side in the grid of them all."""

    def __init__(self, editor: "LayersEditor", place: int) -> None:
        session, path = editor.session, f"wall.layers.{place}"
        self._name = LineField(session, f"{path}.name")
        self._thickness = LayerThicknessField(session, f"{path}.thickness", editor)
        self.fields = (self._name, self._thickness)
        number = place + 1
        self._up = _small_button("↑", f"move wall layer {number} toward the pull side")
        self._down = _small_button("↓", f"move wall layer {number} away from the pull side")
        self._remove = _small_button("×", f"remove wall layer {number}")
        self.widgets = (*self.fields, self._up, self._down, self._remove)
        self._up.setEnabled(place > 0)
        self._up.clicked.connect(lambda: editor.shift(place, place - 1))
        self._down.clicked.connect(lambda: editor.shift(place, place + 1))
        self._remove.clicked.connect(lambda: editor.remove(place))

    def setVisible(self, visible: bool) -> None:
        """Show the line, or hide it."""
        for widget in self.widgets:
            widget.setVisible(visible)

    def begin_anew(self, is_last: bool) -> None:
        """Stand for another layer, the last one or not."""
        self._down.setEnabled(not is_last)
        for field in self.fields:
            field.begin_anew()


class LayersEditor(QWidget):
    """A line a layer, and their sum; while none was given, the usual ones in words.

    A layer that is added begins on the pull side, where it counts for the swing.
    """

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.fields: dict[str, LineField] = {}
        self._shape: int | None = None
        self._usual: tuple[tuple[str, float], ...] = ()
        self._words = QLabel()
        self._words.setWordWrap(True)
        self._sum = QLabel()
        self._grid = QGridLayout()
        self._grid.setSpacing(GRID)
        self._lines = Pool(self._line)
        self._take, self._add = QPushButton("Edit the layers"), QToolButton()
        self._take.clicked.connect(self._take_usual)
        self.menu = QMenu(self)
        self.menu.aboutToShow.connect(self._fill_menu)
        self._build_frame()

    def show_state(self, assumed: Assumptions) -> None:
        """Show the layers that were given, or say the usual ones."""
        layers = self.session.value("wall.layers") or ()
        study = self.session.study
        self._usual = study.filled.layers if study is not None else ()
        if len(layers) != self._shape:
            self._shape = len(layers)
            self._show_lines(len(layers))
        self._words.setVisible(not layers)
        self._words.setText(self._usual_words())
        self._take.setVisible(not layers and bool(self._usual))
        self._sum.setText(f"{self._together()} together")
        self._sum.setVisible(bool(layers))
        for field in self.fields.values():
            field.show_state(assumed)

    def data(self) -> list[dict[str, Any]]:
        """Return the layers that were given, as the project file holds them."""
        return [layer.model_dump() for layer in self.session.value("wall.layers") or ()]

    def put(self, layers: list[dict[str, Any]]) -> None:
        """Give the wall other layers; without any it has its usual ones."""
        changes: dict[str, Any] = {"wall.layers": layers or None}
        self.session.edit_many({**changes, **(thickness_with(self.session, layers) if layers else {})})

    def add(self, layer: dict[str, Any]) -> None:
        """Put a layer on the pull side of the wall, as it was given or else as it is usual."""
        self.put([layer, *(self.data() or self._usual_data())])

    def shift(self, place: int, to: int) -> None:
        """Put a layer in another place, counted from the pull side."""
        layers = self.data()
        layers.insert(to, layers.pop(place))
        self.put(layers)

    def remove(self, place: int) -> None:
        """Take a layer out of the wall."""
        layers = self.data()
        del layers[place]
        self.put(layers)

    def parts(self) -> list[QWidget]:
        """Return what Tab goes through."""
        lines = (widget for line in self._lines.on_show for widget in line.widgets)
        return [*lines, self._take, self._add]

    def _build_frame(self) -> None:
        title = QLabel("Wall layers, from the pull side")
        sized(title, 0, bold=True)
        self._add.setText("Add layer")
        self._add.setToolTip("It is put on the pull side; move it from there")
        self._add.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self._add.setMenu(self.menu)
        buttons = across(self._take, self._add, GROW)
        parts = (title, self._words, self._grid, self._sum, buttons)
        fill(self, down(*parts, spacing=GRID, margins=(0, GRID, 0, 0)))

    def _fill_menu(self) -> None:
        """List what walls are commonly made of, in the units on show."""
        from configurator.tables import WallLayerRow, table  # loaded on use, with the first study

        self.menu.clear()
        for known in table(WallLayerRow):
            thickness = self.session.display.exact(known.thickness)
            layer = {"name": known.name, "thickness": known.thickness}
            action = self.menu.addAction(f"{capitalized(known.name)}, {thickness}")
            action.setToolTip(known.source)
            action.triggered.connect(lambda _=False, layer=layer: self.add(layer))

    def _together(self) -> str:
        return self.session.display.exact(math.fsum(layer["thickness"] for layer in self.data()))

    def _show_lines(self, count: int) -> None:
        self.fields.clear()
        for place, line in enumerate(self._lines.take(count)):
            line.begin_anew(is_last=place == count - 1)
            self.fields.update({field.path: field for field in line.fields})

    def _line(self, place: int) -> LayerLine:
        line = LayerLine(self, place)
        for at, widget in enumerate(line.widgets):
            self._grid.addWidget(widget, place, at)
        return line

    def _usual_words(self) -> str:
        shown = [f"{name} {self.session.display.exact(inches)}" for name, inches in self._usual]
        return "Assumed: " + ", ".join(shown) if shown else "None given."

    def _usual_data(self) -> list[dict[str, Any]]:
        return [{"name": name, "thickness": inches} for name, inches in self._usual]

    def _take_usual(self) -> None:
        self.put(self._usual_data())


def _small_button(sign: str, name: str) -> QToolButton:
    button = QToolButton()
    button.setText(sign)
    button.setAutoRaise(True)
    button.setAccessibleName(name)
    button.setToolTip(capitalized(name))
    return button


def thickness_with(session: Session, layers: list[dict[str, Any]]) -> dict[str, float]:
    """Return the wall's thickness as the layers make it, where one was given; else nothing."""
    if session.value("wall.thickness") is None:
        return {}
    return {"wall.thickness": math.fsum(layer["thickness"] or 0.0 for layer in layers)}
