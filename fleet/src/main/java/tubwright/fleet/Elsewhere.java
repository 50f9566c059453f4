// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.Optional;
import java.util.ServiceLoader;

/**
 * Gives runners on other machines. An optional part of the program that knows an engine names its implementation in
 * {@code META-INF/services/tubwright.fleet.Elsewhere}; where no such part lies on the class path there is none.
 */
public interface Elsewhere {
    /**
     * A runner at a place.
     *
     * @param master the engine's address, as its own manual writes it
     * @throws FleetException if the address is none
     */
    StudyRunner at(String master);

    /** The one on the class path. */
    static Optional<Elsewhere> found() {
        return ServiceLoader.load(Elsewhere.class).findFirst();
    }
}
