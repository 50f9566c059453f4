// SPDX-License-Identifier: Apache-2.0

/** Fill-reducing elimination orders for symmetric graphs: nested dissection above, minimum degree below. */
package tubwright.numerics.ordering;
