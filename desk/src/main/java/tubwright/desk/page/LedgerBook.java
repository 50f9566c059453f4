// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import tubwright.desk.work.UserMistake;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.structure.Case;
import tubwright.engine.trim.Interval;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.Ledger;
import tubwright.engine.trim.Owner;
import tubwright.engine.trim.WhatIf;

/**
 * The ledger of a variant as it fills: every layer given up in turn and answered within proved bounds by the same model
 * that answers drafts, which is made ready by it.
 */
final class LedgerBook {
    /** Share of the time until the ledger is full that goes into making ready. */
    private static final double PREPARING = 0.8;

    private final String variant;
    private final String revision;
    private final Trial trial;
    private final List<Edits.Spot> offers = new ArrayList<>();
    private final Map<Edits.Spot, LedgerView.RowView> rows = new LinkedHashMap<>();
    private final List<LedgerView.OwnerView> owners = new ArrayList<>();
    private final List<LedgerView.CoreView> cores;
    private double prepared;
    private int answered;

    LedgerBook(String variant, String revision, Trial trial) {
        this.variant = variant;
        this.revision = revision;
        this.trial = trial;
        Layup nominal = trial.nominal();
        for (String zone : new TreeSet<>(nominal.zones().keySet())) {
            Laminate laminate = nominal.zones().get(zone);
            add(new Owner.Zone(zone), laminate.layers(), Stacks.of(laminate), laminate.isSymmetric());
        }
        nominal.patchesByName().forEach((patch, plies) -> add(new Owner.Patch(patch), plies, Stacks.of(plies), false));
        cores = Cores.of(nominal).values().stream()
                .map(c -> new LedgerView.CoreView(c.name(), Stacks.kind(c), c.density()))
                .toList();
    }

    private void add(Owner owner, List<Layer> layers, TubView.StackView stack, boolean symmetric) {
        double area = trial.tub().blocks().area(owner);
        if (area > 0) {
            boolean patch = owner instanceof Owner.Patch;
            owners.add(new LedgerView.OwnerView(owner.name(), patch, area, stack, symmetric));
            for (int i = 0; i < layers.size(); i++) {
                if (layers.get(i).role() != LayerRole.FILM) {
                    offers.add(new Edits.Spot(owner.name(), i + 1));
                }
            }
        }
    }

    /**
     * Makes the model ready.
     *
     * @param progress is run now and then; may stop it by a {@link java.util.concurrent.CancellationException}
     */
    void prepare(Runnable progress) {
        trial.prepare(share -> {
            synchronized (this) {
                prepared = share;
            }
            progress.run();
        });
    }

    /** The layer to ask about next. */
    synchronized Optional<Edits.Spot> next() {
        return answered < offers.size() ? Optional.of(offers.get(answered)) : Optional.empty();
    }

    /** Answers the next layer; false when there is none. */
    boolean answerNext() {
        Optional<Edits.Spot> next = next();
        if (next.isEmpty()) {
            return false;
        }
        Edits.Spot spot = next.get();
        Optional<LedgerView.RowView> row = row(spot);
        synchronized (this) {
            row.ifPresent(r -> rows.put(spot, r));
            answered++;
        }
        return true;
    }

    private Optional<LedgerView.RowView> row(Edits.Spot spot) {
        Layup nominal = trial.nominal();
        Layer layer = Edits.layers(nominal, spot.owner()).get(spot.place() - 1);
        boolean core = layer.role() == LayerRole.CORE;
        double thinner = layer.thickness()
                - (layer.thickness() >= 2 * Ledger.CORE_STEP ? Ledger.CORE_STEP : 0.5 * layer.thickness());
        Layup without;
        try {
            without = Edits.NONE
                    .with(
                            nominal,
                            new DraftView.ChangeRequest(
                                    spot.owner(),
                                    spot.place(),
                                    core ? Optional.empty() : Optional.of(0),
                                    Optional.empty(),
                                    core ? Optional.of(thinner) : Optional.empty(),
                                    Optional.empty()))
                    .on(nominal);
        } catch (UserMistake theOnlyPly) {
            return Optional.empty();
        }
        WhatIf.Answer answer = trial.ask(without);
        Interval left = answer.stiffness();
        double mass = trial.mass() - answer.mass();
        return Optional.of(new LedgerView.RowView(
                spot.owner(),
                spot.place(),
                mass,
                new LedgerView.BoundsView(left.low(), left.high()),
                (trial.stiffness() - left.middle()) / mass));
    }

    synchronized LedgerView view() {
        List<LedgerView.RowView> sorted = new ArrayList<>(rows.values());
        sorted.sort(Comparator.comparingDouble(LedgerView.RowView::lostPerKilogram));
        return new LedgerView(
                variant,
                revision,
                trial.tub().loading().name(),
                trial.tub().loading() instanceof Case.Torsion ? AnswerView.Kind.TORSION : AnswerView.Kind.BENDING,
                trial.stiffness(),
                trial.mass(),
                offers.isEmpty() ? 1 : PREPARING * prepared + (1 - PREPARING) * answered / offers.size(),
                owners,
                sorted,
                cores);
    }
}
