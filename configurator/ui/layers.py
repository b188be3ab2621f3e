"""The wall's layers, from the pull side in: names and thicknesses that add up to the wall."""

import math
from typing import Any

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QPushButton, QToolButton, QVBoxLayout, QWidget

from configurator.ui.fields import Assumptions, LineField
from configurator.ui.look import GRID, sized
from configurator.ui.session import Session

NEW_LAYER = {"name": "gypsum board", "thickness": 0.625}


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
    """A line a layer; while none was given, the usual ones in words and a button that takes them as given."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.fields: dict[str, LineField] = {}
        self._shape: int | None = None
        self._usual: tuple[tuple[str, float], ...] = ()
        self._words = QLabel()
        self._words.setWordWrap(True)
        self._grid = QGridLayout()
        self._grid.setSpacing(GRID)
        self._take = QPushButton("Edit the layers")
        self._take.clicked.connect(self._take_usual)
        self._add = QPushButton("Add layer")
        self._add.clicked.connect(lambda: self.put([*self.data(), dict(NEW_LAYER)]))
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
        self._add.setVisible(bool(layers) or not self._usual)
        for field in self.fields.values():
            field.show_state(assumed)

    def data(self) -> list[dict[str, Any]]:
        """Return the layers that were given, as the project file holds them."""
        return [layer.model_dump() for layer in self.session.value("wall.layers") or ()]

    def put(self, layers: list[dict[str, Any]]) -> None:
        """Give the wall other layers; without any it has its usual ones."""
        changes: dict[str, Any] = {"wall.layers": layers or None}
        self.session.edit_many({**changes, **(thickness_with(self.session, layers) if layers else {})})

    def _build_frame(self) -> None:
        title = QLabel("Wall layers, from the pull side")
        sized(title, 0, bold=True)
        buttons = QHBoxLayout()
        buttons.addWidget(self._take)
        buttons.addWidget(self._add)
        buttons.addStretch()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, GRID, 0, 0)
        column.setSpacing(GRID)
        column.addWidget(title)
        column.addWidget(self._words)
        column.addLayout(self._grid)
        column.addLayout(buttons)

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
        remove = QToolButton()
        remove.setText("×")
        remove.setAutoRaise(True)
        remove.setAccessibleName(f"remove wall layer {place + 1}")
        remove.clicked.connect(lambda: self.put([x for i, x in enumerate(self.data()) if i != place]))
        self.fields.update({name.path: name, thickness.path: thickness})
        for column, widget in enumerate((name, thickness, remove)):
            self._grid.addWidget(widget, place, column)

    def _usual_words(self) -> str:
        shown = [f"{name} {self.session.display.length(inches)}" for name, inches in self._usual]
        return "Assumed: " + ", ".join(shown) if shown else "None given."

    def _take_usual(self) -> None:
        self.put([{"name": name, "thickness": inches} for name, inches in self._usual])


def thickness_with(session: Session, layers: list[dict[str, Any]]) -> dict[str, float]:
    """Return the wall's thickness as the layers make it, where one was given; else nothing."""
    if session.value("wall.thickness") is None:
        return {}
    return {"wall.thickness": math.fsum(layer["thickness"] or 0.0 for layer in layers)}
