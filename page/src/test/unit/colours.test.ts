// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import { EMBER, kindColour, lightness, oklch } from "../../main/web/colours";

describe("colours", () => {
  it("agree with the published matrices of OKLab at white and at sRGB red (Ottosson 2020)", () => {
    expect(lightness([255, 255, 255])).toBeCloseTo(1, 4);
    // Red in OKLab: L 0.62796, C 0.25768, h 29.234 degrees (CSS Color Module Level 4, sample conversions).
    expect(lightness([255, 0, 0])).toBeCloseTo(0.628, 3);
    expect(oklch(0.62796, 0.25768, 29.234)).toEqual([255, 0, 0]);
  });

  it("of the ramp darken evenly, so that every colour vision and a grey print read it", () => {
    for (let i = 1; i < EMBER.length; i++) {
      expect(lightness(EMBER[i])).toBeLessThan(lightness(EMBER[i - 1]) + 0.006);
    }
    const quarter = lightness(EMBER[64]) - lightness(EMBER[128]);
    const next = lightness(EMBER[128]) - lightness(EMBER[192]);
    expect(Math.abs(quarter / next - 1)).toBeLessThan(0.1);
  });

  it("of neighbouring kinds differ in lightness too", () => {
    for (let i = 1; i < 12; i++) {
      expect(Math.abs(lightness(kindColour(i)) - lightness(kindColour(i - 1)))).toBeGreaterThan(0.05);
    }
  });
});
