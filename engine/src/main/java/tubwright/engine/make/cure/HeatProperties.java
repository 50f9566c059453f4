// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/**
 * What heat conduction asks of a material.
 *
 * @param density kg/m³
 * @param specificHeat J/(kg K)
 * @param conductivity through the thickness, W/(m K)
 */
public record HeatProperties(double density, double specificHeat, double conductivity) {
    /** Refuses what cannot conduct. */
    public HeatProperties {
        if (!(density > 0 && specificHeat > 0 && conductivity > 0)) {
            throw new CureException("density, specific heat and conductivity must be greater than zero, not " + density
                    + " kg/m³, " + specificHeat + " J/kg/K, " + conductivity + " W/m/K");
        }
    }

    /**
     * Fibres in resin: masses add up, heat capacities by mass, conductivity across the fibres by {@link #across}.
     *
     * @param share volume of fibres over the whole
     */
    public static HeatProperties mixed(HeatProperties fibre, HeatProperties resin, double share) {
        double fibreMass = share * fibre.density;
        double resinMass = (1 - share) * resin.density;
        return new HeatProperties(
                fibreMass + resinMass,
                (fibreMass * fibre.specificHeat + resinMass * resin.specificHeat) / (fibreMass + resinMass),
                across(fibre.conductivity, resin.conductivity, share));
    }

    /**
     * Conductivity across round fibres in a square array (Springer and Tsai 1967).
     *
     * @param fibre of the fibres across their axis, W/(m K)
     * @param resin W/(m K)
     * @param share volume of fibres over the whole, below π/4 where they touch
     */
    public static double across(double fibre, double resin, double share) {
        double b = 2 * (resin / fibre - 1);
        double r = Math.sqrt(share / Math.PI);
        double under = 1 - b * b * share / Math.PI;
        if (under <= 0 || Math.abs(b) < 1e-9) {
            throw new CureException("fibres of " + fibre + " W/m/K in resin of " + resin + " W/m/K at " + 100 * share
                    + " % by volume are outside the formula of Springer and Tsai");
        }
        double root = Math.sqrt(under);
        return resin * (1 - 2 * r + (Math.PI - 4 / root * Math.atan(root / (1 + b * r))) / b);
    }

    /**
     * Cells of solid walls full of air, side by side, radiation left out.
     *
     * @param wall of the solid
     * @param density of the core, kg/m³
     * @param air conductivity of the air in the cells, W/(m K)
     */
    public static HeatProperties cells(HeatProperties wall, double density, double air) {
        double share = density / wall.density;
        return new HeatProperties(density, wall.specificHeat, share * wall.conductivity + (1 - share) * air);
    }
}
