// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.net.InetAddress;
import java.util.Map;
import org.apache.spark.SparkConf;

/**
 * How a study presents itself to a cluster. Whatever the user sets as a system property {@code spark.*} (by
 * {@code TUBWRIGHT_JAVA_OPTIONS}) goes before what is set here.
 */
final class ClusterSettings {
    /** The solver's choice has to be the same everywhere, or rows would differ in their last digits. */
    private static final String SOLVER = "tubwright.solver";

    private ClusterSettings() {}

    /**
     * @param master its address
     * @param own this machine's address, as workers reach it
     */
    static SparkConf of(String master, InetAddress own) {
        SparkConf conf = new SparkConf().setMaster(master).setAppName("Tubwright");
        defaults(own.getHostAddress()).forEach(conf::setIfMissing);
        return conf;
    }

    private static Map<String, String> defaults(String own) {
        return Map.of(
                "spark.driver.host", own,
                // One process a core: a design that brings its process down takes no other with it, and what a core
                // needs
                // of memory is said in one number. Java's part; the factor of the native solver lies outside it.
                "spark.executor.cores", "1",
                "spark.executor.memory", "1500m",
                "spark.executor.extraJavaOptions", flags(),
                // A machine that vanishes without a word is missed after this long.
                "spark.network.timeout", "60s",
                // Workers that die count as failed tries of what they had in hand.
                "spark.task.maxFailures", "8",
                "spark.ui.enabled", "false",
                "spark.ui.showConsoleProgress", "false");
    }

    /** Of every worker's process, beside what the engine itself asks of Java. */
    private static String flags() {
        String solver = System.getProperty(SOLVER, "");
        return "--enable-native-access=ALL-UNNAMED --sun-misc-unsafe-memory-access=allow -XX:+UseSerialGC"
                + " -Djava.awt.headless=true -Dtubwright.threads=1"
                + (solver.isEmpty() ? "" : " -D" + SOLVER + "=" + solver);
    }
}
