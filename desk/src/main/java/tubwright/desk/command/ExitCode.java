// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

/** What the program's exit codes mean. */
public final class ExitCode {
    /** All went well. */
    public static final int DONE = 0;

    /** The input is wrong, or the machine refused something (a file, its disk, its memory). */
    public static final int WRONG_INPUT = 1;

    /** The command was not understood. */
    public static final int USAGE = 2;

    /** A fault of the program itself. */
    public static final int OUR_FAULT = 3;

    /** Stopped by the user, as shells report an interrupt. */
    public static final int STOPPED = 130;

    private ExitCode() {}
}
