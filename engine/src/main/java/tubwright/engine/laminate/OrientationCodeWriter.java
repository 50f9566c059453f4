// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.math.BigDecimal;
import java.util.List;
import tubwright.engine.laminate.OrientationCode.Item;
import tubwright.engine.laminate.OrientationCode.PlyItem;
import tubwright.engine.laminate.OrientationCode.WordItem;

/** Writes layers as the shortest usual orientation code. */
final class OrientationCodeWriter {
    private OrientationCodeWriter() {}

    static String write(List<Item> items) {
        int n = items.size();
        boolean oneRun = items.stream().allMatch(items.getFirst()::equals);
        // A sandwich is written out: both skins are to be seen.
        boolean symmetric = !oneRun && isPalindrome(items) && !(n % 2 == 1 && items.get(n / 2) instanceof WordItem);
        if (symmetric && n % 2 == 1) {
            String half = runs(items.subList(0, n / 2));
            return "[" + half + "/" + item(items.get(n / 2)) + "~]s";
        }
        List<Item> part = symmetric ? items.subList(0, n / 2) : items;
        if (symmetric
                && part.getLast().equals(new WordItem("core", part.getLast().degrees()))) {
            return "[" + runs(items) + "]"; // two cores back to back: the reader refuses to mirror a core
        }
        int period = oneRun ? part.size() : period(part);
        int times = part.size() / period;
        String suffix = (times > 1 ? "_" + times : "") + (symmetric ? "s" : "");
        return "[" + runs(part.subList(0, period)) + "]" + suffix;
    }

    private static boolean isPalindrome(List<Item> items) {
        return items.equals(items.reversed());
    }

    /** Length of the shortest part whose repetition makes up the whole. */
    private static int period(List<Item> items) {
        int n = items.size();
        for (int p = 1; p <= n / 2; p++) {
            if (n % p == 0 && items.subList(p, n).equals(items.subList(0, n - p))) {
                return p;
            }
        }
        return n;
    }

    private static String runs(List<Item> items) {
        StringBuilder code = new StringBuilder();
        int i = 0;
        while (i < items.size()) {
            int end = i + 1;
            while (end < items.size() && items.get(end).equals(items.get(i))) {
                end++;
            }
            code.append(i == 0 ? "" : "/").append(item(items.get(i)));
            if (end - i > 1) {
                code.append('_').append(end - i);
            }
            i = end;
        }
        return code.toString();
    }

    private static String item(Item item) {
        return switch (item) {
            case PlyItem ply -> number(ply.degrees()) + ply.tag();
            case WordItem word -> word.word() + (word.degrees() == 0 ? "" : "(" + number(word.degrees()) + ")");
        };
    }

    static String number(double degrees) {
        return degrees == 0
                ? "0"
                : new BigDecimal(Double.toString(degrees)).stripTrailingZeros().toPlainString();
    }
}
