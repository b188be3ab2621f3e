"""The command that prints the JSON Schema of the project file, or of one of the results."""

import argparse
import json
from typing import Any

from configurator.cli.shared import DONE
from configurator.resource_files import resource_path

SCHEMAS = ("project", "comparison", "order", "order-changes", "schedule", "kinds")
"""The project file; then what `compare`, `order`, `order --since`, `schedule` and `kinds` print as data."""


def add_schema_command(commands: Any) -> None:
    """Add `schema` to the command line's commands."""
    schema = commands.add_parser(
        "schema",
        help="print the JSON Schema of the project file or of a result",
        epilog="example: opening-configurator schema project > project.schema.json",
    )
    schema.add_argument("name", choices=SCHEMAS, metavar="|".join(SCHEMAS))
    schema.set_defaults(run=_schema)


def _schema(options: argparse.Namespace) -> tuple[str, int]:
    if options.name == "project":
        from configurator.project_file.schema import project_schema

        return json.dumps(project_schema(), indent=1, ensure_ascii=False) + "\n", DONE
    return resource_path("schema", f"{options.name}.json").read_text(encoding="utf-8"), DONE
