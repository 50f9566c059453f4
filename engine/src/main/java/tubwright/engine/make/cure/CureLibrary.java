// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.make.data.DataException;
import tubwright.engine.make.data.SourcedText;
import tubwright.engine.quantity.NearestName;

/**
 * Cure data by name; immutable.
 *
 * @param resins how they cure
 * @param fibres how they conduct
 * @param plies what the plies of the material library are made with
 * @param cores what cores are made of, by kind
 * @param films what adhesives are made of, by kind
 * @param tools what moulds are made of
 * @param laminates how kinds of laminates shrink
 * @param cycles cure cycles
 */
public record CureLibrary(
        Map<String, Resin> resins,
        Map<String, HeatProperties> fibres,
        Map<String, PlyCure> plies,
        Map<String, HeatProperties> cores,
        Map<String, HeatProperties> films,
        Map<String, Tool> tools,
        Map<String, Shrinkage> laminates,
        Map<String, Cycle> cycles) {
    /** Files that come with the program. */
    public static final List<String> FILES = List.of("resins", "plies", "tooling", "cycles");

    private static final CureLibrary NOTHING =
            new CureLibrary(Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of());

    /** Keeps the order of entry. */
    public CureLibrary {
        resins = kept(resins);
        fibres = kept(fibres);
        plies = kept(plies);
        cores = kept(cores);
        films = kept(films);
        tools = kept(tools);
        laminates = kept(laminates);
        cycles = kept(cycles);
    }

    private static final class Shipped {
        static final CureLibrary LIBRARY = load();

        private static CureLibrary load() {
            CureLibrary all = NOTHING;
            for (String file : FILES) {
                String path = "/tubwright/cure/" + file + ".yaml";
                try (InputStream in = CureLibrary.class.getResourceAsStream(path)) {
                    if (in == null) {
                        throw new IllegalStateException("the shipped cure data " + path + " are missing");
                    }
                    all = all.with(file + ".yaml", new String(in.readAllBytes(), StandardCharsets.UTF_8));
                } catch (IOException e) {
                    throw new UncheckedIOException("the shipped cure data " + path + " cannot be read", e);
                }
            }
            return all;
        }
    }

    /** What comes with the program; read once. */
    public static CureLibrary shipped() {
        return Shipped.LIBRARY;
    }

    /**
     * This and what a file says; an entry of the same name takes the place of the old.
     *
     * @param file its name, for messages
     * @param yaml its text
     * @throws CureException naming file and line if it is not right
     */
    public CureLibrary with(String file, String yaml) {
        CureLibrary more = read(file, yaml);
        CureLibrary both = new CureLibrary(
                joined(resins, more.resins),
                joined(fibres, more.fibres),
                joined(plies, more.plies),
                joined(cores, more.cores),
                joined(films, more.films),
                joined(tools, more.tools),
                joined(laminates, more.laminates),
                joined(cycles, more.cycles));
        more.plies.values().forEach(ply -> {
            find("resin", both.resins, ply.resin());
            find("fibre", both.fibres, ply.fibre());
        });
        return both;
    }

    private static CureLibrary read(String file, String yaml) {
        try {
            return new CureFile(new SourcedText(file, yaml)).library();
        } catch (DataException e) {
            throw new CureException(e.getMessage());
        }
    }

    /** The cycle of this name. */
    public Cycle cycle(String name) {
        return find("cycle", cycles, name);
    }

    /** The tool material of this name. */
    public Tool tool(String name) {
        return find("tool material", tools, name);
    }

    private static <T> T find(String what, Map<String, T> among, String name) {
        T found = among.get(name);
        if (found == null) {
            throw new CureException("no " + what + " is called '" + name + "'"
                    + NearestName.of(name, among.keySet())
                            .map(n -> "; did you mean '" + n + "'?")
                            .orElse("; there are " + String.join(", ", among.keySet())));
        }
        return found;
    }

    private static <T> Map<String, T> kept(Map<String, T> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    private static <T> Map<String, T> joined(Map<String, T> a, Map<String, T> b) {
        Map<String, T> all = new LinkedHashMap<>(a);
        all.putAll(b);
        return all;
    }
}
