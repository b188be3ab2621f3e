"""Signs that reading a workbook puts into cells, known without the library that reads one."""

NOT_WORKED_OUT = "#NOT WORKED OUT"
"""Stands for a cell whose formula no program has worked out yet."""
