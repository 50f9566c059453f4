// SPDX-License-Identifier: Apache-2.0
/** Data files of making, each value with unit, source and trust mark, read with lines. Knows nothing of what they are for. */
package tubwright.engine.make.data;
