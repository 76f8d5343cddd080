"""What the compiled value classes share in Python: how they are shown, turned into plain data and rebuilt."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any


def plain(value: Any) -> Any:
    """Turn a value class into a dict, lists of them into lists; leave numbers and texts alone."""
    if isinstance(value, (list, tuple)):
        return [plain(item) for item in value]
    if hasattr(value, "to_dict"):
        content = plain_dict(value.to_dict())
        return {"type": type(value).__name__, **content} if type(value).__name__.startswith("By") else content
    return value


def plain_dict(values: Mapping[str, Any]) -> dict[str, Any]:
    """Turn every value of a dict into plain data."""
    return {name: plain(value) for name, value in values.items()}


def shown(self: object, values: Mapping[str, Any], defaults: Mapping[str, Any]) -> str:
    """Write the call that makes this value, without what is at its default."""
    given = {name: value for name, value in values.items() if name not in defaults or value != defaults[name]}
    return f"{type(self).__name__}({', '.join(f'{name}={value!r}' for name, value in given.items())})"


def rebuilt(kind: type, values: Mapping[str, Any]) -> object:
    """Make the value again from its keywords; what pickle calls."""
    return kind(**values)
