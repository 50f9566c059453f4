// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.Optional;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;

/**
 * What a ply of the material library is made with.
 *
 * @param ply name in the library
 * @param resin name of the resin whose kinetics are used
 * @param standsInFor name of its own resin, where another's kinetics stand in
 * @param fibre name of the fibre
 * @param fibreShare fibre by volume, where the library does not say
 * @param provenance where the resin is known from
 */
public record PlyCure(
        String ply,
        String resin,
        Optional<String> standsInFor,
        String fibre,
        Optional<PropertyValue> fibreShare,
        Provenance provenance) {}
