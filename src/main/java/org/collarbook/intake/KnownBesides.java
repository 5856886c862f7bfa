package org.collarbook.intake;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.holds.Hold;
import org.collarbook.registry.fittings.Part;
import org.collarbook.registry.fittings.Stop;

/**
 * What the register knows of what few rows tell; looked up where a row of the batch does. {@code governed}: the
 * jurisdiction of declarations that containers were registered under.
 */
record KnownBesides(Map<UUID, List<Hold>> holds, Map<UUID, List<Part>> parts, Map<UUID, List<Stop>> stops,
        Map<UUID, Set<LocalDate>> emptied, KnownDeclarations.Found declarations, Map<UUID, String> governed) {

    static final KnownBesides NOTHING = new KnownBesides(Map.of(), Map.of(), Map.of(), Map.of(),
            KnownDeclarations.Found.NONE, Map.of());
}
