// SPDX-License-Identifier: Apache-2.0
import { area, type Segments, type Triangles, type Tub } from "./geometry";

/** About so many quadrilaterals a machine without a graphics processor draws smoothly. */
const ENOUGH = 7000;

/** Size of the cells within which one node stands in for all, m; none where the tub is light enough as it is. */
export function cellOf(tub: Tub): number | undefined {
  if (tub.elements < 1.5 * ENOUGH) return undefined;
  let all = 0;
  for (let e = 0; e < tub.elements; e++) all += area(tub, e);
  return Math.sqrt(all / ENOUGH);
}

/**
 * For each node the one that stands in for it while the tub moves: one for each cell of a grid (Rossignac and Borrel 1993),
 * and of those in a cell one on the boldest edge, so that creases and rims stay where they are.
 */
export function standIns(tub: Tub, cell: number): Int32Array {
  const count = tub.nodes.length / 3;
  const rank = new Uint8Array(count).fill(255);
  for (let i = 0; i < tub.edges.length; i += 4) {
    for (const node of [tub.edges[i], tub.edges[i + 1]]) rank[node] = Math.min(rank[node], tub.edges[i + 2]);
  }
  const cells = new Map<number, number>();
  const keys = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    const [x, y, z] = [0, 1, 2].map((i) => Math.floor((tub.nodes[3 * n + i] - tub.low[i]) / cell));
    keys[n] = x + 4096 * (y + 4096 * z);
    const best = cells.get(keys[n]);
    if (best === undefined || rank[n] < rank[best]) cells.set(keys[n], n);
  }
  return Int32Array.from(keys, (key) => cells.get(key)!);
}

/** The triangles that stay when every node is where its stand-in is. */
export function coarsened(tub: Tub, shows: (element: number) => boolean, standIn: Int32Array): Triangles {
  const nodes: number[] = [];
  const owners: number[] = [];
  const normals: number[] = [];
  const corners: number[] = [];
  const elements: number[] = [];
  for (let e = 0; e < tub.elements; e++) {
    if (!shows(e)) continue;
    const n = tub.corners[4 * e + 3] < 0 ? 3 : 4;
    const at = [0, 1, 2, 3].slice(0, n).map((k) => standIn[tub.corners[4 * e + k]]);
    const first = nodes.length;
    let kept = false;
    for (let k = 2; k < n; k++) {
      const [a, b, c] = [at[0], at[k - 1], at[k]];
      if (a === b || b === c || a === c) continue;
      corners.push(first, first + k - 1, first + k);
      elements.push(e);
      kept = true;
    }
    if (!kept) continue;
    for (let k = 0; k < n; k++) {
      nodes.push(at[k]);
      owners.push(e);
      for (let i = 0; i < 3; i++) normals.push(tub.normals[12 * e + 3 * k + i]);
    }
  }
  return {
    points: new Float32Array(3 * nodes.length),
    normals: new Float32Array(normals),
    nodes: new Int32Array(nodes),
    owners: new Int32Array(owners),
    corners: new Uint32Array(corners),
    elements: new Int32Array(elements),
  };
}

/** The edges that stay, each once. */
export function fewer(segments: Segments, standIn: Int32Array): Segments {
  const nodes: number[] = [];
  const kinds: number[] = [];
  const had = new Set<number>();
  for (let i = 0; i < segments.kinds.length; i++) {
    const [a, b] = [standIn[segments.nodes[2 * i]], standIn[segments.nodes[2 * i + 1]]];
    const key = Math.min(a, b) * 2 ** 26 + Math.max(a, b);
    if (a === b || had.has(key)) continue;
    had.add(key);
    nodes.push(a, b);
    kinds.push(segments.kinds[i]);
  }
  return { nodes: new Int32Array(nodes), kinds: new Uint8Array(kinds) };
}
