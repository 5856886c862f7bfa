package org.collarbook.compliance;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.compliance.KnownContainer.Declarer;
import org.collarbook.compliance.KnownContainer.Where;
import org.collarbook.holds.HoldReason;
import org.collarbook.registry.ContainerRows;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;

/** How {@link KnownContainers} reads a row. */
final class KnownContainerRow {

    /** Rejections and condemnations stand in the history; damage is for the eye of whoever fills it. */
    private static final Condition SEEN = new Condition(List.of(), null, null, null, null, null);

    private KnownContainerRow() {}

    static KnownContainer read(ResultSet row, int number) throws SQLException {
        var container = ContainerRows.read(row, number);
        return new KnownContainer(container, where(row), row.getBoolean("place_disputed"), facts(container, row),
                declarers(container, row));
    }

    private static Facts facts(RegisteredContainer container, ResultSet row) throws SQLException {
        var jurisdiction = row.getString("governed_by");
        var parts = texts(row, "parts").map(Fitted::parse).toList();
        var stops = texts(row, "stops").map(Stopped::parse).toList();
        var holds = Stream.concat(holds(row), Stopped.hold(stops)).toList();
        return container.facts().jurisdiction(jurisdiction == null ? null : new Jurisdiction(jurisdiction))
                .requalifications(history(container, texts(row, "history").map(Dated::parse).toList(), parts))
                .fittings(Fitted.fittings(parts))
                .outOfServiceSince(Stopped.since(stops, container.particulars().outOfServiceSince()))
                .condition(SEEN).holds(holds).filledOn(row.getObject("filled_on", LocalDate.class))
                .emptiedOn(row.getObject("emptied_on", LocalDate.class))
                .build();
    }

    /**
     * Nothing recorded is an empty history only where somebody has read the collar, whatever valve is in place: a rejection
     * may be missing of what nobody has read.
     */
    private static @Nullable List<Requalification> history(RegisteredContainer container, List<Dated> recorded,
            List<Fitted> parts) {
        if (recorded.isEmpty() && !container.particulars().collarRead()) {
            return null;
        }
        return Stream.concat(Dated.history(Fitted.ofThese(recorded, parts), container.marks().kind()),
                Fitted.clock(parts).stream()).toList();
    }

    /** Written by the statement as reason, day at the site. */
    private static Stream<StandingHold> holds(ResultSet row) throws SQLException {
        return texts(row, "holds").map(text -> {
            var part = text.split(",", 2);
            var reason = HoldReason.valueOf(part[0]);
            return new StandingHold(reason.name(), LocalDate.parse(part[1]), reason.sentence(), reason.citation());
        });
    }

    private static Stream<String> texts(ResultSet row, String column) throws SQLException {
        return Arrays.stream((String[]) row.getArray(column).getArray());
    }

    private static @Nullable Where where(ResultSet row) throws SQLException {
        var site = row.getObject("site_id", UUID.class);
        return site == null
                ? null
                : new Where(site, row.getString("site_code"), row.getString("site_name"),
                        ZoneId.of(row.getString("zone")), row.getObject("customer_id", UUID.class));
    }

    /** The one it was registered under, then the others; written by the statement as id, day, name. */
    private static List<Declarer> declarers(RegisteredContainer container, ResultSet row) throws SQLException {
        var declarers = new ArrayList<Declarer>();
        var own = container.declaration();
        if (own != null) {
            declarers.add(new Declarer(own, row.getString("declared_by"),
                    row.getObject("declared_on", LocalDate.class), container.restingOn(own)));
        }
        texts(row, "further_declared").map(text -> text.split(",", 3)).forEach(part -> {
            var id = UUID.fromString(part[0]);
            declarers.add(new Declarer(id, part[2], LocalDate.parse(part[1]), container.restingOn(id)));
        });
        return declarers.stream().filter(one -> !one.facts().isEmpty()).toList();
    }
}
