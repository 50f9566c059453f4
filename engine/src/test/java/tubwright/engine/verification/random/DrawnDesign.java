// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.random;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Pattern;

/**
 * A design document drawn from a seed: any number of frames and corners, fillets, walls with holes, openings, layups with
 * and without core, sheet, patches, pieces, joints, stiffeners, inserts, cases, variants. Most can be built; some cannot (an
 * opening that leaves its strip, a hardpoint beside its wall), and are to be refused in words.
 *
 * <p>Quantities stand in SI between the marks of {@link Units}; sides of the car as {@code «right»}.
 */
final class DrawnDesign {
    private static final Pattern WALL_ANGLE = Pattern.compile("‹(-?[0-9]+)›");

    private final Random random;
    private final StringBuilder text = new StringBuilder();
    private final List<String> strips = new ArrayList<>();
    private final List<String> openings = new ArrayList<>();
    private final List<String> hardpoints = new ArrayList<>();
    private final List<String> laminates = new ArrayList<>();
    private final List<String> panels = new ArrayList<>();
    private double front;
    private double rear;
    /** Half width, half height and middle height of the first and last frame. */
    private double[] first;

    private double[] last;

    DrawnDesign(long seed) {
        random = new Random(seed);
        shape();
        materials();
        layups();
        layout();
        attachments();
        cases();
        variants();
    }

    /** As a user would write it. */
    String text(Units units) {
        return units.write(WALL_ANGLE.matcher(text).replaceAll("$1"))
                .replace("«", "")
                .replace("»", "");
    }

