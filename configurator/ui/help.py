"""A small window of help that stands beside the work: how lengths are typed, and the keys."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QLabel, QVBoxLayout, QWidget

from configurator.ui.look import GRID

TEXT = """
<h3>Lengths</h3>
<p>4 1/2 &nbsp; 4-1/2 &nbsp; 4.5 &nbsp; 4-1/2" &nbsp; are inches;
3'-0" &nbsp; 3-0 &nbsp; are feet and inches;
114 mm &nbsp; is millimetres. An opening is width first: &nbsp; 3070 &nbsp; 3-0 x 7-0 &nbsp; 36 x 84.
A hinge is height first: &nbsp; 4-1/2 x 4.</p>
<h3>What you did not say</h3>
<p>Grey slanted values marked <i>assumed</i> are usual ones. Click the word, or press F1 in the field, to read
why. Empty a field to go back to its usual value. Esc brings back what held before.</p>
<h3>Keys</h3>
<p>Alt+Left and Alt+Right turn the door by 1°, Alt+Page Up and Alt+Page Down by 15°.
F9 folds the openings away. Ctrl+Z takes back, Ctrl+S saves, Ctrl+Shift+E exports the picture.</p>
<h3>Millimetres</h3>
<p>Lengths in the picture, the table and the form follow the choice of units; findings stay in inches.</p>
<h3>Before you order</h3>
<p>Fire, egress and access rules are the local authority's to apply. The program states what it was told
and what it assumed; listings, local codes and licensed practice decide.</p>
"""


class HelpWindow(QDialog):
    """Not modal: the work goes on behind it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle("Help")
        self.setModal(False)
        words = QLabel(TEXT)
        words.setWordWrap(True)
        words.setTextFormat(Qt.TextFormat.RichText)
        words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        column = QVBoxLayout(self)
        column.setContentsMargins(4 * GRID, 2 * GRID, 4 * GRID, 4 * GRID)
        column.addWidget(words)
        self.resize(120 * GRID, 100 * GRID)
