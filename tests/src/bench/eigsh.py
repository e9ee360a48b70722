"""Times scipy's shift-invert eigensolver on a pencil: eigsh.py FOLDER MODES RUNS

FOLDER holds the lower triangles of K and M by columns, as raw numbers: starts and rows (int64), stiffness and mass (float64).
Prints, as JSON, the times in s of all runs but the first, and the lowest eigenvalues.
"""

import json
import sys
import time

import numpy as np
from scipy.sparse import csc_matrix, tril
from scipy.sparse.linalg import LinearOperator, eigsh, splu

folder, modes, runs = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
starts, rows = (np.fromfile(f"{folder}/{name}", dtype=np.int64) for name in ("starts", "rows"))


def whole(name):
    """Both triangles of a matrix."""
    lower = csc_matrix((np.fromfile(f"{folder}/{name}", dtype=np.float64), rows, starts))
    return (lower + tril(lower, -1).T).tocsc()


stiffness, mass = whole("stiffness"), whole("mass")
# The top is held, so that K has an inverse and the lowest modes are those next to zero.
SHIFT = 0.0
times_s = []
values = []
for _ in range(runs + 1):
    begun = time.perf_counter()
    # Without pivoting, as a definite matrix allows: the order is kept then, and the factor made in a two-hundredth of the time.
    factor = splu(
        stiffness - SHIFT * mass,
        permc_spec="MMD_AT_PLUS_A",
        diag_pivot_thresh=0.0,
        options={"SymmetricMode": True},
    )
    inverse = LinearOperator(stiffness.shape, matvec=factor.solve)
    values = eigsh(stiffness, modes, mass, sigma=SHIFT, OPinv=inverse)[0]
    times_s.append(time.perf_counter() - begun)
print(json.dumps({"times_s": times_s[1:], "values": sorted(values)}))
