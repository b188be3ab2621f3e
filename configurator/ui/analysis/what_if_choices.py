"""The line that asks what would be: what is varied, what is held, of which leaf and hinge open width."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QWidget

from configurator.rules.wording import leaf_named
from configurator.sentences import capitalized
from configurator.study import Candidate, Study
from configurator.study.what_if.parameters import Hold, Parameter, parameters_of
from configurator.ui.kit.layout import QuietCombo
from configurator.ui.kit.look import GRID
from configurator.wording.what_if_words import parameter_name


class Choices(QWidget):
    """Three choices; each is kept where the next opening has it too.

    Signals: asked, another one was made.
    """

    asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.parameter, self.hold, self.leaf = QuietCombo(), QuietCombo(), QuietCombo()
        self._study: Study | None = None
        line = named_line(
            self, (("Vary", self.parameter, 22), ("Hold", self.hold, 30), ("Of", self.leaf, 12))
        )  # fmt: skip
        line.addStretch()
        for combo in (self.parameter, self.hold, self.leaf):
            combo.activated.connect(lambda _: self.asked.emit())

    def show_study(self, study: Study | None, plain: bool) -> None:
        """Offer what an opening has; of the hinge open widths at first the recommended one."""
        another = study is not self._study
        self._study = study
        if another:
            names = [_leaf_name(one) for one in _asked_about(study)]
            _fill(self.leaf, [(name, name) for name in names], _recommended(study))
        _fill(
            self.parameter,
            [(capitalized(parameter_name(one, plain)), one.name) for one in self._parameters()],
        )
        parameter = self.chosen_parameter()
        _fill(
            self.hold, [(capitalized(one.name), one.name) for one in (parameter.holds if parameter else ())]
        )
        self.hold.setEnabled(self.hold.count() > 1)

    def candidate(self) -> Candidate | None:
        """Return the leaf on what it hangs on that is asked about."""
        place = self.leaf.currentIndex()
        known = _asked_about(self._study)
        return known[place] if 0 <= place < len(known) else None

    def chosen_parameter(self) -> Parameter | None:
        """Return what is varied."""
        return next((one for one in self._parameters() if one.name == self.parameter.currentData()), None)

    def chosen_hold(self) -> Hold | None:
        """Return what is held meanwhile."""
        parameter, place = self.chosen_parameter(), self.hold.currentIndex()
        return None if parameter is None or place < 0 else parameter.holds[place]

    def state(self) -> tuple[object, ...]:
        """Return what is chosen, to compare with later."""
        return self.leaf.currentData(), self.parameter.currentData(), self.hold.currentData()

    def _parameters(self) -> tuple[Parameter, ...]:
        candidate = self.candidate()
        return () if self._study is None or candidate is None else parameters_of(self._study, candidate)


def _asked_about(study: Study | None) -> tuple[Candidate, ...]:
    """Return what can be asked about: leaves on butts and in other ways, swung to the pull side."""
    return tuple(one for one in (study.candidates if study else ()) if not one.to_push)


def _leaf_name(one: Candidate) -> str:
    return leaf_named(one.leaf, "{}, ") + one.hinge_words


def _recommended(study: Study | None) -> int:
    """Return the place of the first leaf on the hinge open width taken for it; of the first otherwise."""
    if study is None or not study.specification.leaves:
        return 0
    taken = study.specification.leaves[0]
    width, known = taken.parts["width"].value, _asked_about(study)
    places = [
        n
        for n, one in enumerate(known)
        if one.way is None and (one.leaf, one.hinge_width) == (taken.leaf, width)
    ]
    return places[0] if places else 0


def _fill(combo: QuietCombo, choices: Sequence[tuple[str, str]], usual: int = 0) -> None:
    """Show other choices, keeping the one that was made where it is still among them."""
    kept = combo.currentData()
    combo.clear()
    for text, value in choices:
        combo.addItem(text, value)
    values = [value for _, value in choices]
    combo.setCurrentIndex(values.index(kept) if kept in values else (usual if values else -1))


def named_line(holder: QWidget, named: Sequence[tuple[str, QuietCombo, int]]) -> QHBoxLayout:
    """Put choices side by side into a widget, each after its name and with room for so many letters."""
    line = bare_line(holder)
    for name, combo, room in named:
        combo.setMinimumContentsLength(room)
        with_name(line, name, combo)
    return line


def with_name(line: QHBoxLayout, name: str, widget: QWidget) -> None:
    """Add a widget after its name."""
    label = QLabel(name)
    label.setBuddy(widget)
    widget.setAccessibleName(name)
    line.addWidget(label)
    line.addWidget(widget)


def bare_line(holder: QWidget) -> QHBoxLayout:
    """Return a line without margins for what stands side by side."""
    line = QHBoxLayout(holder)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(2 * GRID)
    return line
