"""The notebooks run from a clean kernel, and what they show is what they compute."""

import ast
import json
import math
import re
import sys
from pathlib import Path

import independent_day as independent
import nbformat
import numpy as np
import pytest
from nbclient import NotebookClient

import libferment as lf

NOTEBOOKS = Path(__file__).resolve().parents[2] / "notebooks"
NAMES = ["learning_a_kitchen", "rise_in_a_cold_room", "water_temperature"]
SECONDS_FOR_A_CELL = 120
LARGEST_BYTES = 500_000
IMAGES = {"image/png", "image/jpeg", "image/svg+xml"}
REFRESH = "run `jupyter execute --inplace` on it, look at it, and commit it"

# What a notebook's names hold after its last cell, by name or expression.
RISE_SAYS = [
    *("stays_warm_h", "stays_cold_h", "doubled_h", "swing_h[8]", "swing_h[20]", "steady_h"),
    *("rise_in", "rise_out", "rise_warm", "over_h", "straight_h", "poolish_h", "whole_h", "gap_h"),
    *("gone_on.stages[-1].hours", "timeline.stages[0].end_c"),
]
RISE_TAKES = [  # how fast heat leaves the pieces, and the readings of the logs
    "timeline.state.heat_capacity_kj_k",
    "timeline.stages[0].time_constant_h",
    "straight.state.heat_capacity_kj_k",
    "straight.stages[0].time_constant_h",
    "simulate([dough, proof.replace(surroundings=room)]).stages[0].time_constant_h",
    "simulate([dough, proof.replace(surroundings=lf.Surroundings.refrigerator(4))]).stages[0].time_constant_h",
    "simulate([poolish]).state.heat_capacity_kj_k",
    "with_poolish.stages[0].time_constant_h",
    "[[[*log.time_h], [*log.temperature_c]] for log in logs.values()]",
]
WATER_SAYS = ["rule_c", "friction_k", "cold_off_k", "hot_plan.pour_g", "hot_plan.ice_g"]
WATER_TAKES = [
    "plan.water_c",
    "mild_water_c",
    "hot_plan.water_c",
    "lf.dough_by_heat_balance(bread.replace(water_c=rule_c))",
]
LEARNING_SAYS = ["proof_now.ready_h", "bulk_now.ready_h"]
LEARNING_TAKES = ["kitchen.to_json()", "log.to_json()"]
ASKED = {
    "learning_a_kitchen": [*LEARNING_SAYS, *LEARNING_TAKES],
    "rise_in_a_cold_room": [*RISE_SAYS, *RISE_TAKES],
    "water_temperature": [*WATER_SAYS, *WATER_TAKES],
}


@pytest.fixture(scope="module", params=NAMES)
def path(request):
    return NOTEBOOKS / f"{request.param}.ipynb"


@pytest.fixture(scope="module")
def committed(path):
    notebook = nbformat.read(path, as_version=4)
    nbformat.validate(notebook)
    return notebook


@pytest.fixture(scope="module")
def ran(path, committed, tmp_path_factory):
    """The notebook run anew by this Python, without anybody's Jupyter or IPython settings, and its key numbers."""
    import matplotlib.font_manager  # noqa: F401  finds the fonts now: in the kernel it would say so on stderr

    home = tmp_path_factory.mktemp("jupyter")
    kernel = home / "kernels" / "python3"
    kernel.mkdir(parents=True)
    start = [sys.executable, "-m", "ipykernel_launcher", "-f", "{connection_file}"]
    spec = {"argv": start, "display_name": "Python 3", "language": "python"}
    (kernel / "kernel.json").write_text(json.dumps(spec), encoding="utf-8")

    notebook = nbformat.from_dict(committed)
    values = ", ".join(f"{expression!r}: {expression}" for expression in ASKED[path.stem])
    asked = f"import json\n\nimport libferment\n\nprint(json.dumps([libferment.__file__, {{{values}}}]))"
    notebook.cells.append(nbformat.v4.new_code_cell(asked))
    client = NotebookClient(
        notebook,
        timeout=SECONDS_FOR_A_CELL,
        kernel_name="python3",
        resources={"metadata": {"path": str(NOTEBOOKS)}},
    )
    with pytest.MonkeyPatch.context() as settings:
        settings.setenv("JUPYTER_PATH", str(home))
        settings.setenv("JUPYTER_CONFIG_DIR", str(home / "config"))
        settings.setenv("IPYTHONDIR", str(home / "ipython"))
        settings.delenv("MPLBACKEND", raising=False)
        client.execute()
    (answer,) = notebook.cells.pop().outputs
    imported, numbers = json.loads(answer.text)
    assert Path(imported).samefile(lf.__file__)
    return notebook, numbers


