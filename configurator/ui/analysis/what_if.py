"""The page that asks what would be: one thing varied, all else held, the picture following the pointer."""

from PySide6.QtCore import QSignalBlocker, Qt, QTimer
from PySide6.QtGui import QHideEvent, QKeyEvent
from PySide6.QtWidgets import QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from configurator.drawing.charts.what_if_chart import what_if_chart
from configurator.sentences import capitalized
from configurator.study import Candidate, Study
from configurator.study.what_if.curve import WhatIf, what_if
from configurator.study.what_if.parameters import Parameter
from configurator.ui.analysis.what_if_choices import Choices, bare_line, with_name
from configurator.ui.kit.chart_canvas import ChartCanvas, beside
from configurator.ui.kit.kinds import LENGTH, NotReadError
from configurator.ui.kit.layout import StillSlider
from configurator.ui.kit.look import GRID, sized, tinted
from configurator.ui.kit.table import FittedTable
from configurator.ui.state.session import Session
from configurator.units import MM_PER_INCH, TOLERANCE
from configurator.wording.what_if_words import (
    at_value,
    on_the_good_side,
    parameter_name,
    threshold_words,
    trial_words,
    what_if_headline,
)

EMPTY = "Choose an opening, or add one with + at the left: here one thing of it can be varied and watched."
NOTHING = "Nothing is on trial: point into the chart, or move the slider."


