// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.rig.DataText.Line;

/** Reads how a torsion test was set up from the settings of its file. */
final class SetupReader {
    private final DataText file;
    private final Map<String, Line> settings;

    /**
     * @param file that takes in what is wrong
     * @param settings lines by the setting's name
     */
    SetupReader(DataText file, Map<String, Line> settings) {
        this.file = file;
        this.settings = settings;
    }

    Setup read() {
        Optional<RigStiffness> rig = Optional.empty();
        Line stated = settings.get("rig stiffness");
        Line dummy = settings.get("dummy test");
        if (stated != null && dummy != null) {
            file.fault(dummy.number(), "say either the rig's stiffness or the dummy test, not both");
        } else if (stated != null) {
            double value = file.size(stated, 1, Dimension.TORSIONAL_STIFFNESS, "rig stiffness")
                    .orElse(1);
            double error = stated.cell(2).isEmpty()
                    ? 0
                    : file.value(stated, 2, Dimension.TORSIONAL_STIFFNESS, "its standard uncertainty")
                            .orElse(0);
            rig = Optional.of(new RigStiffness(value, error, "as stated"));
        } else if (dummy != null) {
            double measured = file.size(dummy, 1, Dimension.TORSIONAL_STIFFNESS, "dummy as measured")
                    .orElse(1);
            double real = file.value(dummy, 2, Dimension.TORSIONAL_STIFFNESS, "dummy's own stiffness")
                    .orElse(2);
            if (real > measured) {
                rig = Optional.of(RigStiffness.ofDummy(measured, real));
            } else if (file.sound()) {
                file.fault(
                        dummy.number(),
                        "the dummy was measured stiffer than it is: the rig cannot add stiffness; write"
                                + " first what was measured, then the dummy's own stiffness");
            }
        }
        double arm = settings.containsKey("arm") && !settings.get("arm").cell(2).isEmpty()
                ? file.value(settings.get("arm"), 2, Dimension.LENGTH, "arm's standard uncertainty")
                                .orElse(0)
                        / file.size(settings.get("arm"), 1, Dimension.LENGTH, "arm")
                                .orElse(1)
                : 0;
        ends();
        String test = settings.containsKey("test") ? settings.get("test").cell(1) : "tub only";
        return new Setup(
                test,
                length("held station"),
                length("loaded station"),
                Math.hypot(
                        arm,
                        single("torque uncertainty", Dimension.DIMENSIONLESS).orElse(0)),
                length("gauge spacing uncertainty").orElse(0),
                length("gauge resolution").orElse(0),
                rig,
                single("mass", Dimension.MASS),
                single("wheel-rate torsion", Dimension.TORSIONAL_STIFFNESS),
                single("wanted share", Dimension.DIMENSIONLESS));
    }

    /** Refuses a test held where it is loaded. */
    private void ends() {
        OptionalDouble held = length("held station");
        OptionalDouble loaded = length("loaded station");
        if (held.isPresent() && loaded.isPresent() && Math.abs(held.getAsDouble() - loaded.getAsDouble()) < 1e-3) {
            file.fault(
                    settings.get("loaded station").number(),
                    "the tub is loaded where it is held, at "
                            + settings.get("held station").cell(1) + ": write the x of the two ends");
        }
    }

    private OptionalDouble length(String key) {
        return single(key, Dimension.LENGTH);
    }

    private OptionalDouble single(String key, Dimension dimension) {
        Line line = settings.get(key);
        if (line == null) {
            return OptionalDouble.empty();
        }
        OptionalDouble value = file.value(line, 1, dimension, key);
        boolean share = dimension == Dimension.DIMENSIONLESS;
        if (value.isPresent() && value.getAsDouble() < 0 && !key.endsWith("station")) {
            file.fault(line.number(), key + " is " + line.cell(1) + "; it cannot be negative");
        } else if (share && value.isPresent() && value.getAsDouble() >= 1) {
            file.fault(line.number(), key + " is " + line.cell(1) + "; it must be below 100 %");
        }
        return value;
    }
}
