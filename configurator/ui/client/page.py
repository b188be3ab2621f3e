"""The client's view as a page of the window: questions, a large picture that moves, plain sentences."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QApplication,
    QLabel,
    QSizePolicy,
    QStackedWidget,
    QWidget,
)

from configurator.drawing.client.client_picture import picture_end
from configurator.sentences import as_sentence
from configurator.study import Study
from configurator.study.widths.width_pair import width_pair
from configurator.ui.client.canvas import ClientCanvas, Player
from configurator.ui.client.controls import PLAY, WHOLE, Controls, Deed, Side
from configurator.ui.client.put_away import (
    CAPITALS,
    FULL_SCREEN_CAPITALS,
    TOUCH,
    PutAway,
    pixels_a_millimetre,
    type_of,
)
from configurator.ui.client.questions import Questions
from configurator.ui.client.sentences import Sentences, print_page, save_page
from configurator.ui.kit.layout import BARE, LeadsOn, across, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state.session import Session
from configurator.wording.client_words import client_sayings, door_named

NOTHING_YET = "Answer a question, or pick a typical door under “Start from”: the door is drawn here."
_IDLE = ("save", "file")
_LEAST_LINES_OF_PICTURE = 11
"""Least height of the picture, in heights of its type: at less its headings would leave nothing of it."""


class ClientPage(LeadsOn, QWidget):
    """One door as it is shown to a client. It works on the opening on show, as every view does.

    Signals:
        left: back to the work.
        said: a sentence for the window's line.
    """

    left = Signal()
    said = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.player = Player(session, self)
        self.away = PutAway(self)
        self.questions = Questions(session)
        self.canvas = ClientCanvas()
        self.heading, self.words, self.marked = QLabel(), QLabel(), QLabel()
        self.sentences = Sentences()
        self.controls = Controls(self._deeds(), session.swing)
        self._folded = Side(self.questions)
        self._stack = QStackedWidget()
        self._sized_for: object = None
        self._put_together()
        self.player.turned_on.connect(self.controls.show_playing)
        self.canvas.turned.connect(self._drag)
        self.first_stop = self.controls.buttons["play"]

    # --- What it shows ---

    def show_state(self, by: str) -> None:
        """Bring the page in line with the session; a swing only turns the door."""
        if by == "swing":
            self.player.follow()
            self.canvas.set_angle(self.session.angle)
            self.controls.show_angle(self.session.angle, self.player.end)
        elif by not in _IDLE:
            self.player.pause()
            self.show_size()
            self.questions.show_state()
            self._show_door()

    def _show_door(self) -> None:
        session = self.session
        study, opening = session.study, session.opening
        self.heading.setText(f"{door_named(opening)}, seen from above" if opening else "")
        self.marked.setText(_marked(study) if study else "")
        drawn = study is not None and bool(study.candidates)
        self.controls.buttons["play"].setEnabled(drawn)
        begin = next(iter(self.questions.starts.buttons.values()))
        self.first_stop = self.controls.buttons["play"] if drawn else begin
        if study is None or not study.candidates:
            self.words.setText(session.trouble or NOTHING_YET)
            self.sentences.say("")
            self._stack.setCurrentWidget(self.words)
            return
        tinted(self.marked, "quiet", session.dark)
        self._stack.setCurrentWidget(self.canvas)
        self.player.end = picture_end(study)
        self.canvas.show_study(study, session.angle, session.display, session.dark)
        self.sentences.say("\n".join(client_sayings(study, width_pair(study), session.display)))
        self.controls.show_angle(session.angle, self.player.end)

    def show_size(self) -> None:
        """Set type and buttons in millimetres of the screen: far larger where the page has all of it."""
        screen, whole = self.screen(), self.away.whole_screen
        wanted = (screen, screen.geometry(), whole)
        if wanted == self._sized_for:
            return
        self._sized_for = wanted
        font = type_of(QApplication.font(), FULL_SCREEN_CAPITALS if whole else CAPITALS, screen)
        self.setFont(font)
        touch = -int(-TOUCH * pixels_a_millimetre(screen) // 1)
        self.controls.show_size(touch, whole)
        self.questions.show_size(touch, columns=1 if whole else 2)
        self._stack.setMinimumHeight(_LEAST_LINES_OF_PICTURE * font.pixelSize())
        self.canvas.set_letters(font.pixelSize())
        self._fold(not whole)

    # --- What it does ---

    def toggle_whole_screen(self) -> None:
        """Take the whole screen, or give it back."""
        self.away.use_whole_screen(not self.away.whole_screen)
        self.show_size()

    def _deeds(self) -> tuple[Deed, ...]:
        return (
            Deed("play", PLAY, "Play the swing, or pause it (Space)", self.player.toggle),
            Deed("questions", "Questions", "Show the questions, or fold them away", self._turn_fold, True),
            Deed("print", "Print…", "Print one page of this door", self._print),
            Deed("save", "Save page…", "Write the page to a PDF", self._save),
            Deed("whole", WHOLE, "Use the whole screen, or leave it (F11)", self.toggle_whole_screen),
            Deed("back", "Back", "Back to the work (Esc)", self.left.emit),
        )

    def _drag(self, angle: float) -> None:
        """Turn the door with the hand that holds it, no farther than it goes."""
        self.player.pause()
        self.session.swing(min(angle, self.player.end))

    def _turn_fold(self) -> None:
        self._fold(not self._folded.isVisibleTo(self))

    def _fold(self, shown: bool) -> None:
        self._folded.setVisible(shown)
        self.controls.buttons["questions"].setChecked(shown)

    def _print(self) -> None:
        self._on_paper(print_page)

    def _save(self) -> None:
        self._on_paper(save_page)

    def _on_paper(self, put: Callable[[Session, QWidget], str]) -> None:
        try:
            self.said.emit(put(self.session, self))
        except ValueError as error:
            self.said.emit(as_sentence(str(error)))

    # --- How it is put together ---

    def _put_together(self) -> None:
        for label in (self.words, self.heading, self.marked):
            label.setWordWrap(True)
        self.words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.marked.setContentsMargins(2 * GRID, 0, 2 * GRID, 2 * GRID)
        self.heading.setContentsMargins(2 * GRID, GRID, 2 * GRID, 0)
        self._stack.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Ignored)
        self._stack.addWidget(self.words)
        self._stack.addWidget(self.canvas)
        shown = (self.heading, (self._stack, 1), self.controls, self.sentences, self.marked)
        fill(self, across(self._folded, (down(*shown, spacing=0), 1), spacing=0, margins=BARE))

    # --- Qt's own names ---

    def showEvent(self, event: QShowEvent) -> None:
        """Fold away everything technical."""
        super().showEvent(event)
        self.away.put_away()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Follow a window that was given the whole screen, or another one, by other means."""
        super().resizeEvent(event)
        self.show_size()

    def hideEvent(self, event: QHideEvent) -> None:
        """Bring it back, and let the door stand; not where the whole window is only out of sight."""
        self.player.pause()
        if not event.spontaneous():
            self.away.bring_back()
        super().hideEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space plays, F11 takes the whole screen, Esc goes back."""
        if event.key() == Qt.Key.Key_Space:
            self.player.toggle()
        elif event.key() == Qt.Key.Key_F11:
            self.toggle_whole_screen()
        elif event.key() == Qt.Key.Key_Escape:
            self._go_back()
        else:
            super().keyPressEvent(event)

    def _go_back(self) -> None:
        if self.away.whole_screen:
            self.toggle_whole_screen()
        else:
            self.left.emit()


def _marked(study: Study) -> str:
    """Say how much of this is not measured, and how much is to be noted; all of it is by the questions."""
    said = sum(1 for one in study.all_findings() if one.severity in ("error", "warning"))
    note = f"⚠ {said} to note, " if said else ""
    usual = f"{note}{len(study.filled.assumed)} taken as usual, not measured"
    usual += "" if study.opening.hardware else ", drawn without a handle"
    return f"{usual}: see Questions."
