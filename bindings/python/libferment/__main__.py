"""The command libferment, also as ``python -m libferment``; says what it needs where that is not installed."""

import sys


def main() -> None:
    """Run the command line. Exits with 3 if the packages of the command line are not there."""
    try:
        from libferment.cli import main as command
    except ModuleNotFoundError as missing:
        package = (missing.name or "").partition(".")[0]
        if package not in ("click", "rich"):
            raise
        print(
            f"libferment: the command line needs the package {package}: pip install 'libferment[cli]'", file=sys.stderr
        )
        sys.exit(3)
    command(prog_name="libferment")


if __name__ == "__main__":
    main()
