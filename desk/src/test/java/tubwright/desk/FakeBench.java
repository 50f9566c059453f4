// SPDX-License-Identifier: Apache-2.0
package tubwright.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.CheckAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.work.UserMistake;
import tubwright.desk.work.Workbench;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;

/** A workbench that reads nothing and answers with a {@link FakeRun}. */
public final class FakeBench implements Workbench {
    /** What a run throws instead of answering, if not null. */
    private final RuntimeException trouble;

    /** The last request. */
    public Request asked;

    public FakeBench() {
        this(null);
    }

    public FakeBench(RuntimeException trouble) {
        this.trouble = trouble;
    }

    @Override
    public Draft read(Path place) {
        Path file = place.resolve("tub.yaml");
        if (!Files.exists(file)) {
            throw new UserMistake(file + ": there is no such file");
        }
        return new Draft() {
            @Override
            public String tub() {
                return "Larkspur";
            }

            @Override
            public List<String> variants() {
                return List.of("as designed", "aluminium");
            }

            @Override
            public List<String> cases() {
                return List.of("torsion", "bending", "bump");
            }

            @Override
            public List<Path> files() {
                return List.of(file);
            }

            @Override
            public CheckAnswer check() {
                return new CheckAnswer(
                        "Larkspur",
                        List.of("6 frames, 5 strips, 1 opening, 4 walls."),
                        List.of(new CheckAnswer.Variant(
                                "as designed",
                                "carbon sandwich",
                                List.of(new CheckAnswer.Zone("floor", false, "[45c/core/45c]", 1.234, 0.0208, 2.31)),
                                List.of(new CheckAnswer.Piece("lower shell", 17.6)),
                                31.42)),
                        List.of());
            }

            @Override
            public RunAnswer run(Request request, Listener listener) {
                asked = request;
                listener.stage("mesh");
                if (trouble != null) {
                    throw trouble;
                }
                return FakeRun.answer().stamped(request.stamp());
            }
        };
    }

    @Override
    public String schema() {
        return "{}";
    }

    @Override
    public List<Material> materials() {
        return MaterialLibrary.shipped().all();
    }

    @Override
    public Map<String, String> starter(String name) {
        return Map.of("tub.yaml", "tub: " + name + "\n");
    }
}
