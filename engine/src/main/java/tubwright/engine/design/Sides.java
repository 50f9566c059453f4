// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

/** On which side of the car something sits. */
enum Sides {
    BOTH,
    RIGHT,
    LEFT,
    CENTRE
}
