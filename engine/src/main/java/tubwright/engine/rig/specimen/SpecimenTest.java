// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.specimen;

import java.util.List;
import java.util.Optional;
import tubwright.engine.rig.PanelBend.Spring;

/**
 * A file of specimen readings in SI.
 *
 * @param source name of the file
 * @param kind what was done
 * @param arrangement of loads, for panels
 * @param zone of the design whose layup the specimens have, where the file says so
 * @param material of the library or the design that the specimens are made of, where the file says so
 * @param rig stiffness of machine and fixture
 * @param curves one a specimen
 */
public record SpecimenTest(
        String source,
        Kind kind,
        Arrangement arrangement,
        Optional<String> zone,
        Optional<String> material,
        Optional<Spring> rig,
        List<Curve> curves) {
    public SpecimenTest {
        curves = List.copyOf(curves);
    }

    /** Kinds of test, with the sizes a specimen has. */
    public enum Kind {
        /** A sandwich panel bent: span, width. */
        PANEL_BEND("panel bend", "deflection", List.of("span", "width")),
        /** A strip pulled: width, thickness. */
        COUPON_TENSION("coupon tension", "strain", List.of("width", "thickness")),
        /** A punch pushed through a panel: diameter of the punch, thickness of one skin. */
        PERIMETER_SHEAR("perimeter shear", "deflection", List.of("punch diameter", "skin thickness"));

        private final String word;
        private final String movement;
        private final List<String> sizes;

        Kind(String word, String movement, List<String> sizes) {
            this.word = word;
            this.movement = movement;
            this.sizes = sizes;
        }

        /** As written in a file. */
        public String word() {
            return word;
        }

        /** Name of the column beside the load. */
        public String movement() {
            return movement;
        }

        /** Names of a specimen's sizes, in order. */
        public List<String> sizes() {
            return sizes;
        }
    }
}
