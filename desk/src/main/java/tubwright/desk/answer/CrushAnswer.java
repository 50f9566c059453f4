// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;
import tubwright.engine.safety.crush.CrushChain;
import tubwright.engine.safety.crush.CrushRun;
import tubwright.engine.safety.crush.CrushStructure;
import tubwright.engine.safety.crush.CrushVerdicts;

/**
 * What impacts come to.
 *
 * @param tub name
 * @param structures each by itself
 * @param stamp time
 * @param version of the program
 */
public record CrushAnswer(String tub, List<Each> structures, String stamp, String version) {
    /** How to read it. */
    public static final String ASIDE =
            "One dimension: the car goes straight into something that does not give, the structure folds from its tip, nothing"
                    + " turns or slides. A composite structure is crushed in a dynamic test before anybody relies on it. \"Met\""
                    + " says that these figures keep to that limit, and no more; the sanctioning body decides.";

    public CrushAnswer {
        structures = List.copyOf(structures);
    }

    /**
     * One structure.
     *
     * @param structure as designed
     * @param whole the impact with the car whole; empty where crush data are missing
     * @param apart the same with parts that may break off; empty where none is named
     * @param lines limit by limit
     */
    public record Each(
            CrushStructure structure,
            Optional<CrushRun.Answer> whole,
            Optional<CrushChain.Answer> apart,
            List<CrushVerdicts.Line> lines) {
        public Each {
            lines = List.copyOf(lines);
        }

        /** Works one out. */
        public static Each of(CrushStructure structure) {
            return new Each(structure, structure.whole(), structure.apart(), CrushVerdicts.of(structure));
        }
    }
}
