// SPDX-License-Identifier: Apache-2.0
import type { TubView } from "./ask";
import type { Parcel } from "./binary";

export type Vector = readonly [number, number, number];

/** A tub's mesh as it came. */
export interface Tub {
  view: TubView;
  nodes: Float32Array;
  corners: Int32Array;
  normals: Float32Array;
  directions: Float32Array;
  regions: Int32Array;
  /** Two nodes, kind, element beside it. */
  edges: Int32Array;
  elements: number;
  low: Vector;
  high: Vector;
}

/** Takes a tub out of its parcel. */
export function tubOf(parcel: Parcel<TubView>): Tub {
  const nodes = parcel.floats("nodes");
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < nodes.length; i++) {
    low[i % 3] = Math.min(low[i % 3], nodes[i]);
    high[i % 3] = Math.max(high[i % 3], nodes[i]);
  }
  const corners = parcel.ints("corners");
  return {
    view: parcel.document,
    nodes,
    corners,
    normals: parcel.floats("normals"),
    directions: parcel.floats("directions"),
    regions: parcel.ints("regions"),
    edges: parcel.ints("edges"),
    elements: corners.length / 4,
    low,
    high,
  };
}

/**
 * Triangles on the corners of elements. A corner is stored once for each element, however many of its triangles meet there,
 * and never shared between elements, so that every element can have a colour and every crease stays sharp.
 */
export interface Triangles {
  points: Float32Array;
  normals: Float32Array;
  /** Node of each point. */
  nodes: Int32Array;
  /** Element of each point. */
  owners: Int32Array;
  /** Three points of each triangle. */
  corners: Uint32Array;
  /** Element of each triangle. */
  elements: Int32Array;
}

/** The triangles of the elements that are shown. */
export function triangles(tub: Tub, shows: (element: number) => boolean): Triangles {
  let triangles = 0;
  let points = 0;
  for (let e = 0; e < tub.elements; e++) {
    if (!shows(e)) continue;
    const quadrilateral = tub.corners[4 * e + 3] >= 0;
    triangles += quadrilateral ? 2 : 1;
    points += quadrilateral ? 4 : 3;
  }
  const result: Triangles = {
    points: new Float32Array(3 * points),
    normals: new Float32Array(3 * points),
    nodes: new Int32Array(points),
    owners: new Int32Array(points),
    corners: new Uint32Array(3 * triangles),
    elements: new Int32Array(triangles),
  };
  let p = 0;
  let t = 0;
  for (let e = 0; e < tub.elements; e++) {
    if (!shows(e)) continue;
    const n = tub.corners[4 * e + 3] < 0 ? 3 : 4;
    for (let k = 0; k < n; k++) {
      const node = tub.corners[4 * e + k];
      result.nodes[p + k] = node;
      result.owners[p + k] = e;
      for (let i = 0; i < 3; i++) {
        result.points[3 * (p + k) + i] = tub.nodes[3 * node + i];
        result.normals[3 * (p + k) + i] = tub.normals[12 * e + 3 * k + i];
      }
    }
    for (let k = 2; k < n; k++) {
      result.corners.set([p, p + k - 1, p + k], 3 * t);
      result.elements[t] = e;
      t++;
    }
    p += n;
  }
  return result;
}

/** Edges as they are drawn: two nodes each, and the rank of its kind, 0 boldest. */
export interface Segments {
  nodes: Int32Array;
  kinds: Uint8Array;
}

/** The edges beside elements that are shown. */
export function segments(tub: Tub, shows: (element: number) => boolean): Segments {
  const nodes: number[] = [];
  const kinds: number[] = [];
  for (let i = 0; i < tub.edges.length; i += 4) {
    if (!shows(tub.edges[i + 3])) continue;
    nodes.push(tub.edges[i], tub.edges[i + 1]);
    kinds.push(tub.edges[i + 2]);
  }
  return { nodes: new Int32Array(nodes), kinds: new Uint8Array(kinds) };
}

