// SPDX-License-Identifier: Apache-2.0

/** Side-by-side runs against general-purpose libraries on the same machine; plain main programs that write tables. */
package tubwright.bench;
