// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import tubwright.engine.laminate.OrientationCode.Item;
import tubwright.engine.laminate.OrientationCode.PlyItem;
import tubwright.engine.laminate.OrientationCode.WordItem;

/** Recursive-descent reader of the code described at {@link OrientationCode}. */
final class OrientationCodeReader {
    private static final int MOST_LAYERS = 5000;
    private static final int DEEPEST_GROUP = 20;
    private static final String SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉";
    private static final String CORE = "core";

    private final String text;
    private int at;
    private int depth;

    /** Position of the over-bar on the item read last, or −1. */
    private int overBar = -1;

    /** True after {@code ..}, which nothing may follow. */
    private boolean mirroredSkin;

    OrientationCodeReader(String text) {
        this.text = text.strip();
    }

    List<Item> read() {
        skipBlanks();
        if (peek() != '[') {
            throw fault("a layup stands in square brackets, as in [45/0/core/0/45]");
        }
        at++;
        List<Item> items = sequence(']');
        at++;
        int suffixAt = at;
        int repeats = 1;
        skipBlanks();
        boolean marked = accept('_');
        boolean braced = accept('{');
        if (isCount()) {
            repeats = count();
        }
        boolean symmetric = accept('s') || accept('S') || accept('ₛ');
        boolean total = !symmetric && (accept('t') || accept('T'));
        if (marked && at == suffixAt + (braced ? 2 : 1)) {
            throw fault("after the bracket come s (symmetric), a number (repeated) or both, as in ]_2s");
        }
        if (braced && !accept('}')) {
            throw fault("'}' is missing");
        }
        skipBlanks();
        if (at < text.length()) {
            throw fault(
                    total || symmetric || repeats > 1
                            ? "nothing may follow here"
                            : "after the bracket come s (symmetric), a number (repeated) or both, as in ]_2s");
        }
        return complete(items, repeats, symmetric, suffixAt);
    }

    private List<Item> complete(List<Item> items, int repeats, boolean symmetric, int suffixAt) {
        if (mirroredSkin) {
            at = suffixAt;
            if (repeats > 1) {
                throw fault("a layup that ends in .. cannot be repeated");
            }
            return items; // with or without s: the skin behind the core is the mirrored one already
        }
        if (overBar >= 0 && (!symmetric || repeats > 1)) {
            at = overBar;
            throw fault("an over-bar marks the middle ply of a symmetric layup; it needs ]s, and no repetition");
        }
        List<Item> all = repeat(items, repeats, suffixAt);
        if (symmetric) {
            if (overBar < 0
                    && all.getLast() instanceof WordItem word
                    && word.word().equals(CORE)) {
                at = suffixAt;
                throw fault("mirrored, this has two cores back to back; write core~ for one core at the middle");
            }
            List<Item> mirrored = new ArrayList<>(overBar >= 0 ? all.subList(0, all.size() - 1) : all);
            Collections.reverse(mirrored);
            append(all, mirrored, suffixAt);
        }
        return all;
    }

    private List<Item> sequence(char end) {
        if (++depth > DEEPEST_GROUP) {
            throw fault("groups are nested too deeply");
        }
        List<Item> items = new ArrayList<>();
        while (true) {
            skipBlanks();
            if (overBar >= 0) {
                at = overBar;
                throw fault("only the last ply of the layup may have an over-bar: it is the middle one");
            }
            if (mirroredSkin) {
                throw fault("nothing may follow ..");
            }
            if (text.startsWith("..", at) || peek() == '…') {
                mirrorSkin(items);
            } else {
                append(items, item(), at);
            }
            skipBlanks();
            if (peek() == end) {
                break;
            }
            if (peek() != '/') {
                throw fault(at < text.length() ? "'/' or '" + end + "' is due" : "'" + end + "' is missing");
            }
            at++;
        }
        depth--;
        return items;
    }

    /** Appends the mirror image of what lies outside the core that was read last. */
    private void mirrorSkin(List<Item> items) {
        boolean afterCore = !items.isEmpty()
                && items.getLast() instanceof WordItem word
                && word.word().equals(CORE);
        if (depth > 1 || !afterCore) {
            throw fault(".. stands for the mirrored skin and may only follow a core at the end, as in [45/0/core/..]");
        }
        at += peek() == '…' ? 1 : 2;
        List<Item> skin = new ArrayList<>(items.subList(0, items.size() - 1));
        Collections.reverse(skin);
        items.addAll(skin);
        mirroredSkin = true;
    }

    private List<Item> item() {
        int start = at;
        char c = peek();
        if (c == '(') {
            at++;
            List<Item> group = sequence(')');
            if (overBar >= 0) {
                at = overBar;
                throw fault("an over-bar may not stand inside round brackets");
            }
            at++;
            return repeat(group, itemRepeats(), start);
        }
        if (Character.isLetter(c)) {
            return wordItem();
        }
        return angleItem();
    }

    private List<Item> wordItem() {
        int start = at;
        while (Character.isLetterOrDigit(peek()) || peek() == '-') {
            at++;
        }
        String word = text.substring(start, at).toLowerCase(Locale.ROOT);
        double degrees = 0;
        if (accept('(')) {
            degrees = number(sign());
            accept('°');
            if (!accept(')')) {
                throw fault("')' is missing after the angle of the " + word);
            }
        }
        acceptOverBar();
        return repeat(List.of(new WordItem(word, degrees)), itemRepeats(), start);
    }

