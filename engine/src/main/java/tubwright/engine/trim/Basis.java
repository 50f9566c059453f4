// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.DoubleConsumer;

/**
 * The fields of one case from which reduced models are made, by what they belong to. Grows as questions come, or is made
 * ready for all of them at once. Safe to use from several threads.
 */
final class Basis {
    /** So many models of sets of zones are kept; where pairs of all fields are at hand they are quick to make again. */
    private static final int MOST_MODELS = 256;

    /** Back-substitutions made together. */
    private static final int TOGETHER = 24;

    private final LoadedTub tub;
    private final Map<Owner, List<Field>> fields = new HashMap<>();
    private final Map<List<Owner>, List<Field>> grown = new HashMap<>();
    private final Map<List<Owner>, ReducedModel> models = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Owner>, ReducedModel> eldest) {
            return size() > MOST_MODELS;
        }
    };
    private Optional<PairTable> all = Optional.empty();

    Basis(LoadedTub tub) {
        this.tub = tub;
    }

    LoadedTub tub() {
        return tub;
    }

    /**
     * A model and what it took.
     *
     * @param substitutions back-substitutions for fields that were not yet there
     */
    record Made(ReducedModel model, int substitutions) {}

    /** The model for changes of these owners. */
    Made model(List<Owner> owners) {
        synchronized (models) {
            ReducedModel known = models.get(owners);
            if (known != null) {
                return new Made(known, 0);
            }
        }
        return make(owners);
    }

    private synchronized Made make(List<Owner> owners) {
        int before = count();
        provide(owners, _ -> {});
        List<Field> own = new ArrayList<>();
        owners.forEach(o -> own.addAll(fields.get(o)));
        own.addAll(grown.getOrDefault(owners, List.of()));
        Set<Integer> blocks = new TreeSet<>();
        Set<Integer> joints = new TreeSet<>();
        for (Field field : own) {
            blocks.addAll(field.change().laminates().keySet());
            joints.addAll(field.change().joints().keySet());
        }
        PairTable table =
                all.filter(t -> t.covers(own, blocks, joints)).orElseGet(() -> PairTable.of(tub, own, blocks, joints));
        ReducedModel model = new ReducedModel(tub, own, table);
        synchronized (models) {
            models.put(owners, model);
        }
        return new Made(model, count() - before);
    }

    private int count() {
        return fields.values().stream().mapToInt(List::size).sum();
    }

    /** Adds the field of a very change to the models of its owners: one back-substitution. */
    synchronized void grow(List<Owner> owners, Change change) {
        grown.computeIfAbsent(owners, _ -> new ArrayList<>()).addAll(derived(List.of(change)));
        synchronized (models) {
            models.remove(owners);
        }
    }

    /**
     * What is at hand.
     *
     * @param fields derivative fields
     * @param bytes of the fields and their pairs
     */
    record Size(int fields, long bytes) {}

    /**
     * Makes all fields and all their pairs now, so that every later question is answered without a visit to the shells.
     *
     * @param progress hears the share that is done
     * @throws CancellationException if the thread is interrupted; what is made by then is kept
     */
    synchronized Size prepare(DoubleConsumer progress) {
        List<Owner> owners = tub.owners();
        provide(owners, share -> progress.accept(0.5 * share));
        List<Field> every = new ArrayList<>();
        owners.forEach(o -> every.addAll(fields.get(o)));
        Set<Integer> blocks = new TreeSet<>();
        Set<Integer> joints = new TreeSet<>();
        owners.forEach(o -> {
            blocks.addAll(tub.blocksOf(o));
            joints.addAll(tub.partOf(o));
        });
        PairTable table = PairTable.of(tub, every, blocks, joints);
        all = Optional.of(table);
        progress.accept(1);
        long bytes = table.bytes() + 8L * every.size() * tub.displacements().length;
        return new Size(every.size(), bytes);
    }

    private void provide(List<Owner> owners, DoubleConsumer progress) {
        Map<Owner, List<Change>> wanted = new LinkedHashMap<>();
        List<Change> changes = new ArrayList<>();
        for (Owner owner : owners) {
            if (!fields.containsKey(owner)) {
                List<Change> samples = Samples.of(tub.nominal(), owner).stream()
                        .map(tub::change)
                        .toList();
                wanted.put(owner, samples);
                changes.addAll(samples);
            }
        }
        List<Field> made = new ArrayList<>();
        for (int from = 0; from < changes.size(); from += TOGETHER) {
            if (Thread.currentThread().isInterrupted()) {
                throw new CancellationException("stopped while fields were being made");
            }
            made.addAll(derived(changes.subList(from, Math.min(from + TOGETHER, changes.size()))));
            progress.accept((double) made.size() / changes.size());
        }
        int at = 0;
        for (Map.Entry<Owner, List<Change>> each : wanted.entrySet()) {
            int to = at + each.getValue().size();
            fields.put(each.getKey(), List.copyOf(made.subList(at, to)));
            at = to;
        }
    }

    private List<Field> derived(List<Change> changes) {
        double[][] v = changes.parallelStream()
                .map(c -> tub.forces(c, tub.displacements()))
                .toArray(double[][]::new);
        tub.substitute(v);
        List<Field> made = new ArrayList<>();
        for (int k = 0; k < v.length; k++) {
            made.add(new Field(changes.get(k), v[k], LoadedTub.dot(tub.loads(), v[k])));
        }
        return made;
    }
}
