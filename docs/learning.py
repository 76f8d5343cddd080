"""How often a learned kitchen's intervals hold the truth, and how sharp they are: a page of figures that a run leaves.

The figures stand in `learning.json`, written by `./dev test --deep`, which draws the logbooks.
"""

import json
from pathlib import Path

from writing import BLUE, DARK, DOCS, Figure, save, table, wrapped

import libferment as lf

PICTURE = "learning.svg"
FIGURES = DOCS / "learning.json"
NAMES = {
    "gassing_rate": "gassing rate",
    "growth_lag_h": "lag before growth",
    "start_up_instant_h": "start-up",
    "next rise": "next rise",
}
WORLDS = {
    "Cooling": "the dough really cools by up to 3 K while the log says that it stays",
    "SmoothError": "a smooth error of 12 % over temperature and dose",
    "NoGrowth": "the yeast does not grow at all",
}


def _read() -> dict:
    return json.loads(FIGURES.read_text(encoding="utf-8"))


def _pair(figures: list[float]) -> str:
    return f"{figures[0]:.0f}/{figures[1]:.0f}"


def page() -> str:
    """The page as Markdown."""
    found = _read()
    counts = sorted(int(name.split()[1]) for name in found if name.startswith("coverage"))
    books = found[f"coverage {counts[0]}"]["books"]
    days, today = found["whole days"], found["today"]
    covered = [
        [
            str(count),
            *(_pair(found[f"coverage {count}"][name]) for name in NAMES),
            f"{found[f'coverage {count}']['width']:.2f}",
            f"{found[f'coverage {count}']['share']:.2f}",
            str(found[f"coverage {count}"]["not converged"]),
        ]
        for count in counts
    ]
    sharp = [
        [str(count), f"{its['share']:.3f}", f"{its['width']:.3f}"]
        for count in counts
        if (its := found.get(f"sharpness {count}"))
    ]
    typos = [
        [
            name.removeprefix("typo "),
            f"{its['nine in ten below']:.2f}",
            f"{its['most']:.2f}",
            f"{100 * its['named']:.0f}",
        ]
        for name, its in found.items()
        if name.startswith("typo")
    ]
    worlds = [[words, f"{found[f'misfit {name}']:.0f}"] for name, words in WORLDS.items()]
    parts = [
        "# Learning: how often the truth is inside, and how sharp",
        (
            f"Invented logbooks, {books} for each line, are drawn from the prior of the set {lf.Kitchen().name}: a "
            "kitchen with every parameter, bakes with their own effect, looks with their noise; some watched to the "
            "end, some looked at once or twice. A kitchen is learned from each, and its intervals are held against "
            "the truth that it was drawn from. A good 50 % interval holds it in half of the books, a good 90 % one in "
            "nine of ten."
        ),
        table(
            ["bakes", *NAMES.values(), "width of the next rise", "rate's sd left", "not converged"],
            covered,
            right="0 1 2 3 4 5 6 7",
        ),
        (
            "Percent of the books whose 50/90 % interval holds the truth. Width: of the 90 % interval of the next "
            "rise's ln time, the median. From ten bakes on bake and noise are learned, too."
        ),
        f"![The width of the next rise over the number of bakes]({PICTURE})",
        "## As sharp as it can be",
        ("With the model's own spread left out of truth and fit:"),
        table(["bakes", "rate's sd left", "width of the next rise"], sharp, right="0 1 2"),
        "## Whole days",
        (
            f"{days['books']} books of four days, with bulk, bench rest and proof in a room: all parameters together "
            f"{_pair(days['pooled'])}, the gassing rate {_pair(days['gassing_rate'])}, the next proof "
            f"{_pair(days['next proof'])}; {days['not converged']} did not converge. A look at today's dough: its end "
            f"{_pair(today)}."
        ),
        "## Slips and other worlds",
        (
            "One wild slip among eleven bakes moves the gassing rate, beside the fit without that bake, by so much of "
            "what is not known of it:"
        ),
        table(["slip", "nine books in ten below", "most", "named, %"], typos, right="1 2 3"),
        (
            "Logs from a world that the model does not know; how often the 90 % interval of the next rise, after ten "
            "bakes, still holds it. No more than four in five is promised."
        ),
        table(["world", "inside, %"], worlds, right="1"),
    ]
    if ranks := found.get("ranks"):
        parts.append(
            f"After the importance correction the ranks of the gassing rate are uniform (p = {ranks['p']:.2f}, "
            f"twenty bins); its k is above 0.7 in {100 * ranks['k_hat above 0.7']:.0f} % of the books."
        )
    return wrapped("\n\n".join(parts))


def picture(path: Path) -> None:
    """The width of the next rise, and the gassing rate's sd, over the number of bakes."""
    found = _read()
    counts = sorted(int(name.split()[1]) for name in found if name.startswith("coverage"))
    figure = Figure(figsize=(5, 3), layout="constrained")
    axes = figure.subplots()
    places = range(len(counts))
    axes.plot(places, [found[f"coverage {count}"]["width"] for count in counts], "o-", color=BLUE)
    axes.plot(places, [found[f"coverage {count}"]["share"] for count in counts], "s--", color=DARK)
    axes.annotate("width of the next rise, ln time", (0.2, 0.9), color=BLUE)
    axes.annotate("gassing rate: sd that is left", (1.4, 0.62), color=DARK)
    axes.set(
        xticks=list(places), xticklabels=[str(count) for count in counts], xlabel="bakes in the logbook", ylim=(0, 1.1)
    )
    axes.set_title("Thirty bakes leave little but what one bake differs from the next")
    save(figure, path)
