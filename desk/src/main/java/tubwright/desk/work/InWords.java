// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tubwright.desk.answer.CabinAnswer;
import tubwright.desk.answer.CheckAnswer;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.text.Figures;
import tubwright.engine.design.Design;
import tubwright.engine.material.Material;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;

/** Says a design in words. */
final class InWords {
    /** Multiple of the design's mesh size on which areas and masses are summed: they hardly depend on it. */
    private static final double COARSE = 2;

    private InWords() {}

    static CheckAnswer of(Design design) {
        List<CheckAnswer.Variant> variants = new ArrayList<>();
        List<Material> materials = new ArrayList<>();
        for (Design.Variant variant : design.variants()) {
            Tub tub = variant.tub();
            Mesh mesh = Study.mesh(tub, COARSE * tub.meshSize());
            MassAnswer mass = MassRollUp.of(Structure.of(tub, mesh));
            List<RunAnswer.Layup> layups = Laminates.on(tub, mesh);
            Laminates.materials(layups).stream()
                    .filter(m -> !materials.contains(m))
                    .forEach(materials::add);
            variants.add(new CheckAnswer.Variant(
                    variant.name(),
                    tub.construction(),
                    Reading.together(layups).stream()
                            .map(l -> new CheckAnswer.Zone(
                                    l.name(),
                                    l.patch(),
                                    l.code(),
                                    l.area(),
                                    l.laminate().thickness(),
                                    l.laminate().arealMass()))
                            .toList(),
                    mass.pieces().stream()
                            .map(p -> new CheckAnswer.Piece(p.name(), p.mass()))
                            .toList(),
                    mass.whole().mass()));
        }
        return new CheckAnswer(design.name(), facts(design), variants, Gathering.warnings(design, materials));
    }

    private static List<String> facts(Design design) {
        Tub tub = design.asDesigned().tub();
        TubShape shape = tub.shape();
        List<String> facts = new ArrayList<>();
        facts.add(Figures.fixed(1000 * (shape.rear() - shape.front()), 0, " ") + " mm long, "
                + shape.frames().size() + " frames, " + shape.strips().size() + " strips: "
                + String.join(", ", shape.strips()) + ".");
        facts.add("Skin " + Figures.fixed(shape.skinArea(), 3, " ") + " m²; openings: "
                + listed(shape.openings().stream()
                        .map(o -> o.name() + " " + Figures.fixed(shape.openingArea(o.name()), 3, " ") + " m²")
                        .toList())
                + ".");
        facts.add("Walls: " + listed(shape.walls().stream().map(Wall::name).toList()) + ".");
        facts.add(tub.hardpoints().size() + " hardpoints, " + tub.joints().size() + " joints, "
                + tub.stiffeners().size() + " stiffeners; cases: "
                + listed(tub.cases().stream().map(c -> c.name()).toList()) + ".");
        facts.addAll(CarWords.of(tub.fittings()));
        if (!design.asDesigned().cabin().isEmpty()) {
            facts.addAll(new CabinAnswer(
                            design.name(),
                            design.asDesigned(),
                            design.asDesigned().fit())
                    .words());
        }
        return facts;
    }

    private static String listed(List<String> names) {
        return names.isEmpty() ? "none" : names.stream().collect(Collectors.joining(", "));
    }
}
