"""Runs the README's example for h5py on a result folder: readme_example.py README.md FOLDER"""

import re
import sys

blocks = re.findall(r"```python\n(.*?)```", open(sys.argv[1], encoding="utf-8").read(), re.S)
(example,) = [block for block in blocks if "reclaim-r3-tail-result/result.h5" in block]
assert len(example.splitlines()) <= 10, "ten lines at most"
exec(example.replace("reclaim-r3-tail-result", sys.argv[2]))
