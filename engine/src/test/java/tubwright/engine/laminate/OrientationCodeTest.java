// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.laminate.OrientationCode.Item;
import tubwright.engine.laminate.OrientationCode.PlyItem;
import tubwright.engine.laminate.OrientationCode.WordItem;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;

/** The code of MIL-HDBK-17-2F section 1.6 (conventions from memory) and what this reader adds for hybrids and cores. */
class OrientationCodeTest {
    @ParameterizedTest
    @CsvSource({
        "[0/90], 0 90",
        "[45/0_2/-45/90]s, 45 0 0 -45 90 90 -45 0 0 45",
        "[0/90]_2s, 0 90 0 90 90 0 90 0",
        "[0/90]2s, 0 90 0 90 90 0 90 0",
        "[0/90]_{2s}, 0 90 0 90 90 0 90 0",
        "[0/90]₂ₛ, 0 90 0 90 90 0 90 0",
        "[0/90]_2, 0 90 0 90",
        "[0/90]t, 0 90",
        "[0/90~]s, 0 90 0",
        "[0/9̅0̅]s, 0 90 0",
        "[±45], 45 -45",
        "[+-45/∓30], 45 -45 -30 30",
        "[+/-45]s, 45 -45 -45 45",
        "[(0/90)_3/45], 0 90 0 90 0 90 45",
        "[(±45)_2], 45 -45 45 -45",
        "[0₂/90], 0 0 90",
        "[ 30.5 / -90 / 135° ], 30.5 90 -45",
        "[45c/0/0/core/0/0/45c], 45c 0 0 core 0 0 45c",
        "[45c/0_2/core/..], 45c 0 0 core 0 0 45c",
        "[45c/0_2/core/..]s, 45c 0 0 core 0 0 45c",
        "[45c/0_2/core~]s, 45c 0 0 core 0 0 45c",
        "[0c_2/film/core(90)/film/0c], 0c 0c film core(90) film 0c",
    })
    void aCodeIsWrittenOut(String code, String plies) {
        assertEquals(plies, spelled(OrientationCode.parse(code).items()));
    }

    private static String spelled(List<Item> items) {
        return String.join(
                " ",
                items.stream()
                        .map(i -> OrientationCodeWriter.write(List.of(i))
                                .replace("[", "")
                                .replace("]", ""))
                        .toList());
    }

    @ParameterizedTest
    @CsvSource({
        "[45/0/0/-45/90/90/-45/0/0/45], [45/0_2/-45/90]s",
        "[0/90/0/90/90/0/90/0], [0/90]_2s",
        "[0/90/0], [0/90~]s",
        "[0/0/0], [0_3]",
        "[0]_8s, [0_16]",
        "[±45/±45], [45/-45]_2",
        "[45c/0_2/core~]s, [45c/0_2/core/0_2/45c]",
        "[45c/0/core(0)/0/45c], [45c/0/core/0/45c]",
        "[0/core/core/0], [0/core_2/0]",
    })
    void aCodeIsPrintedInItsShortestForm(String code, String canonical) {
        assertEquals(canonical, OrientationCode.parse(code).toString());
    }

    @Test
    void whatIsPrintedReadsBackTheSame() {
        long seed = 17;
        Random random = new Random(seed);
        double[] angles = {0, 90, 45, -45, 30, -30, 22.5, 10.25};
        for (int trial = 0; trial < 3000; trial++) {
            List<Item> items = new ArrayList<>();
            int n = 1 + random.nextInt(6);
            int variety = 1 + random.nextInt(angles.length);
            for (int i = 0; i < n; i++) {
                switch (random.nextInt(8)) {
                    case 0 -> items.add(new WordItem("core", random.nextBoolean() ? 0 : 90));
                    case 1 -> items.add(new WordItem("film", 0));
                    case 2 -> items.add(new PlyItem(angles[random.nextInt(variety)], "c"));
                    default -> items.add(new PlyItem(angles[random.nextInt(variety)], ""));
                }
            }
            if (random.nextBoolean()) {
                items.addAll(List.copyOf(items));
            }
            if (random.nextBoolean()) {
                items.addAll(items.reversed().subList(random.nextInt(2), items.size()));
            }
            String printed = new OrientationCode(items).toString();
            OrientationCode read = OrientationCode.parse(printed);
            assertEquals(items, read.items(), "seed " + seed + ", trial " + trial + ": " + printed);
            assertEquals(printed, read.toString());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "0/90|0|square brackets",
                "[]|1|an angle in degrees",
                "[0/90|5|\"']' is missing\"",
                "[0//90]|3|an angle in degrees",
                "[0/91a5]|6|\"'/' or ']' is due\"",
                "[0/200]|3|between -90 and 90",
                "[±45_2]|4|two ways; write (±45)_2 or 45_2/-45_2",
                "[0_2c]|4|tag stands before",
                "[0_0]|3|0 times",
                "[0/90s]|5|after the closing bracket",
                "[0/90~]|5|needs ]s",
                "[0~/90]s|2|only the last ply",
                "[(0/90~)_2]s|6|inside round brackets",
                "[45/0/core]s|11|write core~",
                "[45/0/..]|6|may only follow a core",
                "[45/core/../0]|12|nothing may follow ..",
                "[0/90]x|6|after the bracket come s",
                "[0/90]s2|7|nothing may follow",
                "[(((0)_99)_99)_99]|2|more than 5000 layers",
                "[core(x)]|6|an angle in degrees",
            })
    void aFaultyCodeIsRefusedAtItsPlace(String code, int position, String reason) {
        LayupException fault = assertThrows(LayupException.class, () -> OrientationCode.parse(code));
        assertTrue(fault.getMessage().contains(reason), fault.getMessage());
        assertEquals(position, fault.position(), fault.getMessage());
    }

    /** Examples in the form of ASTM D6507 and MIL-HDBK-17-2F 1.6, with the number of plies each has. */
    @ParameterizedTest
    @CsvSource({"[45/0/-45/90]s, 8", "[0/±45/90]2s, 16", "[0/45/90~]s, 5", "[(0/90)/±45]t, 4"})
    void theExamplesOfTheStandardsRoundTrip(String code, int plies) {
        OrientationCode read = OrientationCode.parse(code);
        assertEquals(plies, read.items().size());
        assertEquals(read.items(), OrientationCode.parse(read.toString()).items());
    }

    @Test
    void theLegendMakesALaminateOfIt() {
        MaterialLibrary library = MaterialLibrary.shipped();
        Legend legend = Legend.of(library.get("ud-im7-8552"))
                .with("c", library.get("pw-t650-976"))
                .with("film", library.get("film-epoxy-150", Adhesive.class))
                .with("core", library.get("al-honeycomb-3.1", Core.class), 0.02);
        Laminate laminate = OrientationCode.parse(
                        "[45c/0_2/film/core(90)/film/..]".replace("/film/..", "/film/0_2/45c"))
                .toLaminate(legend, Reference.OUTER);
        assertEquals(9, laminate.layers().size());
        assertEquals(
                library.get("pw-t650-976", Ply.class),
                laminate.layers().getFirst().material());
        assertEquals(90, laminate.layers().get(4).degrees());
        assertEquals(LayerRole.CORE, laminate.layers().get(4).role());
        assertTrue(laminate.isSymmetric());

        LayupException unknown = assertThrows(
                LayupException.class, () -> OrientationCode.parse("[0/cor/0]").toLaminate(legend, Reference.OUTER));
        assertTrue(unknown.getMessage().contains("did you mean 'core'?"), unknown.getMessage());
    }
}
