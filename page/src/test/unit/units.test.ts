// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from "vitest";
import { between, figure, full, shown, typed } from "../../main/web/units";

describe("units", () => {
  it("shows torsional stiffness per degree: 572 957.795 N·m/rad is 10 kN·m/deg", () => {
    expect(shown(572957.7951308233, "twist", "SI")).toBeCloseTo(10_000, 6);
  });

  it("knows that one pound-force foot is 1.355817948 N·m and a pound 0.45359237 kg (NIST SP 811, 2008, App. B.8)", () => {
    expect(typed(1, "torque", "inch-pound")).toBeCloseTo(1.3558179483, 9);
    expect(typed(1, "mass", "inch-pound")).toBe(0.45359237);
    expect(typed(1, "length", "inch-pound")).toBe(0.0254);
    // 1 lb/ft² = 4.882428 kg/m², 1 lbf/in = 175.1268 N/m (ibid.)
    expect(typed(1, "arealMass", "inch-pound")).toBeCloseTo(4.882428, 5);
    expect(typed(1, "bend", "inch-pound")).toBeCloseTo(175.1268, 3);
  });

  it("gives back what was typed whatever the unit shown", () => {
    for (const units of ["SI", "inch-pound"] as const) {
      expect(typed(shown(0.0125, "length", units), "length", units)).toBeCloseTo(0.0125, 15);
    }
  });

  it("groups digits as ISO 80000-1 allows: four stay together", () => {
    expect(figure(1234, 4)).toBe("1234");
    expect(figure(12345, 5)).toBe("12\u202f345");
    expect(figure(-0.04567, 2)).toBe("−0.046");
    expect(figure(-0.0, 3)).not.toContain("−");
    expect(figure(Number.NaN)).toBe("–");
  });

  it("never cuts whole digits", () => {
    expect(figure(12762.4, 3)).toBe("12\u202f762");
  });

  it("shows bounds as far as they agree", () => {
    expect(between(599200.378, 599214.373, "twist", "SI")).toMatch(/^10.458\.\d ± 0\.1\d$/);
    expect(between(600000, 600000, "twist", "SI")).not.toContain("±");
  });

  it("puts the unit behind", () => {
    expect(full(19.8064, "mass", "SI")).toBe("19.81 kg");
    expect(full(19.8064, "mass", "inch-pound")).toBe("43.67 lb");
  });
});
