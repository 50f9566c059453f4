# SPDX-License-Identifier: Apache-2.0
"""Torsional stiffness of a sandwich box as a three-dimensional, orthotropic elastic solid.

A second opinion on the shells of Tubwright: the weak form of linear elasticity, nothing else, solved with the
general-purpose PDE library GetFEM (Debian: python3-getfem). Called by SecondOpinionTest; reads one JSON object from
standard input and writes one to standard output. Metres, newtons, pascals.

Axes: x along the box, y to the right, z up, origin in its middle. Box and material are symmetric about the three planes,
and torsion is antisymmetric about each, so an eighth is solved: on y = 0 and z = 0 the displacements in the plane vanish,
on x = 0 those across the box (warping stays free). At the end x = L/2 every point of the section turns about x; its
displacement along x is left free, or held ("warping": "held").

Walls are mitred at the corner: a layer that lies off the middle surface goes on round the corner at the same distance.
"""
import json
import sys
import time

import getfem as gf
import numpy as np


def stiffness(m):
    """C of an orthotropic material, 3x3x3x3, in its own axes 1, 2, 3."""
    e1, e2, e3 = m["E1"], m["E2"], m["E3"]
    s = np.zeros((6, 6))
    s[0, 0], s[1, 1], s[2, 2] = 1 / e1, 1 / e2, 1 / e3
    s[0, 1] = s[1, 0] = -m["nu12"] / e1
    s[0, 2] = s[2, 0] = -m["nu13"] / e1
    s[1, 2] = s[2, 1] = -m["nu23"] / e2
    s[3, 3], s[4, 4], s[5, 5] = 1 / m["G23"], 1 / m["G13"], 1 / m["G12"]
    c = np.linalg.inv(s)
    pair = [(0, 0), (1, 1), (2, 2), (1, 2), (0, 2), (0, 1)]
    full = np.zeros((3, 3, 3, 3))
    for a, (i, j) in enumerate(pair):
        for b, (k, l) in enumerate(pair):
            for p, q in {(i, j), (j, i)}:
                for r, t in {(k, l), (l, k)}:
                    full[p, q, r, t] = c[a, b]
    return full


def turned(c, axes):
    """C in the axes of the box; the rows of axes are the material's directions 1, 2, 3."""
    return np.einsum("ai,bj,ck,dl,abcd->ijkl", axes, axes, axes, axes, c)


# Direction 1 runs along the box, 2 round it, 3 outward.
DECK = np.array([[1, 0, 0], [0, 1, 0], [0, 0, 1]], float)
FLANK = np.array([[1, 0, 0], [0, 0, -1], [0, 1, 0]], float)


def steps(a, b, n, grade=1.0):
    """Places from a (with) to b (without) in n steps, each shorter than the one before; the first is grade times the last."""
    sizes = grade ** (-np.arange(n) / max(1, n - 1))
    return list(a + (b - a) * np.concatenate([[0], np.cumsum(sizes)[:-1]]) / sum(sizes)) if n else []


