"""One part of the hinge: the fields that override it, why it is what it is, and what else could be taken."""

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QWidget

from configurator.model import paths
from configurator.sentences import capitalized
from configurator.study.widths.hinge_trials import Trial
from configurator.ui.kit.fields import Assumptions, ChoiceField, LineField
from configurator.ui.kit.kinds import Kind, NotReadError, kind_at
from configurator.ui.kit.layout import GROW, Box, Pool, across, down, fill
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.state.session import Session
from configurator.units import Display
from configurator.wording.hinge_parts import Because, Part, PartRow
from configurator.wording.hinge_words import spelled_value, trial_effect, trial_name

HINGE = "hinge."
SCREW_KINDS = ("machine", "wood")
SHORT = {"finish_bhma": "BHMA number", "finish_us": "US code"}
Chosen = Mapping[str, Any]
"""Key of a part to what holds for it now."""


def _read_screws(text: str, _: Display) -> dict[str, int]:
    counts = dict.fromkeys(SCREW_KINDS, 0)
    for piece in text.lower().replace(" and ", ",").split(","):
        number, _gap, kind = piece.strip().removesuffix("screws").strip().partition(" ")
        if not number.isdecimal() or kind.strip() not in counts:
            raise NotReadError("Write screws for one opening as 24 machine, or 12 machine and 12 wood.")
        counts[kind.strip()] = int(number)
    return counts


SCREWS = Kind(
    "screws", _read_screws, lambda value, _: " and ".join(f"{n} {kind}" for kind, n in value.items() if n)
)


class PartLine(LineField):
    """A part that is typed; while nothing is typed it shows what the rules chose."""

    def take_reason(self, _: Assumptions) -> None:
        """Leave the reason to the lines beside the field."""
        super().take_reason({})

    def _show_placeholder(self, assumed: Any) -> None:
        self.editor.setPlaceholderText("" if assumed is None else self.write(assumed))
        font = self.editor.font()
        font.setItalic(not self.editor.text())
        self.editor.setFont(font)
        back = self._can_go_back()
        self.editor.show_tag(
            "↺" if back else "", "By hand. Click, or empty the field, to reset." if back else ""
        )


class PartChoice(ChoiceField):
    """A part chosen among words; its first line leaves the part to the rules."""

    def __init__(self, session: Session, path: str) -> None:
        super().__init__(session, path)
        self._spell()

    def show_state(self, assumed: Assumptions) -> None:
        """Show the word by hand, or what the rules chose."""
        super().show_state({})
        value = assumed.get(self.path)
        by_rules = value is not None and self.session.value(self.path) is None
        self.editor.setItemText(
            0, f"{self._words(value)}, by the rules" if by_rules else "leave it to the rules"
        )

    def _spell(self) -> None:
        for place in range(1, self.editor.count()):
            self.editor.setItemText(place, self._words(self.editor.itemData(place)))

    def _words(self, value: Any) -> str:
        return spelled_value(self.path.removeprefix(HINGE), value, self.session.display)


def override_field(session: Session, key: str) -> PartLine | PartChoice:
    """Return the field that overrides one part of the hinge."""
    path = HINGE + key
    if paths.words_of(path) or paths.holds(path, bool):
        return PartChoice(session, path)
    return PartLine(session, path, SCREWS if key == "screws" else kind_at(path))


