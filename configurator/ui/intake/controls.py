"""What is asked on the import page, and the row of buttons that take a schedule."""

from collections.abc import Iterable, Mapping

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLabel, QPushButton, QScrollArea, QWidget

from configurator.intake.comparing import Compared
from configurator.intake.saying import counted, nothing_words
from configurator.ui.kit.layout import BARE, StillCombo, down, fill
from configurator.ui.kit.look import GRID, tinted


class TakeRow(QWidget):
    """While one row is bad only the good ones can be taken, and by a button that says so.

    Signals:
        taken: what is good is to be taken.
        cancelled: nothing is.
    """

    taken = Signal()
    cancelled = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.remove, self.name = QCheckBox(), QCheckBox()
        self.good, self.every, self.cancel = QPushButton(), QPushButton(), QPushButton("Cancel")
        self.source = "schedule"
        self._compared: Compared | None = None
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        line.addWidget(self.remove)
        line.addWidget(self.name)
        line.addStretch(1)
        for button in (self.good, self.every, self.cancel):
            line.addWidget(button)
        self.remove.toggled.connect(lambda _: self.show_compared(self._compared))
        self.good.clicked.connect(self.taken)
        self.every.clicked.connect(self.taken)
        self.cancel.clicked.connect(self.cancelled)

    @property
    def removes(self) -> bool:
        """Whether openings that the schedule or the model does not have are to go."""
        return self.remove.isChecked()

    @property
    def names(self) -> bool:
        """Whether the job takes its name from the lines above the table."""
        return self.name.isVisibleTo(self) and self.name.isChecked()

    def offer_name(self, name: str, named: bool) -> None:
        """Offer a name for the job, wanted unless it has one; an empty one is no offer."""
        if self.name.text() != (text := f"Name the job “{name}”"):
            self.name.setText(text)
            self.name.setChecked(not named)
        self.name.setVisible(bool(name))

    def show_compared(self, compared: Compared | None) -> None:
        """Show what can be taken; None while nothing can."""
        self._compared = compared
        good, bad = (len(compared.good), len(compared.bad)) if compared is not None else (0, 0)
        gone = len(compared.gone) if compared is not None else 0
        anything = self.anything()
        self.good.setText(f"Take {counted(good, 'good opening')}")
        self.every.setText(f"Take all {good + bad:,}")
        self.remove.setText(f"Also remove {counted(gone, 'opening')} that the {self.source} does not have")
        self.good.setVisible(bad > 0)
        self.every.setVisible(compared is not None)
        self.remove.setVisible(gone > 0)
        self.good.setEnabled(anything)
        self.every.setEnabled(anything and not bad)
        nothing = "" if anything else nothing_words(self.source)
        why_not = f"{counted(bad, 'row')} cannot be taken" if bad else nothing
        self.every.setToolTip(why_not)

    def anything(self) -> bool:
        """Say whether taking it would change the job."""
        if self._compared is None:
            return False
        going = self.removes and bool(self._compared.gone)
        return going or any(row.kind != "same" for row in self._compared.good)


MOST_AT_ONCE = 4
"""Questions that are seen without scrolling."""


class Asked(QWidget):
    """One question with its answers; hidden while no row waits for it and nothing was answered.

    Signals:
        answered: the name of the answer.
    """

    answered = Signal(str)

    def __init__(self, name: str, answers: Mapping[str, str]) -> None:
        super().__init__()
        self.words, self.answers = QLabel(), StillCombo()
        self.answers.setAccessibleName(name)
        self.words.setBuddy(self.answers)
        for value, title in answers.items():
            self.answers.addItem(title, value)
        self.answers.activated.connect(lambda _: self.answered.emit(self.answers.currentData()))
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2 * GRID)
        line.addWidget(self.words)
        line.addWidget(self.answers)
        line.addStretch(1)
        self.hide()

    def show_answer(self, answer: str, words: str, waiting: int, dark: bool) -> None:
        """Show what holds, and how many rows wait for an answer."""
        self.answers.setCurrentIndex(self.answers.findData(answer))
        self.words.setText(words)
        tinted(self.words, "error" if waiting else "quiet", dark)
        self.setVisible(bool(waiting) or answer != "ask")


class Questions(QScrollArea):
    """What is asked, one below the other: so many at once as leave the rows of the schedule their room."""

    def __init__(self, every: Iterable[Asked]) -> None:
        super().__init__()
        self._every, self._column = tuple(every), QWidget()
        fill(self._column, down(*self._every, spacing=GRID, margins=BARE))
        self.setWidget(self._column)
        self.setWidgetResizable(True)
        self.setFrameShape(QScrollArea.Shape.NoFrame)
        self.hide()

    def fit(self) -> None:
        """Take the room of what is asked now, and give all of it the same width for its words."""
        shown = [each for each in self._every if not each.isHidden()]
        widest = max((each.words.sizeHint().width() for each in shown), default=0)
        for each in shown:
            each.words.setMinimumWidth(widest)  # so that the answers stand under one another
        rows = [each.sizeHint().height() + GRID for each in shown]
        half = rows[0] // 2 if len(rows) > MOST_AT_ONCE else 0  # the one cut says that there are more
        self.setFixedHeight(sum(rows[:MOST_AT_ONCE]) + half)
        self.setVisible(bool(shown))
