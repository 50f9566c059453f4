// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import { area, segments, type Tub } from "../../main/web/geometry";
import { Pace } from "../../main/web/pace";
import { cellOf, coarsened, fewer, standIns } from "../../main/web/standin";
import { spread } from "../../main/web/strokes";

/** A plate of n × n squares in the plane z = 0, one metre wide, with its rim drawn. */
function plate(n: number): Tub {
  const nodes: number[] = [];
  const corners: number[] = [];
  const edges: number[] = [];
  const at = (i: number, j: number) => j * (n + 1) + i;
  for (let j = 0; j <= n; j++) for (let i = 0; i <= n; i++) nodes.push(i / n, j / n, 0);
  for (let j = 0; j < n; j++) for (let i = 0; i < n; i++) corners.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
  for (let i = 0; i < n; i++) edges.push(at(i, 0), at(i + 1, 0), 0, i, at(i, n), at(i + 1, n), 0, n * (n - 1) + i);
  return {
    view: { regions: [] } as unknown as Tub["view"],
    nodes: new Float32Array(nodes),
    corners: new Int32Array(corners),
    normals: new Float32Array(12 * n * n).map((_, i) => (i % 3 === 2 ? 1 : 0)),
    directions: new Float32Array(3 * n * n).map((_, i) => (i % 3 === 0 ? 1 : 0)),
    regions: new Int32Array(n * n),
    edges: new Int32Array(edges),
    elements: n * n,
    low: [0, 0, 0],
    high: [1, 1, 0],
  };
}

const all = () => true;

describe("what stands in for a tub while it moves", () => {
  it("is not needed for a light one", () => {
    expect(cellOf(plate(20))).toBeUndefined();
  });

  it("has a fraction of the triangles of a heavy one and leaves no hole in it", () => {
    const tub = plate(240);
    const nodes = standIns(tub, cellOf(tub)!);
    const light = coarsened(tub, all, nodes);
    expect(light.elements.length).toBeLessThan(20_000);
    // Its triangles, each with its sign, cover what lies within its own outline once.
    const x = (c: number) => tub.nodes[3 * light.nodes[light.corners[c]]];
    const y = (c: number) => tub.nodes[3 * light.nodes[light.corners[c]] + 1];
    let sum = 0;
    for (let t = 0; t < 3 * light.elements.length; t += 3) {
      const twice = (x(t + 1) - x(t)) * (y(t + 2) - y(t)) - (x(t + 2) - x(t)) * (y(t + 1) - y(t));
      expect(twice).toBeGreaterThanOrEqual(-1e-9);
      sum += twice / 2;
    }
    expect(sum).toBeGreaterThan(0.95);
    expect(sum).toBeLessThanOrEqual(1 + 1e-6);
  });

  it("keeps rims where they are, and each of their edges once", () => {
    const tub = plate(240);
    const nodes = standIns(tub, cellOf(tub)!);
    const rim = fewer(segments(tub, all), nodes);
    expect(rim.kinds.length).toBeGreaterThan(100);
    for (const n of rim.nodes) expect([0, 1]).toContain(tub.nodes[3 * n + 1]);
    const pairs = new Set(Array.from(rim.kinds, (_, k) => [rim.nodes[2 * k], rim.nodes[2 * k + 1]].sort().join()));
    expect(pairs.size).toBe(rim.kinds.length);
  });

  it("leaves out what is hidden", () => {
    const tub = plate(240);
    const nodes = standIns(tub, cellOf(tub)!);
    const left = coarsened(tub, (e) => e % 240 < 120, nodes);
    for (const e of left.elements) expect(e % 240).toBeLessThan(120);
  });
});

describe("strokes", () => {
  it("stand on every element of a coarse mesh, and as far apart as can be seen on a fine one", () => {
    expect(spread(plate(10), all, 4000).elements).toHaveLength(100);
    const fine = spread(plate(240), all, 4000);
    expect(fine.elements.length).toBeLessThanOrEqual(4100);
    expect(fine.elements.length).toBeGreaterThan(3000);
    expect(fine.length).toBeCloseTo(Math.sqrt(1 / 4000), 6);
    expect(area(plate(10), 7)).toBeCloseTo(0.01, 6);
  });
});

describe("the pace", () => {
  it("draws all of it where that is quick", () => {
    const pace = new Pace();
    for (let i = 0; i < 20; i++) pace.moving(8);
    pace.still(9, true);
    expect(pace.effort).toBe("whole");
  });

  it("draws less while the tub moves where a whole picture takes long, and less again where that is not enough", () => {
    const pace = new Pace();
    pace.still(300, false);
    expect(pace.effort).toBe("light");
    for (let i = 0; i < 5; i++) pace.moving(70);
    expect(pace.effort).toBe("least");
    for (let i = 0; i < 5; i++) pace.moving(6);
    expect(pace.effort).toBe("light");
  });

  it("takes back a judgement that the first picture's preparations led it to", () => {
    const pace = new Pace();
    pace.still(120, false);
    expect(pace.effort).toBe("light");
    pace.still(6, true);
    expect(pace.effort).toBe("whole");
  });
});