    private List<Item> angleItem() {
        int start = at;
        int pair = pairSign();
        double degrees = number(pair == 0 ? sign() : 1);
        acceptOverBar();
        accept('°');
        int tagAt = at;
        while (Character.isLetter(peek()) && SUBSCRIPTS.indexOf(peek()) < 0 && peek() != 'ₛ') {
            at++;
        }
        String tag = text.substring(tagAt, at);
        if (tag.equals("s") || tag.equals("S")) {
            at = tagAt;
            throw fault("the s for symmetric stands after the closing bracket; it cannot be a ply's tag");
        }
        acceptOverBar();
        if (pair == 0) {
            return repeat(List.of(new PlyItem(degrees, tag)), itemRepeats(), start);
        }
        if (overBar >= 0) {
            throw fault("a pair of plies cannot have an over-bar");
        }
        if (peek() == '_' || isSubscript()) {
            String a = OrientationCodeWriter.number(degrees) + tag;
            throw fault("a repeated ± can be read in two ways; write (±" + a + ")_2 or " + a + "_2/-" + a + "_2");
        }
        return List.of(new PlyItem(pair * degrees, tag), new PlyItem(-pair * degrees, tag));
    }

    /** +1 for ±, −1 for ∓, 0 for a single angle. */
    private int pairSign() {
        for (String plusMinus : new String[] {"±", "+/-", "+-", "+−"}) {
            if (text.startsWith(plusMinus, at)) {
                at += plusMinus.length();
                return 1;
            }
        }
        for (String minusPlus : new String[] {"∓", "-/+", "-+", "−+"}) {
            if (text.startsWith(minusPlus, at)) {
                at += minusPlus.length();
                return -1;
            }
        }
        return 0;
    }

    private int sign() {
        if (accept('-') || accept('−')) {
            return -1;
        }
        accept('+');
        return 1;
    }

    private double number(int sign) {
        int start = at;
        StringBuilder digits = new StringBuilder();
        while (isDigit(peek()) || peek() == '.' && isDigit(peek(1)) || isCombiningBar()) {
            if (isCombiningBar()) {
                acceptOverBar();
            } else {
                digits.append(peek());
                at++;
            }
        }
        if (digits.isEmpty() || digits.indexOf(".") != digits.lastIndexOf(".")) {
            at = start;
            throw fault("an angle in degrees, a word such as core, or a group in round brackets is due");
        }
        double degrees = sign * Double.parseDouble(digits.toString());
        if (Math.abs(degrees) > 180) {
            at = start;
            throw fault("an angle lies between -90 and 90 degrees");
        }
        return degrees;
    }

    private int itemRepeats() {
        boolean bar = overBar >= 0;
        int repeatAt = at;
        int repeats = 1;
        if (accept('_')) {
            boolean braced = accept('{');
            if (!isCount()) {
                throw fault("a number of repetitions is due after _");
            }
            repeats = count();
            if (braced && !accept('}')) {
                throw fault("'}' is missing");
            }
            if (Character.isLetter(peek())) {
                throw fault("a tag stands before the number of repetitions, as in 0c_2");
            }
        } else if (isCount() && !isDigit(peek()) || isDigit(peek()) && at > 0 && text.charAt(at - 1) == ')') {
            repeats = count();
        }
        if (bar && repeats > 1) {
            at = repeatAt;
            throw fault("the ply with the over-bar is there once");
        }
        return repeats;
    }

    private boolean isCount() {
        return isDigit(peek()) || isSubscript();
    }

    private int count() {
        int value = 0;
        int start = at;
        while (isCount()) {
            int digit = isDigit(peek()) ? peek() - '0' : SUBSCRIPTS.indexOf(peek());
            value = Math.min(MOST_LAYERS + 1, 10 * value + digit);
            at++;
        }
        if (value == 0) {
            at = start;
            throw fault("nothing can be there 0 times");
        }
        return value;
    }

    private List<Item> repeat(List<Item> items, int times, int position) {
        List<Item> all = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            append(all, items, position);
        }
        return all;
    }

    private void append(List<Item> all, List<Item> more, int position) {
        if (all.size() + more.size() > MOST_LAYERS) {
            at = position;
            throw fault("more than " + MOST_LAYERS + " layers");
        }
        all.addAll(more);
    }

    private void acceptOverBar() {
        while (peek() == '~' || isCombiningBar()) {
            overBar = at;
            at++;
        }
    }

    private boolean isCombiningBar() {
        return peek() == '\u0304' || peek() == '\u0305';
    }

    private boolean isSubscript() {
        return peek() != 0 && SUBSCRIPTS.indexOf(peek()) >= 0;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private boolean accept(char c) {
        if (peek() == c) {
            at++;
            return true;
        }
        return false;
    }

    private void skipBlanks() {
        while (Character.isWhitespace(peek())) {
            at++;
        }
    }

    private char peek() {
        return peek(0);
    }

    private char peek(int ahead) {
        return at + ahead < text.length() ? text.charAt(at + ahead) : 0;
    }

    private LayupException fault(String reason) {
        return new LayupException(text, at, reason);
    }
}
