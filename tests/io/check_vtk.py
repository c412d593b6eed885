"""Reads the sample run's VTK files and holds them against what tests/io/sample_run.cpp wrote: check_vtk.py FOLDER"""

import sys
import xml.etree.ElementTree
from pathlib import Path

from vtkmodules.vtkCommonDataModel import vtkDataObject
from vtkmodules.vtkIOXML import vtkXMLMultiBlockDataReader

folder = Path(sys.argv[1])
series = xml.etree.ElementTree.parse(folder / "states.pvd").findall(".//DataSet")
assert [(entry.get("timestep"), entry.get("file")) for entry in series] == [("1", "state-1-running-full.vtm")]

reader = vtkXMLMultiBlockDataReader()
reader.SetFileName(str(folder / series[0].get("file")))
reader.Update()
blocks = reader.GetOutput()
assert [blocks.GetMetaData(i).Get(blocks.NAME()) for i in range(blocks.GetNumberOfBlocks())] == ["belt", "rolls"]

belt = blocks.GetBlock(0)
assert belt.GetDimensions() == [3, 4, 1] or tuple(belt.GetDimensions()) == (3, 4, 1)
assert belt.GetFieldData().GetAbstractArray("state").GetValue(0) == "running full"
data = belt.GetPointData()
names = [data.GetArrayName(i) for i in range(data.GetNumberOfArrays())]
assert names == ["x_mm", "y_mm", "strain", "displacement_mm", "membrane_strain", "curvature_per_mm", "top_strain",
                 "bottom_strain", "N_N_per_mm", "M_N", "contact_pressure_MPa", "mode_symmetric"], names


def near(value, expected):
    assert abs(value - expected) <= 1e-6 * max(1e-6, abs(expected)), (value, expected)


for index in range(belt.GetNumberOfPoints()):
    x, y = 800.0 * (index // 3), 600.0 * (index % 3 - 1)
    for value, expected in zip(belt.GetPoint(index), (1.002 * x, 0.99 * y, abs(y) / 7)):
        near(value, expected)
    near(data.GetArray("x_mm").GetValue(index), x)
    near(data.GetArray("y_mm").GetValue(index), y)
    near(data.GetArray("strain").GetValue(index), 0.002 + 1e-9 * y * y + 1e-7 * x)
    near(data.GetArray("mode_symmetric").GetTuple3(index)[1], -0.01 * index)
    near(data.GetArray("membrane_strain").GetTuple(index)[2], 1e-5 * y)
    near(data.GetArray("M_N").GetTuple(index)[1], 25000 * (1e-3 + 1e-6 * y))
    near(data.GetArray("contact_pressure_MPa").GetValue(index), x / 3e4)
strain = data.GetArray("membrane_strain")
assert [strain.GetComponentName(i) for i in range(3)] == ["along", "across", "shear doubled"]

rolls = blocks.GetBlock(1)
cells = rolls.GetCellData()
label = cells.GetAbstractArray("name")
assert rolls.GetNumberOfCells() == label.GetNumberOfValues() == cells.GetArray("roll").GetNumberOfValues()
assert {label.GetValue(i) for i in range(rolls.GetNumberOfCells())} == {"pulley", "set 1 wing +y"}
near(rolls.GetBounds()[0], -315)
near(rolls.GetBounds()[2], -700)
