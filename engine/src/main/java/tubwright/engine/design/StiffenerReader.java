// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.material.Metal;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Stiffener;

/** The bars of a design, one for each line they follow. */
final class StiffenerReader {
    private final TubShape shape;
    private final MaterialReader materials;

    StiffenerReader(TubShape shape, MaterialReader materials) {
        this.shape = shape;
        this.materials = materials;
    }

    List<Stiffener> read(List<Named<StiffenerText>> texts) {
        Faults faults = new Faults();
        List<Stiffener> all = new ArrayList<>();
        for (Named<StiffenerText> text : texts) {
            faults.attempt(() -> bars(text)).ifPresent(all::addAll);
        }
        faults.throwIfAny();
        return all;
    }

    private List<Stiffener> bars(Named<StiffenerText> named) {
        StiffenerText text = named.value();
        Metal metal = materials.get(text.material(), Metal.class, "metal");
        Sections.Geometry geometry = Sections.of(text);
        double offset = text.offset().map(Amount::si).orElse(geometry.depth());
        String words = named.name() + ": " + geometry.words() + ", " + metal.name();
        List<String> lines = new ArrayList<>();
        text.corners().forEach(c -> lines.addAll(corner(c)));
        text.openings().forEach(o -> lines.addAll(opening(o)));
        text.stations().forEach(w -> lines.addAll(station(w)));
        return lines.stream()
                .map(line -> new Stiffener(line, geometry.of(metal), offset, words))
                .toList();
    }

    private List<String> corner(Name name) {
        List<String> corners = new ArrayList<>();
        List<String> strips = shape.strips();
        for (int i = 0; i + 1 < strips.size(); i++) {
            corners.add(strips.get(i) + " / " + strips.get(i + 1));
        }
        String[] parts = name.text().split("\\s*/\\s*");
        for (int i = 0; i < corners.size() && parts.length == 2; i++) {
            String a = strips.get(i);
            String b = strips.get(i + 1);
            if (parts[0].equals(a) && parts[1].equals(b) || parts[0].equals(b) && parts[1].equals(a)) {
                return LineNames.corners(a, b);
            }
        }
        throw Names.unknown(name, corners, "corner line");
    }

    private List<String> opening(Name name) {
        Names.require(name, LineNames.openings(shape), "opening");
        return LineNames.openingEdges(shape, name.text());
    }

    private List<String> station(Name name) {
        Names.require(name, shape.walls().stream().map(Wall::name).toList(), "wall");
        return LineNames.stations(shape, name.text());
    }
}
