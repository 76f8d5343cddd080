"""Writes the pages of this folder and their pictures, all of them computed: `./dev validate`."""

import sys
from pathlib import Path

DOCS = Path(__file__).resolve().parent
sys.path.insert(0, str(DOCS.parent / "tests" / "python"))  # the checks have one implementation, beside the tests

import learning  # noqa: E402  after the path
import measuring  # noqa: E402
import proof_and_room  # noqa: E402
import validation  # noqa: E402

PAGES = {
    "learning.md": learning,
    "validation.md": validation,
    "what_is_worth_measuring.md": measuring,
    "proof_and_room.md": proof_and_room,
}


def main() -> None:
    """Write them all."""
    for name, module in PAGES.items():
        (DOCS / name).write_text(module.page(), encoding="utf-8")
        module.picture(DOCS / module.PICTURE)
        print(f"docs/{name}, docs/{module.PICTURE}")


if __name__ == "__main__":
    main()
