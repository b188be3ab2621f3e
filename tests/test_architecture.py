"""The import rules: data runs downward only, and each toolkit lives in one place."""

import ast
import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "configurator"


def test_import_rules_hold():
    linter = Path(sys.executable).with_name("lint-imports")
    result = subprocess.run([linter, "--no-cache"], cwd=ROOT, capture_output=True, text=True, timeout=120)
    assert result.returncode == 0, result.stdout + result.stderr


def test_a_broken_rule_is_seen(tmp_path):
    """Geometry importing a record, in a copy of the package, must fail the very same rules."""
    copy = tmp_path / "configurator"
    for source in PACKAGE.rglob("*.py"):
        target = copy / source.relative_to(PACKAGE)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(source.read_bytes())
    (tmp_path / "pyproject.toml").write_bytes((ROOT / "pyproject.toml").read_bytes())
    (copy / "geometry" / "broken.py").write_text("from configurator.model import Job\n")
    linter = Path(sys.executable).with_name("lint-imports")
    result = subprocess.run(
        [linter, "--no-cache"],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        timeout=120,
        env={"PYTHONPATH": str(tmp_path), "PATH": "/usr/bin:/bin"},
    )
    assert result.returncode == 1
    assert "configurator.geometry.broken" in result.stdout


def _imported_modules(path: Path) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
            found.update(f"{node.module}.{alias.name}" for alias in node.names)
    return found


def test_pyplot_is_never_imported():
    for path in PACKAGE.rglob("*.py"):
        assert "matplotlib.pyplot" not in _imported_modules(path), path


def test_matplotlib_in_the_window_is_only_in_the_canvases():
    for path in (PACKAGE / "ui").rglob("*.py"):
        if path.stem not in ("canvas", "chart_canvas"):
            assert not any(name.startswith("matplotlib") for name in _imported_modules(path)), path


def test_geometry_uses_the_standard_library_and_numpy_only():
    allowed = sys.stdlib_module_names | {"numpy", "configurator"}
    for path in (PACKAGE / "geometry").rglob("*.py"):
        for name in _imported_modules(path):
            assert name.split(".")[0] in allowed, (path, name)


def test_every_file_the_recipes_name_is_there():
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    assert len(text) <= 8000
    rooms = [ROOT / room for room in ("configurator", "resources", "tests")]
    there = [f"/{path.relative_to(ROOT)}" for room in rooms for path in room.rglob("*.*")]
    named = set(re.findall(r"`([\w./]+\.(?:py|csv))`", text))
    assert len(named) > 40
    assert sorted(name for name in named if not any(path.endswith(f"/{name}") for path in there)) == []
