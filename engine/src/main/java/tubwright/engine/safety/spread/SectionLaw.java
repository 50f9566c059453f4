// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Core;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.strength.Criterion;
import tubwright.engine.strength.PlyCriterion;
import tubwright.engine.strength.PlyStrengths;
import tubwright.engine.strength.StrengthBasis;

/**
 * How a laminate answers with damage in its layers. Damage divides compliances: E1 of a broken fibre, E2 of a crack between
 * fibres or a broken weft, G12 of either (Matzenmiller, Lubliner and Taylor 1995). Cure stress is left out.
 *
 * <p>What drives a mechanism is a ratio, one at its onset and in proportion to the strain: fibres by maximum stress, cracks
 * between the fibres of a tape by Puck's criterion, cloth by maximum shear stress, metal by yield, cores by shear.
 */
final class SectionLaw {
    private static final int STRAINS = 8;
    /** Puck's criterion reports fibres and matrix in turn. */
    private static final int MATRIX_PLACE = 1;

    private record Ready(
            double e1,
            double e2,
            double nu12,
            double g12,
            double c,
            double s,
            double outer,
            double inner,
            PlyStrengths strengths,
            double yield,
            PlyCriterion between) {}

    private final Laminate laminate;
    private final Ready[] layers;
    private final List<Mechanism> mechanisms;
    private final double[] shear;
    private final double distance;
    private final int core;
    private final double[] ribbon = {1, 0};
    private final double[] coreShear = new double[4];
    private final double coreThickness;

    SectionLaw(Laminate laminate, StrengthBasis basis, Energies energies) {
        this.laminate = laminate;
        int n = laminate.layers().size();
        layers = new Ready[n];
        double[] z = laminate.surfaces();
        core = onlyCore(laminate);
        mechanisms = LayerMechanisms.of(laminate, core, energies);
        for (int i = 0; i < n; i++) {
            Layer layer = laminate.layers().get(i);
            Elasticity e = layer.material().elasticity();
            PlyStrengths strengths = PlyStrengths.of(layer.material())
                    .map(s -> s.reducedBy(basis.knockDown()))
                    .orElse(null);
            PlyCriterion between = tape(layer.material()) && strengths != null
                    ? (PlyCriterion) Criterion.PUCK.prepare(layer.material(), basis.knockDown())
                    : null;
            layers[i] = new Ready(
                    e.e1(),
                    e.e2(),
                    e.nu12(),
                    e.g12(),
                    Math.cos(layer.angle()),
                    Math.sin(layer.angle()),
                    z[i],
                    z[i + 1],
                    strengths,
                    layer.material().properties().si(Property.TENSILE_YIELD).orElse(Double.NaN),
                    between);
        }
        shear = laminate.stiffness().shear();
        double faces = z[0] - z[n];
        if (core >= 0) {
            Layer layer = laminate.layers().get(core);
            coreThickness = layer.thickness();
            distance = coreThickness + 0.5 * (faces - coreThickness);
            ribbon[0] = Math.cos(layer.angle());
            ribbon[1] = Math.sin(layer.angle());
            PropertyTable table = layer.material().properties();
            coreShear[0] = table.si(Property.S13).orElse(Double.POSITIVE_INFINITY);
            coreShear[1] = table.si(Property.S23).orElse(Double.POSITIVE_INFINITY);
            coreShear[2] = layer.material().elasticity().g13();
            coreShear[3] = layer.material().elasticity().g23();
        } else {
            coreThickness = 0;
            distance = faces;
        }
    }

    private static int onlyCore(Laminate laminate) {
        int found = -1;
        for (int i = 0; i < laminate.layers().size(); i++) {
            if (laminate.layers().get(i).role() == LayerRole.CORE
                    && laminate.layers().get(i).material() instanceof Core) {
                if (found >= 0) {
                    return -1;
                }
                found = i;
            }
        }
        return found;
    }

    private static boolean tape(Material material) {
        return material instanceof Ply ply && ply.form() == Ply.Form.UNIDIRECTIONAL;
    }

    List<Mechanism> mechanisms() {
        return mechanisms;
    }

    /** Thickness of the layer of a mechanism, m. */
    double thickness(int m) {
        return laminate.layers().get(mechanisms.get(m).layer()).thickness();
    }

