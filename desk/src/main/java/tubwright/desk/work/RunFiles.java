// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.io.IOException;
import java.io.OutputStream;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.export.AnswerJson;
import tubwright.desk.export.FieldFiles;
import tubwright.desk.export.RunFolder;
import tubwright.desk.export.VtuWriter;
import tubwright.desk.report.Note;
import tubwright.engine.response.VariantAnswer;

/** What a run leaves in its folder. */
public final class RunFiles {
    private RunFiles() {}

    /**
     * Writes the report, the answer and the fields.
     *
     * @return the answer as JSON
     */
    public static String write(RunFolder folder, RunAnswer answer) throws IOException {
        String document = AnswerJson.write(answer);
        folder.text("report.html", Note.write(answer));
        folder.text(RunFolder.ANSWER, document);
        for (VariantAnswer variant : answer.variants()) {
            try (OutputStream stream = folder.open(FieldFiles.name(variant.variant()))) {
                VtuWriter.write(variant, answer.layups(), stream);
            }
        }
        return document;
    }
}