    /** The mirror image about the centre plane. Skin and walls beside the centre line are mirrored as they come; plies of walls across are counted from left to right. */
    String mirrored(Units units) {
        String turned = WALL_ANGLE
                .matcher(text)
                .replaceAll(m -> Integer.toString(m.group(1).equals("90") ? 90 : -Integer.parseInt(m.group(1))));
        return units.write(turned)
                .replace("«right»", "«?»")
                .replace("«left»", "right")
                .replace("«?»", "left")
                .replace("«", "")
                .replace("»", "");
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private boolean oneIn(int n) {
        return random.nextInt(n) == 0;
    }

    private <T> T any(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    private String side() {
        return any(List.of("both", "both", "«right»", "«left»"));
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    private static String points(double[][] points) {
        StringBuilder all = new StringBuilder();
        for (double[] p : points) {
            all.append(String.format(Locale.ROOT, "(%.5f, %.5f) ", p[0], p[1]));
        }
        return all.toString().strip();
    }

    private void shape() {
        int n = 3 + random.nextInt(6);
        int frames = 2 + random.nextInt(4);
        double[] angle = new double[n];
        double[] bulge = new double[n];
        double[] radius = new double[n];
        for (int k = 0; k < n; k++) {
            boolean end = k == 0 || k == n - 1;
            angle[k] = Math.PI * (k + (end ? 0 : between(-.25, .25))) / (n - 1);
            bulge[k] = between(.85, 1.15);
            radius[k] = oneIn(3) ? 0 : between(.005, .05);
        }
        line("tub: drawn");
        line("shape:");
        line("  loft: %s", random.nextBoolean() ? "smooth" : "ruled");
        for (int k = 0; k < n - 1; k++) {
            strips.add("strip " + k);
        }
        line("  strips: [%s]", String.join(", ", strips));
        line("  frames:");
        front = between(-.5, .5);
        double x = front;
        double w = between(.12, .35);
        double h = between(.12, .35);
        double middle = between(.2, .4);
        for (int i = 0; i < frames; i++) {
            double[][] corners = new double[n][];
            StringBuilder radii = new StringBuilder();
            for (int k = 0; k < n; k++) {
                double y = k == 0 || k == n - 1 ? 0 : w * bulge[k] * Math.sin(angle[k]);
                corners[k] = new double[] {y, middle - h * bulge[k] * Math.cos(angle[k])};
                radii.append(k == 0 ? "" : ", ")
                        .append(String.format(Locale.ROOT, "%.5f", radius[k] * 2 * Math.min(w, h)));
            }
            line("    - {station: <L %.4f>, outline: \"<L %s>\", radii: \"<L %s>\"}", x, points(corners), radii);
            double[] size = {w, h, middle};
            first = i == 0 ? size : first;
            last = size;
            rear = x;
            x += between(.3, .8);
            w = Math.clamp(w * between(.7, 1.5), .1, .4);
            h = Math.clamp(h * between(.7, 1.5), .1, .4);
            middle += between(-.04, .04);
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            opening("opening " + i, openings.isEmpty());
        }
        line("  walls:");
        line("    front wall:");
        line("      station: <L %.4f>", front);
        if (oneIn(3)) {
            line("      holes: {access: {centre: \"<L (0, %.4f)>\", diameter: <L %.4f>}}", first[2], between(.02, .1));
        }
        line("    rear wall: {station: <L %.4f>}", rear);
        if (oneIn(3)) {
            double foot = between(front + .1, rear - .1);
            line(
                    "    seat back: {foot: <L %.4f>, head: <L %.4f>}",
                    foot, Math.clamp(foot + between(-.1, .2), front + .02, rear - .02));
        }
        if (oneIn(4)) {
            line(
                    "    web: {beside: <L %.4f>, x: <L %.4f .. %.4f>, sides: %s}",
                    between(.03, .08), front + .05, between(front + .2, rear), side());
        }
    }

    private void opening(String name, boolean opens) {
        if (opens) {
            line("  openings:");
        }
        openings.add(name);
        double from = between(front + .05, rear - .1);
        double to = Math.min(rear - .03, from + between(.05, .4));
        switch (random.nextInt(3)) {
            case 0 ->
                line(
                        "    %s: {view: above, strips: [%s], x: <L %.4f .. %.4f>, width: <L %.4f>, corner: <L %.4f>}",
                        name, strips.getLast(), from, to, between(.05, .25), between(.005, .02));
            case 1 ->
                line(
                        "    %s: {view: below, strips: [%s], centre: \"<L (%.4f, 0)>\", diameter: <L %.4f>}",
                        name, strips.getFirst(), (from + to) / 2, between(.04, .15));
            default -> {
                double height = first[2] + between(-.05, .05);
                double half = between(.015, .05);
                line(
                        "    %s: {view: side, strips: [%s], x: <L %.4f .. %.4f>, z: <L %.4f .. %.4f>, corner: <L %.4f>, sides: %s}",
                        name,
                        strips.get(strips.size() / 2),
                        from,
                        to,
                        height - half,
                        height + half,
                        half * between(.1, .9),
                        side());
            }
        }
    }

    private void materials() {
        line("materials:");
        line("  tape:");
        line("    kind: ud");
        line(
                "    properties: {density: <D 1600>, thickness: <L %.6f>, E1: <E %.4E>, E2: <E %.4E>, nu12: %.3f,"
                        + " G12: <E %.4E>, G13: <E %.4E>, G23: <E %.4E>}",
                between(.1e-3, .3e-3),
                between(100e9, 300e9),
                between(5e9, 12e9),
                between(.2, .35),
                between(3e9, 7e9),
                between(3e9, 7e9),
                between(2e9, 4e9));
        line("  comb:");
        line("    kind: honeycomb");
        line(
                "    properties: {density: <D %.1f>, E3: <E %.4E>, G13: <E %.4E>, G23: <E %.4E>}",
                between(30, 90), between(80e6, 600e6), between(80e6, 400e6), between(40e6, 200e6));
        line("  sheet:");
        line("    kind: metal");
        line("    properties: {density: <D 2700>, E1: <E 7.0E10>, nu12: .33}");
    }

    private void layups() {
        line("laminates:");
        for (int i = 2 + random.nextInt(3); i > 0; i--) {
            laminates.add("layup " + i);
        }
        layups(laminates, "%s");
        panels.addAll(List.of("panel 1", "panel 2"));
        layups(panels, "‹%s›");
        line("  strap: {stack: \"[45c/45c]\", plies: {c: pw-t650-976}}");
    }

    private void layups(List<String> names, String angle) {
        for (String name : names) {
            if (oneIn(5)) {
                line("  %s: {sheet: sheet, thickness: <L %.5f>}", name, between(.8e-3, 3e-3));
                continue;
            }
            String reference = oneIn(2) ? "" : ", reference: " + any(List.of("outer", "middle", "inner"));
            String plies = plies(2 + random.nextInt(4), angle);
            if (oneIn(3)) {
                line(
                        "  %s: {stack: \"[%s]%s\", plies: {t: tape, c: pw-t650-976}%s}",
                        name, plies, oneIn(2) ? "s" : "", reference);
            } else {
                String core = oneIn(3) ? "core(90)" : "core";
                line(
                        "  %s: {stack: \"[%s/%s/%s]\", plies: {t: tape, c: pw-t650-976}, core: %s, core thickness: <L %.5f>%s%s}",
                        name,
                        plies,
                        core,
                        oneIn(2) ? plies : plies(1 + random.nextInt(4), angle),
                        any(List.of("comb", "comb", "al-honeycomb-3.1")),
                        between(.004, .03),
                        oneIn(2) ? ", film: film-epoxy-150" : "",
                        reference);
            }
        }
    }

    private String plies(int many) {
        return plies(many, "%s");
    }

    private String plies(int many, String format) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < many; i++) {
            int angle = oneIn(3) ? random.nextInt(-89, 91) : any(List.of(0, 45, -45, 90));
            all.add(String.format(Locale.ROOT, format, angle) + (oneIn(3) ? "c" : "t"));
        }
        return String.join("/", all);
    }

    private void layout() {
        line("zones:");
        for (String strip : strips) {
            line("  zone of %s: {on: [%s], laminate: %s}", strip, strip, any(laminates));
        }
        line("  ends: {on: [front wall, rear wall], laminate: %s}", any(panels));
        if (text.indexOf("    seat back:") >= 0) {
            line("  back: {on: [seat back], laminate: %s}", any(panels));
        }
        if (text.indexOf("    web:") >= 0) {
            line("  webs: {on: [web], laminate: %s}", any(laminates));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            double from = between(front, rear - .05);
            line(
                    "  extra %d: {on: [%s], x: <L %.4f .. %.4f>, laminate: %s}",
                    i, any(strips), from, Math.min(rear, from + between(.05, .5)), any(laminates));
        }
        boolean patches = false;
        if (!openings.isEmpty() && oneIn(3)) {
            line("patches:");
            patches = true;
            line(
                    "  rim: {around: [%s], width: <L %.4f>, stack: \"[%s]\", plies: {t: tape, c: pw-t650-976}}",
                    openings.getFirst(), between(.01, .05), plies(2));
        }
        if (oneIn(3)) {
            if (!patches) {
                line("patches:");
            }
            double from = between(front, rear - .05);
            line(
                    "  band: {on: [%s], x: <L %.4f .. %.4f>, stack: \"[%s]\", plies: {t: tape, c: pw-t650-976}}",
                    any(strips), from, Math.min(rear, from + between(.03, .3)), plies(1));
        }
    }

    private void attachments() {
        boolean split = strips.size() > 1 && oneIn(2);
        if (split) {
            int cut = 1 + random.nextInt(strips.size() - 1);
            line("pieces:");
            line("  lower: [%s]", String.join(", ", strips.subList(0, cut)));
            line("  upper: [%s]", String.join(", ", strips.subList(cut, strips.size())));
        }
        boolean bonded = oneIn(4) ? false : true;
        if (split || bonded) {
            line("joints:");
        }
        if (split) {
            line(
                    oneIn(3)
                            ? "  seam: {seams: all, riveted: {diameter: <L .004>, pitch: <L %.4f>, fastener: sheet, sheets: \"<L .0015, .0015>\", sheet material: sheet}}"
                            : "  seam: {seams: all, bonded: {overlap: <L %.4f>, adhesive: paste-epoxy, arrangement: double lap, tape: strap}}",
                    between(.015, .04));
        }
        if (bonded) {
            line(
                    "  edges: {walls: all, bonded: {overlap: <L %.4f>, adhesive: paste-epoxy, bond line: <L .0003>}}",
                    between(.01, .03));
        }
        if (oneIn(4)) {
            int k = random.nextInt(strips.size() - 1);
            line("stiffeners:");
            line(
                    "  bar: {corners: [%s / %s], square tube: \"<L .02, .02, .0015>\", material: sheet}",
                    strips.get(k), strips.get(k + 1));
        }
        line("hardpoints:");
        pair("mount", "rear wall", last);
        pair("upper mount", "rear wall", last);
        if (oneIn(4)) {
            hardpoint(
                    "bracket",
                    String.format(
                            Locale.ROOT,
                            "on: %s, x: <L %.4f>, standoff: <L .02>",
                            strips.get(strips.size() / 2),
                            between(front + .05, front + .2)));
        } else {
            pair("bracket", "front wall", first);
        }
    }

    private void pair(String name, String wall, double[] size) {
        double sign = name.startsWith("upper") ? 1 : -1;
        hardpoint(
                name,
                String.format(
                        Locale.ROOT,
                        "on: %s, y: <L %.4f>, z: <L %.4f>",
                        wall,
                        between(.25, .6) * size[0],
                        size[2] + sign * between(.1, .45) * size[1]));
    }

    private void hardpoint(String name, String where) {
        hardpoints.add(name);
        line(
                "  %s: {%s, footprint: <L %.4f>, stiffness: <K %.4E>, rotational stiffness: <R %.4E>, mass: <W .08>}",
                name,
                where,
                between(.02, .05),
                1e8 * Math.pow(10, between(-.7, .7)),
                1e4 * Math.pow(10, between(-.7, .7)));
    }

    private void cases() {
        line("cases:");
        line("  torsion:");
        line("    hold: {mount: \"x, y, z\", upper mount: \"x, y, z\"}");
        line("    load at: [bracket]");
        line("    couple: <M 1000>");
        line("    front station: <L %.4f>", front + (rear - front) * between(.05, .3));
        line("    rear station: <L %.4f>", front + (rear - front) * between(.6, .95));
        if (oneIn(2)) {
            line("  bending:");
            line("    hold: {mount: \"x, y, z\", upper mount: \"x, y, z\"}");
            line("    load at: [bracket]");
            line("    force: <F 1000>");
            line("    station: <L %.4f>", front + .1);
        }
        line("mesh: {size: <L %.4f>}", between(.06, .1));
    }

    private void variants() {
        if (oneIn(3)) {
            return;
        }
        line("variants:");
        line("  other:");
        switch (random.nextInt(4)) {
            case 0 ->
                line(
                        "    laminates: {replace %s: {stack: \"[%s]\", plies: {t: tape, c: pw-t650-976}}}",
                        any(laminates), plies(4));
            case 1 -> line("    zones: {zone of %s: {laminate: %s}}", any(strips), any(laminates));
            case 2 -> line("    hardpoints: {bracket: {footprint: <L .06>}}");
            default -> {
                if (openings.isEmpty()) {
                    line("    mesh: {size: <L .08>}");
                } else {
                    line("    shape: {openings: {%s: none}}", openings.getLast());
                }
            }
        }
    }
}
