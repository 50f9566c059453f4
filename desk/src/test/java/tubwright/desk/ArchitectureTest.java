// SPDX-License-Identifier: Apache-2.0
package tubwright.desk;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The desk's packages know only those before them. */
class ArchitectureTest {
    private static final List<String> ORDER = List.of(
            "text", "picture", "answer", "export", "console", "report", "sheet", "work", "logbook", "page", "web",
            "command");

    private static final JavaClasses OURS = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tubwright.desk");

    @Test
    void eachPackageKnowsOnlyThoseBeforeItInTheOrder() {
        for (int i = 0; i + 1 < ORDER.size(); i++) {
            String[] later = ORDER.subList(i + 1, ORDER.size()).stream()
                    .map(name -> "tubwright.desk." + name)
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("tubwright.desk." + ORDER.get(i))
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(later)
                    .check(OURS);
        }
    }

    @Test
    void everyPackageHasItsPlaceInTheOrder() {
        TreeSet<String> names = new TreeSet<>();
        OURS.forEach(c -> names.add(c.getPackageName()));
        names.remove("tubwright.desk");
        TreeSet<String> known = new TreeSet<>();
        ORDER.forEach(name -> known.add("tubwright.desk." + name));
        assertEquals(known, names);
    }

    /** Pictures are painted by our own hand: no toolkit to load, none to differ from machine to machine. */
    @Test
    void nothingDrawsWithAToolkit() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.awt..", "javax.swing..", "javax.imageio..")
                .check(OURS);
    }
}
