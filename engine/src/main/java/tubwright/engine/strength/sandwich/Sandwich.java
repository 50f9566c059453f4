// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LaminateResponse;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.PlyState;
import tubwright.engine.material.Core;
import tubwright.engine.material.Property;

/** A laminate seen as two faces and one core. */
public final class Sandwich {
    private final Laminate laminate;
    private final int coreIndex;
    private final Face outer;
    private final Face inner;
    private final double[] compliance;
    /** Membrane force (x, y, xy) of the outer and inner face per strain of the whole: two 3 × 6. */
    private final double[][] forces = new double[2][18];

    private Sandwich(Laminate laminate, int coreIndex) {
        this.laminate = laminate;
        this.coreIndex = coreIndex;
        List<Layer> layers = laminate.layers();
        compliance = laminate.stiffness().compliance();
        outer = new Face(List.copyOf(layers.subList(0, coreIndex)));
        inner = new Face(List.copyOf(layers.subList(coreIndex + 1, layers.size())));
        for (int k = 0; k < 6; k++) {
            double[] strain = new double[6];
            strain[k] = 1;
            List<PlyState> states = LaminateResponse.underStrains(laminate, strain, Climate.NONE)
                    .layers();
            for (int i = 0; i < states.size(); i++) {
                if (i != coreIndex) {
                    PlyState state = states.get(i);
                    double[] force = forces[i < coreIndex ? 0 : 1];
                    for (int r = 0; r < 3; r++) {
                        force[6 * r + k] += 0.5
                                * (state.outer().stress()[r] + state.inner().stress()[r])
                                * state.layer().thickness();
                    }
                }
            }
        }
    }

    /** Of a laminate with exactly one core and something on both sides of it; empty otherwise. */
    public static Optional<Sandwich> of(Laminate laminate) {
        List<Layer> layers = laminate.layers();
        int[] cores = IntStream.range(0, layers.size())
                .filter(i ->
                        layers.get(i).role() == LayerRole.CORE && layers.get(i).material() instanceof Core)
                .toArray();
        boolean sandwich = cores.length == 1 && cores[0] > 0 && cores[0] < layers.size() - 1;
        return sandwich ? Optional.of(new Sandwich(laminate, cores[0])) : Optional.empty();
    }

    /** The whole. */
    public Laminate laminate() {
        return laminate;
    }

    /** The core's material. */
    public Core core() {
        return (Core) coreLayer().material();
    }

    /** tc, m. */
    public double coreThickness() {
        return coreLayer().thickness();
    }

    /** d, between the faces' middles, m. */
    public double distance() {
        return coreThickness() + 0.5 * (outer.thickness() + inner.thickness());
    }

    /** Angle of the ribbon from the laminate's axis, radians. */
    public double ribbon() {
        return coreLayer().angle();
    }

    /**
     * Shear modulus of the core in the plane of a direction and the thickness, Pa: GL cos² + GW sin² of the angle to the
     * ribbon.
     */
    public double coreShearModulus(double direction) {
        double c = Math.cos(direction - ribbon());
        double s = Math.sin(direction - ribbon());
        return core().properties().require(Property.G13) * c * c
                + core().properties().require(Property.G23) * s * s;
    }

    /** Strains (εx, εy, γxy, κx, κy, κxy) of the whole under resultants (Nx, Ny, Nxy, Mx, My, Mxy), N/m and N. */
    double[] strains(double[] resultants) {
        double[] strains = new double[6];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                strains[i] += compliance[8 * i + j] * resultants[j];
            }
        }
        return strains;
    }

    /**
     * Membrane force of a face (x, y, xy), N/m.
     *
     * @param strains (εx, εy, γxy, κx, κy, κxy) of the whole
     */
    public double[] faceForce(boolean outside, double[] strains) {
        double[] matrix = forces[outside ? 0 : 1];
        double[] force = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 6; k++) {
                force[i] += matrix[6 * i + k] * strains[k];
            }
        }
        return force;
    }

    Face face(boolean outside) {
        return outside ? outer : inner;
    }

    private Layer coreLayer() {
        return laminate.layers().get(coreIndex);
    }
}
