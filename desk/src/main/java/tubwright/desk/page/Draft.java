// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.desk.work.UserMistake;
import tubwright.engine.trim.Interval;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.WhatIf;

/**
 * Another layup being tried, with the way that led to it. Every tab of the browser has its own; none touches the file.
 * Safe for use by several threads.
 */
final class Draft {
    private final String id;
    private final String variant;
    private final List<Edits> steps = new ArrayList<>(List.of(Edits.NONE));
    private Trial trial;
    private String revision;
    private int step;
    private WhatIf.Answer answer;
    private boolean exact;
    private double milliseconds;
    private Optional<String> note = Optional.empty();

    Draft(String id, String variant, String revision, Trial trial) {
        this.id = id;
        this.variant = variant;
        this.revision = revision;
        this.trial = trial;
        answer = ask();
    }

    String id() {
        return id;
    }

    String variant() {
        return variant;
    }

    /** The edits as they now are. */
    synchronized Edits edits() {
        return steps.get(step);
    }

    synchronized Layup layup() {
        return edits().on(trial.nominal());
    }

    synchronized String revision() {
        return revision;
    }

    synchronized List<String> words() {
        return edits().words(trial.nominal());
    }

    /** Makes changes in one step; what was undone before is forgotten. */
    synchronized void change(List<DraftView.ChangeRequest> changes) {
        Edits next = edits();
        for (DraftView.ChangeRequest change : changes) {
            next = next.with(trial.nominal(), change);
        }
        step(next);
    }

    private void step(Edits next) {
        if (!next.equals(edits())) {
            steps.subList(step + 1, steps.size()).clear();
            steps.add(next);
            moveTo(step + 1);
        }
    }

    /** Becomes another layup of the same layers, in one step. */
    synchronized void lay(Layup layup) {
        step(Edits.between(trial.nominal(), layup));
    }

    /** One step back. */
    synchronized void undo() {
        if (step == 0) {
            throw new UserMistake("there is nothing to undo");
        }
        moveTo(step - 1);
    }

    /** One step forth again. */
    synchronized void redo() {
        if (step + 1 >= steps.size()) {
            throw new UserMistake("there is nothing to do again");
        }
        moveTo(step + 1);
    }

    private void moveTo(int next) {
        step = next;
        note = Optional.empty();
        answer = ask();
    }

    private WhatIf.Answer ask() {
        long start = System.nanoTime();
        WhatIf.Answer result = trial.ask(layup());
        milliseconds = (System.nanoTime() - start) * 1e-6;
        exact = edits().made().isEmpty();
        return result;
    }

    /** Solves the present step exactly; true if it still is the present one when that is done. */
    boolean solve() {
        Trial asked;
        Edits of;
        synchronized (this) {
            if (exact) {
                return false;
            }
            asked = trial;
            of = edits();
        }
        WhatIf.Answer solved = asked.solve(of.on(asked.nominal()));
        synchronized (this) {
            if (asked != trial || !of.equals(edits())) {
                return false;
            }
            answer = solved;
            exact = true;
            return true;
        }
    }

    /** Carries the draft over to the file as it now is; edits of layers that are no longer there are given up. */
    synchronized void carry(Trial now, String newRevision) {
        Layup before = trial.nominal();
        Edits was = edits();
        for (int i = 0; i < steps.size(); i++) {
            steps.set(i, steps.get(i).fitting(before, now.nominal()));
        }
        trial = now;
        revision = newRevision;
        int lost = was.made().size() - edits().made().size();
        answer = ask();
        note = lost == 0
                ? Optional.of("The design file changed; your changes stand on it as it now is.")
                : Optional.of("The design file changed; " + lost
                        + (lost == 1 ? " of your changes no longer fits" : " of your changes no longer fit")
                        + " and was let go.");
    }

    synchronized DraftView view() {
        Interval bounds = answer.stiffness();
        Layup nominal = trial.nominal();
        return new DraftView(
                id,
                variant,
                revision,
                step,
                step > 0,
                step + 1 < steps.size(),
                edits().words(nominal),
                edits().edited(nominal),
                edits().remarks(nominal),
                trial.mass(),
                answer.mass(),
                trial.stiffness(),
                new LedgerView.BoundsView(bounds.low(), bounds.high()),
                exact,
                milliseconds,
                note);
    }
}
