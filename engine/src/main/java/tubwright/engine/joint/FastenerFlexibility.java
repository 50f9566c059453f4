// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Flexibility of one fastener in shear: the slip between the middle planes of two plates per load on the fastener, m/N.
 *
 * <p>The published formulas differ by factors of two to three on the same joint; each was fitted to its own tests. They are
 * named by author.
 */
public sealed interface FastenerFlexibility {
    /** Source, in one line. */
    String source();

    /**
     * In single shear, m/N.
     *
     * @param diameter of the shank, m
     * @param fastenerModulus Young's modulus of the fastener, Pa
     */
    double singleShear(Plate one, Plate two, double diameter, double fastenerModulus);

    /**
     * One of the plates.
     *
     * @param thickness m
     * @param modulus Young's modulus in the direction of the load, Pa
     */
    record Plate(double thickness, double modulus) {
        /** 1/(t E). */
        double compliance() {
            return 1 / (thickness * modulus);
        }
    }

    /** A formula that also holds for a plate between two others. */
    sealed interface WithDoubleShear extends FastenerFlexibility {
        /** Flexibility per fastener, m/N, of one middle plate against two like outer ones. */
        double doubleShear(Plate middle, Plate outer, double diameter, double fastenerModulus);
    }

    /**
     * Huth 1986, "Influence of fastener flexibility on the prediction of load transfer and fatigue life for multiple-row
     * joints", ASTM STP 927:
     *
     * <p>C = ((t1 + t2)/(2 d))^a (b/n) [1/(t1 E1) + 1/(n t2 E2) + 1/(2 t1 Ef) + 1/(2 n t2 Ef)]
     *
     * <p>n = 1 for single shear, 2 for double shear, where plate 1 is the one in the middle. The printed paper has
     * 1/(n t1 Ef) as the third term, which is known for a misprint. Two springs that model a double-shear fastener each get
     * 2 C.
     *
     * @param exponent a
     * @param factor b
     */
    record Huth(double exponent, double factor) implements WithDoubleShear {
        /** Riveted metal sheets. */
        public static final Huth RIVETED_METAL = new Huth(2.0 / 5.0, 2.2);

        /** Bolted metal sheets. */
        public static final Huth BOLTED_METAL = new Huth(2.0 / 3.0, 3.0);

        /** Bolted carbon-epoxy laminates, also carbon to metal. */
        public static final Huth BOLTED_CARBON = new Huth(2.0 / 3.0, 4.2);

        @Override
        public String source() {
            return "Huth 1986, ASTM STP 927, a = " + exponent + ", b = " + factor;
        }

        @Override
        public double singleShear(Plate one, Plate two, double diameter, double fastenerModulus) {
            return of(one, two, diameter, fastenerModulus, 1);
        }

        @Override
        public double doubleShear(Plate middle, Plate outer, double diameter, double fastenerModulus) {
            return of(middle, outer, diameter, fastenerModulus, 2);
        }

        private double of(Plate one, Plate two, double diameter, double fastenerModulus, int shearPlanes) {
            double slenderness = Math.pow((one.thickness + two.thickness) / (2 * diameter), exponent);
            double compliances = one.compliance()
                    + two.compliance() / shearPlanes
                    + 1 / (2 * one.thickness * fastenerModulus)
                    + 1 / (2 * shearPlanes * two.thickness * fastenerModulus);
            return slenderness * factor / shearPlanes * compliances;
        }
    }

    /**
     * Swift 1971 (ASTM STP 486), single shear: C = a/(d Ef) + b (1/(t1 E1) +
     * 1/(t2 E2)).
     *
     * @param shank a
     * @param plates b
     */
    record Swift(double shank, double plates) implements FastenerFlexibility {
        /** Aluminium rivets. */
        public static final Swift ALUMINIUM = new Swift(5, 0.8);

        /** Steel fasteners (constants from memory). */
        public static final Swift STEEL = new Swift(1.667, 0.86);

        @Override
        public String source() {
            return "Swift 1971, a = " + shank + ", b = " + plates;
        }

