"""The floors of the library: who may include whom, and what the core may not use.

Run as a program: python3 tests/structure/test_floors.py
"""

import re
import tempfile
import unittest
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]

# Bottom to top; rooms of one floor do not know each other.
FLOORS = [{"base"}, {"dough"}, {"clock", "heat"}, {"rise"}, {"mix"}, {"process"}, {"forecast"}, {"learn"}, {"day"}]
HEIGHT = {room: height for height, rooms in enumerate(FLOORS) for room in rooms}
SUFFIXES = {".hpp", ".h", ".cpp"}

# Standard headers that public headers may use. Absent on purpose: what one of g++ 12, clang 14 and emscripten 3.1
# lacks (format, expected, ranges, source_location), and all input and output.
STANDARD = {
    "algorithm", "array", "cmath", "compare", "concepts", "cstddef", "cstdint", "cstring", "exception", "functional",
    "initializer_list", "iterator", "limits", "map", "memory", "new", "numeric", "optional", "span", "stdexcept",
    "string", "string_view", "tuple", "type_traits", "utility", "variant", "vector", "stdint.h", "stddef.h",
}  # fmt: skip

# The core does no input or output, keeps no clock and draws no lots. Text is made without streams, one of which would
# more than double the WebAssembly module.
FORBIDDEN_HEADERS = {
    "chrono", "cstdio", "ctime", "filesystem", "format", "expected", "fstream", "iostream", "random", "ranges",
    "source_location", "syncstream", "thread", "stdio.h", "time.h", "unistd.h", "sys/time.h", "cstdlib", "stdlib.h",
    "print", "ostream", "istream", "sstream", "streambuf", "ios", "iomanip", "locale", "strstream",
}  # fmt: skip
FORBIDDEN_CALLS = re.compile(
    r"\b(?:std::)?(?:printf|fprintf|puts|fputs|putchar|fopen|fread|fwrite|getenv|system|abort|exit|clock_gettime|"
    r"gettimeofday|srand|rand|perror)\s*\(|\bstd::(?:time|clock)\s*\(|\btime\s*\(\s*(?:nullptr|NULL|0|&)|"
    r"\bclock\s*\(\s*\)|\bstd::(?:cout|cerr|clog|cin|chrono)\b"
)

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"]', re.MULTILINE)
LITERAL_OR_COMMENT = re.compile(r'"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])+\'|//[^\n]*|/\*.*?\*/', re.DOTALL)


def room_of(path: str) -> str | None:
    """The room a project path (`clock/rise.hpp`) belongs to; None for files that stand above all rooms."""
    first, slash, _ = path.partition("/")
    return first if slash else None


def files_under(folder: Path) -> list[Path]:
    """The sources in a folder."""
    return sorted(path for path in folder.rglob("*") if path.suffix in SUFFIXES)


def complaints_about_floors(name: str, room: str | None, included: str) -> list[str]:
    """What is wrong with a file of `room` that includes the project's file `included`."""
    other = room_of(included)
    if room is None:
        return []
    if room not in HEIGHT:
        return [f"{name}: {room} is not a room of the plan"]
    if other is None:
        # Only what stands in no room and includes nothing may be used from every floor.
        return (
            []
            if included in ("version.h", "export.h")
            else [f"{name}: includes {included}, which stands above all rooms"]
        )
    if other not in HEIGHT:
        return [f"{name}: includes {included}, and {other} is not a room of the plan"]
    if HEIGHT[other] > HEIGHT[room]:
        return [f"{name}: {room} includes {included} of the higher floor {other}"]
    if HEIGHT[other] == HEIGHT[room] and other != room:
        return [f"{name}: {room} and {other} stand side by side, but it includes {included}"]
    return []


def complaints(root: Path) -> list[str]:
    """Everything wrong with the tree `root`, which holds include/ferment and src."""
    found: list[str] = []
    public, private = root / "include" / "ferment", root / "src"
    for folder in (public, private):
        for path in files_under(folder):
            inside = path.relative_to(folder).as_posix()
            name = path.relative_to(root).as_posix()
            room = room_of(inside)
            text = path.read_text(encoding="utf-8")
            for kind, included in INCLUDE.findall(text):
                if included.startswith("ferment/"):
                    found += complaints_about_floors(name, room, included.removeprefix("ferment/"))
                elif kind == '"' and folder == private:
                    if not (private / included).is_file():
                        found.append(f'{name}: "{included}" is not a file of src; write the path from src')
                    found += complaints_about_floors(name, room, included)
                elif kind == '"':
                    # Only the C header, which may be used without an include path.
                    if path.suffix != ".h" or not (path.parent / included).is_file():
                        found.append(f'{name}: public headers include <ferment/...>, not "{included}"')
                    found += complaints_about_floors(name, room, included)
                elif folder == public and included not in STANDARD:
                    found.append(f"{name}: public headers may not include <{included}>")
                if included in FORBIDDEN_HEADERS:
                    found.append(f"{name}: the core may not use <{included}>")
            code = LITERAL_OR_COMMENT.sub(" ", text)
            found += [f"{name}: the core may not call {hit.group().strip()}" for hit in FORBIDDEN_CALLS.finditer(code)]
    return found


