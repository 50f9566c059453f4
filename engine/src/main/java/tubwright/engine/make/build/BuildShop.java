// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import tubwright.engine.make.data.SourcedText;
import tubwright.engine.make.data.SourcedText.Entry;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.quantity.Dimension;

/**
 * How a shop works, what it waits for and what it charges, all data with a source.
 *
 * @param calendar working days and hours
 * @param teams that work side by side
 * @param people in a team
 * @param autoclaves that run side by side
 * @param load pieces that are cured together in one run
 * @param times by name, SI; areas per time in m²/s
 * @param prices by name, in the currency
 * @param currency its letters
 */
public record BuildShop(
        WorkCalendar calendar,
        int teams,
        int people,
        int autoclaves,
        int load,
        Map<String, PropertyValue> times,
        Map<String, PropertyValue> prices,
        String currency) {
    private static final String PATH = "/tubwright/build/build.yaml";

    private static final List<String> WAITS = List.of("material", "adhesive", "test panels", "delivery");
    private static final List<String> TOOLING =
            List.of("pattern each", "pattern area per time", "mould each", "mould area per time", "mould cure");
    private static final List<String> FINISHING = List.of(
            "trimming each", "hardpoint each", "inspection each", "bond line each", "last look", "laying test panels");
    private static final List<String> PRICES = List.of(
            "work per hour",
            "autoclave per hour",
            "cloth per kg",
            "tape per kg",
            "film per kg",
            "core per kg",
            "bagging per cure and m²",
            "pattern per m²",
            "mould per m²",
            "test panels",
            "delivery");

    public BuildShop {
        times = Map.copyOf(times);
        prices = Map.copyOf(prices);
    }

    /** What comes with the program. */
    public static BuildShop shipped() {
        try (InputStream in = BuildShop.class.getResourceAsStream(PATH)) {
            if (in == null) {
                throw new IllegalStateException("the shipped data " + PATH + " are missing");
            }
            Entry root = new SourcedText("build.yaml", new String(in.readAllBytes(), StandardCharsets.UTF_8)).root();
            BuildShop shop = read(root, root);
            root.has("sources");
            root.nothingElse();
            return shop;
        } catch (IOException e) {
            throw new UncheckedIOException("the shipped data " + PATH + " cannot be read", e);
        }
    }

    /**
     * Reads a shop's own file; parts it does not have are as shipped.
     *
     * @throws tubwright.engine.make.data.DataException naming file and line if it is not right
     */
    public static BuildShop read(String file, String yaml) {
        try (InputStream in = BuildShop.class.getResourceAsStream(PATH)) {
            Entry usual = new SourcedText("build.yaml", new String(in.readAllBytes(), StandardCharsets.UTF_8)).root();
            return read(new SourcedText(file, yaml).root(), usual);
        } catch (IOException e) {
            throw new UncheckedIOException("the shipped data " + PATH + " cannot be read", e);
        }
    }

    private static BuildShop read(Entry own, Entry usual) {
        Entry calendar = part(own, usual, "calendar");
        Entry values = calendar.inside("values");
        double shift = calendar.value(values, "shift", Dimension.TIME).si();
        int shifts = whole(calendar, values, "shifts", 4);
        double first = calendar.value(values, "first hour", Dimension.TIME).si();
        if (!(shift > 0 && shift * shifts <= 86_400 && first >= 0 && first < 86_400)) {
            throw calendar.fault("all shifts together must fit into a day of 24 h and begin within it");
        }
        WorkCalendar works =
                new WorkCalendar(days(calendar), LocalTime.ofSecondOfDay((long) first), shift * shifts, off(calendar));
        int teams = whole(calendar, values, "teams", 50);
        int people = whole(calendar, values, "people in a team", 20);
        int autoclaves = whole(calendar, values, "autoclaves", 20);
        int load = whole(calendar, values, "pieces in a run", 20);
        values.nothingElse();
        calendar.nothingElse();
        Map<String, PropertyValue> times = new LinkedHashMap<>();
        numbers(part(own, usual, "waits"), WAITS, Dimension.TIME, times, "wait for ");
        numbers(part(own, usual, "tooling"), TOOLING, Dimension.TIME, times, "");
        numbers(part(own, usual, "finishing"), FINISHING, Dimension.TIME, times, "");
        Entry costs = part(own, usual, "prices");
        String currency = costs.text("currency");
        Map<String, PropertyValue> prices = new LinkedHashMap<>();
        numbers(costs, PRICES, Dimension.DIMENSIONLESS, prices, "");
        return new BuildShop(works, teams, people, autoclaves, load, times, prices, currency);
    }

    private static Entry part(Entry own, Entry usual, String name) {
        return own.has(name) ? own.inside(name) : usual.inside(name);
    }

    private static void numbers(
            Entry entry, List<String> names, Dimension dimension, Map<String, PropertyValue> into, String prefix) {
        Entry values = entry.inside("values");
        for (String name : names) {
            PropertyValue value =
                    entry.value(values, name, name.endsWith("area per time") ? Dimension.AREA_RATE : dimension);
            if (!(value.si() >= 0) || name.endsWith("area per time") && value.si() == 0) {
                throw entry.fault("'" + name + "' is " + value.si() + "; it cannot be less than nothing");
            }
            into.put(prefix + name, value);
        }
        values.nothingElse();
        entry.nothingElse();
    }

    private static int whole(Entry entry, Entry values, String key, int most) {
        double number = entry.value(values, key, Dimension.DIMENSIONLESS).si();
        if (number != Math.rint(number) || number < 1 || number > most) {
            throw entry.fault("'" + key + "' is a whole number from 1 to " + most);
        }
        return (int) number;
    }

    private static Set<DayOfWeek> days(Entry calendar) {
        EnumSet<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
        for (String word : calendar.text("days").strip().split("[ ,]+")) {
            days.add(Arrays.stream(DayOfWeek.values())
                    .filter(d -> word.length() >= 3
                            && d.name().toLowerCase(Locale.ROOT).startsWith(word.toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .orElseThrow(() ->
                            calendar.fault("'" + word + "' is no day of the week; write for instance: Mon Tue Wed")));
        }
        return days;
    }

    private static Set<LocalDate> off(Entry calendar) {
        Set<LocalDate> off = new LinkedHashSet<>();
        String text = calendar.optionalText("days off").orElse("none").strip();
        if (!text.equals("none") && !text.isEmpty()) {
            for (String word : text.split("[ ,]+")) {
                try {
                    off.add(LocalDate.parse(word));
                } catch (DateTimeException e) {
                    throw calendar.fault("'" + word + "' under 'days off' is no date; write for instance 2030-12-25");
                }
            }
        }
        return off;
    }

    /** A time, s, or an area per time, m²/s. */
    public double time(String name) {
        return times.get(name).si();
    }

    /** Where a time comes from. */
    public String source(String name) {
        return times.get(name).provenance().toString();
    }

    /** A price. */
    public double price(String name) {
        return prices.get(name).si();
    }
}
