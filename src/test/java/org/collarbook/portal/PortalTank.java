package org.collarbook.portal;

import java.util.Map;

import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;

/** A tank with a gauge to start from. */
public final class PortalTank {

    private PortalTank() {}

    public static Map<String, @Nullable Object> body() {
        var body = Given.cylinder();
        body.put("kind", "STATIONARY_TANK");
        body.put("specification", "ASME");
        body.put("waterCapacity", "500 gal");
        body.put("tare", null);
        body.put("installation", "ABOVEGROUND");
        body.remove("coated");
        return body;
    }
}
