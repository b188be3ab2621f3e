"""Show what ended the window in long use: Python objects for layout items that Qt has freed.

    python tests/bench/freed_layout_items.py

Three processes make and free small widgets through the event loop, with freed memory filled with a pattern.
One walks through its layouts by `itemAt` and dies of a segmentation fault within some hundred steps (PySide6
6.10.3 and 6.11.3 on Python 3.11 and 3.13). One adds inner layouts that are filled already, for which PySide6
does the same inside: it may live, but is left with hundreds of objects for what is gone. One does neither: it
lives and keeps none.
"""

import os
import random
import subprocess
import sys

STEPS = 5000
WAYS = ("walked by itemAt", "added when filled", "neither")


def act(way: str) -> None:
    """Make and free widgets until the steps are done, or this process is."""
    import shiboken6
    from PySide6.QtCore import QTimer
    from PySide6.QtWidgets import (
        QApplication,
        QHBoxLayout,
        QLabel,
        QLayout,
        QLineEdit,
        QTableWidget,
        QTableWidgetItem,
        QVBoxLayout,
        QWidget,
    )

    application = QApplication([])
    chance = random.Random(1)
    window = QWidget()
    column = QVBoxLayout(window)
    cards: list[QWidget] = []

    def card() -> QWidget:
        made, line = QWidget(), QHBoxLayout()
        inner = QVBoxLayout(made)
        if way == "added when filled":
            for _ in range(chance.randrange(1, 8)):
                line.addWidget(QLineEdit())
        inner.addLayout(line)
        line.addWidget(QLineEdit())
        inner.addWidget(QLabel("a card"))
        return made

    def walk(layout: QLayout) -> None:
        for item in [layout.itemAt(place) for place in range(layout.count())]:
            found = item.layout() or (item.widget() and item.widget().layout())
            if found is not None:
                walk(found)

    def step(number: int) -> None:
        if number == STEPS:
            kinds = [type(one).__name__ for one in shiboken6.getAllValidWrappers()]
            print(f"lived, {kinds.count('QWidgetItem')} objects for layout items")
            application.quit()
            return
        QTimer.singleShot(0, lambda: step(number + 1))
        while cards and chance.random() < 0.6:
            gone = cards.pop(chance.randrange(len(cards)))
            gone.hide()
            gone.deleteLater()
        for _ in range(chance.randrange(4)):
            cards.append(card())
            column.addWidget(cards[-1])
        if way == "walked by itemAt":
            walk(column)
        table = QTableWidget(chance.randrange(1, 20), 3)
        for row in range(table.rowCount()):
            table.setItem(row, 0, QTableWidgetItem("a cell"))
        table.setRowCount(chance.randrange(3))
        table.deleteLater()

    QTimer.singleShot(0, lambda: step(0))
    application.exec()


def main() -> None:
    """Run each way in a process of its own and print how it ended."""
    if len(sys.argv) > 1:
        act(sys.argv[1])
        return
    memory = {"PYTHONMALLOC": "malloc", "MALLOC_PERTURB_": "205", "QT_QPA_PLATFORM": "offscreen"}
    for way in WAYS:
        words = [sys.executable, __file__, way]
        ended = subprocess.run(words, env={**os.environ, **memory}, capture_output=True, text=True)
        print(f"{way}: {ended.stdout.strip() or f'ended with status {ended.returncode}'}")


if __name__ == "__main__":
    main()
