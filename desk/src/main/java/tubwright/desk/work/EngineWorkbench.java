// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;

/** The workbench with the engine behind it. */
public final class EngineWorkbench implements Workbench {
    @Override
    public Draft read(Path place) {
        throw new UserMistake(place + ": this build cannot read designs yet");
    }

    @Override
    public String schema() {
        throw new UserMistake("this build has no schema yet");
    }

    @Override
    public List<Material> materials() {
        return MaterialLibrary.shipped().all();
    }

    @Override
    public Map<String, String> starter() {
        throw new UserMistake("this build has no starting design yet");
    }
}
