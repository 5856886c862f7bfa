package org.collarbook.regulation;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What is known of one site: the tanks that stand there, and the extinguishers beside them. */
public record SiteFacts(@Nullable Jurisdiction jurisdiction, List<Facts> tanks, List<SiteExtinguisher> extinguishers,
        Set<String> enable) {

    public SiteFacts {
        tanks = List.copyOf(tanks);
        extinguishers = List.copyOf(extinguishers);
        enable = Set.copyOf(enable);
    }
}
