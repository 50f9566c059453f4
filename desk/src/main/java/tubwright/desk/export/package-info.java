// SPDX-License-Identifier: Apache-2.0
/**
 * Answers as files for other programs: the JSON document, VTU meshes with fields, and the run folder that appears whole
 * or not at all.
 */
package tubwright.desk.export;
