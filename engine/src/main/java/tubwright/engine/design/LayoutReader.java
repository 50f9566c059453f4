// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Span;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.mesh.SurfaceLayout;
import tubwright.engine.mesh.SurfaceLayout.Area;
import tubwright.engine.mesh.SurfaceLayout.AroundOpening;
import tubwright.engine.mesh.SurfaceLayout.AroundPoint;
import tubwright.engine.mesh.SurfaceLayout.Everywhere;
import tubwright.engine.mesh.SurfaceLayout.OnStrips;
import tubwright.engine.mesh.SurfaceLayout.OnWall;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Hardpoint;

/** Zones, patches and pieces: what lies where, and which laminate each zone has. */
final class LayoutReader {
    private final DesignText text;
    private final TubShape shape;
    private final LaminateReader laminates;
    private final HardpointReader hardpoints;
    private final List<String> strips;
    private final List<String> walls;
    private final Set<String> usedLaminates = new LinkedHashSet<>();
    private final Map<String, Laminate> zoneLaminates = new LinkedHashMap<>();
    private final Map<String, List<Layer>> patchPlies = new LinkedHashMap<>();

    LayoutReader(DesignText text, TubShape shape, LaminateReader laminates, HardpointReader hardpoints) {
        this.text = text;
        this.shape = shape;
        this.laminates = laminates;
        this.hardpoints = hardpoints;
        this.strips = shape.strips();
        this.walls = shape.walls().stream().map(Wall::name).toList();
    }

    /** The layout; afterwards {@link #zoneLaminates} and {@link #patchPlies} are known. */
    SurfaceLayout read() {
        Faults faults = new Faults();
        List<SurfaceLayout.Zone> zones = new ArrayList<>();
        for (Named<ZoneText> zone : text.zones()) {
            faults.attempt(() -> zone(zone)).ifPresent(zones::add);
        }
        List<SurfaceLayout.Patch> patches = new ArrayList<>();
        for (Named<PatchText> patch : text.patches()) {
            faults.attempt(() -> patches(patch)).ifPresent(patches::addAll);
        }
        List<SurfaceLayout.Piece> pieces = new ArrayList<>();
        for (Named<List<Name>> piece : text.pieces()) {
            faults.attempt(() -> piece(piece)).ifPresent(pieces::add);
        }
        faults.check(this::refuseSharedParts);
        if (faults.none()) {
            faults.check(this::fillFromNames);
        }
        faults.throwIfAny();
        return new SurfaceLayout(zones, patches, pieces);
    }

    /** Laminate of every zone. */
    Map<String, Laminate> zoneLaminates() {
        return zoneLaminates;
    }

    /** Names of the laminates that lie somewhere. */
    Set<String> usedLaminates() {
        return usedLaminates;
    }

    /** Plies of every patch. */
    Map<String, List<Layer>> patchPlies() {
        return patchPlies;
    }

    private SurfaceLayout.Zone zone(Named<ZoneText> named) {
        ZoneText zone = named.value();
        long onWalls = zone.on().stream().filter(n -> walls.contains(n.text())).count();
        zone.on().forEach(this::requirePart);
        if (onWalls > 0 && onWalls < zone.on().size()) {
            throw new DesignError(
                    named.name().place(),
                    "zone \"" + named.name() + "\" lies on strips and on walls",
                    "make two zones of it; both may name the same laminate");
        }
        refuseThickerThanTheTub(zone.laminate());
        usedLaminates.add(zone.laminate().text());
        zoneLaminates.put(named.name().text(), laminates.placed(zone.laminate(), onWalls > 0));
        return new SurfaceLayout.Zone(named.name().text(), areas(zone.on(), zone.x()));
    }

    /** A slip of the unit or of a power of ten: two such skins would meet in the middle of the tub. */
    private void refuseThickerThanTheTub(Name name) {
        double thickness = laminates.get(name).laminate().thickness();
        double half = shape.narrowestHalf();
        if (thickness > half) {
            throw new DesignError(
                    name.place(),
                    String.format(
                            Locale.ROOT,
                            "laminate \"%s\" is %.4g mm thick, but the tub is only %.0f mm from side to side or from"
                                    + " bottom to top where it is smallest",
                            name,
                            thickness * 1e3,
                            half * 2e3),
                    "look at the units of its core thickness and plies");
        }
    }

    private void requirePart(Name name) {
        List<String> parts = new ArrayList<>(strips);
        parts.addAll(walls);
        Names.require(name, parts, "strip or wall");
    }

    private List<Area> areas(List<Name> on, Optional<Span> x) {
        List<String> onStrips =
                on.stream().map(Name::text).filter(strips::contains).toList();
        List<Area> areas = new ArrayList<>();
        if (!onStrips.isEmpty()) {
            double from = x.map(Span::from).orElse(Double.NEGATIVE_INFINITY);
            double to = x.map(Span::to).orElse(Double.POSITIVE_INFINITY);
            if (x.isPresent() && (to <= shape.front() || from >= shape.rear())) {
                throw new DesignError(
                        x.get().place(),
                        "\"" + x.get().text() + "\" lies outside the tub",
                        String.format(
                                Locale.ROOT,
                                "the tub runs from %.0f to %.0f mm",
                                shape.front() * 1e3,
                                shape.rear() * 1e3));
            }
            areas.add(new OnStrips(onStrips, from, to, Side.BOTH));
        }
        on.stream().map(Name::text).filter(walls::contains).forEach(w -> areas.add(new OnWall(w)));
        return areas;
    }

