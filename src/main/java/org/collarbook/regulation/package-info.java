/**
 * The dated, cited rules and the decision they give about one container on one date; pure Java.
 *
 * <p>
 * {@link org.collarbook.regulation.RuleBook#assess} reads {@link org.collarbook.regulation.Facts} and gives an
 * {@link org.collarbook.regulation.Assessment}. For each requirement the newest mark governs, and of the rules that speak
 * of its method the first by precedence whose conditions hold; a condition of an unknown fact leaves the requirement
 * undetermined. What each status permits for each kind of container is written down in
 * {@code src/test/resources/golden/status-permissions.tsv} and tested.
 *
 * <p>
 * A fact that is null is not known, and making a fact unknown never turns a permission true. Fills, emptyings, rejections
 * and holds are events: for carrying and use one that is not recorded has not happened, while filling asks that the
 * condition and the holds are known.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package org.collarbook.regulation;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
