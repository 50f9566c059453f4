// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Place;
import tubwright.engine.joint.FastenerFlexibility.Huth;
import tubwright.engine.joint.FastenerFlexibility.Plate;
import tubwright.engine.joint.JointDetail;
import tubwright.engine.laminate.EngineeringConstants;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.mesh.SurfaceLayout;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Joint;

/** The joints of a design: one for every seam of the skin and every wall, written or by default. */
final class JointReader {
    private static final String ALL = "all";
    private static final double DEFAULT_OVERLAP = 0.025;
    private static final String DEFAULT_ADHESIVE = "paste-epoxy";

    private final TubShape shape;
    private final MaterialReader materials;
    private final LaminateReader laminates;
    private final List<Warning> warnings;
    private final List<String> seams;
    private final List<String> walls;

    JointReader(
            TubShape shape,
            SurfaceLayout layout,
            MaterialReader materials,
            LaminateReader laminates,
            List<Warning> warnings) {
        this.shape = shape;
        this.materials = materials;
        this.laminates = laminates;
        this.warnings = warnings;
        this.seams = seams(shape, layout);
        this.walls = shape.walls().stream().map(Wall::name).toList();
    }

    /** Names of the seams: where the piece changes from one strip to the next. */
    private static List<String> seams(TubShape shape, SurfaceLayout layout) {
        Map<String, String> pieceOf = new HashMap<>();
        for (SurfaceLayout.Piece piece : layout.pieces()) {
            for (SurfaceLayout.Area area : piece.areas()) {
                if (area instanceof SurfaceLayout.OnStrips on) {
                    on.strips().forEach(s -> pieceOf.put(s, piece.name()));
                }
            }
        }
        Set<String> seams = new LinkedHashSet<>();
        for (int i = 0; i + 1 < shape.strips().size(); i++) {
            String lower = pieceOf.getOrDefault(shape.strips().get(i), SurfaceLayout.DEFAULT_PIECE);
            String upper = pieceOf.getOrDefault(shape.strips().get(i + 1), SurfaceLayout.DEFAULT_PIECE);
            if (!lower.equals(upper)) {
                seams.add(LineNames.seam(lower, upper));
            }
        }
        return List.copyOf(seams);
    }

    List<Joint> read(List<Named<JointText>> texts, Place place) {
        Faults faults = new Faults();
        Map<String, Joint> joints = new LinkedHashMap<>();
        // Joints for "all" first, so that those which name their lines take their place.
        for (boolean general : new boolean[] {true, false}) {
            for (Named<JointText> text : texts) {
                faults.check(() ->
                        lines(text.value(), general).forEach(line -> joints.put(line.name, joint(line, text))));
            }
        }
        faults.throwIfAny();
        seams.stream()
                .map(s -> new Line(s, false))
                .filter(l -> !joints.containsKey(l.name))
                .forEach(l -> joints.put(l.name, byDefault(l, place)));
        walls.stream()
                .flatMap(w -> LineNames.wallEdges(shape, w).stream())
                .map(w -> new Line(w, true))
                .filter(l -> !joints.containsKey(l.name))
                .forEach(l -> joints.put(l.name, byDefault(l, place)));
        return List.copyOf(joints.values());
    }

    private record Line(String name, boolean ofWall) {}

    private List<Line> lines(JointText text, boolean general) {
        List<Line> lines = new ArrayList<>();
        for (Name seam : text.seams()) {
            boolean all = seam.text().equals(ALL);
            if (all == general) {
                (all ? seams : List.of(seam(seam))).forEach(s -> lines.add(new Line(s, false)));
            }
        }
        for (Name wall : text.walls()) {
            boolean all = wall.text().equals(ALL);
            if (all == general) {
                if (!all) {
                    Names.require(wall, walls, "wall");
                }
                (all ? walls : List.of(wall.text()))
                        .forEach(w -> LineNames.wallEdges(shape, w).forEach(e -> lines.add(new Line(e, true))));
            }
        }
        return lines;
    }

    private String seam(Name name) {
        String[] parts = name.text().split("\\s*/\\s*");
        if (parts.length == 2) {
            for (String way : List.of(LineNames.seam(parts[0], parts[1]), LineNames.seam(parts[1], parts[0]))) {
                if (seams.contains(way)) {
                    return way;
                }
            }
        }
        throw Names.unknown(name, seams, "seam");
    }

