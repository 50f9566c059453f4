// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.strength.Check;

/**
 * What a hard body needs to get through a panel: slowly, by what shears and crushes ({@link Penetration}), and fast, skin by skin
 * ({@link Perforation}) with the core crushed in between. Estimates for comparing panels and planning tests.
 *
 * @param skins from the side that is hit; one where there is no core
 * @param slow answer for a slow punch
 * @param fastEnergy J to get through all of it fast; empty where something is not known
 * @param notChecked what is missing
 * @param validity where the estimates end
 */
public record PunchedPanel(
        List<Skin> skins,
        Penetration.Answer slow,
        OptionalDouble fastEnergy,
        List<Check.NotChecked> notChecked,
        List<String> validity) {
    /** Wider than this share of a skin's thickness a body pushes through locally; common practice, no source. */
    private static final double SLENDER = 4;

    public PunchedPanel {
        skins = List.copyOf(skins);
        notChecked = List.copyOf(notChecked);
        validity = List.copyOf(validity);
    }

    /**
     * What comes.
     *
     * @param nose its shape
     * @param mass kg
     * @param diameter m
     * @param speed m/s
     */
    public record Body(Perforation.Nose nose, double mass, double diameter, double speed) {
        public Body {
            if (!(mass > 0 && diameter > 0 && speed > 0)) {
                throw new IllegalArgumentException("mass, diameter and speed of a body are greater than zero");
            }
        }

        /** J. */
        public double energy() {
            return 0.5 * mass * speed * speed;
        }
    }

    /**
     * What tests say of the panel; nothing stands for what is not known.
     *
     * @param punchShear shear strength through the thickness of the skins, from perimeter shear, Pa
     * @param resistance σe, slow pressure of penetration of the skins, Pa
     * @param core how the core crushes along its thickness
     */
    public record Known(OptionalDouble punchShear, OptionalDouble resistance, Optional<CrushData> core) {}

    /**
     * A skin.
     *
     * @param name outer face, inner face, or the laminate as a whole
     * @param thickness m
     * @param density kg/m³
     * @param limitSpeed at which the body just goes through it alone, m/s; empty where the resistance is not known
     * @param fastEnergy that this takes, J
     */
    public record Skin(
            String name, double thickness, double density, OptionalDouble limitSpeed, OptionalDouble fastEnergy) {}

    /** Works it out; the outer side of the laminate is hit. */
    public static PunchedPanel of(Laminate laminate, Body body, Known known) {
        List<Layer> layers = laminate.layers();
        int first = 0;
        while (first < layers.size() && layers.get(first).role() != LayerRole.CORE) {
            first++;
        }
        int last = layers.size() - 1;
        while (last > first && layers.get(last).role() != LayerRole.CORE) {
            last--;
        }
        boolean sandwich = first > 0 && first < layers.size() && last < layers.size() - 1;
        List<Skin> skins = sandwich
                ? List.of(
                        skin("outer face", layers.subList(0, first), body, known),
                        skin("inner face", layers.subList(last + 1, layers.size()), body, known))
                : List.of(skin("the whole laminate", layers, body, known));
        double core = sandwich
                ? layers.subList(first, last + 1).stream()
                        .mapToDouble(Layer::thickness)
                        .sum()
                : 0;
        double half = 0.5 * laminate.thickness();
        Penetration.Answer slow = Penetration.of(
                new Penetration.Face(sandwich ? skins.getFirst().thickness() : half, known.punchShear()),
                new Penetration.Face(sandwich ? skins.getLast().thickness() : half, known.punchShear()),
                core,
                known.core(),
                body.diameter(),
                body.speed());
        List<Check.NotChecked> missing = new ArrayList<>(slow.notChecked());
        if (known.resistance().isEmpty()) {
            missing.add(new Check.NotChecked(
                    "skins perforated fast",
                    List.of("their slow pressure of penetration, from a punch test of the skin alone")));
        }
        boolean crushes = known.core()
                .filter(c -> c.measure() == CrushData.Measure.STRESS)
                .isPresent();
        OptionalDouble fast = OptionalDouble.empty();
        if (known.resistance().isPresent() && (core == 0 || crushes)) {
            double crushed = core == 0
                    ? 0
                    : 0.25
                            * Math.PI
                            * body.diameter()
                            * body.diameter()
                            * core
                            * known.core().get().value()
                            * known.core().get().usableShare();
            fast = OptionalDouble.of(crushed
                    + skins.stream().mapToDouble(s -> s.fastEnergy().orElse(0)).sum());
        }
        return new PunchedPanel(skins, slow, fast, missing, validity(slow, skins, body, sandwich));
    }

    private static List<String> validity(Penetration.Answer slow, List<Skin> skins, Body body, boolean sandwich) {
        List<String> ends = new ArrayList<>(slow.validity());
        ends.add("fast: local failure right under the body; a panel that bends as a whole first takes more, one already"
                + " damaged takes less; the law is from memory (Wen 2000) and was not compared with its source");
        if (sandwich) {
            ends.add("fast: the skins are taken one by one, the core crushes between them at its slow stress; how they"
                    + " help each other is not in it");
        }
        if (skins.stream().anyMatch(s -> s.thickness() * SLENDER > body.diameter())) {
            ends.add("fast: the body is no wider than four times a skin is thick: the skin fails otherwise");
        }
        return ends.stream().distinct().toList();
    }

    private static Skin skin(String name, List<Layer> layers, Body body, Known known) {
        double thickness = layers.stream().mapToDouble(Layer::thickness).sum();
        double density = layers.stream().mapToDouble(Layer::arealMass).sum() / thickness;
        if (known.resistance().isEmpty()) {
            return new Skin(name, thickness, density, OptionalDouble.empty(), OptionalDouble.empty());
        }
        double resistance = known.resistance().getAsDouble();
        double speed =
                Perforation.limitSpeed(body.nose(), body.mass(), body.diameter(), thickness, density, resistance);
        return new Skin(
                name,
                thickness,
                density,
                OptionalDouble.of(speed),
                OptionalDouble.of(0.5 * body.mass() * speed * speed));
    }
}
