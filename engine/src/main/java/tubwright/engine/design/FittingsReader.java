// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.load.Vehicle;
import tubwright.engine.material.Metal;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.BeamSection;
import tubwright.engine.structure.Fittings;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Mechanisms;
import tubwright.engine.structure.StructureException;

/** What is bolted to the tub: nodes, tubes, bodies and masses with their points found. */
final class FittingsReader {
    /** Modulus behind the stiffnesses of an elastic body, Pa; any value gives the same body. */
    private static final double MODULUS = 70e9;

    /** A rigid motion must cost less than this share of the largest stiffness. */
    private static final double ANCHORED = 1e-6;

    private final TubShape shape;
    private final MaterialReader materials;
    private final PointBook points;

    FittingsReader(TubShape shape, MaterialReader materials, PointBook points) {
        this.shape = shape;
        this.materials = materials;
        this.points = points;
    }

    /**
     * Reads them and takes their points up in the book.
     *
     * @param hardpoints of the tub
     * @param vehicle reads the car once all points are known
     */
    Fittings read(DesignText text, List<Hardpoint> hardpoints, VehicleReader vehicle) {
        Faults faults = new Faults();
        List<Fittings.Node> nodes = new ArrayList<>();
        text.nodes().forEach(n -> faults.attempt(() -> points.nodes(n)).ifPresent(nodes::addAll));
        List<Fittings.Body> bodies = new ArrayList<>();
        text.bodies().forEach(b -> faults.attempt(() -> body(b)).ifPresent(bodies::add));
        faults.throwIfAny();
        List<Fittings.Tube> tubes = new ArrayList<>();
        text.tubes().forEach(t -> faults.attempt(() -> tubes(t)).ifPresent(tubes::addAll));
        List<Fittings.Mass> masses = new ArrayList<>();
        text.masses().forEach(m -> faults.attempt(() -> mass(m)).ifPresent(masses::add));
        faults.throwIfAny();
        Fittings still = new Fittings(nodes, tubes, bodies, masses, Optional.empty());
        refuseMechanism(text, still, hardpoints);
        Optional<Vehicle> car = vehicle.read(text);
        return new Fittings(nodes, tubes, bodies, masses, car);
    }

    private static void refuseMechanism(DesignText text, Fittings fittings, List<Hardpoint> hardpoints) {
        Optional<String> free;
        try {
            free = Mechanisms.find(fittings, hardpoints);
        } catch (StructureException e) {
            throw new DesignError(text.place(), e.getMessage(), e.remedy());
        }
        free.ifPresent(name -> {
            String written = name.replaceFirst(" [LR]$", "");
            throw new DesignError(
                    placeOf(text, written).orElse(text.tub()).place(),
                    "\"" + name + "\" can move though all hardpoints stand still: a mechanism",
                    "a body needs three mounts or more that are not on one line; a node where pinned tubes meet needs"
                            + " three that are not in one plane");
        });
    }

    private static Optional<Name> placeOf(DesignText text, String written) {
        return java.util.stream.Stream.concat(
                        text.nodes().stream().map(Named::name),
                        text.bodies().stream()
                                .flatMap(b -> java.util.stream.Stream.concat(
                                        java.util.stream.Stream.of(b.name()),
                                        b.value().points().stream().map(Named::name))))
                .filter(n -> n.text().equals(written))
                .findFirst();
    }

    private List<Fittings.Tube> tubes(Named<TubeText> named) {
        TubeText text = named.value();
        if (text.through().size() < 2) {
            throw new DesignError(
                    named.name().place(),
                    "tube \"" + named.name() + "\" runs through fewer than two points",
                    "name two or more under \"through\"");
        }
        Metal metal = materials.get(text.material(), Metal.class, "metal");
        Sections.Geometry geometry = Sections.tube(text.roundTube(), text.squareTube());
        BeamSection section = BeamSection.of(geometry.of(metal));
        String words = geometry.words() + ", " + metal.name();
        boolean both = text.through().stream().anyMatch(n -> points.find(n).size() > 1);
        Set<List<String>> stretches = new LinkedHashSet<>();
        for (boolean left : both ? new boolean[] {true, false} : new boolean[] {false}) {
            List<String> run = text.through().stream()
                    .map(n -> left ? points.find(n).getFirst() : points.find(n).getLast())
                    .toList();
            for (int i = 0; i + 1 < run.size(); i++) {
                if (run.get(i).equals(run.get(i + 1))) {
                    throw new DesignError(
                            text.through().get(i + 1).place(),
                            "tube \"" + named.name() + "\" runs from \"" + run.get(i) + "\" to itself",
                            "name another point");
                }
                stretches.add(List.of(run.get(i), run.get(i + 1)));
            }
        }
        return stretches.stream()
                .map(s -> {
                    double length = distance(points.at(s.get(0)), points.at(s.get(1)));
                    boolean pinned = text.ends() == TubeText.Ends.PINNED;
                    return new Fittings.Tube(named.name().text(), s.get(0), s.get(1), section, pinned, words, length);
                })
                .toList();
    }

    private static double distance(double[] a, double[] b) {
        return Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
    }

