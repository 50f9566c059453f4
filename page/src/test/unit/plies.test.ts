// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import type { LayerView, OwnerView } from "../../main/web/ask";
import { paired } from "../../main/web/plies";
import { layerName } from "../../main/web/stack";
import { ticks } from "../../main/web/scale";

const layer = (kind: LayerView["kind"], degrees = 0): LayerView => ({ material: "m", kind, degrees, thickness: 2e-4 });
const owner = (symmetric: boolean): OwnerView => ({
  name: "flank",
  patch: false,
  area: 1,
  symmetric,
  stack: {
    code: "[45c/0c/core/0c/45c]",
    thickness: 0.02,
    arealMass: 3,
    layers: [layer("CLOTH", 45), layer("CLOTH"), layer("HONEYCOMB"), layer("CLOTH"), layer("CLOTH", 45)],
  },
});

describe("plies", () => {
  it("change in both skins together, when the stack is symmetric and that is wanted", () => {
    expect(paired(owner(true), 2, { count: 0 }, true).map((c) => c.place)).toEqual([2, 4]);
    expect(paired(owner(true), 2, { count: 0 }, false).map((c) => c.place)).toEqual([2]);
    expect(paired(owner(false), 2, { count: 0 }, true).map((c) => c.place)).toEqual([2]);
    expect(paired(owner(true), 3, { thickness: 0.015 }, true).map((c) => c.place)).toEqual([3]);
  });

  it("are called what a laminator calls them", () => {
    expect(layerName(layer("CLOTH", -45))).toBe("−45° cloth");
    expect(layerName(layer("TAPE", 90))).toBe("90° tape");
    expect(layerName(layer("HONEYCOMB"))).toBe("honeycomb core");
  });
});

describe("the chart's scale", () => {
  it("has a few round values", () => {
    expect(ticks(0, 0.1).map((t) => Number(t.toFixed(6)))).toEqual([0, 0.05, 0.1]);
    expect(ticks(0, 7)).toEqual([0, 2, 4, 6]);
    expect(ticks(-2, 7)).toEqual([0, 5]);
  });
});