    /** Direction of the layer's fibres in the laminate's axes. */
    double[] fibres(int m) {
        Ready layer = layers[mechanisms.get(m).layer()];
        return new double[] {layer.c(), layer.s()};
    }

    /**
     * Stiffness, 8 × 8, with what is left of each mechanism.
     *
     * @param left one a mechanism from {@code at} on, between 0 and 1
     */
    void stiffness(double[] left, int at, double[] into) {
        Arrays.fill(into, 0, STRAINS * STRAINS, 0);
        double[] own = new double[4 * layers.length];
        double sheared = damaged(left, at, own);
        double[] q = new double[9];
        for (int i = 0; i < layers.length; i++) {
            turned(layers[i], own, 4 * i, q);
            layer(layers[i], q, into);
        }
        shear(sheared, into);
    }

    /**
     * Plane-stress stiffness (11, 12, 22, 66) of every layer along its own axes with what is left of it; of a metal all of it
     * falls alike.
     *
     * @return what is left of the core in shear
     */
    private double damaged(double[] left, int at, double[] into) {
        double sheared = 1;
        int m = 0;
        for (int i = 0; i < layers.length; i++) {
            Ready layer = layers[i];
            double one = 1;
            double two = 1;
            double between = 1;
            double all = 1;
            for (; m < mechanisms.size() && mechanisms.get(m).layer() == i; m++) {
                double share = left[at + m];
                switch (mechanisms.get(m).kind()) {
                    case FIBRE -> one = share;
                    case WEFT -> two = share;
                    case MATRIX -> between = share;
                    case YIELD -> all = share;
                    case CORE_SHEAR -> sheared = share;
                }
            }
            double s11 = 1 / (layer.e1() * one);
            double s22 = 1 / (layer.e2() * two * (layer.between() == null ? 1 : between));
            double s12 = -layer.nu12() / layer.e1();
            double det = s11 * s22 - s12 * s12;
            into[4 * i] = all * s22 / det;
            into[4 * i + 1] = -all * s12 / det;
            into[4 * i + 2] = all * s11 / det;
            into[4 * i + 3] = all * layer.g12() * one * two * between;
        }
        return sheared;
    }

    /** Stiffness of a layer turned into the laminate's axes. */
    private static void turned(Ready layer, double[] own, int at, double[] q) {
        double q11 = own[at];
        double q12 = own[at + 1];
        double q22 = own[at + 2];
        double q66 = own[at + 3];
        double c2 = layer.c() * layer.c();
        double s2 = layer.s() * layer.s();
        double cs = layer.c() * layer.s();
        q[0] = q11 * c2 * c2 + 2 * (q12 + 2 * q66) * c2 * s2 + q22 * s2 * s2;
        q[1] = (q11 + q22 - 4 * q66) * c2 * s2 + q12 * (c2 * c2 + s2 * s2);
        q[2] = (q11 - q12 - 2 * q66) * cs * c2 + (q12 - q22 + 2 * q66) * cs * s2;
        q[4] = q11 * s2 * s2 + 2 * (q12 + 2 * q66) * c2 * s2 + q22 * c2 * c2;
        q[5] = (q11 - q12 - 2 * q66) * cs * s2 + (q12 - q22 + 2 * q66) * cs * c2;
        q[8] = (q11 + q22 - 2 * q12 - 2 * q66) * c2 * s2 + q66 * (c2 * c2 + s2 * s2);
        q[3] = q[1];
        q[6] = q[2];
        q[7] = q[5];
    }

    private static void layer(Ready layer, double[] q, double[] into) {
        double o = layer.outer();
        double i = layer.inner();
        double m0 = o - i;
        double m1 = 0.5 * (o * o - i * i);
        double m2 = (o * o * o - i * i * i) / 3;
        for (int r = 0; r < 3; r++) {
            for (int k = 0; k < 3; k++) {
                double v = q[3 * r + k];
                into[STRAINS * r + k] += m0 * v;
                into[STRAINS * r + k + 3] += m1 * v;
                into[STRAINS * (r + 3) + k] += m1 * v;
                into[STRAINS * (r + 3) + k + 3] += m2 * v;
            }
        }
    }