class WhatIfPage(QWidget):
    """What is varied and what is held, the chart, where something turns, and a value on trial."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.sentence, self.reading = (
            _words("what may be varied so far"),
            _words("what the value on trial does"),
        )
        self.choices = Choices()
        self.thresholds = FittedTable("values at which something turns")
        self.chart = ChartCanvas("chart of angle and clear width over what is varied")
        self.slider, self.typed = StillSlider(Qt.Orientation.Horizontal), QLineEdit()
        self.take = QPushButton("Take this value")
        self.back = QPushButton("Back")
        self._study: Study | None = None
        self._drawn: tuple[object, ...] = ()
        self._found: WhatIf | None = None
        self._tried: float | None = None
        self._pointed: float | None = None
        self._soon = QTimer(self, singleShot=True, interval=0)
        self._build()
        self._connect()

    # --- What it shows ---

    @property
    def found(self) -> WhatIf | None:
        """What is on show; None without an opening."""
        return self._found

    @property
    def tried(self) -> float | None:
        """The value on trial that stays when the pointer leaves, inches; None for the present one."""
        return self._tried

    def show_state(self) -> None:
        """Show the opening on show; what would be is worked out again only for another study or question."""
        session, study = self.session, self.session.study
        if study is not self._study:
            self._study, self._tried, self._pointed = study, None, None
        self.choices.show_study(study, session.plain_words)
        now = (session.display, session.dark, session.plain_words, id(study), *self.choices.state())
        if now != self._drawn or study is None:
            self._work_out()
            self._drawn = now

    def try_value(self, value: float | None) -> None:
        """Put a value on trial until another is, None for none: the picture shows it, nothing is changed."""
        found = self._found
        if found is None:
            return
        if value is not None:
            value = min(max(value, found.parameter.low), found.parameter.high)
            value = None if abs(value - found.parameter.present) <= TOLERANCE else value
        self._tried = value
        self._show_trial()

    def try_selected(self) -> None:
        """Try the value of the selected row, on the side on which it still holds."""
        found, place = self._found, self.thresholds.currentRow()
        if found is not None and 0 <= place < len(found.thresholds):
            self.try_value(on_the_good_side(found, found.thresholds[place], self.session.display))

    def take_tried(self) -> None:
        """Make the value on trial the opening's own: one step, and all that is held stays."""
        found, value = self._found, self._tried
        if found is not None and value is not None:
            self._tried = self._pointed = None
            self.session.edit_many(found.hold.changes(value))

    # --- Inside ---

    def _work_out(self) -> None:
        asked = (self.choices.candidate(), self.choices.chosen_parameter(), self.choices.chosen_hold())
        candidate, parameter, hold = asked
        self._found = None
        if self._study is not None and candidate is not None and parameter is not None and hold is not None:
            self._found = what_if(self._study, candidate, parameter, hold)
        self._show_found()

    def _show_found(self) -> None:
        found, study = self._found, self._study
        for widget in (self.choices, self._both, self._trying, self.reading):
            widget.setVisible(found is not None)
        if found is None or study is None:
            self.sentence.setText(self.session.trouble or EMPTY)
            return
        display, plain = self.session.display, self.session.plain_words
        things = study.opening.obstructions
        self.sentence.setText(what_if_headline(found, display, plain))
        rows = [threshold_words(one, found, things, display, plain)[0] for one in found.thresholds]
        low, high = (
            at_value(found.parameter, end, display) for end in (found.parameter.low, found.parameter.high)
        )
        rows = rows or [f"nothing from {low} to {high}"]
        self.thresholds.fill(["Where something turns"], [((capitalized(row),), row) for row in rows])
        self.chart.show_chart(what_if_chart(found, things, display, plain), lambda _: "", self.session.dark)
        self._set_slider(found.parameter)
        self._show_trial()

    def _set_slider(self, parameter: Parameter) -> None:
        """Give the slider a place for each whole step within the range."""
        step = self._step()
        with QSignalBlocker(self.slider):
            self.slider.setRange(-int(-parameter.low // step), int(parameter.high // step))
            self.slider.setPageStep(max(1, round(0.25 / step)))
        self.slider.setAccessibleName(f"{parameter.name} on trial")
        self.typed.setAccessibleName(f"{parameter.name} on trial, typed")

    def _step(self) -> float:
        found = self._found
        metric = self.session.display.metric and not (found is not None and found.parameter.of_hinge)
        return 1 / MM_PER_INCH if metric else 1 / 32

    def _point(self, across: float | None) -> None:
        """Follow the pointer, to whole steps, once Qt has told of all its moves."""
        found = self._found
        if found is not None and across is not None:
            step = self._step()
            near = round(across / step) * step
            across = found.parameter.present if abs(across - found.parameter.present) < step / 2 else near
        self._pointed = across
        self._soon.start()

    def _show_trial(self) -> None:
        """Show what the pointer is at, or else what is on trial, or else the opening as it is."""
        found, study = self._found, self._study
        if found is None or study is None or not self.isVisible():
            return
        value = self._pointed if self._pointed is not None else self._tried
        shown = found.parameter.present if value is None else value
        self._show_value(found, shown)
        if abs(shown - found.parameter.present) <= TOLERANCE:
            self.session.trial.end()
            self._say(NOTHING, "quiet")
            return
        parameter = parameter_name(found.parameter, self.session.plain_words)
        words = f"{parameter} {at_value(found.parameter, shown, self.session.display)}"
        refused = self.session.trial.show(self._held(found, shown), words)
        self._say(refused or self._does(found, shown), "error" if refused else "")

    def _held(self, found: WhatIf, value: float) -> dict[str, object]:
        """Return what a trial changes: the widths beside one another stay those that are on show."""
        changes = dict(found.hold.changes(value))
        return {"compare": self._study.compared if self._study else (), **changes}

    def _does(self, found: WhatIf, value: float) -> str:
        study = self.session.trial.study
        tried = (one for one in (study.candidates if study else ()) if _is_tried(one, found, value, study))
        one = next(tried, None)
        if study is None or one is None:
            return ""
        return trial_words(found, value, study, one, self.session.display, self.session.plain_words)

    def _say(self, sentence: str, colour: str) -> None:
        self.reading.setText(("⚠ " if colour == "error" else "") + sentence)
        self.reading.setPalette(self.sentence.palette())
        if colour:
            tinted(self.reading, colour, self.session.dark)

    def _show_value(self, found: WhatIf, value: float) -> None:
        with QSignalBlocker(self.slider):
            self.slider.setValue(round(value / self._step()))
        if not self.typed.isModified() or not self.typed.hasFocus():
            self.typed.setText(at_value(found.parameter, value, self.session.display))
        self.chart.stand_line(None if abs(value - found.parameter.present) <= TOLERANCE else value)
        self.take.setEnabled(self._tried is not None)
        self.back.setEnabled(self._tried is not None)
        self.back.setText(
            f"Back to {at_value(found.parameter, found.parameter.present, self.session.display)}"
        )
        taken = "" if self._tried is None else at_value(found.parameter, self._tried, self.session.display)
        self.take.setText(f"Take {taken}" if taken else "Take this value")

    def _finish_typing(self) -> None:
        if not self.typed.isModified():
            return
        self.typed.setModified(False)
        try:
            value = LENGTH.read(self.typed.text(), self.session.display)
        except NotReadError as error:
            self._say(str(error), "error")
            return
        self.try_value(float(value))

    def _connect(self) -> None:
        self.thresholds.entered_row.connect(lambda _: self.try_selected())
        self.choices.asked.connect(self._ask_other)
        self.slider.valueChanged.connect(lambda place: self.try_value(place * self._step()))
        self.typed.editingFinished.connect(self._finish_typing)
        self.take.clicked.connect(self.take_tried)
        self.back.clicked.connect(lambda: self.try_value(None))
        self.thresholds.clicked.connect(lambda _: self.try_selected())
        self.chart.pointed.connect(self._point)
        self.chart.picked.connect(self._pick)
        self._soon.timeout.connect(self._show_trial)

    def _pick(self, across: float) -> None:
        self._point(across)
        self.try_value(self._pointed)

    def _ask_other(self) -> None:
        """Another leaf, thing or hold was chosen: what was on trial of the one before is none of it."""
        self._tried = self._pointed = None
        self.session.trial.end()
        self.show_state()

    def _build(self) -> None:
        self._trying = QWidget()
        line = bare_line(self._trying)
        with_name(line, "Try", self.slider)
        line.setStretchFactor(self.slider, 1)
        self.typed.setFixedWidth(24 * GRID)
        self.typed.setAccessibleName("value on trial, typed")
        for widget in (self.typed, self.take, self.back):
            line.addWidget(widget)
        self.back.setToolTip("Show the opening as it is (Esc)")
        self.take.setToolTip("Change the opening to the value on trial: one step that can be undone")
        self.slider.setToolTip("Arrow keys by one step, page keys by eight; the picture follows")
        sized(self.reading, -1)
        self._both = beside(self.thresholds, self.chart, (4, 5))
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * GRID, GRID, 2 * GRID, GRID)
        column.setSpacing(GRID)
        column.addWidget(self.choices)
        column.addWidget(self.sentence)
        column.addWidget(self._both, 1)
        column.addWidget(self._trying)
        column.addWidget(self.reading)

    # --- Qt's own names ---

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes back to the present value."""
        if event.key() == Qt.Key.Key_Escape and self._tried is not None:
            self.try_value(None)
            return
        super().keyPressEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        """Put nothing on trial that nobody sees how to end."""
        super().hideEvent(event)
        self._tried = self._pointed = None
        self.session.trial.end()


def _words(name: str) -> QLabel:
    label = QLabel()
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setAccessibleName(name)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label


def _is_tried(one: Candidate, found: WhatIf, value: float, study: Study | None) -> bool:
    """Say whether a leaf of the study on trial is the one that a what-if is about, at a value."""
    if study is None or one.leaf != found.leaf or one.to_push:
        return False
    if found.place is not None:
        return one.way is not None and one.way.given == study.compared[found.place]
    width = value if found.parameter.of_hinge else found.width
    return one.way is None and abs(one.hinge_width - width) <= TOLERANCE
