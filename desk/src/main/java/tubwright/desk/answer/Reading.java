// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.EnergyShare;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.structure.Part;

/** The few sums a reader of answers needs, made in one place so that console, JSON and page agree. */
public final class Reading {
    private Reading() {}

    /** The first torsion case of a variant. */
    public static Optional<CaseAnswer> torsion(VariantAnswer variant) {
        return first(variant, CaseAnswer.Kind.TORSION);
    }

    /** The first bending case of a variant. */
    public static Optional<CaseAnswer> bending(VariantAnswer variant) {
        return first(variant, CaseAnswer.Kind.BENDING);
    }

    /** The case of that name in a variant. */
    public static Optional<CaseAnswer> named(VariantAnswer variant, String name) {
        return variant.cases().stream().filter(c -> c.name().equals(name)).findFirst();
    }

    /** Torsional stiffness over mass, N·m/rad per kg. */
    public static Optional<Double> torsionPerMass(VariantAnswer variant) {
        return torsion(variant)
                .map(c -> c.stiffness().value() / variant.mass().whole().mass());
    }

    /** The largest {@code count} shares, and the rest as one named {@code everything else} if it is worth a line. */
    public static List<EnergyShare> largest(CaseAnswer answer, int count) {
        List<EnergyShare> all = answer.energy();
        if (all.size() <= count + 1) {
            return all;
        }
        List<EnergyShare> result = new ArrayList<>(all.subList(0, count));
        double energy = 0;
        double share = 0;
        for (EnergyShare rest : all.subList(count, all.size())) {
            energy += rest.energy();
            share += rest.share();
        }
        result.add(new EnergyShare(Part.Kind.ZONE, "everything else", energy, share));
        return result;
    }

    /** Mass by kind of item, kg, in the order of the kinds. */
    public static Map<Part.Kind, Double> massByKind(MassAnswer mass) {
        Map<Part.Kind, Double> result = new LinkedHashMap<>();
        for (Part.Kind kind : Part.Kind.values()) {
            double sum = mass.items().stream()
                    .filter(i -> i.kind() == kind)
                    .mapToDouble(MassAnswer.Item::mass)
                    .sum();
            if (sum > 0) {
                result.put(kind, sum);
            }
        }
        return result;
    }

    /**
     * The layups of one variant, zones first, with the places of a patch that is laid several times
     * ({@code "doublers: upper leg R"}, {@code "doublers: upper leg L"}) taken together under its name.
     */
    public static List<RunAnswer.Layup> layups(RunAnswer answer, String variant) {
        return together(answer.layups().stream()
                .filter(l -> l.variant().equals(variant))
                .toList());
    }

    /** The same for layups of one variant. */
    public static List<RunAnswer.Layup> together(List<RunAnswer.Layup> layups) {
        Map<String, RunAnswer.Layup> result = new LinkedHashMap<>();
        for (RunAnswer.Layup layup : layups) {
            String name = layup.patch() ? layup.name().split(":", 2)[0] : layup.name();
            String key = layup.patch() + name + layup.code();
            RunAnswer.Layup known = result.get(key);
            double area = layup.area() + (known == null ? 0 : known.area());
            result.put(
                    key,
                    new RunAnswer.Layup(layup.variant(), name, layup.patch(), layup.code(), area, layup.laminate()));
        }
        return List.copyOf(result.values());
    }

    /** A kind in words. */
    public static String words(Part.Kind kind) {
        return switch (kind) {
            case ZONE -> "skin";
            case WALL -> "wall";
            case JOINT -> "joint";
            case HARDPOINT -> "hardpoint";
            case STIFFENER -> "stiffener";
            case TUBE -> "tube";
            case BODY -> "body";
        };
    }

    private static Optional<CaseAnswer> first(VariantAnswer variant, CaseAnswer.Kind kind) {
        return variant.cases().stream().filter(c -> c.kind() == kind).findFirst();
    }
}