    /** Transverse shear: the core adds its own give again and again as it loses stiffness. */
    private void shear(double left, double[] into) {
        double[] s = shear;
        if (left < 1) {
            double det = shear[0] * shear[3] - shear[1] * shear[2];
            double more = (1 / left - 1) * coreThickness / (distance * distance);
            double l = more / coreShear[2];
            double w = more / coreShear[3];
            double c = ribbon[0];
            double n = ribbon[1];
            double f11 = shear[3] / det + l * c * c + w * n * n;
            double f12 = -shear[1] / det + (l - w) * c * n;
            double f22 = shear[0] / det + l * n * n + w * c * c;
            double d = f11 * f22 - f12 * f12;
            s = new double[] {f22 / d, -f12 / d, -f12 / d, f11 / d};
        }
        into[STRAINS * 6 + 6] = s[0];
        into[STRAINS * 6 + 7] = s[1];
        into[STRAINS * 7 + 6] = s[2];
        into[STRAINS * 7 + 7] = s[3];
    }

    /** What drives the mechanisms of one element, gathered over its points. One object a thread. */
    static final class Drive {
        final double[] ratio;
        final double[] energy;
        final boolean[] tension;
        /** Of the energy, what is of mode I between fibres. */
        final double[] opening;

        private final double[] stress = new double[6];
        private final double[] least = new double[2];
        private final double[] layers;
        /** Share of its stiffness in shear that each layer has left. */
        private final double[] kept;

        private final double[] section = new double[STRAINS * STRAINS];
        private final double[] left;
        private final int at;
        private final double[] sheared = new double[2];
        private int points;

        /**
         * @param left of the mechanisms of this element, from {@code at} on, in the field that drives them
         */
        Drive(SectionLaw law, double[] left, int at) {
            int mechanisms = law.mechanisms.size();
            layers = new double[4 * law.layers.length];
            law.shear(law.damaged(left, at, layers), section);
            kept = new double[law.layers.length];
            for (int i = 0; i < kept.length; i++) {
                kept[i] = layers[4 * i + 3] / law.layers[i].g12();
            }
            this.left = left;
            this.at = at;
            ratio = new double[mechanisms];
            energy = new double[mechanisms];
            tension = new boolean[mechanisms];
            opening = new double[mechanisms];
        }

        /** Direction of the transverse shear strain in the laminate's axes, of any length. */
        double[] sheared() {
            return sheared;
        }
    }

    /**
     * Adds a point: raises the ratios to its own, adds the elastic energy of what each mechanism would take, J.
     *
     * @param strains eight, of the laminate
     * @param weight area, m²
     */
    void drive(double[] strains, double weight, Drive to) {
        int last = -1;
        to.sheared[0] += strains[6];
        to.sheared[1] += strains[7];
        to.points++;
        for (int m = 0; m < mechanisms.size(); m++) {
            Mechanism each = mechanisms.get(m);
            if (each.kind() == Mechanism.Kind.CORE_SHEAR) {
                sheared(strains[6], strains[7], weight, m, to);
                continue;
            }
            Ready layer = layers[each.layer()];
            if (layer.strengths() == null && each.kind() != Mechanism.Kind.YIELD) {
                continue;
            }
            if (each.layer() != last) {
                stress(layer, layer.outer(), strains, to, 4 * each.layer(), 0);
                stress(layer, layer.inner(), strains, to, 4 * each.layer(), 3);
                last = each.layer();
            }
            at(each, layer, m, 0, to);
            at(each, layer, m, 3, to);
            energy(each, layer, weight * (layer.outer() - layer.inner()), m, to);
        }
    }

    private static void stress(Ready layer, double z, double[] e, Drive to, int own, int at) {
        double x = e[0] + z * e[3];
        double y = e[1] + z * e[4];
        double g = e[2] + z * e[5];
        double c = layer.c();
        double s = layer.s();
        double e1 = c * c * x + s * s * y + c * s * g;
        double e2 = s * s * x + c * c * y - c * s * g;
        double g12 = 2 * c * s * (y - x) + (c * c - s * s) * g;
        to.stress[at] = to.layers[own] * e1 + to.layers[own + 1] * e2;
        to.stress[at + 1] = to.layers[own + 1] * e1 + to.layers[own + 2] * e2;
        to.stress[at + 2] = to.layers[own + 3] * g12;
    }