    private Joint joint(Line line, Named<JointText> named) {
        JointText text = named.value();
        JointStiffness stiffness = new JointStiffness(0, 0, 0);
        double mass = 0;
        List<String> words = new ArrayList<>();
        if (text.bonded().isPresent()) {
            BondedText bonded = text.bonded().get();
            Adhesive adhesive = materials.get(bonded.adhesive(), Adhesive.class, "adhesive");
            stiffness = stiffness.plus(bonded(adhesive, bonded));
            mass += bondMass(adhesive, bonded);
            words.add("bonded "
                    + bonded.arrangement()
                            .name()
                            .toLowerCase(java.util.Locale.ROOT)
                            .replace('_', ' ') + ", "
                    + Sections.mm(bonded.overlap().si()) + " × "
                    + Sections.mm(bonded.bondLine().si()) + " mm "
                    + adhesive.name());
        }
        double pitch = 0;
        int rows = 0;
        if (text.riveted().isPresent()) {
            RivetedText riveted = text.riveted().get();
            stiffness = stiffness.plus(fastened(riveted));
            mass += fastenerMass(riveted);
            pitch = riveted.pitch().si();
            rows = riveted.rows();
            words.add((riveted.kind() == RivetedText.Kind.RIVETED_METAL ? "riveted, " : "bolted, ")
                    + Sections.mm(riveted.diameter().si()) + " mm at " + Sections.mm(pitch) + " mm, " + rows
                    + (rows == 1 ? " row" : " rows"));
            checkPitch(riveted);
        }
        return new Joint(
                line.name,
                stiffness.shear(),
                stiffness.shear(),
                stiffness.normal(),
                stiffness.rotation(),
                mass,
                pitch,
                rows,
                String.join("; ", words),
                new JointDetail(text.bonded().map(this::bond), text.riveted().map(this::fasteners)));
    }

    private JointDetail.Bond bond(BondedText text) {
        return new JointDetail.Bond(
                JointDetail.Lie.valueOf(text.arrangement().name()),
                materials.get(text.adhesive(), Adhesive.class, "adhesive"),
                text.bondLine().si(),
                text.overlap().si(),
                text.tape().map(t -> laminates.get(t).laminate()));
    }

    private JointDetail.Fasteners fasteners(RivetedText text) {
        double d = text.diameter().si();
        return new JointDetail.Fasteners(
                d,
                text.headDiameter().map(Amount::si).orElse(2 * d),
                text.pitch().si(),
                text.rows(),
                text.rowSpacing().map(Amount::si).orElse(0.0),
                text.edgeDistance().map(Amount::si).orElse(2 * d),
                materials.get(text.fastener(), Metal.class, "metal"),
                text.head().head(),
                formula(text.kind()));
    }

    private static Huth formula(RivetedText.Kind kind) {
        return switch (kind) {
            case RIVETED_METAL -> Huth.RIVETED_METAL;
            case BOLTED_METAL -> Huth.BOLTED_METAL;
            case BOLTED_CARBON -> Huth.BOLTED_CARBON;
        };
    }

    private static JointStiffness bonded(Adhesive adhesive, BondedText text) {
        Elasticity e = adhesive.elasticity();
        double width = text.overlap().si();
        double t = text.bondLine().si();
        return text.arrangement() == BondedText.Arrangement.TEE
                ? JointStiffness.tee(e.e1(), e.g12(), e.nu12(), width, t)
                : JointStiffness.bonded(
                        e.e1(), e.g12(), e.nu12(), width, t, text.arrangement().faces());
    }

    /** Adhesive under every face, and the tape: as wide as the overlap in a lap, and up the wall as well in a tee. */
    private double bondMass(Adhesive adhesive, BondedText text) {
        double width = text.overlap().si();
        int faces = text.arrangement().faces();
        double glue = adhesive.density() * width * text.bondLine().si() * faces;
        double tapeWidth = text.arrangement() == BondedText.Arrangement.SINGLE_LAP ? width : 2 * width;
        int tapes = text.arrangement() == BondedText.Arrangement.TEE ? 2 : 1;
        double tape = text.tape()
                .map(t -> laminates.get(t).laminate().arealMass() * tapeWidth * tapes)
                .orElse(0.0);
        return glue + tape;
    }

