// SPDX-License-Identifier: Apache-2.0
/** What goes to the workshop on paper: PDF sheets to read from and write on. Knows answers; computes nothing. */
package tubwright.desk.sheet;
