// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import picocli.CommandLine;

/** The program's version, from its jar. */
final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {"Tubwright " + text(), "Java " + Runtime.version()};
    }

    /** The version alone; {@code development} where the program does not run from its jar. */
    static String text() {
        String version = Version.class.getPackage().getImplementationVersion();
        return version == null ? "development" : version;
    }
}
