"""Columns as users keep them: what is masked, and answers in the kind that was given."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from libferment._errors import InvalidInput


def taken(argument: Any) -> tuple[Any, Any, bool]:
    """Take an argument as an array: its numbers, what of it is masked (or None), and whether an answer is like it."""
    shape = getattr(argument, "shape", ())
    is_like = len(shape) > 0 and (hasattr(argument, "index") or hasattr(argument, "dims"))
    if isinstance(argument, np.ma.MaskedArray):
        return np.asarray(argument.data), np.ma.getmaskarray(argument), True
    if type(getattr(argument, "dtype", None)).__module__.startswith("pandas"):  # a nullable column
        missing = np.asarray(argument.isna())
        return argument.to_numpy(dtype=float, na_value=np.nan), missing if missing.any() else None, is_like
    return np.asarray(argument), None, is_like


def _like(argument: Any, answer: Any, mask: Any) -> Any:
    """Give an answer the index, name, dimensions or mask of the argument, if it has its shape."""
    if isinstance(argument, np.ma.MaskedArray):
        return np.ma.array(answer, mask=mask)
    if hasattr(argument, "dims") and hasattr(argument, "copy"):
        return argument.copy(data=answer)
    if hasattr(argument, "index"):
        labels = {"index": argument.index} | ({"columns": argument.columns} if hasattr(argument, "columns") else {})
        return type(argument)(answer, **labels, **({"name": argument.name} if hasattr(argument, "name") else {}))
    return answer


def given_back(answer: Any, arguments: Sequence[Any], mask: Any) -> Any:
    """Give an answer in the kind of the first argument that has its shape. Raises InvalidInput if two do not align."""
    alike = [argument for argument in arguments if tuple(argument.shape) == answer.shape]
    indexed = [argument for argument in alike if hasattr(argument, "index") and not hasattr(argument, "dims")]
    for other in indexed[1:]:
        if not indexed[0].index.equals(other.index):
            raise InvalidInput(
                "two columns have different indexes, so that their rows do not belong together",
                advice="align them first",
            )
    # A mask is an answer's, whatever else is alike; else the first one that has labels.
    labelled = [argument for argument in alike if not isinstance(argument, np.ma.MaskedArray)]
    for argument in (*labelled, *alike):
        return _like(argument, answer, mask)
    return answer
