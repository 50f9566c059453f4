// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;

/** A run that the logbook remembers. */
@Meaning("A run that the logbook remembers, with the design it was made from")
public record StoredView(
        @Meaning("of its line in the logbook") long id,
        @Meaning("ISO 8601") String stamp,
        @Meaning("what came out, in words") String words,
        @Meaning("of the file at that time") String revision,

        @Meaning("by which its tubs are asked for, one for each variant")
        List<String> names) {}