@pytest.fixture(scope="module")
def fresh(ran):
    return ran[0]


@pytest.fixture(scope="module")
def numbers(ran):
    return ran[1]


def code_cells(notebook):
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def outputs(notebook):
    return [output for cell in code_cells(notebook) for output in cell.outputs]


def without_images(cell):
    """All that a cell shows, but of images only their kinds; streams in one piece, however they came in."""
    shown = []
    for output in cell.outputs:
        if output.output_type == "stream":
            if shown and shown[-1][0] == output.name:
                shown[-1] = (output.name, shown[-1][1] + output.text)
            else:
                shown.append((output.name, output.text))
        else:
            data = {kind: "" if kind in IMAGES else content for kind, content in output.data.items()}
            shown.append((output.output_type, data))
    return shown


def test_every_notebook_is_tested():
    assert sorted(found.stem for found in NOTEBOOKS.glob("*.ipynb")) == sorted(NAMES)


def test_shows_what_it_computes(committed, fresh):
    for number, (was, now) in enumerate(zip(code_cells(committed), code_cells(fresh), strict=True), start=1):
        assert without_images(was) == without_images(now), f"code cell {number} is stale: {REFRESH}"


def test_what_it_says_is_so(path, numbers):
    """Key numbers, each worked out in another way."""
    anew = {
        "learning_a_kitchen": learning_anew,
        "rise_in_a_cold_room": rise_anew,
        "water_temperature": water_anew,
    }[path.stem]
    for name, value in anew(numbers).items():
        assert numbers[name] == pytest.approx(value, rel=5e-4), name


def rise_anew(numbers):
    """Solve the cold room's doughs by SciPy, on the same model written anew."""
    tub_kj_k, tub_h, slow_kj_k, slow_tub_h, roll_h, roll_cold_h, poolish_kj_k, poolish_h, logs = (
        numbers[name] for name in RISE_TAKES
    )
    doubled = {"until_rise_percent": 100}

    def mix(yeast_g, dough_c=25):
        return independent.Mix(dough_c, flour_g=1000, water_g=720, salt_g=18, yeast=[("compressed", yeast_g)])

    def stage(ambient_c, constant_h=tub_h, kj_k=tub_kj_k, flour_g=1000, **until):
        piece = {"capacity_j_k": 1000 * kj_k, "ua_w_k": kj_k / constant_h / 3.6, "flour_g_of_piece": flour_g}
        return independent.Stage("rest", ambient_c=ambient_c, **piece, **until)

    def run(*steps):
        return independent.run(steps, altitude_m=1850)

    def held_h(dough_c):
        return run(mix(9, dough_c), independent.Stage("bulk", dough_c=dough_c, **doubled))[0].end_h

    def slow_h(ambient_c):
        return run(mix(3), stage(ambient_c, slow_tub_h, slow_kj_k, **doubled))[0].end_h

    (bulk,) = run(mix(9), stage(16, **doubled))
    roll = {"kj_k": tub_kj_k / 12, "flour_g": 1000 / 12}
    until_out = [mix(9), stage(16, roll_h, until_h=1, **roll), stage(4, roll_cold_h, until_h=10, **roll)]
    night = run(*until_out, stage(16, roll_h, until_h=2, **roll))
    # A final proof of rolls that stand free: over-proofed at 2.3 times the size they had when they were shaped.
    to_over_percent = 100 * (2.3 / night[1].held_ratio - 1)
    over = run(*until_out, stage(16, roll_h, until_rise_percent=to_over_percent, **roll))[2]
    with_poolish = run(
        independent.Mix(22, flour_g=300, water_g=300, yeast=[("compressed", 3)]),
        stage(16, poolish_h, poolish_kj_k, 300, until_h=12),
        independent.Mix(25, flour_g=700, water_g=420, salt_g=18),
        stage(16, slow_tub_h, slow_kj_k, **doubled),  # the straight dough's ingredients
    )
    hours = [
        *(held_h(25), held_h(16), bulk.end_h),
        *(slow_h(independent.Daily(15, 3, 16 - start_h)) for start_h in (8, 20)),
        slow_h(15),
    ]
    rises = [100 * (part.held_ratio - 1) for part in night]
    joined_h = with_poolish[1].end_h - with_poolish[1].start_h
    by_logs = [slow_h(tuple(readings)) for readings in logs]
    values = [*hours, *rises, 20 + over.end_h, slow_h(16), joined_h, *by_logs, joined_h, bulk.temperature_c]
    return dict(zip(RISE_SAYS, values, strict=True))


