"""Reads the sample run's pictures by libraries that did not write them: check_pictures.py FOLDER"""

import subprocess
import sys
import xml.etree.ElementTree
from pathlib import Path

from vtkmodules.vtkIOGeometry import vtkGLTFReader
from vtkmodules.vtkIOImage import vtkPNGReader

folder = Path(sys.argv[1])
names = sorted(path.name for path in folder.iterdir())
for what in ("along", "belt", "map", "strain-across", "tension-across", "trough"):
    for kind in ("png", "svg", "pdf"):
        assert f"state-1-running-full-{what}.{kind}" in names, (what, kind, names)
assert not any(name.startswith("state-2") for name in names), "a state without a solution has no picture"

for path in folder.glob("*.png"):
    reader = vtkPNGReader()
    reader.SetFileName(str(path))
    reader.Update()
    width, height, _ = reader.GetOutput().GetDimensions()
    low, high = reader.GetOutput().GetScalarRange()
    assert width > 800 and height > 300 and low < 100 and high == 255, (path, width, height, low, high)

for path in folder.glob("*.svg"):
    root = xml.etree.ElementTree.parse(path).getroot()
    assert root.tag == "{http://www.w3.org/2000/svg}svg" and root[0].tag.endswith("title"), path
    links = [e.get("href") for e in root.iter() if e.get("href")]
    assert all(link.startswith("data:image/png;base64,") for link in links), path

for path in folder.glob("*.pdf"):
    facts = subprocess.run(["pdfinfo", path], check=True, capture_output=True, text=True).stdout
    assert "Pages:           1" in facts, facts
text = subprocess.run(["pdftotext", folder / "state-1-running-full-along.pdf", "-"], check=True, capture_output=True, text=True).stdout
assert "edge" in text or len(text) == 0  # words are outlines, so that every viewer shows them alike

reader = vtkGLTFReader()
reader.SetFileName(str(folder / "state-1-running-full.glb"))
reader.Update()


def meshes(block):
    for i in range(block.GetNumberOfBlocks()):
        inner = block.GetBlock(i)
        yield from meshes(inner) if hasattr(inner, "GetNumberOfBlocks") else [inner]


belt, *rolls = list(meshes(reader.GetOutput()))
assert belt.GetNumberOfPoints() == 12 and belt.GetNumberOfCells() == 12 and len(rolls) == 2
colours = belt.GetPointData().GetArray("COLOR_0")
assert colours.GetNumberOfTuples() == 12
assert len({colours.GetTuple(k) for k in range(12)}) > 2, "the belt has the colours of its strain"
# Metres, y up: the pulley of radius 315 mm has its top half a thickness below z = 0.
bounds = rolls[0].GetBounds()
assert abs(bounds[3] + 0.00725) < 1e-4 and abs(bounds[1] - 0.315) < 1e-4, bounds
