// SPDX-License-Identifier: Apache-2.0
/**
 * The ladder of checks against the outside: keeps what each check found, writes the report in docs/verification from it,
 * and holds the committed report to the run. Test code only.
 */
package tubwright.engine.verification.ladder;
