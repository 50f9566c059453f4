// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import tubwright.numerics.SymmetricMatrix;

/** Forces of a structure's own mass, from its consistent mass matrix, which is made once and when first asked for. */
final class OwnMass {
    private final Structure structure;
    private SymmetricMatrix matrix;
    private RigidMotions motions;

    OwnMass(Structure structure) {
        this.structure = structure;
    }

    /** Adds the forces of a uniform acceleration field, m/s². */
    void addForces(double[] acceleration, double[] loads) {
        double[] field = new double[loads.length];
        for (int n = 0; n < loads.length / 6; n++) {
            System.arraycopy(acceleration, 0, field, 6 * n, 3);
        }
        double[] forces = matrix().multiply(field);
        for (int i = 0; i < loads.length; i++) {
            loads[i] += forces[i];
        }
    }

    /** Adds the inertia of the rigid body that the loads accelerate, so that they are in balance. */
    void balance(String wanted, double[] loads) {
        if (!(motions().mass() > 0)) {
            throw new StructureException(
                    "case '" + wanted + "' holds nothing and the structure has no mass to resist with",
                    "give the materials densities, or hold the tub");
        }
        motions.balance(loads);
    }

    /** The six rigid motions about the centre of mass. */
    RigidMotions motions() {
        if (motions == null) {
            motions = new RigidMotions(structure.positions(), matrix());
        }
        return motions;
    }

    private SymmetricMatrix matrix() {
        if (matrix == null) {
            matrix = new Assembly(structure).mass();
        }
        return matrix;
    }
}
