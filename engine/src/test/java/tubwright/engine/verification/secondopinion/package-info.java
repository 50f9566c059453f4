// SPDX-License-Identifier: Apache-2.0
/**
 * A box solved by shells and as a three-dimensional solid by a general-purpose PDE library, which has to be installed;
 * run by the build's profile {@code second-opinion} only.
 */
package tubwright.engine.verification.secondopinion;
