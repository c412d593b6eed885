"""Values of one surface point as result.h5 has them, in the report's units: stored_point.py FILE STATE X Y LEVELS MODE_LEVELS"""

import json
import sys

import h5py
import numpy as np

file, name, x, y = sys.argv[1], sys.argv[2], float(sys.argv[3]), float(sys.argv[4])
levels, mode_levels = int(sys.argv[5]), int(sys.argv[6])
with h5py.File(file) as run:
    state = next(s for s in run["states"].values() if s.attrs["name"] == name)
    surface = state["surface"]
    away = np.hypot(surface["x_mm"][...] - x, surface["y_mm"][...] - y)
    place = np.unravel_index(away.argmin(), away.shape)
    assert away[place] < 0.08, away[place]

    def larger_face(surface):
        def principal(e):
            return (e[..., 0] + e[..., 1]) / 2 + np.hypot((e[..., 0] - e[..., 1]) / 2, e[..., 2] / 2)
        return 100 * np.maximum(principal(surface["top_strain"][...]), principal(surface["bottom_strain"][...]))

    fields = {
        "strain": 100 * surface["strain"][...],
        "surface": larger_face(surface),
        "tension": surface["N_N_per_mm"][..., 0],
        "curvature": 1e3 * surface["curvature_per_mm"][..., 1],
        "pressure": surface["contact_pressure_MPa"][...],
        "mode": state["mode_symmetric/motion"][..., 2],
    }
    answer = {key: float(values[place]) for key, values in fields.items()}
    # A page carries numbers in so many steps between the least and the largest.
    answer["quantum"] = {key: float(np.ptp(values)) / (mode_levels if key == "mode" else levels) * 0.51 for key, values in fields.items()}
    print(json.dumps(answer))