def learning_anew(numbers):
    """Weigh the draws by hand: each followed to the look, and to its ends."""
    kitchen, log = lf.Kitchen.from_json(numbers["kitchen.to_json()"]), lf.Log.from_json(numbers["log.to_json()"])
    (look,) = log.seen
    mix, bulk, _ = log.process.steps
    to_look = log.process.replace(steps=[mix, bulk.replace(until_rise_percent=look.rise_percent)])
    weights, ready = [], []
    for draw in lf.draws_of(kitchen):
        bulk_of_draw = lf.simulate(to_look, draw, every_min=0).stages[0]
        off = math.log((look.time_h - bulk_of_draw.start_h) / (bulk_of_draw.end_h - bulk_of_draw.start_h))
        weights.append((1 + (off / kitchen.log_time_scale) ** 2 / 4) ** -2.5)
        ready.append([stage.end_h for stage in lf.simulate(log.process, draw, every_min=0).stages])

    def median(hours):
        order = np.argsort(hours)
        places = np.cumsum(np.array(weights)[order]) - np.array(weights)[order] / 2
        return np.interp(sum(weights) / 2, places, np.array(hours)[order])

    bulk_h, proof_h = zip(*ready, strict=True)
    return dict(zip(LEARNING_SAYS, [median(proof_h), median(bulk_h)], strict=True))


def water_anew(numbers):
    """Work out the rule, what its water makes, and the ice by hand."""
    water_c, mild_water_c, hot_water_c, by_rule_c = (numbers[name] for name in WATER_TAKES)
    friction_k = 3 * 23 - 21 - 21 - mild_water_c
    of_water, of_ice, melting = 4.186, 2.05, 333.55  # kJ/(kg K), kJ/kg
    assert numbers["rule_c"] > water_c
    ice_g = 792 * of_water * (18 - hot_water_c) / (melting + 18 * of_ice + 18 * of_water)
    values = [3 * 23 - 14 - 16 - friction_k, friction_k, by_rule_c - 23, 792 - ice_g, ice_g]
    return dict(zip(WATER_SAYS, values, strict=True))


def test_was_run_once_from_the_top(committed):
    cells = code_cells(committed)
    assert [cell.execution_count for cell in cells] == list(range(1, len(cells) + 1)), REFRESH
    counts = [output.execution_count for output in outputs(committed) if output.output_type == "execute_result"]
    assert counts == [c.execution_count for c in cells if any(o.output_type == "execute_result" for o in c.outputs)]


def test_draws_and_does_not_complain(committed, fresh):
    for notebook in (committed, fresh):
        shown = outputs(notebook)
        assert [o.text for o in shown if o.output_type == "stream" and o.name != "stdout"] == []
        assert [o for o in shown if o.output_type == "error"] == []
        figures = [o.data["image/png"] for o in shown if "image/png" in o.get("data", {})]
        wanted = sum(cell.source.count("plt.show()") for cell in code_cells(notebook))
        assert len(figures) == wanted > 0
        assert all(figure.startswith("iVBORw0KGgo") for figure in figures)  # the first bytes of a PNG, in base 64


def test_is_fit_to_be_shared(path, committed):
    text = path.read_text(encoding="utf-8")
    assert len(text.encode()) < LARGEST_BYTES
    assert committed.metadata.kernelspec == {"display_name": "Python 3", "language": "python", "name": "python3"}
    assert "widgets" not in committed.metadata
    words = [cell.source for cell in committed.cells]
    words += [json.dumps(without_images(cell), ensure_ascii=False) for cell in code_cells(committed)]
    for piece in words:
        found = re.search(r"(?<![\w.:/<])(?:/[a-z]\w*){2,}|\b[A-Za-z]:\\\\|file://", piece)
        assert found is None, f"a path of some machine: {found[0]}"


def test_no_number_stands_in_its_prose(committed):
    """A number typed into a sentence would stay when the code says another."""
    prose = [cell.source for cell in committed.cells if cell.cell_type == "markdown"]
    for cell in code_cells(committed):
        for node in ast.walk(ast.parse(cell.source)):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "say":
                formats = {id(part.format_spec) for part in ast.walk(node) if isinstance(part, ast.FormattedValue)}
                prose += [text.value for text in node.args if isinstance(text, ast.Constant)]
                for text in ast.walk(node):
                    if isinstance(text, ast.JoinedStr) and id(text) not in formats:
                        prose += [p.value for p in text.values if isinstance(p, ast.Constant)]
    assert any("\n" in piece for piece in prose)
    assert [piece for piece in prose if re.search(r"\d", piece)] == []
