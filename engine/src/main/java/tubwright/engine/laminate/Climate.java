// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/**
 * Change of temperature and moisture from the state without residual stress.
 *
 * @param temperatureChange K; service minus stress-free temperature, so usually negative
 * @param moistureChange mass of water taken up per mass of dry laminate, as a fraction
 */
public record Climate(double temperatureChange, double moistureChange) {
    /** No change. */
    public static final Climate NONE = new Climate(0, 0);
}
