// SPDX-License-Identifier: Apache-2.0
/**
 * How damage spreads under a growing load: plies break by mode and soften, cores shear and crush, bonds unzip, the load being
 * followed past its peak. Panels, and the neighbourhood of a place on a tub with all the rest condensed. Theory:
 * docs/theory/spread.md. Small displacements: nothing buckles here, nothing is dynamic.
 */
package tubwright.engine.safety.spread;
