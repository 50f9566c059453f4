// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import tubwright.engine.design.Design;
import tubwright.engine.structure.Tub;

/** The Larkspur with its zones cut at more stations, so that plies may end there: 32 zones, walls among them. */
final class FinerZones {
    private static final String ZONES = """

              finer zones:
                replace zones:
                  nose floor 1:   {on: floor, x: 0 .. 475 mm, laminate: nose skin}
                  nose floor 2:   {on: floor, x: 475 .. 950 mm, laminate: nose skin}
                  floor 1:        {on: floor, x: 950 .. 1375 mm, laminate: floor skin}
                  floor 2:        {on: floor, x: 1375 .. 1800 mm, laminate: floor skin}
                  floor 3:        {on: floor, x: 1800 .. 2250 mm, laminate: floor skin}
                  nose chine 1:   {on: chine, x: 0 .. 475 mm, laminate: nose skin}
                  nose chine 2:   {on: chine, x: 475 .. 950 mm, laminate: nose skin}
                  sill 1:         {on: chine, x: 950 .. 1375 mm, laminate: chine edge}
                  sill 2:         {on: chine, x: 1375 .. 1800 mm, laminate: chine edge}
                  sill 3:         {on: chine, x: 1800 .. 2250 mm, laminate: chine edge}
                  nose flank 1:   {on: flank, x: 0 .. 475 mm, laminate: nose skin}
                  nose flank 2:   {on: flank, x: 475 .. 950 mm, laminate: nose skin}
                  cockpit side 1: {on: flank, x: 950 .. 1375 mm, laminate: side skin}
                  cockpit side 2: {on: flank, x: 1375 .. 1800 mm, laminate: side skin}
                  tank side 1:    {on: flank, x: 1800 .. 2025 mm, laminate: tank skin}
                  tank side 2:    {on: flank, x: 2025 .. 2250 mm, laminate: tank skin}
                  nose shoulder 1: {on: shoulder, x: 0 .. 475 mm, laminate: nose skin}
                  nose shoulder 2: {on: shoulder, x: 475 .. 950 mm, laminate: nose skin}
                  cockpit shoulder 1: {on: shoulder, x: 950 .. 1375 mm, laminate: side skin}
                  cockpit shoulder 2: {on: shoulder, x: 1375 .. 1800 mm, laminate: side skin}
                  tank shoulder:  {on: shoulder, x: 1800 .. 2250 mm, laminate: tank skin}
                  nose deck 1:    {on: deck, x: 0 .. 475 mm, laminate: nose skin}
                  nose deck 2:    {on: deck, x: 475 .. 750 mm, laminate: nose skin}
                  scuttle:        {on: deck, x: 750 .. 1010 mm, laminate: scuttle skin}
                  cockpit rim 1:  {on: deck, x: 1010 .. 1375 mm, laminate: cockpit rim}
                  cockpit rim 2:  {on: deck, x: 1375 .. 1720 mm, laminate: cockpit rim}
                  headrest:       {on: deck, x: 1720 .. 2250 mm, laminate: tank skin}
                  front bulkhead: {on: front bulkhead, laminate: panel}
                  dash:           {on: dash, laminate: panel}
                  seat back:      {on: seat back, laminate: panel}
                  rear bulkhead:  {on: rear bulkhead, laminate: engine panel}
            """;

    private FinerZones() {}

    static Tub of(Path folder) throws IOException {
        String text = Files.readString(folder.resolve("tub.yaml"));
        Path place = Files.createTempDirectory("finer");
        try {
            Path file = place.resolve("tub.yaml");
            Files.writeString(file, text.replace("\nvariants:", "\nvariants:" + ZONES.stripTrailing()));
            return Design.read(place).variant("finer zones").orElseThrow().tub();
        } finally {
            Files.deleteIfExists(place.resolve("tub.yaml"));
            Files.delete(place);
        }
    }
}
