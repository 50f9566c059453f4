// SPDX-License-Identifier: Apache-2.0
/**
 * A tub as it was built: what was weighed, of which batches, what departed from the plan; held against the plan, and turned into
 * factors on the stiffness of its materials. Knows the plan as a list; nothing of the design document.
 */
package tubwright.engine.make.built;
