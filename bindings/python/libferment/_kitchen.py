"""Which kitchen the command line answers for: the one that is named, else the user's own, if there is one."""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from libferment import _core
from libferment._core import Kitchen
from libferment._errors import InvalidInput
from libferment._output import plain

_KEY = "libferment.kitchen"


def own_path() -> Path:
    """Where the user's own kitchen is kept: in the configuration folder of the system."""
    return Path(click.get_app_dir("libferment")) / "kitchen.json"


def read_kitchen(name: str | Path) -> Kitchen:
    """Read a kitchen's file, or take a frozen set by its name. Raises InvalidInput, with the file's name."""
    if re.fullmatch(r"\d{4}-\d+", str(name)):
        return Kitchen.named(str(name))
    return Kitchen.load(str(name))


def _choose(context: click.Context, _option: click.Parameter, name: str | None) -> None:
    if context.resilient_parsing:
        return
    path: str | Path | None = name
    if name is None and own_path().is_file():
        path = own_path()
        note = f"by your kitchen, {path}; --kitchen {Kitchen().name} takes the one that has learned nothing"
        print(plain(note), file=sys.stderr)
    if path is not None:
        try:
            context.meta[_KEY] = read_kitchen(path)
        except InvalidInput as problem:
            problem.path = "--kitchen"
            raise


def kitchen_option(command: Callable[..., Any]) -> Callable[..., Any]:
    """Let a command take --kitchen; `chosen_kitchen` has it."""
    return click.option(
        "--kitchen",
        metavar="FILE",
        callback=_choose,
        expose_value=False,
        help="Kitchen that `libferment learn` saved, or a frozen set. [default: your own, if you have one]",
    )(command)


def chosen_kitchen() -> Kitchen | None:
    """The kitchen of the command that runs; None for the one that has learned nothing."""
    kitchen: Kitchen | None = click.get_current_context().meta.get(_KEY)
    return kitchen


def with_kitchen(question: dict[str, Any]) -> dict[str, Any]:
    """Ask a question of that kitchen."""
    kitchen = chosen_kitchen()
    return question if kitchen is None else question | {"kitchen": kitchen}


def by_kitchen(kitchen: Kitchen | None) -> str:
    """Say by which kitchen times are."""
    if kitchen is None or not kitchen.history:
        name = _core.Kitchen().name if kitchen is None else kitchen.name or "of your own"
        return f"Times are by the parameter set {name}, not yet your kitchen's: look early."
    bakes = len(kitchen.history)
    return f"Times are by your kitchen, learned from {bakes} bake{'s' if bakes > 1 else ''}; the dough decides."
