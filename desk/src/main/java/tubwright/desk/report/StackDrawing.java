// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.util.List;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Core;
import tubwright.engine.material.Ply;

/** A laminate in section: plies hatched by their direction, core by its cells, outer surface on top. */
final class StackDrawing {
    private static final double WIDTH = 150;
    private static final double PLY = 7;
    private static final double CORE = 26;
    private static final double FILM = 2.5;
    /** Plies drawn before the middle of a long run is left out. */
    private static final int MOST = 24;

    private StackDrawing() {}

    /** Hatch patterns the drawings refer to; once per page. */
    static String patterns() {
        StringBuilder defs =
                new StringBuilder("<svg class=\"hidden\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs>");
        for (int angle = -75; angle <= 90; angle += 15) {
            defs.append("<pattern id=\"ud")
                    .append(name(angle))
                    .append("\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(");
            defs.append(-angle).append(")\"><path class=\"hatch\" d=\"M0 2.5H5\"/></pattern>");
            defs.append("<pattern id=\"cloth")
                    .append(name(angle))
                    .append("\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(");
            defs.append(-angle).append(")\"><path class=\"hatch\" d=\"M0 2.5H5M2.5 0V5\"/></pattern>");
        }
        defs.append("<pattern id=\"cells\" width=\"6\" height=\"10\" patternUnits=\"userSpaceOnUse\">"
                + "<path class=\"hatch\" d=\"M3 0V10\"/></pattern>");
        defs.append("<pattern id=\"foam\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\">"
                + "<circle class=\"grain\" cx=\"1.5\" cy=\"1.5\" r=\".7\"/><circle class=\"grain\" cx=\"4.5\" cy=\"4.5\" r=\".7\"/>"
                + "</pattern>");
        return defs.append("</defs></svg>").toString();
    }

    /** The section of one laminate. */
    static String draw(Laminate laminate) {
        List<Layer> layers = laminate.layers();
        boolean tooMany = layers.size() > MOST;
        double height = 2;
        for (int i = 0; i < layers.size(); i++) {
            height += shown(i, layers.size(), tooMany) ? height(layers.get(i)) : 0;
        }
        height += tooMany ? 10 : 0;
        Svg svg = new Svg(WIDTH, height, "Section through the laminate, outer surface on top");
        double y = 1;
        boolean gap = false;
        for (int i = 0; i < layers.size(); i++) {
            if (!shown(i, layers.size(), tooMany)) {
                if (!gap) {
                    svg.text("note middle", WIDTH / 2, y + 8, "…");
                    y += 10;
                    gap = true;
                }
                continue;
            }
            Layer layer = layers.get(i);
            double thick = height(layer);
            svg.rectangle("layer " + kind(layer), 1, y, WIDTH - 2, thick);
            String fill = fill(layer);
            if (!fill.isEmpty()) {
                svg.rectangle("pattern", "url(#" + fill + ")", 1, y, WIDTH - 2, thick);
            }
            y += thick;
        }
        return svg.done();
    }

    private static boolean shown(int i, int count, boolean tooMany) {
        return !tooMany || i < MOST / 2 || i >= count - MOST / 2;
    }

    private static double height(Layer layer) {
        return switch (layer.role()) {
            case PLY -> PLY;
            case CORE -> CORE;
            case FILM -> FILM;
            case SHEET -> 12;
        };
    }

    private static String kind(Layer layer) {
        return switch (layer.role()) {
            case PLY -> layer.material() instanceof Ply ply && ply.form() == Ply.Form.CLOTH ? "cloth" : "ud";
            case CORE -> "core";
            case FILM -> "film";
            case SHEET -> "sheet";
        };
    }

    private static String fill(Layer layer) {
        return switch (layer.role()) {
            case PLY -> kind(layer) + name(nearest(layer.degrees()));
            case CORE -> layer.material() instanceof Core core && core.form() == Core.Form.FOAM ? "foam" : "cells";
            case FILM, SHEET -> "";
        };
    }

    private static int nearest(double degrees) {
        int rounded = (int) Math.round(degrees / 15) * 15;
        return rounded <= -90 ? rounded + 180 : rounded;
    }

    private static String name(int angle) {
        return angle < 0 ? "m" + -angle : Integer.toString(angle);
    }
}
