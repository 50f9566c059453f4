// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tubwright.fleet.FleetException;

/**
 * Where a master, or one of several that stand in for each other, listens: {@code spark://HOST:PORT[,HOST:PORT...]}.
 *
 * @param text as written
 * @param hosts in order
 */
record MasterAddress(String text, List<Host> hosts) {
    private static final Pattern HOST = Pattern.compile("([^:,\\s]+|\\[[0-9A-Fa-f:]+]):(\\d{1,5})");
    private static final String SCHEME = "spark://";

    /** How long a host may take to answer, ms. */
    private static final int PATIENCE = 5000;

    record Host(String name, int port) {}

    MasterAddress {
        hosts = List.copyOf(hosts);
    }

    /** @throws FleetException if it is none */
    static MasterAddress of(String text) {
        List<Host> hosts = new ArrayList<>();
        if (text.startsWith(SCHEME)) {
            for (String part : text.substring(SCHEME.length()).split(",", -1)) {
                Matcher matcher = HOST.matcher(part);
                int port = matcher.matches() ? Integer.parseInt(matcher.group(2)) : 0;
                if (port < 1 || port > 65_535) {
                    throw none(text);
                }
                hosts.add(new Host(matcher.group(1), port));
            }
        }
        if (hosts.isEmpty()) {
            throw none(text);
        }
        return new MasterAddress(text, hosts);
    }

    private static FleetException none(String text) {
        return new FleetException(
                "\"" + text + "\" is no address of a master",
                "it looks like spark://192.0.2.10:7077; the master says its own");
    }

    /**
     * Whether somebody listens there, and by which address of this machine they are reached: the workers will call back
     * there.
     *
     * @throws FleetException if nobody does
     */
    InetAddress reached() {
        List<String> why = new ArrayList<>();
        for (Host host : hosts) {
            InetSocketAddress there = new InetSocketAddress(host.name(), host.port());
            if (there.isUnresolved()) {
                why.add(host.name() + " is no machine known here");
                continue;
            }
            try (Socket socket = new Socket()) {
                socket.connect(there, PATIENCE);
                return socket.getLocalAddress();
            } catch (IOException e) {
                why.add(host.name() + " port " + host.port() + ": " + e.getMessage());
            }
        }
        throw new FleetException(
                "no master answers at " + text + " (" + String.join("; ", why) + ")",
                "is it running, and does it name itself so? docs/how-to/send-a-study-to-a-cluster.md;"
                        + "\n    all finished rows are kept, and without --master the study goes on on this machine");
    }
}