    private Fittings.Body body(Named<BodyText> named) {
        BodyText text = named.value();
        String name = named.name().text();
        double[] centre = PointBook.three(text.centreOfMass(), "centre of mass");
        List<String> mounts = new ArrayList<>();
        text.mounts().forEach(m -> mounts.addAll(points.find(m)));
        points.add(named.name(), name, centre);
        List<Fittings.Node> own = new ArrayList<>();
        text.points().forEach(p -> own.addAll(points.nodes(p)));
        double mass = Names.notNegative(text.mass(), name);
        Fittings.Build build = new Fittings.Rigid();
        if (!text.matrix().isEmpty()) {
            if (text.elastic().isPresent() || !own.isEmpty()) {
                throw new DesignError(
                        text.matrix().getFirst().place(),
                        "body \"" + name + "\" has a matrix, which goes with neither \"elastic\" nor \"points\"",
                        "give one of them: a matrix says how the mounts move, not what rides on the body");
            }
            build = new Fittings.AtMounts(matrix(named, mounts));
        } else if (text.elastic().isPresent()) {
            build = elastic(text.elastic().get(), centre);
        }
        return new Fittings.Body(
                name, mass, centre, mounts, text.mountStiffness().si(), build, own);
    }

    private static Fittings.Elastic elastic(ElasticText text, double[] centre) {
        double length = text.rear().si() - text.front().si();
        if (!(length > 0)) {
            throw new DesignError(
                    text.rear().place(), "the rear end of the body is not behind its front end", "x runs aft");
        }
        if (centre[0] < text.front().si() || centre[0] > text.rear().si()) {
            throw new DesignError(
                    text.front().place(),
                    "the body's centre of mass does not lie between its ends",
                    "let front and rear reach round it");
        }
        double shearModulus = MODULUS / 2.6;
        double inertia = text.bendingStiffness().si() * Math.pow(length, 3) / (3 * MODULUS);
        double torsion = text.torsionalStiffness().si() * length / shearModulus;
        double area = text.axialStiffness().si() * length / MODULUS;
        return new Fittings.Elastic(
                text.front().si(),
                text.rear().si(),
                new BeamSection(
                        MODULUS,
                        shearModulus,
                        0,
                        area,
                        inertia,
                        inertia,
                        torsion,
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY));
    }

    private double[] matrix(Named<BodyText> named, List<String> mounts) {
        List<Amounts> rows = named.value().matrix();
        int n = 3 * mounts.size();
        if (rows.size() != n) {
            throw new DesignError(
                    rows.getFirst().place(),
                    "the matrix of \"" + named.name() + "\" has " + rows.size() + " rows",
                    n + " are due: x, y, z of each of " + String.join(", ", mounts));
        }
        double[] k = new double[n * n];
        double largest = 0;
        for (int i = 0; i < n; i++) {
            if (rows.get(i).si().length != n) {
                throw new DesignError(
                        rows.get(i).place(),
                        "a row of the matrix has " + rows.get(i).si().length + " numbers",
                        n + " are due, as many as it has rows");
            }
            for (int j = 0; j < n; j++) {
                k[n * i + j] = rows.get(i).si()[j];
                largest = Math.max(largest, Math.abs(k[n * i + j]));
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                if (Math.abs(k[n * i + j] - k[n * j + i]) > ANCHORED * largest) {
                    throw new DesignError(
                            rows.get(i).place(),
                            "the matrix is not symmetric in row " + (i + 1) + " and column " + (j + 1),
                            "a stiffness is the same both ways round (Maxwell, Betti)");
                }
            }
        }
        refuseAnchored(rows.getFirst(), k, mounts, largest);
        return k;
    }

    /** A body that resists being moved as a whole would be held by the ground. */
    private void refuseAnchored(Amounts first, double[] k, List<String> mounts, double largest) {
        int n = 3 * mounts.size();
        for (int motion = 0; motion < 6; motion++) {
            double[] u = new double[n];
            double size = 0;
            for (int m = 0; m < mounts.size(); m++) {
                double[] x = points.at(mounts.get(m));
                double[] middle = points.at(mounts.getFirst());
                for (int d = 0; d < 3; d++) {
                    int axis = motion - 3;
                    int next = (axis + 1) % 3;
                    int last = (axis + 2) % 3;
                    if (motion < 3) {
                        u[3 * m + d] = d == motion ? 1 : 0;
                    } else if (d == last) {
                        u[3 * m + d] = x[next] - middle[next];
                    } else if (d == next) {
                        u[3 * m + d] = -(x[last] - middle[last]);
                    }
                    size = Math.max(size, Math.abs(u[3 * m + d]));
                }
            }
            for (int i = 0; i < n; i++) {
                double force = 0;
                for (int j = 0; j < n; j++) {
                    force += k[n * i + j] * u[j];
                }
                if (Math.abs(force) > 1e-3 * largest * size) {
                    throw new DesignError(
                            first.place(),
                            "the matrix resists moving the body as a whole, as if the ground held it",
                            "its rows must give no force for a movement of all mounts together, along or about any axis");
                }
            }
        }
    }

    private Fittings.Mass mass(Named<PlacedMassText> named) {
        PlacedMassText text = named.value();
        List<String> at = new ArrayList<>();
        text.at().forEach(n -> at.addAll(points.find(n)));
        List<String> known = new ArrayList<>(shape.strips());
        shape.walls().stream().map(Wall::name).forEach(known::add);
        text.on().forEach(n -> Names.require(n, known, "strip or wall"));
        Amount mass = text.mass();
        return new Fittings.Mass(
                named.name().text(),
                Names.notNegative(mass, named.name().text()),
                at,
                text.on().stream().map(Name::text).toList(),
                text.x().map(s -> s.from()).orElse(Double.NEGATIVE_INFINITY),
                text.x().map(s -> s.to()).orElse(Double.POSITIVE_INFINITY));
    }
}
