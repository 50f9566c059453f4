// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

/** How far the computing has come. */
@Meaning("How far a whole run has come")
public record RunView(
        State state,
        @Meaning("what is being done, or how it ended") String words,
        @Meaning("share done, 0 to 1") double share,
        @Meaning("since it was begun, s") double seconds) {

    /** How it stands. */
    public enum State {
        NONE,
        WORKING,
        DONE,
        STOPPED,
        FAILED
    }

    /** Nothing was asked for yet. */
    public static final RunView NONE = new RunView(State.NONE, "", 0, 0);
}
