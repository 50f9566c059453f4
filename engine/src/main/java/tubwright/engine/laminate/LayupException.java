// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/** A layup that cannot be read or made; says where in the text, what was read and what would be right. */
public final class LayupException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final String text;
    private final int position;

    LayupException(String text, int position, String reason) {
        super(message(text, position, reason));
        this.text = text;
        this.position = position;
    }

    private static String message(String text, int position, String reason) {
        if (text.isEmpty()) {
            return "the layup is empty: " + reason;
        }
        if (position < 0) {
            return "cannot make the layup " + text + ": " + reason;
        }
        String rest = text.substring(Math.min(position, text.length()));
        String shown = rest.isEmpty() ? "at the end" : "at '" + rest.substring(0, Math.min(12, rest.length())) + "'";
        return "cannot read the layup " + text + " " + shown + " (character " + (position + 1) + "): " + reason;
    }

    /** The whole orientation code. */
    public String text() {
        return text;
    }

    /** Index in the text where reading stopped, or −1 if the text was read but cannot be made into a laminate. */
    public int position() {
        return position;
    }
}
