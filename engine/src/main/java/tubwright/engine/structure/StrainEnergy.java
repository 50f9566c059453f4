// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.stream.IntStream;

/** Where the strain energy of a solution sits: by element and by part. */
public final class StrainEnergy {
    private static final int CHUNK = 512;

    private StrainEnergy() {}

    /**
     * Energy of each shell element in J.
     *
     * @param u displacements, 6 per node
     */
    public static double[] ofElements(Structure structure, double[] u) {
        return ofElements(structure, new double[][] {u})[0];
    }

    /** As {@link #ofElements(Structure, double[])} for several displacement fields at once; one row each. */
    static double[][] ofElements(Structure structure, double[][] fields) {
        int elements = structure.mesh().elementCount();
        double[][] energies = new double[fields.length][elements];
        ThreadLocal<ShellKernel> kernels = ThreadLocal.withInitial(() -> new ShellKernel(structure));
        IntStream.range(0, (elements + CHUNK - 1) / CHUNK).parallel().forEach(chunk -> {
            ShellKernel kernel = kernels.get();
            for (int e = chunk * CHUNK; e < Math.min(elements, (chunk + 1) * CHUNK); e++) {
                kernel.strainPoints(e);
                for (int f = 0; f < fields.length; f++) {
                    energies[f][e] = kernel.energyAtStrainPoints(e, fields[f]);
                }
            }
        });
        return energies;
    }

    /** Energy of each part under several displacement fields; one row each. */
    static double[][] ofParts(Structure structure, double[][] fields) {
        double[][] elements = ofElements(structure, fields);
        double[][] parts = new double[fields.length][];
        for (int f = 0; f < fields.length; f++) {
            parts[f] = ofParts(structure, fields[f], elements[f]);
        }
        return parts;
    }

    /** Index of the part with the most energy. */
    static int most(double[] parts) {
        int most = 0;
        for (int p = 1; p < parts.length; p++) {
            most = parts[p] > parts[most] ? p : most;
        }
        return most;
    }

    /**
     * Energy of each part in J, in the order of {@link Structure#parts()}.
     *
     * @param ofElements as returned by {@link #ofElements}
     */
    public static double[] ofParts(Structure structure, double[] u, double[] ofElements) {
        double[] sums = new double[structure.parts().size()];
        for (int e = 0; e < ofElements.length; e++) {
            sums[structure.partOfRegion(structure.mesh().elementRegions()[e])] += ofElements[e];
        }
        for (Member member : structure.members()) {
            sums[member.owner()] += member.energy(u);
        }
        return sums;
    }
}
