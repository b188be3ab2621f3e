import os

# Before anything imports Qt: the tests draw into memory and need no display.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
