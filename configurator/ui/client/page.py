"""The client's view as a page of the window: questions, a large picture that moves, plain sentences."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QKeySequence, QResizeEvent, QShowEvent
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
from configurator.ui.client.canvas import ClientCanvas, Player
from configurator.ui.client.controls import PLAY, WHOLE, Controls, Deed, Side
from configurator.ui.client.put_away import (
    ASKED_CAPITALS,
    CAPITALS,
    FULL_SCREEN_CAPITALS,
    TOUCH,
    PutAway,
    pixels_a_millimetre,
    type_of,
)
from configurator.ui.client.questions import Questions
from configurator.ui.client.sending import costs_of, print_page, save_page
from configurator.ui.client.tried import WAITS, TriedBar, TriedDoor
from configurator.ui.kit.layout import BARE, LeadsOn, across, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state.session import Session
from configurator.wording.client_words import client_cautions, door_named

NOTHING_YET = "Answer a question, or pick a typical door under “Try a door”: the door is drawn here."
_IDLE = ("save", "file")


class ClientPage(LeadsOn, QWidget):
    """One door as it is shown to a client: the opening on show, or a typical door that is only tried.

    Signals:
        left: back to the work.
        said: a sentence for the window's line.
        waiting: a tried door was neither kept nor put away when the page was left; empty once none is.
    """

    left = Signal()
    said = Signal(str)
    waiting = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.session = session
        self.tried = TriedDoor(session, self._show_tried)
        self.tried_bar = TriedBar(lambda: self._end_tried(True), lambda: self._end_tried(False))
        self._asks_to_keep = False
        self._history = session.history
        self.player = Player(session, self)
        self.away = PutAway(self)
        self.questions = Questions(session)
        self.canvas = ClientCanvas()
        self.heading, self.words, self.marked = QLabel(), QLabel(), QLabel()
        self.controls = Controls(self._deeds(), lambda angle: self.shown.swing(angle))
        self._folded = Side(self.questions)
        self._stack = QStackedWidget()
        self._sized_for: object = None
        self._put_together()
        self.player.turned_on.connect(self.controls.show_playing)
        self.canvas.turned.connect(self._drag)
        self.questions.tried.connect(self._try)
        self.first_stop = self.controls.buttons["play"]

    # --- What it shows ---

    @property
    def shown(self) -> Session:
        """The session of the door on show: the job's, or that of the door on trial."""
        return self.tried.shown

    def show_state(self, by: str) -> None:
        """Bring the page in line with the job's session; a door on trial stays as it is."""
        if self.tried.session is None:
            self._show(by)
        elif self.session.history is not self._history:
            self.said.emit("The door that was tried belonged to the job before, and was not kept.")
            self._end_tried(False)
        elif by in ("display", "theme", "open"):
            self.tried.follow()
            self._show("display")
        self._history = self.session.history

    def _show_tried(self, by: str) -> None:
        self._show(by)

    def _show(self, by: str) -> None:
        """Show the door on show anew; a swing only turns it."""
        session = self.shown
        if by == "swing":
            self.player.follow()
            self.canvas.set_angle(session.angle)
            self.controls.show_angle(session.angle, self.player.end)
        elif by not in _IDLE:
            self.player.pause()
            self.show_size()
            self.questions.show_state()
            self._show_door()

    def _show_door(self) -> None:
        session = self.shown
        study, opening = session.study, session.opening
        named = self.tried.name if self.tried.session else door_named(opening) if opening else ""
        self.heading.setText(named and f"{named}, seen from above")
        whole = self.away.whole_screen
        name = self.tried.name if self._asks_to_keep or not whole else ""
        self.tried_bar.show_tried(name, self._asks_to_keep, session.dark)
        for label in (self.heading, self.marked):
            label.setVisible(not whole)
        self.marked.setText(_marked(study) if study else "")
        drawn = study is not None and bool(study.candidates)
        self.controls.buttons["play"].setEnabled(drawn)
        begin = next(iter(self.questions.starts.buttons.values()))
        self.first_stop = self.controls.buttons["play"] if drawn else begin
        if study is None or not study.candidates:
            self.words.setText(session.trouble or NOTHING_YET)
            self._stack.setCurrentWidget(self.words)
            return
        tinted(self.marked, "quiet", session.dark)
        self._stack.setCurrentWidget(self.canvas)
        self.player.end = picture_end(study)
        self.canvas.tell_also((*costs_of(session), *((_marked(study),) if whole else ())))
        self.canvas.show_study(study, session.angle, session.display, session.dark)
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
        self.questions.setFont(type_of(QApplication.font(), ASKED_CAPITALS if whole else CAPITALS, screen))
        self.questions.show_size(touch, columns=2)
        self.tried_bar.show_size(touch)
        self.canvas.set_letters(font.pixelSize())
        self._fold(not whole)
        self._show_door()

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
            Deed("save", "Save…", "Write the page, or a moving picture, to a file to send", self._save),
            Deed("whole", WHOLE, "Use the whole screen, or leave it (F11)", self.toggle_whole_screen),
            Deed("back", "Back", "Back to the work (Esc)", self._go_back),
        )

    def _drag(self, angle: float) -> None:
        """Turn the door with the hand that holds it, no farther than it goes."""
        self.player.pause()
        self.shown.swing(min(angle, self.player.end))

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
            self.said.emit(put(self.shown, self))
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
        shown = (self.heading, self.tried_bar, (self._stack, 1), self.controls, self.marked)
        fill(self, across(self._folded, (down(*shown, spacing=0), 1), spacing=0, margins=BARE))

    # --- Qt's own names ---

    def showEvent(self, event: QShowEvent) -> None:
        """Fold away everything technical."""
        super().showEvent(event)
        self.away.put_away()
        self.waiting.emit("")

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Follow a window that was given the whole screen, or another one, by other means."""
        super().resizeEvent(event)
        self.show_size()

    def hideEvent(self, event: QHideEvent) -> None:
        """Bring it back, and let the door stand; not where the whole window is only out of sight."""
        self.player.pause()
        if not event.spontaneous():
            self.away.bring_back()
            if self.tried.session is not None:
                self.waiting.emit(WAITS)
        super().hideEvent(event)

    def event(self, event: QEvent) -> bool:
        """Keep the keys of undo and redo to the door on trial: the job must not change under it."""
        if event.type() == QEvent.Type.ShortcutOverride and self._steps_of_tried(event):
            event.accept()
            return True
        return bool(super().event(event))

    def _steps_of_tried(self, event: QEvent) -> bool:
        keys = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo)
        is_key = isinstance(event, QKeyEvent) and any(event.matches(key) for key in keys)
        return self.tried.session is not None and is_key

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Space plays, F11 takes the whole screen, Esc goes back."""
        if self._steps_of_tried(event):
            step = self.shown.undo if event.matches(QKeySequence.StandardKey.Undo) else self.shown.redo
            step()
        elif event.key() == Qt.Key.Key_Space:
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
        elif self.tried.session is not None and not self._asks_to_keep:
            self._asks_to_keep = True
            self._show_door()
            self.tried_bar.keep.setFocus()
        elif self.tried.session is None:
            self.left.emit()

    # --- A door on trial ---

    def _try(self, name: str) -> None:
        """Try a typical door; one that was tried before it is put away, for it was only tried."""
        self.player.pause()
        self.tried.end()
        self.tried.begin(name)
        self._asks_to_keep = False
        self._work_on_shown()

    def _end_tried(self, keep: bool) -> None:
        """Put the door on trial into the job, or away; leave if that was what asked for it."""
        leaves, name = self._asks_to_keep, self.tried.name
        self._asks_to_keep = False
        self.player.pause()
        if keep:
            self.tried.keep()
        else:
            self.tried.end()
        self.waiting.emit("")
        self._work_on_shown()
        if name:
            self.said.emit(f"{name}: {'now in the job as ' + self.session.mark if keep else 'not kept'}.")
        if leaves:
            self.left.emit()

    def _work_on_shown(self) -> None:
        self.player.session = self.shown
        self.questions.work_on(self.shown)
        self._show("select")


def _marked(study: Study) -> str:
    """Say how much of this is not measured, and how much is to be noted; all of it is by the questions."""
    said = len(client_cautions(study))
    note = f"⚠ {said} to note, " if said else ""
    usual = f"{note}{len(study.filled.assumed)} taken as usual, not measured"
    usual += "" if study.opening.hardware else ", drawn without a handle"
    return f"{usual}: see Questions."
