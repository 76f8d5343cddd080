"""What a shared libferment shows: every function of the C and C++ interfaces, and nothing else.

Run as a program: python3 tests/structure/test_exported_symbols.py --nm nm --library build/release/libferment.so
"""

import argparse
import re
import subprocess
import sys
import unittest
from pathlib import Path

HEADERS = Path(__file__).resolve().parents[2] / "libferment" / "include" / "ferment"
ERRORS = ("Error", "InvalidInput", "OutsideModel", "NoSolution", "NotConverged")
arguments = argparse.Namespace(nm="", library="")

FUNCTION = re.compile(r"^(?:\[\[noreturn\]\] )?FERMENT_API [^;()]*?\b(\w+)(?:<\w+>)?\(", re.MULTILINE)
STRUCT = re.compile(r"^struct FERMENT_API (\w+) \{(.*?)^\};", re.MULTILINE | re.DOTALL)
MAKER = re.compile(r"^  static [^;()]*?\b(\w+)\(", re.MULTILINE)


def public_functions() -> tuple[set[str], set[str]]:
    """Names of the functions that the headers mark as public, of C and of C++."""
    c = set(FUNCTION.findall((HEADERS / "ferment.h").read_text(encoding="utf-8")))
    texts = [path.read_text(encoding="utf-8") for path in HEADERS.rglob("*.hpp")]
    cpp = {name for text in texts for name in FUNCTION.findall(text)}
    makers = {
        f"{kind}::{maker}" for text in texts for kind, body in STRUCT.findall(text) for maker in MAKER.findall(body)
    }
    return c, cpp | makers


def shown_symbols(listing: str) -> list[tuple[str, str]]:
    """Kind letter and demangled name of each line of `nm -D --defined-only -C`."""
    return [(kind, name) for _, kind, name in (line.split(" ", 2) for line in listing.splitlines() if line)]


def strangers(symbols: list[tuple[str, str]], c: set[str], cpp: set[str]) -> list[str]:
    """The symbols that are not of the interfaces."""
    members = [f"ferment::{error}::{member}(" for error in ERRORS for member in (error, f"~{error}")]
    about = {f"{what} for ferment::{error}" for error in ERRORS for what in ("typeinfo", "typeinfo name", "vtable")}
    found = []
    for kind, name in symbols:
        function = re.fullmatch(
            r"(?:[\w:]+ const& )?ferment::((?:\w+::)?\w+)(?:\[abi:cxx11\])?(?:<[\w:]+>)?\(.*\)(?: const)?", name
        )
        known = (
            (kind == "T" and (name in c or (function is not None and function[1] in cpp)))
            or (kind in "TW" and any(name.startswith(member) for member in members))
            or (kind in "VDR" and name in about)
        )
        if not known:
            found.append(f"{kind} {name}")
    return found


class Library(unittest.TestCase):
    @classmethod
    def setUpClass(cls) -> None:
        command = [arguments.nm, "-D", "--defined-only", "-C", arguments.library]
        cls.symbols = shown_symbols(subprocess.run(command, check=True, capture_output=True, text=True).stdout)
        cls.c, cls.cpp = public_functions()

    def test_nothing_else_is_shown(self) -> None:
        found = strangers(self.symbols, self.c, self.cpp)
        assert found == [], "\n".join(found)

    def test_everything_public_is_shown(self) -> None:
        assert {"ferment_version", "ferment_last_error", "ferment_hours_to_rise"} <= self.c
        assert {"hours_to_rise", "water_by_factor_rule", "speed", "cautions"} <= self.cpp
        shown = {re.sub(r"^[\w:]+ const& |(\[abi:cxx11\])?(<[\w:]+>)?\(.*", "", name) for _, name in self.symbols}
        assert self.c - shown == set()
        hidden = {f"ferment::{name}" for name in self.cpp} - shown
        assert hidden == set(), hidden
        # Without one type information for each error class, a program could not catch it across the library's edge.
        assert {f"typeinfo for ferment::{error}" for error in ERRORS} <= shown


class Violations(unittest.TestCase):
    def test_strangers_are_found(self) -> None:
        for line in (
            "0000000000035190 i ferment::speed(double, double*, unsigned long)",
            "0000000000035190 W ferment::speed(double, double*, unsigned long) [clone .resolver]",
            "0000000000035190 T ferment::hidden_helper(double)",
            "0000000000035190 T ferment::formula::speed(double)",
            "0000000000035190 T ferment::(anonymous namespace)::speed(double)",
            "0000000000035190 T ferment_helper",
            "000000000007b9c8 V typeinfo for ferment::Kitchen",
            "000000000007b9c8 V typeinfo for boost::exception",
            "000000000000bad0 W std::__cxx11::to_string(unsigned long)",
            "0000000000071820 u std::__detail::__to_chars_10_impl<unsigned int>(char*, unsigned int)::__digits",
            "0000000000035190 W std::vector<double>::push_back(ferment::Kitchen const&)",
            "0000000000035190 W Eigen::internal::throw_std_bad_alloc()",
        ):
            with self.subTest(line):
                assert len(strangers(shown_symbols(line), {"ferment_version"}, {"speed"})) == 1

    def test_the_interface_is_not_a_stranger(self) -> None:
        for line in (
            "0000000000035190 T ferment::speed(double, double, double, double, ferment::Kitchen const&)",
            "0000000000035190 T ferment_version",
            "000000000007b9c8 V typeinfo name for ferment::NoSolution",
            "0000000000011ac0 T ferment::Error::~Error()",
        ):
            with self.subTest(line):
                assert strangers(shown_symbols(line), {"ferment_version"}, {"speed"}) == []


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--nm", required=True)
    parser.add_argument("--library", required=True)
    parser.parse_args(namespace=arguments)
    unittest.main(argv=sys.argv[:1])
