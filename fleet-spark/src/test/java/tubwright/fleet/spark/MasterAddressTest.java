// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.apache.spark.launcher.JavaModuleOptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tubwright.fleet.FleetException;

/** What is said before anything is started. */
class MasterAddressTest {
    @ParameterizedTest
    @ValueSource(
            strings = {"", "nowhere", "spark://", "spark://host", "spark://host:0", "spark://host:70000", "http://a:1"})
    void whatIsNoAddressIsRefusedWithOneThatIs(String text) {
        FleetException told = assertThrows(FleetException.class, () -> MasterAddress.of(text));
        assertTrue(told.getMessage().contains("spark://192.0.2.10:7077"), told.getMessage());
    }

    @Test
    void mastersMayStandInForEachOther() {
        assertEquals(
                List.of(new MasterAddress.Host("a.example", 7077), new MasterAddress.Host("[2001:db8::1]", 7078)),
                MasterAddress.of("spark://a.example:7077,[2001:db8::1]:7078").hosts());
    }

    /** All that the engine itself asks of Java, but for a module that only its statistics use and a package that is gone. */
    @Test
    void theFlagsAreThoseTheEngineAsksFor() throws IOException {
        TreeSet<String> asked = new TreeSet<>(List.of(JavaModuleOptions.defaultModuleOptionArray()));
        asked.remove("--add-modules=jdk.incubator.vector");
        asked.remove("--add-opens=java.base/sun.security.action=ALL-UNNAMED");
        asked.add("-Djava.awt.headless=true");
        TreeSet<String> written = new TreeSet<>(Files.readAllLines(Path.of("src/main/cluster/java-flags")));
        written.removeIf(line -> line.startsWith("#"));
        assertEquals(asked, written);
    }
}
