// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.structure.Part;

/** All that may be chosen in a tub under rules. */
public final class Sites {
    private static final double[] SHARES = {1, 0.75, 0.5};

    private Sites() {}

    /**
     * Zones and walls, and as far as the rules say so patches and joints. Beside zones of plies those of sheet metal stay as
     * they are.
     *
     * @throws IllegalArgumentException where the rules leave a zone without a stack; it says which rule
     */
    public static List<Site> of(LoadedTub tub, LayupRules rules) {
        List<Site> sites = new ArrayList<>();
        boolean some = tub.nominal().zones().values().stream().anyMatch(Sites::laid);
        new TreeMap<>(tub.nominal().zones()).forEach((zone, laminate) -> {
            if (tub.blocks().area(new Owner.Zone(zone)) > 0 && (laid(laminate) || !some)) {
                sites.add(new Site(
                        new Owner.Zone(zone),
                        Candidates.of(zone, laminate, rules).stream()
                                .<Candidate>map(Candidate.Stack::new)
                                .toList()));
            }
        });
        if (rules.varyPatches()) {
            tub.nominal().patchesByName().forEach((patch, plies) -> {
                if (tub.blocks().area(new Owner.Patch(patch)) > 0 && !plies.isEmpty()) {
                    sites.add(new Site(
                            new Owner.Patch(patch),
                            Candidates.ofPatch(plies).stream()
                                    .<Candidate>map(Candidate.Plies::new)
                                    .toList()));
                }
            });
        }
        if (rules.varyJoints()) {
            for (String joint : tub.joints()) {
                int part = tub.structure().parts().indexOf(new Part(Part.Kind.JOINT, joint));
                double mass = tub.structure().lumpedMasses().stream()
                        .filter(m -> m.owner() == part)
                        .mapToDouble(m -> m.mass())
                        .sum();
                List<Candidate> bonds = new ArrayList<>();
                for (double share : SHARES) {
                    bonds.add(new Candidate.Bond(share, (share - 1) * mass));
                }
                sites.add(new Site(new Owner.Joint(joint), bonds));
            }
        }
        return sites;
    }

    private static boolean laid(Laminate laminate) {
        return laminate.layers().stream().anyMatch(l -> l.role() == LayerRole.PLY);
    }
}
