// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A master and workers of one core each, processes on the loopback address, from a cluster's folder. */
final class LoopbackCluster implements AutoCloseable {
    private final Path script;
    private final int port;
    private final Path work = Files.createTempDirectory("work");
    private final List<Process> all = new ArrayList<>();

    LoopbackCluster(Path folder, int workers) throws IOException, InterruptedException {
        script = folder.resolve("cluster");
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = socket.getLocalPort();
        }
        start("master", "127.0.0.1", "--port", Integer.toString(port), "--webui-port", "0");
        while (all.getFirst().isAlive()) {
            try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
                break;
            } catch (IOException notYet) {
                Thread.sleep(100);
            }
        }
        for (int w = 0; w < workers; w++) {
            start(
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
                    work.resolve(Integer.toString(w)).toString());
        }
    }

    String address() {
        return "spark://127.0.0.1:" + port;
    }

    private void start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of("sh", script.toString()));
        command.addAll(List.of(arguments));
        all.add(new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start());
    }

    @Override
    public void close() {
        for (Process process : all.reversed()) {
            List<ProcessHandle> children = process.descendants().toList();
            process.destroy();
            children.forEach(ProcessHandle::destroy);
        }
    }
}
