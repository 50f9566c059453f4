// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The packages of the fleet know only those before them, and nothing of what a person touches. */
class ArchitectureTest {
    private static final List<String> ORDER = List.of(
            "tubwright.fleet",
            "tubwright.fleet.sample",
            "tubwright.fleet.statistics",
            "tubwright.fleet.plan",
            "tubwright.fleet.findings");

    private static final JavaClasses OURS = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tubwright.fleet");

    @Test
    void eachPackageKnowsOnlyThoseBeforeItInTheOrder() {
        for (int i = 0; i + 1 < ORDER.size(); i++) {
            noClasses()
                    .that()
                    .resideInAPackage(ORDER.get(i))
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(ORDER.subList(i + 1, ORDER.size()).toArray(String[]::new))
                    .check(OURS);
        }
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAPackage("tubwright.desk..")
                .check(OURS);
    }

    @Test
    void everyPackageHasItsPlaceInTheOrder() {
        TreeSet<String> names = new TreeSet<>();
        OURS.forEach(c -> names.add(c.getPackageName()));
        assertEquals(new TreeSet<>(ORDER), names);
    }
}
