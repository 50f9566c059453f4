// SPDX-License-Identifier: Apache-2.0
package tubwright.engine;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the order of the packages in docs/design-of-the-house.md: each knows only those before it. */
class ArchitectureTest {
    /** The packages of the engine, from the ground up. */
    private static final List<String> ORDER = List.of(
            "quantity",
            "material",
            "laminate",
            "strength",
            "joint",
            "shape",
            "cabin",
            "mesh",
            "load",
            "structure",
            "response",
            "trim",
            "rig",
            "make",
            "safety",
            "design");

    private static final JavaClasses OURS = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tubwright");

    @TestFactory
    Stream<DynamicTest> eachPackageKnowsOnlyThoseBeforeItInTheOrder() {
        return ORDER.stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    String[] later = ORDER.stream()
                            .skip(ORDER.indexOf(name) + 1L)
                            .map(ArchitectureTest::subtree)
                            .toArray(String[]::new);
                    if (later.length > 0) {
                        noClasses()
                                .that()
                                .resideInAPackage(subtree(name))
                                .should()
                                .dependOnClassesThat()
                                .resideInAnyPackage(later)
                                .allowEmptyShould(true)
                                .check(OURS);
                    }
                }));
    }

    @Test
    void everyPackageOfTheEngineHasItsPlaceInTheOrder() {
        var strangers = new TreeSet<String>();
        for (JavaClass each : OURS) {
            String name = each.getPackageName();
            if (name.startsWith("tubwright.engine") && !ORDER.contains(noun(name))) {
                strangers.add(name);
            }
        }
        assertEquals(new TreeSet<String>(), strangers);
    }

    @Test
    void theNumericsKnowNothingOfTubs() {
        noClasses()
                .that()
                .resideInAPackage("tubwright.numerics..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("tubwright.engine..", "tubwright.fleet..", "tubwright.desk..")
                .allowEmptyShould(true)
                .check(OURS);
    }

    @Test
    void theEngineKnowsNothingOfTheDesk() {
        noClasses()
                .that()
                .resideInAPackage("tubwright.engine..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("tubwright.fleet..", "tubwright.desk..")
                .check(OURS);
    }

    @Test
    void theEngineDrawsNothing() {
        noClasses()
                .that()
                .resideInAnyPackage("tubwright.engine..", "tubwright.numerics..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.awt..", "javax.swing..")
                .check(OURS);
    }

    @Test
    void packagesDoNotGoRoundInCircles() {
        slices().matching("tubwright.(**)").should().beFreeOfCycles().check(OURS);
    }

    @Test
    void exceptionsOfTheEngineNeedNoCatching() {
        classes()
                .that(are(Exception.class))
                .should()
                .beAssignableTo(RuntimeException.class)
                .allowEmptyShould(true)
                .check(OURS);
    }

    private static DescribedPredicate<JavaClass> are(Class<?> type) {
        return DescribedPredicate.describe("are " + type.getSimpleName(), each -> each.isAssignableTo(type));
    }

    private static String subtree(String name) {
        return "tubwright.engine." + name + "..";
    }

    /** The first name below {@code tubwright.engine}, or nothing for the root package itself. */
    private static String noun(String packageName) {
        String[] names = packageName.split("\\.");
        return names.length > 2 ? names[2] : "";
    }
}
