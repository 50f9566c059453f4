// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

/**
 * One entry of a mapping whose keys the designer chooses.
 *
 * @param name the key
 * @param value the value
 */
public record Named<T>(Name name, T value) {}
