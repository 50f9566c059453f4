// SPDX-License-Identifier: Apache-2.0
/**
 * What a run has to tell, gathered once for the console, the JSON document and the page, so that they agree. Knows how
 * to read answers; knows nothing of how they are shown.
 */
package tubwright.desk.answer;
