// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import tubwright.desk.page.Happening;
import tubwright.desk.page.OpenProject;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.text.DesignError;

/** Takes requests: turns away, looks up, answers. */
final class Desk extends Handler.Abstract {
    /** Longest body taken, bytes. */
    private static final int LONGEST = 1 << 20;

    /** How often a listener hears that it is still connected, s. */
    private static final long BEAT = 15;

    private final Guard guard;
    private final Map<String, Route> routes;
    private final OpenProject project;

    Desk(Guard guard, Map<String, Route> routes, OpenProject project) {
        this.guard = guard;
        this.routes = routes;
        this.project = project;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        Guard.seal(response.getHeaders());
        try {
            Reply reply = reply(request);
            if (reply == LISTEN) {
                listen(response);
                callback.succeeded();
            } else {
                send(reply, request, response, callback);
            }
        } catch (IOException gone) {
            callback.failed(gone);
        }
        return true;
    }

    /** Stands for an answer that does not end. */
    private static final Reply LISTEN = new Reply(200, "text/event-stream", new byte[0], false);

    private Reply reply(Request request) throws IOException {
        String host =
                Optional.ofNullable(request.getHeaders().get(HttpHeader.HOST)).orElse("");
        Optional<Reply> away = guard.turnAway(request.getHeaders(), host);
        if (away.isPresent()) {
            return away.get();
        }
        String path = Request.getPathInContext(request);
        String method = request.getMethod();
        if (!path.startsWith("/api/")) {
            return method.equals("GET") || method.equals("HEAD")
                    ? PageFiles.read(path)
                    : Reply.words(405, "the page is only read");
        }
        if (!guard.knows(request.getHeaders())) {
            return Reply.refused(401, "open the page by the address that the program printed");
        }
        Route route = routes.get(method + " " + path);
        if (route == null) {
            return Reply.refused(404, "there is nothing at " + method + " " + path);
        }
        if (route.form() == Route.Form.EVENTS) {
            return LISTEN;
        }
        return answer(route, request);
    }

    private static Reply answer(Route route, Request request) throws IOException {
        try {
            Map<String, String> parameters = new HashMap<>();
            Fields given = Request.extractQueryParameters(request);
            for (String name : route.parameters()) {
                String value = given.getValue(name);
                if (value == null) {
                    return Reply.refused(400, route.path() + " needs the parameter " + name);
                }
                parameters.put(name, value);
            }
            Object body = new Route.Nothing();
            if (route.takes() != Route.Nothing.class) {
                String type = request.getHeaders().get(HttpHeader.CONTENT_TYPE);
                if (type == null || !type.startsWith(Reply.JSON)) {
                    return Reply.refused(415, "send " + Reply.JSON);
                }
                byte[] bytes;
                try (InputStream stream = Content.Source.asInputStream(request)) {
                    bytes = stream.readNBytes(LONGEST + 1);
                }
                if (bytes.length > LONGEST) {
                    return Reply.refused(413, "that is too long");
                }
                body = Json.read(bytes, route.takes());
            }
            return route.action().answer(new Route.Asked(parameters, body));
        } catch (UserMistake | DesignError mistake) {
            return Reply.refused(400, mistake.getMessage());
        } catch (CancellationException changed) {
            return Reply.refused(409, "the design file has changed meanwhile");
        } catch (IllegalArgumentException mistake) {
            return Reply.refused(400, String.valueOf(mistake.getMessage()));
        } catch (RuntimeException fault) {
            System.getLogger(Desk.class.getName())
                    .log(System.Logger.Level.ERROR, "cannot answer " + route.path(), fault);
            return Reply.refused(500, "a fault of the program, not of your design: " + fault);
        }
    }

    private static void send(Reply reply, Request request, Response response, Callback callback) {
        response.setStatus(reply.status());
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, reply.type());
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, reply.body().length);
        response.getHeaders().put(HttpHeader.CACHE_CONTROL, reply.keep() ? "max-age=31536000, immutable" : "no-store");
        boolean head = request.getMethod().equals("HEAD");
        response.write(true, head ? ByteBuffer.allocate(0) : ByteBuffer.wrap(reply.body()), callback);
    }

    /** Tells one listener of everything until it goes away. */
    private void listen(Response response) throws IOException {
        response.setStatus(200);
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, "text/event-stream");
        response.getHeaders().put(new HttpField(HttpHeader.CACHE_CONTROL, "no-store"));
        BlockingQueue<Happening> told = new LinkedBlockingQueue<>();
        Runnable deaf = project.hear(told::add);
        try {
            write(response, ": listening\n\n");
            while (getServer().isRunning()) {
                Happening next = told.poll(BEAT, TimeUnit.SECONDS);
                write(response, next == null ? ": still here\n\n" : "data: " + Json.text(next) + "\n\n");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            deaf.run();
        }
    }

    private static void write(Response response, String text) throws IOException {
        Content.Sink.write(response, false, ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)));
    }
}
