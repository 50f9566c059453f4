// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.nio.charset.StandardCharsets;

/**
 * What is answered to one request.
 *
 * @param status HTTP status
 * @param type media type
 * @param body bytes
 * @param keep whether the browser may keep it for good, because its name changes when it does
 */
record Reply(int status, String type, byte[] body, boolean keep) {
    static final String JSON = "application/json";
    static final String BINARY = "application/octet-stream";

    /** A record. */
    static Reply json(Object document) {
        return new Reply(200, JSON, Json.write(document), false);
    }

    /** A document with arrays. */
    static Reply binary(byte[] bytes) {
        return new Reply(200, BINARY, bytes, false);
    }

    /** A refusal in words. */
    static Reply refused(int status, String message) {
        return new Reply(status, JSON, Json.write(new Refusal(message)), false);
    }

    /** Plain words, for what is not asked by the page. */
    static Reply words(int status, String message) {
        return new Reply(status, "text/plain;charset=utf-8", (message + "\n").getBytes(StandardCharsets.UTF_8), false);
    }
}
