# SPDX-License-Identifier: Apache-2.0
"""Lowest modes and buckling factors by SciPy (ARPACK, SuperLU) of matrices that EigenLibrary has written.

Arguments: folder, how many. Prints seconds of factorisation, modes and factors, then the values.
"""
import sys
import time

import numpy as np
from scipy.sparse import csr_matrix, triu
from scipy.sparse.linalg import LinearOperator, eigsh, splu


def read(folder, name, n):
    start = np.fromfile(f"{folder}/start", dtype="<i4")
    columns = np.fromfile(f"{folder}/columns", dtype="<i4")
    values = np.fromfile(f"{folder}/{name}", dtype="<f8")
    upper = csr_matrix((values, columns, start), shape=(n, n))
    upper.eliminate_zeros()
    return (upper + triu(upper, 1).T).tocsc()


folder, count = sys.argv[1], int(sys.argv[2])
n = len(np.fromfile(f"{folder}/start", dtype="<i4")) - 1
k, m, g = (read(folder, name, n) for name in ("k", "m", "g"))
rng = np.random.default_rng(1)

t0 = time.perf_counter()
lu = splu(k, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
t1 = time.perf_counter()
inverse = LinearOperator((n, n), matvec=lu.solve, dtype=float)
start = lu.solve(m @ rng.standard_normal(n))
modes = eigsh(k, count, m, sigma=0, OPinv=inverse, v0=start, tol=1e-9, return_eigenvectors=True)[0]
t2 = time.perf_counter()
inverse_factors = eigsh(-g, count, k, Minv=inverse, which="LA", v0=start, tol=1e-8, return_eigenvectors=True)[0]
t3 = time.perf_counter()
values = list(np.sort(modes)) + list(np.sort(1 / inverse_factors))
print("SECONDS", t1 - t0, t2 - t1, t3 - t2)
print("VALUES", *(repr(float(v)) for v in values))