    /** Stress as it would be had this mechanism alone not begun: what the rest of the material hands on to it. */
    private void at(Mechanism each, Ready layer, int m, int at, Drive to) {
        double own = to.left[to.at + m];
        double s1 = to.stress[at] / own;
        double s2 = to.stress[at + 1] / own;
        double s12 = to.stress[at + 2] / own;
        double ratio;
        boolean tension;
        switch (each.kind()) {
            case FIBRE -> {
                tension = s1 > 0;
                ratio = tension
                        ? s1 / layer.strengths().xt()
                        : -s1 / layer.strengths().xc();
            }
            case WEFT -> {
                tension = s2 > 0;
                ratio = tension
                        ? s2 / layer.strengths().yt()
                        : -s2 / layer.strengths().yc();
            }
            case YIELD -> {
                tension = s1 + s2 > 0;
                ratio = Math.sqrt(s1 * s1 - s1 * s2 + s2 * s2 + 3 * s12 * s12) / layer.yield();
            }
            default -> {
                tension = s2 > 0;
                if (layer.between() == null) {
                    ratio = Math.abs(s12) / layer.strengths().s12();
                } else {
                    Arrays.fill(to.least, Double.POSITIVE_INFINITY);
                    layer.between().lower(0, s2, s12, 0, 0, 0, to.least, 0);
                    ratio = 1 / to.least[MATRIX_PLACE];
                }
            }
        }
        if (ratio > to.ratio[m]) {
            to.ratio[m] = ratio;
            to.tension[m] = tension;
        }
    }

    /**
     * Adds what the layer would give out for each share of its stiffness that this mechanism takes, −∂W/∂d at the strains there are:
     * through its thickness stress is linear. Shear is taken by all mechanisms of a layer together, hence what others have left of it.
     */
    private static void energy(Mechanism each, Ready layer, double volume, int m, Drive to) {
        double own = to.left[to.at + m];
        double w = 0.5 * volume / (own * own);
        double first = w * mean(to.stress, 0, 0);
        double second = w * mean(to.stress, 1, 1);
        double others = to.kept[each.layer()] / own;
        double sheared = w * mean(to.stress, 2, 2) / (layer.g12() * others);
        switch (each.kind()) {
            case FIBRE -> to.energy[m] += first / layer.e1() + sheared;
            case WEFT -> to.energy[m] += second / layer.e2() + sheared;
            case YIELD ->
                to.energy[m] += (first + second - 2 * layer.nu12() * w * mean(to.stress, 0, 1)) / layer.e1()
                        + w * mean(to.stress, 2, 2) / layer.g12();
            default -> {
                double across = layer.between() == null ? 0 : second / layer.e2();
                to.energy[m] += across + sheared;
                to.opening[m] += to.stress[1] + to.stress[4] > 0 ? across : 0;
            }
        }
    }

    /** Mean through a layer of the product of two stresses, each linear between the layer's surfaces. */
    private static double mean(double[] stress, int i, int k) {
        double a = stress[i];
        double b = stress[3 + i];
        double c = stress[k];
        double d = stress[3 + k];
        return (2 * (a * c + b * d) + a * d + b * c) / 6;
    }

    /** After all points: a core is looked at by the mean of its element, as in the reserve table. */
    void finish(Drive to) {
        for (int m = 0; m < mechanisms.size(); m++) {
            if (mechanisms.get(m).kind() == Mechanism.Kind.CORE_SHEAR) {
                double[] stress = core(to.sheared[0] / to.points, to.sheared[1] / to.points, m, to);
                to.ratio[m] = Math.hypot(stress[0] / coreShear[0], stress[1] / coreShear[1]);
            }
        }
    }

    private void sheared(double x, double y, double weight, int m, Drive to) {
        double[] stress = core(x, y, m, to);
        to.energy[m] += 0.5
                * weight
                * coreThickness
                * (stress[0] * stress[0] / coreShear[2] + stress[1] * stress[1] / coreShear[3]);
    }

    /** Shear of the core along and across its ribbon, as if it had not begun to fail, Pa. */
    private double[] core(double x, double y, int m, Drive to) {
        double own = to.left[to.at + m];
        double qx = (to.section[54] * x + to.section[55] * y) / own;
        double qy = (to.section[62] * x + to.section[63] * y) / own;
        return new double[] {(ribbon[0] * qx + ribbon[1] * qy) / distance, (ribbon[0] * qy - ribbon[1] * qx) / distance
        };
    }
}
