"""Put small faults into a copy of the library, one at a time, and see that the C++ tests see each."""

import argparse
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path
from typing import NamedTuple

try:
    import tomllib
except ImportError:
    import tomli as tomllib

ROOT = Path(__file__).resolve().parents[2]
SOURCES = ROOT / "libferment" / "src"
PARTS = ("CMakeLists.txt", "cmake", "libferment", "tests")
HEAD = re.compile(r"\s*(?:const|noexcept|override|&&?|->\s*[\w:<>,&*\s]+)*\s*(?::[^;{}]*)?\{")


class Fault(NamedTuple):
    file: str
    function: str
    old: str
    new: str
    means: str


def copy_changed(source: Path, to: Path) -> None:
    """What is the same keeps its time, so that only what changed is built."""
    wanted = {path.relative_to(source) for part in PARTS for path in files_of(source / part)}
    for name in wanted:
        there = to / name
        text = (source / name).read_bytes()
        if not there.exists() or there.read_bytes() != text:
            there.parent.mkdir(parents=True, exist_ok=True)
            there.write_bytes(text)
    for path in [path for path in to.rglob("*") if path.is_file()]:
        if path.relative_to(to) not in wanted:
            path.unlink()


def files_of(path: Path) -> list[Path]:
    if path.is_file():
        return [path]
    return [file for file in path.rglob("*") if file.is_file() and "__pycache__" not in file.parts]


def closing(text: str, opening: int) -> int:
    """Index of the bracket that closes the one at `opening`. In comments and strings here they come in pairs."""
    pairs = {"(": ")", "{": "}"}
    opens, closes, depth = text[opening], pairs[text[opening]], 0
    for i in range(opening, len(text)):
        depth += (text[i] == opens) - (text[i] == closes)
        if depth == 0:
            return i
    raise ValueError(f"a bracket is not closed after {text[opening : opening + 40]!r}")


def bodies(text: str, function: str) -> list[tuple[int, int]]:
    """Where the definitions of a function's overloads begin and end."""
    found = []
    for match in re.finditer(r"(?<!\w)" + re.escape(function) + r"\s*\(", text):
        end = closing(text, match.end() - 1)
        head = HEAD.match(text, end + 1)
        if head:
            found.append((head.end() - 1, closing(text, head.end() - 1)))
    return found


def with_fault(text: str, fault: Fault) -> str:
    old = re.compile(r"\s+".join(re.escape(word) for word in fault.old.split()))
    places = [m for begin, end in bodies(text, fault.function) for m in old.finditer(text, begin, end)]
    if len(places) != 1:
        sys.exit(
            f"mutate: {fault.file}: `{fault.old}` stands {len(places)} times in {fault.function}, not once; "
            "give more of the expression, or the file and function where it is now"
        )
    return text[: places[0].start()] + fault.new + text[places[0].end() :]


class Copy:
    """The library and its tests, built apart."""

    def __init__(self, folder: Path) -> None:
        self.tree, self.build_folder = folder / "tree", folder / "build"

    def run(self, *command: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(command, capture_output=True, text=True, check=False)

    def build(self) -> None:
        made = self.run("cmake", "--build", str(self.build_folder), "--target", "ferment_tests")
        if made.returncode != 0:
            sys.exit(f"mutate: it does not build:\n{made.stdout[-4000:]}{made.stderr[-2000:]}")

    def prepare(self) -> None:
        copy_changed(ROOT, self.tree)
        configured = self.run(
            *("cmake", "-S", str(self.tree), "-B", str(self.build_folder), "-G", "Ninja"),
            *("-DCMAKE_BUILD_TYPE=Release", "-DBUILD_SHARED_LIBS=ON", "-DBUILD_TESTING=ON"),
        )
        if configured.returncode != 0:
            sys.exit(f"mutate: cmake could not configure:\n{configured.stdout}{configured.stderr}")
        self.build()

    def complaint(self) -> str | None:
        """The first test case that fails, or None."""
        tests = self.run(str(self.build_folder / "tests" / "ferment_tests"), "--abort-after=1", "--no-colors")
        if tests.returncode == 0:
            return None
        failed = tests.stdout.split("ERROR:")[0].rsplit("TEST CASE:", 1)
        return failed[1].strip().splitlines()[0] if len(failed) == 2 else f"exit status {tests.returncode}"


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("only", nargs="*", help="words of what a fault means: only these faults")
    parser.add_argument("--folder", type=Path, default=ROOT / "build" / "mutate", help="where the copy is built")
    arguments = parser.parse_args()
    table = tomllib.loads((Path(__file__).parent / "faults.toml").read_text(encoding="utf-8"))["fault"]
    faults = [fault for fault in (Fault(**row) for row in table) if all(word in fault.means for word in arguments.only)]
    if not faults:
        sys.exit(f"mutate: no fault's meaning has the words {arguments.only}")

    copy = Copy(arguments.folder)
    copy.tree.mkdir(parents=True, exist_ok=True)
    sources = copy.tree / "libferment" / "src"
    # All are looked up before anything is built.
    texts = [
        with_fault((ROOT / "libferment" / "src" / fault.file).read_text(encoding="utf-8"), fault) for fault in faults
    ]
    print("building the copy without a fault", flush=True)
    copy.prepare()
    if failed := copy.complaint():
        sys.exit(f"mutate: the tests fail without any fault, in: {failed}")
    missed = 0
    for fault, text in zip(faults, texts, strict=True):
        begun = time.monotonic()
        path = sources / fault.file
        kept = path.with_suffix(".kept")
        shutil.copy2(path, kept)
        try:
            path.write_text(text, encoding="utf-8")
            copy.build()
            seen_by = copy.complaint()
        finally:
            kept.replace(path)
            path.touch()
        missed += seen_by is None
        verdict = f"seen by: {seen_by}" if seen_by else "NOT SEEN"
        print(
            f"{fault.file} {fault.function}: {fault.means}\n    {verdict} ({time.monotonic() - begun:.0f} s)",
            flush=True,
        )
    print(f"{len(faults) - missed} of {len(faults)} faults are seen")
    sys.exit(1 if missed else 0)


if __name__ == "__main__":
    main()
