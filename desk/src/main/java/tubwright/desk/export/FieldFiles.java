// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Locale;

/** Names of the files with a variant's mesh and fields. */
public final class FieldFiles {
    private FieldFiles() {}

    /** Path of a variant's file in the run folder: letters and digits of its name, hyphens for the rest. */
    public static String name(String variant) {
        return "fields/" + variant.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{Nd}]+", "-") + ".vtu";
    }
}