/** Moves points by a share of a displacement. */
export function displaced(points: Float32Array, nodes: Int32Array, at: Float32Array, u: Float32Array, scale: number): void {
  for (let p = 0; p < nodes.length; p++) {
    const n = 3 * nodes[p];
    for (let i = 0; i < 3; i++) points[3 * p + i] = at[n + i] + scale * u[n + i];
  }
}

/** Area of an element, m². */
export function area(tub: Tub, e: number): number {
  const at = (k: number) => {
    const n = tub.corners[4 * e + k];
    return [tub.nodes[3 * n], tub.nodes[3 * n + 1], tub.nodes[3 * n + 2]];
  };
  const triangle = tub.corners[4 * e + 3] < 0;
  const [a, b, c] = [at(0), at(1), at(2)];
  const d = triangle ? a : at(3);
  const p = c.map((v, i) => v - a[i]);
  const q = d.map((v, i) => v - b[i]);
  return 0.5 * Math.hypot(p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]);
}

/** Middle of an element. */
export function middle(tub: Tub, element: number): Vector {
  const sum = [0, 0, 0];
  let n = 0;
  for (let k = 0; k < 4; k++) {
    const node = tub.corners[4 * element + k];
    if (node < 0) continue;
    n++;
    for (let i = 0; i < 3; i++) sum[i] += tub.nodes[3 * node + i];
  }
  return [sum[0] / n, sum[1] / n, sum[2] / n];
}

/** What is cut away: everything on one side of a plane square to an axis. */
export interface Cut {
  axis: 0 | 1 | 2;
  at: number;
  /** Whether what lies beyond is taken away, or what lies before. */
  beyond: boolean;
}

/** What a ray met. */
export interface Hit {
  element: number;
  place: Vector;
}

/**
 * The first triangle that a ray meets, of those not cut away (Möller and Trumbore 1997). Both sides count: an inside is
 * looked at as often as an outside.
 */
export function cast(shape: Triangles, from: Vector, along: Vector, cut?: Cut): Hit | undefined {
  let nearest = Infinity;
  let best = -1;
  const p = shape.points;
  for (let t = 0; t < shape.elements.length; t++) {
    const i = 3 * shape.corners[3 * t], j = 3 * shape.corners[3 * t + 1], k = 3 * shape.corners[3 * t + 2];
    const ax = p[j] - p[i], ay = p[j + 1] - p[i + 1], az = p[j + 2] - p[i + 2];
    const bx = p[k] - p[i], by = p[k + 1] - p[i + 1], bz = p[k + 2] - p[i + 2];
    const qx = along[1] * bz - along[2] * by, qy = along[2] * bx - along[0] * bz, qz = along[0] * by - along[1] * bx;
    const det = ax * qx + ay * qy + az * qz;
    if (Math.abs(det) < 1e-14) continue;
    const sx = from[0] - p[i], sy = from[1] - p[i + 1], sz = from[2] - p[i + 2];
    const u = (sx * qx + sy * qy + sz * qz) / det;
    if (u < 0 || u > 1) continue;
    const rx = sy * az - sz * ay, ry = sz * ax - sx * az, rz = sx * ay - sy * ax;
    const v = (along[0] * rx + along[1] * ry + along[2] * rz) / det;
    if (v < 0 || u + v > 1) continue;
    const distance = (bx * rx + by * ry + bz * rz) / det;
    if (distance <= 0 || distance >= nearest) continue;
    if (cut) {
      const x = from[cut.axis] + distance * along[cut.axis];
      if (cut.beyond ? x > cut.at : x < cut.at) continue;
    }
    nearest = distance;
    best = t;
  }
  if (best < 0) return undefined;
  return {
    element: shape.elements[best],
    place: [from[0] + nearest * along[0], from[1] + nearest * along[1], from[2] + nearest * along[2]],
  };
}
