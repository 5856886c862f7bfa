package org.collarbook.dispatch;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.platform.FieldError;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;

/** Where the dispatcher looks: one site, one customer's sites, or all sites within a distance of a point. */
sealed interface PullArea {

    record OneSite(String site) implements PullArea {}

    record OneCustomer(String customer) implements PullArea {}

    record Near(double latitude, double longitude, double kilometres) implements PullArea {}

    String NEAR = "latitude,longitude,kilometres, such as 41.2,-95.9,25 (at most 1000 km)";

    static PullArea of(@Nullable String site, @Nullable String customer, @Nullable String near) {
        var asked = new ArrayList<PullArea>();
        if (site != null) {
            asked.add(new OneSite(site));
        }
        if (customer != null) {
            asked.add(new OneCustomer(customer));
        }
        if (near != null) {
            asked.add(near(near));
        }
        if (asked.size() != 1) {
            throw Problem.invalid(List.of(new FieldError("site", asked.isEmpty() ? "MISSING" : "TOO_MANY", null,
                    "exactly one of site, customer, near"))).asException();
        }
        return asked.getFirst();
    }

    private static Near near(String text) {
        var parts = text.split(",", -1);
        try {
            if (parts.length == 3) {
                var near = new Near(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]),
                        Double.parseDouble(parts[2]));
                if (Math.abs(near.latitude) <= 90 && Math.abs(near.longitude) <= 180 && near.kilometres > 0
                        && near.kilometres <= 1000) {
                    return near;
                }
            }
        } catch (NumberFormatException notNumbers) {
            // answered below
        }
        throw Problem.invalid("near", "NOT_A_CIRCLE", text, NEAR).asException();
    }
}
