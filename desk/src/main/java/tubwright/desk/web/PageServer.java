// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.eclipse.jetty.util.thread.VirtualThreadPool;
import tubwright.desk.page.OpenProject;

/** Serves one open project to browsers on this machine, and to nobody else. */
public final class PageServer implements AutoCloseable {
    private final Server server;
    private final Guard guard;
    private final int port;

    /**
     * Starts.
     *
     * @param project the project; stays the caller's to close
     * @param wantedPort 0 for any that is free
     * @throws java.io.IOException if the port is taken
     */
    public PageServer(OpenProject project, int wantedPort) throws Exception {
        QueuedThreadPool threads = new QueuedThreadPool(8, 2);
        threads.setName("tubwright-web");
        threads.setDaemon(true);
        // Requests wait for meshes and solutions; a thread that waits costs nothing when it is a virtual one.
        threads.setVirtualThreadsExecutor(new VirtualThreadPool());
        server = new Server(threads);
        HttpConfiguration http = new HttpConfiguration();
        http.setSendServerVersion(false);
        http.setSendDateHeader(false);
        http.setRequestHeaderSize(16 * 1024);
        ServerConnector connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
        connector.setHost("127.0.0.1");
        connector.setPort(wantedPort);
        connector.setIdleTimeout(3_600_000);
        server.addConnector(connector);
        connector.open();
        port = connector.getLocalPort();
        guard = new Guard(port);
        Map<String, Route> routes = new HashMap<>();
        List<Route> all = Routes.of(project);
        all.forEach(r -> routes.put(r.method() + " " + r.path(), r));
        server.setHandler(new Desk(guard, routes, project));
        server.start();
    }

    /** The address to open, token and all. */
    public String address() {
        return "http://127.0.0.1:" + port + "/#" + guard.token();
    }

    /** Whether there is a page to show, or only the word that it was not built. */
    public static boolean hasPage() {
        return PageFiles.built();
    }

    @Override
    public void close() {
        try {
            server.stop();
        } catch (Exception fault) {
            throw new IllegalStateException("the server did not stop", fault);
        }
    }
}
