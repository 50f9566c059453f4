// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.strength.Check;

/**
 * What fails first. One row for each case, zone and manner of giving way: the lowest factor found there.
 *
 * @param rows lowest first
 * @param notChecked what could not be checked, each once: no pass
 * @param loads names of the cases looked at, with where their loads come from
 * @param strengths in one sentence: criteria, temperature, knock-downs; empty without load cases
 * @param map the lowest factor of every element of the mesh, where there are load cases
 */
public record ReserveTable(
        List<Reserve> rows,
        List<Check.NotChecked> notChecked,
        Map<String, String> loads,
        String strengths,
        Optional<ReserveMap> map) {
    /** Of a tub without load cases. */
    public static final ReserveTable NONE = new ReserveTable(List.of(), List.of(), Map.of(), "", Optional.empty());

    public ReserveTable {
        List<Reserve> sorted = new ArrayList<>(rows);
        sorted.sort(Comparator.comparingDouble(Reserve::value)
                .thenComparing(Reserve::load)
                .thenComparing(Reserve::zone)
                .thenComparing(Reserve::check));
        rows = List.copyOf(sorted);
        notChecked = List.copyOf(notChecked);
        loads = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(loads));
    }

    /** The lowest over all cases for each zone and manner of giving way, lowest first. */
    public List<Reserve> envelope() {
        return byPlace().stream().map(List::getFirst).toList();
    }

    /** All rows by zone and manner of giving way, lowest first; each list one row a case, lowest first. */
    public List<List<Reserve>> byPlace() {
        record Key(String zone, String check, boolean firstCrack, boolean local) {}
        Map<Key, List<Reserve>> byPlace = new LinkedHashMap<>();
        rows.forEach(r -> byPlace.computeIfAbsent(
                        new Key(r.zone(), r.check(), r.firstCrack(), r.local()), k -> new ArrayList<>())
                .add(r));
        return byPlace.values().stream().map(List::copyOf).toList();
    }
}
