// SPDX-License-Identifier: Apache-2.0
package tubwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** Every library and build plugin stands in docs/dependencies.md, with its version and a reason. */
class DependenciesTest {
    private static final Path TABLE = Checkout.ROOT.resolve("docs/dependencies.md");

    @Test
    void everyLibraryAndPluginHasALineWithItsVersion() {
        List<String> lines = Checkout.text(TABLE).lines().toList();
        Map<String, String> used = used();
        assertTrue(used.size() > 15, () -> "Only these were found in the build: " + used);
        var unexplained = new TreeSet<String>();
        used.forEach((artifact, version) -> {
            if (lines.stream().noneMatch(line -> explains(line, artifact, version))) {
                unexplained.add(artifact + " " + version);
            }
        });
        assertEquals(new TreeSet<String>(), unexplained);
    }

    /** A row of the table: name, version, licence and reason, none of them empty. */
    private static boolean explains(String line, String artifact, String version) {
        String[] cells = line.split("\\|");
        return cells.length == 5
                && (cells[1].strip().equals(artifact) || cells[1].strip().endsWith(":" + artifact))
                && cells[2].strip().equals(version)
                && !cells[3].isBlank()
                && !cells[4].isBlank();
    }

    /** Version by artifact of everything the build files give a version, other than the project's own modules. */
    private static Map<String, String> used() {
        var properties = new HashMap<String, String>();
        var used = new TreeMap<String, String>();
        Element root = xml(Checkout.ROOT.resolve("pom.xml"));
        for (Element each : below(root, "properties")) {
            NodeList values = each.getElementsByTagName("*");
            for (int i = 0; i < values.getLength(); i++) {
                properties.put(
                        "${" + values.item(i).getNodeName() + "}",
                        values.item(i).getTextContent().strip());
            }
        }
        collect(root, properties, used);
        Checkout.modules().forEach(module -> collect(xml(module.resolve("pom.xml")), properties, used));
        used.putAll(ofThePage());
        // The formatter is a setting of its plugin, not a dependency with coordinates.
        used.put("palantir-java-format", properties.get("${palantir.version}"));
        return used;
    }

    /** What the page is built with and from, by its package file: one {@code "name": "version"} a line. */
    private static Map<String, String> ofThePage() {
        var used = new TreeMap<String, String>();
        boolean inside = false;
        for (String line : Checkout.text(Checkout.ROOT.resolve("page/package.json"))
                .lines()
                .toList()) {
            Matcher entry = Pattern.compile("\\s*\"([^\"]+)\": \"([^\"]+)\",?").matcher(line);
            if (line.contains("ependencies\": {")) {
                inside = true;
            } else if (inside && entry.matches()) {
                used.put(entry.group(1), entry.group(2));
            } else {
                inside = false;
            }
        }
        assertTrue(used.size() > 5, () -> "Only these were found in the page's package file: " + used);
        return used;
    }

    private static void collect(Element root, Map<String, String> properties, Map<String, String> used) {
        for (String kind : List.of("dependency", "plugin", "path")) {
            for (Element each : below(root, kind)) {
                List<Element> versions = directly(each, "version");
                String artifact =
                        directly(each, "artifactId").getFirst().getTextContent().strip();
                if (artifact.startsWith("tubwright") || versions.isEmpty()) {
                    continue;
                }
                String version = versions.getFirst().getTextContent().strip();
                used.put(artifact, properties.getOrDefault(version, version));
            }
        }
    }

    private static List<Element> below(Element parent, String name) {
        NodeList nodes = parent.getElementsByTagName(name);
        return IntStream.range(0, nodes.getLength())
                .mapToObj(i -> (Element) nodes.item(i))
                .toList();
    }

    private static List<Element> directly(Element parent, String name) {
        return below(parent, name).stream()
                .filter(each -> parent.isSameNode(each.getParentNode()))
                .toList();
    }

    private static Element xml(Path file) {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(file.toFile())
                    .getDocumentElement();
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalStateException("Cannot read " + file, e);
        }
    }
}
