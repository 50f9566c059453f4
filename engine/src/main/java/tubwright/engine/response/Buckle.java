// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import tubwright.engine.structure.Part;

/**
 * One way of buckling and where it lives. Arrays are not to be modified.
 *
 * @param factor on the case's loads by linear theory
 * @param kind what the part is in which most of the mode's strain energy sits
 * @param zone its name
 * @param share of the energy it holds, 0 to 1
 * @param panel the strip or wall with most of the energy
 * @param panelShare of the energy it holds, 0 to 1
 * @param place of the largest movement, m
 * @param shape 6 numbers per node of the mesh, the largest movement 1 m
 * @param error normwise backward error of the eigenpair
 */
public record Buckle(
        double factor,
        Part.Kind kind,
        String zone,
        double share,
        String panel,
        double panelShare,
        double[] place,
        double[] shape,
        double error) {}
