// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;

/**
 * Who may ask. The token travels in the part of the address that a browser sends to nobody, and from the page in a header
 * that no other page can set; a page of another origin is turned away before that by what the browser says of it, and a
 * name that was made to point at this machine by the host it asks for.
 */
final class Guard {
    /** Nothing but the page's own script and style; no frame around it, none in it; nowhere to send a form. */
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self';"
            + " img-src 'self' blob: data:; connect-src 'self'; font-src 'self'; frame-ancestors 'none';"
            + " base-uri 'none'; form-action 'none'";

    private final String token;
    private final int port;

    /** Draws a token of 192 random bits. */
    Guard(int port) {
        byte[] random = new byte[24];
        new SecureRandom().nextBytes(random);
        token = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
        this.port = port;
    }

    String token() {
        return token;
    }

    /** Why a request is turned away, whatever it asks for; empty where it may come in. */
    Optional<Reply> turnAway(HttpFields headers, String host) {
        if (!host.equals("127.0.0.1:" + port) && !host.equals("localhost:" + port)) {
            return Optional.of(Reply.words(421, "this server answers to 127.0.0.1:" + port + " only"));
        }
        String origin = headers.get(HttpHeader.ORIGIN);
        if (origin != null && !origin.equals("http://" + host)) {
            return Optional.of(Reply.words(403, "requests from other sites are not answered"));
        }
        String site = headers.get("Sec-Fetch-Site");
        // "none" is an address typed or opened from outside a page, which the first visit is.
        if (site != null && !site.equals("same-origin") && !site.equals("none")) {
            boolean visit = "navigate".equals(headers.get("Sec-Fetch-Mode"))
                    && "document".equals(headers.get("Sec-Fetch-Dest"));
            if (!visit) {
                return Optional.of(Reply.words(403, "requests from other sites are not answered"));
            }
        }
        return Optional.empty();
    }

    /** Whether a request for the project's data carries the token. */
    boolean knows(HttpFields headers) {
        String given = headers.get(HttpHeader.AUTHORIZATION);
        byte[] wanted = ("Bearer " + token).getBytes(StandardCharsets.UTF_8);
        return given != null && MessageDigest.isEqual(given.getBytes(StandardCharsets.UTF_8), wanted);
    }

    /** Headers of every answer. */
    static void seal(HttpFields.Mutable headers) {
        headers.put(new HttpField("Content-Security-Policy", POLICY));
        headers.put(new HttpField("X-Frame-Options", "DENY"));
        headers.put(new HttpField("X-Content-Type-Options", "nosniff"));
        headers.put(new HttpField("Referrer-Policy", "no-referrer"));
        headers.put(new HttpField("Cross-Origin-Opener-Policy", "same-origin"));
        headers.put(new HttpField("Cross-Origin-Resource-Policy", "same-origin"));
        headers.put(
                new HttpField("Permissions-Policy", "camera=(), microphone=(), geolocation=(), usb=(), payment=()"));
    }
}
