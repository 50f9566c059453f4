// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.platform.launcher.listeners.TestExecutionSummary;
import tubwright.engine.verification.EditedBuild.Edit;

/**
 * Errors put into the program itself on purpose. Each is an edit of a source file of the engine; the engine compiled with
 * it must fail every one of the named tests, and the same engine unedited pass them.
 */
class WrongVariantsTest {
    private static final Edit NOTHING = new Edit("package tubwright", "package tubwright");

    @TempDir
    Path folder;

    private void fails(String file, List<Edit> edits, String... tests) {
        TestExecutionSummary right =
                EditedBuild.of(file, List.of(NOTHING), folder.resolve("right")).run(tests);
        assertTrue(right.getTestsFoundCount() >= tests.length, "the named tests were found");
        assertEquals(
                right.getTestsFoundCount(),
                right.getTestsSucceededCount(),
                () -> "unedited: " + right.getFailures().getFirst().getException());
        TestExecutionSummary wrong =
                EditedBuild.of(file, edits, folder.resolve("wrong")).run(tests);
        Set<String> noticed = new TreeSet<>();
        wrong.getFailures().forEach(f -> noticed.add(f.getTestIdentifier().getUniqueId()));
        for (String test : tests) {
            String method = test.substring(test.indexOf('#') + 1);
            assertTrue(
                    noticed.stream().anyMatch(id -> id.contains(":" + method + "(")),
                    () -> test + " does not notice; noticed by " + noticed);
        }
    }

    @Test
    void aFixedShearFactorIsNoticed() {
        // S = 5/6 Σ G t of the layers, whatever their order.
        fails(
                "laminate/ShellStiffness.java",
                List.of(new Edit("double[] s = TransverseShear.of(z, q, f).stiffness();", """
                        double[] s = new double[4];
                        for (int i = 0; i < n; i++) {
                            double factor = 5.0 / 6 * (z[i] - z[i + 1]) / (f[i][0] * f[i][2] - f[i][1] * f[i][1]);
                            s[0] += factor * f[i][2];
                            s[1] -= factor * f[i][1];
                            s[2] -= factor * f[i][1];
                            s[3] += factor * f[i][0];
                        }
                        """)),
                "laminate.TransverseShearStiffnessTest#whitneysSymmetricCrossPlyHasHisFactors",
                "laminate.SandwichShearTest#equalFacesGiveTheValueComputedApartWhichIsThatOfThinFaces",
                "verification.ExactLaminateTest#firstOrderTheoryWithEnergyShear");
    }

    @Test
    void aPlainBilinearMembraneIsNoticed() {
        // The compatible strain of straight sides, nothing fitted.
        fails(
                "structure/QuadMembrane.java",
                List.of(
                        new Edit("RESIDUAL_SHARE = 0.02;", "RESIDUAL_SHARE = 1;"),
                        new Edit("ShellGeometry.bowStrain(4, BOWS, p, w);", "")),
                "verification.MacNealHarderTest#aStraightCantileverOfSixElements",
                "verification.StraightCantileverTest#bendsInItsPlaneOnRectangles",
                "verification.CookMembraneTest#fourASideComeWithinThreePerCent");
    }

    @Test
    void aRibbonTurnedTheWrongWayIsNoticed() {
        fails(
                "laminate/PlaneStress.java",
                List.of(
                        new Edit("double f13 = 1 / e.g13();", "double f13 = 1 / e.g23();"),
                        new Edit("double f23 = 1 / e.g23();", "double f23 = 1 / e.g13();")),
                "laminate.SandwichShearTest#theRibbonOfTheHoneycombIsTheStiffWay",
                "verification.ExactLaminateTest#firstOrderTheoryWithEnergyShear");
    }

    @Test
    void tensorShearTakenForEngineeringShearIsNoticed() {
        // In stiffness: Q̄16, Q̄26, Q̄66 for γ/2.
        fails(
                "laminate/PlaneStress.java",
                List.of(
                        new Edit("0.5 * u.u2() * s2 + u.u3() * s4,", "u.u2() * s2 + 2 * u.u3() * s4,"),
                        new Edit("0.5 * u.u2() * s2 - u.u3() * s4,", "u.u2() * s2 - 2 * u.u3() * s4,"),
                        new Edit("u.u5() - u.u3() * c4", "2 * (u.u5() - u.u3() * c4)")),
                "laminate.KawLaminateStiffnessTest#membraneStiffnessIsAsPrinted",
                "laminate.ApparentModuliTest#anOffAxisPlyHasTheModuliComputedApart");
        // In the strain of plies.
        fails(
                "laminate/PlaneStress.java",
                List.of(new Edit(
                        "2 * c * s * (strain[1] - strain[0]) + (c * c - s * s) * strain[2]",
                        "c * s * (strain[1] - strain[0]) + (c * c - s * s) * strain[2]")),
                "laminate.LaminateIdentitiesTest#strainInPlyAxesMakesThePlysStress");
        // In the free strain of plies in the heat.
        fails(
                "laminate/PlaneStress.java",
                List.of(new Edit(
                        "c * c * along1 + s * s * along2, s * s * along1 + c * c * along2, 2 * c * s * (along1 - along2)",
                        "c * c * along1 + s * s * along2, s * s * along1 + c * c * along2, c * s * (along1 - along2)")),
                "laminate.KawLaminateStressTest#residualStressesOfQuasiIsotropicLaminatesAreThoseOfCrossPlies");
    }

    @Test
    void aCouplingOfTheWrongSignIsNoticed() {
        fails(
                "laminate/ShellStiffness.java",
                List.of(
                        new Edit("addBlock(m, 0, 3, q[i], m1);", "addBlock(m, 0, 3, q[i], -m1);"),
                        new Edit("addBlock(m, 3, 0, q[i], m1);", "addBlock(m, 3, 0, q[i], -m1);")),
                "laminate.KawLaminateStiffnessTest#couplingIsAsPrinted",
                "laminate.KawLaminateStressTest#strainsAndCurvaturesAreAsPrinted",
                "laminate.KawLaminateStressTest#theUnsymmetricCrossPlyCurlsOnCoolingAsPrinted");
        // In the element.
        fails(
                "structure/ShellIntegral.java",
                List.of(
                        new Edit(
                                "double c0 = f * c[8 * r];",
                                "double s = r < 3 ? -1 : 1;\n        double c0 = -s * f * c[8 * r];"),
                        new Edit("double c1 = f * c[8 * r + 1];", "double c1 = -s * f * c[8 * r + 1];"),
                        new Edit("double c2 = f * c[8 * r + 2];", "double c2 = -s * f * c[8 * r + 2];"),
                        new Edit("double c3 = f * c[8 * r + 3];", "double c3 = s * f * c[8 * r + 3];"),
                        new Edit("double c4 = f * c[8 * r + 4];", "double c4 = s * f * c[8 * r + 4];"),
                        new Edit("double c5 = f * c[8 * r + 5];", "double c5 = s * f * c[8 * r + 5];")),
                "verification.PulledStripTest#theStiffPlyGoesToTheInsideOfTheBend");
    }
}
