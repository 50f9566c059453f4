// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.Optional;
import tubwright.engine.rig.specimen.CouponReport;
import tubwright.engine.rig.specimen.PanelReport;
import tubwright.engine.rig.specimen.SpecimenTest;

/**
 * Specimens tested, for console and JSON document.
 *
 * @param test as read
 * @param panels of a panel test
 * @param coupons of any other
 * @param version of the program
 */
public record SpecimenAnswer(
        SpecimenTest test, Optional<PanelReport> panels, Optional<CouponReport> coupons, String version) {}
