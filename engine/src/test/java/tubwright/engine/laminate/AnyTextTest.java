// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;

/** Whatever a user types, the readers answer with a value or with their own message, never with anything else. */
class AnyTextTest {
    private static final long SEED = 99;

    @Test
    void quantitiesAreReadOrRefused() {
        String[] pieces = {
            "1", "2.5", "-", "+", "−", "e", "e9", "1e-6", "/", "·", "*", "**", "^", "²", "⁻", "(", ")", "mm", "kN", "m",
            "deg", "°", "°C", "%", " ", ".", ",", "3/16", "Pa", "g", "x", "½", "\u0000", "𝛼", "\t"
        };
        feed(pieces, text -> {
            try {
                Quantity.parse(text, Dimension.LENGTH);
            } catch (QuantityException e) {
                assertEquals(text.strip(), e.read());
            }
        });
        feed(pieces, text -> {
            try {
                Quantity.parse(text);
            } catch (QuantityException e) {
                // refused in its own words, which is all that is asked
            }
        });
    }

    @Test
    void orientationCodesAreReadOrRefused() {
        String[] pieces = {
            "[",
            "]",
            "(",
            ")",
            "/",
            "0",
            "45",
            "-45",
            "90",
            "±",
            "∓",
            "+",
            "-",
            "_",
            "2",
            "{",
            "}",
            "s",
            "c",
            "core",
            "film",
            "~",
            "..",
            "…",
            "₂",
            "ₛ",
            "°",
            " ",
            "\u0305",
            ".",
            "t",
            "999999999999",
            "x"
        };
        feed(pieces, text -> {
            try {
                OrientationCode code = OrientationCode.parse("[" + text);
                assertEquals(code, OrientationCode.parse(code.toString()));
            } catch (LayupException e) {
                assertEquals(("[" + text).strip(), e.text());
            }
        });
    }

    private static void feed(String[] pieces, Consumer<String> reader) {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 5000; trial++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(12); n >= 0; n--) {
                text.append(pieces[random.nextInt(pieces.length)]);
            }
            assertDoesNotThrow(() -> reader.accept(text.toString()), "seed " + SEED + ": " + text);
        }
    }
}
