// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.List;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Needed;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Says;

/** A file of rules as written. */
@Says("What a sanctioning body asks, clause by clause, of one edition.")
record RuleSetText(
        @Says("Name of the set.") Name ruleSet,
        @Says("What it covers and what it leaves out.") String about,
        @Says("The text and its edition.") String source,
        @Says("Year of the edition.") int year,

        @Says("Clauses by number, in the order of the text.") @Needed
        List<Named<ClauseText>> clauses,

        Place place) {}
