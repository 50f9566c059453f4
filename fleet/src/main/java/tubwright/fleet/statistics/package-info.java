// SPDX-License-Identifier: Apache-2.0
/** What samples tell: how probable, how sure of that, which inputs matter, what lies between. Knows nothing of designs. */
package tubwright.fleet.statistics;
