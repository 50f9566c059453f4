// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

/**
 * A numbered part of the note.
 *
 * @param title in the margin
 * @param aside a sentence below the title on how to read what stands beside it; plain text
 * @param body markup; "" leaves the section out
 */
record Section(String title, String aside, String body) {}
