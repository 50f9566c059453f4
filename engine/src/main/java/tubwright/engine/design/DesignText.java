// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Otherwise;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;
import tubwright.engine.design.text.Tree;

/** A design document as written. */
@Says(
        "A tub: its targets, shape, materials, laminates, pieces, joints, hardpoints, cases and variants. Axes: x aft from"
                + " the design datum, y to the right, z up. Every quantity carries its unit.")
record DesignText(
        @Says("Name of the tub.") Name tub,
        @Says("Who designs it.") Optional<String> by,
        @Says("Anything a reader should know.") Optional<String> notes,

        @Says("How it is built, in a few words for tables and headings.") @Otherwise("carbon composite")
        String construction,

        @Says("What the tub must reach.") Optional<TargetsText> targets,

        @Says("What stacks must keep to when weight is taken out.")
        Optional<LayupRulesText> layupRules,

        @Says("The surface: frames, strips, openings and walls.")
        ShapeText shape,

        @Says("Own materials, beside those of the shipped library.")
        List<Named<MaterialText>> materials,

        @Says("Layups by name.") @Needed List<Named<LaminateText>> laminates,

        @Says("Areas of one laminate. A later zone covers an earlier one where they overlap. What no zone covers takes"
                + " the laminate named like its strip or wall.")
        List<Named<ZoneText>> zones,

        @Says("Local extra plies, laid in the order written.")
        List<Named<PatchText>> patches,

        @Says(
                "What comes out of one mould (or is one sheet): a name and the strips and walls it is made of. A wall that"
                        + " is in no piece is a piece of its own; strips in no piece form one piece, \"skin\".")
        List<Named<List<Name>>> pieces,

        @Says("Where cloth is laid from, by piece or by ply (\"lower shell 05\"); elsewhere the best start is sought.")
        List<Named<LayText>> laying,

        @Says("What holds the pieces together.") List<Named<JointText>> joints,

        @Says("Bars along lines of the tub: folded edges, angles, tubes, cappings.")
        List<Named<StiffenerText>> stiffeners,

        @Says("Where loads enter. Points on both sides become two, \"... L\" and \"... R\".")
        List<Named<HardpointText>> hardpoints,

        @Says("Points in space where tubes meet.") List<Named<NodeText>> nodes,

        @Says("Tubes bolted on: roll hoops, stays, subframes.")
        List<Named<TubeText>> tubes,

        @Says("Bodies bolted on: engine, gearbox.") List<Named<BodyText>> bodies,
        @Says("Mass without stiffness: driver, fuel.") List<Named<PlacedMassText>> masses,
        @Says("The car on its wheels.") Optional<CarText> car,
        @Says("Who and what has to go into the tub.") Optional<CabinText> cabin,
        @Says("Wishbones, rods, rockers and links.") Optional<SuspensionText> suspension,
        @Says("What is held and what pushes.") List<Named<CaseText>> cases,

        @Says("How things crush: own values beside the shipped ones.")
        List<Named<CrushDataText>> crushData,

        @Says("Structures that crush in an impact.") List<Named<CrushText>> crush,
        @Says("Rules the tub is held against.") List<Named<RulesText>> rules,
        @Says("With which strengths load cases are judged.") Optional<StrengthText> strength,

        @Says("Buckling and natural frequencies.") Optional<StabilityText> stability,

        @Says("The mesh.") Optional<MeshText> mesh,

        @Says("Other ways to build the same tub, by name. A variant holds only what differs: mappings are laid over"
                + " entry by entry, anything else replaces; \"replace X:\" replaces the whole of X; \"none\""
                + " takes an entry out.")
        List<Named<Tree.Mapping>> variants,

        Place place) {}
