// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.secondopinion;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tubwright.engine.design.Design;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.Analysis;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.solver.Solvers;

/**
 * A closed rectangular box of sandwich, drawn by the middle of its walls, with or without an opening in deck and floor:
 * by this program from design text, and as a request to the three-dimensional model.
 *
 * <p>Lengths in m. Faces are one orthotropic layer each, direction 1 along the box; the core's ribbon runs along the box.
 *
 * @param face thickness of a face
 * @param core thickness of the core
 * @param openingLength along the box, 0 for none
 * @param openingWidth across
 * @param warpingHeld whether the end sections are held against warping; they always stay plane figures of their shape
 */
record SandwichBox(double face, double core, double openingLength, double openingWidth, boolean warpingHeld) {
    static final double WIDTH = .5;
    static final double HEIGHT = .35;
    static final double LENGTH = 1.2;
    /** Stiffness of the tie of normals at a corner node, N·m/rad: plenty. */
    private static final double TIE = 1e7;
    /** Constants of the face, Pa; those through the thickness matter in three dimensions only. */
    static final Map<String, Double> FACE = Map.of(
            "E1", 60e9, "E2", 45e9, "E3", 9e9, "nu12", .2, "nu13", .3, "nu23", .3, "G12", 12e9, "G13", 4e9, "G23", 4e9);

    /** Constants of the core, Pa: hardly any stiffness in its plane, as a honeycomb. */
    static final Map<String, Double> CORE = Map.of(
            "E1", 1e6, "E2", 1e6, "E3", 500e6, "nu12", .2, "nu13", 0.0, "nu23", 0.0, "G12", 1e6, "G13", 180e6, "G23",
            90e6);

    /** The design as a user would write it. */
    String text() {
        String opening = openingLength == 0
                ? ""
                : String.format(
                        Locale.ROOT, """
                  openings:
                    above: {view: above, strips: deck, x: %1$.4f .. %2$.4f m, width: %3$.4f m}
                    below: {view: below, strips: floor, x: %1$.4f .. %2$.4f m, width: %3$.4f m}
                """, (LENGTH - openingLength) / 2, (LENGTH + openingLength) / 2, openingWidth);
        return String.format(Locale.ROOT, """
                tub: sandwich box
                shape:
                  loft: ruled
                  strips: [floor, side, deck]
                  frames:
                    - {station: 0 m, outline: "(0, 0) (%1$.4f, 0) (%1$.4f, %2$.4f) (0, %2$.4f) m"}
                    - {station: %3$.4f m, outline: "(0, 0) (%1$.4f, 0) (%1$.4f, %2$.4f) (0, %2$.4f) m"}
                """, WIDTH / 2, HEIGHT, LENGTH)
                + opening
                + String.format(Locale.ROOT, """
                materials:
                  face:
                    kind: ud
                    properties: {density: 1500 kg/m³, thickness: %.5f m, E1: 60 GPa, E2: 45 GPa, nu12: 0.2, G12: 12 GPa, G13: 4 GPa, G23: 4 GPa}
                  cells:
                    kind: honeycomb
                    properties: {density: 48 kg/m³, E1: 1 MPa, E2: 1 MPa, E3: 500 MPa, nu12: 0.2, G12: 1 MPa, G13: 180 MPa, G23: 90 MPa}
                laminates:
                  panel: {stack: "[0/core/0]", plies: {ply: face}, core: cells, core thickness: %.5f m, reference: middle}
                zones:
                  skin: {on: [floor, side, deck], laminate: panel}
                """, face, core);
    }

