"""Saved states: JSON with a format and a version, read back to the same digits."""

from __future__ import annotations

import json
from pathlib import Path

from libferment._core import State
from libferment._errors import InvalidInput
from libferment._files import read_text, write_text

FORMAT = "libferment state"
VERSION = 3


def save_state(state: State, path: str | Path) -> None:
    """Save a state. Raises InvalidInput if it cannot be written."""
    content = {"format": FORMAT, "version": VERSION, "state": state.to_dict()}
    write_text(path, json.dumps(content, ensure_ascii=False, indent=1, allow_nan=False) + "\n")


def load_state(path: str | Path) -> State:
    """Read a saved state. Raises InvalidInput if it is missing, damaged or of another version."""
    text = read_text(path, a_file="a saved state")
    try:
        content = json.loads(text)
    except json.JSONDecodeError as problem:
        raise InvalidInput(f"{path} is damaged: {problem}; it must be a file that State.save wrote") from None
    except (RecursionError, ValueError):  # nested thousands deep, or a number of thousands of digits
        raise InvalidInput(f"{path} is damaged: State.save writes no such thing") from None
    if not isinstance(content, dict) or content.get("format") != FORMAT:
        raise InvalidInput(f'{path} is no saved state: its format is not "{FORMAT}"')
    if content.get("version") != VERSION:
        raise InvalidInput(
            f"{path} has version {content.get('version')!r}; this libferment reads version {VERSION}: "
            "simulate the process again from its start"
        )
    values = content.get("state")
    try:
        return State.from_dict(values if isinstance(values, dict) else {})
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {problem}") from None
