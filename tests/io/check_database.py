"""Reads the sample run's result.h5 with h5py and holds it against what tests/io/sample_run.cpp wrote: check_database.py FILE"""

import math
import sys

import h5py
import numpy

file = h5py.File(sys.argv[1], "r")
assert file.attrs["format"] == "swale result" and file.attrs["format_version"] == 1
assert file.attrs["swale_version"] and file.attrs["written_at"].endswith("Z")
assert file["case_text"][()].decode() == 'title = "Salt reclaim R3"  # § verbatim, with a tab\t\n'
assert file["settings"].attrs["sets"] == 4 and file["settings"].attrs["model"] == "half"
assert file["belt/membrane"][0, 1] == 500 and file["belt/bending"].attrs["unit"] == "N mm"
assert list(file["belt/data/name"].asstr()) == ["A11"]
assert list(file["rolls/name"].asstr()) == ["pulley", "set 1 wing +y"] and file["rolls/axis"].shape == (2, 3)
assert list(file["criteria/passed"]) == [1, 0, 1, -1, -1, 1] and file["criteria/where"].asstr()[5] == "set 1 wing +y"
assert math.isnan(file["criteria/limit"][3])

full, unsolved = file["states/1"], file["states/2"]
assert full.attrs["name"] == "running full" and full.attrs["status"] == "converged" and full.attrs["total_N"] == 45000
assert unsolved.attrs["status"] == "not converged" and "62 kN" in unsolved.attrs["reason"]
assert list(unsolved) == ["newton", "notes"] and "tension_N" not in unsolved.attrs

points = full["shape/control_points"]
assert points.shape == (5, 4, 3) and points.attrs["unit"] == "mm"
assert numpy.array_equal(points[()].ravel(), numpy.sqrt(2.0 + numpy.arange(60)))
assert full["shape/knots_along"][4] == 1200.0 / 7

reading = full["readings/edge_strain_max"]
assert reading[()] == 0.0084 and reading.attrs["error"] == 0.0001 and reading.attrs["y_mm"] == -600
assert math.isnan(full["readings/wing_line_force_max"][()])
assert full["supports/force"][2, 1] == -700 and math.isnan(full["supports/lift_off"][3])
assert full["supports/touched_to"][2] == 540 and math.isnan(full["supports/touched_from"][1])
assert full["along/x_mm"].shape == (4,) and full["along/edge_tension_N_per_mm"].attrs["unit"] == "N/mm"
assert list(full["across/section"].asstr()) == ["mid-transition", "mid-transition", "set 1"]
surface = full["surface"]
assert surface["membrane_strain"].shape == (4, 3, 3) and surface["contact_pressure_MPa"].shape == (4, 3)
assert surface["x_mm"][2, 0] == 1600 and surface["y_mm"][2, 2] == 600
assert surface["membrane_strain"].attrs["components"] == "along, across, shear doubled"
mode = full["mode_symmetric"]
assert mode["motion"].shape == (4, 3, 3) and mode["motion"][2, 1, 2] == 1 and mode.attrs["x_mm"] == 1600
assert "mode_antisymmetric" not in full
for name, field in surface.items():
    assert field.attrs["unit"], name
