// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.picture.EnergyScale;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.TubPicture;
import tubwright.desk.picture.TubPicture.Picture;
import tubwright.desk.picture.View.From;
import tubwright.engine.response.ReserveMap;
import tubwright.engine.safety.damage.DamageMap;

/** Pictures of a dossier, for its page and its paper alike. */
public final class EvidencePictures {
    private static final int WIDTH = 1160;

    private EvidencePictures() {}

    /**
     * A picture.
     *
     * @param caption below it
     * @param png its bytes
     * @param picture pixels and view
     */
    public record Plate(String caption, byte[] png, Picture picture) {
        /** For the page. */
        String figure() {
            String uri = "data:image/png;base64," + Base64.getEncoder().encodeToString(png);
            return TwistSections.figure(new Gallery.Plate(picture, uri), "plate", caption, caption);
        }
    }

    /** Stiffness lost and least reserve, place by place. */
    public static List<Plate> damage(DamageAnswer.PerVariant variant) {
        DamageMap map = DamageMap.of(variant.mesh(), variant.patches());
        TubPicture painter = new TubPicture(variant.mesh());
        double[] lost =
                Arrays.stream(map.lost()).map(l -> Double.isNaN(l) ? 0 : l).toArray();
        EnergyScale scale = EnergyScale.of(variant.mesh(), lost);
        List<Plate> plates = new ArrayList<>();
        plates.add(plate(
                String.format(
                        java.util.Locale.ROOT,
                        "Torsional stiffness the worst patch over a spot takes along: pale little, deepest %.2g %%.",
                        100 * scale.high()),
                painter.levels(
                        Arrays.stream(lost).map(scale::position).toArray(), From.THREE_QUARTER_FRONT, false, WIDTH)));
        if (variant.patches().stream().anyMatch(p -> !p.loads().isEmpty())) {
            double[] used =
                    Arrays.stream(map.reserve()).map(ReserveSection::level).toArray();
            plates.add(plate(
                    "Least reserve factor beside the patch over all load cases: deepest one or less, there it would spread.",
                    painter.levels(used, From.THREE_QUARTER_FRONT, false, WIDTH)));
        }
        return plates;
    }

    /** Least reserve factor of the whole tub; empty where there are no load cases. */
    public static List<Plate> margins(RunAnswer run) {
        if (run.main().reserves().map().isEmpty()) {
            return List.of();
        }
        ReserveMap map = run.main().reserves().map().get();
        double[] used = Arrays.stream(map.factor()).map(ReserveSection::level).toArray();
        return List.of(plate(
                "Lowest reserve factor of each element over all load cases, fibres and sandwich: pale far from its strength,"
                        + " deepest one or less.",
                new TubPicture(run.main().mesh()).levels(used, From.THREE_QUARTER_FRONT, false, WIDTH)));
    }

    private static Plate plate(String caption, Picture picture) {
        return new Plate(caption, Png.encode(picture.image()), picture);
    }
}