    /** What the program makes of it: N·m/rad of one end section against the other, on a mesh of the given size, m. */
    double stiffness(Path folder, double size, boolean mitred) throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), text());
        Tub tub = Design.read(folder).asDesigned().tub();
        Mesh mesh = Study.mesh(tub, size);
        Structure structure = Structure.of(tub, mesh);
        boolean[] fixed = new boolean[structure.unknowns()];
        double[] given = new double[structure.unknowns()];
        boolean somewhere = false;
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double x = mesh.nodes()[3 * n];
            if (Math.min(x, LENGTH - x) > 1e-9) {
                continue;
            }
            double turn = x > LENGTH / 2 ? 1 : 0;
            given[6 * n + 1] = -turn * (mesh.nodes()[3 * n + 2] - HEIGHT / 2);
            given[6 * n + 2] = turn * mesh.nodes()[3 * n + 1];
            given[6 * n + 3] = turn;
            for (int d = 1; d < 4; d++) {
                fixed[6 * n + d] = true;
            }
            // Free to warp, one point holds the box along x.
            fixed[6 * n] = warpingHeld || !somewhere;
            fixed[6 * n + 4] = warpingHeld;
            fixed[6 * n + 5] = warpingHeld;
            somewhere = true;
        }
        SymmetricMatrix whole = structure.assemble();
        if (mitred) {
            tieCorners(whole, mesh);
        }
        ConstrainedSystem system = ConstrainedSystem.constrain(whole, fixed);
        double[] u;
        try (Analysis analysis = Solvers.best().analyse(system.matrix().pattern(), Definiteness.POSITIVE_DEFINITE);
                Factorisation factor = analysis.factorise(system.matrix())) {
            u = system.solve(factor, new double[fixed.length], given);
        }
        double[] f = whole.multiply(u);
        double couple = 0;
        for (int i = 0; i < u.length; i++) {
            couple += u[i] * f[i];
        }
        return couple;
    }

    /**
     * Where layers go on round a mitred corner, the normals of both walls lie in the mitre and move along the box as one:
     * a turn of the one about the other's normal is a turn of that. Shells leave them apart. Stiff springs join them.
     */
    private static void tieCorners(SymmetricMatrix stiffness, Mesh mesh) {
        for (int n = 0; n < mesh.nodeCount(); n++) {
            double y = mesh.nodes()[3 * n + 1];
            double z = mesh.nodes()[3 * n + 2] - HEIGHT / 2;
            if (Math.abs(Math.abs(y) - WIDTH / 2) < 1e-9 && Math.abs(Math.abs(z) - HEIGHT / 2) < 1e-9) {
                // Along x, a point h outside the deck moves by ±h θy, one h outside the flank by ∓h θz.
                double sign = Math.signum(y) * Math.signum(z);
                stiffness.add(6 * n + 4, 6 * n + 4, TIE);
                stiffness.add(6 * n + 5, 6 * n + 5, TIE);
                stiffness.add(6 * n + 4, 6 * n + 5, sign * TIE);
            }
        }
    }

    /**
     * What mitred corners add to GJ of the box without openings, N·m². Along a wall of twisting stiffness D66 and shear
     * stiffness S the turn α of the normals about the other axis obeys D66 α″ = S (α + φ′s), s from the middle of the wall.
     * With no twisting moment at its edges the normals there fall short of φ′b/2 by 2 λ φ′, λ² = D66/S; the mitre brings
     * those of both walls, which turn opposite ways, to one value. Eight wall ends at √(D66 S)/2 times their turn squared.
     */
    double mitre() {
        double apart = face + core;
        double d66 = FACE.get("G12") * face * (apart * apart / 2 + face * face / 6)
                + CORE.get("G12") * core * core * core / 12;
        double s = CORE.get("G13") * apart * apart / core;
        double turn = (WIDTH + HEIGHT) / 4 - 2 * Math.sqrt(d66 / s);
        return 8 * Math.sqrt(d66 * s) * turn * turn;
    }

    /** What the three-dimensional model is asked for; meshes refine with n. */
    Map<String, Object> request(int n) {
        Map<String, Object> request = new LinkedHashMap<>();
        request.put("width", WIDTH);
        request.put("height", HEIGHT);
        request.put("length", LENGTH);
        request.put("layers", List.of(layer(FACE, face, 1), layer(CORE, core, 1), layer(FACE, face, 1)));
        request.put("warping", warpingHeld ? "held" : "free");
        if (openingLength > 0) {
            request.put("hole", Map.of("x", openingLength, "y", openingWidth));
        }
        request.put("degree", 2);
        // Cells shrink towards corners and edges of openings, down to about the thickness of the wall.
        request.put("grade", 8);
        request.put("cells", Map.of("hole x", 2 * n, "x", 2 * n, "hole y", 2 * n, "y", 3 * n, "z", 4 * n));
        return request;
    }

    private static Map<String, Object> layer(Map<String, Double> material, double thickness, int cells) {
        Map<String, Object> layer = new LinkedHashMap<>(material);
        layer.put("thickness", thickness);
        layer.put("cells", cells);
        return layer;
    }
}
