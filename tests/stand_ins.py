"""Small lessons for the tests of what opens lessons."""

from pathlib import Path

import nbformat
from nbformat import NotebookNode
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook

_KERNEL = {"name": "python3", "display_name": "Python 3", "language": "python"}
RUN_ALL = '<button data-commandlinker-command="notebook:run-all-cells">Run all cells</button>'


def lesson(title: str, *cells: NotebookNode) -> NotebookNode:
    """Return a lesson with a title, the button that runs it, and further cells."""
    first = new_markdown_cell(f"# {title}\n\n{RUN_ALL}")
    return new_notebook(cells=[first, *cells], metadata={"kernelspec": _KERNEL})


def folded(source: str) -> NotebookNode:
    """Return a code cell that is folded away."""
    return new_code_cell(source, metadata={"jupyter": {"source_hidden": True}})


def save(notebook: NotebookNode, path: Path) -> Path:
    """Write a lesson, with its folder, and return where it is."""
    path.parent.mkdir(parents=True, exist_ok=True)
    nbformat.write(notebook, path)
    return path


def saved_by_the_page(path: Path, *, add: str | None = None) -> NotebookNode:
    """Change a copy as the page does after a run, with a note added at the end if asked for."""
    notebook = nbformat.read(path, as_version=4)
    for cell in notebook.cells:
        if cell.cell_type == "code":
            cell.execution_count = 3
            cell.outputs = [nbformat.v4.new_output("stream", text="FloatSlider(value=1.0)\n")]
    notebook.metadata["widgets"] = {"application/vnd.jupyter.widget-state+json": {"state": {}}}
    notebook.metadata["language_info"] = {"name": "python", "version": "3.13.0"}
    # Running the last cell from the keyboard leaves an empty one.
    notebook.cells.append(new_code_cell(""))
    if add is not None:
        notebook.cells.append(new_markdown_cell(add))
    nbformat.write(notebook, path)
    return notebook
