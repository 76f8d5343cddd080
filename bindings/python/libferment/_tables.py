"""Tables of the library: lists of rows that a notebook shows, and that become a frame."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING, Any, Generic, TypeVar

from libferment import _core

if TYPE_CHECKING:
    import pandas as pd

Row = TypeVar("Row")


class Table(list[Row], Generic[Row]):
    """Rows of a table: a list, with `to_frame` and a view for notebooks."""

    def _rows(self) -> list[dict[str, Any]]:
        base = [name for kind in reversed(type(self[0]).__mro__) for name in vars(kind) if self._is_shown(kind, name)]
        return [{name: getattr(row, name) for name in dict.fromkeys(base)} for row in self]

    @staticmethod
    def _is_shown(kind: type, name: str) -> bool:
        return isinstance(vars(kind)[name], property) and not name.startswith("_")

    def to_frame(self) -> pd.DataFrame:
        """Return the table as a pandas DataFrame, by name."""
        import pandas as pd

        return pd.DataFrame(self._rows()).set_index("name")

    def _repr_html_(self) -> str:
        rows = self._rows()
        head = "".join(f"<th>{escape(name)}</th>" for name in rows[0])
        body = "".join(
            "<tr>"
            + "".join(f"<td>{'' if value is None else escape(str(value))}</td>" for value in row.values())
            + "</tr>"
            for row in rows
        )
        return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def fields() -> Table[_core.Field]:
    """All inputs: the field table, with unit, bounds, default, meaning and source of each."""
    return Table(_core.fields())


def parameters() -> Table[_core.Parameter]:
    """All parameters of a kitchen: the parameter table, with prior and source of each."""
    return Table(_core.parameters())


def ingredients() -> Table[_core.Ingredient]:
    """All ingredients with their composition and its source: flours first."""
    return Table(_core.ingredients())


def mixing_methods() -> Table[_core.MixingMethod]:
    """All ways of mixing, with the work each leaves in the dough, kJ/kg, and where it is from."""
    return Table(_core.mixing_methods())
