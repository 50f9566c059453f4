// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.StringWriter;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;

/** JSON as we print it: indented by two, ending in a line feed. */
final class JsonText {
    private JsonText() {}

    /** The document that {@code writer} writes. */
    static String of(Consumer<JsonGenerator> writer) {
        StringWriter text = new StringWriter(1 << 14);
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
        ObjectWriteContext context = new ObjectWriteContext.Base() {
            @Override
            public PrettyPrinter getPrettyPrinter() {
                return printer;
            }

            @Override
            public boolean hasPrettyPrinter() {
                return true;
            }
        };
        try (JsonGenerator generator = new JsonFactory().createGenerator(context, text)) {
            writer.accept(generator);
        }
        return text.append('\n').toString();
    }
}
