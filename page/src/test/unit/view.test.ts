// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import { eyeOf, fitted, moved, nearer, ray, rightOf, rulerOf, SIDES, turned, upOf, type View } from "../../main/web/view";

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((s, v, i) => s + v * b[i], 0);
const view = (turn: number, rise: number): View => ({ turn, rise, focus: [1, 0.2, 0.3], scale: 300 });

describe("view", () => {
  it("keeps right, up and eye square to each other", () => {
    for (const turn of [-170, -33, 0, 32, 90, 180]) {
      for (const rise of [-90, -20, 0, 24, 90]) {
        const [r, u, e] = [rightOf, upOf, eyeOf].map((f) => f(view(turn, rise)));
        expect(dot(r, u)).toBeCloseTo(0, 12);
        expect(dot(r, e)).toBeCloseTo(0, 12);
        expect(dot(u, e)).toBeCloseTo(0, 12);
        for (const v of [r, u, e]) expect(dot(v, v)).toBeCloseTo(1, 12);
      }
    }
  });

  it("sees the left side with the nose to the left, and from the front the right-hand side on the left", () => {
    expect(rightOf(view(SIDES.left.turn, 0))[0]).toBeCloseTo(1);
    expect(eyeOf(view(SIDES.left.turn, 0))[1]).toBeCloseTo(-1);
    expect(eyeOf(view(SIDES.front.turn, 0))[0]).toBeCloseTo(-1);
    expect(rightOf(view(SIDES.front.turn, 0))[1]).toBeCloseTo(-1);
  });

  it("puts a station under the tub where the tub itself shows it, from whatever side", () => {
    for (const turn of [-50, 0, 32, 160]) {
      const v = view(turn, 30);
      const ruler = rulerOf(v)!;
      // A point of the centre plane, projected by hand onto the screen's right.
      const point = [1.7, 0, 0.5];
      const across = dot(point.map((p, i) => p - v.focus[i]), rightOf(v)) * v.scale;
      expect(ruler.at(1.7)).toBeCloseTo(across, 9);
      expect(ruler.station(across)).toBeCloseTo(1.7, 12);
    }
  });

  it("gives no ruler when the tub is seen end on", () => {
    expect(rulerOf(view(90, 0))).toBeUndefined();
  });

  it("shoots a ray that comes back to its pixel", () => {
    const v = view(40, 25);
    const { from, along } = ray(v, 120, -70);
    const end = from.map((f, i) => f + 50 * along[i] - v.focus[i]);
    expect(dot(end, rightOf(v)) * v.scale).toBeCloseTo(120, 6);
    expect(dot(end, upOf(v)) * v.scale).toBeCloseTo(-70, 6);
  });

  it("shows the whole of a box", () => {
    const v = fitted(SIDES.left, [0, -0.3, 0], [2.25, 0.3, 0.6], 800, 400);
    expect(2.25 * v.scale).toBeLessThanOrEqual(800);
    expect(0.6 * v.scale).toBeLessThanOrEqual(400);
  });

  it("never turns head over heels, and moves what is dragged with the hand", () => {
    expect(turned(view(0, 80), 0, 100).rise).toBe(90);
    expect(turned(view(170, 0), 100, 0).turn).toBeCloseTo(-150);
    const before = view(0, 0);
    const after = moved(before, 30, 0);
    expect((before.focus[0] - after.focus[0]) * before.scale).toBeCloseTo(30);
    expect(nearer(before, 2).scale).toBe(600);
  });
});