        @Override
        public double singleShear(Plate one, Plate two, double diameter, double fastenerModulus) {
            return shank / (diameter * fastenerModulus) + plates * (one.compliance() + two.compliance());
        }
    }

    /**
     * The two-exponent formula in Nelson, Bunin and Hart-Smith 1983 (NASA CR-3710; number from memory): C = Σ B^{(t/d)^0.85}/t (1/E + 3/(8 Ef))
     * over the plates, B = 2 in single and 1.25 in double shear (over middle plate and one outer).
     */
    record NelsonBuninHartSmith() implements WithDoubleShear {
        @Override
        public String source() {
            return "two-exponent formula, Nelson, Bunin and Hart-Smith 1983";
        }

        @Override
        public double singleShear(Plate one, Plate two, double diameter, double fastenerModulus) {
            return plate(2, one, diameter, fastenerModulus) + plate(2, two, diameter, fastenerModulus);
        }

        @Override
        public double doubleShear(Plate middle, Plate outer, double diameter, double fastenerModulus) {
            return plate(1.25, middle, diameter, fastenerModulus) + plate(1.25, outer, diameter, fastenerModulus);
        }

        private static double plate(double base, Plate plate, double diameter, double fastenerModulus) {
            return Math.pow(base, Math.pow(plate.thickness / diameter, 0.85))
                    / plate.thickness
                    * (1 / plate.modulus + 3 / (8 * fastenerModulus));
        }
    }

    /**
     * The formula with squared grip in the review of Jarfall 1983, single shear only: C = (t1 + t2)²/(Ef d³) + 3.72 (1/(t1
     * E1) + 1/(t2 E2)).
     */
    record SquaredGrip() implements FastenerFlexibility {
        @Override
        public String source() {
            return "squared-grip formula, in Jarfall 1983";
        }

        @Override
        public double singleShear(Plate one, Plate two, double diameter, double fastenerModulus) {
            double grip = one.thickness + two.thickness;
            return grip * grip / (fastenerModulus * diameter * diameter * diameter)
                    + 3.72 * (one.compliance() + two.compliance());
        }
    }

    /**
     * Tate and Rosenfeld 1946 (NACA TN 1051): shear and bending of the shank, bearing of shank and plates; the single-shear
     * form as in later reviews.
     *
     * @param fastenerPoisson Poisson's ratio of the fastener
     */
    record TateRosenfeld(double fastenerPoisson) implements WithDoubleShear {
        /** For metal fasteners. */
        public static final TateRosenfeld METAL = new TateRosenfeld(0.3);

        @Override
        public String source() {
            return "Tate and Rosenfeld 1946, NACA TN 1051";
        }

        @Override
        public double singleShear(Plate one, Plate two, double d, double ef) {
            double t1 = one.thickness;
            double t2 = two.thickness;
            double shear = 32 * (t1 + t2) * (1 + fastenerPoisson) / (9 * ef * Math.PI * d * d);
            double bending = 8
                    * (t1 * t1 * t1 + 5 * t1 * t1 * t2 + 5 * t1 * t2 * t2 + t2 * t2 * t2)
                    / (5 * ef * Math.PI * d * d * d * d);
            return 1 / (ef * t1) + 1 / (ef * t2) + one.compliance() + two.compliance() + shear + bending;
        }

        @Override
        public double doubleShear(Plate middle, Plate outer, double d, double ef) {
            double tp = middle.thickness;
            double ts = outer.thickness;
            double area = Math.PI * d * d / 4;
            double inertia = Math.PI * d * d * d * d / 64;
            double gf = ef / (2 * (1 + fastenerPoisson));
            double grip = 2 * ts + tp;
            double bending = 8 * ts * ts * ts + 16 * ts * ts * tp + 8 * ts * tp * tp + tp * tp * tp;
            return grip / (3 * gf * area)
                    + bending / (192 * ef * inertia)
                    + grip / (ts * tp * ef)
                    + outer.compliance()
                    + middle.compliance();
        }
    }
}