    private JointStiffness fastened(RivetedText text) {
        double[] sheets = text.sheets().si();
        if (sheets.length != 2) {
            throw new DesignError(
                    text.sheets().place(),
                    sheets.length + " sheets are joined",
                    "give two thicknesses: \"1.2, 1.6 mm\"");
        }
        Metal fastener = materials.get(text.fastener(), Metal.class, "metal");
        double modulus = sheetModulus(text.sheetMaterial());
        if (text.rows() > 1 && text.rowSpacing().isEmpty()) {
            throw new DesignError(
                    text.diameter().place(),
                    "the distance between the rows is missing",
                    "write \"row spacing: 16 mm\"");
        }
        return JointStiffness.fastened(
                formula(text.kind()),
                new Plate(sheets[0], modulus),
                new Plate(sheets[1], modulus),
                text.diameter().si(),
                fastener.youngsModulus(),
                text.pitch().si(),
                text.rows(),
                text.rowSpacing().map(Amount::si).orElse(0.0));
    }

    /** A metal's modulus, or a laminate's along its reference direction. */
    private double sheetModulus(Name name) {
        Optional<LaminateReader.Entry> laminate =
                Optional.ofNullable(laminates.all().get(name.text()));
        if (laminate.isPresent()) {
            return EngineeringConstants.membrane(laminate.get().laminate()).ex();
        }
        Material material = materials.get(name);
        return material.elasticity().e1();
    }

    /** One fastener: its shank through both sheets and two heads, together taken as 2.6 diameters of shank (assumed). */
    private double fastenerMass(RivetedText text) {
        double[] sheets = text.sheets().si();
        Metal fastener = materials.get(text.fastener(), Metal.class, "metal");
        double d = text.diameter().si();
        double each = text.massEach()
                .map(Amount::si)
                .orElse(fastener.density() * Math.PI / 4 * d * d * (sheets[0] + sheets[1] + 2.6 * d));
        double flange = text.flange().si() * sheets[0] * materialDensity(text.sheetMaterial());
        return each * text.rows() / text.pitch().si() + flange;
    }

    private double materialDensity(Name name) {
        LaminateReader.Entry laminate = laminates.all().get(name.text());
        return laminate != null
                ? laminate.laminate().arealMass() / laminate.laminate().thickness()
                : materials.get(name).density();
    }

    private void checkPitch(RivetedText text) {
        if (text.pitch().si() <= text.diameter().si()) {
            throw new DesignError(
                    text.pitch().place(),
                    "the fasteners stand in one another: pitch " + text.pitch().text() + ", diameter "
                            + text.diameter().text(),
                    "a pitch of four to five diameters is common practice");
        }
        if (text.pitch().si() < 4 * text.diameter().si()) {
            Warning warning = new Warning(
                    text.pitch().place(),
                    "the fasteners stand closer than four diameters",
                    "pitch 4 to 5 d, common practice, from memory");
            if (!warnings.contains(warning)) {
                warnings.add(warning);
            }
        }
    }

    private Joint byDefault(Line line, Place place) {
        Adhesive paste = materials.get(new Name(DEFAULT_ADHESIVE, place), Adhesive.class, "adhesive");
        Elasticity e = paste.elasticity();
        double t = paste.properties().require(tubwright.engine.material.Property.THICKNESS);
        JointStiffness k = line.ofWall
                ? JointStiffness.tee(e.e1(), e.g12(), e.nu12(), DEFAULT_OVERLAP, t)
                : JointStiffness.bonded(e.e1(), e.g12(), e.nu12(), DEFAULT_OVERLAP, t, 1);
        double mass = paste.density() * DEFAULT_OVERLAP * t * (line.ofWall ? 2 : 1);
        String words = "bonded " + (line.ofWall ? "tee" : "single lap") + ", " + Sections.mm(DEFAULT_OVERLAP) + " × "
                + Sections.mm(t) + " mm " + paste.name();
        warnings.add(new Warning(
                place,
                "no joint is written for \"" + line.name + "\"; taken as " + words + " (by default)",
                "write it under \"joints\" to be sure"));
        JointDetail.Lie lie = line.ofWall ? JointDetail.Lie.TEE : JointDetail.Lie.SINGLE_LAP;
        return new Joint(
                line.name,
                k.shear(),
                k.shear(),
                k.normal(),
                k.rotation(),
                mass,
                0,
                0,
                words + " (by default)",
                new JointDetail(
                        Optional.of(new JointDetail.Bond(lie, paste, t, DEFAULT_OVERLAP, Optional.empty())),
                        Optional.empty()));
    }
}
