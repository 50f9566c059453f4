// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;

/**
 * The ply ledger: what every ply, core and joint is worth to one stiffness.
 *
 * @param stiffness nominal, between loaded and held hardpoints: N·m/rad or N/m
 * @param sectionStiffness nominal, read between skin sections
 * @param mass nominal, kg
 * @param entries cheapest first: least stiffness lost for each kilogram given back; joints last
 * @param watched names of the load cases whose reserve and buckling factors the entries tell
 */
public record Ledger(
        double stiffness, double sectionStiffness, double mass, List<LedgerEntry> entries, List<String> watched) {
    /** How much thinner a core is made, m. */
    public static final double CORE_STEP = 5e-3;

    /** How exactly the effect of each entry is solved. */
    private static final double EFFECT_SHARE = 1e-3;

    /** Where an effect is lost in rounding, share of the compliance. */
    private static final double ROUNDING = 1e-10;

    public Ledger {
        entries = List.copyOf(entries);
        watched = List.copyOf(watched);
    }

    private record Offer(Owner owner, LedgerEntry.Kind kind, int place, Layer layer, double thickness, Layup layup) {}

    /** Draws up the ledger of a stiffness, every entry solved to a thousandth of its effect. */
    public static Ledger of(LoadedTub tub) {
        return of(tub, Optional.empty());
    }

    /** The same with what each entry protects in load cases. */
    public static Ledger of(LoadedTub tub, Optional<LoadWatch> watch) {
        List<Offer> offers = offers(tub);
        List<Change> changes = offers.stream().map(o -> tub.change(o.layup)).toList();
        FirstOrder firstOrder = new FirstOrder(tub);
        double nominal = tub.compliance();
        List<Resolve.Solved> solved = new Resolve(tub)
                .solve(
                        changes,
                        c -> c.high() - c.low()
                                <= Math.max(EFFECT_SHARE * Math.abs(c.low() - nominal), ROUNDING * nominal));
        List<LoadWatch.Trial> trials =
                offers.stream().map(o -> new LoadWatch.Trial(o.owner, o.layup)).toList();
        List<LoadWatch.Found> found = watch.map(w -> w.of(tub, trials))
                .orElseGet(() -> Collections.nCopies(trials.size(), new LoadWatch.Found()));
        double mass = tub.mass(tub.nominal());
        double stiffness = tub.stiffness(nominal);
        List<LedgerEntry> entries = new ArrayList<>();
        for (int i = 0; i < offers.size(); i++) {
            Offer offer = offers.get(i);
            Interval bounds = firstOrder.bounds(changes.get(i)).outward(ROUNDING);
            Interval exact = solved.get(i).compliance().outward(ROUNDING).and(bounds);
            boolean joint = offer.kind == LedgerEntry.Kind.JOINT;
            Interval left = stiffness(tub, exact);
            entries.add(new LedgerEntry(
                    offer.owner,
                    offer.kind,
                    offer.place,
                    joint ? "" : offer.layer.material().name(),
                    joint ? 0 : offer.layer.degrees(),
                    offer.thickness,
                    joint ? 0 : mass - tub.mass(offer.layup),
                    stiffness(tub, bounds),
                    left,
                    stiffness - left.middle(),
                    solved.get(i).steps(),
                    found.get(i).reserves(),
                    found.get(i).buckling()));
        }
        entries.sort(Comparator.comparing((LedgerEntry e) -> e.kind() == LedgerEntry.Kind.JOINT)
                .thenComparing(e -> e.mass() > 0 ? e.lostPerKilogram() : e.lost()));
        return new Ledger(
                stiffness,
                tub.sectionStiffness(),
                mass,
                entries,
                watch.map(w -> w.loads().stream().map(l -> l.name()).toList()).orElse(List.of()));
    }

    private static Interval stiffness(LoadedTub tub, Interval compliance) {
        return new Interval(tub.stiffness(compliance.high()), tub.stiffness(compliance.low()));
    }

    private static List<Offer> offers(LoadedTub tub) {
        Layup nominal = tub.nominal();
        List<Offer> offers = new ArrayList<>();
        for (String zone : new TreeSet<>(nominal.zones().keySet())) {
            Owner owner = new Owner.Zone(zone);
            if (tub.blocks().area(owner) > 0) {
                Laminate laminate = nominal.zones().get(zone);
                offers(
                        owner,
                        laminate.layers(),
                        1,
                        layers -> nominal.withZone(zone, new Laminate(layers, laminate.reference())),
                        offers);
            }
        }
        nominal.patchesByName().forEach((patch, plies) -> {
            Owner owner = new Owner.Patch(patch);
            if (tub.blocks().area(owner) > 0) {
                offers(owner, plies, 0, layers -> nominal.withPatch(patch, layers), offers);
            }
        });
        for (String joint : tub.joints()) {
            offers.add(new Offer(
                    new Owner.Joint(joint),
                    LedgerEntry.Kind.JOINT,
                    0,
                    nominal.zones().values().iterator().next().layers().getFirst(),
                    0,
                    nominal.withJoint(joint, 0.5)));
        }
        return offers;
    }

    private static void offers(
            Owner owner,
            List<Layer> layers,
            int least,
            java.util.function.Function<List<Layer>, Layup> layup,
            List<Offer> offers) {
        for (int i = 0; i < layers.size(); i++) {
            Layer layer = layers.get(i);
            List<Layer> rest = new ArrayList<>(layers);
            if (layer.role() == LayerRole.CORE) {
                double less = layer.thickness() >= 2 * CORE_STEP ? CORE_STEP : 0.5 * layer.thickness();
                rest.set(i, new Layer(layer.material(), layer.thickness() - less, layer.angle(), layer.role()));
                offers.add(new Offer(owner, LedgerEntry.Kind.CORE, i + 1, layer, less, layup.apply(rest)));
            } else if (layer.role() != LayerRole.FILM && layers.size() > least) {
                rest.remove(i);
                offers.add(new Offer(owner, LedgerEntry.Kind.PLY, i + 1, layer, layer.thickness(), layup.apply(rest)));
            }
        }
    }
}
