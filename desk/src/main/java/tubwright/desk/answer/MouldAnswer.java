// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.mould.Draft;
import tubwright.engine.make.mould.PieceFace;
import tubwright.engine.mesh.Mesh;

/**
 * The pieces of a tub and the moulds they come out of.
 *
 * @param tub name
 * @param variant name
 * @param stamp when it was computed
 * @param version of the program
 * @param mesh the faces are told on
 * @param wanted draft asked for, rad
 * @param material what moulds are made of, in words
 * @param change from the room to where parts freeze, K
 * @param pieces in the order of the design
 * @param bends where the skin turns, by how much that closes
 * @param factors cold size of a mould over the part's, by what it is made of; empty where expansions are not known
 * @param tooling what has to be made before a part can be
 */
public record MouldAnswer(
        String tub,
        String variant,
        String stamp,
        String version,
        Mesh mesh,
        double wanted,
        String material,
        double change,
        List<Piece> pieces,
        List<Bend> bends,
        List<Factor> factors,
        List<Tooling> tooling) {
    public MouldAnswer {
        pieces = List.copyOf(pieces);
        bends = List.copyOf(bends);
        factors = List.copyOf(factors);
        tooling = List.copyOf(tooling);
    }

    /**
     * A piece.
     *
     * @param face its outer face
     * @param area of it, m²
     * @param size across twice and along the pull (of a plate: through it), m
     * @param edges length of its edges by what lies beside them, m
     * @param draft empty for a plate
     * @param given whether the pull was given, not found
     * @param flat what it develops into; empty for a plate
     * @param factor cold size of the chosen mould over the part's; NaN where the expansion is not known
     * @param advice what would help where it does not come out
     */
    public record Piece(
            PieceFace face,
            double area,
            double[] size,
            Map<String, Double> edges,
            Optional<Draft> draft,
            boolean given,
            Optional<Developed> flat,
            double factor,
            List<String> advice) {
        public Piece {
            advice = List.copyOf(advice);
        }

        /** Its name. */
        public String name() {
            return face.piece();
        }
    }

    /**
     * A face laid flat.
     *
     * @param length m
     * @param width m
     * @param area m²
     * @param distortion what lengths are off by: nothing where the face unrolls
     */
    public record Developed(double length, double width, double area, Distortion distortion) {}

    /**
     * A bend of a piece.
     *
     * @param piece it belongs to; two names where the split line runs in it
     * @param bend angle and closing
     * @param leastRadius of the outer face, m
     * @param mostRadius m
     * @param thickness of the laminate, m
     */
    public record Bend(String piece, CureAnswer.Bend bend, double leastRadius, double mostRadius, double thickness) {
        /** Least radius on the bag side, m; 0 where the laminate is thicker than the outer radius. */
        public double inside() {
            return Math.max(0, leastRadius - thickness);
        }
    }

    /**
     * Cold size by what a mould is made of.
     *
     * @param material name
     * @param description of it
     * @param expansion 1/K
     * @param factor cold size over the part's
     * @param source of the expansion
     */
    public record Factor(String material, String description, double expansion, double factor, String source) {}

    /**
     * One thing to be made.
     *
     * @param piece for which; "" for the whole tub
     * @param what pattern, mould, plate, pressure strip, jig
     * @param size three lengths, m; of a strip its length and the radius it fills
     * @param mass kg, NaN where it is not told
     * @param note how it is made
     */
    public record Tooling(String piece, String what, double[] size, double mass, String note) {}

    /** Whether every piece comes out of its mould as one. */
    public boolean allComeOut() {
        return pieces.stream().allMatch(p -> p.advice().isEmpty());
    }
}
