"""Saved states: JSON with a format and a version, read back to the same digits."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from libferment._core import Amounts, Cohort, StageProgress, State
from libferment._errors import InvalidInput
from libferment._files import read_text, write_text

FORMAT = "libferment state"
VERSION = 2


def save_state(state: State, path: str | Path) -> None:
    """Save a state. Raises InvalidInput if it cannot be written."""
    content = {"format": FORMAT, "version": VERSION, "state": state.to_dict()}
    write_text(path, json.dumps(content, ensure_ascii=False, indent=1, allow_nan=False) + "\n")


def _made(kind: Any, values: object, what: str) -> Any:
    if not isinstance(values, Mapping):
        raise InvalidInput(f"{what} is damaged: it should hold names and values, got {type(values).__name__}")
    known = set(kind().to_dict())
    if set(values) != known:
        odd = sorted(str(key) for key in set(values) ^ known)
        missing = "lacks" if odd[0] in known else "has an unknown"
        raise InvalidInput(f'{what} is damaged: it {missing} "{odd[0]}"; simulate the process again from its start')
    try:
        return kind(**values)
    except TypeError:
        kinds = ", ".join(f"{key}={value!r}" for key, value in values.items() if isinstance(value, (str, bool)))
        raise InvalidInput(
            f"{what} is damaged: a value is of a wrong kind ({kinds or 'see its numbers'}); "
            "simulate the process again from its start"
        ) from None


def state_from(values: Mapping[str, Any]) -> State:
    """Build a state from what its to_dict gave. Raises InvalidInput if that is damaged."""
    parts: dict[str, Any] = dict(values)
    if "amounts" in parts:
        parts["amounts"] = _made(Amounts, parts["amounts"], "the state's amounts")
    if not isinstance(parts.get("cohorts", []), list):
        raise InvalidInput("the state is damaged: its cohorts are no list; simulate the process again from its start")
    if "cohorts" in parts:
        parts["cohorts"] = [_made(Cohort, cohort, "a cohort of the state") for cohort in parts["cohorts"]]
    if parts.get("stage") is not None:
        parts["stage"] = _made(StageProgress, parts["stage"], "the state's stage")
    state: State = _made(State, parts, "the state")
    return state


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
        return state_from(values if isinstance(values, dict) else {})
    except InvalidInput as problem:
        raise InvalidInput(f"{path}: {problem}") from None
