// SPDX-License-Identifier: Apache-2.0

/** The Java backend: supernodal multifrontal L D L^T with a nested-dissection order, on all cores. */
package tubwright.numerics.multifrontal;