def box(q):
    b, h, length = q["width"], q["height"], q["length"]
    layers = q["layers"]
    thickness = sum(l["thickness"] for l in layers)
    n = q["cells"]
    hole = q.get("hole")
    # Distances along the half box, along the half deck and down the half flank; a line at each edge of the hole.
    if hole:
        edge = q["grade"]
        xs = steps(0, hole["x"] / 2, n["hole x"], edge) + steps(hole["x"] / 2, length / 2, n["x"], 1 / edge) + [length / 2]
        ys = steps(0, hole["y"] / 2, n["hole y"], edge) + steps(hole["y"] / 2, b / 2, n["y"], q["grade"]) + [b / 2]
    else:
        xs = steps(0, length / 2, n["hole x"] + n["x"]) + [length / 2]
        ys = steps(0, b / 2, n["hole y"] + n["y"], q["grade"]) + [b / 2]
    zs = (steps(0, h / 2, n["z"], q["grade"]) + [h / 2])[::-1]
    # Heights over the middle surface, outside first, and the layer each cell belongs to.
    heights, owner = [thickness / 2], []
    for k, layer in enumerate(layers):
        top = heights[-1]
        for i in range(layer["cells"]):
            heights.append(top - layer["thickness"] * (i + 1) / layer["cells"])
            owner.append(k)
    straight = hole["y"] / 2 if hole else 0

    def point(j, height):
        """Node j on the way round, at a height over the middle surface."""
        if j < len(ys):
            share = max(0.0, ys[j] - straight) / (b / 2 - straight)
            return ys[j] + share * height, h / 2 + height
        z = zs[j - len(ys) + 1]
        return b / 2 + height, z + z / (h / 2) * height

    round_ = len(ys) + len(zs) - 1
    mesh = gf.Mesh("empty", 3)
    brick = gf.GeoTrans("GT_QK(3,1)")
    cells = {}
    for i in range(len(xs) - 1):
        for j in range(round_ - 1):
            deck = j < len(ys) - 1
            if hole and deck and ys[j + 1] <= straight * (1 + 1e-9) and xs[i + 1] <= hole["x"] / 2 * (1 + 1e-9):
                continue
            for k in range(len(owner)):
                corners = [
                    (xs[i + u], *point(j + v, heights[k + w])) for w in (0, 1) for v in (0, 1) for u in (0, 1)
                ]
                cv = int(mesh.add_convex(brick, np.array(corners).T)[0])
                cells.setdefault((owner[k], deck), []).append(cv)
    regions = {}
    for number, (key, ids) in enumerate(sorted(cells.items()), start=1):
        mesh.set_region(number, np.array([ids, [-1] * len(ids)]))
        regions[key] = number

    def faces(condition):
        ids = mesh.pid()[condition(mesh.pts())]
        return mesh.faces_from_pid(ids)

    tiny = 1e-9
    planes = {
        101: lambda p: abs(p[0]) < tiny,
        102: lambda p: abs(p[1]) < tiny,
        103: lambda p: abs(p[2]) < tiny,
        104: lambda p: abs(p[0] - length / 2) < tiny,
    }
    for number, condition in planes.items():
        mesh.set_region(number, faces(condition))

    field = gf.MeshFem(mesh, 3)
    field.set_fem(gf.Fem("FEM_QK(3,%d)" % q["degree"]))
    rule = gf.MeshIm(mesh, gf.Integ("IM_GAUSS_PARALLELEPIPED(3,%d)" % (2 * q["degree"] + 1)))
    model = gf.Model("real")
    model.add_fem_variable("u", field)
    for (layer, deck), number in regions.items():
        c = turned(stiffness(layers[layer]), DECK if deck else FLANK)
        name = "C%d" % number
        model.add_initialized_data(name, c.flatten("F"), [3, 3, 3, 3])
        model.add_linear_term(rule, "(%s:Sym(Grad_u)):Grad_Test_u" % name, number)

    # Unknowns on the planes are given, the rest follow: K_ff u_f = -K_fg u_g.
    model.assembly("build_matrix")
    k = model.tangent_matrix()
    place = field.basic_dof_nodes()
    component = np.arange(field.nbdof()) % 3
    given = np.zeros(field.nbdof(), bool)
    u = np.zeros(field.nbdof())

    def hold(region, components):
        dofs = np.asarray(field.basic_dof_on_region(region))
        chosen = dofs[np.isin(component[dofs], components)]
        given[chosen] = True
        return chosen

    end = hold(104, (0, 1, 2) if q["warping"] == "held" else (1, 2))
    u[end] = np.where(component[end] == 1, -place[2, end], np.where(component[end] == 2, place[1, end], 0.0))
    hold(101, (1, 2))
    hold(102, (0, 2))
    hold(103, (0, 1))
    free = np.flatnonzero(~given)
    right = -k.mult(u)[free]
    start = time.time()
    u[free] = np.ravel(gf.linsolve_mumps(gf.Spmat("copy", k, free, free), right))
    # Half the box turns by 1 rad against its middle, the other half as much the other way: couple C, work C/2 a half,
    # made of four eighths. Stiffness is couple over the turn of one end against the other, 2 rad.
    couple = 4 * np.dot(u, k.mult(u))
    return {
        "stiffness": couple / 2,
        "unknowns": int(field.nbdof()),
        "cells": int(mesh.nbcvs()),
        "seconds": time.time() - start,
    }


if __name__ == "__main__":
    gf.util_trace_level(0)
    json.dump([box(q) for q in json.load(sys.stdin)], sys.stdout)
