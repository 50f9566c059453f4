// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A master and workers as processes of their own on the loopback address, started as the how-to starts them. */
final class SmallCluster implements AutoCloseable {
    private static final Path FOLDER = Path.of("target/cluster").toAbsolutePath();

    private final Path logs;
    private final int port;
    private final List<Process> all = new ArrayList<>();

    SmallCluster(Path logs) throws IOException, InterruptedException {
        this.logs = logs;
        port = freePort();
        started("master", "master", "127.0.0.1", "--port", Integer.toString(port), "--webui-port", "0");
        await(port);
    }

    String address() {
        return "spark://127.0.0.1:" + port;
    }

    /** Another worker of one core. */
    Process worker(String name) throws IOException {
        return started(
                name,
                "worker",
                address(),
                "--host",
                "127.0.0.1",
                "--webui-port",
                "0",
                "--cores",
                "1",
                "--memory",
                "1500m",
                "--work-dir",
                logs.resolve(name + "-work").toString());
    }

    private Process started(String name, String... arguments) throws IOException {
        List<String> command =
                new ArrayList<>(List.of("sh", FOLDER.resolve("cluster").toString()));
        command.addAll(List.of(arguments));
        Path log = logs.resolve(name + ".log");
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        all.add(process);
        return process;
    }

    /** As if the machine's plug were pulled: the worker and what it has started. */
    static void pull(Process worker) {
        List<ProcessHandle> children = worker.descendants().toList();
        worker.destroyForcibly();
        children.forEach(ProcessHandle::destroyForcibly);
    }

    static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private void await(int where) throws IOException, InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(90);
        while (System.nanoTime() < end && all.getFirst().isAlive()) {
            try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), where)) {
                return;
            } catch (IOException notYet) {
                Thread.sleep(100);
            }
        }
        throw new IllegalStateException("no master: " + log("master"));
    }

    /** What one of them said. */
    String log(String name) throws IOException {
        try (InputStream in = Files.newInputStream(logs.resolve(name + ".log"))) {
            return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
    }

    @Override
    public void close() throws InterruptedException {
        for (Process process : all.reversed()) {
            pull(process);
        }
        for (Process process : all) {
            process.waitFor(20, TimeUnit.SECONDS);
        }
    }
}
