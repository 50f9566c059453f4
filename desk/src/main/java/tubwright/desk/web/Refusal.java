// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import tubwright.desk.page.Meaning;

/** Why something was not done. */
@Meaning("Why something was not done, for a person")
record Refusal(String message) {}
