// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import static tubwright.engine.material.Property.*;

/** Rules that fill what a source does not give; each value filled carries the rule as its provenance. */
final class Estimates {
    private static final double NU23_OF_TAPE = 0.4;
    private static final double IN_PLANE_SHARE_OF_HONEYCOMB = 1e-3;

    private Estimates() {}

    /** Density, thickness and areal mass of one layer: any two give the third. */
    static PropertyTable massAndThickness(PropertyTable table) {
        if (table.has(THICKNESS) && table.has(DENSITY)) {
            return table.withDefault(
                    AREAL_MASS,
                    table.require(THICKNESS) * table.require(DENSITY),
                    "thickness x density",
                    Trust.COMPUTED);
        }
        if (table.has(AREAL_MASS) && table.has(DENSITY)) {
            return table.withDefault(
                    THICKNESS,
                    table.require(AREAL_MASS) / table.require(DENSITY),
                    "areal mass / density",
                    Trust.COMPUTED);
        }
        if (table.has(AREAL_MASS) && table.has(THICKNESS)) {
            return table.withDefault(
                    DENSITY,
                    table.require(AREAL_MASS) / table.require(THICKNESS),
                    "areal mass / thickness",
                    Trust.COMPUTED);
        }
        return table;
    }

    static PropertyTable ply(PropertyTable given, Ply.Form form) {
        PropertyTable table = massAndThickness(given);
        if (form == Ply.Form.CLOTH) {
            table = table.withDefault(E2, table.require(E1), "assumed: E2 = E1 of a balanced cloth", Trust.ASSUMED)
                    .withDefault(NU12, 0.05, "assumed: nu12 = 0.05 of a balanced cloth", Trust.ASSUMED);
            table = copy(table, G13, G12, "assumed: G13 = 0.8 G12 of a cloth", 0.8);
            table = copy(table, G23, G12, "assumed: G23 = 0.8 G12 of a cloth", 0.8);
            table = copy(table, YT, XT, "assumed: YT = XT of a balanced cloth", 1);
            table = copy(table, YC, XC, "assumed: YC = XC of a balanced cloth", 1);
            return copy(table, ALPHA2, ALPHA1, "assumed: alpha2 = alpha1 of a balanced cloth", 1);
        }
        table = copy(table, G13, G12, "assumed: G13 = G12", 1);
        double nu23 = table.si(NU23).orElse(NU23_OF_TAPE);
        String rule = "assumed: G23 = E2/(2(1+nu23)), nu23 = " + nu23 + (table.has(NU23) ? "" : " (assumed)");
        return table.withDefault(G23, table.require(E2) / (2 * (1 + nu23)), rule, Trust.ASSUMED);
    }

    static PropertyTable core(PropertyTable given, Core.Form form) {
        PropertyTable table = given;
        if (form == Core.Form.HONEYCOMB) {
            // Cell walls bend: a real core has some thousandth of its through-thickness modulus in its plane. It
            // carries
            // nothing, but keeps the laminate's stiffness positive definite.
            double stiff = table.si(E3).orElse(table.require(G13));
            String rule = "assumed: 1/1000 of " + (table.has(E3) ? "E3" : "G13") + " (cell walls bend)";
            double inPlane = IN_PLANE_SHARE_OF_HONEYCOMB * stiff;
            return table.withDefault(E1, inPlane, rule, Trust.ASSUMED)
                    .withDefault(E2, inPlane, rule, Trust.ASSUMED)
                    .withDefault(NU12, 0, "assumed: 0", Trust.ASSUMED)
                    .withDefault(G12, inPlane / 2, "assumed: half the in-plane modulus", Trust.ASSUMED)
                    .withDefault(ALPHA1, 0, "assumed: 0; the core is too soft in its plane to matter", Trust.ASSUMED)
                    .withDefault(ALPHA2, 0, "assumed: 0; the core is too soft in its plane to matter", Trust.ASSUMED);
        }
        table = copy(table, E2, E1, "isotropic: E2 = E1", 1);
        table = copy(table, E3, E1, "isotropic: E3 = E1", 1);
        table = table.withDefault(NU12, 0.3, "assumed: nu = 0.3", Trust.ASSUMED);
        if (!table.has(G12)) {
            double g = table.require(E1) / (2 * (1 + table.require(NU12)));
            table = table.withDefault(G12, g, "isotropic: G = E/(2(1+nu))", Trust.COMPUTED);
        }
        table = copy(table, G13, G12, "isotropic: G13 = G12", 1);
        table = copy(table, G23, G12, "isotropic: G23 = G12", 1);
        table = copy(table, S23, S13, "isotropic: S23 = S13", 1);
        return copy(table, ALPHA2, ALPHA1, "isotropic: alpha2 = alpha1", 1);
    }

    static PropertyTable isotropic(PropertyTable given) {
        PropertyTable table = given;
        if (!table.has(E1) && table.has(G12)) {
            double nu = table.si(NU12).orElse(0.35);
            String rule = "isotropic: E = 2(1+nu)G" + (table.has(NU12) ? "" : ", nu = 0.35 assumed");
            table = table.withDefault(NU12, nu, "assumed: nu = 0.35", Trust.ASSUMED)
                    .withDefault(E1, 2 * (1 + nu) * table.require(G12), rule, Trust.COMPUTED);
        }
        table = copy(table, E2, E1, "isotropic: E2 = E1", 1);
        if (!table.has(NU12) && table.has(G12)) {
            double nu = table.require(E1) / (2 * table.require(G12)) - 1;
            table = table.withDefault(NU12, nu, "isotropic: nu = E/(2G) - 1", Trust.COMPUTED);
        }
        table = table.withDefault(NU12, 0.35, "assumed: nu = 0.35", Trust.ASSUMED);
        double g = table.require(E1) / (2 * (1 + table.require(NU12)));
        table = table.withDefault(G12, g, "isotropic: G = E/(2(1+nu))", Trust.COMPUTED);
        table = copy(table, G13, G12, "isotropic: G13 = G12", 1);
        table = copy(table, G23, G12, "isotropic: G23 = G12", 1);
        return copy(table, ALPHA2, ALPHA1, "isotropic: alpha2 = alpha1", 1);
    }

    /** Fills one property from another; a plain equality of an isotropic material counts as computed. */
    private static PropertyTable copy(PropertyTable table, Property to, Property from, String rule, double factor) {
        if (table.has(to) || !table.has(from)) {
            return table;
        }
        Trust trust = rule.startsWith("isotropic") ? Trust.COMPUTED : Trust.ASSUMED;
        return table.with(to, factor * table.require(from), new Provenance(rule, trust));
    }
}
