// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What a design came to.
 *
 * @param key of the point
 * @param readings what was asked, in this order
 * @param values SI, one for each reading; none where the design failed
 * @param reason why it failed; empty for a design that did not
 */
public record Row(String key, List<String> readings, double[] values, Optional<String> reason) {
    private static final String DONE = "done";
    private static final String FAILED = "failed";

    public Row {
        readings = List.copyOf(readings);
        values = values.clone();
        if (values.length != (reason.isPresent() ? 0 : readings.size())) {
            throw new IllegalArgumentException(values.length + " values for " + readings.size() + " readings");
        }
    }

    /** Of a design that was computed. */
    public static Row done(String key, List<String> readings, double[] values) {
        return new Row(key, readings, values, Optional.empty());
    }

    /** Of a design that cannot be. */
    public static Row failed(String key, List<String> readings, String reason) {
        return new Row(key, readings, new double[0], Optional.of(reason));
    }

    /** Whether there are values. */
    public boolean ok() {
        return reason.isEmpty();
    }

    /** Value of a reading; NaN where the design failed or it was not asked. */
    public double value(String reading) {
        int at = readings.indexOf(reading);
        return at < 0 || !ok() ? Double.NaN : values[at];
    }

    /** Whether it answers all of these. */
    public boolean answers(List<String> asked) {
        return readings.containsAll(asked);
    }

    @Override
    public double[] values() {
        return values.clone();
    }

    /** On one line; numbers come back from it to the bit. */
    public String line() {
        List<String> fields = new ArrayList<>(List.of(key, ok() ? DONE : FAILED));
        reason.ifPresent(fields::add);
        for (int i = 0; i < readings.size(); i++) {
            fields.add(readings.get(i));
            if (ok()) {
                fields.add(Double.toString(values[i]));
            }
        }
        return Fields.join(fields);
    }

    /**
     * The row of a line.
     *
     * @throws IllegalArgumentException if it is none
     */
    public static Row of(String line) {
        List<String> f = Fields.split(line);
        if (f.size() >= 3 && f.get(1).equals(FAILED)) {
            return failed(f.getFirst(), f.subList(3, f.size()), f.get(2));
        }
        if (f.size() < 2 || !f.get(1).equals(DONE) || f.size() % 2 != 0) {
            throw new IllegalArgumentException("not a row: " + line);
        }
        List<String> readings = new ArrayList<>();
        double[] values = new double[f.size() / 2 - 1];
        for (int i = 0; i < values.length; i++) {
            readings.add(f.get(2 + 2 * i));
            values[i] = Double.parseDouble(f.get(3 + 2 * i));
        }
        return done(f.getFirst(), readings, values);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Row row
                && key.equals(row.key)
                && readings.equals(row.readings)
                && Arrays.equals(values, row.values)
                && reason.equals(row.reason);
    }

    @Override
    public int hashCode() {
        return key.hashCode() + 31 * readings.hashCode();
    }

    @Override
    public String toString() {
        return line();
    }
}
