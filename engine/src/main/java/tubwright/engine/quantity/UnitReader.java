// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import java.util.List;
import java.util.Optional;

/** Recursive-descent reader of the unit grammar described at {@link Unit}. */
final class UnitReader {
    private static final String SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
    private static final int DEEPEST_BRACKET = 16;
    private static final int LARGEST_POWER = 9;

    private final String text;
    private int at;
    private int depth;
    private int atoms;
    private double loneOffset;

    UnitReader(String text) {
        this.text = text.strip().replace('μ', 'µ').replace('º', '°');
    }

    private record Part(double factor, Exponents exponents) {
        Part times(Part other, int power) {
            return new Part(factor * Math.pow(other.factor, power), exponents.times(other.exponents, power));
        }
    }

    Unit read() {
        Part part = product();
        if (at < text.length()) {
            throw unreadable("'" + text.charAt(at) + "' is not expected here", Optional.empty());
        }
        if (!(part.factor > 0) || Double.isInfinite(part.factor)) {
            throw unreadable("a unit must be positive and finite", Optional.empty());
        }
        // An offset has a meaning only for °C or °F standing alone; in 1/°C it is a difference.
        double offset = atoms == 1 && text.matches("°[CF]|deg[CF]") ? loneOffset : 0;
        return new Unit(text, part.factor, offset, part.exponents);
    }

    private Part product() {
        if (++depth > DEEPEST_BRACKET) {
            throw unreadable("too many brackets", Optional.empty());
        }
        Part result = new Part(1, Exponents.NONE);
        int sign = 1;
        skipBlanks();
        if (peek() == '/') {
            at++;
            sign = -1;
        }
        while (true) {
            result = result.times(factor(), sign);
            boolean blank = skipBlanks();
            char next = peek();
            if (next == '/') {
                at++;
                sign = -1;
            } else if (next == '*' || next == '·' || next == '⋅' || next == '×' || next == '.' || next == '-') {
                at++;
                sign = 1;
            } else if (blank && next != 0 && next != ')') {
                sign = 1;
            } else {
                break;
            }
        }
        depth--;
        return result;
    }

    private Part factor() {
        skipBlanks();
        char c = peek();
        Part base;
        boolean named = false;
        if (c == '(') {
            at++;
            base = product();
            if (peek() != ')') {
                throw unreadable("a bracket is not closed", Optional.empty());
            }
            at++;
        } else if (isDigit(c)) {
            base = new Part(number(), Exponents.NONE);
        } else if (isUnitLetter(c)) {
            base = atom();
            named = true;
        } else if (c == 0) {
            throw unreadable("the unit ends where a factor is due", Optional.empty());
        } else {
            throw unreadable("'" + c + "' is not a unit", Optional.empty());
        }
        int power = power(named);
        return power == 1 ? base : new Part(1, Exponents.NONE).times(base, power);
    }

    private double number() {
        int start = at;
        skipDigits();
        if (peek() == '.' && isDigit(peek(1))) {
            at++;
            skipDigits();
        }
        boolean signed = peek(1) == '-' || peek(1) == '+';
        if (peek() == 'e' && isDigit(peek(signed ? 2 : 1))) {
            at += signed ? 2 : 1;
            skipDigits();
        }
        return Double.parseDouble(text.substring(start, at));
    }

    private void skipDigits() {
        while (isDigit(peek())) {
            at++;
        }
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private Part atom() {
        int start = at;
        while (isUnitLetter(peek()) || at > start && peek() == '0' && text.charAt(at - 1) == 'g') {
            at++;
        }
        String word = text.substring(start, at);
        Optional<UnitAtoms.Atom> found = UnitAtoms.find(word);
        if (found.isPresent()) {
            atoms++;
            loneOffset = found.get().offset();
            return new Part(found.get().factor(), found.get().exponents());
        }
        // Touching atoms (Nm, kNm): the longest first atom wins, so that Nmm is N·mm.
        for (int cut = word.length() - 1; cut > 0; cut--) {
            Optional<UnitAtoms.Atom> first = UnitAtoms.find(word.substring(0, cut));
            Optional<UnitAtoms.Atom> second = UnitAtoms.find(word.substring(cut));
            if (first.isPresent() && second.isPresent()) {
                atoms += 2;
                return new Part(first.get().factor(), first.get().exponents())
                        .times(new Part(second.get().factor(), second.get().exponents()), 1);
            }
        }
        at = start;
        throw unreadable("'" + word + "' is not a unit", NearestName.of(word, UnitAtoms.spellings()));
    }

    /** The power behind a factor; behind a unit's name a bare digit is one too, as in kg/m3. */
    private int power(boolean named) {
        int sign = 1;
        boolean marked = named && isDigit(peek());
        if (peek() == '^') {
            at++;
            marked = true;
        } else if (peek() == '*' && peek(1) == '*') {
            at += 2;
            marked = true;
        } else if (peek() == '⁻') {
            at++;
            sign = -1;
        }
        if (marked && (peek() == '-' || peek() == '−')) {
            at++;
            sign = -1;
        }
        if (!marked && SUPERSCRIPTS.indexOf(peek()) < 0) {
            return 1;
        }
        int value = 0;
        int start = at;
        while (marked ? isDigit(peek()) : peek() != 0 && SUPERSCRIPTS.indexOf(peek()) >= 0) {
            int digit = marked ? Character.digit(peek(), 10) : SUPERSCRIPTS.indexOf(peek());
            value = Math.min(99, 10 * value + digit);
            at++;
        }
        if (at == start || value > LARGEST_POWER) {
            throw unreadable("a power from 1 to " + LARGEST_POWER + " is due", Optional.empty());
        }
        return sign * value;
    }

    private boolean skipBlanks() {
        int start = at;
        while (Character.isWhitespace(peek()) || peek() == '\u00a0' || peek() == '\u202f') {
            at++;
        }
        return at > start;
    }

    private char peek() {
        return peek(0);
    }

    private char peek(int ahead) {
        return at + ahead < text.length() ? text.charAt(at + ahead) : 0;
    }

    private static boolean isUnitLetter(char c) {
        return Character.isLetter(c) || c == '°' || c == '%' || c == '"';
    }

    private QuantityException unreadable(String reason, Optional<String> nearest) {
        return new QuantityException(text, at, reason, List.of(), nearest);
    }
}
