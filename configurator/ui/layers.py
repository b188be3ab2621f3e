"""The wall's layers, from the pull side in: names and thicknesses that add up to the wall."""

import math
from typing import Any

from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QMenu,
    QPushButton,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from configurator.ui.fields import Assumptions, LineField
from configurator.ui.look import GRID, sized
from configurator.ui.session import Session


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
        self._take = QPushButton("Edit the layers")
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
            self._build_rows(len(layers))
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

    def _build_frame(self) -> None:
        title = QLabel("Wall layers, from the pull side")
        sized(title, 0, bold=True)
        buttons = QHBoxLayout()
        buttons.addWidget(self._take)
        buttons.addWidget(self._add_button())
        buttons.addStretch()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, GRID, 0, 0)
        column.setSpacing(GRID)
        for widget in (title, self._words):
            column.addWidget(widget)
        column.addLayout(self._grid)
        column.addWidget(self._sum)
        column.addLayout(buttons)

    def _add_button(self) -> QToolButton:
        button = QToolButton()
        button.setText("Add layer")
        button.setToolTip("It is put on the pull side; move it from there")
        button.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        button.setMenu(self.menu)
        return button

    def _fill_menu(self) -> None:
        """List what walls are commonly made of, in the units on show."""
        from configurator.tables import WallLayerRow, table  # loaded on use, with the first study

        self.menu.clear()
        for row in table(WallLayerRow):
            name = f"{row.name[:1].upper()}{row.name[1:]}, {self.session.display.length(row.thickness)}"
            layer = {"name": row.name, "thickness": row.thickness}
            action = self.menu.addAction(name)
            action.setToolTip(row.source)
            action.triggered.connect(lambda _=False, layer=layer: self.add(layer))

    def _together(self) -> str:
        return self.session.display.length(math.fsum(layer["thickness"] for layer in self.data()))

    def _build_rows(self, count: int) -> None:
        self.fields.clear()
        while (item := self._grid.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        for place in range(count):
            self._build_row(place)

    def _build_row(self, place: int) -> None:
        name = LineField(self.session, f"wall.layers.{place}.name")
        thickness = LayerThicknessField(self.session, f"wall.layers.{place}.thickness", self)
        self.fields.update({name.path: name, thickness.path: thickness})
        last = (self._shape or 0) - 1
        up = _small_button("↑", f"move wall layer {place + 1} toward the pull side", place > 0)
        up.clicked.connect(lambda: self.shift(place, place - 1))
        down = _small_button("↓", f"move wall layer {place + 1} away from the pull side", place < last)
        down.clicked.connect(lambda: self.shift(place, place + 1))
        remove = _small_button("×", f"remove wall layer {place + 1}", True)
        remove.clicked.connect(lambda: self.put([x for i, x in enumerate(self.data()) if i != place]))
        for column, widget in enumerate((name, thickness, up, down, remove)):
            self._grid.addWidget(widget, place, column)

    def _usual_words(self) -> str:
        shown = [f"{name} {self.session.display.length(inches)}" for name, inches in self._usual]
        return "Assumed: " + ", ".join(shown) if shown else "None given."

    def _usual_data(self) -> list[dict[str, Any]]:
        return [{"name": name, "thickness": inches} for name, inches in self._usual]

    def _take_usual(self) -> None:
        self.put(self._usual_data())


def _small_button(sign: str, name: str, enabled: bool) -> QToolButton:
    button = QToolButton()
    button.setText(sign)
    button.setAutoRaise(True)
    button.setAccessibleName(name)
    button.setToolTip(name[:1].upper() + name[1:])
    button.setEnabled(enabled)
    return button


def thickness_with(session: Session, layers: list[dict[str, Any]]) -> dict[str, float]:
    """Return the wall's thickness as the layers make it, where one was given; else nothing."""
    if session.value("wall.thickness") is None:
        return {}
    return {"wall.thickness": math.fsum(layer["thickness"] or 0.0 for layer in layers)}
