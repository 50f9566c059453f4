// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.util.List;
import java.util.Map;

/**
 * One thing that may be asked.
 *
 * @param method GET or POST
 * @param path below the server's root
 * @param name for the page's code
 * @param summary for a reader of the description
 * @param parameters names of those in the address, all needed
 * @param takes record in the body; {@link Nothing} where there is none
 * @param gives record in the answer, or that at the head of a binary document
 * @param form how the answer comes
 * @param action what is done
 */
record Route(
        String method,
        String path,
        String name,
        String summary,
        List<String> parameters,
        Class<?> takes,
        Class<?> gives,
        Form form,
        Action action) {

    /** How an answer comes. */
    enum Form {
        ONE,
        LIST,
        BINARY,
        EVENTS,
        FILE
    }

    /** Stands for no record. */
    record Nothing() {}

    /**
     * A request that was let through.
     *
     * @param parameters by name, all there
     * @param body record of {@code takes}
     */
    record Asked(Map<String, String> parameters, Object body) {
        String get(String name) {
            return parameters.get(name);
        }
    }

    /** What is done. */
    interface Action {
        Reply answer(Asked asked);
    }
}
