// SPDX-License-Identifier: Apache-2.0
/**
 * The project that lies open on the bench: its design file as it stands and as it changes, what has been computed from
 * it, drafts of other layups, and the records in which all of that is told to the page. Knows nothing of how it travels
 * there.
 */
package tubwright.desk.page;
