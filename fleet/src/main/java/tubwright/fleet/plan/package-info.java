// SPDX-License-Identifier: Apache-2.0
/**
 * A study as it is written: what of a design is varied, between what, and what is read; laid out as points. Its keys come
 * from records as those of the design document do. Knows nothing of where points are computed.
 */
package tubwright.fleet.plan;