class Project(unittest.TestCase):
    def test_every_room_is_where_the_plan_has_it(self) -> None:
        assert complaints(PROJECT / "libferment") == []

    def test_the_tree_was_read(self) -> None:
        for folder in ("include/ferment", "src"):
            rooms = {
                room_of(p.relative_to(PROJECT / "libferment" / folder).as_posix())
                for p in files_under(PROJECT / "libferment" / folder)
            }
            assert {"base", "dough", "clock", "heat"} <= rooms, folder


class Violations(unittest.TestCase):
    """A tree with one fault at a time: the fault, and nothing else, is found."""

    def check(self, files: dict[str, str], *expected: str) -> None:
        with tempfile.TemporaryDirectory() as folder:
            root = Path(folder)
            sound = {
                "include/ferment/base/error.hpp": "#include <string>\n",
                "include/ferment/dough/gas.hpp": "#include <ferment/base/error.hpp>\n",
                "src/dough/gas.cpp": "#include <Eigen/Dense>\n#include <ferment/dough/gas.hpp>\n\n"
                '#include "base/text.hpp"\n',
                "src/base/text.hpp": "#include <charconv>\n",
            }
            for name, text in (sound | files).items():
                path = root / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")
            found = complaints(root)
        assert len(found) == len(expected), found
        for complaint, words in zip(found, expected, strict=True):
            assert words in complaint

    def test_a_sound_tree_passes(self) -> None:
        self.check({})

    def test_a_lower_floor_includes_a_higher_one(self) -> None:
        self.check(
            {"include/ferment/dough/gas.hpp": "#include <ferment/clock/rise.hpp>\n"}, "of the higher floor clock"
        )
        self.check({"src/base/a.cpp": "# include  <ferment/learn/log.hpp>\n"}, "of the higher floor learn")

    def test_a_private_file_of_a_higher_floor(self) -> None:
        self.check(
            {"src/heat/b.cpp": '#include "process/c.hpp"\n', "src/process/c.hpp": ""}, "of the higher floor process"
        )

    def test_clock_and_heat_do_not_know_each_other(self) -> None:
        self.check({"src/clock/a.cpp": "#include <ferment/heat/piece.hpp>\n"}, "stand side by side")
        self.check({"include/ferment/heat/a.hpp": "#include <ferment/clock/clock.hpp>\n"}, "stand side by side")

    def test_rooms_do_not_use_the_umbrella(self) -> None:
        self.check({"src/clock/a.cpp": "#include <ferment/ferment.hpp>\n"}, "stands above all rooms")

    def test_unknown_rooms(self) -> None:
        self.check({"src/cellar/a.cpp": "#include <ferment/base/error.hpp>\n"}, "not a room of the plan")
        self.check({"src/clock/a.cpp": "#include <ferment/cellar/a.hpp>\n"}, "not a room of the plan")

    def test_public_headers_use_the_standard_library_alone(self) -> None:
        for header in ("Eigen/Dense", "boost/math/tools/roots.hpp"):
            self.check({"include/ferment/base/a.hpp": f"#include <{header}>\n"}, f"may not include <{header}>")
        self.check(
            {"include/ferment/base/a.hpp": '#include "error.hpp"\n'}, 'not "error.hpp"', "stands above all rooms"
        )

    def test_headers_that_a_compiler_lacks(self) -> None:
        for header in ("format", "expected", "ranges", "source_location"):
            self.check(
                {"include/ferment/base/a.hpp": f"#include <{header}>\n"},
                "public headers may not",
                "the core may not use",
            )
            self.check({"src/base/a.cpp": f"#include <{header}>\n"}, f"the core may not use <{header}>")

    def test_input_and_output(self) -> None:
        for header in ("iostream", "cstdio", "fstream", "chrono", "ctime", "sstream"):
            self.check({"src/base/a.cpp": f"#include <{header}>\n"}, f"the core may not use <{header}>")
        for call in (
            'printf("x")',
            "std::cout << 1",
            "std::time(nullptr)",
            "time(nullptr)",
            "clock()",
            "std::chrono::hours(1)",
            'std::fopen("x", "r")',
            "abort()",
        ):
            self.check({"src/base/a.cpp": f"void f() {{ {call}; }}\n"}, "the core may not call")
        self.check(
            {
                "src/base/a.cpp": '// printf("x") and std::cout\nauto text = "printf(";\n'
                "int hours_time(int);\nColumn time(time_h, n);\n"
            }
        )

    def test_a_private_path_that_is_not_from_src(self) -> None:
        self.check({"src/base/a.cpp": '#include "text.hpp"\n'}, "write the path from src", "stands above all rooms")


if __name__ == "__main__":
    unittest.main()
