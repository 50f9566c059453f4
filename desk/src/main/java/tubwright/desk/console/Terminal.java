// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.io.Console;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.util.Map;

/**
 * Where the short answer is printed and what can be shown there.
 *
 * @param out for answers
 * @param err for progress, warnings and errors
 * @param live whether a person is watching, so that a line may be written over
 * @param colour whether colours and weights may be used
 * @param unicode whether more than ASCII can be shown
 */
public record Terminal(PrintStream out, PrintStream err, boolean live, boolean colour, boolean unicode) {
    private static final String ESCAPE = "\u001b[";
    private static final Map<Character, String> PLAIN = Map.ofEntries(
            Map.entry('·', "."),
            Map.entry('±', "+/-"),
            Map.entry('×', "x"),
            Map.entry('²', "2"),
            Map.entry('³', "3"),
            Map.entry('°', "deg"),
            Map.entry('−', "-"),
            Map.entry('–', "-"),
            Map.entry('—', "-"),
            Map.entry('…', "..."),
            Map.entry('≥', ">="),
            Map.entry('≤', "<="),
            Map.entry('→', "->"),
            Map.entry('ν', "nu"),
            Map.entry('█', "#"),
            Map.entry('▌', "#"),
            Map.entry('─', "-"),
            Map.entry('│', "|"),
            Map.entry('●', "*"),
            Map.entry('○', "o"),
            Map.entry('◐', "?"),
            Map.entry('▁', "."),
            Map.entry('▂', ":"),
            Map.entry('▃', "-"),
            Map.entry('▄', "="),
            Map.entry('▅', "+"),
            Map.entry('▆', "*"),
            Map.entry('▇', "%"),
            Map.entry('\u202f', " "),
            Map.entry('\u00a0', " "),
            Map.entry('“', "\""),
            Map.entry('”', "\""),
            Map.entry('‘', "'"),
            Map.entry('’', "'"));

    /** Looks of text on a terminal with colours. */
    public enum Look {
        STRONG("1"),
        QUIET("2"),
        GOOD("32"),
        BAD("31"),
        CAREFUL("33");

        private final String code;

        Look(String code) {
            this.code = code;
        }
    }

    /** The terminal this process was started from. Colours are left out when NO_COLOR is set (no-color.org). */
    public static Terminal system() {
        Console console = System.console();
        boolean live = console != null && console.isTerminal() && !"dumb".equals(System.getenv("TERM"));
        String noColour = System.getenv("NO_COLOR");
        boolean colour = live && (noColour == null || noColour.isEmpty());
        Charset charset = System.out.charset();
        boolean unicode = charset.newEncoder().canEncode('█');
        return new Terminal(System.out, System.err, live, colour, unicode);
    }

    /** {@code text} as this terminal can show it. */
    public String shown(String text) {
        if (unicode) {
            return text;
        }
        StringBuilder result = new StringBuilder(text.length() + 8);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            result.append(c < 128 ? String.valueOf(c) : PLAIN.getOrDefault(c, "?"));
        }
        return result.toString();
    }

    /** {@code text} with a look, where looks can be shown. */
    public String look(Look look, String text) {
        return colour ? ESCAPE + look.code + "m" + text + ESCAPE + "0m" : text;
    }

    /** Prints a line of the answer. */
    public void print(String line) {
        out.print(shown(line));
        out.print('\n');
    }

    /** Prints a line beside the answer. */
    public void say(String line) {
        err.print(shown(line));
        err.print('\n');
        err.flush();
    }
}
