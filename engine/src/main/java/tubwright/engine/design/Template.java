// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The commented design that a new project starts from; it runs as it stands. */
public final class Template {
    private static final String RESOURCE = "/tubwright/design/new.yaml";
    private static final String NAME_LINE = "tub: My tub";

    private Template() {}

    /**
     * The text of a new design.
     *
     * @param name of the tub
     */
    public static String text(String name) {
        try (InputStream in = Template.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw new IllegalStateException("the template " + RESOURCE + " is missing");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            String quoted = "\"" + name.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
            boolean plain = name.matches("[A-Za-z][A-Za-z0-9 .-]*");
            return text.replace(NAME_LINE, "tub: " + (plain ? name.strip() : quoted));
        } catch (IOException e) {
            throw new UncheckedIOException("the template " + RESOURCE + " cannot be read", e);
        }
    }
}
