"""What the pages have in common: where they stand, numbers as text, tables, and colours for every eye."""

import textwrap
from pathlib import Path

import matplotlib

matplotlib.use("Agg")
matplotlib.rcParams.update(
    {
        "svg.hashsalt": "libferment",  # the same ids in every run
        "font.size": 9,
        "axes.spines.top": False,
        "axes.spines.right": False,
        "axes.titlesize": 10,
        "axes.titlelocation": "left",
        "legend.frameon": False,
        "figure.dpi": 100,
    }
)
from matplotlib.figure import Figure  # noqa: E402  the backend comes first

DOCS = Path(__file__).resolve().parent
ROOT = DOCS.parent

# Okabe and Ito's colours, apart for every kind of colour vision; the lightness differs, too, for prints in grey.
DARK, BLUE, ORANGE, LIGHT = "#000000", "#0072B2", "#E69F00", "#BBBBBB"


def table(head: list[str], rows: list[list[str]], right: str = "") -> str:
    """A Markdown table; `right` names the columns, by place from 0, that are numbers."""
    columns = {int(place) for place in right.split()}
    rule = ["---:" if place in columns else "---" for place in range(len(head))]
    return "\n".join("| " + " | ".join(cells) + " |" for cells in [head, rule, *rows])


def text_of(value: float, decimals: int) -> str:
    """A number with that many decimals, never as -0; what lies half-way goes away from 0, whatever its last digit."""
    return f"{round(value * (1 + 1e-9), decimals) + 0.0:.{decimals}f}"


def signed(value: float, decimals: int = 0) -> str:
    """As text_of, with its sign and a real minus."""
    text = text_of(value, decimals)
    return text.replace("-", "−") if text.startswith("-") else "+" + text if float(text) else text


def clock(hours: float) -> str:
    """Hours as hours and minutes."""
    minutes = round(60 * hours)
    return f"{minutes // 60} h {minutes % 60:02d} min" if minutes >= 60 else f"{minutes} min"


def wrapped(page: str) -> str:
    """A page whose paragraphs have lines of at most 120 columns; tables, lists, headings and pictures are left."""
    blocks = [
        block if block.startswith(("|", "-", "#", "!")) else textwrap.fill(block, 120, break_on_hyphens=False)
        for block in page.strip().split("\n\n")
    ]
    return "\n\n".join(blocks) + "\n"


def save(figure: Figure, path: Path) -> None:
    """The picture, without the day it was drawn."""
    metadata = {"Date": None} if path.suffix == ".svg" else None
    figure.savefig(path, metadata=metadata, bbox_inches="tight")
