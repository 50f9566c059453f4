// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.desk.page.OpenProject;

/** The server answers the page it was started for, and nobody else. */
class PageServerTest {
    @TempDir
    Path around;

    private OpenProject project;
    private PageServer server;
    private String root;
    private String token;
    private final HttpClient client = HttpClient.newHttpClient();

    @BeforeEach
    void start() throws Exception {
        Path folder = Files.createDirectories(around.resolve("project"));
        Files.writeString(around.resolve("secret.html"), "outside");
        Files.createDirectories(folder.resolve("runs/latest"));
        Files.writeString(folder.resolve("runs/latest/report.html"), "inside");
        Files.writeString(folder.resolve("tub.yaml"), "tub: Unfinished\n");
        project = new OpenProject(folder, size -> size, "test");
        server = new PageServer(project, 0);
        String[] parts = server.address().split("/#");
        root = parts[0];
        token = parts[1];
    }

    @AfterEach
    void stop() throws Exception {
        server.close();
        project.close();
    }

    private HttpRequest.Builder asked(String path) {
        return HttpRequest.newBuilder(URI.create(root + path));
    }

    private HttpRequest.Builder let(String path) {
        return asked(path).header("Authorization", "Bearer " + token);
    }

    private HttpResponse<String> said(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    @Test
    void tellsTheProjectToWhoeverHasTheToken() throws Exception {
        HttpResponse<String> said = said(let("/api/project"));
        assertEquals(200, said.statusCode());
        assertTrue(said.body().contains("\"revision\""), said.body());
        assertTrue(said.body().contains("\"problem\""), "a file that cannot be read is shown with its fault");
    }

    @Test
    void tellsNothingWithoutTheTokenOrWithAnotherOne() throws Exception {
        assertEquals(401, said(asked("/api/project")).statusCode());
        assertEquals(
                401,
                said(asked("/api/project").header("Authorization", "Bearer " + token.substring(1) + "x"))
                        .statusCode());
        assertEquals(401, said(asked("/api/project?token=" + token)).statusCode());
        assertEquals(32, token.length(), "192 random bits");
    }

    @Test
    void turnsPagesOfOtherSitesAwayEvenWithTheToken() throws Exception {
        assertEquals(
                403,
                said(let("/api/project").header("Origin", "http://elsewhere.example"))
                        .statusCode());
        assertEquals(
                403,
                said(let("/api/project").header("Origin", "http://127.0.0.1:1")).statusCode());
        assertEquals(403, said(let("/api/project").header("Origin", "null")).statusCode());
        assertEquals(
                403,
                said(let("/api/project").header("Sec-Fetch-Site", "cross-site")).statusCode());
        assertEquals(403, said(asked("/").header("Sec-Fetch-Site", "same-site")).statusCode());
        assertEquals(200, said(let("/api/project").header("Origin", root)).statusCode());
    }

    @Test
    void turnsNamesAwayThatWereMadeToPointHere() throws Exception {
        URI address = URI.create(root);
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), address.getPort())) {
            socket.getOutputStream()
                    .write(("GET /api/project HTTP/1.1\r\nHost: rebound.example:" + address.getPort()
                                    + "\r\nAuthorization: Bearer " + token + "\r\nConnection: close\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            String status = new BufferedReader(
                            new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII))
                    .readLine();
            assertTrue(status.contains(" 421 "), status);
        }
    }

    @Test
    void listensOnThisMachineOnly() {
        assertTrue(root.startsWith("http://127.0.0.1:"), root);
    }

    @Test
    void handsOutFilesOfTheProjectAndNoOthers() throws Exception {
        assertEquals(
                "inside", said(let("/api/file?path=runs/latest/report.html")).body());
        for (String outside : new String[] {
            "../secret.html",
            "runs/../../secret.html",
            around.resolve("secret.html").toString(),
            "runs/latest/../../../secret.html"
        }) {
            HttpResponse<String> said = said(let("/api/file?path=" + encoded(outside)));
            assertEquals(403, said.statusCode(), outside);
            assertFalse(said.body().contains("\"outside\""), outside);
        }
        Files.createSymbolicLink(around.resolve("project/link.html"), around.resolve("secret.html"));
        assertEquals(403, said(let("/api/file?path=link.html")).statusCode());
        assertEquals(404, said(let("/api/file?path=runs")).statusCode());
        assertEquals(
                403,
                said(let("/api/file?path=" + encoded("\0"))).statusCode(),
                "a name no file system knows is not a fault of ours");
    }

    @Test
    void readsNoFilesOfThePageFromElsewhereInTheProgram() throws Exception {
        for (String path : new String[] {
            "/../desk/logbook/0001-entries.sql", "/%2e%2e/desk/report/note.css", "/assets/nothing.js", "/x.css"
        }) {
            int status = said(asked(path)).statusCode();
            assertTrue(status == 404 || status == 400, path + " gave " + status);
        }
    }

    @Test
    void sendsStrictHeadersWithEverything() throws Exception {
        for (HttpRequest.Builder request :
                new HttpRequest.Builder[] {asked("/"), let("/api/project"), asked("/nothing")}) {
            var headers = said(request).headers();
            String policy = headers.firstValue("Content-Security-Policy").orElse("");
            assertTrue(policy.contains("default-src 'none'") && policy.contains("frame-ancestors 'none'"), policy);
            assertFalse(policy.contains("unsafe"), policy);
            assertEquals("DENY", headers.firstValue("X-Frame-Options").orElse(""));
            assertEquals("nosniff", headers.firstValue("X-Content-Type-Options").orElse(""));
            assertEquals("no-referrer", headers.firstValue("Referrer-Policy").orElse(""));
            assertTrue(headers.firstValue("Server").isEmpty());
        }
    }

    @Test
    void refusesWhatItCannotReadWithoutAStackTrace() throws Exception {
        HttpResponse<String> form = said(let("/api/draft").POST(HttpRequest.BodyPublishers.ofString("variant=x")));
        assertEquals(415, form.statusCode());
        HttpResponse<String> broken = said(let("/api/log")
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString("{\"wrods\": \"x\"}")));
        assertEquals(400, broken.statusCode());
        assertFalse(broken.body().contains("tubwright."), broken.body());
        assertEquals(404, said(let("/api/nothing")).statusCode());
        assertEquals(400, said(let("/api/tub")).statusCode(), "a parameter is missing");
        HttpResponse<String> unreadable = said(let("/api/tub?variant=x"));
        assertEquals(400, unreadable.statusCode());
        assertTrue(unreadable.body().contains("tub.yaml"), unreadable.body());
    }

    @Test
    void writesIntoTheLogbookAndTellsWhoListens() throws Exception {
        HttpResponse<java.io.InputStream> events =
                client.send(let("/api/events").build(), HttpResponse.BodyHandlers.ofInputStream());
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(events.body(), StandardCharsets.UTF_8))) {
            assertTrue(lines.readLine().startsWith(":"));
            HttpResponse<String> log = said(let("/api/log")
                    .header("Content-Type", "application/json")
                    .POST(HttpRequest.BodyPublishers.ofString("{\"words\": \"thinner floor next\"}")));
            assertEquals(200, log.statusCode(), log.body());
            assertTrue(log.body().contains("thinner floor next"));
            String line = lines.readLine();
            while (!line.startsWith("data:")) {
                line = lines.readLine();
            }
            assertTrue(line.contains("LOGBOOK"), line);
        }
    }
}
