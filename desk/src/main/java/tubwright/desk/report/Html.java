// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

/** Text made safe for a page. */
final class Html {
    private Html() {}

    /** {@code text} with the characters that mean something in HTML and XML written as references. */
    static String escape(String text) {
        StringBuilder result = new StringBuilder(text.length() + 16);
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '&' -> result.append("&amp;");
                case '<' -> result.append("&lt;");
                case '>' -> result.append("&gt;");
                case '"' -> result.append("&quot;");
                case '\'' -> result.append("&#39;");
                default -> result.append(c < ' ' && c != '\n' && c != '\t' ? ' ' : c);
            }
        }
        return result.toString();
    }

    /** {@code <tag class="kind">content</tag>}; the content is taken as it is. */
    static String tag(String tag, String kind, String content) {
        String attribute = kind.isEmpty() ? "" : " class=\"" + kind + "\"";
        return "<" + tag + attribute + ">" + content + "</" + tag + ">";
    }
}
