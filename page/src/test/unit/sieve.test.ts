// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import type { StudyView } from "../../main/web/ask";
import { designs, passes, sifted, span, walk, type Sieve } from "../../main/web/sieve";

const study: StudyView = {
  name: "narrow",
  about: "",
  current: true,
  complete: true,
  axes: [
    { name: "given back", unit: "mm", varied: true, words: [] },
    { name: "mass", unit: "kg", varied: false, words: [] },
  ],
  variants: [
    {
      variant: "as designed",
      points: [
        { numbers: [0, 20], unbeaten: true, reason: "" },
        { numbers: [40, 21], unbeaten: false, reason: "" },
        { numbers: [500], unbeaten: false, reason: "no tub" },
      ],
    },
    { variant: "aluminium", points: [{ numbers: [0, 30], unbeaten: false, reason: "" }] },
  ],
};

describe("a study's designs", () => {
  const all = designs(study);

  it("are those that could be computed, each with where it comes from", () => {
    expect(all.map((d) => [d.variant, d.point])).toEqual([[0, 0], [0, 1], [1, 0]]);
  });

  it("pass where they lie within every range, ends included", () => {
    const sieve: Sieve = sifted(sifted(new Map(), 0, [40, 0]), 1, [20.5, 30]);
    expect(all.map((d) => passes(d, sieve))).toEqual([false, true, true]);
    expect(all.every((d) => passes(d, sifted(sifted(sieve, 0, undefined), 1, undefined)))).toBe(true);
  });

  it("span an axis that has a width even where all are the same", () => {
    expect(span(all, 1)).toEqual([20, 30]);
    const [low, high] = span([all[0]], 1);
    expect(low).toBeLessThan(20);
    expect(high).toBeGreaterThan(20);
    expect(span([], 0)).toEqual([0, 1]);
  });

  it("are a walk where one number alone is varied", () => {
    expect(walk(study)).toBe(0);
    expect(walk({ ...study, axes: study.axes.map((a) => ({ ...a, varied: true })) })).toBeUndefined();
  });
});
