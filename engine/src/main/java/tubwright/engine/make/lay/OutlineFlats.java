// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.nio.IntBuffer;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tubwright.engine.make.flat.Flattening;
import tubwright.engine.make.surface.MeshSurface;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.DirectSolver;

/**
 * The mould's face under each outline and its flat, made once for all sheets of that outline: films, core and tape of one
 * place lie a few millimetres apart, so that the flat of each is found from that of the mould in a few turns. Safe for use by
 * several threads; what is found does not hang on which of them asks first.
 */
final class OutlineFlats {
    private final Mesh mesh;
    private final DirectSolver solver;
    private final Map<IntBuffer, Flat> known = new ConcurrentHashMap<>();

    OutlineFlats(Mesh mesh, DirectSolver solver) {
        this.mesh = mesh;
        this.solver = solver;
    }

    /**
     * A face and its points in the plane.
     *
     * @param flat 2 coordinates a point, m; read only
     */
    record Flat(MeshSurface face, double[] flat) {
        /** The places of the points of a part of the face. */
        double[] of(MeshSurface part) {
            double[] places = new double[2 * part.surface().pointCount()];
            for (int n = 0; n < part.pointOfNode().length; n++) {
                int p = part.pointOfNode()[n];
                if (p >= 0) {
                    System.arraycopy(flat, 2 * face.pointOfNode()[n], places, 2 * p, 2);
                }
            }
            return places;
        }
    }

    Flat of(int[] elements) {
        return known.computeIfAbsent(IntBuffer.wrap(elements), _ -> {
            MeshSurface face = face(elements);
            return new Flat(face, Flattening.isometric(face.surface(), solver));
        });
    }

    /** These elements of the mould as a surface. */
    MeshSurface face(int[] elements) {
        BitSet taken = new BitSet(mesh.elementCount());
        Arrays.stream(elements).forEach(taken::set);
        return MeshSurface.of(mesh, taken::get);
    }
}
