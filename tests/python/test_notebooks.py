"""The notebooks run from a clean kernel, and what they show is what they compute."""

import ast
import json
import re
import sys
from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient

import libferment

NOTEBOOKS = Path(__file__).resolve().parents[2] / "notebooks"
NAMES = ["rise_in_a_cold_kitchen", "water_temperature"]
SECONDS_FOR_A_CELL = 120
LARGEST_BYTES = 500_000
IMAGES = {"image/png", "image/jpeg", "image/svg+xml"}
REFRESH = "run `jupyter execute --inplace` on it, look at it, and commit it"


@pytest.fixture(scope="module", params=NAMES)
def path(request):
    return NOTEBOOKS / f"{request.param}.ipynb"


@pytest.fixture(scope="module")
def committed(path):
    notebook = nbformat.read(path, as_version=4)
    nbformat.validate(notebook)
    return notebook


@pytest.fixture(scope="module")
def fresh(committed, tmp_path_factory):
    """The notebook run anew by this Python, without anybody's Jupyter or IPython settings."""
    import matplotlib.font_manager  # noqa: F401  finds the fonts now: in the kernel it would say so on stderr

    home = tmp_path_factory.mktemp("jupyter")
    kernel = home / "kernels" / "python3"
    kernel.mkdir(parents=True)
    start = [sys.executable, "-m", "ipykernel_launcher", "-f", "{connection_file}"]
    spec = {"argv": start, "display_name": "Python 3", "language": "python"}
    (kernel / "kernel.json").write_text(json.dumps(spec), encoding="utf-8")

    notebook = nbformat.from_dict(committed)
    notebook.cells.append(nbformat.v4.new_code_cell("import libferment\n\nprint(libferment.__file__)"))
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
    (imported,) = notebook.cells.pop().outputs
    assert Path(imported.text.strip()).samefile(libferment.__file__)
    return notebook


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