    /** Parts that no zone covers wholly take the laminate of their own name. */
    private void fillFromNames() {
        Faults faults = new Faults();
        List<Name> stripNames = text.shape().strips();
        for (Name strip : stripNames) {
            if (!covered(strip.text())) {
                faults.check(() -> fill(strip, "strip", false));
            }
        }
        for (Named<WallText> wall : text.shape().walls()) {
            boolean zoned = text.zones().stream()
                    .anyMatch(z -> z.value().on().stream()
                            .anyMatch(n -> n.text().equals(wall.name().text())));
            if (!zoned) {
                faults.check(() -> fill(wall.name(), "wall", true));
            }
        }
        faults.throwIfAny();
    }

    private void fill(Name part, String kind, boolean onWall) {
        if (!laminates.all().containsKey(part.text())) {
            throw new DesignError(
                    part.place(),
                    kind + " \"" + part + "\" has no laminate" + (onWall ? "" : " over some of its length"),
                    "write a zone on it, or a laminate called \"" + part + "\"");
        }
        Name name = new Name(part.text(), part.place());
        refuseThickerThanTheTub(name);
        usedLaminates.add(part.text());
        zoneLaminates.putIfAbsent(part.text(), laminates.placed(part, onWall));
    }

    /** Whether zones together cover a strip from end to end. */
    private boolean covered(String strip) {
        List<double[]> spans = new ArrayList<>();
        for (Named<ZoneText> zone : text.zones()) {
            if (zone.value().on().stream().anyMatch(n -> n.text().equals(strip))) {
                spans.add(new double[] {
                    zone.value().x().map(Span::from).orElse(Double.NEGATIVE_INFINITY),
                    zone.value().x().map(Span::to).orElse(Double.POSITIVE_INFINITY)
                });
            }
        }
        spans.sort((a, b) -> Double.compare(a[0], b[0]));
        double reached = shape.front();
        for (double[] span : spans) {
            if (span[0] > reached + 1e-9) {
                return false;
            }
            reached = Math.max(reached, span[1]);
        }
        return reached >= shape.rear() - 1e-9;
    }

    private SurfaceLayout.Piece piece(Named<List<Name>> named) {
        named.value().forEach(this::requirePart);
        return new SurfaceLayout.Piece(named.name().text(), areas(named.value(), Optional.empty()));
    }

    private void refuseSharedParts() {
        Map<String, String> owners = new LinkedHashMap<>();
        for (Named<List<Name>> piece : text.pieces()) {
            for (Name part : piece.value()) {
                String before = owners.putIfAbsent(part.text(), piece.name().text());
                if (before != null) {
                    throw new DesignError(
                            part.place(),
                            "\"" + part + "\" is in piece \"" + before + "\" already",
                            "each strip and each wall comes out of one mould");
                }
            }
        }
    }

    private List<SurfaceLayout.Patch> patches(Named<PatchText> named) {
        PatchText patch = named.value();
        List<Layer> plies = laminates.plies(patch);
        String name = named.name().text();
        List<SurfaceLayout.Patch> patches = new ArrayList<>();
        if (!patch.on().isEmpty()) {
            patch.on().forEach(this::requirePart);
            patches.add(new SurfaceLayout.Patch(name, areas(patch.on(), patch.x()), new Everywhere()));
        }
        for (Name opening : patch.around()) {
            double width = need(patch.width(), named.name(), "width").si();
            patches.add(new SurfaceLayout.Patch(
                    numbered(name, opening, patch.around()),
                    areasOf(opening),
                    new AroundOpening(opening.text(), width)));
        }
        for (Name at : patch.at()) {
            double radius = need(patch.diameter(), named.name(), "diameter").si() / 2;
            for (Hardpoint hardpoint : hardpoints.find(at)) {
                double[] foot = hardpoints.footOf(hardpoint);
                List<Area> areas = walls.contains(hardpoint.part())
                        ? List.of(new OnWall(hardpoint.part()))
                        : List.of(new OnStrips(strips, foot[0] - radius, foot[0] + radius, Side.BOTH));
                patches.add(
                        new SurfaceLayout.Patch(name + ": " + hardpoint.name(), areas, new AroundPoint(foot, radius)));
            }
        }
        patches.forEach(p -> patchPlies.put(p.name(), plies));
        return patches;
    }

    private static String numbered(String name, Name opening, List<Name> all) {
        return all.size() == 1 ? name : name + ": " + opening;
    }

    private static Amount need(Optional<Amount> amount, Name patch, String key) {
        return amount.orElseThrow(() -> new DesignError(
                patch.place(),
                "patch \"" + patch + "\": the key \"" + key + "\" is missing",
                key.equals("width") ? "say how wide the band round the opening is" : "say how large the patch is"));
    }

    private List<Area> areasOf(Name opening) {
        int slash = opening.text().indexOf('/');
        Names.require(opening, LineNames.openings(shape), "opening");
        return slash < 0 || shape.openings().stream().anyMatch(o -> o.name().equals(opening.text()))
                ? List.of(OnStrips.whole(strips))
                : List.of(new OnWall(opening.text().substring(0, slash)));
    }
}
