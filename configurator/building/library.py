"""The library that reads building models, which may be missing, and a file that may be none."""

import importlib
import zipfile
from pathlib import Path
from typing import Any

from configurator.intake.sheet import IntakeError

MISSING = (
    "building models are read by ifcopenshell, which is not installed; "
    "get it with: pip install 'opening-configurator[model]'"
)
SCHEMAS = ("IFC2X3", "IFC4", "IFC4X3")
LARGEST_FILE = 2 * 2**30
"""Bytes. A file of 223 MB with 2,000 doors took 2.7 GB of memory while it was read."""
_HEAD = 4096


def library(name: str = "") -> Any:
    """Return the library, or one of its modules. Raises IntakeError where it is not installed."""
    try:
        return importlib.import_module(f"ifcopenshell.{name}" if name else "ifcopenshell")
    except ImportError:
        raise IntakeError(MISSING) from None


def open_model(path: Path) -> Any:
    """Return a model of a schema that is read here. Raises IntakeError with a sentence that says why not."""
    ifcopenshell = library()
    _refuse_other_files(path)
    try:
        model = ifcopenshell.open(str(path))
        schema = model.schema
    except Exception as error:  # the library raises errors of its own for what it cannot parse
        if "schema" in str(error).lower():
            raise IntakeError(f"{path.name}: {_schema_words(path)}") from None
        raise IntakeError(f"{path.name} cannot be read as a building model: {_first_line(error)}") from None
    if schema not in SCHEMAS:
        raise IntakeError(f"{path.name}: {_schema_words(path)}")
    if not model.by_type("IfcProject"):
        raise IntakeError(f"{path.name} has no project in it: it is cut short, or no building model")
    return model


def errors_logged() -> int:
    """Return how many errors the library has noted since last asked: it leaves out what it cannot parse."""
    log = str(library().get_log())
    return log.count("[error]") + log.count('"level":"error"')  # its validator has it write the other way


def _refuse_other_files(path: Path) -> None:
    try:
        if not path.is_file():
            raise IntakeError(
                f"{path.name} is not there" if not path.exists() else f"{path.name} is not a file"
            )
        size = path.stat().st_size
        with path.open("rb") as file:
            head = file.read(_HEAD)
            file.seek(max(size - _HEAD, 0))
            tail = file.read()
    except OSError as error:
        raise IntakeError(
            f"{path.name} could not be read: {(error.strerror or str(error)).lower()}"
        ) from None
    if size > LARGEST_FILE:
        raise IntakeError(f"{path.name} is larger than {LARGEST_FILE // 2**30} GB")
    if not head.strip():
        raise IntakeError(f"{path.name} is empty")
    if zipfile.is_zipfile(path):
        raise IntakeError(f"{path.name} is a zip archive; take the .ifc file out of it first")
    if b"ISO-10303-21;" not in head:
        raise IntakeError(f"{path.name} is no IFC file: it does not begin with ISO-10303-21")
    if b"END-ISO-10303-21;" not in tail:
        raise IntakeError(f"{path.name} is cut short: its end is missing")


def _schema_words(path: Path) -> str:
    """Say which schema a file names, and which are read."""
    head = path.read_bytes()[:_HEAD].decode("latin-1")
    named = head.partition("FILE_SCHEMA")[2].partition("'")[2].partition("'")[0]
    return f"its schema {named[:40] or 'is not named and'} is not read; {', '.join(SCHEMAS)} are"


def _first_line(error: Exception) -> str:
    return (str(error).strip().splitlines() or [type(error).__name__])[0][:120].rstrip(".")
