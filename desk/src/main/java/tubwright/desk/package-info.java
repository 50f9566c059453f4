// SPDX-License-Identifier: Apache-2.0
/** What a person touches: the command line, the report and the exports. Knows the engine; nothing knows it. */
package tubwright.desk;
