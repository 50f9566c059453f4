// SPDX-License-Identifier: Apache-2.0
/**
 * The text side of the design document: YAML to a tree in which every value knows its place, and from there to records.
 *
 * <p>The records say by their components and annotations what may be written; the reader, the JSON Schema and the key
 * tables of the manual all come from that one source. Knows YAML, quantities and records; knows nothing of tubs.
 */
package tubwright.engine.design.text;
