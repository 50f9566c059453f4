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

/** Triangles with corners of their own, so that every element can have a colour and every crease stays sharp. */
export interface Triangles {
  points: Float32Array;
  normals: Float32Array;
  /** Node of each point. */
  nodes: Int32Array;
  /** Element of each triangle. */
  elements: Int32Array;
}

/** The triangles of the elements that are shown. */
export function triangles(tub: Tub, shows: (element: number) => boolean): Triangles {
  let count = 0;
  for (let e = 0; e < tub.elements; e++) if (shows(e)) count += tub.corners[4 * e + 3] < 0 ? 1 : 2;
  const result: Triangles = {
    points: new Float32Array(9 * count),
    normals: new Float32Array(9 * count),
    nodes: new Int32Array(3 * count),
    elements: new Int32Array(count),
  };
  let t = 0;
  const put = (e: number, corners: readonly [number, number, number]) => {
    result.elements[t] = e;
    for (let k = 0; k < 3; k++) {
      const node = tub.corners[4 * e + corners[k]];
      result.nodes[3 * t + k] = node;
      for (let i = 0; i < 3; i++) {
        result.points[9 * t + 3 * k + i] = tub.nodes[3 * node + i];
        result.normals[9 * t + 3 * k + i] = tub.normals[12 * e + 3 * corners[k] + i];
      }
    }
    t++;
  };
  for (let e = 0; e < tub.elements; e++) {
    if (!shows(e)) continue;
    put(e, [0, 1, 2]);
    if (tub.corners[4 * e + 3] >= 0) put(e, [0, 2, 3]);
  }
  return result;
}

/** Moves points by a share of a displacement. */
export function displaced(points: Float32Array, nodes: Int32Array, at: Float32Array, u: Float32Array, scale: number): void {
  for (let p = 0; p < nodes.length; p++) {
    const n = 3 * nodes[p];
    for (let i = 0; i < 3; i++) points[3 * p + i] = at[n + i] + scale * u[n + i];
  }
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
    const i = 9 * t;
    const ax = p[i + 3] - p[i], ay = p[i + 4] - p[i + 1], az = p[i + 5] - p[i + 2];
    const bx = p[i + 6] - p[i], by = p[i + 7] - p[i + 1], bz = p[i + 8] - p[i + 2];
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
