// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import { open } from "../../main/web/binary";
import { cast, displaced, middle, triangles, type Tub } from "../../main/web/geometry";

/** A unit square in the plane z = 0 beside a triangle, and the same square one metre above. */
function little(): Tub {
  const nodes = new Float32Array([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 2, 0, 0, 0, 0, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1]);
  const corners = new Int32Array([0, 1, 2, 3, 1, 4, 2, -1, 5, 6, 7, 8]);
  return {
    view: { regions: [] } as unknown as Tub["view"],
    nodes,
    corners,
    normals: new Float32Array(36).map((_, i) => (i % 3 === 2 ? 1 : 0)),
    directions: new Float32Array(9),
    regions: new Int32Array(3),
    edges: new Int32Array(0),
    elements: 3,
    low: [0, 0, 0],
    high: [2, 1, 1],
  };
}

const down = [0, 0, -1] as const;

describe("geometry", () => {
  it("makes two triangles of a quadrilateral, one of a triangle, none of what is hidden", () => {
    expect(triangles(little(), () => true).elements).toHaveLength(5);
    expect([...triangles(little(), (e) => e === 1).elements]).toEqual([1]);
  });

  it("stores a corner once for each element and winds every triangle the way its element is wound", () => {
    const shape = triangles(little(), () => true);
    expect(shape.nodes).toHaveLength(4 + 3 + 4);
    expect([...shape.owners]).toEqual([0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2]);
    expect([...shape.corners].map((c) => shape.nodes[c]).slice(0, 9)).toEqual([0, 1, 2, 0, 2, 3, 1, 4, 2]);
    expect([...shape.elements]).toEqual([0, 0, 1, 2, 2]);
  });

  it("picks what lies nearest to the eye", () => {
    const shape = triangles(little(), () => true);
    const hit = cast(shape, [0.4, 0.3, 5], down);
    expect(hit?.element).toBe(2);
    expect(hit?.place[2]).toBeCloseTo(1);
    expect(cast(shape, [1.2, 0.1, 5], down)?.element).toBe(1);
    expect(cast(shape, [3, 3, 5], down)).toBeUndefined();
  });

  it("picks through what is cut away or hidden", () => {
    const all = triangles(little(), () => true);
    expect(cast(all, [0.4, 0.3, 5], down, { axis: 2, at: 0.5, beyond: true })?.element).toBe(0);
    expect(cast(triangles(little(), (e) => e !== 2), [0.4, 0.3, 5], down)?.element).toBe(0);
  });

  it("moves points by so many times their displacement", () => {
    const tub = little();
    const points = new Float32Array(6);
    const u = new Float32Array(tub.nodes.length).fill(0.5);
    displaced(points, new Int32Array([1, 8]), tub.nodes, u, 2);
    expect([...points]).toEqual([2, 1, 1, 1, 2, 2]);
  });

  it("finds the middle of an element", () => {
    expect(middle(little(), 0)).toEqual([0.5, 0.5, 0]);
  });
});

describe("documents with arrays", () => {
  const written = (head: object, numbers: number[]): ArrayBuffer => {
    const text = JSON.stringify(head);
    const length = Math.ceil(text.length / 8) * 8;
    const buffer = new ArrayBuffer(8 + length + 4 * numbers.length);
    new Uint8Array(buffer).set(new TextEncoder().encode("TWB1"));
    new DataView(buffer).setUint32(4, length, true);
    new Uint8Array(buffer).set(new TextEncoder().encode(text.padEnd(length)), 8);
    numbers.forEach((n, i) => new DataView(buffer).setFloat32(8 + length + 4 * i, n, true));
    return buffer;
  };

  it("are read without copying a number", () => {
    const buffer = written({ document: { a: 1 }, arrays: [{ name: "x", type: "FLOAT32", count: 2, offset: 4 }] }, [7, 8, 9]);
    const parcel = open<{ a: number }>(buffer);
    expect(parcel.document.a).toBe(1);
    expect([...parcel.floats("x")]).toEqual([8, 9]);
    expect(parcel.floats("x").buffer).toBe(buffer);
  });

  it("are refused when they are something else", () => {
    expect(() => open(new ArrayBuffer(4))).toThrow();
    expect(() => open(written({ document: {}, arrays: [] }, [])).floats("y")).toThrow(/no array y/);
  });
});
