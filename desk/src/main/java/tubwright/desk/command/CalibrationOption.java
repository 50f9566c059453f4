// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import tubwright.desk.export.CalibrationFile;
import tubwright.desk.work.UserMistake;
import tubwright.engine.rig.explain.Calibration;

/** Whether to work on the tub as its makers build it. */
final class CalibrationOption {
    @Option(
            names = "--calibrated",
            description =
                    "Compute the tub as its makers build it: with what \"rig explain --keep\" has learnt from a test,"
                            + " DIR/rig/calibration.json.")
    private boolean calibrated;

    /** The project's calibration, if it is asked for. */
    Optional<Calibration> read(Path folder) throws IOException {
        if (!calibrated) {
            return Optional.empty();
        }
        Path file = CalibrationFile.of(folder);
        Optional<Calibration> found = CalibrationFile.read(file);
        if (found.isEmpty()) {
            throw new UserMistake(file + ": there is no calibration; make one with\n    tubwright rig explain " + folder
                    + " readings.csv --keep");
        }
        return found;
    }
}
