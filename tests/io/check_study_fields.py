"""The surfaces that a study keeps are those of the cases solved by themselves, as h5py reads both.

usage: check_study_fields.py SWALE HELD_CASE FOLDER
"""

import pathlib
import shutil
import subprocess
import sys

import h5py
import numpy

STUDY = """case = "held.toml"
fields = true
[[vary]]
key = "tension[1].elongation"
values = ["4 mm", "6 mm"]
"""


def main():
    swale, case, folder = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    shutil.copy(case, folder / "held.toml")  # drawn by 6 mm, as the study's second case
    (folder / "study.toml").write_text(STUDY)
    subprocess.run([swale, "study", folder / "study.toml", "--out", folder / "study.h5"], check=True, stdout=subprocess.DEVNULL)
    subprocess.run([swale, "solve", folder / "held.toml", "--out", folder / "solved"], stdout=subprocess.DEVNULL)
    with h5py.File(folder / "study.h5") as study, h5py.File(folder / "solved" / "result.h5") as solved:
        assert list(study["fields"]) == ["1", "2"], list(study["fields"])
        kept, whole = study["fields/2/1"], solved["states/1/surface"]
        assert kept.attrs["state"] == "drawn"
        names = [name for name in whole if name != "position_mm"]
        assert sorted(kept) == sorted(names), (list(kept), names)
        for name in names:
            assert kept[name].shape == whole[name].shape, name
            assert kept[name].attrs["unit"] == whole[name].attrs["unit"], name
            assert kept[name].compression == "gzip" and kept[name].chunks, name
            size = numpy.abs(whole[name][...]).max()
            # seven digits are kept
            assert numpy.allclose(kept[name][...], whole[name][...], rtol=1e-6, atol=1e-12 * size), name
        assert study["fields/2/1/strain"][...].max() > study["fields/1/1/strain"][...].max()


main()
