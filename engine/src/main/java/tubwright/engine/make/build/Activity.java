// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import java.util.List;

/**
 * One thing to be done.
 *
 * @param name unique
 * @param step kind of work it counts under
 * @param lane where it is done: a mould, a bench, a supplier
 * @param tub number of the tub it is for, from 1; 0 for what is done once for all of them
 * @param clock what time it takes
 * @param seconds by that clock
 * @param work of people on it, s; 0 for what needs none
 * @param uses what it occupies while it lasts: a team, an autoclave; "" for nothing
 * @param needs names of what must be done before
 * @param source where its time comes from
 */
public record Activity(
        String name,
        String step,
        String lane,
        int tub,
        Clock clock,
        double seconds,
        double work,
        String uses,
        List<String> needs,
        String source) {
    /** How time passes for it. */
    public enum Clock {
        /** Only in working hours; it rests at night. */
        HANDS,
        /** Begins in working hours and then runs on by itself. */
        OVEN,
        /** Day and night, from whatever hour. */
        WAITING
    }

    public Activity {
        needs = List.copyOf(needs);
        if (!(seconds >= 0 && work >= 0)) {
            throw new IllegalArgumentException("'" + name + "' takes less than no time");
        }
    }
}
