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
        text.corners().forEach(c -> lines.add(corner(c)));
        text.openings().forEach(o -> lines.add(opening(o)));
        text.stations().forEach(w -> lines.add(station(w)));
        return lines.stream()
                .map(line -> new Stiffener(line, geometry.of(metal), offset, words))
                .toList();
    }

    private String corner(Name name) {
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
                return LineNames.corner(a, b);
            }
        }
        throw Names.unknown(name, corners, "corner line");
    }

    private String opening(Name name) {
        List<String> known = new ArrayList<>();
        shape.openings().forEach(o -> known.add(o.name()));
        shape.walls().forEach(w -> w.holes().forEach(h -> known.add(w.name() + "/" + h.name())));
        Names.require(name, known, "opening");
        return LineNames.openingEdge(name.text());
    }

    private String station(Name name) {
        List<String> known = shape.walls().stream().map(w -> w.name()).toList();
        Names.require(name, known, "wall");
        return LineNames.station(name.text());
    }
}
