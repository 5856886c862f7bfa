package org.collarbook.dispatch.lists;

import java.util.ArrayList;
import java.util.regex.Pattern;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

/** Where the dispatcher looks: one site, one customer's sites, all sites near a point, or those that a depot serves. */
sealed interface PullArea {

    record OneSite(String site) implements PullArea {}

    record OneCustomer(String customer) implements PullArea {}

    record OneDepot(String depot) implements PullArea {}

    record Near(double latitude, double longitude, double kilometres) implements PullArea {}

    Pattern CIRCLE = Pattern.compile("(-?\\d{1,4}(\\.\\d{1,9})?,){2}\\d{1,4}(\\.\\d{1,9})?");
    String NEAR = "latitude,longitude,kilometres, such as 41.2,-95.9,25 (at most 1000 km)";

    /** Null when what was asked is refused. */
    static @Nullable PullArea of(PullQuestion question, Inputs wrong) {
        var asked = new ArrayList<PullArea>();
        if (question.site() != null) {
            asked.add(new OneSite(question.site()));
        }
        if (question.customer() != null) {
            asked.add(new OneCustomer(question.customer()));
        }
        if (question.depot() != null) {
            asked.add(new OneDepot(question.depot()));
        }
        if (question.near() != null) {
            var near = near(question.near());
            if (near == null) {
                wrong.refuse("near", "NOT_A_CIRCLE", question.near(), NEAR);
                return null;
            }
            asked.add(near);
        }
        if (asked.size() != 1) {
            wrong.refuse("site", asked.isEmpty() ? "MISSING" : "TOO_MANY", null,
                    "exactly one of site, customer, near, depot");
            return null;
        }
        return asked.getFirst();
    }

    private static @Nullable Near near(String text) {
        if (!CIRCLE.matcher(text).matches()) {
            return null;
        }
        var parts = text.split(",");
        var near = new Near(Double.parseDouble(parts[0]), Double.parseDouble(parts[1]), Double.parseDouble(parts[2]));
        return Math.abs(near.latitude) <= 90 && Math.abs(near.longitude) <= 180 && near.kilometres > 0
                && near.kilometres <= 1000 ? near : null;
    }
}
