// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.engine.design.text.KeyTable;

/** The schema and the key tables of the manual are those of the records, and editors can rely on them. */
class SchemaTest {
    private static final Path DOCS = Path.of("../docs");
    private static final Path SCHEMA = DOCS.resolve("design.schema.json");
    private static final Path MANUAL = DOCS.resolve("design-document.md");
    private static final String BEGIN = "<!-- keys: generated, do not edit below -->\n";
    private static final String REFRESH = "is not what the records say; refresh it with: ./mvnw -pl engine -am test"
            + " -Dtest=SchemaTest -Drefresh=true -Dsurefire.failIfNoSpecifiedTests=false";

    private static final Schema VALIDATOR = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(JsonMapper.builder().build().readTree(schema()));

    private static String schema() {
        return Design.schema();
    }

    private static boolean refresh() {
        return Boolean.getBoolean("refresh");
    }

    private static JsonNode asEditorsReadIt(String yaml) {
        Object plain = new Load(LoadSettings.builder().build()).loadFromString(yaml);
        return JsonMapper.builder().build().valueToTree(plain);
    }

    @Test
    void theSchemaInTheDocumentationIsThatOfTheRecords() throws IOException {
        if (refresh()) {
            Files.writeString(SCHEMA, schema());
        }
        assertEquals(schema(), Files.readString(SCHEMA).replace("\r\n", "\n"), SCHEMA + " " + REFRESH);
    }

    @Test
    void theKeyTablesInTheManualAreThoseOfTheRecords() throws IOException {
        String manual = Files.readString(MANUAL).replace("\r\n", "\n");
        int at = manual.indexOf(BEGIN) + BEGIN.length();
        assertTrue(at > BEGIN.length(), "the manual has a place for the tables");
        String tables = "\n" + KeyTable.write(DesignText.class).stripTrailing() + "\n";
        if (refresh()) {
            Files.writeString(MANUAL, manual.substring(0, at) + tables);
        } else {
            assertEquals(tables, manual.substring(at), MANUAL + " " + REFRESH);
        }
    }

    static List<Path> examples() {
        try (var folders = Files.list(Path.of("../examples"))) {
            return folders.map(f -> f.resolve(Design.FILE_NAME))
                    .filter(Files::exists)
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("examples")
    void everyExampleKeepsToTheSchema(Path example) throws IOException {
        assertEquals(List.of(), VALIDATOR.validate(asEditorsReadIt(Files.readString(example))));
    }

    @Test
    void theTemplateKeepsToTheSchema() {
        assertEquals(List.of(), VALIDATOR.validate(asEditorsReadIt(Template.text("Larkspur"))));
    }

    private static final String LARKSPUR = readLarkspur();

    private static String readLarkspur() {
        try {
            return Files.readString(Path.of("../examples/larkspur/tub.yaml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What to find in the example and what to put in its place: each makes a fault an editor must underline. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "  loft: smooth=>  loft: smoothe",
                "  loft: smooth=>  lofted: smooth",
                "station: 250 mm=>station: 250",
                "station: 250 mm=>station: 250 kg",
                "(0, 146) (105, 157)=>(0, 146, 3) (105, 157)",
                "at most 18 kg=>18 kg",
                "core thickness: 15 mm=>core thickness: 0 mm",
                "core thickness: 15 mm=>core thickness: -12 mm",
                "x: 200 .. 430 mm=>x: 200 mm",
                "couple: 1000 N·m=>couple: 1000 N",
                "strips: [floor, chine, flank, shoulder, deck]=>",
                "    couple: 1000 N·m=>    couple: 1000 N·m\n    force: 3 N",
                "    replace laminates:=>    replace laminate:",
            })
    void whatIsWrongIsUnderlined(String change) {
        String[] parts = change.split("=>", -1);
        assertTrue(LARKSPUR.contains(parts[0]), "the example has " + parts[0]);
        String bad = LARKSPUR.replaceFirst(java.util.regex.Pattern.quote(parts[0]), parts[1]);
        assertFalse(VALIDATOR.validate(asEditorsReadIt(bad)).isEmpty(), change);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "at least 10 kN·m/deg=>at least 8850 lbf·ft/deg",
                "at least 10 kN·m/deg=>at least 12 kNm/deg",
                "at least 10 kN·m/deg=>at least 12e3 N.m/°",
                "at most 18 kg=>at most 66 lb",
                "station: 250 mm=>station: 9.84 in",
                "station: 250 mm=>station: 0.25 m",
                "core thickness: 15 mm=>core thickness: 1/2 in",
                "x: 200 .. 430 mm=>x: 200 mm .. 430 mm",
            })
    void unitsAreTheDesignersChoice(String change) {
        String[] parts = change.split("=>", -1);
        String good = LARKSPUR.replaceFirst(java.util.regex.Pattern.quote(parts[0]), parts[1]);
        assertFalse(good.equals(LARKSPUR));
        assertEquals(List.of(), VALIDATOR.validate(asEditorsReadIt(good)), change);
    }
}