class PartDetail(QWidget):
    """Everything about one part; made once, so that what is being typed survives every change elsewhere."""

    def __init__(self, session: Session, part: Part) -> None:
        super().__init__()
        self.session = session
        self.part = part
        self.title, self.value, self.remark = QLabel(), _words(), _words("quiet", session.dark)
        self.reset = QPushButton("Reset")
        self.fields = {key: override_field(session, key) for key in part.keys}
        self._reasons: list[tuple[QLabel, QLabel]] = [(_words(), _words()) for _ in part.keys]
        self._others: tuple[Trial, ...] = ()
        self._list = QGridLayout()
        self._trials = Pool(self._trial_line)
        self._build()

    def show_state(self, row: PartRow, leaf: str, chosen: Chosen, others: tuple[Trial, ...]) -> None:
        """Show the part as it stands, of two leaves on `leaf`, and what each other value would do."""
        name = row.part.plain if self.session.plain_words else row.part.trade
        title = "  ·  ".join(word for word in (leaf, name, row.asked_by) if word)
        self.title.setText(capitalized(title))
        self.value.setText(row.value)
        self.remark.setText(row.remark)
        self.remark.setVisible(bool(row.remark))
        for labels, because in zip(self._reasons, row.reasons, strict=True):
            self._show_reason(labels, because)
        self.show_fields(chosen)
        if others != self._others:
            self._others = others
            for line, other in zip(self._trials.take(len(others)), others, strict=True):
                line.show_trial(other)

    @property
    def takes(self) -> list[QPushButton]:
        """The buttons that take another value."""
        return [line.button for line in self._trials.on_show]

    def show_fields(self, chosen: Chosen) -> None:
        """Show what is given by hand or was refused; nothing else changes with a refusal."""
        shown = {HINGE + key: value for key, value in chosen.items()}
        for field in self.fields.values():
            field.show_state(shown)
        given = [f for f in self.fields.values() if f.refused or self.session.value(f.path) is not None]
        self.reset.setEnabled(bool(given))

    def stops(self) -> list[QWidget]:
        """Return what Tab stops at, in the order it is read."""
        return [*(field.editor for field in self.fields.values()), self.reset, *self.takes]

    def take_back(self) -> None:
        """Leave the part to the rules again."""
        self.session.edit_many({field.path: None for field in self.fields.values()})

    def _show_reason(self, labels: tuple[QLabel, QLabel], because: Because) -> None:
        start = f"{capitalized(because.trade)}, " if len(self.fields) > 1 else ""
        labels[0].setText(f"{start}because: {because.words}" if start else f"Because: {because.words}")
        labels[1].setText(f"Source: {because.source}")
        tinted(labels[1], "quiet", self.session.dark)
        tinted(self.remark, "quiet", self.session.dark)

    def _build(self) -> None:
        sized(self.title, 0, bold=True)
        self._list.setContentsMargins(0, 0, 0, 0)
        self._list.setHorizontalSpacing(2 * GRID)
        self._list.setVerticalSpacing(GRID)
        self._list.setColumnStretch(1, 1)
        for _, source in self._reasons:
            sized(source, -1)
        above = (self.title, self.value, self.remark, self._field_line())
        reasons = (label for both in self._reasons for label in both)
        margins = (2 * GRID, GRID, 2 * GRID, GRID)
        fill(self, down(*above, *reasons, self._list, GROW, spacing=GRID, margins=margins))

    def _field_line(self) -> Box:
        parts: list[Any] = []
        for key, field in self.fields.items():
            label = QLabel(
                "By hand" if len(self.fields) == 1 else SHORT.get(key, paths.trade_name(HINGE + key))
            )
            label.setBuddy(field.first_stop or field)
            label.setAlignment(Qt.AlignmentFlag.AlignTop)
            label.setContentsMargins(0, GRID, 0, 0)
            parts += [label, (field, 1)]
        self.reset.setAccessibleName(f"reset {self.part.trade}")
        self.reset.setToolTip("Leave this part to the rules again")
        self.reset.clicked.connect(self.take_back)
        return across(*parts, (self.reset, 0, Qt.AlignmentFlag.AlignTop), spacing=2 * GRID)

    def _trial_line(self, place: int) -> "TrialLine":
        line = TrialLine(self.session)
        self._list.addWidget(line.button, place, 0, Qt.AlignmentFlag.AlignTop)
        self._list.addWidget(line.effect, place, 1)
        return line


class TrialLine:
    """Another value of a part: the button that takes it, and beside it what that would do."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._trial: Trial | None = None
        self.button, self.effect = QPushButton(), _words()
        for widget in (self.button, self.effect):
            sized(widget, -1)
        self.button.clicked.connect(self._take)

    def setVisible(self, visible: bool) -> None:
        """Show the line, or hide it."""
        self.button.setVisible(visible)
        self.effect.setVisible(visible)

    def show_trial(self, trial: Trial) -> None:
        """Show another value."""
        self._trial = trial
        name, words = paths.trade_name(HINGE + trial.key), trial_name(trial, self._session.display)
        self.button.setText(f"Take {words}")
        self.button.setToolTip(f"Take {words} as {name}, by hand")
        self.button.setAccessibleName(f"take {words} as {name}")
        effect = trial_effect(trial, self._session.display)
        self.effect.setText(capitalized(effect))

    def _take(self) -> None:
        if self._trial is not None:
            self._session.edit(HINGE + self._trial.key, self._trial.value)


def _words(colour: str = "", dark: bool = False) -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    if colour:
        sized(label, -1)
        tinted(label, colour, dark)
    return label
