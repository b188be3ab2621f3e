"""How its user likes the program, in one dialog: each choice with where it is kept, and a way back."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QDialog,
    QFileDialog,
    QFormLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QTabWidget,
    QWidget,
)

from configurator.model import Job, Shop, paths
from configurator.rules.filling.tolerances import fill_tolerances
from configurator.sentences import capitalized
from configurator.ui.kit.fields import Field, LineField, field_for
from configurator.ui.kit.kinds import LENGTHS
from configurator.ui.kit.layout import BARE, GROW, StillCombo, across, add, down, fill
from configurator.ui.kit.look import GRID, tinted
from configurator.ui.state import edits
from configurator.ui.state.preferences import (
    APPEARANCES,
    KEEP_AFTER,
    LOGO_ENDINGS,
    LONGEST_NAME,
    Preferences,
    logo_trouble,
)
from configurator.ui.state.session import Session
from configurator.ui.window.command_bar import display_place
from configurator.ui.window.commands import DISPLAYS
from configurator.units import Display

POLICY = "job.width_policy"
HERE, IN_JOB = "kept on this computer", "kept in the job"
WORDS = ("the trade's", "the client's")
LOGOS = f"Pictures ({' '.join(f'*{ending}' for ending in LOGO_ENDINGS)})"
NEW_OPENINGS = (
    "Kept on this computer. An opening that is begun anew has these as given, kept with its job. "
    "What is empty stays the usual. An architect's schedule is taken as it is."
)
NAMES = {"compare": "Stock widths compared", "hinge_locations.rule": "Hinge locations"}


class LogoChooser(QWidget):
    """The name of the logo's file, with a button that asks for another and one that takes it away.

    Signals:
        chosen: a file was chosen, or None to go without.
    """

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.name = QLabel()
        self.choose, self.none = QPushButton("Choose…"), QPushButton("None")
        for button, name in ((self.choose, "choose a logo"), (self.none, "no logo")):
            button.setAccessibleName(name)
            button.setAutoDefault(False)
        self.choose.clicked.connect(self._ask)
        self.none.clicked.connect(lambda: self.chosen.emit(None))
        fill(self, across((self.name, 1), self.choose, self.none, spacing=GRID, margins=BARE))

    def show_file(self, logo: Path | None) -> None:
        """Show which file is the logo."""
        self.name.setText("none" if logo is None else logo.name)
        self.name.setToolTip("" if logo is None else str(logo))
        self.none.setEnabled(logo is not None)

    def _ask(self) -> None:
        name, _ = QFileDialog.getOpenFileName(self, "Choose a logo", "", LOGOS)
        if name:
            self.chosen.emit(Path(name).resolve())


class PreferencesDialog(QDialog):
    """Every choice holds at once; Reset goes back to what the program begins with."""

    def __init__(self, owner: QWidget, session: Session, preferences: Preferences) -> None:
        super().__init__(owner)
        self.session, self.preferences = session, preferences
        self.setWindowTitle("Preferences")
        self.lengths = self._choice("lengths", [words for words, _ in DISPLAYS], self._show_in)
        self.appearance = self._choice("appearance", list(APPEARANCES.values()), self._appear)
        self.words = self._choice("words that come first", list(WORDS), self._use_words)
        self.policy = field_for(session, POLICY)
        self.shop_name, self.logo = QLineEdit(), LogoChooser()
        self.shop_name.setAccessibleName("name on pages")
        self.shop_name.setMaxLength(LONGEST_NAME)
        self.shop_name.editingFinished.connect(self._name_shop)
        self.logo.chosen.connect(self._take_logo)
        seconds = [f"{each} s after a change" for each in KEEP_AFTER]
        self.keep_after = self._choice("when unsaved work is kept", seconds, self._keep_after)
        self.trouble = QLabel()
        self.trouble.setWordWrap(True)
        self._reset, close = QPushButton("Reset"), QPushButton("Close")
        self._reset.setToolTip("What is kept on this computer goes back to what the program begins with")
        self._reset.clicked.connect(self.reset)
        close.clicked.connect(self.accept)
        close.setDefault(True)
        self.new_openings = NewOpenings(session, preferences)
        rows, general, tabs = QFormLayout(), QWidget(), QTabWidget()
        fill(general, down(rows, GROW))
        tabs.addTab(general, "General")
        tabs.addTab(self.new_openings, "New openings")
        buttons = across(self._reset, GROW, close)
        fill(self, down((tabs, 1), self.trouble, buttons, margins=(4 * GRID,) * 4))
        for title, editor, kept in (
            ("Lengths in", self.lengths, HERE),
            ("Appearance", self.appearance, HERE),
            ("Words first", self.words, HERE),
            ("Name on pages", self.shop_name, HERE),
            ("Logo on pages", self.logo, HERE),
            ("Unsaved work is kept", self.keep_after, HERE),
            ("Hinge widths taken", self.policy, IN_JOB),
        ):
            row, where = QWidget(), QLabel(kept)
            tinted(where, "quiet", session.dark)
            add(fill(row, across(spacing=2 * GRID, margins=BARE)), (editor, 1), where)
            rows.addRow(title, row)
        session.changed.connect(lambda _: self.show_state())
        self.show_state()

    def show_state(self) -> None:
        """Show what holds, and which stored values could not be read."""
        self.lengths.setCurrentIndex(display_place(self.session.display))
        self.appearance.setCurrentIndex(list(APPEARANCES).index(self.preferences.appearance))
        self.words.setCurrentIndex(int(self.session.plain_words))
        self.keep_after.setCurrentIndex(KEEP_AFTER.index(self.preferences.keep_after))
        self.shop_name.setText(self.session.shop.name)
        self.logo.show_file(self.session.shop.logo)
        self.policy.show_state({})
        self.new_openings.show_state()
        self._tell("\n".join(self.preferences.problems()))

    def reset(self) -> None:
        """Take back every choice that is kept on this computer."""
        self.preferences.reset()
        self.session.shop, self.session.starts = self.preferences.shop, self.preferences.starts
        self.session.parts_shown = self.preferences.shown_parts
        self.new_openings.begin_anew()
        self.session.show_in(Display())
        self.session.use_plain_words(False)
        self.session.use_dark(self.preferences.dark)

    def _tell(self, trouble: str) -> None:
        self.trouble.setText(trouble)
        self.trouble.setVisible(bool(trouble))
        tinted(self.trouble, "warning", self.session.dark)

    def _choice(self, name: str, words: list[str], chosen: Callable[[int], Any]) -> StillCombo:
        combo = StillCombo()
        combo.setAccessibleName(name)
        combo.addItems(words)
        combo.activated.connect(chosen)
        return combo

    def _show_in(self, place: int) -> None:
        self.preferences.display = DISPLAYS[place][1]
        self.session.show_in(DISPLAYS[place][1])

    def _appear(self, place: int) -> None:
        self.preferences.appearance = list(APPEARANCES)[place]
        self.session.use_dark(self.preferences.dark)

    def _use_words(self, place: int) -> None:
        self.preferences.plain_words = bool(place)
        self.session.use_plain_words(bool(place))

    def _keep_after(self, place: int) -> None:
        self.preferences.keep_after = KEEP_AFTER[place]
        self.show_state()

    def _name_shop(self) -> None:
        if self.shop_name.text().strip() != self.session.shop.name:
            self._use_shop(Shop(self.shop_name.text().strip(), self.session.shop.logo))

    def _take_logo(self, logo: Path | None) -> None:
        if why_not := logo_trouble(logo):
            self._tell(why_not)
        else:
            self._use_shop(Shop(self.session.shop.name, logo))

    def _use_shop(self, shop: Shop) -> None:
        self.preferences.shop = self.session.shop = shop
        self.session.changed.emit("display")


class NewOpenings(QWidget):
    """Fields of an opening that stands in no job; what is typed there is kept for new ones."""

    def __init__(self, session: Session, preferences: Preferences) -> None:
        super().__init__()
        self.session, self.preferences = session, preferences
        self.scratch = Session(Job())
        self.fields: dict[str, Field] = {path: self._field(path) for path in edits.STARTS}
        self.to_all = QPushButton("Give to all openings of this job")
        self.to_all.setAutoDefault(False)
        self.to_all.clicked.connect(self._give_to_all)
        rows, about = QFormLayout(), QLabel(NEW_OPENINGS)
        about.setWordWrap(True)
        fill(self, down(about, rows, across(GROW, self.to_all), GROW, spacing=2 * GRID))
        for path, field in self.fields.items():
            rows.addRow(NAMES.get(path, capitalized(paths.trade_name(path))), field)
        self.scratch.changed.connect(self._keep)
        self.scratch.refused.connect(lambda *_: self._show())
        self.show_state()

    def show_state(self) -> None:
        """Show what new openings begin with."""
        self.scratch.display, self.scratch.dark = self.session.display, self.session.dark
        begun = edits.typical_opening("1", self.preferences.starts)
        if self.scratch.opening != begun and not self.scratch.refusals:
            self.scratch.take_openings((begun,), "begin", "1")
        self._show()

    def begin_anew(self) -> None:
        """Forget what was refused."""
        self.scratch.refusals.forget()
        self.show_state()

    def _field(self, path: str) -> Field:
        return LineField(self.scratch, path, LENGTHS) if path == "compare" else field_for(self.scratch, path)

    def _show(self) -> None:
        opening = self.scratch.opening
        assert opening is not None
        for field in self.fields.values():
            field.show_state(fill_tolerances(opening).assumed)
        self.to_all.setEnabled(bool(self.preferences.starts and self.session.job.openings))

    def _keep(self, by: str) -> None:
        opening, typical = self.scratch.opening, edits.typical_opening("1")
        if by == "edit" and opening is not None:
            values = {path: paths.value_at(opening, path) for path in edits.STARTS}
            own = (path for path, value in values.items() if value != paths.value_at(typical, path))
            chosen = {path: _as_stored(values[path]) for path in own}
            if chosen != self.preferences.starts:
                self.preferences.starts = chosen
            self.session.starts = self.preferences.starts
        self._show()

    def _give_to_all(self) -> None:
        """Give the starts to every opening of the job, as one step."""
        starts, job = self.preferences.starts, self.session.job
        openings = tuple(edits.edited(opening, starts) for opening in job.openings)
        self.session.take_openings(openings, "give the shop's starts to all openings", self.session.mark)


def _as_stored(value: Any) -> Any:
    return list(value) if isinstance(value, tuple) else value
