"""One table of all that is timed, with what one would otherwise write, in one run; kept as data with the machine.

``python bench/run.py`` measures the installed library. ``--against REV`` builds that revision and this one, times both
in turns, and prints them side by side. A ratio's spread is the lowest and the highest of the repeats.
"""

from __future__ import annotations

import argparse
import datetime
import json
import platform
import subprocess
import sys
import sysconfig
import tempfile
import zipfile
from pathlib import Path
from typing import Any

import numpy as np
from rich.console import Console
from rich.progress import track
from rich.table import Table
from row import Row, other_seconds, ours_seconds

ROOT = Path(__file__).resolve().parents[1]
RESULTS = ROOT / "bench" / "results"


def all_rows() -> list[Row]:
    """Collect the rows of every file."""
    import day
    import drift
    import rise
    import water

    return [*rise.rows(), *water.rows(), *drift.rows(), *day.rows()]


def shown_time(seconds: float) -> str:
    """Write a time in the unit that suits it."""
    for unit, size in (("s", 1.0), ("ms", 1e-3), ("µs", 1e-6)):
        if seconds >= size:
            return f"{seconds / size:.3g} {unit}"
    return f"{seconds * 1e9:.3g} ns"


def shown_ratio(ratio: float) -> str:
    """Write a ratio with three digits."""
    return f"{ratio:,.0f}" if ratio >= 100 else f"{ratio:.3g}"


def spread(ratios: list[float]) -> dict[str, float]:
    """Summarise the repeats of a ratio."""
    return {"ratio": float(np.median(ratios)), "lowest": min(ratios), "highest": max(ratios)}


def machine() -> dict[str, Any]:
    """Say what it was measured on."""
    info = Path("/proc/cpuinfo")
    names = [line.partition(":")[2].strip() for line in info.read_text().splitlines() if line.startswith("model name")]
    return {
        "processor": names[0] if names else platform.processor(),
        "processors": len(names) or None,
        "system": platform.platform(),
        "python": platform.python_version(),
        "numpy": np.__version__,
    }


def git(*arguments: str) -> str:
    """Ask git about this checkout."""
    return subprocess.run(["git", "-C", ROOT, *arguments], check=True, capture_output=True, text=True).stdout.strip()


def keep(name: str, content: dict[str, Any]) -> Path:
    """Write a result as data."""
    RESULTS.mkdir(exist_ok=True)
    today = datetime.datetime.now(tz=datetime.UTC).date().isoformat()
    path = RESULTS / f"{today}-{name}.json"
    path.write_text(json.dumps({"date": today, "machine": machine(), **content}, indent=1) + "\n", encoding="utf-8")
    return path


def alone(repeats: int) -> None:
    """Time ours and the alternatives."""
    table = Table(title="one answer of ours beside what one would otherwise write; one run", title_justify="left")
    for column in ("", "ours", "alternative", "its time", "its time ÷ ours", "spread"):
        table.add_column(column, justify="left" if column in ("", "alternative") else "right")
    found, last = [], ""
    for row in track(all_rows(), "measuring", transient=True, console=Console(stderr=True)):
        ours, other = [], []
        for _ in range(repeats):
            ours.append(ours_seconds(row))
            other.append(other_seconds(row))
        ratio = spread([b / a for a, b in zip(ours, other, strict=True)])
        took, others = float(np.median(ours)), float(np.median(other))
        found.append(
            {"name": row.name, "seconds": took, "alternative": row.alternative, "its_seconds": others, **ratio}
        )
        table.add_row(
            row.name if row.name != last else "",
            shown_time(took) if row.name != last else "",
            row.alternative,
            shown_time(others),
            shown_ratio(ratio["ratio"]),
            f"{shown_ratio(ratio['lowest'])} to {shown_ratio(ratio['highest'])}",
        )
        last = row.name
    Console(highlight=False, width=None if sys.stdout.isatty() else 140).print(table)
    print(f"kept in {keep(git('rev-parse', '--short', 'HEAD'), {'rows': found}).relative_to(ROOT)}")


def built(source: Path, to: Path) -> Path:
    """Build the package of a checkout into a folder of its own."""
    command = [sys.executable, "-m", "pip", "wheel", "-q", "--no-build-isolation", "--no-deps", "-w", to / "wheel"]
    subprocess.run([*command, f"-Cbuild-dir={to / 'build'}", source], check=True)
    (wheel,) = (to / "wheel").glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(to / "package")
    return to / "package"


def seconds_of(package: Path) -> dict[str, float]:
    """Time ours with the library of a folder, in a process of its own."""
    paths = [str(package), str(ROOT / "bench"), sysconfig.get_path("purelib"), sysconfig.get_path("platlib")]
    code = f"import sys; sys.path[:0] = {paths!r}; import run; run.print_seconds()"
    command = [sys.executable, "-I", "-S", "-c", code]
    result = subprocess.run(command, check=True, capture_output=True, text=True)
    seconds: dict[str, float] = json.loads(result.stdout)
    return seconds


def print_seconds() -> None:
    """Print the time of each row of ours, for `seconds_of`."""
    print(json.dumps({name: ours_seconds(row) for name, row in {row.name: row for row in all_rows()}.items()}))


def against(revision: str, repeats: int) -> None:
    """Time this checkout and another revision in turns."""
    try:
        name = git("rev-parse", "--short", "--verify", "-q", f"{revision}^{{commit}}")
    except subprocess.CalledProcessError:
        raise SystemExit(f"bench: no revision {revision} in this checkout; give a commit, branch or tag") from None
    with tempfile.TemporaryDirectory() as folder:
        there = Path(folder) / "revision"
        git("worktree", "add", "--detach", str(there), revision)
        try:
            packages = [built(ROOT, Path(folder) / "now"), built(there, Path(folder) / "then")]
            now: list[dict[str, float]] = []
            then: list[dict[str, float]] = []
            for _ in track(range(repeats), "measuring", transient=True, console=Console(stderr=True)):
                now.append(seconds_of(packages[0]))
                then.append(seconds_of(packages[1]))
        finally:
            git("worktree", "remove", "--force", str(there))
    table = Table(title=f"one answer now and at {name}, in turns", title_justify="left")
    for column in ("", "now", name, f"{name} ÷ now", "spread"):
        table.add_column(column, justify="left" if not column else "right")
    found = []
    for row in now[0]:
        ratio = spread([b[row] / a[row] for a, b in zip(now, then, strict=True)])
        ours, others = (float(np.median([each[row] for each in runs])) for runs in (now, then))
        found.append({"name": row, "seconds": ours, "its_seconds": others, **ratio})
        lowest, highest = ratio["lowest"], ratio["highest"]
        table.add_row(
            row, shown_time(ours), shown_time(others), f"{ratio['ratio']:.2f}", f"{lowest:.2f} to {highest:.2f}"
        )
    Console(highlight=False, width=None if sys.stdout.isatty() else 120).print(table)
    head = git("rev-parse", "--short", "HEAD")
    print(f"kept in {keep(f'{head}-against-{name}', {'against': name, 'rows': found}).relative_to(ROOT)}")


def main() -> None:
    """Read the arguments."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--against", metavar="REV", help="a revision to build and time beside this checkout")
    parser.add_argument("--repeats", type=int, default=5, help="how often each ratio is measured (default: 5)")
    arguments = parser.parse_args()
    if arguments.repeats < 1:
        parser.error(f"--repeats is {arguments.repeats}; give 1 or more")
    if arguments.against:
        against(arguments.against, arguments.repeats)
    else:
        alone(arguments.repeats)


if __name__ == "__main__":
    main()
