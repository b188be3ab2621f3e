"""The JSON Schema of a project file, derived from the records that read it."""

from typing import Any

from configurator.model import FORMAT, VERSION, Job
from configurator.model.paths import OLDER_WORDS

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_BOUNDS = {"gt": "exclusiveMinimum", "ge": "minimum", "lt": "exclusiveMaximum", "le": "maximum"}
_OUR_WORDS = ("plain", "help", "left_out")


def project_schema() -> dict[str, Any]:
    """Return the schema: every key, its words or bounds, its unit, and what it means where it is left out.

    Lengths are numbers of inches or texts, and null stands for a key left out. What several keys are
    together, as a hinge set in too deep, no schema says: the program does, when it reads the file.
    """
    schema = Job.model_json_schema()
    for record in (schema, *schema["$defs"].values()):
        asked = record.get("required", ())
        record.pop("title", None)
        for name, field in record.get("properties", {}).items():
            record["properties"][name] = _described(field, name in asked)
    for name, words in OLDER_WORDS.items():
        schema["$defs"]["Opening"]["properties"][name]["enum"] += words
    schema["properties"] |= {"format": {"const": FORMAT}, "version": {"type": "integer", "maximum": VERSION}}
    schema["required"] = ["format", "version"]
    return {"$schema": DIALECT, "title": "Opening Configurator project file", **schema}


def _described(field: dict[str, Any], asked: bool) -> dict[str, Any]:
    """Return a field with one description in place of its names and helps, null allowed where not asked."""
    name, _, help_, left_out = field.pop("title", ""), *(field.pop(key, "") for key in _OUR_WORDS)
    words = "; ".join(filter(None, (name, help_, left_out and f"left out: {left_out}")))
    field.pop("default", None)
    kinds = [_bounded(each) for each in field.pop("anyOf", [field]) if each != {"type": "null"}]
    found = _or_null(kinds) if not asked else kinds[0] if len(kinds) == 1 else {"anyOf": kinds}
    return {"description": words, **found} if words else found


def _bounded(kind: dict[str, Any]) -> dict[str, Any]:
    """Return a kind with its bounds by the names of JSON Schema; they hold for numbers, not for texts."""
    return {_BOUNDS.get(key, key): value for key, value in kind.items()}


def _or_null(kinds: list[dict[str, Any]]) -> dict[str, Any]:
    if len(kinds) > 1 or "$ref" in kinds[0]:
        return {"anyOf": [*kinds, {"type": "null"}]}
    if "enum" in kinds[0]:
        return {"enum": [*kinds[0]["enum"], None]}
    given = kinds[0].get("type", [])
    return {**kinds[0], "type": [*([given] if isinstance(given, str) else given), "null"]}
