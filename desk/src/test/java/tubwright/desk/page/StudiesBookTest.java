// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.desk.export.StudyJson;
import tubwright.desk.work.StudyWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.fleet.findings.StudyRun;
import tubwright.fleet.plan.StudyPlan;

/** Studies on the page, and their designs in the file. */
class StudiesBookTest {
    private static final String TUB = """
            tub: Box    # kept
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - {station: 0 mm, outline: "(0, 0) (200, 0) (200, 300) (0, 300) mm"}
                - {station: 900 mm, outline: "(0, 0) (200, 0) (200, 300) (0, 300) mm"}
              walls: {front: {station: 0 mm}, rear: {station: 900 mm}}
            laminates:
              skin: {sheet: al-6061-t6, thickness: 2 mm}
              ends: {sheet: al-6061-t6, thickness: 6 mm}
            zones: {skins: {on: [floor, flank, deck], laminate: skin}, ends: {on: [front, rear], laminate: ends}}
            joints:
              edges: {walls: all, bonded: {arrangement: tee, overlap: 30 mm, adhesive: paste-epoxy}}
            hardpoints:
              front: {on: front, y: 80 mm, z: 150 mm, footprint: 40 mm}
              low: {on: rear, y: 80 mm, z: 80 mm, footprint: 40 mm}
              high: {on: rear, y: 80 mm, z: 220 mm, footprint: 40 mm}
            cases:
              torsion:
                hold: {low: "x, y, z", high: "x, y, z"}
                load at: [front]
                couple: 1000 N·m
                front station: 200 mm
                rear station: 700 mm
            mesh: {size: 70 mm}
            variants:
              thick:
                laminates: {skin: {thickness: 3 mm}}
            """;

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void runAStudy() throws IOException {
        file = folder.resolve("tub.yaml");
        Files.writeString(file, TUB);
        Files.createDirectories(folder.resolve("studies"));
        Files.writeString(folder.resolve("studies/waist.yaml"), """
                variants: [as designed, thick]
                vary:
                  given back: {frames: 0 .. 900 mm, change: narrower, values: "0, 40, 500 mm"}
                  ends: {at: [laminates, ends, thickness], values: "6, 8 mm"}
                read: [torsional stiffness, mass]
                """);
        Design design = Design.read(file);
        Path out = Files.createDirectories(folder.resolve("runs/study-waist"));
        Files.writeString(
                out.resolve("answer.json"),
                StudyJson.write(StudyWork.run(
                        design,
                        StudyPlan.read(design, "waist", "test"),
                        new StudyWork.Request(0, Optional.empty()),
                        "test",
                        new StudyRun.Listener() {})));
    }

    private static double mass(Tub tub) {
        return MassRollUp.of(Structure.of(tub, Study.mesh(tub, tub.meshSize())))
                .whole()
                .mass();
    }

    @Test
    void theyAreToldWithTheirAxesAndWithWhatCouldNotBe() {
        try (OpenProject project = new OpenProject(folder, size -> size, "test")) {
            StudyView study = project.studies().getFirst();
            assertTrue(study.current() && study.complete());
            assertEquals(
                    List.of("given back", "ends", "torsional stiffness", "mass"),
                    study.axes().stream().map(StudyView.AxisView::name).toList());
            assertEquals(2, study.variants().size());
            List<StudyView.StudyPointView> points = study.variants().getFirst().points();
            assertEquals(6, points.size());
            assertEquals(2, points.stream().filter(p -> !p.reason().isEmpty()).count(), "half a metre is too much");
            assertEquals(40, points.get(2).numbers()[0], 1e-9);
        }
    }

    @Test
    void aDesignPutIntoTheFileIsTheOneThatWasComputed() throws IOException {
        try (OpenProject project = new OpenProject(folder, size -> size, "test")) {
            StudyView study = project.studies().getFirst();
            for (int v = 0; v < 2; v++) {
                String of = study.variants().get(v).variant();
                String name = "narrow of " + of;
                project.openPoint(new StudyView.OpenPointRequest("waist", of, 3, name));
                Design design = Design.read(file);
                double[] numbers = study.variants().get(v).points().get(3).numbers();
                assertEquals(numbers[3], mass(design.variant(name).orElseThrow().tub()), 1e-9 * numbers[3]);
            }
            String text = Files.readString(file);
            assertTrue(text.startsWith("tub: Box    # kept\n"), "all else stays");
            assertTrue(text.contains("laminates: {skin: {thickness: 3 mm}}"));
            assertTrue(project.studies().getFirst().current(), "another variant does not change the others");
            assertThrows(
                    RuntimeException.class,
                    () -> project.openPoint(new StudyView.OpenPointRequest("waist", "thick", 3, "thick")));
            assertThrows(
                    UserMistake.class,
                    () -> project.openPoint(new StudyView.OpenPointRequest("waist", "thick", 4, "impossible")),
                    "what could not be computed is no variant");
            assertThrows(
                    UserMistake.class,
                    () -> project.openPoint(new StudyView.OpenPointRequest("waste", "thick", 3, "other")));
        }
    }

    @Test
    void onceTheDesignHasChangedNothingIsTakenFromAnOldStudy() throws IOException {
        Files.writeString(file, TUB.replace("thickness: 2 mm", "thickness: 2.5 mm"));
        try (OpenProject project = new OpenProject(folder, size -> size, "test")) {
            assertFalse(project.studies().getFirst().current());
            UserMistake told = assertThrows(
                    UserMistake.class,
                    () -> project.openPoint(new StudyView.OpenPointRequest("waist", "as designed", 3, "old")));
            assertTrue(told.getMessage().contains("run the study again"));
        }
    }
}
