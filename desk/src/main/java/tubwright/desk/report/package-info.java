// SPDX-License-Identifier: Apache-2.0
/**
 * The engineering note: one self-contained HTML page with pictures, charts and tables. Takes a {@link
 * tubwright.desk.report.ReportInput}; computes nothing that is not already in it.
 */
package tubwright.desk.report;
